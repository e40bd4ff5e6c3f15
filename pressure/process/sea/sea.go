package sea

import (
	"math"

	"handtight/pressure/quantity"
)

// Density of sea water at the air's pressure: rho_w(T) + s (b1 + b2 T + b3 T2 + b4 T3) + b5 s2 T2.
//
// Errors: an [*OutsideError] outside 0 to 180 C and 0 to 150 g/kg.
// Source: Sharqawy, Lienhard and Zubair (2010) eq. 8.
func Density(t quantity.Temperature, s quantity.Salinity) (KilogramPerCubicMetre, error) {
	i, err := ask("density", t, s, MostSalt)
	return i.Density(s), err
}

// Viscosity is the dynamic viscosity of sea water: mu_w(T) (1 + A(T) s + B(T) s2).
//
// Errors: an [*OutsideError] outside 0 to 180 C and 0 to 150 g/kg.
// Source: Sharqawy, Lienhard and Zubair (2010) eq. 22 and 23.
func Viscosity(t quantity.Temperature, s quantity.Salinity) (PascalSecond, error) {
	i, err := ask("viscosity", t, s, MostSalt)
	return i.Viscosity(s), err
}

// OsmoticCoefficient of sea water, a plain number. Below 10 g/kg it is that of 10 g/kg.
//
// Errors: an [*OutsideError] outside 0 to 180 C and 0 to 120 g/kg.
// Source: Sharqawy, Lienhard and Zubair (2010) eq. 49 with the corrections of 2017.
func OsmoticCoefficient(t quantity.Temperature, s quantity.Salinity) (float64, error) {
	i, err := ask("osmotic coefficient", t, s, MostOsmotic)
	return i.OsmoticCoefficient(s), err
}

// OsmoticPressure is the pressure at which sea water and pure water stay as they are on
// either side of a membrane: phi m rho_w R T, m = s / ((1 - s) 0.0314038218) mol/kg.
//
// Errors: an [*OutsideError] outside 0 to 180 C and 0 to 120 g/kg.
// Source: Nayar and others, Desalination 390 (2016) 1-24, eq. 48.
func OsmoticPressure(t quantity.Temperature, s quantity.Salinity) (quantity.Pressure, error) {
	i, err := ask("osmotic pressure", t, s, MostOsmotic)
	return i.OsmoticPressure(s), err
}

func ask(what string, t quantity.Temperature, s, most quantity.Salinity) (Isotherm, error) {
	if err := within(what, t, s, most); err != nil {
		return Isotherm{}, err
	}
	return At(t)
}

// practical is how many g/kg one of the practical salinity scale is.
const practical = 1.00472

// Freezing is where sea water begins to freeze at the air's pressure:
// -0.0575 S + 1.710523e-3 S^1.5 - 2.154996e-4 S2, S the practical salinity, g/kg over 1.00472.
//
// Errors: an [*OutsideError] outside 0 to 42 g/kg.
// Source: UNESCO Technical Papers in Marine Science 44 (1983); the form is from memory, and
// its published check value (S 40 at 500 dbar) is in the tests.
func Freezing(s quantity.Salinity) (quantity.Temperature, error) {
	if !(s >= 0 && s <= 42.2) {
		return 0, &OutsideError{"freezing point", 0, s, 42}
	}
	return freezing(float64(s)/practical, 0), nil
}

// freezing takes the practical salinity and the depth as decibars.
func freezing(s, decibar float64) quantity.Temperature {
	return quantity.Temperature(s*(-0.0575+1.710523e-3*math.Sqrt(s)-2.154996e-4*s) - 7.53e-4*decibar)
}

// Vapour is the absolute pressure at which sea water boils: Antoine's form for
// water, 10^(8.07131 - 1730.63/(233.426 + T)) mmHg, times 0.98 for the salt.
//
// Errors: an [*OutsideError] outside 1 to 100 C.
// Source: constants and the 0.98 from memory; against the published 3,111 Pa at 35 g/kg and 25 C it
// reads 0.5 % low.
func Vapour(t quantity.Temperature) (absolute quantity.Pressure, err error) {
	if !(t >= 1 && t <= 100) {
		return 0, &OutsideError{"vapour pressure", t, 35, MostSalt}
	}
	const mmHg, salted = 133.322, 0.98
	return quantity.Pressure(math.Pow(10, 8.07131-1730.63/(233.426+t.Celsius())) * mmHg * salted), nil
}
