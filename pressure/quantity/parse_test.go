package quantity

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Common practice, no source: 55 bar, 55bar, 60 L/h, 8 L/min and 800 psi below. Check values, and no limit rests on them.

func TestParsePressure(t *testing.T) {
	for _, c := range []struct {
		why, text string
		bar       float64
	}{
		{"the duty as the build file writes it", "55 bar", 55},
		{"no space between", "55bar", 55},
		{"any case", "55 BAR", 55},
		{"gauge is what bar means here", "55 barg", 55},
		{"psi", "800 psi", 55.15805834534689},
		{"gauge psi", "800 psig", 55.15805834534689},
		{"kilopascals", "5500 kPa", 55},
		{"megapascals", "5.5 MPa", 55},
		{"kilograms on a square centimetre", "56 kg/cm2", 54.91724},
		{"inches of mercury, as suction hose is sold", "25 inHg", 0.84659725},
		{"inches of mercury with an inch mark", `25" Hg`, 0.84659725},
		{"inches of mercury in words", "25 inches of mercury", 0.84659725},
		{"inches of mercury apart", "25 in. Hg", 0.84659725},
		{"millimetres of mercury: an atmosphere", "760 mmHg", 1.01325024},
		{"the same with a raised 2 and the force named", "56 kgf/cm²", 54.91724},
		{"a decimal comma that can mean one thing only", "1,5 bar", 1.5},
		{"three decimals after a leading nought are decimals", "0,500 bar", 0.5},
		{"four decimals are no thousands", "1,2345 bar", 1.2345},
		{"no figure before the point", ".9 bar", 0.9},
		{"a point that nothing follows", "5. bar", 5},
		{"a plus sign says nothing", "+5 bar", 5},
		{"a fraction", "1/2 bar", 0.5},
		{"nothing is a pressure too", "0 bar", 0},
		{"a hard space, as web pages have", "55\u00a0bar", 55},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, err := ParsePressure(c.text)
			require.NoError(t, err)
			require.InDelta(t, c.bar, got.Bar(), 1e-9)
		})
	}
}

func TestParseLength(t *testing.T) {
	for _, c := range []struct {
		why, text string
		mm        float64
	}{
		{"millimetres", "19 mm", 19},
		{"centimetres", "2.5 cm", 25},
		{"metres", "1.4 m", 1400},
		{"metres with a decimal comma", "1,4 m", 1400},
		{"inch mark on a fraction", `3/8"`, 9.525},
		{"two single quotes for an inch mark", `3/8''`, 9.525},
		{"the true inch mark", "3/8″", 9.525},
		{"a curled quote that an editor made of it", "3/8”", 9.525},
		{"one sign for a half", "½ in", 12.7},
		{"a whole and one sign for a half", `1½"`, 38.1},
		{"a whole and a fraction with a gap", "1 1/2 in", 38.1},
		{"a whole and a fraction with a hyphen", `1-1/2"`, 38.1},
		{"decimal inches", "0.75 inch", 19.05},
		{"feet", "5 ft", 1524},
		{"microns by name", "5 micron", 0.005},
		{"microns by the micro sign", "5 µm", 0.005},
		{"microns by the Greek letter, another character", "5 μm", 0.005},
		{"microns on a keyboard without either", "5 um", 0.005},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, err := ParseLength(c.text)
			require.NoError(t, err)
			require.InDelta(t, c.mm, got.Millimetres(), 1e-9)
		})
	}
}

func TestParseFlow(t *testing.T) {
	for _, c := range []struct {
		why, text string
		lph       float64
	}{
		{"litres an hour", "60 L/h", 60},
		{"litres a minute", "8 L/min", 480},
		{"lpm", "8 lpm", 480},
		{"cubic metres", "1.5 m3/h", 1500},
		{"cubic metres with a raised 3", "1.5 m³/h", 1500},
		{"gph is US", "1 gph", 3.785411784},
		{"gpm is US", "1 gpm", 227.12470704},
		{"US said in full", "1 US gal/h", 3.785411784},
		{"US with points", "1 U.S. gal/min", 227.12470704},
		{"imperial only when it is spelt so", "1 imp gph", 4.54609},
		{"imperial with a point", "1 imp. gal/min", 272.7654},
		{"a small desalinator is sold by the day", "400 gpd", 63.0901964},
		{"litres a day", "240 L/day", 10},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, err := ParseFlow(c.text)
			require.NoError(t, err)
			require.InDelta(t, c.lph, got.LitresPerHour(), 1e-6)
		})
	}
}

