package order

import (
	"cmp"
	"fmt"
	"slices"

	"github.com/bojanz/currency"

	"handtight/bom/build"
	"handtight/bom/money"
)

// Share is how much of one thing is ordered at one offer, in whole packs.
type Share struct {
	Offer *build.Offer
	Order money.Quantity
}

// divided makes the line of a need that is ordered at several offers: each share is a line of
// its own, with its part of the need, the largest first. Packs that the others leave nothing for are dropped.
func divided(n *Need, shares []Share) (*Line, error) {
	whole := &Line{Need: n}
	rest := *n
	shares = slices.Clone(shares)
	slices.SortStableFunc(shares, func(a, b Share) int { return cmp.Compare(b.Order, a.Order) })
	for i, s := range shares {
		due := min(s.Order, rest.Buy())
		if due <= 0 {
			continue
		}
		part := rest
		if i < len(shares)-1 {
			part = rest.takeOff(due)
		}
		l, ok, err := LineAt(&part, s.Offer)
		if err != nil {
			return nil, err
		}
		if !ok || l.Total == nil {
			return nil, fmt.Errorf("%s: an offer without a price takes no share", n.Key)
		}
		l.Of = whole
		whole.Order += l.Order
		whole.Shares = append(whole.Shares, l)
		if i == len(shares)-1 {
			break
		}
	}
	if len(whole.Shares) == 1 {
		whole.Shares[0].Of = nil
		return whole.Shares[0], nil
	}
	if err := whole.mark(); err != nil {
		return nil, err
	}
	whole.Offer = whole.Shares[0].Offer
	return whole, nil
}

// mark tells shares at one shop apart. The one whose offer would be the cheapest for the whole
// has no mark: it is the line as it stood before it was divided.
func (l *Line) mark() error {
	plain := map[*build.Vendor]*Line{}
	whole := map[*build.Vendor]currency.Amount{}
	for _, s := range l.Shares {
		v := s.Offer.Vendor
		all, _, err := LineAt(l.Need, s.Offer)
		if err != nil {
			return err
		}
		if plain[v] == nil || less(*all.Total, whole[v]) {
			plain[v], whole[v] = s, *all.Total
		}
	}
	taken := map[string]bool{}
	for _, s := range l.Shares {
		if plain[s.Offer.Vendor] == s {
			continue
		}
		s.Mark = s.Offer.Code
		if s.Mark == "" {
			s.Mark = "pack of " + s.Offer.Pack.String()
		}
		for taken[s.Offer.Vendor.ID+"\x00"+s.Mark] {
			s.Mark += " again"
		}
		taken[s.Offer.Vendor.ID+"\x00"+s.Mark] = true
	}
	return nil
}

// takeOff splits so much to buy off a need: what is aboard and what is placed go first, then
// planned changes, what is asked for, and spares last.
func (n *Need) takeOff(due money.Quantity) Need {
	part := *n
	left := due + n.Have
	for _, q := range []struct{ of, to *money.Quantity }{
		{&n.Placed, &part.Placed}, {&n.Planned, &part.Planned}, {&n.Extra, &part.Extra}, {&n.Spare, &part.Spare},
	} {
		*q.to = min(*q.of, left)
		*q.of -= *q.to
		left -= *q.to
	}
	n.Have = 0
	return part
}

// Bought lists the lines as they are ordered: of a line that is divided its shares.
func (o *Order) Bought() []*Line {
	var out []*Line
	for _, l := range o.Lines {
		out = append(out, l.bought()...)
	}
	return out
}

func (l *Line) bought() []*Line {
	if len(l.Shares) > 0 {
		return l.Shares
	}
	return []*Line{l}
}

// Number is which share of a divided line this is, from 1, and of how many; false for a line
// that is bought whole.
func (l *Line) Number() (share, shares int, ok bool) {
	if l.Of == nil {
		return 0, 0, false
	}
	return slices.Index(l.Of.Shares, l) + 1, len(l.Of.Shares), true
}
