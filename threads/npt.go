package threads

import "math"

// sharpHeight60 is the height of a sharp 60 degree V, in pitches (ASME B1.20.1 figure 1; ISO 68-1).
const sharpHeight60 = 0.8660254

// nptTruncationMin is the least truncation of crest and root, in pitches
// (ASME B1.20.1: height 0.8p in a sharp V of 0.866p leaves 0.033p at each).
const nptTruncationMin = (sharpHeight60 - 0.8) / 2

// nptForms makes NPT from table/npt.csv. E0 is recomputed by the formula of
// ASME B1.20.1, E0 = D - (0.05 D + 1.1) p; the table's own is its check.
func nptForms() []*Form {
	var out []*Form
	for _, r := range readTable("npt.csv") {
		p := Inch / Length(r.number("tpi"))
		e0, e1 := r.inch("e0_in"), r.inch("e1_in")
		sharp := Length(sharpHeight60/2) * p
		most := sharp - Length(nptTruncationMin)*p
		least := sharp - nptTruncationMax(r, p)
		turn := p / 16 // one turn of gauge tolerance, on diameter
		out = append(out, &Form{
			Family: NPT, Size: r["size"], Designation: r["size"] + "-" + r["tpi"] + " NPT",
			Pitch: p, TPI: r.number("tpi"), Major: r.inch("od_in"), PitchDia: e1, Minor: e1 - 2*most,
			Flank: 60, Taper: 1.0 / 16, HandTight: r.inch("l1_in"), Source: r["source"], Note: r["note"],
			height:   2 * most,
			full:     r.inch("l2_in"),
			straight: [2]Length{most, most},
			outside: cut{
				tight: limits{pitch: e0 + turn, crestAdd: most, rootAdd: least},
				loose: limits{pitch: e0 - turn, crestAdd: least, rootAdd: most},
			},
			inside: cut{
				tight: limits{pitch: e1 - turn, crestAdd: most, rootAdd: least},
				loose: limits{pitch: e1 + turn, crestAdd: least, rootAdd: most},
			},
		})
	}
	return out
}

// nptTruncationMax is the most truncation the standard allows at crest or root.
// The table leaves 1/16 blank; 1/8 has the same pitch and so the same figure.
func nptTruncationMax(r row, p Length) Length {
	if r.has("truncation_max_in") {
		return r.inch("truncation_max_in")
	}
	return 0.0036 * Inch * p / (Inch / 27)
}

// npsmForms makes NPSM from table/npsm.csv. Limits seen in print are used where
// they exist; the larger sizes follow the class 2A/2B rules of ASME B1.1, which
// give back the printed ones within 0.02 mm.
func npsmForms() []*Form {
	var out []*Form
	for _, r := range readTable("npsm.csv") {
		p := Inch / Length(r.number("tpi"))
		e1 := r.mm("int_pitch_min_mm")
		form := unified(NPSM, r["size"], e1+Length(0.75*sharpHeight60)*p, p)
		form.Designation = r["size"] + "-" + r["tpi"] + " NPSM"
		form.TPI, form.Source, form.Note = r.number("tpi"), r["source"], r["note"]
		if r["confidence"] == "seen" {
			pairLimits(form, r)
		}
		out = append(out, form)
	}
	return out
}

// pairLimits fills a parallel form's limits from columns of printed diameters.
func pairLimits(f *Form, r row) {
	outMax, outMin := r.mm("ext_pitch_max_mm"), r.mm("ext_pitch_min_mm")
	inMin, inMax := r.mm("int_pitch_min_mm"), r.mm("int_pitch_max_mm")
	f.outside.tight.pitch, f.outside.loose.pitch = outMax, outMin
	f.outside.tight.crestAdd = (r.mm("ext_major_max_mm") - outMax) / 2
	f.outside.loose.crestAdd = (r.mm("ext_major_min_mm") - outMin) / 2
	f.inside.tight.pitch, f.inside.loose.pitch = inMin, inMax
	f.inside.tight.crestAdd = (inMin - r.mm("int_minor_min_mm")) / 2
	f.inside.loose.crestAdd = (inMax - r.mm("int_minor_max_mm")) / 2
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
