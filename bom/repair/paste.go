package repair

import (
	"cmp"
	"fmt"
	"strings"

	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// ShortID is a short name for an item of the piece in a build: "adaptor-12npt-g12-316".
func (p *Piece) ShortID() string {
	short := func(text string) string {
		text = strings.NewReplacer("/", "", " female swivel o-ring", "fs", " female swivel 60 cone", "fs", " female swivel", "fs", " female", "f", " male chamfer", "m", " male o-ring", "m",
			" male", "m", " plastic", "", " push-in", "push", " ", "").Replace(text)
		return strings.ToLower(text)
	}
	if !p.Stock {
		return p.ID
	}
	if p.kind.Is(catalog.Hose) {
		return p.hoseID()
	}
	id := p.Kind + "-" + short(p.Texts[0]) + "-" + short(p.Texts[1]) + "-" + strings.ToLower(p.Material)
	return strings.Join(strings.FieldsFunc(id, func(r rune) bool { return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9') }), "-")
}

// hoseID names a piece of hose or tube: "tube-10-mm-pe".
func (p *Piece) hoseID() string {
	words := strings.TrimPrefix(p.Words, "piece of ") + " " + p.Ends[0].Size + " " + p.Material
	return strings.Join(strings.FieldsFunc(strings.ToLower(words), func(r rune) bool { return !(r >= 'a' && r <= 'z' || r >= '0' && r <= '9') }), "-")
}

// sure reports whether a piece has a class of its own to be rated by.
func (p *Piece) sure() bool { return p.Class != "" || p.machine != "" || !p.Stock }

// Paste is the piece as an item of a build file, to paste; need is what its data sheet is asked for,
// 0 where that is not known.
func (p *Piece) Paste(need quantity.Pressure) string {
	if !p.Stock {
		return ""
	}
	if p.kind.Is(catalog.Hose) {
		return p.pasteHose(need)
	}
	var b strings.Builder
	fmt.Fprintf(&b, "[[item]]\nid       = %q\nkind     = %q\nabout    = %q\nports    = { a = '%s', b = '%s' }\nmaterial = %q\n", p.ShortID(), p.Kind, p.Words, p.Texts[0], p.Texts[1], p.Material)
	if p.Class == "" && p.machine != "" {
		fmt.Fprintf(&b, "class    = %q   # turned from bar, never a cast one\n", p.machine)
		return b.String()
	}
	writeRating(&b, p.Class, p.Rated, need)
	return b.String()
}

// pasteHose is a piece of hose or tube: what it is cut from, and how long it is, which only the place
// tells.
func (p *Piece) pasteHose(need quantity.Pressure) string {
	var b strings.Builder
	key, size := "bore", p.Ends[0].Size
	if p.Ends[0].Family != threads.Bore {
		key = "outside"
	}
	id := p.ShortID()
	fmt.Fprintf(&b, "[[item]]\nid       = %q\nkind     = \"hose stock\"\nabout    = %q\n%-8s = %q\nmaterial = %q\n", id+"-stock", strings.TrimPrefix(p.Words, "piece of "), key, size, p.Material)
	writeRating(&b, p.Class, p.Rated, need)
	fmt.Fprintf(&b, "\n[[hose]]\nid       = %q\nof       = %q\nlength   = \"0.5 m\"   # measure it\n", id, id+"-stock")
	return b.String()
}

// ItemID names the item that takes a unit's place.
func (r *Remedy) ItemID() string {
	it := cmp.Or(r.New, r.Plug)
	words := it.Kind + " " + strings.Join(it.Texts, " ") + " " + it.Material
	if r.All {
		words += " " + it.Class
	}
	parts := strings.FieldsFunc(strings.ToLower(words), func(c rune) bool {
		return !(c >= 'a' && c <= 'z' || c >= '0' && c <= '9')
	})
	return strings.Join(parts, "-")
}

// Item writes the stock item with the port names of the unit that it replaces.
func (r *Remedy) Item(id string) string {
	var b strings.Builder
	fmt.Fprintf(&b, "[[item]]\nid       = %q\nkind     = %q\nabout    = %q\nports    = { ", id, r.New.Kind, r.New.Words)
	for i, p := range r.Unit.Item.Ports {
		if i > 0 {
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%s = '%s'", p.Name, r.New.Texts[i])
	}
	fmt.Fprintf(&b, " }\nmaterial = %q\n", r.New.Material)
	writeRating(&b, r.New.Class, r.New.Rated, r.Needs)
	return b.String()
}

// PlugItem writes the plug of an open port.
func (r *Remedy) PlugItem(id string) string {
	k, _ := catalog.KindNamed(r.Plug.Kind)
	var b strings.Builder
	fmt.Fprintf(&b, "[[item]]\nid       = %q\nkind     = %q\nabout    = %q\nports    = { %s = '%s' }\nmaterial = %q\n", id, r.Plug.Kind, r.Plug.Words, k.Ports[0], r.Plug.Texts[0], r.Plug.Material)
	writeRating(&b, r.Plug.Class, r.Plug.Rated, r.Needs)
	return b.String()
}

// PlugRun writes the run that puts it in.
func (r *Remedy) PlugRun(id string) string {
	return fmt.Sprintf("[[run]]\nname = %q\npath = [%q, %q]\n", r.Open.Name()+", plugged", r.Open.Name(), id+"/+")
}

// writeRating writes what a fitting is rated by; a figure that no standard gives is never typed in.
func writeRating(b *strings.Builder, class, claim string, need quantity.Pressure) {
	ask := ""
	if need > 0 {
		ask = fmt.Sprintf(", %s or more", up(need))
	}
	switch {
	case class != "":
		fmt.Fprintf(b, "class    = %q\n", class)
	case claim != "":
		fmt.Fprintf(b, "# rated  = %q   the usual claim: its data sheet decides%s\n", claim, ask)
	default:
		fmt.Fprintf(b, "# rated  = \"…\"   from its data sheet%s\n", ask)
	}
}
