package drawing

// Scheme is what is to be drawn: a plant, or one panel of it.
type Scheme struct {
	Title string // "High pressure, panel B: 17 parts, 16 joints"
	Desc  string // one sentence a chain, for those who do not see the picture
	Parts []Part
	Links []Link
}

// Part is one thing that is drawn as a symbol.
type Part struct {
	Name   string
	Symbol Symbol
	Notes  []string // below the name: a rating, a setting, a length, its contents
	Source bool     // water begins here: the sea before any other
	Flag   bool     // not a part of this sheet: a pointer to another one
	Shut   bool     // shut in the state that is drawn
	Over   string   // "sees 70 holds 62"; "" if it holds what it sees
	Mark   Mark     // the gravest finding on it
}

// Link is one joint, or a stretch of line that stands for several.
type Link struct {
	Name     string // "J22", or "J10 to J11"; "" on a line without a joint of its own
	Size     string // of both ends: "3/4 NPT", or "G 1/4 / R 1/4" in order of flow
	Along    string // below the line: the length of hose that it stands for
	From, To int    // indices of parts, in the direction of the normal flow
	FromSide Lean   // where the line would best leave
	ToSide   Lean   // and enter
	Back     bool   // leads back to what was passed already: drawn, not followed
	Still    bool   // no water in normal running: no arrow
	Water    Water
	High     bool   // more than 10 bar in the state that is drawn
	Dry      bool   // not wetted in the state that is drawn
	Bar      string // its pressure in a state, if that differs from normal running
	Mark     Mark
}

// Lean is the side of a symbol where a port would best stand.
type Lean uint8

const (
	Inline Lean = iota // on the way through: left or right
	Across             // a branch: above or below
	Under              // below first: a vessel's product
)

// Water is what a line carries.
type Water uint8

const (
	UnknownWater Water = iota
	Sea
	Brine
	Product
	House
)

// Severity orders marks; its words and shapes carry it, never colour alone.
type Severity uint8

const (
	NoMark  Severity = iota
	Note             // a circle
	Caution          // a triangle
	Stop             // an octagon
)

// Mark points from a place of the picture to a finding's text.
type Mark struct {
	Severity Severity
	Text     string // the finding's number, or "3+" for several
	Link     string // "#finding-3"; "" where the text stands nowhere
}
