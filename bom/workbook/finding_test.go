package workbook

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/facts"
)

// One cause is one row, with its count, every place and what is said of each; what stands alone
// keeps a row of its own, and nothing is dropped.
func TestOneCauseIsOneRow(t *testing.T) {
	at := func(group int, slug, cause, place, reason string, line int) facts.Finding {
		return facts.Finding{Severity: "stop", Slug: slug, Cause: cause, Group: group, At: place, Reason: reason, Remedy: "Buy one size.", File: "build.toml", Line: line}
	}
	list := []facts.Finding{
		at(1, "barb-and-bore-differ", "stock", "J2 a.out - b.in", "22 and 25 differ.", 7),
		at(2, "rating-unknown", "", "tee", "Nothing says it.", 9),
		at(1, "barb-and-bore-differ", "stock", "J3 b.out - c.in", "25 and 22 differ.", 7),
		at(1, "barb-and-bore-differ", "stock", "J4 c.out - d.in", "22 and 25 differ.", 8),
	}
	groups := oneCause(list)
	require.Len(t, groups, 2)
	require.Equal(t, []string{"STOP", "3 places of one cause\nJ2 a.out - b.in\nJ3 b.out - c.in\nbuild.toml, line 7\nJ4 c.out - d.in\nbuild.toml, line 8", "22 and 25 differ. 25 and 22 differ.", "Buy one size."}, groupCells(groups[0]))
	require.Equal(t, []string{"STOP", "tee\nbuild.toml, line 9", "Nothing says it.", "Buy one size."}, groupCells(groups[1]))
}
