package pressure

import (
	"fmt"
	"strings"
)

// PipeRating returns the rating of plastic pipe, or of hose, by what is written of it: the
// SDR of PE pipe with its grade ("PE100 SDR 11": 16 bar), or a PN ("PN 10": 10 bar at
// 20 C). text holds all that is written: class, spec and material. Of both the lower rules.
// The rating is the pipe's and not its joints'. ok is false where neither is written, for
// PE whose grade is not said, and for an SDR that no table holds.
//
// Source: HDPE code tables after ISO 4427 and EN 12201; EN 1333 and ISO 7268 for PN.
func PipeRating(text string) (Rating, bool) {
	lower := strings.ToLower(text)
	var all []Rating
	if m := pnForm.FindString(lower); m != "" {
		if r, ok := FittingRating(m, "", "", false, ""); ok {
			all = append(all, r)
		}
	}
	if m := sdrForm.FindString(lower); m != "" {
		if grade := materialNamed(text); grade == "PE100" || grade == "PE80" {
			if r, ok := FittingRating(m, grade, "", false, ""); ok {
				r.Basis = TubeTable
				all = append(all, r)
			}
		}
	}
	return Lower(all...)
}

// PipeGap says in words why [PipeRating] knows no figure, from the same text: the grade of
// PE that is not said, or the SDR that no table holds. It is "" where a figure is known and
// where neither an SDR nor a PN is written.
func PipeGap(text string) string {
	sdr := sdrForm.FindString(strings.ToLower(text))
	if _, known := PipeRating(text); known || sdr == "" {
		return ""
	}
	name := "SDR " + sdrForm.FindStringSubmatch(sdr)[1]
	if grade := materialNamed(text); grade == "PE100" || grade == "PE80" {
		return fmt.Sprintf("%s of %s is in no table that is known", name, grade)
	}
	return fmt.Sprintf("%s tells nothing without the grade of the polyethylene: write \"PE100 %s\" or \"PE80 %s\"", name, name, name)
}
