package title

import (
	"regexp"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

var adaptorOf = regexp.MustCompile(`Buy an adaptor (.+?) x (.+?), or one of`)

// The adaptor that a remedy tells to buy is read as it is written, and mates both ways.
func TestAdaptorOfARemedyMates(t *testing.T) {
	texts := []string{
		"1/2 NPT male", "1/2 NPT female", "1/2 NPT female plastic", "G 1/2 male", "G 1/2 female", "R 1/2", "Rc 1/2", "Rp 1/2", "3/4 NPT male", "3/4 NPT female", "G 3/4 male", "G 3/4 female", "G 3/4 female swivel 60 cone",
		"-6 JIC male", "-6 JIC female swivel", "-6 ORB male", "-6 ORB female", "-8 ORFS male", "-8 ORFS female swivel", "12S 24 degree male", "DKOS 12S", "M22x1.5 male", "M22x1.5 female", "M14x1.5 male", "M14x1.5 female",
		"3/4 NH female swivel", "3/4 NH male", "3/4 NPSM male", "3/4 NPSM female swivel", "7/16-20 UN male", "1/4 NPT male", "1/4 NPT female", "G 1/4 male", "G 1/4 female", "-4 SAE45 male", "G 1/2 male LH", "G 1/2 female LH",
	}
	var ends []threads.End
	for _, text := range texts {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.NotEmpty(t, r.Candidates, text)
		ends = append(ends, r.Candidates[0])
	}
	told, wrong := 0, 0
	for _, a := range ends {
		for _, b := range ends {
			m := threads.Mate(a, b)
			words := adaptorOf.FindStringSubmatch(m.Remedy())
			if m.Verdict.Holds() || words == nil {
				continue
			}
			told++
			left, err := ReadEnd(words[1])
			right, err2 := ReadEnd(words[2])
			switch {
			case err != nil || err2 != nil || len(left.Candidates) == 0 || len(right.Candidates) == 0:
				wrong++
				t.Errorf("%s with %s: %q: the adaptor is not read: %v %v", a, b, m.Remedy(), err, err2)
			default:
				one, two := threads.Mate(a, left.Candidates[0]), threads.Mate(right.Candidates[0], b)
				if !one.Verdict.Holds() || !two.Verdict.Holds() {
					wrong++
					t.Errorf("%s with %s: %q: %s; %s", a, b, m.Remedy(), one.Reason(), two.Reason())
				}
			}
		}
	}
	t.Logf("%d of %d adaptors mate", told-wrong, told)
}
