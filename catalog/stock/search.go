package stock

import (
	"strings"

	"handtight/threads"
)

// Find lists the items whose words, ends, material and class hold every word asked for.
func Find(text string) []*Item {
	words := strings.Fields(strings.ToLower(text))
	if len(words) == 0 {
		return nil
	}
	var out []*Item
	for _, it := range Items() {
		if Holds(it.Title(), words) {
			out = append(out, it)
		}
	}
	return out
}

// Holds reports whether a line holds every one of some words in lower case, each from the
// beginning of a word of the line: "316" is not found in "1316".
func Holds(line string, words []string) bool {
	line = strings.ToLower(line)
	for _, w := range words {
		if !starts(line, w) {
			return false
		}
	}
	return true
}

func starts(line, word string) bool {
	for at := 0; ; {
		i := strings.Index(line[at:], word)
		if i < 0 {
			return false
		}
		if at += i; at == 0 || strings.ContainsRune(" ,-:(", rune(line[at-1])) {
			return true
		}
		at += len(word)
	}
}

// WithEnds lists the items that have each of the ends asked for, at ports of their own.
func WithEnds(ends ...threads.EndReading) []*Item {
	var out []*Item
	for _, it := range Items() {
		if Has(it.Ends, ends) {
			out = append(out, it)
		}
	}
	return out
}

// Has reports whether a part's ends are, among others, those asked for: by one of the
// readings of each. What is not asked of an end, such as its seal or that it swivels, is free.
func Has(ends []threads.End, asked []threads.EndReading) bool {
	if len(asked) == 0 {
		return true
	}
	for i, e := range ends {
		for _, c := range asked[0].Candidates {
			if !answers(e, c) {
				continue
			}
			rest := append(ends[:i:i], ends[i+1:]...)
			if Has(rest, asked[1:]) {
				return true
			}
		}
	}
	return false
}

// answers reports whether an end is what was asked for.
func answers(e, asked threads.End) bool {
	return e.Family == asked.Family && e.Size == asked.Size && (asked.Sex == threads.NoSex || e.Sex == asked.Sex) &&
		(asked.Seal == threads.NoSeal || e.Seal == asked.Seal) && (!asked.Swivel || e.Swivel) && (!asked.Plastic || e.Plastic) && e.Left == asked.Left
}
