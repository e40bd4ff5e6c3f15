package stages

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/segment"
	"handtight/catalog"
	"handtight/pressure/quantity"
)

// Of makes the leak test of each plant of a build.
func Of(sys *bom.System) []Sheet {
	var out []Sheet
	for _, p := range plants(sys) {
		if len(p.have(catalog.PositivePump)) == 0 && len(p.have(catalog.FeedPump)) == 0 {
			continue
		}
		out = append(out, p.sheet())
	}
	return out
}

// course is a sheet in the making: what has been reached so far.
type course struct {
	p       *plant
	sheet   *Sheet
	reached map[*graph.Joint]bool
	ran     map[*graph.Joint]bool
	before  map[*graph.Unit]string
}

func (p *plant) sheet() Sheet {
	s := Sheet{Joints: p.joints, Plant: p.units[0].Name}
	c := &course{p: p, sheet: &s, reached: map[*graph.Joint]bool{}, ran: map[*graph.Joint]bool{}, before: map[*graph.Unit]string{}}
	c.dryFit()
	c.flush()
	c.gravity()
	c.feed()
	c.idle()
	c.rise()
	c.tank()
	c.jug()
	for _, j := range p.joints {
		if !c.reached[j] {
			s.Dry = append(s.Dry, j)
		}
	}
	return s
}

// add floods a stage, and lists what is new.
func (c *course) add(st Stage, s stand, view string) {
	r := c.p.flood(s)
	for _, j := range c.p.joints {
		if r.port[j.A] && r.port[j.B] && !c.reached[j] {
			c.reached[j] = true
			st.First = append(st.First, j)
		}
		if r.runs[j] && !c.ran[j] {
			c.ran[j] = true
			st.Runs = append(st.Runs, j)
		}
	}
	st.Number, st.Reached, st.Ran = len(c.sheet.Stages), len(c.reached), len(c.ran)
	st.Blocked = c.overloads(view)
	c.sheet.Stages = append(c.sheet.Stages, st)
}

// overloads lists what of the plant sees more than it holds in a state of the build.
func (c *course) overloads(view string) []string {
	v, ok := c.p.sys.Segments.View(view)
	if !ok {
		return nil
	}
	var out []string
	for _, o := range v.Overloads {
		for _, u := range c.p.units {
			if u.Name == o.What {
				out = append(out, fmt.Sprintf("%s sees %s and holds %s", o.What, pressureWord(o.Sees), pressureWord(o.Holds)))
			}
		}
	}
	return out
}

// pressureWord prints a pressure in bar.
func pressureWord(p quantity.Pressure) string {
	if p.Unbounded() {
		return "pressure without bound"
	}
	return quantity.Decimals(p.Bar(), 2) + " bar"
}

func (c *course) dryFit() {
	st := Stage{
		Name: "dry fit", How: "no water, no current",
		Positions: c.positions(stand{}, "off"),
		Notes: []string{
			"Pull at each hose. Look for the mark of the depth that it was pushed on to, for every clamp, and for threads that show alike all round.",
			"Tick each joint card: made by whom, turns by hand, then by spanner.",
		},
	}
	st.Reached, st.Ran = 0, 0
	c.sheet.Stages = append(c.sheet.Stages, st)
}

func (c *course) flush() {
	var from []string
	pressure := ""
	for _, u := range c.p.units {
		if u.Item.Kind.Supply {
			from = append(from, u.Name)
			if u.Item.Pressure != nil {
				pressure = ", " + quantity.Decimals(u.Item.Pressure.Bar(), 2) + " bar"
			}
		}
	}
	s := stand{house: true, pumps: true}
	if len(from) == 0 {
		return
	}
	c.add(Stage{
		Name: "dock flush", How: "fresh water from " + strings.Join(from, " and ") + pressure + ", pumps off",
		Positions: c.positions(s, "off"),
		Notes: []string{
			"Dry paper under each joint, a lamp, and time: 15 minutes (a judgement). Water that runs through shows most leaks; a dead end keeps its air, may look dry now and leak later: loosen nothing, look again at the stages with pressure.",
			"A trickle of product may come once the vessel holds fresh water.",
			"Stop: shut the flush valve, let the pressure go, and only then touch a joint.",
		},
	}, s, "flush")
	if n := len(c.p.joints); n > 0 {
		c.sheet.Flushed, c.sheet.Running = float64(len(c.reached))/float64(n), float64(len(c.ran))/float64(n)
	}
}

func (c *course) gravity() {
	if len(c.p.intakes) == 0 {
		return
	}
	s := stand{sea: true}
	c.add(Stage{
		Name: "afloat, by gravity", How: "sea water as high as it stands outside, pumps off",
		Positions: c.positions(s, "off"),
		Notes: []string{
			"Open the intake slowly, with a hand on it and a plug that fits beside it: a joint below the waterline that lets go sinks the boat.",
			"Somebody stays by the intake for 30 minutes, and looks again after a day (a judgement). Do not leave the boat with it open on the first day.",
			"Only the parts below the waterline fill: how high the water stands is not in the build.",
		},
	}, s, "")
}

func (c *course) feed() {
	pumps := c.p.have(catalog.FeedPump)
	if len(pumps) == 0 {
		return
	}
	var most *quantity.Pressure
	for _, u := range pumps {
		if x := u.Item.Shutoff; x != nil && (most == nil || *x > *most) {
			most = x
		}
	}
	how := names(pumps) + " runs, high-pressure pump off"
	if most != nil {
		how += ", up to " + quantity.Decimals(most.Bar(), 2) + " bar"
	}
	s := stand{sea: true, pumps: true}
	c.add(Stage{
		Name: "feed pump alone", How: how,
		Positions: c.positions(s, "feed"),
		Notes: []string{
			"Vent the filter housings. Bubbles that go on coming mean air drawn in on the suction side, where a leak shows no water.",
			"Write down the pressure at each low-pressure gauge: it is the base that a clogged filter is known by.",
		},
	}, s, "feed pump alone")
}

