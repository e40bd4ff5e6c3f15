package order

import (
	"fmt"
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/build"
	"handtight/bom/money"
)

// packOf is an offer of so many pieces in a pack, at a price of one piece in euro cents.
func packOf(t require.TestingT, pieces, cents int) *build.Offer {
	price, err := currency.NewAmountFromInt64(int64(cents), "EUR")
	require.NoError(t, err)
	return &build.Offer{Vendor: &build.Vendor{ID: "elbe"}, Code: fmt.Sprintf("of %d", pieces), Price: &price, Pack: money.Quantity(pieces) * money.Piece}
}

// sumOf is what shares come to in cents, and how many pieces they are.
func sumOf(t require.TestingT, shares []Share) (cents int64, pieces int) {
	for _, s := range shares {
		total, err := money.LineTotal(*s.Offer.Price, s.Order)
		require.NoError(t, err)
		n, err := total.Int64()
		require.NoError(t, err)
		cents, pieces = cents+n, pieces+int(s.Order/money.Piece)
	}
	return cents, pieces
}

// A dozen washers where ten come in a bag: a bag and two single ones, where two bags or twelve
// single ones cost more. Worked by hand.
func TestABagAndTwoSingleOnes(t *testing.T) {
	single, bag := packOf(t, 1, 100), packOf(t, 10, 60) // 1.00 each, or 6.00 the bag of ten
	p, err := NewPacking(12, []*build.Offer{single, bag})
	require.NoError(t, err)
	for _, c := range []struct {
		why    string
		pieces int
		cents  int64
		shares []Share
	}{
		{"none", 0, 0, nil},
		{"one", 1, 100, []Share{{single, money.Piece}}},
		{"five single ones", 5, 500, []Share{{single, 5 * money.Piece}}},
		{"six: the bag costs as much, and the first stands", 6, 600, []Share{{single, 6 * money.Piece}}},
		{"seven: the bag is cheaper than seven", 7, 600, []Share{{bag, 10 * money.Piece}}},
		{"ten", 10, 600, []Share{{bag, 10 * money.Piece}}},
		{"twelve: the bag and two", 12, 800, []Share{{single, 2 * money.Piece}, {bag, 10 * money.Piece}}},
	} {
		goods, ok := p.Goods(c.pieces)
		require.True(t, ok, c.why)
		require.Equal(t, c.cents, goods, c.why)
		require.Equal(t, c.shares, p.Shares(c.pieces), c.why)
	}
}

// Against every way to take packs, one by one: no way covers the need for less, and the shares
// cover it at the cost that is told.
func TestPackingAgainstEveryWay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var offers []*build.Offer
		for range rapid.IntRange(1, 3).Draw(t, "offers") {
			offers = append(offers, packOf(t, rapid.IntRange(1, 6).Draw(t, "pack"), rapid.IntRange(1, 200).Draw(t, "cents")))
		}
		pieces := rapid.IntRange(1, 12).Draw(t, "pieces")
		p, err := NewPacking(pieces, offers)
		require.NoError(t, err)
		best := int64(-1)
		var try func(at, left int, cents int64)
		try = func(at, left int, cents int64) {
			if at == len(offers) {
				if left <= 0 && (best < 0 || cents < best) {
					best = cents
				}
				return
			}
			pack := int(offers[at].Pack / money.Piece)
			for n := 0; n == 0 || (n-1)*pack < left; n++ {
				total, _ := money.LineTotal(*offers[at].Price, money.Quantity(n)*offers[at].Pack)
				more, _ := total.Int64()
				try(at+1, left-n*pack, cents+more)
			}
		}
		try(0, pieces, 0)
		goods, ok := p.Goods(pieces)
		require.True(t, ok)
		require.Equal(t, best, goods)
		cents, got := sumOf(t, p.Shares(pieces))
		require.Equal(t, best, cents)
		require.GreaterOrEqual(t, got, pieces)
	})
}

// A shop without a price for it has no cost, which is not a cost of nothing; hose that is sold in
// lengths is cut and not packed.
func TestPackingNeedsAPrice(t *testing.T) {
	silent, lengths := packOf(t, 1, 100), packOf(t, 1, 100)
	silent.Price, lengths.Lengths = nil, []int{5000}
	p, err := NewPacking(3, []*build.Offer{silent, lengths})
	require.NoError(t, err)
	_, ok := p.Goods(3)
	require.False(t, ok)
	goods, ok := p.Goods(0)
	require.True(t, ok, "nothing is bought anywhere")
	require.Zero(t, goods)
	require.Empty(t, p.Shares(3))
}

