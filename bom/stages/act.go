package stages

import (
	"fmt"
	"slices"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/quantity"
)

// Course is acts in an order, for one occasion.
type Course struct {
	Name    string // "daily start"
	Acts    []Act
	Missing []string // parts that the plant has not, and what that means
}

// Act is one thing to do: with which part, how it then stands, and what shall be seen.
type Act struct {
	Unit   string // the part's name; "" where none is touched
	Do     string // "open", "to galley-drain"
	See    string // what shall be seen; "" if nothing
	Orelse string // what to do if it is not seen
}

// Courses makes the sheets of acts of each plant of a build, from its own parts: first
// start, daily start and stop, flush, laying up, waking up. The order of starting (feed
// pump, high-pressure pump, then the pressure, slowly; stopping is the reverse) and the
// first hour to the drain are common practice.
func Courses(sys *bom.System) [][]Course {
	var out [][]Course
	for _, p := range plants(sys) {
		if len(p.have(catalog.PositivePump)) == 0 {
			continue
		}
		start := p.start()
		out = append(out, []Course{p.firstStart(start), start, p.stop(start), p.rinse(), p.layUp(), p.wake()})
	}
	return out
}

// kind lists the units whose kind has any of some roles.
func (p *plant) kind(any catalog.Role) []*graph.Unit {
	return p.where(func(k *catalog.Kind) bool { return k.Is(any) })
}

// where lists the units whose kind meets a condition.
func (p *plant) where(meets func(*catalog.Kind) bool) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range p.units {
		if meets(u.Item.Kind) {
			out = append(out, u)
		}
	}
	return out
}

// valves are the valves on the intake, and those of a brine or product way that are shut
// for the harbour.
func (p *plant) valves() (intake, rest []*graph.Unit) {
	for _, u := range p.units {
		if u.Item.Kind.Selector || p.forFlush(u) || u.Item.Normal == "shut" {
			continue
		}
		if !slices.ContainsFunc(u.Passages(), func(w catalog.Passage) bool { return w.Closable }) || p.is(u, catalog.Throttle) {
			continue
		}
		if p.onIntake[u] || p.intakes[u] {
			intake = append(intake, u)
		} else {
			rest = append(rest, u)
		}
	}
	return intake, rest
}

// gauges sorts the gauges by the pressure that they stand at in normal running.
func (p *plant) gauges() (low, high []*graph.Unit) {
	for _, u := range p.kind(catalog.Gauge) {
		if p.sys.Segments.SegmentOf(u.First).High() {
			high = append(high, u)
		} else {
			low = append(low, u)
		}
	}
	return low, high
}

// selectors lists the product selectors with where each of their ways ends.
func (p *plant) selectorActs(tank bool, see string) []Act {
	var out []Act
	for _, u := range p.units {
		if !u.Item.Kind.Selector || !p.productSelector(u) {
			continue
		}
		ways := u.Passages()
		at := p.stands(u, &stand{tank: tank})
		if at >= len(ways) {
			continue
		}
		do := "to its way " + u.Item.Ports[ways[at].To].Name
		if end := p.endOf(u, ways[at]); end != nil {
			do = "to " + end.Name
		}
		out = append(out, Act{Unit: u.Name, Do: do, See: see})
	}
	return out
}

func each(units []*graph.Unit, do, see, orelse string) []Act {
	var out []Act
	for _, u := range units {
		out = append(out, Act{u.Name, do, see, orelse})
	}
	return out
}

// hasProductDrain reports whether the product can be led to a drain.
func (p *plant) hasProductDrain() bool {
	for _, u := range p.units {
		if u.Item.Kind.Selector && p.productSelector(u) {
			for _, way := range u.Passages() {
				if !p.leadsToTank(u, way) {
					return true
				}
			}
		}
	}
	return len(p.kind(catalog.Store)) == 0
}

