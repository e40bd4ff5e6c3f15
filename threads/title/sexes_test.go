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

// Two sexes at a size that has one end, or beside another size with its own sex, say nothing of it:
// the end is open and its question says so. No sex that is said of the other size is overwritten.
func TestTwoSexesForOneEnd(t *testing.T) {
	m, f, open := threads.Male, threads.Female, threads.NoSex
	for text, want := range map[string][]threads.Sex{
		"plug 1/2 NPT male female":                       {open},
		"Stopfen 3/8 NPT AG/IG":                          {open},
		"cap 3/4 NPT male/female":                        {open},
		"locknut 1/2 NPT F/M":                            {open},
		"pressure gauge 1/4 NPT male female":             {open},
		"hose tail 1/2 NPT male/female 13 mm":            {open, open},
		"adapter 1/2 NPT male/female x 3/4 NPT male":     {open, m},
		"adaptador 3/4 NPT macho x 1/2 NPT macho/hembra": {m, open},
		"ball valve 1/2 NPT M/F x 3/4 NPT M":             {open, m},
		"adapter 1/2 NPT male/female x 3/4 NPT female":   {m, f},
		"tee 1/2 NPT M/F/F x 3/4 NPT M":                  {open, open, m},
		"tee 1/2 NPT M/F/F x 3/4 NPT F":                  {m, f, f},
		"tee 1/2 NPT F/F x 3/4 NPT M":                    {f, f, m},
		"tee 3/4 NPT M x 1/2 NPT F/F":                    {m, f, f},
		"nipple 1/2 NPT M/M x 3/4 NPT M":                 {m, m},
		"adapter 1/2 NPT M/M x 3/4 NPT F/F":              {m, f},
		"plug 1/2 NPT M/M":                               {m},
	} {
		r := title.Read(text)
		var got []threads.Sex
		for i := range r.Ends {
			e := &r.Ends[i]
			got = append(got, e.Sex)
			if e.Sex == open && e.Candidates[0].Family.Threaded() {
				require.Contains(t, e.Question, "male or female? The text says both", text)
			}
		}
		require.Equal(t, want, got, text)
	}
}
