package duty

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// plantsApart are whole plants, each with all that its figures rest on said, reckoned by a program
// written apart and in another language, before this one saw them: sea water by the published
// correlations, the element fitted to its test and marched in forty explicit steps, the film of Schock
// and Miquel, Churchill's friction, Ohm behind the cable. The first comparison of 190 figures: 181
// within what is asked below; in the other nine, all of three plants, the reckoning apart had not taken
// off what the feed pump gives (a twentieth of the pressure and more), and this one had.
var plantsApart = []struct {
	name                  string
	size                  string
	elements              int
	test, rejection       float64 // L/h, %
	bar, flow, salt       float64
	coldest, warmest      float64
	volts                 float64
	pump, motor           float64 // %
	belt                  bool
	cable, metres         float64
	product, milligrams   float64 // L/h, mg/L
	recovery, brine, ndp  float64 // %, L/min, bar
	amperes, rawMillibars float64
}{
	{"A cold sound", "2540", 1, 110, 99.4, 55, 9.2, 33, 6, 8, 24, 88, 80, true, 35, 6, 54.3, 247, 9.8, 8.30, 23.5, 58.9, 5.5},
	{"B two, 24 V", "2540", 2, 105, 99.5, 57, 14.5, 36, 18, 20, 24, 86, 82, false, 70, 4, 153.9, 224, 17.7, 11.93, 22.4, 87.6, 13.0},
	{"C small warm", "2521", 1, 46, 99.4, 52, 6, 38, 27, 29, 12, 85, 78, true, 70, 3, 33.1, 351, 9.2, 5.45, 14.2, 75.1, 2.3},
	{"D Baltic", "2540", 1, 100, 99.4, 28, 8, 7, 9, 11, 24, 84, 80, true, 25, 5, 50.3, 55, 10.5, 7.16, 21.5, 30.4, 4.1},
	{"E Red Sea", "2540", 1, 115, 99.6, 62, 10.5, 41, 30, 32, 24, 88, 84, true, 50, 4, 107.5, 242, 17.1, 8.70, 19.4, 70.6, 6.8},
	{"F wide", "4040", 1, 254, 99.75, 56, 24, 35, 15, 17, 48, 88, 86, false, 50, 4, 167.0, 111, 11.6, 21.22, 22.4, 67.8, 34.7},
	{"G three small", "2521", 3, 44, 99.4, 58, 9, 35, 20, 22, 24, 87, 80, true, 50, 6, 111.4, 239, 20.6, 7.14, 20.9, 61.1, 5.2},
	{"H weak 12 V", "2521", 1, 42, 99.3, 46, 5.2, 34, 14, 16, 12, 83, 76, true, 35, 5, 19.4, 364, 6.2, 4.88, 14.3, 62.1, 1.8},
	{"I harbour", "4021", 1, 140, 99.4, 40, 16, 20, 12, 14, 24, 86, 80, true, 70, 4, 82.3, 150, 8.6, 14.63, 19.2, 74.2, 15.7},
	{"J hot gulf", "2540", 1, 108, 99.4, 60, 9, 44, 34, 36, 24, 86, 80, true, 50, 4, 88.9, 479, 16.5, 7.51, 15.3, 63.6, 5.1},
}

func TestWholePlantsReckonedApart(t *testing.T) {
	text, err := os.ReadFile("../../testdata/redsea/build.toml")
	require.NoError(t, err)
	for _, c := range plantsApart {
		t.Run(c.name, func(t *testing.T) {
			drive := "directly coupled"
			if c.belt {
				drive = "belt"
			}
			said := string(text)
			for _, e := range [][2]string{
				{`pressure = "37 bar"`, fmt.Sprintf("pressure = \"%g bar\"", c.bar)},
				{`salinity = "40 to 42 g/kg"`, fmt.Sprintf("salinity = \"%g g/kg\"", c.salt)},
				{`water = "28 to 33 C"`, fmt.Sprintf("water = \"%g to %g C\"", c.coldest, c.warmest)},
				{`supply = "24 V"`, fmt.Sprintf("supply = \"%g V\"", c.volts)},
				{`cable = "50 mm2"`, fmt.Sprintf("cable = \"%g mm2\"", c.cable)},
				{`cable_length = "4 m"`, fmt.Sprintf("cable_length = \"%g m\"", c.metres)},
				{"flow = \"9 L/min\"\nmotor = \"24 V DC, belt\"\nmotor_power = \"1.5 kW\"", fmt.Sprintf("flow = \"%g L/min\"\nflow_at = \"70 bar\"\nvolumetric = \"100 %%\"\nefficiency = \"%g %%\"\nmotor_efficiency = \"%g %%\"\nmotor = \"%g V DC, %s\"", c.flow, c.pump, c.motor, c.volts, drive)},
				{"motor = \"24 V DC\"\nflow = \"22 L/min\"", fmt.Sprintf("motor = \"%g V DC\"\nflow = \"60 L/min\"", c.volts)},
				{"inside = \"vessel\"\nsize = \"2540\"", fmt.Sprintf("inside = \"vessel\"\nsize = \"%s\"\neach = %d\nproduct = \"%g L/h\"\nrejection = \"%g %%\"", c.size, c.elements, c.test, c.rejection)},
				{"size = \"2540\"\nelements = 1", fmt.Sprintf("size = \"%s\"\nelements = %d", c.size, c.elements)},
			} {
				require.Contains(t, said, e[0])
				said = strings.Replace(said, e[0], e[1], 1)
			}
			path := filepath.Join(t.TempDir(), "build.toml")
			require.NoError(t, os.WriteFile(path, []byte(said), 0o600))
			m := of(t, path).Plants[0]
			require.True(t, m.Made, m.WhyNot)
			r := m.Middle
			require.InEpsilon(t, c.product, r.Product.LitresPerHour(), 0.03)
			require.InEpsilon(t, c.milligrams, float64(r.Salt), 0.06)
			require.InEpsilon(t, c.recovery, r.Recovery.Percent(), 0.03)
			require.InEpsilon(t, c.brine, r.Brine.LitresPerMinute(), 0.02)
			require.InEpsilon(t, c.ndp, r.Drive.Bar(), 0.03)
			amperes, ok := m.MiddleOf("current")
			require.True(t, ok)
			if strings.Contains(m.Power.Basis, "taken off") {
				require.Less(t, amperes, c.amperes)
				require.Greater(t, amperes, 0.9*c.amperes)
			} else {
				require.InEpsilon(t, c.amperes, amperes, 0.02)
			}
			for _, h := range m.Lines.Hoses {
				if h.Unit.Name == "raw" {
					require.InEpsilon(t, c.rawMillibars, 1000*h.Loss.Hi.Bar(), 0.04)
				}
			}
		})
	}
}
