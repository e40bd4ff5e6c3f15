package stock_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// How many items each rule makes: a figure that changes unsaid is a table that changed.
func TestCounts(t *testing.T) {
	require.Equal(t, map[string]int{"S1": 630, "S2": 923, "S3": 1120, "S4": 408, "S5": 1260, "S6": 896, "S7": 838, "S8": 922, "S9": 354, "S10": 648, "S11": 198,
		"S12": 72, "S13": 294, "S14": 50, "S15": 138, "S16": 64, "S17": 80, "S18": 20}, stock.Counts())
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

// What nobody makes must not come out, one sort after another. Source: common practice.
func TestWhatIsNotMade(t *testing.T) {
	inches := func(e threads.End) float64 { return threads.SizeInches(e.Size) }
	none := func(name string, wrong func(*stock.Item) bool) {
		t.Run(name, func(t *testing.T) {
			for _, it := range stock.Items() {
				require.False(t, wrong(it), it.String())
			}
		})
	}
	plastic := func(it *stock.Item) bool { return slices.Contains([]string{"pp", "nylon", "acetal"}, it.Material) }
	none("an adaptor of three steps or more", func(it *stock.Item) bool { return it.Kind == "adaptor" && it.Steps > 2 })
	none("a union in polypropylene above 10 bar", func(it *stock.Item) bool {
		if it.Kind != "union" || it.Material != "pp" {
			return false
		}
		claim, err := quantity.ParsePressure(it.Rated)
		return err != nil || claim > 10*quantity.Bar
	})
	none("a cutting-ring fitting in plastic", func(it *stock.Item) bool {
		return plastic(it) && slices.ContainsFunc(it.Ends, func(e threads.End) bool { return e.Family == threads.Cone24L || e.Family == threads.Cone24S })
	})
	none("a 25 mm tail on an 1/8 thread", func(it *stock.Item) bool {
		thin := slices.ContainsFunc(it.Ends, func(e threads.End) bool { return e.Size == "1/8" })
		return thin && slices.ContainsFunc(it.Ends, func(e threads.End) bool { return e.Family == threads.Barb && e.Diameter > 8 })
	})
	none("a swivel in cast bronze", func(it *stock.Item) bool {
		cast := it.Material == "bronze" && it.Class != ""
		return cast && slices.ContainsFunc(it.Ends, func(e threads.End) bool { return e.Swivel })
	})
	none("super duplex of class 150", func(it *stock.Item) bool {
		return it.Material == "super duplex" && (it.Class == "class 150" || it.Class == "class 125")
	})
	none("a bush without a step, or of more than four", func(it *stock.Item) bool {
		return it.Kind == "bush" && (it.Steps < 1 || it.Steps > 4 || inches(it.Ends[0]) <= inches(it.Ends[1]))
	})
	none("a swivel without a seat", func(it *stock.Item) bool {
		seated := map[threads.Family]bool{threads.JIC: true, threads.SAE45: true, threads.ORFS: true, threads.NH: true}
		return slices.ContainsFunc(it.Ends, func(e threads.End) bool { return e.Swivel && e.Seal == threads.NoSeal && !seated[e.Family] })
	})
	none("a copper alloy without proof against dezincification for the sea", func(it *stock.Item) bool {
		m := catalog.MaterialsIn(it.Material)
		return it.Material == "brass" && m[0].In(catalog.RawSea) != catalog.No
	})
	none("a coupling or a nipple of four steps", func(it *stock.Item) bool { return (it.Kind == "coupling" || it.Kind == "nipple") && it.Steps > 3 })
}

func TestWithEnds(t *testing.T) {
	end := func(text string) threads.EndReading {
		r, err := title.ReadEnd(text)
		require.NoError(t, err)
		return r
	}
	list := stock.WithEnds(end("1/2 NPT male"), end("G 1/2 male"))
	require.NotEmpty(t, list)
	for _, it := range list {
		require.Contains(t, it.Title(), "1/2 NPT male")
		require.Contains(t, it.Title(), "G 1/2 male")
	}
	for _, it := range stock.WithEnds(end("1/2 NPT male"), end("1/2 NPT male")) {
		require.Equal(t, 2, strings.Count(it.Title(), "1/2 NPT male"), "one port does not answer for two")
	}
	require.Empty(t, stock.WithEnds(end("PG16 male")))
}

func TestFind(t *testing.T) {
	require.NotEmpty(t, stock.Find("bush 1/2 npt 316"))
	require.Empty(t, stock.Find("bush unobtainium"))
	require.Empty(t, stock.Find("ush 1/2"), "from the beginning of a word")
	require.Empty(t, stock.Find(""))
}
