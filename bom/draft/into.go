package draft

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/cart"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/threads"
)

// Entry is what becomes of one line of a later list in a build that is there.
type Entry struct {
	Where string `json:"line"`
	Text  string `json:"text"`
	Item  string `json:"item,omitempty"` // of the build
	Says  string `json:"says"`
}

// Addition is what a later list adds to a build.
type Addition struct {
	Text    []byte  // of the build, with what is added behind it; nil where nothing is
	Fills   []Entry // what the build needs, or a port that stood open
	Doubles []Entry // what the build has already, or more than it takes
	Wrong   []Entry // what is like a part of the build, and is not it
	New     []Entry // what the build has no place for; kept as an item
	Aside   []Entry // what is no part, kept as a comment
}

// Into lays later lists to a build. The build's own text stays as it is, byte for byte, but for the
// steps of a run that a piece goes between, and what a draft put in as missing and is so no longer; what is
// added stands behind it: the shops and offers of what it needs, items for open ports with
// their runs, and whatever has no place as an item that is not placed. No line is dropped.
//
// Errors: an order that cannot be counted.
func Into(sys *bom.System, text []byte, carts []*cart.Cart) (*Addition, error) {
	order, err := sys.Order()
	if err != nil {
		return nil, err
	}
	report := cart.Judge(sys, order, carts, nil)
	w := &adder{a: &Addition{}, sys: sys, carts: carts, ids: map[string]bool{}, taken: map[int]bool{}}
	for _, it := range sys.Build.Items {
		w.ids[it.ID] = true
	}
	for _, v := range report.Lines {
		switch {
		case v.Status == cart.Surplus || v.Status == cart.BoughtTwice:
			if p := partOf(v.Line); p.Aside == "" && p.Kind.Is(catalog.Element) {
				w.elements = append(w.elements, v) // it may go into a vessel that is laid
				continue
			}
		}
		if !w.later(v) {
			w.line(v)
		}
	}
	w.newParts(text)
	if w.b.Len() == 0 {
		return w.a, nil
	}
	var names []string
	for _, c := range carts {
		names = append(names, c.Name)
	}
	added := "\n# --- Added from " + strings.Join(names, ", ") + "\n\n" + w.vendors() + w.b.String()
	if n := len(w.text); n > 0 && w.text[n-1] != '\n' {
		added = "\n" + added
	}
	added = strings.TrimSuffix(added, "\n")
	if strings.Contains(string(text), "\r\n") {
		added = strings.ReplaceAll(added, "\n", "\r\n")
	}
	w.a.Text = append(slices.Clone(w.text), added...)
	return w.a, nil
}

// adder gathers what is added.
type adder struct {
	a     *Addition
	sys   *bom.System
	carts []*cart.Cart
	b     strings.Builder
	ids   map[string]bool
	fresh []*Part
	waits []*Part // that the build has, unless a place lacks one

	elements []*cart.Verdict // of which the build has enough, unless a vessel is laid
	shops    []*cart.Cart    // that an offer names, and that the build has not
	taken    map[int]bool    // open ports
	text     []byte          // of the build, with the steps that were changed
}

func entry(v *cart.Verdict, says string) Entry {
	return Entry{Where: v.Line.Where(), Text: v.Line.Text, Item: v.Item(), Says: says}
}

// line sorts one line by what the cart's own judgement says of it.
func (w *adder) line(v *cart.Verdict) {
	switch {
	case v.IsWrong():
		w.a.Wrong = append(w.a.Wrong, entry(v, v.Reason))
		w.comment(v.Line, "does not fit: "+v.Reason)
	case v.Status == cart.Covers || v.Status == cart.OtherPrice || v.Status == cart.SumDiffers || v.Status == cart.NoQuantity:
		if by := w.offered(v); by != "" {
			w.a.Doubles = append(w.a.Doubles, entry(v, fmt.Sprintf("%s is offered by %s already; this is a further offer", v.Item(), by)))
		} else {
			w.a.Fills = append(w.a.Fills, entry(v, fmt.Sprintf("buys %s, which had no offer", v.Item())))
		}
		for _, item := range v.Items {
			w.offer(v, item)
		}
	case v.Status == cart.Surplus || v.Status == cart.BoughtTwice:
		w.a.Doubles = append(w.a.Doubles, entry(v, orElse(v.Reason, "the build takes no more of it")))
		w.comment(v.Line, "doubles "+v.Item())
	case v.Status == cart.Unsure:
		w.a.Aside = append(w.a.Aside, entry(v, orElse(v.Ask, v.Reason)))
		w.comment(v.Line, "ASK: "+orElse(v.Ask, v.Reason))
	default:
		p := partOf(v.Line)
		if p.Aside != "" {
			w.a.Aside = append(w.a.Aside, entry(v, p.Aside))
			w.comment(v.Line, p.Aside)
			return
		}
		w.fresh = append(w.fresh, p)
	}
}

