package main

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	qty "handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/identify"
)

// read makes figures of the flags.
func (f *figures) read() (identify.Measured, error) {
	m := identify.Measured{Country: f.country, Context: f.context}
	if f.od != "" && f.id != "" {
		return m, fmt.Errorf("--od and --id were both given: a thread is either a male, measured outside, or a female, measured inside")
	}
	if f.tpi != "" && f.pitch != "" {
		return m, fmt.Errorf("--tpi and --pitch were both given: they are one figure, so give one")
	}
	if f.edge != "" && f.taper != "" {
		return m, fmt.Errorf("--edge and --taper were both given: they are one answer, so give one")
	}
	if (f.turns == "") != (f.in == "") {
		return m, fmt.Errorf("--turns and --in go together: how many turns, and into which known part, such as --turns 5 --in 'G 1/2 female'")
	}
	for _, step := range []struct {
		flag, text string
		read       func(*identify.Measured, string) error
	}{
		{"--od", f.od, func(m *identify.Measured, s string) error { return readDiameter(m, threads.Male, s) }},
		{"--id", f.id, func(m *identify.Measured, s string) error { return readDiameter(m, threads.Female, s) }},
		{"--tpi", f.tpi, readCount},
		{"--pitch", f.pitch, readPitch},
		{"--taper", f.taper, readTaper},
		{"--angle", f.angle, readFlank},
		{"--seat", f.seat, readSeat},
		{"--edge", f.edge, readEdge},
		{"--cone", f.cone, func(m *identify.Measured, s string) error { return readYes(&m.Cone, s) }},
		{"--groove", f.groove, func(m *identify.Measured, s string) error { return readYes(&m.Groove, s) }},
		{"--turns", f.turns, func(m *identify.Measured, s string) error { return readTurns(&m.Turns, s) }},
		{"--in", f.in, func(m *identify.Measured, s string) error {
			end, err := knownPart(s)
			m.Turns.In = end
			return err
		}},
		{"--slides", f.slides, func(m *identify.Measured, s string) error {
			end, err := knownPart(s)
			m.Slides = &end
			return err
		}},
	} {
		if step.text == "" {
			continue
		}
		if err := step.read(&m, step.text); err != nil {
			return m, fmt.Errorf("%s: %w", step.flag, err)
		}
	}
	return m, nil
}

// readYes reads yes or no; unknown leaves it open.
func readYes(into *identify.Answer, text string) error {
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

// readTurns reads a count of turns by hand.
func readTurns(into *identify.Turned, text string) error {
	bare, _ := unsure(text)
	bare = strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(bare, "s"), "turn"))
	v, err := count(bare)
	if zero := strings.TrimSpace(bare) == "0"; err != nil && !zero {
		return fmt.Errorf("%q is no count of turns: write 5, 2.5 or 'about 3'", text)
	}
	into.Turns, into.Known = threads.Turns(v), true
	return nil
}

// knownPart reads the end of a part that a thread was tried in: one reading, with its sex.
func knownPart(text string) (threads.End, error) {
	r, err := oneEnd(text)
	if err != nil {
		return threads.End{}, err
	}
	if len(r.Candidates) != 1 || r.Candidates[0].Form == nil || r.Candidates[0].Sex == threads.NoSex {
		return threads.End{}, fmt.Errorf("%q is not one known part: write its thread and its sex, such as 'G 1/2 female'", text)
	}
	return r.Candidates[0], nil
}

// roughWords are the ways to say that a figure is not sure.
var roughWords = regexp.MustCompile(`(?i)\b(about|around|roughly|approx(imately)?\.?|circa|ca\.?|or so|maybe|perhaps)(\s|$)|[~?≈]`)

// unsure takes the doubt out of a text and reports whether there was any.
func unsure(text string) (string, bool) {
	bare := strings.TrimSpace(roughWords.ReplaceAllString(text, " "))
	return strings.Join(strings.Fields(bare), " "), bare != strings.TrimSpace(text)
}

func readDiameter(m *identify.Measured, sex threads.Sex, text string) error {
	bare, _ := unsure(text)
	d, err := qty.ParseLength(bare)
	if err != nil {
		return err
	}
	m.Sex, m.Diameter = sex, identify.Gauge(d.Millimetres())
	return nil
}

// countWords may follow a count of threads.
var countWords = regexp.MustCompile(`(?i)\s*(tpi|threads?)?\s*(an|per|/|to the)?\s*(inch|in\.?|")?$`)

// fewestThreads is the least count that is taken for threads an inch.
const fewestThreads = 5

// countRange is a count between two figures: "13 to 14", "13-14".
var countRange = regexp.MustCompile(`^(\S+?)\s*(?:-|–|to|or)\s*(\S+)$`)

func readCount(m *identify.Measured, text string) error {
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
		return fmt.Errorf("%q threads an inch is coarser than any pipe or port thread: if it is a pitch, write it with its unit, such as '%s mm'", text, trimmed(tpi))
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

func readPitch(m *identify.Measured, text string) error {
	bare, rough := unsure(text)
	p, err := qty.ParseLength(bare)
	if err != nil {
		return err
	}
	m.Pitch = identify.Gauge(p.Millimetres())
	m.Pitch.Rough = rough
	return nil
}

func readTaper(m *identify.Measured, text string) error {
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

func readFlank(m *identify.Measured, text string) error {
	v, err := degrees(text)
	if err != nil {
		return fmt.Errorf("%q is no angle in degrees: write 55 or 60", text)
	}
	m.Flank = identify.Gauge(v)
	return nil
}

func readSeat(m *identify.Measured, text string) error {
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
		return fmt.Errorf("no seat has a cone of %s degrees: they have 24, 30, 37, 45 or 60, or twice or half of that across", trimmed(v))
	}
	m.Nose = n
	return nil
}
