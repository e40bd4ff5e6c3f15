package graph_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/read"
	"handtight/threads"
)

// oldPlant is a joint of an old plant with what is known of it.
func oldPlant(end, notes string) string {
	return `[build]
name = "Old"
currency = "EUR"
origin = "Italy"
left_open = ["n.a"]
[[item]]
id = "n"
kind = "nipple"
ports = { a = '1/2 NPT male', b = ` + end + ` }
[[item]]
id = "c"
kind = "coupling"
ports = { a = 'G 3/4 female', b = '1/2 NPT female' }
[[item]]
id = "p"
kind = "plug"
ports = { a = '1/2 NPT male' }
[[run]]
name = "line"
path = ["n.b", "c", "p"]
` + notes
}

// Words that say that an end is not known are taken, in several languages, and the rest is read;
// so are a sex alone and a diameter alone.
func TestEndsThatAreNotKnown(t *testing.T) {
	for text, want := range map[string][]string{
		"'some 3/4 thread'":               {"G 3/4", "R 3/4 male", "Rp 3/4 female", "Rc 3/4 female", "3/4-14 NPT"},
		"'some 3/4 inch thread, Italian'": {"G 3/4", "R 3/4 male", "Rp 3/4 female", "Rc 3/4 female", "3/4-14 NPT"},
		"'American 3/4 thread male'":      {"3/4-14 NPT male", "G 3/4 male", "R 3/4 male"},
		"'unbekannt 1/2 Außengewinde'":    {"G 1/2 male", "R 1/2 male", "1/2-14 NPT male"},
		"'desconocido G 3/4 macho'":       {"G 3/4 male"},
		"'male'":                          nil,
		"'? female'":                      nil,
		"'unknown'":                       nil,
		"'inconnu'":                       nil,
		"'26.4 mm male'":                  {"G 3/4 male"},
	} {
		b, faults := read.Parse("old.toml", []byte(oldPlant(text, "")))
		require.NoError(t, faults.Err(), text)
		p := b.ByID["n"].Ports[1]
		require.True(t, p.Said)
		var got []string
		for _, e := range p.End.Candidates {
			got = append(got, e.String())
		}
		if text == "'26.4 mm male'" {
			require.Contains(t, got, want[0])
			continue
		}
		require.Equal(t, want, got, text)
		if want == nil {
			require.NotEmpty(t, p.End.Question, text)
		}
	}
	_, faults := read.Parse("old.toml", []byte(oldPlant("'wobbly 3/4'", "")))
	require.Error(t, faults.Err(), "what is not understood is still refused")
}

// What is known of a joint and an end is carried to the joint, and judges it.
func TestNotes(t *testing.T) {
	b, faults := read.Parse("old.toml", []byte(oldPlant("'some 3/4 thread'", `
[[joint]]
at = ["n.b", "c.a"]
made_up = 2019
dry_since = "2021-06"
wept = "2023, drops at the pump start, tightened"
tested = { pressure = "4 bar", on = 2024-03-02 }
sealant = "tape"
turns = "5"
access = "behind"
[[end]]
at = "n.b"
said = "some 3/4 thread"
od = "26.2 mm"
tpi = "14"
pitch = "1.8 mm"
taper = "yes"
angle = "60"
seat = "plain"
[audit]
on = 2025-01-02
[[audit.joint]]
at = ["n.b", "c.a"]
is = "measure this"
look = 2025-06-01
`)))
	require.NoError(t, faults.Err())
	n := b.Noted[0]
	require.Equal(t, "2019", n.MadeUp.Text)
	require.Equal(t, "2021-06-30", n.DrySince.To.Format("2006-01-02"))
	require.Equal(t, "2023", n.WeptIn.Text)
	require.Equal(t, 4.0, n.Tested.Pressure.Bar())
	require.Equal(t, []string{"tape", "5", "behind"}, []string{n.Sealant, n.Turns, n.Access})
	require.True(t, n.Stands())
	require.Equal(t, "Italy", b.ByID["n"].Ports[1].Origin)
	require.Equal(t, "2025-01-02", b.Audited.On.Text)
	require.Equal(t, "2025-06-01", b.Audited.Joints[0].Look.Text)
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	j := sys.Graph.Joints[0]
	require.Same(t, n, j.Note)
	require.Equal(t, "3/4-14 NPT male", j.Mating.A.String(), "the worst that is reckoned with")
	require.Equal(t, threads.Leaks, j.Mating.Verdict)
	require.True(t, j.Open, "one look with a profile gauge does not exclude R from Italy")
	require.Nil(t, sys.Graph.Joints[1].Fit, "nothing is known of the other joint")
}

