package facts

import (
	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/repair"
)

// remediesOf lists the parts that mend a joint which stops; none for other findings.
func remediesOf(sys *bom.System, f *finding.Finding) []Remedy {
	out := []Remedy{}
	if f.Severity != finding.Stop {
		return out
	}
	for _, r := range repair.Remedies(sys, f) {
		out = append(out, Remedy{Do: r.Do, At: r.At, Buy: r.Buy(), Paste: r.Paste(), Joints: r.Joints, Why: r.Why})
	}
	return out
}
