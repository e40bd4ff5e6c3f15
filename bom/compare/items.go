package compare

import (
	"fmt"
	"math"
	"slices"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/bom/segment"
	"handtight/pressure/quantity"
)

// contents lists items that are never placed: those inside units, and loose ones.
func (c *comparer) contents() {
	old, now := loose(c.old.Build), loose(c.new.Build)
	var gone, came []*build.Item
	for _, it := range old {
		if !slices.ContainsFunc(now, func(n *build.Item) bool { return n.ID == it.ID }) {
			gone = append(gone, it)
		}
	}
	for _, it := range now {
		if !slices.ContainsFunc(old, func(o *build.Item) bool { return o.ID == it.ID }) {
			came = append(came, it)
		}
	}
	for _, it := range gone {
		k := slices.IndexFunc(came, func(n *build.Item) bool {
			return n.Kind == it.Kind && n.Inside != "" && n.Inside == c.renamed(it.Inside)
		})
		if k < 0 {
			c.report.Removed = append(c.report.Removed, Thing{Name: it.ID, Item: it})
			continue
		}
		c.report.Replaced = append(c.report.Replaced, Replacement{Thing{Name: it.ID, Item: it}, Thing{Name: came[k].ID, Item: came[k]}})
		came = slices.Delete(came, k, k+1)
	}
	for _, it := range came {
		c.report.Added = append(c.report.Added, Thing{Name: it.ID, Item: it})
	}
}

// loose lists the items of a build that are counted and not joined.
func loose(b *build.Build) []*build.Item {
	return slices.DeleteFunc(slices.Clone(b.Items), func(it *build.Item) bool { return !it.Kind.Loose || it.Kind.Boats })
}

// renamed gives the id of what stands in the new build where an item stood in the old.
func (c *comparer) renamed(id string) string {
	for _, u := range c.old.Graph.Units {
		if u.Item.ID == id && c.to[u] != nil {
			return c.to[u].Item.ID
		}
	}
	return id
}

// items lists the facts that changed of items that kept their id.
func (c *comparer) items() {
	for _, now := range c.new.Build.Items {
		was, ok := c.old.Build.Item(now.ID)
		if !ok {
			continue
		}
		before, after := facts(was), facts(now)
		for i := range before {
			if before[i][1] != after[i][1] {
				c.report.Changed = append(c.report.Changed, Change{now.ID, before[i][0], orNot(before[i][1]), orNot(after[i][1])})
			}
		}
	}
}

func orNot(text string) string {
	if text == "" {
		return "not said"
	}
	return text
}

// facts are what matters of an item beside its id.
func facts(i *build.Item) [][2]string {
	return [][2]string{
		{"kind", i.Kind.Name}, {"ends", i.Ends()}, {"rated", text(i.Rated)}, {"class", i.Class}, {"spec", i.Spec},
		{"material", i.Material}, {"bore", text(i.Bore)}, {"length", text(i.Length)}, {"vacuum", text(i.Vacuum)},
		{"set", text(i.Set)}, {"full_flow", text(i.FullFlow)}, {"ratio", text(i.Process.Ratio)}, {"flow", text(i.Flow)}, {"shutoff", text(i.Shutoff)},
		{"stall", text(i.Stall)}, {"type", i.Type}, {"between", i.Between}, {"pressure", text(i.Pressure)},
		{"scale", text(i.Scale)}, {"micron", text(i.Micron)}, {"life", text(i.Life)}, {"fails", text(i.Fails)},
		{"have", some(i.Have.String())}, {"extra", some(i.Extra.String())},
	}
}

func some(count string) string {
	if count == "0" {
		return ""
	}
	return count
}

func text[T fmt.Stringer](v *T) string {
	if v == nil {
		return ""
	}
	return (*v).String()
}

// joints compares the joints between units that both builds have, in their order.
func (c *comparer) joints() {
	pair := func(a, b *graph.Unit) [2]*graph.Unit {
		if b.First < a.First {
			a, b = b, a
		}
		return [2]*graph.Unit{a, b}
	}
	was := map[[2]*graph.Unit][]*graph.Joint{}
	for _, j := range c.old.Graph.Joints {
		a, b := c.to[c.old.Graph.Ports[j.A].Unit], c.to[c.old.Graph.Ports[j.B].Unit]
		if a != nil && b != nil {
			was[pair(a, b)] = append(was[pair(a, b)], j)
		}
	}
	for _, j := range c.new.Graph.Joints {
		k := pair(c.new.Graph.Ports[j.A].Unit, c.new.Graph.Ports[j.B].Unit)
		row := Joint{New: c.new.Graph.JointName(j), Number: j.Number, NewVerdict: verdict(j)}
		if len(was[k]) == 0 {
			if row.Worse = !j.Known || !j.Mating.Verdict.Holds(); row.Worse && !boats(c.new, j) {
				c.report.Joints = append(c.report.Joints, row)
			}
			continue
		}
		o := was[k][0]
		was[k] = was[k][1:]
		row.Old, row.OldVerdict, row.Worse = c.old.Graph.JointName(o), verdict(o), worse(o, j)
		if row.OldVerdict != row.NewVerdict {
			c.report.Joints = append(c.report.Joints, row)
		}
	}
}

