package read

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"strings"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/evidence"
	"handtight/threads/identify"
	gauge "handtight/threads/identify/measure"
)

// notes reads what is known of joints and ends that stand, once the items are read.
func (r *reader) notes() {
	r.origins()
	for _, t := range r.jointNotes {
		r.jointNote(t)
	}
	for _, t := range r.endNotes {
		r.endNote(t)
	}
}

// origins says of every end where it is from: by its words, else its item, else the build.
func (r *reader) origins() {
	for _, it := range r.build.Items {
		for i := range it.Ports {
			p := &it.Ports[i]
			for _, from := range []string{it.Origin, r.build.Origin} {
				if p.Origin == "" {
					p.Origin = from
				}
			}
			p.End.Candidates = byOrigin(p.End.Candidates, p.Origin)
		}
	}
}

// when reads a year, a month or a day.
func when(t *source.Table, key string) build.When {
	text, ok := t.When(key)
	if !ok {
		return build.When{}
	}
	w, ok := build.WhenOf(text)
	if !ok {
		t.Fault(key, fmt.Sprintf("`%s` is no year, month or day", text), "write "+key+" = 2019, "+key+" = \"2019-06\" or "+key+" = 2019-06-21")
	}
	return w
}

// jointNote reads one [[joint]].
func (r *reader) jointNote(t *source.Table) {
	n := &build.JointNote{Place: build.MarkOf(t, "at"), Access: "easy"}
	defer t.Done()
	at, ok := r.twoPorts(t)
	n.At = at
	n.MadeUp, n.DrySince = when(t, "made_up"), when(t, "dry_since")
	n.Wept, _ = t.Text("wept", "2023, drops at the pump start")
	n.WeptIn = beginsWith(n.Wept)
	n.Tested = r.tested(t)
	n.Sealant = wish(t, "sealant", evidence.Sealants()...)
	if text, has := t.Text("turns", "5"); has {
		n.Turns = text
		if err := gauge.Turns(&n.Turned, text); err != nil {
			t.Fault("turns", err.Error(), "count them from where the thread takes hold to where it stops by hand")
		} else if n.Turned.Turns > mostTurns {
			t.Fault("turns", fmt.Sprintf("%s turns by hand are those of no joint", text), fmt.Sprintf("write a count up to %d, or \"all the way\"", mostTurns))
		}
	}
	if t.Has("access") {
		n.Access = wish(t, "access", "easy", "behind", "haul out")
	}
	said := map[string]string{"made_up": n.MadeUp.Text, "dry_since": n.DrySince.Text}
	if n.Tested != nil {
		said["tested"] = n.Tested.Pressure.String() + ", " + n.Tested.On.Text
	}
	n.Written = written(t, said)
	contradicts(t, n)
	if ok {
		r.build.Noted = append(r.build.Noted, n)
	}
}

// written is all that a note says, as it is written, but where it is; said has the text of a day or
// of a table. What nothing weighs is shown all the same.
func written(t *source.Table, said map[string]string) (out []string) {
	for _, key := range t.Keys() {
		if text := cmp.Or(said[key], t.Written(key)); key != "at" {
			out = append(out, key+" = "+text)
		}
	}
	return out
}

// mostTurns is more turns by hand than any joint takes.
const mostTurns = 15

// beginsWith reads the year or the day that a text begins with.
func beginsWith(text string) build.When {
	w, _ := build.WhenOf(leadingDate.FindString(text))
	return w
}

var leadingDate = pattern.New(`^\d{4}(?:-\d\d(?:-\d\d)?)?\b`)

// contradicts finds dates of one joint that cannot all be.
func contradicts(t *source.Table, n *build.JointNote) {
	if !n.MadeUp.Known() {
		return
	}
	for _, later := range []struct {
		key, what string
		w         build.When
	}{
		{"dry_since", "it is said to be dry since %s", n.DrySince},
		{"tested", "it is said to have been tested on %s", testedOn(n.Tested)},
		{"wept", "it is said to have wept in %s", n.WeptIn},
	} {
		if later.w.Known() && later.w.To.Before(n.MadeUp.From) {
			t.Fault(later.key, fmt.Sprintf(later.what+", before it was made up (%s)", later.w.Text, n.MadeUp.Text),
				"what was before it was made up says nothing of it now: take the line out, or mend one of the dates")
		}
	}
}

func testedOn(t *build.Tested) build.When {
	if t == nil {
		return build.When{}
	}
	return t.On
}

