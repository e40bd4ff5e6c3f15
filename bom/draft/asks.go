package draft

import (
	"fmt"
	"math"
	"slices"

	"handtight/bom/cart"
	"handtight/bom/money"
	"handtight/catalog"
	"handtight/pressure/quantity"
)

// ask gathers what must be asked, what decides most first: the plant as a whole, then the
// lengths, then what single lines leave open.
func (d *Draft) ask(s *solved, r *router, carts []*cart.Cart, o Options) {
	add := func(q Question) {
		q.Answer = o.Answers[q.Key]
		d.Questions = append(d.Questions, q)
	}
	d.twoPlants(s, add)
	d.duty(s, r, add)
	for _, c := range d.foreign(carts, o) {
		add(Question{Key: "rate " + c, Ask: fmt.Sprintf("What does 1 %s cost in %s?", c, d.currency(carts, o)), Why: "its prices stay comments until then: --rate " + c + "=N --rate-day YYYY-MM-DD"})
	}
	r.lengths(o)
	for _, h := range r.hoses {
		add(Question{Key: "length " + h.id, Ask: fmt.Sprintf("How long is the hose %s (%s)?", h.id, h.between()), Default: metresText(h.length), Why: h.why()})
	}
	for _, p := range d.Parts {
		if p.Aside != "" {
			continue
		}
		for _, a := range p.Ask {
			add(Question{Key: "line " + p.Where() + " " + a, Ask: fmt.Sprintf("%s: %s", p.Where(), a), Lines: []string{p.Where()}})
		}
	}
}

// duty asks what no list says: what the plant is to do, and where.
func (d *Draft) duty(s *solved, r *router, add func(Question)) {
	volts := ""
	for i := range chain().Role {
		r := &chain().Role[i]
		if !r.Volts {
			continue
		}
		for _, u := range s.plant.all(r.Name) {
			if u.part != nil && u.part.Says.Volts[0] > 0 && volts == "" {
				volts = figure(u.part.Says.Volts[0].Volts()) + " V"
			}
		}
	}
	add(Question{Key: "supply", Ask: "Which voltage has the boat?", Default: volts, Why: "pumps and valves must be for it", Choices: []string{"12 V", "24 V", "48 V"}})
	if slices.ContainsFunc(d.Parts, func(p *Part) bool { return p.Aside == "" && p.Kind.Has(catalog.PositivePump) }) {
		add(Question{Key: "pressure", Ask: "At which pressure will it run?", Default: bar(quantity.Pressure(math.Round(r.p.high.Bar()*0.86)) * quantity.Bar), Why: "every part of the pressure side must hold it; below the relief valve's setting"})
	}
	product := ""
	for _, u := range s.plant.all("meter") {
		if u.part != nil && u.part.Says.FlowTo > 0 {
			product = figure(u.part.Says.FlowTo.LitresPerHour()/2) + " L/h"
		}
	}
	add(Question{Key: "product", Ask: "How much water is it to make?", Default: product, Why: "the elements and the pump must be large enough"})
	add(Question{Key: "salinity", Ask: "How salt is the sea where it runs?", Default: "35 g/kg", Why: "the pressure hangs on it"})
	add(Question{Key: "water", Ask: "How cold and how warm is the sea there?", Default: "15 to 25 C", Why: "cold water makes less, warm water lets more salt through"})
	if !slices.ContainsFunc(d.Parts, func(p *Part) bool { return p.Aside == "" && p.Kind.Is(catalog.Element) }) {
		add(Question{Key: "element", Ask: "Which elements go into the vessel, and how many?", Why: "no line of the lists is one"})
	}
	if len(s.plant.all("flush valve")) == 0 {
		add(Question{Key: "flush", Ask: "Is it flushed with fresh water, and from what?", Why: "no carbon filter and no flush valve is in the lists"})
	}
}

// twoPlants asks where the lists have more of what a plant has once.
func (d *Draft) twoPlants(s *solved, add func(Question)) {
	n := 0
	var lines []string
	for _, p := range d.Parts {
		if p.Aside == "" && slices.ContainsFunc(s.plant.units["pump"], func(u *unit) bool { return u.part != nil && u.part.Kind == p.Kind }) {
			n += p.Pieces
			lines = append(lines, p.Where())
		}
	}
	if n < 2 {
		return
	}
	q := Question{Key: "plants", Ask: fmt.Sprintf("The lists have %d high-pressure pumps: one plant with a spare, or %d plants?", n, n), Choices: []string{"one", "more"}, Lines: lines,
		Default: "one", Why: "one plant was drafted, with the first pump"}
	if plants := len(s.plant.every()); plants > 1 {
		q.Default, q.Why = "more", fmt.Sprintf("%d plants were drafted, each with what the lists name first of each sort: ask which belongs with which", plants)
	}
	add(q)
}

// between names what a hose leads from and to.
func (h *cutHose) between() string {
	if h.from == "" {
		return "to " + h.to
	}
	return h.from + " to " + h.to
}

// why tells what the length is asked for.
func (h *cutHose) why() string {
	if h.of == "" {
		return "it is to be made up to measure"
	}
	return "it is cut from " + h.of
}

// lengths shares what the lists bring of each stock among its hoses, in tenths of a metre; a
// metre each where they bring nothing.
func (r *router) lengths(o Options) {
	for _, h := range r.hoses {
		h.length = money.Metre
		if h.part == nil || h.part.Metres <= 0 {
			continue
		}
		n := money.Quantity(0)
		for _, other := range r.hoses {
			if other.part == h.part {
				n++
			}
		}
		h.length = max(money.Metre/10, h.part.Metres/n/100*100)
	}
}

func metresText(q money.Quantity) string { return q.String() + " m" }

// currency is the build's: said, or that of most lines.
func (d *Draft) currency(carts []*cart.Cart, o Options) string {
	if o.Currency != "" {
		return o.Currency
	}
	count := map[string]int{}
	best := ""
	for _, c := range carts {
		for i := range c.Lines {
			code := c.Lines[i].Currency
			if code == "" {
				code = c.Currency
			}
			if code == "" {
				continue
			}
			count[code]++
			if best == "" || count[code] > count[best] {
				best = code
			}
		}
	}
	return orElse(best, "EUR")
}

// foreign lists the currencies of the lists that have no rate.
func (d *Draft) foreign(carts []*cart.Cart, o Options) []string {
	own := d.currency(carts, o)
	var out []string
	for _, c := range carts {
		if code := c.Currency; code != "" && code != own && o.rate(code) == "" && !slices.Contains(out, code) {
			out = append(out, code)
		}
	}
	slices.Sort(out)
	return out
}

// rate is what a person said a currency costs.
func (o *Options) rate(code string) string {
	if o.RateDay == "" {
		return ""
	}
	return o.Rates[code]
}
