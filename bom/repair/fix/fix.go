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
)

// Edit is one change that was made.
type Edit struct {
	Slug, At string // of the finding that it mends
	Line     int    // of the build that was given
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
	m := &mender{path: path, o: o, text: string(text), sys: sys, list: rule.Check(sys), tried: map[string]bool{}}
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
	tried map[string]bool // findings that no remedy mended
	edits []Edit
	left  []Left
}

// key tells a finding from others, whatever line it has come to stand in.
func key(f *finding.Finding) string { return f.Slug + " " + f.At() }

// next mends one finding; false when none is left that it can mend.
func (m *mender) next() bool {
	for i := range m.list {
		f := &m.list[i]
		if !m.wanted(f) || m.tried[key(f)] {
			continue
		}
		for _, r := range repair.Remedies(m.sys, f) {
			if r.Do == "ask" {
				break // questions are never answered by a purchase
			}
			if m.o.AdaptOnly && r.Do != "adapt" {
				continue
			}
			if m.try(f, &r) {
				return true
			}
		}
		m.tried[key(f)] = true
	}
	return false
}

func (m *mender) wanted(f *finding.Finding) bool {
	return f.Severity == finding.Stop && repair.Mends(f.Slug) && (len(m.o.Only) == 0 || slices.Contains(m.o.Only, f.Slug))
}

// try makes one change, and keeps it if the copy is read and checked better for it.
func (m *mender) try(f *finding.Finding, r *repair.Remedy) bool {
	text, written, ok := m.write(r)
	if !ok {
		return false
	}
	sys, faults := load(m.path, []byte(text), m.o)
	if len(faults) > 0 {
		return false
	}
	list := rule.Check(sys)
	if weight(list) >= weight(m.list) || newSlug(m.list, list) {
		return false
	}
	m.edits = append(m.edits, Edit{Slug: f.Slug, At: f.At(), Line: f.Place.Line, Do: r.Do, Buy: r.Buy(), Text: written})
	m.text, m.sys, m.list = text, sys, list
	return true
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

// newSlug reports whether some stop is of a rule that stopped nothing before.
func newSlug(before, after []finding.Finding) bool {
	count := func(list []finding.Finding) map[string]int {
		out := map[string]int{}
		for _, f := range list {
			if f.Severity == finding.Stop {
				out[f.Slug]++
			}
		}
		return out
	}
	was := count(before)
	for slug, n := range count(after) {
		if n > was[slug] {
			return true
		}
	}
	return false
}

// leave says of each finding that stays why it does.
func (m *mender) leave() {
	for i := range m.list {
		f := &m.list[i]
		if !m.wanted(f) {
			continue
		}
		why := cmp.Or(repair.WhyNot(m.sys, f), "no part was found that mends it without a new stop: it is to be settled by hand")
		m.left = append(m.left, Left{f.Slug, f.At(), why})
	}
}

// write gives the text with a remedy put in.
func (m *mender) write(r *repair.Remedy) (text, written string, ok bool) {
	switch r.Do {
	case "adapt":
		if r.Plug != nil {
			return m.plug(r)
		}
		return m.insert(r)
	case "change":
		return m.replace(r)
	}
	return "", "", false
}

// insert puts a chain of new steps between the two units of a joint.
func (m *mender) insert(r *repair.Remedy) (string, string, bool) {
	to := r.Joint.Mark.Place()
	if to.File != m.sys.Build.File {
		return "", "", false // an included file is never edited
	}
	var steps, items []string
	for _, p := range r.Pieces {
		id := p.ShortID()
		if p.Stock && m.sys.Build.ByID[id] == nil {
			items = append(items, "# put in by check --fix: "+r.At+"\n"+p.Paste())
		}
		steps = append(steps, id+"/+")
	}
	at, ok := to.Offset(m.text)
	if !ok || at >= len(m.text) || !strings.ContainsRune(`"'`, rune(m.text[at])) {
		return "", "", false
	}
	quote := m.text[at : at+1]
	written := ""
	for _, s := range steps {
		written += quote + s + quote + ", "
	}
	return addItems(m.text[:at]+written+m.text[at:], items), strings.TrimSuffix(written, ", "), true
}

// plug closes an open port by a run of its own. A unit that a path made with "/+" has no name
// that a run could begin with.
func (m *mender) plug(r *repair.Remedy) (string, string, bool) {
	if strings.HasPrefix(r.Unit.Label, "+") {
		return "", "", false
	}
	id := r.ItemID()
	block := "# put in by check --fix: " + r.At + " is joined to nothing\n"
	if m.sys.Build.ByID[id] == nil {
		block += r.PlugItem(id) + "\n"
	}
	return addItems(m.text, []string{block + r.PlugRun(id)}), `"` + r.At + `", "` + id + `/+"`, true
}

// replace puts another item in a unit's place, in every step that names it.
func (m *mender) replace(r *repair.Remedy) (string, string, bool) {
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
				return "", "", false
			}
			at, ok := p.Offset(m.text)
			if !ok || at >= len(m.text) || !strings.ContainsRune(`"'`, rune(m.text[at])) || !strings.HasPrefix(m.text[at+1:], s.Text) {
				return "", "", false
			}
			next := id + strings.TrimPrefix(s.Text, s.Item.ID)
			spans = append(spans, span{at + 1, at + 1 + len(s.Text), next})
		}
	}
	if len(spans) == 0 {
		return "", "", false
	}
	slices.SortFunc(spans, func(a, b span) int { return b.from - a.from })
	text := m.text
	for _, s := range spans {
		text = text[:s.from] + s.text + text[s.to:]
	}
	var items []string
	if m.sys.Build.ByID[id] == nil {
		items = append(items, fmt.Sprintf("# put in by check --fix in the place of %s: %s\n%s", r.At, m.reason(r), r.Item(id)))
	}
	return addItems(text, items), spans[len(spans)-1].text, true
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
