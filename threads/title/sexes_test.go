package title_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/title"
)

// Sexes in a list are one for each end, however they are parted; a size behind one begins
// another end. None of them is read past.
func TestSexesInAList(t *testing.T) {
	m, f := threads.Male, threads.Female
	for text, want := range map[string][]threads.Sex{
		"tee 1/2 NPT male, female, female":      {m, f, f},
		"tee 1/4 BSPP F, F, M, 316":             {f, f, m},
		"T-Stück 3/8 NPT AG, IG, IG, PN 250":    {m, f, f},
		"T-Stück 3/8 NPT AG/IG/IG":              {m, f, f},
		"T-stuk 1/2 NPT bi-bi-bu":               {f, f, m},
		"Té 1/2 NPT mâle, femelle, femelle":     {m, f, f},
		"adaptor 1/2 NPT male, female, bronze":  {m, f},
		"adaptor 1/2 NPT male, female 3/8 NPT":  {m, f},
		"elbow 3/4 BSPT M, F 1/2 BSPT":          {m, f},
		"hose tail 1/2 NPT male, 13 mm, bronze": {m, threads.NoSex},
	} {
		r := title.Read(text)
		var got []threads.Sex
		for i := range r.Ends {
			require.NotEmpty(t, r.Ends[i].Candidates, text)
			got = append(got, r.Ends[i].Candidates[0].Sex)
		}
		require.Equal(t, want, got, text)
	}
}
