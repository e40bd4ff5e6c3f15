package choose

import (
	"handtight/bom/build"
	"handtight/bom/order"
	"handtight/pressure/quantity"
)

// Arrival is what comes last from one shop.
type Arrival struct {
	Vendor  *build.Vendor
	Last    *quantity.Duration // nil if no lead time is known
	Lines   []*order.Line      // that take that long
	Unknown []*order.Line      // without a lead time
}

// Arrivals answers what comes last from each shop of an order, and after how long, in
// the order of the shops. A shop ships when it likes: this is the longest lead time.
func Arrivals(o *order.Order) []Arrival {
	var out []Arrival
	for _, v := range o.Vendors {
		a := Arrival{Vendor: v.Vendor}
		for _, l := range v.Lines {
			switch {
			case l.Order == 0 || l.Filler:
			case l.Offer.Lead == nil:
				a.Unknown = append(a.Unknown, l)
			case a.Last == nil || *l.Offer.Lead > *a.Last:
				a.Last, a.Lines = l.Offer.Lead, []*order.Line{l}
			case *l.Offer.Lead == *a.Last:
				a.Lines = append(a.Lines, l)
			}
		}
		if a.Last != nil || len(a.Unknown) > 0 {
			out = append(out, a)
		}
	}
	return out
}

// Last is the shop whose lines come last of all; false if no lead time is known.
func Last(list []Arrival) (last Arrival, ok bool) {
	for _, a := range list {
		if a.Last != nil && (!ok || *a.Last > *last.Last) {
			last, ok = a, true
		}
	}
	return last, ok
}
