package title

import (
	"fmt"
	"math"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"unicode/utf8"

	"handtight/threads"
)

// longestText is the most of a text that is read, in bytes: a shop's line has
// some hundred.
const longestText = 2000

// Read tells what a shop's line says of a part: its ends, its kind, its material
// and its rating, in the languages that the lexicon holds.
//
// Each end has its candidates, likeliest first, and the one question that
// decides it. A country's words only change the order of candidates. Ends that
// the package has no geometry for (press, solder, glue, flange, quick coupling)
// stand in Unread, as do words not known; figures that are lengths, pressures,
// spanners or codes are passed over. The end of a washer is the thread that it is
// for, and has no sex. Text beyond 2000 bytes is not read, and Unread says so.
func Read(text string) threads.Reading {
	cut, over := clip(text)
	l := newLine(cut, false)
	defer l.release()
	out := l.read()
	out.Text = text
	if l.broken || over && strings.ContainsRune(text[len(cut):], utf8.RuneError) {
		out.Unread = append(out.Unread, "signs that are no UTF-8: save the text as UTF-8, or put the letters right")
	}
	if over {
		out.Unread = append(out.Unread, fmt.Sprintf("the text beyond %d bytes", longestText))
	}
	return out
}

// ReadAll reads each of many texts as [Read] does, on all processors, and gives the readings in the order of the texts.
func ReadAll(texts []string) []threads.Reading {
	out := make([]threads.Reading, len(texts))
	hands := min(runtime.GOMAXPROCS(0), len(texts))
	if hands < 2 {
		for k, text := range texts {
			out[k] = Read(text)
		}
		return out
	}
	var next atomic.Int64
	var done sync.WaitGroup
	for range hands {
		done.Go(func() {
			for k := int(next.Add(1)) - 1; k < len(texts); k = int(next.Add(1)) - 1 {
				out[k] = Read(texts[k])
			}
		})
	}
	done.Wait()
	return out
}

// read runs a line through its stages.
func (l *line) read() threads.Reading {
	var out threads.Reading
	ends := l.ends()
	l.surplus, l.evenly = l.moreThanItHas(ends), l.reducesNothing(ends)
	if len(ends) > 0 {
		out.Ends = make([]threads.EndReading, 0, len(ends))
	}
	for _, c := range ends {
		if e, ok := l.resolve(c); ok {
			out.Ends = append(out.Ends, e)
		}
	}
	if len(out.Ends) > 0 {
		l.camsUnsized(ends)
		l.gripsUnsized(ends)
	}
	if len(out.Ends) == 0 && (l.shape == nil || l.shape.ends >= 0) && !l.figured(len(l.tokens)) {
		l.dashesUnsized()
	}
	l.unsizedNumber(out.Ends)
	if !l.one && len(ends) == 1 && len(out.Ends) == 1 && l.is(coupler) && ends[0].threaded && ends[0].end == "" && len(l.unjudged) == 0 {
		l.unjudged = append(l.unjudged, "the coupling's own end (quick coupling)")
	}
	l.namedSeals(out.Ends)
	l.unheard(out.Ends)
	l.endless(out.Ends)
	if l.shape != nil {
		out.Kind = l.shape.kind
	}
	l.forgetTube(&out)
	out.Materials = l.materials
	out.Material, out.Rated, out.HasRated = l.material, l.rated, l.hasRated
	out.Class, out.Schedule, out.Grade, out.Standards = l.class, l.schedule, l.grade, l.standards
	out.Temperature, out.HasTemperature, out.Pressures = l.temperature, l.hasTemperature, l.pressures
	out.Unread = append(l.unknown(), l.unjudged...)
	out.Limits = l.limits()
	out.NotUsed = append(l.notUsed(), l.asides()...)
	return out
}

// forgetTube takes the copper of the tube that the part is for from what the part is made of.
func (l *line) forgetTube(out *threads.Reading) {
	if !l.copperTube || l.material != "copper" {
		return
	}
	l.materials = slices.DeleteFunc(slices.Clone(l.materials), func(m string) bool { return m == "copper" })
	l.material = ""
	for _, m := range l.materials {
		l.takeMaterial(m)
	}
	l.ignore("copper", "what its tube or hose is made of")
}

// ReadError says why a text is not one end. Remedy is what to write instead.
type ReadError struct{ Text, Reason, Remedy string }

// Error gives the text, the reason and the remedy in one line.
func (e *ReadError) Error() string { return fmt.Sprintf("%q: %s; %s", e.Text, e.Reason, e.Remedy) }

const endRemedy = `write one end, such as 1/2 NPT female, G 3/4 male chamfer, 9/16-18 JIC female swivel or 19 mm barb`

