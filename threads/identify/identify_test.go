package identify

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

func perInch(v float64) Gauged { return Gauge(25.4 / v) }

func about(g Gauged) Gauged { g.Rough = true; return g }

func identify(t testing.TB, m Measured) Identification {
	t.Helper()
	id, err := Identify(m)
	require.NoError(t, err)
	return id
}

func firstNames(list []Candidate, n int) []string {
	var out []string
	for _, c := range list[:min(n, len(list))] {
		out = append(out, c.Form.Designation)
	}
	return out
}

// Figures met in practice, and what a fitter makes of them. Diameters are those
// of ISO 228-1, ISO 7-1, ASME B1.20.1 and ISO 965 parts, read by a calliper.
func TestIdentify(t *testing.T) {
	for _, c := range []struct {
		why  string
		m    Measured
		want []string // in this order, first
		next Ask
	}{
		{"the three half inch pipe threads overlap at 20.9 mm", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14)},
			[]string{"G 1/2", "R 1/2", "1/2-14 NPT"}, AskTaper},
		{"a taper takes the parallels out", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14), Taper: Tapered},
			[]string{"R 1/2", "1/2-14 NPT"}, AskFlank},
		{"55 degrees then leave one", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14), Taper: Tapered, Flank: Gauge(55)},
			[]string{"R 1/2"}, 0},
		{"in America it is NPT", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14), Country: "US"},
			[]string{"1/2-14 NPT"}, AskTaper},
		{"in New Zealand it is BSP", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14), Country: "New Zealand"},
			[]string{"G 1/2", "R 1/2"}, AskTaper},
		{"19 threads an inch are British only", Measured{Sex: threads.Male, Diameter: Gauge(13.1), Pitch: perInch(19)},
			[]string{"G 1/4", "R 1/4"}, AskTaper},
		{"without a pitch the taper splits as well as the gauge, and is easier", Measured{Sex: threads.Male, Diameter: Gauge(13.1)},
			[]string{"G 1/4", "R 1/4", "1/4-18 NPT"}, AskTaper},
		{"a rough count is asked for again", Measured{Sex: threads.Male, Diameter: Gauge(26.9), Pitch: about(perInch(12))},
			[]string{"3/4-11.5 NH", "1-1/16-12 JIC -12", "1-1/16-12 ORB -12"}, AskPitch},
		{"one thread of four systems: the nose tells", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18)},
			[]string{"9/16-18 JIC -6", "9/16-18 ORB -6", "9/16-18 ORFS -4", "9/16-18 UN"}, AskNose},
		{"a 37 degree cone", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18), Nose: NoseCone37}, []string{"9/16-18 JIC -6"}, 0},
		{"a ring in the face", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18), Nose: FaceRing}, []string{"9/16-18 ORFS -4"}, 0},
		{"a ring behind the thread", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18), Nose: StudRing}, []string{"9/16-18 ORB -6"}, 0},
		{"3/4-16 with a 45 degree cone", Measured{Sex: threads.Male, Diameter: Gauge(18.95), Pitch: perInch(16), Nose: NoseCone45}, []string{"3/4-16 SAE45 -8"}, 0},
		{"a 24 degree cone leaves light or heavy", Measured{Sex: threads.Male, Diameter: Gauge(21.9), Pitch: Gauge(1.5), Nose: NoseCone24},
			[]string{"15L M22x1.5", "14S M22x1.5"}, 0},
		{"the size of a cone fitting that is one only", Measured{Sex: threads.Male, Diameter: Gauge(25.9), Pitch: Gauge(1.5), Nose: NoseCone24},
			[]string{"18L M26x1.5"}, 0},
		{"a garden hose nipple", Measured{Sex: threads.Male, Diameter: Gauge(26.8), Pitch: perInch(11.5)}, []string{"3/4-11.5 NH"}, AskNose},
		{"a female of 11.6 mm and 19 threads an inch", Measured{Sex: threads.Female, Diameter: Gauge(11.6), Pitch: perInch(19)}, []string{"G 1/4"}, AskNose},
		{"nothing known: the calliper first", Measured{}, nil, AskDiameter},
	} {
		t.Run(c.why, func(t *testing.T) {
			id := identify(t, c.m)
			require.False(t, id.NothingFits(), "none %.3f", id.None)
			require.Equal(t, c.want, firstNames(id.Candidates, len(c.want)), "all: %v", id.Candidates)
			require.Equal(t, c.next, id.Next.Ask, id.Next.Text)
			require.NotEmpty(t, id.Next.Text)
		})
	}
}

