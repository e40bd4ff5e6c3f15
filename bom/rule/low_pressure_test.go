package rule

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/audit"
	"handtight/bom/finding"
	"handtight/bom/read"
)

// A pair for low pressure only is a caution above the waterline and a stop below it, and the audit
// of the same joint says the same of it.
func TestLowPressurePairIsOneJudgement(t *testing.T) {
	for below, want := range map[bool]finding.Severity{true: finding.Stop, false: finding.Caution} {
		text := whole(makeshiftJoint.Example(`
[[item]]
id = "skin"
kind = "through-hull"
material = "bronze"
rated = "16 bar"
ports = { inboard = 'R 3/4' }
[[item]]
id = "cock"
kind = "shut-off valve"
material = "bronze"
rated = "16 bar"
ports = { in = 'G 3/4 female', out = '19 mm barb long' }
[[run]]
name = "line"
below_waterline = true
path = ["skin", "cock.in"]
`))
		if !below {
			text = strings.Replace(text, "below_waterline = true\n", "", 1)
		}
		build, faults := read.Parse("build.toml", []byte(text))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(build)
		require.NoError(t, faults.Err())
		found := finding.Severity(0)
		for _, f := range Check(sys) {
			if f.Slug == makeshiftJoint.Slug {
				found = f.Severity
			}
		}
		require.Equal(t, want, found, "below the waterline: %v", below)
		x := audit.Judge(sys, sys.Graph.Joints[0], time.Time{})
		require.Equal(t, below, x.Section == audit.Wrong, "below the waterline: %v: %v %s", below, x.Section, x.Why)
	}
}
