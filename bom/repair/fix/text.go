package fix

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"handtight/bom/repair"
	"handtight/bom/source"
)

type faultList = source.Faults

// offset is the place in a text of a line and a column, both counted from 1, columns in
// characters.
func offset(text string, line, column int) (int, bool) {
	at := 0
	for range line - 1 {
		i := strings.IndexByte(text[at:], '\n')
		if i < 0 {
			return 0, false
		}
		at += i + 1
	}
	for range column - 1 {
		if at >= len(text) {
			return 0, false
		}
		_, n := utf8.DecodeRuneInString(text[at:])
		at += n
	}
	return at, true
}

// addItems puts new items behind the last of the file's own, in its style of line ends.
func addItems(text string, items []string) string {
	if len(items) == 0 {
		return text
	}
	end := "\n"
	if strings.Contains(text, "\r\n") {
		end = "\r\n"
	}
	block := ""
	for _, it := range items {
		block += end + strings.ReplaceAll(strings.TrimSuffix(it, "\n"), "\n", end) + end
	}
	if text != "" && !strings.HasSuffix(text, "\n") {
		text += end
	}
	return text + block
}

// itemID names the item that takes a unit's place.
func itemID(r *repair.Remedy) string {
	parts := strings.FieldsFunc(strings.ToLower(r.New.Kind+" "+strings.Join(r.New.Texts, " ")+" "+r.New.Material), func(c rune) bool {
		return !(c >= 'a' && c <= 'z' || c >= '0' && c <= '9')
	})
	return strings.Join(parts, "-")
}

// item writes the stock item with the port names of the unit that it replaces.
func item(r *repair.Remedy, id string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "[[item]]\nid       = %q\nkind     = %q\nabout    = %q\nports    = { ", id, r.New.Kind, r.New.Words)
	for i, p := range r.Unit.Item.Ports {
		if i > 0 {
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%s = '%s'", p.Name, r.New.Texts[i])
	}
	fmt.Fprintf(&b, " }\nmaterial = %q\n", r.New.Material)
	switch {
	case r.New.Class != "":
		fmt.Fprintf(&b, "class    = %q\n", r.New.Class)
	case r.New.Rated != "":
		fmt.Fprintf(&b, "# rated = %q           the usual claim: write what its data sheet says\n", r.New.Rated)
	default:
		b.WriteString("# rated = \"…\"              from its data sheet\n")
	}
	return b.String()
}
