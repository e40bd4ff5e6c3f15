package choose

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/order"
)

// 12 pieces: a pack of 10 at 2.00 each and two singles at 3.00 are 26.00; two packs would be
// 40.00, and twelve singles 36.00.
func TestSplitByHand(t *testing.T) {
	sys := walked(t, head+vendor("near", "NZD", "")+vendor("far", "NZD", "")+store("a", 12)+
		offer("a", "near", "2.00", "pack = 10")+offer("a", "far", "3.00", ""))
	o, err := sys.Order()
	require.NoError(t, err)
	require.Equal(t, "36.00", o.Total.Number())
	list, err := Splits(sys, o)
	require.NoError(t, err)
	require.Len(t, list, 1)
	s := list[0]
	require.Equal(t, []string{"near", "10", "far", "2", "26.00", "10.00"}, []string{
		s.First.Vendor.ID, s.AtFirst.String(), s.Second.Vendor.ID, s.AtSecond.String(), s.Total.Number(), s.Saves.Number()})
}

// randomSplits is one market: what is offered, and the money of each shop, as plain numbers.
type randomSplits struct {
	need              int
	shop              []string
	freight, freeFrom []int64 // cents; 0 never free
	tax               []int64 // percent
	other             []int64 // cents of another line, bought at that shop alone
	offers            []struct {
		shop, pack int
		price      int64 // cents
	}
}

func (m *randomSplits) text() string {
	money := func(cents int64) string { return fmt.Sprintf("%d.%02d", cents/100, cents%100) }
	out := head + store("a", m.need)
	for i, s := range m.shop {
		more := "freight = \"" + money(m.freight[i]) + "\"\n" + fmt.Sprintf("tax = \"%d %%\"\n", m.tax[i])
		if m.freeFrom[i] > 0 {
			more += "free_from = \"" + money(m.freeFrom[i]) + "\"\n"
		}
		out += vendor(s, "NZD", more)
		if m.other[i] > 0 {
			out += store("own-"+s, 1) + offer("own-"+s, s, money(m.other[i]), "")
		}
	}
	for _, o := range m.offers {
		out += offer("a", m.shop[o.shop], money(o.price), fmt.Sprintf("pack = %d", o.pack))
	}
	return out
}

// landed is what the whole comes to when so much of the line is bought at each offer, in cents:
// reckoned apart, in fractions.
func (m *randomSplits) landed(at []int) int64 {
	total := int64(0)
	for i := range m.shop {
		goods := m.other[i]
		for k, o := range m.offers {
			if o.shop == i {
				goods += int64((at[k]+o.pack-1)/o.pack*o.pack) * o.price
			}
		}
		bought := m.other[i] > 0
		for k, o := range m.offers {
			bought = bought || o.shop == i && at[k] > 0
		}
		if !bought {
			continue
		}
		sum := goods
		if m.freeFrom[i] == 0 || goods < m.freeFrom[i] {
			sum += m.freight[i]
		}
		tax := new(big.Rat).SetFrac64(sum*m.tax[i], 100)
		tax.Add(tax, big.NewRat(1, 2))
		total += sum + new(big.Int).Div(tax.Num(), tax.Denom()).Int64()
	}
	return total
}

// Every way to buy the line at two offers is tried, piece by piece.
func TestSplitsAgainstBruteForce(t *testing.T) {
	split, saved := 0, []float64{}
	for seed := range uint64(400) {
		r := rand.New(rand.NewPCG(seed, 5))
		m := &randomSplits{need: 1 + r.IntN(23)}
		for i := range 1 + r.IntN(3) {
			m.shop = append(m.shop, fmt.Sprint("s", i))
			m.freight = append(m.freight, int64(r.IntN(3))*500)
			m.freeFrom = append(m.freeFrom, int64(r.IntN(2)*(2000+r.IntN(6000))))
			m.tax = append(m.tax, int64(r.IntN(3))*7)
			m.other = append(m.other, int64(r.IntN(2)*(100+r.IntN(5000))))
		}
		for range 2 + r.IntN(3) {
			m.offers = append(m.offers, struct {
				shop, pack int
				price      int64
			}{r.IntN(len(m.shop)), []int{1, 1, 2, 5, 10}[r.IntN(5)], int64(50 + r.IntN(500))})
		}
		sys := walked(t, m.text())
		o, err := sys.Order()
		require.NoError(t, err)
		list, err := Splits(sys, o)
		require.NoError(t, err)
		if slices.ContainsFunc(o.Lines, func(l *order.Line) bool { return len(l.Shares) > 0 }) {
			continue // the order divides it already, within its shop
		}
		// what the order costs: all of the line at one offer
		whole, err := o.Total.Int64()
		require.NoError(t, err)
		best := whole
		for a := range m.offers {
			for b := range m.offers {
				for first := 1; first < m.need && a != b; first++ {
					at := make([]int, len(m.offers))
					at[a] = (first + m.offers[a].pack - 1) / m.offers[a].pack * m.offers[a].pack
					if at[b] = m.need - at[a]; at[b] <= 0 {
						continue
					}
					best = min(best, m.landed(at))
				}
			}
		}
		if best == whole {
			require.Empty(t, list, "seed %d", seed)
			continue
		}
		split++
		require.Len(t, list, 1, "seed %d", seed)
		got, err := list[0].Total.Int64()
		require.NoError(t, err)
		require.Equal(t, best, got, "seed %d\n%s", seed, m.text())
		saved = append(saved, 100*float64(whole-best)/float64(whole))
	}
	slices.Sort(saved)
	t.Logf("cheaper in %d of 400 markets: by %.1f %% in the middle, %.1f %% at the most", split, saved[len(saved)/2], saved[len(saved)-1])
	require.Greater(t, split, 10)
}

