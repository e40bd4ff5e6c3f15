package duty

import (
	"fmt"
	"math"
	"strings"

	"handtight/bom/build"
	"handtight/pressure/pattern"
	"handtight/pressure/process/membrane"
	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
)

// What the engine takes where nothing is said (judgements and memory, shown as such).
var (
	openOcean   = span.Between[quantity.Salinity](33, 38)
	anyWater    = span.Between[quantity.Temperature](10, 28)
	byHand      = 1 * quantity.Bar             // a pressure held by hand, either way
	eitherSalt  = 1 * quantity.GramPerKilogram // one figure said
	eitherWater = 2 * quantity.Celsius
	delivered   = span.Between(0.92, 1.00) // of the flow on a pump's plate
	usualBack   = 0.2 * quantity.Bar       // on the product side
)

// tolerance of an element whose product is said (memory; one sheet seen has 20 %).
const tolerance quantity.Share = 0.15

// Note is one thing that a figure rests on.
type Note struct {
	What, Took string
	Said       bool // the build says it
}

// inputs are the plant's water and pressure.
type inputs struct {
	pressure    span.Span[quantity.Pressure]
	hasPressure bool
	salinity    span.Span[quantity.Salinity]
	water       span.Span[quantity.Temperature]
	waterAge    span.Span[float64] // factor on water's permeability
	saltAge     span.Span[float64]
	aged        [2]float64 // both at the middle: of the age that is said, else of new elements
	notes       []Note
}

func (in *inputs) note(said bool, what, took string) {
	in.notes = append(in.notes, Note{what, took, said})
}

func inputsOf(b *build.Build) inputs {
	in := inputs{salinity: openOcean, water: anyWater, waterAge: span.Between(0.80, 1.0), saltAge: span.Between(1.0, 1.5), aged: [2]float64{1, 1}}
	d := &b.Duty
	if d.Pressure != nil && !d.PressureTold {
		in.pressure, in.hasPressure = span.About(*d.Pressure, byHand), true
		in.note(true, "pressure", fmt.Sprintf("%s, 1 bar either way by hand", d.Pressure))
	}
	switch s := d.Salinities; {
	case s == nil:
		in.note(false, "salinity", "open ocean, 33 to 38 g/kg: ask for the Baltic, the Red Sea, a gulf or a river mouth")
	case s.Single():
		in.salinity = span.About(s.Lo, eitherSalt)
		in.salinity.Lo = max(in.salinity.Lo, 0)
		in.note(true, "salinity", fmt.Sprintf("%s, 1 g/kg either way", s.Lo))
	default:
		in.salinity = span.Between(s.Lo, s.Hi)
		in.note(true, "salinity", s.String())
	}
	switch w := d.Waters; {
	case w == nil:
		in.note(false, "water", "10 to 28 C")
	case w.Single():
		in.water = span.About(w.Lo, eitherWater)
		in.note(true, "water", fmt.Sprintf("%s, 2 C either way", w.Lo))
	default:
		in.water = span.Between(w.Lo, w.Hi)
		in.note(true, "water", w.String())
	}
	if d.Age != nil {
		years := d.Age.Days() / 365.25
		in.waterAge = span.Between(math.Pow(0.93, years), math.Pow(0.97, years))
		in.saltAge = span.Between(math.Pow(1.05, years), math.Pow(1.15, years))
		in.aged = [2]float64{in.waterAge.Middle(), in.saltAge.Middle()}
		in.note(true, "age of the elements", d.Age.String()+": 3 to 7 % less water and 5 to 15 % more salt a year (memory)")
	} else {
		in.note(false, "age of the elements", "new to 3 years: 0.80 to 1.00 of the water, 1.0 to 1.5 of the salt (7 % a year; memory)")
	}
	return in
}

// Elements are what stands in a vessel.
type Elements struct {
	Item  *build.Item
	Count int
	Size  string // "" where nothing says it
	From  string // where the size was read: "size", "title", "about"

	sheet  membrane.Element
	middle membrane.Unit // nominal
	ends   [2]membrane.Unit
	class  membrane.Class
	known  bool // it can be reckoned with
	basis  string
	fault  string
}

var sizeWords = pattern.New(`(?i)(?:^|[^\d.])(2521|2540|4021|4040)(?:$|\D)|(?:^|[^\d.])(2\.5|4(?:\.0)?)\s*(?:in|inch|inches|")?\s*[x×]\s*(21|40)(?:$|[^\d.])`)

