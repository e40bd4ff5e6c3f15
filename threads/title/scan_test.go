package title

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// figuresOf are the figures that the scanner finds in a text, before a word of it has a meaning.
func figuresOf(text string) []figure {
	var out []figure
	for _, tok := range scan(normalise(text)) {
		if tok.figure != nil {
			out = append(out, *tok.figure)
		}
	}
	return out
}

// How figures are written, and what stands there. By eye.
func TestFiguresAreScanned(t *testing.T) {
	for text, want := range map[string]float64{
		"3/4": 0.75, "1 1/2": 1.5, "1-1/2": 1.5, "1.1/2": 1.5, "1\"1/2": 1.5, "1 & 1/4": 1.25, "1 + 1/4": 1.25, "1.-1/4": 1.25, "11/4": 1.25, "23/4": 2.75, "13/4": 1.75,
		"0.75": 0.75, "0,75": 0.75, ".5": 0.5, "5/4": 1.25, "6/4": 1.5, "12": 12, "4-Mar": 0.75, "3-Apr": 0.75, "2-Jan": 0.5, "1-Feb": 0.5, "8-Mrz": 0.375, "3.Apr": 0.75,
		"15/16": 0.9375, "31/64": 31.0 / 64, "½": 0.5, "1½": 1.5, "¾": 0.75, "1 ¼": 1.25, "10/4": 2.5,
	} {
		got := figuresOf(text)
		require.Len(t, got, 1, text)
		require.InDelta(t, want, got[0].v, 1e-12, text)
	}
	for text, want := range map[string]struct {
		marked, dashed, frac, whole, dated bool
	}{
		`1/2"`: {marked: true, frac: true}, `1/2 "`: {marked: true, frac: true}, "1/2 inch": {marked: true, frac: true}, "1/2 in.": {marked: true, frac: true}, "2 Zoll": {marked: true, whole: true},
		"#8": {dashed: true, whole: true}, "x -8": {dashed: true, whole: true}, "4-Mar": {frac: true, dated: true}, "0.75": {}, "3.0": {whole: true},
	} {
		got := figuresOf(text)
		require.NotEmpty(t, got, text)
		f := got[len(got)-1]
		require.Equal(t, want, struct{ marked, dashed, frac, whole, dated bool }{f.marked, f.dashed, f.frac, f.whole, f.dated}, text)
	}
}

// What looks like a size and is none is not read as one: two figures, or no fraction of an inch.
func TestFiguresThatAreNoSizes(t *testing.T) {
	for text, want := range map[string][]float64{
		"3/5/7": nil, "4/100": nil, "0/4": nil, "5/10 micron": nil, "5-May": nil, "4-Apr": nil, "6-Feb": nil, "13-Mar": nil,
	} {
		for _, f := range figuresOf(text) {
			require.False(t, f.frac && f.kind == bare, "%s: %v is read as a fraction, want %v", text, f.v, want)
		}
	}
	for text, want := range map[string]string{"15/21": "french", "20x27": "french", "12/17": "french", "15/21/3": "", "1.15/21": "", "15/21.5": ""} {
		kind := ""
		for _, f := range figuresOf(text) {
			if f.kind == frenchSize {
				kind = "french"
			}
		}
		require.Equal(t, want, kind, text)
	}
	require.Equal(t, garbled, figuresOf("1./")[0].kind, "a fraction without its end")
}

// A size is the same figure in every way of writing it, with whatever stands round it.
func TestOneSizeInEveryWriting(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		under := rapid.SampledFrom([]int{2, 4, 8, 16}).Draw(t, "under")
		over := 2*rapid.IntRange(0, under/2-1).Draw(t, "over") + 1
		whole := rapid.IntRange(0, 3).Draw(t, "whole")
		want := float64(whole) + float64(over)/float64(under)
		fraction := fmt.Sprintf("%d/%d", over, under)
		ways := []string{fraction}
		if whole > 0 {
			ways = nil
			for _, between := range []string{" ", "-", ".", " & ", " + ", "  "} {
				ways = append(ways, fmt.Sprintf("%d%s%s", whole, between, fraction))
			}
		}
		decimals := strings.TrimRight(fmt.Sprintf("%.4f", want), "0")
		ways = append(ways, decimals, strings.Replace(decimals, ".", ",", 1))
		way := rapid.SampledFrom(ways).Draw(t, "way")
		mark := rapid.SampledFrom([]string{`"`, ` "`, " inch", " in", "''", "″", " Zoll", " pulgadas"}).Draw(t, "mark")
		text := "Nipple " + way + mark + " NPT male"
		got := figuresOf(text)
		require.Len(t, got, 1, text)
		require.Less(t, math.Abs(got[0].v-want), 1e-9, text)
		require.True(t, got[0].marked, text)
	})
}

