// Package endtest makes ends and reads published figures for the tests of the
// packages under threads. It is built into no program.
package endtest

import (
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/table"
)

// Published reads a table of testdata/published, for a test that runs in a
// package one floor below threads.
func Published(t testing.TB, name string) []table.Row {
	t.Helper()
	return table.Read(os.DirFS("../../testdata/published"), name)
}

// EndsOf makes the ends that words such as "G 1/2 male chamfer" stand for: the
// family, the size ("same" and "any" mean every size), the sex, then swivel,
// plastic and one seal.
func EndsOf(t testing.TB, words string) []threads.End {
	t.Helper()
	family, rest, _ := strings.Cut(words, " ")
	f, ok := threads.FamilyNamed(family)
	require.True(t, ok, "%s is no family", family)
	size, sex, after := splitSex(t, rest)
	var out []threads.End
	for _, form := range threads.Forms(f) {
		if size != "same" && size != "any" && size != form.Size {
			continue
		}
		end := threads.Threaded(form, sex)
		for _, word := range strings.Fields(after) {
			switch word {
			case "swivel":
				end.Swivel = true
			case "plastic":
				end.Plastic = true
			default:
				end.Seal, ok = threads.SealNamed(word)
				require.True(t, ok, "%s is no seal", word)
			}
		}
		out = append(out, end)
	}
	require.NotEmpty(t, out, "%s has no size %s", family, size)
	return out
}

// EndOf makes the one end that words stand for.
func EndOf(t testing.TB, words string) threads.End {
	t.Helper()
	ends := EndsOf(t, words)
	require.Len(t, ends, 1, words)
	return ends[0]
}

func splitSex(t testing.TB, words string) (size string, sex threads.Sex, after string) {
	t.Helper()
	for _, s := range []threads.Sex{threads.Female, threads.Male} {
		if before, after, found := strings.Cut(words, " "+s.String()); found {
			return before, s, after
		}
	}
	require.Fail(t, "no sex", words)
	return "", threads.NoSex, ""
}

// ThreadFamilies lists the families that have a thread.
func ThreadFamilies() []threads.Family {
	var out []threads.Family
	for _, f := range threads.Families() {
		if f.Threaded() {
			out = append(out, f)
		}
	}
	return out
}

// Sexes lists the sexes that a family comes in.
func Sexes(f threads.Family) []threads.Sex {
	if only := f.Facts().Only; only != threads.NoSex {
		return []threads.Sex{only}
	}
	return []threads.Sex{threads.Male, threads.Female}
}
