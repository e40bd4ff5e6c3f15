package title

import (
	"bytes"
	"slices"
	"strings"
	"sync"
)

// wordList is a list of lexicon/lists.csv: words, or parts of words, that are sought in the text itself, and of which no sense of
// the lexicon is made.
type wordList uint8

const (
	aboutList wordList = iota
	airList
	allList
	andList
	andMoreList
	asideList
	atDegreesList
	bareEndList
	betweenCountsList
	boreList
	brassInsertList
	brineList
	cableList
	camTypeList
	classLetterList
	coneHeavyList
	coneLightList
	comesOfItList
	conicList
	croatianList
	cuttingRingList
	danishList
	deniedList
	deniesMaterialList
	dialBeforeList
	doubtList
	eachOfList
	electricList
	endMarkList
	euroconeList
	fittingsPluralList
	flarelessWordList
	gasPartList
	gaugeWordList
	germanPackList
	goesOntoList
	heatList
	heatBehindList
	heatToList
	hoseEndCodeList
	hoseEndsList
	hoseInsideList
	hungarianList
	hoseOutsideList
	hydraulicList
	iberianList
	inletList
	inletPluralList
	isList
	layersList
	leadsToFigureList
	leftAloneList
	looksLikeList
	lengthList
	limitOfUseList
	lowPressureList
	maybeList
	mediumList
	nordicOutletList
	notList
	notItsOwnList
	notWithItList
	oldSizeList
	oneEndList
	oneOfThemList
	onePortList
	oneSideList
	oneSwivelList
	onlyList
	ontoList
	orList
	osmosisList
	otherEndList
	otherwiseList
	outletList
	outletPluralList
	packList
	piecesList
	poleList
	portNounList
	portWordList
	portsList
	poundPressureList
	poundPullList
	quarterTurnList
	rangeToList
	sidePortList
	smallWordsList
	smallerEndList
	standardList
	stoodBeforeList
	taxList
	theOtherList
	theRestList
	threadStemList
	threePieceList
	throughWallList
	timesList
	tubeConnectorList
	turningList
	twoPieceList
	warmthList
	whichList
	translatedList
	withList
	withItList
	withTerminalsList
	withoutList
	workingShortList
	workingWordList
)

// listNames are the lists by their names in the table.
var listNames = [...]string{
	aboutList:          "about",
	airList:            "air",
	allList:            "all",
	andList:            "and",
	andMoreList:        "and-more",
	asideList:          "aside",
	atDegreesList:      "at-degrees",
	bareEndList:        "bare-end",
	betweenCountsList:  "between-counts",
	boreList:           "bore",
	brassInsertList:    "brass-insert",
	brineList:          "brine",
	cableList:          "cable",
	camTypeList:        "cam-type",
	classLetterList:    "class-letter",
	coneHeavyList:      "cone-heavy",
	coneLightList:      "cone-light",
	comesOfItList:      "comes-of-it",
	conicList:          "conic",
	croatianList:       "croatian",
	cuttingRingList:    "cutting-ring",
	danishList:         "danish",
	deniedList:         "denied",
	deniesMaterialList: "denies-material",
	dialBeforeList:     "dial-before",
	doubtList:          "doubt",
	eachOfList:         "each-of",
	electricList:       "electric",
	endMarkList:        "end-mark",
	euroconeList:       "eurocone",
	fittingsPluralList: "fittings-plural",
	flarelessWordList:  "flareless-word",
	gasPartList:        "gas-part",
	gaugeWordList:      "gauge-word",
	germanPackList:     "german-pack",
	goesOntoList:       "goes-onto",
	heatList:           "heat",
	heatBehindList:     "heat-behind",
	heatToList:         "heat-to",
	hoseEndCodeList:    "hose-end-code",
	hoseEndsList:       "hose-ends",
	hoseInsideList:     "hose-inside",
	hungarianList:      "hungarian",
	hoseOutsideList:    "hose-outside",
	hydraulicList:      "hydraulic",
	iberianList:        "iberian",
	inletList:          "inlet",
	inletPluralList:    "inlet-plural",
	isList:             "is",
	layersList:         "layers",
	leadsToFigureList:  "leads-to-figure",
	leftAloneList:      "left-alone",
	looksLikeList:      "looks-like",
	lengthList:         "length",
	limitOfUseList:     "limit-of-use",
	lowPressureList:    "low-pressure",
	maybeList:          "maybe",
	mediumList:         "medium",
	nordicOutletList:   "nordic-outlet",
	notList:            "not",
	notItsOwnList:      "not-its-own",
	notWithItList:      "not-with-it",
	oldSizeList:        "old-size",
	oneEndList:         "one-end",
	oneOfThemList:      "one-of-them",
	onePortList:        "one-port",
	oneSideList:        "one-side",
	oneSwivelList:      "one-swivel",
	onlyList:           "only",
	ontoList:           "onto",
	orList:             "or",
	osmosisList:        "osmosis",
	otherEndList:       "other-end",
	otherwiseList:      "otherwise",
	outletList:         "outlet",
	outletPluralList:   "outlet-plural",
	packList:           "pack",
	piecesList:         "pieces",
	poleList:           "pole",
	portNounList:       "port-noun",
	portWordList:       "port-word",
	portsList:          "ports",
	poundPressureList:  "pound-pressure",
	poundPullList:      "pound-pull",
	quarterTurnList:    "quarter-turn",
	rangeToList:        "range-to",
	sidePortList:       "side-port",
	smallWordsList:     "small-words",
	smallerEndList:     "smaller-end",
	standardList:       "standard",
	stoodBeforeList:    "stood-before",
	taxList:            "tax",
	theOtherList:       "the-other",
	theRestList:        "the-rest",
	threadStemList:     "thread-stem",
	threePieceList:     "three-piece",
	throughWallList:    "through-wall",
	timesList:          "times",
	tubeConnectorList:  "tube-connector",
	turningList:        "turning",
	twoPieceList:       "two-piece",
	warmthList:         "warmth",
	whichList:          "which",
	translatedList:     "translated",
	withList:           "with",
	withItList:         "with-it",
	withTerminalsList:  "with-terminals",
	withoutList:        "without",
	workingShortList:   "working-short",
	workingWordList:    "working-word",
}

