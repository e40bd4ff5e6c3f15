package title

import (
	"fmt"
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// kindsOf are the sorts and values of the figures of a text, before a word of it has a meaning.
func kindsOf(text string) (out []string) {
	names := map[figureKind]string{bare: "", inchSize: "in ", mmSize: "mm ", frenchSize: "french ", fenSize: "fen ", dnSize: "dn ", coneSize: "cone ", unSize: "un ", metricSize: "M ", junkFigure: "junk ", garbled: "garbled ", pressureFigure: "pressure "}
	for _, f := range figuresOf(text) {
		out = append(out, fmt.Sprintf("%s%v", names[f.kind], math.Round(f.v*1e4)/1e4))
	}
	return out
}

// How figures and what touches them are cut: by eye.
func TestFiguresAndTheirNeighbours(t *testing.T) {
	for text, want := range map[string][]string{
		"15/16 mm":    {"15", "mm 16"}, // two pipes a millimetre apart
		"15/16 mm x":  {"15", "mm 16"},
		"15/16":       {"in 0.9375"},
		"15/16 mmx":   {"in 0.9375"}, // mmx is no unit
		"8/6/8":       {"8", "6", "8"},
		"10/8/10":     {"10", "8", "10"},
		"6/4/6":       {"6", "4", "6"},
		"DN20/3/4":    {"20", "in 0.75"},
		"3/4/":        {"in 0.75"},
		"100/4":       {"100", "4"},
		"99/4":        {"in 24.75"},
		"1/64":        {"in 0.0156"},
		"1/65":        {"1", "65"}, // no sixty-fifths
		"5/65":        {"5", "65"},
		"5/6":         {"5", "6"},
		"2/3":         {"in 0.6667"},
		"0/4":         {"0", "4"},
		"1/0":         {"1", "0"},
		"1/":          {"1"},
		"11/2":        {"in 1.5"}, // one and a half run together
		"21/2":        {"in 2.5"},
		"31/2":        {"in 15.5"}, // three and a half is no size that is written so
		"12/4":        {"in 3"},
		"15/4":        {"in 3.75"}, // a quarter has no fives
		"4 1/2":       {"in 4.5"},
		"5 1/2":       {"5", "in 0.5"}, // five of a half, and no pipe of 5 1/2
		"1 5/4":       {"1", "in 1.25"},
		"1.1/4":       {"in 1.25"},
		"1./4":        {"garbled 1"},
		"1.2345678":   {"1", "2.345678e+06"}, // no size has so many digits
		".5":          {"0.5"},
		"2-in-1":      {"junk 2"},
		"2in1":        {"junk 2"},
		"2-in-12":     {"2", "12"},
		"1-inch":      {"in 1"},
		"25-mm":       {"mm 25"},
		"1-in-":       {"1"},
		"15/21":       {"french 0.5"},
		"15x21":       {"french 0.5"},
		"15-21":       {"french 0.5"},
		"15 x 21":     {"15", "21"},
		"M 15 x 21":   {"french 0.5"},
		"F 15 x 21":   {"french 0.5"},
		"DM 15 x 21":  {"15", "21"},
		"15/21 mm":    {"french 0.5"}, // which are millimetres
		"5/10 micron": {"5", "junk 10"},
		"15/21/2":     {"15", "in 10.5"},
		"15/21.5":     {"15", "21.5"},
		"115/21":      {"115", "21"},
		"15/22":       {"15", "22"},
		`3/4 "`:       {"in 0.75"},
		"3 in":        {"in 3"},
		"4.5 in":      {"in 4.5"},
		"4.5in":       {"in 4.5"},
		"3/4'":        {"in 0.75"}, // nobody counts quarters of a foot
		"3'":          {"junk 3"},
		"1234567":     {"1.234567e+06"},
		"كوع 3/4":     {"in 0.75"},
		"كوع 4/3":     {"in 0.75"}, // from right to left
		"كوع 2/1":     {"in 0.5"},
		"كوع 8/5":     {"in 0.625"},
		"كوع 5/3":     {"in 1.6667"}, // no fifths: as it stands
		"كوع 4/5":     {"in 0.8"},
		"كوع 4/3/2":   {"4", "in 1.5"},
		"كوع 16/3":    {"in 5.3333"},
		"elbow 4/3":   {"in 1.3333"}, // no Arabic letter: as it stands
	} {
		assert.Equal(t, want, kindsOf(text), text)
	}
}

// A fraction of an inch is what it says, from a sixty-fourth up, whatever stands behind it; what follows
// a stroke and a figure makes a row of figures of it, and no fraction.
func TestFractions(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bottom := rapid.SampledFrom([]int{2, 4, 8, 16, 32, 64}).Draw(t, "bottom")
		top := 2*rapid.IntRange(0, bottom/2-1).Draw(t, "half") + 1
		text := fmt.Sprintf("%d/%d", top, bottom)
		behind := rapid.SampledFrom([]string{"", " ", `"`, " NPT", "-", "x", ","}).Draw(t, "behind")
		got := figuresOf("elbow " + text + behind)
		require.NotEmpty(t, got)
		require.True(t, got[0].frac, text+behind)
		require.Equal(t, float64(top)/float64(bottom), got[0].v, text+behind)
		row := figuresOf(fmt.Sprintf("elbow %s/%d", text, rapid.IntRange(2, 20).Draw(t, "third")))
		require.False(t, row[0].frac, "%s and a third", text)
	})
}

// A hyphen or a # before a figure makes a dash of it, but behind a figure, an inch mark or DN it does not.
func TestDashesBeforeFigures(t *testing.T) {
	for text, want := range map[string]bool{"#8": true, "x #8": true, "JIC -8": true, "JIC-8": true, "DN-15": false, "1-8": false, `1"-8`: false, "8": false, "- 8": false} {
		got := figuresOf(text)
		require.Equal(t, want, got[len(got)-1].dashed, text)
	}
}
