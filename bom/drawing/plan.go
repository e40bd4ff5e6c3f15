package drawing

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/segment"
	"handtight/bom/state"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Panel is one picture of a plant: what it shows, and how.
type Panel struct {
	Letter string // "A"; "" of an overview
	Name   string // "high pressure, relief and brine"
	Scheme *Scheme
}

// Marks says which finding's mark stands at a joint and at a unit, by the joint's number
// and the unit's name.
type Marks struct {
	Joints map[int]Mark
	Units  map[string]Mark
}

// MarksOf numbers findings as they are listed, from 1, and gives each place the gravest of
// its own; several at one place say so with a plus. link makes the address of a finding's
// text; nil: the pictures stand alone.
func MarksOf(list []finding.Finding, link func(n int) string) Marks {
	m := Marks{Joints: map[int]Mark{}, Units: map[string]Mark{}}
	severity := map[finding.Severity]Severity{finding.Stop: Stop, finding.Caution: Caution, finding.Note: Note}
	for i, f := range list {
		mark := Mark{Severity: severity[f.Severity], Text: fmt.Sprint(i + 1)}
		if link != nil {
			mark.Link = link(i + 1)
		}
		for _, s := range append([]finding.Subject{f.Subject}, f.Also...) {
			if s.Joint > 0 {
				m.Joints[s.Joint] = gravest(m.Joints[s.Joint], mark)
			} else if s.Unit != "" {
				m.Units[s.Unit] = gravest(m.Units[s.Unit], mark)
			}
		}
	}
	return m
}

func gravest(old, mark Mark) Mark {
	switch {
	case old.Severity == NoMark:
		return mark
	case mark.Severity > old.Severity:
		mark.Text = strings.TrimSuffix(mark.Text, "+") + "+"
		return mark
	}
	old.Text = strings.TrimSuffix(old.Text, "+") + "+"
	return old
}

// Most units of one panel, by looking at sheets of paper: a judgement.
const fullPanel = 32

// The groups of a plant's panels, in their order on the page.
const (
	raw = iota
	high
	product
	other
)

var groupNames = [...]string{"raw water and flush", "high pressure, relief and brine", "product", "other lines"}

// plan is a build being turned into panels.
type plan struct {
	sys   *bom.System
	marks Marks
	view  *segment.StateView
	brine map[*graph.Joint]bool // carries what a membrane leaves over
	size  []string              // by joint
	water []Water
}

// Panels draws every part of a build, a picture for each group of its segments; a group of
// many parts is cut where its lines are fewest, so that each fits a sheet. state is the
// name of a state of the build, "normal" for normal running; ok is false if there is none.
func Panels(sys *bom.System, marks Marks, state string) (panels []Panel, ok bool) {
	p, ok := newPlan(sys, marks, state)
	if !ok {
		return nil, false
	}
	group := make([]int, len(sys.Graph.Units))
	for i, u := range sys.Graph.Units {
		group[i] = p.group(u)
	}
	var sets [][]*graph.Unit
	var names []string
	for g, name := range groupNames {
		var in []*graph.Unit
		for i, u := range sys.Graph.Units {
			if group[i] == g {
				in = append(in, u)
			}
		}
		parts := p.split(in)
		for k, set := range parts {
			n := name
			if len(parts) > 1 {
				n = fmt.Sprintf("%s, %d of %d", name, k+1, len(parts))
			}
			sets, names = append(sets, set), append(names, n)
		}
	}
	letterOf := map[*graph.Unit]string{}
	for i, set := range sets {
		for _, u := range set {
			letterOf[u] = letters(i)
		}
	}
	for i, set := range sets {
		panels = append(panels, Panel{Letter: letters(i), Name: names[i], Scheme: p.panel(letters(i), names[i], set, letterOf)})
	}
	return panels, true
}

// letters names a panel: A to Z, then AA, AB.
func letters(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return letters(i/26-1) + letters(i%26)
}

