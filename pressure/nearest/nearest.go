// Package nearest answers which known word a misspelt one was probably meant to be, by
// one edit distance for the whole program.
package nearest

import (
	"cmp"
	"strings"
	"unicode/utf8"
)

// A word longer than this is compared only as a whole and as a beginning.
const longestCompared = 64

// Of returns the known word that a person most likely meant by word, and
// false when none is near enough.
//
// A word that differs only in capitals is nearest; then the smallest
// Damerau-Levenshtein distance (letters added, lost, changed, or two neighbours
// swapped) up to a third of the word's length, at least 1 and always less than
// the word itself; then the shortest known word that word begins, or that begins
// word, from three letters on. On a tie the first in the alphabet wins, so that
// the order of known does not matter.
func Of(word string, known []string) (string, bool) {
	best, bestRank := "", 0
	for _, one := range known {
		rank, ok := likeness(word, one)
		if !ok {
			continue
		}
		if best == "" || cmp.Or(cmp.Compare(rank, bestRank), cmp.Compare(one, best)) < 0 {
			best, bestRank = one, rank
		}
	}
	return best, best != ""
}

// likeness ranks a known word, 0 the nearest; false means too far.
func likeness(word, known string) (int, bool) {
	const prefixRank = 1000
	switch {
	case word == "" || known == "":
		return 0, false
	case word == known:
		return 0, true
	case strings.EqualFold(word, known):
		return 1, true
	}
	a, b := strings.ToLower(word), strings.ToLower(known)
	n, m := utf8.RuneCountInString(a), utf8.RuneCountInString(b)
	if n <= longestCompared && m <= longestCompared {
		bound := min(max(1, n/3), n-1, m-1)
		if d := distance([]rune(a), []rune(b), bound); d <= bound {
			return 1 + d, true
		}
	}
	if min(n, m) >= 3 && (strings.HasPrefix(a, b) || strings.HasPrefix(b, a)) {
		return prefixRank + max(n, m), true
	}
	return 0, false
}

// Distance counts the letters to add, drop, change, or swap with their neighbour that
// turn one word into the other, capitals apart, no letter touched twice; or gives any
// number above bound once it is known to exceed it. A word of more than 64 letters is
// above every bound, unless it is the same word.
//
// Source: Damerau, Communications of the ACM 7 (1964), and Levenshtein (1966).
func Distance(a, b string, bound int) int {
	if a == b {
		return 0
	}
	if utf8.RuneCountInString(a) > longestCompared || utf8.RuneCountInString(b) > longestCompared {
		return bound + 1
	}
	return distance([]rune(a), []rune(b), bound)
}

// distance is the Damerau-Levenshtein distance in which no letter is touched
// twice, or any number above bound once it is known to exceed it.
func distance(a, b []rune, bound int) int {
	if len(a)-len(b) > bound || len(b)-len(a) > bound {
		return bound + 1
	}
	before, last, row := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range last {
		last[j] = j
	}
	for i := range a {
		row[0] = i + 1
		least := row[0]
		for j := range b {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+cost)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
			least = min(least, row[j+1])
		}
		if least > bound+1 {
			return bound + 1
		}
		before, last, row = last, row, before
	}
	return last[len(b)]
}
