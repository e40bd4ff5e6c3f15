package identify

import (
	"fmt"
	"slices"
	"strings"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// Gauged is a figure somebody measured. Known is false where nobody did: unknown
// is not zero. Rough marks a count such as "about 14".
type Gauged struct {
	Value float64
	Rough bool
	Known bool
}

// Gauge makes a measured figure.
func Gauge(v float64) Gauged { return Gauged{Value: v, Known: true} }

// Taper is what the eye or a straight edge says of a thread. The zero value is:
// not looked at.
type Taper uint8

// The two answers.
const (
	NoTaper Taper = iota + 1 // parallel
	Tapered                  // thinner towards the end of a male, or the bottom of a female
)

// Measured is what a calliper, a pitch gauge and the eye give of one thread.
type Measured struct {
	Sex      threads.Sex // NoSex if not said
	Diameter Gauged      // mm across the crests: outside a male, inside a female
	Pitch    Gauged      // mm; 25.4 divided by the threads an inch
	Flank    Gauged      // included angle of the thread, degrees
	Taper    Taper
	Nose     Nose
	Cone     Answer       // is there a cone, before a male or inside a female?
	Groove   Answer       // is there a groove or a chamfer for an O-ring?
	Turns    Turned       // how far it screwed by hand into a part that is known
	Slides   *threads.End // a known part that slides over it, or into it, without catching a thread; nil if not tried
	Context  string       // what the thread is on, as [Contexts] lists; "" if not known
	Country  string       // where the part was bought or made, as [Countries] lists; "" if not known

	cannot [askEnd]bool
}

// Answer is yes or no to a question of the eye. The zero value is: not looked at.
type Answer uint8

// The two answers.
const (
	No Answer = iota + 1
	Yes
)

// Turned is a count of turns by hand into a part that is known. Known is false where
// nobody counted.
type Turned struct {
	Turns threads.Turns
	Face  bool // it ran all the way in, until its faces met; Turns then counts nothing
	In    threads.End
	Known bool
}

// Cannot marks a measurement that cannot be made: it is not asked for.
func (m Measured) Cannot(a Ask) Measured {
	if a < askEnd {
		m.cannot[a] = true
	}
	return m
}

// Candidate is a thread that the figures may be of.
type Candidate struct {
	Form        *threads.Form
	Sex         threads.Sex // as measured; NoSex if not said
	Probability float64
}

// Identification is what measured figures say. The probabilities of Candidates,
// likeliest first, sum to 1: they are what each is worth if the thread is in the
// tables at all. None is the probability that it is not.
type Identification struct {
	Candidates []Candidate
	None       float64
	Next       Question // the measurement that best splits what remains
}

// faint is the share of the likeliest candidate below which one is left out (a
// judgement: a list is read by people).
const faint = 1e-3

// NothingFits reports whether the figures are more likely those of no thread in
// the tables. The candidates are then only the nearest.
func (id *Identification) NothingFits() bool { return id.None > 0.5 }

// Identify ranks the threads that measured figures may be of, and names the one
// measurement that is expected to lower the entropy of that ranking most.
//
// Each size of each family starts with the weight of its family in the country
// (table/country.csv; even but for seldom-met twins if none is said), and is
// multiplied by how common the size is (table/common.csv), by the weight of the
// family where it was met (table/context.csv), and by the likelihood of each figure: the printed tolerances of the
// thread, where along a taper it was measured, wear or burr, and the error of the
// tool. The constants are judgements and stand in likelihood.go.
//
// Errors: a diameter without a sex, a figure that no thread has, a country that
// is not in the table.
func Identify(m Measured) (Identification, error) {
	m.inferSex()
	if err := m.check(); err != nil {
		return Identification{}, err
	}
	b, err := posterior(&m)
	if err != nil {
		return Identification{}, err
	}
	id := Identification{None: b.none, Candidates: b.candidates(&m)}
	if id.NothingFits() {
		id.Next = measureAgain(&m, id.Candidates)
		return id, nil
	}
	id.Next = b.next(&m, id.Candidates)
	return id, nil
}

// Bounds of figures that can be read at all.
const (
	leastDiameter, mostDiameter = 3, 250 // mm
	leastPitch, mostPitch       = 0.3, 6 // mm
	leastFlank, mostFlank       = 30, 90 // degrees
)

// inferSex takes the sex from a known part that was tried: what goes into a female is
// a male.
func (m *Measured) inferSex() {
	switch {
	case m.Sex != threads.NoSex:
	case m.Turns.Known:
		m.Sex = m.Turns.In.Sex.Other()
	case m.Slides != nil:
		m.Sex = m.Slides.Sex.Other()
	}
}

func (m *Measured) check() error {
	if m.Diameter.Known && m.Sex == threads.NoSex {
		return fmt.Errorf("a diameter of %s says nothing without the side it was taken on: give it as the outside of a male thread or the inside of a female one", quantity.Exact(m.Diameter.Value)+" mm")
	}
	for _, f := range []struct {
		figure      Gauged
		what, unit  string
		least, most float64
	}{
		{m.Diameter, "diameter", "mm", leastDiameter, mostDiameter},
		{m.Pitch, "pitch", "mm", leastPitch, mostPitch},
		{m.Flank, "angle of the thread", "degrees", leastFlank, mostFlank},
	} {
		if f.figure.Known && !(f.figure.Value >= f.least && f.figure.Value <= f.most) {
			return fmt.Errorf("a %s of %s %s is not that of a pipe or port thread: one between %s and %s %s is due",
				f.what, quantity.Decimals(f.figure.Value, 3), f.unit, quantity.Exact(f.least), quantity.Exact(f.most), f.unit)
		}
	}
	if m.Turns.Known && !(m.Turns.Turns >= 0 && m.Turns.Turns <= mostTurns) {
		return fmt.Errorf("%s turns by hand are not those of a joint: a count between 0 and %d is due", quantity.Exact(float64(m.Turns.Turns)), mostTurns)
	}
	for _, in := range []struct {
		end *threads.End
		is  bool
	}{{&m.Turns.In, m.Turns.Known}, {m.Slides, m.Slides != nil}} {
		if in.is && (in.end.Form == nil || in.end.Sex == threads.NoSex) {
			return fmt.Errorf("%s is no known part to try a thread in: write its thread and its sex, such as G 1/2 female", in.end)
		}
	}
	return nil
}

// guess is one thread with its joint probability with the figures. joint is for
// each sex it may have: male, then female; where the sex is said, one is 0.
type guess struct {
	form  *threads.Form
	joint [2]float64
	p     float64 // their sum
}

// belief is the posterior: guesses that sum to 1 among themselves, and the
// probability that it is none of them.
type belief struct {
	guesses []guess
	none    float64
}

// posterior multiplies prior and likelihood for every form.
func posterior(m *Measured) (*belief, error) {
	weights, err := familyWeights(m.Country)
	if err != nil {
		return nil, err
	}
	context, err := contextWeights(m.Context)
	if err != nil {
		return nil, err
	}
	for f := range weights {
		weights[f] *= context[f]
	}
	b := &belief{}
	prior, total := 0.0, 0.0
	for _, family := range threads.Families() {
		for _, f := range threads.Forms(family) {
			g := guess{form: f}
			weight := weights[family] * Common(f)
			for i, sex := range possibleSexes(m.Sex, family) {
				if sex == threads.NoSex {
					continue
				}
				prior += weight
				g.joint[i] = weight * m.likelihood(f, sex)
			}
			g.p = g.joint[0] + g.joint[1]
			total += g.p
			b.guesses = append(b.guesses, g)
		}
	}
	if prior == 0 || total == 0 {
		b.none = 1
		return b, nil
	}
	fits := (1 - strangerShare) * total / prior
	b.none = strangerShare * m.background()
	b.none /= b.none + fits
	for i := range b.guesses {
		g := &b.guesses[i]
		g.p, g.joint[0], g.joint[1] = g.p/total, g.joint[0]/total, g.joint[1]/total
	}
	return b, nil
}

// possibleSexes lists the sexes, male then female, that a thread of the family may be
// of; NoSex stands for one that is ruled out.
func possibleSexes(said threads.Sex, family threads.Family) [2]threads.Sex {
	out := [2]threads.Sex{threads.Male, threads.Female}
	for i, sex := range out {
		if only := family.Facts().Only; said != threads.NoSex && said != sex || only != threads.NoSex && only != sex {
			out[i] = threads.NoSex
		}
	}
	return out
}

// candidates sorts the guesses and leaves out the faint ones.
func (b *belief) candidates(m *Measured) []Candidate {
	top := 0.0
	for i := range b.guesses {
		top = max(top, b.guesses[i].p)
	}
	var out []Candidate
	sum := 0.0
	for i := range b.guesses {
		if g := &b.guesses[i]; g.p > 0 && g.p >= faint*top {
			out = append(out, Candidate{Form: g.form, Sex: m.Sex, Probability: g.p})
			sum += g.p
		}
	}
	for i := range out {
		out[i].Probability /= sum
		if out[i].Sex == threads.NoSex {
			out[i].Sex = out[i].Form.Family.Facts().Only
		}
	}
	LikeliestFirst(out, func(c *Candidate) float64 { return c.Probability }) // threads of one probability stand in the order of the families
	return out
}

// LikeliestFirst sorts a list by probability. What is as likely to nine digits keeps its order.
func LikeliestFirst[T any](list []T, probability func(*T) float64) {
	slices.SortStableFunc(list, func(x, y T) int {
		p, q := probability(&x), probability(&y)
		switch {
		case p > q*(1+1e-9):
			return -1
		case q > p*(1+1e-9):
			return 1
		}
		return 0
	})
}

// Countries lists the names that [Measured].Country takes, region by region.
func Countries() [][]string {
	var out [][]string
	for _, r := range regions() {
		if len(r.names) > 0 {
			out = append(out, append([]string{r.region}, r.names...))
		}
	}
	return out
}

// CountryError says that a country is not in table/country.csv.
type CountryError struct{ Country string }

// Error names the country and what may be written instead.
func (e *CountryError) Error() string {
	var names []string
	for _, r := range regions() {
		if len(r.names) > 0 {
			names = append(names, r.region+" ("+strings.Join(r.names[:min(4, len(r.names))], ", ")+" ...)")
		}
	}
	return fmt.Sprintf("no habits are known for the country %q: write a name or its two letters, such as NZ, or a region: %s", e.Country, strings.Join(names, "; "))
}