func newPlan(sys *bom.System, marks Marks, state string) (*plan, bool) {
	view, ok := sys.Segments.View(state)
	if !ok {
		if state != "normal" {
			return nil, false
		}
		view = segment.StateView{Name: "normal"}
	}
	p := &plan{sys: sys, marks: marks, view: &view, brine: map[*graph.Joint]bool{}}
	p.concentrate()
	for _, j := range sys.Graph.Joints {
		p.size = append(p.size, sizes(sys, j))
		p.water = append(p.water, p.waterOf(j.A))
	}
	return p, true
}

// concentrate follows what leaves the vessels' brine ports, up to a pump or another vessel.
func (p *plan) concentrate() {
	var queue []int
	for _, u := range p.sys.Graph.Units {
		if i := u.Item.PortIndex("brine"); i >= 0 {
			queue = append(queue, u.First+i)
			if w := u.Item.PortIndex("waste"); w >= 0 { // of an energy-recovery pump
				queue = append(queue, u.First+w)
			}
		}
	}
	for len(queue) > 0 {
		j := p.sys.Graph.Ports[queue[0]].Joint
		from := queue[0]
		queue = queue[1:]
		if j == nil || p.brine[j] {
			continue
		}
		p.brine[j] = true
		far := j.A
		if far == from {
			far = j.B
		}
		u := p.sys.Graph.Ports[far].Unit
		if k := u.Item.Kind; k.Is(catalog.DrivesHigh|catalog.DrivesFeed|catalog.Relieves|catalog.StopsReturn) || u.Item.PortIndex("waste") >= 0 ||
			u.Item.PortIndex("feed") >= 0 {
			continue
		}
		for i := range u.Item.Ports {
			queue = append(queue, u.First+i)
		}
	}
}

func (p *plan) waterOf(port int) Water {
	w := p.sys.Waters
	switch {
	case w.Product(port):
		return Product
	case p.brine[p.sys.Graph.Ports[port].Joint]:
		return Brine
	case w.House(port):
		return House
	case w.Sea(port):
		return Sea
	}
	return UnknownWater
}

// group is the panel that a unit belongs to: what touches high pressure or brine stands
// with it.
func (p *plan) group(u *graph.Unit) int {
	best := other
	rank := func(g int) int { return [...]int{raw: 1, high: 3, product: 2, other: 0}[g] }
	for i := range u.Item.Ports {
		node := p.sys.Graph.Port(u, i)
		if node.Joint == nil {
			continue
		}
		g := other
		switch seg := p.sys.Segments.SegmentOf(u.First + i); {
		case seg.High() || p.brine[node.Joint] || p.relieved(u):
			g = high
		case p.waterOf(u.First+i) == Product:
			g = product
		case p.waterOf(u.First+i) != UnknownWater:
			g = raw
		}
		if rank(g) > rank(best) {
			best = g
		}
	}
	return best
}

// relieved reports whether a unit stands behind a relief valve of a line of high pressure,
// as far as its own segment goes.
func (p *plan) relieved(u *graph.Unit) bool {
	for i := range u.Item.Ports {
		for _, v := range p.sys.Segments.SegmentOf(u.First + i).Units {
			in, out := v.Item.PortIndex("in"), v.Item.PortIndex("out")
			if v.Item.Kind.Is(catalog.Relieves) && in >= 0 && out >= 0 && p.sys.Segments.SegmentOf(v.First+in).High() &&
				p.sys.Segments.SegmentOf(v.First+out) == p.sys.Segments.SegmentOf(u.First+i) {
				return true
			}
		}
	}
	return false
}

// sizes is the ends of a joint in few words: once if alike.
func sizes(sys *bom.System, j *graph.Joint) string {
	a, b := endSize(&sys.Graph.Ports[j.A]), endSize(&sys.Graph.Ports[j.B])
	switch {
	case a == b:
		return a
	case strings.HasSuffix(a, " barb") && strings.HasSuffix(b, " bore"):
		return strings.TrimSuffix(a, " barb")
	case strings.HasSuffix(b, " barb") && strings.HasSuffix(a, " bore"):
		return strings.TrimSuffix(b, " barb")
	}
	return a + " / " + b
}

