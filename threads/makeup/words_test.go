package makeup

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

// What the hand meets where a nut runs free to a face, and where cones or a ring meet (common
// practice): turns on the thread say nothing there.
func TestFeelByTheSortOfJoint(t *testing.T) {
	for _, row := range []struct {
		why, a, b, feel, hold string
		back                  bool
	}{
		{"a seat", "NPT 3/8 male chamfer", "NPSM 3/8 female swivel", "spins by hand down to its face or seat", "the body; turn the nut", true},
		{"a cone", "G 3/4 male chamfer", "G 3/4 female swivel cone-60", "spins by hand down to its face or seat", "the body; turn the nut", true},
		{"a flat gasket in a nut", "G 1/2 male", "G 1/2 female swivel", "spins by hand down to its face or seat", "the body; turn the nut", true},
		{"a garden hose", "NH 3/4 male", "NH 3/4 female", "spins by hand down to its face or seat", "the body; turn the nut", true},
		{"a cutting ring", "24L 12L male", "24L 12L female", "the nut spins by hand to the ring", "the body; turn the nut", true},
		{"a cone with an O-ring", "24L 12L male", "24L 12L female swivel cone-o-ring", "the nut spins by hand until the cones meet", "the body; turn the nut", true},
		{"a nipple's cone", "24L 12L male", "24L 12L female swivel cone-24", "the nut spins by hand until the cones meet", "the body; turn the nut", true},
		{"a taper", "NPT 1/2 male", "NPT 1/2 female", "by hand about 4 turns", "the part that is fixed already; turn the other", false},
		{"a fixed port", "G 1/2 male", "G 1/2 female", "spins by hand down to its face", "the part that is fixed already; turn the other", false},
	} {
		for _, pair := range [][2]string{{row.a, row.b}, {row.b, row.a}} {
			m := threads.Mate(endtest.EndOf(t, pair[0]), endtest.EndOf(t, pair[1]))
			mk := Of(&m)
			require.Contains(t, mk.Feel, row.feel, row.why)
			require.Equal(t, row.hold, mk.Hold, row.why)
			require.Equal(t, row.back, mk.TurnBack, row.why)
		}
	}
}

// The nose of a pressure washer's coupling runs to its O-ring, like every face.
func TestNoseCoupling(t *testing.T) {
	nut, body := endtest.EndOf(t, "M M22x1.5 female swivel nose-o-ring"), endtest.EndOf(t, "M M22x1.5 male")
	nut.Nose, body.Seal, body.Nose = 14, threads.NoseRing, 14
	m := threads.Mate(body, nut)
	mk := Of(&m)
	require.Contains(t, mk.ORing, "14 mm nose M22x1.5")
	require.Contains(t, mk.Feel, "spins by hand down to its face")
}

// Two left-hand threads tighten the other way, and the card says so twice; one right-hand
// thread of the two never gets so far.
func TestLeftHandThreadsTurnTheOtherWay(t *testing.T) {
	a, b := endtest.EndOf(t, "G 1/2 male"), endtest.EndOf(t, "G 1/2 female")
	a.Left, b.Left = true, true
	m := threads.Mate(a, b)
	mk := Of(&m)
	require.True(t, mk.Left)
	require.Contains(t, mk.Hold, "anticlockwise: the thread is left hand")
	require.Contains(t, mk.String(), "left hand: turns anticlockwise")
	b.Left = false
	m = threads.Mate(a, b)
	require.Equal(t, "not to be made up: stop", Of(&m).String())
	a.Left = false
	m = threads.Mate(a, b)
	require.False(t, Of(&m).Left)
	require.NotContains(t, Of(&m).String(), "left hand")
}

