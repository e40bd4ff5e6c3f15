package cart

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/money"
)

// A quantity before the words; a size may stand there too.
func TestQuantityBeforeTheWords(t *testing.T) {
	for _, row := range []struct {
		text               string
		number, unit, rest string
		ok                 bool
	}{
		{"2x Elbow", "2", "", "Elbow", true}, {"2 x Elbow", "2", "", "Elbow", true}, {"3 ea Elbow", "3", "ea", "Elbow", true}, {"1.5m Hose", "1.5", "m", "Hose", true}, {"1,5 m Hose", "1,5", "m", "Hose", true},
		{"10 pcs. Clamp", "10", "pcs", " Clamp", true}, {"2 x 1/2 NPT", "2", "", "1/2 NPT", false}, {"2.5 x 40 membrane", "2.5", "", "40 membrane", false}, {"1.5x Elbow", "1.5", "", "Elbow", false},
	} {
		number, unit, rest, ok := leadOf(row.text)
		require.Equal(t, row.ok, ok, row.text)
		require.Equal(t, []string{row.number, row.unit, row.rest}, []string{number, unit, rest}, row.text)
	}
	for _, text := range []string{"Elbow 2x", "2 Elbow", "Elbow", "", "1/2 NPT"} {
		number, _, _, ok := leadOf(text)
		require.False(t, ok, text)
		require.Empty(t, number, text)
	}
}

// A quantity behind the words; behind a size it may be one more of its figures.
func TestQuantityBehindTheWords(t *testing.T) {
	for _, row := range []struct {
		text               string
		number, unit, rest string
		ok                 bool
	}{
		{"Elbow x2", "2", "", "Elbow", true}, {"Elbow, 2x", "2", "", "Elbow", true}, {"Elbow (4 pcs)", "4", "pcs", "Elbow", true}, {"Elbow qty: 3", "3", "", "Elbow", true}, {"Elbow; 12 Stück", "12", "Stück", "Elbow", true},
		{"Elbow 1/2 x2", "2", "", "Elbow 1/2", false}, {"Elbow 1/2\" x2", "2", "", "Elbow 1/2\"", false}, {"Elbow 1/2 (2 pcs)", "2", "pcs", "Elbow 1/2", true},
	} {
		number, unit, rest, ok := tailOf(row.text)
		require.Equal(t, row.ok, ok, row.text)
		require.Equal(t, []string{row.number, row.unit, row.rest}, []string{number, unit, rest}, row.text)
	}
	for _, text := range []string{"Elbow 2", "Elbow", "", "x2"} {
		_, _, _, ok := tailOf(text)
		require.False(t, ok, text)
	}
}

// What says how many is taken out of a text before ends are looked for in it.
func TestTextsWithoutTheirQuantity(t *testing.T) {
	for text, want := range map[string]string{
		"2x Elbow 1/2 NPT female": "Elbow 1/2 NPT female", "Elbow 1/2 NPT female (4 pcs)": "Elbow 1/2 NPT female", "Elbow, pack of 10": "Elbow", "Elbow 12.50 EUR": "Elbow", "Elbow": "Elbow",
		" Elbow ,": "Elbow", "Elbow 1/2 NPT female": "Elbow 1/2 NPT female", "Hose tail 19 mm, set of 2": "Hose tail 19 mm", "€ 3.00 Elbow": "Elbow",
	} {
		require.Equal(t, want, withoutQuantity(text), text)
	}
}

func TestWordsThatCount(t *testing.T) {
	for text, want := range map[string]int64{
		"Hose tail (pair)": 2, "Hose tail, pair": 2, "Clamps (dozen)": 12, "Clamps; dozen": 12, "Hose tail pair": 0, "Hose tail (bronze)": 0, "Hose tail, pair of shoes": 0, "": 0, "Hose tail ( per pair )": 2,
	} {
		require.Equal(t, pieces(want), severalOf(text), text)
	}
}