func TestIdentifyWords(t *testing.T) {
	for _, c := range []struct {
		why       string
		m         Measured
		text, say string
	}{
		{"the leaves to try", Measured{Sex: threads.Male, Diameter: Gauge(13.1)}.Cannot(AskTaper), "19 or 18 threads an inch?", "G 1/4"},
		{"inch and metric leaves", Measured{Sex: threads.Male, Diameter: Gauge(26.9), Pitch: about(perInch(12))}, "12, 11.5 threads an inch or 2 mm?", "NH"},
		{"what the taper tells apart", Measured{Sex: threads.Male, Diameter: Gauge(13.1), Pitch: perInch(19)}, "does it taper", "it tells G 1/4 from R 1/4 and 1/4-18 NPT"},
		{"the noses of four systems", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18)}, "a 37 degree cone (74 across)", "ORB -6"},
		{"the seat of a female", Measured{Sex: threads.Female, Diameter: Gauge(12.9), Pitch: perInch(18)}, "a chamfer at the mouth for an O-ring", "JIC -6"},
		{"found", Measured{Sex: threads.Male, Diameter: Gauge(13.1), Pitch: perInch(19), Taper: NoTaper}, "Nothing more need be measured: it is G 1/4.", ""},
		{"one thread of two tube sizes", Measured{Sex: threads.Male, Diameter: Gauge(21.9), Pitch: Gauge(1.5), Nose: NoseCone24},
			"the tube that it takes: 15 mm (15L M22x1.5) or 14 mm (14S M22x1.5)?", "15L M22x1.5 and 14S M22x1.5 share one thread"},
		{"one thread of two standards", Measured{Sex: threads.Male, Diameter: Gauge(20.8), Pitch: perInch(14), Taper: NoTaper, Flank: Gauge(60), Nose: PlainNose},
			"No measurement settles it", "share these figures"},
		{"no such thread", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(32)}, "No thread in the tables fits", "the nearest is G 1/2"},
	} {
		t.Run(c.why, func(t *testing.T) {
			id := identify(t, c.m)
			require.Contains(t, id.Next.Text, c.text)
			require.Contains(t, id.Next.Why, c.say)
		})
	}
}

// What fits no thread says so, however near one figure is.
func TestNothingFits(t *testing.T) {
	for _, c := range []struct {
		why string
		m   Measured
	}{
		{"half inch pipe with a watchmaker's pitch", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(32)}},
		{"a diameter between all the threads of its pitch", Measured{Sex: threads.Male, Diameter: Gauge(29), Pitch: perInch(27)}},
		{"larger than the tables", Measured{Sex: threads.Male, Diameter: Gauge(200)}},
		{"smaller than the tables", Measured{Sex: threads.Female, Diameter: Gauge(4), Pitch: Gauge(0.5)}},
		{"a parallel of 11.5 threads an inch and 20 mm", Measured{Sex: threads.Male, Diameter: Gauge(20), Pitch: perInch(11.5), Taper: NoTaper}},
	} {
		t.Run(c.why, func(t *testing.T) {
			id := identify(t, c.m)
			require.True(t, id.NothingFits(), "none %.3f, first %v", id.None, firstNames(id.Candidates, 3))
			require.Zero(t, id.Next.Ask)
			require.Contains(t, id.Next.Text, "again")
		})
	}
}

func TestIdentifyErrors(t *testing.T) {
	for _, c := range []struct {
		why  string
		m    Measured
		says string
	}{
		{"a diameter of no side", Measured{Diameter: Gauge(20)}, "outside of a male thread or the inside of a female"},
		{"inches read as millimetres", Measured{Sex: threads.Male, Diameter: Gauge(0.518)}, "between 3 and 250 mm is due"},
		{"threads an inch read as a pitch", Measured{Pitch: Gauge(14)}, "a pitch of 14 mm"},
		{"a half angle", Measured{Flank: Gauge(27.5)}, "angle of the thread of 27.5 degrees"},
		{"no number", Measured{Pitch: Gauge(math.NaN())}, "is due"},
		{"a country without habits", Measured{Country: "Atlantis"}, `the country "Atlantis"`},
	} {
		t.Run(c.why, func(t *testing.T) {
			_, err := Identify(c.m)
			require.ErrorContains(t, err, c.says)
			_, err = Gains(c.m)
			require.ErrorContains(t, err, c.says)
		})
	}
}

