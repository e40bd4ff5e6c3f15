package identify

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
	"handtight/threads/internal/table"
)

// What a counter hand answers to figures that lie near a rare thread and a common one:
// written down before the ranking was run. Diameters of ISO 228-1, ASME B1.20.1, ISO
// 724, DIN 40430 and ASME B1.20.7; what is common is common practice.
func TestCommonBeforeRare(t *testing.T) {
	for _, c := range []struct {
		why  string
		m    Measured
		want []string // any of these first
	}{
		{"15.45 mm parallel: G 3/8 with a burr, before M17x1.5", Measured{Sex: threads.Female, Diameter: Gauge(15.45), Taper: NoTaper}, []string{"G 3/8"}},
		{"16.9 mm outside: 3/8 pipe", Measured{Sex: threads.Male, Diameter: Gauge(16.9)}, []string{"G 3/8", "R 3/8", "3/8-18 NPT"}},
		{"23.7 mm inside, 14 an inch: 3/4 pipe, no face-seal nut", Measured{Sex: threads.Female, Diameter: Gauge(23.7), Pitch: perInch(14)}, []string{"G 3/4", "Rc 3/4", "Rp 3/4", "3/4-14 NPT"}},
		{"24.9 mm and 2 mm: M25x2", Measured{Sex: threads.Male, Diameter: Gauge(24.9), Pitch: Gauge(2)}, []string{"M25x2"}},
		{"22.4 mm and 18 an inch: a cable gland", Measured{Sex: threads.Male, Diameter: Gauge(22.4), Pitch: perInch(18)}, []string{"PG16"}},
		{"26.9 mm and 11.5 an inch: garden hose", Measured{Sex: threads.Male, Diameter: Gauge(26.9), Pitch: perInch(11.5)}, []string{"3/4-11.5 NH"}},
		{"26.2 mm, tapers, Italy", Measured{Sex: threads.Male, Diameter: Gauge(26.2), Taper: Tapered, Country: "Italy"}, []string{"R 3/4"}},
		{"13.2 mm and 19 an inch on a gauge", Measured{Sex: threads.Male, Diameter: Gauge(13.1), Pitch: perInch(19), Context: "gauge"}, []string{"G 1/4"}},
		{"14.2 mm, a swivel nut's like", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18), Context: "swivel nut"}, []string{"9/16-18 JIC -6"}},
		{"14.2 mm in a port", Measured{Sex: threads.Female, Diameter: Gauge(12.9), Pitch: perInch(18), Context: "port"}, []string{"9/16-18 ORB -6"}},
		{"20.4 mm, 18 an inch, electrical", Measured{Sex: threads.Male, Diameter: Gauge(20.4), Pitch: perInch(18), Context: "electrical"}, []string{"PG13.5"}},
		{"a male that takes five turns in G 1/2 is R before NPT", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14), Taper: Tapered,
			Turns: Turned{Turns: 5, In: endtest.EndOf(t, "G 1/2 female"), Known: true}}, []string{"R 1/2"}},
		{"and that stops after two is NPT", Measured{Sex: threads.Male, Diameter: Gauge(20.9), Pitch: perInch(14), Taper: Tapered,
			Turns: Turned{Turns: 1.5, In: endtest.EndOf(t, "G 1/2 female"), Known: true}}, []string{"1/2-14 NPT"}},
		{"a cone is seen, its angle is not", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18), Cone: Yes}, []string{"9/16-18 JIC -6"}},
		{"a groove for an O-ring", Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18), Groove: Yes, Cone: No}, []string{"9/16-18 ORB -6", "9/16-18 ORFS -4"}},
	} {
		t.Run(c.why, func(t *testing.T) {
			id := identify(t, c.m)
			require.False(t, id.NothingFits(), "none %.3f", id.None)
			require.Contains(t, c.want, id.Candidates[0].Form.Designation, firstNames(id.Candidates, 5))
		})
	}
}