// listedWords are the words of a list, the pairs of letters of each, and the set of their lengths: a word of another length is none of
// them, and a text that has not all pairs of a word has not the word.
type listedWords struct {
	words   []string
	texts   [][]byte // the words again
	twos    []twos
	letters []letters
	sizes   uint64
	last    letters // that words end with
	begun   begunWords
}

// begunWords are words by their first letter, and the letters that stand second behind each.
type begunWords struct {
	second [64]letters
	words  [64][]string
}

// add puts a word to those of its first letter.
func (b *begunWords) add(word string) {
	first := word[0] & 63
	b.words[first] = append(b.words[first], word)
	if len(word) == 1 || word[1] == ' ' {
		b.second[first] = ^letters(0) // anything may stand behind it, and any blank
		return
	}
	b.second[first].add(word[1])
}

// at are the words that a text can have at a place, by their first two letters.
func (b *begunWords) at(text []byte, i int) []string {
	first := byteAt(text, i) & 63
	if !b.second[first].has(byteAt(text, i+1)) {
		return nil
	}
	return b.words[first]
}

// The lists are read when they are asked for first.
var (
	lists     [len(listNames)]listedWords
	listsRead sync.Once
)

func wordLists() *[len(listNames)]listedWords {
	listsRead.Do(readLists)
	return &lists
}

func readLists() {
	for _, r := range lexiconRows("lists.csv") {
		words := strings.Split(r["words"], "|")
		for _, w := range words[:len(words):len(words)] {
			s := normalise(w)
			if folded := string(s.norm); folded != w && !slices.Contains(words, folded) {
				words = append(words, folded) // a text is sought without the points and strokes of its letters
			}
		}
		list := &lists[slices.Index(listNames[:], r["list"])]
		list.words = words
		for _, w := range words {
			list.texts = append(list.texts, []byte(w))
			list.sizes |= 1 << min(len(w), 63)
			list.twos = append(list.twos, twosOf([]byte(w)))
			list.letters = append(list.letters, lettersOf([]byte(w)))
			list.begun.add(w)
			list.last.add(w[len(w)-1])
		}
	}
}

// words are the words of the list.
func (w wordList) words() []string { return wordLists()[w].words }

// has reports a word of the list.
func (w wordList) has(word []byte) bool {
	list := &wordLists()[w]
	if list.sizes&(1<<min(len(word), 63)) == 0 {
		return false
	}
	for _, o := range list.begun.at(word, 0) {
		if o == string(word) {
			return true
		}
	}
	return false
}

