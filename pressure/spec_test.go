package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestHoseSpec(t *testing.T) {
	for _, c := range []struct {
		why, text string
		want      Spec
	}{
		{"in full", "SAE 100R8", "100R8"},
		{"without SAE", "100R8", "100R8"},
		{"any case", "sae 100r8", "100R8"},
		{"run together", "SAE100R8", "100R8"},
		{"with gaps", "100 R 8", "100R8"},
		{"with hyphens", "SAE-100-R8", "100R8"},
		{"short, since no pipe thread is R 8", "R8", "100R8"},
		{"short, its bore behind it", "hose R8 3/8, 900 mm", "100R8"},
		{"thin cover", "100R1AT", "1SN"},
		{"old thick cover", "100R2A", "2SN"},
		{"European", "EN 853 2SN", "2SN"},
		{"German", "DIN EN 857 2SC", "2SC"},
		{"the type alone", "2SN", "2SN"},
		{"lower case", "1sn", "1SN"},
		{"skived, with its standard", "EN 853 1ST", "1SN"},
		{"thermoplastic by the European number", "EN 855 R7", "100R7"},
		{"both numbers of one hose", "100R1AT/1SN", "1SN"},
		{"PTFE", "100R14 PTFE", "100R14"},
		{"textile", "EN 854 2TE", "2TE"},
		{"EN 854 R6 is 100R6", "EN 854 R6", "100R6"},
		{"R1 where only hose is spoken of", "SAE R1 hose", "1SN"},
		{"sold to two standards", "EN 857 2SC / SAE 100R16", "2SC+100R16"},
		{"in the order of the table, however written", "100R17, 1SC", "1SC+100R17"},
		{"within a shop's line", "Hydraulic hose 3/8 in SAE 100R2AT per metre", "2SN"},
		{"spiral", "EN 856 4SP", "4SP"},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, ok := HoseSpec(c.text)
			require.True(t, ok)
			require.Equal(t, c.want, got)
			require.NotEmpty(t, got.String())
			require.NotEmpty(t, got.Construction())
		})
	}
}

func TestHoseSpecUnknown(t *testing.T) {
	for _, c := range []struct{ why, text string }{
		{"nothing", ""},
		{"a suction hose without a standard", "suction hose, wire helix"},
		{"a taper thread", "R1/2 male"},
		{"a taper thread of one inch", "hose tail R1 male"},
		{"a taper thread with a gap", "R 1 1/4"},
		{"a taper thread run together", "R11/4 male"},
		{"a number in a row", "1st hose"},
		{"a standard of which there are no figures", "100R9"},
		{"no such number", "100R77"},
	} {
		t.Run(c.why, func(t *testing.T) {
			_, ok := HoseSpec(c.text)
			require.False(t, ok)
		})
	}
}

func TestEveryKnownSpecIsReadFromItsName(t *testing.T) {
	for _, s := range KnownSpecs() {
		got, ok := HoseSpec(string(s))
		require.True(t, ok, "%s", s)
		require.Equal(t, s, got)
		got, ok = HoseSpec(s.String())
		require.True(t, ok, "%s", s)
		require.Equal(t, s, got, "the title reads back")
	}
}

func TestNearestSpec(t *testing.T) {
	for _, c := range []struct {
		why, text string
		want      Spec
	}{
		{"one figure too many", "SAE 100R88", "100R8"},
		{"letters swapped", "2NS", "2SN"},
		{"a slip in the European name", "EN 853 2SM", "2SN"},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, ok := NearestSpec(c.text)
			require.True(t, ok)
			require.Equal(t, c.want, got)
		})
	}
	_, ok := NearestSpec("garden hose")
	require.False(t, ok)
}

func FuzzHoseSpec(f *testing.F) {
	for _, s := range []string{"SAE 100R8", "R1/2", "EN 857 2SC / 100R16", "1st", "\xff100R", "r99"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		s, ok := HoseSpec(text)
		require.Equal(t, ok, s != "")
		again, _ := HoseSpec(text)
		require.Equal(t, s, again)
		_, rated := HoseRating(s, 9.525)
		require.True(t, ok || !rated)
	})
}
