package money

import (
	"fmt"
	"strings"

	"github.com/bojanz/currency"
)

// CodeError says that a text is no currency code of ISO 4217.
type CodeError struct {
	Code    string // what was found
	Nearest string // the code that was probably meant; empty if none is near
}

func (e *CodeError) Error() string {
	if e.Nearest == "" {
		return fmt.Sprintf("%q is not a currency code: write three letters of ISO 4217, such as EUR", e.Code)
	}
	return fmt.Sprintf("%q is not a currency code: write %s", e.Code, e.Nearest)
}

// CheckCode answers whether code is a current currency code of ISO 4217.
//
// Errors: *[CodeError] with the nearest code. Small letters are refused too, so that
// one currency has one spelling in a build.
// Source: ISO 4217 list one, as carried by the currency library.
func CheckCode(code string) error {
	if code != "" && currency.IsValid(code) {
		return nil
	}
	return &CodeError{Code: code, Nearest: nearest(code)}
}

// nearest gives the likeliest code by edit distance, a swap of neighbours counting
// as one edit; of equals the first of the library's list, which opens with the
// currencies most traded.
func nearest(code string) string {
	word := strings.ToUpper(strings.TrimSpace(code))
	if known, ok := tradeName(word); ok {
		return known
	}
	// A short word two edits away shares one letter with its neighbour: that is no hint.
	limit := 1
	if len(word) > 3 {
		limit = 2
	}
	best := ""
	for _, candidate := range currency.GetCurrencyCodes() {
		if n := edits(word, candidate); n <= limit {
			best, limit = candidate, n-1
		}
	}
	return best
}

// tradeName knows names that are used like codes and sit nearer to a wrong one:
// YEN is one letter from YER, the rial of Yemen. Common practice.
func tradeName(word string) (string, bool) {
	switch word {
	case "YEN":
		return "JPY", true
	case "RMB":
		return "CNY", true
	case "NTD":
		return "TWD", true
	case "UKP", "STG":
		return "GBP", true
	}
	return "", false
}

// edits counts the letters to insert, drop, replace or swap with their neighbour to
// turn a into b (optimal string alignment).
func edits(a, b string) int {
	x, y := []rune(a), []rune(b)
	if len(x) > len(y)+2 { // too far for any hint, and a text may be long
		return len(x) - len(y)
	}
	rows := make([][]int, len(x)+1)
	for i := range rows {
		rows[i] = make([]int, len(y)+1)
		rows[i][0] = i
	}
	for j := range rows[0] {
		rows[0][j] = j
	}
	for i := 1; i <= len(x); i++ {
		for j := 1; j <= len(y); j++ {
			rows[i][j] = min(rows[i-1][j]+1, rows[i][j-1]+1, rows[i-1][j-1]+differ(x[i-1], y[j-1]))
			if i > 1 && j > 1 && x[i-1] == y[j-2] && x[i-2] == y[j-1] {
				rows[i][j] = min(rows[i][j], rows[i-2][j-2]+1)
			}
		}
	}
	return rows[len(x)][len(y)]
}

func differ(a, b rune) int {
	if a == b {
		return 0
	}
	return 1
}
