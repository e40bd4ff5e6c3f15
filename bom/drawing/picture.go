package drawing

// Form is the width that a picture is laid out for.
type Form uint8

const (
	Wide   Form = iota // a landscape sheet of A4 or Letter, or a screen: 1040 units
	Narrow             // a phone held upright: 320 units
)

// Picture is a scheme laid out: every symbol, line and text with its place, in units.
type Picture struct {
	Title, Desc   string
	Width, Height float64
	Symbols       []Drawn
	Lines         []Line
	Texts         []Text
	Signs         []Sign
	Crossings     int // of lines with lines
	Unrouted      int // joints drawn as a pair of pointers, since no line was free
}

// Drawn is a symbol in its place.
type Drawn struct {
	Part   int
	Centre Point
	Turned bool    // its flow is drawn from right to left
	Sides  [4]bool // left, right, above, below: where lines meet it
	Box    Box
}

// Line is one link's way over the sheet, from symbol to symbol.
type Line struct {
	Link   int
	Points []Point
	Ring   Point // the joint
	Arrow  Point // in the direction of Ahead
	Ahead  Point
	Stump  bool // one of two pointers, in place of a line that found no way
}

// Text is a line of letters in its box.
type Text struct {
	Text   string
	Whole  string // where it was shortened
	At     Point  // the base line's beginning, middle or end, by Anchor
	Anchor string // "start", "middle", "end"
	Class  string // "name", "note", "joint", "size", "along", "over"
	Box    Box
}

// Sign is a finding's mark, or a state's, in its box.
type Sign struct {
	Mark Mark
	At   Point
	Box  Box
}

// sizes of a form.
type form struct {
	width, margin float64
	lane          float64 // from the margin's edge to its first track
	columns       int
}

var forms = [...]form{
	Wide:   {width: 1040, margin: 36, lane: 6, columns: 9},
	Narrow: {width: 320, margin: 28, lane: 7, columns: 3},
}

const half = 20.0 // of a symbol's box
