package makeup

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
	"handtight/threads/internal/table"
)

// testdata/published/makeup.csv holds 233 printed figures of turns, flats, wraps
// and torque, one row a source. Where sources disagree the table keeps the range
// of all of them, so each figure must lie in what Makeup says: that proves that
// none was mistyped, or read for the wrong joint, and no more. What may prove the
// table wrong is makeup_apart.csv (TestMakeupApart), by sources it was not made
// from. Rows that are not held say why in their column not_held.
func TestPublishedMakeup(t *testing.T) {
	held := 0
	for _, r := range endtest.Published(t, "makeup.csv") {
		if r["not_held"] != "" {
			continue
		}
		held++
		m := threads.Mate(endtest.EndOf(t, r["a"]), endtest.EndOf(t, r["b"]))
		mk := Of(&m)
		name := r["a"] + ": " + r["method"] + " (" + r["source"] + ")"
		least, most := printed(r)
		switch r["figure"] {
		case "turns":
			require.True(t, within(mk.TurnsPast, least, most), "%s: %v", name, mk.TurnsPast)
		case "flats":
			require.True(t, within(mk.TurnsPast, least/6, most/6), "%s: %v", name, mk.TurnsPast)
		case "torque":
			require.True(t, within(mk.Torque, least, most), "%s: %v", name, mk.Torque)
			require.NotEmpty(t, mk.TorqueMaterial, name)
		case "wraps":
			rule := makeRuleFor((&joint{Mating: &m}).kind(), m.A.Size, "wraps")
			require.True(t, within(rule.figure, least, most), "%s: %v", name, rule.figure)
			require.True(t, within(rule.figure, float64(mk.Wraps), float64(mk.Wraps)), name)
		case "hand":
			typical, ok := m.TypicalTurns()
			require.True(t, ok, name)
			require.InDelta(t, most, float64(typical), 0.4, name)
		default:
			require.Fail(t, "figure of no sort", name)
		}
		require.NotEmpty(t, mk.Source, name)
	}
	require.Equal(t, 177, held)
}

func printed(r table.Row) (least, most float64) {
	most = r.Number("most")
	if r.Has("least") {
		least = r.Number("least")
	}
	return least, most
}

func within[Q ~float64](r Range[Q], least, most float64) bool {
	const rounding = 0.001
	return r.Known && least >= float64(r.Least)-rounding && most <= float64(r.Most)+rounding
}

// Tape for four wraps without the tail: pi x the major diameter of ISO 7-1 (or of
// the NPT pipe) x 4, and the joints that a roll of 12 m makes with the tail left
// out. Computed; the wraps are those of the page "Thread sealing tips".
func TestTapeLengths(t *testing.T) {
	for _, c := range []struct {
		a, b     string
		mm, roll float64
	}{
		{"R 1/4 male", "Rc 1/4 female", 165, 72},
		{"R 3/8 male", "Rc 3/8 female", 209, 57},
		{"R 1/2 male", "Rc 1/2 female", 263, 45},
		{"R 3/4 male", "Rc 3/4 female", 332, 36},
		{"R 1 male", "Rc 1 female", 418, 28},
		{"NPT 1/2 male", "NPT 1/2 female", 268, 44},
	} {
		t.Run(c.a, func(t *testing.T) {
			m := threads.Mate(endtest.EndOf(t, c.a), endtest.EndOf(t, c.b))
			mk := Of(&m)
			require.Equal(t, 4, mk.Wraps)
			require.InDelta(t, c.mm, float64(mk.Tape-tapeTail), 0.6)
			require.Equal(t, c.roll, math.Floor(12000/float64(mk.Tape-tapeTail)))
		})
	}
}

