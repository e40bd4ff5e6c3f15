package compare

import (
	"fmt"
	"slices"
	"strings"

	"github.com/bojanz/currency"

	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/order"
)

// Sum is something of the money or of the counts that changed: a price, a rate, what a shop
// takes, how many to order, spares, what a shop's part and the whole come to.
type Sum struct {
	What     string // "price", "rate", "freight", "order", "spare", "shop", "total" ...
	Of       string // the item, the shop, the currency; "" for the whole
	Shop     string // of a price; "" for what is no shop's
	Old, New string // "none" where one side has it not
}

// none stands where one of the builds does not have a figure.
const none = "none"

// sums compares rates, shops, offers, and what both builds come to.
//
// Errors: those of [bom.System.Order], of either.
func (c *comparer) sums() error {
	c.rates()
	c.shops()
	c.offers()
	before, err := c.old.Order()
	if err != nil {
		return fmt.Errorf("%s: %w", c.old.Build.File, err)
	}
	after, err := c.new.Order()
	if err != nil {
		return fmt.Errorf("%s: %w", c.new.Build.File, err)
	}
	c.lines(before, after)
	c.totals(before, after)
	return nil
}

// differ notes a figure that is not the same.
func (c *comparer) differ(s Sum) {
	if s.Old == "" {
		s.Old = none
	}
	if s.New == "" {
		s.New = none
	}
	if s.Old != s.New {
		c.report.Sums = append(c.report.Sums, s)
	}
}

// both lists what either side names, in the old order and then what is new.
func both[T any](old, now []T, name func(T) string) []string {
	var out []string
	seen := map[string]bool{}
	for _, list := range [][]T{old, now} {
		for _, x := range list {
			if k := name(x); !seen[k] {
				seen[k] = true
				out = append(out, k)
			}
		}
	}
	return out
}

func (c *comparer) rates() {
	a, b := &c.old.Build.Rates, &c.new.Build.Rates
	c.differ(Sum{What: "currency of the build", Old: c.old.Build.Currency, New: c.new.Build.Currency})
	for _, code := range both(a.Codes(), b.Codes(), func(s string) string { return s }) {
		c.differ(Sum{What: "rate", Of: code, Old: rate(a, code), New: rate(b, code)})
	}
}

func rate(r *money.Rates, code string) string {
	if x, ok := r.Of[code]; ok {
		return x.String() + " " + r.Base
	}
	return ""
}

func (c *comparer) shops() {
	type vendor = *build.Vendor
	find := func(list []vendor, id string) vendor {
		if i := slices.IndexFunc(list, func(v vendor) bool { return v.ID == id }); i >= 0 {
			return list[i]
		}
		return nil
	}
	for _, id := range both(c.old.Build.Vendors, c.new.Build.Vendors, func(v vendor) string { return v.ID }) {
		a, b := terms(find(c.old.Build.Vendors, id)), terms(find(c.new.Build.Vendors, id))
		for i, what := range []string{"freight", "free from", "minimum", "customs", "tax", "currency"} {
			c.differ(Sum{What: what, Of: id, Shop: id, Old: a[i], New: b[i]})
		}
	}
}

// terms are what a shop takes beside the goods.
func terms(v *build.Vendor) [6]string {
	if v == nil {
		return [6]string{}
	}
	t := v.Terms
	return [6]string{figure(t.Freight), figure(t.FreeFrom), figure(t.Minimum), t.Customs.String(), t.Tax.String(), v.Currency}
}

// figure writes a sum with its currency; "" for none.
func figure(a currency.Amount) string {
	if a.CurrencyCode() == "" {
		return ""
	}
	return a.Number() + " " + a.CurrencyCode()
}

// offers compares prices, by item, shop and code.
func (c *comparer) offers() {
	key := func(o *build.Offer) string { return o.Item + "\x00" + o.Vendor.ID + "\x00" + o.Code }
	prices := func(list []*build.Offer) map[string]string {
		out := map[string]string{}
		for _, o := range list {
			text := "not said"
			if o.Price != nil {
				text = figure(*o.Price)
			}
			if o.Pack > money.Piece {
				text += fmt.Sprintf(", in packs of %s", o.Pack)
			}
			if _, ok := out[key(o)]; !ok {
				out[key(o)] = text
			}
		}
		return out
	}
	a, b := prices(c.old.Build.Offers), prices(c.new.Build.Offers)
	for _, k := range both(c.old.Build.Offers, c.new.Build.Offers, key) {
		part := strings.Split(k, "\x00")
		c.differ(Sum{What: "price", Of: part[0], Shop: part[1], Old: a[k], New: b[k]})
	}
}

// lines compares how many are ordered of each thing, how many of them are spares, and where.
func (c *comparer) lines(before, after *order.Order) {
	type line = *order.Line
	find := func(list []line, key string) line {
		if i := slices.IndexFunc(list, func(l line) bool { return l.Need.Key == key }); i >= 0 {
			return list[i]
		}
		return nil
	}
	for _, key := range both(before.Lines, after.Lines, func(l line) string { return l.Need.Key }) {
		a, b := counts(find(before.Lines, key)), counts(find(after.Lines, key))
		for i, what := range []string{"order", "spare", "planned changes", "bought at"} {
			c.differ(Sum{What: what, Of: key, Old: a[i], New: b[i]})
		}
	}
}

// counts are what an order says of one thing.
func counts(l *order.Line) [4]string {
	if l == nil {
		return [4]string{}
	}
	some := func(q money.Quantity) string {
		if q == 0 {
			return ""
		}
		return q.String() + " " + l.Need.Unit
	}
	return [4]string{some(l.Order), some(l.Need.Spare), some(l.Need.Planned), boughtAt(l, some)}
}

// boughtAt names the shop of a line; of one that is divided each, with its share.
func boughtAt(l *order.Line, some func(money.Quantity) string) string {
	if len(l.Shares) == 0 {
		if l.Offer == nil || l.Order == 0 {
			return ""
		}
		return l.Offer.Vendor.ID
	}
	var out []string
	for _, s := range l.Shares {
		out = append(out, some(s.Order)+" at "+s.Offer.Vendor.ID)
	}
	return strings.Join(out, ", ")
}

// totals compares what each shop's part comes to, and the whole.
func (c *comparer) totals(before, after *order.Order) {
	sums := func(o *order.Order) map[string]string {
		out := map[string]string{}
		for _, v := range o.Vendors {
			out[v.Vendor.ID] = figure(v.Sums.Total)
		}
		return out
	}
	a, b := sums(before), sums(after)
	for _, id := range both(before.Vendors, after.Vendors, func(v *order.VendorOrder) string { return v.Vendor.ID }) {
		c.differ(Sum{What: "shop's total", Of: id, Shop: id, Old: a[id], New: b[id]})
	}
	c.differ(Sum{What: "total", Old: figure(before.Total), New: figure(after.Total)})
}