// Washers and rings as they are asked for at a counter.
func TestWhatToAskForAtTheCounter(t *testing.T) {
	for _, row := range []struct{ a, b, washer, oring, ring string }{
		{"G 3/8 male", "G 3/8 female", "bonded washer G 3/8", "", ""},
		{"M M22x1.5 male", "M M22x1.5 female", "bonded washer M22x1.5", "", ""},
		{"G 1/4 male o-ring", "G 1/4 female", "", "O-ring for G 1/4 stud", ""},
		{"G 3/4 male", "G 3/4 female swivel", "flat gasket G 3/4", "", ""},
		{"ORFS -6 male", "ORFS -6 female", "", "O-ring for -6 face seal", ""},
		{"ORB -8 male", "ORB -8 female", "", "O-ring for -8 O-ring port", ""},
		{"24S 12S male", "24S 12S female", "", "", "cutting ring 12S"},
		{"24L 15L male", "24L 15L female swivel cone-o-ring", "", "O-ring for 15L cone", ""},
		{"NPT 1/4 male", "NPT 1/4 female", "", "", ""},
	} {
		m := threads.Mate(endtest.EndOf(t, row.a), endtest.EndOf(t, row.b))
		mk := Of(&m)
		require.Equal(t, []string{row.washer, row.oring, row.ring}, []string{mk.Washer, mk.ORing, mk.Ring}, row.a)
	}
}

// A tube in a cutting-ring body takes the ring of the body, whichever end is named first; a
// plastic tube under an olive takes an insert (common practice), a metal one none.
func TestTubesInRings(t *testing.T) {
	body, tube := endtest.EndOf(t, "24L 12L male"), threads.End{Family: threads.Push, Sex: threads.Male, Size: "12 mm", Diameter: 12}
	for _, m := range []threads.Mating{threads.Mate(body, tube), threads.Mate(tube, body)} {
		require.Equal(t, "cutting ring 12L", Of(&m).Ring)
	}
	socket := threads.End{Family: threads.Compression, Sex: threads.Female, Size: "10 mm", Diameter: 10}
	soft := threads.End{Family: threads.Compression, Sex: threads.Male, Size: "10 mm", Diameter: 10, Plastic: true}
	hard := soft
	hard.Plastic = false
	molded := socket
	molded.Plastic = true
	for _, row := range []struct {
		why  string
		a, b threads.End
		want string
	}{
		{"a plastic tube", socket, soft, "insert 10 mm"}, {"a metal tube", socket, hard, ""}, {"a metal tube in a plastic fitting", molded, hard, ""}, {"both of plastic", molded, soft, "insert 10 mm"},
	} {
		for _, m := range []threads.Mating{threads.Mate(row.a, row.b), threads.Mate(row.b, row.a)} {
			require.Equal(t, row.want, Of(&m).Insert, row.why)
			require.Equal(t, "olive 10 mm", Of(&m).Ring, row.why)
		}
	}
}

// The olives of small tubes turn less: the table's rows are of 4 mm and of 6 mm and more, and
// what lies between counts as large from 5 mm on (a judgement).
func TestOlivesOfSmallTubes(t *testing.T) {
	for mm, turns := range map[threads.Length]threads.Turns{3: 0.75, 4: 0.75, 4.9: 0.75, 5: 1.25, 6: 1.25, 15: 1.25} {
		m := threads.Mate(threads.End{Family: threads.Compression, Sex: threads.Female, Size: mm.String(), Diameter: mm}, threads.End{Family: threads.Compression, Sex: threads.Male, Size: mm.String(), Diameter: mm})
		require.Equal(t, turns, Of(&m).TurnsPast.Most, mm)
	}
}

// Half a turn and less is said in flats of a nut, which has six; one turn in the singular.
func TestTurnsInWords(t *testing.T) {
	for want, r := range map[string]Range[threads.Turns]{
		"1.5 to 3 flats of the nut past hand tight": {0.25, 0.5, true},
		"2 flats of the nut past hand tight":        {1.0 / 3, 1.0 / 3, true},
		"up to 0.5 turn past hand tight":            {0, 0.5, true},
		"up to 0.25 turns past hand tight":          {0, 0.25, true},
		"up to 1 turn past hand tight":              {0, 1, true},
		"0.75 to 1 turn past hand tight":            {0.75, 1, true},
		"1.5 to 3 turns past hand tight":            {1.5, 3, true},
		"2 turns past hand tight":                   {2, 2, true},
	} {
		require.Equal(t, want, turnsPast(r))
	}
}
