package stock_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/threads"
)

// How many items each rule makes: a figure that changes unsaid is a table that changed.
func TestCounts(t *testing.T) {
	require.Equal(t, map[string]int{"S1": 549, "S2": 878, "S3": 1075, "S4": 222, "S5": 1125, "S6": 866, "S7": 800, "S8": 704, "S9": 340, "S10": 334, "S11": 198}, stock.Counts())
	n := len(stock.Items())
	require.True(t, n >= 3000 && n <= 20000, n)
	require.Empty(t, stock.Unread(), "an end of the tables is not read as one end")
	ids := map[string]bool{}
	for _, it := range stock.Items() {
		require.False(t, ids[it.ID], it.ID)
		ids[it.ID] = true
		require.NotEmpty(t, it.Source)
		require.NotEmpty(t, catalog.MaterialsIn(it.Material), "%s is no material of the catalogue", it.Material)
		_, known := catalog.KindNamed(it.Kind)
		require.True(t, known, it.Kind)
	}
}

// What nobody makes must not come out.
func TestWhatIsNotMade(t *testing.T) {
	inches := func(e threads.End) float64 { return threads.SizeInches(e.Size) }
	for _, it := range stock.Items() {
		if it.Kind == "adaptor" && it.Steps > 2 {
			t.Errorf("an adaptor of %d steps: %s", it.Steps, it)
		}
		if it.Kind == "bush" && (it.Steps < 1 || it.Steps > 4 || inches(it.Ends[0]) <= inches(it.Ends[1])) {
			t.Errorf("a bush without a step: %s", it)
		}
		if it.Material == "super duplex" && it.Class == "class 150" {
			t.Errorf("cast light class in super duplex: %s", it)
		}
		if slices.Contains([]string{"pp", "nylon", "acetal"}, it.Material) && (it.Kind == "union" && it.Rule != "S9" || strings.HasPrefix(it.Ends[0].Family.String(), "24")) {
			t.Errorf("not made in plastic: %s", it)
		}
		for _, e := range it.Ends {
			if e.Swivel && e.Seal == threads.NoSeal && e.Family == threads.G {
				t.Errorf("a swivel without a seat: %s", it)
			}
			if e.Family == threads.Barb && e.Diameter > 20 && strings.Contains(it.Title(), "1/8 ") {
				t.Errorf("a thick tail on a thin thread: %s", it)
			}
		}
	}
}

func TestFind(t *testing.T) {
	require.NotEmpty(t, stock.Find("bush 1/2 npt 316"))
	require.Empty(t, stock.Find("bush unobtainium"))
}