// tested reads tested = { pressure = "60 bar", on = 2024-03-02 }.
func (r *reader) tested(t *source.Table) *build.Tested {
	in, ok := t.Table("tested")
	if !ok {
		return nil
	}
	defer in.Done()
	p := take(in, "pressure", "60 bar", quantity.ParsePressure)
	on := when(in, "on")
	if !in.Has("pressure") {
		in.FaultHere("the test has no pressure", "write tested = { pressure = \"60 bar\", on = 2024-03-02 }")
	}
	if !in.Has("on") {
		in.FaultHere("the test has no date", "write tested = { pressure = \"60 bar\", on = 2024-03-02 }")
	}
	if p == nil || !on.Known() {
		return nil
	}
	if *p <= 0 {
		in.Fault("pressure", "nothing is tested at no pressure", "write the pressure that it was held at, like \"60 bar\"")
	}
	return &build.Tested{Pressure: *p, On: on}
}

// twoPorts reads at = ["strainer.out", "elbow.a"].
func (r *reader) twoPorts(t *source.Table) (at [2]build.PortRef, ok bool) {
	const remedy = "name both ports as the walk names them: at = [\"strainer.out\", \"elbow.a\"]"
	if !t.Has("at") {
		t.FaultHere("nothing says which joint is meant", remedy)
		return at, false
	}
	refs := portRefs(t, "at")
	if len(refs) != 2 {
		if len(t.Texts("at", "strainer.out")) != 2 {
			t.Fault("at", "a joint has two ports", remedy)
		}
		return at, false
	}
	return [2]build.PortRef(refs), true
}

// endNote reads one [[end]].
func (r *reader) endNote(t *source.Table) {
	n := &build.EndNote{Place: build.MarkOf(t, "at")}
	defer t.Done()
	text, ok := t.RequiredText("at", "strainer.out")
	n.Said, _ = t.Text("said", "some 3/4 thread")
	m, good := figures(t)
	if !ok {
		return
	}
	unit, port, split := splitLast(text)
	if !split {
		t.Fault("at", fmt.Sprintf("`%s` names no port", text), "write a unit and its port, like \"strainer.out\"")
		return
	}
	n.At = build.PortRef{Unit: unit, Port: port, Place: n.Place}
	p, ok := r.notedPort(t, n)
	if !ok || !good {
		return
	}
	r.build.Ends = append(r.build.Ends, n)
	n.Port = *p
	known := evidence.Known{Words: p.End, Country: p.Origin, Measured: m}
	if n.Said != "" && !r.said(t, n, &known) {
		return
	}
	if sexOf(&known) == threads.Female && t.Has("od") || sexOf(&known) == threads.Male && t.Has("id") {
		wrongSide(t, sexOf(&known))
		return
	}
	found, err := known.Readings()
	if err != nil {
		t.FaultHere(err.Error(), "measure again, across the crests of the thread")
		return
	}
	n.Found, n.Taken, n.Written = found, m, written(t, nil)
	n.Port.End, n.Port.Said = known.Words, true
	n.Port.Origin = known.Country
	if n.Said != "" {
		n.Port.Text = n.Said
	}
	if found.Measured {
		n.Port.End.Candidates = found.Ends()
		n.Port.End.Words = strings.TrimSpace(n.Port.Text + " as measured")
		n.Port.End.Question = leftOpen(&found, &m)
	}
}

// leftOpen is what is still asked of an end that was measured.
func leftOpen(found *evidence.Readings, m *identify.Measured) string {
	switch {
	case found.NothingFits():
		return "The figures fit no thread of the tables: measure again, on clean crests."
	case len(found.Ends()) < 2 && found.Conflict:
		return "The words and the figures differ: measure again, and read the mark on the part."
	case len(found.Ends()) < 2:
		return ""
	}
	id, err := identify.Identify(*m)
	if err != nil {
		return ""
	}
	return id.Next.Text
}

// said reads the words of a note, and takes their readings together with the item's. Words that
// have nothing in common with the item's own are a fault.
func (r *reader) said(t *source.Table, n *build.EndNote, known *evidence.Known) bool {
	end, err := r.unsureEnd(n.Said)
	if err != nil {
		t.Fault("said", err.Error(), "write what is printed or remembered, like said = \"some 3/4 thread\"")
		return false
	}
	if end.country != "" {
		known.Country = end.country
	}
	n.Port.Unsure = n.Port.Unsure || end.unsure
	own := known.Words
	known.Words = end.reading
	if len(own.Candidates) == 0 || len(end.reading.Candidates) == 0 {
		if len(end.reading.Candidates) == 0 && len(own.Candidates) > 0 {
			known.Words = own
		}
		if known.Words.Sex == threads.NoSex {
			known.Words.Sex = max(own.Sex, end.reading.Sex)
		}
		known.Words.Candidates = byOrigin(known.Words.Candidates, known.Country)
		return true
	}
	var both []threads.End
	for _, e := range own.Candidates {
		for _, o := range end.reading.Candidates {
			if e.Form == o.Form && e.Family == o.Family && (e.Sex == o.Sex || e.Sex == threads.NoSex || o.Sex == threads.NoSex) && (e.Form != nil || e.Size == o.Size) {
				if e.Sex == threads.NoSex {
					e.Sex = o.Sex
				}
				both = append(both, e)
			}
		}
	}
	if len(both) == 0 {
		t.Fault("said", fmt.Sprintf("`%s` is none of what the item says of this port, `%s`", n.Said, n.Port.Text), "write here what is on the part, and mend the item, or leave its port out")
		return false
	}
	known.Words.Candidates = byOrigin(both, known.Country)
	return true
}