// Of the same markets: every way to buy every line is tried, at any number of offers, and set
// beside the best plan that buys each line at one.
func TestDividedAgainstBruteForce(t *testing.T) {
	const markets = 300
	divided, saved := 0, []float64{}
	for seed := range uint64(markets) {
		r := rand.New(rand.NewPCG(seed, 6))
		var b strings.Builder
		b.WriteString(head)
		shops := 1 + r.IntN(3)
		for v := range shops {
			more := fmt.Sprintf("freight = \"%d.00\"\ntax = \"%d %%\"\n", 5*r.IntN(3), 7*r.IntN(3))
			if r.IntN(2) == 0 {
				more += fmt.Sprintf("free_from = \"%d.00\"\n", 20+r.IntN(60))
			}
			if r.IntN(3) == 0 {
				more += fmt.Sprintf("minimum = \"%d.00\"\n", 10+r.IntN(40))
			}
			b.WriteString(vendor(fmt.Sprint("s", v), []string{"NZD", "EUR", "USD"}[r.IntN(3)], more))
		}
		for i := range 1 + r.IntN(2) {
			id := fmt.Sprint("part", i)
			b.WriteString(store(id, 1+r.IntN(14)))
			for range 2 + r.IntN(2) {
				price := 50 + r.IntN(500)
				b.WriteString(offer(id, fmt.Sprint("s", r.IntN(shops)), fmt.Sprintf("%d.%02d", price/100, price%100), fmt.Sprintf("pack = %d", []int{1, 1, 2, 5, 10}[r.IntN(5)])))
			}
		}
		sys := walked(t, b.String())
		c := chosen(t, b.String())
		require.True(t, c.Proved)
		got, err := c.Order.Total.Int64()
		require.NoError(t, err)
		require.Equal(t, everything(t, sys), got, "seed %d\n%s", seed, b.String())
		whole(t, c.Order)
		one := wholeLines(t, sys)
		require.LessOrEqual(t, got, one)
		if got < one {
			divided++
			saved = append(saved, 100*float64(one-got)/float64(one))
		}
	}
	slices.Sort(saved)
	t.Logf("dividing lines is cheaper in %d of %d markets: by %.1f %% in the middle, %.1f %% at the most", divided, markets, saved[len(saved)/2], saved[len(saved)-1])
	require.Greater(t, divided, markets/10)
}

// wholeLines is the best plan in which each line is bought at one offer.
func wholeLines(t *testing.T, sys *bom.System) int64 {
	shops, lines, needs := reckoned(t, sys)
	goods, bought, best := make([]int64, len(shops)), make([]int, len(shops)), int64(math.MaxInt64)
	var line func(i int)
	line = func(i int) {
		if i == len(lines) {
			total := int64(0)
			for v := range shops {
				if bought[v] > 0 {
					total += shops[v].landed(goods[v])
				}
			}
			best = min(best, total)
			return
		}
		for _, o := range lines[i] {
			cost := int64((needs[i]+o.pack-1)/o.pack*o.pack) * o.price
			goods[o.shop], bought[o.shop] = goods[o.shop]+cost, bought[o.shop]+1
			line(i + 1)
			goods[o.shop], bought[o.shop] = goods[o.shop]-cost, bought[o.shop]-1
		}
	}
	line(0)
	return best
}
