package finding

import "slices"

// Entries puts findings together for people, as indices into the list: those of one rule, one
// severity and one consequence are one entry, what is known to be wrong apart from what is not
// known, and so are those of several rules that speak of one part alone. Entries stand by the
// danger of their worst, and within each the worst is first: the order is that of severity,
// consequence, what is known before what is not, pressure at stake, and the number of the joint.
// Every finding stands in one of them.
func Entries(list []Finding) [][]int {
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return list[a].danger(&list[b]) })
	var byRule [][]int
	at := map[entryKey]int{}
	for _, i := range order {
		byRule = gather(byRule, at, list[i].entry(list[i].Slug), []int{i})
	}
	var out [][]int
	at = map[entryKey]int{}
	for _, e := range byRule {
		f := &list[e[0]]
		if len(e) > 1 || f.Subject.Kind != Unit || len(f.Also) > 0 {
			out = append(out, e)
			continue
		}
		out = gather(out, at, f.entry(f.Subject.Unit), e)
	}
	return out
}

// entryKey is what the findings of an entry share; the word is that of a rule or of a part.
type entryKey struct {
	word        string
	severity    Severity
	consequence Consequence
	notKnown    bool
}

func (f *Finding) entry(word string) entryKey {
	return entryKey{word, f.Severity, f.Consequence, f.NotKnown}
}

// gather adds to the entry of a key, or begins it.
func gather(out [][]int, at map[entryKey]int, k entryKey, more []int) [][]int {
	if n, ok := at[k]; ok {
		out[n] = append(out[n], more...)
		return out
	}
	at[k] = len(out)
	return append(out, more)
}
