package makeup

import (
	"fmt"
	"math"
	"strings"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// thread fills in what goes between two threaded ends.
func (j *joint) thread(mk *Makeup, kind string) {
	male, female := j.male, j.female
	mk.Sealant = "no tape"
	switch kind {
	case "taper", "taper-bsp":
		mk.Sealant = "tape or paste"
	case "taper-plastic":
		mk.Sealant = "thin tape, never paste"
	case "taper-metric":
		mk.Sealant = "paste or tape"
	case "dryseal":
		mk.Sealant = "no tape: a little lubricant"
	case "bedding":
		mk.Sealant = "bedding compound"
	case "washer":
		mk.Washer = "bonded washer " + threadName(male.Form)
	case "gasket-nut":
		mk.Washer = "flat gasket " + threadName(male.Form)
	case "gasket":
		mk.Washer = "flat gasket " + threadName(female.Form)
	case "o-ring":
		mk.ORing = "O-ring for " + threadName(male.Form) + " stud"
	case "cone-ring":
		mk.ORing = "O-ring for " + coneName(male) + " cone"
	case "nose":
		mk.ORing = "O-ring for " + male.Nose.String() + " nose " + male.Form.Designation
	case "port", "metric-port":
		mk.ORing = "O-ring for " + female.Size + " O-ring port"
	case "face":
		mk.ORing = "O-ring for " + male.Size + " face seal"
	case "ring":
		mk.Ring = "cutting ring " + male.Size
	}
}

// coneName is the cone as its O-ring is asked for: by the tube of a 24 degree cone,
// else by the thread.
func coneName(e threads.End) string {
	if e.Form.Tube > 0 {
		return e.Size
	}
	return threadName(e.Form)
}

// threadName is a thread as a counter hand asks for its washer.
func threadName(f *threads.Form) string {
	if f.Family == threads.G || f.Family == threads.M {
		return f.Designation
	}
	return f.Size + " " + f.Family.String()
}

// tube fills in what goes between ends of which none has a thread.
func (j *joint) tube(mk *Makeup, kind string) {
	switch kind {
	case "hose":
		mk.Clamps = 1
	case "ferrule":
		mk.Washer = strings.TrimSpace("ferrule gasket " + j.A.Size)
	case "compression", "compression-small":
		mk.Ring = strings.TrimSpace("olive " + j.A.Size)
		if j.A.IsTube() && j.A.Plastic || j.B.IsTube() && j.B.Plastic {
			mk.Insert = strings.TrimSpace("insert " + j.A.Size)
		}
	case "ring":
		body := j.A
		if body.Form == nil {
			body = j.B
		}
		mk.Ring = "cutting ring " + body.Size
	}
}

// words fills in which part to hold, what the hand feels and how long to wait.
func (j *joint) words(mk *Makeup, kind string) {
	switch kind {
	case "hose":
		mk.Hold, mk.TurnBack = "the tail; the hose is pushed on straight", true
		mk.Feel = "goes on with effort, over every ridge; slips on loose: not this bore, stop"
		return
	case "push", "ferrule":
		mk.Hold, mk.TurnBack = "the body", true
		mk.Feel = "goes home to a stop; pull on it: it must not come out"
		return
	}
	mk.Hold = "the part that is fixed already; turn the other"
	mk.TurnBack = j.hasNut()
	if mk.TurnBack {
		mk.Hold = "the body; turn the nut"
	}
	mk.Feel = j.feel(kind)
	switch kind {
	case "taper", "taper-bsp", "taper-metric":
		mk.Cure = "no waiting time with tape; with sealant its maker's time before water or pressure, often 24 h (common practice)"
	case "bedding":
		mk.Cure = "its maker's time before the boat floats, often several days (common practice)"
	}
}

// hasNut reports whether a nut turns on its own, so that the body is lined up
// first and may be turned back by loosening it.
func (j *joint) hasNut() bool {
	if j.A.Swivel || j.B.Swivel {
		return true
	}
	switch j.male.Family {
	case threads.JIC, threads.SAE45, threads.ORFS, threads.Cone24L, threads.Cone24S, threads.NH, threads.Push, threads.Compression:
		return true
	}
	return false
}

// faced are the joints whose nut runs free to a seat, so that no turns on the
// thread are felt.
var faced = map[string]bool{"seat": true, "cone": true, "gasket": true, "gasket-nut": true, "cone-ring": true, "nipple": true, "nose": true}

// feel says what the hand meets in the right thread, and in a wrong one.
func (j *joint) feel(kind string) string {
	fewest := math.Floor(float64(j.Hand.Tightest))
	onThread := j.Hand.Known && !faced[kind]
	switch {
	case !j.A.Family.Threaded():
		return "the ring bites: the nut gets clearly harder, then the turns are counted"
	case kind == "cone-ring" || kind == "nipple":
		return "the nut spins by hand until the cones meet, then the force rises at once; hard before it: not this thread, stop"
	case kind == "ring":
		return "the nut spins by hand to the ring; hard before it: not this thread, stop"
	case !onThread:
		return "spins by hand down to its face or seat; hard after about 2 turns, or wobbling: not this thread, stop"
	case fewest >= 1:
		return fmt.Sprintf("by hand %s; hard after less than %.0f: not this thread, stop", j.HandWords(), fewest)
	}
	return "by hand " + j.HandWords() + ": few threads hold it"
}

// String is one short line for a joint card.
func (mk Makeup) String() string {
	var parts []string
	for _, s := range []string{mk.Washer, mk.ORing, mk.Ring, mk.Insert} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	switch {
	case mk.Wraps > 0:
		wraps := fmt.Sprintf("%d wraps of 12 mm tape (about %.0f mm)", mk.Wraps, 10*math.Round(float64(mk.Tape)/10))
		if strings.HasPrefix(mk.Sealant, "paste") {
			wraps = "paste, or " + wraps
		}
		parts = append(parts, wraps)
	case mk.Sealant != "":
		parts = append(parts, mk.Sealant)
	}
	if mk.Clamps > 0 {
		parts = append(parts, plural(mk.Clamps, "hose clamp"))
	}
	if tight := mk.tightening(); tight != "" {
		parts = append(parts, tight)
	}
	if mk.Left {
		parts = append(parts, "left hand: turns anticlockwise")
	}
	if len(parts) == 0 {
		return mk.Feel
	}
	return strings.Join(parts, ", ")
}

// tightening is how far to turn, or how hard, in words.
func (mk Makeup) tightening() string {
	torque := ""
	if mk.Torque.Known {
		torque = rough(mk.Torque).words() + " N m in " + mk.TorqueMaterial
	}
	if !mk.TurnsPast.Known {
		return torque
	}
	turns := turnsPast(mk.TurnsPast)
	if torque != "" {
		return turns + " (" + torque + ")"
	}
	return turns
}

// turnsPast gives turns past hand tight; half a turn or less in flats of a nut.
func turnsPast(r Range[threads.Turns]) string {
	unit := " turns"
	if r.Most <= 0.5 && r.Least > 0 {
		r.Least, r.Most, unit = r.Least*flatsOfTurn, r.Most*flatsOfTurn, " flats of the nut"
	}
	if r.Most == 1 || r.Most == 0.5 && r.Least == 0 {
		unit = " turn"
	}
	return r.words() + unit + " past hand tight"
}

// rough rounds a torque to what a wrench can be set to: whole newton metres from
// 20 up.
func rough(r Range[quantity.Torque]) Range[quantity.Torque] {
	if r.Most >= 20 {
		r.Least, r.Most = quantity.Torque(math.Round(float64(r.Least))), quantity.Torque(math.Round(float64(r.Most)))
	}
	return r
}

// words gives a range to two places: "1.5 to 3", "up to 73", "20".
func (r Range[Q]) words() string {
	least, most := quantity.Decimals(float64(r.Least), 2), quantity.Decimals(float64(r.Most), 2)
	switch {
	case least == most:
		return most
	case r.Least == 0:
		return "up to " + most
	}
	return least + " to " + most
}

func plural(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}
