package pressure

import "handtight/pressure/quantity"

// DeratePlastic returns the factor for a hose or tube of no hose standard by the plastics
// that are written of it: "PE", "reinforced PVC", "PE100 SDR 11". Of several the least
// rules. The tables are those of pipe: soft PVC hose has none of its own that was found,
// and loses no less than pipe does (a judgement).
// Errors: *RangeError outside a table; *UnknownError where no plastic with a table is named.
//
// Source: [DerateMaterial].
func DeratePlastic(text string, at quantity.Temperature) (Factor, error) {
	var all []Derated
	for _, p := range plasticsIn(text) {
		f, err := DerateMaterial(p, at)
		all = append(all, Derated{f, err})
	}
	if len(all) == 0 {
		return Factor{}, &UnknownError{Text: text, Known: plastics}
	}
	return LeastFactor(all...)
}
