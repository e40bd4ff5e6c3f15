package cart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
	"handtight/threads/title"
)

// Common practice, no source: 60 L/h below. Check values, and no limit rests on them.

// read gives the facts of a text as a line of a cart has them.
func read(text string) facts {
	plain, spec := withoutSpec(plainly(withoutQuantity(text)))
	return factsOf(plain, spec, title.Read(otherPressure.ReplaceAllString(plain, " ")))
}

func TestPressuresOfALine(t *testing.T) {
	for text, want := range map[string]struct{ rated, scale, set float64 }{
		"Gauge 0-100 bar 1/4 NPT male":                                      {0, 100, 0},
		"Manometer 0...6 bar, 1/4 NPT AG":                                   {0, 6, 0},
		"Gauge 0-1500 psi, 1/4 NPT male":                                    {0, 103.42, 0},
		"Manomètre 0 à 16 bar 1/4 NPT mâle":                                 {0, 16, 0},
		"Relief valve 1/4 NPT male, set 65 bar":                             {0, 0, 65},
		"Druckbegrenzungsventil 1/4 NPT AG, eingestellt 65 bar":             {0, 0, 65},
		"Valvola di sicurezza 1/4 NPT maschio, taratura 65 bar":             {0, 0, 65},
		"Sicherheitsventil 1/4 NPT AG, Ansprechdruck 40 bar, PN 160":        {160, 0, 40},
		"Needle valve 3/8 NPT female, 316, 200 bar":                         {200, 0, 0},
		"Tee 3/8 NPT male, 316, test pressure 400 bar":                      {0, 0, 0},
		"Tee 3/8 NPT male, 316, burst 800 bar":                              {0, 0, 0},
		"Bomba de diafragma 24 V, espigas 19 mm, corte 2,5 bar":             {0, 0, 0},
		"Membranpumpe 24 V, Schlauchanschluss 19 mm, Abschaltdruck 2,5 bar": {0, 0, 0},
	} {
		f := read(text)
		require.InDelta(t, want.rated, f.rated.Bar(), 0.01, "rated: %s", text)
		require.InDelta(t, want.scale, f.scale.Bar(), 0.01, "scale: %s", text)
		require.InDelta(t, want.set, f.set.Bar(), 0.01, "set: %s", text)
	}
}

func TestFinenessFlowAndVolts(t *testing.T) {
	for text, want := range map[string]struct{ micron, from, to, volts float64 }{
		"Filter cartridge 10 inch, 25 micron":         {25, 0, 0, 0},
		"Cartouche plissée 10\" 5 µm":                 {5, 0, 0, 0},
		"Cartucho plisado 10\" 20 micras":             {20, 0, 0, 0},
		"Feed pump 24 V, 14 L/min":                    {0, 14, 14, 24},
		"Pump 12 VDC, 3.7 GPM":                        {0, 14.006, 14.006, 12},
		"Flow meter 5-60 L/h, 10 mm push-in":          {0, 5.0 / 60, 1, 0},
		"Débitmètre 1 à 10 l/min":                     {0, 1, 10, 0},
		"Magnetventil 1/2 NPT IG, 230 V AC":           {0, 0, 0, 230},
		"Schlauchtülle 1/2 NPT AG x 19 mm, V4A":       {0, 0, 0, 0},
		"Hose tail 1/2 NPT male x 19 mm, 316, 16 bar": {0, 0, 0, 0},
	} {
		f := read(text)
		require.InDelta(t, want.micron, float64(f.micron/quantity.Micron), 0.01, "micron: %s", text)
		require.InDelta(t, want.from, f.flow.from.LitresPerMinute(), 0.01, "flow: %s", text)
		require.InDelta(t, want.to, f.flow.to.LitresPerMinute(), 0.01, "flow: %s", text)
		require.InDelta(t, want.volts, float64(f.volts[0]), 0.01, "volts: %s", text)
	}
	require.Equal(t, [2]quantity.Voltage{12, 24}, voltsIn("Pump 12/24 V"))
}

func TestSizesOfElementsCartridgesAndClamps(t *testing.T) {
	for text, want := range map[string]elementSize{
		"Seawater membrane element 2.5 x 21": {2.5, 21}, "Membranelement 2,5 x 40": {2.5, 40}, "SW membrane 4040": {4, 40}, "SW2521 membrane": {2.5, 21},
		"Membrane 4\" x 40\"": {4, 40}, "Membrane": {},
	} {
		require.Equal(t, want, elementIn(text), text)
	}
	for text, want := range map[string]float64{
		"Filter cartridge 10 inch": 10, "Filterkerze 20 Zoll": 20, "Cartouche 10\" plissée": 10, "Cartridge 9 3/4 inch": 10, "Cartridge 5 micron": 0, "Cartuccia 10 pollici": 10,
	} {
		require.Equal(t, want, tallIn(text), text)
	}
	for text, want := range map[string]span{
		"Hose clamp 16-27 mm": {16, 27}, "Schlauchschelle 11–20 mm": {11, 20}, "Collier 16 à 27": {16, 27}, "Clamp 5/8 - 1-1/16 inch (16-27 mm)": {16, 27}, "Clamp 27-16": {}, "Clamp": {},
	} {
		require.Equal(t, want, rangeIn(text), text)
	}
}

