package drawing

import "slices"

// net is the scheme's graph.
type net struct {
	s     *Scheme
	links [][]int // by part: its links, in the scheme's order
}

func newNet(s *Scheme) *net {
	n := &net{s: s, links: make([][]int, len(s.Parts))}
	for i, l := range s.Links {
		n.links[l.From] = append(n.links[l.From], i)
		if l.To != l.From {
			n.links[l.To] = append(n.links[l.To], i)
		}
	}
	return n
}

// other is the part at the far end of a link.
func (n *net) other(link, part int) int {
	if l := &n.s.Links[link]; l.From != part {
		return l.From
	}
	return n.s.Links[link].To
}

// chain is parts in a line; what it hangs on, if anything does.
type chain struct {
	parts  []int
	anchor int // the placed part that its first part is joined to; -1: none
}

// chains takes the scheme apart: for each plant on the sheet its main chain, then the
// longest that hangs on what is taken, until nothing is left. Chains of one or two parts
// come first among those that hang: they take the place straight above or below.
func (n *net) chains() [][]chain {
	taken := make([]bool, len(n.s.Parts))
	var plants [][]chain
	for {
		start := n.start(taken)
		if start < 0 {
			return plants
		}
		main := chain{parts: n.longest(start, taken), anchor: -1}
		plant := []chain{main}
		take(taken, main.parts)
		for {
			next, ok := n.hanging(taken)
			if !ok {
				break
			}
			plant = append(plant, next)
			take(taken, next.parts)
		}
		plants = append(plants, plant)
	}
}

func take(taken []bool, parts []int) {
	for _, p := range parts {
		taken[p] = true
	}
}

// start is where a main chain begins: a source if one is left, else a part of one link,
// else the first; of like ones that with the longest chain.
func (n *net) start(taken []bool) int {
	best, bestRank, bestLength := -1, 0, 0
	for p := range n.s.Parts {
		if taken[p] {
			continue
		}
		rank := 1
		switch {
		case n.s.Parts[p].Source:
			rank = 4
		case len(n.links[p]) == 1 && n.s.Links[n.links[p][0]].From == p:
			rank = 3 // where the flow begins on this sheet
		case len(n.links[p]) <= 1:
			rank = 2
		}
		if rank < bestRank {
			continue
		}
		if length := n.worth(n.longest(p, taken)); rank > bestRank || length > bestLength {
			best, bestRank, bestLength = p, rank, length
		}
	}
	return best
}

// longest is the longest chain from a part over what is not taken: along the flow as
// long as that leads on, and against it at a higher price. Exact on a tree; where ways
// join, it is the longest of a breadth-first tree.
func (n *net) longest(from int, taken []bool) []int {
	prev := map[int]int{from: -1}
	weight := map[int]int{from: 0}
	queue, far := []int{from}, from
	for len(queue) > 0 {
		p := queue[0]
		queue = queue[1:]
		for _, l := range n.links[p] {
			q := n.other(l, p)
			if _, seen := prev[q]; seen || taken[q] || n.s.Links[l].Back {
				continue
			}
			prev[q] = p
			weight[q] = weight[p] + n.step(l, p)
			if weight[q] > weight[far] {
				far = q
			}
			queue = append(queue, q)
		}
	}
	var out []int
	for p := far; p >= 0; p = prev[p] {
		out = append(out, p)
	}
	slices.Reverse(out)
	return out
}

// worth is the weight of a chain's links: of like lengths, the thicker is the spine.
func (n *net) worth(parts []int) int {
	sum := 1
	for i := 1; i < len(parts); i++ {
		for _, l := range n.links[parts[i-1]] {
			if n.other(l, parts[i-1]) == parts[i] {
				sum += n.step(l, parts[i-1])
				break
			}
		}
	}
	return sum
}

// step weighs a link on a chain: a thick line is the plant's spine, and a line against
// the flow is no good continuation of one along it.
func (n *net) step(link, from int) int {
	l := &n.s.Links[link]
	w := 4
	if l.High {
		w += 3
	}
	if l.From != from {
		return 1
	}
	return w
}

// hanging is the next chain that hangs on what is taken: the shortest first while it is a
// spur of at most two parts, then the longest.
func (n *net) hanging(taken []bool) (chain, bool) {
	var spur, long chain
	for p := range n.s.Parts {
		if taken[p] {
			continue
		}
		anchor := -1
		for _, l := range n.links[p] {
			if q := n.other(l, p); taken[q] && !n.s.Links[l].Back {
				anchor = q
				break
			}
		}
		if anchor < 0 {
			continue
		}
		c := chain{parts: n.longest(p, taken), anchor: anchor}
		if len(c.parts) <= 2 && spur.parts == nil {
			spur = c
		}
		if len(c.parts) > len(long.parts) {
			long = c
		}
	}
	if spur.parts != nil {
		return spur, true
	}
	if long.parts != nil {
		return long, true
	}
	// what only a line that leads back joins still hangs together
	for p := range n.s.Parts {
		if taken[p] {
			continue
		}
		for _, l := range n.links[p] {
			if q := n.other(l, p); taken[q] {
				return chain{parts: n.longest(p, taken), anchor: q}, true
			}
		}
	}
	return chain{}, false
}
