package identify

import (
	"math"
	"slices"
	"sync"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// Ask is a measurement that can be asked for. The zero value is none.
type Ask uint8

// The measurements, easiest first: of two that split alike, the first is asked.
const (
	AskTaper Ask = iota + 1
	AskNose
	AskPitch
	AskDiameter
	AskFlank
	askEnd
)

var askNames = [askEnd]string{"", "taper", "seat", "pitch", "diameter", "flank-angle"}

// String gives the measurement's name as it stands in JSON; "" is none.
func (a Ask) String() string {
	if a >= askEnd {
		return ""
	}
	return askNames[a]
}

// Question is what to measure next. Ask is 0 when no measurement would help; Text
// then says what else to do.
type Question struct {
	Ask  Ask
	Text string
	Why  string  // which candidates it tells apart
	Gain float64 // expected drop of the entropy, bits
}

// leastGain is the drop of entropy, in bits, below which nothing is asked (a
// judgement: it would seldom change the first).
const leastGain = 0.1

// Gain is how much one measurement is expected to lower the entropy of the
// ranking, in bits.
type Gain struct {
	Ask  Ask
	Bits float64
}

// Gains weighs every measurement that has not been made, best first. A pitch
// that was only counted roughly may be asked for again.
//
// Formula: entropy of the candidates now, less the mean of the entropies after
// each outcome, weighted by how likely the outcome is. Outcomes: the leaves of a
// pitch gauge that has all the tables' pitches; each quarter of a millimetre of
// either sex; yes or no to the taper; each nose; 55 or 60 degrees.
//
// Errors: those of [Identify].
func Gains(m Measured) ([]Gain, error) {
	m.inferSex()
	if err := m.check(); err != nil {
		return nil, err
	}
	b, err := posterior(&m)
	if err != nil {
		return nil, err
	}
	return b.gains(&m), nil
}

func (b *belief) gains(m *Measured) []Gain {
	var out []Gain
	for a := AskTaper; a < askEnd; a++ {
		if m.asked(a) {
			continue
		}
		out = append(out, Gain{a, b.gain(a)})
	}
	slices.SortStableFunc(out, func(x, y Gain) int {
		switch {
		case x.Bits > y.Bits+1e-9:
			return -1
		case y.Bits > x.Bits+1e-9:
			return 1
		}
		return 0
	})
	return out
}

// Asked reports whether a measurement has been made.
func (m *Measured) Asked(a Ask) bool { return m.asked(a) }

func (m *Measured) asked(a Ask) bool {
	if m.cannot[a] {
		return true
	}
	switch a {
	case AskTaper:
		return m.Taper != 0
	case AskNose:
		return m.Nose != 0
	case AskPitch:
		return m.Pitch.Known && !m.Pitch.Rough
	case AskDiameter:
		return m.Diameter.Known
	}
	return m.Flank.Known
}

// tally sums, for each outcome of a measurement, the joint probabilities p of the
// threads with it, and p log p.
type tally struct{ p, plogp []float64 }

func (t *tally) add(outcome int, p float64) {
	if p <= 0 {
		return
	}
	for len(t.p) <= outcome {
		t.p, t.plogp = append(t.p, 0), append(t.plogp, 0)
	}
	t.p[outcome] += p
	t.plogp[outcome] += p * math.Log2(p)
}

// gain is the mutual information of the thread and the outcome, in bits.
func (b *belief) gain(a Ask) float64 {
	var t tally
	now := 0.0
	for i := range b.guesses {
		g := &b.guesses[i]
		if g.p <= 0 {
			continue
		}
		now -= g.p * math.Log2(g.p)
		if g.p > unlikely {
			g.outcomes(a, t.add)
		}
	}
	after, sum := 0.0, 0.0
	for o, p := range t.p {
		if p > 0 {
			after += p*math.Log2(p) - t.plogp[o]
			sum += p
		}
	}
	if sum == 0 {
		return 0
	}
	return max(0, now-after/sum)
}

// unlikely is the probability below which a thread does not choose the question.
const unlikely = 1e-6

// outcomes visits what a measurement may give if the thread is g, with the
// thread's own probability shared out over it.
func (g *guess) outcomes(a Ask, visit func(outcome int, p float64)) {
	f := g.form
	switch a {
	case AskTaper:
		yes := taperChance(f, Tapered)
		visit(0, g.p*yes)
		visit(1, g.p*(1-yes))
	case AskNose:
		for n := PlainNose; n < noseEnd; n++ {
			visit(int(n), g.p*noseChance(f.Family, n))
		}
	case AskFlank:
		at55, at60 := flankDensity(float64(f.Flank), 55), flankDensity(float64(f.Flank), 60)
		visit(0, g.p*at55/(at55+at60))
		visit(1, g.p*at60/(at55+at60))
	case AskPitch:
		g.leaves(visit)
	case AskDiameter:
		g.diameters(visit)
	}
}

// Asks lists the measurements that can be asked for, easiest first.
func Asks() []Ask { return []Ask{AskTaper, AskNose, AskPitch, AskDiameter, AskFlank} }

// Outcomes is what a measurement may give on a thread of a sex, with the chance of each: keys
// mean the same for all threads. NoSex is a thread that may be either.
func Outcomes(a Ask, f *threads.Form, sex threads.Sex) map[int]float64 {
	g := guess{form: f, p: 1}
	n := 0.0
	sexes := possibleSexes(sex, f.Family)
	for _, s := range sexes {
		if s != threads.NoSex {
			n++
		}
	}
	for i, s := range sexes {
		if s != threads.NoSex {
			g.joint[i] = 1 / n
		}
	}
	out := map[int]float64{}
	g.outcomes(a, func(o int, p float64) {
		if p > 0 {
			out[o] += p
		}
	})
	return out
}

// leaf is one blade of a pitch gauge.
type leaf struct {
	pitch float64
	words string // "14 threads an inch", "1.5 mm"
}

// gaugeLeaves are the pitches of all the tables, finest first.
var gaugeLeaves = sync.OnceValue(func() []leaf {
	var out []leaf
	for _, family := range threads.Families() {
		for _, f := range threads.Forms(family) {
			p := float64(f.Pitch)
			if !slices.ContainsFunc(out, func(l leaf) bool { return math.Abs(l.pitch-p) < 1e-3 }) {
				out = append(out, leaf{p, PitchWords(f)})
			}
		}
	}
	slices.SortFunc(out, func(a, b leaf) int {
		if a.pitch < b.pitch {
			return -1
		}
		return 1
	})
	return out
})

// PitchWords gives a pitch as its gauge is stamped.
func PitchWords(f *threads.Form) string {
	switch f.Family {
	case threads.M, threads.MT, threads.ISO6149, threads.Cone24L, threads.Cone24S:
		return quantity.Exact(float64(f.Pitch)) + " mm"
	}
	return quantity.Exact(f.TPI) + " threads an inch"
}

// leaves shares g out over the leaves by how well each seems to fit.
func (g *guess) leaves(visit func(outcome int, p float64)) {
	all, sum := gaugeLeaves(), 0.0
	for _, l := range all {
		sum += pitchDensity(float64(g.form.Pitch), Gauge(l.pitch))
	}
	for i, l := range all {
		visit(i, g.p*pitchDensity(float64(g.form.Pitch), Gauge(l.pitch))/sum)
	}
}

// binWidth is how finely a diameter is foreseen, in mm.
const binWidth = 0.25

// diameters shares g out over the diameters that a calliper may give, of either
// sex that is possible.
func (g *guess) diameters(visit func(outcome int, p float64)) {
	for i, sex := range [2]threads.Sex{threads.Male, threads.Female} {
		if g.joint[i] == 0 {
			continue
		}
		least, most := reach(g.form, sex)
		first, last := int(least/binWidth), int(most/binWidth)+1
		sum := 0.0
		for n := first; n <= last; n++ {
			sum += diameterDensity(g.form, sex, (float64(n)+0.5)*binWidth)
		}
		for n := first; n <= last && sum > 0; n++ {
			visit(2*n+i, g.joint[i]*diameterDensity(g.form, sex, (float64(n)+0.5)*binWidth)/sum)
		}
	}
}

// reach is the range of diameters that a calliper may give on a thread.
func reach(f *threads.Form, sex threads.Sex) (least, most float64) {
	var store [placeSteps * wearSteps]stretch
	least, most = math.Inf(1), 0
	for _, s := range crestStretches(f, sex, store[:0]) {
		least, most = min(least, s.least), max(most, s.most)
	}
	return least - 3*CalliperError, most + 3*CalliperError
}

// next chooses the question with the largest gain.
func (b *belief) next(m *Measured, list []Candidate) Question {
	gains := b.gains(m)
	if len(gains) == 0 || gains[0].Bits < leastGain {
		return nothingLeft(list)
	}
	q := Question{Ask: gains[0].Ask, Gain: gains[0].Bits}
	q.Text, q.Why = b.askWords(q.Ask, m), splitWords(q.Ask, list)
	return q
}

// likeliest is the outcome that a measurement most probably gives on a form.
func likeliest(a Ask, c Candidate) int {
	g := guess{form: c.Form, p: 1, joint: [2]float64{0.5, 0.5}}
	if c.Sex == threads.Male || c.Sex == threads.Female {
		g.joint = [2]float64{}
		g.joint[c.Sex-threads.Male] = 1
	}
	best, most := -1, 0.0
	g.outcomes(a, func(o int, p float64) {
		if p > most {
			best, most = o, p
		}
	})
	return best
}
