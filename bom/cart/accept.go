package cart

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode"

	"handtight/bom/source"
)

// Accepted is what a person confirmed of lines: which item a text with a code is, or
// that it is none of the build's. The nil one holds nothing.
type Accepted struct {
	entries []Entry
	at      map[string]int
}

// Entry is one thing that was confirmed. Item "" says: none of the build's.
type Entry struct{ Text, Code, Item string }

func (e Entry) key() string { return codeKey(e.Code) + "\x00" + normal(e.Text) }

// Entries lists what was confirmed, in the order of the file.
func (a *Accepted) Entries() []Entry {
	if a == nil {
		return nil
	}
	return slices.Clone(a.entries)
}

// Add notes what a line was confirmed to be; it takes the place of an older word.
func (a *Accepted) Add(l *Line, item string) { a.put(Entry{l.Text, l.Code, item}) }

// Merge takes over what another file holds; where both speak, the other one rules.
func (a *Accepted) Merge(other *Accepted) {
	for _, e := range other.Entries() {
		a.put(e)
	}
}

func (a *Accepted) put(e Entry) {
	if a.at == nil {
		a.at = map[string]int{}
	}
	if i, ok := a.at[e.key()]; ok {
		a.entries[i] = e
		return
	}
	a.at[e.key()] = len(a.entries)
	a.entries = append(a.entries, e)
}

func (a *Accepted) find(l *Line) (string, bool) {
	if a == nil {
		return "", false
	}
	i, ok := a.at[Entry{l.Text, l.Code, ""}.key()]
	if !ok {
		return "", false
	}
	return a.entries[i].Item, true
}

// ReadAccepted reads a file of [Accepted.Write].
//
// Errors: every file error at once, each with its place.
func ReadAccepted(path string, text []byte) (*Accepted, source.Faults) {
	if onlyComments(string(text)) {
		return &Accepted{}, nil // nothing was confirmed yet
	}
	doc, faults := source.Parse(path, text)
	if len(faults) > 0 {
		return nil, faults
	}
	r := source.NewReader(doc)
	root := r.Root()
	a := &Accepted{}
	for _, t := range root.Tables("accepted") {
		var e Entry
		e.Text, _ = t.Text("text")
		e.Code, _ = t.Text("code")
		e.Item, _ = t.Text("item")
		if !t.Has("item") {
			t.FaultHere("nothing says what the line was confirmed to be", "write item = \"…\" with the item's id, or \"\" for none of the build's")
		}
		if normal(e.Text)+codeKey(e.Code) == "" {
			t.FaultHere("nothing says which line is meant", "write text = \"…\" as it stands in the cart, and its code if it has one")
		}
		t.Known("text", "code", "item")
		t.Done()
		a.put(e)
	}
	root.Done()
	if faults := r.Faults(); len(faults) > 0 {
		return nil, faults
	}
	return a, nil
}

func onlyComments(text string) bool {
	for line := range strings.Lines(text) {
		if line = strings.TrimSpace(line); line != "" && line[0] != '#' {
			return false
		}
	}
	return true
}

// Unknown lists the confirmed items that a build does not have.
func (a *Accepted) Unknown(has func(item string) bool) []string {
	var out []string
	for _, e := range a.Entries() {
		if e.Item != "" && !has(e.Item) && !slices.Contains(out, e.Item) {
			out = append(out, e.Item)
		}
	}
	return out
}

// acceptedHead opens each file of [Accepted.Write].
const acceptedHead = "# What was confirmed of carts: each text, with its code, is the build's item;\n# item = \"\" says that it is none of them.\n"

// IsAccepted reports whether a file was written by [Accepted.Write], or is empty: such a
// file may be written again, any other would lose what a person wrote.
func IsAccepted(text []byte) bool {
	rest, ours := strings.CutPrefix(strings.ReplaceAll(string(text), "\r\n", "\n"), acceptedHead)
	if !ours {
		return strings.TrimSpace(rest) == ""
	}
	for line := range strings.Lines(rest) {
		if strings.HasPrefix(strings.TrimSpace(line), "#") {
			return false // a comment of someone's own
		}
	}
	return true
}

// Write writes what was confirmed as TOML that [ReadAccepted] reads back.
func (a *Accepted) Write(w io.Writer) error {
	var b strings.Builder
	b.WriteString(acceptedHead)
	for _, e := range a.Entries() {
		fmt.Fprintf(&b, "\n[[accepted]]\ntext = %s\ncode = %s\nitem = %s\n", tomlText(e.Text), tomlText(e.Code), tomlText(e.Item))
	}
	_, err := io.WriteString(w, b.String())
	return err
}

// tomlText quotes a text for TOML (basic string, TOML 1.0).
func tomlText(s string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range strings.ToValidUTF8(s, "\ufffd") {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case unicode.IsControl(r):
			b.WriteString(`\u` + fmt.Sprintf("%04X", r))
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// Answer takes a person's answer to a question: the number of a choice from 1, "y" for
// the first or only one, "n" or "0" for none of the build's. It notes it for all lines
// that the question settles. False: the answer was none, and nothing is noted.
func (q *Question) Answer(a *Accepted, answer string) bool {
	answer = strings.ToLower(strings.TrimSpace(answer))
	item := ""
	n, err := strconv.Atoi(answer)
	switch {
	case len(q.Choices) == 0:
		return false
	case answer == "y" || answer == "yes":
		if len(q.Choices) > 1 {
			return false // which one was not said
		}
		item = q.Choices[0]
	case answer == "n" || answer == "no" || err == nil && n == 0:
	case err == nil && n >= 1 && n <= len(q.Choices):
		item = q.Choices[n-1]
	default:
		named := slices.IndexFunc(q.Choices, func(c string) bool { return strings.EqualFold(c, answer) })
		if named < 0 {
			return false
		}
		item = q.Choices[named]
	}
	for _, v := range q.lines {
		a.Add(v.Line, item)
	}
	return true
}
