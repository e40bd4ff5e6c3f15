package cart

import (
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Says is what the words of a line say of the part, read as a cart is: in the words of any
// language that its tables hold. A figure of 0 and a text of "" are not said.
type Says struct {
	Kind             string // as the trade's table has it; not always one of the catalogue
	Ends             []threads.EndReading
	Material, Class  string
	Spec             string            // hose standard
	Rated            quantity.Pressure // what it may carry
	Scale            quantity.Pressure // full scale of a gauge
	Set              quantity.Pressure // of a relief valve
	Full             quantity.Pressure // at which it passes all its flow
	Cut              quantity.Pressure // at which a pump stops
	Vacuum           quantity.Pressure // that a hose stands, below the air's
	Micron           quantity.Length
	Bore             quantity.Length // of a hose; of a tube its outside
	Length           quantity.Length // of a hose that is made up
	Volts            [2]quantity.Voltage
	FlowFrom, FlowTo quantity.Flow
	Across, Long     float64         // inches, of an element or a vessel: 2.5 x 21
	GripFrom, GripTo quantity.Length // of a clamp
	Carbon           bool
	Bonded, Flat     bool // of a washer
	Outside          bool // Bore is the outside of a tube
}

// Says gives what was read of a line.
func (l *Line) Says() Says {
	f := &l.facts
	s := Says{
		Kind: f.kind, Material: f.material, Class: f.class, Spec: f.spec, Rated: f.rated, Scale: f.scale, Set: f.set, Full: f.full, Cut: f.cut, Vacuum: f.vacuum, Micron: f.micron, Bore: f.bore,
		Length: f.length, Volts: f.volts, FlowFrom: f.flow.from, FlowTo: f.flow.to, Across: f.element.across, Long: f.element.long,
		Bonded: f.traits.has("bonded"), Flat: f.traits.has("flat"),
		GripFrom: f.grips.from, GripTo: f.grips.to, Carbon: f.traits.has("carbon"),
	}
	for i := range f.ends {
		e := &f.ends[i]
		r := threads.EndReading{Words: e.words, Candidates: e.readings, Question: e.question}
		if len(e.readings) > 0 {
			r.Sex, r.Seal, r.Swivel = e.readings[0].Sex, e.readings[0].Seal, e.readings[0].Swivel
		}
		s.Ends = append(s.Ends, r)
	}
	s.Outside = outsideWords.MatchString(l.Text)
	return s
}

// outsideWords are words of a tube that is called by its outside.
var outsideWords = pattern.New(`(?i)outside|\bo\.?d\.?\b|außen|aussen|\bAD\b|ext[ée]rieur|ext\.|estern|exterior|push-?in|steck`)
