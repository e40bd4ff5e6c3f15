package makeup

import (
	"embed"
	"math"
	"strings"
	"sync"

	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/internal/table"
)

//go:embed table/*.csv
var tables embed.FS

// Range is a figure from the least to the most that the sources give, in the unit of
// its type. Known is false where none gives it; Least is 0 where only a most is given.
type Range[Q ~float64] struct {
	Least, Most Q
	Known       bool
}

// Makeup is how a joint is closed: what goes between the ends and how far they
// are turned. A zero string, count or length means that the joint takes none.
type Makeup struct {
	Wraps          int                    // of 12 mm tape on the male thread
	Tape           threads.Length         // of it
	Sealant        string                 // what goes on the thread, or that nothing does
	Washer         string                 // "bonded washer G 1/2", "flat gasket 3/4 NH"
	ORing          string                 // "O-ring for -6 O-ring port"
	Ring           string                 // "cutting ring 12L", "olive 15 mm"
	Insert         string                 // "insert 10 mm": what keeps a plastic tube round under its olive
	Clamps         int                    // hose clamps; below the waterline the caller doubles them
	TurnsPast      Range[threads.Turns]   // turns past finger tight
	TurnsMaterial  string                 // what the turns were printed for: "metal", "any" or a material
	Torque         Range[quantity.Torque] // for TorqueMaterial
	TorqueMaterial string
	Left           bool   // a left-hand thread: it tightens anticlockwise
	Hold           string // which part is held, and which is turned
	TurnBack       bool   // it may be turned back to line up an elbow
	Feel           string // what the hand should feel, and when to stop
	Cure           string // how long before pressure; "" if at once
	Source         string // of the figures, or "common practice"
}

// Judgements and habits of make-up.
const (
	tapeTail    threads.Length = 20 // mm of tape wasted in starting and ending (`memory`)
	smallTube   threads.Length = 5  // mm; tubes below it turn less (the table has 4 and 6 mm)
	flatsOfTurn                = 6  // a nut has six flats
)

// makeRule is one row of table/makeup.csv.
type makeRule struct {
	sizes       string         // "|1/2|3/4|", or "|*|"
	figure      Range[float64] // in newton metres or turns
	use         int
	material    string
	source      string
	makes, what string
}

var makeRules = sync.OnceValue(func() []makeRule {
	var out []makeRule
	for _, r := range table.Read(tables, "table/makeup.csv") {
		per := 1.0
		if r["unit"] == "flats" {
			per = flatsOfTurn
		}
		rule := makeRule{
			sizes: "|" + r["sizes"] + "|", makes: r["make"], what: r["what"], material: r["material"], source: r["source"],
			figure: Range[float64]{Least: r.Number("least") / per, Most: r.Number("most") / per, Known: true},
		}
		if r.Has("use") {
			rule.use = int(r.Number("use"))
		}
		out = append(out, rule)
	}
	return out
})

// makeRuleFor finds the row of a kind of joint, a size and a figure; nil if the
// sources have none.
func makeRuleFor(kind, size, what string) *makeRule {
	rules := makeRules()
	for i := range rules {
		r := &rules[i]
		if r.makes == kind && r.what == what && (r.sizes == "|*|" || strings.Contains(r.sizes, "|"+size+"|")) {
			return r
		}
	}
	return nil
}

// Of says how a joint is closed. A joint that does not close gives a
// Makeup with nothing in it but Feel.
//
// Tape length: wraps x pi x major diameter + 20 mm. Figures: table/makeup.csv,
// each with its sources; where sources disagree, the range of both. A torque is
// given only for the material it was printed for, and for no plastic.
func Of(m *threads.Mating) Makeup {
	if m.Closes() == "" {
		return Makeup{Feel: "not to be made up: stop"}
	}
	j := joint{Mating: m, male: m.Male(), female: m.Female()}
	kind := j.kind()
	mk := Makeup{Source: "common practice"}
	if !m.A.Family.Threaded() {
		j.tube(&mk, kind)
	} else {
		j.thread(&mk, kind)
	}
	j.figures(&mk, kind)
	j.words(&mk, kind)
	if mk.Left = j.A.Left && j.B.Left; mk.Left {
		mk.Hold += ", anticlockwise: the thread is left hand"
	}
	return mk
}

// joint is a mating with its ends in the order external, internal.
type joint struct {
	*threads.Mating
	male, female threads.End
}

// kind names the kind of joint that table/makeup.csv goes by.
func (j *joint) kind() string {
	makes := j.Makes()
	switch {
	case strings.HasPrefix(makes, "taper") && (j.A.Plastic || j.B.Plastic):
		return "taper-plastic"
	case makes == "compression" && max(j.A.Diameter, j.B.Diameter) < smallTube:
		return "compression-small"
	}
	return makes
}

// figuresOf names the kind whose figures hold for another: a stud with its own ring
// is turned as one with an O-ring, a nut with a gasket as a hose coupling.
var figuresOf = map[string]string{
	"o-ring": "washer", "stud-ring": "washer", "edge": "washer", "gasket-nut": "gasket", "nose": "gasket",
}

// figures fills in wraps, turns and torque from the table.
func (j *joint) figures(mk *Makeup, kind string) {
	size := j.A.Size
	if j.A.Family.Threaded() {
		size = j.female.Size // a bare stud is named by its thread, its port by the dash
	}
	if as := figuresOf[kind]; as != "" {
		kind = as
	}
	var sources []string
	if r := makeRuleFor(kind, size, "wraps"); r != nil {
		mk.Wraps = r.use
		if mk.Wraps > 0 {
			mk.Tape = threads.Length(mk.Wraps)*math.Pi*j.male.Form.Major + tapeTail
		}
		sources = append(sources, r.source)
	}
	if r := makeRuleFor(kind, size, "turns"); r != nil {
		mk.TurnsPast, mk.TurnsMaterial = as[threads.Turns](r.figure), r.material
		sources = append(sources, r.source)
	}
	if r := makeRuleFor(kind, size, "torque"); r != nil && !j.A.Plastic && !j.B.Plastic {
		mk.Torque, mk.TorqueMaterial = as[quantity.Torque](r.figure), r.material
		sources = append(sources, r.source)
	}
	if len(sources) > 0 {
		mk.Source = strings.Join(distinct(sources), "; ")
	}
}

// as gives a printed range the type of its quantity.
func as[Q ~float64](r Range[float64]) Range[Q] {
	return Range[Q]{Q(r.Least), Q(r.Most), r.Known}
}

// distinct splits lists of sources and keeps each source once, in order.
func distinct(lists []string) []string {
	var out []string
	seen := map[string]bool{}
	for _, list := range lists {
		for _, s := range strings.Split(list, "; ") {
			if !seen[s] {
				seen[s] = true
				out = append(out, s)
			}
		}
	}
	return out
}