// sizeIn reads a size in words: "2540", "2.5 x 40".
func sizeIn(text string) string {
	m := sizeWords.FindStringSubmatch(text)
	switch {
	case m == nil:
		return ""
	case m[1] != "":
		return m[1]
	case strings.HasPrefix(m[2], "2.5"):
		return "25" + m[3]
	}
	return "40" + m[3]
}

// sizeOf is the size of an element or a vessel, and where it was read; "" where nothing says it.
func sizeOf(it *build.Item) (size, from string) {
	if it.Process.Size != "" {
		return it.Process.Size, "size"
	}
	if s := sizeIn(it.Title); s != "" {
		return s, "title"
	}
	if s := sizeIn(it.About); s != "" {
		return s, "about"
	}
	return "", ""
}

// elementsOf makes an element ready: by its sheet, else by the class of its size.
func elementsOf(it *build.Item) Elements {
	e := Elements{Item: it, Count: max(it.Each, 1)}
	e.Size, e.From = sizeOf(it)
	class, ok := membrane.ClassOf(e.Size)
	p := &it.Process
	if !ok && (p.Area == nil || p.Product == nil) {
		if e.fault = "nothing says its size"; e.Size != "" {
			e.fault = fmt.Sprintf("no class is known of elements of %s, and the sheet's area and product are not said", e.Size)
		}
		return e
	}
	e.class = class
	sheet := class.Element()
	if !ok {
		sheet, _ = standIn()
	}
	take(&sheet.Test.Pressure, p.TestPressure)
	take(&sheet.Test.Recovery, p.TestRecovery)
	take(&sheet.Test.Rejection, p.RejectionMin) // the least, where nothing else is said
	take(&sheet.Test.Rejection, p.Rejection)
	take(&sheet.Spacer, p.Spacer)
	if p.TestSalt != nil {
		sheet.Test.Salt = p.TestSalt.GramsPerLitre()
	}
	if said := p.Area; ok && said != nil && (said.SquareMetres() > 2*float64(class.Area) || 2*said.SquareMetres() < float64(class.Area)) {
		e.fault = fmt.Sprintf("%s of membrane are not those of an element of %s, which has about %s m2", said, e.Size, quantity.Significant(float64(class.Area), 2))
		return e
	}
	if p.Area != nil {
		sheet.Area = membrane.SquareMetre(p.Area.SquareMetres())
	}
	product := class.ProductRange
	e.basis = fmt.Sprintf("by its size class %s: %s to %s in its test", e.Size, class.ProductRange.Lo, class.ProductRange.Hi)
	if p.Product != nil {
		sheet.Test.Product = *p.Product
		either := tolerance
		if p.Tolerance != nil {
			either = *p.Tolerance
		}
		product = span.Between(*p.Product, *p.Product).Times(1)
		product.Lo, product.Hi = quantity.Flow(float64(product.Lo)*(1-float64(either))), quantity.Flow(float64(product.Hi)*(1+float64(either)))
		e.basis = fmt.Sprintf("by its sheet: %s in its test, %s either way", p.Product, either)
	}
	if err := e.calibrate(sheet, product); err != nil {
		e.fault = err.Error()
		return e
	}
	e.known = true
	return e
}

// standIn is a sheet for what a class would say, where the size has none: the 40-inch one's
// length, spacer and test.
func standIn() (membrane.Element, bool) {
	c, ok := membrane.ClassOf("2540")
	return c.Element(), ok
}

func (e *Elements) calibrate(sheet membrane.Element, product span.Span[quantity.Flow]) (err error) {
	e.sheet = sheet
	if e.middle, err = sheet.Calibrate(); err != nil {
		return err
	}
	for i, q := range []quantity.Flow{product.Lo, product.Hi} {
		sheet.Test.Product = q
		if e.ends[i], err = sheet.Calibrate(); err != nil {
			return err
		}
	}
	return nil
}

func take[T any](to *T, said *T) {
	if said != nil {
		*to = *said
	}
}

// withFilm is the middle element calibrated with another film coefficient.
func (e *Elements) withFilm(film float64) (membrane.Unit, error) { return e.sheet.CalibrateFilm(film) }
