package rule

import (
	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/bom/rating"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// wordsBelow is a strength that a description states, and that is less than what the part sees, where
// its keys or its standard give it more.
type wordsBelow struct {
	unit  *graph.Unit
	item  *build.Item // whose description it is: of a piece of hose perhaps its stock
	text  string
	words string
	holds rating.Allowable  // by its keys or its standard
	said  quantity.Pressure // what it would hold by the words
	seen  quantity.Pressure
}

// findWordsBelow looks at each description once, where its part lacks most. A part that sees more than
// its keys give it is too weak whatever the words are, and one that nothing rates is not cleared.
func findWordsBelow(s *bom.System) []wordsBelow {
	var out []wordsBelow
	at := map[*build.Item]map[string]int{}
	for _, u := range s.Graph.Units {
		for _, it := range describedBy(s, u.Item) {
			for _, w := range it.Worded {
				x, ok := saysLess(s, u, it, w)
				if !ok {
					continue
				}
				if at[it] == nil {
					at[it] = map[string]int{}
				}
				i, had := at[it][w.Words]
				if !had {
					at[it][w.Words] = len(out)
					out = append(out, x)
				} else if x.seen-x.said > out[i].seen-out[i].said {
					out[i] = x
				}
			}
		}
	}
	return out
}

// describedBy lists the items whose descriptions speak of an item: its own, and the stock that it is cut from.
func describedBy(s *bom.System, it *build.Item) []*build.Item {
	if stock, ok := s.Build.Item(it.Of); ok {
		return []*build.Item{it, stock}
	}
	return []*build.Item{it}
}

// saysLess holds one strength in words against each port of a unit.
func saysLess(s *bom.System, u *graph.Unit, of *build.Item, w build.Worded) (x wordsBelow, ok bool) {
	for i := range u.Item.Ports {
		holds, said := s.Ratings.Port(u.First+i), s.Ratings.AsWorded(u.Item, w, i)
		load := s.States.PortLoad(u.First + i)
		seen := max(load.Act, load.Fail) // where there is no bound, that is the finding
		if !holds.Known || !said.Known || seen > holds.Rating.Pressure+pressure.Slack || said.Rating.Pressure >= holds.Rating.Pressure || seen <= said.Rating.Pressure+pressure.Slack {
			continue
		}
		if !ok || seen-said.Rating.Pressure > x.seen-x.said {
			x, ok = wordsBelow{u, of, w.Text, w.Words, holds, said.Rating.Pressure, seen}, true
		}
	}
	return x, ok
}
