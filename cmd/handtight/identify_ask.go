package main

import (
	"bufio"
	"fmt"
	"math"
	"strings"

	"handtight/threads"
	"handtight/threads/card"
	"handtight/threads/identify"
	"handtight/threads/identify/measure"
)

// step is one question of the talk: a measurement, or one of those that stand before.
type step struct {
	ask  identify.Ask // 0 for the side and the country
	text string
	hint string // how it may be answered
	help string // for `?`: how it is done
	read func(*identify.Measured, string) error
}

const sideHint = "`outside` or `inside`"

var sideStep = step{
	text: "Is the thread on the outside of the part (male), or on its inside (female)?",
	hint: sideHint,
	help: "A male thread goes into another part; a female one takes it. A swivel nut is female, whatever it hangs on.",
	read: readSide,
}

var countryStep = step{
	text: "Where was the part bought or made?",
	hint: "a country, such as `NZ` or `Germany`",
	help: "Shops of one country sell mostly one standard: it weighs the answer and decides nothing alone.",
	read: func(m *identify.Measured, text string) error { m.Country = text; return nil },
}

// steps are the measurements, by what is asked for.
var steps = map[identify.Ask]step{
	identify.AskDiameter: {
		hint: "`13.1 mm` or `0.518 in`",
		help: "Across the crests, square to the axis: the outer jaws over a male, the inner jaws into a female. Clean off paint and tape; on a taper, at a whole thread and not at the run-out.",
		read: func(m *identify.Measured, text string) error { return measure.Diameter(m, m.Sex, text) },
	},
	identify.AskPitch: {
		hint: "`19`, `about 14`, or `1.5 mm`",
		help: "The leaf of a pitch gauge that shows no light; without a gauge, lay a rule along the crests and count the threads of one inch, or of 10 mm.",
		read: func(m *identify.Measured, text string) error {
			if err := measure.Pitch(m, text); err == nil {
				return nil
			}
			return measure.Count(m, text)
		},
	},
	identify.AskTaper: {
		hint: "`yes` if it tapers, `no` if it is parallel; `rocks` or `lies flat` of a straight edge",
		help: "Lay a straight edge along the crests of one side and look along the axis: on a parallel thread both sides run alike; on a taper the edge leans, one millimetre in sixteen.",
		read: readEdge,
	},
	identify.AskNose: {
		hint: "the cone's angle, such as `37`, or `plain`, `face-ring`, `stud-ring`",
		help: "Of a male look at its end, of a female at the bottom: a cone, an O-ring in the flat face, an O-ring behind the thread or a chamfer for it, or nothing of these.",
		read: measure.Seat,
	},
	identify.AskFlank: {
		hint: "`55` or `60`",
		help: "A profile gauge held in the thread against the light: British pipe threads have 55 degrees, American and metric ones 60.",
		read: func(m *identify.Measured, text string) error {
			if err := measure.Flank(m, text); err != nil {
				return err
			}
			for _, flank := range []float64{55, 60, 80} {
				if math.Abs(m.Flank.Value-flank) <= flankSlip {
					return nil
				}
			}
			return fmt.Errorf("%q is no angle between the flanks of a thread: they have 55 or 60 degrees, and 80 on cable glands", text)
		},
	},
}

// flankSlip is how far an answer may lie from an angle that threads have, in degrees (a judgement).
const flankSlip = 4

// nextStep is the question after what is known: the side first, then its diameter and
// the country, then whatever tells most. ok is false when nothing more would help.
func nextStep(m *identify.Measured, next identify.Question, passed map[string]bool) (step, bool) {
	switch {
	case m.Sex == threads.NoSex && !passed[sideStep.text]:
		return sideStep, true
	case m.Sex != threads.NoSex && !m.Diameter.Known && !passed["diameter"]:
		s := steps[identify.AskDiameter]
		s.ask, s.text = identify.AskDiameter, "What is the diameter across the crests, "+map[threads.Sex]string{threads.Male: "outside", threads.Female: "inside"}[m.Sex]+"?"
		return s, true
	case m.Country == "" && !passed[countryStep.text]:
		return countryStep, true
	case next.Ask == 0:
		return step{}, false
	}
	s := steps[next.Ask]
	s.ask, s.text = next.Ask, next.Text
	return s, true
}

// said is what the talk goes back to on `<`.
type said struct {
	m      identify.Measured
	passed map[string]bool
}

