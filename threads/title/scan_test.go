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