func (w *adder) comment(l *cart.Line, says string) {
	for _, text := range []string{l.Where() + ": " + orElse(l.Text, "(no text)"), "  " + says} {
		w.remark(text)
	}
	w.b.WriteString("\n")
}

// remark writes a comment of as many rows as it takes.
func (w *adder) remark(text string) {
	for _, row := range fold(strings.Map(plain, text), 98) {
		w.b.WriteString("# " + row + "\n")
	}
}

func plain(r rune) rune {
	if r < ' ' || r == 0x7f {
		return ' '
	}
	return r
}

// offered is the shop that the build buys an item from already; "" for none.
func (w *adder) offered(v *cart.Verdict) string {
	for _, o := range w.sys.Build.Offers {
		if o.Item == v.Item() && o.Vendor != nil {
			return orElse(o.Vendor.Name, o.Vendor.ID)
		}
	}
	return ""
}

// shop is the build's id for the shop of a list; a shop that it has not is added.
func (w *adder) shop(l *cart.Line) (id, currency string) {
	i := slices.IndexFunc(w.carts, func(c *cart.Cart) bool { return c.Name == l.Cart })
	if i < 0 {
		return "", ""
	}
	c := w.carts[i]
	for _, v := range w.sys.Build.Vendors {
		if v.ID == shopOf(c) {
			return v.ID, v.Currency
		}
	}
	if !slices.Contains(w.shops, c) {
		w.shops = append(w.shops, c)
	}
	return shopOf(c), orElse(c.Currency, w.sys.Build.Currency)
}

// vendors writes the shops that are new.
func (w *adder) vendors() string {
	var b strings.Builder
	for _, c := range w.shops {
		var f fields
		f.text("id", shopOf(c))
		f.text("name", c.Name)
		f.text("currency", orElse(c.Currency, w.sys.Build.Currency))
		b.WriteString(f.write("vendor") + "\n")
	}
	return b.String()
}

// offer writes what the line's shop asks for an item; one of a currency without a rate, or
// that the build has already, stays a comment.
func (w *adder) offer(v *cart.Verdict, item string) {
	shop, currency := w.shop(v.Line)
	for _, o := range w.sys.Build.Offers {
		if o.Item == item && o.Vendor != nil && o.Vendor.ID == shop {
			w.comment(v.Line, "the build has this shop's offer of "+item)
			return
		}
	}
	f, note, rated := w.asks(v.Line, v.Unit == "m", item)
	says := "covers " + item
	if note != "" {
		says += "; ASK: " + note
	}
	if !rated {
		says += "; ASK: the rate of " + currency + " in [rates], then the offer can stand"
	}
	w.remark(v.Line.Where() + ": " + v.Line.Text + " (" + says + ")")
	w.b.WriteString(f + "\n")
}

// asks is what the shop of a line asks for an item, as a table; as a comment where the build has no
// rate of the shop's currency.
func (w *adder) asks(l *cart.Line, metres bool, item string) (text, note string, rated bool) {
	shop, currency := w.shop(l)
	p := &Part{Line: l, Says: l.Says()}
	price, pack, note := p.price()
	var f fields
	f.text("item", item)
	f.text("vendor", shop)
	f.text("code", l.Code)
	if price != "" && (l.Currency == "" || l.Currency == currency) {
		f.text("price", price)
	}
	if metres {
		f.text("per", "m")
	} else if pack > 1 {
		f.add("pack", fmt.Sprint(pack))
	}
	text = f.write("offer")
	_, rated = w.sys.Build.Rates.Of[currency]
	if rated = rated || currency == w.sys.Build.Currency; !rated {
		text = "# " + strings.ReplaceAll(strings.TrimSuffix(text, "\n"), "\n", "\n# ") + "\n"
	}
	return text, note, rated
}

// newParts writes what the build has no item for: with a run where it closes a port that
// stands open, else as an item that no run takes.
func (w *adder) newParts(text []byte) {
	taken := map[string]bool{}
	for id := range w.ids {
		taken[id] = true
	}
	w.text = text
	all := slices.Concat(w.fresh, w.waits)
	name(all, taken)
	d := &Draft{Parts: all}
	if err := d.readBack(); err != nil {
		return
	}
	lay := newLayer(w.sys, text, all, taken)
	lay.lay()
	w.text = lay.text
	for _, v := range w.elements {
		if lay.laidVessel == nil {
			w.line(v)
			continue
		}
		w.a.Fills = append(w.a.Fills, entry(v, "goes into "+lay.laidVessel.Name))
		w.offer(v, v.Item())
	}
	for _, p := range all {
		w.part(p, lay)
	}
	w.b.WriteString(lay.hoses + lay.runs)
}

