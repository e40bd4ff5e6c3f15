package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

func TestReadKindMaterialRating(t *testing.T) {
	for _, row := range []struct {
		why, text, kind, material string
		bar                       float64 // 0: no rating is said
	}{
		{"PN is a rating in bar (ISO 7268)", `Kugelhahn 1/2" IG PN16 Messing`, "shut-off valve", "brass", 16},
		{"psi by the exact pound and inch", "Elbow 1/2 NPT F 316 600 psi", "elbow", "316", 41.36854},
		{"megapascal", "Flow sensor G3/4 1.6 MPa", "flow meter", "", 16},
		{"WOG is a cold working pressure in psi", "Ball valve 1/2 FNPT 1000 WOG", "shut-off valve", "", 68.94757},
		{"a gauge's scale is no rating", "Pressure gauge 0-160 bar G 1/4", "gauge", "", 0},
		{"a class is no rating (ASME B16.11)", "Elbow 1/2 NPT 3000 lb class 3000 304", "elbow", "304", 0},
		{"what a relief valve is set to is no rating", "Relief valve 1/2 NPT set 70 bar bronze", "relief valve", "bronze", 0},
		{"the grade outranks the word", "Doppelnippel Edelstahl 1/2\" 1.4401", "nipple", "316", 0},
		{"a brass that resists sea water is its own", "Hose tail 3/4 BSP male x 19 mm DZR", "hose tail", "dzr", 0},
		{"a check valve is not any valve", "Clapet anti-retour laiton 3/4 F", "check valve", "brass", 0},
		{"a bush in Chinese", "补芯 6分外丝×4分内丝 铜", "bush", "brass", 0},
		{"a housing and not its cartridge", `Sediment filter housing 10" 3/4" ports 100 psi`, "filter housing", "", 6.894757},
		{"a hose's pressure", "Hydraulic hose 3/8 BSP F swivel both ends 330 bar", "hose", "", 330},
	} {
		t.Run(row.why, func(t *testing.T) {
			r := Read(row.text)
			require.Equal(t, row.kind, r.Kind)
			require.Equal(t, row.material, r.Material)
			require.Equal(t, row.bar != 0, r.HasRated)
			require.InDelta(t, row.bar, r.Rated.Bar(), 0.001)
		})
	}
}

func TestLinesWithoutAnEnd(t *testing.T) {
	for _, row := range []struct{ why, text string }{
		{"a bolt has a metric thread and no pipe", "Hex bolt M10x40 A4-80"},
		{"a clip by its range", "Hose clip 16-27 mm 316"},
		{"a cable gland", "Kabelverschraubung M20x1,5"},
		{"a conduit adaptor", "Conduit adaptor 3/4\" to box"},
		{"a cable's section", "Cable 3x2,5 mm, per metre"},
		{"a tool by its drive", "Drive socket 1/2\" drive 21 mm"},
		{"tape by its width", "PTFE tape 12 mm x 10 m"},
		{"a hose by its bore", "Suction hose 3/4\" ID 10 m"},
		{"words without any figure of an end", "Epoxy filler, grey"},
	} {
		t.Run(row.why, func(t *testing.T) { require.Empty(t, Read(row.text).Ends) })
	}
}

func TestFiguresThatAreNoEnds(t *testing.T) {
	for _, row := range []struct {
		why, text string
		sizes     []string
	}{
		{"the second figure of a nipple is its length", `Nipple 1/2" x 2" brass NPT`, []string{"1/2", "1/2"}},
		{"a reducing nipple has two threads", `Hex nipple 3/4 x 1/2 NPT`, []string{"3/4", "1/2"}},
		{"a gauge's dial", `Gauge 2" dial 1/4 NPT`, []string{"1/4"}},
		{"one inch and a half in Italian writing", `Manicotto 1"1/2 ottone`, []string{"1 1/2", "1 1/2"}},
		{"one and a quarter with a stop", `Elbow 1.1/4" BSPT F`, []string{"1 1/4", "1 1/4"}},
		{"pieces", "1pz nipplo 1/2 ottone", []string{"1/2", "1/2"}},
		{"twice", "2x elbow 3/8 NPT F", []string{"3/8", "3/8"}},
		{"each", "3 ea plug 1/4 NPT", []string{"1/4"}},
		{"a spanner", "Cupla 1/4 BSP hexagonal 5/8\"", []string{"1/4", "1/4"}},
		{"the same size by its bore", `Elbow 3/4" DN20 G F`, []string{"3/4", "3/4"}},
		{"a thread and a tube joined by a hyphen", "Raccord droit mâle 3/4-20 à sertir", []string{"3/4"}},
		{"a length in hundreds", "Flexible 3/8 BSP F x 3/8 BSP F 500 mm", []string{"3/8", "3/8"}},
	} {
		t.Run(row.why, func(t *testing.T) {
			var got []string
			for _, e := range Read(row.text).Ends {
				require.NotEmpty(t, e.Candidates, e.Words)
				got = append(got, e.Candidates[0].Size)
			}
			require.Equal(t, row.sizes, got)
		})
	}
}

