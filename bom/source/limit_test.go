package source

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestParseLimits(t *testing.T) {
	deep := func(n int) string { return "a = " + strings.Repeat("[", n) + strings.Repeat("]", n) }
	rows := []struct{ why, text, want string }{
		{"deep, and still taken", deep(deepest), ""},
		{"deeper than the stack is asked to bear", deep(deepest + 1), "k.toml line 1, column 205: brackets within brackets, more than 200 deep"},
		{"brackets within texts and comments do not count",
			"a = ['" + strings.Repeat("[", 500) + "'] #" + strings.Repeat("{", 500) + "\nb = \"\"\"" + strings.Repeat("\n[", 500) + `"""`, ""},
		{"a key of many parts takes time that grows with their square",
			strings.Repeat("a.", longestPath) + "a = 1", "k.toml line 1, column 200: a key of more than 100 parts"},
		{"numbers in a list are no key", "a = [" + strings.Repeat("1.5, ", 200) + "]", ""},
		{"one byte too long", "#" + strings.Repeat(" ", MaxBytes), "k.toml: this file is larger than 6 MiB"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			doc, faults := Parse("k.toml", []byte(row.text))
			if row.want == "" {
				require.NoError(t, faults.Err())
				require.NotNil(t, doc)
				return
			}
			require.Len(t, faults, 1)
			require.True(t, strings.HasPrefix(faults.Error(), row.want), "%s", clip(faults.Error(), 200))
		})
	}
}

func TestParseStopsAtTwentyFaults(t *testing.T) {
	_, faults := Parse("k.toml", []byte(strings.Repeat("a = 5 bar\n", 50)))
	require.Len(t, faults, mostFaults)
	_, faults = Parse("k.toml", []byte(strings.Repeat("a = '\x01'\n", 50)))
	require.Len(t, faults, mostFaults)
}

// hostile are texts that a careless reader never ends with.
var hostile = []struct{ why, text string }{
	{"brackets without end", strings.Repeat("[", 1<<20)},
	{"braces without end", "a = " + strings.Repeat("{a=", 1<<18)},
	{"points without end", strings.Repeat("a.", 1<<19)},
	{"one fault after the other in a text that is long", strings.Repeat("a = 5 bar\n", 1<<18)},
	{"a list over many lines that is never closed", "a = [\n" + strings.Repeat("'x',\n", 1<<17)},
	{"many long texts, each closed", strings.Repeat("a = '''\n'''\n", 1<<16)},
}

func TestParseOfHostileTextEnds(t *testing.T) {
	for _, row := range hostile {
		t.Run(row.why, func(t *testing.T) {
			_, faults := Parse("k.toml", []byte(row.text))
			require.NotEmpty(t, faults)
			require.NotEmpty(t, faults.Error())
		})
	}
}

func BenchmarkHostile(b *testing.B) {
	for _, row := range hostile {
		b.Run(row.why, func(b *testing.B) {
			b.SetBytes(int64(len(row.text)))
			for b.Loop() {
				_, faults := Parse("k.toml", []byte(row.text))
				_ = faults.Error()
			}
		})
	}
}

func TestParseTakesMarkAndWindowsLines(t *testing.T) {
	doc, faults := Parse("k.toml", []byte("\uFEFFa = 1\r\n[b]\r\nc = \"x\"\r\n"))
	require.NoError(t, faults.Err())
	require.Equal(t, "k.toml", doc.File())
	require.Equal(t, Place{"k.toml", 1, 1, "a = 1"}, doc.key(Path{"a"}))
	require.Equal(t, Place{"k.toml", 3, 5, `c = "x"`}, doc.value(Path{"b", "c"}))
}

// manyItems is a build of n items as people write them.
func manyItems(n int) string {
	var b strings.Builder
	b.WriteString("[build]\nname = \"many\"\n\n")
	for i := range n {
		fmt.Fprintf(&b, `[[item]]
id       = "part-%d"
kind     = "nipple"
about    = "hexagon, long"   # a remark
ports    = { a = '1/2" NPT male', b = { end = 'G 1/2 male', seal = "washer" } }
material = "316"
rated    = "100 bar"
title    = "Nipple 1/2 NPT male x G 1/2 male"
have     = %d
tags     = ["a", "b"]

`, i, i%7)
	}
	return b.String()
}
