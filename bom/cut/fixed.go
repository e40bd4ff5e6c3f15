package cut

import (
	"cmp"
	"slices"
)

// steps bounds the search for fixed lengths.
const steps = 300_000

// Fixed packs pieces into fixed lengths of the given sizes, of which the shop has any
// number, beside a length aboard (0 for none), so that the least length is bought.
//
// Errors: *[TooLongError] for a piece that nothing holds; no size at all; more than
// 10000 pieces; a piece or a length of 0 mm or less, or of more than a kilometre.
func Fixed(pieces []Piece, aboard int, sizes []int) (Plan, error) {
	if err := check(pieces, aboard, sizes); err != nil {
		return Plan{}, err
	}
	s := &search{pieces: falling(pieces), sizes: slices.Clone(sizes)}
	slices.Sort(s.sizes)
	s.sizes = slices.Compact(s.sizes)
	longest := aboard
	if len(s.sizes) > 0 {
		longest = max(longest, s.sizes[len(s.sizes)-1])
	}
	if len(s.pieces) > 0 && s.pieces[0].Long > longest {
		return Plan{}, &TooLongError{s.pieces[0], longest}
	}
	if aboard > 0 {
		s.bins = append(s.bins, bin{long: aboard, room: aboard, aboard: true})
	}
	if !s.firstFit() && len(s.sizes) == 0 {
		return Plan{}, &TooLongError{s.pieces[0], longest}
	}
	least := roundUp(max(0, sum(pieces)-aboard), s.step())
	if s.best.bought > least && len(pieces) <= Exact {
		s.rest = make([]int, len(s.pieces)+1)
		for i := len(s.pieces) - 1; i >= 0; i-- {
			s.rest[i] = s.rest[i+1] + s.pieces[i].Long
		}
		s.place(0, 0)
		s.best.proved = s.left < steps
	}
	return s.plan(s.best.proved || s.best.bought == least), nil
}

// bin is a length that pieces are put into.
type bin struct {
	long, room int
	aboard     bool
	pieces     []int
}

// packing is a way of cutting all pieces.
type packing struct {
	bins   []bin
	bought int
	proved bool
}

type search struct {
	pieces []Piece
	sizes  []int // rising
	bins   []bin // of the packing that is being made
	rest   []int // mm of the pieces from each on
	best   packing
	left   int // steps done
}

// step is what every total of lengths is a multiple of.
func (s *search) step() int {
	g := 0
	for _, size := range s.sizes {
		for a := size; a != 0; {
			g, a = a, g%a
		}
	}
	return max(g, 1)
}

func roundUp(n, step int) int { return (n + step - 1) / step * step }

// firstFit makes the first packing for each size of new lengths, each new length then
// shortened to the least that holds its pieces, and keeps the one that buys least.
func (s *search) firstFit() bool {
	found := false
	for _, size := range s.sizes {
		bins, ok := s.fit(size)
		if !ok {
			continue
		}
		bought := 0
		for i := range bins {
			if b := &bins[i]; !b.aboard {
				used := b.long - b.room
				b.long = s.sizes[slices.IndexFunc(s.sizes, func(n int) bool { return n >= used })]
				b.room = b.long - used
				bought += b.long
			}
		}
		if !found || better(bought, len(bins), s.best) {
			s.best, found = packing{bins: bins, bought: bought}, true
		}
	}
	if bins, ok := s.fit(0); ok {
		s.best, found = packing{bins: bins}, true // all of it is aboard
	}
	return found
}

// fit puts each piece into the first length that holds it, or into a new one; false if
// a piece does not go into a new one.
func (s *search) fit(size int) ([]bin, bool) {
	bins := cloned(s.bins)
	for i, p := range s.pieces {
		at := slices.IndexFunc(bins, func(b bin) bool { return b.room >= p.Long })
		if at < 0 {
			if p.Long > size {
				return nil, false
			}
			bins, at = append(bins, bin{long: size, room: size}), len(bins)
		}
		bins[at].room -= p.Long
		bins[at].pieces = append(bins[at].pieces, i)
	}
	return bins, true
}

func better(bought, bins int, than packing) bool {
	return bought < than.bought || bought == than.bought && bins < len(than.bins)
}

// place puts piece i and all after it, every way that could be better than the best.
func (s *search) place(i, bought int) {
	if s.left++; s.left >= steps {
		return
	}
	if i == len(s.pieces) {
		if better(bought, len(s.bins), s.best) {
			s.best = packing{bins: cloned(s.bins), bought: bought}
		}
		return
	}
	free := 0
	for _, b := range s.bins {
		free += b.room
	}
	least := bought + roundUp(max(0, s.rest[i]-free), s.step())
	if least >= s.best.bought {
		return
	}
	s.into(i, bought)
	for _, size := range s.sizes {
		if size >= s.pieces[i].Long {
			s.bins = append(s.bins, bin{long: size, room: size - s.pieces[i].Long, pieces: []int{i}})
			s.place(i+1, bought+size)
			s.bins = s.bins[:len(s.bins)-1]
		}
	}
}

// into tries the lengths that are begun, one of each room.
func (s *search) into(i, bought int) {
	need := s.pieces[i].Long
	for k := range s.bins {
		room := s.bins[k].room
		if room < need || slices.ContainsFunc(s.bins[:k], func(b bin) bool { return b.room == room }) {
			continue
		}
		s.bins[k].room -= need
		s.bins[k].pieces = append(s.bins[k].pieces, i)
		s.place(i+1, bought)
		s.bins[k].room += need
		s.bins[k].pieces = s.bins[k].pieces[:len(s.bins[k].pieces)-1]
	}
}

func cloned(bins []bin) []bin {
	out := slices.Clone(bins)
	for i := range out {
		out[i].pieces = slices.Clone(out[i].pieces)
	}
	return out
}

// plan turns the best packing into words.
func (s *search) plan(proved bool) Plan {
	p := Plan{Bought: s.best.bought, Proved: proved}
	for _, b := range s.best.bins {
		if len(b.pieces) == 0 {
			continue
		}
		l := Length{Long: b.long, Aboard: b.aboard}
		for _, i := range b.pieces {
			l.Pieces = append(l.Pieces, s.pieces[i])
		}
		p.Lengths = append(p.Lengths, l)
	}
	slices.SortStableFunc(p.Lengths, func(a, b Length) int {
		if a.Aboard != b.Aboard {
			return cmp.Compare(aboardFirst(a), aboardFirst(b))
		}
		return cmp.Compare(b.Long, a.Long)
	})
	return p
}

func aboardFirst(l Length) int {
	if l.Aboard {
		return 0
	}
	return 1
}
