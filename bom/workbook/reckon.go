package workbook

import (
	"math"
	"strconv"
	"strings"

	"github.com/bojanz/currency"
)

// reckon works out what the formulas of the table come to with what the buyer typed, so that
// a program which does not calculate shows it.
func (b *book) reckon() error {
	b.lines, b.sums, b.other = map[string]lineSums{}, map[string]sums{}, map[string]lineSums{}
	for i := range b.c.shops {
		s := &b.c.shops[i]
		if s.Currency == "" {
			for j := range s.Lines {
				key := lineKey(s.ID, s.Lines[j].Key)
				b.lines[key] = b.lineSums(s, &s.Lines[j], s.lines[j], key)
			}
			continue
		}
		goods, bought, spent, diff := whole(s.Goods, s.Currency), s.bought, zero(s.Currency), zero(s.Currency)
		for j := range s.Lines {
			l, key := &s.Lines[j], lineKey(s.ID, s.Lines[j].Key)
			got := b.lineSums(s, l, s.lines[j], key)
			b.lines[key] = got
			if !l.HasPrice && got.hasTotal {
				goods, _ = add(goods, got.total)
				bought = bought || s.lines[j].order > 0
			}
			if got.hasSpent {
				spent, _ = add(spent, got.spent)
				diff, _ = add(diff, got.diff)
			}
		}
		for n := range b.carry.besides {
			key := besidesKey(n)
			if !strings.EqualFold(b.carry.peek(cellID{buyName, key, buyColumns[colShop].title}).Text, s.label()) {
				continue
			}
			got := b.besidesSums(key, s.Currency)
			if got.hasTotal {
				goods, _ = add(goods, got.total)
				spent, _ = add(spent, got.total)
				bought = bought || got.total.IsPositive()
			}
		}
		got, err := s.reckon(goods.Round(), bought, b.c.Currency)
		if err != nil {
			return err
		}
		got.spent, got.diff = spent.Round(), diff.Round()
		b.sums[s.ID] = got
	}
	for n := range b.carry.besides {
		b.other[besidesKey(n)] = b.besidesSums(besidesKey(n), b.c.Currency)
	}
	return nil
}

// figure reads what ISNUMBER sees in a cell.
func (v typed) figure() maybe {
	f, err := strconv.ParseFloat(v.Text, 64)
	if !v.Number || err != nil || math.IsInf(f, 0) {
		return maybe{}
	}
	return maybe{v.Text, f, true}
}

// orAll reads a number, or a word for all of it.
func (v typed) orAll(all maybe) maybe {
	if got := v.figure(); got.ok {
		return got
	}
	switch strings.ToLower(v.Text) {
	case "yes", "all", "x":
		return all
	}
	return maybe{}
}

func (v typed) empty() bool { return v.Text == "" && v.Formula == "" }

// lineSums works out the formulas of a line.
func (b *book) lineSums(s *countedShop, l *Line, q quantities, key string) lineSums {
	cell := func(col int) typed { return b.carry.peek(cellID{buyName, key, buyColumns[col].title}) }
	out := lineSums{}
	order := maybe{q.order.String(), q.order.cell(), true}
	ordered, received := cell(colOrdered), cell(colReceived)
	out.count = ordered.orAll(order)
	due := order
	if out.count.ok {
		due = out.count
	}
	out.came = received.orAll(due)
	price := maybe{}
	if l.HasPrice {
		price = maybe{l.Price.Number(), toCell(l.Price), true}
		out.total, out.hasTotal = l.Total, true
	} else if price = cell(colPrice).figure(); price.ok && s.Currency != "" {
		out.total, out.hasTotal = times(s.Currency, price.text, order.text)
	}
	paid := cell(colPaid).figure()
	if !paid.ok {
		paid = price
	}
	if out.count.ok && paid.ok && s.Currency != "" {
		out.spent, out.hasSpent = times(s.Currency, paid.text, out.count.text)
	}
	if out.hasSpent {
		out.diff = out.spent
		if out.hasTotal {
			if d, err := out.spent.Sub(out.total); err == nil {
				out.diff = d
			}
		}
	}
	out.state = state(order, ordered, received, out.count, out.came)
	return out
}

// state says how a line stands, as the formula does.
func state(order maybe, ordered, received typed, count, came maybe) string {
	short := func(by float64) string {
		return "short " + strconv.FormatFloat(math.Round(by*1000)/1000, 'f', -1, 64)
	}
	due := order
	if count.ok {
		due = count
	}
	switch {
	case ordered.empty() && received.empty():
		return ""
	case !ordered.empty() && !count.ok:
		return "?"
	case count.ok && count.f < order.f:
		return short(order.f - count.f)
	case received.empty():
		return "due"
	case !came.ok:
		return "?"
	case came.f < due.f:
		return short(due.f - came.f)
	}
	return "in"
}

// times multiplies a price by a number, rounded to the currency's smallest coin.
func times(code, price, number string) (currency.Amount, bool) {
	a, err := currency.NewAmount(price, code)
	if err != nil {
		return currency.Amount{}, false
	}
	if a, err = a.Mul(number); err != nil {
		return currency.Amount{}, false
	}
	return a.Round(), true
}

// besidesSums works out the total of a row under the table.
func (b *book) besidesSums(key, code string) lineSums {
	cell := func(col int) typed { return b.carry.peek(cellID{buyName, key, buyColumns[col].title}) }
	number, price := cell(colOrdered).figure(), cell(colPaid).figure()
	if !number.ok {
		number = cell(colOrder).figure()
	}
	if !price.ok {
		price = cell(colPrice).figure()
	}
	out := lineSums{count: number}
	if number.ok && price.ok {
		a, err := currency.NewAmount(price.text, code)
		if err == nil {
			if a, err = a.Mul(number.text); err == nil {
				out.total, out.hasTotal = a.RoundTo(besidesDigits, currency.RoundHalfUp), true
			}
		}
	}
	return out
}
