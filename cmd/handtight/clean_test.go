package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/file"
	"handtight/bom/source"
)

// A build file may hold anything; none of it may drive the reader's terminal.
func TestClean(t *testing.T) {
	for _, c := range []struct {
		why, text string
		colour    bool
		want      string
	}{
		{"plain text is left alone", "Kittiwake: 24 V, ½ in", false, "Kittiwake: 24 V, ½ in"},
		{"a colour code without colour", "\x1b[31mred", false, "\ufffd[31mred"},
		{"our own colour", "\x1b[1;31mSTOP\x1b[0m", true, "\x1b[1;31mSTOP\x1b[0m"},
		{"clearing the screen, also with colour", "\x1b[2Jgone", true, "\ufffd[2Jgone"},
		{"the bell and the carriage return", "a\ab\rc", false, "a\ufffdb\ufffdc"},
		{"a turned direction of writing", "a\u202eb", false, "a\ufffdb"},
		{"a mark that turns the direction", "a\u200fb", false, "a\ufffdb"},
		{"a control character of the second set", "a\u009b2Jb", false, "a\ufffd2Jb"},
		{"the same as a bare byte, which is no text", "a\x9b2Jb", false, "a\ufffd2Jb"},
		{"an end of line that is no newline", "a\u2028b", false, "a\ufffdb"},
		{"line ends stay", "a\nb", false, "a\nb"},
	} {
		require.Equal(t, c.want, clean(c.text, c.colour), c.why)
	}
}

// In JSON such characters stand by their number: the text is not changed.
func TestJSONIsCleaned(t *testing.T) {
	var out bytes.Buffer
	u := newUI(&out, &bytes.Buffer{})
	text := "a\x1b[2J\u009b\u202e\u2066\x7f\u200f漢 \n"
	require.NoError(t, u.writeJSON(map[string]string{text: text}, ""))
	require.False(t, strings.ContainsFunc(strings.TrimSuffix(out.String(), "\n"), func(r rune) bool { return drives(r) || r == '\n' }), out.String())
	var back map[string]string
	require.NoError(t, json.Unmarshal(out.Bytes(), &back))
	require.Equal(t, map[string]string{text: text}, back)
}

// A name with a line end in it writes no line of its own, wherever it is printed.
func TestANameWritesNoLine(t *testing.T) {
	var out, errOut bytes.Buffer
	u := newUI(&out, &errOut)
	const name = "a\nSTOP b"
	u.line("%s x", name)
	u.say("", "%s x", name)
	u.fold("label", name)
	u.table([]column{{title: "a"}, {title: "b", flex: true}}, [][]string{{name, name}})
	u.fault(&file.Error{Path: name, Reason: "it is not there"})
	u.fault(source.Faults{{Place: source.Place{File: name, Line: 1, Column: 1, Text: "x"}, Reason: name, Remedy: name}})
	require.NotContains(t, out.String(), "\nSTOP")
	require.NotContains(t, errOut.String(), "\nSTOP")
}

// A write that fails is never success.
func TestLostOutput(t *testing.T) {
	for _, args := range [][]string{{"--help"}, {"why", "relief-set-high"}, {"catalog", "--json"}, {"--version"}, {"mate", "1/2 NPT male", "1/2 NPT female"}, {"help", "check"}, {"completion", "bash"}} {
		require.Equal(t, exitFault, run(args, strings.NewReader(""), full{}, &bytes.Buffer{}), args)
	}
	require.Equal(t, exitFault, run([]string{"thread", "-"}, endless{}, full{}, &bytes.Buffer{}), "and the rest is not read")
}

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errors.New("no space left") }

type endless struct{}

func (endless) Read(p []byte) (int, error) {
	for i := range p {
		p[i] = "G 1/2\n"[i%6]
	}
	return len(p), nil
}
