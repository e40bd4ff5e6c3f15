package repair

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Remedy is one way to mend a joint, with what to buy for it.
type Remedy struct {
	Do     string // "adapt": a chain between the two, or a plug; "change": another part in one's place; "ask": nothing to buy until it is answered
	At     string // the joint, or the unit that is changed
	Unit   *graph.Unit
	Joint  *graph.Joint
	Chain  *Chain // of adapt
	Pieces []*Piece
	New    *stock.Item       // of change
	Port   int               // of change: the port of the unit that was wrong
	All    bool              // of change: every unit of the item is changed
	End    *stock.Item       // of change: the end that a hose is made up with at Port instead
	Plug   *stock.Item       // of adapt: what closes a port that is joined to nothing
	Open   *graph.Port       // that the plug closes
	count  int               // of change with All: units of the item
	Before int               // joints of the place before it
	Joints int               // and after it
	Needs  quantity.Pressure // that what is bought must hold; 0: not reckoned
	Why    string
}

// Buy lists what to buy in shop words: the part, its ends and material, what it must hold, and how
// many where it is not one.
func (r *Remedy) Buy() []string {
	if r.End != nil {
		return []string{fmt.Sprintf("%s made up with %s in place of %s at its end %s%s", r.At, r.End.Texts[0], r.Unit.Item.Ports[r.Port].Words(), r.Unit.Item.Ports[r.Port].Name, r.forPressure(false))}
	}
	if it := cmp.Or(r.New, r.Plug); it != nil {
		return []string{times(max(1, r.units())) + it.Title() + r.forPressure(it.Class != "")}
	}
	var out []string
	for i, p := range r.Pieces {
		n := 0
		for k, q := range r.Pieces {
			if q == p && k < i {
				n = -len(r.Pieces)
			}
			if q == p {
				n++
			}
		}
		if n > 0 {
			out = append(out, times(n)+p.Title+r.forPressure(p.sure()))
		}
	}
	return out
}

func times(n int) string {
	if n == 1 {
		return ""
	}
	return fmt.Sprintf("%d x ", n)
}

// units is how many units a change of an item takes.
func (r *Remedy) units() int {
	if !r.All {
		return 1
	}
	return r.count
}

// forPressure says what a part must hold. At high pressure only a class of its own is taken for it,
// or a data sheet.
func (r *Remedy) forPressure(classed bool) string {
	switch {
	case r.Needs <= 0:
		return ""
	case r.Needs > highPressure && !classed:
		return fmt.Sprintf(", with a data sheet for %s or more", up(r.Needs))
	}
	return fmt.Sprintf(", for %s or more", up(r.Needs))
}

// up is a pressure rounded up to tenths of a bar.
func up(p quantity.Pressure) quantity.Pressure {
	return quantity.Pressure(math.Ceil(p.Bar()*10-1e-6)/10) * quantity.Bar
}

// Paste is what it adds to a build file.
func (r *Remedy) Paste() string {
	switch {
	case r.End != nil:
		return "ends     = [" + strings.Join(r.HoseEnds(), ", ") + "]\n"
	case r.New != nil:
		return r.Item(r.ItemID())
	case r.Plug != nil:
		return r.PlugItem(r.ItemID()) + "\n" + r.PlugRun(r.ItemID())
	}
	var out []string
	for i, p := range r.Pieces {
		if !slices.Contains(r.Pieces[:i], p) && p.Stock {
			out = append(out, p.Paste(r.Needs))
		}
	}
	return strings.Join(out, "\n")
}

// Step says what is to be written in a path, so that what was pasted stands where it belongs; ""
// where nothing is, or where it was pasted with a run of its own.
func (r *Remedy) Step(sys *bom.System) string {
	switch out := r.takeOut(sys); {
	case r.End != nil:
		return fmt.Sprintf("in the [[hose]] `%s`, in place of its ends%s", r.Unit.Item.ID, out)
	case r.New != nil:
		return fmt.Sprintf("in the path, `%s` in the place of `%s`%s", r.ItemID(), r.Unit.Item.ID, out)
	case len(r.Pieces) > 0:
		var steps []string
		for _, p := range r.Pieces {
			steps = append(steps, fmt.Sprintf("%q", p.ShortID()+"/+"))
		}
		return fmt.Sprintf("in the path, %s between %s%s", strings.Join(steps, ", "), strings.ReplaceAll(r.At, " - ", " and "), out)
	}
	return ""
}

// remedies are the findings that a part can mend, and how: tables of the design.
var remedies = map[string]func(*bom.System, *finding.Finding) []Remedy{
	"flank-angles-differ": ofJoint, "pitches-differ": ofJoint, "ends-of-different-sorts": ofJoint, "parallel-in-taper": ofJoint,
	"thread-does-not-start": ofJoint, "thread-too-slack": ofJoint, "taper-in-parallel": ofJoint, "same-sex": ofJoint, "seats-differ": ofJoint,
	"nothing-seals": ofJoint, "barb-and-bore-differ": ofJoint, "hands-differ": ofJoint, "flanges-differ": ofJoint, "makeshift-joint": ofJoint, "end-left-open": ofOpenEnd,
	"nothing-turns": ofTurning, "port-open": ofOpen,
	"threads-too-weak": ofWeak, "rating-unknown": ofWeak, "under-rated": ofWeak,
}

