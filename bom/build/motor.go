package build

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

// BatteryLimit is the voltage above which a supply is the mains and no battery
// (judgement: a boat's batteries give 12, 24 or 48 V, the mains 100 V and more).
const BatteryLimit = 60 * quantity.Volt

var (
	notADrive = pattern.New(`(?i)\bv\s?-?\s?belts?\b|\bengine[\s-]?(?:room|space|bay)\b`)
	driven    = pattern.New(`(?i)\b(?:engine|diesel|petrol|gasoline|clutch|hydraulic\w*|pto|power take-?off|shaft generator|genset|by hand|hand pump)\b`)
	mains     = pattern.New(`(?i)\bmains\b|\bshore\s?power\b|\bac\b|\bv\s?ac\b|\dvac\b|~|\b(?:single|three|1|3)[\s-]?phase\b|\binverter\b`)
	direct    = pattern.New(`(?i)\bdc\b|vdc\b|\bbatter(?:y|ies)\b`)
	volts     = pattern.New(`(?i)(\d+(?:[.,]\d+)?(?:\s*/\s*\d+(?:[.,]\d+)?)*)\s*-?\s*v(?:olts?|dc|ac)?\b`)
)

// OtherDrive reports whether a text names a drive that takes nothing from the batteries
// while it runs: an engine, a clutch, hydraulics, a hand. The words are common practice.
func OtherDrive(text string) bool { return driven.MatchString(notADrive.ReplaceAllString(text, "")) }

// Battery is the voltage of the batteries that drive a pump: the one that its `motor` names
// ("24 V DC"), the lowest of several, else the build's supply. ok is false where no battery
// drives it (an engine, a clutch, hydraulics, the mains, above [BatteryLimit]), and where
// neither says a voltage.
func (i *Item) Battery(supply *quantity.Voltage) (v quantity.Voltage, ok bool) {
	text := notADrive.ReplaceAllString(i.Motor, "")
	if driven.MatchString(text) {
		return 0, false
	}
	own, said := lowestVolts(text)
	switch {
	case mains.MatchString(text) && !direct.MatchString(text):
		return 0, false
	case !said && supply != nil:
		own, said = *supply, true
	}
	if !said || own <= 0 || own > BatteryLimit {
		return 0, false
	}
	return own, true
}

// lowestVolts is the lowest voltage in a text: 12 of "12/24 V".
func lowestVolts(text string) (lowest quantity.Voltage, ok bool) {
	for _, m := range volts.FindAllStringSubmatch(text, -1) {
		for _, figure := range strings.Split(m[1], "/") {
			f, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(figure), ",", ".", 1), 64)
			if v := quantity.Voltage(f) * quantity.Volt; err == nil && f > 0 && (!ok || v < lowest) {
				lowest, ok = v, true
			}
		}
	}
	return lowest, ok
}

// NamesMains reports whether a text names the mains, or current that comes from them.
func NamesMains(text string) bool { return mains.MatchString(text) }

// converted finds the words for what makes another voltage of the supply's.
var converted = pattern.New(`(?i)\bconvert(?:er|ed)\b|\btransformer\b|\binverter\b|\bcontroller\b|\bsolar\b`)

// BatteryVolts lists the battery voltages that texts name, together: 12 and 24 of "12/24 V". None
// where one names the mains, another drive, or a converter.
func BatteryVolts(texts ...string) []quantity.Voltage {
	if !slices.ContainsFunc(texts, mayNameVolts) {
		return nil
	}
	text := strings.Join(texts, " | ")
	text = notADrive.ReplaceAllString(text, "")
	if driven.MatchString(text) || converted.MatchString(text) || mains.MatchString(text) && !direct.MatchString(text) {
		return nil
	}
	var out []quantity.Voltage
	for _, m := range volts.FindAllStringSubmatch(text, -1) {
		for _, figure := range strings.Split(m[1], "/") {
			f, err := strconv.ParseFloat(strings.Replace(strings.TrimSpace(figure), ",", ".", 1), 64)
			if v := quantity.Voltage(f) * quantity.Volt; err == nil && f > 0 && v <= BatteryLimit {
				out = append(out, v)
			}
		}
	}
	return out
}

// mayNameVolts is false of most texts in which no voltage can be found, and cheap: a voltage is a
// digit before a v, with blanks or hyphens between them, or with words that are taken out first.
func mayNameVolts(text string) bool {
	after := false // a digit, and nothing since but blanks and hyphens
	for i := range len(text) {
		switch c := text[i]; {
		case '0' <= c && c <= '9':
			after = true
		case (c == 'v' || c == 'V') && after:
			return true
		case (c == 'b' || c == 'B') && begins(text[i:], "belt"), (c == 'e' || c == 'E') && begins(text[i:], "engine"):
			return true
		case c != '-' && c > ' ': // a blank of the pattern is a control character or a space
			after = false
		}
	}
	return false
}

// begins reports whether a text begins with a word in whatever case.
func begins(text, word string) bool {
	return len(text) >= len(word) && strings.EqualFold(text[:len(word)], word)
}

// GoesWith reports whether one of some nominal voltages is the supply's: within a sixth of it, as
// 13.8 V is of 12 (judgement: what a battery gives from empty to charging).
func GoesWith(list []quantity.Voltage, supply quantity.Voltage) bool {
	return slices.ContainsFunc(list, func(v quantity.Voltage) bool { return math.Abs(float64(v-supply)) <= float64(supply)/6 })
}
