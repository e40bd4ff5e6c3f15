package main

import (
	"bytes"
	"errors"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

func TestWrap(t *testing.T) {
	for name, row := range map[string]struct {
		text  string
		width int
		want  []string
	}{
		"what fits stays on one line":        {"one two", 7, []string{"one two"}},
		"one character more breaks":          {"one two", 6, []string{"one", "two"}},
		"a long word stands alone":           {"a flank-angles-differ b", 5, []string{"a", "flank-angles-differ", "b"}},
		"blanks and newlines are one blank":  {" a \n\t b ", 80, []string{"a b"}},
		"characters count, not bytes":        {"½½½ ½½½", 7, []string{"½½½ ½½½"}},
		"nothing gives one empty line":       {"", 10, []string{""}},
		"a width below one still ends":       {"a b", 0, []string{"a", "b"}},
		"a negative width is as narrow as 0": {"a b", -5, []string{"a", "b"}},
	} {
		t.Run(name, func(t *testing.T) { require.Equal(t, row.want, wrap(row.text, row.width)) })
	}
}

// Plain text is asked for by either of two variables, whatever the terminal can do.
func TestWantsColour(t *testing.T) {
	for env, want := range map[[2]string]bool{
		{"", "xterm-256color"}: true, {"", ""}: true, // Windows sets no TERM
		{"1", "xterm-256color"}: false, {"0", ""}: false, {"", "dumb"}: false,
	} {
		require.Equal(t, want, wantsColour(func(name string) string { return map[string]string{"NO_COLOR": env[0], "TERM": env[1]}[name] }), env)
	}
}

// Wrapping loses no word, and no line is too long unless it is one word.
func TestWrapKeepsWords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-z½°" \n]{0,200}`).Draw(t, "text")
		width := rapid.IntRange(1, 60).Draw(t, "width")
		lines := wrap(text, width)
		require.Equal(t, strings.Fields(text), strings.Fields(strings.Join(lines, " ")))
		for _, l := range lines {
			require.True(t, utf8.RuneCountInString(l) <= width || !strings.Contains(l, " "), "%q is wider than %d", l, width)
		}
	})
}

func TestTable(t *testing.T) {
	columns := []column{{title: "n", right: true}, {title: "what", flex: true}, {title: "end"}}
	rows := [][]string{{"1", "short", "x"}, {"20", "a long cell that has to be wrapped somewhere", "½"}}
	for name, row := range map[string]struct {
		width int
		want  string
	}{
		"room for all": {60, ` n  what                                          end
 1  short                                         x
20  a long cell that has to be wrapped somewhere  ½
`},
		"the flexible cell goes on below itself": {36, ` n  what                         end
 1  short                        x
20  a long cell that has to be   ½
    wrapped somewhere
`},
		"too narrow: nothing is printed, and the caller folds": {30, ""},
	} {
		t.Run(name, func(t *testing.T) {
			var out bytes.Buffer
			u := newUI(&out, &bytes.Buffer{})
			u.width = row.width
			require.Equal(t, row.want != "", u.table(columns, rows))
			require.Equal(t, row.want, out.String())
		})
	}
}

// No line of a table is wider than the terminal.
func TestTableFits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		cell := rapid.StringMatching(`[a-z½]{0,12}( [a-z½]{1,12}){0,6}`)
		rows := rapid.SliceOfN(rapid.SliceOfN(cell, 3, 3), 1, 5).Draw(t, "rows")
		var out bytes.Buffer
		u := newUI(&out, &bytes.Buffer{})
		u.width = rapid.IntRange(40, 120).Draw(t, "width")
		if !u.table([]column{{title: "a"}, {title: "b", flex: true}, {title: "c", right: true}}, rows) {
			require.Empty(t, out.String())
			return
		}
		for _, l := range strings.Split(out.String(), "\n") {
			require.LessOrEqual(t, utf8.RuneCountInString(l), u.width, l)
		}
	})
}

// What is no terminal gets no colour and the plain width.
func TestNoTerminal(t *testing.T) {
	u := newUI(&bytes.Buffer{}, &bytes.Buffer{})
	require.Equal(t, "text", u.paint(red, "text"))
	require.Equal(t, plainWidth, u.width)
}

type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// What cannot be printed is not taken for done.
func TestBrokenOutputIsAFault(t *testing.T) {
	for _, args := range [][]string{
		{"check", "../../testdata/clean/build.toml"}, {"check", "--json", "../../testdata/clean/build.toml"},
		{"order", "../../testdata/clean/build.toml"}, {"order", "--json", "../../testdata/clean/build.toml"},
		{"thread", "G 1/2"}, {"mate", "G 1/2 male", "G 1/2 female"}, {"why"}, {"why", "same-sex"},
	} {
		var errOut bytes.Buffer
		require.Equal(t, exitFault, run(args, strings.NewReader(""), fullDisk{}, &errOut), args)
		require.Contains(t, errOut.String(), "no space left", args)
	}
}