// Mends reports whether a part can mend findings of a rule.
func Mends(slug string) bool { return remedies[slug] != nil }

// Most remedies that are offered for one finding.
const mostRemedies = 3

// Remedies lists what mends a finding, the best first: a commodity in the place of one of the
// parts, or a chain between them. Equipment, and what is aboard already, stays.
func Remedies(sys *bom.System, f *finding.Finding) []Remedy {
	of := remedies[f.Slug]
	if of == nil {
		return nil
	}
	out := of(sys, f)
	return out[:min(len(out), mostRemedies)]
}

// jointOf is the joint that a finding is about; nil if it is about none.
func jointOf(sys *bom.System, f *finding.Finding) *graph.Joint {
	if f.Subject.Joint <= 0 || f.Subject.Joint > len(sys.Graph.Joints) {
		return nil
	}
	return sys.Graph.Joints[f.Subject.Joint-1]
}

// ofJoint mends two ends that do not close.
func ofJoint(sys *bom.System, f *finding.Finding) []Remedy {
	j := jointOf(sys, f)
	if j == nil {
		return nil
	}
	o := Conditions(sys, j)
	var out []Remedy
	var ends []Remedy
	for _, port := range []int{j.A, j.B} {
		out = append(out, changes(sys, j, port, o)...)
		ends = append(ends, otherEnds(sys, j, port, o)...)
	}
	if q := cmp.Or(j.Mating.Question(), nose(j)); q != "" {
		// what the part at hand is decides it: nothing is bought before that is looked at
		ask := Remedy{Do: "ask", At: sys.Graph.JointName(j), Joint: j, Before: 1, Joints: 1, Why: q}
		return append([]Remedy{ask}, out[:min(len(out), mostRemedies-1)]...)
	}
	slices.SortStableFunc(out, func(a, b Remedy) int { return cmp.Compare(a.New.Usual, b.New.Usual) })
	out = append(out[:min(len(out), mostRemedies-1)], ends[:min(len(ends), 1)]...)
	return append(out, adapts(sys, j, o)...)
}

// ofOpenEnd asks what an end is, and says what each of its readings would take.
func ofOpenEnd(sys *bom.System, f *finding.Finding) []Remedy {
	j := jointOf(sys, f)
	if j == nil || !j.Known {
		return nil
	}
	got := Adapt(sys.Graph.Ports[j.A].Port.End, sys.Graph.Ports[j.B].Port.End, Conditions(sys, j))
	if got.Ask == "" {
		return nil
	}
	var each []string
	for _, r := range got.Each {
		text := "nothing is to be bought"
		if r.Chain != nil {
			one := Remedy{Pieces: r.Chain.Pieces}
			text = strings.Join(one.Buy(), " and ") + " between the two"
		} else if !r.Direct {
			text = "change one of the two: " + r.None
		}
		each = append(each, fmt.Sprintf("if it is %s with %s: %s", r.A, r.B, text))
	}
	return []Remedy{{Do: "ask", At: sys.Graph.JointName(j), Joint: j, Before: 1, Joints: 1, Why: got.Ask + " " + upper(strings.Join(each, "; ")) + "."}}
}

// upper begins a sentence.
func upper(text string) string {
	if text == "" {
		return ""
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// nose asks for what is not said of a male, where that alone decides the joint; "" else.
func nose(j *graph.Joint) string {
	male, female := j.Mating.Male(), j.Mating.Female()
	if !j.Known || male.Seal != threads.NoSeal || j.Mating.Verdict.Holds() {
		return ""
	}
	male.Seal = threads.Chamfer
	if m := threads.Mate(male, female); !m.Verdict.Holds() {
		return ""
	}
	return "has the male a 30 degree chamfer in its mouth? If so write `chamfer` on its end, and nothing is to be bought"
}

// adapts are the chains that go into a joint.
func adapts(sys *bom.System, j *graph.Joint, o Options) []Remedy {
	var out []Remedy
	got := Adapt(sys.Graph.Ports[j.A].Port.End, sys.Graph.Ports[j.B].Port.End, o)
	for i := range got.Chains {
		c := &got.Chains[i]
		out = append(out, Remedy{Do: "adapt", At: sys.Graph.JointName(j), Joint: j, Chain: c, Pieces: c.Pieces, Before: 1, Joints: len(c.Joints), Needs: o.Pressure, Why: got.Ask})
	}
	return out
}

// Conditions is what a part at a joint must stand: the worst pressure that has a bound, the
// water, what it touches, and whether it lies below the waterline or may not narrow the line.
func Conditions(sys *bom.System, j *graph.Joint) Options {
	o := under(sys, j.A)
	o.Below, o.Shelf = j.Run.Below, WithBuild(sys.Build)
	load := sys.States.PortLoad(j.A)
	o.Wide = load.Low < 0
	for k, port := range [2]int{j.A, j.B} {
		n := &sys.Graph.Ports[port]
		o.Beside[k], o.Hose[k] = n.Unit.Item.Materials(), n.Unit.Item.IsHose()
		o.Wide = o.Wide || relieves(n)
	}
	return o
}

// relieves reports whether a port is the outlet of a relief valve.
func relieves(n *graph.Port) bool {
	return slices.ContainsFunc(n.Unit.Item.Kind.Passages, func(p catalog.Passage) bool { return p.Is == catalog.Relief && p.To == n.Index })
}
