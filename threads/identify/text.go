package identify

import (
	"cmp"
	"slices"
	"strings"

	"handtight/threads"
)

// askWords puts a measurement in plain words, with the answers that are likely.
func (b *belief) askWords(a Ask, m *Measured) string {
	switch a {
	case AskTaper:
		return "Lay a straight edge along the crests, or close the calliper on both ends of the thread: does it taper, or is it parallel?"
	case AskNose:
		return noseWords(b.likely(a), m.Sex)
	case AskPitch:
		return "Lay a pitch gauge in the thread, or count the threads along one inch: " + orList(leafWords(b.likely(a))) + "?"
	case AskDiameter:
		return "Measure across the crests with a calliper: the outside of a male thread, or the inside of a female one."
	}
	return "Hold a profile gauge in the thread against the light: is the angle between its flanks 55 or 60 degrees?"
}

// likely lists the outcomes that hold a twentieth or more, likeliest first, at
// most four.
func (b *belief) likely(a Ask) []int {
	var t tally
	for i := range b.guesses {
		if g := &b.guesses[i]; g.p > unlikely {
			g.outcomes(a, t.add)
		}
	}
	var out []int
	for o, p := range t.p {
		if p >= 0.05 {
			out = append(out, o)
		}
	}
	slices.SortStableFunc(out, func(x, y int) int { return cmp.Compare(t.p[y], t.p[x]) })
	return out[:min(len(out), 4)]
}

func leafWords(leaves []int) []string {
	var out []string
	all := gaugeLeaves()
	for _, i := range leaves {
		out = append(out, all[i].words)
	}
	for i := 0; i+1 < len(out); i++ {
		if unit := " threads an inch"; strings.HasSuffix(out[i], unit) && strings.HasSuffix(out[i+1], unit) {
			out[i] = strings.TrimSuffix(out[i], unit)
		}
	}
	if len(out) < 2 {
		return append(out, "another pitch")
	}
	return out
}

func noseWords(noses []int, sex threads.Sex) string {
	where, said := "Look at the nose of a male, or the seat inside a female, with a seat gauge: ", 1
	switch sex {
	case threads.Male:
		where = "Look at the nose of the thread, with a seat gauge: "
	case threads.Female:
		where, said = "Look at the seat inside the thread, with a seat gauge: ", 2
	}
	var words []string
	for _, n := range noses {
		words = append(words, noseNames[n][said])
	}
	if len(words) < 2 {
		words = append(words, "something else")
	}
	return where + orList(words) + "?"
}

// orList joins words as people do: "14, 11 or 19".
func orList(words []string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " or " + words[last]
}

// named is how many candidates a sentence names.
const named = 5

// splitWords says which candidates a measurement tells apart: those that most
// probably give the first one's outcome, and those that do not.
func splitWords(a Ask, list []Candidate) string {
	if a == AskDiameter {
		return "it tells the sizes apart"
	}
	var with, without []string
	first := likeliest(a, list[0])
	for _, c := range list[:min(len(list), 2*named)] {
		if likeliest(a, c) == first {
			with = append(with, c.Form.Designation)
		} else {
			without = append(without, c.Form.Designation)
		}
	}
	if len(without) == 0 {
		return "it tells " + list[0].Form.Designation + " from the less likely threads"
	}
	return "it tells " + andList(with) + " from " + andList(without)
}

func andList(words []string) string {
	more := ""
	if len(words) > named {
		words, more = words[:named], " and others"
	}
	if len(words) < 2 || more != "" {
		return strings.Join(words, ", ") + more
	}
	last := len(words) - 1
	return strings.Join(words[:last], ", ") + " and " + words[last]
}

// sure is the probability at which a thread counts as found (a judgement).
const sure = 0.9

// nothingLeft says what to do when no measurement would help any more.
func nothingLeft(list []Candidate) Question {
	first := list[0]
	if first.Probability >= sure {
		return Question{Text: "Nothing more need be measured: it is " + first.Form.Designation + "."}
	}
	var names, tubes []string
	sizes := map[threads.Length]bool{}
	for _, c := range list {
		if c.Probability < 0.05 {
			continue
		}
		names = append(names, c.Form.Designation)
		if c.Form.Tube > 0 {
			sizes[c.Form.Tube] = true
			tubes = append(tubes, c.Form.Tube.String()+" ("+c.Form.Designation+")")
		}
	}
	if len(sizes) > 1 && len(sizes) == len(names) {
		return Question{Text: "Measure the outside of the tube that it takes: " + orList(tubes) + "?", Why: andList(names) + " share one thread"}
	}
	if len(names) == 1 {
		return Question{Text: "It is most likely " + names[0] + ": no other measurement would change that much."}
	}
	return Question{
		Text: "No measurement settles it: turn it by hand into a part that is known, look for a mark, or ask the seller.",
		Why:  andList(names) + " share these figures",
	}
}

// measureAgain is the answer when no thread fits.
func measureAgain(m *Measured, nearest []Candidate) Question {
	q := Question{Text: "No thread in the tables fits these figures. Measure the diameter and the pitch again: across the crests, square to the axis, paint and tape cleaned off."}
	if m.Diameter.Known && m.Sex == threads.Male {
		q.Text += " Measure the whole crest, not a run-out thread."
	}
	if len(nearest) > 0 {
		q.Why = "the nearest is " + nearest[0].Form.Designation
	}
	return q
}