func TestMakeupLines(t *testing.T) {
	for _, c := range []struct{ why, a, b, line string }{
		{"a taper in its like", "NPT 1/2 male", "NPT 1/2 female", "4 wraps of 12 mm tape (about 290 mm), 1.5 to 3 turns past hand tight"},
		{"BSP taper has its own turns", "R 1/2 male", "Rc 1/2 female", "4 wraps of 12 mm tape (about 280 mm), 2 to 3 turns past hand tight"},
		{"a metal male splits a plastic female", "NPT 1/2 male", "NPT 1/2 female plastic", "2 wraps of 12 mm tape (about 150 mm), 0.25 to 2 turns past hand tight"},
		{"a plastic male is as soft", "R 1/2 male plastic", "Rc 1/2 female", "2 wraps of 12 mm tape (about 150 mm), 0.25 to 2 turns past hand tight"},
		{"dryseal crushes crests", "NPTF 1/4 male", "NPTF 1/4 female", "no tape: a little lubricant, 0.75 to 3 turns past hand tight"},
		{"a large taper takes more tape", "NPT 2 1/2 male", "NPT 2 1/2 female", "8 wraps of 12 mm tape (about 1860 mm), 1 to 2.5 turns past hand tight"},
		{"the seat closes, not the thread", "NPT 3/8 male chamfer", "NPSM 3/8 female swivel", "no tape, up to 54 N m in carbon steel"},
		{"a fixed port takes a bonded washer", "G 1/2 male", "G 1/2 female", "bonded washer G 1/2, no tape, 98 to 118 N m in steel"},
		{"a swivel takes a flat gasket", "G 1/2 male", "G 1/2 female swivel", "flat gasket G 1/2, no tape, up to 0.5 turn past hand tight"},
		{"no torque is known for plastic", "G 1/2 male plastic", "G 1/2 female", "bonded washer G 1/2, no tape"},
		{"a stud with its O-ring", "G 1/4 male o-ring", "G 1/4 female", "O-ring for G 1/4 stud, no tape, 34 to 49 N m in steel"},
		{"a cone takes nothing", "G 3/4 male chamfer", "G 3/4 female swivel cone-60", "no tape, up to 0.25 turns past hand tight (118 N m in steel)"},
		{"a flare by flats", "JIC -6 male", "JIC -6 female swivel", "no tape, 1.5 to 2 flats of the nut past hand tight (20 to 30 N m in steel)"},
		{"a port by flats, since tables differ twofold", "ORB -6 male", "ORB -6 female", "O-ring for -6 O-ring port, no tape, 1.25 to 1.75 flats of the nut past hand tight (22 to 53 N m in steel)"},
		{"a bare stud by the port's dash", "UN 9/16-18 male o-ring", "ORB -6 female", "O-ring for -6 O-ring port, no tape, 1.25 to 1.75 flats of the nut past hand tight (22 to 53 N m in steel)"},
		{"a face seal", "ORFS -8 male", "ORFS -8 female swivel", "O-ring for -8 face seal, no tape, 1.5 to 3 flats of the nut past hand tight (43 to 47 N m in steel)"},
		{"a metric port", "ISO6149 M18x1.5 male", "ISO6149 M18x1.5 female", "O-ring for M18x1.5 O-ring port, no tape, 32 to 40 N m in brass"},
		{"a cutting ring", "24L 12L male", "24L 12L female", "cutting ring 12L, no tape, 1.25 to 1.5 turns past hand tight"},
		{"a garden hose", "NH 3/4 male", "NH 3/4 female", "flat gasket 3/4 NH, no tape, up to 0.5 turn past hand tight"},
		{"a through-hull is bedded", "NPS 1 1/2 male", "NPS 1 1/2 female", "bedding compound"},
		{"what does not close is not made up", "NPT 1/2 male", "Rc 1/2 female", "not to be made up: stop"},
	} {
		t.Run(c.why, func(t *testing.T) {
			m := threads.Mate(endtest.EndOf(t, c.a), endtest.EndOf(t, c.b))
			require.Equal(t, c.line, Of(&m).String())
			w := threads.Mate(endtest.EndOf(t, c.b), endtest.EndOf(t, c.a))
			require.Equal(t, Of(&m), Of(&w), "in either order")
		})
	}
}