// What is divided between shops stays what it was: placed parts first, changes, what is asked for,
// and spares last. What is aboard is taken off once, with the first share.
func TestASplitNeedAddsUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) money.Quantity {
			return money.Quantity(rapid.IntRange(0, 6).Draw(t, name)) * money.Piece
		}
		whole := Need{Unit: "pc", Placed: draw("placed"), Planned: draw("planned"), Extra: draw("extra"), Spare: draw("spare"), Have: draw("have")}
		due := min(draw("due"), whole.Buy())
		rest := whole
		part := rest.takeOff(due)
		if whole.Buy() > 0 {
			require.Equal(t, due, part.Buy(), "the share is what was taken")
			require.Equal(t, whole.Buy()-due, rest.Buy(), "and the others have the rest")
		}
		require.Zero(t, rest.Have, "what is aboard counts once")
		require.Equal(t, whole.Placed, part.Placed+rest.Placed)
		require.Equal(t, whole.Planned, part.Planned+rest.Planned)
		require.Equal(t, whole.Extra, part.Extra+rest.Extra)
		require.Equal(t, whole.Spare, part.Spare+rest.Spare)
		if part.Spare > 0 {
			require.Zero(t, rest.Placed+rest.Planned+rest.Extra, "no spare goes before what is fitted")
		}
	})
}

// Hose is cut and stays at one offer; more than a thousand of a thing are bought whole.
func TestWhatIsDivided(t *testing.T) {
	for _, c := range []struct {
		why    string
		need   Need
		pieces int
		ok     bool
	}{
		{"three clamps", Need{Unit: "pc", Placed: 3 * money.Piece}, 3, true},
		{"one clamp", Need{Unit: "pc", Placed: money.Piece}, 1, true},
		{"all are aboard", Need{Unit: "pc", Placed: money.Piece, Have: money.Piece}, 0, false},
		{"hose", Need{Unit: "m", Placed: 3 * money.Piece}, 3, false},
		{"a begun roll of tape is a whole one", Need{Unit: "roll", Placed: money.Piece/2 + money.Piece}, 2, true},
		{"as many as are divided", Need{Unit: "pc", Placed: mostDivided * money.Piece}, mostDivided, true},
		{"one more", Need{Unit: "pc", Placed: (mostDivided + 1) * money.Piece}, mostDivided + 1, false},
	} {
		pieces, ok := c.need.Divisible()
		require.Equal(t, c.pieces, pieces, c.why)
		require.Equal(t, c.ok, ok, c.why)
	}
}

// Shares at one shop are told apart in the order by their codes, else by their packs; the one that
// would be cheapest for the whole keeps the plain name, for its row of a list is known by it.
func TestSharesAreToldApart(t *testing.T) {
	need := &Need{Key: "washer", Unit: "pc", Placed: 12 * money.Piece}
	bag, single, nameless := packOf(t, 10, 60), packOf(t, 1, 100), packOf(t, 1, 110)
	single.Vendor, nameless.Vendor, nameless.Code = bag.Vendor, bag.Vendor, ""
	for _, c := range []struct {
		why    string
		shares []Share
		marks  []string
	}{
		{"twelve single ones cost as much as two bags: the larger share is first, and plain", []Share{{single, 2 * money.Piece}, {bag, 10 * money.Piece}}, []string{"", "of 1"}},
		{"without a code by the pack", []Share{{bag, 10 * money.Piece}, {nameless, 2 * money.Piece}}, []string{"", "pack of 1"}},
		{"twice the same offer", []Share{{bag, 10 * money.Piece}, {single, money.Piece}, {single, money.Piece}}, []string{"", "of 1", "of 1 again"}},
	} {
		l, err := divided(need, c.shares)
		require.NoError(t, err, c.why)
		require.Equal(t, 12*money.Piece, l.Order, c.why)
		var marks []string
		for k, s := range l.Shares {
			marks = append(marks, s.Mark)
			n, of, ok := s.Number()
			require.True(t, ok, c.why)
			require.Equal(t, []int{k + 1, len(c.shares)}, []int{n, of}, c.why)
		}
		require.Equal(t, c.marks, marks, c.why)
	}
	alone, err := divided(need, []Share{{bag, 20 * money.Piece}, {single, money.Piece}})
	require.NoError(t, err)
	require.Empty(t, alone.Shares, "two bags leave nothing for the single one")
	require.Equal(t, 20*money.Piece, alone.Order)
	_, _, ok := alone.Number()
	require.False(t, ok)
	silent := packOf(t, 1, 100)
	silent.Price = nil
	_, err = divided(need, []Share{{bag, 10 * money.Piece}, {silent, 2 * money.Piece}})
	require.ErrorContains(t, err, "washer: an offer without a price takes no share")
}
