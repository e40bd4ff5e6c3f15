package graph

import (
	"fmt"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/pressure/nearest"
	"handtight/threads"
	"handtight/threads/evidence"
	"handtight/threads/identify"
)

// noted gives a port what a note of the build says of this one end.
func (w *walker) noted(p Port) Port {
	if len(w.ends) == 0 {
		return p
	}
	if n := w.ends[p.Name()]; n != nil {
		p.Note, p.Port = n, &n.Port
	}
	return p
}

// notes ties what is known of joints to the joints, and judges those again of which something
// is known. A note of what the build does not have is a file error.
func (w *walker) notes() {
	if len(w.faults) > 0 {
		return
	}
	g := w.graph
	seen := map[string]source.Place{}
	once := func(key string, at source.Place) {
		if first, twice := seen[key]; twice {
			w.faults = append(w.faults, source.Fault{Place: at, Reason: fmt.Sprintf("%s is noted twice: here, and in %s line %d", key, first.File, first.Line), Remedy: "write all that is known of it in one place"})
		}
		seen[key] = at
	}
	for _, n := range g.Build.Ends {
		if _, ok := w.nodeOf(n.At); ok {
			once(n.At.Name(), n.Place.Place())
		}
	}
	for _, n := range g.Build.Noted {
		if j, ok := w.jointOf(n.At); ok {
			once(g.JointName(j), n.Place.Place())
			j.Note = n
		}
	}
	for _, j := range g.Joints {
		if j.Note != nil || g.Ports[j.A].Note != nil || g.Ports[j.B].Note != nil {
			g.weigh(j)
		}
	}
}

// goneToo is what to do with a note of what was changed since.
const goneToo = "where a part was changed, take out what was noted of the old one"

// nodeOf finds the port that a note names.
func (w *walker) nodeOf(r build.PortRef) (*Port, bool) {
	u, ok := w.graph.byName[r.Unit]
	if !ok {
		var names []string
		for _, u := range w.graph.Units {
			names = append(names, u.Name)
		}
		remedy := "name a unit as the walk names it: a second one made by `/+` is `x/+2`"
		if near, ok := nearest.Of(r.Unit, names); ok {
			remedy = fmt.Sprintf("did you mean `%s`? %s", near, remedy)
		}
		w.fault(r.Place, fmt.Sprintf("no run places a unit `%s`", r.Unit), remedy+"; "+goneToo)
		return nil, false
	}
	i := u.Item.PortIndex(r.Port)
	if i < 0 {
		var names []string
		for _, p := range u.Item.Ports {
			names = append(names, p.Name)
		}
		w.fault(r.Place, fmt.Sprintf("%s has no port `%s`", r.Unit, r.Port), "its ports are "+build.InWords(names))
		return nil, false
	}
	return w.graph.Port(u, i), true
}

// jointOf finds the joint of two ports.
func (w *walker) jointOf(at [2]build.PortRef) (*Joint, bool) {
	a, okA := w.nodeOf(at[0])
	b, okB := w.nodeOf(at[1])
	if !okA || !okB {
		return nil, false
	}
	if a.Joint != nil && a.Joint == b.Joint && a != b {
		return a.Joint, true
	}
	w.fault(at[0].Place, fmt.Sprintf("%s and %s are not joined to each other", at[0].Name(), at[1].Name()), w.joinedTo(a)+"; "+w.joinedTo(b)+"; "+goneToo)
	return nil, false
}

func (w *walker) joinedTo(p *Port) string {
	if p.Joint == nil {
		return p.Name() + " is joined to nothing"
	}
	other := &w.graph.Ports[p.Joint.A]
	if other == p {
		other = &w.graph.Ports[p.Joint.B]
	}
	return p.Name() + " is joined to " + other.Name()
}

// weigh judges a joint of which something is known by the readings that are reckoned with.
func (g *Graph) weigh(j *Joint) {
	fit, ok := g.FitOf(j, j.Note.Stands())
	if !ok {
		return
	}
	j.Fit = &fit
	if fit.NothingFits() {
		return
	}
	var worst *threads.Mating
	open := false
	for i := range fit.Pairs {
		p := &fit.Pairs[i]
		if p.Probability < evidence.Reckoned() {
			continue
		}
		if worst != nil && p.Mating.Verdict != worst.Verdict {
			open = true
		}
		if worst == nil || p.Mating.Verdict.Worse(worst.Verdict) {
			worst = &p.Mating
		}
	}
	if worst != nil {
		j.Mating, j.Open, j.Known = *worst, open, true
	}
}

// FitOf is what the two ends of a joint may be together. standing takes it that the joint has
// been made. ok is false where nothing is known of an end.
func (g *Graph) FitOf(j *Joint, standing bool) (fit evidence.Fit, ok bool) {
	a, b := &g.Ports[j.A], &g.Ports[j.B]
	if !Sized(a.Port.End) || !Sized(b.Port.End) {
		return evidence.Fit{}, false
	}
	var turned identify.Turned
	if j.Note != nil {
		turned = j.Note.Turned
	}
	x, y := a.Readings(), b.Readings()
	return evidence.Pairs(&x, &y, standing, turned), true
}

// Readings weighs what a port's end may be: by its words and where it is from, and by what was
// measured of it.
func (n *Port) Readings() evidence.Readings {
	if n.Note != nil {
		return n.Note.Found
	}
	r, err := (&evidence.Known{Words: n.Port.End, Country: n.Port.Origin}).Readings()
	if err != nil {
		return evidence.Even(n.Port.End.Candidates)
	}
	return r
}