func TestACountryOnlyOrdersTheCandidates(t *testing.T) {
	german, american := Read(`Winkel 1/2" IG/AG`), Read(`Elbow 1/2 FIP x 1/2 male`)
	require.Equal(t, threads.G, german.Ends[0].Candidates[0].Family)
	last := german.Ends[0].Candidates[len(german.Ends[0].Candidates)-1]
	require.Equal(t, threads.NPT, last.Family)
	require.Equal(t, threads.NPT, american.Ends[1].Candidates[0].Family)
}

func TestWhatIsNotUnderstoodIsSaid(t *testing.T) {
	require.Equal(t, []string{"frobnicator"}, Read("frobnicator elbow 1/2 NPT F").Unread)
	require.Empty(t, Read("Elbow 1/2 NPT F, item AB-1234").Unread)
	require.Contains(t, Read("Elbow CxFI 22mm x 3/4").Unread[0], "solder")
	require.Contains(t, Read(strings.Repeat("1/2 NPT ", 1000)).Unread, "the text beyond 2000 bytes")
}

func TestAnUnreadSizeIsShown(t *testing.T) {
	r := Read(`ADAPTADOR MACHO 2./2"`)
	require.Len(t, r.Ends, 1)
	require.Empty(t, r.Ends[0].Candidates)
	require.NotEmpty(t, r.Ends[0].Question)
}

func TestSameTextSameReading(t *testing.T) {
	for _, l := range readCorpus(t, "../../testdata/published/designations.csv") {
		require.Equal(t, Read(l.text), Read(l.text))
	}
}

func TestWordsAreTheTextsOwn(t *testing.T) {
	for _, l := range readCorpus(t, "../../testdata/published/designations.csv") {
		for _, e := range Read(l.text).Ends {
			require.Contains(t, l.text, e.Words)
			require.NotEmpty(t, e.Words)
		}
	}
}

func TestEveryWordHasItsSource(t *testing.T) {
	l := readLexicon()
	for _, name := range append([]string{"shape.csv", "pair.csv", "bore.csv", "symbol.csv", "fold.csv", "thread.csv", "pneumatic.csv", "lists.csv"}, wordFiles...) {
		for _, r := range lexiconRows(name) {
			require.NotEmpty(t, r["source"], name)
			if r["class"] == "" {
				continue
			}
			require.NotZero(t, classNames[r["class"]], "%s: class %s", name, r["class"])
			if r["class"] == "kind" {
				require.NotNil(t, l.shapes[r["value"]], r["value"])
			}
			if r["class"] == "attr" && r["value"] != "both" && r["value"] != "reducing" && r["value"] != "cone-seat" {
				require.True(t, attrNamed[r["value"]] != 0 || plainAttrs[r["value"]], r["value"])
			}
		}
	}
}

// plainAttrs are words that are understood and change nothing here.
var plainAttrs = map[string]bool{"equal": true, "three-way": true, "left": true, "right": true, "classA": true, "stud": true}

// Texts that once took minutes; what they take is a figure of the benchmark.
var longPieces = []string{"10/", "x", "1/2 x ", "M/F ", "(1/2", "abc", "宝塔", "1-1/2\" BSP M ", "r2d2", "npt1"}

func TestLongTextIsRead(t *testing.T) {
	for _, piece := range longPieces {
		require.Contains(t, Read(strings.Repeat(piece, 4000/len(piece))).Unread, "the text beyond 2000 bytes", piece)
	}
}

func BenchmarkLongText(b *testing.B) {
	for _, piece := range longPieces {
		text := strings.Repeat(piece, 2000/len(piece))
		b.Run(strings.TrimSpace(piece), func(b *testing.B) {
			for b.Loop() {
				Read(text)
			}
		})
	}
}

// A vessel's two ends are feed and product, and its brine port is taken to be as its feed; a
// line that speaks of the brine leaves the product unsaid.
func TestReadVesselPorts(t *testing.T) {
	for text, want := range map[string][]string{
		"membrane housing 2.5 x 40, feed 1/2 NPT female, product 1/4 NPT female": {"1/2", "1/2", "1/4"},
		"membrane housing 2.5 x 40, 1/2 NPT female feed, 1/2 NPT brine":          {"1/2", "1/2"},
	} {
		var got []string
		for _, end := range Read(text).Ends {
			require.NotEmpty(t, end.Candidates, text)
			got = append(got, end.Candidates[0].Size)
		}
		require.Equal(t, want, got, text)
	}
}
