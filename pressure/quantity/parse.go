package quantity

import (
	"strings"

	"handtight/pressure/nearest"
)

// Error says what is wrong with a quantity that could not be read.
type Error struct {
	Text   string // as it was written
	Reason string // goes on from the text: "has no unit"
	Remedy string // what to write instead
}

// Error gives the text, the reason and the remedy as one line.
func (e *Error) Error() string {
	quote := `"`
	if strings.Contains(e.Text, quote) {
		quote = "'"
	}
	return quote + e.Text + quote + " " + e.Reason + "; " + e.Remedy
}

// longest is as many letters as a quantity can need.
const longest = 64

// a kind of quantity: how it is called and what a good one looks like.
type kind struct {
	name, called, example string
	signed                bool
}

var (
	pressure    = kind{name: "pressure", called: "a pressure", example: "58 bar"}
	flow        = kind{name: "flow", called: "a flow", example: "45 L/h"}
	temperature = kind{name: "temperature", called: "a temperature", example: "17 C", signed: true}
	length      = kind{name: "length", called: "a length", example: "19 mm"}
	voltage     = kind{name: "voltage", called: "a voltage", example: "24 V"}
	current     = kind{name: "current", called: "a current", example: "10 A"}
	power       = kind{name: "power", called: "a power", example: "750 W"}
	charge      = kind{name: "charge", called: "a charge", example: "400 Ah"}
	salinity    = kind{name: "salinity", called: "a salinity", example: "35 g/kg"}
	duration    = kind{name: "duration", called: "a length of time", example: "250 h"}
	share       = kind{name: "share", called: "a share", example: "95 %"}
	torque      = kind{name: "torque", called: "a torque", example: "40 N m"}
)

var kinds = []kind{pressure, flow, temperature, length, voltage, current, power, charge, salinity, duration, share, torque, volume, area, section, speed, concentration}

// ParsePressure reads a gauge pressure: psi, bar, Pa, kPa, MPa, kg/cm2, inHg or mmHg (a
// vacuum is written as what it is below the air's pressure, without a sign).
// The error is an *Error when the number or unit is not clear, or below zero.
func ParsePressure(text string) (Pressure, error) { return read[Pressure](text, pressure) }

// ParseFlow reads a flow: L/h, L/min, L/day, m3/h, m3/day, US gph, gpm or gpd, or imp gph,
// imp gpm when spelt so. The error is an *Error.
func ParseFlow(text string) (Flow, error) { return read[Flow](text, flow) }

// ParseTemperature reads a temperature: C or F, below zero too. The error is an
// *Error, also below -273.15 C.
func ParseTemperature(text string) (Temperature, error) {
	t, err := read[Temperature](text, temperature)
	if err == nil && t < AbsoluteZero {
		return 0, &Error{text, "is colder than anything can be", "write a temperature above -273.15 C, such as \"17 C\""}
	}
	return t, err
}

// ParseLength reads a length: mm, cm, m, in, ft or micron, with fractions of an
// inch and inch marks. The error is an *Error.
func ParseLength(text string) (Length, error) { return read[Length](text, length) }

// ParseVoltage reads a voltage in V. The error is an *Error.
func ParseVoltage(text string) (Voltage, error) { return read[Voltage](text, voltage) }

// ParseCurrent reads a current in A. The error is an *Error.
func ParseCurrent(text string) (Current, error) { return read[Current](text, current) }

// ParsePower reads a power: W, kW or hp. The error is an *Error.
func ParsePower(text string) (Power, error) { return read[Power](text, power) }

// ParseCharge reads a charge in Ah. The error is an *Error.
func ParseCharge(text string) (Charge, error) { return read[Charge](text, charge) }

// ParseSalinity reads a salinity: g/kg, ppm (by mass) or mg/L (at 25 C, see
// [Salinity]). The error is an *Error.
func ParseSalinity(text string) (Salinity, error) { return read[Salinity](text, salinity) }

// ParseDuration reads a length of time: h, days, weeks, months of 30.4375 days,
// years. The error is an *Error.
func ParseDuration(text string) (Duration, error) { return read[Duration](text, duration) }

// ParseShare reads a share in %. More than 100 % is allowed: a margin can be.
// The error is an *Error.
func ParseShare(text string) (Share, error) { return read[Share](text, share) }

// ParseTorque reads a torque in N m. The error is an *Error.
func ParseTorque(text string) (Torque, error) { return read[Torque](text, torque) }

func read[Q ~float64](text string, k kind) (Q, error) {
	v, fault := parse(text, k)
	if fault != nil {
		return 0, fault
	}
	return Q(v), nil
}

// parse is one road for every kind, so that each has the same faults and words.
func parse(text string, k kind) (float64, *Error) {
	shown, clipped := clip(text)
	if clipped {
		return 0, &Error{shown, "is too long for a quantity", `write ` + k.called + ` such as "` + k.example + `"`}
	}
	if strings.TrimSpace(text) == "" {
		return 0, &Error{shown, "is empty", `write ` + k.called + ` such as "` + k.example + `"`}
	}
	n, reason, remedy := readNumber(text)
	if reason != "" {
		if remedy == "" {
			remedy = `write ` + k.called + ` such as "` + k.example + `"`
		}
		return 0, &Error{shown, reason, remedy}
	}
	u, ok := find(k.name, n.rest)
	if !ok {
		return 0, noUnit(shown, n, k)
	}
	if n.minus && !k.signed {
		return 0, &Error{shown, "is below zero, which " + k.called + " here cannot be", `write "` + n.text + " " + n.rest + `" or leave it out`}
	}
	if u.Factor == 0 {
		return fromMilligramsPerLitre(n.value), nil
	}
	return n.value*u.Factor + u.Offset, nil
}

// noUnit says why what follows the number is not a unit of the kind.
func noUnit(shown string, n number, k kind) *Error {
	_, unit, _ := strings.Cut(k.example, " ")
	others := strings.Join(names(k.name), ", ")
	good := n.text + " " + unit
	if n.rest == "" {
		return &Error{shown, "has no unit", `write "` + good + `" if that is what it is, or another of its units: ` + others}
	}
	switch squeeze(n.rest) {
	case "bara", "bar(a)", "psia", "psi(a)", "barabs", "psiabs":
		return &Error{shown, "is an absolute pressure", `write the pressure above the air's, such as "` + good + `": 1.013 bar or 14.7 psi less`}
	}
	for _, other := range kinds {
		if _, ok := find(other.name, n.rest); ok {
			return &Error{shown, "is " + other.called + ", where " + k.called + " is due", `write ` + k.called + ` such as "` + k.example + `"`}
		}
	}
	if near, ok := nearest.Of(n.rest, names(k.name)); ok {
		return &Error{shown, `has the unknown unit "` + n.rest + `"`, `did you mean "` + n.text + " " + near + `"? Units are ` + others}
	}
	return &Error{shown, `has the unknown unit "` + n.rest + `"`, `write ` + k.called + ` such as "` + k.example + `"; units are ` + others}
}

// clip keeps an error readable whatever was pasted into the file.
func clip(text string) (string, bool) {
	runes := []rune(text)
	if len(runes) <= longest {
		return text, false
	}
	return string(runes[:longest]) + "...", true
}
