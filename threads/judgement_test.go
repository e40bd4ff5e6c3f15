package threads

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// A coarser external tooth is wider than the groove by half the difference of the
// pitches, and the clearance on diameter gives it play by the tangent of the half
// angle: pitches 1.6 and 1.5 of 60 degrees want (0.8 - 0.75) / tan 30 = 0.0866 mm.
// With less, its run-in catches before one whole tooth (0.338 mm at the crest) is in;
// with more the tooth goes in. The other way round it is the female's tooth that is wider
// than the male's groove, by as much.
func TestCoarserToothInFinerGroove(t *testing.T) {
	thread := func(pitch, dia float64) profile {
		return profile{pitch: pitch, tan: halfTan(60), dia: dia, crest: 0.4, root: 0.5, flankC: 0.4, flankR: 0.5}
	}
	wants := (0.8 - 0.75) / math.Tan(math.Pi/6)
	tooth := 1.6/2 - 2*0.4*math.Tan(math.Pi/6)
	for _, c := range []struct {
		why            string
		outside, inner float64
		clearance      float64
		enters         bool
	}{
		{"coarser, with less play than it wants", 1.6, 1.5, wants - 0.005, false},
		{"coarser, with a little more", 1.6, 1.5, wants + 0.005, true},
		{"finer, with less play than the coarser female's tooth wants", 1.5, 1.6, wants - 0.005, false},
		{"finer, with a little more", 1.5, 1.6, wants + 0.005, true},
	} {
		t.Run(c.why, func(t *testing.T) {
			e, i := thread(c.outside, 20-c.clearance), thread(c.inner, 20)
			depth := flankDepth(e, i, c.clearance, 0)
			require.Equal(t, c.enters, depth > tooth, "%g mm", depth)
		})
	}
}

// Two fifths of the thread's height is where a joint counts as pulling out (a
// judgement), and a tenth of a turn more or less than half is where it starts.
// Pairs of the tables on either side, so that no figure of the judgement moves unseen:
// the engaged height is reckoned here from the printed diameters.
func TestJudgementsAtTheirEdges(t *testing.T) {
	for _, c := range []struct {
		why, a, b string
		verdict   Verdict
		engaged   [2]float64
	}{
		{"a third of the height", "UN 7/16-20 male", "M M12x1.5 female", Loose, [2]float64{0.30, 0.36}},
		{"a taper in a parallel thread: its seven turns are all that go in, though the nut has more", "R 1/2 male", "UN 7/8-14 female", Loose, [2]float64{0.385, 0.40}},
		{"36 percent", "G 3/8 male", "ORFS -6 female", Loose, [2]float64{0.34, 0.38}},
		{"just over two fifths: it holds until its pitch binds", "ORFS -4 male", "M M15x1.5 female", Binds, [2]float64{0.40, 0.43}},
		{"nearly half", "M M12x1.5 male", "Rc 1/4 female", Binds, [2]float64{0.45, 0.5}},
	} {
		t.Run(c.why, func(t *testing.T) {
			m := Mate(endOf(t, c.a), endOf(t, c.b))
			require.Equal(t, c.verdict, m.Verdict, "%s, %.3f", m.Reason(), m.Depth)
			require.GreaterOrEqual(t, m.Depth, c.engaged[0])
			require.LessOrEqual(t, m.Depth, c.engaged[1])
			male, female := m.Male(), m.Female()
			if male.Form.Taper == 0 && female.Form.Taper == 0 {
				overlap := float64(male.Form.CrestAt(Male, 0).Middle()-female.Form.CrestAt(Female, 0).Middle()) / 2
				lower := math.Min(float64(male.Form.Height()), float64(female.Form.Height()))
				require.InDelta(t, overlap/lower, m.Depth, 0.01)
			}
		})
	}
}

// A crest that the tolerance takes off takes its flank along: at both ends of the tolerances and
// half way between, no flank is drawn above the crest or below the root.
func TestNoFlankBeyondTheCrest(t *testing.T) {
	for _, family := range Families() {
		for _, f := range Forms(family) {
			at := map[string]profile{
				"tight male": f.external(f.outside.tight), "loose male": f.external(f.outside.loose),
				"tight female": f.internal(f.inside.tight), "loose female": f.internal(f.inside.loose),
			}
			at["middling male"] = middle(at["tight male"], at["loose male"])
			at["middling female"] = middle(at["tight female"], at["loose female"])
			for name, p := range at {
				require.LessOrEqual(t, p.flankC, p.crest+1e-12, "%s, %s", f.Designation, name)
				require.LessOrEqual(t, p.flankR, p.root+1e-12, "%s, %s", f.Designation, name)
			}
		}
	}
}

