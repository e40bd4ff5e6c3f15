package title

import (
	"embed"
	"iter"
	"slices"
	"strings"
	"sync"
	"unicode/utf8"

	"handtight/pressure/rows"
	"handtight/threads"
)

//go:embed lexicon/*.csv
var lexiconFiles embed.FS

// wordClass is what a word is about.
type wordClass uint8

const (
	classSex    wordClass = iota + 1 // one sex, or one of each end: "MF"
	classFamily                      // a thread's name, with the sex that it carries
	classEnd                         // an end without a thread, or one that is not judged
	classAttr                        // how an end closes, turns, or is spread over the part
	classKind                        // the part, by its shape in shape.csv
	classMaterial
	classUnit   // what a figure counts, when it stands behind one
	classBefore // a figure behind this word is no thread
	classAfter  // a figure before this word is no thread
	classSep    // parts two ends
	classSize   // a size written in words
	classPress  // what the pressure beside it is, if not a rating
	classGrade  // a grade of steel by forging or casting
	classWord   // a schedule in one word
	classNoise  // understood, and says nothing of ends
)

var classNames = map[string]wordClass{
	"sex": classSex, "fam": classFamily, "end": classEnd, "attr": classAttr, "kind": classKind,
	"mat": classMaterial, "unit": classUnit, "before": classBefore, "after": classAfter,
	"sep": classSep, "size": classSize, "noise": classNoise, "press": classPress, "grade": classGrade, "word": classWord,
}

// sense is one meaning of a word.
type sense struct {
	class  wordClass
	value  string
	extra  []string // for a family: male, female, swivel, pre (stands before its size), dash, light or heavy (series)
	sexes  []threads.Sex
	shape  *shape
	tongue string
	role   role // what a word before or behind a figure, or a unit, makes of it

	european bool             // of a language of [european], and a word that says something
	attr     attr             // what the word of an attribute, or the name of a family with it, says of the end
	meant    []threads.Family // the threads that the name of a family can mean
}

func (m *sense) has(word string) bool {
	for _, e := range m.extra {
		if e == word {
			return true
		}
	}
	return false
}

// taper reports the name of a family of taper threads, which seal in the thread itself.
func (m *sense) taper() bool {
	switch m.value {
	case "NPT", "NPTF", "BSPT", "R", "RC":
		return true
	}
	return false
}

// series is that of 24 degree cones which a hose end's code says, 'l' or 's'; 0 if it says none.
func (m *sense) series() byte {
	switch {
	case m.has("light"):
		return 'l'
	case m.has("heavy"):
		return 's'
	}
	return 0
}

// shape is a sort of part: the ends that it has and their sexes where the words do not say.
type shape struct {
	name, kind string
	ends       int // 0: as many as are named; -1: none, whatever figures stand there
	sexes      []threads.Sex
	rank       int // a kind of a higher rank outranks one that the line names before
	traits     trait
}

// symbol is a fitting of EN 10242 by its letter and number.
type symbol struct {
	shape *shape
	sexes []threads.Sex
}

// lexicon is the word lists under lexicon/, ready for looking up.
type lexicon struct {
	words    map[string]*entry // words and phrases, and what longer phrases begin with
	starts   map[string]*entry // words given by their beginning
	finals   map[string]*entry // words given by their end, as German compounds
	shapes   map[string]*shape
	pairs    map[[2]int]float64 // French bore/outside names, in inches
	bores    map[int]float64    // DN, in inches
	numbers  map[string]int     // numbers in words
	counting [256]bool          // the first bytes of those words
	phis     map[int]float64    // Vietnamese pipe by its outside, in inches of thread
	symbols  map[string]symbol
	air      map[string]airCode
	sexWords []string     // single words for one sex, such as a misspelt one is held against
	room     []firstSense // what [lexicon.entry] cuts from
	longest  int          // bytes of the longest phrase
}

var wordFiles = []string{
	"sex.csv", "family.csv", "ends.csv", "attr.csv", "kind.csv", "material.csv", "unit.csv", "noise.csv", "rating.csv", "grade.csv",
}

var readLexicon = sync.OnceValue(func() *lexicon {
	l := &lexicon{
		words: make(map[string]*entry, 16000), starts: map[string]*entry{}, finals: map[string]*entry{},
		shapes: map[string]*shape{}, pairs: map[[2]int]float64{}, bores: map[int]float64{}, numbers: map[string]int{}, phis: map[int]float64{}, symbols: map[string]symbol{}, air: map[string]airCode{},
	}
	for _, r := range lexiconRows("shape.csv") {
		l.shapes[r["shape"]] = &shape{name: r["shape"], kind: r["kind"], ends: int(r.number("ends")), sexes: sexesOf(r["sexes"]), rank: int(r.number("rank")), traits: traitsOf(r["traits"])}
	}
	for _, name := range wordFiles {
		for _, r := range lexiconRows(name) {
			l.add(r)
		}
	}
	l.figures()
	return l
})

