package cut

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func pieces(long ...int) []Piece {
	var out []Piece
	for i, l := range long {
		out = append(out, Piece{fmt.Sprintf("hose-%d", i+1), l})
	}
	return out
}

func TestFixed(t *testing.T) {
	for _, row := range []struct {
		why    string
		pieces []Piece
		aboard int
		sizes  []int
		bought int
		waste  int
		count  int // lengths cut from
		source string
	}{
		{"nothing to cut, nothing to buy", nil, 0, []int{5000}, 0, 0, 0, "by definition"},
		{"three of 3 m take three lengths of 5 m, though their sum is under two", pieces(3000, 3000, 3000), 0, []int{5000}, 15000, 6000, 3, "two of 3 m do not go into 5 m"},
		{"one longer length beats two short ones", pieces(3000, 3000, 3000), 0, []int{5000, 10000}, 10000, 1000, 1, "9 m of 10 m"},
		{"a piece may fill its length exactly", pieces(5000, 2000, 3000), 0, []int{5000}, 10000, 0, 2, "2 + 3 = 5"},
		{"the shorter length where it holds all", pieces(1400, 800), 0, []int{3000, 5000}, 3000, 800, 1, "2.2 m of 3 m"},
		{"the hose aboard comes first", pieces(2000, 3000), 2500, []int{5000}, 5000, 2000, 2, "2 m of the 2.5 m aboard"},
		{"all of it is aboard", pieces(1000, 1000), 2000, []int{5000}, 0, 0, 1, "by definition"},
		{"first-fit decreasing takes three lengths of 60, two do", pieces(27, 26, 23, 21, 13, 10), 0, []int{60}, 120, 0, 2,
			"worked by hand: first-fit decreasing gives 27+26, 23+21+13, 10; 27+23+10 and 26+21+13 are 60"},
		{"nothing to buy from, and none is needed", pieces(400), 500, nil, 0, 0, 1, "by definition"},
	} {
		t.Run(row.why, func(t *testing.T) {
			p, err := Fixed(row.pieces, row.aboard, row.sizes)
			require.NoError(t, err)
			require.True(t, p.Proved)
			require.Equal(t, row.bought, p.Bought, row.source)
			require.Equal(t, row.waste, p.Waste(), row.source)
			require.Len(t, p.Lengths, row.count, row.source)
			whole(t, row.pieces, row.aboard, p)
		})
	}
}

// whole checks that every piece is cut once, that nothing is cut from more than there
// is, and that the sums are right.
func whole(t require.TestingT, want []Piece, aboard int, p Plan) {
	var got []Piece
	bought, had := 0, 0
	for i := range p.Lengths {
		l := &p.Lengths[i]
		require.GreaterOrEqual(t, l.Waste(), 0)
		require.NotEmpty(t, l.Pieces)
		if got = append(got, l.Pieces...); l.Aboard {
			require.Zero(t, i, "what is aboard stands first")
			require.Equal(t, aboard, l.Long)
			had++
		} else {
			bought += l.Long
		}
	}
	require.LessOrEqual(t, had, 1)
	require.ElementsMatch(t, want, got)
	require.Equal(t, bought, p.Bought)
}

// A second opinion by trying everything: each piece into each length, every length of
// every size.
func brute(list []Piece, rooms, sizes []int) int {
	if len(list) == 0 {
		return 0
	}
	best := math.MaxInt / 2
	for i := range rooms {
		if rooms[i] >= list[0].Long {
			rooms[i] -= list[0].Long
			best = min(best, brute(list[1:], rooms, sizes))
			rooms[i] += list[0].Long
		}
	}
	for _, size := range sizes {
		if size >= list[0].Long {
			best = min(best, size+brute(list[1:], append(rooms, size-list[0].Long), sizes))
		}
	}
	return best
}

func TestFixedIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := pieces(rapid.SliceOfN(rapid.IntRange(1, 12), 0, 6).Draw(t, "pieces")...)
		aboard := rapid.IntRange(0, 14).Draw(t, "aboard")
		sizes := rapid.SliceOfN(rapid.IntRange(12, 25), 1, 3).Draw(t, "sizes")
		p, err := Fixed(list, aboard, sizes)
		require.NoError(t, err)
		require.True(t, p.Proved)
		whole(t, list, aboard, p)
		require.Equal(t, brute(list, []int{aboard}, sizes), p.Bought)
	})
}