// Words and figures that run together are taken apart where both sides mean something.
func TestWordsRunTogether(t *testing.T) {
	readMeant(t, []lineMeant{
		{"two sexes by an x", "Coupling 1/2 FxF NPT", "NPT 1/2 female; NPT 1/2 female"},
		{"three by two", "Tee 3/4 FxFxM NPT", "NPT 3/4 female; NPT 3/4 female; NPT 3/4 male"},
		{"two families by an x", "Adaptor 1/2 MPTxFPT", "NPT 1/2 male; NPT 1/2 female"},
		{"sizes by an x", "Bush 3/4x1/2 NPT", "NPT 3/4 male; NPT 1/2 female"},
		{"a thread and its tail", "Hose tail 3/4BSPTx20mm", "R 3/4 male; BARB 20 mm"},
		{"slip by female: the glued end is not judged", "PVC adaptor 1/2 SxFPT", "NPT 1/2 female plastic"},
		{"a letter for the thread glued to the size", "Nipple G1/2", "G 1/2 male; G 1/2 male"},
		{"the name of the thread glued behind", "Plug 1/2NPT", "NPT 1/2 male"},
		{"a decimal without its nought", "Plug .5 NPT", "NPT 1/2 male"},
		{"a stop between figures is a decimal's", "Plug 0.5 NPT", "NPT 1/2 male"},
	})
}

// Letters and figures of a code are no thread, no size and no sex; they are named.
func TestCodesAreNoEnds(t *testing.T) {
	for _, row := range []lineMeant{
		{"the type of a hose (EN 853)", "Hydraulic hose R2AT 1/2 NPT male both ends", "NPT 1/2 male; NPT 1/2 male"},
		{"a figure behind the letters of a code is no whole number", "Ball valve KX4 1/4 NPT F", "NPT 1/4 female; NPT 1/4 female"},
		{"the x in it parts nothing", "Ball valve AX12 1/2 NPT F", "NPT 1/2 female; NPT 1/2 female"},
		{"figures between two letters", "Ball valve 3/8 NPT F Q10A", "NPT 3/8 female; NPT 3/8 female"},
		{"M in a code is no male", "Plug AB12M3 1/2 NPT", "NPT 1/2 male"},
		{"letters before and behind figures", "Elbow 1/2 NPT F QR-77-ZK", "NPT 1/2 female; NPT 1/2 female"},
		{"a capital and figures", "Elbow 1/2 NPT F B1234", "NPT 1/2 female; NPT 1/2 female"},
	} {
		t.Run(row.why, func(t *testing.T) { require.Equal(t, row.ends, brief(Read(row.text).Ends), row.text) })
	}
	for _, code := range []string{"AB-1234", "QR-77-ZK", "ZX4"} {
		require.True(t, names(Read("Elbow 1/2 NPT F "+code), strings.SplitN(code, "-", 2)[0]), code)
	}
}

// Two grades in one word are not one of them.
func TestTwoGradesAreNotOne(t *testing.T) {
	one, two := Read("Elbow 1/2 NPT F 316"), Read("Elbow 1/2 NPT F 304/316")
	require.Equal(t, "316", one.Material)
	require.Equal(t, brief(one.Ends), brief(two.Ends))
	require.NotEqual(t, "316", two.Material, "it may be 304")
}

// The figures of a code are no material, though a steel has them for its number.
func TestACodesFiguresAreNoSteel(t *testing.T) {
	for text, material := range map[string]string{"Elbow 1/2 NPT F 2205": "duplex", "Elbow 1/2 NPT F QQQ2205": "", "Elbow 1/2 NPT F SS316": "316", "Elbow 1/2 NPT F AISI316": "316"} {
		require.Equal(t, material, Read(text).Material, text)
	}
}
