package running_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
)

// Sea water comes back into the house supply where nothing holds it: worked by eye on
// the plant that many people build.
func TestBackflows(t *testing.T) {
	const flush = `"flush-valve", "check", "tee/flush.branch"]`
	for _, c := range []struct {
		why   string
		edits []built.Edit
		back  bool
	}{
		{"a check valve behind the flush valve holds it", nil, false},
		{"the flush valve alone: it is opened", []built.Edit{{flush, `"flush-valve", "tee/flush.branch"]`}}, true},
		{"a check valve the wrong way round", []built.Edit{{flush, `"flush-valve", "check.out>in", "tee/flush.branch"]`}}, true},
		{"a check valve before the flush valve holds it too", []built.Edit{{`"house", "carbon", ` + flush, `"house", "check", "carbon", "flush-valve", "tee/flush.branch"]`}}, false},
		{"house water into the product line meets no sea water", []built.Edit{{flush, `"flush-valve", "tee/product.branch"]`}, {`"vessel.product", "meter"`, `"vessel.product", "tee/product", "meter"`}}, false},
		{"before a diaphragm pump", []built.Edit{
			{flush, `"flush-valve", "tee/flush.branch"]`}, {`"filter", "tee/gauge", "tee/flush", "pump"`, `"filter", "tee/gauge", "pump"`}, {`"raw-hose", "strainer"`, `"raw-hose", "tee/flush", "strainer"`},
		}, true},
	} {
		t.Run(c.why, func(t *testing.T) {
			got := built.Plant(t, c.edits...).Running.Backflows()
			require.Equal(t, c.back, len(got) == 1, "%v", got)
			if c.back {
				require.Equal(t, "house", got[0].Name)
			}
		})
	}
}
