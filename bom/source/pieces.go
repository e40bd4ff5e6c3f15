package source

import (
	"math"
	"runtime"
	"strings"

	"handtight/bom/each"
)

// leastPiece is how long a piece of a text is at least, in bytes: shorter ones take the library no
// time that sharing them out would save.
const leastPiece = 64 << 10

// pieceOf is how long the pieces are that a text of a length is decoded in: one for each core. It
// is without end for a text that is not worth it.
func pieceOf(length int) int {
	cores := runtime.GOMAXPROCS(0)
	if cores < 2 || length < 2*leastPiece {
		return math.MaxInt / 4
	}
	return max((length+cores-1)/cores, leastPiece)
}

// opensList reports whether a statement begins with the header of a list whose name has one part:
// "[[item]]". What comes before it has no say in what follows, but for the list's own name.
func opensList(statement string) bool {
	name, found := strings.CutPrefix(statement, "[[")
	if !found {
		return false
	}
	n := 0
	for n < len(name) && isBare(name[n]) {
		n++
	}
	return n > 0 && strings.HasPrefix(name[n:], "]]")
}

// decodePieces decodes a text in the pieces between the cuts at the same time, and puts lists that
// stand in several together. Where a piece has a fault, or pieces share a name that is no list of
// tables, the whole text is decoded, so that every fault is the library's own word on it.
func decodePieces(text string, cuts []int) (map[string]any, error) {
	if len(cuts) == 0 {
		return decode(text)
	}
	pieces := make([]map[string]any, len(cuts)+1)
	each.Of(len(pieces), func(i int) {
		from, to := 0, len(text)
		if i > 0 {
			from = cuts[i-1]
		}
		if i < len(cuts) {
			to = cuts[i]
		}
		if values, err := decode(text[from:to]); err == nil {
			pieces[i] = values
		}
	})
	values, ok := joined(pieces)
	if !ok {
		return decode(text)
	}
	return values, nil
}

// joined puts pieces together; ok is false where that is not the library's business but ours.
func joined(pieces []map[string]any) (values map[string]any, ok bool) {
	values = pieces[0]
	if values == nil {
		return nil, false
	}
	for _, piece := range pieces[1:] {
		if piece == nil {
			return nil, false
		}
		for name, value := range piece {
			before, both := values[name]
			if !both {
				values[name] = value
				continue
			}
			list, isList := before.([]map[string]any) // of [[headers]] only: a list in brackets is an []any
			more, isMore := value.([]map[string]any)
			if !isList || !isMore {
				return nil, false
			}
			values[name] = append(list, more...)
		}
	}
	return values, true
}
