package draft

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"handtight/bom/cart"
	"handtight/bom/money"
	"handtight/catalog"
)

// vendors writes the shop of each list.
func (w *writer) vendors() {
	for _, c := range w.carts {
		var f fields
		f.text("id", shopOf(c))
		f.text("name", strings.TrimSuffix(filepath.Base(c.Name), filepath.Ext(c.Name)))
		f.text("currency", orElse(c.Currency, w.d.currency(w.carts, w.o)))
		w.comment("The shop of %s. ASK: its freight, customs and tax.", c.Name)
		w.line("%s", f.write("vendor"))
	}
}

// shopOf names the shop of a list.
func shopOf(c *cart.Cart) string {
	return orElse(idOf(strings.TrimSuffix(filepath.Base(c.Name), filepath.Ext(c.Name))), "list")
}

// genericName is what joints call a clamp, a washer or a tape; "" where the line says too
// little.
func (p *Part) genericName() string {
	switch {
	case p.Kind.Is(catalog.Clamp):
		if p.Says.Bore > 0 {
			return "clamp for " + millimetres(p.Says.Bore.Millimetres()) + " mm hose"
		}
	case p.Kind.Is(catalog.Washer):
		if len(p.Says.Ends) == 1 && len(p.Says.Ends[0].Candidates) > 0 && p.Says.Ends[0].Candidates[0].Form != nil {
			size := p.Says.Ends[0].Candidates[0].Form.Designation
			switch {
			case p.Says.Bonded:
				return "bonded washer " + size
			case p.Says.Flat:
				return "flat gasket " + size
			}
		}
	case p.Kind.Is(catalog.Tape):
		return "tape 12 mm"
	}
	return ""
}

// offer writes what the shop asks; a price of a currency without a rate stays a comment.
func (w *writer) offer(p *Part, item string) {
	i := slices.IndexFunc(w.carts, func(c *cart.Cart) bool { return c.Name == p.Line.Cart })
	if i < 0 || p.Line.Code == "" && p.Line.Price == "" {
		return
	}
	c := w.carts[i]
	code := orElse(p.Line.Currency, c.Currency)
	shop := orElse(c.Currency, w.d.currency(w.carts, w.o))
	var f fields
	f.text("item", item)
	f.text("vendor", shopOf(c))
	f.text("code", p.Line.Code)
	price, pack, note := p.price()
	if price != "" && (code == "" || code == shop) {
		f.text("price", price)
	}
	if p.isStock() {
		f.text("per", "m")
	} else if pack > 1 {
		f.add("pack", fmt.Sprint(pack))
	}
	if note != "" {
		w.comment("ASK: %s", note)
	}
	text := f.write("offer")
	if rate := w.o.rate(shop); shop != w.d.currency(w.carts, w.o) && rate == "" {
		for _, l := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
			w.line("# %s", l)
		}
		w.line("# ASK: the rate of %s, written in [rates]: then this offer can stand\n", shop)
		return
	}
	w.line("%s", text)
}

// price is that of one piece or metre: what the line says, divided by its pack.
func (p *Part) price() (price string, pack int, note string) {
	l := p.Line
	if l.Price == "" {
		return "", 0, ""
	}
	n := int(l.Pack / money.Piece)
	if n <= 1 {
		return l.PriceText(), 0, ""
	}
	if l.Unit != "pack" && !l.Bundle {
		return l.PriceText(), n, "whether the price is of one or of the pack"
	}
	each, ok := perPiece(l.PriceText(), n)
	if !ok {
		return "", n, fmt.Sprintf("a pack of %d costs %s: what one costs does not come out even", n, l.PriceText())
	}
	return each, n, ""
}