func TestMetresAndFeet(t *testing.T) {
	for _, row := range []struct {
		number, unit string
		want         money.Quantity
	}{{"5", "m", 5000}, {"1.5", "m", 1500}, {"1,5", "m", 1500}, {"10", "ft", 3048}, {"10", "FT", 3048}, {"1.2345", "m", 0}, {"", "m", 0}, {"5", "lfm", 5000}} {
		require.Equal(t, row.want, metres(row.number, row.unit), row.number+row.unit)
	}
	for text, want := range map[string]bool{"Suction hose 19 mm, 5 m": true, "Suction hose 5 m, 19 mm": false, "Suction hose 19 mm": false, "Elbow, 5 m": false, "Schlauch 19 mm, 10 m": true, "": false} {
		require.Equal(t, want, edgeLength(text), text)
	}
	for unit, want := range map[string]money.Quantity{"cm": 50, "mm": 5, "ft": 1524, "m": 5000, "pc": 5000, "": 5000} {
		l := Line{Amount: 5000, Unit: unit}
		new(builder).smallUnits(&l)
		require.Equal(t, want, l.Amount, unit)
		if unit == "cm" || unit == "mm" || unit == "ft" {
			require.Equal(t, "m", l.Unit, unit)
		} else {
			require.Equal(t, unit, l.Unit)
		}
	}
}

// The inside and the outside of a hose or a tube, by the word that touches the figure.
func TestInsideAndOutside(t *testing.T) {
	for _, row := range []struct {
		text         string
		inner, outer float64
	}{
		{"8 mm o.d. x 6 mm i.d.", 6, 8}, {"6 mm ID, 8 mm OD", 6, 8}, {"19 mm ID", 19, 0}, {"ID 19 mm", 19, 0}, {"inside diameter 19 mm", 19, 0}, {"OD 10 mm", 0, 10}, {"10 mm outside", 0, 10}, {"Außendurchmesser 10 mm", 0, 10},
		{"Innen-Ø 19 mm", 19, 0}, {"Ø int. 13 mm", 13, 0}, {"13 x 19 mm", 13, 19}, {"19 x 13 mm", 13, 19}, {"10 x 1 mm", 8, 10}, {"10 x 2.9 mm", 4.2, 10}, {"10/8 mm", 8, 10}, {"10 x 10 mm", 0, 0}, {"10 x 23 mm", 0, 0}, {"10 x 22 mm", 10, 22},
		{"23 x 10 mm", 0, 0}, {"6 x 3 mm", 3, 6}, {"6 x 2.9 mm", 0.2, 6}, {"5 x 2.5 mm", 2.5, 5}, {"19 mm", 0, 0}, {"1/2 NPT", 0, 0}, {"", 0, 0}, {"19x25", 19, 25}, {"2 x 19x25 mm", 19, 25},
		{"Ø ext. 19 mm, Ø int. 13 mm", 13, 19}, {"Ø int. 13 mm, Ø ext. 19 mm", 13, 19}, {"außen 19 mm", 0, 19}, {"outside 19 mm, length 5 x 2 mm", 0, 19}, {"13 mm inside, outside 19 mm", 13, 19}, {"19 mm outside, inside 13 mm", 13, 19},
		{"13 mm inside: 13 mm", 13, 0}, {"19 mm OD 19 mm", 0, 19},
	} {
		inner, outer := tubeIn(row.text)
		require.InDelta(t, row.inner, float64(inner), 1e-9, "inside of %s", row.text)
		require.InDelta(t, row.outer, float64(outer), 1e-9, "outside of %s", row.text)
	}
}

// Whatever two figures stand there: the inside is within the outside, and neither is made up.
func TestInsideIsWithinOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.IntRange(1, 60).Draw(t, "a"), rapid.IntRange(1, 60).Draw(t, "b")
		text := digits(a) + " x " + digits(b) + " mm"
		inner, outer := tubeIn(text)
		require.GreaterOrEqual(t, outer, inner, text)
		if outer > 0 {
			require.Contains(t, []int{a, b}, int(outer), text)
			require.Positive(t, inner, text)
		}
	})
}

