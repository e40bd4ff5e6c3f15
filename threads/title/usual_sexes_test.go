package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// The sex that an end's own words, its class, its nut or its kind give (sexes.go): what is only custom is asked.
func TestWhereASexComesFrom(t *testing.T) {
	for _, row := range []struct {
		why, text, ends string
		asked           bool // whether the sex is asked about, the family being closed
	}{
		{"a word", "Elbow 1/2 NPT male", "NPT 1/2 male; NPT 1/2 male", false},
		{"the letter R is male", "Fitting R 1/2 x 10 mm barb", "R 1/2 male; BARB 10 mm", false},
		{"Rp is female", "Fitting Rp 1/2 x 10 mm barb", "Rp 1/2 female; BARB 10 mm", false},
		{"a class of fit", "Fitting M22x1.5-6H x 10 mm barb", "M M22x1.5 female; BARB 10 mm", false},
		{"a nut", "Hose 1/2 NPT union nut x 10 mm barb", "NPT 1/2 female swivel; BARB 10 mm", false},
		{"a plug is male", "Plug 1/2 NPT", "NPT 1/2 male", false},
		{"a cap is female", "Cap 1/2 NPT", "NPT 1/2 female", false},
		{"a coupling is female", "Coupling 1/2 NPT", "NPT 1/2 female; NPT 1/2 female", false},
		{"a nipple is male", "Nipple 1/2 NPT", "NPT 1/2 male; NPT 1/2 male", false},
		{"a bush: the larger male, the smaller female", "Bush 3/4 x 1/2 NPT", "NPT 3/4 male; NPT 1/2 female", false},
		{"said the other way round", "Bush 1/2 x 3/4 NPT", "NPT 1/2 female; NPT 3/4 male", false},
		{"a sex said once of a bush is its outside", "Bush 3/4 x 1/2 NPT male", "NPT 3/4 male; NPT 1/2 female", true},
		{"each said", "Bush 3/4 NPT male x 1/2 NPT male", "NPT 3/4 male; NPT 1/2 male", false},
		{"an elbow is mostly female", "Elbow 1/2 NPT", "NPT 1/2 female; NPT 1/2 female", true},
		{"a flared elbow is not", "Elbow 9/16-18 JIC", "JIC -6; JIC -6", true},
		{"a street elbow is one of each", "Street elbow 1/2 NPT", "NPT 1/2 male; NPT 1/2 female", false},
		{"a gauge is mostly male", "Pressure gauge 1/4 NPT", "NPT 1/4 male", true},
		{"a hose tail is mostly male", "Hose tail 1/2 NPT x 13 mm", "NPT 1/2 male; BARB 13 mm", true},
		{"its swivel is mostly female", "Hose tail 1/2 NPT swivel x 13 mm", "NPT 1/2 female swivel; BARB 13 mm", true},
		{"a male stud's cone", "Male stud coupling G 1/4 x 8L", "G 1/4 male; 24L 8L male", true},
		{"a garden valve's hose thread is male", "Garden valve 3/4 GHT", "NH 3/4 male; NH 3/4 male", true},
		{"a cap with another size is an adaptor", "Cap 1/2 NPT x 3/8 NPT", "NPT 1/2 female; NPT 3/8 female", true},
		{"a union is either", "Union 1/2 NPT", "NPT 1/2; NPT 1/2", true},
		{"an end called by a part of one end", "Elbow 1/2 NPT female x 3/8 NPT plug", "NPT 1/2 female; NPT 3/8 male", false},
		{"two ends called by two parts", "3/4 nippel x 1/2 muffe NPT", "NPT 3/4 male; NPT 1/2 female", false},
	} {
		t.Run(row.why, func(t *testing.T) {
			r := Read(row.text)
			require.Equal(t, row.ends, brief(r.Ends), row.text)
			asked := false
			for _, e := range r.Ends {
				asked = asked || e.Question != ""
			}
			require.Equal(t, row.asked, asked, row.text)
		})
	}
}

// R on a part whose ends are mostly female may be the trade's R of a female (DIN 2999): every reading is kept and
// asked. A word for a sex, for taper, or a male part closes it.
func TestTheRofAFemaleBody(t *testing.T) {
	for text, open := range map[string]bool{
		"Kugelhahn R 1/2": true, "Ball valve R 1/2 taper": false, "Kugelhahn R 1/2 AG": false, "Kugelhahn R 1/2 x 3/4 AG": false, "Nippel R 1/2": false, "Kugelhahn Rp 1/2": false, "Kugelhahn R15": false,
	} {
		r := Read(text)
		require.NotEmpty(t, r.Ends, text)
		asked := len(r.Ends[0].Candidates) > 1 && r.Ends[0].Sex == threads.NoSex && r.Ends[0].Candidates[0].Family == threads.Rp
		require.Equal(t, open, asked, "%s: %s", text, brief(r.Ends))
	}
}

// Sexes in a list go to as many ends as the part has; one said twice of one end is one, two that differ leave it
// open (twosexes.go).
func TestListsOfSexes(t *testing.T) {
	readMeant(t, []lineMeant{
		{"both of one plug", "Plug 1/2 NPT M/M", "NPT 1/2 male"},
		{"two that differ of a plug", "Plug 1/2 NPT M/F", "NPT 1/2"},
		{"of a tail's one thread", "Hose tail 1/2 NPT M/F x 13 mm", "NPT 1/2; BARB 13 mm"},
		{"of a nut", "Locknut 1/2 NPT F/F", "NPT 1/2 female"},
		{"four of a tee are too many", "Tee 1/2 NPT M F M F", "NPT 1/2; NPT 1/2; NPT 1/2"},
		{"two that differ of a tee: the third is open", "Tee 1/2 NPT M/F", "NPT 1/2 male; NPT 1/2 female; NPT 1/2"},
		{"two alike of a tee", "Tee 1/2 NPT F/F", "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female"},
		{"three of a tee", "Tee 1/2 NPT M F F", "NPT 1/2 male; NPT 1/2 female; NPT 1/2 female"},
		{"two of one size are the run, one of the other the branch", "Tee 1/2 NPT F/F x 3/8 NPT M", "NPT 1/2 female; NPT 1/2 female; NPT 3/8 male"},
		{"two ends' sexes, and the second's again", "Adaptor 1/2 NPT M/F x 3/4 NPT F", "NPT 1/2 male; NPT 3/4 female"},
		{"two at one size, beside one of its own: which is open", "Adaptor 1/2 NPT M/F x 3/4 NPT M", "NPT 1/2; NPT 3/4 male"},
		{"one sex said in two languages is one", "Plug 1/2 NPT male AG", "NPT 1/2 male"},
	})
}

// A word beside the sexes that may be one more, misspelt, opens them (twosexes.go, strange.go).
func TestAMisspeltSexAmongSexes(t *testing.T) {
	for _, text := range []string{"Tee 1/2 NPT male femael male", "Tee 1/2 NPT femalle male male"} {
		for _, e := range Read(text).Ends {
			require.Equal(t, threads.NoSex, e.Sex, text)
			require.Contains(t, e.Question, "Not understood", text)
		}
	}
	// short words and words of two letters changed are no misspelt sexes
	for _, text := range []string{"Ball valve 1/2 NPT mab", "Ball valve 1/2 NPT mimosa", "Ball valve 1/2 NPT fondle"} {
		for _, e := range Read(text).Ends {
			require.Equal(t, threads.Female, e.Sex, "%s: what is usual stands", text)
		}
	}
}
