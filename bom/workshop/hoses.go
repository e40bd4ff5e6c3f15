package workshop

import (
	"fmt"
	"math"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// Hose is one row of the schedule.
type Hose struct {
	Unit       *graph.Unit
	From, To   string           // joint, port that it meets, and that end: "J22, hp-tee.b, 3/8-18 NPT female"
	EndA, EndB string           // its own ends
	Run        string           // the run that it lies in
	Planned    *quantity.Length // as the build says; nil if it does not
	Cut        *quantity.Length // to cut it at; nil where it is not cut
	HowCut     string           // why that long, or why it is not cut
	Radius     *quantity.Length // least bend radius; nil where no table has it
	RadiusWhy  string           // its source, or whom to ask
	Least      *quantity.Length // what its bend with both straight ends takes; nil where its angle or radius is not known
	Needs      []string         // bore, rating, vacuum, drinking water
	Short      bool             // shorter than Least
}

// Allowances for cutting, judgements: the larger of a length for squaring the end and a
// share of the whole, then up to the next round figure.
const (
	squaring   = 20 * quantity.Millimetre
	slack      = 0.02
	roundTo    = 10 * quantity.Millimetre
	straighten = 1 // outside diameters of hose that stay straight at each end
)

// TooShort lists the hoses that are shorter than the way that they are to go, in the order in which they are placed.
func TooShort(sys *bom.System) []Hose {
	var out []Hose
	for _, u := range sys.Graph.Units {
		if !u.Item.IsHose() || u.Item.Bend == 0 {
			continue
		}
		h := Hose{Unit: u, Planned: u.Item.Length}
		if h.bend(); h.Short {
			out = append(out, h)
		}
	}
	return out
}

// Hoses lists every hose of a build in the order in which it is placed.
func Hoses(sys *bom.System) []Hose {
	var out []Hose
	for _, u := range sys.Graph.Units {
		if u.Item.IsHose() {
			out = append(out, hose(sys, u))
		}
	}
	return out
}

func hose(sys *bom.System, u *graph.Unit) Hose {
	it := u.Item
	h := Hose{Unit: u, Planned: it.Length}
	for i := range it.Ports {
		n := sys.Graph.Port(u, i)
		end := "open"
		if j := n.Joint; j != nil {
			far := &sys.Graph.Ports[j.A+j.B-(u.First+i)]
			end = fmt.Sprintf("J%d, %s, %s", j.Number, far.Name(), far.Port.Words())
			h.Run = j.Run.Name
		}
		if i == 0 {
			h.From, h.EndA = end, it.Ports[i].Words()
		} else {
			h.To, h.EndB = end, it.Ports[i].Words()
		}
	}
	h.cut(sys)
	h.bend()
	h.needs(sys)
	return h
}

// cut says how long to cut a hose: those made up with ends are not cut, and tube that is
// pushed in is longer by both depths, which only its fittings' maker knows.
func (h *Hose) cut(sys *bom.System) {
	it := h.Unit.Item
	switch {
	case it.Of == "":
		h.HowCut = "made up: order it between its sealing faces, and say the angle between elbow ends"
		return
	case h.Planned == nil:
		h.HowCut = "its length is not in the build: measure"
		return
	}
	long := *h.Planned
	if it.Outside != nil {
		h.HowCut = "plus the depth that it is pushed into each fitting: measure, or ask the maker; cut square and without a burr"
		h.Cut = &long
		return
	}
	cut := roundUp(long + max(squaring, long*slack))
	h.Cut = &cut
	h.HowCut = "planned length and an allowance for squaring (a judgement)"
}

func roundUp(l quantity.Length) quantity.Length {
	return roundTo * quantity.Length(math.Ceil(float64(l/roundTo)-1e-9))
}

// bend says how tight a hose may be bent, by its data sheet or its standard, and what length
// its way takes then: the bend's own arc, and at each end one outside diameter that stays straight.
func (h *Hose) bend() {
	it := h.Unit.Item
	if it.BendRadius != nil {
		h.Radius, h.RadiusWhy = it.BendRadius, "as the build says"
	} else if it.Spec != "" && it.Bore != nil {
		if spec, ok := pressure.HoseSpec(it.Spec); ok {
			if r, known := pressure.MinBend(spec, *it.Bore); known {
				h.Radius, h.RadiusWhy = &r, "the largest that the tables of "+it.Spec+" print for this bore"
			}
		}
	}
	if h.Radius == nil {
		h.RadiusWhy = "not in the tables: ask the maker"
		return
	}
	outside := h.outside()
	if outside == nil || h.Planned == nil || it.Bend == 0 {
		return
	}
	least := 2*straighten**outside + quantity.Length(float64(it.Bend)*math.Pi/180)*(*h.Radius+*outside/2)
	h.Least = &least
	h.Short = *h.Planned < least
}

// outside is the outside diameter of a hose, where the build says it; else its bore, which
// is less: what is too short by that is too short.
func (h *Hose) outside() *quantity.Length {
	it := h.Unit.Item
	switch {
	case it.Outside != nil:
		return it.Outside
	case it.Bore != nil && it.Wall != nil:
		d := *it.Bore + 2**it.Wall
		return &d
	case it.Bore != nil:
		return it.Bore
	}
	return nil
}

func (h *Hose) needs(sys *bom.System) {
	it := h.Unit.Item
	add := func(format string, args ...any) { h.Needs = append(h.Needs, fmt.Sprintf(format, args...)) }
	switch {
	case it.Outside != nil:
		add("%s outside", millimetres(*it.Outside))
	case it.Bore != nil && it.BoreText != "":
		add("%s bore", it.BoreText)
	case it.Bore != nil:
		add("%s bore", millimetres(*it.Bore))
	}
	load := sys.States.PortLoad(h.Unit.First)
	switch worst, state := load.Worst(); {
	case worst.Unbounded():
		add("what no hose holds: pressure without bound, with %s", state.Cause)
	case worst > 0:
		add("%s bar", quantity.Decimals(worst.Bar(), 2))
	}
	if load.Low < 0 {
		add("stands a vacuum")
	}
	if sys.Waters.Product(h.Unit.First) {
		add("fit for drinking water")
	}
	if it.Spec != "" {
		add("%s", it.Spec)
	}
}

func millimetres(l quantity.Length) string {
	return quantity.Decimals(float64(l/quantity.Millimetre), 2) + " mm"
}
