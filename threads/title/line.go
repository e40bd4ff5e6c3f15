package title

import (
	"slices"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// line is a text on its way to a reading.
type line struct {
	*spelling
	lex        *lexicon
	tokens     []token
	seen       seen
	plain      []byte // the text with one blank between its words; nil until it is asked for
	asked      [len(listNames)]answer
	copperTube bool   // a copper tube is what the part is for
	dialed     *shape // the part with a dial that is named, though another word outranks it
	fitting    *shape // the first part that has ends, though another word outranks it
	skip       string // the name of a step that a test leaves out
	one        bool   // a single end, not a part: kinds add nothing
	shape      *shape
	material   string
	materials  []string // all that are named
	rated      quantity.Pressure
	hasRated   bool
	ratedBy    *figure

	class, schedule, grade string
	classBy                *figure
	temperature            quantity.Temperature
	hasTemperature         bool
	tied                   []tiedHeat // temperatures at which a pressure holds
	standards              []string
	pressures              []threads.StatedPressure

	byBore    bool // a standard whose sizes are nominal bores
	dashes    bool // a family that is sized by dash is named
	pressed   bool // press or multilayer tube is named
	nordic    bool // Scandinavian or Finnish words: R may only say "pipe thread"
	japan     bool
	europe    bool // words of a language of Europe other than English and those of the Americas
	america   bool // words of the United States or Canada
	malleable bool // a symbol of EN 10242: R and Rp
	washer22  bool // an M22 thread: 14 or 15 mm is its pin
	both      bool
	teeSex    threads.Sex // of the branch of a branch tee, of one run of a run tee
	reducing  bool
	evidence  bool // something says that the figures belong to an end
	unjudged  []string
	inside    string  // a name of several words with one in it that is not understood
	lost      bool    // a piece between the x of ends holds nothing but words that are not understood
	lostEnd   bool    // such a piece stands behind an x
	second    *phrase // the other of two ends that one size is said for
	parts     bool    // two parts are named, with a plus between them
	ringCode  bool    // a code of cutting-ring fittings is read: GE15L
	camType   byte    // the letter of a cam coupling's type; 0 if none is said
	stemmed   bool    // a stem is named, which plugs into a push-in end
	sided     bool    // a port for a gauge, a drain or a bypass stands beside its main ports
	surplus   bool    // more ends are read than a part of the kind has
	evenly    bool    // a part that goes from one size to another has one size at all its ends
	unsure    bool    // the part's name is not understood, and a size of a pipe thread stands beside it
	ignored   []threads.NotUsed
	taken     int // the last token that the text says there is none of
}

// inBracket reports whether the token at k stands in round brackets.
func (l *line) inBracket(k int) bool {
	for j := k - 1; j >= 0; j-- {
		switch l.tokens[j].mark {
		case ')':
			return false
		case '(':
			return true
		}
	}
	return false
}

// saysEnd reports a word that speaks of an end: its thread, its sex, or what takes it.
func saysEnd(it *token) bool {
	end := it.value(classEnd)
	return it.is(classFamily) != nil || it.is(classSex) != nil || end != "" && end != "TUBE" && end != "ROUND" && end != "BORE"
}

// figured reports whether a figure stands before the word at k.
func (l *line) figured(k int) bool {
	return anyToken(l.tokens[:k], func(it *token) bool { return it.figure != nil })
}

// european are the languages of countries whose pipe threads are BSP.
var european = map[string]bool{
	"de": true, "it": true, "nl": true, "sv": true, "no": true, "da": true, "fi": true, "pl": true, "cs": true,
	"ru": true, "uk": true, "tr": true, "hu": true, "ro": true, "hr": true, "el": true,
}

// plural reports whether the word for a port is plural, and no kind says how many.
func (l *line) plural(it *token) bool {
	return it.to > it.from && l.norm[it.to-1] == 's'
}

// hardware reports a nut of a bolt: a metric size without the pitch of a fitting,
// and no word of a thread, a tube or a hose.
func (l *line) hardware() bool {
	if l.shape != nil && !l.is(nut) && !l.is(ring) {
		return false
	}
	metric := false
	for k := range l.tokens {
		it := &l.tokens[k]
		if f := it.figure; f != nil && f.sized() {
			if size := at(l.tokens, k-2).figure; f.kind == mmSize && at(l.tokens, k-1).value(classSep) == "x" && size != nil && size.kind == metricSize && size.pitch == 0 && f.v > size.v {
				continue // M12x60mm: a bolt by its length
			}
			if f.kind != metricSize || f.pitch > 0 && f.pitch <= 3 {
				return false
			}
			metric = true
		}
		if it.is(classFamily) != nil || it.is(classEnd) != nil || it.is(classSex) != nil && !it.is(classSex).weak() && it.to-it.from > 2 {
			return false
		}
	}
	return metric
}

// speaks reports a word of one of the languages.
func (l *line) speaks(tongues ...string) bool {
	return anyToken(l.tokens, func(it *token) bool {
		return slices.ContainsFunc(it.word.all(), func(m *sense) bool { return slices.Contains(tongues, m.tongue) })
	})
}

// iberian reports a line in Spanish or Portuguese.
func (l *line) iberian() bool { return l.speaks("es", "pt") || l.containsWord(iberianList) }

// says reports whether the line has a word of an end.
func (l *line) says(end string) bool {
	for k := range l.tokens {
		if l.tokens[k].value(classEnd) == end {
			return true
		}
	}
	return false
}

// sizesBefore counts the figures before k that are sizes by their form.
func (l *line) sizesBefore(k int) int {
	n := 0
	for j := range l.tokens[:k] {
		if f := l.tokens[j].figure; f != nil && (f.frac || f.marked || f.sized()) {
			n++
		}
	}
	return n
}
