package draft

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/cart"
	"handtight/bom/money"
	"handtight/bom/read"
)

// Options say what a person knows better than the lists.
type Options struct {
	Name     string            // of the build; "" for a plain one
	Currency string            // of the build; "" for the one that most lines are in
	Rates    map[string]string // what one of a currency costs in the build's
	RateDay  string            // the day of the rates, 2026-11-20; rates without it are not taken
	Like     string            // sort of plant, layout of vessels: "recovery", "parallel"
	Answers  map[string]string // to questions, by their key
	Steps    int               // of the solver; 0: 400,000
}

// Draft is what lists came to.
type Draft struct {
	Text      []byte       // the build file; nil where the lists are no plant
	Build     *build.Build // as read back
	Plant     string       // what it was taken to be
	Why       []string     // by which sign
	Others    []string     // what --like may name instead
	None      string       // why the lists are no plant; "" where they are
	Lines     int          // of all lists
	Parts     []*Part
	Joints    int // that the plant asks for
	Made      int // of them by pieces of the lists
	Missing   []Missing
	Misfits   []Misfit
	Left      []Left
	Questions []Question
	Proven    bool // no other way of putting the pieces together is better
	Short     int  // where it is not proven: pieces fewer that might be missing
}

// Of drafts a build of lists.
func Of(carts []*cart.Cart, o Options) (*Draft, error) {
	d := &Draft{Parts: parts(carts)}
	d.Lines = len(d.Parts)
	seen, ok := isPlant(d.Parts)
	if !ok || len(sorts(d.Parts)) == 0 {
		d.None = noPlant(d.Parts, seen)
		return d, nil
	}
	ids := map[string]bool{}
	for _, b := range chain().Role {
		if b.Boat != "" {
			ids[idOf(b.Name)] = true
		}
	}
	name(d.Parts, ids)
	if err := d.readBack(); err != nil {
		return nil, err
	}
	all := best(d.Parts, &o)
	s := all[0]
	if o.Like != "" && !s.plant.is(o.Like) {
		return nil, fmt.Errorf("the lists hold no plant like %q; they could be: %s", o.Like, strings.Join(d.likes(all), ", "))
	}
	d.Plant, d.Why, d.Others = s.plant.title(), s.why(), d.likes(all[1:])
	d.Proven, d.Short = s.answer.Proven, s.answer.Cost.Missing-s.answer.Bound.Missing
	r := newRouter(s, ids)
	d.fill(s, r)
	d.rivals(s, r)
	d.ask(s, r, carts, o)
	w := &writer{d: d, s: s, r: r, o: o, carts: carts}
	sys, err := d.walked(w.write())
	if err != nil {
		return nil, err
	}
	if d.unrated(sys) {
		d.Questions = nil
		d.ask(s, r, carts, o)
		w.b.Reset()
		if sys, err = d.walked(w.write()); err != nil {
			return nil, err
		}
	}
	if err := d.countLoose(sys); err != nil {
		return nil, err
	}
	return d, nil
}

// walked takes a text for the draft's, and walks the build that it is.
func (d *Draft) walked(text string) (*bom.System, error) {
	d.Text = []byte(text)
	b, faults := read.Parse("draft", d.Text)
	if len(faults) > 0 {
		return nil, fmt.Errorf("the draft does not read back, which is a fault of this program: %w", faults)
	}
	d.Build = b
	sys, faults := bom.Walk(b)
	if len(faults) > 0 {
		return nil, fmt.Errorf("the draft cannot be walked, which is a fault of this program: %w", faults)
	}
	return sys, nil
}

// rivals asks which part has a role where another that can have it is left over.
func (d *Draft) rivals(s *solved, r *router) {
	for i := range chain().Role {
		role := &chain().Role[i]
		if role.Many {
			continue
		}
		for _, u := range s.plant.all(role.Name) {
			for _, p := range d.Parts {
				if u.part != nil && p != u.part && p.Aside == "" && r.used[p] == 0 && slices.Contains(role.Kinds, p.Kind.Name) && role.suits(p) {
					u.part.ask(fmt.Sprintf("which is the %s, this or that of %s: this was taken", role.Name, p.Where()))
				}
			}
		}
	}
}

// unrated asks what parts of a line of high pressure hold of which nothing says it, and reports whether
// there are any.
func (d *Draft) unrated(sys *bom.System) bool {
	asks := false
	for _, g := range sys.Segments.All {
		for _, u := range g.Unrated {
			i := slices.IndexFunc(d.Parts, func(p *Part) bool { return p.Aside == "" && p.ID == u.Item.ID })
			if g.High() && i >= 0 {
				d.Parts[i].ask("what pressure it holds: it stands in a line of high pressure, and nothing says it")
				asks = true
			}
		}
	}
	return asks
}

// ask notes a question to a part's line, once.
func (p *Part) ask(text string) {
	if !slices.Contains(p.Ask, text) {
		p.Ask = append(p.Ask, text)
	}
}

