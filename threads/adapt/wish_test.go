package adapt_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/adapt"
)

func end(t *testing.T, f threads.Family, size string, sex threads.Sex) threads.End {
	t.Helper()
	form, ok := threads.Find(f, size)
	require.True(t, ok, "%s %s", f, size)
	return threads.Threaded(form, sex)
}

// A taper male in a parallel female is a makeshift: it closes at low pressure only, and so a
// chain over it is wanted only where that is enough (ISO 7-1 and ISO 228-1 are two standards).
func TestMakeshiftJoints(t *testing.T) {
	taper, port := end(t, threads.R, "1/2", threads.Male), end(t, threads.G, "1/2", threads.Female)
	npt := end(t, threads.NPT, "1/2", threads.Male)
	own := end(t, threads.NPT, "1/2", threads.Female)
	m := threads.Mate(taper, port)
	require.Equal(t, threads.LowPressureOnly, m.Verdict)
	require.True(t, m.HasLimit)
	stock := adapt.New([][2]threads.End{{port, npt}})
	for _, c := range []struct {
		why    string
		wish   adapt.Wish
		chains int
	}{
		{"at its limit it will do", adapt.Wish{Pressure: m.Limit, Most: 1}, 1},
		{"above it will not", adapt.Wish{Pressure: m.Limit + 0.01*quantity.Bar, Most: 1}, 0},
		{"strict takes no makeshift, however low", adapt.Wish{Pressure: 0, Most: 1, Strict: true}, 0},
	} {
		list := stock.Chains(taper, own, c.wish)
		require.Len(t, list, c.chains, c.why)
		_, ok := adapt.Direct(taper, port, c.wish)
		require.Equal(t, c.chains > 0, ok, c.why)
		for _, chain := range list {
			require.Equal(t, 1, chain.Low(), c.why)
			require.Len(t, chain.Joints, 2)
		}
	}
	sound := stock.Chains(end(t, threads.G, "1/2", threads.Male), own, adapt.Wish{Pressure: 60 * quantity.Bar, Most: 1, Strict: true})
	require.Len(t, sound, 1)
	require.Zero(t, sound[0].Low(), "joints that seal are none")
}

// A makeshift between two pieces counts as one at the ends.
func TestMakeshiftInTheMiddle(t *testing.T) {
	a, b := end(t, threads.NPT, "1/2", threads.Male), end(t, threads.NPT, "1/2", threads.Female)
	stock := adapt.New([][2]threads.End{
		{end(t, threads.NPT, "1/2", threads.Female), end(t, threads.R, "1/2", threads.Male)},
		{end(t, threads.G, "1/2", threads.Female), end(t, threads.NPT, "1/2", threads.Male)},
	})
	list := stock.Chains(a, b, adapt.Wish{Most: 2})
	require.Len(t, list, 1)
	require.Equal(t, 1, list[0].Low())
	require.Equal(t, []threads.Family{threads.R, threads.G}, list[0].Families(a, b))
	require.Empty(t, stock.Chains(a, b, adapt.Wish{Most: 2, Strict: true}))
	require.Empty(t, stock.Chains(a, b, adapt.Wish{Most: 2, Pressure: 60 * quantity.Bar}))
	require.Empty(t, stock.Chains(a, b, adapt.Wish{Most: 1}), "one piece does not reach")
}

// The families of the middle are those of neither end, each once.
func TestFamiliesInTheMiddle(t *testing.T) {
	a, b := end(t, threads.NPT, "1/2", threads.Male), end(t, threads.JIC, "-6", threads.Female)
	g, r := end(t, threads.G, "1/2", threads.Male), end(t, threads.G, "1/2", threads.Female)
	c := adapt.Chain{Pieces: []adapt.Piece{{In: end(t, threads.NPT, "1/2", threads.Female), Out: g}, {In: r, Out: end(t, threads.JIC, "-6", threads.Male)}}}
	require.Equal(t, []threads.Family{threads.G}, c.Families(a, b))
	require.Empty(t, c.Families(g, b)[1:], "NPT alone is left")
	require.Equal(t, []threads.Family{threads.NPT}, c.Families(g, b))
	require.Equal(t, []threads.Family{threads.NPT, threads.JIC}, c.Families(g, r))
}

// three adaptors of one pair of ends, and one of another: a counter's drawer.
func drawer(t *testing.T) (*adapt.Stock, threads.End, threads.End) {
	in, out := end(t, threads.NPT, "1/2", threads.Female), end(t, threads.G, "1/2", threads.Male)
	back, tail := end(t, threads.G, "1/2", threads.Female), end(t, threads.JIC, "-8", threads.Male)
	return adapt.New([][2]threads.End{{in, out}, {out, in}, {in, out}, {back, tail}, {tail, back}}),
		end(t, threads.NPT, "1/2", threads.Male), end(t, threads.JIC, "-8", threads.Female)
}

// Pieces of the same ends stand for each other: every pair is a chain, turned or not.
func TestEveryPairOfAlikePiecesIsAChain(t *testing.T) {
	stock, a, b := drawer(t)
	require.Equal(t, 4, stock.Classes())
	seen := map[[2]int]bool{}
	for _, c := range stock.Chains(a, b, adapt.Wish{Most: 2}) {
		require.Len(t, c.Pieces, 2)
		seen[[2]int{c.Pieces[0].Index, c.Pieces[1].Index}] = true
		require.Equal(t, c.Pieces[0].Index == 1, c.Pieces[0].Turned)
		require.Equal(t, c.Pieces[1].Index == 4, c.Pieces[1].Turned)
	}
	require.Equal(t, map[[2]int]bool{{0, 3}: true, {1, 3}: true, {2, 3}: true, {0, 4}: true, {1, 4}: true, {2, 4}: true}, seen)
}

