package rule

import (
	"fmt"

	"handtight/bom/finding"
	"handtight/bom/graph"
)

// ofEach makes a finding of each unit of a list; the reason names the unit where it says %s.
func ofEach(list []*graph.Unit, severity finding.Severity, reason, remedy string) []finding.Finding {
	var out []finding.Finding
	for _, u := range list {
		out = append(out, finding.Finding{
			Severity: severity, Subject: ofUnit(u), Place: at(u.Mark),
			Reason: fmt.Sprintf(reason, u.Name), Remedy: remedy,
		})
	}
	return out
}
