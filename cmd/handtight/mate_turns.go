package main

import (
	"fmt"

	"handtight/bom/facts"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/identify"
	"handtight/threads/identify/measure"
)

// turnsFacts are what turns counted by hand say of two ends.
type turnsFacts struct {
	Turns       number      `json:"turns"`
	Face        bool        `json:"all_the_way"` // it ran to its face; turns is then 0
	Pairs       []feltFacts `json:"pairs"`
	None        number      `json:"none"`
	NothingFits bool        `json:"nothing_fits"`
	Decides     bool        `json:"decides"`
	Leading     *mateFacts  `json:"leading,omitempty"`
	Worst       *mateFacts  `json:"worst_not_excluded,omitempty"`
}

// feltFacts are one reading of the two ends.
type feltFacts struct {
	A           string       `json:"a"`
	B           string       `json:"b"`
	Verdict     string       `json:"verdict"`
	Hand        *facts.Turns `json:"hand_turns"`
	Probability number       `json:"probability"`
}

// mateByTurns weighs the readings of two ends by the turns that they were screwed
// together by hand. The status is that of the worst pair that is not excluded.
func (a *app) mateByTurns(x, y threads.EndReading, text string, inMind bool) error {
	var turned identify.Turned
	if err := measure.Turns(&turned, text); err != nil {
		return fmt.Errorf("--turns: %w", err)
	}
	ends, others := bothSexes(x.Candidates, y.Candidates)
	if inMind {
		ends, others = identify.InMind(ends), identify.InMind(others)
	}
	for _, e := range [2][]threads.End{ends, others} {
		if len(e) == 0 || e[0].Form == nil {
			return fmt.Errorf("turns by hand say something of two threads only")
		}
	}
	felt := identify.ByFeel(ends, others, turned)
	worst, ok := felt.Worst()
	if !ok || felt.NothingFits() || !worst.Verdict.Holds() {
		a.status = exitStops
	}
	f := turnsFacts{Turns: known(float64(turned.Turns)), Face: turned.Face, None: known(felt.None), NothingFits: felt.NothingFits(), Decides: felt.Decides, Pairs: []feltFacts{}}
	for i := range felt.Pairs {
		m := &felt.Pairs[i].Mating
		f.Pairs = append(f.Pairs, feltFacts{m.A.String(), m.B.String(), m.Verdict.String(), facts.TurnsOf(m.Hand), known(felt.Pairs[i].Probability)})
	}
	if ok && !f.NothingFits {
		leading := mateFactsOf(&felt.Pairs[0].Mating, false, threads.EndReading{}, threads.EndReading{})
		last := mateFactsOf(&worst, false, threads.EndReading{}, threads.EndReading{})
		f.Leading, f.Worst = &leading, &last
	}
	if a.json {
		return a.ui.printJSON(f)
	}
	a.printTurns(&felt, &f, worst)
	return nil
}

// bothSexes fills in a sex that is not said from the other end's.
func bothSexes(a, b []threads.End) (x, y []threads.End) {
	fill := func(list []threads.End, other []threads.End, alone threads.Sex) []threads.End {
		var out []threads.End
		for _, e := range list {
			if e.Form != nil && e.Sex == threads.NoSex {
				e.Sex = alone
				if len(other) > 0 && other[0].Sex != threads.NoSex {
					e.Sex = other[0].Sex.Other()
				}
			}
			out = append(out, e)
		}
		return out
	}
	x = fill(a, b, threads.Male)
	return x, fill(b, x, threads.Female)
}

func (a *app) printTurns(felt *identify.Felt, f *turnsFacts, worst threads.Mating) {
	u := a.ui
	undecided := quantity.Decimals(f.Turns.Value, 2) + " turns do not decide it: the readings go in about as far."
	far := quantity.Decimals(f.Turns.Value, 2) + " turns by hand are far from those of every reading"
	if f.Face {
		undecided = "That it runs to its face does not decide it."
		far = "every reading is stopped by its threads before it runs to its face"
	}
	if f.NothingFits {
		u.line("%s", u.paint(red, "NOTHING FITS"))
		u.fold("  why", fmt.Sprintf("%s: a worn part, a thread cut wrong, or none of these.", far))
		u.fold("  next", "Measure both threads: `handtight identify`.")
		return
	}
	for i, p := range felt.Pairs {
		if i == shown {
			u.line("%6s  and %d more", "", len(felt.Pairs)-shown)
			break
		}
		m := &felt.Pairs[i].Mating
		hand := "runs to its face"
		if m.Hand.Known && m.Hand.Tightest < tooManyTurns {
			hand = fmt.Sprintf("%.1f to %.1f turns", m.Hand.Tightest, m.Hand.Loosest)
		}
		u.line("%6s  %s with %s: %s (%s)", percent(p.Probability), m.A, m.B, verdictWords[m.Verdict], hand)
	}
	u.line("")
	if !f.Decides {
		u.fold("  turns", undecided)
	}
	lead := &felt.Pairs[0].Mating
	u.fold("  likely", fmt.Sprintf("%s. %s", verdictWords[lead.Verdict], lead.Reason()))
	if worst.A != lead.A || worst.B != lead.B {
		u.fold("  worst", fmt.Sprintf("%s, and not excluded. %s", verdictWords[worst.Verdict], worst.Reason()))
	}
	u.fold("  leave", worst.MayStay())
}
