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
	from  *port // nil: at a branch in one of hosts
	to    port
	hosts []int
	rank  int // of its line, in the order of the water
}

// layout lists the places of a plant: what its lines ask to be joined, in the order of the
// water, and those at branches behind their hosts.
func (pl *plant) places() []place {
	var out []place
	of := map[string][]int{} // places by line
	lines := chain().lines(pl.sort)
	for pass := range 2 { // lines with a branch come behind all that may have it
		for i := range lines {
			l := &lines[i]
			if (len(l.Branch) > 0) != (pass == 1) {
				continue
			}
			for _, p := range pl.line(l) {
				if p.from == nil {
					for _, b := range l.Branch {
						p.hosts = append(p.hosts, pl.near(out, of[b], l.Near)...)
					}
				}
				p.rank = i
				of[l.Name] = append(of[l.Name], len(out))
				out = append(out, p)
			}
		}
		if pass == 0 {
			continue
		}
		out = append(out, pl.beside(out, of)...)
	}
	return out
}

// near puts the place before a role first, and the others behind it, the nearest first.
func (pl *plant) near(all []place, list []int, role string) []int {
	out := slices.Clone(list)
	slices.Reverse(out)
	slices.SortStableFunc(out, func(a, b int) int {
		return boolToInt(all[b].to.u.role == role) - boolToInt(all[a].to.u.role == role)
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
				begun = false
			}
			if leave != "" {
				last = &port{u, leave}
			}
		}
	}
	if l.Back && last != nil {
		out = append(out, place{line: l, to: *last})
	}
	return out
}

// beside lists the places of further vessels: their product, and side by side their feed and
// their brine too, each at a branch of the first one's.
func (pl *plant) beside(all []place, of map[string][]int) []place {
	var out []place
	lines := chain().lines(pl.sort)
	for i, u := range pl.units["vessel"] {
		if i == 0 {
			continue
		}
		for k := range lines {
			l := &lines[k]
			port := port{u: u}
			switch {
			case l.Steps[len(l.Steps)-1][0] == "vessel" && pl.layout == "parallel":
				port.name = l.Steps[len(l.Steps)-1][1]
			case l.Steps[0][0] == "vessel" && (pl.layout == "parallel" || l.Steps[0][2] == "product"):
				port.name = l.Steps[0][2]
			default:
				continue
			}
			hosts := of[l.Name]
			if len(hosts) > 0 {
				out = append(out, place{line: l, to: port, hosts: hosts[:1], rank: k})
			}
		}
	}
	return out
}