// boats reports whether a joint is a pipe led into the boat's own without an end said,
// which is no joint to judge.
func boats(s *bom.System, j *graph.Joint) bool {
	for _, p := range []int{j.A, j.B} {
		if n := &s.Graph.Ports[p]; !j.Known && n.Unit.Item.Kind.Boats && !n.Port.Said {
			return true
		}
	}
	return false
}

func verdict(j *graph.Joint) string {
	if !j.Known {
		return "not judged"
	}
	return j.Mating.Verdict.String()
}

// worse reports whether a joint became worse; two that close are equally good.
func worse(old, now *graph.Joint) bool {
	switch {
	case !now.Known:
		return old.Known
	case now.Mating.Verdict.Holds():
		return false
	case !old.Known || old.Mating.Verdict.Holds():
		return true
	}
	return now.Mating.Verdict.Worse(old.Mating.Verdict)
}

// segments compares each new segment with the old one that it shares most ports with.
func (c *comparer) segments() {
	for _, g := range c.new.Segments.All {
		o := c.before(g)
		if o == nil {
			continue
		}
		row := Segment{Old: o, New: g}
		row.figures()
		if len(row.Worse)+len(row.Better) > 0 {
			c.report.Segments = append(c.report.Segments, row)
		}
	}
}

// before finds the old segment of a new one; nil if none of its units was there.
func (c *comparer) before(g *segment.Segment) *segment.Segment {
	shared := map[*segment.Segment]int{}
	for _, p := range g.Ports {
		n := &c.new.Graph.Ports[p]
		u := c.from[n.Unit]
		if u == nil {
			continue
		}
		if i := u.Item.PortIndex(n.Port.Name); i >= 0 {
			shared[c.old.Segments.SegmentOf(u.First+i)]++
		}
	}
	var best *segment.Segment
	for _, o := range c.old.Segments.All {
		if shared[o] > 0 && (best == nil || shared[o] > shared[best]) {
			best = o
		}
	}
	return best
}

// enough is the least change of a pressure that is told, in bar: what a figure with one
// decimal can show.
const enough = 0.05

// figures tells what of a segment is worse and what is better.
func (s *Segment) figures() {
	worstOld, _ := s.Old.Load.Worst()
	worstNew, _ := s.New.Load.Worst()
	s.tell("normal", s.Old.Load.Normal.Bar(), s.New.Load.Normal.Bar(), false)
	s.tell("worst", worstOld.Bar(), worstNew.Bar(), false)
	s.tell("vacuum", -s.Old.Load.Low.Bar(), -s.New.Load.Low.Bar(), false)
	hold := func(g *segment.Segment) float64 {
		if !g.Rated() {
			return math.NaN()
		}
		return g.Allowable.Rating.Pressure.Bar()
	}
	s.tell("holds", hold(s.Old), hold(s.New), true)
	margin := func(g *segment.Segment) float64 {
		if m, ok := g.Margin(); ok {
			return m.Bar()
		}
		return math.NaN()
	}
	s.tell("margin", margin(s.Old), margin(s.New), true)
	if was, now := len(s.Old.Unrated), len(s.New.Unrated); was != now {
		s.put(fmt.Sprintf("units without a known rating %d -> %d", was, now), now > was)
	}
}

// tell notes a figure that rose or fell; NaN is one that is not known.
func (s *Segment) tell(what string, old, now float64, moreIsBetter bool) {
	if math.IsNaN(old) && math.IsNaN(now) || old == now || math.Abs(now-old) < enough {
		return
	}
	better := now > old == moreIsBetter
	if math.IsNaN(old) || math.IsNaN(now) {
		better = math.IsNaN(old)
	}
	s.put(fmt.Sprintf("%s %s -> %s bar", what, bar(old), bar(now)), !better)
}

func (s *Segment) put(text string, worse bool) {
	if worse {
		s.Worse = append(s.Worse, text)
	} else {
		s.Better = append(s.Better, text)
	}
}

// bar writes a pressure to a tenth.
func bar(v float64) string {
	switch {
	case math.IsNaN(v):
		return "not known"
	case math.IsInf(v, 1):
		return "no bound"
	}
	return quantity.Decimals(v, 1)
}
