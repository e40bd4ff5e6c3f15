package cart

import (
	"cmp"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"handtight/bom"
	"handtight/pressure"
	"handtight/threads"
	"handtight/threads/title"
)

// facts are what can be compared between a cart's line and an item. 0 and "" are not
// said. Pressures are bar, lengths millimetres, micron is micrometres.
type facts struct {
	kind     string
	ends     []ending
	material string
	spec     string
	rated    float64
	micron   float64
	scale    float64
	set      float64
	bore     float64
	length   float64
	words    []string // sorted, each once
}

// ending is one end with its readings. It is open where the words leave something of it
// unsaid, also when the reader has a likely word for it.
type ending struct {
	readings []threads.End
	keys     []string // the size of each reading, as alike sizes share it
	open     bool
}

func endingOf(e *threads.EndReading) ending {
	out := planned(e.Candidates)
	out.open = len(e.Candidates) > 1 || e.Question != ""
	return out
}

// planned is an end as the build has it.
func planned(readings []threads.End) ending {
	out := ending{readings: readings, keys: make([]string, len(readings))}
	for i := range readings {
		out.keys[i] = sizeKey(&readings[i])
	}
	return out
}

var (
	micronForm = regexp.MustCompile(`(?i)([0-9]+(?:[.,][0-9]+)?)\s*(?:µm|μm|um|microns?|mikron|micras?|micron[is]|mic|мкм)(?:[^\pL]|$)`)
	scaleForm  = regexp.MustCompile(`(?i)(?:^|[^0-9.,/])0\s*(?:-|–|—|\.\.\.?|…|to|bis|à|a|al|ad|tot|till|til|do|до)\s*([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa|бар)`)
	setForm    = regexp.MustCompile(`(?i)(?:set|eingestellt|ansprechdruck|öffnungsdruck|taré|tarée|tarata|tarado|tarada|innstilt|inställd|ustawion\pL*)\D{0,12}?([0-9]+(?:[.,][0-9]+)?)\s*(bar|psi|mpa)`)
	boreForm   = regexp.MustCompile(`(?i)(?:^|[^0-9.,/x×-])([0-9]{1,2}(?:[.,][0-9]+)?)\s*mm(?:[^\pL]|$)`)
	inchBore   = regexp.MustCompile(`(?:^|[^0-9.,/x×-])([0-9](?:[ -][0-9]/[0-9]{1,2})?|[0-9]/[0-9]{1,2})\s*(?:"|″|”|in\b|inch\b)`)
	specWords  = regexp.MustCompile(`(?i)\b(?:(?:din|sae|en|iso)[\s-]*)*(?:en[\s-]*)?(?:(?:853|854|855|857|1436|4079|3949|11237)[\s-]*)?(?:100[\s-]*r[\s-]*[0-9]{1,2}[a-z]{0,2}|r(?:[6-9]|1[0-9])|[1-4][\s-]?(?:sn|sc|st|te|sp|sh))\b`)
)

// otherPressure is a pressure that is no rating: a vacuum, a setting, what a pump gives.
var otherPressure = regexp.MustCompile(`(?i)(?:vacuum|vakuum|vide|dépression|vuoto|depressione|vac[ií]o|unterdruck|shut-?off|cut-?(?:out|in)|set(?: at| to)?|eingestellt|taré[e]?|tarat[ao]|tarad[ao]|stall|full flow|head|förderdruck|abschaltdruck|opening|cracking|öffnungsdruck)\s*:?\s*(?:(?:pressure|druck)\s*)?-?[0-9]+(?:[.,][0-9]+)?\s*(?:bar|psi|mpa|kpa|kg/cm2)`)

// withoutSpec takes the standard of a hose out of a text, where R8 would be read as a
// thread.
func withoutSpec(text string) (string, string) {
	spec, ok := pressure.HoseSpec(text)
	if !ok {
		return text, ""
	}
	return strings.TrimSpace(specWords.ReplaceAllString(text, " ")), string(spec)
}

// factsOf gathers what a line's words say.
func factsOf(text, spec string, r threads.Reading) facts {
	f := facts{kind: r.Kind, material: r.Material, spec: spec, words: wordsIn(text)}
	for i := range r.Ends {
		f.ends = append(f.ends, endingOf(&r.Ends[i]))
	}
	if r.HasRated {
		f.rated = r.RatedBar
	}
	f.micron = figureIn(micronForm, text)
	f.scale, f.set = pressureIn(scaleForm, text), pressureIn(setForm, text)
	f.madeUp(text)
	if m := inText().length.FindStringSubmatch(text); m != nil {
		f.length = float64(metres(m[1], m[2])) // thousandths of a metre are millimetres
	}
	return f
}

// madeUp tells a hose with its ends, and the bore of a hose: an end without a thread
// beside two with one is the bore.
func (f *facts) madeUp(text string) {
	hosey := f.kind == "hose" || f.kind == "hose stock" || f.spec != "" || f.kind == "" && saysHose(text) && !forHose.MatchString(text)
	if !hosey {
		return
	}
	var threaded []ending
	for _, e := range f.ends {
		if len(e.readings) > 0 && e.readings[0].Family.Threaded() {
			threaded = append(threaded, e)
		}
	}
	f.bore = boreIn(text)
	switch {
	case len(threaded) == 0:
		f.kind, f.ends = "hose stock", nil
	case len(threaded) == 1 && bothEnds.MatchString(text):
		f.kind, f.ends = "hose", append(threaded, threaded[0])
	default:
		f.kind, f.ends = "hose", threaded
	}
}

