package cart

import (
	"fmt"
	"strings"

	"handtight/bom/money"
)

// allot lays a line's quantity to its needs in turn; what is left is surplus.
func (j *judge) allot(v *Verdict, list []match, q money.Quantity) {
	left := q
	for i := range list {
		n := list[i].need
		gets := min(left, max(0, n.Buy()-j.in[n.index]))
		if i == len(list)-1 {
			gets = left
		}
		others := j.others(n, v.Line.Cart)
		j.bring[n.index] = append(j.bring[n.index], v)
		j.in[n.index] += gets
		if j.byCart[n.index] == nil {
			j.byCart[n.index] = map[string]money.Quantity{}
		}
		j.byCart[n.index][v.Line.Cart] += gets
		left -= gets
		if i < len(list)-1 {
			continue
		}
		over := j.in[n.index] - max(n.Buy(), j.packed(n, v.Line))
		if over <= 0 {
			return
		}
		over = min(over, q)
		v.Status = Surplus
		v.Reason += fmt.Sprintf(" %s more than is needed (%s with spares).", amount(over, n.Unit), amount(n.Buy(), n.Unit))
		v.Remedy = fmt.Sprintf("Take %s out of the cart, or keep it as a further spare.", amount(over, n.Unit))
		if len(others) > 0 {
			v.Status = BoughtTwice
			v.Reason += fmt.Sprintf(" %s buys it too.", strings.Join(others, " and "))
		}
	}
}

// packed rounds what is needed up to the packs that the line or the offer is sold in.
func (j *judge) packed(n *need, l *Line) money.Quantity {
	most := n.line.Order
	pack := l.Pack
	if n.Unit == "m" {
		pack = l.Length
	}
	if pack > 0 && n.Unit != "roll" {
		if up, err := n.Buy().CeilTo(pack); err == nil {
			most = max(most, up)
		}
	}
	return most
}

// others lists the other carts that bring some of it.
func (j *judge) others(n *need, this string) []string {
	var out []string
	for _, c := range j.report.Carts {
		if c.Name != this && j.byCart[n.index][c.Name] > 0 {
			out = append(out, c.Name)
		}
	}
	return out
}