func (p *plant) start() Course {
	c := Course{Name: "daily start"}
	intake, rest := p.valves()
	low, high := p.gauges()
	add := func(acts ...Act) { c.Acts = append(c.Acts, acts...) }
	add(each(intake, "open", "", "")...)
	add(each(rest, "open", "nothing may stand shut in the brine's or the product's way", "")...)
	add(each(p.have(catalog.Throttle), "fully open", "", "")...)
	add(p.selectorActs(false, "")...)
	feeds := p.have(catalog.FeedPump)
	add(each(feeds, "on", "", "")...)
	if len(feeds) > 0 {
		add(each(low, "wait for pressure", "the figure of the first start", "a lower one: the strainer or a cartridge is clogged, or air is drawn in; stop")...)
	}
	add(each(p.have(catalog.PositivePump), "on", "an even sound, brine overboard", "knocking or no brine: off at once, it gets too little water")...)
	duty := p.sys.Build.Duty.Pressure
	for _, u := range p.have(catalog.Throttle) {
		do := "shut it slowly, over a minute or more (a judgement)"
		if duty != nil {
			do = "raise the pressure slowly, over a minute or more (a judgement), to " + quantity.Decimals(duty.Bar(), 2) + " bar"
		}
		see := ""
		if len(high) > 0 {
			see = "at " + names(high)
		}
		add(Act{u.Name, do, see, "over it: open again, look for what is shut behind"})
	}
	probes := p.kind(catalog.SalinityProbe)
	for _, u := range probes {
		add(Act{u.Name, "read it", "drinkable by its own paper", "salty: leave the product on the drain"})
	}
	add(p.selectorActs(true, "")...)
	if len(low) == 0 && len(feeds) > 0 {
		c.Missing = append(c.Missing, "No gauge before the high-pressure pump: a clogged filter is not seen.")
	}
	if len(high) == 0 {
		c.Missing = append(c.Missing, "No gauge on the high-pressure side: nobody sees the pressure that the throttle makes.")
	}
	if len(probes) == 0 {
		c.Missing = append(c.Missing, "No salinity probe: taste the product, and measure it by hand, before it goes to a tank.")
	}
	if !p.hasProductDrain() {
		c.Missing = append(c.Missing, "The product cannot be led to a drain: take its line off the tank for the first hour, and whenever it is salty.")
	}
	return c
}

// stop is the start, turned round.
func (p *plant) stop(start Course) Course {
	c := Course{Name: "daily stop"}
	intake, _ := p.valves()
	c.Acts = append(c.Acts, p.selectorActs(false, "")...)
	c.Acts = append(c.Acts, each(p.have(catalog.Throttle), "open slowly, all the way", "pressure falls to nearly nothing", "")...)
	c.Acts = append(c.Acts, each(p.have(catalog.PositivePump), "off", "", "")...)
	c.Acts = append(c.Acts, each(p.have(catalog.FeedPump), "off", "", "")...)
	c.Acts = append(c.Acts, each(intake, "shut", "", "")...)
	return c
}

func (p *plant) firstStart(start Course) Course {
	c := Course{Name: "first start", Missing: start.Missing}
	c.Acts = append(c.Acts, Act{Do: "make the stages of the leak test up to the high-pressure pump without pressure", See: "every joint dry"})
	c.Acts = append(c.Acts, each(p.kind(catalog.Filter), "vent it", "water without bubbles", "")...)
	for _, a := range start.Acts {
		if slices.ContainsFunc(p.selectorActs(true, ""), func(b Act) bool { return a.Unit == b.Unit && a.Do == b.Do }) {
			continue
		}
		c.Acts = append(c.Acts, a)
	}
	c.Acts = append(c.Acts,
		Act{Do: "let the product run to the drain for the first hour (common practice)", See: "new elements are packed in a preservative that must not reach a tank"},
		Act{Do: "write down the pressures before and after the filters and on the high side, the product's flow and salinity, and the water's temperature", See: "the base that every later reading is held against"})
	c.Acts = append(c.Acts, p.selectorActs(true, "only once the water tastes sweet")...)
	return c
}

func (p *plant) rinse() Course {
	c := Course{Name: "flush"}
	var valves []*graph.Unit
	for _, u := range p.units {
		if p.forFlush(u) {
			valves = append(valves, u)
		}
	}
	if len(valves) == 0 && p.flushTank == nil {
		c.Missing = append(c.Missing, "No flush: sea water stands in the plant between runs. It wears metal, and spoils the elements within days.")
		return c
	}
	intake, _ := p.valves()
	c.Acts = append(c.Acts, each(p.have(catalog.PositivePump), "off", "", "")...)
	c.Acts = append(c.Acts, each(p.have(catalog.FeedPump), "off", "", "")...)
	c.Acts = append(c.Acts, each(intake, "shut", "", "")...)
	for _, u := range p.kind(catalog.Carbon) {
		c.Acts = append(c.Acts, Act{u.Name, "look at the date of its cartridge", "within its life: chlorine destroys elements", "change it first"})
	}
	c.Acts = append(c.Acts, each(p.have(catalog.Throttle), "fully open", "", "")...)
	c.Acts = append(c.Acts, p.selectorActs(false, "a trickle of product may come")...)
	c.Acts = append(c.Acts, each(valves, "open", "fresh water overboard", "")...)
	c.Acts = append(c.Acts, Act{Do: p.flushTime(), See: "fresh at the brine's outlet"})
	c.Acts = append(c.Acts, each(valves, "shut", "", "")...)
	raw, rest := p.unflushed()
	if len(rest) > 0 {
		c.Missing = append(c.Missing, "No flush runs through "+list(rest)+": rinse by hand, or choose them for standing sea water.")
	}
	if len(raw) > 0 {
		c.Missing = append(c.Missing, "Sea water stays before the high-pressure pump, in "+list(raw)+".")
	}
	return c
}

