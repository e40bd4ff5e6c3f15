package quantity

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The first factor of each row is the constant of this package, the second the
// published figure that it must agree with.
func TestConstantsAgreeWithPublishedFactors(t *testing.T) {
	for _, c := range []struct {
		why       string
		got, want float64
		source    string
	}{
		{"psi in pascals, as NIST prints it to seven figures", float64(PSI), 6.894757e3, "NIST SP 811 (2008) appendix B.8"},
		{"kilogram-force on a square centimetre", float64(KgfPerCm2), 9.80665e4, "NIST SP 811 (2008) appendix B.8"},
		{"bar", float64(Bar), 1e5, "NIST SP 811 (2008) appendix B.8"},
		{"US gallon a minute in m3/s", float64(USGPM), 6.309020e-5, "NIST SP 811 (2008) appendix B.8"},
		{"imperial gallon in litres", ImpGPM.LitresPerMinute(), 4.54609, "NIST SP 811 (2008) appendix B.8"},
		{"US gallon in litres: 231 cubic inches", USGPM.LitresPerMinute(), 231 * 2.54 * 2.54 * 2.54 / 1000, "NIST Handbook 44 appendix C"},
		{"horsepower in watts", float64(Horsepower), 7.456999e2, "NIST SP 811 (2008) appendix B.8"},
		{"inch in millimetres", float64(Inch), 25.4, "NIST SP 811 (2008) appendix B.8"},
		{"2.4 MPa in psi", (2.4 * MPa).PSI(), 348, `page "Water hammer pressure" (2.4 MPa given as 348 psi)`},
		{"2.0 MPa in bar", (2 * MPa).Bar(), 20, `page "Barlow's formula"`},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.InEpsilon(t, c.want, c.got, 3e-4, c.source)
		})
	}
}

func TestConstantsAgreeWithTheTable(t *testing.T) {
	constants := map[string]float64{
		"pressure bar": float64(Bar), "pressure psi": float64(PSI), "pressure Pa": float64(Pascal),
		"pressure kPa": float64(KPa), "pressure MPa": float64(MPa), "pressure kg/cm2": float64(KgfPerCm2),
		"flow L/h": float64(LitrePerHour), "flow L/min": float64(LitrePerMinute), "flow m3/h": float64(CubicMetrePerHour),
		"flow gph": float64(USGPH), "flow gpm": float64(USGPM), "flow imp gph": float64(ImpGPH), "flow imp gpm": float64(ImpGPM),
		"length mm": float64(Millimetre), "length cm": float64(Centimetre), "length m": float64(Metre),
		"length micron": float64(Micron), "length in": float64(Inch), "length ft": float64(Foot),
		"power W": float64(Watt), "power kW": float64(Kilowatt), "power hp": float64(Horsepower),
		"duration h": float64(Hour), "duration days": float64(Day), "duration weeks": float64(Week),
		"duration months": float64(Month), "duration years": float64(Year),
		"salinity g/kg": float64(GramPerKilogram), "salinity ppm": float64(PPM), "share %": float64(Percent),
		"voltage V": float64(Volt), "current A": float64(Ampere), "charge Ah": float64(AmpereHour),
		"torque N m": float64(NewtonMetre), "temperature C": float64(Celsius),
	}
	for _, u := range Units() {
		require.NotEmpty(t, u.Source, u.Name)
		require.NotEmpty(t, u.Written, u.Name)
		if want, ok := constants[u.Kind+" "+u.Name]; ok {
			require.InEpsilon(t, want, u.Factor, 1e-14, u.Name)
			delete(constants, u.Kind+" "+u.Name)
		}
	}
	require.Empty(t, constants, "every constant is a row of the table")
}

func TestUnitsCannotBeChangedFromOutside(t *testing.T) {
	Units()[0].Written[0] = "spoiled"
	require.NotEqual(t, "spoiled", Units()[0].Written[0])
}

func TestEachWayOfWritingIsOneUnitOfItsKind(t *testing.T) {
	seen := map[string]string{}
	for _, u := range Units() {
		for _, w := range u.Written {
			key := u.Kind + " " + squeeze(w)
			if other, ok := seen[key]; ok {
				require.Equal(t, u.Name, other, "%q names two units", w)
			}
			seen[key] = u.Name
		}
	}
}

func TestSalinityByVolume(t *testing.T) {
	for _, c := range []struct {
		why    string
		s      Salinity
		mgPerL float64
		source string
	}{
		{"fresh water holds none", 0, 0, "by definition"},
		{"seawater of 35 at 25 C: 35 g/kg x 1023.34306 kg/m3", 35, 35 * 1023.34306, "UNESCO Technical Papers in Marine Science 44 (1983) p.19"},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.InDelta(t, c.mgPerL, c.s.MilligramsPerLitre(), 1e-6, c.source)
			require.InDelta(t, float64(c.s), fromMilligramsPerLitre(c.mgPerL), 1e-9)
		})
	}
}

func TestAccessors(t *testing.T) {
	require.InDelta(t, 800, (800 * PSI).PSI(), 1e-9)
	require.InDelta(t, 5.7, (57 * Bar).MPa(), 1e-12)
	require.InDelta(t, 5.7e6, (57 * Bar).Pascals(), 1e-6)
	require.InDelta(t, 60, LitrePerMinute.LitresPerHour(), 1e-12)
	require.InDelta(t, 60, USGPM.USGallonsPerHour(), 1e-9)
	require.InDelta(t, 1.0/3600, CubicMetrePerHour.CubicMetresPerSecond(), 1e-15)
	require.InDelta(t, 62.6, Temperature(17).Fahrenheit(), 1e-12)
	require.InDelta(t, 290.15, Temperature(17).Kelvin(), 1e-12)
	require.InDelta(t, 17, Temperature(17).Celsius(), 0)
	require.InDelta(t, 0.75, (19.05 * Millimetre).Inches(), 1e-12)
	require.InDelta(t, 19.05, (0.75 * Inch).Millimetres(), 1e-12)
	require.InDelta(t, 1.4, (1400 * Millimetre).Metres(), 1e-12)
	require.InDelta(t, 5, (5 * Micron).Microns(), 1e-12)
	require.InDelta(t, 30.4375, Month.Days(), 0)
	require.InDelta(t, 12, Year.Months(), 0)
	require.InDelta(t, 24, Day.Hours(), 0)
	require.InDelta(t, 95, (95 * Percent).Percent(), 1e-12)
	require.InDelta(t, 0.95, (95 * Percent).Fraction(), 1e-12)
	require.InDelta(t, 35000, (35 * GramPerKilogram).PPM(), 1e-9)
	require.InDelta(t, 35, (35 * GramPerKilogram).GramsPerKilogram(), 0)
	require.InDelta(t, 1, Horsepower.Horsepower(), 0)
	require.InDelta(t, 750, Power(750).Watts(), 0)
	require.InDelta(t, 24, Voltage(24).Volts(), 0)
	require.InDelta(t, 10, Current(10).Amperes(), 0)
	require.InDelta(t, 400, Charge(400).AmpereHours(), 0)
	require.InDelta(t, 40, Torque(40).NewtonMetres(), 0)
}
