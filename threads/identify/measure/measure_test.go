package measure

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/identify"
)

// Who measures on a boat writes as he speaks. Written down before any was read.
func TestCountsOfThreads(t *testing.T) {
	for _, c := range []struct {
		text  string
		tpi   float64
		rough bool
	}{
		{"14", 14, false}, {"14 tpi", 14, false}, {"11.5", 11.5, false}, {"11,5", 11.5, false}, {"11 1/2", 11.5, false}, {"11½", 11.5, false},
		{"19 threads per inch", 19, false}, {"14 or so", 14, true}, {"about 14", 14, true}, {"~14", 14, true}, {"14?", 14, true}, {"circa 19", 19, true},
		{"13 to 14", 13.5, true}, {"13-14", 13.5, true}, {"5", 5, false}, {"27 threads", 27, false},
	} {
		var m identify.Measured
		require.NoError(t, Count(&m, c.text), c.text)
		require.True(t, m.Pitch.Known, c.text)
		require.InDelta(t, 25.4/c.tpi, m.Pitch.Value, 1e-9, c.text)
		require.Equal(t, c.rough, m.Pitch.Rough, c.text)
	}
	for text, says := range map[string]string{
		"":             "write 19, 11.5 or '14 or so'",
		"many":         "write 19, 11.5 or '14 or so'",
		"0":            "write 19, 11.5 or '14 or so'",
		"-14":          "write 19, 11.5 or '14 or so'",
		"1000":         "write 19, 11.5 or '14 or so'",
		"1.5":          "if it is a pitch, write it with its unit, such as '1.5 mm'",
		"4.9":          "coarser than any pipe or port thread",
		"fine to many": "write 19, 11.5 or '14 or so'",
	} {
		var m identify.Measured
		require.ErrorContains(t, Count(&m, text), says, text)
		require.False(t, m.Pitch.Known, "nothing is half read: %s", text)
	}
}

func TestTurnsByHand(t *testing.T) {
	for _, c := range []struct {
		text  string
		turns threads.Turns
		face  bool
	}{
		{"5", 5, false}, {"2.5", 2.5, false}, {"2 1/2", 2.5, false}, {"3 turns", 3, false}, {"1 turn", 1, false}, {"about 3", 3, false}, {"about 3 turns", 3, false}, {"0", 0, false},
		{"all the way", 0, true}, {"All the way in", 0, true}, {"to the face", 0, true}, {"to its face", 0, true}, {"home", 0, true},
	} {
		var in identify.Turned
		require.NoError(t, Turns(&in, c.text), c.text)
		require.Equal(t, identify.Turned{Turns: c.turns, Face: c.face, Known: true}, in, c.text)
	}
	for _, text := range []string{"", "a few", "-1", "turns", "all the way out"} {
		var in identify.Turned
		require.ErrorContains(t, Turns(&in, text), "write 5, 2.5, 'about 3' or 'all the way'", text)
		require.False(t, in.Known, text)
	}
}

func TestAnswersOfTheEye(t *testing.T) {
	for text, want := range map[string]identify.Answer{"yes": identify.Yes, " Y ": identify.Yes, "NO": identify.No, "n": identify.No, "unknown": 0} {
		got := identify.Yes
		require.NoError(t, Yes(&got, text), text)
		require.Equal(t, want, got, text)
	}
	got := identify.Yes
	require.EqualError(t, Yes(&got, "maybe"), `"maybe" is no answer: write yes, no or unknown`)
	require.Equal(t, identify.Yes, got, "what is not understood changes nothing")
}

// A diameter without its unit is no figure: 13 may be millimetres or a count.
func TestDiameters(t *testing.T) {
	for text, mm := range map[string]float64{"20.9 mm": 20.9, "about 20.9 mm": 20.9, "0.825 in": 20.955, "2.09 cm": 20.9} {
		var m identify.Measured
		require.NoError(t, Diameter(&m, threads.Female, text), text)
		require.InDelta(t, mm, m.Diameter.Value, 1e-9, text)
		require.Equal(t, threads.Female, m.Sex, text)
	}
	for _, text := range []string{"20.9", "", "wide", "-3 mm"} {
		var m identify.Measured
		require.Error(t, Diameter(&m, threads.Male, text), text)
		require.Equal(t, identify.Measured{}, m, "nothing is half read: %s", text)
	}
}

func TestPitches(t *testing.T) {
	for text, rough := range map[string]bool{"1.5 mm": false, "about 1.5 mm": true, "1.5 mm?": true} {
		var m identify.Measured
		require.NoError(t, Pitch(&m, text), text)
		require.Equal(t, identify.Gauged{Value: 1.5, Rough: rough, Known: true}, m.Pitch, text)
	}
	var m identify.Measured
	require.Error(t, Pitch(&m, "1.5"))
	require.False(t, m.Pitch.Known)
}
