package facts

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/stages"
	"handtight/bom/workshop"
	"handtight/pressure/quantity"
)

// Boat is what is done aboard with what was bought: hoses cut, joints tested.
type Boat struct {
	Hoses []HoseRow
	Test  []TestStage
}

// HoseRow is one hose to cut or to have made up.
type HoseRow struct {
	Name, From, To string
	Planned, Cut   string // "420 mm"; "" where it is not known, or not cut
	How            string // why that long, or why it is not cut
	Bend           string // least radius, and by what it is known
	Needs          string
}

// TestStage is one stage of the leak test of a plant.
type TestStage struct {
	Plant, Name, How string
	Number           int
	Stands           string // how valves and pumps stand, one after the other
	First            string // joints that get wet for the first time: "J1, J4 to J9"
	Notes            string // pressure steps, what to look at, what must not be done
	Blocked          bool   // some part sees more than it holds: the stage is not to be made
}

// BoatOf lays out the hoses and the leak test of a build.
func BoatOf(sys *bom.System) *Boat {
	b := &Boat{}
	for _, h := range workshop.Hoses(sys) {
		row := HoseRow{Name: h.Unit.Name, From: h.From, To: h.To, Planned: millimetres(h.Planned), Cut: millimetres(h.Cut), How: h.HowCut, Needs: strings.Join(h.Needs, ", ")}
		if h.Radius != nil {
			row.Bend = millimetres(h.Radius) + ", "
		}
		row.Bend += h.RadiusWhy
		if h.Short {
			row.Bend += fmt.Sprintf("; TOO SHORT for its bend: %.0f mm at the least", math.Ceil(h.Least.Millimetres()))
		}
		b.Hoses = append(b.Hoses, row)
	}
	for _, sheet := range stages.Of(sys) {
		for _, s := range sheet.Stages {
			b.Test = append(b.Test, stageOf(&sheet, &s))
		}
		if len(sheet.Dry) > 0 {
			b.Test = append(b.Test, TestStage{Plant: sheet.Plant, Number: -1, Name: "wetted by no stage", First: spanOf(sheet.Dry),
				How: "Look at these by hand under way, from a distance and without pressure on them."})
		}
	}
	return b
}

func stageOf(sheet *stages.Sheet, s *stages.Stage) TestStage {
	row := TestStage{Plant: sheet.Plant, Number: s.Number, Name: s.Name, How: s.How, First: spanOf(s.First), Blocked: len(s.Blocked) > 0}
	var stands, notes []string
	for _, p := range s.Positions {
		stands = append(stands, p.Unit.Name+" "+p.Stands)
	}
	for _, b := range s.Blocked {
		notes = append(notes, "NOT TO BE MADE: "+b)
	}
	var steps []string
	for _, st := range s.Steps {
		steps = append(steps, fmt.Sprintf("%s for %d min", st.Pressure, st.Hold))
	}
	if len(steps) > 0 {
		notes = append(notes, "Steps: "+strings.Join(steps, ", "))
	}
	row.Stands, row.Notes = strings.Join(stands, ", "), strings.Join(append(notes, s.Notes...), "\n")
	return row
}

// spanOf names joints, those in a row as one: "J1, J4 to J9".
func spanOf(list []*graph.Joint) string {
	var out []string
	for i := 0; i < len(list); {
		k := i
		for k+1 < len(list) && list[k+1].Number == list[k].Number+1 {
			k++
		}
		word := "J" + strconv.Itoa(list[i].Number)
		switch {
		case k > i+1:
			word += " to J" + strconv.Itoa(list[k].Number)
		case k == i+1:
			word += ", J" + strconv.Itoa(list[k].Number)
		}
		out = append(out, word)
		i = k + 1
	}
	return strings.Join(out, ", ")
}

func millimetres(l *quantity.Length) string {
	if l == nil {
		return ""
	}
	return quantity.Significant(l.Millimetres(), 4) + " mm"
}
