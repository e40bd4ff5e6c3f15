package money

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestQuantityString(t *testing.T) {
	rows := []struct {
		why  string
		q    Quantity
		want string
	}{
		{"pieces are whole", 3 * Piece, "3"},
		{"metres lose their zeros", 1400 * Millimetre, "1.4"},
		{"a millimetre shows", 2001 * Millimetre, "2.001"},
		{"whole tens keep theirs", 120 * Metre, "120"},
		{"none", 0, "0"},
		{"less than one and less than none", -500 * Millimetre, "-0.5"},
		{"more aboard than needed", -2 * Piece, "-2"},
		{"the least", math.MinInt64, "-9223372036854775.808"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) { require.Equal(t, row.want, row.q.String()) })
	}
}

func TestPacks(t *testing.T) {
	rows := []struct {
		why     string
		q, pack Quantity
		packs   int64
		covers  Quantity
	}{
		{"10 O-rings a pack for a need of 3: one pack, 7 over", 3 * Piece, 10 * Piece, 1, 10 * Piece},
		{"30 cartridges by 6 leave nothing over", 30 * Piece, 6 * Piece, 5, 30 * Piece},
		{"one more opens a pack", 31 * Piece, 6 * Piece, 6, 36 * Piece},
		{"by the piece", 4 * Piece, 1 * Piece, 4, 4 * Piece},
		{"hose by the whole metre", 1400 * Millimetre, 1 * Metre, 2, 2 * Metre},
		{"hose by the half metre", 1400 * Millimetre, 500 * Millimetre, 3, 1500 * Millimetre},
		{"nothing needed", 0, 10 * Piece, 0, 0},
		{"more aboard than needed", -2 * Piece, 10 * Piece, 0, 0},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			packs, err := row.q.Packs(row.pack)
			require.NoError(t, err)
			require.Equal(t, row.packs, packs)
			covers, err := row.q.CeilTo(row.pack)
			require.NoError(t, err)
			require.Equal(t, row.covers, covers)
		})
	}
}

func TestPacksRefuse(t *testing.T) {
	_, err := Piece.Packs(0)
	require.EqualError(t, err, "a pack of 0 holds nothing: write pack = 1 or more")
	_, err = Piece.CeilTo(-Piece)
	require.EqualError(t, err, "a pack of -1 holds nothing: write pack = 1 or more")
	_, err = Quantity(math.MaxInt64).CeilTo(10 * Piece)
	require.EqualError(t, err, "922337203685478 packs of 10 are too many to count")
}

func TestPacksCoverAndWasteLessThanOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		q := Quantity(rapid.Int64Range(1, 1e15).Draw(t, "need"))
		pack := Quantity(rapid.Int64Range(1, 1e9).Draw(t, "pack"))
		covers, err := q.CeilTo(pack)
		require.NoError(t, err)
		require.GreaterOrEqual(t, covers, q)
		require.Less(t, covers-q, pack)
		require.Zero(t, covers%pack)
	})
}
