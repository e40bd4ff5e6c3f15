package order_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
	"handtight/bom/money"
	"handtight/bom/order"
)

// store is a filter line below the waterline, with what lies in it and what is kept.
// Every count of TestNeeds and TestOrder is worked by hand from it.
const store = `
[build]
name = "store"
currency = "NZD"
[spares]
away = "9 months"
hours = "250 h"
confidence = "95 %"
spoil = "3 %"
[rates]
date = 2026-11-20
EUR = "1.92"
USD = "1.68"
[[vendor]]
id = "elbe"
currency = "EUR"
freight = "48.00"
customs = "5 %"
tax = "15 %"
[[vendor]]
id = "pier"
currency = "USD"
freight = "85.00"
customs = "5 %"
tax = "15 %"
[[vendor]]
id = "wharf"
currency = "NZD"
freight = "12.00"
[[item]]
id = "housing"
kind = "filter housing"
ports = { in = '3/4 NPT female', out = '3/4 NPT female' }
[[item]]
id = "nipple"
kind = "nipple"
ports = { a = '3/4 NPT male', b = '3/4 NPT male' }
extra = 2
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '3/4 NPT male', b = '19 mm barb long' }
have = 3
[[item]]
id = "hose"
kind = "hose stock"
bore = "19 mm"
have = "0.5 m"
extra = "0.4 m"
[[hose]]
id = "hose-1"
of = "hose"
length = "1.4 m"
[[hose]]
id = "hose-2"
of = "hose"
length = "80 cm"
[[item]]
id = "cartridge"
kind = "filter cartridge"
inside = "housing"
life = "60 h"
[[item]]
id = "block"
kind = "filter cartridge"
inside = "housing"
life = "6 months"
[[item]]
id = "kit"
kind = "seal kit"
inside = "housing"
each = 2
fails = "2000 h"
have = 1
[[item]]
id = "oil"
kind = "oil"
life = "100 h"
[[run]]
name = "line"
below_waterline = true
path = ["hose-1", "tail/+", "housing", "nipple", "housing/2", "tail/+", "hose-2"]
`

func needsOf(t *testing.T, text string) map[string]*order.Need {
	t.Helper()
	needs, err := built.Walk(t, "store.toml", text).Needs()
	require.NoError(t, err)
	out := map[string]*order.Need{}
	for _, n := range needs {
		require.NotContains(t, out, n.Key, "one line a thing")
		out[n.Key] = n
	}
	return out
}

// Counts by hand. Spares of fittings are the least k with P[B(n+k, 3 %) <= k] of 95 %
// or more; of what fails at random, the least k with P[F(mean) <= k] of 95 % or more.
func TestNeeds(t *testing.T) {
	needs := needsOf(t, store)
	for _, c := range []struct {
		key, unit                                         string
		placed, planned, spare, extra, have, buy, thousth int64
		why                                               string
	}{
		{"housing", "pc", 2, 0, 0, 0, 0, 2, 1000, "two placed; a housing is not spoiled while fitting"},
		{"nipple", "pc", 1, 0, 0, 2, 0, 3, 1000, "one placed: 0.97 is above 0.95, so no spare; two more asked for"},
		{"tail", "pc", 2, 0, 1, 0, 3, 0, 1000, "two placed: 0.97^2 = 0.941, so one spare (0.997); three aboard are enough"},
		{"hose", "m", 2200, 0, 0, 400, 500, 2100, 1, "1.4 + 0.8 m, 0.4 m more, 0.5 m aboard"},
		{"cartridge", "pc", 2, 8, 0, 0, 0, 10, 1000, "two inside; 250 h / 60 h: four changes of each"},
		{"block", "pc", 2, 2, 0, 0, 0, 4, 1000, "two inside; 9 months / 6 months by the calendar: one change of each"},
		{"kit", "pc", 4, 0, 2, 0, 1, 5, 1000, "two in each of two; mean 4 x 250 / 2000 = 0.5: 0.607, 0.910, 0.986"},
		{"oil", "pc", 0, 2, 0, 0, 0, 2, 1000, "it serves the build as a whole: 250 h / 100 h"},
		{"clamp for 19 mm hose", "pc", 4, 0, 1, 0, 0, 5, 1000, "two on each long tail below the waterline: 0.97^4 = 0.885, with one spare 0.992"},
		{"tape 12 mm", "roll", 1, 0, 0, 0, 0, 1, 1000, "four joints of 3/4 NPT: 4 x (4 x pi x 26.67 + 20) x 1.5 = 2.13 m"},
	} {
		n, ok := needs[c.key]
		require.True(t, ok, c.key)
		q := func(v int64) money.Quantity { return money.Quantity(v * c.thousth) }
		require.Equal(t, c.unit, n.Unit, c.key)
		require.Equal(t, q(c.placed), n.Placed, "%s placed: %s", c.key, c.why)
		require.Equal(t, q(c.planned), n.Planned, "%s planned: %s", c.key, c.why)
		require.Equal(t, q(c.spare), n.Spare, "%s spare: %s", c.key, c.why)
		require.Equal(t, q(c.extra), n.Extra, "%s extra: %s", c.key, c.why)
		require.Equal(t, q(c.have), n.Have, "%s have: %s", c.key, c.why)
		require.Equal(t, q(c.buy), n.Buy(), "%s to buy: %s", c.key, c.why)
		delete(needs, c.key)
	}
	require.Empty(t, needs, "and nothing else")
}

