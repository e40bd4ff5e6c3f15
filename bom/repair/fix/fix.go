// Package fix puts the parts that mend a build's joints into a copy of its text: comments,
// order and quotes stay, and the copy is read and checked again after each change.
//
// A change is kept only if the finding that it mends is gone and no new stop has come.
// Questions are never answered by it, and no rating is ever typed in.
package fix

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/bom/repair"
	"handtight/bom/rule"
	"handtight/bom/source"
)

// Edit is one change that was made.
type Edit struct {
	Slug, At string // of the finding that it mends
	File     string // where that stands in the build that was given
	Line     int    // 0 for what came up only while others were mended, at a joint that was not there
	Do       string // "change" or "adapt"
	Buy      []string
	Text     string // what was written in the path
}

// Left is a finding that stays, and why.
type Left struct{ Slug, At, Why string }

// Result is the mended text and what was done.
type Result struct {
	Text  []byte
	Edits []Edit
	Left  []Left
	Stops int // in the mended build
}

// Options say what to mend.
type Options struct {
	Only      []string // slugs; none: all
	AdaptOnly bool     // never change a part for another
	Outside   bool     // includes may lie outside the build's folder
}

// Most changes of one run: a build has no more joints that stop than that.
const mostEdits = 200

// Build mends a build's text. path is where it stands, for its includes. Errors: the file
// errors of the build itself.
func Build(path string, text []byte, o Options) (*Result, error) {
	sys, faults := load(path, text, o)
	if len(faults) > 0 {
		return nil, faults
	}
	m := &mender{path: path, o: o, text: string(text), sys: sys, list: rule.Check(sys), tried: map[string]string{}, number: map[string]int{}, place: map[string]finding.Place{}}
	for _, j := range sys.Graph.Joints {
		m.number[sys.Graph.JointName(j)] = j.Number
	}
	for _, j := range sys.Graph.Joints {
		p := j.Mark.Place()
		m.place[fmt.Sprintf("J%d %s", j.Number, sys.Graph.JointName(j))] = finding.Place{File: p.File, Line: p.Line}
	}
	for i := range m.list {
		m.place[m.list[i].Slug+" "+m.at(&m.list[i])] = m.list[i].Place
	}
	for range mostEdits {
		if !m.next() {
			break
		}
	}
	m.leave()
	return &Result{Text: []byte(m.text), Edits: m.edits, Left: m.left, Stops: finding.Count(m.list, finding.Stop)}, nil
}

func load(path string, text []byte, o Options) (*bom.System, faultList) {
	b, faults := read.ParseWith(path, text, read.Options{Outside: o.Outside})
	if len(faults) > 0 {
		return nil, faults
	}
	sys, faults := bom.Walk(b)
	return sys, faults
}

type mender struct {
	path  string
	o     Options
	text  string
	sys   *bom.System
	list  []finding.Finding
	tried map[string]string // why no remedy mended a finding, by its key
	edits []Edit
	left  []Left

	// Of the build that was given: each part put in moves all that stands behind it.
	number map[string]int           // of a joint, by its name
	place  map[string]finding.Place // of a finding, by its rule and where it is, and of a joint
}

// at is a finding's place with the joint's number in the build that was given: each part put in
// numbers the later joints anew. A joint that was not there has no number.
func (m *mender) at(f *finding.Finding) string {
	if f.Subject.Joint == 0 {
		return f.At()
	}
	_, name, _ := strings.Cut(f.At(), " ")
	if n, ok := m.number[name]; ok {
		return fmt.Sprintf("J%d %s", n, name)
	}
	return name
}

// key tells a finding from others, whatever line it has come to stand in.
func key(f *finding.Finding) string { return f.Slug + " " + f.At() }

// next mends one finding; false when none is left that it can mend.
func (m *mender) next() bool {
	for i := range m.list {
		f := &m.list[i]
		if _, done := m.tried[key(f)]; done || !m.wanted(f) {
			continue
		}
		first := ""
		for _, r := range repair.Remedies(m.sys, f) {
			if r.Do == "ask" {
				break // questions are never answered by a purchase
			}
			if m.o.AdaptOnly && r.Do != "adapt" {
				continue
			}
			why := m.try(f, &r)
			if why == "" {
				return true
			}
			first = cmp.Or(first, fmt.Sprintf("%s was tried: %s", strings.Join(r.Buy(), " and "), why))
		}
		m.tried[key(f)] = first
	}
	return false
}

