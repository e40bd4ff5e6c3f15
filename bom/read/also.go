package read

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/nearest"
	"handtight/threads"
	"handtight/threads/title"
)

// kindRemedy says which kind to write in place of a word that names none: the one that the
// trade means by it, as the catalogue or the reader of shop titles knows, else a kind that
// is spelt much like it.
func (r *reader) kindRemedy(word string) string {
	if meant, ok := catalog.KindMeant(word); ok {
		return remedyOf("write kind = "+inQuotes(meant.Write), meant.Note)
	}
	if read := title.Read(word); len(read.Unread) == 0 {
		if k, ok := catalog.KindNamed(read.Kind); ok && !k.Is(catalog.Hose) {
			return "write kind = " + inQuotes(k.Name)
		}
	}
	if n, ok := nearest.Of(word, r.kinds); ok && !onlyBegins(n, word) {
		return "write kind = " + inQuotes(n)
	}
	return "the kinds are " + build.InWords(r.kinds)
}

// kindGuess says which kind to write for an item whose title names none: those that
// its words are nearest to, else those that have as many ends. The whole list is
// told once a file, and only where nothing is near.
func (r *reader) kindGuess(t *source.Table, reading threads.Reading) string {
	var near []string
	for _, word := range reading.Unread {
		if n, ok := nearest.Of(strings.ToLower(word), r.kinds); ok && !slices.Contains(near, n) {
			near = append(near, n)
		}
	}
	if len(near) == 0 && len(reading.Ends) > 0 {
		near = catalog.LikelyKinds(len(reading.Ends))
	}
	const list = "`handtight catalog` lists all"
	switch {
	case len(near) > 0:
		return "write kind = \"…\", likely one of " + build.InWords(near) + "; " + list
	case r.kindsListed:
		return "write kind = \"…\"; " + list
	}
	r.kindsListed = true
	return "write kind = \"…\", one of " + build.InWords(r.kinds)
}

// onlyBegins reports whether a name is only the beginning of a word, and so another thing:
// "sea" of "sea trap".
func onlyBegins(name, word string) bool {
	return len(name)+1 < len(word) && strings.HasPrefix(strings.ToLower(word), strings.ToLower(name))
}

// portRemedy says which port is meant by a name that the kind does not have; given are the
// ports that the item has already.
func portRemedy(k *catalog.Kind, given []string, name string) (string, bool) {
	if len(k.Ports) == 0 {
		return "", false
	}
	if port, ok := k.PortMeant(name); ok && !slices.Contains(given, port) {
		return "write `" + port + "`", true
	}
	if n, ok := nearest.Of(name, k.Ports); ok && !slices.Contains(given, n) && !onlyBegins(n, name) {
		return "write `" + n + "`", true
	}
	if len(k.Ports) == 1 {
		return fmt.Sprintf("the one port of a %s is %s", k.Name, build.InWords(k.Ports)), true
	}
	return fmt.Sprintf("the ports of a %s are %s", k.Name, build.InWords(k.Ports)), true
}

// keyRemedy says what to write for a key that parts of the kind do not have.
func keyRemedy(k *catalog.Kind) func(key string) (string, bool) {
	return func(key string) (string, bool) {
		meant, ok := k.KeyMeant(key)
		switch {
		case !ok:
			return "", false
		case meant.Write == "":
			return meant.Note, true
		}
		return remedyOf("write `"+meant.Write+"`", meant.Note), true
	}
}

func remedyOf(write, note string) string {
	if note == "" {
		return write
	}
	return write + ", " + note
}

func inQuotes(word string) string { return fmt.Sprintf("%q", word) }
