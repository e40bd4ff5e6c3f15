package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestClassGapSaysWhatTheClassLacks(t *testing.T) {
	for _, c := range []struct{ why, class, material, family, size, want string }{
		{"a thread of another standard", "class 3000", "SUS316L", "Rc", "3/8", "class 3000 is of a standard for NPT threads, and says nothing of Rc"},
		{"a parallel thread", "class 6000", "316", "G", "1/2", "class 6000 is of a standard for NPT threads, and says nothing of G"},
		{"a metal of another standard", "class 3000", "bronze", "NPT", "1/2", "class 3000 is known in 316, 316L, 304 and steel, and not in bronze"},
		{"a metal in no table", "class 3000", "oak", "NPT", "1/2", "`oak` is no material that the tables of class 3000 know"},
		{"a bare figure is no class", "3000", "316", "NPT", "1/2", "`3000` is no class that is known: write \"class 3000\""},
		{"a metal that goes by its stress", "class 3000", "904L", "NPT", "1/2", ""},
		{"a size beyond the table", "class 3000", "316", "NPT", "6", "class 3000 is not known for the size 6"},
		{"a class in no table", "class 9000", "316", "NPT", "1/2", "class 9000 stands in no table that is known"},
		{"no class at all", "high pressure", "316", "NPT", "1/2", "`high pressure` is no class that is known"},
		{"a figure is known", "class 3000", "SUS316", "NPT", "1/2", ""},
		{"PN is its own figure", "PN 16", "bronze", "Rc", "1/2", ""},
		{"nothing is claimed", "", "316", "Rc", "1/2", ""},
	} {
		t.Run(c.why, func(t *testing.T) {
			require.Equal(t, c.want, ClassGap(c.class, c.material, c.family, false, c.size))
		})
	}
}
