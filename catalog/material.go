package catalog

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"sync"
	"unicode"

	"handtight/pressure/quantity"
	"handtight/threads/title"
)

// Suitability says whether a material may be used in a water. The zero value is
// not known.
type Suitability uint8

// The answers, from worst.
const (
	NotKnown Suitability = iota
	No                   // it fails there
	Caution              // it may be used with care, and has failed there
	Suitable
)

var suitabilityNames = [...]string{"not known", "no", "caution", "suitable"}

// String gives the answer as the table writes it.
func (s Suitability) String() string {
	if int(s) >= len(suitabilityNames) {
		s = NotKnown
	}
	return suitabilityNames[s]
}

// Water is what a part stands in, as far as materials go. The zero value is invalid.
type Water uint8

// The waters.
const (
	RawSea      Water = iota + 1 // sea water at low pressure, flowing
	PressedSea                   // sea water or brine at high pressure
	StandingSea                  // sea water that stands still and is not rinsed away
	Product                      // what comes through the membrane, for drinking
	Hull                         // the sea outside: a skin fitting or seacock below the waterline
	waterEnd
)

// Material is what a part is made of, and how that stands in the waters of a
// desalinator.
type Material struct {
	Name   string // "316", "dzr", "pp": what a build writes, and what a shop's line is read as
	Title  string // "stainless 316"
	Group  string // metal, plastic, composite, rubber
	Why    string // of sea water; see [Material.WhyIn]
	Status string // of the answers: seen, common practice, memory
	Source string // of the answers
	Note   string

	// Potential is in volts against a saturated calomel electrode, in flowing sea
	// water. PREN is the pitting resistance number Cr + 3.3 Mo + 16 N. FiguresSource is
	// where both were read.
	Potential     Bounds[quantity.Voltage]
	PREN          Bounds[float64]
	FiguresSource string

	in  [waterEnd]Suitability
	why [waterEnd]string // where it is another than Why
}

// Bounds is a figure from the least to the most that its source gives; infinite
// where the source gives one end only.
type Bounds[T ~float64] struct {
	From, To T
	Known    bool
}

// Metal reports whether the material is one.
func (m *Material) Metal() bool { return m.Group == "metal" }

// Stainless reports whether it is a stainless steel, which galls on itself.
func (m *Material) Stainless() bool { return m.Metal() && strings.Contains(m.Title, "stainless") }

// NoGrade reports whether it is a stainless steel of which nobody says the grade: it may
// be 304, which is not for sea water.
func (m *Material) NoGrade() bool { return m.Name == "stainless steel" }

// In tells whether the material may be used in a water; NotKnown where the table
// leaves it blank.
func (m *Material) In(w Water) Suitability {
	if w >= waterEnd {
		return NotKnown
	}
	return m.in[w]
}

// WhyIn says why the material stands in a water as [Material.In] tells.
func (m *Material) WhyIn(w Water) string {
	if w < waterEnd && m.why[w] != "" {
		return m.why[w]
	}
	return m.Why
}

// GalvanicLimit is how far apart two metals in contact under sea water may stand.
// Source: galvanic series chart (Ag/AgCl): more than 200 mV apart.
const GalvanicLimit = 0.2 * quantity.Volt

// GalvanicGap is how far apart two materials stand in flowing sea water:
// at the least and at the most that their ranges leave open. ok is false
// where a potential is not known, and for a material that does not conduct.
//
// Formula: the distance between the two ranges, and between their far ends.
// Source: the potentials of table/material.csv.
func GalvanicGap(a, b *Material) (least, most quantity.Voltage, ok bool) {
	p, q := a.Potential, b.Potential
	if !p.Known || !q.Known {
		return 0, 0, false
	}
	least = max(0, p.From-q.To, q.From-p.To)
	most = max(p.To-q.From, q.To-p.From)
	return hundredths(least), hundredths(most), true
}

// Nobler gives two materials with known potentials in the order noble, less noble.
func Nobler(a, b *Material) (noble, base *Material) {
	if a.Potential.From+a.Potential.To < b.Potential.From+b.Potential.To {
		return b, a
	}
	return a, b
}

// hundredths rounds a difference of printed figures, so that 0.1 + 0.2 is 0.3.
func hundredths(v quantity.Voltage) quantity.Voltage {
	return quantity.Voltage(math.Round(v.Volts()*100) / 100)
}

type materialBook struct {
	list   []*Material
	words  map[string]*Material
	longer int // words of the longest name
}

