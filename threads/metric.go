package threads

import "sync"

// metricForms makes the parallel metric threads of table/metric.csv (ISO 261
// sizes, ISO 724 diameters) with the printed 6g and 6H limits.
var metricForms = sync.OnceValue(func() []*Form {
	var out []*Form
	for _, r := range eachRow("metric.csv") {
		out = append(out, metricForm(r))
	}
	return out
})

func metricForm(r row) *Form {
	f := unified(M, r["thread"], r.mm("d_mm"), r.mm("pitch_mm"))
	f.Designation, f.Source, f.Note = r["thread"], r["source"], r["note"]
	f.PitchDia, f.Minor = r.mm("d2_mm"), r.mm("d1_mm")
	f.outside.tight.pitch, f.outside.loose.pitch = r.mm("ext_6g_pitch_max_mm"), r.mm("ext_6g_pitch_min_mm")
	f.outside.tight.crestAdd = (r.mm("ext_6g_major_max_mm") - f.outside.tight.pitch) / 2
	f.outside.loose.crestAdd = (r.mm("ext_6g_major_min_mm") - f.outside.loose.pitch) / 2
	f.outside.tight.rootAdd = (f.outside.tight.pitch - r.mm("ext_6g_minor_max_mm")) / 2
	f.outside.loose.rootAdd = (f.outside.loose.pitch - r.mm("ext_6g_minor_min_mm")) / 2
	f.inside.tight.pitch, f.inside.loose.pitch = r.mm("int_6H_pitch_min_mm"), r.mm("int_6H_pitch_max_mm")
	f.inside.tight.crestAdd = (f.inside.tight.pitch - r.mm("int_6H_minor_min_mm")) / 2
	f.inside.loose.crestAdd = (f.inside.loose.pitch - r.mm("int_6H_minor_max_mm")) / 2
	return f
}

// metricThreads gives the metric forms by their designation: other forms start from copies
// of them.
var metricThreads = sync.OnceValue(func() map[string]*Form {
	out := map[string]*Form{}
	for _, f := range metricForms() {
		out[f.Size] = f
	}
	return out
})

// Coarse reports whether a metric form is the coarse pitch of its diameter,
// the one meant when a pitch is left out.
func (f *Form) Coarse() bool { return f.Family == M && coarsePitches()[f.Size] }