// What the caller refuses is in no chain: a piece, or two that may not touch.
func TestTheCallersRefusals(t *testing.T) {
	stock, a, b := drawer(t)
	list := stock.Chains(a, b, adapt.Wish{Most: 2, Accept: func(i int) bool { return i != 0 && i != 4 }})
	require.Len(t, list, 2)
	for _, c := range list {
		require.NotEqual(t, 0, c.Pieces[0].Index)
		require.Equal(t, 3, c.Pieces[1].Index)
	}
	require.Empty(t, stock.Chains(a, b, adapt.Wish{Most: 2, Accept: func(i int) bool { return i < 3 }}))
	asked := map[[2]int]bool{}
	list = stock.Chains(a, b, adapt.Wish{Most: 2, Pair: func(x, y int) bool { asked[[2]int{x, y}] = true; return x == 2 && y == 3 }})
	require.Len(t, list, 1)
	require.Equal(t, 2, list[0].Pieces[0].Index)
	require.Equal(t, 3, list[0].Pieces[1].Index)
	require.Len(t, asked, 6, "each pair is asked about, in the order of the chain")
	require.True(t, asked[[2]int{1, 4}])
	require.False(t, asked[[2]int{4, 1}])
}

// Best sees the pieces of the same two ends together, and is not asked about one alone.
func TestBestIsAskedOfSeveral(t *testing.T) {
	stock, a, b := drawer(t)
	least := 9
	w := adapt.Wish{Most: 2, Best: func(list []adapt.Piece) []adapt.Piece { least = min(least, len(list)); return list[:1] }}
	list := stock.Chains(a, b, w)
	require.Len(t, list, 1)
	require.Equal(t, 2, least)
	w.Accept = func(i int) bool { return i == 0 || i == 3 }
	least = 9
	require.Len(t, stock.Chains(a, b, w), 1)
	require.Equal(t, 9, least, "one piece is the best of its ends")
}

// Each hands over chains until the caller has enough; Limit is the same for a list.
func TestEnoughIsEnough(t *testing.T) {
	stock, a, b := drawer(t)
	for _, most := range []int{1, 2, 3, 5, 6, 9} {
		require.Len(t, stock.Chains(a, b, adapt.Wish{Most: 2, Limit: most}), min(most, 6))
		n := 0
		stock.Each(a, b, adapt.Wish{Most: 2}, func(*adapt.Chain) bool { n++; return n < most })
		require.Equal(t, min(most, 6), n)
	}
}

// Chains of more pieces than need be are not listed, and none where the ends are joined by one.
func TestTheShortestAloneAreListed(t *testing.T) {
	stock, a, b := drawer(t)
	direct := [2]threads.End{end(t, threads.NPT, "1/2", threads.Female), end(t, threads.JIC, "-8", threads.Male)}
	more := stock.With([][2]threads.End{direct})
	list := more.Chains(a, b, adapt.Wish{Most: 3})
	require.Len(t, list, 1)
	require.Len(t, list[0].Pieces, 1)
	require.Equal(t, 5, list[0].Pieces[0].Index, "numbered on")
	require.Len(t, stock.Chains(a, b, adapt.Wish{Most: 3}), 6, "the stock itself stays as it was")
	require.Equal(t, 4, stock.Classes())
}

// A stock knows an end that one of its pieces closes with, and no other.
func TestKnows(t *testing.T) {
	stock, a, b := drawer(t)
	for _, e := range []threads.End{a, b, end(t, threads.G, "1/2", threads.Female), end(t, threads.R, "1/2", threads.Male)} {
		require.True(t, stock.Knows(e), e.String())
	}
	for _, e := range []threads.End{end(t, threads.NPT, "3/4", threads.Male), end(t, threads.JIC, "-6", threads.Female), end(t, threads.G, "1/4", threads.Male)} {
		require.False(t, stock.Knows(e), e.String())
	}
	require.False(t, adapt.New(nil).Knows(a))
}

// A chain that will not do as a whole does not hide longer ones that do.
func TestARefusedChainHidesNothing(t *testing.T) {
	stock, a, b := drawer(t)
	direct := [2]threads.End{end(t, threads.NPT, "1/2", threads.Female), end(t, threads.JIC, "-8", threads.Male)}
	more := stock.With([][2]threads.End{direct})
	list := more.Chains(a, b, adapt.Wish{Most: 2, Will: func(c *adapt.Chain) bool { return len(c.Pieces) > 1 }})
	require.Len(t, list, 6)
	require.Empty(t, more.Chains(a, b, adapt.Wish{Most: 1, Will: func(c *adapt.Chain) bool { return len(c.Pieces) > 1 }}))
	n := 0
	more.Each(a, b, adapt.Wish{Most: 2, Will: func(c *adapt.Chain) bool { return len(c.Pieces) > 1 }}, func(*adapt.Chain) bool { n++; return true })
	require.Equal(t, 6, n)
}
