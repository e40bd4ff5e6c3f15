package quantity

import (
	_ "embed"
	"encoding/csv"
	"fmt"
	"strconv"
	"strings"
	"sync"
	"unicode"
)

//go:embed unit.csv
var unitTable string

// Unit is a unit that people write, as unit.csv holds it.
type Unit struct {
	Kind    string // what it measures: "pressure", "flow", ...
	Name    string // as it is printed
	Written []string
	Factor  float64 // base units in one of it; 0 where the conversion is no factor
	Offset  float64 // added after the factor; only temperatures have one
	Exact   bool
	Source  string
}

// Units lists every unit that is understood, by kind, in the order of the table.
func Units() []Unit {
	out := make([]Unit, 0, len(units().all))
	for _, u := range units().all {
		u.Written = append([]string(nil), u.Written...)
		out = append(out, u)
	}
	return out
}

type unitSet struct {
	all    []Unit
	byKind map[string]map[string]*Unit // kind, then the squeezed way of writing
}

var units = sync.OnceValue(func() unitSet {
	lines, err := csv.NewReader(strings.NewReader(unitTable)).ReadAll()
	if err != nil {
		panic("quantity: unit.csv: " + err.Error())
	}
	set := unitSet{byKind: map[string]map[string]*Unit{}}
	for _, l := range lines[1:] {
		set.all = append(set.all, Unit{
			Kind: l[0], Name: l[1], Written: strings.Split(l[2], "|"),
			Factor: ratio(l[3]), Offset: ratio(l[4]), Exact: l[5] == "yes", Source: l[6],
		})
	}
	for i := range set.all {
		u := &set.all[i]
		if set.byKind[u.Kind] == nil {
			set.byKind[u.Kind] = map[string]*Unit{}
		}
		for _, w := range u.Written {
			set.byKind[u.Kind][squeeze(w)] = u
		}
	}
	return set
})

// ratio reads a number or a quotient from the table; the table is part of the
// program and the tests read all of it.
func ratio(s string) float64 {
	if s == "" {
		return 0
	}
	over, under, split := strings.Cut(s, "/")
	v, err := strconv.ParseFloat(over, 64)
	if err == nil && split {
		var d float64
		d, err = strconv.ParseFloat(under, 64)
		v /= d
	}
	if err != nil {
		panic(fmt.Sprintf("quantity: unit.csv holds %q, a number is due", s))
	}
	return v
}

// squeeze brings the ways of writing one unit together: no case, spaces, dots,
// degree signs or raised figures.
func squeeze(s string) string {
	return strings.Map(func(r rune) rune {
		switch r {
		case '²':
			return '2'
		case '³':
			return '3'
		case 'µ', 'μ':
			return 'u'
		case '.', '·', '°', 'º', '^', '*', '-':
			return -1
		}
		if unicode.IsSpace(r) {
			return -1
		}
		return unicode.ToLower(r)
	}, s)
}

// find looks a unit up among those of a kind. Only mPa needs its case: the
// milli- would be lost, and the pressure would grow a thousand million times.
func find(kind, written string) (*Unit, bool) {
	if strings.TrimSpace(written) == "mPa" {
		return nil, false
	}
	u, ok := units().byKind[kind][squeeze(written)]
	return u, ok
}

// names lists the printed names of a kind's units.
func names(kind string) []string {
	var out []string
	for _, u := range units().all {
		if u.Kind == kind {
			out = append(out, u.Name)
		}
	}
	return out
}
