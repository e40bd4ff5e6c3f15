package threads

// metricPortForms makes the threads of metric O-ring ports and their studs
// (table/iso6149.csv): metric threads with a seal of their own.
func metricPortForms() []*Form {
	metric := metricThreads()
	var out []*Form
	for _, r := range eachRow("iso6149.csv") {
		f := *metric[r["thread"]]
		f.Family, f.Designation = ISO6149, r["thread"]+" ISO 6149"
		f.Source, f.Note = r["source"]+"; diameters: "+f.Source, r["note"]
		out = append(out, &f)
	}
	return out
}

// coneForms makes the 24 degree cone ends, light and heavy (table/cone24.csv):
// metric threads, each with the tube that belongs to it.
func coneForms() []*Form {
	metric := metricThreads()
	var out []*Form
	for _, r := range eachRow("cone24.csv") {
		f := *metric[r["thread"]]
		f.Family, _ = FamilyNamed(r["family"])
		f.Size, f.Designation, f.Tube = r["size"], r["size"]+" "+r["thread"], r.mm("tube_mm")
		f.Source, f.Note = r["source"]+"; diameters: "+f.Source, r["note"]
		out = append(out, &f)
	}
	return out
}

// metricTaperForms makes the metric taper male (table/metric_taper.csv).
//
// The table gives limits at the gauge plane, which lies outside the plane of the
// nominal diameters by 16 times their mean excess (taper 1:16). The distance of
// the small end was not seen: the male is taken to be hand tight in a basic
// female at half its full thread (a judgement, marked in each row).
func metricTaperForms() []*Form {
	var out []*Form
	for _, r := range eachRow("metric_taper.csv") {
		f := unified(MT, r["thread"], r.mm("d_mm"), r.mm("pitch_mm"))
		f.Designation, f.Source, f.Note = r["thread"]+" keg", r["source"], r["note"]
		f.PitchDia, f.Minor, f.Taper = r.mm("d2_mm"), r.mm("d1_mm"), 1.0/16
		f.full = r.mm("full_thread_mm")
		f.HandTight = f.full / 2
		excess := (r.mm("gauge_major_max_mm")+r.mm("gauge_major_min_mm"))/2 - f.Major
		back := excess + f.HandTight/16 // from the gauge plane to the small end, on diameter
		f.outside.tight = gaugeLimits(r, "max", back)
		f.outside.loose = gaugeLimits(r, "min", back)
		out = append(out, f)
	}
	return out
}

func gaugeLimits(r row, which string, back Length) limits {
	pitch := r.mm("gauge_pitch_" + which + "_mm")
	return limits{
		pitch:    pitch - back,
		crestAdd: (r.mm("gauge_major_"+which+"_mm") - pitch) / 2,
		rootAdd:  (pitch - r.mm("gauge_minor_"+which+"_mm")) / 2,
	}
}
