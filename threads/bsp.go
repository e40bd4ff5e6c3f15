package threads

import "math"

// Whitworth profile of ISO 7-1 and ISO 228-1, in pitches: height of the thread,
// radius of crest and root.
const (
	whitworthHeight = 0.640327
	whitworthRadius = 0.137329
)

// whitworthStraight is the straight flank on each side of the pitch line, in
// pitches: half the height less the rounding. Twice it is the depth that the
// metrology formula for angle errors takes (0.49 p).
var whitworthStraight = whitworthHeight/2 - whitworthRadius*(1-math.Sin(27.5*math.Pi/180))

// bspForms makes G, R, Rc and Rp from table/bsp.csv.
//
// The pitch is 25.4/tpi; the table prints it to three places. Tolerances: G by
// ISO 228-1 (class B outside, the wider, unless the end says A); R and Rc by the
// gauge length's turns; Rp by Rc's turns on diameter (a turn is p/16).
func bspForms() []*Form {
	var out []*Form
	for _, r := range eachRow("bsp.csv") {
		g := bspBase(r, G)
		g.Designation = "G " + g.Size
		g.outside.loose.pitch -= r.mm("g_pitch_tol_ext_B_mm")
		g.outside.loose.crestAdd -= (r.mm("g_major_tol_ext_mm") - r.mm("g_pitch_tol_ext_B_mm")) / 2
		g.inside.loose.pitch += r.mm("g_pitch_tol_int_mm")
		g.inside.loose.crestAdd -= (r.mm("g_minor_tol_int_mm") - r.mm("g_pitch_tol_int_mm")) / 2
		out = append(out, g)
		if r["in_iso7_R"] == "yes" {
			out = append(out, jointingForms(r)...)
		}
	}
	return out
}

// jointingForms makes the three threads of ISO 7-1 of one size.
func jointingForms(r row) []*Form {
	p := Inch / Length(r.number("tpi"))
	gauge := r.mm("r_gauge_length_mm")
	maleTol := Length(r.number("r_gauge_tol_turns")) * p / 16
	femaleTol := Length(r.number("r_internal_tol_turns")) * p / 16
	male, taper, parallel := bspBase(r, R), bspBase(r, Rc), bspBase(r, Rp)
	for _, f := range []*Form{male, taper, parallel} {
		f.Designation = f.Family.String() + " " + f.Size
		f.HandTight = gauge
		f.full = r.mm("r_useful_thread_basic_mm")
		f.inside.tight.pitch -= femaleTol
		f.inside.loose.pitch += femaleTol
	}
	male.Taper, taper.Taper = 1.0/16, 1.0/16
	male.outside.tight.pitch += maleTol - gauge/16
	male.outside.loose.pitch += -maleTol - gauge/16
	return []*Form{male, taper, parallel}
}

func bspBase(r row, family Family) *Form {
	p := Inch / Length(r.number("tpi"))
	d2 := r.mm("pitch_d2_mm")
	half := Length(whitworthHeight/2) * p
	basic := limits{pitch: d2, crestAdd: half, rootAdd: half}
	straight := Length(whitworthStraight) * p
	return &Form{
		Family: family, Size: r["size"], Pitch: p, TPI: r.number("tpi"),
		Major: r.mm("major_d_mm"), PitchDia: d2, Minor: r.mm("minor_d1_mm"), Flank: 55,
		Source: r["source"], Note: r["note"],
		height: 2 * half, full: wholeTurns * p, straight: [2]Length{straight, straight},
		outside: cut{tight: basic, loose: basic}, inside: cut{tight: basic, loose: basic},
	}
}
