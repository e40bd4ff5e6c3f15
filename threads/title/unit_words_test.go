package title

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every unit of measure beside an elbow: what the figure is, by its name, and that it is no size
// of an end. Written down before any was read.
func TestFiguresWithUnitsAreNamed(t *testing.T) {
	for why, figures := range map[string][]string{
		"a volume":         {"20 L", "20 litre", "500 ml", "5 gal", "5 gallons", "20 lts"},
		"a flow":           {"9 L/min", "540 l/h", "9 lpm", "2 gpm", "1 m3/h", "5 gph", "9 л/мин"},
		"a weight":         {"2 kg", "8 oz"},
		"a power":          {"3 kW", "5 hp", "60 watt"},
		"a frequency":      {"50 Hz"},
		"a charge":         {"100 Ah"},
		"a current":        {"16 amp", "20 mA"},
		"a voltage":        {"24 V", "230 VAC", "12 VDC", "12 volt", "24 вольт"},
		"a fineness":       {"5 micron", "20 µm", "100 mesh", "5 mikron"},
		"a share":          {"500 ppm", "30 %"},
		"a speed":          {"1450 rpm"},
		"a time":           {"14 days", "2 years", "30 min"},
		"a torque":         {"45 Nm"},
		"an angle":         {"90°", "45 deg", "90 degree", "90 Grad", "90 gradi"},
		"a count":          {"2 pcs", "10 pieces", "3 ea", "5 Stück", "2 шт", "4 szt", "pack of 10", "qty 3"},
		"a length":         {"2 metres", "150 cm", "5 m", "6 ft"},
		"a spanner's size": {"SW 27", "27 mm hex", "A/F 22"},
		"a section":        {"2.5 mm2", "14 AWG"},
	} {
		for _, figure := range figures {
			r := Read("Elbow 1/2 NPT female, " + figure)
			require.Equal(t, "NPT 1/2 female; NPT 1/2 female", brief(r.Ends), figure)
			named := ""
			for _, n := range r.NotUsed {
				named += n.Why + "; "
			}
			assert.Contains(t, named, why, "%s: %v", figure, r.NotUsed)
		}
	}
}

// A pressure in each unit is the rating in bar. BIPM: 1 MPa is 10 bar, 100 kPa 1 bar, 1 psi
// 0.0689476 bar, 1 kgf/cm2 0.980665 bar, 1 atm 1.01325 bar.
func TestRatingsInEveryUnit(t *testing.T) {
	for text, bar := range map[string]float64{
		"16 bar": 16, "16bar": 16, "PN16": 16, "PN 16": 16, "1.6 MPa": 16, "1600 kPa": 16, "232 psi": 15.996, "232 psig": 15.996, "600 WOG": 41.369, "1000 CWP": 68.948, "16 kg/cm2": 15.691, "16 kgf/cm2": 15.691, "16 atm": 16.212, "16 бар": 16, "1,6 MPa": 16, "РУ16": 16,
		"max 16 bar": 16, "WP 16 bar": 16, "working pressure 16 bar": 16, "Betriebsdruck 16 bar": 16, "PS 16 bar": 16, "PS16 bar": 16, "PS: 16 bar": 16, "PS=1,6 MPa": 16,
	} {
		r := Read("Ball valve 1/2 NPT female, " + text)
		require.True(t, r.HasRated, text)
		require.InDelta(t, bar, r.Rated.Bar(), 0.01, text)
		require.Equal(t, "NPT 1/2 female; NPT 1/2 female", brief(r.Ends), text)
	}
	for _, text := range []string{"Ball valve 1/2 NPT female", "Ball valve 1/2 NPT female 16", "Ball valve 1/2 NPT female class 150", "Gauge 1/4 NPT male 0-16 bar"} {
		require.False(t, Read(text).HasRated, text)
	}
}

// A word before or behind a pressure says what it is; none of these is a rating.
func TestPressuresByTheirWords(t *testing.T) {
	for what, texts := range map[string][]string{
		"test":             {"tested to 90 bar", "test pressure 90 bar", "proof 90 bar", "Prüfdruck 90 bar", "hydrotest 90 bar", "PT 90 bar", "PT = 90 bar"},
		"burst":            {"burst 90 bar", "burst pressure 90 bar", "Berstdruck 90 bar", "Platzdruck 90 bar", "90 bar burst"},
		"cut-off":          {"cut-off 90 bar", "cut-out 90 bar", "Abschaltdruck 90 bar"},
		"setting":          {"set at 90 bar", "set 90 bar", "eingestellt 90 bar", "Ansprechdruck 90 bar"},
		"opening pressure": {"cracking pressure 90 bar", "opening pressure 90 bar"},
		"differential":     {"pressure drop 90 bar", "differential 90 bar", "Druckverlust 90 bar"},
		"pump pressure":    {"stall 90 bar", "full flow 90 bar"},
	} {
		for _, text := range texts {
			r := Read("Valve 1/2 NPT female, " + text)
			require.False(t, r.HasRated, text)
			require.Len(t, r.Pressures, 1, text)
			require.Equal(t, what, r.Pressures[0].What, text)
			require.InDelta(t, 90, r.Pressures[0].Pressure.Bar(), 0.001, text)
		}
	}
}

// Temperatures in Celsius, from either unit; of a range the highest.
func TestTemperaturesInEveryWriting(t *testing.T) {
	for text, celsius := range map[string]float64{"80 °C": 80, "80°C": 80, "80 deg C": 80, "80℃": 80, "176 °F": 80, "176 deg F": 80, "-10 to 80 °C": 80, "max 80 °C": 80} {
		r := Read("Valve 1/2 NPT female, " + text)
		require.True(t, r.HasTemperature, text)
		require.InDelta(t, celsius, r.Temperature.Celsius(), 0.01, text)
	}
	require.False(t, Read("Valve 1/2 NPT female 90°").HasTemperature, "an angle")
}
