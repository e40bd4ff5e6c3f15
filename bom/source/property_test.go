package source

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// writer makes a document at random. Each value that is no list and no table holds
// a number of its own, so that a place can be told to be the right one.
type writer struct {
	t    *rapid.T
	text strings.Builder
	next int
	line string // the line end
}

func (w *writer) pick(from ...string) string { return rapid.SampledFrom(from).Draw(w.t, "pick") }

func (w *writer) put(parts ...string) {
	for _, p := range parts {
		w.text.WriteString(p)
	}
}

// blank writes what may stand between two lines.
func (w *writer) blank() {
	w.put(w.pick("", "", w.line, "  # a [comment] = \"with 'quotes"+w.line, " \t"+w.line))
}

// keys gives some keys that differ, as they are written. The empty key is left out:
// the library drops elements of a list with a table under it.
func (w *writer) keys() []string {
	pool := []string{"id", "kind", "a-b", "x_1", "7", `"in let"`, `'a.b'`, `"]"`, `'#'`, `"q\"t"`, `"é°"`, "ports"}
	return rapid.SliceOfNDistinct(rapid.SampledFrom(pool), 1, 5, rapid.ID[string]).Draw(w.t, "keys")
}

// scalar writes one value with the next number.
func (w *writer) scalar() {
	w.next++
	n := strconv.Itoa(w.next)
	w.put(w.pick(
		n, `"`+n+` \" ] } # [x]"`, `'`+n+` \'`, `"""`+w.line+n+` "" ] \""""`, `'''`+n+w.line+`[[item]] ''`+w.line+`x = '''`,
	))
}

// value writes any value; lines says whether it may run over several.
func (w *writer) value(depth int) {
	kind := rapid.IntRange(0, 5).Draw(w.t, "kind")
	switch {
	case depth > 2 || kind < 3:
		w.scalar()
	case kind < 5:
		w.put("[")
		for range rapid.IntRange(0, 3).Draw(w.t, "elements") {
			w.blank()
			w.value(depth + 1)
			w.put(w.pick("", " "), ",")
		}
		w.blank()
		w.put("]")
	default:
		w.put("{")
		for i, key := range w.keys() {
			if i > 0 {
				w.put(",")
			}
			w.blank()
			w.put(w.pick("", " "), key, w.pick("", " . sub"), w.pick("=", " = "))
			w.value(depth + 1)
		}
		w.put(w.pick("", " ", w.line), "}")
	}
}

// pairs writes the keys of one table.
func (w *writer) pairs() {
	for _, key := range w.keys() {
		w.blank()
		w.put(w.pick("", "  ", "\t"), key, w.pick("", "", ".sub", ` . "s b"`), w.pick("=", " = ", "\t=  "))
		w.value(0)
		w.put(w.pick("", " # ] remark"), w.line)
	}
}

func (w *writer) document() string {
	w.line = w.pick("\n", "\r\n")
	w.pairs()
	for i := range rapid.IntRange(0, 4).Draw(w.t, "sections") {
		name := fmt.Sprintf("s%d", i)
		if rapid.Bool().Draw(w.t, "list") {
			for range rapid.IntRange(1, 3).Draw(w.t, "elements") {
				w.put(w.pick("[[", "  [[ "), name, w.pick("]]", " ]] # [x]"), w.line)
				w.pairs()
				w.put(w.pick("", "["+name+".within.deep]"+w.line+"z = 0"+w.line))
				w.put(w.pick("", "[["+name+".more]]"+w.line+"[["+name+".more]]"+w.line+"z = 0"+w.line))
			}
			continue
		}
		w.put("[", name, w.pick("", ".implied", ` . "im plied"`), "]", w.line)
		w.pairs()
	}
	text := w.text.String()
	return rapid.SampledFrom([]string{text, strings.TrimSuffix(text, w.line)}).Draw(w.t, "end")
}

func TestEveryPlaceIsTheRightOne(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := (&writer{t: t}).document()
		doc := parsed(t, text)
		paths(doc.values, nil, func(p Path) {
			located(t, doc, p)
			want := ""
			switch value := at(doc.values, p).(type) {
			case string:
				want = strings.TrimLeft(value, "\r\n")
				want, _, _ = strings.Cut(want, " ")
				want, _, _ = strings.Cut(want, "\r")
				want, _, _ = strings.Cut(want, "\n")
			case int64:
				want = strconv.FormatInt(value, 10)
			default:
				return
			}
			offset := doc.offset(p, false)
			got := strings.TrimLeft(doc.text[offset:], "\"'\r\n")
			require.True(t, strings.HasPrefix(got, want), "%v: %q at the place of %q", p, clip(got, 20), want)
			place := doc.value(p)
			require.Equal(t, strings.Count(doc.text[:offset], "\n")+1, place.Line)
			line := strings.TrimSuffix(strings.Split(doc.text, "\n")[place.Line-1], "\r")
			require.Equal(t, line, place.Text)
			require.True(t, strings.HasPrefix(doc.text[offset:], string([]rune(line)[place.Column-1:])))
		})
	})
}

// at walks a path through a decoded tree.
func at(v any, path Path) any {
	for _, step := range path {
		switch value := v.(type) {
		case map[string]any:
			v = value[step.(string)]
		case []map[string]any:
			v = value[step.(int)]
		case []any:
			v = value[step.(int)]
		}
	}
	return v
}

// A word put into a good document makes it faulty there, and the line it is on is
// the one that is reported first.
func TestAFaultIsReportedOnItsLine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 30).Draw(t, "items")
		bad := rapid.SliceOfNDistinct(rapid.IntRange(0, n-1), 1, min(n, 5), rapid.ID[int]).Draw(t, "bad")
		lines := strings.Split(manyItems(n), "\n")
		want := map[int]bool{}
		for _, i := range bad {
			line := 3 + i*11 + rapid.IntRange(1, 9).Draw(t, "key")
			lines[line] = rapid.SampledFrom([]string{
				"rated = 55 bar", "id = x", "flow: 5", "p = { in = 5 L/h }", "q = [1 2]", "bore = \"3/8\"\"", "n = \"abc", "k", "// x", "v = 007",
			}).Draw(t, "line")
			want[line+1] = true
		}
		_, faults := Parse("k.toml", []byte(strings.Join(lines, "\n")))
		got := map[int]bool{}
		for _, f := range faults {
			got[f.Line] = true
			require.NotEmpty(t, f.Reason)
			require.NotEmpty(t, f.Remedy)
		}
		require.Equal(t, want, got, "each bad line once, and no line that is good")
		require.Len(t, faults, len(want))
	})
}