var materials = sync.OnceValue(func() *materialBook {
	book := &materialBook{words: map[string]*Material{}}
	for _, r := range eachRow("material") {
		m := &Material{
			Name: r["name"], Title: r["title"], Group: r["group"], Why: r["why"], Status: r["status"], Source: r["source"], Note: r["note"],
			Potential: boundsOf[quantity.Voltage](r["potential_from_v"], r["potential_to_v"]), PREN: boundsOf[float64](r["pren_from"], r["pren_to"]),
			FiguresSource: r["figures_source"],
		}
		for w, column := range map[Water]string{RawSea: "raw", PressedSea: "high", StandingSea: "stagnant", Product: "product", Hull: "hull"} {
			m.in[w] = suitabilityNamed(r[column])
		}
		m.why[Product], m.why[Hull] = r["product_why"], r["hull_why"]
		book.list = append(book.list, m)
		for _, word := range append(strings.Split(r["words"], "|"), m.Name) {
			book.add(word, m)
		}
	}
	return book
})

func (b *materialBook) add(word string, m *Material) {
	list := wordsOf(word)
	key := strings.Join(list, " ")
	if other, ok := b.words[key]; ok && other != m {
		panic(fmt.Sprintf("catalog: %q names both %s and %s", word, other.Name, m.Name))
	}
	b.words[key] = m
	b.longer = max(b.longer, len(list))
}

func suitabilityNamed(word string) Suitability {
	for s, n := range suitabilityNames {
		if n == word {
			return Suitability(s)
		}
	}
	if word != "" {
		panic("catalog: material.csv has the answer " + word)
	}
	return NotKnown
}

func boundsOf[T ~float64](from, to string) Bounds[T] {
	b := Bounds[T]{From: T(math.Inf(-1)), To: T(math.Inf(1))}
	for _, end := range []struct {
		text string
		v    *T
	}{{from, &b.From}, {to, &b.To}} {
		if end.text == "" {
			continue
		}
		v, err := strconv.ParseFloat(end.text, 64)
		if err != nil {
			panic("catalog: material.csv has the figure " + end.text)
		}
		*end.v, b.Known = T(v), true
	}
	if !b.Known {
		return Bounds[T]{}
	}
	return b
}

// Materials lists the materials of the table, in its order.
func Materials() []*Material { return append([]*Material(nil), materials().list...) }

// MaterialNamed finds the material that a text names: "316L stainless", "DZR
// brass CW602N", "uPVC". Of several ("nylon core, 316 ends") it is the first; see
// [MaterialsIn]. ok is false where no word of it is known.
func MaterialNamed(text string) (m *Material, ok bool) {
	list := MaterialsIn(text)
	if len(list) == 0 {
		return nil, false
	}
	return list[0], true
}

// MaterialsIn lists the materials that a text names, each once, in the text's
// order; the longest name that fits rules, so that "nickel-aluminium bronze" is no
// aluminium. A word that only says more of the one before or after it ("316
// stainless", "stainless 316", "DZR brass") names no second material.
func MaterialsIn(text string) []*Material {
	book, words := materials(), wordsOf(text)
	var out []*Material
	for i := 0; i < len(words); {
		n, m := book.longest(words[i:])
		if m == nil {
			i++
			continue
		}
		i += n
		out = appendMaterial(out, m)
	}
	if len(out) == 0 && len(words) > 0 { // words of another language, which the reader of shop titles knows
		if m, ok := book.words[title.Read(text).Material]; ok {
			return []*Material{m}
		}
	}
	return out
}

// longest finds the longest name at the head of some words.
func (b *materialBook) longest(words []string) (int, *Material) {
	for n := min(b.longer, len(words)); n > 0; n-- {
		if m, ok := b.words[strings.Join(words[:n], " ")]; ok {
			return n, m
		}
	}
	return 0, nil
}

// general are names that a closer one of the same sort takes the place of.
var general = map[string]func(*Material) bool{
	"stainless steel": (*Material).Stainless,
	"brass": func(m *Material) bool {
		return m.Name == "dzr" || m.Name == "lead-free dzr" || m.Name == "lead-free brass"
	},
	"dzr":             func(m *Material) bool { return m.Name == "lead-free dzr" },
	"lead-free brass": func(m *Material) bool { return m.Name == "lead-free dzr" },
	"pvc":             func(m *Material) bool { return m.Name == "clear pvc" },
	"carbon steel":    func(m *Material) bool { return m.Name == "galvanised" || m.Stainless() },
	"plastic":         func(m *Material) bool { return m.Group == "plastic" },
	"rubber":          func(m *Material) bool { return m.Group == "rubber" },
}

func appendMaterial(out []*Material, m *Material) []*Material {
	for i, have := range out {
		closer, isGeneral := general[m.Name]
		old, wasGeneral := general[have.Name]
		switch {
		case have == m, isGeneral && closer(have):
			return out
		case wasGeneral && old(m):
			out[i] = m
			return out
		}
	}
	return append(out, m)
}

// wordsOf cuts a text into words in lower case; a dot between figures stays
// ("1.4401"), all else that is no letter or figure parts them.
func wordsOf(text string) []string {
	list := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool {
		return r != '.' && !unicode.IsLetter(r) && !unicode.IsDigit(r)
	})
	out := list[:0]
	for _, w := range list {
		if w = strings.Trim(w, "."); w != "" {
			out = append(out, w)
		}
	}
	return out
}