// interview asks for one figure after the other until nothing more would help, the
// answers end, or q. An empty answer or "don't know" passes over a question, `?`
// explains it, `<` goes back to the one before. An answer counts for its own question
// only. With --json the questions go to the error stream.
func (a *app) interview(m *identify.Measured) error {
	screen := *a.ui
	if a.json {
		screen.out = a.ui.errOut
	}
	screen.fold("", "Answer what you can measure. Enter or `don't know` passes over a question, `?` explains it, `<` goes back, q ends.")
	lines := bufio.NewScanner(a.in)
	passed := map[string]bool{}
	var before []said
	for {
		id, err := identify.Identify(*m)
		if err != nil {
			return err
		}
		s, more := nextStep(m, id.Next, passed)
		if !more {
			screen.line("")
			return nil
		}
		screen.line("")
		if m.Diameter.Known || m.Pitch.Known {
			screen.fold("  so far", soFar(&id))
		}
		screen.fold("  ask", s.text)
		screen.fold("", s.hint)
		if !lines.Scan() {
			screen.line("")
			return lines.Err()
		}
		text := strings.TrimSpace(lines.Text())
		switch strings.ToLower(text) {
		case "q", "quit":
			screen.line("")
			return nil
		case "?", "help":
			screen.fold("  how", s.help)
			continue
		case "<", "back":
			if len(before) == 0 {
				screen.fold("  back", "this is the first question")
				continue
			}
			last := before[len(before)-1]
			before, *m, passed = before[:len(before)-1], last.m, last.passed
			continue
		}
		was := said{*m, copied(passed)}
		if dontKnow[strings.ToLower(strings.TrimRight(text, ".!"))] {
			pass(m, s, passed)
			before = append(before, was)
			continue
		}
		if err := answer(m, s, text); err != nil {
			screen.fold("  not so", err.Error())
			continue
		}
		before = append(before, was)
	}
}

// dontKnow are the ways to say that a question cannot be answered.
var dontKnow = map[string]bool{
	"": true, "don't know": true, "dont know": true, "do not know": true, "not known": true, "unknown": true, "no idea": true, "pass": true, "skip": true, "-": true,
}

func pass(m *identify.Measured, s step, passed map[string]bool) {
	if s.ask == 0 {
		passed[s.text] = true
		if s.text == sideStep.text {
			*m = m.Cannot(identify.AskDiameter) // a diameter says nothing without its side
		}
		return
	}
	if s.ask == identify.AskDiameter {
		passed["diameter"] = true
	}
	*m = m.Cannot(s.ask)
}

func copied(m map[string]bool) map[string]bool {
	out := map[string]bool{}
	for k, v := range m {
		out[k] = v
	}
	return out
}

// answer takes the answer to a question; where it cannot be, m is as it was.
func answer(m *identify.Measured, s step, text string) error {
	next := *m
	err := s.read(&next, text)
	if err == nil {
		_, err = identify.Identify(next)
	}
	if err == nil {
		*m = next
	}
	return err
}

// readSide reads outside or inside, and takes the diameter too where it stands behind.
func readSide(m *identify.Measured, text string) error {
	side, rest, with := strings.Cut(text, " ")
	switch strings.ToLower(side) {
	case "od", "outside", "male", "m", "out":
		m.Sex = threads.Male
	case "id", "inside", "female", "f", "in":
		m.Sex = threads.Female
	default:
		return fmt.Errorf("%q does not say which side the thread is on: write %s", text, sideHint)
	}
	if with {
		return measure.Diameter(m, m.Sex, rest)
	}
	return nil
}

// readEdge reads whether a thread tapers, or what a straight edge does on its crests.
func readEdge(m *identify.Measured, text string) error {
	switch strings.ToLower(strings.TrimSpace(text)) {
	case "rocks", "it rocks", "leans":
		m.Taper = identify.Tapered
		return nil
	case "flat", "lies flat", "does not rock":
		m.Taper = identify.NoTaper
		return nil
	}
	return measure.Taper(m, text)
}

// soFar names the three likeliest threads, one that is shared once.
func soFar(id *identify.Identification) string {
	var words []string
	list := id.Threads()
	for _, t := range list[:min(3, len(list))] {
		words = append(words, fmt.Sprintf("%s (%s)", shared(t), percent(t.Probability)))
	}
	return strings.Join(words, ", ")
}

// shared names the candidates of one thread: "9/16-18 JIC -6 or 9/16-18 ORB -6".
func shared(t identify.Thread) string {
	var names []string
	for _, c := range t.Candidates {
		if c.Probability >= 0.05*t.Probability {
			names = append(names, c.Form.Designation)
		}
	}
	return strings.Join(names, " or ")
}

// printFound ends the talk: what to buy to try the best on, and its card.
func (a *app) printFound(id *identify.Identification) {
	if id.NothingFits() || len(id.Candidates) == 0 {
		return
	}
	best := id.Candidates[0]
	c, ok := card.Of(threads.Threaded(best.Form, best.Sex))
	if !ok || len(c.Mates) == 0 {
		return
	}
	m := c.Mates[0]
	feel := "it should run by hand to its face, without wobble"
	if m.Hand.Known {
		feel = "by hand it should go in " + m.HandWords()
	}
	a.ui.fold("  try", fmt.Sprintf("Buy or borrow a known %s and screw the two together dry: %s. Hard before that, or loose: it is not this thread.", m.B, feel))
	a.ui.line("")
	a.printCard(c)
}