// ReadEnd reads exactly one end: "1/2\" NPT female", "9/16-18 JIC female swivel",
// "19 mm barb". What [threads.End.String] writes is read back as the same end.
//
// Errors: *ReadError when the text holds no end, more than one, or a word that
// is not understood. An end whose size the family does not have is returned
// without candidates and with the question that names the nearest sizes.
func ReadEnd(text string) (threads.EndReading, error) {
	if strings.TrimSpace(text) == "" {
		return threads.EndReading{}, &ReadError{text, "there is nothing in it", endRemedy}
	}
	if len(text) > longestText {
		return threads.EndReading{}, &ReadError{text[:40] + "...", fmt.Sprintf("it is longer than %d bytes", longestText), endRemedy}
	}
	if e, ok := canonical(text); ok {
		return threads.EndReading{Words: strings.TrimSpace(text), Sex: e.Sex, Seal: e.Seal, Swivel: e.Swivel, Candidates: []threads.End{e}, Question: openSex(e)}, nil
	}
	l := newLine(text, true)
	defer l.release()
	ends := l.ends()
	var out []threads.EndReading
	several := 0
	for _, c := range ends {
		several = max(several, len(c.sexes))
		if e, ok := l.resolve(c); ok {
			out = append(out, e)
		}
	}
	unknown := l.unknown()
	switch {
	case len(l.unjudged) > 0 && len(out) == 0:
		return threads.EndReading{}, &ReadError{text, "it names an end that is not judged here, " + l.unjudged[0], endRemedy}
	case len(unknown) > 0:
		return threads.EndReading{}, &ReadError{text, "not understood: " + strings.Join(unknown, ", "), endRemedy}
	case len(out) == 0 && len(sizesIn(l.tokens)) > 0:
		return threads.EndReading{}, &ReadError{text, "it gives a size and not what the end is: a thread, a tail or a tube", endRemedy}
	case len(out) == 0:
		return threads.EndReading{}, &ReadError{text, "no end is in it", endRemedy}
	case len(out) > 1 || several > 1:
		return threads.EndReading{}, &ReadError{text, fmt.Sprintf("it holds %d ends, and one is due", max(len(out), several)), "give each end its own text, such as " + sample(out[0])}
	}
	out[0].NotUsed = unspent(text, l, &out[0])
	return out[0], nil
}

func sample(r threads.EndReading) string {
	if len(r.Candidates) > 0 {
		return r.Candidates[0].String()
	}
	return "1/2 NPT female"
}

func openSex(e threads.End) string {
	if e.Sex == threads.NoSex && e.Family.Threaded() {
		return "Is the " + e.String() + " male or female? The text does not say: look for M or F, or ask the shop."
	}
	return ""
}

func clip(text string) (string, bool) {
	if len(text) <= longestText {
		return text, false
	}
	cut := longestText
	for cut > 0 && !utf8.RuneStart(text[cut]) {
		cut--
	}
	return text[:cut], true
}

func newLine(text string, one bool) *line {
	if !one {
		text = plainCells(text)
	}
	s := normalise(text)
	l := &s.pad.line
	l.spelling, l.lex, l.tokens, l.one = s, readLexicon(), scan(s), one // of the line before, release has left nothing
	l.seen = look(l.tokens, l.norm)
	return l
}

// ends finds the phrases of a line that speak of an end each: the words are classified, what is no
// end is sorted out, and what is said once is distributed over all.
func (l *line) ends() []*phrase {
	l.symbols()
	l.fahrenheit()
	l.celsius()
	l.pins()
	l.endMarks()
	l.codesNamed()
	l.codeCells()
	l.pneumatic()
	l.cuttingRings()
	l.partShortWith()
	l.diameters()
	l.spacedPitch()
	l.nutMetric()
	l.frenchApart()
	l.inchAlone()
	l.tubePairs()
	l.sizesOfNumber()
	l.hands()
	l.survey()
	l.countedSexes()
	l.spokenCounts()
	l.ontoOther()
	l.seriesOfCones()
	for k := range l.tokens {
		l.tokens[k].code = l.tokens[k].unread && l.inCode(k)
	}
	l.inside = l.sundered()
	l.classify()
	l.boreNamedFirst()
	if !l.evidence && l.strange() {
		l.evidence, l.unsure = true, true
	}
	l.unsure = l.unsure || l.strangeGrip() || l.shape == nil && !l.one && l.plainNut()
	if l.shape != nil && l.shape.ends < 0 && !l.one && l.fitting != nil && l.hasWord("drip tape") {
		l.shape = l.fitting
	}
	if l.is(saddle) && !l.one && !l.saddleBranch() {
		l.shape = l.lex.shapes["clamp"] // a saddle that holds a pipe to the wall
	}
	if l.is(pipeItself) && !l.one && l.flareNut() {
		l.shape = nil // copper pipe flare nut: what it is for stands first
	}
	if l.shape != nil && l.shape.ends < 0 && !l.one && l.fitting != nil && l.saysThread() {
		l.shape, l.unsure = l.fitting, true // an adaptor for tape with a male thread
	}
	if l.shape != nil && l.shape.ends < 0 && l.shape.rank <= 2 && !l.one && l.sexedSize() {
		l.shape, l.evidence, l.unsure = nil, true, true // what is put in has no thread: a damper 1/2 male, membrane EPDM
	}
	if l.shape != nil && l.shape.ends < 0 && !l.one && l.joinsEnds() {
		l.shape, l.evidence, l.unsure = nil, true, true // screw end 1/4" hose barb to 1/4" female
	}
	if l.shape != nil && l.shape.ends < 0 && !l.one || !l.evidence || !l.one && l.hardware() {
		return nil
	}
	tokens, again := l.bracketed()
	ends := l.distribute(l.phrases(tokens))
	if again != nil {
		overlayAgain(ends, l.phrases(again))
	}
	return ends
}

