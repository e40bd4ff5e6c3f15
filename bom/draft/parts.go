package draft

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/cart"
	"handtight/bom/money"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// Part is what one line of a list came to: an item, or words that are kept as a comment.
type Part struct {
	Line   *cart.Line
	Says   cart.Says
	Kind   *catalog.Kind  // nil: not understood, or no part of a plant
	ID     string         // in the build file
	Pieces int            // that the line brings; of stock that is cut, 0
	Metres money.Quantity // of stock that is cut
	Role   string         // what it does; "" for a fitting
	Ask    []string       // what must be asked of it
	Assume []string       // what was taken that the line does not say
	Aside  string         // why it is no item: "" where it is one

	size  string               // that it is called by, beside its ends
	ends  []threads.EndReading // by port
	ports []string             // names, beside ends
	item  *build.Item          // as read back from the file

	same     bool          // a further piece of an item that a build has
	own      bool          // of a build that stands, and of no list
	fallback *cart.Verdict // of a later list: what the line is where no place of the build takes it
}

// Where is the place of the part's line: "elbe.csv line 5".
func (p *Part) Where() string { return p.Line.Where() }

// parts makes a part of every line. None is dropped.
func parts(carts []*cart.Cart) []*Part {
	var out []*Part
	for _, c := range carts {
		for i := range c.Lines {
			out = append(out, partOf(&c.Lines[i]))
		}
	}
	return out
}

func partOf(l *cart.Line) *Part {
	p := &Part{Line: l, Says: l.Says()}
	switch {
	case l.Out != "":
		p.Aside = l.Out
		return p
	case p.Says.Kind == "" && len(p.Says.Ends) == 0:
		p.Aside = "no kind of part and no end was found in its words"
		return p
	}
	p.Kind = p.kind()
	if p.Kind == nil {
		p.Aside = fmt.Sprintf("a plant has no part of its sort (%s)", orElse(p.Says.Kind, "its kind is not said"))
		return p
	}
	if p.Kind.Generic {
		p.Aside = "counted by the joints that need it: see order"
		p.count()
		return p
	}
	p.count()
	p.fitEnds()
	return p
}

func orElse(a, b string) string {
	if a != "" {
		return a
	}
	return b
}

// kind finds the kind of the catalogue; a word of the trade that names none goes by the
// table of what is meant.
func (p *Part) kind() *catalog.Kind {
	name := p.Says.Kind
	if name == "" {
		likely := catalog.LikelyKinds(len(p.Says.Ends))
		if len(p.Says.Ends) < 2 || len(p.Says.Ends) > 3 || len(likely) == 0 {
			return nil // one end may be anything
		}
		name = likely[0]
		p.Assume = append(p.Assume, "its kind is not said; by its ends it is taken for "+article(name))
	}
	if k, ok := catalog.KindNamed(name); ok {
		return k
	}
	if meant, ok := catalog.KindMeant(name); ok {
		if k, ok := catalog.KindNamed(meant.Write); ok {
			return k
		}
	}
	words := strings.Fields(name) // "street elbow"
	if k, ok := catalog.KindNamed(chain().Ending[words[len(words)-1]]); ok {
		return k
	}
	return nil
}

func article(name string) string {
	if strings.ContainsRune("aeiou", rune(name[0])) {
		return "an " + name
	}
	return "a " + name
}

// count tells how many the line brings. What is not said is taken for one, and asked.
func (p *Part) count() {
	unit := "pc"
	if p.Kind.Length && p.Kind.Loose {
		unit = "m"
	}
	q, _, doubt := p.Line.Quantity(unit, "")
	switch {
	case doubt != "" && unit == "m":
		p.Ask = append(p.Ask, "how many metres: "+doubt)
	case doubt != "":
		p.Pieces = 1
		p.Assume = append(p.Assume, "one piece: "+doubt)
	case unit == "m":
		p.Metres = q
	default:
		p.Pieces = int(min(q/money.Piece, 10_000))
	}
}

// fitEnds gives the ends that were read to the ports of the kind.
func (p *Part) fitEnds() {
	if p.Kind.Loose {
		return
	}
	ends := p.oneOf(slices.Clone(p.Says.Ends))
	p.metalEnds(ends)
	want := slices.Clone(p.Kind.Ports)
	if len(p.Kind.Boundary) > 0 && !p.Kind.Boats { // a seacock is bought by its inboard end
		want = slices.DeleteFunc(want, func(n string) bool { return slices.Contains(p.Kind.Boundary, p.Kind.PortIndex(n)) })
	}
	most := len(want)
	want = slices.DeleteFunc(want, func(n string) bool { return slices.Contains(p.Kind.Optional, n) })
	least := len(want)
	ends = p.withoutSizes(ends, most)
	if len(ends) > least {
		want = append(want, p.Kind.Optional...)[:min(most, len(ends))]
	}
	if len(ends) == 1 && len(want) > 1 && (fittingKind(p.Kind) || len(want) == 2 && len(p.Kind.Passages) == 1) {
		p.Assume = append(p.Assume, "one end is said, and all are taken alike")
		for len(ends) < len(want) {
			ends = append(ends, ends[0])
		}
	}
	if p.alike(ends, want) {
		p.Assume = append(p.Assume, "of its ends those that are said are alike, and all are taken so")
		for len(ends) < len(want) {
			ends = append(ends, ends[0])
		}
	}
	p.ports, p.ends = want, make([]threads.EndReading, len(want))
	for i, n := range want {
		if i < len(ends) {
			p.ends[i] = readable(ends[i])
		}
		switch {
		case len(p.ends[i].Candidates) == 0:
			p.Ask = append(p.Ask, fmt.Sprintf("which end `%s` is", n))
		case len(p.ends[i].Candidates) > 1 || p.ends[i].Question != "":
			p.Ask = append(p.Ask, orElse(p.ends[i].Question, "which of its readings end `"+n+"` is"))
		}
	}
}