func endSize(n *graph.Port) string {
	c := n.Port.End.Candidates
	if len(c) == 0 {
		return "?"
	}
	e := c[0]
	word := ""
	if e.Form == nil {
		word = strings.TrimSpace(e.Size + " " + plain(e.String()))
	} else {
		word = formWord(e.Form)
	}
	if len(c) > 1 {
		word += "?"
	}
	return word
}

// formWord is a thread in few words: "3/4 NPT", "G 3/4", "JIC -6", "M22x1.5".
func formWord(f *threads.Form) string {
	family := f.Family.String()
	switch {
	case strings.HasPrefix(f.Size, "M") || strings.HasPrefix(f.Designation, f.Size+" "+family):
		return f.Designation
	case strings.HasPrefix(family, "NPS") || strings.HasPrefix(family, "NPT"):
		return f.Size + " " + family
	case strings.HasPrefix(f.Size, "-"):
		return family + " " + f.Size
	}
	return f.Designation
}

// plain is the word of an end without a thread: "barb", "push-in".
func plain(end string) string {
	for _, w := range []string{"barb", "bore", "push-in", "compression", "clamp ferrule"} {
		if strings.Contains(end, w) {
			return w
		}
	}
	return ""
}

// panel draws a set of units; joints to units of other panels end in pointers.
func (p *plan) panel(letter, name string, set []*graph.Unit, letterOf map[*graph.Unit]string) *Scheme {
	s := &Scheme{}
	at := map[*graph.Unit]int{}
	for _, u := range set {
		at[u] = len(s.Parts)
		s.Parts = append(s.Parts, p.part(u))
	}
	count := 0
	for i, j := range p.sys.Graph.Joints {
		a, b := p.sys.Graph.Ports[j.A].Unit, p.sys.Graph.Ports[j.B].Unit
		from, okA := at[a]
		to, okB := at[b]
		if !okA && !okB {
			continue
		}
		count++
		if !okA {
			from = s.pointer("from "+letterOf[a]+": ", a)
		}
		if !okB {
			to = s.pointer("to "+letterOf[b]+": ", b)
		}
		l := p.link(i, j)
		l.From, l.To = from, to
		s.Links = append(s.Links, l)
	}
	s.back()
	s.Title = fmt.Sprintf("Panel %s, %s: %d parts, %d joints", letter, name, len(set), count)
	s.Desc = s.describe()
	return s
}

func (s *Scheme) pointer(word string, u *graph.Unit) int {
	s.Parts = append(s.Parts, Part{Name: word + u.Name, Symbol: Flag, Flag: true})
	return len(s.Parts) - 1
}

func (p *plan) part(u *graph.Unit) Part {
	out := Part{Name: u.Name, Symbol: symbolOf(u), Notes: notes(p.sys, u), Mark: p.marks.Units[u.Name]}
	k := u.Item.Kind
	out.Source = k.Is(catalog.Sea) || k.Is(catalog.SkinFitting) && (k.Closable() || p.sys.Graph.AtBoundary(u.First) && p.waterOf(u.First) == Sea)
	for _, o := range p.view.Overloads {
		if o.What == u.Name {
			out.Over = "sees " + barWord(o.Sees) + " holds " + barWord(o.Holds)
		}
	}
	for _, c := range p.view.Collapses {
		if c.Hose == u {
			out.Over = "may flatten: -1 bar"
		}
	}
	out.Shut = u.Item.Normal == "shut" && p.view.Name == "normal"
	return out
}

// symbolOf is the drawing of a unit's kind.
func symbolOf(u *graph.Unit) Symbol {
	s := Symbol(u.Item.Kind.Name)
	if _, ok := shapes()[s]; !ok {
		return plainBox
	}
	return s
}

