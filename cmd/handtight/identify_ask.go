package main

import (
	"bufio"
	"fmt"
	"strings"

	"handtight/threads"
	"handtight/threads/identify"
)

// hints say how each question may be answered.
var hints = map[identify.Ask]string{
	identify.AskDiameter: "`od 13.1 mm` for the outside of a male, `id 11.6 mm` for the inside of a female",
	identify.AskPitch:    "`19`, `about 14`, or `1.5 mm`",
	identify.AskTaper:    "`yes` or `no`",
	identify.AskNose:     "the cone's angle, such as `37`, or `plain`, `face-ring`, `stud-ring`",
	identify.AskFlank:    "`55` or `60`",
}

// interview asks for one figure after the other, the most telling first, until
// nothing more would help, the answers end, or q. An empty answer passes over a
// question. With --json the questions go to the error stream.
func (a *app) interview(m *identify.Measured) error {
	screen := *a.ui
	if a.json {
		screen.out = a.ui.errOut
	}
	screen.fold("", "Answer what you can measure; Enter passes over a question, q ends.")
	lines := bufio.NewScanner(a.in)
	for {
		id, err := identify.Identify(*m)
		if err != nil {
			return err
		}
		if id.Next.Ask == 0 {
			screen.line("")
			return nil
		}
		screen.line("")
		if m.Diameter.Known || m.Pitch.Known {
			screen.fold("  so far", soFar(id.Candidates))
		}
		screen.fold("  ask", id.Next.Text)
		screen.fold("", hints[id.Next.Ask])
		if !lines.Scan() {
			screen.line("")
			return lines.Err()
		}
		text := strings.TrimSpace(lines.Text())
		switch strings.ToLower(text) {
		case "q", "quit":
			screen.line("")
			return nil
		case "":
			*m = m.Cannot(id.Next.Ask)
			continue
		}
		if err := answer(m, id.Next.Ask, text); err != nil {
			screen.fold("  not so", err.Error())
		}
	}
}

// answer takes the answer to a question; where it cannot be, m is as it was.
func answer(m *identify.Measured, ask identify.Ask, text string) error {
	next := *m
	var err error
	switch ask {
	case identify.AskDiameter:
		err = readSide(&next, text)
	case identify.AskPitch:
		if err = readPitch(&next, text); err != nil {
			err = readCount(&next, text)
		}
	case identify.AskTaper:
		err = readTaper(&next, text)
	case identify.AskNose:
		err = readSeat(&next, text)
	default:
		err = readFlank(&next, text)
	}
	if err == nil {
		_, err = identify.Identify(next)
	}
	if err == nil {
		*m = next
	}
	return err
}

// readSide reads a diameter with the side that it was taken on.
func readSide(m *identify.Measured, text string) error {
	side, rest, _ := strings.Cut(text, " ")
	switch strings.ToLower(side) {
	case "od", "outside", "male":
		return readDiameter(m, threads.Male, rest)
	case "id", "inside", "female":
		return readDiameter(m, threads.Female, rest)
	}
	return fmt.Errorf("%q does not say which side was measured: write %s", text, hints[identify.AskDiameter])
}

// soFar names the three likeliest.
func soFar(list []identify.Candidate) string {
	var words []string
	for _, c := range list[:min(3, len(list))] {
		words = append(words, fmt.Sprintf("%s (%s)", c.Form.Designation, percent(c.Probability)))
	}
	return strings.Join(words, ", ")
}
