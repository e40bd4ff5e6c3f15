package main

import (
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestBrief(t *testing.T) {
	for _, c := range []struct{ why, text, want string }{
		{"it has room", "Use a G male under a swivel.", "Use a G male under a swivel."},
		{"without what stands in brackets", "Buy it of super duplex or titanium (316 only where it is flushed).", "Buy it of super duplex or titanium."},
		{"an adaptor is named, and that there are other ways", "Do not force it. Buy an adaptor G 1/2 male x 1/2 NPT female, or one of the two.", "Buy an adaptor G 1/2 male x 1/2 NPT female (more: --all)"},
		{"two lines where the first clause is longer than one", "Put a relief valve on a tee at the outlet of the pump itself and above the duty, or elsewhere.", "Put a relief valve on a tee at the outlet of the pump itself\nand above the duty, or elsewhere."},
	} {
		require.Equal(t, c.want, strings.Join(brief(c.text, 60), "\n"), c.why)
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`([a-z三]{1,9}(, or|, and|\.|;| \([a-z]{1,5}\)|) ){0,30}[a-z]{1,9}\.`).Draw(t, "text")
		room := rapid.IntRange(30, 80).Draw(t, "room")
		lines := brief(text, room)
		for _, l := range lines {
			require.LessOrEqual(t, widthOf(l), room)
		}
		said := strings.Join(lines, " ")
		short := strings.Join(strings.Fields(aside.ReplaceAllString(text, "")), " ")
		if said == strings.Join(strings.Fields(text), " ") || said == short {
			return
		}
		begin, cut := strings.CutSuffix(said, more)
		require.True(t, cut, "what is left out is said to be: %q of %q", said, text)
		require.True(t, strings.HasPrefix(short, begin), "%q of %q", said, text)
		require.Contains(t, ".,; ", short[len(begin):][:1], "at the end of a clause")
	})
}

// No remedy of a short report ends in mid-sentence, in any demo build.
func TestRemediesAreNotCut(t *testing.T) {
	builds, err := filepath.Glob("../../testdata/*/build.toml")
	require.NoError(t, err)
	require.NotEmpty(t, builds)
	for _, build := range builds {
		lines := printed(t, "check", build)
		require.LessOrEqual(t, len(lines), 2*plainHeight, build)
		for i, l := range lines {
			if !strings.HasPrefix(l, "   do   ") {
				continue
			}
			for k := i; k == i || k < len(lines) && strings.HasPrefix(lines[k], strings.Repeat(" ", hang)); k++ {
				require.NotContains(t, strings.TrimSuffix(lines[k], "= { in = '…' } on"), " …", build)
			}
		}
	}
}