// begun are the words of the list by their first letters.
func (w wordList) begun() *begunWords { return &wordLists()[w].begun }

// begunBy are the words of some lists together, by their first letters.
func begunBy(lists ...wordList) *begunWords {
	out := new(begunWords)
	for _, list := range lists {
		for _, w := range list.words() {
			out.add(w)
		}
	}
	return out
}

// hasWord reports a word of the list.
func (w wordList) hasWord(word string) bool {
	list := &wordLists()[w]
	return list.sizes&(1<<min(len(word), 63)) != 0 && slices.Contains(list.words, word)
}

// in reports one of the words anywhere in a text.
func (w wordList) in(text []byte) bool {
	return slices.ContainsFunc(w.words(), func(word string) bool { return bytes.Contains(text, []byte(word)) })
}

// contains reports one of the words of a list anywhere in the line. The line is looked through once for a list.
func (l *line) contains(w wordList) bool {
	if l.asked[w] == notAsked {
		l.asked[w] = isNotThere
		list := &wordLists()[w]
		for k, word := range list.texts {
			if list.twos[k].in(l.twos) && bytes.Contains(l.plainBlanks(), word) {
				l.asked[w] = isThere
				break
			}
		}
	}
	return l.asked[w] == isThere
}

// mayContain reports a word of a list whose letters the line has, each somewhere.
func (l *line) mayContain(w wordList) bool {
	held := lettersOf(l.norm)
	return slices.ContainsFunc(wordLists()[w].letters, func(word letters) bool { return word.in(held) })
}

// answer is what is known of a list's words in a line.
type answer uint8

const (
	notAsked answer = iota
	isNotThere
	isThere
)

// letters is a set of bytes, of which some share a place: the letters of a word are all in those of a text that has the word.
type letters uint64

func lettersOf(text []byte) (out letters) {
	for _, b := range text {
		out |= 1 << (b & 63)
	}
	return out
}

// add puts a byte into the set.
func (s *letters) add(b byte) { *s |= 1 << (b & 63) }

// has reports a byte of the set, or one that shares its place.
func (s letters) has(b byte) bool { return s&(1<<(b&63)) != 0 }

func (s letters) in(text letters) bool { return s&^text == 0 }

// twos is a set of pairs of bytes that stand together, of which some share a place: the pairs of a word are all in those of a text that
// has the word.
type twos uint64

func twosOf(text []byte) (out twos) {
	for k := 1; k < len(text); k++ {
		out.add(text[k-1], text[k])
	}
	return out
}

// add puts a pair into the set.
func (s *twos) add(a, b byte) { *s |= 1 << ((a*5 + b) & 63) }

func (s twos) in(text twos) bool { return s&^text == 0 }

// holds reports a text anywhere in the line.
func (l *line) holds(text string) bool {
	return twosOf([]byte(text)).in(l.twos) && bytes.Contains(l.norm, []byte(text))
}

// plainBlanks is the line with one blank between its words: how many part them says nothing.
func (l *line) plainBlanks() []byte {
	if l.plain == nil {
		l.plain = l.oneBlank(l.norm)
	}
	return l.plain
}

// oneBlank is a stretch of the line with one blank between its words, and none around it.
func (l *line) oneBlank(text []byte) []byte {
	if l.uneven {
		return oneBlank(text)
	}
	return bytes.Trim(text, " ")
}

// hasWord reports a word in the line.
func (l *line) hasWord(word string) bool {
	return twosOf([]byte(word)).in(l.twos) && hasWord(string(l.norm), word)
}

// oneBlank is a text with one blank between its words, and none around it.
func oneBlank(text []byte) []byte {
	if !bytes.Contains(text, []byte("  ")) && !bytes.ContainsAny(text, "\t\n\r") {
		return bytes.Trim(text, " ")
	}
	return bytes.Join(bytes.Fields(text), []byte(" "))
}

// containsWord reports whether a word of a list stands in the line by itself: série l is no série lourde.
func (l *line) containsWord(w wordList) bool {
	if !l.contains(w) {
		return false
	}
	text := string(l.plainBlanks())
	return slices.ContainsFunc(w.words(), func(word string) bool { return hasWord(text, word) })
}
