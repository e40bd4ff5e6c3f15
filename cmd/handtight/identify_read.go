package main

import (
	"fmt"

	"handtight/threads"
	"handtight/threads/identify"
	"handtight/threads/identify/measure"
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
		{"--od", f.od, func(m *identify.Measured, s string) error { return measure.Diameter(m, threads.Male, s) }},
		{"--id", f.id, func(m *identify.Measured, s string) error { return measure.Diameter(m, threads.Female, s) }},
		{"--tpi", f.tpi, measure.Count},
		{"--pitch", f.pitch, measure.Pitch},
		{"--taper", f.taper, measure.Taper},
		{"--angle", f.angle, measure.Flank},
		{"--seat", f.seat, measure.Seat},
		{"--edge", f.edge, readEdge},
		{"--cone", f.cone, func(m *identify.Measured, s string) error { return measure.Yes(&m.Cone, s) }},
		{"--groove", f.groove, func(m *identify.Measured, s string) error { return measure.Yes(&m.Groove, s) }},
		{"--turns", f.turns, func(m *identify.Measured, s string) error { return measure.Turns(&m.Turns, s) }},
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
