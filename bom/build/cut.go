package build

import (
	"errors"
	"slices"

	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// ErrNoBore says that hose stock has neither a bore nor an outside, so that nothing tells what
// fits into a hose cut from it.
var ErrNoBore = errors.New("the stock says no bore, so nothing tells what fits into the hose")

// bare is what a hose that is cut from stock says itself.
type bare struct {
	rated, vacuum         *quantity.Pressure
	bore, outside, wall   *quantity.Length
	boreText, spec, stuff string
	made                  []*catalog.Material
	ports                 []Port
}

// CutFrom gives a hose that is cut from a stock what the stock has and the hose does not say
// itself, and its ends: its bore, or the outside of a tube. A hose that was cut from another
// stock has nothing of that one any more.
//
// Errors: [ErrNoBore].
func (i *Item) CutFrom(stock *Item) error {
	if b := i.bare; b == nil {
		i.bare = &bare{i.Rated, i.Vacuum, i.Bore, i.Outside, i.Wall, i.BoreText, i.Spec, i.Material, i.Made, i.Ports}
	} else {
		i.Rated, i.Vacuum, i.Bore, i.Outside, i.Wall = b.rated, b.vacuum, b.bore, b.outside, b.wall
		i.BoreText, i.Spec, i.Material, i.Made, i.Ports = b.boreText, b.spec, b.stuff, b.made, b.ports
	}
	i.Of = stock.ID
	orElse(&i.Rated, stock.Rated)
	orElse(&i.Vacuum, stock.Vacuum)
	orElse(&i.Bore, stock.Bore)
	if i.BoreText == "" {
		i.BoreText = stock.BoreText
	}
	orElse(&i.Outside, stock.Outside)
	orElse(&i.Wall, stock.Wall)
	i.Pipe = stock.Class
	if i.Spec == "" {
		i.Spec = stock.Spec
	}
	if i.Material == "" {
		i.Material, i.Made = stock.Material, stock.Made
	}
	if i.Ports[0].Said {
		return nil
	}
	i.Ports = slices.Clone(i.Ports)
	return i.cutEnds()
}

func orElse[T any](v **T, other *T) {
	if *v == nil {
		*v = other
	}
}

// cutEnds are what a cut hose has: a bore to push over a tail, or a tube to push in.
func (i *Item) cutEnds() error {
	var end threads.End
	switch {
	case i.Outside != nil:
		d := threads.Length(i.Outside.Millimetres())
		end = threads.End{Family: threads.Push, Size: i.Outside.String(), Diameter: d, Sex: threads.Male, Plastic: i.plastic()} // which takes an insert under an olive
	case i.Bore != nil:
		d := threads.Length(i.Bore.Millimetres())
		end = threads.End{Family: threads.Bore, Size: i.Bore.String(), Diameter: d}
	default:
		return ErrNoBore
	}
	for k := range i.Ports {
		i.Ports[k].End = threads.EndReading{Words: end.String(), Sex: end.Sex, Candidates: []threads.End{end}}
		i.Ports[k].Said = true
		i.Ports[k].Text = end.String()
	}
	return nil
}

// plastic reports whether an item is made of plastic and nothing else.
func (i *Item) plastic() bool {
	made := i.Made
	return len(made) > 0 && !slices.ContainsFunc(made, func(m *catalog.Material) bool { return m.Group != "plastic" })
}
