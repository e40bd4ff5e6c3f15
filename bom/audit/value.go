package audit

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/threads"
	"handtight/threads/evidence"
	"handtight/threads/identify"
)

// branch is one way that looks may have come out, with its chance and what the joint's pairs
// then are.
type branch struct {
	chance float64
	pairs  []evidence.Pair
}

// unsettled is a joint to be measured, with what earlier looks may leave of it.
type unsettled struct {
	joint    *Joint
	branches []branch
}

// group is one end to look at: all units of an item share it.
type group struct {
	port   *build.Port
	name   string // "tail.a"
	item   string
	note   *build.EndNote
	joints []*unsettled
	sides  []bool // of each joint: it is the joint's second end
	taken  bool
}

// look is what may be done with a group: read the mark, and where there is none, measure.
type look struct {
	group *group
	ask   identify.Ask // 0: nothing to measure would tell
	worth float64
	from  float64 // what opening for it costs
}

// measures orders the looks by what they are worth, the best first, reckoned again after each.
// Every group that is open has one, also where it is worth less than it costs: then it says so.
//
// Formula: of one joint, min(P(wrong) C, replace) before, less its mean after the outcomes;
// summed over the joints of the group, less what the look costs. P(wrong) is that of its pairs
// that are wrong where it stands.
func (p *Plan) measures() []look {
	groups := p.groups()
	var out []look
	for range groups {
		var best *look
		for _, g := range groups {
			if g.taken {
				continue
			}
			if l := p.lookAt(g); best == nil || l.worth > best.worth+1e-9 {
				best = &l
			}
		}
		out = append(out, *best)
		best.group.taken = true
		for i, u := range best.group.joints {
			u.branches = observe(u.branches, best.group.sides[i], best.ask)
		}
	}
	slices.SortStableFunc(out, func(a, b look) int { return cmp.Compare(b.worth, a.worth) })
	return out
}

// groups gathers the open ends of the joints to be measured.
func (p *Plan) groups() []*group {
	at := map[*build.Port]*group{}
	var out []*group
	for _, j := range p.In(Measure) {
		u := &unsettled{joint: j, branches: []branch{{1, slices.Clone(j.Belief.Pairs)}}}
		for side, node := range []int{j.Joint.A, j.Joint.B} {
			n := &p.sys.Graph.Ports[node]
			if r := n.Readings(); len(r.Ends()) == 1 && !r.Conflict && n.Port.End.Question == "" {
				continue
			}
			g, ok := at[n.Port]
			if !ok {
				g = &group{port: n.Port, name: n.Unit.Item.ID + "." + n.Port.Name, item: n.Unit.Item.ID, note: n.Note}
				if n.Note != nil {
					g.name = n.Name()
				}
				at[n.Port] = g
				out = append(out, g)
			}
			g.joints, g.sides = append(g.joints, u), append(g.sides, side == 1)
		}
	}
	return out
}

// lookAt is the best that can be done with a group, and what it is worth.
func (p *Plan) lookAt(g *group) look {
	l := look{group: g, from: math.Inf(1)}
	for _, u := range g.joints {
		l.from = min(l.from, opening(u.joint.Joint))
	}
	mark, best := 0.0, 0.0
	for _, a := range identify.Asks() {
		if g.note != nil && g.note.Taken.Asked(a) {
			continue
		}
		worth := 0.0
		for i, u := range g.joints {
			worth += u.gain(g.sides[i], a)
		}
		if worth > best+1e-9 {
			best, l.ask = worth, a
		}
	}
	for i, u := range g.joints {
		mark += u.gain(g.sides[i], 0)
	}
	if l.ask == 0 {
		l.ask = g.tells()
	}
	read := cost("mark")
	l.worth = read*mark - cost("look") + (1-read)*max(0, best-l.from)
	return l
}

// tells is the measurement that best tells right from wrong, whatever that is worth: where a
// leak costs no more than a new part, no look is worth its cost, and yet one is asked for.
func (g *group) tells() identify.Ask {
	best, ask := 1e-3, identify.Ask(0) // bits; below it nothing is told
	for _, a := range identify.Asks() {
		if g.note != nil && g.note.Taken.Asked(a) {
			continue
		}
		bits := 0.0
		for i, u := range g.joints {
			for _, b := range u.branches {
				now, after := u.joint.doubt(b.pairs), 0.0
				for _, o := range outcomes(b.pairs, g.sides[i], a) {
					after += o.chance * u.joint.doubt(o.pairs)
				}
				bits += b.chance * (now - after)
			}
		}
		if bits > best+1e-9 {
			best, ask = bits, a
		}
	}
	return ask
}

// doubt is the entropy of whether the pair is wrong, in bits.
func (x *Joint) doubt(pairs []evidence.Pair) float64 {
	wrong, sum := 0.0, 0.0
	for i := range pairs {
		sum += pairs[i].Probability
		if x.bad(&pairs[i].Mating) {
			wrong += pairs[i].Probability
		}
	}
	if sum == 0 || wrong <= 0 || wrong >= sum {
		return 0
	}
	p := wrong / sum
	return -p*math.Log2(p) - (1-p)*math.Log2(1-p)
}

