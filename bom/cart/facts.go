package cart

import (
	"cmp"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// facts are what can be compared between a cart's line and an item. A figure of 0 and a
// text of "" are not said.
type facts struct {
	kind     string
	ends     []ending
	material string
	metal    string // of the ends of a hose that is made up
	class    string // of a fitting, as package pressure reads it
	spec     string // hose standard
	rated    quantity.Pressure
	scale    quantity.Pressure // full scale of a gauge
	set      quantity.Pressure // of a relief valve
	unset    bool              // the words say only what it may be set to
	full     quantity.Pressure // at which it passes all its flow
	cut      quantity.Pressure // at which a pump stops
	vacuum   quantity.Pressure // that a hose stands, below the air's
	micron   quantity.Length
	bore     quantity.Length // of a hose; of a tube its outside
	outer    quantity.Length // of a hose or a tube, where it is called its outside
	inside   bool            // the bore is called so
	hull     quantity.Length // what a seacock is called by, beside its tail
	length   quantity.Length // of a hose that is made up
	volts    [2]quantity.Voltage
	flow     flowRange
	element  elementSize
	tall     float64 // of a cartridge and its housing, in inches
	grips    span    // what a clamp closes on
	traits   traits
	words    []string        // sorted, each once
	orBore   quantity.Length // of a hose whose bore is said twice, the other
	branch   int             // which end is called the branch of a tee, from 1; 0 for none
	current  current
	others   []string // materials that are named beside the first
	said     []string // questions about what the words say twice and not alike, or doubt
	forPart  bool     // the kind is that of something for another part, whose name is in the words too
	pieceOf  string   // words for a material that is a piece's, where that of the part is not said
	plain    string   // a metal that is named and that no table has
	notes    []string // words that were understood and not used
}

// ending is one end with its readings. It is open where the words leave something of it
// unsaid, also when the reader has a likely word for it.
type ending struct {
	readings []threads.End
	keys     []string // the size of each reading, as alike sizes share it
	open     bool
	words    string // that a line was read from
	question string // that settles it; "" if nothing is open
	fixed    bool   // the words say that it does not turn
	port     string // that it is called by, or is: in, out, feed, brine, product; "" if none is said
}

func endingOf(e *threads.EndReading) ending {
	out := planned(e.Candidates)
	out.open = len(e.Candidates) > 1 || e.Question != ""
	out.words, out.question = e.Words, e.Question
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

// specWords are the words of a hose's standard.
var specWords = pattern.New(`(?i)\b(?:(?:din|sae|en|iso)[\s-]*)*(?:en[\s-]*)?(?:(?:853|854|855|857|1436|4079|3949|11237)[\s-]*)?(?:100[\s-]*r[\s-]*[0-9]{1,2}[a-z]{0,2}|r(?:[6-9]|1[0-9])|[1-4][\s-]?(?:sn|sc|st|te|sp|sh))\b`)

// withoutSpec takes the standard of a hose out of a text, where R8 would be read as a
// thread.
func withoutSpec(text string) (string, string) {
	spec, ok := pressure.HoseSpec(strings.Map(latin, text))
	if !ok {
		return text, ""
	}
	if at := specWords.FindStringIndex(text); at != nil {
		if m := boreBefore.FindStringSubmatchIndex(text[:at[0]]); m != nil {
			text = text[:m[2]] + "bore " + text[m[2]:] // 3/8 SAE 100R8: and so is the one before it
			at = specWords.FindStringIndex(text)
		}
		if m := bareBore.FindStringSubmatchIndex(text[at[1]:]); m != nil && !ofThread.MatchString(text[at[1]+m[3]:]) {
			text = text[:at[1]] + " bore " + text[at[1]+m[2]:] // R8 3/8 x 900: the size behind the standard is its bore
		}
	}
	return strings.TrimSpace(specWords.ReplaceAllString(text, " ")), string(spec)
}

// bareBore is an inch size that stands behind a hose's standard and has no sign.
var bareBore = pattern.New(`^[\s,]*([1357]/(?:2|4|8|16))(?:[^0-9"″”'/]|$)`)

// boreBefore is one that stands right before it.
var boreBefore = pattern.New(`(?:^|[\s,])([1357]/(?:2|4|8|16))\s*$`)

// latin puts a plain letter in place of one with a mark: behind "für" R 13 is no hose.
func latin(r rune) rune {
	if r >= utf8.RuneSelf && unicode.IsLetter(r) {
		return 'x'
	}
	return r
}

// longestRead is how many bytes of a line's words are looked through.
const longestRead = 2000

// factsOf gathers what a line's words say.
func factsOf(text, spec string, r threads.Reading) facts {
	text = text[:min(len(text), longestRead)] // the reader of titles reads no more, and says so
	list, s := wordList(text), speak(text)
	h := s.hits()
	f := facts{kind: orWords(kindIn(list), r.Kind), material: r.Material, spec: spec, traits: traitsIn(list), words: distinct(list)}
	f.headKind(s, h)
	for i := range r.Ends {
		f.ends = append(f.ends, endingOf(pushEnd(text, gaugeEnd(f.kind, hullEnd(f.kind, &r.Ends[i])))))
	}
	if leftApart(&r) {
		f.ends = leftHanded(f.ends)
	}
	switch {
	case isRing(f.kind):
		f.ends = ringEnd(f.kind, text)
	case !isA(f.kind, catalog.Washer):
		f.traits = f.traits.without("seal")
	case len(f.ends) == 0:
		f.ends = washerEnd(text)
	}
	if isA(f.kind, catalog.Element) && pumpWords.MatchString(text) {
		f.kind = catalog.OfRole(catalog.DrivesFeed).Name // bomba de membrana: of what it is made, and not what it is
	}
	if r.HasRated {
		f.rated = r.Rated
	}
	f.read(text)
	if isA(f.kind, catalog.SkinFitting) {
		f.hull = hullSize(text, f.ends)
	}
	f.settings(text)
	f.stated(&r)
	f.body(&r)
	f.notOwn(text)
	f.vacuum = vacuumIn(text)
	f.madeUp(text)
	if isA(f.kind, catalog.Hose) {
		f.metal = endMetal(text)
	}
	f.loose()
	if !isA(f.kind, catalog.Electric) {
		f.traits = f.traits.without("rest") // N.O. is a number elsewhere
	}
	if f.spec != "" || onShelf(f.kind) || isA(f.kind, catalog.Hose) {
		f.traits = f.traits.without("oil") // a hose to such a standard, or a fitting, is called hydraulic wherever it goes
	}
	f.besides(text, &r)
	f.besideEnds(text)
	f.portsOf(text, s)
	f.doubts(s, h, &r)
	return f
}

// leftApart reports whether a line says a left hand apart from its ends: behind a comma, at its end.
func leftApart(r *threads.Reading) bool {
	return slices.ContainsFunc(r.NotUsed, func(u threads.NotUsed) bool {
		if u.Why != threads.NoEndTakesIt {
			return false
		}
		ends := title.Read("nipple 1/2 NPT male " + u.Words).Ends
		return len(ends) > 0 && slices.ContainsFunc(ends[0].Candidates, func(e threads.End) bool { return e.Left })
	})
}

// leftHanded takes all threads for left-hand ones.
func leftHanded(ends []ending) []ending {
	for i := range ends {
		ends[i].readings = slices.Clone(ends[i].readings)
		for k := range ends[i].readings {
			ends[i].readings[k].Left = ends[i].readings[k].Family.Threaded()
		}
	}
	return ends
}

// pumpWords begin a line that is of a pump.
var pumpWords = pattern.New(`(?i)^[\s0-9x.,-]*(?:[\pL-]*pump\b|[\pL-]*pumpe\b|pomp[ae]?\b|[\pL-]*pomp\b|bomba\b)`)

// stated takes over what the reader of titles has read of classes and of pressures that are
// no rating. The pressure of a gauge is its full scale.
func (f *facts) stated(r *threads.Reading) {
	f.class = orWords(r.Class, f.class)
	if f.class == "" && r.Schedule != "" {
		f.class = r.Schedule
	}
	for i := range r.Pressures {
		bar := r.Pressures[i].Pressure
		switch r.Pressures[i].What {
		case "full scale":
			f.scale = max(f.scale, bar)
		case "cut-off":
			f.cut = max(f.cut, bar)
		case "setting":
			switch {
			case f.unset, f.set > 0 && alike(bar, f.set):
			case f.set == 0:
				f.set = bar
			case bar < f.set-pressure.Slack && oneFigure.MatchString(r.Pressures[i].Words):
				f.rated = bar // it lifts at more: that figure is of its body
			case bar > f.set+pressure.Slack && f.rated == 0 && oneFigure.MatchString(r.Pressures[i].Words):
				f.rated = bar // "set 60 bar, 120 bar": it holds the higher one, whatever that is
			}
		}
	}
	if isA(f.kind, catalog.Gauge) {
		f.scale = max(f.scale, f.rated) // PN 100 says how far it reads too, where nothing else does
	}
}

// oneFigure are the words of a pressure that is no range.
var oneFigure = pattern.New(`^[^0-9]*[0-9]+(?:[.,][0-9]+)?[^0-9]*$`)

// hullEnd takes the bare millimetres of a skin fitting for its tail: nobody sells one for a
// push-in tube (common practice).
func hullEnd(kind string, e *threads.EndReading) *threads.EndReading {
	if !isA(kind, catalog.SkinFitting) {
		return e
	}
	if len(e.Candidates) == 0 || slices.ContainsFunc(e.Candidates, func(c threads.End) bool { return c.Family != threads.Push && c.Family != threads.Compression }) {
		return e
	}
	out := *e
	out.Candidates, out.Question = slices.Clone(e.Candidates[:1]), ""
	out.Candidates[0].Family = threads.Barb
	return &out
}

// hullSize is the one inch size of a skin fitting that is not its tail's; 0 for none or several.
func hullSize(text string, ends []ending) quantity.Length {
	var found quantity.Length
	for _, m := range inchBore.FindAllStringSubmatch(text, -1) {
		size := inchesOf(m[1])
		tail := slices.ContainsFunc(ends, func(e ending) bool {
			return slices.ContainsFunc(e.readings, func(r threads.End) bool {
				return !r.Family.Threaded() && math.Abs(float64(r.Diameter)-float64(size)) <= tubeSlack
			})
		})
		switch {
		case tail || size == found:
		case found > 0:
			return 0
		default:
			found = size
		}
	}
	return found
}

// gaugeEnd takes a gauge's thread for a male one where nothing says its sex: they are made so.
// Source: EN 837-1 lists male connections only, as memory has it.
func gaugeEnd(kind string, e *threads.EndReading) *threads.EndReading {
	if !isA(kind, catalog.Gauge) || len(e.Candidates) != 1 || e.Sex != threads.Male || !e.Candidates[0].Family.Threaded() {
		return e
	}
	out := *e
	out.Question = ""
	return &out
}

// pushWords are words of push-in fittings.
var pushWords = pattern.New(`(?i)push|steck|instantan|innesto|instantáne|enchufe|insteek|conexi[oó]n r[aá]pida|raccord[oi]? rapid|snelkoppel|quick[- ]?connect|(?:engate|encaixe) r[aá]pido|\brapid[oaie]\b`)

// pushEnd takes the tube of a part that is called a push-in one for a tube that is pushed in.
func pushEnd(text string, e *threads.EndReading) *threads.EndReading {
	if len(e.Candidates) == 0 || e.Candidates[0].Family.Threaded() || !pushWords.MatchString(text) {
		return e
	}
	out := *e
	out.Candidates, out.Question = slices.Clone(e.Candidates[:1]), ""
	out.Candidates[0].Family, out.Candidates[0].Sex = threads.Push, threads.NoSex
	return &out
}

// washerEnd reads the bare size of a washer: it is called by the pipe thread that it is for.
func washerEnd(text string) []ending {
	m := washerSize.FindStringSubmatch(text)
	if m == nil {
		return nil
	}
	r := title.Read("washer G " + strings.ReplaceAll(m[1], "-", " "))
	var out []ending
	for i := range r.Ends {
		out = append(out, endingOf(&r.Ends[i]))
	}
	return out
}

var washerSize = pattern.New(`(?:^|[^0-9.,/x×-])([1-4](?:[ -][13]/[248])?|[1357]/[248])\s*(?:"|″|”|'')`)

// read reads the figures of a text, each where a word of it stands.
func (f *facts) read(text string) {
	lower := strings.ToLower(text)
	says := func(words ...string) bool { return saysAny(lower, words...) }
	if says("µ", "μ", "um", "mic", "mcr", "mcn", "mikron", "мкм") {
		f.micron = quantity.Length(figureIn(micronForm, text)) * quantity.Micron
	}
	if says("bar", "psi", "mpa", "бар") {
		f.scale, f.set, f.full = pressureIn(scaleForm, text), pressureIn(setForm, text), pressureIn(fullForm, text)
		f.cut = max(pressureIn(cutForm, text), pressureIn(cutBehind, text))
	}
	if says("l", "gp", "gal", "m3", "m³") && says("/h", "/m", "lph", "lpm", "gp") {
		f.flow = flowIn(text)
	}
	if says("v") {
		f.volts, f.current = voltsIn(text), currentIn(text)
	}
	f.class = classIn(text, lower)
	switch {
	case isA(f.kind, catalog.Element|catalog.Separates):
		f.element = elementIn(text)
	case isA(f.kind, catalog.Cartridge|catalog.Filter):
		f.tall = tallIn(text)
	case isA(f.kind, catalog.Clamp):
		if f.grips = rangeIn(text); f.grips.to == 0 {
			f.bore = boreIn(text, "")
		}
	}
}

// loose takes the ends off things that have none: what was read as one is a figure.
func (f *facts) loose() {
	if isA(f.kind, catalog.Clamp|catalog.Cartridge|catalog.Element|catalog.Tape|catalog.Oil|catalog.SealKit) {
		f.ends = nil
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
	"stainless steel": {"316", "304", "duplex", "super duplex"},
	"plastic":         {"pp", "pvc", "pa", "pom", "pe", "pvdf", "ppsu", "abs"},
	"brass":           {"dzr"},
}

// sameMaterial compares two materials; open is true where a vague word leaves it so.
func sameMaterial(a, b string) (same, open bool) {
	return a == b, slices.Contains(vague[a], b) || slices.Contains(vague[b], a)
}

// wordList gives the words of a text in order.
func wordList(text string) []string { return strings.Fields(normal(text)) }

// distinct gives the words that tell a part from another, sorted.
func distinct(list []string) []string {
	out := make([]string, 0, len(list))
	for _, w := range list {
		if r, _ := utf8.DecodeRuneInString(w); utf8.RuneCountInString(w) > 2 || unicode.IsDigit(r) {
			out = append(out, w)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func longestFirst(list []string) {
	slices.SortStableFunc(list, func(a, b string) int { return cmp.Or(cmp.Compare(len(b), len(a)), cmp.Compare(a, b)) })
}

// sharedWords counts the words that two sorted lists have in common.
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
