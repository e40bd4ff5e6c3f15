package title

import (
	"fmt"
	"strings"
	"testing"

	"handtight/threads"
	"handtight/threads/makeup"
)

// What a word on an end comes to, written down before it was asked: "holds", "low" (for low pressure only),
// "no", or "asked" (more than one reading, a question, or a word that is named as not read).
const (
	holds   = "holds"
	low     = "low"
	no      = "no"
	inquiry = "asked"
)

var statedWords = []struct {
	a, b, want string
	closes     string // stands in what closes it, or in the make-up
	never      string // stands in neither
}{
	{"G 1/2 male LH", "G 1/2 female", no, "", ""},
	{"G 1/2 male", "G 1/2 female left hand", no, "", ""},
	{"G 1/2 male LH", "G 1/2 female LH", holds, "washer", ""},
	{"G 1/2 Linksgewinde male", "G 1/2 female", no, "", ""},
	{"G 1/2 male sinistro", "G 1/2 female", no, "", ""},
	{"G 1/2 male gauche", "G 1/2 female", no, "", ""},
	{"G 1/2 male izquierda", "G 1/2 female", no, "", ""},
	{"1/2 NPT male LH", "1/2 NPT female", no, "", ""},
	{"AGR G 1/2", "DKR G 1/2", holds, "", "gasket"},
	{"DKOR G 1/2", "AGR G 1/2", holds, "O-ring", "cutting ring"},
	{"DRF G 1/2", "G 1/2 male", holds, "gasket", ""},
	{"DKOL 12L", "12L male", holds, "O-ring", "cutting ring"},
	{"DKOS 12S", "12S male", holds, "O-ring", "cutting ring"},
	{"DKL 12L", "CEL 12L", holds, "", "cutting ring"},
	{"DKOL 12L", "12S male", no, "", ""},
	{"12L male", "12S female", no, "", ""},
	{"BEL 12L", "CEL 12L", holds, "cutting ring", ""},
	{"BEL M18x1.5", "CEL 12L", holds, "cutting ring", ""}, // by the thread of its nut: sizes of ISO 8434-1
	{"BES M18x1.5", "12L male", no, "", ""},
	{"G 1/2 female swivel 60 cone", "G 1/2 male chamfer", holds, "", "washer"},
	{"G 1/2 female swivel 60 cone", "G 1/2 male", no, "", ""},
	{"G 1/2 female swivel 60 cone", "R 1/2 60 cone", low, "", ""},
	{"9/16-18 JIC male", "9/16-18 female swivel 45", inquiry, "", ""},
	{"G 1/2 male form A", "G 1/2 female", holds, "washer", ""},
	{"G 1/2 male form E", "G 1/2 female", holds, "", "bonded washer"},
	{"G 1/2 male form B", "G 1/2 female", holds, "", "bonded washer"},
	{"M16x1.5 male form E", "M16x1.5 female", holds, "", "bonded washer"},
	{"M16x1.5 male ISO 6149", "M16x1.5 female ISO 6149", holds, "O-ring", "bonded washer"},
	{"3/4 NH male", "3/4 NH female swivel", holds, "washer", "wraps"},
	{"1 NPSH male", "1 NPSH female swivel", holds, "", "bedding"},
	{"M10x1 male keg", "M10x1 female ISO 6149", no, "", ""},
	{"M22x1.5 male 14 mm", "M22x1.5 female 15 mm", no, "", ""},
	{"M22x1.5 male 14 mm", "M22x1.5 female 14 mm", holds, "", ""},
	{"1 1/2 in ferrule", "1 in ferrule", holds, "gasket", ""},
	{"1 1/2 in ferrule", "2 in ferrule", no, "", ""},
	{"1/2 in ferrule", "3/4 in ferrule", holds, "gasket", ""},
	{"DN 25 ferrule", "DN 40 ferrule", holds, "gasket", ""},
	{"10 mm compression", "10 mm push-in", no, "", ""},
	{"10 mm tube", "10 mm push-in", inquiry, "", ""},
	{"10 mm tube", "10 mm compression", inquiry, "", ""},
	{"1/4 in tube", "6 mm push-in", no, "", ""},
	{"6 mm tube", "1/4 in push-in", no, "", ""},
	{"12 mm tube", "1/2 in push-in", no, "", ""},
	{"10 mm tube", "3/8 in push-in", no, "", ""},
	{"06 JIC male", "-6 JIC female swivel", holds, "", ""},
	{"-6 SAE male", "-6 JIC female swivel", no, "", ""},
	{"1/2 NPT male F316", "1/2 NPT female", holds, "", ""},
	{"1/2 NPT F316", "1/2 NPT female", inquiry, "", ""}, // a grade is no sex
	{"1/2 NPT male A182 F316L", "1/2 NPT female", holds, "", ""},
	{"R 1/2", "Rp 1/2", holds, "", ""},
	{"R 1/2", "Rc 1/2", holds, "", ""},
	{"G 1/2 male", "Rp 1/2", low, "", ""},
	{"G 1/2 male class B", "G 1/2 female", holds, "washer", ""},
	{"1/2 NPT male short", "1/2 NPT female", inquiry, "", ""},
	{"R 1/2 extra short", "Rp 1/2", inquiry, "", ""},
	{"M25x2 male", "G 3/4 female", no, "", ""},
	{"G 3/4 male", "M25x2 female", no, "", ""},
	{"M25x2 male", "M25x2 female", holds, "", ""},
	{"PG16 male", "G 5/8 female", no, "", ""},
	{"PG13.5 male", "G 1/2 female", no, "", ""},
	{"5/8 BSF male", "G 3/8 female", no, "", ""},
	{"G 5/8 male", "G 5/8 female", holds, "", ""},
	{"W21.8-1/14 male", "G 1/2 female", inquiry, "", ""},
	{"M10x1 KR male", "M10x1 female", inquiry, "", ""},
	{"M10x1 male grease nipple", "M10x1 female", inquiry, "", ""},
	{"M10x1 male brake", "M10x1 female brake", inquiry, "", ""},
	{"Rd 44x1/6 male", "Rd 44x1/6 female", inquiry, "", ""},
	{"S60x6 male", "S60x6 female", inquiry, "", ""},
	{"7/8-14 UNF male", "7/8-14 UNF female", inquiry, "", ""},
	{"M16x1.5 male SAE J514", "M16x1.5 female", inquiry, "", ""},
	{"G 1/2 male NPT", "G 1/2 female", inquiry, "", ""},
	{"G 1/2 male taper", "G 1/2 female", inquiry, "", ""},
}

