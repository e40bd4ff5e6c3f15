package repair

import (
	"cmp"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Item is a piece as an item of a build, to be placed where a chain needs it; place stands in
// for a place in a file, which it has not. A build's own item is that item.
func (p *Piece) Item(b *build.Build, place build.Mark) *build.Item {
	id := p.ID
	if p.Stock {
		id = p.ShortID()
	}
	if it, ok := b.Item(id); ok {
		return it
	}
	it := &build.Item{ID: id, About: p.Words, Material: p.Material, Class: cmp.Or(p.Class, p.machine), Made: p.material, Place: place}
	it.Kind, _ = catalog.KindNamed(p.Kind)
	for i, e := range p.Ends {
		it.Ports = append(it.Ports, portOf(it.Kind, i, e, p.Texts[i], place))
	}
	if rated, err := quantity.ParsePressure(p.Rated); err == nil {
		it.Rated = &rated
	}
	return it
}

// Stand is a generic fitting as an item that stands in the place of another: with its port
// names, and in its own words.
func Stand(s *stock.Item, like *build.Item, id string) *build.Item {
	it := &build.Item{ID: id, Kind: like.Kind, About: s.Words, Material: s.Material, Class: s.Class, Made: catalog.MaterialsIn(s.Material), Place: like.Place}
	for i, e := range s.Ends {
		port := portOf(like.Kind, i, e, s.Texts[i], like.Place)
		port.Name = like.Ports[i].Name
		it.Ports = append(it.Ports, port)
	}
	if rated, err := quantity.ParsePressure(s.Rated); err == nil {
		it.Rated = &rated
	}
	return it
}

func portOf(k *catalog.Kind, i int, e threads.End, text string, place build.Mark) build.Port {
	name := string(rune('a' + i))
	if k != nil && i < len(k.Ports) {
		name = k.Ports[i]
	}
	return build.Port{Name: name, End: threads.EndReading{Candidates: []threads.End{e}}, Said: true, Text: text, Mark: place}
}

// StockID names an item for a generic fitting in a build.
func StockID(s *stock.Item) string {
	r := Remedy{New: s}
	return r.ItemID()
}