// notes are a unit's figures in few words: length and bore of a hose, what a relief is set
// to, the end of a dial, else what it holds.
func notes(sys *bom.System, u *graph.Unit) []string {
	it := u.Item
	var out []string
	if it.Length != nil {
		out = append(out, quantity.Decimals(it.Length.Metres(), 2)+" m")
	}
	if it.Set != nil {
		out = append(out, "set "+barWord(*it.Set))
	}
	if it.Scale != nil {
		out = append(out, "to "+barWord(*it.Scale)+" bar")
	}
	if it.Micron != nil {
		out = append(out, quantity.Decimals(it.Micron.Metres()*1e6, 2)+" micron")
	}
	if it.Flow != nil {
		out = append(out, quantity.Decimals(it.Flow.LitresPerMinute(), 2)+" L/min")
	}
	if len(out) == 0 && it.Rated != nil {
		out = append(out, barWord(*it.Rated)+" bar")
	}
	for _, other := range sys.Build.Items {
		if other.Inside == it.ID {
			out = append(out, other.ID)
		}
	}
	return out[:min(len(out), 2)]
}

// barWord prints a pressure in bar without its unit.
func barWord(p quantity.Pressure) string {
	if p.Unbounded() {
		return "no bound"
	}
	return quantity.Decimals(p.Bar(), 2)
}

// link draws a joint.
func (p *plan) link(i int, j *graph.Joint) Link {
	l := Link{Name: fmt.Sprintf("J%d", j.Number), Size: p.size[i], Water: p.water[i], Mark: p.marks.Joints[j.Number],
		FromSide: lean(&p.sys.Graph.Ports[j.A]), ToSide: lean(&p.sys.Graph.Ports[j.B])}
	seg := p.sys.Segments.SegmentOf(j.A)
	l.High = seg.High()
	for _, v := range p.view.Segments {
		if v.Segment != seg || p.view.Name == "normal" {
			continue
		}
		l.High = v.High > state.HighPressure
		if v.Changed() {
			l.Bar = barWord(v.High) + " bar"
			if v.Low < 0 && v.High <= 0 {
				l.Bar = barWord(v.Low) + " bar"
			}
		}
	}
	l.Still = p.still(&p.sys.Graph.Ports[j.B]) || p.still(&p.sys.Graph.Ports[j.A])
	return l
}

// still reports whether a port belongs to a dead end, such as a gauge.
func (p *plan) still(n *graph.Port) bool {
	return len(n.Unit.Item.Ports) == 1 && len(n.Unit.Item.Kind.Boundary) == 0
}

func lean(n *graph.Port) Lean {
	switch n.Port.Name {
	case "branch", "c", "d", "e", "f", "b2":
		return Across
	case "product":
		return Under
	}
	return Inline
}

// back marks the links that lead back to what was passed, so that loops open.
func (s *Scheme) back() {
	out := make([][]int, len(s.Parts))
	for i, l := range s.Links {
		out[l.From] = append(out[l.From], i)
	}
	state := make([]uint8, len(s.Parts)) // 0 new, 1 on the way, 2 done
	var visit func(p int)
	visit = func(p int) {
		state[p] = 1
		for _, i := range out[p] {
			switch to := s.Links[i].To; state[to] {
			case 0:
				visit(to)
			case 1:
				s.Links[i].Back = true
			}
		}
		state[p] = 2
	}
	for p := range s.Parts {
		if state[p] == 0 {
			visit(p)
		}
	}
}

// describe says the chains in words, a sentence each.
func (s *Scheme) describe() string {
	n := newNet(s)
	var out []string
	for _, plant := range n.chains() {
		for _, c := range plant {
			var names []string
			if c.anchor >= 0 {
				names = append(names, s.Parts[c.anchor].Name)
			}
			for _, p := range c.parts {
				names = append(names, s.Parts[p].Name)
			}
			out = append(out, strings.Join(names, ", ")+".")
		}
	}
	return strings.Join(out, " ")
}