// gain is how much a look is expected to lower the loss at a joint. Ask 0 is the mark, which
// tells all.
func (u *unsettled) gain(second bool, a identify.Ask) float64 {
	if len(u.branches[0].pairs) == 0 { // nothing is known of an end: whatever is learned is all there is
		c := u.joint.Cost
		change := replacing(u.joint.Joint)
		now := min(u.joint.Belief.Bad*c, change)
		return now - u.joint.Belief.Bad*min(c, change)
	}
	out := 0.0
	for _, b := range u.branches {
		now := u.joint.loss(b.pairs)
		after := 0.0
		for _, o := range outcomes(b.pairs, second, a) {
			after += o.chance * u.joint.loss(o.pairs)
		}
		out += b.chance * (now - after)
	}
	return max(0, out)
}

// loss is the least that can be lost at a joint of such pairs: by leaving it, or by putting a
// right pair in its place.
func (x *Joint) loss(pairs []evidence.Pair) float64 {
	wrong := 0.0
	for i := range pairs {
		if x.bad(&pairs[i].Mating) {
			wrong += pairs[i].Probability
		}
	}
	return min(wrong*x.Cost, replacing(x.Joint))
}

// outcomes is what a look at one end may leave of a joint's pairs, with the chance of each.
func outcomes(pairs []evidence.Pair, second bool, a identify.Ask) []branch {
	type key struct {
		end     threads.End
		outcome int
	}
	at := map[key]int{}
	var out []branch
	add := func(k key, p evidence.Pair, chance float64) {
		i, ok := at[k]
		if !ok {
			i = len(out)
			at[k] = i
			out = append(out, branch{})
		}
		p.Probability *= chance
		out[i].chance += p.Probability
		out[i].pairs = append(out[i].pairs, p)
	}
	for _, p := range pairs {
		end := p.Mating.A
		if second {
			end = p.Mating.B
		}
		if a == 0 || end.Form == nil {
			add(key{end: end}, p, 1)
			continue
		}
		all := identify.Outcomes(a, end.Form, end.Sex)
		keys := make([]int, 0, len(all))
		for o := range all {
			keys = append(keys, o)
		}
		slices.Sort(keys)
		for _, o := range keys {
			add(key{outcome: o}, p, all[o])
		}
	}
	for i := range out {
		for k := range out[i].pairs {
			out[i].pairs[k].Probability /= out[i].chance
		}
	}
	return out
}

// mostBranches bounds what is kept of looks that have many outcomes; the rest is left as it was.
const mostBranches = 500

// observe takes a look into a joint's branches: the mark may be read, else it is measured.
func observe(branches []branch, second bool, a identify.Ask) []branch {
	if len(branches[0].pairs) == 0 || len(branches) > mostBranches {
		return branches
	}
	var out []branch
	add := func(b branch, share float64, list []branch) {
		for _, o := range list {
			if o.chance > 0 {
				out = append(out, branch{b.chance * share * o.chance, o.pairs})
			}
		}
	}
	read := cost("mark")
	for _, b := range branches {
		add(b, read, outcomes(b.pairs, second, 0))
		if a == 0 {
			add(b, 1-read, []branch{{1, b.pairs}})
		} else {
			add(b, 1-read, outcomes(b.pairs, second, a))
		}
	}
	return out
}

// askWords say how each measurement is made.
var askWords = map[identify.Ask]string{
	identify.AskTaper:    "lay a straight edge along the crests: does it taper?",
	identify.AskNose:     "look at its nose or seat: a cone of what angle, a ring, or neither?",
	identify.AskPitch:    "find its pitch with a pitch gauge",
	identify.AskDiameter: "measure across its crests with a calliper, outside of a male and inside of a female",
	identify.AskFlank:    "hold a profile gauge in it against the light: are its flanks at 55 or 60 degrees?",
}

// words say what to do with a look.
func (l *look) words() string {
	g := l.group
	if g.note != nil && g.note.Found.Conflict {
		return fmt.Sprintf("Measure %s again, and read the mark on the part: the words and the figures differ.", g.name)
	}
	text := fmt.Sprintf("Read the mark on %s, or ask who sold it", g.name)
	if units := g.units(); units > 1 {
		text = fmt.Sprintf("Read the mark on one %s at `%s`, or ask who sold it", g.item, g.port.Name)
	}
	if l.ask != 0 {
		text += ". Where none is, open it and " + askWords[l.ask]
	} else if len(g.port.End.Candidates) == 0 {
		text += ". Where none is, open it and measure: its diameter, its pitch and whether it tapers"
	}
	return stop(text) + l.access()
}

// stop ends a sentence that has no end yet.
func stop(text string) string {
	if strings.HasSuffix(text, "?") || strings.HasSuffix(text, ".") {
		return text
	}
	return text + "."
}

// access says where opening is dear.
func (l *look) access() string {
	switch {
	case l.from >= cost("measure")*cost("haul out"):
		return " It can only be opened with the boat ashore: do it at the next haul out."
	case l.from >= cost("measure")*cost("behind"):
		return " It is hard to reach."
	}
	return ""
}

// units is how many units of the item stand in joints that the look decides.
func (g *group) units() int {
	if g.note != nil {
		return 1
	}
	return len(g.joints)
}

// readingsText lists what an end may be, likeliest first.
func readingsText(list []evidence.Reading) string {
	var out []string
	for _, r := range list {
		if r.Probability >= evidence.Reckoned() {
			out = append(out, fmt.Sprintf("%s %s", r.End, percent(r.Probability)))
		}
	}
	return strings.Join(out, ", ")
}

func percent(p float64) string { return fmt.Sprintf("%.0f %%", 100*p) }