func TestParseTheOthers(t *testing.T) {
	for _, c := range []struct {
		why, text string
		want      float64
		parse     func(string) (float64, error)
	}{
		{"Celsius", "17 C", 17, plain(ParseTemperature)},
		{"Celsius with its sign", "17 °C", 17, plain(ParseTemperature)},
		{"frost", "-5 C", -5, plain(ParseTemperature)},
		{"frost with a true minus", "−5 °C", -5, plain(ParseTemperature)},
		{"Fahrenheit", "158 F", 70, plain(ParseTemperature)},
		{"volts", "24 V", 24, plain(ParseVoltage)},
		{"amperes", "10 A", 10, plain(ParseCurrent)},
		{"watts", "750 W", 750, plain(ParsePower)},
		{"kilowatts", "1.5 kW", 1500, plain(ParsePower)},
		{"horsepower", "1 hp", 745.6998715822702, plain(ParsePower)},
		{"ampere hours", "400 Ah", 400, plain(ParseCharge)},
		{"salinity by mass", "35 g/kg", 35, plain(ParseSalinity)},
		{"parts per million by mass", "350 ppm", 0.35, plain(ParseSalinity)},
		{"milligrams a litre of seawater, back through the published density", "35817.0071 mg/L", 35, plain(ParseSalinity)},
		{"hours", "250 h", 250, plain(ParseDuration)},
		{"days", "14 days", 336, plain(ParseDuration)},
		{"a week", "1 week", 168, plain(ParseDuration)},
		{"months of 30.4375 days", "9 months", 9 * 30.4375 * 24, plain(ParseDuration)},
		{"a year is twelve months", "1 year", 12 * 30.4375 * 24, plain(ParseDuration)},
		{"percent", "95 %", 0.95, plain(ParseShare)},
		{"percent without a gap", "3%", 0.03, plain(ParseShare)},
		{"a margin may be above the whole", "120 %", 1.2, plain(ParseShare)},
		{"newton metres", "40 N m", 40, plain(ParseTorque)},
		{"newton metres run together", "40 Nm", 40, plain(ParseTorque)},
		{"newton metres with a dot", "40 N·m", 40, plain(ParseTorque)},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, err := c.parse(c.text)
			require.NoError(t, err)
			require.InDelta(t, c.want, got, 1e-6)
		})
	}
}

func TestErrorsSayWhatToWrite(t *testing.T) {
	const pressures = "bar, psi, Pa, kPa, MPa, kg/cm2, inHg, mmHg"
	for _, c := range []struct{ why, text, want string }{
		{"no unit", "55", `"55" has no unit; write "55 bar" if that is what it is, or another of its units: ` + pressures},
		{"nothing at all", "  ", `"  " is empty; write a pressure such as "58 bar"`},
		{"a unit of another kind", "55 mm", `"55 mm" is a length, where a pressure is due; write a pressure such as "58 bar"`},
		{"a slip of the fingers", "55 bra", `"55 bra" has the unknown unit "bra"; did you mean "55 bar"? Units are ` + pressures},
		{"a unit from elsewhere", "55 furlongs", `"55 furlongs" has the unknown unit "furlongs"; write a pressure such as "58 bar"; units are ` + pressures},
		{"milli- is not mega-", "55 mPa", `"55 mPa" has the unknown unit "mPa"; did you mean "55 MPa"? Units are ` + pressures},
		{"a comma that may part thousands", "1,500 psi", `"1,500 psi" may mean 1500 or 1.500; write "1500 psi" or "1.500 psi"`},
		{"thousands and decimals", "1,500.5 psi", `"1,500.5 psi" has more than one point or comma in its number; write one decimal point and no thousands separators, such as 1500.5`},
		{"a gap in the thousands", "1 500 psi", `"1 500 psi" holds more than one number; write one number with one unit, and 1500 without a gap`},
		{"a range", "5-6 bar", `"5-6 bar" holds more than one number; write one number with one unit, and 1500 without a gap`},
		{"two signs", "--5 bar", `"--5 bar" has two signs; write the number with one sign at most`},
		{"two signs with a gap", "+ -5 bar", `"+ -5 bar" has two signs; write the number with one sign at most`},
		{"below zero", "-0.9 bar", `"-0.9 bar" is below zero, which a pressure here cannot be; write "0.9 bar" or leave it out`},
		{"an absolute pressure", "55 psia", `"55 psia" is an absolute pressure; write the pressure above the air's, such as "55 bar": 1.013 bar or 14.7 psi less`},
		{"not a number", "NaN bar", `"NaN bar" has no number; write a pressure such as "58 bar"`},
		{"without end", "Inf bar", `"Inf bar" has no number; write a pressure such as "58 bar"`},
		{"nothing to divide by", "1/0 bar", `"1/0 bar" divides by nothing; write a fraction such as 3/8`},
		{"a part that is more than the whole", "1 3/2 bar", `"1 3/2 bar" has a fraction that is not one; write a whole number and a part below one, such as 1 1/2`},
		{"an inch mark is quoted with single quotes", `3/8"`, `'3/8"' is a length, where a pressure is due; write a pressure such as "58 bar"`},
		{"a page pasted in", string(make([]byte, 100)), `"` + string(make([]byte, 64)) + `..." is too long for a quantity; write a pressure such as "58 bar"`},
	} {
		t.Run(c.why, func(t *testing.T) {
			_, err := ParsePressure(c.text)
			require.EqualError(t, err, c.want)
			var e *Error
			require.ErrorAs(t, err, &e)
			require.NotEmpty(t, e.Remedy)
		})
	}
	_, err := ParseTemperature("-300 C")
	require.EqualError(t, err, `"-300 C" is colder than anything can be; write a temperature above -273.15 C, such as "17 C"`)
	_, err = ParseDuration("9 m")
	require.EqualError(t, err, `"9 m" is a length, where a length of time is due; write a length of time such as "250 h"`)
}

