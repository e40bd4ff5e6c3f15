package cart

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// Figures as shops write them in each language, the units as BIPM and ISO 80000 have them; the
// words are common practice.

func TestFinenessInEveryWriting(t *testing.T) {
	for text, want := range map[string]float64{
		"5 micron": 5, "5 microns": 5, "5µm": 5, "5 μm": 5, "5 um": 5, "5 mic": 5, "5 mikron": 5, "5 мкм": 5, "5 micras": 5, "5 micrones": 5, "0,5 micron": 0.5, "20 micron pleated": 20,
		"5 microphone": 0, "micron": 0, "5 mm": 0, "5": 0, "PP5": 0,
	} {
		f := facts{kind: "filter cartridge"}
		f.read(text)
		require.InDelta(t, want, float64(f.micron/quantity.Micron), 1e-9, text)
	}
}

func TestScalesInEveryWriting(t *testing.T) {
	for text, bar := range map[string]float64{
		"0-100 bar": 100, "0 - 100 bar": 100, "0–100 bar": 100, "0...100 bar": 100, "0…100 bar": 100, "0 to 100 bar": 100, "0 bis 100 bar": 100, "0 à 100 bar": 100, "0 a 100 bar": 100, "0 tot 100 bar": 100, "0/100 bar": 100,
		"0-10 MPa": 100, "0-1450 psi": 99.97, "0-1,6 bar": 1.6, "0 до 100 бар": 100, "100 bar": 0, "-1 to 0 bar": 0, "10-100 bar": 0,
	} {
		require.InDelta(t, bar, pressureIn(scaleForm, text).Bar(), 0.01, text)
	}
}

func TestSettingsInEveryWriting(t *testing.T) {
	for text, bar := range map[string]float64{
		"set 65 bar": 65, "set at 65 bar": 65, "set pressure 65 bar": 65, "eingestellt auf 65 bar": 65, "Ansprechdruck 65 bar": 65, "Öffnungsdruck 65 bar": 65, "taré à 65 bar": 65, "tarage 65 bar": 65, "tarata a 65 bar": 65,
		"taratura 65 bar": 65, "tarado a 65 bar": 65, "inställd 65 bar": 65, "innstilt 65 bar": 65, "ustawiony 65 bar": 65, "set 943 psi": 65.02, "set 6.5 MPa": 65, "65 bar": 0, "a set of 65": 0,
	} {
		require.InDelta(t, bar, pressureIn(setForm, text).Bar(), 0.01, text)
	}
}

func TestFlowsInEveryUnit(t *testing.T) {
	for text, want := range map[string][2]float64{ // litres a minute
		"14 L/min": {14, 14}, "14 lpm": {14, 14}, "14 lt/min": {14, 14}, "14 litres/min": {14, 14}, "14 liters/min": {14, 14}, "60 L/h": {1, 1}, "60 l/hr": {1, 1}, "60 LPH": {1, 1}, "60 litres/h": {1, 1},
		"1 GPM": {3.785, 3.785}, "60 gph": {3.785, 3.785}, "1 gal/min": {3.785, 3.785}, "60 gal/h": {3.785, 3.785}, "6 m3/h": {100, 100}, "6 m³/h": {100, 100}, "0,6 m3/h": {10, 10},
		"5-60 L/h": {5.0 / 60, 1}, "1 to 10 l/min": {1, 10}, "1 bis 10 L/min": {1, 10}, "1 à 10 l/min": {1, 10}, "14 L": {0, 0}, "14 min": {0, 0},
	} {
		f := facts{}
		f.read(text)
		require.InDelta(t, want[0], f.flow.from.LitresPerMinute(), 0.001, text)
		require.InDelta(t, want[1], f.flow.to.LitresPerMinute(), 0.001, text)
	}
}

func TestVoltsInEveryWriting(t *testing.T) {
	for text, want := range map[string][2]quantity.Voltage{
		"12 V": {12, 0}, "12V": {12, 0}, "12-V": {12, 0}, "12 volt": {12, 0}, "12 volts": {12, 0}, "12VDC": {12, 0}, "24 vdc": {24, 0}, "230 VAC": {230, 0}, "12 Vcc": {12, 0}, "12/24 V": {12, 24}, "12 / 24 V": {12, 24}, "13.8 V": {13.8, 0}, "13,8 V": {13.8, 0},
		"V4A": {}, "12 valves": {}, "12": {}, "R12V": {}, "A2": {},
	} {
		require.Equal(t, want, voltsIn(text), text)
	}
}

func TestClassesInEveryWriting(t *testing.T) {
	for text, want := range map[string]string{
		"class 3000": "class 3000", "Klasse 3000": "class 3000", "classe 150": "class 150", "clase 150": "class 150", "cl. 3000": "class 3000", "CL150": "class 150", "3000 lb": "3000 lb", "3000lbs": "3000 lb", "3000#": "3000 lb", "150#": "150 lb",
		"sch 80": "sch 80", "SCH80": "sch 80", "schedule 40": "sch 40", "sched. 160": "sch 160", "3000": "", "class": "", "sch 20": "", "12 lb": "",
	} {
		require.Equal(t, want, classIn(text, lowerOf(text)), text)
	}
}