var bothEnds = regexp.MustCompile(`(?i)both|beid|deux (?:côtés|extrémités|bouts)|entrambi|ambo|ambos|ambas|beide|båda|begge|molemmat|obu|oběma|обе|оба|両端`)

var hoseWords = regexp.MustCompile(`(?i)(?:^|[^\pL])(?:hoses?|tubing|tube|schlauch|schläuche|tuyau|tuyaux|tubo|tubi|manguera|mangueras|flexible|mangueira|slang|slange|letku|wąż|hadice|шланг|рукав|hortum|软管|ホース)(?:[^\pL]|$)|\pL+schlauch|\pL+slang`)

// forHose are things that name the hose that they are for.
var forHose = regexp.MustCompile(`(?i)clamp|clip|schelle|collier|fascett|abrazader|braçadeira|klem|klämm|klemme|kiristin|opask|хомут|kelepçe|(?:^|[^\pL])(?:for|für|pour|per|para|voor|för|til|dla|для)\s+[0-9]`)

func saysHose(text string) bool { return hoseWords.MatchString(text) }

// boreIn gives the first size in a text that may be a bore: millimetres, else inches.
func boreIn(text string) float64 {
	if v := figureIn(boreForm, text); v > 0 {
		return v
	}
	m := inchBore.FindStringSubmatch(text)
	if m == nil {
		return 0
	}
	total := 0.0
	for _, part := range strings.FieldsFunc(m[1], func(r rune) bool { return r == ' ' || r == '-' }) {
		top, bottom, cut := strings.Cut(part, "/")
		n, _ := strconv.ParseFloat(top, 64)
		if d, err := strconv.ParseFloat(bottom, 64); cut && err == nil && d > 0 {
			n /= d
		}
		total += n
	}
	return total * 25.4
}

func figureIn(form *regexp.Regexp, text string) float64 {
	m := form.FindStringSubmatch(text)
	if m == nil {
		return 0
	}
	v, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
	if err != nil {
		return 0
	}
	return v
}

// inBar are the units that a scale or a setting may have: exact by ISO 80000, and the
// pound per square inch by its definition.
var inBar = map[string]float64{"bar": 1, "бар": 1, "psi": 0.0689475729, "mpa": 10}

func pressureIn(form *regexp.Regexp, text string) float64 {
	m := form.FindStringSubmatch(text)
	if m == nil {
		return 0
	}
	return figureIn(form, text) * inBar[strings.ToLower(m[2])]
}

// needFacts gathers what is known of something that the build needs.
func needFacts(n *bom.Need) facts {
	if n.Item == nil {
		f := factsOf(n.Key, "", title.Read(n.Key))
		f.kind = n.Kind
		return f
	}
	it := n.Item
	f := facts{kind: n.Kind, material: materialOf(it.Material), words: wordsIn(it.ID + ", " + it.About + ", " + it.Title + ", " + it.Spec)}
	for i := range it.Ports {
		if p := &it.Ports[i]; p.Said && len(p.End.Candidates) > 0 {
			f.ends = append(f.ends, planned(p.End.Candidates))
		}
	}
	if spec, ok := pressure.HoseSpec(it.Spec); ok {
		f.spec = string(spec)
	}
	f.figures(it)
	return f
}

func (f *facts) figures(it *bom.Item) {
	if it.Rated != nil {
		f.rated = it.Rated.Bar()
	}
	if it.Scale != nil {
		f.scale = it.Scale.Bar()
	}
	if it.Set != nil {
		f.set = it.Set.Bar()
	}
	if it.Micron != nil {
		f.micron = it.Micron.Millimetres() * 1000
	}
	if it.Bore != nil {
		f.bore = it.Bore.Millimetres()
	} else if it.Outside != nil {
		f.bore = it.Outside.Millimetres()
	}
	if it.Length != nil {
		f.length = it.Length.Millimetres()
	}
}

// materialOf reads a material as the reader of titles does, so that the two compare.
func materialOf(text string) string {
	if text == "" {
		return ""
	}
	if m := title.Read("part, " + text).Material; m != "" {
		return m
	}
	return strings.ToLower(text)
}

// vague materials may turn out to be one of a group.
var vague = map[string][]string{
	"stainless steel": {"316", "304", "duplex"},
	"plastic":         {"pp", "pvc", "pa", "pom", "pe", "pvdf", "ppsu", "abs"},
	"brass":           {"dzr"},
}

// sameMaterial compares two materials; open is true where a vague word leaves it so.
func sameMaterial(a, b string) (same, open bool) {
	return a == b, slices.Contains(vague[a], b) || slices.Contains(vague[b], a)
}

// wordsIn gives the words of a text that tell a part from another, sorted.
func wordsIn(text string) []string {
	var out []string
	for _, w := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) }) {
		if utf8.RuneCountInString(w) > 2 || w != "" && w[0] >= '0' && w[0] <= '9' {
			out = append(out, w)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func longestFirst(list []string) {
	slices.SortStableFunc(list, func(a, b string) int { return cmp.Or(cmp.Compare(len(b), len(a)), cmp.Compare(a, b)) })
}

// shared counts the words that two sorted lists have in common.
func sharedWords(a, b []string) int {
	n, j := 0, 0
	for _, w := range a {
		for j < len(b) && b[j] < w {
			j++
		}
		if j < len(b) && b[j] == w {
			n++
		}
	}
	return n
}
