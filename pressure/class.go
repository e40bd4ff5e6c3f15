package pressure

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

// class is a fitting class as the tables name it.
type class struct {
	names []string // all that may be meant; empty for the standard of a thread family
	pn    float64
	union bool
}

var (
	pnForm    = pattern.New(`\bpn\s*-?\s*(\d+(?:\.\d+)?)\b`)
	classForm = pattern.New(`\b(?:class|cl|cls)\.?\s*-?\s*(\d{3,4})\b`)
	poundForm = pattern.New(`\b(\d{3,4})\s*-?\s*(?:lbs\b|lb\b|pounds?\b|#)`)
	schedForm = pattern.New(`\b(?:schedule|sched|sch)\.?\s*-?\s*(\d{2,3})s?\b`)
	sdrForm   = pattern.New(`\bsdr\s*-?\s*(\d+(?:\.\d+)?)\b`)
	codeForm  = pattern.New(`\bcode\s*(6[12])\b`)
)

// isoLight is the mark of ISO 4144 while a class is read.
const isoLight = "iso 4144"

// plainClasses are the classes that are words, with the row that each means.
var plainClasses = [][2]string{
	{"light pattern", "150 lb"}, {"iso 4144", isoLight}, {"iso4144", isoLight},
	{"machined", "machined"}, {"instrument", "machined"},
	{"iso 49", "iso 49"}, {"en 10242", "iso 49"},
	{"iso 1179", "iso 1179"}, {"din 2353", "din 2353"},
	{"iso 8434-1", ""}, {"j514", ""}, {"iso 8434-2", ""}, {"j1453", ""}, {"j1926-2", ""}, {"iso 6149-2", ""}, {"j512", ""},
	{"camlock", "camlock"}, {"cam and groove", "camlock"}, {"a-a-59326", "camlock"},
	{"press-fit", "press"}, {"press fit", "press"},
	{"plastic", "plastic"},
}

// readClass reads a class as people write it: "class 150", "3000 lb", "150#",
// "PN 16", "sch 80", "SP-114 class 150". A pound figure may be the class of that
// number or a light pattern, so that it means both; ISO 4144 is a light pattern whatever
// class is written beside it, since it is a standard of sizes whose rating in cold water
// was not found. ok is false for what is not understood.
func readClass(text string) (c class, ok bool) {
	t := strings.ToLower(strings.TrimSpace(text))
	c.union = strings.Contains(t, "union") || strings.Contains(t, "sp-83") || strings.Contains(t, "b16.39")
	if t == "" {
		return c, true
	}
	if m := pnForm.FindStringSubmatch(t); m != nil {
		if c.pn = decimal(m[1]); !(c.pn > 0 && c.pn <= 1000) {
			return c, false
		}
	}
	heavy := strings.Contains(t, "sp-114") || strings.Contains(t, "sp 114") || strings.Contains(t, "heavy")
	for _, f := range []struct {
		form *pattern.Pattern
		name string
	}{{classForm, "class "}, {schedForm, "schedule "}, {sdrForm, "sdr "}, {codeForm, "code "}} {
		if m := f.form.FindStringSubmatch(t); m != nil {
			c.names = append(c.names, f.name+m[1])
		}
	}
	if m := poundForm.FindStringSubmatch(t); m != nil {
		c.names = append(c.names, "class "+m[1])
		if !heavy {
			c.names = append(c.names, m[1]+" lb")
		}
	}
	for _, p := range plainClasses {
		if strings.Contains(t, p[0]) {
			c.names = append(c.names, p[1])
		}
	}
	light := strings.Contains(t, "light") || slices.Contains(c.names, isoLight)
	if light && slices.ContainsFunc(c.names, func(n string) bool { return n == "150 lb" || n == "class 150" || n == isoLight }) {
		c.names = []string{"150 lb"}
	}
	return c, len(c.names) > 0 || c.pn > 0
}

// means reports whether a row of these classes is one that c may name.
func (c class) means(classes []string) bool {
	if len(classes) == 0 {
		return len(c.names) == 0 || slices.Contains(c.names, "")
	}
	return slices.ContainsFunc(classes, func(n string) bool { return slices.Contains(c.names, n) })
}

// pnRating is the pressure that a PN number stands for.
func pnRating(n float64) Rating {
	figure := strconv.FormatFloat(n, 'g', -1, 64)
	return Rating{
		Pressure: quantity.Pressure(n) * quantity.Bar, Basis: FittingClass, Status: CommonPractice, Source: sourceText("pn"),
		Text: fmt.Sprintf("PN %s: %s bar in water at 20 C", figure, figure),
	}
}
