// Package line answers how fast water runs in a hose, what pressure that costs, and
// what a pump finds at its inlet.
//
// [Water] is what runs; [Bore.Loss] is the loss of a length of it, by Darcy and Weisbach
// with the friction factor of Churchill, which holds in laminar and in turbulent flow
// without a jump; [Minor] is the loss of what stands in the way, with [Barb] and [Valve]
// for hose tails and for parts whose Kv is known. [Acceleration] and [Suction.Available]
// are for the inlet of a plunger pump.
//
// Between Reynolds numbers of 2,000 and 4,000 no formula is right. A corrugated hose
// loses two to four times what a smooth one does (memory): it is never computed as smooth.
package line

import (
	"errors"
	"fmt"
	"math"

	"handtight/pressure/process/sea"
	"handtight/pressure/quantity"
)

// Gravity is the standard acceleration of free fall in m/s2.
const Gravity = 9.80665

// The roughness of smooth hose, from drawn tube to plain rubber (memory; drawn tube
// 1.52e-6 m is published in CalebBell/fluids).
const (
	SmoothLeast quantity.Length = 0.0015
	SmoothMost  quantity.Length = 0.01
)

// What a corrugated hose loses, as a multiple of a smooth one (memory).
const (
	CorrugatedLeast = 2
	CorrugatedMost  = 4
)

// Water is what runs in a line.
type Water struct {
	Density   sea.KilogramPerCubicMetre
	Viscosity sea.PascalSecond
}

// Of is the water of a temperature and a salinity.
//
// Errors: [*sea.OutsideError].
func Of(t quantity.Temperature, s quantity.Salinity) (Water, error) {
	rho, err := sea.Density(t, s)
	if err != nil {
		return Water{}, err
	}
	mu, err := sea.Viscosity(t, s)
	return Water{rho, mu}, err
}

// Bore is a length of pipe or hose.
type Bore struct {
	Diameter, Length, Roughness quantity.Length
}

// Speed is the mean speed: 4 q / (pi d2). It has the sign of the flow.
func (b Bore) Speed(q quantity.Flow) quantity.Velocity {
	d := b.Diameter.Metres()
	return quantity.Velocity(q.CubicMetresPerSecond() / (math.Pi / 4 * d * d))
}

// Reynolds is the Reynolds number, rho v d / mu, never below zero.
func (b Bore) Reynolds(q quantity.Flow, w Water) float64 {
	return float64(w.Density) * math.Abs(b.Speed(q).MetresPerSecond()) * b.Diameter.Metres() / float64(w.Viscosity)
}

// Loss is the pressure that friction takes over the length: f L/d rho v2/2, with the sign
// of the flow, and nothing where nothing flows.
//
// Errors: if the diameter or the density is not above zero, or a figure is not one.
func (b Bore) Loss(q quantity.Flow, w Water) (quantity.Pressure, error) {
	if !(b.Diameter > 0 && b.Length >= 0 && b.Roughness >= 0 && w.Density > 0 && w.Viscosity > 0) || math.IsNaN(float64(q)) {
		return 0, fmt.Errorf("a line needs a bore above zero and water in it; found %s of %s", b.Length, b.Diameter)
	}
	if b.Length == 0 {
		return 0, nil
	}
	re := b.Reynolds(q, w)
	v := b.Speed(q).MetresPerSecond()
	if re < laminar { // 64/Re put in: with a flow near nothing it would be without end, times nothing
		d := b.Diameter.Metres()
		return quantity.Pressure(32 * float64(w.Viscosity) * v * b.Length.Metres() / (d * d)), nil
	}
	f := Friction(re, b.Roughness.Millimetres()/b.Diameter.Millimetres())
	return quantity.Pressure(f * float64(b.Length/b.Diameter) * float64(w.Density) * v * math.Abs(v) / 2), nil
}

// laminar is the Reynolds number below which friction is 64/Re and no more.
const laminar = 100

// Friction is the Darcy friction factor for a Reynolds number above zero and a relative
// roughness: 8 ((8/Re)^12 + (A + B)^-1.5)^(1/12), A = (2.457 ln(1/((7/Re)^0.9 + 0.27 e)))^16,
// B = (37530/Re)^16. It is four times the Fanning factor.
//
// Source: Churchill, Chemical Engineering 84 no. 24 (1977) 91-92.
func Friction(reynolds, relativeRoughness float64) float64 {
	if reynolds < laminar {
		return 64 / reynolds // what the form comes to, without its high powers
	}
	a := sixteenth(2.457 * math.Log(1/(math.Pow(7/reynolds, 0.9)+0.27*relativeRoughness)))
	b := sixteenth(37530 / reynolds)
	l := 8 / reynolds
	l *= l * l // to the third
	l *= l
	return 8 * math.Cbrt(math.Sqrt(math.Sqrt(l*l+1/((a+b)*math.Sqrt(a+b)))))
}

func sixteenth(x float64) float64 {
	x *= x
	x *= x
	x *= x
	return x * x
}

// Minor is the pressure that a loss number K takes at the speed in a bore: K rho v2/2, with
// the sign of the flow.
func Minor(k float64, q quantity.Flow, bore quantity.Length, w Water) quantity.Pressure {
	v := Bore{Diameter: bore}.Speed(q)
	return quantity.Pressure(k * float64(w.Density) * v.MetresPerSecond() * math.Abs(v.MetresPerSecond()) / 2)
}

// Barb is the loss number of a hose tail, on the speed in the hose, b being the tail's
// bore over the hose's: (0.5 (1 - b2) + (1 - b2)2) / b4.
//
// Errors: if a bore is not above zero. A tail as wide as its hose loses nothing.
// Source: the reduced seat of Flow of Fluids, Technical Paper 410; its use for tails is a
// judgement: no published figure for a tail was found.
func Barb(tail, hose quantity.Length) (float64, error) {
	if !(tail > 0 && hose > 0) {
		return 0, fmt.Errorf("a hose tail needs a bore and a hose; found %s in %s", tail, hose)
	}
	b := math.Min(1, float64(tail/hose))
	s := 1 - b*b
	return (0.5*s + s*s) / (b * b * b * b), nil
}

// Valve is the loss number of a part of a flow coefficient in cubic metres an hour at
// 1 bar, on the speed in a bore: 1.6e9 d4 / Kv2, d in metres.
//
// Errors: if either is not above zero.
// Source: IEC 60534-2-1; K 3.6 for Kv 500 in 154 mm is in Technical Paper 410, example 7-2.
func Valve(kv float64, bore quantity.Length) (float64, error) {
	if !(kv > 0 && bore > 0) {
		return 0, errors.New("a flow coefficient and a bore are above zero")
	}
	d := bore.Metres()
	return 1.6e9 * d * d * d * d / (kv * kv), nil
}
