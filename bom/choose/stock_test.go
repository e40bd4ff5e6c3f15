package choose

import (
	"context"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// cutPlant is a suction side of three hoses between barbs: 3 m, 3 m and 1.6 m.
const cutPlant = `
[build]
name = "Cut"
currency = "NZD"
[[vendor]]
id = "near"
currency = "NZD"
[[vendor]]
id = "far"
currency = "NZD"
freight = "5.00"
[[item]]
id = "intake"
kind = "seacock"
ports = { inboard = '19 mm barb long' }
have = 1
[[item]]
id = "strainer"
kind = "strainer"
ports = { in = '19 mm barb long', out = '19 mm barb long' }
have = 1
[[item]]
id = "feed-pump"
kind = "feed pump"
ports = { in = '19 mm barb long', out = '19 mm barb long' }
have = 1
[[item]]
id = "outlet"
kind = "through-hull"
ports = { inboard = '19 mm barb long' }
have = 1
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
rated = "6 bar"
vacuum = "0.9 bar"
[[hose]]
id = "one"
of = "stock"
length = "3 m"
[[hose]]
id = "two"
of = "stock"
length = "3 m"
[[hose]]
id = "three"
of = "stock"
length = "1.6 m"
[[run]]
name = "all"
path = ["intake", "one", "strainer", "two", "feed-pump", "three", "outlet"]
[[offer]]
item = "stock"
vendor = "near"
price = "10.00"
per = "m"
[[offer]]
item = "clamp for 19 mm hose"
vendor = "near"
price = "1.00"
`

const otherStock = `
[[item]]
id = "other"
kind = "hose stock"
bore = "BORE"
rated = "6 bar"
vacuum = "0.9 bar"
[[offer]]
item = "other"
vendor = "far"
price = "6.00"
per = "m"
lengths = ["5 m"]
[[option]]
for = "stock"
item = "other"
`

// By hand: 7.6 m off the reel are 8 m, 80.00. Three hoses of 3, 3 and 1.6 m take two lengths of
// 5 m: 60.00 and 5.00 of freight. 15.00 less.
func TestHoseStockAsAnOption(t *testing.T) {
	plain := chosen(t, cutPlant)
	c := chosen(t, cutPlant+strings.Replace(otherStock, "BORE", "19 mm", 1))
	require.True(t, c.Proved)
	require.Len(t, c.Swaps, 1)
	require.Equal(t, []string{"stock", "other"}, []string{c.Swaps[0].For, c.Swaps[0].Item})
	saved, err := plain.Order.Total.Sub(c.Order.Total)
	require.NoError(t, err)
	require.Equal(t, "15.00", saved.Number())
	for _, l := range c.Order.Lines {
		if l.Need.Key == "other" {
			require.Equal(t, "10", l.Order.String())
			require.Len(t, l.Cut.Lengths, 2)
			require.Equal(t, "one", l.Cut.Lengths[0].Pieces[0].Name)
		}
		require.NotEqual(t, "stock", l.Need.Key)
	}
	plans, err := Plans(context.Background(), walked(t, cutPlant+strings.Replace(otherStock, "BORE", "19 mm", 1)), Landed)
	require.NoError(t, err)
	best := plans[len(plans)-1]
	require.Equal(t, c.Order.Total.Number(), best.Order.Total.Number())
}

// Of another bore no hose fits its barbs: it would save, and makes a stop.
func TestHoseStockOfAnotherBore(t *testing.T) {
	c := chosen(t, cutPlant+strings.Replace(otherStock, "BORE", "25 mm", 1))
	require.Empty(t, c.Swaps)
	require.Len(t, c.Refused, 1)
	require.NotNil(t, c.Refused[0].Stop)
	require.Contains(t, c.Refused[0].Stop.Slug, "barb")
	// and the other way round: a build whose stock is too wide is mended by its option
	wide := strings.Replace(cutPlant, `bore = "19 mm"`, `bore = "25 mm"`, 1) + strings.Replace(otherStock, "BORE", "19 mm", 1)
	plans, err := Plans(context.Background(), walked(t, wide), Landed)
	require.NoError(t, err)
	best := plans[len(plans)-1]
	require.Empty(t, best.None)
	require.Zero(t, best.Stops)
	require.Equal(t, "other", best.Taken[0].Item)
}

// A hose that is bought made up may be cut from stock instead: it is metres of that stock then,
// with clamps.
func TestCutHoseForAMadeUpOne(t *testing.T) {
	text := strings.Replace(cutPlant, "[[hose]]\nid = \"three\"\nof = \"stock\"\nlength = \"1.6 m\"\n", `
[[hose]]
id = "three"
bore = "19 mm"
rated = "6 bar"
vacuum = "0.9 bar"
length = "1.6 m"
ends = ['19 mm hose', '19 mm hose']
[[hose]]
id = "three-cut"
of = "stock"
length = "1.6 m"
[[option]]
for = "three"
item = "three-cut"
[[offer]]
item = "three"
vendor = "near"
price = "30.00"
`, 1)
	c := chosen(t, text)
	require.Len(t, c.Swaps, 1)
	require.Equal(t, "three-cut", c.Swaps[0].Item)
	saved, ok := c.Saves(c.Cheapest)
	require.True(t, ok)
	require.Equal(t, "10.00", saved.Number(), "6 m and 30.00 for the hose against 8 m")
	for _, l := range c.Order.Lines {
		if l.Need.Key == "stock" {
			require.Len(t, l.Cut.Lengths[0].Pieces, 3)
		}
	}
}