// asMeasured is what a careful person with good tools reads on a new part of
// middle tolerance: the crest half way up a taper, or at the mouth of a female.
func asMeasured(f *threads.Form, sex threads.Sex) Measured {
	s := crestAt(f, sex, 0.5)
	m := Measured{Sex: sex, Diameter: Gauge((s.least + s.most) / 2), Pitch: Gauge(float64(f.Pitch)), Flank: Gauge(float64(f.Flank)), Taper: NoTaper}
	if f.Taper > 0 {
		m.Taper = Tapered
	}
	best := 0.0
	for n := PlainNose; n < noseEnd; n++ {
		if share := noseShares()[f.Family][n]; share > best {
			m.Nose, best = n, share
		}
	}
	return m
}

// Every size of every family, measured as it is, comes out first, or stands equal
// or second to a family that shares its thread: the sharing pairs are listed.
func TestEveryFormFindsItself(t *testing.T) {
	shared := map[threads.Family][]threads.Family{
		threads.NPTF: {threads.NPT}, threads.NPS: {threads.NPT, threads.NPSM, threads.NPTF, threads.G}, threads.NPSM: {threads.NPT, threads.NPS, threads.G}, threads.Rp: {threads.Rc, threads.G}, threads.Rc: {threads.Rp}, threads.UN: {threads.NPT, threads.JIC, threads.ORB, threads.ORFS, threads.SAE45, threads.M}, threads.M: {threads.ISO6149, threads.UN}, threads.MT: {threads.M},
		threads.Cone24L: {threads.Cone24S}, threads.Cone24S: {threads.Cone24L}, threads.ISO6149: {threads.ORB},
	}
	n := 0
	for _, family := range threads.Families() {
		for _, f := range threads.Forms(family) {
			for _, sex := range possibleSexes(threads.NoSex, family) {
				if sex == threads.NoSex {
					continue
				}
				n++
				id := identify(t, asMeasured(f, sex))
				require.False(t, id.NothingFits(), "%s %s", f.Designation, sex)
				first := id.Candidates[0].Form
				if first == f || cutAlike(first, f) || Equal(first, f) {
					continue
				}
				require.Contains(t, shared[family], first.Family, "%s %s is taken for %s", f.Designation, sex, first.Designation)
				require.InDelta(t, float64(f.Pitch), float64(first.Pitch), 0.03*float64(f.Pitch), "%s taken for %s", f.Designation, first.Designation)
				require.InDelta(t, float64(f.Major), float64(first.Major), 1.3, "%s taken for %s", f.Designation, first.Designation)
				require.Contains(t, firstNames(id.Candidates, 4), f.Designation)
			}
		}
	}
	require.Equal(t, 622, n)
}

// cutAlike reports whether two sizes are cut alike, as ORFS -12 and -14 are.
func cutAlike(a, b *threads.Form) bool {
	return a.Major == b.Major && a.Pitch == b.Pitch && a.Flank == b.Flank && a.Taper == b.Taper && a.Family == b.Family
}

// testdata/published/calliper.csv holds diameters that hose makers, shops and
// owners print as what a calliper shows, each with its source. With the count of
// threads, the right thread must come first; a figure that the thread's own standard
// rules out is marked as off.
func TestPublishedCalliper(t *testing.T) {
	right, off := 0, 0
	for _, r := range endtest.Published(t, "calliper.csv") {
		name := r["thread"] + " " + r["sex"] + ": " + r["source"]
		m := Measured{Sex: threads.SexNamed(r["sex"])}
		switch {
		case r.Has("mm"):
			m.Diameter = Gauge(r.Number("mm"))
		default:
			m.Diameter = Gauge(25.4 * r.Number("inch"))
		}
		if r.Has("tpi") {
			m.Pitch = perInch(r.Number("tpi"))
		} else {
			m.Pitch = Gauge(r.Number("pitch_mm"))
		}
		id := identify(t, m)
		require.False(t, id.NothingFits(), name)
		first := id.Candidates[0].Form
		if strings.HasPrefix(r["note"], "off:") {
			require.NotEqual(t, r["thread"], first.Size, "%s: no longer off", name)
			off++
			continue
		}
		right++
		require.Contains(t, strings.Split(r["families"], "|"), first.Family.String(), "%s: %v", name, firstNames(id.Candidates, 4))
		require.True(t, first.Size == r["thread"] || strings.Contains(first.Designation, r["thread"]), "%s: %s", name, first.Designation)
	}
	require.Equal(t, 65, right)
	require.Equal(t, 1, off)
}
