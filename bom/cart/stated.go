package cart

import (
	"fmt"
	"math"
	"regexp"
	"strings"
	"sync"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Words before a pressure say what it is: what a relief valve is set to, what it may be set to, the least that a valve needs,
// and what is of another thing than the part. They stand in table/figure.csv.

// statedForms are the forms of a pressure by what the words before it make of it.
var statedForms = sync.OnceValue(func() map[string]*pattern.Pattern {
	words := map[string][]string{}
	for _, r := range readTable("figure.csv") {
		for _, w := range strings.Split(r[1], "|") {
			words[r[0]] = append(words[r[0]], regexp.QuoteMeta(w))
		}
	}
	out := map[string]*pattern.Pattern{}
	form := func(name string, list ...string) {
		longestFirst(list)
		out[name] = pattern.New(`(?i)(?:^|[^\pL/])(` + strings.Join(list, "|") + `)(?:[^\pL0-9,;()][^0-9,;()]{0,28}?)(?:([0-9]+(?:[.,][0-9]+)?)\s*(?:bar|psi|mpa)?\s*(?:-|–|—|÷|\.\.\.?|…|to|bis|à|a|al|tot|till|til|do)\s*)?([0-9]+(?:[.,][0-9]+)?)\s*(barg?|psig?|mpa|бар)(?:[^\pL]|$)`)
	}
	form("set", append(append([]string{}, words["set"]...), words["may"]...)...)
	form("least", words["least"]...)
	other := append([]string{}, words["else"]...)
	longestFirst(other)
	out["else"] = pattern.New(`(?i)(?:^|[^\pL])(?:` + strings.Join(other, "|") + `)(?:\s*:?\s*[0-9][0-9.,]*(?:\s*:\s*1)?(?:\s|$))?[^0-9,;()]{0,14}?([0-9]+(?:[.,][0-9]+)?)\s*(barg?|psig?|mpa)(?:[^\pL]|$)`)
	return out
})

// maySet are the words of table/figure.csv for what may be set.
var maySet = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	for _, r := range readTable("figure.csv") {
		if r[0] == "may" {
			for _, w := range strings.Split(r[1], "|") {
				out[strings.ToLower(w)] = true
			}
		}
	}
	return out
})

// settings finds what a relief valve is set to. What it may be set to, and what it is not, is none of it: then it is left
// open, and asked.
func (f *facts) settings(text string) {
	if f.kind != "" && !isA(f.kind, catalog.Relieves) {
		return
	}
	var sure []quantity.Pressure
	var from, to quantity.Pressure
	open := false
	for _, m := range statedForms()["set"].FindAllStringSubmatchIndex(text, -1) {
		unit := perPressure[strings.ToLower(text[m[8]:m[9]])]
		bar := quantity.Pressure(decimal(text[m[6]:m[7]])) * unit
		switch {
		case m[4] >= 0:
			from, to = quantity.Pressure(decimal(text[m[4]:m[5]]))*unit, bar
			open = true
		case maySet()[strings.ToLower(text[m[2]:m[3]])], deniedUpTo(text[:m[2]]):
			open = open || f.set == 0 || alike(bar, f.set) // up to 160 bar is of its body
		default:
			sure = append(sure, bar)
		}
	}
	for i, bar := range sure {
		if i == 0 {
			f.set = bar
		} else if !alike(bar, f.set) {
			f.said = append(f.said, fmt.Sprintf("is it set to %s or to %s", bars(f.set), bars(bar)))
		}
	}
	if len(sure) == 0 && open {
		f.set, f.unset = 0, true
	}
	if f.set > 0 && to > 0 && (f.set < from-pressure.Slack || f.set > to+pressure.Slack) {
		f.said = append(f.said, fmt.Sprintf("can it be set to %s (its range is %s to %s)", bars(f.set), bars(from), bars(to)))
	}
	if m := toleranceForm.FindStringSubmatch(text); m != nil && f.set > 0 {
		if off := quantity.Pressure(decimal(m[1])) * perPressure[strings.ToLower(m[2])]; float64(off) > setSlack*float64(f.set) {
			f.said = append(f.said, fmt.Sprintf("how near to %s is it set (its words say %q)", bars(f.set), strings.TrimSpace(m[0])))
		}
	}
}

// setSlack is how far from its setting a relief valve may open, as a share (judgement: ASME VIII asks for 3 %, as memory has it,
// and shops of small valves say 5 to 10 %).
const setSlack = 0.1

// toleranceForm is how far from a pressure another may be: +/- 2 bar.
var toleranceForm = pattern.New(`(?i)(?:\+\s*/?\s*[-−–]|±)\s*([0-9]+(?:[.,][0-9]+)?)\s*(barg?|psig?|mpa)(?:[^\pL]|$)`)

// alike reports whether two pressures are one, as near as shops round.
func alike(a, b quantity.Pressure) bool {
	return math.Abs(float64(a-b)) <= figureSlack*float64(max(a, b))
}

