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
		{"but not what it rests on", "Take the tape off and use a paste (one for drinking water) here (memory).", "Take the tape off and use a paste here (memory)."},
		{"an adaptor is named, and that there are other ways", "Do not force it. Buy an adaptor G 1/2 male x 1/2 NPT female, or one of the two.", "Buy an adaptor G 1/2 male x 1/2 NPT female (more: --all)"},
		{"two lines where the first clause is longer than one", "Put a relief valve on a tee at the outlet of the pump itself and above the duty, or elsewhere.", "Put a relief valve on a tee at the outlet of the pump itself\nand above the duty, or elsewhere."},
	} {
		require.Equal(t, c.want, strings.Join(brief(c.text, 60, 1, ways), "\n"), c.why)
	}
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`([a-z三]{1,9}(, or|, and|\.|;| \([a-z]{1,5}\)|) ){0,30}[a-z]{1,9}\.`).Draw(t, "text")
		room := rapid.IntRange(30, 80).Draw(t, "room")
		lines := brief(text, room, rapid.IntRange(1, 2).Draw(t, "lines"), ways)
		for _, l := range lines {
			require.LessOrEqual(t, widthOf(l), room)
		}
		said := strings.Join(lines, " ")
		short := strings.Join(strings.Fields(plain(text)), " ")
		if said == strings.Join(strings.Fields(text), " ") || said == short {
			return
		}
		begin, cut := strings.CutSuffix(said, more)
		require.True(t, cut, "what is left out is said to be: %q of %q", said, text)
		require.True(t, strings.HasPrefix(short, begin), "%q of %q", said, text)
		require.Contains(t, ".,; ", short[len(begin):][:1], "at the end of a clause")
	})
}

// A reason may end where it goes on to explain itself, and takes two lines where it is given them.
func TestBriefReason(t *testing.T) {
	const text = "The relief lifts at 49 bar, and the duty is 53 bar: it is open in normal running, so that the plant never comes to its pressure, whatever the throttle does."
	require.Equal(t, []string{"The relief lifts at 49 bar, and the duty is 53 bar (more: --all)"}, brief(text, 66, 1, reasons))
	require.Equal(t, []string{"The relief lifts at 49 bar, and the duty is 53 bar: it is open in", "normal running (more: --all)"}, brief(text, 66, 2, reasons))
}

// Nothing of a short report ends in mid-sentence, in any demo build, and each stands on two screens.
func TestNothingIsCut(t *testing.T) {
	builds, err := filepath.Glob("../../testdata/*/build.toml")
	require.NoError(t, err)
	builds = append(builds, "../../testdata/states/plant.toml") // no end of it is said
	for _, build := range builds {
		lines := printed(t, "check", build)
		require.LessOrEqual(t, len(lines), 2*plainHeight, build)
		for _, l := range lines {
			require.NotContains(t, strings.ReplaceAll(l, "'…'", ""), "…", build)
		}
	}
}
