package source

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestFaultText(t *testing.T) {
	long := strings.Repeat("a", 200) + " = 5 bar " + strings.Repeat("b", 200)
	rows := []struct {
		why  string
		in   Fault
		want string
	}{
		{"place, line and remedy", Fault{Place{"kittiwake.toml", 31, 9, "\trated = 55"}, "`rated` lacks its unit", "write it"},
			"kittiwake.toml line 31, column 9: `rated` lacks its unit\n    rated = 55\n  write it"},
		{"a fault of the whole file has no line", Fault{Place{File: "k.toml"}, "it is empty", "write a build"},
			"k.toml: it is empty\n  write a build"},
		{"a blank line is not shown", Fault{Place{"k.toml", 1, 1, " "}, "why", ""}, "k.toml line 1, column 1: why"},
		{"control characters would move the cursor", Fault{Place{"k.toml", 1, 1, "a\x1b[2J\tb\u202e"}, "why", "what"},
			"k.toml line 1, column 1: why\n    a\uFFFD[2J b\uFFFD\n  what"},
		{"a long line is cut around the column", Fault{Place{"k.toml", 1, 205, long}, "why", "what"},
			"k.toml line 1, column 205: why\n    … " + strings.Repeat("a", 56) + " = 5 bar " + strings.Repeat("b", 55) + " …\n  what"},
	}
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			require.Equal(t, row.want, row.in.Error())
			require.Equal(t, row.want, row.in.String())
		})
	}
}

func TestFaultsSortAndErr(t *testing.T) {
	require.NoError(t, Faults(nil).Err(), "no fault is no error, not an error that holds nothing")
	at := func(file string, line, column int, reason string) Fault {
		return Fault{Place{file, line, column, ""}, reason, ""}
	}
	sorted := Faults{at("a", 0, 0, "x"), at("a", 1, 2, "x"), at("a", 1, 9, "b"), at("a", 1, 9, "c"), at("a", 2, 1, "x"), at("b", 1, 1, "x")}
	mixed := Faults{sorted[5], sorted[3], sorted[0], sorted[4], sorted[2], sorted[1]}
	mixed.Sort()
	require.Equal(t, sorted, mixed)
	var faults Faults
	require.True(t, errors.As(mixed.Err(), &faults))
	require.Equal(t, "a: x\n\na line 1, column 2: x", mixed[:2].Error())
}

func TestOffsetOfAPlace(t *testing.T) {
	text := "a = 1\nné = \"é x\"\r\nlast"
	for _, c := range []struct {
		line, column, at int
		ok               bool
	}{{1, 1, 0, true}, {1, 5, 4, true}, {2, 1, 6, true}, {2, 6, 12, true}, {3, 5, len(text), true}, {3, 6, 0, false}, {4, 1, 0, false}} {
		at, ok := Place{Line: c.line, Column: c.column}.Offset(text)
		require.Equal(t, c.ok, ok, "%d %d", c.line, c.column)
		require.Equal(t, c.at, at, "%d %d", c.line, c.column)
	}
}