// The eye's answers move the ranking the way that they should: a cone takes the O-ring
// ports out, a groove the flares, a known part that slides over the larger threads.
func TestEvidenceOfTheEye(t *testing.T) {
	share := func(m Measured, family threads.Family) float64 {
		sum := 0.0
		id := identify(t, m)
		for _, c := range id.Candidates {
			if c.Form.Family == family {
				sum += c.Probability
			}
		}
		return sum
	}
	bare := Measured{Sex: threads.Male, Diameter: Gauge(14.2), Pitch: perInch(18)}
	for _, c := range []struct {
		why    string
		change func(*Measured)
		family threads.Family
		more   bool
	}{
		{"a cone", func(m *Measured) { m.Cone = Yes }, threads.JIC, true},
		{"no cone", func(m *Measured) { m.Cone = No }, threads.JIC, false},
		{"a groove", func(m *Measured) { m.Groove = Yes }, threads.ORB, true},
		{"no groove", func(m *Measured) { m.Groove = No }, threads.ORB, false},
		{"in a port", func(m *Measured) { m.Context = "boss" }, threads.ORB, true},
		{"on a hose end", func(m *Measured) { m.Context = "Hose" }, threads.JIC, true},
		{"on plumbing", func(m *Measured) { m.Context = "tap" }, threads.JIC, false},
	} {
		t.Run(c.why, func(t *testing.T) {
			with := bare
			c.change(&with)
			before, after := share(bare, c.family), share(with, c.family)
			if c.why == "on plumbing" { // every family of this thread is as strange there
				require.LessOrEqual(t, after, before+0.05)
				return
			}
			require.Equal(t, c.more, after > before, "%.3f to %.3f", before, after)
		})
	}
	over := endtest.EndOf(t, "G 1/2 female") // 18.6 to 19.2 mm inside
	slid := identify(t, Measured{Sex: threads.Male, Pitch: perInch(14), Slides: &over})
	for _, c := range slid.Candidates[:1] {
		require.Less(t, c.Form.CrestAt(threads.Male, 0).Middle(), over.Form.CrestAt(threads.Female, 0).Most+1, c.Form.Designation)
	}
}

// What the tables of commonness and context name exists, and each size of each family
// has its weight.
func TestCommonTables(t *testing.T) {
	for _, family := range endtest.ThreadFamilies() {
		for _, f := range threads.Forms(family) {
			require.Positive(t, Common(f), f.Designation)
		}
	}
	for _, r := range table.Read(tables, "table/common.csv") {
		family, ok := threads.FamilyNamed(r["family"])
		require.True(t, ok, r["family"])
		for _, size := range r.List("sizes") {
			if size != "*" {
				_, ok := threads.Find(family, size)
				require.True(t, ok, "%s %s", r["family"], size)
			}
		}
		require.NotEmpty(t, r["source"])
	}
	words := map[string]string{}
	for _, p := range places() {
		for _, w := range p.words {
			require.Empty(t, words[w], "%s stands in two contexts", w)
			words[w] = p.name
		}
	}
	for _, r := range table.Read(tables, "table/context.csv") {
		for _, name := range r.List("families") {
			_, ok := threads.FamilyNamed(name)
			require.True(t, ok, name)
		}
		require.Positive(t, r.Number("weight"))
		require.NotEmpty(t, r["source"])
	}
	require.NotEmpty(t, Contexts())
	_, err := Identify(Measured{Context: "moon"})
	require.ErrorContains(t, err, "nothing is known of threads on")
}

// What cannot be evidence says so.
func TestEvidenceErrors(t *testing.T) {
	barb := threads.End{Family: threads.Barb, Size: "19 mm", Diameter: 19}
	for _, c := range []struct {
		why, says string
		m         Measured
	}{
		{"more turns than a joint has", "are not those of a joint", Measured{Turns: Turned{Turns: 40, In: endtest.EndOf(t, "G 1/2 female"), Known: true}}},
		{"turns into a tail", "is no known part", Measured{Turns: Turned{Turns: 4, In: barb, Known: true}}},
		{"a tail that slides", "is no known part", Measured{Slides: &barb}},
	} {
		_, err := Identify(c.m)
		require.ErrorContains(t, err, c.says, c.why)
	}
}
