package choose

import (
	"context"
	"strconv"

	"github.com/bojanz/currency"
	"github.com/cockroachdb/apd/v3"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/order"
)

// Cheaper is by how much a plan of [Shops] costs less than an order, landed: with freight,
// customs, tax and minimum orders.
type Cheaper struct {
	Total  currency.Amount // of the plan
	Saves  currency.Amount
	Share  string // of the order's total, in percent with one decimal: "14.2"
	Swaps  []Swap // alternatives that it takes
	Proved bool
	Order  *order.Order
}

// Against tells whether a plan costs less than an order; false where none does, and where
// no line can be had at two offers and nothing may be swapped.
//
// Errors: those of [Shops].
func Against(ctx context.Context, sys *bom.System, o *order.Order) (Cheaper, bool, error) {
	if !choosable(sys.Build) {
		return Cheaper{}, false, nil
	}
	c, err := Shops(ctx, sys)
	if err != nil {
		return Cheaper{}, false, err
	}
	d, less := c.Saves(o)
	if !less {
		return Cheaper{}, false, nil
	}
	return Cheaper{c.Order.Total, d, share(d, o.Total), c.Swaps, c.Proved, c.Order}, true, nil
}

// choosable reports whether there is anything to choose.
func choosable(b *build.Build) bool {
	if len(b.Options) > 0 {
		return true
	}
	seen := map[string]bool{}
	for _, o := range b.Offers {
		if o.Price == nil {
			continue
		}
		if seen[o.Item] {
			return true
		}
		seen[o.Item] = true
	}
	return false
}

// share is a part of a whole in percent, to one decimal.
func share(part, whole currency.Amount) string {
	p, _, err := apd.NewFromString(part.Number())
	if err != nil {
		return ""
	}
	w, _, err := apd.NewFromString(whole.Number())
	if err != nil || w.IsZero() {
		return ""
	}
	context := apd.BaseContext.WithPrecision(20)
	var out apd.Decimal
	if _, err := context.Quo(&out, p, w); err != nil {
		return ""
	}
	f, err := out.Float64()
	if err != nil {
		return ""
	}
	return strconv.FormatFloat(f*100, 'f', 1, 64)
}