func TestOnlyTemperatureGoesBelowZero(t *testing.T) {
	parsers := []func(string) (float64, error){
		plain(ParsePressure), plain(ParseFlow), plain(ParseLength), plain(ParseVoltage), plain(ParseCurrent), plain(ParsePower),
		plain(ParseCharge), plain(ParseSalinity), plain(ParseDuration), plain(ParseShare), plain(ParseTorque),
		plain(ParseVolume), plain(ParseArea), plain(ParseSection), plain(ParseSpeed), plain(ParseConcentration),
	}
	others := append(append([]kind(nil), kinds[:2]...), kinds[3:]...)
	for i, k := range others {
		_, err := parsers[i](k.example)
		require.NoError(t, err, k.example)
		_, err = parsers[i]("-" + k.example)
		require.ErrorContains(t, err, "below zero", k.example)
	}
	got, err := ParseTemperature("-" + temperature.example)
	require.NoError(t, err)
	require.Negative(t, float64(got))
}

func TestEachWayOfWritingAUnitIsRead(t *testing.T) {
	for _, u := range Units() {
		for _, w := range u.Written {
			k := kinds[kindNamed(t, u.Kind)]
			v, fault := parse("2 "+w, k)
			require.Nil(t, fault, "2 %s", w)
			if u.Factor != 0 {
				require.InDelta(t, 2*u.Factor+u.Offset, v, 1e-9*math.Abs(v)+1e-12, w)
			}
		}
	}
}

func kindNamed(t *testing.T, name string) int {
	for i, k := range kinds {
		if k.name == name {
			return i
		}
	}
	require.Fail(t, "no kind", name)
	return 0
}

func plain[Q ~float64](parse func(string) (Q, error)) func(string) (float64, error) {
	return func(text string) (float64, error) {
		q, err := parse(text)
		return float64(q), err
	}
}

// What is printed is read back as the same quantity, to the three figures printed.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := rapid.Float64Range(0.001, 9e5).Draw(t, "v")
		same := func(what, text string, want float64, got float64, err error) {
			if err != nil || math.Abs(got-want) > 0.0051*want {
				t.Fatalf("%s printed %q, read back %v, %v; was %v", what, text, got, err, want)
			}
		}
		check := func(what, text string, want float64, parse func(string) (float64, error)) {
			got, err := parse(text)
			same(what, text, want, got, err)
		}
		check("pressure", Pressure(v*1e3).String(), v*1e3, plain(ParsePressure))
		check("flow", (Flow(v) * LitrePerHour).String(), v*float64(LitrePerHour), plain(ParseFlow))
		check("voltage", Voltage(v).String(), v, plain(ParseVoltage))
		check("current", Current(v).String(), v, plain(ParseCurrent))
		check("power", Power(v).String(), v, plain(ParsePower))
		check("charge", Charge(v).String(), v, plain(ParseCharge))
		check("salinity", Salinity(v).String(), v, plain(ParseSalinity))
		check("duration", Duration(v).String(), v, plain(ParseDuration))
		check("share", Share(v).String(), v, plain(ParseShare))
		check("torque", Torque(v).String(), v, plain(ParseTorque))
		l, err := ParseLength(Length(v).String())
		if err != nil || math.Abs(float64(l)-v) > math.Max(0.0051, 0.0051*v) {
			t.Fatalf("length %v printed %s, read %v, %v", v, Length(v), l, err)
		}
		c := Temperature(v/100 - 273)
		back, err := ParseTemperature(c.String())
		if c > AbsoluteZero && (err != nil || math.Abs(float64(back-c)) > 0.051) {
			t.Fatalf("temperature %v printed %s, read %v, %v", float64(c), c, back, err)
		}
	})
}

func TestMilligramsPerLitreTurnsBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := rapid.Float64Range(0, 120).Draw(t, "s")
		if back := fromMilligramsPerLitre(Salinity(s).MilligramsPerLitre()); math.Abs(back-s) > 1e-9 {
			t.Fatalf("%v came back as %v", s, back)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"55 bar", "1,500 psi", `1-1/2"`, "½", "-5 °C", "--5", "NaN", "5-6 bar", "9 months", "imp gph", "1/0 in", "\xff", "′″"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, k := range kinds {
			v, fault := parse(text, k)
			if fault == nil {
				require.False(t, math.IsNaN(v) || math.IsInf(v, 0), "%q gave %v", text, v)
				require.True(t, k.signed || v >= 0, "%q gave %v", text, v)
				continue
			}
			require.NotEmpty(t, fault.Reason)
			require.NotEmpty(t, fault.Remedy)
			require.NotEmpty(t, fault.Error())
		}
	})
}
