package fix

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/repair"
	"handtight/bom/rule"
	"handtight/pressure/quantity"
)

// Every remedy that is offered for a stop of a demo, not the first alone, pasted into a copy: the copy
// is a build, the finding is gone or a part less is in it, and no rule stops more than it did.
func TestEveryRemedyMends(t *testing.T) {
	paths, err := filepath.Glob("../../../testdata/*/build.toml")
	require.NoError(t, err)
	all, failed := 0, 0
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(t, err)
		sys, faults := load(path, text, Options{})
		require.Empty(t, faults, path)
		m := &mender{path: path, text: string(text), sys: sys, list: rule.Check(sys)}
		for i := range m.list {
			f := &m.list[i]
			if !m.wanted(f) {
				continue
			}
			for _, r := range repair.Remedies(sys, f) {
				if r.Do == "ask" {
					break
				}
				all++
				if why := m.judge(&r); why != "" {
					failed++
					t.Errorf("%s: %s: %s %v: %s", filepath.Base(filepath.Dir(path)), key(f), r.Do, r.Buy(), why)
				}
			}
		}
	}
	t.Logf("%d of %d", all-failed, all)
}

// judge tells what is wrong with a remedy put in.
func (m *mender) judge(r *repair.Remedy) string {
	text, _, why := m.write(r)
	if why != "" {
		return "it is not written: " + why
	}
	if r.Needs > 10*quantity.Bar { // as it says: from its data sheet
		text = strings.ReplaceAll(text, "# rated  = \"…\" ", fmt.Sprintf("rated = %q  # ", fmt.Sprintf("%.0f bar", math.Ceil(r.Needs.Bar()))))
	}
	sys, faults := load(m.path, []byte(text), m.o)
	if len(faults) > 0 {
		return "the file is at fault: " + faults.Error()
	}
	list := rule.Check(sys)
	if f := newStop(m.list, list); f != nil {
		return "a new stop: " + f.Slug + " " + f.At() + ": " + f.Reason
	}
	if weight(list) >= weight(m.list) {
		return fmt.Sprintf("no fewer stops: %d, %d before", weight(list), weight(m.list))
	}
	return ""
}
