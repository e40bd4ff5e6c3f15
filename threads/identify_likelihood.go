package threads

import "math"

// How people measure (all judgements).
const (
	calliperError = 0.1   // mm, one standard deviation
	crestWear     = 0.06  // mm, the most that a used male's crests have lost; most have lost little
	crestBurr     = 0.1   // mm, the most that a burr takes from a female
	gaugeError    = 0.015 // of the pitch, one standard deviation with a pitch gauge
	roughError    = 0.05  // the same of "about 14": 0.7 threads an inch
	wrongLeaf     = 0.01  // chance that a pitch is misread altogether
	taperError    = 0.06  // chance that the eye is wrong about a taper
	flankError    = 3.0   // degrees, one standard deviation with a profile gauge on so small a tooth
	wrongFlank    = 0.05  // chance that the profile gauge is misread altogether
	noseError     = 0.06  // chance that the nose is taken for another
	mouthTurns    = 2     // how far into a taper female the calliper's jaws may reach
	pipeSpread    = 0.05  // mm, by which the outside of a pipe varies where its crests run out
	strangerShare = 0.05  // chance that a thread is in no table, before anything is measured
)

// Steps of the sums over the place along a taper and over the wear.
const (
	placeSteps = 6
	wearSteps  = 3
)

// likelihood is the density of the figures if the thread is f. Figures that were
// not measured do not count.
func (m *Measured) likelihood(f *Form, sex Sex) float64 {
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
		l *= flankDensity(f.Flank, m.Flank.Value)
	}
	if m.Nose != 0 {
		l *= noseChance(f.Family, m.Nose)
	}
	return l
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
func crestStretches(f *Form, sex Sex, out []stretch) []stretch {
	places := 1
	if f.Taper > 0 {
		places = placeSteps
	}
	lost := Length(crestWear)
	if sex == Female {
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
func crestAt(f *Form, sex Sex, along float64) stretch {
	if sex == Female {
		deep := f.Taper * along * mouthTurns * float64(f.Pitch)
		return stretch{
			float64(f.inside.tight.pitch-2*f.inside.tight.crestAdd) - deep,
			float64(f.inside.loose.pitch-2*f.inside.loose.crestAdd) - deep,
		}
	}
	up := f.Taper * along * float64(f.full)
	s := stretch{
		float64(f.outside.loose.pitch+2*f.outside.loose.crestAdd) + up,
		float64(f.outside.tight.pitch+2*f.outside.tight.crestAdd) + up,
	}
	if f.Family == NPT || f.Family == NPTF {
		s.least, s.most = min(s.least, float64(f.Major)-pipeSpread), min(s.most, float64(f.Major))
	}
	return s
}

// farOff is the distance, in standard deviations of the calliper, beyond which a
// diameter counts as impossible: exp(-32).
const farOff = 8

func diameterDensity(f *Form, sex Sex, x float64) float64 {
	var store [placeSteps * wearSteps]stretch
	all := crestStretches(f, sex, store[:0])
	sum := 0.0
	for _, s := range all {
		if x < s.least-farOff*calliperError || x > s.most+farOff*calliperError {
			continue
		}
		sum += (below((s.most-x)/calliperError) - below((s.least-x)/calliperError)) / (s.most - s.least)
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
	sd := gaugeError
	if read.Rough {
		sd = roughError
	}
	return (1-wrongLeaf)*bell(math.Log(read.Value), math.Log(pitch), sd) + wrongLeaf*pitchBackground
}

func taperChance(f *Form, seen Taper) float64 {
	if (f.Taper > 0) == (seen == Tapered) {
		return 1 - taperError
	}
	return taperError
}

func flankDensity(flank, read float64) float64 {
	return (1-wrongFlank)*bell(read, flank, flankError) + wrongFlank*flankBackground
}

func noseChance(f Family, seen Nose) float64 {
	share := noseShares()[f][seen]
	return share*(1-noseError) + (1-share)*noseError/float64(noseEnd-2)
}
