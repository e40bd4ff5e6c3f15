package duty

import (
	"math"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/line"
	"handtight/pressure/process/pump"
	"handtight/pressure/process/sea"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// Lines are what runs in each unit in normal running, and what it costs.
type Lines struct {
	Solved bool
	WhyNot string
	Hoses  []Hose
	Flow   map[*graph.Unit]span.Span[quantity.Flow] // through every unit that water passes, in its main way
	Inlets []Inlet
	// Dirty is what all losses before the pump may come to together until 0.2 bar are left at it.
	Tank quantity.Pressure // worst loss of the product's way out, from the vessel
}

// Hose is a hose with what runs in it.
type Hose struct {
	Unit    *graph.Unit
	Flow    span.Span[quantity.Flow]
	Speed   span.Span[float64]           // m/s; of a hose whose bore is known
	Loss    span.Span[quantity.Pressure] // of the hose alone
	Known   bool
	Where   Where
	Unknown string // why nothing is known of its loss
}

// Where says on which side of the plant a line lies.
type Where uint8

// The sides.
const (
	Suction  Where = iota + 1 // before the piston pump
	HighSide                  // from the pump to the throttle
	Brine                     // behind the throttle
	Product
	Other
)

// Inlet is what a piston pump finds before it.
type Inlet struct {
	Pump       *graph.Unit
	Pressure   span.Span[quantity.Pressure] // filters clean: the lower curve at the greatest flow, to the upper at the least
	Middle     quantity.Pressure            // filters clean at their least, the lower curve, the middle flow
	Dirty      quantity.Pressure            // with every filter at the end of its life, at the middle flow
	HasFeed    bool
	FeedKnown  bool
	Filters    []*graph.Unit
	May        quantity.Pressure // what all losses together may be until 0.2 bar are left; with a feed pump
	NPSH       span.Span[float64]
	NPSHKnown  bool
	Needs      span.Span[float64]
	NeedsSaid  bool
	LineLoss   quantity.Pressure // of the line without its filters, at the middle flow
	TurnsKnown bool
}

// Losses that nobody said.
var (
	smoothRough   = 0.005 * quantity.Millimetre                        // memory: smooth hose 0.0015 to 0.01 mm
	cleanFilter   = span.Between(0.03*quantity.Bar, 0.15*quantity.Bar) // memory: 10 inch, 5 to 20 micron, at 8 L/min
	dirtyFilter   = span.Between(0.7*quantity.Bar, 1.0*quantity.Bar)   // seen: when cartridges are changed
	filterFlow    = 8 * quantity.LitrePerMinute
	cleanStrainer = span.Between(0.005*quantity.Bar, 0.03*quantity.Bar)
	blindStrainer = 4.0                          // times the clean loss with half the holes blind (computed: K about 1/a2)
	usualNPSH     = span.Between(1.0, 2.5)       // m; memory
	usualLift     = span.Between(-500.0, 1000.0) // mm
	tailShare     = 0.75                         // bore of a hose tail over its hose's (judgement)
	leastLeft     = 0.2 * quantity.Bar           // before a pump
)

// lossNumber is what a kind of part takes, by the larger of two handbooks for 1/2 inch (Technical
// Paper 410 by its fT; the ventilation handbook's threaded rows).
var lossNumber = map[string]float64{
	"elbow": 2.1, "tee": 0.9, "seacock": 0.1, "through-hull": 0.5, "shut-off valve": 0.1, "check valve": 2.7, "solenoid valve": 9,
	"selector valve": 2.4, "flow meter": 6, "flush timer valve": 9, "adaptor": 0.5, "union": 0.1, "cross": 0.9, "manifold": 0.9,
}

// net is the flow network of one plant, in one case.
type net struct {
	s      *bom.System
	m      *Making
	water  line.Water
	node   map[int]int // of each port
	nodes  int
	pumpQ  float64 // share of the feed's span: 0 the least, 1 the greatest
	upper  bool    // feed pump by its upper curve
	dirty  bool
	flush  bool          // the pumps stand, the flush valves and the throttles are open
	prod   quantity.Flow // product of all rows
	links  []flow.Link
	unitOf []*graph.Unit
	n      flow.Network
	lift   quantity.Length
}

// linesOf solves the flows of normal running.
func linesOf(s *bom.System, m *Making) *Lines {
	out := &Lines{Flow: map[*graph.Unit]span.Span[quantity.Flow]{}}
	if !m.FeedKnown || m.Feed.Hi <= 0 {
		out.WhyNot = "the pump's flow is not known"
		return out
	}
	lift := liftOf(s, m)
	type corner struct {
		pumpQ        float64
		upper, dirty bool
		prod         quantity.Flow
		lift         quantity.Length
	}
	product := span.Span[quantity.Flow]{}
	middle := quantity.Flow(0)
	if m.Made {
		product, middle = m.All.Product, m.Middle.Product
	}
	cases := []corner{{1, false, false, product.Lo, lift.Hi}, {0, true, false, product.Hi, lift.Lo}, {0.5, false, true, middle, lift.Middle()}, {0.5, false, false, middle, lift.Middle()}}
	var answers []*flow.Answer
	var nets []*net
	for _, c := range cases {
		n := &net{s: s, m: m, water: m.water, pumpQ: c.pumpQ, upper: c.upper, dirty: c.dirty, prod: c.prod, lift: c.lift}
		a, err := n.solve()
		if err != nil {
			out.WhyNot = err.Error()
			return out
		}
		answers, nets = append(answers, a), append(nets, n)
	}
	out.Solved = true
	out.gather(nets, answers)
	out.inlets(nets, answers, lift)
	return out
}

// liftOf is the pump above the water: as said, below it where the graph says that its line
// lies under the waterline, else the usual range.
func liftOf(s *bom.System, m *Making) span.Span[quantity.Length] {
	if l := s.Build.Duty.Lift; l != nil {
		return span.Exactly(*l)
	}
	for _, u := range m.Pumps {
		if u.Below {
			return span.Exactly(quantity.Length(0))
		}
	}
	return span.Between(quantity.Length(usualLift.Lo), quantity.Length(usualLift.Hi))
}

func (n *net) solve() (*flow.Answer, error) {
	n.joinNodes()
	for _, u := range n.m.units {
		n.unit(u)
	}
	n.anchor()
	n.n.Nodes, n.n.Links = n.nodes, n.links
	return n.n.Solve()
}

// joinNodes makes a node of each port, and one of two ports that are joined.
func (n *net) joinNodes() {
	n.node = make(map[int]int, 2*len(n.m.units))
	for _, u := range n.m.units {
		for k := range u.Item.Ports {
			i := u.First + k
			if _, done := n.node[i]; done {
				continue
			}
			n.node[i] = n.nodes
			if j := n.s.Ports[i].Joint; j != nil {
				n.node[j.A], n.node[j.B] = n.nodes, n.nodes
			}
			n.nodes++
		}
	}
}

func (n *net) link(u *graph.Unit, from, to int, law flow.Law) {
	n.links = append(n.links, flow.Link{From: n.node[u.First+from], To: n.node[u.First+to], Law: law})
	n.unitOf = append(n.unitOf, u)
}

// unit adds the links of a unit in normal running.
func (n *net) unit(u *graph.Unit) {
	for i := range u.Item.Ports {
		if n.s.Boundary(u, i) {
			if n.flush && u.Item.Kind.Supply {
				n.supply(u, i)
				continue
			}
			n.n.Fixed = append(n.n.Fixed, flow.Fixed{Node: n.node[u.First+i]})
		}
	}
	if u.Item.IsHose() {
		n.link(u, 0, 1, n.hose(u.Item))
		return
	}
	for way, p := range u.Passages() {
		e := circuit.Link{Unit: u, Is: p.Is, Closable: p.Closable, Position: way}
		if e.ShutNormally() && !(n.flush && e.ForFlush()) || u.Item.Kind.Selector && way > 0 || p.From < 0 || p.To < 0 {
			continue
		}
		n.passage(u, p)
	}
}

func (n *net) passage(u *graph.Unit, p catalog.Passage) {
	taken := func(port int, q quantity.Flow) {
		n.n.Taken = append(n.n.Taken, flow.Taken{Node: n.node[u.First+port], Flow: q})
	}
	if n.flush {
		n.still(u, p)
		return
	}
	switch p.Is {
	case catalog.PositivePump:
		q := n.pumpFlow(u)
		taken(p.From, q)
		if u.Item.Kind.Name == "energy recovery pump" {
			// The rod's side takes the brine, and passes it on: see the throttle below.
			taken(p.To, -q)
			return
		}
		taken(p.To, -q)
	case catalog.FeedPump:
		lower, upper, ok := Curves(u.Item)
		switch {
		case !ok:
			n.link(u, p.From, p.To, flow.OneWay{Law: flow.Linear{At: filterFlow, Loses: 100}}) // what it adds is not known
		case n.upper:
			n.link(u, p.From, p.To, flow.Feed{Curve: upper})
		default:
			n.link(u, p.From, p.To, flow.Feed{Curve: lower})
		}
	case catalog.Throttle:
		n.n.Throttles = append(n.n.Throttles, flow.Throttle{From: n.node[u.First+p.From], To: n.node[u.First+p.To], Holds: n.m.Pressure.Middle()})
	case catalog.Membrane:
		share := n.prod / quantity.Flow(max(n.vessels(), 1))
		taken(p.From, share)
		taken(p.To, -share)
	case catalog.Open:
		n.link(u, p.From, p.To, n.part(u))
	case catalog.OneWay:
		n.link(u, p.From, p.To, flow.OneWay{Law: n.part(u)})
	}
}

// still is a passage in the flush: what pumps let water through their valves, and the
// throttles stand open.
func (n *net) still(u *graph.Unit, p catalog.Passage) {
	switch p.Is {
	case catalog.Open, catalog.Throttle:
		n.link(u, p.From, p.To, n.part(u))
	case catalog.OneWay, catalog.PositivePump, catalog.FeedPump:
		n.link(u, p.From, p.To, flow.OneWay{Law: n.part(u)})
	}
}

// supply is a house supply: it gives less pressure as more is taken, by its pressure and its
// open flow.
func (n *net) supply(u *graph.Unit, port int) {
	it := u.Item
	if it.Pressure == nil || it.Flow == nil {
		return
	}
	curve, _, err := pump.Between(*it.Pressure, *it.Flow)
	if err != nil {
		return
	}
	n.n.Fixed = append(n.n.Fixed, flow.Fixed{Node: n.nodes})
	n.links = append(n.links, flow.Link{From: n.nodes, To: n.node[u.First+port], Law: flow.Feed{Curve: curve}})
	n.unitOf = append(n.unitOf, u)
	n.nodes++
}

// flushed solves the flush of a plant: the flow of each unit, nil where no supply gives any, or
// nothing says how much.
func flushed(s *bom.System, m *Making) map[*graph.Unit]quantity.Flow {
	known := false
	for _, u := range m.units {
		known = known || u.Item.Kind.Supply && u.Item.Pressure != nil && u.Item.Flow != nil
	}
	if !known {
		return nil
	}
	n := &net{s: s, m: m, water: m.water, pumpQ: 0.5, flush: true}
	if fresh, err := line.Of(20, 0); err == nil {
		n.water = fresh
	}
	a, err := n.solve()
	if err != nil {
		return nil
	}
	out := map[*graph.Unit]quantity.Flow{}
	for i, u := range n.unitOf {
		out[u] = max(out[u], quantity.Flow(math.Abs(float64(a.Flow[i]))))
	}
	return out
}

func (n *net) vessels() int {
	count := 0
	for _, row := range n.m.Rows {
		count += len(row)
	}
	return count
}

// pumpFlow is a piston pump's flow at this case.
func (n *net) pumpFlow(u *graph.Unit) quantity.Flow {
	pick := func(s span.Span[quantity.Flow]) quantity.Flow { return s.Lo + quantity.Flow(n.pumpQ)*(s.Hi-s.Lo) }
	if u.Item.Kind.Name == "energy recovery pump" {
		return pick(n.m.Feed)
	}
	q, _, _ := PumpFlow(u.Item, n.m.in.pressure.Middle())
	return pick(q)
}

// BoreOf is the bore of a hose, its own or its stock's.
func BoreOf(b *build.Build, it *build.Item) (quantity.Length, bool) {
	if it.Bore != nil {
		return *it.Bore, true
	}
	if it.Outside != nil && it.Wall != nil && *it.Outside > 2**it.Wall {
		return *it.Outside - 2**it.Wall, true
	}
	if stock, ok := b.Item(it.Of); ok && it.Of != "" && stock != it {
		return BoreOf(b, stock)
	}
	if it.Outside != nil {
		return *it.Outside * 0.7, true // thin-walled tube of 10 mm has 7 to 8 mm (memory)
	}
	return 0, false
}

func (n *net) hose(it *build.Item) flow.Law {
	bore, ok := BoreOf(n.s.Build, it)
	if !ok || it.Length == nil {
		return flow.Linear{At: filterFlow, Loses: 100}
	}
	p := flow.Pipe{Bore: line.Bore{Diameter: bore, Length: *it.Length, Roughness: smoothRough}, Water: n.water}
	stock, _ := n.s.Build.Item(it.Of)
	for _, i := range []*build.Item{it, stock} {
		if i == nil {
			continue
		}
		if i.Process.Roughness != nil {
			p.Bore.Roughness = *i.Process.Roughness
		}
		if i.Process.Corrugate {
			p.Times = line.CorrugatedMost
		}
	}
	if len(it.Ports) == 2 && it.Of != "" { // pushed over tails
		k, _ := line.Barb(quantity.Length(tailShare), 1)
		p.K = 2 * k
	}
	return p
}

// part is what a fitting or a device loses.
func (n *net) part(u *graph.Unit) flow.Law {
	it := u.Item
	if kv := it.Process.Kv; kv != nil {
		return flow.Square{At: *kv, Loses: quantity.Pressure(float64(n.water.Density) / 1000 * float64(quantity.Bar))}
	}
	filter := it.Kind.Name == "filter housing" || it.Kind.Name == "carbon filter" || it.Kind.Name == "strainer"
	if filter {
		return n.filter(it)
	}
	k, ok := lossNumber[it.Kind.Name]
	if !ok {
		k = 0.1
	}
	bore := 12 * quantity.Millimetre
	if it.Bore != nil {
		bore = *it.Bore
	} else if near, ok := n.near(u); ok {
		bore = near
	}
	return flow.Pipe{Bore: line.Bore{Diameter: bore}, K: k, Water: n.water}
}

func (n *net) filter(it *build.Item) flow.Law {
	at := func(l *build.LossAt, usual quantity.Pressure) flow.Law {
		if l != nil {
			return flow.Linear{At: l.Flow, Loses: max(l.Pressure, 1)}
		}
		return flow.Linear{At: filterFlow, Loses: usual}
	}
	if it.Kind.Name == "strainer" {
		usual := cleanStrainer.Hi
		if n.upper || n.pumpQ == 0.5 {
			usual = cleanStrainer.Lo
		}
		if n.dirty {
			usual = quantity.Pressure(blindStrainer) * cleanStrainer.Middle()
		}
		return at(it.Process.Loss, usual)
	}
	switch {
	case n.dirty && it.Process.LossDirty != nil:
		return at(it.Process.LossDirty, 0)
	case n.dirty:
		return flow.Linear{At: max(n.m.Feed.Middle(), 1e-9), Loses: dirtyFilter.Lo}
	case n.upper, n.pumpQ == 0.5:
		return at(it.Process.Loss, cleanFilter.Lo)
	}
	return at(it.Process.Loss, cleanFilter.Hi)
}

// near is the bore of a hose that is joined to a unit, or to its neighbour.
func (n *net) near(u *graph.Unit) (quantity.Length, bool) {
	for depth, list := 0, []*graph.Unit{u}; depth < 4; depth++ {
		var next []*graph.Unit
		for _, v := range list {
			for i := range v.Item.Ports {
				j := n.s.Node(v, i).Joint
				if j == nil {
					continue
				}
				for _, p := range []int{j.A, j.B} {
					other := n.s.Ports[p].Unit
					if bore, ok := BoreOf(n.s.Build, other.Item); ok && other.Item.IsHose() {
						return bore, true
					}
					if other != v {
						next = append(next, other)
					}
				}
			}
		}
		list = next
	}
	return 0, false
}

// anchor fixes the pressure of what no way leads from to water of a known pressure: a dead
// end behind a shut valve. The throttles hold theirs.
func (n *net) anchor() {
	up := make([]int, n.nodes+1)
	for i := range up {
		up[i] = i
	}
	find := func(v int) int {
		for up[v] != v {
			up[v] = up[up[v]]
			v = up[v]
		}
		return v
	}
	for _, f := range n.n.Fixed {
		up[find(f.Node)] = find(n.nodes)
	}
	for _, t := range n.n.Throttles {
		up[find(t.From)] = find(n.nodes)
	}
	for _, l := range n.links {
		up[find(l.From)] = find(l.To)
	}
	for v := range n.nodes {
		if find(v) != find(n.nodes) {
			n.n.Fixed = append(n.n.Fixed, flow.Fixed{Node: v})
			up[find(v)] = find(n.nodes)
		}
	}
}

// gather takes the flows of the clean cases as ranges.
func (l *Lines) gather(nets []*net, answers []*flow.Answer) {
	before := map[*graph.Unit]bool{}
	for _, p := range nets[0].m.pistons() {
		if in, _ := circuit.PumpEnds(p); in >= 0 {
			for _, k := range upstream(nets[0], answers[0], nets[0].node[p.First+in]) {
				before[nets[0].unitOf[k]] = true
			}
		}
	}
	for i, u := range nets[0].unitOf {
		q := span.Empty[quantity.Flow]()
		for c := range answers {
			if !nets[c].dirty {
				q = q.Reach(quantity.Flow(math.Abs(float64(answers[c].Flow[i]))))
			}
		}
		if old, ok := l.Flow[u]; !ok || q.Hi > old.Hi {
			l.Flow[u] = q
		}
		if !u.Item.IsHose() {
			continue
		}
		h := Hose{Unit: u, Flow: q, Where: nets[0].where(u, before[u])}
		bore, ok := BoreOf(nets[0].s.Build, u.Item)
		if p, isPipe := nets[0].links[i].Law.(flow.Pipe); ok && isPipe {
			h.Known = true
			h.Speed = span.Between(line.Bore{Diameter: bore}.Speed(q.Lo), line.Bore{Diameter: bore}.Speed(q.Hi))
			lo, _ := p.Loss(q.Lo)
			hi, _ := p.Loss(q.Hi)
			h.Loss = span.Between(lo, hi)
		} else {
			h.Unknown = "its bore is not said"
		}
		l.Hoses = append(l.Hoses, h)
	}
}

// where says on which side a hose lies, by the waters that wet it and by the pressure.
func (n *net) where(u *graph.Unit, before bool) Where {
	switch {
	case before:
		return Suction
	case n.s.Waters().Product(u.First):
		return Product
	case n.s.SegmentOf(u.First) != nil && n.s.SegmentOf(u.First).High():
		return HighSide
	case n.s.Waters().Sea(u.First):
		return Brine
	}
	return Other
}

// pistons are the piston pumps and the energy-recovery pump.
func (p *Plant) pistons() []*graph.Unit {
	if p.Recovery != nil {
		return append(append([]*graph.Unit(nil), p.Pumps...), p.Recovery)
	}
	return p.Pumps
}

// inlets says what each piston pump finds.
func (l *Lines) inlets(nets []*net, answers []*flow.Answer, lift span.Span[quantity.Length]) {
	m := nets[0].m
	rho := float64(m.water.Density) * line.Gravity
	for _, u := range m.pistons() {
		in, _ := circuit.PumpEnds(u)
		if in < 0 {
			continue
		}
		at := func(c int) quantity.Pressure {
			return answers[c].Pressure[nets[c].node[u.First+in]] - quantity.Pressure(rho*nets[c].lift.Metres())
		}
		i := Inlet{Pump: u, Pressure: span.Between(at(0), at(1)), Middle: at(3), Dirty: at(2), Needs: usualNPSH}
		before := upstream(nets[3], answers[3], nets[3].node[u.First+in])
		for _, k := range before {
			v, a := nets[3].unitOf[k], answers[3]
			switch v.Item.Kind.Name {
			case "feed pump":
				i.HasFeed = true
				_, _, i.FeedKnown = Curves(v.Item)
				q := quantity.Flow(math.Abs(float64(a.Flow[k])))
				if lower, _, ok := Curves(v.Item); ok {
					i.May = lower.Pressure(q) - quantity.Pressure(rho*nets[3].lift.Metres()) - leastLeft
					if m.Recovered != nil {
						i.May -= m.Recovered.Middle.Inlet - leastLeft
					}
				}
				continue
			case "filter housing", "carbon filter":
				i.Filters = append(i.Filters, v)
				continue
			case "strainer":
				continue
			}
			loss, _ := nets[3].links[k].Law.Loss(a.Flow[k])
			i.LineLoss += quantity.Pressure(math.Abs(float64(loss)))
		}
		if p := u.Item.Process.NPSH; p != nil {
			i.Needs, i.NeedsSaid = span.Exactly(p.Metres()), true
		}
		i.npsh(nets[3], answers[3], before, at(0), at(1), u)
		l.Inlets = append(l.Inlets, i)
	}
}

// npsh is the head at a pump's inlet, with the greater acceleration head and with none.
func (i *Inlet) npsh(n *net, a *flow.Answer, before []int, low, high quantity.Pressure, u *graph.Unit) {
	turns := speeds(u.Item)
	i.TurnsKnown = turns.Hi > 0
	vapour, err := sea.Vapour(max(n.m.in.water.Hi, 1))
	if err != nil {
		return
	}
	head := func(p quantity.Pressure) float64 {
		h, _ := line.Suction{Surface: line.Atmosphere, Feed: p, Vapour: vapour, Water: n.water}.Available()
		return h
	}
	most := 0.0
	for _, k := range before {
		v := n.unitOf[k]
		if v.Item.Kind.Name == "feed pump" {
			break // the line before it is not the piston pump's to move
		}
		bore, ok := BoreOf(n.s.Build, v.Item)
		if !v.Item.IsHose() || !ok || v.Item.Length == nil {
			continue
		}
		speed := math.Abs(line.Bore{Diameter: bore}.Speed(a.Flow[k]))
		if h, err := line.Acceleration(*v.Item.Length, speed, turns.Hi, line.ThrowMost); err == nil {
			most += h
		}
	}
	i.NPSH, i.NPSHKnown = span.Between(head(low)-most, head(high)), true
}

// upstream lists the links that bring water to a node, from it outward.
func upstream(n *net, a *flow.Answer, node int) []int {
	into := make([][]int, n.nodes)
	from := func(k int) int {
		if a.Flow[k] < 0 {
			return n.links[k].To
		}
		return n.links[k].From
	}
	for k, l := range n.links {
		if math.Abs(float64(a.Flow[k])) >= 1e-8 {
			to := l.From + l.To - from(k)
			into[to] = append(into[to], k)
		}
	}
	var out []int
	seen := map[int]bool{node: true}
	for queue := []int{node}; len(queue) > 0; queue = queue[1:] {
		for _, k := range into[queue[0]] {
			out = append(out, k)
			if v := from(k); !seen[v] {
				seen[v] = true
				queue = append(queue, v)
			}
		}
	}
	return out
}

// Good is the head that a pump should find, from the greater end of what it needs.
func (i *Inlet) Good() float64 { return line.Needed(i.Needs.Hi) }
