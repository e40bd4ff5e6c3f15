package drawing

import (
	"slices"

	"handtight/bom/graph"
)

// split takes a group of units apart until each part fits a sheet: first into what hangs
// together, then at the joint that leaves the halves most alike, at a hose before others.
func (p *plan) split(set []*graph.Unit) [][]*graph.Unit {
	if len(set) == 0 {
		return nil
	}
	if len(set) <= fullPanel {
		return [][]*graph.Unit{set}
	}
	pieces := p.pieces(set, nil)
	if len(pieces) > 1 {
		return p.packed(pieces)
	}
	a, b, ok := p.halves(set)
	if !ok {
		return [][]*graph.Unit{set}
	}
	return append(p.split(a), p.split(b)...)
}

// packed puts small pieces together on a sheet while they fit.
func (p *plan) packed(pieces [][]*graph.Unit) [][]*graph.Unit {
	var out [][]*graph.Unit
	var sheet []*graph.Unit
	for _, piece := range pieces {
		if len(piece) > fullPanel {
			out = append(out, p.split(piece)...)
			continue
		}
		if len(sheet)+len(piece) > fullPanel {
			out = append(out, sheet)
			sheet = nil
		}
		sheet = append(sheet, piece...)
	}
	if len(sheet) > 0 {
		out = append(out, sheet)
	}
	return out
}

// pieces are the units that hang together within a set, a joint left out.
func (p *plan) pieces(set []*graph.Unit, without *graph.Joint) [][]*graph.Unit {
	in := map[*graph.Unit]int{}
	for _, u := range set {
		in[u] = -1
	}
	var out [][]*graph.Unit
	for _, u := range set {
		if in[u] >= 0 {
			continue
		}
		n := len(out)
		in[u] = n
		queue := []*graph.Unit{u}
		for k := 0; k < len(queue); k++ {
			for i := range queue[k].Item.Ports {
				j := p.sys.Graph.Port(queue[k], i).Joint
				if j == nil || j == without {
					continue
				}
				for _, port := range []int{j.A, j.B} {
					if v := p.sys.Graph.Ports[port].Unit; v != queue[k] {
						if at, ok := in[v]; ok && at < 0 {
							in[v] = n
							queue = append(queue, v)
						}
					}
				}
			}
		}
		slices.SortFunc(queue, func(a, b *graph.Unit) int { return a.First - b.First })
		out = append(out, queue)
	}
	return out
}

// halves cuts a set at one joint.
func (p *plan) halves(set []*graph.Unit) (a, b []*graph.Unit, ok bool) {
	in := map[*graph.Unit]bool{}
	for _, u := range set {
		in[u] = true
	}
	best := 5 // smaller pieces are not worth a sheet
	for _, j := range p.sys.Graph.Joints {
		x, y := p.sys.Graph.Ports[j.A].Unit, p.sys.Graph.Ports[j.B].Unit
		if !in[x] || !in[y] {
			continue
		}
		pieces := p.pieces(set, j)
		if len(pieces) != 2 {
			continue
		}
		worth := min(len(pieces[0]), len(pieces[1]))
		if p.sys.Segments.SegmentOf(j.A) != p.sys.Segments.SegmentOf(j.B) || x.Item.Length != nil || y.Item.Length != nil {
			worth += 2
		}
		if worth > best {
			best, a, b, ok = worth, pieces[0], pieces[1], true
		}
	}
	return a, b, ok
}
