package threads

import (
	"fmt"
	"math"
	"strings"
)

// makeThread fills in what goes between two threaded ends.
func (m *Mating) makeThread(mk *Makeup, kind string) {
	male, female := m.male(), m.female()
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
		m.makeFace(mk)
	case "gasket":
		mk.Washer = "flat gasket " + threadName(female.Form)
	case "seat":
		if female.Seal == Washer || female.Seal == FlatFace {
			mk.Washer = "flat gasket " + threadName(female.Form)
		}
	case "port", "metric-port":
		mk.ORing = "O-ring for " + female.Size + " O-ring port"
	case "face":
		mk.ORing = "O-ring for " + male.Size + " face seal"
	case "ring":
		mk.Ring = "cutting ring " + male.Size
	}
}

// makeFace chooses what closes on the face of a parallel stud: the O-ring it is
// sold with, the flat gasket of a swivel nut, else a bonded washer.
func (m *Mating) makeFace(mk *Makeup) {
	male, female := m.male(), m.female()
	switch {
	case male.Seal == ORing || female.Seal == ORing:
		mk.ORing = "O-ring for " + threadName(male.Form) + " stud"
	case male.Swivel || female.Swivel:
		mk.Washer = "flat gasket " + threadName(male.Form)
	default:
		mk.Washer = "bonded washer " + threadName(male.Form)
	}
}

// threadName is a thread as a counter hand asks for its washer.
func threadName(f *Form) string {
	if f.Family == G || f.Family == M {
		return f.Designation
	}
	return f.Size + " " + f.Family.String()
}

// makeTube fills in what goes between ends of which none has a thread.
func (m *Mating) makeTube(mk *Makeup, kind string) {
	switch kind {
	case "hose":
		mk.Clamps = 1
	case "ferrule":
		mk.Washer = strings.TrimSpace("ferrule gasket " + m.A.Size)
	case "compression", "compression-small":
		mk.Ring = strings.TrimSpace("olive " + m.A.Size)
	}
}

// makeWords fills in which part to hold, what the hand feels and how long to wait.
func (m *Mating) makeWords(mk *Makeup, kind string) {
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
	mk.TurnBack = m.hasNut()
	if mk.TurnBack {
		mk.Hold = "the body; turn the nut"
	}
	mk.Feel = m.feel(kind)
	switch kind {
	case "taper", "taper-bsp", "taper-metric":
		mk.Cure = "tape: none; sealant: its maker's time before water or pressure, often 24 h (common practice)"
	case "bedding":
		mk.Cure = "its maker's time before the boat floats, often several days (common practice)"
	}
}

// hasNut reports whether a nut turns on its own, so that the body is lined up
// first and may be turned back by loosening it.
func (m *Mating) hasNut() bool {
	if m.A.Swivel || m.B.Swivel {
		return true
	}
	switch m.male().Family {
	case JIC, SAE45, ORFS, Cone24L, Cone24S, NH, Push, Compression:
		return true
	}
	return false
}

// feel says what the hand meets in the right thread, and in a wrong one.
func (m *Mating) feel(kind string) string {
	fewest := math.Floor(m.Hand.Tightest)
	onThread := m.Hand.Known && kind != "seat" && kind != "cone" && kind != "gasket"
	switch {
	case !m.A.Family.Threaded():
		return "the ring bites: the nut gets clearly harder, then the turns are counted"
	case kind == "ring":
		return "the nut spins by hand to the ring; hard before it: not this thread, stop"
	case !onThread:
		return "spins by hand down to its face or seat; hard after about 2 turns, or wobbling: not this thread, stop"
	case fewest >= 1:
		return fmt.Sprintf("by hand %s; hard after less than %.0f: not this thread, stop", m.turnsWords(m.Hand), fewest)
	}
	return "by hand " + m.turnsWords(m.Hand) + ": few threads hold it"
}

// String is one short line for a joint card.
func (mk Makeup) String() string {
	var parts []string
	for _, s := range []string{mk.Washer, mk.ORing, mk.Ring} {
		if s != "" {
			parts = append(parts, s)
		}
	}
	switch {
	case mk.Wraps > 0:
		parts = append(parts, fmt.Sprintf("%d wraps of 12 mm tape (about %.0f mm)", mk.Wraps, 10*math.Round(float64(mk.Tape)/10)))
	case mk.Sealant != "":
		parts = append(parts, mk.Sealant)
	}
	if mk.Clamps > 0 {
		parts = append(parts, plural(mk.Clamps, "hose clamp"))
	}
	if tight := mk.tightening(); tight != "" {
		parts = append(parts, tight)
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
		torque = mk.Torque.rough().words() + " N m in " + mk.TorqueMaterial
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
func turnsPast(r Range) string {
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
func (r Range) rough() Range {
	if r.Most >= 20 {
		r.Least, r.Most = math.Round(r.Least), math.Round(r.Most)
	}
	return r
}

// words gives a range to two places: "1.5 to 3", "up to 73", "20".
func (r Range) words() string {
	least, most := trim(math.Round(r.Least*100)/100), trim(math.Round(r.Most*100)/100)
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