// alike reports whether fewer ends are said than a valve with several ways has, and all of them the
// same: a three-way valve of 8 mm push-in has three.
func (p *Part) alike(ends []threads.EndReading, want []string) bool {
	return p.Kind.Selector && len(ends) > 0 && len(ends) < len(want) &&
		!slices.ContainsFunc(ends, func(e threads.EndReading) bool { return e.Words != ends[0].Words || len(e.Candidates) == 0 })
}

// oneOf makes one end of those that stand with a stroke between them ("G 3/4 male / R 3/4 male
// x 19 mm barb"), where the kind has fewer: it is one of them, and which is asked. It stays as it
// is where no words of a build file hold all its readings.
func (p *Part) oneOf(ends []threads.EndReading) []threads.EndReading {
	text := strings.Join(strings.Fields(p.Line.Text), " ")
	var out []threads.EndReading
	for i, e := range ends {
		if i > 0 && len(ends) > len(p.Kind.Ports) && strings.Contains(text, ends[i-1].Words+" / "+e.Words) && len(e.Candidates) > 0 {
			last := &out[len(out)-1]
			last.Candidates = append(slices.Clone(last.Candidates), e.Candidates...)
			continue
		}
		out = append(out, e)
	}
	for i := range out {
		e := &out[i]
		if slices.ContainsFunc(ends, func(o threads.EndReading) bool { return o.Words == e.Words && len(o.Candidates) == len(e.Candidates) }) || len(e.Candidates) < 2 {
			continue
		}
		size, _, _ := strings.Cut(e.Candidates[0].Size, "-")
		words := strings.TrimSpace(size + " " + map[threads.Sex]string{threads.Male: "male", threads.Female: "female"}[e.Candidates[0].Sex])
		if back, err := title.ReadEnd(words); err == nil && len(back.Candidates) >= len(e.Candidates) {
			*e = threads.EndReading{Words: words, Candidates: back.Candidates, Question: "which thread " + words + " is"}
		} else {
			return ends
		}
	}
	return out
}

// metalEnds takes ends for metal where a hose of plastic names the metal of its ends.
func (p *Part) metalEnds(ends []threads.EndReading) {
	if !p.isHose() || metalOf(p.Line.Text) == "" {
		return
	}
	for i := range ends {
		ends[i].Candidates = slices.Clone(ends[i].Candidates)
		for k := range ends[i].Candidates {
			ends[i].Candidates[k].Plastic = false
		}
	}
}

// metalOf is the first metal that a text names.
func metalOf(text string) string {
	for _, m := range catalog.MaterialsIn(text) {
		if m.Metal() {
			return m.Name
		}
	}
	return ""
}

// withoutSizes drops, of more ends than the kind has, those that are bare sizes: the last ones
// that the words leave open.
func (p *Part) withoutSizes(ends []threads.EndReading, most int) []threads.EndReading {
	for len(ends) > most {
		at := len(ends) - 1
		for i := len(ends) - 1; i >= 0; i-- {
			if len(ends[i].Candidates) != 1 {
				at = i
				break
			}
		}
		if len(p.Kind.Boundary) > 0 { // it is called by its pipe: a seacock of 3/4
			p.size = ends[at].Words
		} else {
			p.Ask = append(p.Ask, fmt.Sprintf("what %q is: %s has no end for it", ends[at].Words, article(p.Kind.Name)))
		}
		ends = slices.Delete(ends, at, at+1)
	}
	return ends
}

// readable makes sure that an end can be written into a build file and read back: the end in
// full where it is one, else its words. What cannot is not said.
func readable(e threads.EndReading) threads.EndReading {
	if len(e.Candidates) == 1 {
		e.Words = e.Candidates[0].String()
	}
	back, err := title.ReadEnd(e.Words)
	if err != nil || len(back.Candidates) == 0 {
		return threads.EndReading{}
	}
	if back.Question == "" {
		back.Question = e.Question
	}
	back.Words = e.Words
	return back
}

// fittingKind reports whether a kind is one of the pieces that lines are joined with.
func fittingKind(k *catalog.Kind) bool {
	return !k.Loose && !k.Boats && !k.Directed && k.Spare == catalog.FittingSpare && len(k.Ports) >= 2
}

// isHose reports whether a kind is a hose that is made up, or what hoses are cut from.
func (p *Part) isHose() bool  { return p.Kind.Is(catalog.Hose) }
func (p *Part) isStock() bool { return p.Kind.Is(catalog.HoseStock) }

// tubeEnd is the end of a piece cut from stock, as the reader of builds makes it.
func (p *Part) tubeEnd() (e threads.End, ok bool) {
	d := threads.Length(p.Says.Bore.Millimetres())
	if d <= 0 {
		return e, false
	}
	e = threads.End{Family: threads.Bore, Size: p.Says.Bore.String(), Diameter: d}
	if p.Says.Outside {
		e = threads.End{Family: threads.Push, Size: p.Says.Bore.String(), Diameter: d, Sex: threads.Male}
	}
	return e, true
}

// millimetres writes a length without needless decimals.
func millimetres(v float64) string {
	return quantity.Decimals(v, 2)
}