// bracketed takes out a bracket that says the same ends again in other words:
// 1/2" x 1/2" NPT male (1/2 male to 1/2 tubing).
func (l *line) bracketed() (rest, inside []token) {
	if !l.seen.marks.has(')') {
		return l.tokens, nil
	}
	open, stop := -1, -1
	for k := range l.tokens {
		switch {
		case l.tokens[k].mark == '(' && open < 0:
			open = k
		case l.tokens[k].mark == ')' && open >= 0 && stop < 0:
			stop = k
		}
	}
	if stop < 0 {
		return l.tokens, nil
	}
	if l.saysWhatFor(open, stop) {
		return append(append(rest, l.tokens[:open]...), l.tokens[stop+1:]...), nil
	}
	l.nominalBracket(open, stop)
	l.inchBracket(open, stop)
	in := sizesIn(l.tokens[open:stop])
	out := append(sizesIn(l.tokens[:open]), sizesIn(l.tokens[stop:])...)
	if len(in) < 2 || len(in) != len(out) {
		return l.tokens, nil
	}
	for k := range in {
		if in[k] != out[k] {
			return l.tokens, nil
		}
	}
	rest = append(append(rest, l.tokens[:open]...), l.tokens[stop+1:]...)
	return rest, l.tokens[open+1 : stop]
}

// nominalBracket drops the nominal bores that a bracket says again in inches: 50 x 40 mm reducing socket (2 x 1 1/2).
func (l *line) nominalBracket(open, stop int) {
	var bores, inches []*figure
	for k := range l.tokens {
		f := l.tokens[k].figure
		switch {
		case f == nil || !f.sized():
		case k > open && k < stop:
			inches = append(inches, f)
		default:
			bores = append(bores, f)
		}
	}
	if l.one || len(bores) != len(inches) || len(bores) < 2 {
		return
	}
	for n, f := range bores {
		if size := l.lex.bores[int(f.v)]; (f.kind != mmSize || size != inches[n].v) && !(f.v == inches[n].v && f.kind == inches[n].kind && n > 0) || inches[n].kind != inchSize {
			return
		}
	}
	for _, f := range bores {
		f.drop(asRepeat)
	}
}

// inchBracket drops one size in inches that says the millimetres before its bracket again: 25 mm (1").
func (l *line) inchBracket(open, stop int) {
	mm, inch := l.lastFigure(open), at(l.tokens, open+1).figure
	if l.one || stop > open+3 || inch == nil || inch.kind != inchSize || mm == nil || mm.kind != mmSize || math.Abs(mm.v-inch.v*25.4) > 0.7 {
		return
	}
	inch.drop(asRepeat)
}

// lastFigure is the figure right before k, or before the unit there.
func (l *line) lastFigure(k int) *figure {
	if f := at(l.tokens, k-1).figure; f != nil {
		return f
	}
	if at(l.tokens, k-1).is(classUnit) != nil {
		return at(l.tokens, k-2).figure
	}
	return nil
}

// saysWhatFor reports a bracket that says what a part of two ends is for, both of which are given before it: 1/8" x 1/8" barb (to
// adapt 1/4" hard line to 1/4" soft line). Its figures are no ends.
func (l *line) saysWhatFor(open, stop int) bool {
	first := at(l.tokens, open+1)
	text := string(l.norm[first.from:first.to])
	if l.one || l.is(tee) || l.is(many) || text != "to" && text != "fits" && text != "suits" && !l.meantFor(open+1) || len(sizesIn(l.tokens[:open])) < 2 || len(sizesIn(l.tokens[open:stop])) == 0 {
		return false
	}
	for k := open; k < stop; k++ {
		if f := l.tokens[k].figure; f != nil && f.sized() {
			f.drop(asWhatFor)
		}
	}
	return true
}

