package draft

import (
	"slices"
	"strings"

	"handtight/bom/draft/assign"
	"handtight/bom/repair"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// bought is one piece to buy that stands in a chain.
type bought struct {
	title string // in shop words
	item  string // as a build file has it; "" for a piece of hose
	id    string // of item
	hose  string // "bore" or "outside" of a piece of hose, [madeHose]; "" for a fitting
	size  string // of the piece of hose
	made  fields // of a hose that is made up, without its id and its length
	cut   *cutHose
	from  int    // number of its end that comes first
	note  string // what to mind of it
}

// between lists what to buy between two ends of a line: one piece that [repair.Adapt] knows,
// else the shortest row of generic pieces and hose.
func (s *solved) between(a, b int, l *line, p pressures) []bought {
	x, y := &s.ends.list[a], &s.ends.list[b]
	need := p.low
	if l.Pressure == "high" {
		need = p.high
	}
	sh := shelfFor(l.Pressure == "high")
	row := sh.row(sh.mates(x), sh.mates(y))
	if !slices.ContainsFunc(row, func(st hop) bool { return sh.isHose(st.in) }) && x.boat == "" && y.boat == "" && len(x.readings) > 0 && len(y.readings) > 0 {
		answer := repair.Adapt(threads.EndReading{Candidates: x.readings}, threads.EndReading{Candidates: y.readings},
			repair.Options{Pressure: need, Water: l.Water, Most: max(1, len(row))})
		if len(answer.Chains) > 0 {
			var out []bought
			for _, piece := range answer.Chains[0].Pieces {
				out = append(out, bought{title: piece.Title, item: piece.Paste(need), id: piece.ShortID(), note: strings.Join(answer.Chains[0].Cautions, "; ")})
			}
			return out
		}
	}
	var out []bought
	for _, h := range row {
		out = append(out, sh.piece(h, l, need))
	}
	return out
}

// hop is one piece of a row to buy, by its sorts of end.
type hop struct{ in, out int }

// row finds the shortest row of pieces from one set of sorts to another; nil where there is
// none.
func (s *shelf) row(from, to []int) []hop {
	type seen struct {
		hop  hop
		prev int
	}
	var list []seen
	begun := make([]int, len(s.ends)) // 1 + the hop before it
	now := slices.Clone(from)
	for _, c := range now {
		begun[c] = -1
	}
	left := make([]bool, len(s.ends))
	for range mostBought {
		var next []int
		for _, c := range now {
			for _, o := range s.partners[c] {
				if left[o] {
					continue
				}
				left[o] = true
				list = append(list, seen{hop{c, o}, begun[c]})
				if slices.Contains(to, o) {
					return back(len(list)-1, func(i int) (hop, int) { return list[i].hop, list[i].prev })
				}
				for _, j := range s.joins[o] {
					if begun[j] == 0 {
						begun[j] = len(list)
						next = append(next, j)
					}
				}
			}
		}
		now = next
	}
	return nil
}

func back(at int, get func(int) (hop, int)) []hop {
	var out []hop
	for at >= 0 {
		h, prev := get(at)
		out = append(out, h)
		at = prev - 1
		if prev <= 0 {
			break
		}
	}
	slices.Reverse(out)
	return out
}

// isHose reports whether a sort is the end of a hose or a tube that is cut.
func (s *shelf) isHose(end int) bool {
	e := s.ends[end]
	return e.Family == threads.Bore || e.IsTube()
}

// piece names what to buy for a hop.
func (s *shelf) piece(h hop, l *line, need quantity.Pressure) bought {
	e := s.ends[h.in]
	if s.isHose(h.in) && h.in == h.out {
		if e.Family == threads.Bore {
			return bought{title: "hose of " + e.Size + " bore", hose: "bore", size: e.Size}
		}
		return bought{title: "tube of " + e.Size + " outside", hose: "outside", size: e.Size}
	}
	var best *stock.Item
	for _, it := range stock.Items() {
		if len(it.Ends) != 2 || catalog.IsKind(it.Kind, catalog.Elbow) || l.Water == "sea" && !standsSea(it.Material) {
			continue
		}
		if it.Ends[0] == e && it.Ends[1] == s.ends[h.out] || it.Ends[1] == e && it.Ends[0] == s.ends[h.out] {
			if best == nil || it.Usual < best.Usual {
				best = it
			}
		}
	}
	if best == nil {
		return bought{title: "a piece " + e.String() + " x " + s.ends[h.out].String()}
	}
	return generic(best)
}

// generic writes a generic fitting as an item.
func generic(it *stock.Item) bought {
	var f fields
	b := bought{title: it.Title(), id: idOf(it.ID)}
	names := []string{"a", "b", "branch"}
	var ports []string
	for i, t := range it.Texts {
		ports = append(ports, names[i]+" = "+literal(t))
	}
	f.text("id", b.id)
	f.text("kind", it.Kind)
	f.text("about", it.Words)
	f.add("ports", "{ "+strings.Join(ports, ", ")+" }")
	f.text("material", it.Material)
	f.text("class", it.Class)
	f.text("rated", it.Rated)
	b.item = f.write("item")
	return b
}

// tee is a branch to buy: a generic one of the ends that the place needs, else one described
// by its ends, for a shop to find.
func (s *solved) tee(a, b, side int, l *line) (bought, bool) {
	sh := shelfFor(l.Pressure == "high")
	x, y, z := sh.mates(&s.ends.list[a]), sh.mates(&s.ends.list[b]), sh.mates(&s.ends.list[side])
	if len(x) == 0 || len(y) == 0 || len(z) == 0 {
		return bought{}, false
	}
	in := func(list []int, e threads.End) bool {
		return slices.ContainsFunc(list, func(i int) bool { return sh.ends[i] == e })
	}
	for _, it := range stock.Items() {
		if len(it.Ends) == 3 && standsSea(it.Material) && in(x, it.Ends[0]) && in(y, it.Ends[1]) && in(z, it.Ends[2]) {
			return generic(it), true
		}
	}
	e := []threads.End{sh.usual(x), sh.usual(y), sh.usual(z)}
	var f fields
	out := bought{title: "tee " + e[0].String() + " x " + e[1].String() + ", branch " + e[2].String(), id: idOf("tee " + slugEnd(e[0]) + " " + slugEnd(e[1]) + " " + slugEnd(e[2])), note: "no generic tee has these ends: ask a shop, or make it of two pieces"}
	f.text("id", out.id)
	f.text("kind", catalog.LikelyKinds(len(e))[0])
	f.add("ports", "{ a = "+literal(e[0].String())+", b = "+literal(e[1].String())+", branch = "+literal(e[2].String())+" }")
	out.item = f.write("item")
	return out, true
}

func slugEnd(e threads.End) string { return slug(threads.EndReading{Candidates: []threads.End{e}}) }

// usual is the plainest of sorts of end: without a swivel or a seat of its own.
func (s *shelf) usual(list []int) threads.End {
	for _, i := range list {
		if e := s.ends[i]; !e.Swivel && e.Seal == threads.NoSeal && !e.Plastic && !s.isHose(i) {
			return e
		}
	}
	return s.ends[list[0]]
}

// joinsAt tells how two sorts of end join in a place.
func (s *solved) joinsAt(place int, a, b int) assign.Joint {
	t := &s.problem.Tables[s.problem.Places[place].Table]
	return t.Joints[a*s.problem.Ends+b]
}
