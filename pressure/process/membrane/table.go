package membrane

import (
	"embed"
	"slices"
	"strconv"
	"sync"

	"handtight/pressure/process/span"
	"handtight/pressure/quantity"
	"handtight/pressure/rows"
)

//go:embed table/*.csv
var tables embed.FS

// Class is what is usual for seawater elements of a size. Each figure's mark says
// whether it was seen in print or is from memory.
type Class struct {
	Size         string // "2540": tenths of an inch across, inches long
	Across       quantity.Length
	Long         quantity.Length
	Area         SquareMetre
	Product      quantity.Flow // at the usual test
	ProductRange span.Span[quantity.Flow]
	Rejection    quantity.Share
	MaxFeed      span.Span[quantity.Flow] // the strict and the generous end
	MinBrine     span.Span[quantity.Flow] // the generous and the strict end
	Source       string
	Marks        map[string]string // of "area", "product", "rejection", "feed", "brine"
}

// SquareMetre is an area.
type SquareMetre float64

// Usual is what elements of all sizes have in common, by the name of the figure.
type Usual struct {
	Low, High          float64
	Unit, Mark, Source string
}

// Sizes lists the sizes of which a class is known.
func Sizes() []string {
	var out []string
	for _, c := range classes() {
		out = append(out, c.Size)
	}
	return out
}

// ClassOf finds the class of a size such as "2540".
func ClassOf(size string) (Class, bool) {
	i := slices.IndexFunc(classes(), func(c Class) bool { return c.Size == size })
	if i < 0 {
		return Class{}, false
	}
	return classes()[i], true
}

// UsualOf is a figure that elements of all sizes share: "max_pressure", "max_recovery",
// "max_drop", "max_water", "test_pressure", "test_salt", "test_recovery", "spacer", "spacer_void",
// "tolerance", "diffusivity".
func UsualOf(name string) (Usual, bool) {
	u, ok := common()[name]
	return u, ok
}

var classes = sync.OnceValue(func() []Class {
	var out []Class
	for _, r := range read("class") {
		day := quantity.CubicMetrePerHour / 24
		out = append(out, Class{
			Size: r["size"], Across: quantity.Length(r.number("across_in")) * quantity.Inch,
			Long: quantity.Length(r.number("length_m")) * quantity.Metre, Area: SquareMetre(r.number("area_m2")),
			Product:      quantity.Flow(r.number("product_m3d")) * day,
			ProductRange: span.Between(quantity.Flow(r.number("product_low_m3d"))*day, quantity.Flow(r.number("product_high_m3d"))*day),
			Rejection:    quantity.Share(r.number("rejection_pct")) * quantity.Percent,
			MaxFeed:      span.Between(quantity.Flow(r.number("feed_low_Lmin"))*quantity.LitrePerMinute, quantity.Flow(r.number("feed_high_Lmin"))*quantity.LitrePerMinute),
			MinBrine:     span.Between(quantity.Flow(r.number("brine_low_Lmin"))*quantity.LitrePerMinute, quantity.Flow(r.number("brine_high_Lmin"))*quantity.LitrePerMinute),
			Source:       r["source"],
			Marks: map[string]string{"area": r["area_mark"], "product": r["product_mark"], "rejection": r["rejection_mark"],
				"feed": r["feed_mark"], "brine": r["brine_mark"]},
		})
	}
	return out
})

var common = sync.OnceValue(func() map[string]Usual {
	out := map[string]Usual{}
	for _, r := range read("common") {
		out[r["what"]] = Usual{r.number("low"), r.number("high"), r["unit"], r["mark"], r["source"]}
	}
	return out
})

type row map[string]string

// number reads a column; the tables are part of the program and the tests read each row.
func (r row) number(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic("membrane: column " + column + ": " + err.Error())
	}
	return v
}

func read(name string) []row { return rows.All[row]("membrane", tables, "table/"+name+".csv") }
