package repair

import (
	"slices"
	"strings"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Options say what a chain must stand.
type Options struct {
	Pressure quantity.Pressure // every joint and piece must hold it; 0: 3 bar, and the answer says so
	Water    string            // "sea", "product", "fresh"; "" is not said
	Material string            // of the pieces; "" is any that will do
	Most     int               // pieces; 0: two, one below the waterline
	Below    bool              // below the waterline
	Turns    bool              // something in it must turn last
	ByPrice  bool              // the cheaper before the shorter
	Count    int               // chains shown; 0: three; [MostShown] at the most
	Shelf    *Shelf            // pieces that may be used; nil: the generic stock

	// Of the two given ends, where a build says it.
	Beside [2][]*catalog.Material // what they are made of
	Hose   [2]bool                // they are the ends of a hose
	Wide   bool                   // nothing may be narrower than the narrower of them
}

// MostShown is the most chains that a search shows.
const MostShown = 8

// Answer is what to buy, or why nothing will do.
type Answer struct {
	Direct  *threads.Mating // the ends join already; nothing to buy
	Chains  []Chain         // the best first
	None    string          // the first wall that every chain meets; "" where a chain is found
	Ask     string          // what would tell the readings of an open end apart; "" where they are one
	Assumed []string        // what was taken, or not looked at, since it was not said
	Each    []Reading       // of an open end: what each of its readings would take
}

// Reading is what one reading of open ends would take.
type Reading struct {
	A, B   threads.End
	Direct bool   // they join already
	Chain  *Chain // nil: none, or nothing to buy
	None   string
}

// Chain is pieces to buy, with the joints that they make.
type Chain struct {
	Pieces   []*Piece
	Turned   []bool // the piece's second end looks at the first given end
	Joints   []threads.Mating
	Holds    *pressure.Rating // of the weakest piece; nil where one is not known
	Weakest  *Piece
	Cautions []string
	Notes    []string // of its materials: they do not make a chain worse than another

	weight weight
}

// assumed is the pressure of a joint of which nothing is said: a house system's (judgement).
const assumed = 3 * quantity.Bar

// highPressure is what generic fittings without a rating are kept away from: the same bound
// as everywhere (a judgement).
const highPressure = 10 * quantity.Bar

// Adapt finds the pieces to buy between two ends that stay.
func Adapt(a, b threads.EndReading, o Options) Answer {
	var out Answer
	if o.Pressure <= 0 {
		o.Pressure = assumed
		out.Assumed = append(out.Assumed, "judged at 3 bar, since no pressure is given")
	}
	switch {
	case o.Water == "" && o.Below:
		o.Water = "sea"
		out.Assumed = append(out.Assumed, "taken for sea water, since it stands below the waterline and no water is given")
	case o.Water == "":
		out.Assumed = append(out.Assumed, "no water is given, so whether the materials bear it was not looked at")
	}
	if o.Most <= 0 {
		o.Most = 2
	}
	if o.Below {
		o.Most = 1
	}
	if o.Count <= 0 {
		o.Count = 3
	}
	o.Count = min(o.Count, MostShown)
	if o.Shelf == nil {
		o.Shelf = generic()
	}
	if len(a.Candidates) == 0 || len(b.Candidates) == 0 {
		out.None = "an end is not understood"
		return out
	}
	if m, ok := directly(a, b, o); ok {
		out.Direct = &m
		return out
	}
	if why := never(a, b, o); why != "" {
		out.None = why
		return out
	}
	q := newQuery(o)
	out.Chains = q.chains(a, b)
	if len(a.Candidates) > 1 || len(b.Candidates) > 1 {
		out.Ask = ask(a, b)
		out.Each = each(a, b, o)
	}
	if len(out.Chains) == 0 {
		out.None = q.why(a, b)
	}
	return out
}

// each answers for every reading of open ends by itself.
func each(a, b threads.EndReading, o Options) []Reading {
	o.Count = 1
	var out []Reading
	for _, x := range a.Candidates {
		for _, y := range b.Candidates {
			one := func(e threads.End) threads.EndReading { return threads.EndReading{Candidates: []threads.End{e}} }
			got := Adapt(one(x), one(y), o)
			r := Reading{A: x, B: y, Direct: got.Direct != nil, None: got.None}
			if len(got.Chains) > 0 {
				r.Chain = &got.Chains[0]
			}
			out = append(out, r)
		}
	}
	return out
}

// directly reports whether every reading of the ends joins as it is, and the joint holds the pressure.
func directly(a, b threads.EndReading, o Options) (worst threads.Mating, ok bool) {
	for _, x := range a.Candidates {
		for _, y := range b.Candidates {
			m := threads.Mate(x, y)
			if most, bound := most(&m); !m.Verdict.Holds() || bound && o.Pressure > most || o.Turns && !m.A.Swivel && !m.B.Swivel {
				return worst, false
			}
			worst = m
		}
	}
	return worst, true
}

// most is what a joint holds whatever its parts do: by its washer, or by a clamp; bound is false where
// its parts alone rule.
func most(m *threads.Mating) (p quantity.Pressure, bound bool) {
	for _, e := range []threads.End{m.A, m.B} {
		if e.Family == threads.Bore {
			r, ok := pressure.ClampJoint(quantity.Length(e.Diameter))
			return r.Pressure, ok
		}
	}
	return m.Limit, m.HasLimit
}

// never names what a fitter would not do at all.
func never(a, b threads.EndReading, o Options) string {
	skin := func(r threads.EndReading) bool {
		return slices.ContainsFunc(r.Candidates, func(e threads.End) bool { return e.Family == threads.NPS })
	}
	if o.Below && (skin(a) || skin(b)) {
		return "below the waterline nothing may stand between a skin fitting and its seacock: change one of the two, for a seacock on a flange with the straight thread, or a fitting of the valve's own thread"
	}
	for _, r := range []threads.EndReading{a, b} {
		for _, e := range r.Candidates {
			switch {
			case e.Family == threads.PG:
				return "nobody makes an adaptor from a cable gland's thread to a pipe: replace the part"
			case e.Left:
				return "no left-hand adaptor is stocked: replace the part with the left-hand thread"
			}
		}
	}
	return ""
}

// ask says what tells the readings of an open end apart.
func ask(a, b threads.EndReading) string {
	for _, r := range []threads.EndReading{a, b} {
		if len(r.Candidates) > 1 {
			var words []string
			for _, e := range r.Candidates {
				words = append(words, e.String())
			}
			return "which of these is it: " + strings.Join(words, ", ") + "?"
		}
	}
	return ""
}
