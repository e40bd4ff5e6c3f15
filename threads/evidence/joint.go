package evidence

import (
	"math"
	"slices"

	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/identify"
)

// Pair is one reading of both ends of a joint.
type Pair struct {
	Mating      threads.Mating
	Probability float64
	Bad         float64 // the probability that such a joint is bad, by its history; set by [Believe]
}

// Fit is what two ends together may be, likeliest first.
type Fit struct {
	Pairs   []Pair
	None    float64 // the probability that the turns are those of no reading: worn, or cut wrong
	Decides bool    // the turns tell the readings apart; true without turns
}

// NothingFits reports whether the turns are more likely those of no reading at all.
func (f *Fit) NothingFits() bool { return f.None > 0.5 }

// Pairs puts the readings of two ends together. standing says that the joint has been made:
// a pair that cannot be is then the weight `standing` as likely. turned are the turns by hand,
// if they were counted.
func Pairs(a, b *Readings, standing bool, turned identify.Turned) Fit {
	var out Fit
	before, after := 0.0, 0.0
	for _, x := range a.List {
		for _, y := range b.List {
			m := threads.Mate(fill(x.End, y.End, threads.Male), fill(y.End, x.End, threads.Female))
			p := x.Probability * y.Probability
			before += p
			if standing && !turned.Known && (m.Verdict == threads.WillNotStart || m.Verdict == threads.SameSex) {
				p *= weight("standing")
			}
			if turned.Known {
				p *= identify.FeltDensity(&m, turned)
			}
			after += p
			out.Pairs = append(out.Pairs, Pair{Mating: m, Probability: p})
		}
	}
	if after == 0 || before == 0 {
		out.None = truth(len(out.Pairs) > 0)
		out.Pairs = nil
		return out
	}
	if turned.Known {
		out.None = identify.Stranger(turned, after/before)
	}
	kept := out.Pairs[:0]
	for _, p := range out.Pairs {
		if p.Probability /= after; p.Probability >= faint {
			kept = append(kept, p)
		}
	}
	out.Pairs = kept
	sum := 0.0
	for _, p := range out.Pairs {
		sum += p.Probability
	}
	for i := range out.Pairs {
		out.Pairs[i].Probability /= sum
	}
	identify.LikeliestFirst(out.Pairs, func(p *Pair) float64 { return p.Probability })
	out.Decides = !turned.Known || out.Pairs[0].Probability >= leading
	return out
}

// leading is the probability from which a pair counts as told by its turns (a judgement, as of
// [identify.ByTurns]).
const leading = 2.0 / 3

// fill gives an end without a sex the one that fits the other.
func fill(e, other threads.End, alone threads.Sex) threads.End {
	if e.Form == nil || e.Sex != threads.NoSex {
		return e
	}
	if e.Sex = alone; other.Sex != threads.NoSex {
		e.Sex = other.Sex.Other()
	}
	return e
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// History is what became of a joint since it was made up.
type History struct {
	DryYears float64 // it stayed dry for so long at its own pressure; 0 if that is not known
	Wept     bool    // it was seen to weep, and nothing says that it was made up anew since
	Tested   bool    // it stayed dry at 1.5 times its worst pressure or more
	Sealant  string  // what was found on it, of [Sealants]; "" if nobody looked
}

// Site is where a joint stands, as far as a verdict asks for it.
type Site struct {
	Worst quantity.Pressure // over all states; infinite without bound
	Below bool              // below the waterline, where no low-pressure joint is within its limit
}

// Bears reports whether a pair is right where it stands: one that holds is anywhere within its limit, if it
// has one, and one for low pressure only within its limit and above the waterline. A check and an audit both ask it here.
func (at Site) Bears(m *threads.Mating) bool { return m.Bears(at.Worst, at.Below) }

// Belief is what is to be believed of a joint.
type Belief struct {
	Pairs []Pair  // likeliest first, with the history reckoned in
	Bad   float64 // the probability that the joint is bad
}

// Believe weighs the pairs of a joint by its history.
//
// Formula: a pair is bad with the chance of its verdict (row `bad` of table/likelihood.csv). A
// good one shows what its column says; a bad one what a pair that leaks shows, or worse. So P is
// multiplied, for each thing seen, by (1-bad) of the one and bad of the other.
func Believe(pairs []Pair, h History, at Site) Belief {
	out := Belief{Pairs: slices.Clone(pairs)}
	sum, bad := 0.0, 0.0
	for i := range out.Pairs {
		p := &out.Pairs[i]
		c := columnOf(&p.Mating, at)
		chance := rows()["bad"][c]
		if Missing(&p.Mating, h.Sealant) {
			chance = max(chance, rows()["bad"][leaks]) // what closes it is not there
		}
		good := p.Probability * (1 - chance) * h.likelihood(c, &p.Mating)
		ill := p.Probability * chance * h.likelihood(max(c, leaks), nil)
		p.Probability = good + ill
		if p.Probability > 0 {
			p.Bad = ill / p.Probability
		}
		sum, bad = sum+good+ill, bad+ill
	}
	if sum == 0 {
		return out
	}
	for i := range out.Pairs {
		out.Pairs[i].Probability /= sum
	}
	out.Bad = bad / sum
	identify.LikeliestFirst(out.Pairs, func(p *Pair) float64 { return p.Probability })
	return out
}

// Unread is what is to be believed of a joint of which an end is not known at all.
func Unread(h History) Belief {
	bad := weight("unread")
	good := (1 - bad) * h.likelihood(sealsWith, nil)
	ill := bad * h.likelihood(leaks, nil)
	return Belief{Bad: ill / (good + ill)}
}

// likelihood is the chance of the history for a column; m is nil where the sealant says nothing.
func (h *History) likelihood(c column, m *threads.Mating) float64 {
	l := 1.0
	if h.DryYears > 0 {
		l *= math.Pow(rows()["dry"][c], min(1, h.DryYears))
	}
	if h.Wept {
		l *= rows()["wept"][c]
	}
	if h.Tested {
		l *= rows()["tested"][c]
	}
	if m != nil && WrongSealant(m, h.Sealant) {
		l *= rows()["wrong-sealant"][c]
	}
	return l
}

// WrongSealant reports whether what was found on a joint does not close such a pair. A pair
// that nothing closes, and one whose closing part is not known, has none that is wrong.
func WrongSealant(m *threads.Mating, sealant string) bool {
	right, known := rightSealants()[m.Makes()]
	return known && sealant != "" && sealant != notSeen && !slices.Contains(right, sealant)
}

// Missing reports whether what closes a pair was looked for and is not there.
func Missing(m *threads.Mating, sealant string) bool {
	return sealant == "none" && WrongSealant(m, sealant)
}

func columnOf(m *threads.Mating, at Site) column {
	switch m.Verdict {
	case threads.Seals:
		return seals
	case threads.SealsWith:
		return sealsWith
	case threads.LowPressureOnly:
		if at.Bears(m) {
			return lowWithin
		}
		return lowAbove
	case threads.Leaks:
		return leaks
	case threads.Binds:
		return binds
	}
	return loose
}
