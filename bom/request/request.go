package request

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/order"
)

// Request is what one shop is asked for.
type Request struct {
	Shop  *build.Vendor
	Build string
	Lines []Line // certain ones first

	in    tongue
	total string
}

// Line is one line of a request, in the shop's language.
type Line struct {
	Quantity string // "13", in Unit
	Unit     string
	Code     string
	Text     string // what it is: kind, ends, material, rating
	Price    string // of one unit; "" unknown
	Total    string
	Ask      string // what must be asked first; "" for nothing
}

// Of makes the request to a shop. The language is one of [Languages]; "" for the shop's own,
// and English where it has none.
//
// Errors: a shop that the order buys nothing from, or a language that is not known.
func Of(b *build.Build, o *order.Order, shop, language string) (*Request, error) {
	at := slices.IndexFunc(o.Vendors, func(v *order.VendorOrder) bool { return v.Vendor.ID == shop })
	if at < 0 {
		var names []string
		for _, v := range o.Vendors {
			names = append(names, v.Vendor.ID)
		}
		return nil, fmt.Errorf("nothing is bought from %q: write one of %s", shop, strings.Join(names, ", "))
	}
	v := o.Vendors[at]
	if language == "" {
		language = v.Vendor.Language
	}
	if language != "" && !slices.Contains(Languages(), language) {
		return nil, fmt.Errorf("%q is no language that is known here: write one of %s", language, strings.Join(Languages(), ", "))
	}
	r := &Request{Shop: v.Vendor, Build: b.Name, in: tongue(language)}
	var asked []Line
	for _, l := range v.Lines {
		if l.Order == 0 || l.Filler {
			continue
		}
		line := r.line(l)
		if line.Ask != "" {
			asked = append(asked, line)
			continue
		}
		r.Lines = append(r.Lines, line)
	}
	r.Lines = append(r.Lines, asked...)
	r.total = v.Sums.Goods.Number() + " " + v.Sums.Goods.CurrencyCode()
	return r, nil
}

// line makes the line of one thing to buy.
func (r *Request) line(l *order.Line) Line {
	out := Line{Code: l.Offer.Code, Text: r.describe(l.Need), Unit: r.in.word("unit", l.Need.Unit), Quantity: r.in.number(l.Order.String()), Ask: l.Need.Question}
	if p := l.Offer.Pack; p > money.Piece && l.Need.Unit == "pc" {
		out.Quantity, out.Unit = fmt.Sprint(int64(l.Order/p)), r.in.word("unit", "pack")
		out.Text += fmt.Sprintf(", %s %s", r.in.word("unit", "pack of"), p)
	}
	if l.Offer.Unit == "roll" {
		out.Unit = r.in.word("unit", "roll")
	}
	if l.Offer.Price != nil {
		out.Price = r.in.number(l.Offer.Price.Number())
		if out.Unit == r.in.word("unit", "pack") {
			if whole, err := money.LineTotal(*l.Offer.Price, l.Offer.Pack); err == nil {
				out.Price = r.in.number(whole.Number())
			}
		}
	}
	if l.Total != nil {
		out.Total = r.in.number(l.Total.Number())
	}
	if l.Need.Item != nil {
		for i := range l.Need.Item.Ports {
			if q := l.Need.Item.Ports[i].End.Question; q != "" && out.Ask == "" {
				out.Ask = q
			}
		}
	}
	return out
}
