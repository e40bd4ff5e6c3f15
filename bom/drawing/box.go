package drawing

// Box is a rectangle on the sheet, in units; Y grows downward.
type Box struct{ X0, Y0, X1, Y1 float64 }

// Meets reports whether two boxes share more than an edge.
func (b Box) Meets(o Box) bool { return b.X0 < o.X1 && o.X0 < b.X1 && b.Y0 < o.Y1 && o.Y0 < b.Y1 }

func (b Box) grow(by float64) Box { return Box{b.X0 - by, b.Y0 - by, b.X1 + by, b.Y1 + by} }

// inside reports whether b lies within o.
func (b Box) inside(o Box) bool { return b.X0 >= o.X0 && b.Y0 >= o.Y0 && b.X1 <= o.X1 && b.Y1 <= o.Y1 }

// Point is a place on the sheet.
type Point struct{ X, Y float64 }

// stroke is the box of a piece of line, with the room that it needs.
func stroke(a, b Point, room float64) Box {
	return Box{min(a.X, b.X), min(a.Y, b.Y), max(a.X, b.X), max(a.Y, b.Y)}.grow(room)
}
