package identify

import (
	"math"

	"handtight/threads"
)

// Thread is one thread as it is cut, with all the candidates that share it: JIC -6 and
// ORB -6 are one thread with two seats, and no figure of the thread tells them apart.
type Thread struct {
	Candidates  []Candidate // likeliest first
	Probability float64     // their sum
}

// Equal reports whether two forms are cut alike: one diameter, pitch, angle and taper.
// What tells them is the seat, the tube or the mark.
func Equal(a, b *threads.Form) bool {
	return math.Abs(float64(a.Pitch-b.Pitch)) < 1e-3*float64(a.Pitch) && a.Flank == b.Flank && a.Taper == b.Taper &&
		math.Abs(float64(a.PitchDia-b.PitchDia)) < 0.05
}

// Threads gathers the candidates that are one thread; likeliest thread first.
func (id *Identification) Threads() []Thread {
	var out []Thread
next:
	for _, c := range id.Candidates {
		for i := range out {
			if first := out[i].Candidates[0]; first.Sex == c.Sex && Equal(first.Form, c.Form) {
				out[i].Candidates = append(out[i].Candidates, c)
				out[i].Probability += c.Probability
				continue next
			}
		}
		out = append(out, Thread{[]Candidate{c}, c.Probability})
	}
	for i := 1; i < len(out); i++ {
		for j := i; j > 0 && out[j].Probability > out[j-1].Probability*(1+1e-9); j-- {
			out[j], out[j-1] = out[j-1], out[j]
		}
	}
	return out
}

// ToldBy says what tells the candidates of one thread apart, in a few words: the seat,
// the tube, a mark; "" where one of them is left.
func (t *Thread) ToldBy() string {
	noses, tubes := map[Nose]bool{}, map[threads.Length]bool{}
	n := 0
	for _, c := range t.Candidates {
		if c.Probability < 0.05*t.Probability {
			continue
		}
		n++
		noses[UsualNose(c.Form.Family)] = true
		tubes[c.Form.Tube] = true
	}
	switch {
	case n < 2:
		return ""
	case len(noses) > 1:
		return "the seat"
	case len(tubes) > 1:
		return "the tube that it takes"
	}
	return "a mark only"
}