func TestBoresOfHoses(t *testing.T) {
	for text, want := range map[string]struct{ bore, length float64 }{
		"Hose SAE 100R8 3/8\", 1.2 m, 3/8 NPT male x 9/16-18 JIC female swivel":              {9.525, 1200},
		"Hose assembly SAE 100R8 -6, 48 in long, 3/8 NPT male x 9/16-18 JIC female swivel":   {9.525, 1219.2},
		"Schlauchleitung 100R8 DN10, 3/8\" NPT AG x 9/16\"-18 JIC Überwurfmutter, L=1200 mm": {9.5, 1200},
		"Flexible 100R8 1/4\", 0,8 m, 3/8 NPT mâle x 9/16-18 JIC femelle tournant":           {6.35, 800},
		"Suction hose 19 mm, wire helix, per metre":                                          {19, 0},
		"Spiral wound suction hose 3/4 inch ID, sold per foot":                               {19.05, 0},
	} {
		f := read(text)
		require.InDelta(t, want.bore, float64(f.bore), 0.06, "bore: %s", text)
		require.InDelta(t, want.length, float64(f.length), 0.5, "length: %s", text)
		if want.length > 0 {
			require.Len(t, f.ends, 2, text)
		}
	}
}

func TestClassesAsTheyAreWritten(t *testing.T) {
	for text, want := range map[string]string{
		"Tee 3/8 NPT, class 3000": "class 3000", "Union 3/8 NPT femelle, classe 150": "class 150", "Tee 3/8 NPT 3000#": "3000 lb", "Nipple 3/8 NPT sch 80": "sch 80", "Tee 3/8 NPT": "",
	} {
		require.Equal(t, want, classIn(text, text), text)
	}
}

// Traits set parts of one kind apart, in any of the languages.
func TestTraits(t *testing.T) {
	for _, row := range []struct{ line, part, has string }{
		{"Brackish RO membrane", "seawater element", "brackish"}, {"Tuyau air comprimé 10 mm", "push-in tube, drinking water", "air"},
		{"Bonded washer 1/2 BSP", "flat gasket G 1/2", "bonded"}, {"Big blue cartridge 10 inch", "pleated, 10 inch", "big"}, {"Aktivkohleblock 10 Zoll", "pleated, 10 inch", "carbon"},
	} {
		has, _, ok := traitsIn(wordList(row.line)).differ(traitsIn(wordList(row.part)))
		require.True(t, ok, row.line)
		require.Equal(t, row.has, has, row.line)
	}
	for _, row := range [][2]string{{"Cartouche charbon bloc 10\"", "carbon block, 10 inch"}, {"Filterkerze plissiert", "pleated, 10 inch"}, {"Saugschlauch mit Spirale", "suction hose, wire helix"}, {"Elbow", "push-in, drinking water"}} {
		_, _, ok := traitsIn(wordList(row[0])).differ(traitsIn(wordList(row[1])))
		require.False(t, ok, row[0])
	}
}

// The looks that save patterns never miss what the patterns would find.
func TestLooksMissNothing(t *testing.T) {
	words := []string{"Clamp", "pack of 10", "10 Stück/VE", "box of 25", "set of 2", "x2", "(4 pcs)", "1.5 m", "30 ft", "19 mm", "2x", "3 ea", "12 V", "bolsa de 10", "EUR 3.00", "5er-Pack", "qty: 4", "1/2 NPT", "series 12"}
	rapid.Check(t, func(t *rapid.T) {
		text := ""
		for _, w := range rapid.SliceOfN(rapid.SampledFrom(words), 1, 4).Draw(t, "words") {
			text += w + rapid.SampledFrom([]string{" ", ", "}).Draw(t, "sign")
		}
		f := inText()
		lower := strings.ToLower(text)
		for _, form := range []interface{ MatchString(string) bool }{f.packOf, f.ofPack, f.setOf} {
			if form.MatchString(text) {
				require.True(t, mayPack(lower), text)
			}
		}
		if f.length.MatchString(text) {
			require.True(t, mayLength(text), text)
		}
		if f.tail.MatchString(text) && len(text) < tailLength {
			require.True(t, mayTail(text), text)
		}
	})
}

// No line makes the reading of its facts fail.
func FuzzFacts(f *testing.F) {
	for _, seed := range []string{"Hose SAE 100R8 3/8\", 1.2 m", "Gauge 0-100 bar", "Clamp 16-27", "12/24 V", "5-60 L/h", "4040", "9 3/4 inch", "1e9 bar", "-6 -8", "(pair)"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		got := read(text)
		if got.rated < 0 || got.scale < 0 || got.bore < 0 || got.flow.to < 0 {
			t.Fatalf("%q: a figure below nothing: %+v", text, got)
		}
	})
}
