package cut

import (
	"cmp"
	"fmt"
	"slices"
)

// Piece is one hose to cut.
type Piece struct {
	Name string
	Long int // mm
}

// Length is one length of hose and what is cut from it, the longest first.
type Length struct {
	Long   int // mm
	Aboard bool
	Pieces []Piece
}

// Waste is what is left of the length, in mm.
func (l *Length) Waste() int { return l.Long - sum(l.Pieces) }

// Plan says which piece is cut from which length.
type Plan struct {
	Lengths []Length // the one aboard first, then the longest; none that nothing is cut from
	Bought  int      // mm
	Proved  bool     // no plan buys less
}

// Waste is what is left of the lengths that are bought, in mm; what is left of one
// aboard was there already.
func (p *Plan) Waste() int {
	left := 0
	for i := range p.Lengths {
		if !p.Lengths[i].Aboard {
			left += p.Lengths[i].Waste()
		}
	}
	return left
}

// TooLongError says that a piece is longer than anything it could be cut from.
type TooLongError struct {
	Piece   Piece
	Longest int // mm; of what is sold and what is aboard
}

func (e *TooLongError) Error() string {
	return fmt.Sprintf("%s is %d mm long, and the longest length is %d mm: buy it by the metre, or in longer lengths", e.Piece.Name, e.Piece.Long, e.Longest)
}

// Limits of what is planned.
const (
	Exact = 16        // pieces up to which the search is complete
	most  = 1_000_000 // mm of a piece or a length: a kilometre
	many  = 10_000    // pieces
)

// check refuses what no shop sells and no boat holds.
func check(pieces []Piece, aboard int, sizes []int) error {
	if len(pieces) > many {
		return fmt.Errorf("%d pieces are more than %d: plan them in parts", len(pieces), many)
	}
	for _, p := range pieces {
		if p.Long <= 0 || p.Long > most {
			return fmt.Errorf("%s is %d mm long: write more than 0 and at most %d mm", p.Name, p.Long, most)
		}
	}
	for _, s := range append([]int{max(aboard, 1)}, sizes...) {
		if s <= 0 || s > most {
			return fmt.Errorf("a length of %d mm: write more than 0 and at most %d mm", s, most)
		}
	}
	if aboard < 0 {
		return fmt.Errorf("%d mm aboard is below zero", aboard)
	}
	return nil
}

// falling gives the pieces from the longest, those of one length by name.
func falling(pieces []Piece) []Piece {
	out := slices.Clone(pieces)
	slices.SortStableFunc(out, func(a, b Piece) int {
		return cmp.Or(cmp.Compare(b.Long, a.Long), cmp.Compare(a.Name, b.Name))
	})
	return out
}

func sum(pieces []Piece) int {
	total := 0
	for _, p := range pieces {
		total += p.Long
	}
	return total
}

// Reel lays pieces out on one length bought by the metre, beside a length aboard.
//
// What is aboard holds as much as it can: the pieces whose lengths together come
// nearest to it from below. Bought is the rest, before it is rounded up to what the
// shop sells.
//
// Errors: more than 10000 pieces; a piece or a length of 0 mm or less, or of more than a kilometre.
func Reel(pieces []Piece, aboard int) (Plan, error) {
	if err := check(pieces, aboard, nil); err != nil {
		return Plan{}, err
	}
	list := falling(pieces)
	held, rest, proved := fill(list, min(aboard, sum(list)))
	p := Plan{Proved: proved, Bought: sum(rest)}
	if len(held) > 0 {
		p.Lengths = append(p.Lengths, Length{Long: aboard, Aboard: true, Pieces: held})
	}
	if len(rest) > 0 {
		p.Lengths = append(p.Lengths, Length{Long: p.Bought, Pieces: rest})
	}
	return p, nil
}

// work bounds how long the filling of a length is thought about.
const work = 200_000_000

// fill chooses the pieces that fill a length best; beyond the bound of work the longest
// that still go in, which is not proved to be best.
func fill(pieces []Piece, room int) (held, rest []Piece, proved bool) {
	in := make([]bool, len(pieces))
	if proved = len(pieces)*room <= work; proved {
		fullest(pieces, room, in)
	} else {
		for i, left := 0, room; i < len(pieces); i++ {
			if in[i] = pieces[i].Long <= left; in[i] {
				left -= pieces[i].Long
			}
		}
	}
	for i, p := range pieces {
		if in[i] {
			held = append(held, p)
		} else {
			rest = append(rest, p)
		}
	}
	return held, rest, proved
}

// fullest marks the pieces whose lengths together come nearest to the room. by[m] is
// the last piece of a choice that comes to m, counted from 1.
func fullest(pieces []Piece, room int, in []bool) {
	by := make([]int32, room+1)
	by[0] = -1
	for i, p := range pieces {
		for m := room; m >= p.Long; m-- {
			if by[m] == 0 && by[m-p.Long] != 0 {
				by[m] = int32(i + 1)
			}
		}
	}
	best := room
	for by[best] == 0 {
		best--
	}
	for m := best; m > 0; {
		i := by[m] - 1
		in[i] = true
		m -= pieces[i].Long
	}
}
