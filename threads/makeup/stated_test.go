package makeup_test

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/table"
	"handtight/threads/makeup"
	"handtight/threads/title"
)

// testdata/stated.csv holds pairs of ends as people write them, with what becomes of
// the joint, what closes it and what the make-up must and must not name. The
// answers were written before anything was run.
func TestStatedWords(t *testing.T) {
	right := 0
	for _, r := range table.Read(os.DirFS("testdata"), "stated.csv") {
		t.Run(r["a"]+" with "+r["b"], func(t *testing.T) {
			a, err := title.ReadEnd(r["a"])
			require.NoError(t, err)
			b, err := title.ReadEnd(r["b"])
			require.NoError(t, err)
			m, open := threads.Worst(a, b)
			if r["verdict"] == "open" {
				require.True(t, open || a.Question+b.Question+m.Question() != "", "%s: nothing is asked", m.Verdict)
				right++
				return
			}
			mk := makeup.Of(&m)
			line := mk.String() + "; " + mk.Hold + "; " + mk.Feel
			require.Equal(t, r["verdict"], m.Verdict.String(), m.Reason())
			require.Contains(t, m.Closes(), r["closes"])
			require.Contains(t, line, r["make"])
			if r["make_not"] != "" {
				require.False(t, strings.Contains(line, r["make_not"]), line)
			}
			right++
		})
	}
	t.Logf("%d right", right)
}
