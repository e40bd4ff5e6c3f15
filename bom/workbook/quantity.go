package workbook

import (
	"fmt"
	"strconv"
	"strings"
)

// thousandth is a quantity in thousandths: pieces times 1000, or millimetres.
type thousandth int64

const maxWhole = 1_000_000_000

// parseQuantity reads a decimal with at most three places; "" is 0. It fails on
// anything else, signs and exponents included.
func parseQuantity(s string) (thousandth, error) {
	if s == "" {
		return 0, nil
	}
	whole, part, _ := strings.Cut(s, ".")
	n, err := strconv.ParseUint(whole, 10, 63)
	if err != nil || n > maxWhole || len(part) > 3 || strings.HasSuffix(s, ".") {
		return 0, fmt.Errorf("%q is not a quantity: write digits with at most three decimals", s)
	}
	if part == "" {
		return thousandth(n) * 1000, nil
	}
	m, err := strconv.ParseUint((part + "000")[:3], 10, 63)
	if err != nil {
		return 0, fmt.Errorf("%q is not a quantity: write digits with at most three decimals", s)
	}
	return thousandth(n)*1000 + thousandth(m), nil
}

// String gives the decimal without needless zeros.
func (q thousandth) String() string {
	sign := ""
	if q < 0 {
		sign, q = "-", -q
	}
	s := fmt.Sprintf("%s%d.%03d", sign, q/1000, q%1000)
	return strings.TrimSuffix(strings.TrimRight(s, "0"), ".")
}

// cell gives the number for a cell.
func (q thousandth) cell() float64 { return float64(q) / 1000 }

// quantities are the numbers of one line; a pack of 0 is not known.
type quantities struct {
	placed, planned, spare, extra, have, need, order, pack thousandth
}

// countLine reads a line's quantities and works out need and order: what is
// short, rounded up to whole packs where the pack is known.
func countLine(l *Line) (q quantities, err error) {
	for _, part := range []struct {
		to   *thousandth
		text string
		what string
	}{
		{&q.placed, l.Placed, "placed"}, {&q.planned, l.Planned, "planned"}, {&q.spare, l.Spare, "spare"},
		{&q.extra, l.Extra, "extra"}, {&q.have, l.Have, "have"}, {&q.pack, l.Pack, "pack"},
	} {
		if *part.to, err = parseQuantity(part.text); err != nil {
			return q, fmt.Errorf("%s: %w", part.what, err)
		}
	}
	if q.pack == 0 && l.Pack != "" {
		return q, fmt.Errorf("pack: %s is not a pack: write how many come in one", l.Pack)
	}
	q.need = q.placed + q.planned + q.spare + q.extra - q.have
	switch {
	case q.need <= 0:
	case q.pack == 0:
		q.order = q.need
	default:
		q.order = (q.need + q.pack - 1) / q.pack * q.pack
	}
	return q, nil
}
