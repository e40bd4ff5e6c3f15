package threads

import (
	"strings"

	"handtight/pressure/quantity"
)

// Seal is a word about how an end closes, beyond what its family says.
type Seal uint8

// The seals a text can name. The zero value is: nothing said.
const (
	NoSeal    Seal = iota
	Chamfer        // a male with the 30 degree chamfer that meets a 60 degree cone
	Cone60         // 60 degree cone seat
	Cone30         // 30 degree cone seat (Japanese trade)
	FlatFace       // a flat face for a washer
	Washer         // sold with a washer, bonded seal or flat gasket
	ORing          // sold with an O-ring
	StudRing       // a stud with a captive sealing ring behind its thread (form E)
	MetalEdge      // a stud with a metal sealing edge behind its thread (form B)
	ConeRing       // a cone with an O-ring of its own
	Cone24         // a hose nipple with a plain 24 degree cone, without a cutting ring
	NoseRing       // a nose with an O-ring that slides into a bore; see [End.Nose]
	sealEnd
)

var sealNames = [sealEnd]string{"", "chamfer", "cone-60", "cone-30", "flat-face", "washer", "o-ring", "stud-ring", "metal-edge", "cone-o-ring", "cone-24", "nose-o-ring"}

// String gives the seal's name as it stands in JSON, "" if nothing was said.
func (s Seal) String() string {
	if s >= sealEnd {
		return ""
	}
	return sealNames[s]
}

// SealNamed finds a seal by its JSON name; "" is NoSeal.
func SealNamed(name string) (Seal, bool) {
	for s, n := range sealNames {
		if n == name {
			return Seal(s), true
		}
	}
	return NoSeal, false
}

// AllSeals lists every seal that can be said of an end, without [NoSeal].
func AllSeals() []Seal {
	out := make([]Seal, 0, sealEnd-1)
	for s := NoSeal + 1; s < sealEnd; s++ {
		out = append(out, s)
	}
	return out
}

// End is what a port is: a thread of a size and sex with its seal, or an end
// without a thread. The zero value is no end.
type End struct {
	Family   Family
	Form     *Form  // nil for an end without a thread
	Size     string // as the standard writes it; "19 mm" or "3/4 in" where there is no thread
	Sex      Sex
	Seal     Seal
	Diameter Length // of a tail, bore, tube or ferrule; 0 for threads, and if not said
	Swivel   bool   // the nut turns by itself
	Plastic  bool   // the thread is moulded or cut in plastic
	Long     bool   // a tail long enough for two clamps
	ClassA   bool   // a G male of the closer class A
	Left     bool   // a left-hand thread
	Short    bool   // a dryseal taper of the short form, one turn less than the full one
	Nose     Length // of the nose of a washer-hose coupling, or of the bore for it; 0 if not said
}

// Threaded makes the end of a form.
func Threaded(f *Form, sex Sex) End {
	return End{Family: f.Family, Form: f, Size: f.Size, Sex: sex}
}

// String gives the end in full, as this package reads it back:
// "1/2-14 NPT female", "G 3/4 male chamfer", "19 mm barb".
func (e End) String() string {
	var words []string
	switch {
	case e.Family == 0:
		return "no end"
	case e.Form != nil:
		words = append(words, e.Form.Designation)
		if e.ClassA && e.Sex == Male {
			words[0] += " A"
		}
		if e.Left {
			words = append(words, "LH")
		}
		if e.Short {
			words = append(words, "short")
		}
	default:
		words = append(words, strings.TrimSpace(e.Size+" "+e.plainWord()))
	}
	if e.Sex != NoSex && e.Form != nil {
		words = append(words, e.Sex.String())
	}
	if e.Swivel {
		words = append(words, "swivel")
	}
	if e.Seal != NoSeal {
		words = append(words, e.sealWords())
	}
	if e.Plastic {
		words = append(words, "plastic")
	}
	if e.Long {
		words = append(words, "long")
	}
	return strings.Join(words, " ")
}

// PlainWord is the word that [End.String] writes for a family without a thread,
// such as "barb"; "" for a thread.
func PlainWord(f Family) string { return plainWord[f] }

var plainWord = map[Family]string{
	Barb: "barb", Bore: "bore", Push: "push-in", Compression: "compression", Ferrule: "clamp ferrule",
}

var sealWord = [sealEnd]string{
	"", "chamfer", "60 cone", "30 cone", "flat face", "washer", "o ring", "stud ring", "metal edge", "cone with o ring", "24 cone", "nose with o ring",
}

