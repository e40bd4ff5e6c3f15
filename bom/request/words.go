package request

import (
	"embed"
	"strings"
	"sync"

	"handtight/pressure/rows"
)

//go:embed table/words.csv
var tables embed.FS

// Languages lists the languages that a request may be written in, by ISO 639-1.
func Languages() []string { return []string{"en", "de", "fr", "es", "it", "nl"} }

// words are the rows of the table by class and key; a column is a language.
var words = sync.OnceValue(func() map[[2]string]map[string]string {
	out := map[[2]string]map[string]string{}
	for _, r := range rows.All[map[string]string]("request", tables, "table/words.csv") {
		out[[2]string{r["class"], r["key"]}] = r
	}
	return out
})

// english are the phrases whose key is not the word itself.
var english = map[[2]string]string{
	{"phrase", "order"}: "Please supply:", {"phrase", "confirm"}: "Please confirm price, delivery, threads, material and allowable pressure before you send it.",
	{"phrase", "ask"}: "To be asked:", {"phrase", "total"}: "Total",
	{"head", "quantity"}: "Quantity", {"head", "unit"}: "Unit", {"head", "code"}: "Code", {"head", "text"}: "Description", {"head", "price"}: "Unit price", {"head", "total"}: "Line total",
	{"kind", "brine throttle"}: "needle valve", {"kind", "through-hull"}: "skin fitting", {"fact", "reads"}: "scale", {"fact", "rated"}: "rated",
}

// tongue is a language to write in.
type tongue string

// word gives a word in the language; in brackets and in English if the table lacks it.
func (t tongue) word(class, key string) string {
	plain := key
	if w, ok := english[[2]string{class, key}]; ok {
		plain = w
	}
	if t == "" || t == "en" {
		return plain
	}
	if w := words()[[2]string{class, key}][string(t)]; w != "" {
		return w
	}
	return "[" + plain + "]"
}

// comma reports whether decimals are written with a comma, and columns parted by semicolons.
func (t tongue) comma() bool { return t != "" && t != "en" }

// number writes a number with the language's decimal sign.
func (t tongue) number(text string) string {
	if t.comma() {
		return strings.Replace(text, ".", ",", 1)
	}
	return text
}
