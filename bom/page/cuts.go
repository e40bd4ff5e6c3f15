package page

import (
	"strings"

	"handtight/bom/order"
	"handtight/pressure/quantity"
)

// Cut is one length of a hose stock, and what is cut from it, the longest first.
type Cut struct {
	Stock, From, Pieces, Left string
}

// cuts lists the saw cuts of an order: from which length each hose comes, and what is left.
// They are at the hoses' planned lengths; the allowance for squaring stands in the schedule.
func cuts(order *order.Order) []Cut {
	var out []Cut
	for _, l := range order.Lines {
		if l.Cut == nil {
			continue
		}
		for i := range l.Cut.Lengths {
			n := &l.Cut.Lengths[i]
			var pieces []string
			for _, p := range n.Pieces {
				pieces = append(pieces, p.Name+" "+metres(p.Long))
			}
			from := metres(n.Long)
			if n.Aboard {
				from += " aboard"
			}
			out = append(out, Cut{l.Need.Key, from, strings.Join(pieces, ", "), metres(n.Waste())})
		}
	}
	return out
}

func metres(mm int) string {
	return quantity.Decimals(float64(mm)/1000, 3) + " m"
}
