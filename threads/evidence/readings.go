package evidence

import (
	"cmp"

	"handtight/threads"
	"handtight/threads/identify"
)

// Known is all that is known of one end by itself.
type Known struct {
	Words    threads.EndReading // what is printed or remembered
	Country  string             // where it was bought or made, as [identify.Countries] lists; "" if not known
	Measured identify.Measured  // what was measured; the zero value measured nothing
}

// Reading is one thing that an end may be.
type Reading struct {
	End         threads.End
	Probability float64
}

// Readings are what an end may be, likeliest first; their probabilities sum to 1. None at all:
// nothing is known of it.
type Readings struct {
	List     []Reading
	Measured bool    // something was measured of it
	Conflict bool    // what was measured is none of what the words say
	None     float64 // the probability that it is of no table
}

// NothingFits reports whether the figures are more likely those of no thread in the tables.
func (r *Readings) NothingFits() bool { return r.None > 0.5 }

// faint is the probability below which a reading is left out (a judgement: a list is read).
const faint = 1e-3

// Readings weighs what an end may be.
//
// Formula: each reading of the words starts with how common its thread is and how common its
// family is in the country; a share `words` (table/weight.csv) goes to all threads there are,
// since words can be wrong; all are multiplied by the likelihood of the figures
// ([identify.Likelihood]). Without figures the words stand as they are.
//
// Errors: those of [identify.Identify].
func (k *Known) Readings() (Readings, error) {
	weights, err := identify.FamilyWeights(k.Country)
	if err != nil {
		return Readings{}, err
	}
	m := k.Measured
	m.Country = k.Country
	if !measured(&m) {
		return Readings{List: normal(byWords(k.Words.Candidates, &weights))}, nil
	}
	if m.Sex == threads.NoSex {
		m.Sex = k.Words.Sex
	}
	all, err := identify.Identify(m)
	if err != nil {
		return Readings{}, err
	}
	out := Readings{Measured: true, None: all.None}
	said := byWords(k.Words.Candidates, &weights)
	if mass, fit := fitted(said, &m); mass > 0 {
		wrong := weight("words")
		evidence := identify.Evidence(&m) // of all threads there are, beside their prior
		if right := (1 - wrong) * fit / mass; right >= wrong*evidence && right > 0 {
			out.List, out.None = normal(said), 0
			return out, nil
		}
		out.Conflict = true
	}
	if out.NothingFits() {
		return out, nil
	}
	for _, c := range all.Candidates {
		e := threads.Threaded(c.Form, c.Sex)
		if e.Sex == threads.NoSex {
			e.Sex = m.Sex
		}
		if len(k.Words.Candidates) > 0 {
			e.Swivel, e.Plastic = k.Words.Candidates[0].Swivel, k.Words.Candidates[0].Plastic
		}
		out.List = append(out.List, Reading{e, c.Probability})
	}
	out.List = normal(out.List)
	return out, nil
}

// fitted weighs the readings of the words by the figures, and gives their sum before and after.
func fitted(said []Reading, m *identify.Measured) (mass, fit float64) {
	for i := range said {
		r := &said[i]
		mass += r.Probability
		sex := cmp.Or(r.End.Sex, m.Sex)
		if r.End.Form == nil || m.Sex != threads.NoSex && sex != m.Sex {
			r.Probability = 0
			continue
		}
		r.End.Sex = sex
		r.Probability *= identify.Likelihood(m, r.End.Form, sex)
		fit += r.Probability
	}
	return mass, fit
}

// measured reports whether anything was measured.
func measured(m *identify.Measured) bool {
	return m.Diameter.Known || m.Pitch.Known || m.Flank.Known || m.Taper != 0 || m.Nose != 0 || m.Cone != 0 || m.Groove != 0
}

// byWords weighs the candidates of the words before anything is measured.
func byWords(list []threads.End, weights *[threads.FamilyCount]float64) []Reading {
	var out []Reading
	for _, e := range list {
		p := 1.0
		if e.Form != nil {
			p = identify.Common(e.Form) * weights[e.Family]
		}
		out = append(out, Reading{e, p})
	}
	return out
}

// normal makes probabilities sum to 1, likeliest first; like ones keep their order.
func normal(list []Reading) []Reading {
	sum := 0.0
	for _, r := range list {
		sum += r.Probability
	}
	if sum == 0 {
		return nil
	}
	var out []Reading
	kept := 0.0
	for _, r := range list {
		if r.Probability /= sum; r.Probability >= faint {
			out = append(out, r)
			kept += r.Probability
		}
	}
	for i := range out {
		out[i].Probability /= kept
	}
	identify.LikeliestFirst(out, func(r *Reading) float64 { return r.Probability })
	return out
}

// Ends lists the ends of the readings that are reckoned with, likeliest first.
func (r *Readings) Ends() []threads.End {
	var out []threads.End
	for _, x := range r.List {
		if x.Probability >= weight("reckoned") {
			out = append(out, x.End)
		}
	}
	return out
}

// Even are readings that nothing weighs.
func Even(list []threads.End) Readings {
	var out Readings
	for _, e := range list {
		out.List = append(out.List, Reading{e, 1 / float64(len(list))})
	}
	return out
}