// Every fault of a note has its place and its cure.
func TestNotesThatCannotBe(t *testing.T) {
	for _, c := range []struct{ why, notes, reason, remedy string }{
		{"dry before it was made", "[[joint]]\nat = [\"n.b\", \"c.a\"]\nmade_up = 2020\ndry_since = 2019", "before it was made up", "mend one of the dates"},
		{"wept before it was made", "[[joint]]\nat = [\"n.b\", \"c.a\"]\nmade_up = 2020-05-01\nwept = \"2019, a drop\"", "before it was made up", "mend one of the dates"},
		{"tested before it was made", "[[joint]]\nat = [\"n.b\", \"c.a\"]\nmade_up = 2020\ntested = { pressure = \"4 bar\", on = 2019 }", "before it was made up", "mend one of the dates"},
		{"no date of a test", "[[joint]]\nat = [\"n.b\", \"c.a\"]\ntested = { pressure = \"4 bar\" }", "no date", "on = 2024-03-02"},
		{"no pressure of a test", "[[joint]]\nat = [\"n.b\", \"c.a\"]\ntested = { on = 2020 }", "no pressure", "60 bar"},
		{"a key that is not known", "[[joint]]\nat = [\"n.b\", \"c.a\"]\ndry_sinse = 2019", "dry_sinse", "dry_since"},
		{"a key of an end that is not known", "[[end]]\nat = \"n.b\"\nodd = \"26 mm\"", "odd", "od"},
		{"a day that is none", "[[joint]]\nat = [\"n.b\", \"c.a\"]\nmade_up = \"last summer\"", "no year, month or day", "2019-06"},
		{"two ports apart", "[[joint]]\nat = [\"n.b\", \"p.a\"]", "not joined to each other", "n.b is joined to c.a"},
		{"a unit that is nowhere", "[[joint]]\nat = [\"m.b\", \"c.a\"]", "no run places a unit `m`", "x/+2"},
		{"no ports", "[[joint]]\nmade_up = 2019", "which joint", "name both ports"},
		{"one port", "[[joint]]\nat = [\"n.b\"]", "two ports", "name both ports"},
		{"noted twice", "[[joint]]\nat = [\"n.b\", \"c.a\"]\n[[joint]]\nat = [\"c.a\", \"n.b\"]", "noted twice", "one place"},
		{"no such item", "[[end]]\nat = \"m.b\"\nod = \"26 mm\"", "no item `m`", "name a unit"},
		{"no such port", "[[end]]\nat = \"n.x\"\nod = \"26 mm\"", "no port `x`", "its ports are"},
		{"outside of a female", "[[end]]\nat = \"c.a\"\nod = \"26 mm\"", "female", "`id`"},
		{"inside of a male", "[[end]]\nat = \"n.b\"\nsaid = \"some 3/4 thread male\"\nid = \"26 mm\"", "male", "`od`"},
		{"both diameters", "[[end]]\nat = \"n.b\"\nod = \"26 mm\"\nid = \"24 mm\"", "both", "leave one"},
		{"two pitches", "[[end]]\nat = \"n.b\"\ntpi = \"14\"\npitch = \"1.5 mm\"", "two threads", "tpi"},
		{"no unit", "[[end]]\nat = \"n.b\"\nod = \"26\"", "no unit", "26"},
		{"a country that is none", "[[item]]\nid = \"q\"\nkind = \"nipple\"\norigin = \"Atlantis\"\nports = { a = '1/2 NPT male', b = '1/2 NPT male' }", "Atlantis", "country"},
		{"words against words", "[[end]]\nat = \"c.a\"\nsaid = \"1/2 NPT female\"", "none of what the item says", "mend the item"},
		{"turns without number", "[[joint]]\nat = [\"n.b\", \"c.a\"]\nturns = \"many\"", "no count of turns", "where it stops"},
		{"a sealant that is none", "[[joint]]\nat = [\"n.b\", \"c.a\"]\nsealant = \"gum\"", "gum", "tape"},
		{"a record without a date", "[audit]\n", "no date", "2026"},
	} {
		t.Run(c.why, func(t *testing.T) {
			b, faults := read.Parse("old.toml", []byte(oldPlant("'some 3/4 thread'", c.notes)))
			if len(faults) == 0 {
				_, faults = bom.Walk(b)
			}
			require.Error(t, faults.Err())
			text := faults.Error()
			require.Contains(t, text, c.reason)
			require.Contains(t, text, c.remedy)
			require.NotZero(t, faults[0].Place.Line)
		})
	}
}

// A diameter alone makes an end of what it may be, of either sex; a measured end that its words
// contradict is what was measured.
func TestMeasuredEnds(t *testing.T) {
	b, faults := read.Parse("old.toml", []byte(oldPlant("'G 3/4 male'", "[[end]]\nat = \"n.b\"\nod = \"25.0 mm\"\npitch = \"2 mm\"\n")))
	require.NoError(t, faults.Err())
	require.True(t, b.Ends[0].Found.Conflict)
	require.Contains(t, b.Ends[0].Port.End.Question, "measure again")
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	require.Equal(t, "M25x2 male", sys.Graph.Joints[0].Mating.A.String())
	require.Equal(t, threads.Loose, sys.Graph.Joints[0].Mating.Verdict)
}

// Days, months and years are read as the spans that they are.
func TestWhen(t *testing.T) {
	for text, span := range map[string]string{"2019": "2019-01-01 2019-12-31", "2020-02": "2020-02-01 2020-02-29", "2024-03-02": "2024-03-02 2024-03-02"} {
		w, ok := build.WhenOf(text)
		require.True(t, ok)
		require.Equal(t, span, w.From.Format("2006-01-02")+" "+w.To.Format("2006-01-02"))
	}
	for _, text := range []string{"", "soon", "2019-13", "19", "2019-02-30"} {
		_, ok := build.WhenOf(text)
		require.False(t, ok, text)
	}
}
