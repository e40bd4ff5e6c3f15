package draft

import (
	"slices"
)

// port is one port of a unit.
type port struct {
	u    *unit
	name string
}

func (p port) String() string { return p.u.name() + "." + p.name }

// place is two ports that must be joined, or a port that must be joined to a branch.
type place struct {
	line  *line
	plant int   // which of several
	from  *port // nil: at a branch in one of hosts
	to    port
	hosts []int
	back  bool // it is written against its flow: to the branch
	joins bool // of a further plant: at a branch of the first one's line
	rank  int  // of its line, in the order of the water
}

// places lists the places of all plants, one plant after the other.
func (pl *plant) places() []place {
	var out []place
	var first map[string][]int // of the first plant, by line
	for n, p := range pl.every() {
		base := len(out)
		list, of := p.own(base)
		if n == 0 {
			first = of
		}
		for _, pc := range list {
			pc.plant = n
			pc.rank += n * len(chain().Line)
			if pc.joins {
				pc.hosts = slices.Clone(first[pc.line.Name])
				slices.Reverse(pc.hosts)
			}
			out = append(out, pc)
		}
	}
	return out
}

// own lists the places of one plant: what its lines ask to be joined, in the order of the
// water, and those at branches behind their hosts. They are numbered from base.
func (pl *plant) own(base int) (out []place, of map[string][]int) {
	of = map[string][]int{}
	lines := pl.lines()
	for pass := range 2 { // lines with a branch come behind all that may have it
		for i := range lines {
			l := &lines[i]
			if (len(l.Branch) > 0) != (pass == 1) {
				continue
			}
			list := pl.line(l)
			if l.Shared && pl.nth > 0 && pl.turns.shared {
				list = pl.join(l)
			}
			for _, p := range list {
				if p.from == nil && !p.joins {
					for _, b := range l.Branch {
						p.hosts = append(p.hosts, pl.near(out, base, of[b], l)...)
					}
				}
				p.rank = i
				of[l.Name] = append(of[l.Name], base+len(out))
				out = append(out, p)
			}
		}
	}
	return append(out, pl.beside(of)...), of
}

// join is how a line of a further plant joins that of the first: at a branch, from its first
// part that the plant has of its own or to its last.
func (pl *plant) join(l *line) []place {
	first, last := l.Steps[0], l.Steps[len(l.Steps)-1]
	if units := pl.units[last[0]]; len(units) > 0 && units[0].part != nil {
		return []place{{line: l, joins: true, to: port{units[0], portOf(last[1], units[0].has)}}}
	}
	if units := pl.units[first[0]]; len(units) > 0 && units[0].part != nil {
		return []place{{line: l, joins: true, back: true, to: port{units[0], portOf(first[2], units[0].has)}}}
	}
	return nil
}

// near puts the place before a role first, and the others behind it, the nearest first: from
// the first end of a line whose branches are held there, and else from the last.
func (pl *plant) near(all []place, base int, list []int, l *line) []int {
	out := slices.Clone(list)
	if l.Near != "" || len(list) > 0 && all[list[0]-base].line.Held != "first" {
		slices.Reverse(out)
	}
	slices.SortStableFunc(out, func(a, b int) int {
		return boolToInt(all[b-base].to.u.role == l.Near) - boolToInt(all[a-base].to.u.role == l.Near)
	})
	return out
}

func boolToInt(b bool) int {
	if b {
		return 1
	}
	return 0
}

// line lists the places of one line: between each two of its steps that the plant has.
func (pl *plant) line(l *line) []place {
	var out []place
	var last *port
	begun := len(l.Branch) > 0 && !l.Back
	for _, step := range l.Steps {
		units := pl.units[step[0]]
		if pl.layout == "parallel" && len(units) > 1 && step[0] == "vessel" {
			units = units[:1]
		}
		if step[1] == "" && len(units) > 1 && step[0] == "vessel" && step[2] != "product" {
			units = units[len(units)-1:] // the brine leaves the last of a row
		}
		if step[1] == "" && len(units) > 1 {
			units = units[:1]
		}
		for _, u := range units {
			in, leave := portOf(step[1], u.has), portOf(step[2], u.has)
			if in != "" && (last != nil || begun) {
				out = append(out, place{line: l, from: last, to: port{u, in}})
				begun = len(l.Steps) == 1 && !l.Back // each of a row hangs on a branch of its own
			}
			if leave != "" {
				last = &port{u, leave}
			}
		}
	}
	if l.Back && last != nil {
		out = append(out, place{line: l, to: *last, back: true})
	}
	return out
}

// beside lists the places of further vessels: their product, and side by side their feed and
// their brine too, each at a branch of the first one's.
func (pl *plant) beside(of map[string][]int) []place {
	var out []place
	lines := pl.lines()
	for i, u := range pl.units["vessel"] {
		if i == 0 {
			continue
		}
		for k := range lines {
			l := &lines[k]
			port, back := port{u: u}, l.Steps[0][0] == "vessel"
			switch {
			case l.Steps[len(l.Steps)-1][0] == "vessel" && pl.layout == "parallel":
				port.name = l.Steps[len(l.Steps)-1][1]
			case l.Shared && pl.nth > 0 && pl.turns.shared:
				continue
			case l.Steps[0][0] == "vessel" && (pl.layout == "parallel" || l.Steps[0][2] == "product"):
				port.name = l.Steps[0][2]
			default:
				continue
			}
			hosts := of[l.Name]
			if len(hosts) > 0 {
				out = append(out, place{line: l, to: port, hosts: slices.Clone(hosts[:1]), back: back, rank: k})
			}
		}
	}
	return out
}
