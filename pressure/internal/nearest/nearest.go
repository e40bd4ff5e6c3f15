// Package nearest answers which known word a misspelt one was probably meant to be.
package nearest

import "strings"

// Of returns the known word with the fewest letters to change, add, drop or swap
// with a neighbour, if that is at most two and fewer than half of the word's own
// letters. Case does not count; the earlier word wins a tie.
func Of(text string, known []string) (string, bool) {
	text = strings.ToLower(text)
	best, bestDistance := "", 3
	for _, word := range known {
		d := distance([]rune(text), []rune(strings.ToLower(word)))
		if d < bestDistance && 2*d <= len([]rune(word)) {
			best, bestDistance = word, d
		}
	}
	return best, best != ""
}

// distance counts the changes between two words, a swap of neighbours as one
// (optimal string alignment).
func distance(a, b []rune) int {
	before, last := []int(nil), steps(len(b))
	for i := range a {
		row := make([]int, len(b)+1)
		row[0] = i + 1
		for j := range b {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			row[j+1] = min(last[j]+cost, last[j+1]+1, row[j]+1)
			if i > 0 && j > 0 && a[i] == b[j-1] && a[i-1] == b[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last = last, row
	}
	return last[len(b)]
}

func steps(n int) []int {
	out := make([]int, n+1)
	for i := range out {
		out[i] = i
	}
	return out
}
