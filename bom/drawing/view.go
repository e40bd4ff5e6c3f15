package drawing

import (
	"embed"
	"fmt"
	"html/template"
	"strings"

	"handtight/pressure/quantity"
)

//go:embed template/*.tmpl
var templates embed.FS

// Template holds the templates "picture", of a [View], and "picture-style", its rules of
// style. They escape every name in its place: a name is text, never markup.
func Template() *template.Template {
	return template.Must(template.New("drawing").ParseFS(templates, "template/*.tmpl"))
}

// View is a picture as its template writes it: strings, with every coordinate in units.
type View struct {
	ID, Form, Title, Desc string
	Letter, Width, Height string
	Lines                 []lineView
	Symbols               []symbolView
	Rings                 []ringView
	Arrows                []arrowView
	Texts                 []textView
	Signs                 []signView
}

type lineView struct {
	Class, D, Stroke, Weight, Dash string
	Round                          bool
}

type symbolView struct {
	Place, Name, Arms, Path, Filled, Thick string
	Over                                   bool
}

type ringView struct{ X, Y string }

type arrowView struct{ Class, D, Fill string }

type textView struct {
	Class, X, Y, Anchor, Text, Whole string
	On                               bool // on its line, whose colour it interrupts
	X0, Y0, W, H                     string
}

type signView struct{ Place, Word, Text, D, Down, Link string }

// View makes a picture ready for its template. id sets apart the pictures of one page.
func (p *Picture) View(s *Scheme, id string) *View {
	v := &View{ID: cleanID(id), Form: "wide", Title: p.Title, Desc: p.Desc, Letter: num(letter), Width: num(p.Width), Height: num(p.Height)}
	if p.Width < forms[Wide].width {
		v.Form = "narrow"
	}
	for i := range p.Lines {
		v.line(&p.Lines[i], s, p)
	}
	for i := range p.Symbols {
		v.symbol(&p.Symbols[i], &s.Parts[p.Symbols[i].Part])
	}
	for i := range p.Lines {
		v.joint(&p.Lines[i], &s.Links[p.Lines[i].Link])
	}
	for _, t := range p.Texts {
		v.Texts = append(v.Texts, textView{
			Class: t.Class, X: num(t.At.X), Y: num(t.At.Y), Anchor: t.Anchor, Text: t.Text, Whole: t.Whole, On: strings.HasSuffix(t.Class, " on"),
			X0: num(t.Box.X0), Y0: num(t.Box.Y0), W: num(t.Box.X1 - t.Box.X0), H: num(t.Box.Y1 - t.Box.Y0),
		})
	}
	for _, g := range p.Signs {
		v.sign(g)
	}
	return v
}

func num(a float64) string {
	return quantity.Decimals(a, 1)
}

// cleanID keeps the letters, digits and hyphens of a name.
func cleanID(s string) string {
	out := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' {
			return r
		}
		return -1
	}, s)
	if out == "" || out[0] >= '0' && out[0] <= '9' || out[0] == '-' {
		out = "p" + out
	}
	return out
}

var (
	waterClass = [...]string{"", "sea", "brine", "product", "house"}
	waterColor = [...]string{"#1a1a1a", "#1b6ca8", "#7a4b00", "#0a6b40", "#6a3d9a"}
	waterDash  = [...]string{"", "", "9 4", "2 4", "12 3 2 3"}
)

// weight is the thickness of a line in units.
func (l *Link) weight() float64 {
	switch {
	case l.Dry:
		return 1
	case l.High:
		return 5
	}
	return 2
}

// line draws a line up to its symbols' middles: what they cover of it is hidden. A hose's
// wave covers nothing.
func (v *View) line(l *Line, s *Scheme, pic *Picture) {
	k := &s.Links[l.Link]
	points := l.Points
	for _, part := range []int{k.From, k.To} {
		if s.Parts[part].Symbol.along() {
			continue
		}
		c := pic.Symbols[part].Centre
		if touches(points[0], c) {
			points = append([]Point{c}, points...)
		}
		if touches(points[len(points)-1], c) {
			points = append(points[:len(points):len(points)], c)
		}
	}
	var d strings.Builder
	for i, p := range points {
		step := "L"
		if i == 0 {
			step = "M"
		}
		d.WriteString(step + num(p.X) + " " + num(p.Y))
	}
	out := lineView{Class: waterClass[k.Water], D: d.String(), Stroke: waterColor[k.Water], Weight: num(k.weight()), Dash: waterDash[k.Water]}
	if k.Dry {
		out.Dash = "1 5"
	}
	out.Round = k.Water == Product || k.Dry
	v.Lines = append(v.Lines, out)
}

