package repair

import (
	"cmp"
	"slices"
	"strings"
	"sync"

	"github.com/bojanz/currency"

	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/catalog/stock"
	"handtight/threads/adapt"
)

// Shelf is pieces made ready to search; it does not change. See [WithBuild].
type Shelf struct {
	pieces []*Piece
	stock  *adapt.Stock
	hidden map[*Piece]bool // of the stock, where a build has the same with a price
}

func (p *Piece) hidden(s *Shelf) bool { return s.hidden[p] }

// generic is the generic stock, made once.
var generic = sync.OnceValue(func() *Shelf {
	s := &Shelf{}
	rated := map[string]rating{}
	for _, it := range stock.Items() {
		if len(it.Ends) == 2 {
			s.pieces = append(s.pieces, fromStock(it, rated))
		}
	}
	s.stock = adapt.New(endsOf(s.pieces))
	return s
})

// WithBuild is the generic stock with a build's own items of two known ends beside it, at
// their cheapest offers. An item of the ends, material and class of a generic fitting is that
// fitting, with a price.
func WithBuild(b *build.Build) *Shelf {
	base := generic()
	own := piecesOf(b)
	if len(own) == 0 {
		return base
	}
	s := &Shelf{hidden: map[*Piece]bool{}}
	for _, p := range own {
		for _, twin := range twins()[p.likeness()] {
			s.hidden[twin] = true
			p.Steps, p.Usual = twin.Steps, twin.Usual
			if _, ok := p.Holds(); !ok {
				p.holds, p.known = twin.holds, twin.known // ends may be turned: the lower of both counts
			}
		}
	}
	s.pieces = append(base.pieces[:len(base.pieces):len(base.pieces)], own...)
	s.stock = base.stock.With(endsOf(own))
	return s
}

// twins finds the pieces of the generic stock by their likeness.
var twins = sync.OnceValue(func() map[string][]*Piece {
	out := map[string][]*Piece{}
	for _, p := range generic().pieces {
		key := p.likeness()
		out[key] = append(out[key], p)
	}
	return out
})

// likeness tells which pieces are one and the same fitting of a shop's shelf.
func (p *Piece) likeness() string {
	texts := []string{p.Ends[0].String(), p.Ends[1].String()}
	slices.Sort(texts)
	made := strings.ToLower(p.Material)
	if len(p.material) > 0 {
		made = p.material[0].Name
	}
	return p.Kind + "|" + strings.Join(texts, "|") + "|" + made + "|" + strings.ToLower(p.Class)
}

// alike is how many pieces of one sort are kept, the cheapest: as many as are ever shown.
const alike = MostShown

// piecesOf lists a build's pieces. Of many that differ in their price alone the cheapest are
// kept: no chain that is shown can have another.
func piecesOf(b *build.Build) []*Piece {
	if b == nil {
		return nil
	}
	offers := b.OffersByItem()
	groups := map[string][]*Piece{}
	var keys []string
	for _, it := range b.Items {
		p, ok := fromItem(it)
		if !ok {
			continue
		}
		p.land(b, offers[it.ID])
		key := p.likeness() + "|"
		if r, ok := p.Holds(); ok {
			key += r.Pressure.String() + " " + r.Basis.String()
		}
		if groups[key] == nil {
			keys = append(keys, key)
		}
		groups[key] = append(groups[key], p)
	}
	var out []*Piece
	for _, key := range keys {
		list := groups[key]
		slices.SortStableFunc(list, func(x, y *Piece) int {
			switch {
			case x.Price == nil && y.Price != nil:
				return 1
			case x.Price != nil && y.Price == nil:
				return -1
			}
			return cmp.Or(cmp.Compare(x.price, y.price), cmp.Compare(x.ID, y.ID))
		})
		out = append(out, list[:min(len(list), alike)]...)
	}
	return out
}

// land finds the cheapest offer for one piece, with customs and tax and without freight: that
// is of the whole order. What is sold by the pack is bought by the pack.
func (p *Piece) land(b *build.Build, offers []*build.Offer) {
	for _, o := range offers {
		if o.Price == nil || o.Vendor == nil {
			continue
		}
		goods, err := money.LineTotal(*o.Price, max(o.Pack, money.Piece))
		if err != nil {
			continue
		}
		terms := money.Terms{Customs: o.Vendor.Terms.Customs, Tax: o.Vendor.Terms.Tax}
		sums, err := money.LandedCost([]currency.Amount{goods}, terms)
		if err != nil {
			continue
		}
		here, err := b.Rates.Convert(sums.Total)
		if err != nil {
			continue
		}
		n, err := here.Int64()
		if err != nil {
			continue
		}
		if p.Price == nil || n < p.price {
			p.Price, p.price, p.Shop = &here, n, o.Vendor.Name
		}
	}
}
