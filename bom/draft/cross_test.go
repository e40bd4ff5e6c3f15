package draft_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
)

// A cross has two branches, a manifold as many as it has outlets: each serves one place.
func TestCrossesAndManifolds(t *testing.T) {
	for _, piece := range []string{
		"Cross 3/8 NPT male x 3/8 NPT female x 1/4 NPT female x 1/4 NPT female, 316, class 3000",
		"Manifold 3/8 NPT male x 3/8 NPT female x 1/4 NPT female x 1/4 NPT female, 316, class 3000",
	} {
		bag := slices.Clone(small)
		i := slices.IndexFunc(bag, func(l bagLine) bool { return strings.HasPrefix(l.text, "Tee 3/8") })
		bag[i].text = piece
		bag = append(bag, bagLine{1, "Gauge 0-100 bar, 1/4 NPT male, 316"})
		d := drafted(t, bag)
		require.Empty(t, pieces(d), piece)
		require.Empty(t, d.Left, piece)
		require.Equal(t, d.Joints, d.Made)
		require.True(t, d.Proven)
		sys, faults := bom.Walk(d.Build)
		require.Empty(t, faults)
		at := map[string]bool{}
		for _, j := range sys.Graph.Joints {
			for _, p := range []int{j.A, j.B} {
				if sys.Graph.Ports[p].Unit.Item.ID == d.Parts[i].ID {
					at[sys.Graph.Ports[p].Port.Name] = true
				}
			}
		}
		require.Len(t, at, 4, "all four ports are joined: %s", piece)
	}
}

// A relief that no skin fitting is bought for returns into a tee of the brine, where the bag has
// one for it; without the tee it goes overboard by the boat's own.
func TestReliefIntoATee(t *testing.T) {
	bag := slices.Clone(small)
	i := slices.IndexFunc(bag, func(l bagLine) bool { return strings.HasPrefix(l.text, "Skin fitting") })
	bag[i].n = 1
	without := drafted(t, bag)
	require.NotContains(t, string(without.Text), "relief into the brine")
	bag = append(bag, bagLine{1, "Tee 13 mm barb x 13 mm barb x 13 mm barb, bronze, 10 bar"})
	d := drafted(t, bag)
	require.Contains(t, string(d.Text), "relief into the brine")
	require.Empty(t, pieces(d))
	require.Empty(t, d.Left)
	sys, faults := bom.Walk(d.Build)
	require.Empty(t, faults)
	for _, u := range sys.Graph.Units {
		require.NotContains(t, u.Name, "relief-outlet", "it needs no outlet of its own")
	}
}
