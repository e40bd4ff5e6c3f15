package identify

import (
	"math"
	"slices"

	"handtight/threads"
)

// How turns are felt (judgements).
const (
	countError = 0.5  // turns, one standard deviation of counting them
	mostTurns  = 15   // a count above it is of no joint
	forced     = 0.01 // chance that a joint that does not start was made all the same
	faceStops  = 0.05 // chance that one which its threads stop seems to run to its face
	faceRuns   = 0.9  // chance that one which runs free is felt to run to its face
)

// TurnsDensity is how likely it is that a joint stops after a number of turns by hand,
// as a density over turns. One function serves [Identify] and [ByTurns].
//
// Formula: normal, at the middle of the turns that the tolerances allow
// ([threads.Mating.Hand]), with a standard deviation of a quarter of their width and
// half a turn of counting, added in quadrature. Parallel threads of one kind run to
// their face, so that any count is as likely: their density is even from 0 to 15. A joint
// that does not start, or is of one sex, has a hundredth of that.
func TurnsDensity(m *threads.Mating, turns threads.Turns) float64 {
	switch {
	case m.Verdict == 0:
		return 0
	case m.Verdict == threads.SameSex, m.Verdict == threads.WillNotStart && !m.Hand.Known:
		return forced / mostTurns
	case !m.Hand.Known:
		return 1.0 / mostTurns
	}
	least, most := float64(min(m.Hand.Loosest, m.Hand.Tightest)), float64(max(m.Hand.Loosest, m.Hand.Tightest))
	if least > mostTurns {
		return 1.0 / mostTurns // it slides in: nothing stops it
	}
	middle, width := (least+most)/2, most-least
	return bell(float64(turns), middle, math.Hypot(width/4, countError))
}

// FeltDensity is [TurnsDensity] of a count, and the chance of it where the joint ran to its
// face: all pairs of one joint are weighed by the one or the other.
func FeltDensity(m *threads.Mating, t Turned) float64 {
	if !t.Face {
		return TurnsDensity(m, t.Turns)
	}
	switch {
	case m.Verdict == 0:
		return 0
	case m.Verdict == threads.SameSex, m.Verdict == threads.WillNotStart:
		return forced * faceStops
	case !m.Hand.Known, float64(min(m.Hand.Loosest, m.Hand.Tightest)) > mostTurns:
		return faceRuns
	}
	return faceStops
}

// Pair is one reading of two ends that stand screwed together.
type Pair struct {
	Mating      threads.Mating
	Probability float64
}

// Felt is what turns counted by hand say of two ends whose words leave readings open.
type Felt struct {
	Pairs   []Pair  // likeliest first; their probabilities sum to 1
	None    float64 // probability that it is none of them: a worn part, or one cut wrong
	Decides bool    // one pair leads by far; else the readings that are left go in about as far
}

// ByTurns weighs the readings of two ends by how far they screwed together by hand.
// Every pair of readings starts with the product of how common its two threads are,
// and is multiplied by [TurnsDensity].
func ByTurns(a, b []threads.End, turns threads.Turns) Felt {
	return ByFeel(a, b, Turned{Turns: turns, Known: true})
}

// ByFeel is [ByTurns] for a joint that may also have run to its face.
func ByFeel(a, b []threads.End, turned Turned) Felt {
	var out Felt
	before, sum := 0.0, 0.0
	for _, x := range a {
		for _, y := range b {
			p := readingWeight(x) * readingWeight(y)
			m := threads.Mate(x, y)
			out.Pairs = append(out.Pairs, Pair{m, p * FeltDensity(&m, turned)})
			before, sum = before+p, sum+out.Pairs[len(out.Pairs)-1].Probability
		}
	}
	if sum == 0 || before == 0 {
		out.None = 1
		return out
	}
	out.None = Stranger(turned, sum/before)
	for i := range out.Pairs {
		out.Pairs[i].Probability /= sum
	}
	slices.SortStableFunc(out.Pairs, func(x, y Pair) int {
		switch {
		case x.Probability > y.Probability:
			return -1
		case y.Probability > x.Probability:
			return 1
		}
		return 0
	})
	out.Decides = out.Pairs[0].Probability >= leading
	return out
}

// Stranger is the probability that turns are those of no reading, where the readings give them
// a mean density.
func Stranger(turned Turned, density float64) float64 {
	stranger := strangerShare / mostTurns
	if turned.Face {
		stranger = strangerShare * faceStops
	}
	return stranger / (stranger + (1-strangerShare)*density)
}

// leading is the probability from which a pair counts as told by its turns (a judgement).
const leading = 2.0 / 3

// NothingFits reports whether the turns are more likely those of no reading at all.
func (f *Felt) NothingFits() bool { return f.None > 0.5 }

// notExcluded is the probability above which a pair still has to be reckoned with.
const notExcluded = 0.05

// Worst is the worst joint among the pairs that are not excluded; ok is false without
// pairs.
func (f *Felt) Worst() (worst threads.Mating, ok bool) {
	for _, p := range f.Pairs {
		if p.Probability >= notExcluded && (!ok || p.Mating.Verdict.Worse(worst.Verdict)) {
			worst, ok = p.Mating, true
		}
	}
	return worst, ok
}

// readingWeight is how common a reading is; ends without a thread are all alike.
func readingWeight(e threads.End) float64 {
	if e.Form == nil {
		return 1
	}
	return Common(e.Form)
}

// InMind widens what somebody has in mind to all the pipe threads of that size: who
// says "a 1/2 NPT" of a part without a mark has often only its size. An end that is
// no pipe thread stays as it is.
func InMind(ends []threads.End) []threads.End {
	out := slices.Clone(ends)
	for _, e := range ends {
		if e.Form == nil || !pipe(e.Family) {
			continue
		}
		for _, family := range []threads.Family{threads.G, threads.R, threads.Rc, threads.Rp, threads.NPT} {
			f, ok := threads.Find(family, e.Size)
			if only := family.Facts().Only; !ok || only != threads.NoSex && only != e.Sex {
				continue
			}
			twin := e
			twin.Family, twin.Form, twin.ClassA = family, f, false
			if !slices.ContainsFunc(out, func(o threads.End) bool { return o.Form == f && o.Sex == e.Sex }) {
				out = append(out, twin)
			}
		}
	}
	return out
}

func pipe(f threads.Family) bool { return f >= threads.NPT && f <= threads.Rp && f != threads.NH }