// part writes what becomes of one part: where it was laid, the open ports that it closes, or an item
// that no run takes.
func (w *adder) part(p *Part, lay *layer) {
	laid := lay.says[p]
	if p.Aside != "" {
		w.a.Aside = append(w.a.Aside, Entry{Where: p.Where(), Text: p.Line.Text, Says: p.Aside})
		w.comment(p.Line, p.Aside)
		return
	}
	if p.fallback != nil && len(laid) == 0 {
		w.line(p.fallback)
		return
	}
	var ports []*graph.Port
	if len(laid) == 0 {
		ports = w.open(p)
	}
	if p.same {
		w.further(p, laid)
		return
	}
	f := p.fields()
	if lay.laidVessel != nil && p.Kind.Is(catalog.Element) {
		f.text("inside", lay.laidVessel.Item.ID)
		laid = append(laid, "goes into "+lay.laidVessel.Name)
	}
	if n := p.Pieces - len(ports) - len(laid); n > 0 && !p.Kind.Loose {
		f.add("extra", fmt.Sprint(n))
	}
	w.remark(p.Where() + ": " + p.Line.Text + " (" + w.told(p, laid, ports, lay.why[p]) + ")")
	for _, a := range append(slices.Clone(p.Assume), p.Ask...) {
		w.b.WriteString("# ASK: " + strings.Map(plain, a) + "\n")
	}
	w.b.WriteString(f.write(p.tableOf()) + "\n")
	w.priced(p)
	for i, port := range ports {
		step := p.ID
		if i > 0 {
			step += fmt.Sprintf("/%d", i+1)
		}
		var r fields
		r.text("name", p.Kind.Name+" on "+port.Name())
		r.add("path", "["+quote(port.Name())+", "+quote(step)+"]")
		w.b.WriteString(r.write("run") + "\n")
	}
}

// told enters a part among what fills a place or is new, and gives what is said of it.
func (w *adder) told(p *Part, laid []string, ports []*graph.Port, why string) string {
	e := Entry{Where: p.Where(), Text: p.Line.Text, Item: p.ID}
	switch {
	case len(laid) > 0:
		e.Says = strings.Join(laid, "; ")
	case len(ports) > 0:
		e.Says = "goes on " + strings.Join(names(ports), " and ") + ", which stood open"
	default:
		if e.Says = "no place of the build takes it"; why != "" {
			e.Says += ": " + why
		}
		w.a.New = append(w.a.New, e)
		return e.Says
	}
	w.a.Fills = append(w.a.Fills, e)
	return e.Says
}

// priced writes what the shop of a part asks for it.
func (w *adder) priced(p *Part) {
	if p.Line.Code == "" && p.Line.Price == "" {
		return
	}
	text, note, rated := w.asks(p.Line, p.isStock(), p.ID)
	if note != "" {
		w.b.WriteString("# ASK: " + note + "\n")
	}
	if !rated {
		w.b.WriteString("# ASK: the rate of this shop's currency in [rates], then the offer can stand\n")
	}
	w.b.WriteString(text + "\n")
}

// further writes a part that is a further piece of an item of the build: its offer alone.
func (w *adder) further(p *Part, laid []string) {
	w.a.Fills = append(w.a.Fills, Entry{Where: p.Where(), Text: p.Line.Text, Item: p.ID, Says: strings.Join(laid, "; ")})
	w.offer(p.fallback, p.ID)
}

// later keeps a line for the places of the build that lack a piece: one that doubles what the
// build has, or buys what stands in it only as missing. It is what it was where none takes it.
func (w *adder) later(v *cart.Verdict) bool {
	switch v.Status {
	case cart.Unsure, cart.Covers, cart.OtherPrice, cart.SumDiffers, cart.NoQuantity, cart.Surplus, cart.BoughtTwice:
	default:
		if !v.IsWrong() {
			return false
		}
	}
	p := partOf(v.Line)
	if p.Aside != "" || p.Kind.Loose && !p.isStock() {
		return false
	}
	p.fallback = v
	w.waits = append(w.waits, p)
	return true
}

func names(list []*graph.Port) []string {
	var out []string
	for _, p := range list {
		out = append(out, p.Name())
	}
	return out
}

// open lists the ports of the build that stand open and that a part of one port closes, each
// once: a gauge, a probe, a plug.
func (w *adder) open(p *Part) []*graph.Port {
	if p.item == nil || len(p.item.Ports) != 1 || p.Kind.Boats || p.Kind.Loose {
		return nil
	}
	var out []*graph.Port
	for i := range w.sys.Graph.Ports {
		port := &w.sys.Graph.Ports[i]
		if port.Joint != nil || w.taken[i] || w.sys.Graph.AtBoundary(i) || named(w.sys.Build.Plugged, port.Name()) || named(w.sys.Build.LeftOpen, port.Name()) || len(out) == p.Pieces {
			continue
		}
		if m, open := threads.Worst(port.Port.End, p.item.Ports[0].End); len(port.Port.End.Candidates) > 0 && len(p.item.Ports[0].End.Candidates) > 0 && !open && m.Verdict.Holds() {
			out = append(out, port)
			w.taken[i] = true
		}
	}
	return out
}

func named(list []build.PortRef, port string) bool {
	return slices.ContainsFunc(list, func(r build.PortRef) bool { return r.Unit+"."+r.Port == port })
}
