package threads

import (
	"fmt"
	"strings"
	"sync"
	"unicode/utf8"
)

// longestText is the most of a text that is read, in bytes: a shop's line has
// some hundred.
const longestText = 2000

// Read tells what a shop's line says of a part: its ends, its kind, its material
// and its rating, in the languages that the lexicon holds.
//
// Each end has its candidates, likeliest first, and the one question that
// settles it. A country's words only change the order of candidates. Ends that
// the package has no geometry for (press, solder, glue, flange, quick coupling)
// stand in Unread, as do words not known; figures that are lengths, pressures,
// spanners or codes are passed over. The end of a washer is the thread that it is
// for, and has no sex. Text beyond 2000 bytes is not read, and Unread says so.
func Read(text string) Reading {
	cut, over := clip(text)
	l := newLine(cut, false)
	out := Reading{Text: text}
	ends := l.ends()
	for _, c := range ends {
		if e, ok := l.judge(c); ok {
			out.Ends = append(out.Ends, e)
		}
	}
	if l.shape != nil {
		out.Kind = l.shape.kind
	}
	out.Material, out.RatedBar, out.HasRated = l.material, l.rated, l.hasRated
	out.Unread = append(l.unknown(), l.unjudged...)
	if over {
		out.Unread = append(out.Unread, fmt.Sprintf("the text beyond %d bytes", longestText))
	}
	return out
}

// ReadError says why a text is not one end. Remedy is what to write instead.
type ReadError struct{ Text, Reason, Remedy string }

// Error gives the text, the reason and the remedy in one line.
func (e *ReadError) Error() string { return fmt.Sprintf("%q: %s; %s", e.Text, e.Reason, e.Remedy) }

const endRemedy = `write one end, such as 1/2 NPT female, G 3/4 male chamfer, 9/16-18 JIC female swivel or 19 mm barb`

// ReadEnd reads exactly one end: "1/2\" NPT female", "9/16-18 JIC female swivel",
// "19 mm barb". What [End.String] writes is read back as the same end.
//
// Errors: *ReadError when the text holds no end, more than one, or a word that
// is not understood. An end whose size the family does not have is returned
// without candidates and with the question that names the nearest sizes.
func ReadEnd(text string) (EndReading, error) {
	if strings.TrimSpace(text) == "" {
		return EndReading{}, &ReadError{text, "there is nothing in it", endRemedy}
	}
	if len(text) > longestText {
		return EndReading{}, &ReadError{text[:40] + "...", fmt.Sprintf("it is longer than %d bytes", longestText), endRemedy}
	}
	if e, ok := canonical(text); ok {
		return EndReading{Words: strings.TrimSpace(text), Sex: e.Sex, Seal: e.Seal, Swivel: e.Swivel, Candidates: []End{e}, Question: openSex(e)}, nil
	}
	l := newLine(text, true)
	ends := l.ends()
	var out []EndReading
	several := 0
	for _, c := range ends {
		several = max(several, len(c.sexes))
		if e, ok := l.judge(c); ok {
			out = append(out, e)
		}
	}
	unknown := l.unknown()
	switch {
	case len(l.unjudged) > 0 && len(out) == 0:
		return EndReading{}, &ReadError{text, "it names an end that is not judged here, " + l.unjudged[0], endRemedy}
	case len(unknown) > 0:
		return EndReading{}, &ReadError{text, "not understood: " + strings.Join(unknown, ", "), endRemedy}
	case len(out) == 0 && len(sizesIn(l.items)) > 0:
		return EndReading{}, &ReadError{text, "it gives a size and not what the end is: a thread, a tail or a tube", endRemedy}
	case len(out) == 0:
		return EndReading{}, &ReadError{text, "no end is in it", endRemedy}
	case len(out) > 1 || several > 1:
		return EndReading{}, &ReadError{text, fmt.Sprintf("it holds %d ends, and one is due", max(len(out), several)), "give each end its own text, such as " + sample(out[0])}
	}
	return out[0], nil
}

func sample(r EndReading) string {
	if len(r.Candidates) > 0 {
		return r.Candidates[0].String()
	}
	return "1/2 NPT female"
}

