package read

import (
	"fmt"
	"math"
	"net/url"
	"slices"
	"strings"
	"unicode"

	"github.com/bojanz/currency"

	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/quantity"
)

// vendorTables reads the shops.
func (r *reader) vendorTables(root *source.Table) {
	for _, t := range root.Tables("vendor") {
		v := &build.Vendor{Place: build.MarkOf(t, "")}
		v.ID, _ = t.RequiredText("id", "hamburg")
		v.Name, _ = t.Text("name")
		if v.Name == "" {
			v.Name = v.ID
		}
		if code, ok := t.RequiredText("currency", "EUR"); ok {
			v.Currency = r.currency(t, "currency", code)
		}
		if v.Language = wish(t, "language", "en", "de", "fr", "es", "it", "nl"); v.Language == "en" {
			v.Language = ""
		}
		r.terms(t, v)
		t.Done()
		if v.ID == "" {
			continue
		}
		if first, ok := r.vendors[v.ID]; ok {
			p := first.Place.Place()
			t.Fault("id", fmt.Sprintf("the shop `%s` is given twice: here, and in %s line %d", v.ID, p.File, p.Line), "give one of them another id")
			continue
		}
		r.vendors[v.ID] = v
		r.build.Vendors = append(r.build.Vendors, v)
	}
}

func (r *reader) terms(t *source.Table, v *build.Vendor) {
	for _, sum := range []struct {
		key, hint string
		to        *currency.Amount
	}{{"freight", "48.00", &v.Terms.Freight}, {"minimum", "50.00", &v.Terms.Minimum}, {"free_from", "300.00", &v.Terms.FreeFrom}} {
		if text, ok := t.Text(sum.key, sum.hint); ok && v.Currency != "" {
			a, err := money.ParseAmount(text, v.Currency)
			if err != nil {
				refuse(t, sum.key, err, fmt.Sprintf("write the sum in %s, like %q", v.Currency, sum.hint))
			}
			*sum.to = a
		}
	}
	v.Terms.Customs = percent(t, "customs")
	v.Terms.Tax = percent(t, "tax")
}

func percent(t *source.Table, key string) money.Percent {
	text, ok := t.Text(key, "5 %")
	if !ok {
		return money.Percent{}
	}
	p, err := money.ParsePercent(text)
	if err != nil {
		refuse(t, key, err, "write it like \"5 %\"")
	}
	return p
}

// offerLine is an offer whose names are not tied yet.
type offerLine struct {
	table        *source.Table
	offer        *build.Offer
	vendor, item string
}

func (r *reader) offerTables(root *source.Table) {
	for _, t := range root.Tables("offer") {
		o := &build.Offer{Pack: money.Piece, Place: build.MarkOf(t, "")}
		line := offerLine{table: t, offer: o}
		line.item, _ = t.RequiredText("item", "hp-pump")
		line.vendor, _ = t.RequiredText("vendor", "hamburg")
		o.Item = line.item
		o.Code, _ = t.Text("code", "TP-8-100")
		o.URL = webPage(t)
		o.Per = wish(t, "per", "m", "piece")
		o.Unit, _ = t.Text("unit", "roll")
		o.Lead = take(t, "lead", "14 days", quantity.ParseDuration)
		t.Known("price", "pack")
		if n, ok := t.Whole("pack"); ok {
			o.Pack = money.Quantity(n) * money.Piece
			if n < 1 || n > 1_000_000 {
				t.Fault("pack", fmt.Sprintf("a pack of %d cannot be", n), "write how many pieces (or metres) a pack holds, 1 or more")
			}
		}
		r.lengths(t, o)
		r.offers = append(r.offers, line)
	}
}

// webPage reads the address of a shop's page: http or https, with a host, so that a list that
// is handed on opens nothing else.
func webPage(t *source.Table) string {
	text, ok := t.Text("url", "https://shop.example/TP-8-100")
	if !ok || text == "" {
		return ""
	}
	u, err := url.Parse(text)
	if err != nil || (u.Scheme != "http" && u.Scheme != "https") || u.Host == "" || strings.ContainsFunc(text, unicode.IsSpace) {
		t.Fault("url", fmt.Sprintf("`%s` is no address of a page", text), "write it whole, like \"https://shop.example/TP-8-100\"; only http and https are taken")
		return ""
	}
	return text
}

// longest is the longest fixed length of hose that is taken, in mm: a kilometre.
const longest = 1_000_000