// judged is what two ends come to.
func judged(a, b string) (verdict, words string, named bool) {
	x, errX := ReadEnd(a)
	y, errY := ReadEnd(b)
	if errX != nil || errY != nil {
		return inquiry, "", false
	}
	named = len(x.NotUsed)+len(y.NotUsed) > 0
	if len(x.Candidates) != 1 || len(y.Candidates) != 1 || x.Question != "" || y.Question != "" {
		// whatever it is of what is open, it may be wrong all the same
		bad := len(x.Candidates) > 0 && len(y.Candidates) > 0
		for _, ca := range x.Candidates {
			for _, cb := range y.Candidates {
				m := threads.Mate(ca, cb)
				bad = bad && !m.Verdict.Holds() && m.Verdict != threads.LowPressureOnly
			}
		}
		if bad {
			return no, "", named
		}
		return inquiry, "", named
	}
	m := threads.Mate(x.Candidates[0], y.Candidates[0])
	words = m.Closes() + " " + m.Reason()
	if m.Verdict.Holds() {
		words += fmt.Sprintf(" %+v", makeup.Of(&m))
	}
	switch {
	case m.Question() != "":
		return inquiry, words, named
	case m.Verdict.Holds():
		return holds, words, named
	case m.Verdict == threads.LowPressureOnly:
		return low, words, named
	}
	return no, words, named
}

func TestStatedWords(t *testing.T) {
	failed := 0
	for _, c := range statedWords {
		got, words, named := judged(c.a, c.b)
		ok := (got == c.want || c.want == inquiry && named) && strings.Contains(words, c.closes) && (c.never == "" || !strings.Contains(words, c.never))
		if !ok {
			failed++
			t.Errorf("%s with %s: %s (%s); %s was to come, closed by %q and never by %q", c.a, c.b, got, words, c.want, c.closes, c.never)
		}
	}
	t.Logf("%d of %d right", len(statedWords)-failed, len(statedWords))
}
