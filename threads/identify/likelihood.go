package identify

import (
	"math"

	"handtight/threads"
)

// CalliperError is the error of a diameter taken with a calliper, one standard
// deviation in mm; GaugeError that of a pitch gauge, as a share of the pitch (both
// judgements).
const (
	CalliperError = 0.1
	GaugeError    = 0.015
)

// How people measure (all judgements).
const (
	crestWear     = 0.06  // mm, the most that a used male's crests have lost; most have lost little
	crestBurr     = 0.1   // mm, the most that a burr takes from a female
	roughError    = 0.05  // the same of "about 14": 0.7 threads an inch
	wrongLeaf     = 0.005 // chance that a pitch is misread altogether
	wornShare     = 0.06  // share of threads so worn that the next leaf seems to fit
	wornLeaf      = 1.0   // threads an inch that the leaf is then off, one standard deviation
	taperError    = 0.06  // chance that the eye is wrong about a taper
	flankError    = 3.0   // degrees, one standard deviation with a profile gauge on so small a tooth
	wrongFlank    = 0.05  // chance that the profile gauge is misread altogether
	noseError     = 0.06  // chance that the nose is taken for another
	mouthTurns    = 2     // how far into a taper female the calliper's jaws may reach
	slideError    = 0.15  // mm, by which parts slide or catch before their crests say so
	wrongSlide    = 0.002 // chance that a part was tried askew
	strangerShare = 0.1   // chance that a thread is in no table, before anything is measured
)

// Steps of the sums over the place along a taper and over the wear.
const (
	placeSteps = 6
	wearSteps  = 3
)

// likelihood is the density of the figures if the thread is f. Figures that were
// not measured do not count.
func (m *Measured) likelihood(f *threads.Form, sex threads.Sex) float64 {
	l := 1.0
	if m.Diameter.Known {
		if l = diameterDensity(f, sex, m.Diameter.Value); l == 0 {
			return 0
		}
	}
	if m.Pitch.Known {
		l *= pitchDensity(float64(f.Pitch), m.Pitch)
	}
	if m.Taper != 0 {
		l *= taperChance(f, m.Taper)
	}
	if m.Flank.Known {
		l *= flankDensity(float64(f.Flank), m.Flank.Value)
	}
	if m.Nose != 0 {
		l *= noseChance(f.Family, m.Nose)
	}
	if m.Cone != 0 {
		l *= m.answerChance(f.Family, m.Cone, NoseCone24, NoseCone60)
	}
	if m.Groove != 0 {
		l *= m.answerChance(f.Family, m.Groove, FaceRing, StudRing)
	}
	if m.Turns.Known {
		mating := threads.Mate(threads.Threaded(f, sex), m.Turns.In)
		l *= FeltDensity(&mating, m.Turns)
	}
	if m.Slides != nil {
		l *= slideChance(f, sex, m.Slides)
	}
	return l
}

// Likelihood is the density of measured figures if the thread is f of a sex; 1 where nothing was
// measured. NoSex is the likelier of the two that the family may be.
func Likelihood(m *Measured, f *threads.Form, sex threads.Sex) float64 {
	best := 0.0
	for _, s := range possibleSexes(sex, f.Family) {
		if s != threads.NoSex {
			best = max(best, m.likelihood(f, s))
		}
	}
	return best
}

// Evidence is the density of measured figures over all threads of the tables, by how common
// each is; 0 for figures that cannot be weighed.
func Evidence(m *Measured) float64 {
	weights, err := familyWeights(m.Country)
	if err != nil {
		return 0
	}
	sum, prior := 0.0, 0.0
	for _, family := range threads.Families() {
		for _, f := range threads.Forms(family) {
			w := weights[family] * Common(f)
			prior += w
			sum += w * Likelihood(m, f, m.Sex)
		}
	}
	if prior == 0 {
		return 0
	}
	return sum / prior
}

// answerChance is the chance of a yes or no to whether the nose is one of a range.
func (m *Measured) answerChance(f threads.Family, said Answer, from, to Nose) float64 {
	share := 0.0
	for n := from; n <= to; n++ {
		share += noseShares()[f][n]
	}
	yes := share*(1-noseError) + (1-share)*noseError
	if said == Yes {
		return yes
	}
	return 1 - yes
}

// slideChance is the chance that a known part slides over a male, or into a female,
// without catching a thread: when the crests do not reach past each other.
func slideChance(f *threads.Form, sex threads.Sex, known *threads.End) float64 {
	if known.Sex == sex {
		return wrongSlide
	}
	mine, other := f.CrestAt(sex, 0).Middle(), known.Form.CrestAt(known.Sex, 0).Middle()
	gap := float64(other - mine) // of a known female over a male
	if sex == threads.Female {
		gap = -gap
	}
	return max(wrongSlide, below(gap/slideError))
}

