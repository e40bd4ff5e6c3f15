package joint

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/threads"
	"handtight/threads/makeup"
)

// Question is one thing to ask before buying.
type Question struct {
	Port   string // "elbow.a"; all units of an item share it
	Ask    string
	Joints int   // how many joints the answer settles
	At     []int // their numbers
}

// Questions gathers what the words leave open, by port of an item, those that
// settle most joints first.
func Questions(s *graph.Graph) []Question {
	at := map[*build.Port]int{}
	var out []Question
	for i := range s.Ports {
		n := &s.Ports[i]
		ask := asks(n.Port, n.Unit.Item)
		if ask == "" || n.Joint == nil {
			continue
		}
		k, seen := at[n.Port]
		if !seen {
			k = len(out)
			at[n.Port] = k
			out = append(out, Question{Port: n.Unit.Item.ID + "." + n.Port.Name, Ask: ask})
		}
		out[k].Joints++
		out[k].At = append(out[k].At, n.Joint.Number)
	}
	out = seatQuestions(s, at, out)
	slices.SortStableFunc(out, func(a, b Question) int { return b.Joints - a.Joints })
	return out
}

// seatQuestions adds what a joint leaves open that no port does by itself: the seat
// of a swivel, the nose of a coupling. It is asked of the end that turns, else of the
// first; a port that is asked already is not asked twice.
func seatQuestions(s *graph.Graph, at map[*build.Port]int, out []Question) []Question {
	for _, j := range s.Joints {
		ask := ""
		if j.Known && !j.Open {
			ask = j.Mating.Question()
		}
		if ask == "" {
			continue
		}
		n := &s.Ports[j.A]
		if j.Mating.B.Swivel {
			n = &s.Ports[j.B]
		}
		k, seen := at[n.Port]
		switch {
		case seen && out[k].Ask != ask:
			continue
		case !seen:
			k = len(out)
			at[n.Port] = k
			out = append(out, Question{Port: n.Unit.Item.ID + "." + n.Port.Name, Ask: ask})
		}
		out[k].Joints++
		out[k].At = append(out[k].At, j.Number)
	}
	return out
}

// asks is the question that a port leaves open; "" if none.
func asks(p *build.Port, it *build.Item) string {
	switch {
	case p.End.Question != "":
		return p.End.Question
	case it.Kind.Boats && !it.Kind.Is(catalog.Supplies):
		return ""
	case !p.Said:
		return "Which thread or hose size is it, and is it male or female?"
	case len(p.End.Candidates) == 0:
		return fmt.Sprintf("What end is %q? Ask for the standard, the size and the sex.", p.Text)
	}
	return ""
}

// MakeupText says how a joint is made, in one line; "" where it does not hold.
func MakeupText(s *graph.Graph, j *graph.Joint) string {
	if !j.Known || j.Mating.Verdict > threads.LowPressureOnly {
		return ""
	}
	switch Clamps(s, j) {
	case 1:
		return "one clamp behind the first ridge of the tail"
	case 2:
		return "two clamps, their screws on opposite sides"
	}
	full := makeup.Of(&j.Mating)
	mk := full.ForMetals(s.Ports[j.A].Unit.Item.Material, s.Ports[j.B].Unit.Item.Material)
	if (full.Torque.Known || full.TurnsPast.Known) && !mk.Torque.Known && !mk.TurnsPast.Known {
		return mk.String() + "; snug, then about a quarter turn (common practice)"
	}
	return mk.String()
}

// MakeupCare says what else to mind at a threaded joint: which part to hold, when to
// stop, whether it may be turned back, how long the sealant cures; "" where nothing is.
func MakeupCare(s *graph.Graph, j *graph.Joint) string {
	if !j.Known || j.Mating.Verdict > threads.LowPressureOnly || Clamps(s, j) > 0 {
		return ""
	}
	mk := makeup.Of(&j.Mating)
	hold, back := "", ""
	if mk.Hold != "" {
		hold = "Hold " + mk.Hold
	}
	if !mk.TurnBack {
		back = "Never turn it back to line something up"
	}
	var out []string
	for _, text := range []string{hold, mk.Feel, back, mk.Cure} {
		if text != "" {
			out = append(out, strings.ToUpper(text[:1])+text[1:])
		}
	}
	return strings.Join(out, ". ")
}

// Clamps is how many clamps a hose joint takes: two below the waterline where its
// tail is long enough, else one; none for a joint without a hose.
func Clamps(s *graph.Graph, j *graph.Joint) int {
	count := 0
	for _, p := range []int{j.A, j.B} {
		e := s.Ports[p].Port.End.Candidates
		if len(e) == 0 || e[0].Family != threads.Barb && e[0].Family != threads.Bore {
			return 0
		}
		if e[0].Family == threads.Barb {
			count = 1
			if e[0].Long && j.Run.Below {
				count = 2
			}
		}
	}
	return count
}