func sizesIn(tokens []token) []float64 {
	var out []float64
	for k := range tokens {
		if f := tokens[k].figure; f != nil && f.sized() {
			out = append(out, f.v)
		}
	}
	return out
}

// overlayAgain adds what the bracket says of each end.
func overlayAgain(ends, again []*phrase) {
	k := 0
	for _, a := range again {
		if a.fig == nil || k >= len(ends) {
			continue
		}
		e := ends[k]
		k++
		if a.end != "" {
			e.end, e.fam, e.sexes, e.pex = a.end, a.fam, a.sexes, a.pex
		} else if len(a.sexes) > 0 {
			e.sexes = a.sexes
		}
	}
}

// unknown lists the words that were not understood; codes with digits are not used.
func (l *line) unknown() []string {
	var out []string
	for k := range l.tokens {
		it := &l.tokens[k]
		if !it.unread {
			continue
		}
		if l.one || !l.inCode(k) {
			out = append(out, l.words(it.from, it.to))
		}
	}
	return out
}

var designations = sync.OnceValue(func() map[string]*threads.Form {
	out := map[string]*threads.Form{}
	twice := map[string]bool{}
	for _, f := range threads.Families() {
		for _, form := range threads.Forms(f) {
			if _, ok := out[form.Designation]; ok {
				twice[form.Designation] = true
			}
			out[form.Designation] = form
		}
	}
	for d := range twice {
		delete(out, d)
	}
	return out
})

var canonicalWords = []struct {
	word string
	set  func(*threads.End)
}{
	{" plastic", func(e *threads.End) { e.Plastic = true }}, {" long", func(e *threads.End) { e.Long = true }},
	{" chamfer", func(e *threads.End) { e.Seal = threads.Chamfer }}, {" 60 cone", func(e *threads.End) { e.Seal = threads.Cone60 }},
	{" 30 cone", func(e *threads.End) { e.Seal = threads.Cone30 }}, {" flat face", func(e *threads.End) { e.Seal = threads.FlatFace }},
	{" washer", func(e *threads.End) { e.Seal = threads.Washer }}, {" nose with o ring", func(e *threads.End) { e.Seal = threads.NoseRing }}, {" cone with o ring", func(e *threads.End) { e.Seal = threads.ConeRing }}, {" o ring", func(e *threads.End) { e.Seal = threads.ORing }}, {" o-ring", func(e *threads.End) { e.Seal = threads.ORing }},
	{" stud ring", func(e *threads.End) { e.Seal = threads.StudRing }}, {" metal edge", func(e *threads.End) { e.Seal = threads.MetalEdge }},
	{" 24 cone", func(e *threads.End) { e.Seal = threads.Cone24 }},
	{" 14 mm nose", func(e *threads.End) { e.Seal, e.Nose = threads.NoseRing, 14 }}, {" 15 mm nose", func(e *threads.End) { e.Seal, e.Nose = threads.NoseRing, 15 }},
	{" swivel", func(e *threads.End) { e.Swivel = true }},
	{" male", func(e *threads.End) { e.Sex = threads.Male }}, {" female", func(e *threads.End) { e.Sex = threads.Female }},
	{" short", func(e *threads.End) { e.Short = true }},
	{" LH", func(e *threads.End) { e.Left = true }},
}

// canonical reads a threaded end exactly as [threads.End.String] writes it, so that a
// designation in full has one reading even where people use its words loosely.
func canonical(text string) (threads.End, bool) {
	rest := strings.TrimSpace(text)
	var mods threads.End
	for _, w := range canonicalWords {
		if strings.HasSuffix(rest, w.word) {
			rest = strings.TrimSuffix(rest, w.word)
			w.set(&mods)
		}
	}
	base, classA := strings.CutSuffix(rest, " A")
	form, ok := designations()[base]
	if !ok || classA && (form.Family != threads.G || mods.Sex == threads.Female) {
		return threads.End{}, false
	}
	if mods.Short && form.Family != threads.NPTF {
		return threads.End{}, false
	}
	if only := form.Family.Facts().Only; only != threads.NoSex {
		if mods.Sex != threads.NoSex && mods.Sex != only {
			return threads.End{}, false
		}
		mods.Sex = only
	}
	if classA {
		mods.Sex = threads.Male
	}
	e := threads.Threaded(form, mods.Sex)
	e.Seal, e.Swivel, e.Plastic, e.Long, e.ClassA, e.Left, e.Nose, e.Short = mods.Seal, mods.Swivel, mods.Plastic, mods.Long, classA, mods.Left, mods.Nose, mods.Short
	return e, true
}
