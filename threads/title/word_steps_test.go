package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A step that the first letter of a word keeps away from it would have changed nothing there.
func TestWhatAStepIsKeptFromItWouldLeaveAlone(t *testing.T) {
	if testing.Short() {
		t.Skip("millions of words, one after the other: in the full run")
	}
	type shown struct {
		words, ignored, tokens int
		unread                 bool
		first                  *sense
		role, before           role
		kind                   figureKind
	}
	tried := 0
	for _, p := range publishedLines(t) {
		l := newLine(p.text, false)
		l.symbols()
		l.pneumatic()
		for k := range l.tokens {
			it := &l.tokens[k]
			if it.figure != nil || it.mark != 0 {
				continue
			}
			look := func() shown {
				s := shown{words: len(it.word.all()), unread: it.unread, ignored: len(l.ignored), tokens: len(l.tokens)}
				if len(it.word.all()) > 0 {
					s.first = it.word.all()[0]
				}
				if f := at(l.tokens, k+1).figure; f != nil {
					s.role, s.kind = f.role, f.kind
				}
				if f := at(l.tokens, k-1).figure; f != nil {
					s.before = f.role
				}
				return s
			}
			about := stepsAbout(it.to-it.from, byteAt(l.norm, it.from))
			for s := range wordSteps {
				asked := about[s/64]&stepsForClasses(it.word)[s/64]&(1<<(s%64)) != 0
				if step := &wordSteps[s]; !asked && (step.longest == 0 || it.to-it.from <= step.longest) {
					was := look()
					step.apply(l, k)
					require.Equal(t, was, look(), "%s: %s, %s", p.text, l.words(it.from, it.to), step.name)
					tried++
				}
			}
		}
		l.release()
	}
	require.Greater(t, tried, 400_000)
}
