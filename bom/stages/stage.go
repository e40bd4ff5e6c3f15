package stages

import (
	"handtight/bom/graph"
	"handtight/pressure/quantity"
)

// Sheet is the leak test of one plant.
type Sheet struct {
	Plant   string // its first unit and its last: "intake to brine-outlet"
	Stages  []Stage
	Dry     []*graph.Joint // no stage wets them
	Joints  []*graph.Joint // all of the plant's, in their order
	Flushed float64        // share of the joints that water reaches in the dock flush, 0 to 1
	Running float64        // share that it runs through
}

// Stage is one step of the leak test.
type Stage struct {
	Number    int
	Name      string // "dock flush"
	How       string // what drives the water, with the pressure that it stands at
	Positions []Position
	First     []*graph.Joint // reached for the first time
	Runs      []*graph.Joint // of those and of earlier ones: water runs through for the first time
	Reached   int            // joints reached by the end of the stage
	Ran       int            // joints run through by then
	Steps     []Step         // of pressure; nil elsewhere
	Blocked   []string       // what sees more than it holds: "hp-tee sees 58 bar and holds 20.7"
	Notes     []string       // what to look at, what to write down, when to stop
}

// Position is how a valve, selector or pump stands before a stage.
type Position struct {
	Unit   *graph.Unit
	Stands string // "shut", "fully open", "to galley-drain", "off"
}

// Step is a pressure to hold in the stage of rising pressure.
type Step struct {
	Pressure quantity.Pressure
	Hold     int // minutes
}

// steps goes up to the duty: the first step at most 10 bar, then at most 15 bar at a time.
// Holds of 5 minutes, then 10, then 30 at the top. All of it is a judgement.
func steps(top quantity.Pressure) []Step {
	const first, most = 10 * quantity.Bar, 15 * quantity.Bar
	if top <= first {
		return []Step{{top, 30}}
	}
	out := []Step{{first, 5}}
	n := 1
	for (top-first)/quantity.Pressure(n) > most {
		n++
	}
	for k := 1; k <= n; k++ {
		at := first + (top-first)*quantity.Pressure(k)/quantity.Pressure(n)
		hold := 5
		switch k {
		case n:
			hold = 30
		case n - 1:
			hold = 10
		}
		out = append(out, Step{at, hold})
	}
	return out
}
