package money

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Quantity is how much is bought, in thousandths: of a piece, or of a metre (so a
// count of metres is a count of millimetres). It is exact, up to 9.2e15 pieces.
type Quantity int64

// Units of quantity: 3*Piece, 1400*Millimetre.
const (
	Millimetre Quantity = 1
	Metre      Quantity = 1000
	Piece      Quantity = 1000
)

// String gives pieces or metres without trailing zeros: "3", "1.4".
func (q Quantity) String() string {
	whole, rest := int64(q)/1000, int64(q)%1000
	if rest == 0 {
		return strconv.FormatInt(whole, 10)
	}
	sign := ""
	if q < 0 {
		sign, whole, rest = "-", -whole, -rest
	}
	return strings.TrimRight(fmt.Sprintf("%s%d.%03d", sign, whole, rest), "0")
}

// Packs answers how many packs cover q: q / pack, rounded up. Nothing needed, or less
// than nothing because enough is aboard, takes 0 packs.
//
// Errors: a pack of 0 or less.
// Source: pack rounding, common practice.
func (q Quantity) Packs(pack Quantity) (int64, error) {
	if pack <= 0 {
		return 0, fmt.Errorf("a pack of %s holds nothing: write pack = 1 or more", pack)
	}
	if q <= 0 {
		return 0, nil
	}
	packs := q / pack
	if q%pack != 0 {
		packs++
	}
	return int64(packs), nil
}

// CeilTo answers how much whole packs bring: the least multiple of pack that covers q.
//
// Errors: a pack of 0 or less; a result beyond what a Quantity holds.
func (q Quantity) CeilTo(pack Quantity) (Quantity, error) {
	packs, err := q.Packs(pack)
	if err != nil {
		return 0, err
	}
	if packs > math.MaxInt64/int64(pack) {
		return 0, fmt.Errorf("%d packs of %s are too many to count", packs, pack)
	}
	return Quantity(packs) * pack, nil
}
