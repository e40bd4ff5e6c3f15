package threads

// conduitForms makes the steel conduit threads of cable glands (table/pg.csv): 80
// degree flanks, the height that the printed diameters leave. Tolerances were not
// seen: a tenth of the height on the pitch diameter stands in (a judgement), which
// is enough to tell them from pipe threads.
func conduitForms() []*Form {
	var out []*Form
	for _, r := range eachRow("pg.csv") {
		p := Inch / Length(r.number("tpi"))
		major, minor := r.mm("major_mm"), r.mm("minor_mm")
		half := (major - minor) / 4
		d2, tol := (major+minor)/2, (major-minor)/10
		out = append(out, &Form{
			Family: PG, Size: r["size"], Designation: r["size"], Pitch: p, TPI: r.number("tpi"),
			Major: major, PitchDia: d2, Minor: minor, Flank: 80, Source: r["source"], Note: r["note"],
			height: 2 * half, full: wholeTurns * p, straight: [2]Length{half, half},
			outside: cut{tight: limits{d2, half, half}, loose: limits{d2 - tol, half - tol/2, half}},
			inside:  cut{tight: limits{d2, half, half}, loose: limits{d2 + tol, half - tol/2, half}},
		})
	}
	return out
}

// fineForms makes the British Standard Fine threads (table/bsf.csv): the Whitworth
// form of the pipe threads on engineering diameters. The medium fit's tolerance of
// BS 84 was not seen; that of a unified thread of the size stands in (a judgement).
func fineForms() []*Form {
	var out []*Form
	for _, r := range eachRow("bsf.csv") {
		p := Inch / Length(r.number("tpi"))
		major := r.inch("major_in")
		half := Length(whitworthHeight/2) * p
		d2, tol, straight := major-2*half, classTolerance(major, p), Length(whitworthStraight)*p
		size := r["size"]
		out = append(out, &Form{
			Family: BSF, Size: size, Designation: size + "-" + r["tpi"] + " BSF", Pitch: p, TPI: r.number("tpi"),
			Major: major, PitchDia: d2, Minor: major - 4*half, Flank: 55, Source: r["source"], Note: r["note"],
			height: 2 * half, full: wholeTurns * p, straight: [2]Length{straight, straight},
			outside: cut{tight: limits{d2, half, half}, loose: limits{d2 - tol, half - tol/2, half}},
			inside:  cut{tight: limits{d2, half, half}, loose: limits{d2 + tol, half - tol/2, half}},
		})
	}
	return out
}