// flushTime says how long to flush: three times the water that stands in the hoses, by
// their bores and lengths; what stands in vessels and housings is their makers' figure.
func (p *plant) flushTime() string {
	s := stand{house: true, pumps: true}
	r := p.flood(s)
	litres := 0.0
	for _, u := range p.units {
		if u.Item.Length == nil || !r.port[u.First] {
			continue
		}
		bore := u.Item.Bore
		if bore == nil {
			continue
		}
		d := bore.Metres()
		litres += 3.14159265 / 4 * d * d * u.Item.Length.Metres() * 1000
	}
	flow := 0.0
	for _, u := range p.units {
		if u.Item.Kind.Supply && u.Item.Flow != nil {
			flow = u.Item.Flow.LitresPerMinute()
		}
	}
	if flow == 0 || litres == 0 {
		return "flush until the brine's outlet runs fresh"
	}
	return fmt.Sprintf("flush until the brine's outlet runs fresh: at %s L/min at least %s min for the hoses alone (three times the %s L in them; a judgement), and as long again as the makers of vessel and housings ask",
		quantity.Decimals(flow, 2), quantity.Decimals(float64(int(litres*3/flow*10)+1)/10, 2), quantity.Decimals(float64(int(litres*10+0.5))/10, 2))
}

// unflushed are the parts that sea water wets and no flush runs through: those before the
// high-pressure pump, and the rest.
func (p *plant) unflushed() (raw, rest []string) {
	r := p.flood(stand{house: true, pumps: true})
	before := p.flood(stand{sea: true, pumps: true, held: true})
	w := p.sys.Waters
	for _, u := range p.units {
		if u.Item.Kind.Boats || len(u.Item.Kind.Boundary) > 0 || len(u.Item.Ports) == 0 {
			continue
		}
		wet, rinsed, early := false, false, true
		for i := range u.Item.Ports {
			wet = wet || w.Sea(u.First+i)
			early = early && before.port[u.First+i]
			if j := p.sys.Graph.Port(u, i).Joint; j != nil && r.runs[j] {
				rinsed = true
			}
		}
		switch {
		case !wet || rinsed:
		case early:
			raw = append(raw, u.Name)
		default:
			rest = append(rest, u.Name)
		}
	}
	return raw, rest
}

func list(names []string) string {
	const most = 8
	if len(names) > most {
		return fmt.Sprintf("%s and %d more", join(names[:most]), len(names)-most)
	}
	return join(names)
}

func join(names []string) string {
	if len(names) == 0 {
		return ""
	}
	out := names[0]
	for i, n := range names[1:] {
		if i == len(names)-2 {
			out += " and " + n
		} else {
			out += ", " + n
		}
	}
	return out
}

func (p *plant) layUp() Course {
	c := Course{Name: "laying up"}
	add := func(acts ...Act) { c.Acts = append(c.Acts, acts...) }
	add(Act{Do: "flush, as above"})
	add(Act{Do: "longer than the element's maker lets it stand: preserve it by his paper (fluid, dose and time are his)", See: "the fluid at the brine's outlet"})
	add(each(p.have(catalog.Throttle), "label it PRESERVED, with the date", "", "")...)
	add(Act{Do: "frost to come: elements must neither freeze nor dry out; take them to a warm place, wet, in their bags"})
	for _, k := range []catalog.Role{catalog.Strainer, catalog.Filter} {
		add(each(p.kind(k), "open and drain it against frost", "", "")...)
	}
	pumps := append(p.have(catalog.FeedPump), p.have(catalog.PositivePump)...)
	add(each(pumps, "drain it as its maker says; turned dry only if he allows it", "", "")...)
	for _, list := range [][]*graph.Unit{p.kind(catalog.Plug), p.where(func(k *catalog.Kind) bool { return k.Turns })} {
		add(each(list, "a place to drain by (how high it lies aboard is not in the build)", "", "")...)
	}
	intake, _ := p.valves()
	add(each(intake, "shut", "", "")...)
	return c
}

func (p *plant) wake() Course {
	c := Course{Name: "waking up"}
	c.Acts = append(c.Acts,
		Act{Do: "fit the elements again, and new cartridges"},
		Act{Do: "make the stages of the leak test again, from the feed pump on"},
		Act{Do: "product to the drain for an hour again (common practice): preservative must not reach a tank"})
	c.Acts = append(c.Acts, p.selectorActs(true, "only once the water tastes sweet")...)
	return c
}
