package threads

import (
	"encoding/csv"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// published reads a table of testdata/published.
func published(t testing.TB, name string) []row {
	t.Helper()
	file, err := os.Open("../testdata/published/" + name)
	require.NoError(t, err)
	defer file.Close()
	lines, err := csv.NewReader(file).ReadAll()
	require.NoError(t, err)
	var out []row
	for _, line := range lines[1:] {
		r := row{}
		for i, heading := range lines[0] {
			r[heading] = line[i]
		}
		out = append(out, r)
	}
	return out
}

// endsOf makes the ends that words such as "G 1/2 male chamfer" stand for: the
// family, the size ("same" and "any" mean every size), the sex, then swivel,
// plastic and one seal.
func endsOf(t testing.TB, words string) []End {
	t.Helper()
	family, rest, _ := strings.Cut(words, " ")
	f, ok := FamilyNamed(family)
	require.True(t, ok, "%s is no family", family)
	size, sex, after := splitSex(t, rest)
	var out []End
	for _, form := range Forms(f) {
		if size != "same" && size != "any" && size != form.Size {
			continue
		}
		end := Threaded(form, sex)
		for _, word := range strings.Fields(after) {
			switch word {
			case "swivel":
				end.Swivel = true
			case "plastic":
				end.Plastic = true
			default:
				end.Seal, ok = SealNamed(word)
				require.True(t, ok, "%s is no seal", word)
			}
		}
		out = append(out, end)
	}
	require.NotEmpty(t, out, "%s has no size %s", family, size)
	return out
}

func endOf(t testing.TB, words string) End {
	t.Helper()
	ends := endsOf(t, words)
	require.Len(t, ends, 1, words)
	return ends[0]
}

func splitSex(t testing.TB, words string) (size string, sex Sex, after string) {
	t.Helper()
	for _, s := range []Sex{Female, Male} {
		if before, after, found := strings.Cut(words, " "+s.String()); found {
			return before, s, after
		}
	}
	require.Fail(t, "no sex", words)
	return "", NoSex, ""
}