// sealWords gives the seal as it is read back: "60 cone", "15 mm nose".
func (e End) sealWords() string {
	if e.Seal == NoseRing && e.Nose > 0 {
		return e.Nose.String() + " nose"
	}
	return sealWord[e.Seal]
}

// IsTube reports whether an end is a tube itself, which goes into a push-in or a
// compression end: one of these two families that is male, or of which no word says
// that it is the socket.
func (e End) IsTube() bool { return grips(e.Family) && e.Sex != Female }

// plainWord is the word of an end without a thread.
func (e End) plainWord() string {
	if grips(e.Family) && e.Sex == Male {
		return "tube"
	}
	return plainWord[e.Family]
}

// Reading is what was understood of a text: a designation, or a shop's line.
type Reading struct {
	Text      string
	Kind      string            // the kind of part that the words name, "" if none
	Material  string            // the material that the words name, "" if none
	Materials []string          // all that they name, each once: of a part and what is on it, or of two that a shop sells under one title
	Rated     quantity.Pressure // the pressure that the words give as a rating; see HasRated
	HasRated  bool              // false when no rating is said: unknown is not zero

	Class          string               // the pressure class, "class 3000"; "" if none is said
	Schedule       string               // the wall by its schedule, "schedule 80" or "SDR 11"
	Grade          string               // the forging or casting grade as written: F316, CF8M
	Standards      []string             // the standards named, as written: ASME B16.11
	Temperature    quantity.Temperature // that at which the rating holds, if said, else the highest named; see HasTemperature
	HasTemperature bool

	Pressures []StatedPressure // pressures that are no rating

	Limits []Limit // what the part may not be used for, or only for

	Ends    []EndReading
	Unread  []string  // words that were not understood, in order
	NotUsed []NotUsed // words and figures that were understood, and that nothing here uses
}

// Limit is a stretch of a text that says what a part may not be used for, or only for: not for pressure, air only. No
// figure comes of it, so whoever places the part is asked.
type Limit struct {
	Words       string // as written
	LowPressure bool   // low pressure is all that it says: where the pressure is low it says nothing against the part
}

// StatedPressure is a pressure that a text gives and that is no rating.
type StatedPressure struct {
	What     string // test, burst, peak, full scale, cut-off, setting, opening pressure, vacuum, pump pressure, differential
	Pressure quantity.Pressure
	Words    string // as written
}

// What a stated pressure is where the words beside it are not understood, doubt it, or say it of another part.
const (
	Unclear     = "unclear"
	AnotherPart = "of another part"
)

// Bounds reports whether a part may hold no more than the pressure: one that bursts at it, is tested to it or holds it for an instant, or has it said in words
// that are not understood.
func (p StatedPressure) Bounds() bool {
	return p.What == "burst" || p.What == "test" || p.What == "peak" || p.What == Unclear
}

// HoseOutside is why the outside of a hose, where it is all that is said of the tail, is not taken for its bore.
const HoseOutside = "the outside of the hose, and a tail goes by its inside"

// LooksOnly is why a material that a part only looks like, as `brass coloured` says, is not used.
const LooksOnly = "how it looks, and not what it is made of"

// SideOfThePart is why a left hand that speaks of a shaft, a lever or a side is not used.
const SideOfThePart = "a side of the part, and no left-hand thread"

// SpeaksOfAnEnd is why a word of a thread, a sex, a hand or a swivel is not used where the part
// named is sold without ends, as hose by the metre is: it may be another part.
const SpeaksOfAnEnd = "it speaks of an end, and such a part has none"

// NoEndTakesIt is why a word of a hand, a swivel or a seal is not used where none of the ends that were
// read is said to have it: which one has is open.
const NoEndTakesIt = "no end takes it"

// NotUsed is a part of a text that was understood and changes nothing, with the
// reason.
type NotUsed struct{ Words, Why string }

// SaysNothingNew is why a word that belongs to ends is not used: the others say the same, as `JIC swivel`
// says female.
const SaysNothingNew = "it adds nothing to the other words"

// EndReading is one end seen in a text. Several candidates: the words leave it
// open, likeliest first. None: an end was seen and could not be read.
type EndReading struct {
	Words      string // the words it was read from
	Sex        Sex
	Seal       Seal
	Swivel     bool
	Candidates []End
	Question   string // the one question that settles it; "" if nothing is open
	Contrary   bool   // its words contradict each other, and each meaning is a candidate: a verdict that holds of all is no leave
	Torn       bool   // its words contradict each other, and no candidate stands for one of the meanings: it is not to be judged

	NotUsed []NotUsed // words that change nothing of it; only where a text of one end was read
}