func (l *lexicon) add(r row) {
	m := &sense{class: classNames[r["class"]], value: r["value"], tongue: r["language"]}
	m.european = m.class != classNoise && m.class != classSep && european[m.tongue]
	switch m.class {
	case classAttr:
		m.attr = attrNamed[m.value]
	case classFamily:
		parts := strings.Fields(r["value"])
		m.value, m.extra = parts[0], parts[1:]
		m.meant = meant[m.value]
		for _, p := range m.extra {
			m.attr |= attrNamed[p]
			if s := threads.SexNamed(p); s != threads.NoSex {
				m.sexes = []threads.Sex{s}
			}
		}
	case classSex:
		m.sexes = sexesOf(r["value"])
	case classKind:
		m.shape = l.shapes[r["value"]]
	case classBefore, classAfter, classUnit:
		m.role = roleNamed[r["value"]]
	}
	for _, word := range strings.Split(r["words"], "|") {
		l.put(word, m)
		if ascii(word) {
			continue
		}
		if plain := withoutUmlauts.Replace(word); plain != word {
			l.put(plain, m)
		}
	}
}

// withoutUmlauts spells German as it is written where the letters lack.
var withoutUmlauts = strings.NewReplacer("ä", "ae", "ö", "oe", "ü", "ue", "ß", "ss", "Ü", "Ue")

func (l *lexicon) put(word string, m *sense) {
	into := l.words
	switch {
	case strings.HasPrefix(word, "*"):
		into, word = l.finals, word[1:]
	case strings.HasSuffix(word, "*"):
		into, word = l.starts, word[:len(word)-1]
	}
	key := word
	if !plainWord(word) {
		key = wordKey(word)
	}
	if key == "" {
		return
	}
	if len(m.sexes) == 1 && (m.class == classSex || m.value == "THREAD" && len(key) > 4) && !strings.ContainsAny(key, " /") && utf8.RuneCountInString(key) >= shortestMisspelt {
		l.sexWords = append(l.sexWords, key)
	}
	into[key] = l.with(into[key], m)
	l.longest = max(l.longest, len(key))
	for i := range len(key) {
		if c := key[i]; c == ' ' || c == '/' || c == '&' {
			l.begins(key[:i], key[i+1:])
		}
	}
}

// meanings are the senses of a word, with the set of their classes.
type meanings struct {
	senses []*sense
	has    uint16
}

// meaningOf is the meaning of a word that the line itself gives.
func meaningOf(senses ...*sense) *meanings {
	m := &meanings{senses: senses}
	for _, s := range senses {
		m.has |= 1 << s.class
	}
	return m
}

// first is the first sense of a class that the meaning has.
func (m *meanings) first(class wordClass) *sense {
	if m.has == 1<<class {
		return m.senses[0] // as most words have one class
	}
	for _, s := range m.senses {
		if s.class == class {
			return s
		}
	}
	return nil
}

// all are the senses of a meaning; none where nothing is known.
func (m *meanings) all() []*sense {
	if m == nil {
		return nil
	}
	return m.senses
}

// without is a meaning but for some of its senses; nil if none is left.
func (m *meanings) without(some func(*sense) bool) *meanings {
	rest := slices.DeleteFunc(slices.Clone(m.all()), some)
	if len(rest) == 0 {
		return nil
	}
	return meaningOf(rest...)
}

// entry is what the lexicon knows of a word or a phrase: no sense where only a longer phrase is known.
type entry struct {
	meanings
	goesOn letters // what longer phrases that begin with it have behind the blank or the stroke
}

// means is the meaning of an entry; nil where there is no entry, or none but the beginning of a phrase.
func (e *entry) means() *meanings {
	if e == nil || len(e.senses) == 0 {
		return nil
	}
	return &e.meanings
}

// word is the meaning of a word or a phrase in the form of [wordKey]; nil if it is not known.
func (l *lexicon) word(key string) *meanings { return l.words[key].means() }

// with adds a sense to an entry, or makes the entry.
func (l *lexicon) with(e *entry, m *sense) *entry {
	if e == nil {
		return l.entry(m)
	}
	for _, old := range e.senses {
		if old.class == m.class && old.value == m.value {
			return e
		}
	}
	e.senses = append(e.senses, m)
	e.has |= 1 << m.class
	return e
}

// begins notes that a longer phrase begins so, and how it goes on.
func (l *lexicon) begins(key, rest string) {
	e := l.words[key]
	if e == nil {
		e = l.entry(nil)
		l.words[key] = e
	}
	if rest != "" {
		e.goesOn.add(rest[0])
	}
}