// sexOf is the sex that the words give an end; NoSex where they leave it open.
func sexOf(k *evidence.Known) threads.Sex {
	if k.Words.Sex != threads.NoSex || len(k.Words.Candidates) == 0 {
		return k.Words.Sex
	}
	sex := k.Words.Candidates[0].Sex
	for _, e := range k.Words.Candidates {
		if e.Sex != sex {
			return threads.NoSex
		}
	}
	return sex
}

// wrongSide refuses a diameter of the side that the thread is not on.
func wrongSide(t *source.Table, sex threads.Sex) {
	if sex == threads.Female {
		t.Fault("od", "an outside diameter of a female end: its thread is inside", "measure across its crests, inside, and write `id`")
		return
	}
	t.Fault("id", "an inside diameter of a male end: its thread is outside", "measure across its crests, outside, and write `od`")
}

// agrees is how far a count of threads and a pitch of one thread may differ, as a share.
const agrees = 0.05

// figures reads what was measured of an end; good is false after a fault.
func figures(t *source.Table) (m identify.Measured, good bool) {
	good = true
	for _, k := range []struct {
		key, hint string
		read      func(text string) error
	}{
		{"od", "26.2 mm", func(s string) error { return gauge.Diameter(&m, threads.Male, s) }},
		{"id", "24.1 mm", func(s string) error { return gauge.Diameter(&m, threads.Female, s) }},
		{"pitch", "1.8 mm", func(s string) error { return gauge.Pitch(&m, s) }},
		{"tpi", "14", func(s string) error {
			before := m.Pitch
			if err := gauge.Count(&m, s); err != nil {
				return err
			}
			if before.Known && math.Abs(math.Log(before.Value/m.Pitch.Value)) > agrees {
				return errors.New("the pitch and the threads an inch are of two threads")
			}
			return nil
		}},
		{"taper", "yes", func(s string) error { return gauge.Taper(&m, s) }},
		{"angle", "55", func(s string) error { return gauge.Flank(&m, s) }},
		{"seat", "plain", func(s string) error { return gauge.Seat(&m, s) }},
	} {
		text, ok := t.Text(k.key, k.hint)
		if !ok {
			good = good && !t.Has(k.key)
			continue
		}
		if err := k.read(text); err != nil {
			t.Fault(k.key, err.Error(), fmt.Sprintf("write it like %s = %q", k.key, k.hint))
			good = false
		}
	}
	if t.Has("od") && t.Has("id") {
		t.Fault("id", "`od` and `id` are both given: a thread is either a male, measured outside, or a female, measured inside", "leave one of them out")
		good = false
	}
	return m, good
}

// notedPort finds the item's port that a note speaks of.
func (r *reader) notedPort(t *source.Table, n *build.EndNote) (*build.Port, bool) {
	id, _, _ := strings.Cut(n.At.Unit, "/")
	it, ok := r.build.ByID[id]
	if !ok {
		t.Fault("at", fmt.Sprintf("there is no item `%s`", id), near(id, r.ids(), "name a unit of the build"))
		return nil, false
	}
	i := it.PortIndex(n.At.Port)
	if i < 0 {
		var names []string
		for _, p := range it.Ports {
			names = append(names, p.Name)
		}
		t.Fault("at", fmt.Sprintf("%s has no port `%s`", id, n.At.Port), near(n.At.Port, names, "its ports are "+build.InWords(names)))
		return nil, false
	}
	return &it.Ports[i], true
}

// auditTable reads the record of an earlier audit.
func (r *reader) auditTable(root *source.Table) {
	t, ok := root.Table("audit")
	if !ok {
		return
	}
	a := &build.Audited{On: when(t, "on")}
	if !t.Has("on") {
		t.FaultHere("the record of an audit has no date", "write on = 2026-11-28, or take the block out: `handtight audit` writes it anew")
	}
	for _, j := range t.Tables("joint") {
		at, ok := r.twoPorts(j)
		is, _ := j.Text("is", "leave and watch")
		look := when(j, "look")
		j.Done()
		if ok {
			a.Joints = append(a.Joints, build.AuditedJoint{At: at, Is: is, Look: look})
		}
	}
	t.Done()
	r.build.Audited = a
}