func lowerOf(s string) string {
	out := []rune(s)
	for i, r := range out {
		if r >= 'A' && r <= 'Z' {
			out[i] = r + 'a' - 'A'
		}
	}
	return string(out)
}

// Bores by nominal size, by dash (SAE: sixteenths), by millimetres and by inches that are no thread's.
func TestBoresInEveryWriting(t *testing.T) {
	for _, row := range []struct {
		text, spec string
		mm         float64
	}{
		{"hose 19 mm", "", 19}, {"hose 12,5 mm", "", 12.5}, {"hose DN 10", "", 9.5}, {"hose DN10", "", 9.5}, {"hose DN-25", "", 25.4}, {"hose DN 7", "", 0}, {"hose 3/8\"", "", 9.525}, {"hose 3/4 inch", "", 19.05}, {"hose 1 1/4\"", "", 31.75}, {"hose 1-1/4\"", "", 31.75},
		{"hose 3/8 bore", "", 9.525}, {"Schlauch 3/4 Zoll", "", 19.05}, {"tuyau 3/4 pouce", "", 19.05}, {"tubo 3/4 pulgada", "", 19.05},
		{"hose 1/2\" NPT male", "", 0}, {"hose 1/2\" BSP", "", 0}, {"hose 1/2\" male", "", 0}, {"hose 3/8\" x 1/2\" NPT male", "", 9.525}, {"hose", "", 0},
		{"hose -6", "100R8", 9.525}, {"hose -06", "100R8", 9.525}, {"hose -6", "", 0}, {"hose -8", "100R8", 12.7},
	} {
		require.InDelta(t, row.mm, float64(boreIn(row.text, row.spec)), 0.03, "%s %s", row.text, row.spec)
	}
}

func TestInchesInWords(t *testing.T) {
	for text, inches := range map[string]float64{"3/8": 0.375, "1/2": 0.5, "1": 1, "1 1/4": 1.25, "1-1/2": 1.5, "2": 2, "": 0} {
		require.InDelta(t, inches*25.4, float64(inchesOf(text)), 1e-9, text)
	}
}

func TestLengthsOfMadeUpHoses(t *testing.T) {
	for text, mm := range map[string]float64{"1200 mm": 1200, "hose 900mm": 900, "90 cm": 90 * 10, "36\"": 914.4, "36 inch": 914.4, "12 mm": 0, "hose": 0, "9 cm": 0, "x 120 cm": 1200} {
		require.InDelta(t, mm, float64(longIn(text)), 0.01, text)
	}
}

func TestRangesOfClamps(t *testing.T) {
	for text, want := range map[string]span{
		"16-27": {16, 27}, "16-27 mm": {16, 27}, "16 - 27": {16, 27}, "16 to 27 mm": {16, 27}, "16 bis 27": {16, 27}, "16 à 27 mm": {16, 27}, "16 al 27": {16, 27}, "16–27": {16, 27},
		"27-16": {}, "0-27": {}, "16": {}, "16/27": {16, 27}, "16-27/3": {}, "8-12, 16-27 mm": {16, 27},
	} {
		require.Equal(t, want, rangeIn(text), text)
	}
}

// Vessels and elements by their two figures, or by the four digits of the trade: 2.5 x 40, 4040.
func TestElementsInEveryWriting(t *testing.T) {
	for text, want := range map[string]elementSize{
		"2.5 x 40": {2.5, 40}, "2,5 x 40": {2.5, 40}, "2.5\" x 40\"": {2.5, 40}, "2.5x21": {2.5, 21}, "2.5-40": {2.5, 40}, "4 x 40": {4, 40}, "4040": {4, 40}, "SW30-2540": {2.5, 40}, "2521": {2.5, 21}, "2514": {2.5, 14}, "4 inch x 21 inch": {4, 21},
		"8 x 40": {8, 40}, "9 x 40": {}, "2.5 x 30": {}, "12540": {}, "40": {},
	} {
		require.Equal(t, want, elementIn(text), text)
	}
}

// A material is read as the reader of titles does; a word that it does not know is kept.
func TestMaterialsOfTheBuild(t *testing.T) {
	for text, want := range map[string]string{"316": "316", "AISI 316L": "316", "Messing": "brass", "bronze": "bronze", "acetal": "pom", "Unobtainium": "unobtainium", "": ""} {
		require.Equal(t, want, materialOf(text), text)
	}
}

// Words of both lists count once each, whatever their order; short ones say nothing.
func TestSharedWords(t *testing.T) {
	a, b := distinct(wordList("Hose tail, bronze, 19 mm, of hose")), distinct(wordList("bronze tail of 19"))
	require.Equal(t, 3, sharedWords(a, b))
	require.Equal(t, 3, sharedWords(b, a))
	require.Zero(t, sharedWords(a, nil))
	require.Equal(t, len(a), sharedWords(a, a))
	require.NotContains(t, a, "of")
	require.NotContains(t, a, "mm")
}
