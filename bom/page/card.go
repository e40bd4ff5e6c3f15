package page

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/facts"
	"handtight/bom/stages"
	"handtight/bom/workshop"
	"handtight/pressure/quantity"
)

// Card is what the bench needs to know of one joint.
type Card struct {
	facts.Joint
	High   bool
	Stop   []string // findings that stop it: no make-up then
	Remedy []string
	Stages string // where it is tested: "stage 1, then 5"
	Hand   string // "about 4 turns by hand (2 to 6)"
	Sees   string

	Word     string // the verdict in words
	Spanners string // across flats, of the ends that a table has
}

// cards makes one for every joint, in the order of the runs. Under a stop it shows only
// that and its remedy.
func cards(sys *bom.System, f *facts.Facts, sheets []stages.Sheet) []Card {
	first := map[int]int{}
	pressed := map[int]int{}
	for _, s := range sheets {
		for _, st := range s.Stages {
			for _, j := range st.First {
				first[j.Number] = st.Number
			}
			if len(st.Steps) > 0 {
				for _, j := range s.Joints {
					pressed[j.Number] = st.Number
				}
			}
		}
	}
	stops := map[int][]*facts.Finding{}
	for i := range f.Findings {
		x := &f.Findings[i]
		if x.Severity != "stop" {
			continue
		}
		for _, s := range append([]facts.Subject{x.Subject}, x.Also...) {
			if s.Joint > 0 {
				stops[s.Joint] = append(stops[s.Joint], x)
			}
		}
	}
	high := map[string]bool{}
	for i := range f.Segments {
		if f.Segments[i].High {
			for _, m := range f.Segments[i].Members {
				high[m] = true
			}
		}
	}
	var out []Card
	for i, j := range f.Joints {
		c := Card{Joint: j, High: high[unitOf(j.A)] && high[unitOf(j.B)], Hand: hand(j.Turns), Sees: bar(j.Worst, j.Unbounded)}
		if j.Verdict != nil {
			c.Word = strings.ReplaceAll(*j.Verdict, "-", " ")
		}
		c.Spanners = workshop.Spanners(sys, sys.Graph.Joints[i])
		for _, x := range stops[j.Number] {
			c.Stop = append(c.Stop, x.Reason)
			c.Remedy = append(c.Remedy, x.Remedy)
		}
		if n, ok := first[j.Number]; ok {
			c.Stages = fmt.Sprintf("stage %d", n)
			if last := pressed[j.Number]; last > n {
				c.Stages += fmt.Sprintf(", then %d", last)
			}
		}
		out = append(out, c)
	}
	return out
}

func unitOf(port string) string {
	i := strings.LastIndexByte(port, '.')
	if i < 0 {
		return port
	}
	return port[:i]
}

// hand says how far a joint goes by hand, and where to stop.
func hand(t *facts.Turns) string {
	if t == nil || !t.Loosest.Known || !t.Tightest.Known {
		return ""
	}
	least, most := t.Tightest.Value, t.Loosest.Value
	if least > most {
		least, most = most, least
	}
	return fmt.Sprintf("about %s turns by hand (%s to %s as parts vary)", quantity.Decimals((least+most)/2, 1), quantity.Decimals(least, 1), quantity.Decimals(most, 1))
}

func bar(n facts.Number, unbounded bool) string {
	switch {
	case unbounded || n.Unbounded():
		return "pressure without bound"
	case !n.Known:
		return "not known"
	}
	return quantity.Decimals(n.Value, 1) + " bar"
}
