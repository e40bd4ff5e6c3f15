package money

import (
	"fmt"
	"strings"

	"github.com/bojanz/currency"

	"handtight/pressure/nearest"
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
	return &CodeError{Code: code, Nearest: likeliest(code)}
}

// likeliest gives the likeliest code by edit distance, a swap of neighbours counting
// as one edit; of equals the first of the library's list, which opens with the
// currencies most traded.
func likeliest(code string) string {
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
		if n := nearest.Distance(word, candidate, limit); n <= limit {
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
