package catalog

import (
	"encoding/csv"
	"math"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

func TestMaterialNamed(t *testing.T) {
	for _, c := range []struct {
		why, text string
		want      []string
	}{
		{"as the reader writes it", "316", []string{"316"}},
		{"a low-carbon grade is the same to the sea", "316L stainless", []string{"316"}},
		{"the grade after the general word", "stainless steel 316", []string{"316"}},
		{"no grade said", "Edelstahl", []string{"stainless steel"}},
		{"a number of EN 10088", "1.4404", []string{"316"}},
		{"two grades on one part", "316/316L", []string{"316"}},
		{"a hose and its ends", "nylon core, 316 ends", []string{"pa", "316"}},
		{"the same with brass", "nitrile, brass ends", []string{"nbr", "brass"}},
		{"DZR is a closer word than brass", "DZR brass CW602N", []string{"dzr"}},
		{"a bronze that is a brass", "manganese bronze", []string{"manganese bronze"}},
		{"the longest name, not the aluminium in it", "nickel-aluminium bronze", []string{"nickel-aluminium bronze"}},
		{"a lead-free grade of it is closer still", "lead-free DZR brass", []string{"lead-free dzr"}},
		{"by its number", "DZR brass CW511L", []string{"lead-free dzr"}},
		{"brass without lead", "lead free brass", []string{"lead-free brass"}},
		{"a soft hose is no hard pipe", "clear PVC", []string{"clear pvc"}},
		{"zinc on iron", "malleable iron, galvanised", []string{"galvanised"}},
		{"super duplex is more than duplex", "Super Duplex 2507", []string{"super duplex"}},
		{"duplex alone is the lesser", "duplex", []string{"duplex"}},
		{"a plastic by its trade word", "glass filled PP", []string{"pp"}},
		{"which plastic, after all", "plastic (acetal)", []string{"pom"}},
		{"another language, by the reader of titles", "acero inoxidable", []string{"stainless steel"}},
		{"a full stop is no part of a grade", "Made of 304.", []string{"304"}},
		{"nothing known", "unobtainium", nil},
		{"nothing said", "", nil},
	} {
		t.Run(c.why, func(t *testing.T) {
			var got []string
			for _, m := range MaterialsIn(c.text) {
				got = append(got, m.Name)
			}
			require.Equal(t, c.want, got)
			first, ok := MaterialNamed(c.text)
			require.Equal(t, len(c.want) > 0, ok)
			if ok {
				require.Equal(t, c.want[0], first.Name)
			}
		})
	}
}

// Every material that the reader of titles gives is one that the table knows.
func TestReadersMaterialsAreKnown(t *testing.T) {
	f, err := os.Open("../threads/title/lexicon/material.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Greater(t, len(rows), 20)
	for _, r := range rows[1:] {
		_, ok := MaterialNamed(r[1])
		require.True(t, ok, "the reader gives %q", r[1])
	}
}

func TestSuitability(t *testing.T) {
	for _, c := range []struct {
		why, material          string
		raw, high, still, tank Suitability
	}{
		{"316: a caution, never safe (27 plants, acom 3-95)", "316", Caution, Caution, No, Suitable},
		{"304 pits", "304", No, No, No, Suitable},
		{"brass loses its zinc, and its lead to what is drunk", "brass", No, No, No, Caution},
		{"lead-free brass loses its zinc all the same", "lead-free brass", No, No, No, Caution},
		{"DZR brass loses it slower", "dzr", Caution, No, Caution, Caution},
		{"and its lead-free grade", "CW511L", Caution, No, Caution, Caution},
		{"copper goes into soft water", "copper", Caution, No, Caution, Caution},
		{"clear PVC goes flat, soft and green", "clear PVC", Caution, No, Caution, Caution},
		{"hard PVC does not", "uPVC", Suitable, No, Suitable, Suitable},
		{"bronze is the skin fitting's own", "bronze", Suitable, Caution, Suitable, Caution},
		{"super duplex is made for it", "super duplex", Suitable, Suitable, Suitable, Suitable},
		{"titanium too", "titanium", Suitable, Suitable, Suitable, Suitable},
		{"no plastic fitting is for high pressure", "pp", Suitable, No, Suitable, Suitable},
		{"iron rusts, in drinking water too", "malleable iron", No, No, No, No},
		{"graphite is not asked about", "graphite", NotKnown, NotKnown, NotKnown, NotKnown},
	} {
		t.Run(c.why, func(t *testing.T) {
			m, ok := MaterialNamed(c.material)
			require.True(t, ok)
			require.Equal(t, []Suitability{c.raw, c.high, c.still, c.tank}, []Suitability{m.In(RawSea), m.In(PressedSea), m.In(StandingSea), m.In(Product)})
		})
	}
	m, _ := MaterialNamed("316")
	require.Equal(t, NotKnown, m.In(99))
}

// What keeps the sea out is of bronze, or of a plastic made for it: page "Plastic
// Through-hull Warning" on nylon and acetal; page "What's Below Your Waterline" on ABYC H-27
// and ANSI/UL 1121; PVC by common practice.
func TestHullFittings(t *testing.T) {
	for material, want := range map[string]Suitability{"bronze": Suitable, "pvc": No, "clear pvc": No, "nylon": No, "acetal": No, "pp": No, "plastic": Caution, "dzr": Caution, "316": NotKnown} {
		m, ok := MaterialNamed(material)
		require.True(t, ok, material)
		require.Equal(t, want, m.In(Hull), material)
		require.Equal(t, m.Why, m.WhyIn(RawSea), material)
		if want == No {
			require.NotEqual(t, m.Why, m.WhyIn(Hull), material)
		}
	}
}

// A material that low-salt water takes something from says what, and not what the sea does:
// pages "Reverse Osmosis and Copper Pipes" and "Reverse Osmosis Corrosion".
func TestCopperAlloysOnProductWater(t *testing.T) {
	for _, c := range []struct {
		material string
		takes    []string
		not      string
	}{
		{"copper", []string{"copper"}, "lead"}, {"bronze", []string{"copper", "lead"}, ""}, {"brass", []string{"copper", "zinc", "lead"}, ""},
		{"dzr", []string{"copper", "lead"}, "no lead"}, {"lead-free dzr", []string{"copper", "no lead"}, ""}, {"lead-free brass", []string{"copper", "zinc", "no lead"}, ""},
		{"galvanised", []string{"zinc"}, ""}, {"copper-nickel", []string{"copper", "nickel"}, ""},
	} {
		m, ok := MaterialNamed(c.material)
		require.True(t, ok, c.material)
		require.Equal(t, Caution, m.In(Product), c.material)
		for _, w := range c.takes {
			require.Contains(t, m.WhyIn(Product), w, c.material)
		}
		if c.not != "" {
			require.NotContains(t, m.WhyIn(Product), c.not, c.material)
		}
		require.NotContains(t, m.WhyIn(Product), "sponge", c.material)
		require.Contains(t, m.Source, "Reverse Osmosis", c.material)
	}
	for _, m := range Materials() { // no copper alloy is left out
		if m.Metal() && strings.Contains(strings.ToLower(m.Title), "brass") || strings.Contains(m.Name, "bronze") || strings.Contains(m.Name, "copper") {
			require.Equal(t, Caution, m.In(Product), m.Name)
		}
	}
}

// No answer that is said to be seen rests on potentials alone: they tell of two metals that
// touch, and not how one of them lasts. The potentials name their own source.
func TestAnswersDoNotRestOnPotentials(t *testing.T) {
	for _, m := range Materials() {
		require.NotContains(t, m.Source, "potentials", m.Name)
		require.Equal(t, m.Potential.Known || m.PREN.Known, m.FiguresSource != "", m.Name)
		if m.Status == "seen" {
			require.NotEqual(t, "common practice", m.Source, m.Name)
		}
	}
}

// A stainless without a grade may be 304: the table's own words say so, and no row with a
// grade is one.
func TestNoGrade(t *testing.T) {
	var got []string
	for _, m := range Materials() {
		if m.NoGrade() {
			require.True(t, m.Stainless(), m.Name)
			got = append(got, m.Title)
		}
	}
	require.Equal(t, []string{"stainless steel of a grade not said"}, got)
	for text, want := range map[string]bool{"stainless": true, "inox": true, "stainless steel 316": false, "A2 stainless": false, "bronze": false} {
		m, ok := MaterialNamed(text)
		require.True(t, ok, text)
		require.Equal(t, want, m.NoGrade(), text)
	}
}

// The gaps that the corrosion pages name, in volts.
func TestGalvanicGap(t *testing.T) {
	for _, c := range []struct {
		why, a, b   string
		least, most float64
		source      string
	}{
		{"stainless by aluminium: the worst that people do", "316", "aluminium", 0.66, 1.00, "potentials in flowing sea water, corrosion association page: a gap of at least 0.66 V"},
		{"stainless by tin bronze: mild, the areas decide", "316", "bronze", 0.14, 0.32, "the same page"},
		{"titanium by bronze", "titanium", "bronze", 0.28, 0.38, "the same page"},
		{"a metal by itself", "brass", "brass", 0, 0.09, "the width of its range"},
	} {
		t.Run(c.why, func(t *testing.T) {
			a, _ := MaterialNamed(c.a)
			b, _ := MaterialNamed(c.b)
			least, most, ok := GalvanicGap(a, b)
			require.True(t, ok)
			require.Equal(t, []float64{c.least, c.most}, []float64{least.Volts(), most.Volts()}, c.source)
			l2, m2, _ := GalvanicGap(b, a)
			require.Equal(t, []quantity.Voltage{least, most}, []quantity.Voltage{l2, m2}, "the order does not matter")
			noble, base := Nobler(a, b)
			require.GreaterOrEqual(t, noble.Potential.From+noble.Potential.To, base.Potential.From+base.Potential.To)
		})
	}
	metal, _ := MaterialNamed("316")
	for _, none := range []string{"pp", "dzr"} {
		m, _ := MaterialNamed(none)
		_, _, ok := GalvanicGap(metal, m)
		require.False(t, ok, none)
	}
}

// PREN is Cr + 3.3 Mo + 16 N: the ranges of the table hold the worked compositions.
func TestPREN(t *testing.T) {
	for _, c := range []struct {
		material  string
		cr, mo, n float64
		want      float64
	}{
		{"316", 17, 2.1, 0.05, 24.73},
		{"duplex", 22, 3.1, 0.17, 34.95},
	} {
		got := c.cr + 3.3*c.mo + 16*c.n
		require.InDelta(t, c.want, got, 0.01, "articles on PREN, worked by their formula")
		m, _ := MaterialNamed(c.material)
		require.True(t, m.PREN.Known)
		require.GreaterOrEqual(t, got, m.PREN.From)
		require.LessOrEqual(t, got, m.PREN.To)
	}
	super, _ := MaterialNamed("super duplex")
	require.Equal(t, Bounds[float64]{From: 40, To: math.Inf(1), Known: true}, super.PREN)
}

// Every row is whole: a source, a reason, a status, and bounds the right way round.
func TestMaterialTable(t *testing.T) {
	seen := map[string]bool{}
	for _, m := range Materials() {
		require.False(t, seen[m.Name], "%s stands twice", m.Name)
		seen[m.Name] = true
		require.NotEmpty(t, m.Source, m.Name)
		require.NotEmpty(t, m.Why, m.Name)
		require.Contains(t, []string{"metal", "plastic", "composite", "rubber"}, m.Group, m.Name)
		require.Contains(t, []string{"seen", "common practice", "memory"}, m.Status, m.Name)
		require.LessOrEqual(t, m.Potential.From, m.Potential.To, m.Name)
		require.LessOrEqual(t, m.PREN.From, m.PREN.To, m.Name)
		require.LessOrEqual(t, m.In(StandingSea), m.In(RawSea), "%s: what stands still is no kinder than what flows", m.Name)
		found, ok := MaterialNamed(m.Name)
		require.True(t, ok)
		require.Same(t, m, found, m.Name)
		found, ok = MaterialNamed(strings.ToUpper(m.Title))
		require.True(t, ok, m.Title)
		require.Same(t, m, found, m.Title)
	}
	require.GreaterOrEqual(t, len(seen), 35)
}

// No text makes it fail, and no material is named twice.
func TestMaterialsInAnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		seen := map[*Material]bool{}
		for _, m := range MaterialsIn(rapid.String().Draw(t, "text")) {
			require.NotNil(t, m)
			require.False(t, seen[m])
			seen[m] = true
		}
	})
}
