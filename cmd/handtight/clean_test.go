package main

import (
	"testing"

	"github.com/stretchr/testify/require"
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
		{"line ends stay", "a\nb", false, "a\nb"},
	} {
		require.Equal(t, c.want, clean(c.text, c.colour), c.why)
	}
}