func (c *course) idle() {
	pumps := c.p.have(catalog.PositivePump)
	if len(pumps) == 0 {
		return
	}
	s := stand{sea: true, pumps: true}
	c.add(Stage{
		Name: "high-pressure pump without pressure", How: names(pumps) + " runs, throttle fully open",
		Positions: c.positions(s, "all"),
		Notes: []string{
			"Feed pump first, then the high-pressure pump. Listen and feel for knocking, heat and shaking hoses, but feel no joint.",
			"Never run it dry, and never with the throttle shut.",
		},
	}, s, "")
}

func (c *course) rise() {
	vessels, duty := c.p.have(catalog.Membrane), c.p.sys.Build.Duty.Pressure
	if len(vessels) == 0 || duty == nil || len(c.p.have(catalog.PositivePump)) == 0 {
		return
	}
	top := *duty
	var why string
	for _, g := range c.p.sys.Segments.All {
		if !g.High() || !c.p.holds(g) || !g.Allowable.Known {
			continue
		}
		if g.Allowable.Rating.Pressure < top {
			top = g.Allowable.Rating.Pressure
			why = "The weakest part holds " + quantity.Decimals(top.Bar(), 2) + " bar: go no higher, though the duty is " + quantity.Decimals(duty.Bar(), 2) + " bar."
		}
	}
	s := stand{sea: true, pumps: true, product: true}
	st := Stage{
		Name: "rising pressure", How: names(c.p.have(catalog.PositivePump)) + " runs; pressure by the throttle, a little at a time",
		Positions: c.positions(s, "all"),
		Steps:     steps(top),
		Notes: []string{
			"Before each step: look from a distance, paper under each joint, nobody in line with a joint. A jet at this pressure goes through skin: never feel for a leak.",
			"Write down the pressure at the beginning and at the end of each hold. A joint that weeps has failed: throttle open, pumps off, wait for zero, then mend; never tighten under pressure.",
			"Product goes to the drain for the first hour (common practice): new elements are packed in a preservative.",
			"Do not lift the relief to test it: the shop sets it.",
		},
	}
	if why != "" {
		st.Notes = append(st.Notes, why)
	}
	c.add(st, s, "normal")
}

func (p *plant) holds(g *segment.Segment) bool {
	for _, j := range g.Joints {
		for _, own := range p.joints {
			if own == j {
				return true
			}
		}
	}
	return false
}

func (c *course) tank() {
	s := stand{sea: true, pumps: true, product: true, tank: true}
	found := false
	for _, u := range c.p.units {
		if u.Item.Kind.Selector && c.p.productSelector(u) {
			for _, way := range u.Passages() {
				found = found || c.p.leadsToTank(u, way)
			}
		}
	}
	if !found {
		return
	}
	c.add(Stage{
		Name: "product to the tank", How: "after the first hour, once the water tastes sweet and the probe agrees",
		Positions: c.positions(s, "all"),
		Notes:     []string{"Write down pressure, flow, salinity and water temperature: the base that later readings are held against."},
	}, s, "")
}

func (c *course) jug() {
	reliefs := c.p.have(catalog.Relief)
	if len(reliefs) == 0 {
		return
	}
	s := stand{jug: true}
	r := c.p.flood(s)
	fresh := false
	for _, j := range c.p.joints {
		fresh = fresh || r.port[j.A] && r.port[j.B] && !c.reached[j]
	}
	if !fresh {
		return
	}
	c.add(Stage{
		Name: "by jug", How: "pumps off, pressure zero; water poured in from the outlet's end of " + names(reliefs),
		Positions: c.positions(s, "off"),
		Notes:     []string{"These joints see water only when the relief lifts, and then all of the pump's: pour, wait 15 minutes, look (a judgement)."},
	}, s, "")
}

// names lists units by name.
func names(units []*graph.Unit) string {
	var out []string
	for _, u := range units {
		out = append(out, u.Name)
	}
	return strings.Join(out, " and ")
}

// positions lists how every valve, selector and pump stands before a stage; on is which
// pumps run: "off", "feed" or "all".
func (c *course) positions(s stand, on string) []Position {
	var out []Position
	add := func(u *graph.Unit, stands string) {
		out = append(out, Position{u, stands})
	}
	for _, u := range c.p.units {
		switch {
		case u.Item.Kind.Selector:
			position := c.p.stands(u, &s)
			ways := u.Passages()
			if position < len(ways) {
				if end := c.p.endOf(u, ways[position]); end != nil {
					add(u, "to "+end.Name)
				} else {
					add(u, "to its way "+u.Item.Ports[ways[position].To].Name)
				}
			}
		case c.p.is(u, catalog.Throttle):
			if s.product {
				add(u, "fully open, then shut a little at a time")
			} else {
				add(u, "fully open")
			}
		case c.closable(u):
			if s.open(c.p, u) {
				add(u, "open")
			} else {
				add(u, "shut")
			}
		case c.p.is(u, catalog.FeedPump):
			add(u, map[bool]string{true: "on", false: "off"}[on != "off"])
		case c.p.is(u, catalog.PositivePump):
			add(u, map[bool]string{true: "on", false: "off"}[on == "all"])
		}
	}
	return out
}

func (c *course) closable(u *graph.Unit) bool {
	for _, w := range u.Passages() {
		if w.Closable || u.Item.Kind.Flush {
			return true
		}
	}
	return false
}
