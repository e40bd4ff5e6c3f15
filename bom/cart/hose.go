package cart

import (
	"math"
	"slices"
	"strings"

	"handtight/catalog"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

// madeUp tells a hose with its ends, and the bore of a hose: an end without a thread
// beside two with one is the bore.
func (f *facts) madeUp(text string) {
	hosey := isA(f.kind, catalog.Hose|catalog.HoseStock) || f.spec != "" || f.kind == "" && saysHose(text) && !forHose.MatchString(text)
	if !hosey {
		return
	}
	var threaded []ending
	for _, e := range f.ends {
		if len(e.readings) > 0 && e.readings[0].Family.Threaded() {
			threaded = append(threaded, e)
		}
	}
	f.bore = boreIn(text, f.spec)
	if f.spec != "" {
		f.doubted("is it its bore or its outside (its words say %q)", strings.Trim(inchOutside.FindString(text), " ,;("))
	}
	if inner, outer := tubeIn(text); f.spec == "" && inner+outer > 0 {
		f.bore, f.outer, f.inside = orLength(inner, outer), outer, inner > 0
	}
	threaded = twoEnds(threaded, f.bore)
	if len(threaded) == 2 && threaded[0].open && !threaded[1].open && f.bore > 0 && bothEnds.MatchString(text) && inchKey(threaded[0].keys, f.bore) {
		threaded = threaded[1:] // 36" x 3/8" with one end twice: its bore
	}
	switch {
	case len(threaded) == 0:
		f.kind, f.ends = stockKind(), nil
		return
	case len(threaded) == 1 && bothEnds.MatchString(text):
		f.kind, f.ends = hoseKind(), append(threaded, threaded[0])
	default:
		f.kind, f.ends = hoseKind(), threaded
	}
	if m := lengthIn(text); m != nil {
		f.length = quantity.Length(metres(m[1], m[2])) // thousandths of a metre are millimetres
	} else {
		f.length = longIn(text)
	}
}

// inchOutside is a size in inches that is called an outside: hose to a standard is called by its bore.
var inchOutside = pattern.New(`(?i)(?:^|[^0-9.,/-])[1357]/(?:2|4|8|16)\s*(?:"|″|”|''|in\b|inch)?\s*(?:o\.?d\b\.?|outside|outer)|(?:o\.?d\.?|outside(?: diameter| dia\.?)?|outer(?: diameter)?|außendurchmesser|außen-?ø)\s*:?\s*[1357]/(?:2|4|8|16)`)

// twoEnds takes the bore out of the ends of a hose, where it was read as one more thread: it
// stands first, and is open, or the same as the next.
func twoEnds(ends []ending, bore quantity.Length) []ending {
	if len(ends) < 3 || bore == 0 {
		return ends
	}
	for i := range ends {
		if ends[i].open {
			return slices.Delete(slices.Clone(ends), i, i+1)
		}
	}
	return ends[len(ends)-2:]
}

// inchKey reports whether an end is called by a hose's bore.
func inchKey(keys []string, bore quantity.Length) bool {
	return slices.ContainsFunc(keys, func(k string) bool {
		size, ok := strings.CutPrefix(k, "inch ")
		return ok && math.Abs(float64(inchesOf(size)-bore)) < tubeSlack
	})
}

var bothEnds = pattern.New(`(?i)both|beid|(?:due|deux|dos|duas|two|twee|zwei|2) (?:femm|femel|hembr|fêm|female|masch|mâle|mach|male|extr|punte|pontas|puntas|ends|seit)|deux (?:côtés|extrémités|bouts)|entrambi|ambo|ambos|ambas|beide|båda|begge|molemmat|obu|oběma|обе|оба|両端`)

var hoseWords = pattern.New(`(?i)(?:^|[^\pL])(?:hoses?|tubing|tube|schlauch|schläuche|tuyau|tuyaux|tubo|tubi|manguera|mangueras|flexible|mangueira|slang|slange|letku|wąż|hadice|шланг|рукав|hortum|软管|ホース)(?:[^\pL]|$)|\pL+schlauch|\pL+slang|(?:^|[^\pL])(?:pe|pa|pu|ldpe|lldpe|kunststoff)[ -]?rohr|(?:^|[^\pL])rohr [0-9]+(?:[.,][0-9]+)? ?mm (?:außen|aussen|ad(?:[^\pL]|$))`)

// forHose are things that name the hose that they are for.
var forHose = pattern.New(`(?i)clamp|clip|schelle|collier|fascett|abrazader|braçadeira|klem|klämm|klemme|kiristin|opask|хомут|kelepçe|(?:^|[^\pL])(?:for|für|pour|per|para|voor|för|til|dla|для)\s+[0-9]`)

func saysHose(text string) bool { return hoseWords.MatchString(text) }
