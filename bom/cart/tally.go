package cart

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/money"
)

// tally says of each need whether the carts cover it.
func (j *judge) tally() {
	for i, n := range j.match.needs {
		if n.Buy() == 0 && j.in[i] == 0 {
			continue // aboard
		}
		t := &Tally{
			Item: n.Key, About: describe(n), Unit: n.Unit, Need: n.Buy(), InCart: j.in[i], Unsure: j.unsure[i],
			Takes: n.Build(), Spare: n.Spare, Have: n.Have,
			Build: max(0, min(n.Build()-n.Have, n.Buy())),
		}
		j.judgeTally(t, n)
		j.report.Items = append(j.report.Items, t)
	}
}

func (j *judge) judgeTally(t *Tally, n *need) {
	lack := t.Need - t.InCart
	switch {
	case lack <= 0 && t.InCart > max(t.Need, j.sold(n)):
		t.Status = Surplus
		t.Reason = fmt.Sprintf("%s in the cart, %s needed with spares.", amount(t.InCart, t.Unit), amount(t.Need, t.Unit))
		t.Remedy = fmt.Sprintf("Take out %s, or keep it as a further spare.", amount(t.InCart-t.Need, t.Unit))
		return
	case lack <= 0:
		t.Status = Covered
		return
	case t.InCart == 0 && t.Build > 0:
		t.Status = Missing
		t.Reason = fmt.Sprintf("Nothing of it in the cart, %s needed%s.", amount(t.Need, t.Unit), spares(t))
	case t.InCart >= t.Build:
		t.Status = ShortOfSpares
		t.Reason = fmt.Sprintf("%s in the cart: enough to build, and %s short of the spares.", amount(t.InCart, t.Unit), amount(lack, t.Unit))
	default:
		t.Status = Short
		t.Reason = fmt.Sprintf("%s in the cart, %s needed%s.", amount(t.InCart, t.Unit), amount(t.Need, t.Unit), spares(t))
	}
	t.Remedy = fmt.Sprintf("Order %s: %s", n.count(lack), j.instead(n))
	if len(t.Unsure) > 0 {
		t.Reason += " It may be " + strings.Join(t.Unsure, ", or ") + ", which is asked about."
		t.Remedy = "Settle that line first; else order " + n.count(lack) + ": " + j.instead(n)
	}
}

func spares(t *Tally) string {
	if t.Need == t.Build {
		return ""
	}
	return fmt.Sprintf(", of them %s spare", t.Need-t.Build)
}

// sold is the most that packs explain: of the offer, or of the lines that bring it.
func (j *judge) sold(n *need) (most money.Quantity) {
	most = n.line.Order
	for _, v := range j.bring[n.index] {
		most = max(most, j.packed(n, v.Line))
	}
	return most
}

// ask gathers what must be asked, one question for all lines that it settles.
func (j *judge) ask() {
	at := map[string]int{}
	for _, v := range j.report.Lines {
		text := v.Ask
		if v.Status == NoQuantity {
			text = "How many of " + v.Item() + "? " + capital(j.doubt(v)) + "."
		}
		if text == "" {
			continue
		}
		key := v.Line.Cart + "\x00" + v.Line.Text + "\x00" + text
		if k, ok := at[key]; ok {
			j.report.Questions[k].Settles++
			j.report.Questions[k].lines = append(j.report.Questions[k].lines, v)
			continue
		}
		at[key] = len(j.report.Questions)
		q := Question{Cart: v.Line.Cart, Line: v.Line.Row, Item: v.Item(), Choices: v.Items, Ask: text, Settles: 1, lines: []*Verdict{v}}
		if v.Status != Unsure {
			q.Choices = nil
		}
		j.report.Questions = append(j.report.Questions, q)
	}
	for _, c := range j.report.Carts {
		j.currencyQuestion(c)
	}
	slices.SortStableFunc(j.report.Questions, func(a, b Question) int { return b.Settles - a.Settles })
}

// doubt says why a line's quantity is not known.
func (j *judge) doubt(v *Verdict) string {
	n := j.match.byID[codeKey(v.Item())]
	if n == nil {
		return v.Line.Doubt
	}
	_, _, doubt := v.Line.Quantity(n.Unit, j.offered(v.Line, n))
	return orWords(doubt, "the line says no quantity")
}

// currencyQuestion asks for the currency of prices that name none.
func (j *judge) currencyQuestion(c *Cart) {
	n, first := 0, 0
	for i := range c.Lines {
		if l := &c.Lines[i]; l.Out == "" && l.Currency == "" && (l.Price != "" || l.Total != "") {
			if n++; n == 1 {
				first = l.Row
			}
		}
	}
	if n > 0 {
		j.report.Questions = append(j.report.Questions, Question{
			Cart: c.Name, Line: first, Settles: n, Ask: "In which currency are the prices? They were not compared with the offers; say --currency, such as --currency EUR.",
		})
	}
}
