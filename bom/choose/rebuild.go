package choose

import (
	"maps"
	"slices"

	"handtight/bom/build"
	"handtight/bom/repair"
)

// Fitted is a joint that does not close as it is, and what is put into it.
type Fitted struct {
	Joint string // of the build as it was
	Chain *repair.Chain
}

// rebuild makes the build of a way: items put in the place of others, chains where two ends do
// not join, and every part passed by the ports that stand where its ports stood.
//
// Errors: those of [build.Build.Swap].
func (s *space) rebuild(way []int) (*build.Build, []Fitted, error) {
	base := *s.sys.Build
	base.ByID, base.Items = maps.Clone(base.ByID), slices.Clone(base.Items)
	know := func(it *build.Item) {
		if base.ByID[it.ID] == nil {
			base.ByID[it.ID], base.Items = it, append(base.Items, it)
		}
	}
	swaps := map[string]string{}
	for i, x := range way {
		v := s.vars[i]
		know(v.choices[x].item)
		if v.unit == nil && v.choices[x].item != v.item {
			swaps[v.item.ID] = v.choices[x].item.ID
		}
	}
	out, err := base.Swap(swaps)
	if err != nil {
		return nil, nil, err
	}
	var fitted []Fitted
	joint := 0
	for _, run := range out.Runs {
		var steps []build.Step
		for k := range run.Steps {
			step := run.Steps[k]
			last := k == len(run.Steps)-1
			step.Entry, step.Exit = "", ""
			if k > 0 {
				j := s.sys.Graph.Joints[joint]
				joint++
				if l := s.join(j, s.taken(way, j.A), s.taken(way, j.B)); l.chain != nil {
					fitted = append(fitted, Fitted{s.sys.Graph.JointName(j), l.chain})
					steps = append(steps, chainSteps(out, l.chain, step.Place)...)
				}
				s.pass(&step, &step.Entry, j.B, way, out)
			}
			if !last {
				s.pass(&step, &step.Exit, s.sys.Graph.Joints[joint].A, way, out)
			}
			steps = append(steps, step)
		}
		run.Steps = steps
	}
	return out, fitted, nil
}

// taken is the choice of the variable that stands at a node; 0 where none does.
func (s *space) taken(way []int, node int) int {
	if v := s.unit[s.sys.Graph.Ports[node].Unit]; v >= 0 {
		return way[v]
	}
	return 0
}

// pass names the port by which a step is entered or left, and takes a unit's own choice.
func (s *space) pass(step *build.Step, port *string, node int, way []int, b *build.Build) {
	n := &s.sys.Graph.Ports[node]
	if p := s.end(node, s.taken(way, node)); p != nil {
		*port = p.Name
	}
	v := s.unit[n.Unit]
	if v < 0 || s.vars[v].unit == nil {
		return
	}
	if it := b.ByID[s.vars[v].choices[way[v]].item.ID]; it != step.Item {
		step.Text = it.ID + step.Text[min(len(step.Text), len(step.Item.ID)):]
		step.Item = it
	}
}

// chainSteps are a chain's pieces as steps of a run; the pieces become items of the build.
func chainSteps(b *build.Build, c *repair.Chain, place build.Mark) []build.Step {
	var out []build.Step
	for i, p := range c.Pieces {
		it := p.Item(b, place)
		if b.ByID[it.ID] == nil {
			b.ByID[it.ID], b.Items = it, append(b.Items, it)
		}
		in, leave := 0, 1
		if c.Turned[i] {
			in, leave = 1, 0
		}
		out = append(out, build.Step{Text: it.ID + "/+", Item: it, Label: "+", Entry: it.Ports[in].Name, Exit: it.Ports[leave].Name, Place: place})
	}
	return out
}
