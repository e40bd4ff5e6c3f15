package draft

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/money"
	"handtight/bom/rule"
)

// layer lays pieces of later lists into places of a build that stands: where a piece to buy was
// put, where two ends do not join, where two stand open, and at a tee put between two that are
// joined, and what [layer.lines] lays. After each it reads, walks and checks the build again, and keeps
// only what joins as a check judges it and brings no further stop, but for those of [layer.ofItsOwn].
type layer struct {
	sys    *bom.System // with what is laid
	file   string
	text   []byte // the build's own, with the steps that were changed
	parts  []*Part
	used   map[*Part]int
	says   map[*Part][]string
	why    map[*Part]string // why a part was not laid where it came nearest
	hoses  string           // cut for what is laid
	runs   string           // that are added
	bought map[string]bool  // items that a draft put in for what was missing
	taken  map[string]bool
	stops  int
	own    []*Part         // that the build has and that stand nowhere: extra pieces, stock to cut from
	least  int             // what a check finds, weighed
	named  map[string]bool // units that the chain in hand takes
	dry    bool            // only tried: nothing is kept
	tried  map[string]bool

	loose      bool        // further stops are let pass: the rest comes with the next piece
	bringing   *Part       // equipment that is laid in two steps; nil else
	laidVessel *graph.Unit // the last vessel that was laid; nil for none
}

func newLayer(sys *bom.System, text []byte, parts []*Part, taken map[string]bool) *layer {
	l := &layer{sys: sys, file: sys.Build.File, text: text, parts: parts, used: map[*Part]int{}, says: map[*Part][]string{}, why: map[*Part]string{}, taken: taken, tried: map[string]bool{}}
	l.bought = boughtItems(sys.Build, text)
	l.stops, _ = weigh(rule.Check(sys))
	l.own = ownParts(sys.Build)
	return l
}

// weigh counts the stops, and all that a check finds, a caution as ten notes.
func weigh(list []finding.Finding) (stops, all int) {
	stops = finding.Count(list, finding.Stop)
	return stops, stops*1000 + finding.Count(list, finding.Caution)*10 + finding.Count(list, finding.Note)
}

// ownParts are the build's own pieces that stand nowhere and may help to lay what is new.
func ownParts(b *build.Build) []*Part {
	var out []*Part
	for _, it := range b.Items {
		p := &Part{Kind: it.Kind, ID: it.ID, item: it, Pieces: int(it.Extra / money.Piece), own: true}
		switch {
		case p.isStock() && it.Bore != nil:
			p.Says.Bore = *it.Bore
		case p.isStock() && it.Outside != nil:
			p.Says.Bore, p.Says.Outside = *it.Outside, true
		case p.Pieces > 0 && fittingKind(it.Kind) && it.Place.Place().File == b.File: // how many are left is written where it stands, and no included file is changed
		default:
			continue
		}
		out = append(out, p)
	}
	return out
}

// boughtItems finds the items that stand under the heading of what is missing, and the hoses cut
// from them.
func boughtItems(b *build.Build, text []byte) map[string]bool {
	out := map[string]bool{}
	at := 0
	lines := strings.Split(string(text), "\n")
	missing := make([]bool, len(lines))
	for i, row := range lines {
		if strings.HasPrefix(row, "# --- ") {
			at = boolToInt(strings.HasPrefix(row, missingHead))
		}
		missing[i] = at == 1
	}
	for _, it := range b.Items {
		p := it.Place.Place()
		if p.File == b.File && p.Line > 0 && p.Line <= len(lines) && missing[p.Line-1] {
			out[it.ID] = true
		}
	}
	for _, it := range b.Items {
		if out[it.Of] {
			out[it.ID] = true
		}
	}
	return out
}

// missingHead begins the part of a draft that holds what is to buy.
const missingHead = "# --- Missing"

// lay lays what it can, one gap after the other.
func (l *layer) lay() {
	for l.step() || l.vessel() || l.lines() {
	}
	l.takeExtra()
	l.drop()
	l.stopsAt()
}

// stopsAt says of each part that was laid where a check stops at it, once all is laid: a later piece may
// have ended what an earlier one brought.
func (l *layer) stopsAt() {
	for _, f := range rule.Check(l.sys) {
		first, _, _ := strings.Cut(f.Reason, ". ")
		for p, said := range l.says {
			if f.Severity == finding.Stop && len(said) > 0 && strings.Contains(f.Subject.String()+" "+first, p.ID) {
				said[len(said)-1] += "; a check stops at it: " + strings.TrimSuffix(first, ".")
			}
		}
	}
}

func (l *layer) step() bool {
	for _, gaps := range []func() []gap{l.standIns, l.misfits, l.openPairs, l.tees} {
		for _, g := range gaps() {
			key := fmt.Sprint(l.sys.Graph.Ports[g.from].Name(), l.sys.Graph.Ports[g.to].Name(), g.b-g.a, g.hangs != nil)
			if g.part != nil {
				key = "part " + g.part.ID
			}
			if l.tried[key] {
				continue
			}
			if g.part != nil {
				best, ok := l.best(g.part)
				if !ok {
					l.tried[key] = true
					continue
				}
				g = best
			}
			if l.try(&g) {
				l.tried = map[string]bool{}
				return true
			}
			l.tried[key] = true
		}
	}
	return false
}

// try fills a gap, and keeps it where the check of the whole has no further stop. Pieces of a
// chain that the check refuses are not taken there again.
func (l *layer) try(g *gap) bool {
	refused := map[*Part]bool{}
	for range 4 {
		chains, ok := l.solve(g, refused)
		if !ok {
			return false
		}
		next, why := l.put(g, chains)
		if next != nil {
			return true
		}
		if g.part != nil {
			l.why[g.part] = why
		}
		if len(chains[0]) == 0 {
			return false // with no piece to refuse the next trial would be the same
		}
		for _, s := range chains[0] {
			l.why[s.part] = why
			refused[s.part] = true
		}
	}
	return false
}