// deniedUpTo reports whether a text ends with a word that denies what stands behind it.
func deniedUpTo(text string) bool {
	s := speak(text)
	h, n := s.hits(), len(s.words)
	for _, d := range h[saysNot] {
		if h.behindLinks(s, d.to+1) >= n && s.clause[d.from] == s.clause[n-1] && !strings.ContainsAny(text[s.to[n-1]:], ",;()") {
			return true
		}
	}
	return false
}

// body gives a relief valve what its body holds, where the reader of titles took its setting in another unit for that.
func (f *facts) body(r *threads.Reading) {
	if !isA(f.kind, catalog.Relieves) || f.set == 0 || f.rated == 0 || !alike(f.rated, f.set) {
		return
	}
	f.rated = 0
	for _, u := range r.NotUsed {
		if strings.HasPrefix(u.Why, "a second pressure") {
			f.rated = max(f.rated, pressureIn(barePressure, u.Words))
		}
	}
	for i := range r.Pressures {
		if p := &r.Pressures[i]; p.What == "setting" && p.Pressure > f.set && !alike(p.Pressure, f.set) {
			f.rated = max(f.rated, p.Pressure)
		}
	}
}

var barePressure = pattern.New(`(?i)([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa)`)

// notOwn takes back a rating that is of another thing: how a hose was crimped, what pump a fitting is sold for.
func (f *facts) notOwn(text string) {
	if f.rated == 0 {
		return
	}
	for _, m := range statedForms()["else"].FindAllStringSubmatch(text, -1) {
		if alike(quantity.Pressure(decimal(m[1]))*perPressure[strings.ToLower(m[2])], f.rated) {
			f.rated = 0
			return
		}
	}
}

// The vacuum that a hose stands, in the units that shops have for it.
var (
	vacuumWord   = `(?:vacuum|vacuüm|vakuum|vide|dépression|vuoto|depressione|vac[ií]o|vácuo|unterdruck|onderdruk|podciśnienie|alipaine)`
	vacuumBefore = pattern.New(`(?i)` + vacuumWord + `[^0-9,;]{0,14}?[-−–]?([0-9]+(?:[.,][0-9]+)?)\s*(%|bar|mbar|kpa|in\.?\s?hg|mm\s?hg|mwc|m\s?ws|mce|psi)`)
	vacuumBehind = pattern.New(`(?i)(?:^|[^0-9.,])[-−–]?([0-9]+(?:[.,][0-9]+)?)\s*(%|bar|mbar|kpa|in\.?\s?hg|mm\s?hg|mwc|m\s?ws|mce|psi)\s*` + vacuumWord)
	vacuumMinus  = pattern.New(`(?i)(?:^|[\s,;(])[-−–](0[.,][0-9]{1,2}|1(?:[.,]0)?)\s*(bar|(?:/|to|bis|a|à|\.\.\.?|…|÷))`)
)

var perVacuum = map[string]quantity.Pressure{
	"%": quantity.Bar / 100, "bar": quantity.Bar, "mbar": quantity.Bar / 1000, "kpa": quantity.Bar / 100, "inhg": 3386.389, "mmhg": 133.322, "mwc": 9806.65, "mws": 9806.65, "mce": 9806.65, "psi": quantity.PSI,
}

// mostVacuum is the most vacuum there is at sea level, with the rounding of shops: what is more is another figure of the line.
const mostVacuum = 1.05 * quantity.Bar

// liftForm is a vacuum as the height that water is lifted by.
var liftForm = pattern.New(`(?i)(?:suction (?:lift|head|height)|saughöhe|hauteur d['’ ]aspiration|altezza d['’i ]+aspirazione|altura de aspiración|altura de aspiração|zuighoogte|sughöjd|sugehøjde|sugehøyde)[^0-9,;]{0,10}([0-9]+(?:[.,][0-9]+)?)\s*m(?:[^\pL0-9]|$)`)

// vacuumIn gives the least vacuum that a text says; 0 for none.
func vacuumIn(text string) quantity.Pressure {
	var least quantity.Pressure
	for _, form := range []*pattern.Pattern{vacuumBefore, vacuumBehind, vacuumMinus} {
		for _, m := range form.FindAllStringSubmatch(text, -1) {
			unit, ok := perVacuum[strings.ToLower(strings.NewReplacer(" ", "", ".", "").Replace(m[2]))]
			if !ok {
				unit = quantity.Bar
			}
			if v := quantity.Pressure(decimal(m[1])) * unit; v <= mostVacuum && (least == 0 || v < least) {
				least = v
			}
		}
	}
	if m := liftForm.FindStringSubmatch(text); m != nil {
		if v := quantity.Pressure(decimal(m[1])) * perVacuum["mwc"]; least == 0 || v < least {
			least = v
		}
	}
	return least
}
