package fix_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
	"handtight/bom/repair"
	"handtight/bom/repair/fix"
	"handtight/bom/rule"
)

const low = `[build]
name = "a line of the house"
currency = "EUR"
[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
ports = { out = '3/4 NPT male' }
[[item]]
id = "housing"
kind = "filter housing"
material = "pp"
ports = { in = '3/4 NPT female', out = '3/4 NPT female' }
rated = "8 bar"
[[item]]
id = "tank"
kind = "tank"
ports = { in = '3/4 NPT female' }
`

// high is a line behind a plunger pump, up to a part of it.
func high(part string) string {
	return `[build]
name = "a line of high pressure"
currency = "EUR"
[duty]
pressure = "56 bar"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "pump"
kind = "plunger pump"
material = "316"
flow = "9 L/min"
stall = "150 bar"
rated = "200 bar"
ports = { in = '1/2 NPT female', out = '3/8 NPT female' }
[[item]]
id = "throttle"
kind = "brine throttle"
material = "316"
rated = "200 bar"
ports = { in = '3/8 NPT female', out = '3/8 NPT female' }
[[item]]
id = "discharge"
kind = "overboard"
` + part + `
[[run]]
name = "line"
path = ["sea", "pump", "part", "throttle", "discharge"]
`
}

// What mends a finding that is not about two threads: each on the smallest line that has it,
// and the copy has it no more. Lines and figures are made up.
func TestOtherRemedies(t *testing.T) {
	nipple := "[[item]]\nid = \"part\"\nkind = \"nipple\"\nmaterial = \"316\"\nports = { a = '3/8 NPT male', b = '3/8 NPT male' }\n"
	for _, row := range []struct{ name, text, slug, has string }{
		{"nothing turns", low + "[[item]]\nid = \"meter\"\nkind = \"flow meter\"\nabout = \"panel meter\"\nports = { in = '3/4 NPT female', out = '3/4 NPT female' }\nrated = \"8 bar\"\n" +
			"[[item]]\nid = \"nipple\"\nkind = \"nipple\"\nports = { a = '3/4 NPT male', b = '3/4 NPT male' }\n[[run]]\nname = \"line\"\npath = [\"house\", \"housing\", \"nipple\", \"meter\", \"nipple/2\", \"tank\"]\n",
			"nothing-turns", `kind     = "union"`},
		{"a coupling is changed for a union", low + "[[item]]\nid = \"short\"\nkind = \"coupling\"\nmaterial = \"bronze\"\nports = { a = '3/4 NPT female', b = '3/4 NPT female' }\n" +
			"[[item]]\nid = \"wall\"\nkind = \"tank\"\nports = { in = '3/4 NPT male' }\n[[item]]\nid = \"barrel\"\nkind = \"nipple\"\nmaterial = \"bronze\"\nports = { a = '3/4 NPT male', b = '3/4 NPT male' }\n" +
			"[[run]]\nname = \"line\"\npath = [\"house\", \"housing\", \"barrel\", \"short\", \"wall\"]\n", "nothing-turns", `kind     = "union"`},
		{"an open branch is plugged", low + "[[item]]\nid = \"tee\"\nkind = \"tee\"\nmaterial = \"bronze\"\nports = { a = '3/4 NPT female', b = '3/4 NPT male', branch = '1/2 NPT female' }\n" +
			"[[run]]\nname = \"line\"\npath = [\"house\", \"tee\", \"tank\"]\n", "port-open", `path = ["tee.branch", "plug-1-2-npt-male-bronze/+"]`},
		{"a machined adaptor on high pressure", high("[[item]]\nid = \"part\"\nkind = \"adaptor\"\nhave = 1\nmaterial = \"316\"\nrated = \"200 bar\"\nports = { a = '3/8 NPT male', b = 'R 3/8 male' }\n"),
			"pitches-differ", `class    = "machined"`},
		{"a light nipple is bought in class 3000", high(nipple + "class = \"class 150\"\n"), "under-rated", `class    = "class 3000"`},
		{"and one of no class", high(nipple), "rating-unknown", `class    = "class 3000"`},
	} {
		t.Run(row.name, func(t *testing.T) {
			before := stops(t, row.text)
			require.Positive(t, before[row.slug], before)
			r, err := fix.Build("random.toml", []byte(row.text), fix.Options{Only: []string{row.slug}})
			require.NoError(t, err)
			require.NotEmpty(t, r.Edits, "%+v", r.Left)
			require.Contains(t, string(r.Text), row.has)
			after := stops(t, string(r.Text))
			require.Less(t, after[row.slug], before[row.slug])
			for slug, n := range after {
				require.LessOrEqual(t, n, before[slug], slug)
			}
			again, err := fix.Build("random.toml", r.Text, fix.Options{Only: []string{row.slug}})
			require.NoError(t, err)
			require.Equal(t, string(r.Text), string(again.Text))
			require.Equal(t, strings.Count(row.text, "\nrated"), strings.Count(string(r.Text), "\nrated"), "no rating is typed in")
		})
	}
}

// Threads of plastic that bear less than they see: the same part of a metal that stands in the
// water. It is an estimate and no stop, so that it is told of and not put in.
func TestWeakThreads(t *testing.T) {
	text := high("[[item]]\nid = \"part\"\nkind = \"nipple\"\nmaterial = \"PVC\"\nports = { a = '3/8 NPT male', b = '3/8 NPT male' }\n")
	b, faults := read.Parse("random.toml", []byte(text))
	require.Empty(t, faults)
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	for _, f := range rule.Check(sys) {
		if f.Slug == "threads-too-weak" {
			list := repair.Remedies(sys, &f)
			require.NotEmpty(t, list)
			require.Equal(t, "change", list[0].Do)
			require.Contains(t, list[0].Buy()[0], "316, class 3000")
			return
		}
	}
	t.Fatal("the threads bear it")
}
