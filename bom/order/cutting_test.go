package order_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/build"
	"handtight/bom/internal/built"
	"handtight/bom/read"
)

// hoses is a build with three hoses of one stock: 3 m, 3 m and 1.6 m.
const hoses = `
[build]
name = "Hoses"
currency = "NZD"
[[vendor]]
id = "quay"
currency = "NZD"
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
%HAVE
[[hose]]
id = "one"
of = "stock"
length = "3 m"
%AGAIN
[[hose]]
id = "three"
of = "stock"
length = "1.6 m"
[[item]]
id = "sea"
kind = "sea"
ports = { out = '19 mm barb' }
[[item]]
id = "joiner"
kind = "nipple"
ports = { a = '19 mm barb', b = '19 mm barb' }
[[item]]
id = "drain"
kind = "drain"
ports = { in = '19 mm barb' }
[[run]]
name = "all"
path = ["sea", "one/+", "joiner/+", "one/+", "joiner/+", "three", "drain"]
`

// laid is the build of hoses, with what is had of the stock and how often the long one is laid again.
func laid(have, again string) string {
	return strings.NewReplacer("%HAVE", have, "%AGAIN", again).Replace(hoses)
}

// A line of hose buys what its plan buys, and says why where that is more than the sum.
func TestHoseIsCutWhole(t *testing.T) {
	for _, c := range []struct {
		why, have, again, offer string
		order, left, total      string
	}{
		{"off the reel by the metre: 7.6 m, rounded up", "", "", `per = "m"`, "8", "0", "8.00"},
		{"one length of 10 m, though 7.6 m is under two of 5 m: 3 + 3 is over 5", "", "", `per = "m"` + "\n" + `lengths = ["5 m", "10 m"]`, "10", "2.4", "10.00"},
		{"lengths of 5 m: 3 + 1.6 and 3", "", "", `per = "m"` + "\n" + `lengths = ["5 m"]`, "10", "2.4", "10.00"},
		{"2 m aboard hold the 1.6 m, and 0.4 m of it is no use: 6 m and not 5.6 m", "have = \"2 m\"", "", `per = "m"`, "6", "0.4", "6.00"},
		{"1 m aboard is too short for any", "have = \"1 m\"", "", `per = "m"` + "\npack = 2", "8", "1", "8.00"},
		{"a hose aboard is cut already", "", "have = 1", `per = "m"` + "\n" + `lengths = ["5 m"]`, "5", "0.4", "5.00"},
		{"an extra hose is cut too", "", "extra = 1", `per = "m"` + "\n" + `lengths = ["5 m"]`, "15", "4.4", "15.00"},
	} {
		t.Run(c.why, func(t *testing.T) {
			o, err := built.Walk(t, "hoses.toml", laid(c.have, c.again)+offer("stock", "quay", "1.00", c.offer)).Order()
			require.NoError(t, err)
			l := o.Lines[0]
			require.Equal(t, c.order, l.Order.String())
			require.Equal(t, c.left, l.Need.LeftOver().String())
			require.Equal(t, c.total, l.Total.Number())
			require.NotNil(t, l.Cut)
			require.True(t, l.Cut.Proved)
			if c.left != "0" {
				require.Contains(t, l.Need.WhySpare(), c.left+" m more, since hoses are cut whole")
			}
		})
	}
}

// An offer without a length for a hose is passed over for one that has; alone it leaves
// the line without a shop.
func TestTooShortLengths(t *testing.T) {
	text := laid("", "")
	short := offer("stock", "quay", "0.10", "per = \"m\"\nlengths = [\"2 m\"]")
	o, err := built.Walk(t, "hoses.toml", text+short+offer("stock", "quay", "1.00", `per = "m"`)).Order()
	require.NoError(t, err)
	require.Equal(t, "8.00", o.Lines[0].Total.Number())
	o, err = built.Walk(t, "hoses.toml", text+short).Order()
	require.NoError(t, err)
	require.Nil(t, o.Lines[0].Offer)
}

// Terms of shops and lengths of hose are read, and what cannot be is a file error.
func TestShopTermsRead(t *testing.T) {
	text := laid("", "")
	for _, c := range []struct{ why, more, want string }{
		{"a minimum that is no sum", "[[vendor]]\nid = \"x\"\ncurrency = \"NZD\"\nminimum = \"fifty\"\n", "fifty"},
		{"a threshold below zero", "[[vendor]]\nid = \"x\"\ncurrency = \"NZD\"\nfree_from = \"-3\"\n", "-3"},
		{"a length without a unit", offer("stock", "quay", "1.00", "per = \"m\"\nlengths = [\"5\"]"), "`5` is not a length"},
		{"a length of nothing", offer("stock", "quay", "1.00", "per = \"m\"\nlengths = [\"0 m\"]"), "a length of 0 m cannot be sold"},
		{"lengths with a pack", offer("stock", "quay", "1.00", "per = \"m\"\npack = 5\nlengths = [\"5 m\"]"), "priced by the metre"},
		{"lengths of what is no hose", offer("joiner", "quay", "1.00", "per = \"m\"\nlengths = [\"5 m\"]"), "`joiner` is not sold by the metre"},
		{"lengths by the piece", offer("stock", "quay", "1.00", "lengths = [\"5 m\"]"), "priced by the metre"},
	} {
		_, faults := read.Parse("hoses.toml", []byte(text+c.more))
		require.Len(t, faults, 1, c.why)
		require.ErrorContains(t, faults.Err(), c.want, c.why)
	}
}

// An order below the minimum is filled up by a line of its own, which the sums hold.
func TestFilledToTheMinimum(t *testing.T) {
	text := laid("", "") +
		"[[vendor]]\nid = \"yard\"\ncurrency = \"NZD\"\nminimum = \"20.00\"\nfreight = \"5.00\"\nfree_from = \"30.00\"\n"
	sys := built.Walk(t, "hoses.toml", text+offer("stock", "yard", "1.50", `per = "m"`))
	o, err := sys.Order()
	require.NoError(t, err)
	last := o.Lines[len(o.Lines)-1]
	require.True(t, last.Filler)
	require.Equal(t, "8.00 NZD", last.Total.String(), "20.00 less 8 m at 1.50")
	require.Contains(t, last.Need.About, "takes no order below 20.00 NZD")
	require.Equal(t, "25.00 NZD", o.Total.String())
	require.False(t, o.Vendors[0].FreightFree)

	o, err = sys.OrderAt(nil, map[*build.Vendor]bool{sys.Build.Vendors[1]: true})
	require.NoError(t, err)
	require.Contains(t, o.Lines[len(o.Lines)-1].Need.About, "from 30.00 NZD on its freight of 5.00 NZD is free")
	require.Equal(t, "30.00 NZD", o.Total.String())
	require.True(t, o.Vendors[0].FreightFree)
}

// More than ten thousand hoses of one stock are bought by the sum of their metres: what they are
// cut from is not planned, and nothing is bought for a plan that was given up halfway.
func TestTooManyHosesAreBoughtByTheirSum(t *testing.T) {
	order := func(extra int) string {
		again := fmt.Sprintf("extra = %d", extra)
		o, err := built.Walk(t, "hoses.toml", laid("", again)+offer("stock", "quay", "1.00", `per = "m"`+"\n"+`lengths = ["5 m"]`)).Order()
		require.NoError(t, err)
		return o.Lines[0].Order.String()
	}
	require.Equal(t, "30015", order(10_001), "10,003 of 3 m and one of 1.6 m are 30,010.6 m")
}
