package bom

import (
	"fmt"
	"slices"

	"handtight/threads"
)

// Question is one thing to ask before buying.
type Question struct {
	Port   string // "elbow.a"; all units of an item share it
	Ask    string
	Joints int // how many joints the answer settles
}

// Questions gathers what the words leave open, by port of an item, those that
// settle most joints first.
func (s *System) Questions() []Question {
	at := map[*Port]int{}
	var out []Question
	for i := range s.Ports {
		n := &s.Ports[i]
		ask := n.Port.asks(n.Unit.Item)
		if ask == "" || n.Joint == nil && n.Port.Said == false {
			continue
		}
		k, seen := at[n.Port]
		if !seen {
			k = len(out)
			at[n.Port] = k
			out = append(out, Question{Port: n.Unit.Item.ID + "." + n.Port.Name, Ask: ask})
		}
		if n.Joint != nil {
			out[k].Joints++
		}
	}
	slices.SortStableFunc(out, func(a, b Question) int { return b.Joints - a.Joints })
	return out
}

// asks is the question that a port leaves open; "" if none.
func (p *Port) asks(it *Item) string {
	switch {
	case p.End.Question != "":
		return p.End.Question
	case it.Kind.Boats && it.Kind.Name != "house supply":
		return ""
	case !p.Said:
		return fmt.Sprintf("What end has the %s's `%s` port: which thread or hose size, and is it male or female?", it.Kind.Name, p.Name)
	case len(p.End.Candidates) == 0:
		return fmt.Sprintf("What end is %q? Ask for the standard, the size and the sex.", p.Text)
	}
	return ""
}

// MakeupText says how a joint is made, in one line; "" where it does not hold.
func (s *System) MakeupText(j *Joint) string {
	if !j.Known || j.Mating.Verdict > threads.LowPressureOnly {
		return ""
	}
	mk := j.Mating.Makeup()
	text := mk.String()
	if s.Clamps(j) == 2 {
		text = "two clamps, screws on opposite sides; " + text
	}
	return text
}
