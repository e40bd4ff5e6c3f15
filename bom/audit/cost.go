package audit

import (
	"embed"
	"strconv"
	"sync"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/pressure/rows"
)

//go:embed table/cost.csv
var tables embed.FS

// Judgement is one figure of table/cost.csv.
type Judgement struct {
	Name  string
	Value float64
	Words string
	Note  string
}

// Judgements lists the figures of table/cost.csv in its order.
var Judgements = sync.OnceValue(func() []Judgement {
	var out []Judgement
	for _, r := range rows.Each[map[string]string]("audit", tables, "table/cost.csv") {
		v, err := strconv.ParseFloat(r["cost"], 64)
		if err != nil {
			panic("audit: " + err.Error())
		}
		out = append(out, Judgement{r["name"], v, r["words"], r["note"]})
	}
	return out
})

func judgement(name string) Judgement {
	for _, j := range Judgements() {
		if j.Name == name {
			return j
		}
	}
	panic("audit: no judgement " + name)
}

func cost(name string) float64 { return judgement(name).Value }

// harmOf is what it costs if a joint is bad where it stands, and what happens.
func harmOf(s *bom.System, j *graph.Joint) Judgement {
	load := s.States.PortLoad(j.A)
	worst, _ := load.Worst()
	switch {
	case s.Segments.SegmentOf(j.A).High():
		return judgement("high")
	case j.Run.Below:
		return judgement("sea")
	case s.Waters.Product(j.A):
		return judgement("product")
	case worst > 0 || load.Low >= 0:
		return judgement("pressed")
	}
	return judgement("suction")
}

// replacing is what it costs to put a right pair in a joint's place: it is to be opened for that.
func replacing(j *graph.Joint) float64 {
	return cost("replace") + opening(j) - cost("measure")
}

// opening is what it costs to open a joint and measure.
func opening(j *graph.Joint) float64 {
	c := cost("measure")
	if j.Note != nil && j.Note.Access != "easy" && j.Note.Access != "" {
		c *= cost(j.Note.Access)
	}
	return c
}
