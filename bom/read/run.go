package read

import (
	"fmt"
	"strings"

	"handtight/bom/build"
	"handtight/bom/source"
)

// run reads one [[run]] and its path.
func (r *reader) run(t *source.Table) {
	run := &build.Run{Place: build.MarkOf(t, "")}
	run.Name, _ = t.RequiredText("name", "raw water")
	run.Below, _ = t.Bool("below_waterline")
	path, ok := t.RequiredTexts("path", "intake")
	if ok && len(path) < 2 {
		t.Fault("path", "a run joins at least two units", "write them in flow order, like [\"intake\", \"strainer\"]")
	}
	good := true
	if r.steps += len(path); r.steps > mostSteps {
		t.Fault("path", fmt.Sprintf("with this path the runs of the build have %d units, and the most is %d", r.steps, mostSteps), "take out what stands there twice")
		path, good = nil, false
	}
	for i, text := range path {
		step, ok := r.step(t, i, text)
		good = good && ok
		run.Steps = append(run.Steps, step)
	}
	t.Done()
	if good && len(path) > 1 {
		r.build.Runs = append(r.build.Runs, run)
	}
}

// step reads `item[/label][.entry][>exit]`.
func (r *reader) step(t *source.Table, i int, text string) (build.Step, bool) {
	s := build.Step{Text: text, Place: build.MarkOf(t, "path", i)}
	rest := strings.TrimSpace(text)
	rest, s.Exit, _ = strings.Cut(rest, ">")
	unit, entry, hasEntry := splitLast(rest)
	if hasEntry {
		s.Entry, rest = entry, unit
	}
	id, label, labelled := strings.Cut(rest, "/")
	s.Label = label
	fine := func(word string) bool { return isID(word) }
	switch {
	case !fine(id), labelled && label != "+" && !fine(label), strings.Contains(text, ">") && !fine(s.Exit), hasEntry && !fine(s.Entry):
		t.FaultAt(fmt.Sprintf("`%s` is not a step of a path", text), "write item[/label][.entry][>exit], like \"tee/1.branch>a\"", "path", i)
		return s, false
	}
	it, ok := r.build.ByID[id]
	if !ok {
		t.FaultAt(fmt.Sprintf("there is no item or hose `%s`", id), near(id, r.ids(), "give it an [[item]], or name one that there is"), "path", i)
		return s, false
	}
	s.Item = it
	return s, it.Kind != nil
}

// splitLast splits "unit.port" at its last point.
func splitLast(text string) (before, after string, ok bool) {
	i := strings.LastIndexByte(text, '.')
	if i < 0 {
		return text, "", false
	}
	return text[:i], text[i+1:], true
}

// refs checks the ports that the build calls plugged or open on purpose.
func (r *reader) refs() {
	for _, refs := range [][]build.PortRef{r.build.Plugged, r.build.LeftOpen} {
		for _, ref := range refs {
			id, _, _ := strings.Cut(ref.Unit, "/")
			it, ok := r.build.ByID[id]
			if !ok {
				r.faultHere(ref.Place, fmt.Sprintf("there is no item `%s`", id), near(id, r.ids(), "name a unit of the build"))
				continue
			}
			if it.PortIndex(ref.Port) < 0 && it.Kind != nil && it.Kind.PortIndex(ref.Port) < 0 {
				var names []string
				for _, p := range it.Ports {
					names = append(names, p.Name)
				}
				r.faultHere(ref.Place, fmt.Sprintf("%s has no port `%s`", id, ref.Port), near(ref.Port, names, "its ports are "+build.InWords(names)))
			}
		}
	}
}

func (r *reader) faultHere(m build.Mark, reason, remedy string) {
	r.faults = append(r.faults, source.Fault{Place: m.Place(), Reason: reason, Remedy: remedy})
}
