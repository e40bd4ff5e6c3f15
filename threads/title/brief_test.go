package title

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// brief writes ends in short, for tables of a line each: "PIPE 1/2 male; BARB 13 mm".
// PIPE is a pipe thread of any standard, BSP one of the British ones, TUBE a tube whose
// grip is not said; other families stand by their names. "?" is an end that is not read.
func brief(ends []threads.EndReading) string {
	var out []string
	for _, e := range ends {
		out = append(out, briefEnd(e))
	}
	return strings.Join(out, "; ")
}

func briefEnd(e threads.EndReading) string {
	if len(e.Candidates) == 0 {
		return "?"
	}
	var families, sizes []string
	for _, c := range e.Candidates {
		if !slices.Contains(families, c.Family.String()) {
			families = append(families, c.Family.String())
		}
		if !slices.Contains(sizes, c.Size) {
			sizes = append(sizes, c.Size)
		}
	}
	slices.Sort(families)
	name := strings.Join(families, "/")
	if short, ok := briefNames[name]; ok {
		name = short
	}
	first := e.Candidates[0]
	words := []string{name, strings.Join(sizes, "|")}
	if first.Family.Threaded() && e.Sex != threads.NoSex {
		words = append(words, e.Sex.String())
	}
	if first.Swivel {
		words = append(words, "swivel")
	}
	if first.Seal != threads.NoSeal {
		words = append(words, first.Seal.String())
	}
	if first.Plastic {
		words = append(words, "plastic")
	}
	if first.Left {
		words = append(words, "LH")
	}
	return strings.Join(words, " ")
}

// briefNames are sets of families that a text leaves open.
var briefNames = map[string]string{
	"G/NPT/R": "PIPE", "G/NPT/Rc/Rp": "PIPE", "G/NPT/R/Rc/Rp": "PIPE",
	"G/R": "BSP", "G/Rc/Rp": "BSP", "G/R/Rc/Rp": "BSP",
	"COMPRESSION/PUSH": "TUBE", "COMPRESSION": "COMP",
}

// titled is a shop's line with what a person reads in it.
type titled struct{ text, ends, kind, material string }

// readTitled reads each line and compares; what stands empty is not looked at.
func readTitled(t *testing.T, rows []titled) {
	t.Helper()
	for _, row := range rows {
		t.Run(row.text, func(t *testing.T) {
			r := Read(row.text)
			require.Equal(t, row.ends, brief(r.Ends))
			if row.kind != "" {
				require.Equal(t, row.kind, r.Kind)
			}
			if row.material != "" {
				require.Equal(t, row.material, r.Material)
			}
		})
	}
}