// Lines come in the order of the file, and what joints need after them.
func TestNeedsInOrder(t *testing.T) {
	needs, err := built.Walk(t, "store.toml", store).Needs()
	require.NoError(t, err)
	var keys []string
	for _, n := range needs {
		keys = append(keys, n.Key)
	}
	require.Equal(t, []string{"housing", "nipple", "tail", "hose", "cartridge", "block", "kit", "oil", "clamp for 19 mm hose", "tape 12 mm"}, keys)
}

// How many clamps, by where the run lies and how long the tail is.
func TestClampCounts(t *testing.T) {
	for _, c := range []struct {
		why, from, to string
		want          money.Quantity
	}{
		{"above the waterline one on each", "below_waterline = true", "", 2},
		{"a short tail takes one, below the waterline too", "19 mm barb long", "19 mm barb", 2},
	} {
		require.Equal(t, 1, strings.Count(store, c.from))
		n := needsOf(t, strings.Replace(store, c.from, c.to, 1))["clamp for 19 mm hose"]
		require.Equal(t, c.want*money.Piece, n.Placed, c.why)
	}
}

// Tape by the roll: a joint of 1/2 NPT takes 4 x pi x 21.336 + 20 = 288 mm, with half as
// much again 432 mm; 27 of them fit a roll of 12 m and 28 do not.
func TestTapeRolls(t *testing.T) {
	for joints, rolls := range map[int]money.Quantity{1: 1, 27: 1, 28: 2, 55: 2, 56: 3} {
		text := built.Head + built.Ended("nipple", "nipple", "1/2 NPT male", "1/2 NPT male") + built.Ended("socket", "coupling", "1/2 NPT female", "1/2 NPT female")
		path := "nipple/+ "
		for i := range joints {
			path += [2]string{"socket/+ ", "nipple/+ "}[i%2]
		}
		n := needsOf(t, text+built.Runs(path))["tape 12 mm"]
		require.Equal(t, rolls*money.Piece, n.Placed, "%d joints", joints)
		require.Len(t, n.Joints, joints)
	}
}

// Face seals take washers and no tape; a joint that does not hold takes nothing.
func TestWashers(t *testing.T) {
	stud := built.Ended("stud", "nipple", "G 1/2 male", "G 1/2 male")
	good := needsOf(t, built.Head+stud+built.Ended("port", "coupling", "G 1/2 female", "G 1/2 female")+built.Runs("stud/1 port stud/2"))
	washer := good["bonded washer G 1/2"]
	require.NotNil(t, washer)
	require.Equal(t, 2*money.Piece, washer.Placed)
	require.Equal(t, []int{1, 2}, washer.Joints)
	require.NotContains(t, good, "tape 12 mm")
	bad := needsOf(t, built.Head+stud+built.Ended("port", "coupling", "3/8 NPT female", "3/8 NPT female")+built.Runs("stud/1 port stud/2"))
	require.Len(t, bad, 2, "only the parts themselves: the joints must be changed first")
}

