// Package measure reads what people write of a thread that they measured: "26.2 mm", "14 or so",
// "11 1/2", "yes", "55 deg". Each function puts what it read into an [identify.Measured]; its
// error says what to write instead. A doubt ("about", "~") is kept where it matters.
package measure

import (
	"fmt"
	"strconv"
	"strings"

	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/identify"
)

// Yes reads yes or no; unknown leaves it open.
func Yes(into *identify.Answer, text string) error {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "yes", "y":
		*into = identify.Yes
	case "no", "n":
		*into = identify.No
	case "unknown":
		*into = 0
	default:
		return fmt.Errorf("%q is no answer: write yes, no or unknown", text)
	}
	return nil
}

// faceWords say that a joint ran in until its faces met.
var faceWords = pattern.New(`(?i)^(all the way|to (the|its) face|home)( in)?$`)

// Turns reads a count of turns by hand, or "all the way": until its faces met.
func Turns(into *identify.Turned, text string) error {
	if faceWords.MatchString(strings.TrimSpace(text)) {
		into.Face, into.Known = true, true
		return nil
	}
	bare, _ := unsure(text)
	bare = strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(bare, "s"), "turn"))
	v, err := count(bare)
	if zero := strings.TrimSpace(bare) == "0"; err != nil && !zero {
		return fmt.Errorf("%q is no count of turns: write 5, 2.5, 'about 3' or 'all the way'", text)
	}
	into.Turns, into.Known = threads.Turns(v), true
	return nil
}

// roughWords are the ways to say that a figure is not sure.
var roughWords = pattern.New(`(?i)\b(about|around|roughly|approx(imately)?\.?|circa|ca\.?|or so|maybe|perhaps)(\s|$)|[~?≈]`)

// unsure takes the doubt out of a text and reports whether there was any.
func unsure(text string) (string, bool) {
	bare := strings.TrimSpace(roughWords.ReplaceAllString(text, " "))
	return strings.Join(strings.Fields(bare), " "), bare != strings.TrimSpace(text)
}

// Diameter reads a diameter across the crests, with its unit: outside a male thread, inside a
// female one.
func Diameter(m *identify.Measured, sex threads.Sex, text string) error {
	bare, _ := unsure(text)
	d, err := quantity.ParseLength(bare)
	if err != nil {
		return err
	}
	m.Sex, m.Diameter = sex, identify.Gauge(d.Millimetres())
	return nil
}

// countWords may follow a count of threads.
var countWords = pattern.New(`(?i)\s*(tpi|threads?)?\s*(an|per|/|to the)?\s*(inch|in\.?|")?$`)

// fewestThreads is the least count that is taken for threads an inch.
const fewestThreads = 5

// countRange is a count between two figures: "13 to 14", "13-14".
var countRange = pattern.New(`^(\S+?)\s*(?:-|–|to|or)\s*(\S+)$`)

// Count reads threads an inch: 19, 11.5, "14 or so", "13 to 14".
func Count(m *identify.Measured, text string) error {
	bare, rough := unsure(text)
	bare = strings.TrimSpace(countWords.ReplaceAllString(bare, ""))
	tpi, err := count(bare)
	if pair := countRange.FindStringSubmatch(bare); err != nil && pair != nil {
		low, errLow := count(pair[1])
		high, errHigh := count(pair[2])
		if errLow == nil && errHigh == nil {
			tpi, rough, err = (low+high)/2, true, nil
		}
	}
	if err != nil || tpi <= 0 {
		return fmt.Errorf("%q is no count of threads: write 19, 11.5 or '14 or so'", text)
	}
	if tpi < fewestThreads {
		return fmt.Errorf("%q threads an inch is coarser than any pipe or port thread: if it is a pitch, write it with its unit, such as '%s mm'", text, quantity.Decimals(tpi, 2))
	}
	m.Pitch = identify.Gauge(threads.Inch.Millimetres() / tpi)
	m.Pitch.Rough = rough
	return nil
}

// count reads 14, 11.5, 11,5 and 11 1/2.
func count(text string) (float64, error) {
	if whole, half := strings.CutSuffix(strings.ReplaceAll(text, "½", " 1/2"), " 1/2"); half {
		n, err := strconv.ParseUint(strings.TrimSpace(whole), 10, 8)
		return float64(n) + 0.5, err
	}
	v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
	if err == nil && !(v > 0 && v < 1000) {
		return 0, strconv.ErrRange
	}
	return v, err
}

// Pitch reads a pitch with its unit: "1.5 mm".
func Pitch(m *identify.Measured, text string) error {
	bare, rough := unsure(text)
	p, err := quantity.ParseLength(bare)
	if err != nil {
		return err
	}
	m.Pitch = identify.Gauge(p.Millimetres())
	m.Pitch.Rough = rough
	return nil
}

// Taper reads whether a thread tapers: yes, no or unknown.
func Taper(m *identify.Measured, text string) error {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "yes", "y", "tapered", "taper":
		m.Taper = identify.Tapered
	case "no", "n", "parallel", "straight":
		m.Taper = identify.NoTaper
	case "unknown":
		m.Taper = 0
	default:
		return fmt.Errorf("%q is no answer: write yes, no or unknown", text)
	}
	return nil
}

func degrees(text string) (float64, error) {
	bare, _ := unsure(text)
	bare = strings.ToLower(bare)
	for _, unit := range []string{"degrees", "degree", "deg", "°"} {
		bare = strings.TrimSuffix(bare, unit)
	}
	return count(strings.TrimSpace(bare))
}

// Flank reads the angle between the flanks, in degrees.
func Flank(m *identify.Measured, text string) error {
	v, err := degrees(text)
	if err != nil {
		return fmt.Errorf("%q is no angle in degrees: write 55 or 60", text)
	}
	m.Flank = identify.Gauge(v)
	return nil
}

// Seat reads a nose or a seat by its name, or by the angle of its cone in degrees.
func Seat(m *identify.Measured, text string) error {
	word := strings.ToLower(strings.Join(strings.Fields(text), "-"))
	switch word {
	case "none", "flat", "no":
		word = identify.PlainNose.String()
	case "unknown":
		m.Nose = 0
		return nil
	}
	if n, ok := identify.NoseNamed(word); ok {
		m.Nose = n
		return nil
	}
	v, err := degrees(text)
	if err != nil {
		return fmt.Errorf("%q is no seat: write the cone's angle in degrees, such as 37, or plain, face-ring (an O-ring in the flat face) or stud-ring (an O-ring behind the thread, or its chamfer in a port)", text)
	}
	n, ok := identify.NoseOfCone(v)
	if !ok {
		return fmt.Errorf("no seat has a cone of %s degrees: they have 24, 30, 37, 45 or 60, or twice or half of that across", quantity.Decimals(v, 2))
	}
	m.Nose = n
	return nil
}
