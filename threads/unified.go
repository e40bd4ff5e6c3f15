package threads

import (
	"math"
	"strings"
)

// unified makes a parallel 60 degree form of ISO/UN profile from its basic
// major diameter, with class 2A/2B limits (see classTolerance).
//
// Basic profile: pitch diameter d - 0.649519 p, minor d - 1.082532 p (ASME B1.1,
// ISO 724). Crest tolerances: major 0.060 p^2/3 in, minor 0.25 p - 0.4 p^2 in
// (ASME B1.1 class 2, the second for threads of 1/4 inch and up: `memory`); below
// 1/4 inch see minorTolerance.
func unified(family Family, size string, major, p Length) *Form {
	d2, d1 := major-Length(0.75*sharpHeight60)*p, major-Length(1.25*sharpHeight60)*p
	tol := classTolerance(major, p)
	allow := 0.3 * tol
	pin := p.Inches()
	majorTol := Length(0.060*math.Cbrt(pin*pin)) * Inch
	minorTol := minorTolerance(major, p)
	crest, root := (major-d2)/2, (d2-d1)/2
	deep := crest // an external root is cut to at least a quarter of the V below the minor
	return &Form{
		Family: family, Size: size, Pitch: p, TPI: float64(Inch / p),
		Major: major, PitchDia: d2, Minor: d1, Flank: 60,
		height: crest + root, full: wholeTurns * p, straight: [2]Length{crest, deep},
		outside: cut{
			tight: limits{pitch: d2 - allow, crestAdd: crest, rootAdd: root},
			loose: limits{pitch: d2 - allow - tol, crestAdd: crest - (majorTol-tol)/2, rootAdd: deep},
		},
		inside: cut{
			tight: limits{pitch: d2, crestAdd: root, rootAdd: crest},
			loose: limits{pitch: d2 + 1.3*tol, crestAdd: root - (minorTol-1.3*tol)/2, rootAdd: crest},
		},
	}
}

// unifiedForms makes the families of table/unified.csv (37 and 45 degree flare,
// O-ring port, O-ring face seal), and UN: each of their threads without a seal.
func unifiedForms() []*Form {
	var out []*Form
	bare := map[string]bool{}
	for _, r := range eachRow("unified.csv") {
		p := Inch / Length(r.number("tpi"))
		family, _ := FamilyNamed(r["family"])
		f := unified(family, r["dash"], r.inch("major_in"), p)
		f.Designation = r["thread"] + " " + r["family"] + " " + r["dash"]
		f.TPI, f.Source, f.Note = r.number("tpi"), r["source"], r["note"]
		f.Tube = r.inch("tube_od_in")
		out = append(out, f)
		if bare[r["thread"]] {
			continue
		}
		bare[r["thread"]] = true
		u := *f
		u.Family, u.Size, u.Tube = UN, strings.Replace(r["thread"], "-", " ", strings.Count(r["thread"], "-")-1), 0
		u.Designation = r["thread"] + " UN"
		out = append(out, &u)
	}
	return append(out, portless()...)
}

// portless makes the threads of table/un.csv, which no flare and no port of the other families has: those of
// laboratory tube, of small air fittings and of grease nipples.
func portless() []*Form {
	var out []*Form
	for _, r := range eachRow("un.csv") {
		f := unified(UN, r["thread"], r.inch("major_in"), Inch/Length(r.number("tpi")))
		f.Designation = r["thread"] + " UN"
		f.TPI, f.Source, f.Note = r.number("tpi"), r["source"], r["note"]
		out = append(out, f)
	}
	return out
}

// classTolerance is the pitch diameter tolerance of an external unified thread
// of class 2A in millimetres: 0.0015 D^1/3 + 0.0015 Le^1/2 + 0.015 p^2/3, all in
// inches; Le is taken as nine pitches. Class 2B is 1.3 times that, and 2A stands
// 0.3 times back from basic.
//
// Source: ASME B1.1-2003 as quoted on the page "Help with Pitch Diameter
// Tolerance" (engineering forum); the 0.3 and 1.3 on the page "Unified thread
// limits".
func classTolerance(major, pitch Length) Length {
	d, p := major.Inches(), pitch.Inches()
	return Length(0.0015*math.Cbrt(d)+0.0015*math.Sqrt(9*p)+0.015*math.Cbrt(p*p)) * Inch
}

// minorTolerance is that of the minor diameter of an internal unified thread of
// class 2B in millimetres: 0.25 p - 0.4 p^2 in from 1/4 inch up; below it
// 0.05 p^2/3 + 0.03 p/D - 0.002 in, but no less than the former and no more than
// 0.394 p.
//
// Source: ASME B1.1, limits of size of UNC, UNF: `memory`.
func minorTolerance(major, pitch Length) Length {
	d, p := major.Inches(), pitch.Inches()
	least := 0.25*p - 0.4*p*p
	if d >= 0.25 {
		return Length(least) * Inch
	}
	return Length(min(max(0.05*math.Cbrt(p*p)+0.03*p/d-0.002, least), 0.394*p)) * Inch
}
