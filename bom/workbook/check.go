package workbook

import (
	"fmt"
	"strings"
	"time"

	"github.com/bojanz/currency"

	"handtight/pressure/pattern"
)

// ContentError says that a Content contradicts itself or holds what a cell
// cannot: written as it stands, the book would change when it recalculates.
type ContentError struct {
	Where string // the shop and the line
	Why   string // what was found, and what was due
}

// Error names the place, what was found there and what was due.
func (e *ContentError) Error() string {
	return fmt.Sprintf("the order cannot be written: %s: %s", e.Where, e.Why)
}

// maxDigits is how many significant digits a spreadsheet keeps of a number
// (common practice: IEEE 754 double precision, shown to 15).
const maxDigits = 15

// plainDecimal is a rate or percent as a build file writes it.
var plainDecimal = pattern.New(`^[0-9]{1,12}(\.[0-9]{1,12})?$`)

// counted is a Content proven to agree with its own formulas, with the numbers
// that the sheets need.
type counted struct {
	Content
	shops    []countedShop
	unpriced int // lines to order without a price
}

type countedShop struct {
	*Shop
	lines   []quantities
	freight currency.Amount // what is charged
	bought  bool            // something with a price is ordered
	digits  uint8
	rate    string // in the build's currency; "1" for the same
}

// count checks the Content against the formulas that the book will hold.
func count(c Content) (*counted, error) {
	k := &counted{Content: c}
	if _, ok := currency.GetDigits(c.Currency); !ok {
		return nil, &ContentError{"the build", fmt.Sprintf("%q is not a currency; write an ISO 4217 code such as EUR", c.Currency)}
	}
	if _, err := time.Parse(time.DateOnly, c.RatesDate); err != nil && c.RatesDate != "" {
		return nil, &ContentError{"the rates", fmt.Sprintf("%q is not a date; write it as 2026-11-20", c.RatesDate)}
	}
	rates, err := rateTable(c)
	if err != nil {
		return nil, err
	}
	total := zero(c.Currency)
	seen := map[lineID]bool{}
	for i := range c.Shops {
		s, err := k.countShop(&c.Shops[i], rates, seen)
		if err != nil {
			return nil, err
		}
		k.shops = append(k.shops, s)
		if total, err = add(total, s.InBuild); err != nil {
			return nil, &ContentError{shopName(s.Shop), err.Error()}
		}
	}
	return k, same("the whole order", "total", c.Total, total)
}

// rateTable gives each currency's rate by code.
func rateTable(c Content) (map[string]string, error) {
	rates := map[string]string{}
	for _, r := range c.Rates {
		where := "rate of " + r.Currency
		switch {
		case !plainDecimal.MatchString(r.Rate) || strings.Trim(r.Rate, "0.") == "":
			return nil, &ContentError{where, fmt.Sprintf("%q is not a rate; write a decimal above 0 such as 1.92", r.Rate)}
		case rates[r.Currency] != "":
			return nil, &ContentError{where, "it is given twice; write it once"}
		}
		rates[r.Currency] = r.Rate
	}
	if own := rates[c.Currency]; own != "" && own != "1" {
		return nil, &ContentError{"rate of " + c.Currency, "it is the build's own currency, so its rate is 1; leave it out"}
	}
	rates[c.Currency] = "1"
	return rates, nil
}

// countShop checks one shop's lines and sums.
func (k *counted) countShop(s *Shop, rates map[string]string, seen map[lineID]bool) (countedShop, error) {
	out := countedShop{Shop: s}
	if s.Currency != "" {
		var ok bool
		if out.digits, ok = currency.GetDigits(s.Currency); !ok {
			return out, &ContentError{shopName(s), fmt.Sprintf("%q is not a currency; write an ISO 4217 code such as EUR", s.Currency)}
		}
		if out.rate = rates[s.Currency]; out.rate == "" {
			return out, &ContentError{shopName(s), "there is no rate for " + s.Currency + "; give one of it in " + k.Currency}
		}
	}
	goods, bought := zero(s.Currency), false
	for i := range s.Lines {
		l := &s.Lines[i]
		id := lineID{s.ID, l.Key}
		if seen[id] || l.Key == "" {
			return out, &ContentError{lineName(s, l), "each line of a shop has a key of its own, and this one is empty or twice"}
		}
		seen[id] = true
		q, err := countLine(l)
		if err != nil {
			return out, &ContentError{lineName(s, l), err.Error()}
		}
		if order, err := parseQuantity(l.Order); err != nil || order != q.order {
			return out, &ContentError{lineName(s, l), fmt.Sprintf("the order is %q, but its parts and packs make %s", l.Order, q.order)}
		}
		if goods, err = k.priceLine(s, l, q, goods); err != nil {
			return out, err
		}
		bought = bought || q.order > 0 && l.HasPrice
		out.lines = append(out.lines, q)
	}
	out.bought = bought
	if s.Currency == "" {
		return out, nil
	}
	return out, out.sums(goods, bought, k.Currency)
}

