// Package worth tells a rate of exchange that was written the wrong way round. It knows about
// what currencies are worth to one another, from memory, and serves for nothing else: no
// price rests on it.
package worth

import (
	"embed"
	"math"
	"strconv"
	"sync"

	"handtight/pressure/rows"
)

//go:embed table/worth.csv
var tables embed.FS

// worth is about what one of a currency was worth, in US dollars. It serves to tell a rate
// that was written the wrong way round, and for nothing else.
var worth = sync.OnceValue(func() map[string]float64 {
	out := map[string]float64{}
	for _, r := range rows.Each[map[string]string]("worth", tables, "table/worth.csv") {
		v, err := strconv.ParseFloat(r["usd"], 64)
		if err != nil {
			panic("worth: worth.csv: " + r["code"] + " has no figure")
		}
		out[r["code"]] = v
	}
	return out
})

// How far a rate must be from what is usual, and how near its reciprocal, to look written
// the wrong way round: factors (judgement). Currencies fall by half in some years, and
// those that are worth about the same are never told.
const (
	farOff = 8.0
	nearBy = 4.0
)

// Inverted reports whether a rate looks written the wrong way round: how much of the
// currency one of the base costs, in place of what one of the currency costs in the base. It
// is false for currencies that are not known and for those that are worth about the same.
func Inverted(base, code, rate string) bool {
	is, err := strconv.ParseFloat(rate, 64)
	if err != nil || is <= 0 || worth()[base] == 0 || worth()[code] == 0 {
		return false
	}
	usual := worth()[code] / worth()[base]
	return math.Abs(math.Log(is/usual)) > math.Log(farOff) && math.Abs(math.Log(is*usual)) < math.Log(nearBy)
}
