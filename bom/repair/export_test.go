package repair

import (
	"handtight/bom/build"
	"handtight/threads/adapt"
)

// Bag is a build's own items of two known ends alone: what lies in a box aboard.
func Bag(b *build.Build) *Shelf {
	s := &Shelf{pieces: piecesOf(b)}
	s.stock = adapt.New(endsOf(s.pieces))
	return s
}

// Pieces lists what lies on a shelf.
func (s *Shelf) Pieces() []*Piece { return s.pieces }