// Sizes that are said again are taken out, and what does not agree stays.
func TestSizesSaidAgain(t *testing.T) {
	for text, want := range map[string]string{
		"tail 3/4 HB (19MM)": "tail 3/4 HB ", "hose 1/2\" (13 mm)": "hose 13 mm", "hose 1/2\" (12 mm)": "hose 12 mm", "hose 1/2\" (14 mm)": "hose 1/2\" (14 mm)", "hose 1/2\" (11 mm)": "hose 1/2\" (11 mm)",
		"JIC 9/16 (-6)": "JIC 9/16 ", "JIC 9/16 (-8)": "JIC 9/16 (-8)", "JIC 1-1/16 (-12)": "JIC 1-1/16 ", "elbow": "elbow", "": "", "hose 1 1/2\" (38 mm)": "hose 38 mm",
	} {
		require.Equal(t, want, once(text), text)
	}
	for text, want := range map[string]string{"19-19 mm": "19 mm x 19 mm", "16-27 mm": "16-27 mm", "19+19": "19 mm x 19 mm", "2 x 19-19 mm": "2 x 19 mm x 19 mm", "a": "a", "13.5 - 13.5 mm": "13.5 mm x 13.5 mm"} {
		require.Equal(t, want, doubled(text), text)
	}
	require.Equal(t, "no figure here", plainly("no figure here"))
}

func TestInchesOfSizes(t *testing.T) {
	for text, want := range map[string]float64{"1/2": 12.7, "3/4": 19.05, "1 1/4": 31.75, "1-1/2": 38.1, "2": 50.8, "": 0, "1/0": 25.4} {
		require.InDelta(t, want, float64(inchesOf(text)), 1e-9, text)
	}
}

// What a count says beside its figure.
func TestCountsInCells(t *testing.T) {
	for _, row := range []struct {
		c     cell
		want  money.Quantity
		unit  string
		ok    bool
		doubt string
	}{
		{cell{text: "2"}, 2000, "", true, ""}, {cell{text: "2x"}, 2000, "", true, ""}, {cell{text: "x 2"}, 2000, "", true, ""}, {cell{text: "3 ea"}, 3000, "pc", true, ""}, {cell{text: "1.5m"}, 1500, "m", true, ""},
		{cell{text: "3 kilo"}, 0, "", false, ""}, {cell{text: "two"}, 0, "", false, ""}, {cell{text: ""}, 0, "", false, ""}, {cell{text: "2", number: true}, 2000, "", true, ""}, {cell{text: "44927", date: true}, 0, "", false, ""},
		{cell{text: "1,234"}, 0, "", false, `its quantity "1,234" may be thousands or decimals`}, {cell{text: "2,000"}, 2000, "", true, ""}, {cell{text: "2.5.1"}, 0, "", false, `its quantity "2.5.1" may be thousands or decimals`}, {cell{text: "2 Rollen"}, 2000, "roll", true, ""},
	} {
		var l Line
		got, ok := new(builder).count(row.c, &l)
		require.Equal(t, row.ok, ok, row.c.text)
		require.Equal(t, row.want, got, row.c.text)
		require.Equal(t, row.unit, l.Unit, row.c.text)
		require.Equal(t, row.doubt, l.Doubt, row.c.text)
	}
}

