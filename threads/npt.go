package threads

// sharpHeight60 is the height of a sharp 60 degree V, in pitches (ASME B1.20.1 figure 1; ISO 68-1).
const sharpHeight60 = 0.8660254

// nptTruncationMin is the least truncation of crest and root, in pitches
// (ASME B1.20.1: height 0.8p in a sharp V of 0.866p leaves 0.033p at each).
const nptTruncationMin = (sharpHeight60 - 0.8) / 2

// nptForms makes NPT from table/npt.csv.
func nptForms() []*Form {
	var out []*Form
	for _, r := range eachRow("npt.csv") {
		out = append(out, nptForm(NPT, r))
	}
	return out
}

// nptfForms makes NPTF, which has the pitch diameters, lengths and turns of NPT
// (table/nptf.csv). Its crest and root truncations (ASME B1.20.3) were not seen:
// NPT's stand in, so that only its pitch lines are its own.
func nptfForms() []*Form {
	npt := map[string]row{}
	for _, r := range readTable("npt.csv") {
		npt[r["size"]] = r
	}
	var out []*Form
	for _, r := range eachRow("nptf.csv") {
		f := nptForm(NPTF, npt[r["size"]])
		f.Source, f.Note = r["source"], r["note"]
		out = append(out, f)
	}
	return out
}

// nptForm makes a size of NPT or NPTF. E0 is that of ASME B1.20.1,
// E0 = D - (0.05 D + 1.1) p. One turn of gauge tolerance is p/16 on diameter.
//
// The standard lets crests and roots vary apart from the flanks, and gauges hand
// tightness on the flanks alone. So crests vary here and roots are cut full:
// with the shallowest roots the fullest crests would meet up to two turns before
// the flanks of the same parts, which no gauge of the standard shows.
func nptForm(family Family, r row) *Form {
	p := Inch / Length(r.number("tpi"))
	e0, e1 := r.inch("e0_in"), r.inch("e1_in")
	sharp := Length(sharpHeight60/2) * p
	most := sharp - Length(nptTruncationMin)*p
	least := sharp - nptTruncationMax(r, p)
	turn := p / 16
	return &Form{
		Family: family, Size: r["size"], Designation: r["size"] + "-" + r["tpi"] + " " + family.String(),
		Pitch: p, TPI: r.number("tpi"), Major: r.inch("od_in"), PitchDia: e1, Minor: e1 - 2*most,
		Flank: 60, Taper: 1.0 / 16, HandTight: r.inch("l1_in"), Source: r["source"], Note: r["note"],
		height:   2 * most,
		full:     r.inch("l2_in"),
		straight: [2]Length{most, most},
		outside: cut{
			tight: limits{pitch: e0 + turn, crestAdd: most, rootAdd: most},
			loose: limits{pitch: e0 - turn, crestAdd: least, rootAdd: most},
		},
		inside: cut{
			tight: limits{pitch: e1 - turn, crestAdd: most, rootAdd: most},
			loose: limits{pitch: e1 + turn, crestAdd: least, rootAdd: most},
		},
	}
}

// nptTruncationMax is the most truncation the standard allows at crest or root.
// The table leaves 1/16 blank; 1/8 has the same pitch and so the same figure.
func nptTruncationMax(r row, p Length) Length {
	if r.has("truncation_max_in") {
		return r.inch("truncation_max_in")
	}
	return 0.0036 * Inch * p / (Inch / 27)
}
