package sea

import "handtight/pressure/quantity"

// GasConstant is the gas constant that the osmotic pressure's form was published with, in
// J/(mol K).
const GasConstant = 8.314

// saltMass is the mean mass of the particles of sea salt in kg/mol, of the same form.
const saltMass = 0.0314038218

// Isotherm is sea water at one temperature: each figure as a polynomial of the salt.
type Isotherm struct {
	temperature quantity.Temperature
	rho0        float64 // pure water, kg/m3
	rho1, rho2  float64
	mu0         float64 // pure water, Pa s
	mu1, mu2    float64
	phi0        float64
	phi1, phi2  float64
	push        float64 // rho0 R T / saltMass, Pa
}

// At makes the isotherm of a temperature.
//
// Errors: an [*OutsideError] below 0 or above 180 C, or if t is not a number.
func At(t quantity.Temperature) (Isotherm, error) {
	if err := within("density", t, 0, MostSalt); err != nil {
		return Isotherm{}, err
	}
	c := t.Celsius()
	i := Isotherm{
		temperature: t,
		rho0:        9.9992293295e2 + c*(2.0341179217e-2+c*(-6.1624591598e-3+c*(2.2614664708e-5-4.6570659168e-8*c))),
		rho1:        8.0200240891e2 + c*(-2.0005183488+c*(1.6771024982e-2-3.0600536746e-5*c)),
		rho2:        -1.6132224742e-5 * c * c,
		mu0:         4.2844324477e-5 + 1/(0.15700386464*(c+64.99262005)*(c+64.99262005)-91.296496657),
		mu1:         1.540913604 + c*(0.019981117208-9.5203865864e-5*c),
		mu2:         7.9739318223 + c*(-0.075614568881+4.7237011074e-4*c),
		phi0:        8.9453e-1 + c*(4.1561e-4+c*(-4.6262e-6+2.2211e-11*c*c)),
		phi1:        -1.1445e-1 - c*(1.4783e-3+1.3526e-8*c*c),
		phi2:        7.0132 + c*(5.696e-2-2.8624e-4*c),
	}
	i.push = i.rho0 * GasConstant * t.Kelvin() / saltMass
	return i, nil
}

// Temperature is the temperature of the isotherm.
func (i *Isotherm) Temperature() quantity.Temperature { return i.temperature }

// Density of water of a salinity from 0 to 150 g/kg. Outside it is an extrapolation:
// ask [Density] where that must be told.
func (i *Isotherm) Density(s quantity.Salinity) KilogramPerCubicMetre {
	x := float64(s) / 1000
	return KilogramPerCubicMetre(i.rho0 + x*(i.rho1+x*i.rho2))
}

// Viscosity of water of a salinity from 0 to 150 g/kg; outside, as [Isotherm.Density].
func (i *Isotherm) Viscosity(s quantity.Salinity) PascalSecond {
	x := float64(s) / 1000
	return PascalSecond(i.mu0 * (1 + x*(i.mu1+x*i.mu2)))
}

// OsmoticCoefficient of water of a salinity up to 120 g/kg, held below 10.
func (i *Isotherm) OsmoticCoefficient(s quantity.Salinity) float64 {
	x := float64(max(s, LeastOsmotic)) / 1000
	return i.phi0 + x*(i.phi1+x*i.phi2)
}

// OsmoticPressure of water of a salinity up to 120 g/kg.
func (i *Isotherm) OsmoticPressure(s quantity.Salinity) quantity.Pressure {
	x := float64(s) / 1000
	return quantity.Pressure(i.OsmoticCoefficient(s) * i.push * x / (1 - x))
}

// Concentration is the salt in a litre of water of a salinity, in g/L (which is kg/m3).
func (i *Isotherm) Concentration(s quantity.Salinity) float64 {
	return float64(s) / 1000 * float64(i.Density(s))
}
