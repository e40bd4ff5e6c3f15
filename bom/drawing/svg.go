package drawing

import (
	"fmt"
	"html"
	"strconv"
	"strings"
)

// SVG writes a picture as one self-contained element. Every name in it is text, never
// markup; id sets apart the pictures of one page (letters, digits and hyphens). Shapes
// carry presentation attributes as well as classes, since some viewers drop styles.
func (p *Picture) SVG(s *Scheme, id string) string {
	w := &pen{id: cleanID(id)}
	w.add(`<svg xmlns="http://www.w3.org/2000/svg" id="%s" class="plant" role="img" aria-labelledby="%s-t %s-d" width="%s" height="%s" viewBox="0 0 %s %s">`,
		w.id, w.id, w.id, num(p.Width), num(p.Height), num(p.Width), num(p.Height))
	w.add(`<title id="%s-t">%s</title><desc id="%s-d">%s</desc>`, w.id, esc(p.Title), w.id, esc(p.Desc))
	w.add("<style>%s</style>", strings.ReplaceAll(style, "#id", "#"+w.id))
	w.add(`<g aria-hidden="true" font-family="Arial, Helvetica, 'Liberation Sans', sans-serif" font-size="%s">`, num(letter))
	for i := range p.Lines {
		w.line(&p.Lines[i], s, p)
	}
	for i := range p.Symbols {
		w.symbol(&p.Symbols[i], &s.Parts[p.Symbols[i].Part])
	}
	for i := range p.Lines {
		w.joint(&p.Lines[i], &s.Links[p.Lines[i].Link])
	}
	for i := range p.Texts {
		w.text(&p.Texts[i])
	}
	w.add("</g>")
	for _, g := range p.Signs {
		w.sign(g)
	}
	w.add("</svg>\n")
	return w.b.String()
}

// style is the picture's own: colours by variables, so that dark and print redefine them.
// Meaning never hangs on colour alone: water is also a dash pattern, pressure a weight,
// severity a shape and its letter.
const style = `#id{--ink:#1a1a1a;--ground:#fff;--sea:#1b6ca8;--brine:#7a4b00;--product:#0a6b40;--house:#6a3d9a;--soft:#555}
@media (prefers-color-scheme:dark){#id{--ink:#f2f2f2;--ground:#16181a;--sea:#7db8e8;--brine:#e0b060;--product:#6fd09f;--house:#c3a5ec;--soft:#b8b8b8}}
@media print{#id{--ink:#000;--ground:#fff;--sea:#1b6ca8;--brine:#7a4b00;--product:#0a6b40;--house:#6a3d9a;--soft:#333}}
#id{max-width:100%;height:auto;background:var(--ground)}
#id .line{fill:none;stroke:var(--ink)}#id .sea{stroke:var(--sea)}#id .brine{stroke:var(--brine)}#id .product{stroke:var(--product)}#id .house{stroke:var(--house)}
#id .shape{fill:var(--ground);stroke:var(--ink)}#id .solid{fill:var(--ink);stroke:var(--ink)}
#id text{fill:var(--ink)}#id .note,#id .size,#id .along{fill:var(--soft)}#id .joint,#id .over{font-weight:bold}
#id .ground{fill:var(--ground);stroke:none}#id .mark{fill:var(--ground);stroke:var(--ink)}#id .ring{fill:var(--ground);stroke:var(--ink)}`

type pen struct {
	b  strings.Builder
	id string
}

func (w *pen) add(format string, args ...any) { fmt.Fprintf(&w.b, format, args...) }

func esc(s string) string { return html.EscapeString(s) }

func num(a float64) string {
	return strconv.FormatFloat(float64(int(a*10+signed(a)*0.5))/10, 'f', -1, 64)
}

