package drawing

import "fmt"

// Bars is rows of bars on one scale, each with a mark where a limit stands.
type Bars struct {
	Title, Desc string
	Rows        []Bar
}

// Bar is one row. Mark is a limit on the same scale, 0 for none; Text stands beside the bar.
type Bar struct {
	Name        string
	Value, Mark float64
	Over        bool   // beyond its limit: said by a word, and by a thicker edge
	Text        string // "58 bar, holds 83"
}

// BarsView is bars as their template writes them.
type BarsView struct {
	ID, Title, Desc, Height string
	Rows                    []barView
}

type barView struct {
	NameY, Y, TextY, Width, MarkX, Name, Whole, Text, Edge string
}

// View lays bars out, each row with its name above it. ok is false without a row that has a
// length.
func (b *Bars) View(id string) (v *BarsView, ok bool) {
	top := 0.0
	for _, r := range b.Rows {
		top = max(top, r.Value, r.Mark)
	}
	if top <= 0 {
		return nil, false
	}
	const row, left, wide = 46.0, 6.0, 308.0
	v = &BarsView{ID: cleanID(id), Title: b.Title, Desc: b.Desc, Height: num(float64(len(b.Rows))*row + 6)}
	for i, r := range b.Rows {
		y := float64(i) * row
		out := barView{NameY: num(y + 14), Y: num(y + 19), TextY: num(y + 41), Width: num(r.Value / top * wide), Name: shorten(r.Name, wide-24), Whole: r.Name, Text: r.Text, Edge: "1"}
		if r.Mark > 0 {
			out.MarkX = num(left + r.Mark/top*wide)
		}
		if r.Over {
			out.Edge = "3"
			out.Text = fmt.Sprintf("OVER: %s", r.Text)
		}
		v.Rows = append(v.Rows, out)
	}
	return v, true
}
