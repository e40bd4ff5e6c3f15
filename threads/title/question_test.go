package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// The one question that decides an open end names what it is between and what to look at.
func TestWhatIsAsked(t *testing.T) {
	for _, row := range []struct{ why, text, part string }{
		{"nothing is open", "Elbow 1/2 NPT F", ""},
		{"parallel or taper", "Hex nipple 1/2 BSP brass", "parallel (G) or taper (R)"},
		{"British or American", `Hex nipple 1/2" brass`, "G 1/2, R 1/2 or 1/2-14 NPT"},
		{"two that a washer closes", "Hydraulic hose 1/2 F swivel both ends", "G 1/2 or 1/2-14 NPSM"},
		{"barb, push-in or ring", "Adaptor 1/2 NPT male x 1/2 PEX", "a barb, a push-in end or a compression end"},
		{"push-in or ring", "Adaptor 1/2 NPT male x 12 mm tube", "push in, or is it held by a ring and a nut"},
		{"which cone", "M30x2 24 cone male fitting adaptor", "Which tube does the cone take: 22L M30x2 or 20S M30x2"},
		{"which pitch", "Plug M14", "What is the pitch of the M14"},
		{"tube or thread", "Adaptor 3/4 JIC male x 1/2 NPT male", "Does the size name the tube or the thread"},
		{"how it seals", "Plug 9/16-18 UNF", "How does the 9/16-18 male seal"},
		{"the sex", "Union 1/2 NPT", "male or female? The text does not say"},
		{"the sex, of which the text says both", "Plug 1/2 NPT male/female", "The text says both"},
		{"the usual sex", "Ball valve 1/2 NPT", "Is the 1/2-14 NPT female? Such a shut-off valve mostly is"},
		{"the usual sex with an open family", "Ball valve 1/2", "mostly is female, which the text does not say"},
		{"the size of a tail", "Hose tail 1/2 NPT male", "What hose fits the barb"},
		{"R called female", "Socket R 1/2 female", "R is a male thread, and the text says female"},
		{"Rc called male", "Plug Rc 1/2 male", "Rc is a female thread, and the text says male"},
		{"the size", "Adaptor NPT female x 1/2 BSPP male", ""},
		{"a date of a spreadsheet", "Elbow 4-Mar NPT F", "which a spreadsheet has turned into a date"},
		{"two sizes of which one is meant", "Plug 1/2 or 3/4 NPT", "The text gives both"},
		{"two parts in one line", "Ball valve 1/2 NPT F + hose tail 1/2 NPT M x 13 mm", "The text joins two parts by a plus"},
	} {
		t.Run(row.why, func(t *testing.T) { asks(t, row.why, row.part, Read(row.text).Ends) })
	}
}

// A size that its family has not is asked with its neighbours on either side; beyond the table's end
// there is one.
func TestNeighboursOfASize(t *testing.T) {
	for text, near := range map[string]string{
		"-7 JIC male":           "The nearest are 9/16-18 JIC -6 and 3/4-16 JIC -8", // SAE J514 has no -7
		"3/4-14 JIC male":       "The nearest are 3/4-16 JIC -8 and 7/8-14 JIC -10",
		"M23x1.5 male":          "The nearest are M22x",
		"5/8 NPT male":          "The nearest are 1/2-14 NPT and 3/4-14 NPT",
		"M17x1.5 ISO 6149 male": "The nearest are M16x1.5 ISO 6149 and M18x1.5 ISO 6149",
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Empty(t, r.Candidates, text)
		require.Contains(t, r.Question, near, text)
	}
}

func TestArticle(t *testing.T) {
	for word, want := range map[string]string{"elbow": "an elbow", "O-ring": "an O-ring", "tee": "a tee", "": "a "} {
		require.Equal(t, want, article(word))
	}
}