// Two fifths of a turn at the loosest parts are no start by hand, six tenths are.
func TestStartAtItsEdge(t *testing.T) {
	m := Mate(endOf(t, "NPS 1/4 male"), endOf(t, "M M14x2 female"))
	require.InDelta(t, 0.42, float64(m.Hand.Loosest), 0.02)
	require.Equal(t, WillNotStart, m.Verdict)
	m = Mate(endOf(t, "M M10x1.5 male"), endOf(t, "M M10x1.25 female"))
	require.Greater(t, m.Hand.Loosest, Turns(0.5))
	require.Equal(t, Binds, m.Verdict)
}

// Alike are threads of one pitch and angle whose pitch diameters differ by less than an
// eighth of the pitch: NPT and NPSM are; 1/2 NPT and G 1/2 are not, for their angle;
// M20x1.5 and M20.5 would not be, for their diameter.
func TestAlikeAtItsEdge(t *testing.T) {
	npt, _ := Find(NPT, "1/2")
	near, far := *npt, *npt
	near.PitchDia += Length(0.11) * npt.Pitch
	far.PitchDia += Length(0.13) * npt.Pitch
	require.True(t, Alike(npt, &near))
	require.False(t, Alike(npt, &far))
	g, _ := Find(G, "1/2")
	require.False(t, Alike(npt, g))
	npsm, _ := Find(NPSM, "1/2")
	require.True(t, Alike(npt, npsm))
}

// A left-hand thread never enters a right-hand one, whatever else is alike; two of one
// hand are judged as two right-hand ones. Sex is looked at first.
func TestHands(t *testing.T) {
	for _, c := range []struct{ a, b string }{{"G 1/2 male", "G 1/2 female"}, {"NPT 3/4 male", "NPT 3/4 female"}, {"M M22x1.5 male", "M M22x1.5 female"}, {"NH 3/4 male", "NH 3/4 female"}} {
		a, b := endOf(t, c.a), endOf(t, c.b)
		right := Mate(a, b)
		a.Left = true
		for _, m := range []Mating{Mate(a, b), Mate(b, a)} {
			require.Equal(t, WillNotStart, m.Verdict)
			require.Contains(t, m.Reason(), "left-hand")
			require.Contains(t, m.Reason(), "LH")
			require.Contains(t, m.Remedy(), "left hand")
			require.Equal(t, "hands-differ", m.Slug())
			require.Empty(t, m.Makes())
		}
		b.Left = true
		left := Mate(a, b)
		require.Equal(t, right.Verdict, left.Verdict)
		require.Contains(t, a.String(), " LH ")
		b.Sex = Male
		require.Equal(t, SameSex, func() Verdict { m := Mate(a, b); return m.Verdict }())
	}
}

// Ferrules go by their flange (sizes as printed on a page of hygienic clamp fittings:
// 1.988 in for 1 and 1 1/2 inch, 2.519 in for 2).
func TestFlanges(t *testing.T) {
	for _, size := range []string{"1 in", "1 1/2 in", "DN 25", "DN 40", "38 mm"} {
		flange, ok := FlangeOf(size)
		require.True(t, ok, size)
		require.InDelta(t, 1.988*25.4, float64(flange), 0.05, size)
	}
	two, ok := FlangeOf("2 in")
	require.True(t, ok)
	require.InDelta(t, 2.519*25.4, float64(two), 0.05)
	_, ok = FlangeOf("7 in")
	require.False(t, ok)
	step := Mate(End{Family: Ferrule, Size: "1 in", Diameter: 25.4}, End{Family: Ferrule, Size: "1 1/2 in", Diameter: 38.1})
	require.Equal(t, SealsWith, step.Verdict)
	require.Contains(t, step.Reason(), "a step in the bore")
	off := Mate(End{Family: Ferrule, Size: "2 in", Diameter: 50.8}, End{Family: Ferrule, Size: "1 1/2 in", Diameter: 38.1})
	require.Equal(t, "flanges-differ", off.Slug())
	require.Contains(t, off.Remedy(), "one flange")
}