func (m *mender) wanted(f *finding.Finding) bool {
	return f.Severity == finding.Stop && repair.Mends(f.Slug) && (len(m.o.Only) == 0 || slices.Contains(m.o.Only, f.Slug))
}

// try makes one change, and keeps it if the copy is read and checked better for it; else it says
// why it is not kept.
func (m *mender) try(f *finding.Finding, r *repair.Remedy) (why string) {
	text, written, why := m.write(r)
	if why != "" {
		return why
	}
	sys, faults := load(m.path, []byte(text), m.o)
	if len(faults) > 0 {
		return "the file would be at fault: " + faults[0].Reason
	}
	list := rule.Check(sys)
	if stop := newStop(m.list, list); stop != nil {
		return fmt.Sprintf("%s would stop then, at %s: %s", stop.Slug, stop.At(), strings.TrimSuffix(stop.Reason, "."))
	}
	if weight(list) >= weight(m.list) {
		return "as much would stop as before"
	}
	at := m.at(f)
	place := cmp.Or(m.place[f.Slug+" "+at], m.place[at])
	m.edits = append(m.edits, Edit{Slug: f.Slug, At: at, File: place.File, Line: place.Line, Do: r.Do, Buy: r.Buy(), Text: written})
	m.text, m.sys, m.list = text, sys, list
	return ""
}

// weight counts the stops with all that share one: a part mended of several that one finding
// names is something mended.
func weight(list []finding.Finding) int {
	n := 0
	for i := range list {
		if list[i].Severity == finding.Stop {
			n += 1 + len(list[i].Also)
		}
	}
	return n
}

// newStop finds a stop of a rule that stopped less before; nil if there is none.
func newStop(before, after []finding.Finding) *finding.Finding {
	count := map[string]int{}
	for i := range before {
		if before[i].Severity == finding.Stop {
			count[before[i].Slug]++
		}
	}
	for i := range after {
		f := &after[i]
		if f.Severity != finding.Stop {
			continue
		}
		if count[f.Slug]--; count[f.Slug] < 0 {
			return f
		}
	}
	return nil
}

// leave says of each finding that stays why it does.
func (m *mender) leave() {
	for i := range m.list {
		f := &m.list[i]
		if !m.wanted(f) {
			continue
		}
		why := cmp.Or(repair.WhyNot(m.sys, f), m.tried[key(f)])
		if why == "" {
			why = "no generic part mends it, and it is settled by hand: " + f.Remedy
		}
		m.left = append(m.left, Left{f.Slug, m.at(f), why})
	}
}

// included says that what would have to change stands in another file.
const included = "what would have to be changed stands in an included file, and only a copy of the build itself is written"

// write gives the text with a remedy put in, or why it cannot be.
func (m *mender) write(r *repair.Remedy) (text, written, why string) {
	switch {
	case r.Do == "adapt" && r.Plug != nil:
		return m.plug(r)
	case r.Do == "adapt":
		return m.insert(r)
	case r.End != nil:
		return m.makeUp(r)
	case r.Do == "change":
		return m.replace(r)
	}
	return "", "", "it is a question"
}

// quoted finds where a step's text stands; ok is false where it is written in some other way.
func (m *mender) quoted(p source.Place) (at int, ok bool) {
	at, ok = p.Offset(m.text)
	return at, ok && at < len(m.text) && strings.ContainsRune(`"'`, rune(m.text[at]))
}

// insert puts a chain of new steps between the two units of a joint.
func (m *mender) insert(r *repair.Remedy) (text, written, why string) {
	to := r.Joint.Mark.Place()
	if to.File != m.sys.Build.File {
		return "", "", included
	}
	var steps, items []string
	for _, p := range r.Pieces {
		id := p.ShortID()
		if p.Stock && m.sys.Build.ByID[id] == nil {
			items = append(items, "# put in by check --fix: "+r.At+"\n"+p.Paste(r.Needs))
		}
		steps = append(steps, id+"/+")
	}
	at, ok := m.quoted(to)
	if !ok {
		return "", "", "the path is not written step by step"
	}
	out, why := m.notes(r, steps)
	if why != "" {
		return "", "", why
	}
	quote := m.text[at : at+1]
	for _, s := range steps {
		written += quote + s + quote + ", "
	}
	text = putOut(m.text[:at]+written+m.text[at:], out, r.At)
	return addItems(text, items), strings.TrimSuffix(written, ", "), ""
}