// touches reports whether a point is the middle of a side of the symbol at c.
func touches(p, c Point) bool { return length(p, c) == half && (p.X == c.X || p.Y == c.Y) }

// joint draws a joint's ring and the arrow of its flow; on a thick line the arrow is light
// with a dark edge, or it would vanish.
func (v *View) joint(l *Line, k *Link) {
	if l.Ring.X < 0 {
		return
	}
	if k.Name != "" && k.Mark.Severity == NoMark {
		v.Rings = append(v.Rings, ringView{num(l.Ring.X), num(l.Ring.Y)})
	}
	if k.Still || k.Dry {
		return
	}
	out := arrowView{Class: "solid", Fill: "#1a1a1a"}
	if k.weight() > 3 {
		out.Class, out.Fill = "mark", "#fff"
	}
	a, t := l.Arrow, l.Ahead
	out.D = fmt.Sprintf("M%s %sL%s %sL%s %sZ", num(a.X+6*t.X), num(a.Y+6*t.Y),
		num(a.X-3*t.X-4.5*t.Y), num(a.Y-3*t.Y+4.5*t.X), num(a.X-3*t.X+4.5*t.Y), num(a.Y-3*t.Y-4.5*t.X))
	v.Arrows = append(v.Arrows, out)
}

const bowTie = "M-16-10V10L16-10V10Z"

func (v *View) symbol(d *Drawn, p *Part) {
	f := shapeOf(p.Symbol)
	out := symbolView{Place: fmt.Sprintf("translate(%s %s)", num(d.Centre.X), num(d.Centre.Y)), Name: p.Name, Path: f.path, Filled: f.filled, Thick: "1.6", Over: p.Over != ""}
	if d.Turned {
		out.Place += " scale(-1 1)"
	}
	if out.Over {
		out.Thick = "3"
	}
	if p.Symbol.meets() {
		out.Arms = arms(d)
	}
	if p.Shut && strings.Contains(f.path, bowTie) {
		out.Filled += bowTie
	}
	v.Symbols = append(v.Symbols, out)
}

// arms are the lines that meet in a tee, on the sides where lines come in.
func arms(d *Drawn) string {
	ends := [4]string{"M0 0H-20", "M0 0H20", "M0 0V-20", "M0 0V20"}
	out := ""
	for k, used := range d.Sides {
		if d.Turned && k < 2 {
			used = d.Sides[1-k]
		}
		if used {
			out += ends[k]
		}
	}
	if out == "" {
		return "M-14 0H14M0 0V-12"
	}
	return out
}

// signs of each severity: an octagon, a triangle, a circle.
var signShape = map[Severity]string{
	Stop:    "M-4.1-9.8H4.1L9.8-4.1V4.1L4.1 9.8H-4.1L-9.8 4.1V-4.1Z",
	Caution: "M0-10L10.5 8.5H-10.5Z",
	Note:    "M-9.5 0a9.5 9.5 0 1 0 19 0a9.5 9.5 0 1 0-19 0Z",
}

func (v *View) sign(g Sign) {
	out := signView{Place: fmt.Sprintf("translate(%s %s)", num(g.At.X), num(g.At.Y)), Text: strings.TrimSuffix(g.Mark.Text, "+"), D: signShape[g.Mark.Severity], Down: "4",
		Word: map[Severity]string{Stop: "stop", Caution: "caution", Note: "note"}[g.Mark.Severity]}
	if strings.HasSuffix(g.Mark.Text, "+") {
		out.Word = "several; the gravest: " + out.Word
	}
	if g.Mark.Severity == Caution {
		out.Down = "6.5"
	}
	if strings.HasPrefix(g.Mark.Link, "#") {
		out.Link = g.Mark.Link
	}
	v.Signs = append(v.Signs, out)
}