// A tube in the cone of a 24 degree body takes a ring, of its own size only.
func TestTubeInCone(t *testing.T) {
	body := endOf(t, "24L 12L male")
	tube := func(mm Length) End {
		return End{Family: Push, Sex: Male, Size: mm.String(), Diameter: mm}
	}
	for _, c := range []struct {
		mm      Length
		verdict Verdict
		slug    string
	}{{12, Seals, ""}, {15, WillNotStart, "barb-and-bore-differ"}, {10, Leaks, "barb-and-bore-differ"}, {0, Leaks, "nothing-seals"}} {
		m, w := Mate(tube(c.mm), body), Mate(body, tube(c.mm))
		require.Equal(t, c.verdict, m.Verdict, c.mm)
		require.Equal(t, m.Verdict, w.Verdict)
		require.Equal(t, m.Makes(), w.Makes())
		require.Equal(t, c.slug, m.Slug())
		require.NotEmpty(t, m.Reason())
		require.NotEmpty(t, m.Remedy())
	}
	m := Mate(tube(12), body)
	require.Equal(t, "ring", m.Makes())
	require.Equal(t, "the cutting ring on the tube", m.Closes())
	nut := body
	nut.Sex = Female
	m = Mate(tube(12), nut)
	require.Equal(t, WillNotStart, m.Verdict, "a nut alone takes no tube")
}

// A conduit thread is never a pipe joint, whatever its diameter.
func TestConduit(t *testing.T) {
	for _, c := range []struct{ a, b string }{{"PG PG13.5 male", "G 1/2 female"}, {"PG PG16 male", "NPT 1/2 female"}, {"G 1/2 male", "PG PG13.5 female"}, {"M M20x1.5 male", "PG PG13.5 female"}} {
		m := Mate(endOf(t, c.a), endOf(t, c.b))
		require.Equal(t, "ends-of-different-sorts", m.Slug(), c)
		require.False(t, m.Verdict.Holds())
	}
	m := Mate(endOf(t, "PG PG16 male"), endOf(t, "PG PG16 female"))
	require.Equal(t, Leaks, m.Verdict)
	require.Contains(t, m.Reason(), "cable glands")
}

// Where the straight flanks of two parallel threads just pass each other, their rounded tips
// still meet: a hair of clearance more moves the contact by a hair, and does not set the
// thread free. That comes where the crests no longer reach past each other.
func TestRoundedTipsOfParallelsStillMeet(t *testing.T) {
	for _, pair := range [][2]string{{"M39x2", "1 1/4"}, {"M15x1.5", "3/8"}, {"M35x1.5", "1 1/8"}} {
		outside, ok := Find(M, pair[0])
		require.True(t, ok, pair[0])
		inside, ok := Find(G, pair[1])
		require.True(t, ok, pair[1])
		e, i := outside.external(outside.outside.tight), inside.internal(inside.inside.tight)
		tips, straights := 2*(e.crest+i.crest), 2*(e.flankC+i.flankC)
		before, after := flankDepth(e, i, straights-1e-9, 0), flankDepth(e, i, straights+1e-9, 0)
		require.Greater(t, before, 0.0, "%v", pair)
		require.InDelta(t, before, after, 0.01*before, "%v", pair)
		last := after
		for share := 0.1; share < 1; share += 0.1 {
			depth := flankDepth(e, i, straights+share*(tips-straights), 0)
			require.Greater(t, depth, last, "more clearance, more turns: %v", pair)
			last = depth
		}
		require.True(t, math.IsInf(flankDepth(e, i, tips+1e-9, 0), 1), "%v", pair)
	}
}

// M39x2 in G 1 1/4, the tightest of both, drawn by hand. The male's crest stands at 38.962
// (ISO 965-2, 6g) and is an eighth of its pitch wide; the female's stands at 38.952 (ISO 228-1)
// and is an arc of 0.1373 of its pitch (ISO 228-1 clause 3, Whitworth form). They overlap by
// 0.005 mm, where the arc is 2 sqrt(2 x 0.317 x 0.005) = 0.113 wide. So of each turn the two
// fill 0.25/2 + 0.113/2.309, and the rest is used up by 1/2 - 1/2.309 of a turn a millimetre.
// The straight flanks, drawn on to a point that is not there, would say 4.7 turns.
func TestTipsDrawnByHand(t *testing.T) {
	pitch := 25.4 / 11
	male, _ := Find(M, "M39x2")
	female, _ := Find(G, "1 1/4")
	overlap := (38.962 - 38.952) / 2
	arc := 2 * math.Sqrt(2*whitworthRadius*pitch*overlap)
	depth := (1 - 0.25/2 - arc/pitch) / (1.0/2 - 1/pitch)
	turns := depth / ((2 + pitch) / 2)
	require.InDelta(t, 5.8, turns, 0.1)
	got := meet(male.external(male.outside.tight), female.internal(female.inside.tight)).turns()
	require.InDelta(t, turns, got, 0.1)
}