// plug closes an open port by a run of its own. A unit that a path made with "/+" has no name
// that a run could begin with.
func (m *mender) plug(r *repair.Remedy) (text, written, why string) {
	if strings.HasPrefix(r.Unit.Label, "+") {
		return "", "", fmt.Sprintf("%s has no name of its own that a run could begin with: write a name in the place of its `/+`", r.Unit.Name)
	}
	id := r.ItemID()
	why = "# put in by check --fix: " + r.At + " is joined to nothing\n"
	var items []string
	if m.sys.Build.ByID[id] == nil {
		items = append(items, why+r.PlugItem(id))
	}
	return addLast(addItems(m.text, items), why+r.PlugRun(id)), `"` + r.At + `", "` + id + `/+"`, ""
}

// replace puts another item in a unit's place, in every step that names it.
func (m *mender) replace(r *repair.Remedy) (text, written, why string) {
	id := r.ItemID()
	type span struct {
		from, to int
		text     string
	}
	var spans []span
	for _, run := range m.sys.Build.Runs {
		for _, s := range run.Steps {
			if s.Item != r.Unit.Item || !m.sameUnit(r, s.Label, s.Place) {
				continue
			}
			p := s.Place.Place()
			if p.File != m.sys.Build.File {
				return "", "", included
			}
			at, ok := m.quoted(p)
			if !ok || !strings.HasPrefix(m.text[at+1:], s.Text) {
				return "", "", "the path is not written step by step"
			}
			next := id + strings.TrimPrefix(s.Text, s.Item.ID)
			spans = append(spans, span{at + 1, at + 1 + len(s.Text), next})
		}
	}
	if len(spans) == 0 {
		return "", "", "no step names it"
	}
	out, why := m.notes(r, []string{id + "/+"})
	if why != "" {
		return "", "", why
	}
	slices.SortFunc(spans, func(a, b span) int { return b.from - a.from })
	text = m.text
	for _, s := range spans {
		text = text[:s.from] + s.text + text[s.to:]
	}
	text = putOut(text, out, r.At)
	var items []string
	if m.sys.Build.ByID[id] == nil {
		items = append(items, fmt.Sprintf("# put in by check --fix in the place of %s: %s\n%s", r.At, m.reason(r), r.Item(id)))
	}
	return addItems(text, items), spans[len(spans)-1].text, ""
}

// makeUp writes another end of a hose in the place of the one that does not fit.
func (m *mender) makeUp(r *repair.Remedy) (text, written, why string) {
	port := &r.Unit.Item.Ports[r.Port]
	p := port.Mark.Place()
	if p.File != m.sys.Build.File {
		return "", "", included
	}
	at, ok := m.quoted(p)
	if !ok || !strings.HasPrefix(m.text[at+1:], port.Text) {
		return "", "", "the ends are not written one by one"
	}
	out, why := m.notes(r, nil)
	if why != "" {
		return "", "", why
	}
	written = r.End.Texts[0]
	return putOut(m.text[:at+1]+written+m.text[at+1+len(port.Text):], out, r.At), written, ""
}

// sameUnit reports whether a step names the unit: by its label, or at the place where it was
// first written, if each step of the item is a unit of its own.
func (m *mender) sameUnit(r *repair.Remedy, label string, place build.Mark) bool {
	if r.All {
		return true
	}
	if label == "+" {
		return place == r.Unit.Mark
	}
	name := r.Unit.Item.ID
	if label != "" {
		name += "/" + label
	}
	return name == r.Unit.Name
}

// reason says for what an item is put in.
func (m *mender) reason(r *repair.Remedy) string {
	if r.Joint != nil {
		return m.sys.Graph.JointName(r.Joint)
	}
	return r.Why
}
