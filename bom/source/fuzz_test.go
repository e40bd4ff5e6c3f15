package source

import (
	"slices"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"
)

func FuzzParse(f *testing.F) {
	for _, row := range slices.Concat(syntaxRows, parseRows) {
		f.Add([]byte(row.text))
	}
	f.Add([]byte(manyItems(2)))
	f.Add([]byte("a = { b . 'c' = [ 1, { d = '''x''' } ] }\r\n[[x.y]]\r\n[x.y.z]\r\n\"\\u0041\" = 1979-05-27 07:32:00\r\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		doc, faults := Parse("k.toml", text)
		require.Equal(t, doc == nil, len(faults) > 0, "a document or faults, never both")
		require.LessOrEqual(t, len(faults), mostFaults)
		for _, fault := range faults {
			require.NotEmpty(t, fault.Reason)
			require.NotEmpty(t, fault.Remedy)
			require.True(t, utf8.ValidString(fault.Error()))
		}
		_, again := Parse("k.toml", text)
		require.Equal(t, faults, again, "the same input, the same faults")
		if doc == nil {
			return
		}
		r := NewReader(doc)
		root := r.Root()
		emptyKey := false // under which the library drops elements of a list
		paths(doc.values, nil, func(p Path) {
			key, ok := p[len(p)-1].(string)
			emptyKey = emptyKey || ok && key == ""
		})
		if emptyKey {
			return
		}
		paths(doc.values, nil, func(p Path) { located(t, doc, p) })
		for _, key := range root.Keys() {
			root.Text(key, "5 bar")
			root.RequiredTexts(key)
			root.Whole(key)
			root.Bool(key)
			root.Date(key)
			root.Table(key)
			for _, element := range root.Tables(key) {
				element.RequiredText("id")
				element.Done()
			}
		}
		root.Done()
		for _, fault := range r.Faults() {
			require.True(t, utf8.ValidString(fault.Error()))
		}
	})
}

// The locator and the nesting also run on text that is not TOML, up to a fault.
func FuzzLocate(f *testing.F) {
	for _, row := range slices.Concat(syntaxRows, parseRows) {
		f.Add(row.text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n := nestingOf(text)
		require.LessOrEqual(t, len(n.open), deepest)
		if n.excess >= 0 {
			return
		}
		l := locate(text)
		lines := linesOf(text)
		for _, s := range l.spots {
			require.LessOrEqual(t, int(s.value), len(text))
			lines.place("k.toml", text, int(s.key))
		}
	})
}
