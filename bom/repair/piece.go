package repair

import (
	"strings"

	"github.com/bojanz/currency"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Piece is one thing that may stand in a chain: of the stock, or an item of a build.
type Piece struct {
	Title    string
	ID       string
	Kind     string
	Words    string
	Ends     [2]threads.End
	Texts    [2]string
	Material string
	Class    string
	Rated    string // as claimed, with its unit
	Standard string
	Steps    int
	Usual    int // how usual the make is: 0 before 1
	Stock    bool
	Price    *currency.Amount // landed but for its freight, in the build's currency; nil: no offer
	Shop     string

	price   int64         // in minor units
	machine string        // the class by which a machined fitting of pipe threads alone is rated; "" for others
	kind    *catalog.Kind // nil: not of the catalogue

	holds    [2]pressure.Rating // by end
	known    [2]bool
	material []*catalog.Material
}

// Holds is what the weaker end of the piece holds; ok is false where either end is not known
// to hold anything. guess says that a table of another metal, or a claim, is all there is.
func (p *Piece) Holds() (r pressure.Rating, ok bool) {
	if !p.known[0] || !p.known[1] {
		return pressure.Rating{}, false
	}
	return pressure.Lower(p.holds[0], p.holds[1])
}

func endsOf(pieces []*Piece) [][2]threads.End {
	out := make([][2]threads.End, len(pieces))
	for i, p := range pieces {
		out[i] = p.Ends
	}
	return out
}

// machined is the class of fittings that are turned from bar and not cast, as package pressure
// and the tables of the stock write it.
const machined = "machined"

type rating struct {
	r  pressure.Rating
	ok bool
}

// rate asks for the rating of an end; an end of a hose, a tail or a tube is its joint's
// matter, and holds what its hose does.
func rate(class, material string, e threads.End, cache map[string]rating) rating {
	key := class + "|" + material + "|" + e.String()
	if got, ok := cache[key]; ok {
		return got
	}
	r, ok := pressure.FittingRating(class, material, e.Family.String(), e.Sex == threads.Male, e.Size)
	if !ok && e.Family == threads.G && class == "" {
		r, ok = stud(material, e)
	}
	cache[key] = rating{r, ok}
	return cache[key]
}

// pipeThread reports whether a family is one of pipe ends, which are rated as machined.
func pipeThread(f threads.Family) bool {
	return f == threads.NPT || f == threads.R || f == threads.Rc || f == threads.Rp
}

// stud carries the steel figure of ISO 1179 to other metals, as an estimate that clears no
// line of high pressure by itself: the same for stainless, half for copper alloys, as the
// other family standards are carried.
func stud(material string, e threads.End) (pressure.Rating, bool) {
	r, ok := pressure.FittingRating("ISO 1179", "steel", "G", e.Sex == threads.Male, e.Size)
	switch {
	case !ok || material == "steel":
		return r, ok
	case strings.Contains(material, "brass") || material == "bronze":
		r.Pressure /= 2
	case material != "316" && material != "super duplex":
		return pressure.Rating{}, false
	}
	r.Basis, r.Status = pressure.Estimate, pressure.Judgement
	r.Text = "ISO 1179 in steel, carried to " + material
	return r, true
}

func fromStock(it *stock.Item, cache map[string]rating) *Piece {
	p := &Piece{
		Title: it.Title(), ID: it.ID, Kind: it.Kind, Words: it.Words, Ends: [2]threads.End{it.Ends[0], it.Ends[1]}, Texts: [2]string{it.Texts[0], it.Texts[1]},
		Material: it.Material, Class: it.Class, Rated: it.Rated, Standard: it.Standard, Steps: it.Steps, Usual: it.Usual, Stock: true,
		material: catalog.MaterialsIn(it.Material), kind: kindOf(it.Kind),
	}
	if it.Class == "" && pipeThread(it.Ends[0].Family) && pipeThread(it.Ends[1].Family) {
		if _, ok := pressure.FittingRating(it.RatesAs, it.Material, it.Ends[0].Family.String(), true, it.Ends[0].Size); ok && it.RatesAs == machined {
			p.machine = machined
		}
	}
	claim, err := quantity.ParsePressure(it.Rated)
	for i, e := range it.Ends {
		class := it.RatesAs
		if it.Class == "" && !pipeThread(e.Family) {
			class = "" // what the family's own standard says, by size
		}
		got := rate(class, it.Material, e, cache)
		p.holds[i], p.known[i] = got.r, got.ok
		if it.Rated != "" && err == nil {
			p.holds[i], p.known[i] = pressure.Rating{Pressure: claim, Basis: pressure.Claim, Source: it.Source}, true
		}
	}
	if p.kind.Is(catalog.Hose) { // a piece of tube between two sockets holds what they do
		p.known = [2]bool{true, true}
	}
	return p
}

// fromItem makes a piece of a build's own item, if it has two ends that are each known.
func fromItem(it *build.Item) (*Piece, bool) {
	if len(it.Ports) != 2 || it.Kind == nil || it.Kind.Directed || it.Kind.Loose || it.IsHose() {
		return nil, false
	}
	p := &Piece{Title: it.ID, ID: it.ID, Kind: it.Kind.Name, Words: it.Kind.Name, Material: it.Material, Class: it.Class, material: it.Materials(), kind: it.Kind}
	if it.Title != "" {
		p.Title = it.ID + ": " + it.Title
	}
	for i := range it.Ports {
		c := it.Ports[i].End.Candidates
		if len(c) != 1 {
			return nil, false
		}
		p.Ends[i], p.Texts[i] = c[0], c[0].String()
		if r, ok := pressure.FittingRating(it.Class, it.Material, c[0].Family.String(), c[0].Sex == threads.Male, c[0].Size); ok {
			p.holds[i], p.known[i] = r, true
		}
		if it.Rated != nil {
			sheet := pressure.OfDataSheet(*it.Rated, it.ID)
			if p.known[i] {
				sheet, _ = pressure.Lower(sheet, p.holds[i])
			}
			p.holds[i], p.known[i] = sheet, true
		}
	}
	return p, true
}

// kindOf is the kind of a stock item; nil where the catalogue has none of that name.
func kindOf(name string) *catalog.Kind {
	k, _ := catalog.KindNamed(name)
	return k
}

func (p *Piece) turns() bool { return p.kind != nil && p.kind.Turns }

// kindTurns reports whether something in parts of a kind turns by itself.
func kindTurns(name string) bool {
	k := kindOf(name)
	return k != nil && k.Turns
}

// isOf reports whether the words of a material name it.
func (p *Piece) isOf(text string) bool {
	return strings.EqualFold(p.Material, text) || len(p.material) > 0 && sameMaterial(p.material, catalog.MaterialsIn(text))
}

func sameMaterial(a, b []*catalog.Material) bool {
	for _, x := range a {
		for _, y := range b {
			if x == y {
				return true
			}
		}
	}
	return false
}
