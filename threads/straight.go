package threads

import "handtight/pressure/quantity"

// npsmForms makes NPSM from table/npsm.csv. Limits seen in print are used where
// they exist; the larger sizes follow the class 2A/2B rules of ASME B1.1, which
// give back the printed ones within 0.02 mm, but for the greatest minor diameter
// of the internal thread: there the print is up to 0.11 mm closer.
func npsmForms() []*Form {
	var out []*Form
	for _, r := range eachRow("npsm.csv") {
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

// npsForms makes the straight threads sold on through-hulls and locknuts
// (table/nps.csv). NPSL's own diameters were not seen: NPSM of the size stands in.
func npsForms() []*Form {
	npsm := map[string]*Form{}
	for _, f := range npsmForms() {
		npsm[f.Size] = f
	}
	var out []*Form
	for _, r := range eachRow("nps.csv") {
		f := *npsm[r["size"]]
		f.Family, f.Source, f.Note = NPS, r["source"], r["note"]
		f.Designation = r["size"] + "-" + quantity.Exact(f.TPI) + " NPS"
		out = append(out, &f)
	}
	return out
}

// hoseHeight is the height of the hose coupling thread in pitches, of the
// internal one and the external one alike (Machinery's Handbook, 27th ed.,
// "Hose Coupling Screw Threads": 0.08119 in at a pitch of 0.125 in).
const hoseHeight = 0.649519

// hoseForms makes the garden hose thread from table/nh.csv. The coupling's
// diameters stand above the nipple's by the difference of the two majors.
func hoseForms() []*Form {
	var out []*Form
	for _, r := range eachRow("nh.csv") {
		p := Inch / Length(r.number("tpi"))
		half := Length(hoseHeight/2) * p
		nipple, coupling := r.inch("ext_major_in")-2*half, r.inch("int_major_in")-2*half
		tol, crest := r.inch("pitch_tol_in"), r.inch("crest_tol_in")
		least := half - (crest-tol)/2
		out = append(out, &Form{
			Family: NH, Size: r["size"], Designation: r["thread"], Pitch: p, TPI: r.number("tpi"),
			Major: r.inch("ext_major_in"), PitchDia: nipple, Minor: nipple - 2*half, Flank: 60,
			Source: r["source"], Note: r["note"],
			height: 2 * half, full: wholeTurns * p, straight: [2]Length{half, half},
			outside: cut{
				tight: limits{pitch: nipple, crestAdd: half, rootAdd: half},
				loose: limits{pitch: nipple - tol, crestAdd: least, rootAdd: half},
			},
			inside: cut{
				tight: limits{pitch: coupling, crestAdd: half, rootAdd: half},
				loose: limits{pitch: coupling + tol, crestAdd: least, rootAdd: half},
			},
		})
	}
	return out
}
