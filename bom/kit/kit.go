// Package kit answers what stays aboard when the build is fitted, how likely it is to
// be without each part all the same, and which spare is worth its money next.
//
// [Of] takes an order and gives a [Kit]; [Kit.Next] ranks what to add. Chances are
// shares of one. They rest on the chance of spoiling and the lives that the build file
// gives, and take parts as independent; a planned change is taken as certain and known.
package kit

import (
	"cmp"
	"slices"

	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/order"
	"handtight/catalog"
)

// Class says what a part is carried for. The zero value is none.
type Class uint8

// The classes, in the order in which they are shown.
const (
	Wear    Class = iota + 1 // it fails at random
	Planned                  // it is changed at an interval
	Spoiled                  // it may be spoiled while it is fitted
	Asked                    // the build file asks for it
	Rest                     // what packs and cut lengths leave over
)

var classNames = [...]string{"", "random wear", "planned change", "spoiled while fitting", "asked for", "left over"}

// String gives the class in words.
func (c Class) String() string { return classNames[c] }

// Part is one thing that stays aboard.
type Part struct {
	Line    *order.Line
	Class   Class
	Aboard  money.Quantity // ordered and had, less what is placed
	Planned money.Quantity // of it for planned changes
	Spare   int            // whole pieces beyond planned changes
	Without float64        // chance that the spares are not enough; see Risk
	Risk    bool           // something is known to befall it
	Fails   float64        // of it, the chance by what fails while it runs
}

// Kit is what stays aboard.
type Kit struct {
	Parts   []*Part       // by class, then in the order of the build
	Without float64       // chance to be without some part while it runs: that of having to turn back
	Fitting float64       // chance to be without some part while it is fitted, at the dock
	Unknown []*build.Item // placed things that wear and have no life stated: no chance has them
	build   *build.Build
}

// Of works out what an order leaves aboard. The lines that only fill an order up are
// not counted.
//
// Errors: those of [order.Risk.Without].
func Of(sys *bom.System, order *order.Order) (*Kit, error) {
	k := &Kit{build: sys.Build, Unknown: lifeless(sys)}
	running, fitting := 1.0, 1.0
	for _, l := range order.Lines {
		if l.Filler {
			continue
		}
		p, err := part(l)
		if err != nil {
			return nil, err
		}
		if p.Class != 0 {
			k.Parts = append(k.Parts, p)
			running *= 1 - p.Fails
			if p.Fails == 0 {
				fitting *= 1 - p.Without
			}
		}
	}
	k.Without, k.Fitting = 1-running, 1-fitting
	slices.SortStableFunc(k.Parts, func(a, b *Part) int { return cmp.Compare(a.Class, b.Class) })
	return k, nil
}

func part(l *order.Line) (*Part, error) {
	n := l.Need
	p := &Part{Line: l, Planned: n.Planned, Risk: n.Risk.Known()}
	p.Aboard = max(0, l.Order+n.Have-n.Placed)
	p.Spare = int(max(0, p.Aboard-p.Planned) / money.Piece)
	if n.Item != nil && n.Item.Kind.Is(catalog.HoseStock) {
		p.Spare = 0
	}
	var err error
	if p.Risk {
		p.Without, err = n.Risk.Without(p.Spare)
	}
	if n.Risk.Mean > 0 && err == nil {
		p.Fails, err = order.Risk{Mean: n.Risk.Mean}.Without(p.Spare)
	}
	switch {
	case n.Risk.Mean > 0:
		p.Class = Wear
	case n.Planned > 0:
		p.Class = Planned
	case p.Risk:
		p.Class = Spoiled
	case n.Extra > 0:
		p.Class = Asked
	case p.Aboard > 0:
		p.Class = Rest
	}
	return p, err
}

// lifeless lists the placed things that wear, by their kind, and of which nobody says how
// long they last.
func lifeless(sys *bom.System) []*build.Item {
	var out []*build.Item
	for _, u := range sys.Graph.Units {
		it := u.Item
		if it.Kind.Spare == catalog.WearSpare && it.Life == nil && it.Fails == nil && !it.Kind.Boats && !slices.Contains(out, it) {
			out = append(out, it)
		}
	}
	return out
}

// Aboard lists the parts of which something stays aboard.
func (k *Kit) Aboard() []*Part {
	return slices.DeleteFunc(slices.Clone(k.Parts), func(p *Part) bool { return p.Aboard == 0 })
}

// Buy is one more pack of a part, and what it does.
type Buy struct {
	Part          *Part
	Pieces        int
	Cost          currency.Amount // with customs and tax, without freight, in the build's currency
	Before, After float64         // chance to be without the part
	PerUnit       float64         // by how much the chance falls for one unit of money
}

// Next ranks what to add: first the pack by which the chance of being without a part
// falls most for its money, then the next with that one aboard, and so on. Parts without
// a price are left out; unpriced counts them.
//
// Errors: those of [money.LandedCost] and of [order.Risk.Without].
func (k *Kit) Next(count int) (list []Buy, unpriced int, err error) {
	var open []*Buy
	for _, p := range k.Parts {
		if !p.Risk {
			continue
		}
		o := p.Line.Offer
		if o == nil || o.Price == nil {
			unpriced++
			continue
		}
		cost, err := k.cost(o)
		if err != nil {
			return nil, 0, err
		}
		if !cost.IsPositive() {
			continue // what costs nothing has no worth for its money
		}
		b := &Buy{Part: p, Pieces: int(o.Pack / money.Piece), Cost: cost}
		if err := b.step(p.Spare, p.Without); err != nil {
			return nil, 0, err
		}
		open = append(open, b)
	}
	extra := map[*Part]int{}
	for len(list) < count && len(open) > 0 {
		best := slices.MaxFunc(open, func(a, b *Buy) int { return cmp.Compare(a.PerUnit, b.PerUnit) })
		if best.PerUnit <= least {
			break
		}
		list = append(list, *best)
		extra[best.Part] += best.Pieces
		if err := best.step(best.Part.Spare+extra[best.Part], best.After); err != nil {
			return nil, 0, err
		}
	}
	return list, unpriced, nil
}

// least is a fall of the chance that is no more than the rounding of binary numbers.
const least = 1e-12

// step works out what one more pack does to a part with so many spares.
func (b *Buy) step(spare int, before float64) (err error) {
	b.Before = before
	if b.After, err = b.Part.Line.Need.Risk.Without(spare + b.Pieces); err != nil {
		return err
	}
	cost, err := amount(b.Cost)
	b.PerUnit = (b.Before - b.After) / cost
	return err
}

// cost lands one more pack that is ordered with the rest.
func (k *Kit) cost(o *build.Offer) (currency.Amount, error) {
	line, err := money.LineTotal(*o.Price, o.Pack)
	if err != nil {
		return currency.Amount{}, err
	}
	terms := o.Vendor.Terms
	sums, err := money.LandedCost([]currency.Amount{line}, money.Terms{Customs: terms.Customs, Tax: terms.Tax})
	if err != nil {
		return currency.Amount{}, err
	}
	return k.build.Rates.Convert(sums.Total)
}