func openSex(e End) string {
	if e.Sex == NoSex && e.Family.Threaded() {
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
	s := normalise(text)
	return &line{spelling: s, lex: readLexicon(), items: scan(s), one: one}
}

// ends runs the line through its stages.
func (l *line) ends() []*clause {
	l.symbols()
	l.survey()
	l.settle()
	if l.shape != nil && l.shape.ends < 0 && !l.one || !l.evidence || !l.one && l.hardware() {
		return nil
	}
	items, again := l.bracketed()
	ends := l.share(l.clauses(items))
	if again != nil {
		overlayAgain(ends, l.clauses(again))
	}
	return ends
}

// bracketed takes out a bracket that says the same ends again in other words:
// 1/2" x 1/2" NPT male (1/2 male to 1/2 tubing).
func (l *line) bracketed() (rest, inside []item) {
	open, stop := -1, -1
	for k := range l.items {
		switch {
		case l.items[k].mark == '(' && open < 0:
			open = k
		case l.items[k].mark == ')' && open >= 0 && stop < 0:
			stop = k
		}
	}
	if stop < 0 {
		return l.items, nil
	}
	in := sizesIn(l.items[open:stop])
	out := sizesIn(append(append([]item{}, l.items[:open]...), l.items[stop:]...))
	if len(in) < 2 || len(in) != len(out) {
		return l.items, nil
	}
	for k := range in {
		if in[k] != out[k] {
			return l.items, nil
		}
	}
	rest = append(append(rest, l.items[:open]...), l.items[stop+1:]...)
	return rest, l.items[open+1 : stop]
}

func sizesIn(items []item) []float64 {
	var out []float64
	for k := range items {
		if f := items[k].figure; f != nil && f.sized() {
			out = append(out, f.v)
		}
	}
	return out
}

// overlayAgain adds what the bracket says of each end.
func overlayAgain(ends, again []*clause) {
	k := 0
	for _, a := range again {
		if a.fig == nil || k >= len(ends) {
			continue
		}
		e := ends[k]
		k++
		if a.end != "" {
			e.end, e.fam, e.sexes = a.end, a.fam, a.sexes
		} else if len(a.sexes) > 0 {
			e.sexes = a.sexes
		}
	}
}

// unknown lists the words that were not understood; codes with digits are left out.
func (l *line) unknown() []string {
	var out []string
	for k := range l.items {
		it := &l.items[k]
		if !it.unread {
			continue
		}
		word := l.words(it.from, it.to)
		beside := it.glued && at(l.items, k-1).figure != nil || at(l.items, k+1).glued && at(l.items, k+1).figure != nil ||
			at(l.items, k+1).glued && at(l.items, k+1).mark == '-' && at(l.items, k+2).glued && at(l.items, k+2).figure != nil
		if len(word) > 1 && !beside || l.one {
			out = append(out, word)
		}
	}
	return out
}

var designations = sync.OnceValue(func() map[string]*Form {
	out := map[string]*Form{}
	twice := map[string]bool{}
	for _, f := range Families() {
		for _, form := range Forms(f) {
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
	set  func(*End)
}{
	{" plastic", func(e *End) { e.Plastic = true }}, {" long", func(e *End) { e.Long = true }},
	{" chamfer", func(e *End) { e.Seal = Chamfer }}, {" 60 cone", func(e *End) { e.Seal = Cone60 }},
	{" 30 cone", func(e *End) { e.Seal = Cone30 }}, {" flat face", func(e *End) { e.Seal = FlatFace }},
	{" washer", func(e *End) { e.Seal = Washer }}, {" o ring", func(e *End) { e.Seal = ORing }}, {" o-ring", func(e *End) { e.Seal = ORing }},
	{" swivel", func(e *End) { e.Swivel = true }},
	{" male", func(e *End) { e.Sex = Male }}, {" female", func(e *End) { e.Sex = Female }},
}

// canonical reads a threaded end exactly as [End.String] writes it, so that a
// designation in full has one reading even where people use its words loosely.
func canonical(text string) (End, bool) {
	rest := strings.TrimSpace(text)
	var mods End
	for _, w := range canonicalWords {
		if strings.HasSuffix(rest, w.word) {
			rest = strings.TrimSuffix(rest, w.word)
			w.set(&mods)
		}
	}
	base, classA := strings.CutSuffix(rest, " A")
	form, ok := designations()[base]
	if !ok || classA && (form.Family != G || mods.Sex == Female) {
		return End{}, false
	}
	if only := form.Family.Facts().Only; only != NoSex {
		if mods.Sex != NoSex && mods.Sex != only {
			return End{}, false
		}
		mods.Sex = only
	}
	if classA {
		mods.Sex = Male
	}
	e := Threaded(form, mods.Sex)
	e.Seal, e.Swivel, e.Plastic, e.Long, e.ClassA = mods.Seal, mods.Swivel, mods.Plastic, mods.Long, classA
	return e, true
}