// What is the boat's own is never bought, not even as the contents of something.
func TestBoatsOwnIsNotBought(t *testing.T) {
	text := built.Head + built.Any + "[[item]]\nid = \"butt\"\nkind = \"tank\"\ninside = \"sink\"\nhave = 1\n"
	require.Empty(t, needsOf(t, text))
	require.Empty(t, needsOf(t, built.Head+built.Any+built.Elbow("spare", "")), "what is never placed is found, and not bought")
}

// What is had and wanted of a hose cut from stock counts in metres of the stock.
func TestCutHoseHadAndWanted(t *testing.T) {
	text := strings.Replace(store, "length = \"1.4 m\"", "length = \"1.4 m\"\nextra = 1", 1)
	text = strings.Replace(text, "length = \"80 cm\"", "length = \"80 cm\"\nhave = 2", 1)
	n := needsOf(t, text)["hose"]
	require.Equal(t, money.Quantity(400+1400), n.Extra)
	require.Equal(t, money.Quantity(500+1600), n.Have)
	require.Equal(t, money.Quantity(2200+1800-2100), n.Buy())
}

// A made-up hose is a piece of its own.
func TestMadeUpHoseIsAPiece(t *testing.T) {
	text := built.Head + "[[hose]]\nid = \"hp\"\nlength = \"1.2 m\"\nends = ['3/8 NPT male', '3/8 NPT male']\nextra = 1\nhave = 1\n" + built.Runs("hp/1 hp/2")
	n := needsOf(t, text)["hp"]
	require.Equal(t, "pc", n.Unit)
	require.Equal(t, 2*money.Piece, n.Placed)
	require.Equal(t, 2*money.Piece, n.Buy(), "two placed, one more, one aboard")
}

// The life of the calendar goes by the time away and the random life by the hours, each
// for itself. By hand: 9 months / 6 months is one change; mean 2 x 250 / 4000 = 0.125, where
// 0.882 is too little and 0.993 is enough: one spare.
func TestLivesOfBothSorts(t *testing.T) {
	text := strings.Replace(store, `life = "6 months"`, "life = \"6 months\"\nfails = \"4000 h\"", 1)
	n := needsOf(t, text)["block"]
	require.Equal(t, 2*money.Piece, n.Planned, "one change of each of two")
	require.Equal(t, 1*money.Piece, n.Spare, "two fitted: mean 2 x 250 / 4000 = 0.125")
	require.Len(t, n.Advice, 2)
}

// More is never bought for having more, and the count of a unit placed once more grows.
func TestHaveNeverAddsToWhatIsBought(t *testing.T) {
	last := money.Quantity(1 << 40)
	for have := range 6 {
		n := needsOf(t, strings.Replace(store, "have = 3", fmt.Sprintf("have = %d", have), 1))["tail"]
		require.LessOrEqual(t, n.Buy(), last)
		require.GreaterOrEqual(t, n.Buy(), money.Quantity(0))
		last = n.Buy()
	}
}

// A need says why so many, which joints it serves, and what its ends are.
func TestNeedInWords(t *testing.T) {
	needs := needsOf(t, store)
	require.Equal(t, []int{1, 2, 5, 6}, needs["tail"].Joints)
	require.Equal(t, "a: 3/4-14 NPT male; b: 19 mm barb long", needs["tail"].Item.Ends())
	require.Contains(t, needs["nipple"].WhySpare(), "2 more asked for by `extra`")
	require.Contains(t, needs["cartridge"].WhySpare(), "60")
	require.Equal(t, "hose stock, bore 19 mm", needs["hose"].About)
}

// A joint for low pressure only is made up as any other; one that does not hold must be changed first, and
// nothing is bought to close it.
func TestTapeOfAJointForLowPressureOnly(t *testing.T) {
	for female, rolls := range map[string]money.Quantity{"1/2 NPT female plastic": 1, "Rc 1/2": 0} {
		text := built.Head + built.Ended("nipple", "nipple", "1/2 NPT male", "1/2 NPT male") + built.Ended("socket", "coupling", female, female)
		n := needsOf(t, text+built.Runs("nipple socket"))["tape 12 mm"]
		if rolls == 0 {
			require.Nil(t, n, female)
			continue
		}
		require.Equal(t, rolls*money.Piece, n.Placed, female)
	}
}
