package facts

import (
	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/repair"
)

// remediesOf lists the parts that mend a finding; of notes none: they ask for nothing to be
// bought.
func remediesOf(sys *bom.System, f *finding.Finding) []Remedy {
	out := []Remedy{}
	if f.Severity == finding.Note || !repair.Mends(f.Slug) {
		return out
	}
	for _, r := range repair.Remedies(sys, f) {
		out = append(out, Remedy{Do: r.Do, At: r.At, Buy: r.Buy(), Paste: r.Paste(), Step: r.Step(sys), Before: r.Before, Joints: r.Joints, Why: r.Why})
	}
	return out
}