// How much a line brings in the unit of the build, and why that is not known.
func TestQuantityInTheUnitOfTheBuild(t *testing.T) {
	for why, row := range map[string]struct {
		line      Line
		unit      string
		offered   string
		want      money.Quantity
		how, dark string
	}{
		"not counted":                       {Line{}, "pc", "", 0, "", "the line says no quantity"},
		"not counted, and why":              {Line{Doubt: "its quantity is \"?\""}, "pc", "", 0, "", "its quantity is \"?\""},
		"pieces":                            {Line{Counted: true, Amount: 3000}, "pc", "", 3000, "", ""},
		"half a piece":                      {Line{Counted: true, Amount: 1500}, "pc", "", 0, "", "1.5 pieces cannot be"},
		"metres for pieces":                 {Line{Counted: true, Amount: 3000, Unit: "m"}, "pc", "", 0, "", "it is counted in metres, and the build counts pieces"},
		"metres":                            {Line{Counted: true, Amount: 1500, Unit: "m"}, "m", "", 1500, "", ""},
		"by the metre":                      {Line{Counted: true, Amount: 2000, PerMetre: true, Length: 5000}, "m", "", 2000, "", ""},
		"coils":                             {Line{Counted: true, Amount: 2000, Length: 5000}, "m", "", 10000, "2 x 5 m", ""},
		"half a coil":                       {Line{Counted: true, Amount: 1500, Length: 5000}, "m", "", 0, "", "1.5 pieces of 5 m cannot be"},
		"metres or pieces":                  {Line{Counted: true, Amount: 2000}, "m", "", 0, "", "the line says 2, and not whether metres or pieces, or how long one is"},
		"as many coils as can be":           {Line{Counted: true, Amount: 10_000_000, Length: 1000}, "m", "", 10_000_000, "10000 x 1 m", ""},
		"one more":                          {Line{Counted: true, Amount: 10_001_000, Length: 1000}, "m", "", 0, "", "10001 pieces of 1 m cannot be"},
		"a pack of one":                     {Line{Counted: true, Amount: 2000, Pack: 1000}, "pc", "", 2000, "", ""},
		"packs, said":                       {Line{Counted: true, Amount: 2000, Pack: 10_000, Unit: "pack"}, "pc", "", 20_000, "2 packs of 10", ""},
		"fewer than a pack":                 {Line{Counted: true, Amount: 2000, Pack: 10_000}, "pc", "", 20_000, "2 packs of 10", ""},
		"as many as a pack":                 {Line{Counted: true, Amount: 10_000, Pack: 10_000}, "pc", "", 0, "", "a pack holds 10, and the line says 10: it may mean pieces or packs"},
		"no whole packs":                    {Line{Counted: true, Amount: 12_000, Pack: 10_000}, "pc", "", 12_000, "", ""},
		"the price is that of one":          {Line{Counted: true, Amount: 10_000, Pack: 10_000, Price: "1.50"}, "pc", "1.50", 10_000, "", ""},
		"the price is that of a pack":       {Line{Counted: true, Amount: 10_000, Pack: 10_000, Price: "15.00"}, "pc", "1.50", 100_000, "10 packs of 10", ""},
		"a price that is neither":           {Line{Counted: true, Amount: 10_000, Pack: 10_000, Price: "7.00"}, "pc", "1.50", 0, "", "a pack holds 10, and the line says 10: it may mean pieces or packs"},
		"a pair is one":                     {Line{Counted: true, Amount: 4000, Pack: 2000, Bundle: true}, "pc", "", 8000, "4 packs of 2", ""},
		"rolls are not multiplied":          {Line{Counted: true, Amount: 2000, Pack: 10_000}, "roll", "", 2000, "", ""},
		"as many packs as a boat can take":  {Line{Counted: true, Amount: 100_000_000, Pack: 2000, Unit: "pack"}, "pc", "", 200_000_000, "100000 packs of 2", ""},
		"and one more":                      {Line{Counted: true, Amount: 100_001_000, Pack: 2000, Unit: "pack"}, "pc", "", 0, "", "the quantity is beyond what a boat holds"},
		"packs in pieces, said to be those": {Line{Counted: true, Amount: 12_000, Pack: 10_000, Unit: "pc"}, "pc", "", 12_000, "", ""},
	} {
		got, how, dark := row.line.Quantity(row.unit, row.offered)
		require.Equal(t, row.dark, dark, why)
		require.Equal(t, row.want, got, why)
		require.Equal(t, row.how, how, why)
	}
}

// A pack is seen wherever its figure ends: at a comma, a point, a bracket.
func TestPacksBeforeAComma(t *testing.T) {
	for text, want := range map[string]int64{
		"Clamp 16-27 mm, pack of 10": 10, "Clamp 16-27 mm, pack of 10, stainless": 10, "Clamp 16-27 mm, pack of 10. Stainless": 10, "Clamp 16-27 mm (pack of 10)": 10, "Clamp 16-27 mm, 10 pack, stainless": 10,
		"Clamp 16-27 mm, pack of 10.5": 0, "Clamp 16-27 mm, pack of 10,5 kg": 0, "Clamp, pack 1/2": 0, "Clamp, pack of 1": 0, "Clamp, pack of 1000": 1000, "Clamp, pack of 1001": 0, "Clamp, set of 2, bronze": 2, "Relief valve, set of 65 bar": 0,
	} {
		require.Equal(t, pieces(want), lineOf(t, text, "1", "").Pack, text)
	}
}