// priceLine checks a line's total and adds it to the goods.
func (k *counted) priceLine(s *Shop, l *Line, q quantities, goods currency.Amount) (currency.Amount, error) {
	if !l.HasPrice {
		if q.order > 0 {
			k.unpriced++
		}
		return goods, nil
	}
	if s.Currency == "" {
		return goods, &ContentError{lineName(s, l), "it has a price, but its shop has no currency"}
	}
	where := lineName(s, l)
	if err := fits(where, "price", l.Price, s.Currency); err != nil {
		return goods, err
	}
	due, err := l.Price.Mul(q.order.String())
	if err != nil {
		return goods, &ContentError{where, err.Error()}
	}
	if err := same(where, "total", l.Total, due.Round()); err != nil {
		return goods, err
	}
	return add(goods, due.Round())
}

// reckon works out what a shop comes to for goods of that value: the formulas of the book,
// in decimals.
func (s *countedShop) reckon(goods currency.Amount, bought bool, build string) (sums, error) {
	where := shopName(s.Shop)
	out := sums{goods: goods, freight: zero(s.Currency), spent: zero(s.Currency), diff: zero(s.Currency)}
	free := whole(s.FreeFrom, s.Currency)
	over, err := goods.Cmp(free)
	if err != nil {
		return out, &ContentError{where, err.Error()}
	}
	if bought && (free.IsZero() || over < 0) {
		out.freight = whole(s.Freight, s.Currency).Round()
	}
	onGoods, err := add(goods, out.freight)
	if err != nil {
		return out, &ContentError{where, err.Error()}
	}
	if out.customs, err = percentOf(onGoods, s.Customs); err != nil {
		return out, &ContentError{where, "customs: " + err.Error()}
	}
	onAll, _ := add(onGoods, out.customs)
	if out.tax, err = percentOf(onAll, s.Tax); err != nil {
		return out, &ContentError{where, "tax: " + err.Error()}
	}
	out.total, _ = add(onAll, out.tax)
	inBuild, err := out.total.Convert(build, s.rate)
	if err != nil {
		return out, &ContentError{where, err.Error()}
	}
	out.inBuild = inBuild.Round()
	return out, nil
}

// sums checks a shop's sums from its goods down.
func (s *countedShop) sums(goods currency.Amount, bought bool, build string) error {
	where := shopName(s.Shop)
	for what, a := range map[string]currency.Amount{"freight": s.Freight, "the value of free freight": s.FreeFrom} {
		if err := fits(where, what, a, s.Currency); err != nil {
			return err
		}
	}
	got, err := s.reckon(goods, bought, build)
	if err != nil {
		return err
	}
	s.freight = got.freight
	for _, pair := range []struct {
		what       string
		found, due currency.Amount
	}{
		{"goods", s.Goods, got.goods}, {"customs", s.CustomsSum, got.customs}, {"tax", s.TaxSum, got.tax},
		{"total", s.Sum, got.total}, {"total in " + build, s.InBuild, got.inBuild},
	} {
		if err := same(where, pair.what, pair.found, pair.due); err != nil {
			return err
		}
	}
	return nil
}

// lineID tells lines apart.
type lineID struct{ shop, key string }

// lineName names a line in an error.
func lineName(s *Shop, l *Line) string { return shopName(s) + ", line " + l.Key }

// shopName names a shop in an error.
func shopName(s *Shop) string {
	if s.ID == "" {
		return "lines without an offer"
	}
	return "shop " + s.ID
}