func signed(a float64) float64 {
	if a < 0 {
		return -1
	}
	return 1
}

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
func (w *pen) line(l *Line, s *Scheme, pic *Picture) {
	k := &s.Links[l.Link]
	points := l.Points
	for _, part := range []int{k.From, k.To} {
		if sym := s.Parts[part].Symbol; sym == "hose" || sym == "hose stock" {
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
		letter := "L"
		if i == 0 {
			letter = "M"
		}
		d.WriteString(letter + num(p.X) + " " + num(p.Y))
	}
	dash := waterDash[k.Water]
	if k.Dry {
		dash = "1 5"
	}
	w.add(`<path class="line %s" d="%s" fill="none" stroke="%s" stroke-width="%s"`, waterClass[k.Water], d.String(), waterColor[k.Water], num(k.weight()))
	if dash != "" {
		w.add(` stroke-dasharray="%s"`, dash)
	}
	if k.Water == Product || k.Dry {
		w.add(` stroke-linecap="round"`)
	}
	w.add("/>\n")
}

// touches reports whether a point is the middle of a side of the symbol at c.
func touches(p, c Point) bool { return length(p, c) == half && (p.X == c.X || p.Y == c.Y) }

// joint draws a joint's ring and the arrow of its flow; on a thick line the arrow is light
// with a dark edge, or it would vanish.
func (w *pen) joint(l *Line, k *Link) {
	if l.Ring.X < 0 {
		return
	}
	if k.Name != "" && k.Mark.Severity == NoMark {
		w.add(`<circle class="ring" cx="%s" cy="%s" r="3.2" fill="#fff" stroke="#1a1a1a" stroke-width="1.4"/>`, num(l.Ring.X), num(l.Ring.Y))
	}
	if k.Still || k.Dry {
		return
	}
	class, fill := "solid", "#1a1a1a"
	if k.weight() > 3 {
		class, fill = "mark", "#fff"
	}
	a, t := l.Arrow, l.Ahead
	tip := Point{a.X + 6*t.X, a.Y + 6*t.Y}
	w.add(`<path class="%s" d="M%s %sL%s %sL%s %sZ" fill="%s" stroke="#1a1a1a" stroke-width="1"/>`+"\n", class, num(tip.X), num(tip.Y),
		num(a.X-3*t.X-4.5*t.Y), num(a.Y-3*t.Y+4.5*t.X), num(a.X-3*t.X+4.5*t.Y), num(a.Y-3*t.Y-4.5*t.X), fill)
}

func (w *pen) symbol(d *Drawn, p *Part) {
	f := shapeOf(p.Symbol)
	turn := ""
	if d.Turned {
		turn = " scale(-1 1)"
	}
	w.add(`<g transform="translate(%s %s)%s"><title>%s</title>`, num(d.Centre.X), num(d.Centre.Y), turn, esc(p.Name))
	if p.Over != "" {
		w.add(`<rect class="mark" x="-20" y="-20" width="40" height="40" fill="#fff" stroke="#1a1a1a" stroke-width="1.2"/>`)
	}
	if p.Symbol.meets() {
		w.add(`<path class="line" d="%s" fill="none" stroke="#1a1a1a" stroke-width="5"/>`, arms(d))
	}
	if f.path != "" {
		thick := "1.6"
		if p.Over != "" {
			thick = "3"
		}
		w.add(`<path class="shape" d="%s" fill="#fff" stroke="#1a1a1a" stroke-width="%s" stroke-linejoin="round"/>`, f.path, thick)
	}
	if f.filled != "" {
		w.add(`<path class="solid" d="%s" fill="#1a1a1a" stroke="#1a1a1a" stroke-width="1"/>`, f.filled)
	}
	if p.Shut && strings.Contains(f.path, "-16-10V10L16-10V10Z") {
		w.add(`<path class="solid" d="M-16-10V10L16-10V10Z" fill="#1a1a1a" stroke="#1a1a1a" stroke-width="1"/>`)
	}
	w.add("</g>\n")
}

// arms are the lines that meet in a tee, on the sides where lines come in; a side that
// nothing is joined to has a short one.
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

func (w *pen) text(t *Text) {
	if strings.HasSuffix(t.Class, " on") {
		w.add(`<rect class="ground" x="%s" y="%s" width="%s" height="%s" fill="#fff"/>`, num(t.Box.X0), num(t.Box.Y0), num(t.Box.X1-t.Box.X0), num(t.Box.Y1-t.Box.Y0))
	}
	w.add(`<text class="%s" x="%s" y="%s" text-anchor="%s">`, t.Class, num(t.At.X), num(t.At.Y), t.Anchor)
	if t.Whole != "" {
		w.add("<title>%s</title>", esc(t.Whole))
	}
	w.add("%s</text>\n", esc(t.Text))
}

func (w *pen) sign(g Sign) {
	shape := map[Severity]string{
		Stop:    "M-3.3-8H3.3L8-3.3V3.3L3.3 8H-3.3L-8 3.3V-3.3Z",
		Caution: "M0-8L8 7H-8Z",
		Note:    "M-7.5 0a7.5 7.5 0 1 0 15 0a7.5 7.5 0 1 0-15 0Z",
	}[g.Mark.Severity]
	word := map[Severity]string{Stop: "stop", Caution: "caution", Note: "note"}[g.Mark.Severity]
	down := "3.5"
	if g.Mark.Severity == Caution {
		down = "5.5"
	}
	size := "10"
	if len(g.Mark.Text) > 2 {
		size = "8"
	}
	body := fmt.Sprintf(`<g transform="translate(%s %s)" font-family="Arial, Helvetica, sans-serif" font-size="%s"><title>%s %s</title><path class="mark" d="%s" fill="#fff" stroke="#1a1a1a" stroke-width="1.6"/><text text-anchor="middle" y="%s" font-weight="bold">%s</text></g>`,
		num(g.At.X), num(g.At.Y), size, word, esc(g.Mark.Text), shape, down, esc(g.Mark.Text))
	if strings.HasPrefix(g.Mark.Link, "#") {
		body = fmt.Sprintf(`<a href="%s">%s</a>`, esc(g.Mark.Link), body)
	}
	w.add("%s\n", body)
}