// lengths reads the fixed lengths that hose stock is sold in; what is bought is then a
// multiple of their greatest common measure.
func (r *reader) lengths(t *source.Table, o *build.Offer) {
	list := t.Texts("lengths", "5 m")
	if !t.Has("lengths") || list == nil {
		return
	}
	for i, text := range list {
		l, err := quantity.ParseLength(text)
		mm := int(math.Round(l.Millimetres()))
		switch {
		case err != nil:
			t.FaultAt(fmt.Sprintf("`%s` is not a length", text), "write it like \"5 m\"", "lengths", i)
		case mm < 1 || mm > longest:
			t.FaultAt(fmt.Sprintf("a length of %s cannot be sold", text), "write what the shop sells, up to 1000 m", "lengths", i)
		default:
			o.Lengths = append(o.Lengths, mm)
		}
	}
	if t.Has("pack") || o.Per != "m" {
		t.Fault("lengths", "fixed lengths are priced by the metre, and have no pack", "write per = \"m\" with the price of a metre, and leave `pack` out")
	}
	if len(o.Lengths) > 0 {
		o.Pack = money.Quantity(measure(o.Lengths))
	}
}

// measure is the greatest common measure of lengths.
func measure(list []int) int {
	g := 0
	for _, a := range list {
		for a != 0 {
			g, a = a, g%a
		}
	}
	return g
}

// genericWords begin the names of what joints need and offers may name.
var genericWords = []string{"tape", "clamp", "bonded washer", "flat gasket", "O-ring", "washer", "gasket", "cutting ring"}

// resolveOffers ties offers to shops and items, and prices them.
func (r *reader) resolveOffers() {
	var shops []string
	for _, v := range r.build.Vendors {
		shops = append(shops, v.ID)
	}
	for _, line := range r.offers {
		t, o := line.table, line.offer
		v, ok := r.vendors[line.vendor]
		if !ok && line.vendor != "" {
			t.Fault("vendor", fmt.Sprintf("there is no shop `%s`", line.vendor), near(line.vendor, shops, "give it a [[vendor]] with its currency"))
		}
		it, known := r.build.ByID[line.item]
		generic := func(w string) bool { return strings.HasPrefix(line.item, w) }
		if !known && line.item != "" && !slices.ContainsFunc(genericWords, generic) {
			t.Fault("item", fmt.Sprintf("there is no item `%s` to offer", line.item), near(line.item, r.ids(), "name an [[item]], a [[hose]], or what a joint needs, such as \"tape 12 mm\""))
		}
		if o.Per == "m" && (it == nil || it.Kind == nil || !it.Kind.Is(catalog.HoseStock)) {
			t.Fault("per", fmt.Sprintf("`%s` is not sold by the metre", line.item), "take `per` out: the price is that of one piece; only hose stock goes by the metre")
		}
		if ok {
			o.Vendor = v
			r.price(t, o, v)
		}
		t.Done()
		r.build.Offers = append(r.build.Offers, o)
	}
	r.rateless()
}

func (r *reader) price(t *source.Table, o *build.Offer, v *build.Vendor) {
	text, ok := t.Text("price", "1240.00")
	if !ok || v.Currency == "" {
		return
	}
	a, err := money.ParseAmount(text, v.Currency)
	if err != nil {
		refuse(t, "price", err, "write the price of one in "+v.Currency+", like \"12.50\"; leave the key out when it is not known")
		return
	}
	o.Price = &a
}

// rateless reports each currency that offers use and the rates do not have, once.
func (r *reader) rateless() {
	for _, v := range r.build.Vendors {
		_, rated := r.build.Rates.Of[v.Currency]
		used := slices.ContainsFunc(r.build.Offers, func(o *build.Offer) bool { return o.Vendor == v })
		if v.Currency == "" || v.Currency == r.build.Currency || rated || !used {
			continue
		}
		r.faultAt(v.Place, "currency", fmt.Sprintf("there is no rate for %s, in which `%s` sells", v.Currency, v.ID),
			fmt.Sprintf("write in [rates]: %s = \"…\", what one %s costs in %s, and the date", v.Currency, v.Currency, r.build.Currency))
	}
}

func (r *reader) optionTables(root *source.Table) {
	for _, t := range root.Tables("option") {
		o := build.Option{Place: build.MarkOf(t, "")}
		o.For, _ = t.RequiredText("for", "strainer")
		o.Item, _ = t.RequiredText("item", "strainer-bspp")
		if family, ok := t.Text("family", "NPT"); ok {
			if o.Family = family; family != "NPT" && family != "BSP" {
				t.Fault("family", fmt.Sprintf("`%s` is no standard of pipe threads", family), `write family = "NPT", or "BSP" for G, R, Rp and Rc; left out, it is read from the item's ends`)
			}
		}
		if per, ok := t.Text("per", "unit"); ok {
			if o.PerUnit = per == "unit"; !o.PerUnit {
				t.Fault("per", fmt.Sprintf("an option is not chosen per `%s`", per), `write per = "unit" where each unit may be chosen by itself, or leave it out`)
			}
		}
		t.Done()
		r.build.Options = append(r.build.Options, o)
	}
}

func (r *reader) resolveOptions() {
	for _, o := range r.build.Options {
		for key, id := range map[string]string{"for": o.For, "item": o.Item} {
			if _, ok := r.build.ByID[id]; !ok && id != "" {
				r.faultAt(o.Place, key, fmt.Sprintf("there is no item `%s`", id), near(id, r.ids(), "name an [[item]] by its id"))
			}
		}
	}
}
