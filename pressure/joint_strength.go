package pressure

import (
	"fmt"
	"math"
	"sync"

	"handtight/pressure/quantity"
)

// Stress is what a material may bear in tension at work, at about 38 C.
type Stress struct {
	Value  quantity.Pressure
	Text   string
	Source string
	Status Status
}

var stresses = sync.OnceValue(func() map[string]Stress {
	out := map[string]Stress{}
	for _, r := range eachRow("stress") {
		s := Stress{Text: r["note"], Source: sourceText(r["source"]), Status: statusNamed(r["status"])}
		if ksi, ok := r.number("stress_ksi"); ok {
			s.Value = quantity.Pressure(ksi*1000) * quantity.PSI
		} else {
			mpa, _ := r.number("stress_mpa")
			s.Value = quantity.Pressure(mpa) * quantity.MPa
		}
		out[r["material"]] = s
	}
	return out
})

// AllowableStress returns the allowable stress of a material named in words:
// 20 000 psi (138 MPa) for 316. ok is false for a material that no table names.
//
// Source: ASME B31.3 table A-1, and the others on the rows of table/stress.csv.
func AllowableStress(material string) (Stress, bool) {
	s, ok := stresses()[materialNamed(material)]
	return s, ok
}

// StressGap says in words why [AllowableStress] knows no figure: "no allowable stress is
// known of `oak`". It is "" where one is known.
func StressGap(material string) string {
	if _, known := AllowableStress(material); known {
		return ""
	}
	if made := materialNamed(material); made != "" {
		return fmt.Sprintf("no allowable stress is known of %s (`%s`)", made, material)
	}
	return fmt.Sprintf("`%s` is no material whose allowable stress is known", material)
}

// EndLoad returns the force that pressure p pulls a joint apart with,
// where it seals at diameter d: F = p pi d2/4. The diameter is that of the seal
// and not of the bore.
//
// Source: page "Hydraulic product calculator", force = pressure x area.
func EndLoad(p quantity.Pressure, d quantity.Length) quantity.Force {
	return quantity.Force(p.Pascals()*math.Pi/4*d.Metres()*d.Metres()) * quantity.Newton
}

// ThreadedJoint is what the strength of a joint depends on.
type ThreadedJoint struct {
	External, Internal quantity.Area   // that would shear: [threads.Mating.ShearArea]
	Male, Female       string          // materials in words
	Seal               quantity.Length // diameter that the pressure acts on: the thread's major one at the most
}

// shearShare is what of a metal's tensile stress it bears in shear: 1/sqrt(3), by
// the distortion energy theory (Machinery's Handbook: 0.577 of the yield).
const shearShare = 0.577

// JointStrength estimates the pressure at which the end load on a joint brings its
// threads to the allowable shear stress: P = min(A S) 0.577 / (pi d2/4) over
// both threads. It is always an [Estimate]: the wall behind a thread may be weaker.
// ok is false where a material has no known stress, or an area or the diameter is
// not above zero.
//
// Source: FED-STD-H28/2 for the areas; ASME B31.3 table A-1 for the stresses.
func JointStrength(j ThreadedJoint) (Rating, bool) {
	male, ok1 := AllowableStress(j.Male)
	female, ok2 := AllowableStress(j.Female)
	if !ok1 || !ok2 || !(j.External > 0 && j.Internal > 0 && j.Seal > 0) {
		return Rating{}, false
	}
	area, s, which, of := j.External, male, "male", j.Male
	if float64(j.Internal)*float64(female.Value) < float64(j.External)*float64(male.Value) {
		area, s, which, of = j.Internal, female, "female", j.Female
	}
	load := area.SquareMetres() * float64(s.Value) * shearShare
	return Rating{
		Pressure: quantity.Pressure(load / (math.Pi / 4 * float64(j.Seal) * float64(j.Seal) * 1e-6)),
		Basis:    Estimate, Status: max(Computed, male.Status, female.Status), Source: "FED-STD-H28/2; " + s.Source,
		Text: fmt.Sprintf("%.0f mm2 of the %s thread (%s at %s MPa) against the end load on %s", area.SquareMM(), which, of, quantity.Figures(s.Value.MPa()), j.Seal),
	}, true
}