// countLoose holds the clamps, washers and tape of the lists against what the joints ask for.
func (d *Draft) countLoose(sys *bom.System) error {
	needs, err := sys.Needs()
	if err != nil {
		return err
	}
	has := map[string]money.Quantity{}
	for _, p := range d.Parts {
		if p.Kind != nil && p.Kind.Generic {
			has[p.genericName()] += money.Quantity(p.Pieces) * money.Piece
		}
	}
	for _, n := range needs {
		if n.Item != nil || n.Build() <= has[n.Key] {
			continue
		}
		d.Missing = append(d.Missing, Missing{Count: true, What: fmt.Sprintf("%s: the joints take %s, and the lists have %s", n.Key, n.Build(), has[n.Key])})
	}
	return nil
}

// likes names sorts of plant as Options.Like takes them.
func (d *Draft) likes(list []*solved) []string {
	var out []string
	for _, s := range list {
		out = append(out, s.plant.title())
	}
	return out
}

// aroundParts is a build that holds nothing else, for a build has a run.
const aroundParts = `[build]
name = "parts"
currency = "EUR"
[duty]
pressure = "60 bar"
[[item]]
id = "draft-sea"
kind = "sea"
[[item]]
id = "draft-drain"
kind = "drain"
[[run]]
name = "none"
path = ["draft-sea", "draft-drain"]
`

// readBack reads the items of the parts as a build does. An item that does not read is no
// item: it is kept as a comment, with the fault.
func (d *Draft) readBack() error {
	for range len(d.Parts) + 1 {
		var b strings.Builder
		b.WriteString(aroundParts)
		first := map[int]*Part{} // by line of the text
		at := strings.Count(b.String(), "\n") + 1
		for _, p := range d.Parts {
			if p.Aside != "" {
				continue
			}
			text := p.table()
			for i := range strings.Count(text, "\n") {
				first[at+i] = p
			}
			at += strings.Count(text, "\n")
			b.WriteString(text)
		}
		got, faults := read.Parse("parts", []byte(b.String()))
		if len(faults) == 0 {
			attach(d.Parts, got)
			return nil
		}
		failed := false
		for _, f := range faults {
			if p := first[f.Line]; p != nil && p.Aside == "" {
				p.Aside, failed = "it could not be written as an item: "+f.Reason, true
			}
		}
		if !failed {
			return faults
		}
	}
	return nil
}

// table is the part as a table of a build file.
func (p *Part) table() string {
	return p.fields().write(p.tableOf())
}

// fill says what is missing, what does not fit, and what is left over.
func (d *Draft) fill(s *solved, r *router) {
	for i := range r.lost {
		if r.lost[i].Stop {
			d.Missing = append(d.Missing, r.lost[i])
		}
	}
	for _, need := range []string{needed, usual} {
		for n, pl := range s.plant.every() {
			for _, l := range pl.lacks {
				if l.Need == need {
					m := Missing{What: l.Name + " (" + strings.Join(l.Kinds, " or ") + ")", Role: true, Need: need}
					if len(s.plant.more) > 0 {
						m.Where = "plant " + fmt.Sprint(n+1)
					}
					d.Missing = append(d.Missing, m)
				}
			}
		}
		if need == needed {
			for i := range r.lost {
				if !r.lost[i].Stop {
					d.Missing = append(d.Missing, r.lost[i])
				}
			}
		}
	}
	for _, p := range d.Parts {
		if p.Aside != "" || p.Kind.Loose {
			continue
		}
		n := p.Pieces - r.used[p]
		if n <= 0 {
			continue
		}
		left := Left{Where: p.Where(), Text: p.Line.Text, Count: n, Spare: r.used[p] > 0}
		if why, at := s.misfit(p, r); why != "" && r.used[p] == 0 {
			d.Misfits = append(d.Misfits, Misfit{Where: p.Where(), Text: p.Line.Text, Place: at, Why: why})
			continue
		}
		d.Left = append(d.Left, left)
	}
	for _, p := range d.Parts {
		if p.Aside == "" && p.isStock() && r.used[p] == 0 {
			d.Left = append(d.Left, Left{Where: p.Where(), Text: p.Line.Text, Count: 1})
		}
	}
	d.Made, d.Joints = r.joints()
}

// joints counts the joints of the plant, and those that pieces of the lists alone make.
func (r *router) joints() (made, all int) {
	for _, run := range r.runs() {
		for i := 1; i < len(run.path); i++ {
			all++
			if run.path[i].buy == nil && run.path[i-1].buy == nil && (len(run.path) > 2 || true) && !r.stopped(&run.path[i-1], &run.path[i]) {
				made++
			}
		}
	}
	for i := range r.s.places { // a branch that stands in no run
		if r.s.places[i].from == nil {
			if _, ok := r.branch(i); !ok {
				all++
			}
		}
	}
	return made, all
}

// stopped reports whether two units stand side by side though nothing joins them.
func (r *router) stopped(a, b *element) bool {
	if a.unit == nil || b.unit == nil {
		return false
	}
	for i := range r.s.places {
		p := &r.s.places[i]
		if p.from != nil && p.from.u == a.unit && p.to.u == b.unit && !r.s.answer.Places[i].OK && len(r.chains[i]) == 0 {
			return true
		}
	}
	return false
}