// firstSense is an entry with the room of one sense: thousands of words have one.
type firstSense struct {
	entry
	only [1]*sense
}

// entry makes an entry of one sense, or of none, cut from a longer list of them.
func (l *lexicon) entry(m *sense) *entry {
	if len(l.room) == cap(l.room) {
		l.room = make([]firstSense, 0, 1024)
	}
	l.room = append(l.room, firstSense{})
	e := &l.room[len(l.room)-1]
	if m != nil {
		e.only[0] = m
		e.senses = e.only[:]
		e.has = 1 << m.class
	}
	return &e.entry
}

// wordKey is the form that the lexicon keys a word or a phrase by.
func wordKey(word string) string {
	s := normalise(word)
	defer s.release()
	return string(phraseKey(s.norm))
}

// plainWord reports whether a word is its own [wordKey]: small letters from a to z, and
// single blanks between them.
func plainWord(word string) bool {
	last := byte(' ')
	for i := range len(word) {
		c := word[i]
		if (c < 'a' || c > 'z') && (c != ' ' || last == ' ') {
			return false
		}
		last = c
	}
	return last != ' '
}

func ascii(s string) bool {
	for i := range len(s) {
		if s[i] >= utf8.RuneSelf {
			return false
		}
	}
	return true
}

func (l *lexicon) figures() {
	for _, r := range lexiconRows("pair.csv") {
		a, b, _ := strings.Cut(r["french"], "/")
		l.pairs[[2]int{atoi(a), atoi(b)}] = threads.SizeInches(r["size"])
	}
	for _, r := range lexiconRows("bore.csv") {
		l.bores[atoi(r["dn"])] = threads.SizeInches(r["size"])
	}
	for _, r := range lexiconRows("number.csv") {
		for _, word := range strings.Split(r["words"], "|") {
			key := wordKey(word)
			l.numbers[key], l.counting[key[0]] = atoi(r["number"]), true
		}
	}
	for _, r := range lexiconRows("phi.csv") {
		l.phis[atoi(r["od"])] = threads.SizeInches(r["size"])
	}
	for _, r := range lexiconRows("pneumatic.csv") {
		shape := l.shapes[r["shape"]]
		l.air[r["code"]] = airCode{meaningOf(&sense{class: classEnd, value: "PUSH"}, &sense{class: classKind, value: shape.name, shape: shape}), r["second"]}
	}
	for _, r := range lexiconRows("symbol.csv") {
		s := symbol{l.shapes[r["shape"]], sexesOf(r["sexes"])}
		l.symbols[strings.ToLower(r["symbol"])], l.symbols[r["number"]] = s, s
	}
}

// phraseKey brings a phrase to the form the lexicon is keyed by: blanks,
// hyphens, stops, brackets and apostrophes are all one blank, and a stroke or an
// ampersand has none around it.
func phraseKey(norm []byte) []byte {
	out := make([]byte, 0, len(norm))
	for _, b := range norm {
		last := byteAt(out, len(out)-1)
		if joint(b) {
			if len(out) > 0 && last != ' ' && last != '/' && last != '&' {
				out = append(out, ' ')
			}
			continue
		}
		if (b == '/' || b == '&') && len(out) > 0 && last == ' ' {
			out = out[:len(out)-1]
		}
		out = append(out, b)
	}
	for len(out) > 0 && out[len(out)-1] == ' ' {
		out = out[:len(out)-1]
	}
	return out
}

func joint(b byte) bool {
	return isBlank(b) || b == '-' || b == '.' || b == '\'' || b == '(' || b == ')'
}

var folds = sync.OnceValue(func() map[rune]string {
	out := make(map[rune]string, 1000)
	for _, r := range lexiconRows("fold.csv") {
		from, _ := utf8.DecodeRuneInString(r["from"])
		out[from] = r["to"]
	}
	return out
})

// lexiconRows gives the lines of a word list; the row is filled again for the next line.
func lexiconRows(name string) iter.Seq2[int, row] {
	return rows.Each[row]("title", lexiconFiles, "lexicon/"+name)
}

// weak reports a word for a part that mostly has the sex, which another word outranks.
func (m *sense) weak() bool { return m.class == classSex && strings.HasSuffix(m.value, "~") }

func sexesOf(letters string) []threads.Sex {
	var out []threads.Sex
	for _, l := range letters {
		switch l {
		case 'M':
			out = append(out, threads.Male)
		case 'F':
			out = append(out, threads.Female)
		}
	}
	return out
}

func atoi(s string) int {
	n := 0
	for i := range len(s) {
		if !digit(s[i]) || n > 1e6 {
			break
		}
		n = n*10 + int(s[i]-'0')
	}
	return n
}
