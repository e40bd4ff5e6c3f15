package order

import (
	"errors"
	"fmt"
	"math"

	"handtight/bom/build"
	"handtight/bom/cut"
	"handtight/bom/money"
	"handtight/catalog"
)

// mostPieces is how many pieces of one stock are planned; more are counted by their
// sum alone.
const mostPieces = 10_000

// cuts lists the pieces that are cut from each hose stock: placed hoses less those
// aboard, the extra ones, and an extra length of the stock itself.
func (c *counter) cuts() {
	aboard := map[*build.Item]money.Quantity{}
	for _, it := range c.sys.Graph.Build.Items {
		aboard[it] = it.Have
		if n, ok := c.byKey[it.ID]; ok && it.Kind.Is(catalog.HoseStock) {
			n.Aboard = int(it.Have)
			if it.Extra > 0 {
				n.Pieces = append(n.Pieces, cut.Piece{Name: it.ID + ", extra", Long: int(it.Extra)})
			}
		}
	}
	for _, u := range c.sys.Graph.Units {
		c.cutOne(u.Item, u.Name, aboard)
	}
	for _, it := range c.sys.Graph.Build.Items {
		for k := range min(it.Extra/money.Piece, mostPieces+1) {
			c.cutOne(it, fmt.Sprintf("%s, extra %d", it.ID, k+1), aboard)
		}
	}
	for _, n := range c.needs {
		if len(n.Pieces) > mostPieces {
			n.Pieces = nil
		}
	}
}

// cutOne adds one hose to the pieces of its stock, unless it is aboard.
func (c *counter) cutOne(it *build.Item, name string, aboard map[*build.Item]money.Quantity) {
	n, ok := c.byKey[it.Of]
	switch {
	case !ok || !it.IsHose():
	case aboard[it] >= money.Piece:
		aboard[it] -= money.Piece
	default:
		n.Pieces = append(n.Pieces, cut.Piece{Name: name, Long: int(it.Metres())})
	}
}

// cutting plans how a need of hose stock is cut from what an offer sells. Its line then
// buys what the plan buys: pieces do not always fill the lengths that their sum would,
// and a short rest aboard is no use. False if the offer has no length for a piece.
func cutting(n *Need, o *build.Offer) (*Need, *cut.Plan, bool, error) {
	if len(n.Pieces) == 0 {
		return n, nil, true, nil
	}
	plan, err := cutPlan(n, o)
	var long *cut.TooLongError
	if errors.As(err, &long) {
		return n, nil, false, nil
	}
	if err != nil {
		return n, nil, false, err
	}
	short := money.Quantity(plan.Bought) - n.Buy()
	if short <= 0 {
		return n, &plan, true, nil
	}
	more := *n
	more.Spare += short
	more.Advice = append(append([]Why(nil), n.Advice...), Why{
		Rule: cuttingRule, Count: short, Text: fmt.Sprintf("%s m more, since hoses are cut whole", short),
	})
	return &more, &plan, true, nil
}

// cuttingRule is the reason for metres that are bought since hoses are cut whole.
const cuttingRule = "cutting"

// LeftOver is how much of the spares is no spare but what cutting leaves over.
func (n *Need) LeftOver() money.Quantity {
	left := money.Quantity(0)
	for _, w := range n.Advice {
		if w.Rule == cuttingRule {
			left += w.Count
		}
	}
	return left
}

func cutPlan(n *Need, o *build.Offer) (cut.Plan, error) {
	if len(o.Lengths) > 0 {
		return cut.Fixed(n.Pieces, n.Aboard, o.Lengths)
	}
	return cut.Reel(n.Pieces, n.Aboard)
}

// reel lets the length off the reel of a plan be what the line orders.
func reel(plan *cut.Plan, order money.Quantity) {
	if last := len(plan.Lengths) - 1; last >= 0 && !plan.Lengths[last].Aboard {
		plan.Lengths[last].Long = int(min(order, math.MaxInt32))
		plan.Bought = plan.Lengths[last].Long
	}
}