// background is the density of the figures for a thread that is in no table:
// even over the logarithm of diameter and pitch, even over the rest.
func (m *Measured) background() float64 {
	l := 1.0
	if m.Diameter.Known {
		l /= m.Diameter.Value * math.Log(mostDiameter/leastDiameter)
	}
	if m.Pitch.Known {
		l *= pitchBackground
	}
	if m.Taper != 0 {
		l /= 2
	}
	if m.Flank.Known {
		l *= flankBackground
	}
	if m.Nose != 0 {
		l /= float64(noseEnd - 1)
	}
	for _, said := range []bool{m.Cone != 0, m.Groove != 0, m.Slides != nil} {
		if said {
			l /= 2
		}
	}
	switch {
	case m.Turns.Known && m.Turns.Face:
		l /= 2
	case m.Turns.Known:
		l /= mostTurns
	}
	return l
}

var pitchBackground = 1 / math.Log(mostPitch/leastPitch)

const flankBackground = 1.0 / (mostFlank - leastFlank)

// stretch is a range of diameters that is as likely in all its length.
type stretch struct{ least, most float64 }

// crestStretches gives the diameters a calliper may meet on the crests: the
// tolerance of the thread, at each of a few places along a taper, less wear or
// burr. A male taper is measured anywhere from its small end up, a female one at
// its mouth or little deeper; an NPT crest is never larger than its pipe.
func crestStretches(f *threads.Form, sex threads.Sex, out []stretch) []stretch {
	places := 1
	if f.Taper > 0 {
		places = placeSteps
	}
	lost := threads.Length(crestWear)
	if sex == threads.Female {
		lost = crestBurr
	}
	for place := range places {
		along := (float64(place) + 0.5) / float64(places)
		for step := range wearSteps {
			part := (float64(step) + 0.5) / wearSteps
			s := crestAt(f, sex, along)
			gone := float64(lost) * part * part
			out = append(out, stretch{s.least - gone, s.most - gone})
		}
	}
	return out
}

// crestAt is the crest diameter at a share of the length that can be reached.
func crestAt(f *threads.Form, sex threads.Sex, along float64) stretch {
	length := f.Full()
	if sex == threads.Female {
		length = mouthTurns * f.Pitch
	}
	b := f.CrestAt(sex, threads.Length(along)*length)
	return stretch{float64(b.Least), float64(b.Most)}
}

// Reach is all that the crests of a thread may measure, wear and burrs apart: over
// the useful thread of a taper male, over the first turns of a taper female.
func Reach(f *threads.Form, sex threads.Sex) threads.Band {
	a, b := crestAt(f, sex, 0), crestAt(f, sex, 1)
	return threads.Band{Least: threads.Length(min(a.least, b.least)), Most: threads.Length(max(a.most, b.most))}
}

// farOff is the distance, in standard deviations of the calliper, beyond which a
// diameter counts as impossible: exp(-32).
const farOff = 8

func diameterDensity(f *threads.Form, sex threads.Sex, x float64) float64 {
	var store [placeSteps * wearSteps]stretch
	all := crestStretches(f, sex, store[:0])
	sum := 0.0
	for _, s := range all {
		if x < s.least-farOff*CalliperError || x > s.most+farOff*CalliperError {
			continue
		}
		sum += (below((s.most-x)/CalliperError) - below((s.least-x)/CalliperError)) / (s.most - s.least)
	}
	return max(0, sum/float64(len(all)))
}

// below is the normal distribution's share below z.
func below(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

func bell(x, mean, sd float64) float64 {
	z := (x - mean) / sd
	return math.Exp(-z*z/2) / (sd * math.Sqrt(2*math.Pi))
}

// pitchDensity is over the logarithm of the pitch, so that threads an inch and
// millimetres count alike.
func pitchDensity(pitch float64, read Gauged) float64 {
	sd := GaugeError
	if read.Rough {
		sd = roughError
	}
	x, mean := math.Log(read.Value), math.Log(pitch)
	worn := math.Hypot(sd, wornLeaf*pitch/threads.Inch.Millimetres())
	return (1-wrongLeaf-wornShare)*bell(x, mean, sd) + wornShare*bell(x, mean, worn) + wrongLeaf*pitchBackground
}

func taperChance(f *threads.Form, seen Taper) float64 {
	if (f.Taper > 0) == (seen == Tapered) {
		return 1 - taperError
	}
	return taperError
}

func flankDensity(flank, read float64) float64 {
	return (1-wrongFlank)*bell(read, flank, flankError) + wrongFlank*flankBackground
}

func noseChance(f threads.Family, seen Nose) float64 {
	share := noseShares()[f][seen]
	return share*(1-noseError) + (1-share)*noseError/float64(noseEnd-2)
}
