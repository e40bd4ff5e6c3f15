package pressure

import (
	"slices"
	"strconv"
	"strings"
	"sync"

	"handtight/pressure/nearest"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

// Spec is a hose standard by its short name: "2SN", "100R8". A hose sold to two
// of them has both, joined by a plus: "2SC+100R16". The zero value is none.
type Spec string

type specFacts struct {
	spec, title, construction, note string
	also                            []string
	vacuum                          quantity.Pressure
	vacuumTo                        quantity.Length
	source                          string
}

var specs = sync.OnceValue(func() []specFacts {
	var out []specFacts
	for _, r := range eachRow("spec") {
		f := specFacts{
			spec: r["spec"], title: r["title"], construction: r["construction"], note: r["note"],
			also: r.list("also"), source: r["source"],
		}
		if kpa, ok := r.number("vacuum_kpa"); ok {
			to, _ := r.number("vacuum_to_in")
			f.vacuum, f.vacuumTo = quantity.Pressure(kpa)*quantity.KPa, quantity.Length(to)*quantity.Inch
		}
		out = append(out, f)
	}
	return out
})

// KnownSpecs lists the hose standards that have ratings, in table order.
func KnownSpecs() []Spec {
	var out []Spec
	for _, f := range specs() {
		out = append(out, Spec(f.spec))
	}
	return out
}

// parts gives the facts of each standard that a spec names.
func (s Spec) parts() []specFacts {
	var out []specFacts
	for _, name := range strings.Split(string(s), "+") {
		for _, f := range specs() {
			if f.spec == name {
				out = append(out, f)
			}
		}
	}
	return out
}

// String gives the standard with its equivalent: "SAE 100R8 (EN 855 R8)".
func (s Spec) String() string {
	var titles []string
	for _, f := range s.parts() {
		titles = append(titles, f.title)
	}
	return strings.Join(titles, " and ")
}

// Construction says how the hose is built: "thermoplastic with aramid braid".
func (s Spec) Construction() string {
	var all []string
	for _, f := range s.parts() {
		all = append(all, f.construction)
	}
	return strings.Join(all, "; ")
}

var (
	saeHose   = pattern.New(`\b(?:sae[\s-]*)?100[\s-]*r[\s-]*(\d{1,2})(?:at|bt|as|a|b|s|t)?\b`)
	enHose    = pattern.New(`\b([1-4])[\s-]?(sn|sc|te|sp|sh)(?:[\s-]?k)?\b`)
	enSkive   = pattern.New(`\b([12])st\b`)
	bareR     = pattern.New(`\br[\s-]?(\d{1,2})(?:at)?\b`)
	threadR   = pattern.New(`^\s*(?:\d+\s*)?/\s*\d`)
	slashR    = pattern.New(`^\s*/\s*\d`)
	hoseWord  = pattern.New(`^(?:sae|en|din|iso|hose|hydraulic|type|typ|85[3-7]|1436|4079|3949|11237|100|r\d{1,2}(?:at)?)$`)
	separator = pattern.New(`[^a-z0-9]+`)
)

// HoseSpec finds the hose standard in what people write: "SAE 100R8", "R8",
// "DIN EN 857 2SC", "100R1AT/1SN". Two standards in one text are both kept. ok
// is false if there is none that has ratings; see [NearestSpec]. R1 to R6 alone
// are also pipe threads, and count only where nothing else but words of hose stands.
func HoseSpec(text string) (Spec, bool) {
	lower := strings.ToLower(text)
	found := map[string]bool{}
	for _, m := range saeHose.FindAllStringSubmatch(lower, -1) {
		found[saeKey(m[1])] = true
	}
	for _, m := range enHose.FindAllStringSubmatch(lower, -1) {
		found[strings.ToUpper(m[1]+m[2])] = true
	}
	for _, m := range enSkive.FindAllStringSubmatch(lower, -1) {
		// "1st" is also a number in a row
		if strings.Contains(lower, "853") || strings.Contains(lower, "1436") || strings.Contains(text, m[1]+"ST") {
			found[m[1]+"SN"] = true
		}
	}
	for _, at := range bareR.FindAllStringSubmatchIndex(lower, -1) {
		digits := lower[at[2]:at[3]]
		n, _ := strconv.Atoi(digits)
		rest := lower[at[1]:]
		if n <= 6 && (threadR.MatchString(rest) || !onlyHoseWords(lower)) || slashR.MatchString(rest) {
			continue // R 1 1/4 is a thread, R8 3/8 a hose and its bore
		}
		found[saeKey(digits)] = true
	}
	var names []string
	for _, f := range specs() {
		if found[f.spec] {
			names = append(names, f.spec)
		}
	}
	return Spec(strings.Join(names, "+")), len(names) > 0
}

// saeKey turns the number of a 100R hose into the name of its row.
func saeKey(digits string) string {
	switch digits = strings.TrimLeft(digits, "0"); digits {
	case "1", "2":
		return digits + "SN"
	}
	return "100R" + digits
}

func onlyHoseWords(lower string) bool {
	for _, w := range separator.Split(strings.TrimSpace(lower), -1) {
		if w != "" && !hoseWord.MatchString(w) {
			return false
		}
	}
	return true
}

// NearestSpec returns the known hose standard that a misspelt one is nearest to.
func NearestSpec(text string) (Spec, bool) {
	var words []string
	of := map[string]string{}
	for _, f := range specs() {
		head, tail, _ := strings.Cut(strings.TrimSuffix(f.title, ")"), " (")
		for _, w := range slices.Concat([]string{f.spec, head, tail}, f.also) {
			if _, taken := of[w]; w != "" && !taken {
				words, of[w] = append(words, w), f.spec
			}
		}
	}
	w, ok := nearest.Of(strings.TrimSpace(text), words)
	return Spec(of[w]), ok
}