// Beyond the bound the plan is still whole, and it is called proved only where no
// arrangement could buy less than the sum asks for.
func TestFixedBeyondTheBound(t *testing.T) {
	var long []int
	for i := range 40 {
		long = append(long, 1100+i*37%900)
	}
	p, err := Fixed(pieces(long...), 0, []int{5000})
	require.NoError(t, err)
	whole(t, pieces(long...), 0, p)
	require.False(t, p.Proved)

	p, err = Fixed(pieces(make40(1250)...), 0, []int{5000})
	require.NoError(t, err)
	require.True(t, p.Proved, "four of 1.25 m fill 5 m exactly")
	require.Equal(t, 50000, p.Bought)
}

func make40(long int) []int {
	out := make([]int, 40)
	for i := range out {
		out[i] = long
	}
	return out
}

func TestReel(t *testing.T) {
	for _, row := range []struct {
		why    string
		pieces []Piece
		aboard int
		bought int
	}{
		{"off the reel nothing is lost", pieces(1400, 800, 1100), 0, 3300},
		{"a metre aboard holds the 0.8 m, and 0.2 m of it is no use", pieces(1400, 800, 1100), 1000, 2500},
		{"the best filling and not the longest piece: 0.5 + 0.4 before 0.8", pieces(800, 500, 400), 900, 800},
		{"all aboard", pieces(800, 500), 2000, 0},
		{"too short for any piece", pieces(800, 500), 400, 1300},
		{"nothing to cut", nil, 1000, 0},
	} {
		t.Run(row.why, func(t *testing.T) {
			p, err := Reel(row.pieces, row.aboard)
			require.NoError(t, err)
			require.True(t, p.Proved)
			require.Equal(t, row.bought, p.Bought)
			require.Zero(t, p.Waste())
			whole(t, row.pieces, row.aboard, p)
		})
	}
}

func TestReelIsLeast(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := pieces(rapid.SliceOfN(rapid.IntRange(1, 20), 0, 9).Draw(t, "pieces")...)
		aboard := rapid.IntRange(0, 80).Draw(t, "aboard")
		p, err := Reel(list, aboard)
		require.NoError(t, err)
		whole(t, list, aboard, p)
		best := 0
		for set := range 1 << len(list) {
			held := 0
			for i := range list {
				if set>>i&1 == 1 {
					held += list[i].Long
				}
			}
			if held <= aboard {
				best = max(best, held)
			}
		}
		require.Equal(t, sum(list)-best, p.Bought)
	})
}

// A plant's worth of hose with a reel aboard is planned at once, and not called proved.
func TestReelOfMany(t *testing.T) {
	var long []int
	for i := range 1200 {
		long = append(long, 400+i%700)
	}
	p, err := Reel(pieces(long...), 500_000)
	require.NoError(t, err)
	require.False(t, p.Proved)
	whole(t, pieces(long...), 500_000, p)
}

func TestRefused(t *testing.T) {
	_, err := Fixed(pieces(6000), 0, []int{5000})
	var long *TooLongError
	require.True(t, errors.As(err, &long))
	require.EqualError(t, err, "hose-1 is 6000 mm long, and the longest length is 5000 mm: buy it by the metre, or in longer lengths")
	_, err = Fixed(pieces(300, 300), 500, nil)
	require.True(t, errors.As(err, &long), "two do not go into what is aboard, and nothing is sold")
	for _, row := range []struct {
		why    string
		pieces []Piece
		aboard int
		sizes  []int
		want   string
	}{
		{"a piece of nothing", pieces(0), 0, []int{5}, "hose-1 is 0 mm long: write more than 0 and at most 1000000 mm"},
		{"a length of nothing", pieces(3), 0, []int{0}, "a length of 0 mm: write more than 0 and at most 1000000 mm"},
		{"longer than a kilometre", pieces(3), 0, []int{1_000_001}, "a length of 1000001 mm: write more than 0 and at most 1000000 mm"},
		{"less than nothing aboard", pieces(3), -1, []int{5}, "-1 mm aboard is below zero"},
		{"more pieces than a boat has", make([]Piece, 10_001), 0, []int{5}, "10001 pieces are more than 10000: plan them in parts"},
	} {
		_, err := Fixed(row.pieces, row.aboard, row.sizes)
		require.EqualError(t, err, row.want, row.why)
	}
	_, err = Reel(pieces(-1), 0)
	require.EqualError(t, err, "hose-1 is -1 mm long: write more than 0 and at most 1000000 mm")
}