func TestMakeupTubes(t *testing.T) {
	tube := func(f threads.Family, sex threads.Sex, mm threads.Length) threads.End {
		return threads.End{Family: f, Sex: sex, Diameter: mm, Size: mm.String()}
	}
	for _, c := range []struct {
		why    string
		a, b   threads.End
		line   string
		clamps int
	}{
		{"one clamp a tail", tube(threads.Barb, threads.NoSex, 19), tube(threads.Bore, threads.NoSex, 19), "1 hose clamp", 1},
		{"a poor fit still takes one", tube(threads.Bore, threads.NoSex, 20), tube(threads.Barb, threads.NoSex, 19), "1 hose clamp", 1},
		{"olives by the tube", tube(threads.Compression, threads.Female, 15), tube(threads.Compression, threads.Male, 15), "olive 15 mm, 1.25 turns past hand tight", 0},
		{"4 mm and down turn less", tube(threads.Compression, threads.Female, 4), tube(threads.Compression, threads.Male, 4), "olive 4 mm, 0.75 turns past hand tight", 0},
		{"a ferrule has its gasket", tube(threads.Ferrule, threads.NoSex, 50.5), tube(threads.Ferrule, threads.NoSex, 50.5), "ferrule gasket 50.5 mm", 0},
		{"push-in takes nothing", tube(threads.Push, threads.Female, 10), tube(threads.Push, threads.Male, 10), "goes home to a stop; pull on it: it must not come out", 0},
	} {
		t.Run(c.why, func(t *testing.T) {
			m := threads.Mate(c.a, c.b)
			mk := Of(&m)
			require.Equal(t, c.line, mk.String())
			require.Equal(t, c.clamps, mk.Clamps)
			require.Zero(t, mk.Wraps)
		})
	}
}

// What must hold of every joint of forms: tape on tapers only, never turned back
// there, and every figure has its source.
func TestMakeupOfEveryForm(t *testing.T) {
	for _, family := range threads.Families() {
		for _, f := range threads.Forms(family) {
			male, female := threads.Threaded(f, threads.Male), threads.Threaded(f, threads.Female)
			if family.Facts().Only != threads.NoSex {
				continue
			}
			m := threads.Mate(male, female)
			if !m.Verdict.Holds() {
				require.Contains(t, []threads.Family{threads.UN, threads.BSF, threads.PG}, family, f.Designation)
				continue
			}
			mk := Of(&m)
			tapered := family.Facts().Tapered
			require.Equal(t, tapered && family != threads.NPTF, mk.Wraps > 0, f.Designation)
			require.Equal(t, mk.Wraps > 0, mk.Tape > tapeTail, f.Designation)
			require.False(t, tapered && mk.TurnBack, f.Designation)
			require.Equal(t, tapered, strings.Contains(mk.Feel, "by hand about"), "%s: %s", f.Designation, mk.Feel)
			require.NotEmpty(t, mk.Hold, f.Designation)
			require.NotEmpty(t, mk.Source, f.Designation)
			require.LessOrEqual(t, mk.TurnsPast.Least, mk.TurnsPast.Most, f.Designation)
			require.LessOrEqual(t, mk.Torque.Least, mk.Torque.Most, f.Designation)
		}
	}
}

func TestMakeupFeel(t *testing.T) {
	m := threads.Mate(endtest.EndOf(t, "NPT 1/2 male"), endtest.EndOf(t, "NPT 1/2 female"))
	require.Equal(t, "by hand about 4 turns (2 to 6 as parts vary); hard after less than 2: not this thread, stop", Of(&m).Feel)
	m = threads.Mate(endtest.EndOf(t, "G 1/2 male"), endtest.EndOf(t, "G 1/2 female"))
	require.Contains(t, Of(&m).Feel, "hard after about 2 turns")
}
