package read

import (
	"math"
	"slices"
	"strings"
	"unicode/utf8"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// A description, `about`, is no key: what it states beside the keys is used where a rule reads it (the
// volts of a coil, the scale of a meter), and named as not used where it states what a key would.

const inAbout = "in `about`, from which no figure is read"

// described notes what an item's `about` states and no key of it says, and the strength that the words of an end state.
func (r *reader) described(t *source.Table, it *build.Item) {
	for i := range it.Ports {
		if p := &it.Ports[i]; len(p.End.NotUsed) > 0 && mayState(p.Text) && strengths.MatchString(p.Text) {
			r.strengths(it, p.Text, func(string, string) {}) // the end itself names them as not used
		}
	}
	if it.About == "" {
		return
	}
	note := func(words, why string) {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: words, Why: why})
	}
	if a, b := apart(r.materials(it.About), r.materials(it.Material)); a != nil {
		note(a.Title, "in `about`, and `material` says "+b.Title)
	}
	r.limits(it, note)
	if !strings.ContainsAny(it.About, "0123456789") {
		return
	}
	if mayState(it.About) && strengths.MatchString(it.About) {
		r.strengths(it, it.About, note)
	}
	r.unitFigures(t, it, note)
	if threadNames.MatchString(it.About) {
		for _, e := range title.Read(it.About).Ends {
			if len(e.Candidates) > 0 && !slices.ContainsFunc(it.Ports, func(p build.Port) bool { return sameThread(p.End, e) }) {
				note(e.Words, "a thread in `about`, which none of its ports has")
			}
		}
	}
}

// limitWords find the words of a limit of use in a description, before it is read as a shop's line.
var limitWords = pattern.New(`(?i)(?:^|[^\pL])(?:not|no|never|only|unrated|non-rated|unsuitable|unsuited|don't|nicht|nur|niet|alleen|uitsluitend|pas|seulement|uniquement|solo|sólo|non|soltanto|não|apenas|somente|só|inte|ej|endast|bara|ikke|kun|ei|vain|nie|tylko|değil|sadece|yalnız|δεν|όχι|μόνο|не|только|лише)(?:[^\pL]|$)`)

// leftWords find a left hand in a description.
var leftWords = pattern.New(`(?i)(?:^|[^\pL])(?:LH|L\.H\.|left[- ]hand(?:ed)?|linksgewinde|(?:pas|filet(?:age)?) à gauche|rosca (?:a la )?izquierda|filetto sinistro|rosca esquerda|linkse draad|vänstergänga|левая резьба)(?:[^\pL]|$)`)

// limits notes what an item's description says that it may not be used for, or only for, and a left hand that none of its ports has.
func (r *reader) limits(it *build.Item, note func(words, why string)) {
	if limitWords.MatchString(it.About) {
		for _, limit := range title.Read(it.About).Limits {
			if !limitWords.MatchString(limit.Words) {
				continue // for compressed air: what the part is, and no word against its place
			}
			note(limit.Words, "in `about`: what it may be used for, so ask whether it suits its place")
		}
	}
	left := func(p build.Port) bool {
		return slices.ContainsFunc(p.End.Candidates, func(e threads.End) bool { return e.Left })
	}
	if words := leftWords.FindString(it.About); words != "" && !slices.ContainsFunc(it.Ports, left) {
		note(strings.Trim(words, " ,;:.()"), "a left hand in `about`, which none of its ports has")
	}
}

// threadNames find the name of a thread in a description.
var threadNames = pattern.New(`(?i)\b(?:npt|nptf|npsm|bsp[pt]?|jic|orb|orfs|unf)\b|\b(?:g|r[cp]?)\s?\d+/\d|\bm\d+\s?x\s?\d`)

// sameThread reports whether two ends can be of one thread.
func sameThread(a, b threads.EndReading) bool {
	return slices.ContainsFunc(a.Candidates, func(x threads.End) bool {
		return slices.ContainsFunc(b.Candidates, func(y threads.End) bool { return x.Form == y.Form && x.Size == y.Size })
	})
}

// apart finds two materials of lists of which no member is another's wider word; nil if there are none.
func apart(a, b []*catalog.Material) (x, y *catalog.Material) {
	if len(a) == 0 || len(b) == 0 {
		return nil, nil
	}
	for _, x := range a {
		for _, y := range b {
			if x == y || wider(x, y) || wider(y, x) {
				return nil, nil
			}
		}
	}
	return a[0], b[0]
}

// measures are the figures with a unit that a key of a part takes: the unit in words, the keys, and how
// it is read, in whatever unit of account.
var measures = []struct {
	figure *pattern.Pattern
	begins string // with what its unit begins, in small letters
	keys   []string
	read   func(text string) (float64, error)
}{
	{pattern.New(`(?i)\d[\d.,]*\s*(?:l(?:it(?:re|er)s?)?\s?/\s?(?:h|min)|lpm|lph|gp[hm])\b`), "lg", []string{"flow"}, reads(quantity.ParseFlow)},
	{pattern.New(`(?i)\d[\d.,]*\s*v(?:olts?)?\b`), "v", []string{"motor"}, reads(quantity.ParseVoltage)},
	{pattern.New(`(?i)\d[\d.,]*\s*k?w\b`), "kw", []string{"motor_power"}, reads(quantity.ParsePower)},
	{pattern.New(`(?i)\d[\d.,]*\s*a\b`), "a", []string{"motor_current", "current"}, reads(quantity.ParseCurrent)},
	{pattern.New(`(?i)\d[\d.,]*\s*(?:rpm|1/min)\b`), "r1/", []string{"speed", "motor_speed", "engine_speed"}, reads(quantity.ParseSpeed)},
	{pattern.New(`(?i)\d[\d.,]*\s*(?:microns?|[µμu]m)(?:\W|$)`), "mu", []string{"micron"}, reads(quantity.ParseLength)},
	{pattern.New(`(?i)-?\d[\d.,]*\s*°\s?[cf]\b|\d\s+[CF]\b`), "cf", []string{"max_water"}, reads(quantity.ParseTemperature)},
	{pattern.New(`(?i)\d[\d.,]*\s*mm\b`), "m", []string{"bore", "outside", "wall"}, reads(quantity.ParseLength)},
}

// tradeBore is how far a bore in millimetres may be from the inches that it stands for: 10 mm for 3/8.
const tradeBore = 0.06

func reads[Q ~float64](parse func(string) (Q, error)) func(string) (float64, error) {
	return func(text string) (float64, error) {
		v, err := parse(strings.TrimRight(text, " ,;)"))
		return float64(v), err
	}
}

// unitFigures notes the figures of a description whose sort a key of the part takes and none says.
func (r *reader) unitFigures(t *source.Table, it *build.Item, note func(words, why string)) {
	after := afterFigures(it.About)
	for i := range measures {
		m := &measures[i]
		has := func(key string) bool { return slices.Contains(it.Kind.Keys, key) }
		heat, across := m.keys[0] == "max_water", m.keys[0] == "bore"
		switch {
		case across && !it.Kind.Length, !across && !heat && !slices.ContainsFunc(m.keys, has):
			continue
		case m.keys[0] == "motor" && !t.Has("motor"), m.keys[0] == "flow" && it.Kind.Is(catalog.FlowMeter):
			continue // a rule reads it of the description
		}
		if !after.any(m.begins) {
			continue
		}
		figures := m.figure.FindAllString(it.About, -1)
		if len(figures) == 0 {
			continue
		}
		said, near := valuesIn(it.Title, m.figure, m.read), 0.02
		if across {
			near = tradeBore
		}
		for _, key := range m.keys {
			if v, err := m.read(t.Written(key)); err == nil {
				said = append(said, v) // in inches, perhaps
			}
		}
		for _, key := range t.Keys() {
			if key != "about" {
				said = append(said, valuesIn(t.Written(key), m.figure, m.read)...)
			}
		}
		for _, words := range figures {
			words = strings.TrimRight(words, " ,;)")
			v, err := m.read(words)
			if err == nil && !slices.ContainsFunc(said, func(s float64) bool { return math.Abs(s-v) <= near*math.Abs(v) }) {
				why := inAbout
				if heat {
					why = "a temperature: ratings are derated by the build's own"
				}
				note(words, why)
			}
		}
	}
}

// letters are what stands after the figures of a text.
type letters [256]bool

// afterFigures are the letters, made small, that stand after the figures of a text, with or without
// blanks between: a cheap look at which units there can be.
func afterFigures(text string) (after letters) {
	for i := 0; i < len(text); i++ {
		if text[i] < '0' || text[i] > '9' {
			continue
		}
		for i < len(text) && ('0' <= text[i] && text[i] <= '9' || text[i] == '.' || text[i] == ',') {
			i++
		}
		for i < len(text) && strings.IndexByte(" \t\n\f\r", text[i]) >= 0 {
			i++
		}
		if i < len(text) {
			c := text[i]
			if 'A' <= c && c <= 'Z' {
				c += 'a' - 'A'
			}
			after[c] = true
			i-- // it may be a figure
		}
	}
	return after
}

// any reports whether one of some letters is there, or one beyond ASCII, which may stand for any.
func (l *letters) any(of string) bool {
	for i := range len(of) {
		if l[of[i]] {
			return true
		}
	}
	return slices.Contains(l[utf8.RuneSelf:], true)
}

// valuesIn reads all figures of a sort in a text.
func valuesIn(text string, figure *pattern.Pattern, read func(string) (float64, error)) (out []float64) {
	for _, words := range figure.FindAllString(text, -1) {
		if v, err := read(words); err == nil {
			out = append(out, v)
		}
	}
	return out
}

// strengths finds what reads like a figure of strength in a description.
var strengths = pattern.New(`(?i)\b(?:class|cl|sch(?:edule)?|sdr|pn)\.?\s*\d|\d\s*(?:bar|psi|lbs?|kpa|mpa|#)(?:\W|$)|\d\s?wog\b|100r\d`)

// mayState is false of most texts in which [strengths] finds nothing, and cheap: beside a digit of
// one stands the end of its word before it, or the beginning of its unit after.
func mayState(text string) bool {
	for i := 0; i < len(text); i++ {
		if text[i] < '0' || text[i] > '9' {
			continue
		}
		if before := strings.TrimRight(text[:i], ". \t\n\f\r"); before != "" && like(before[len(before)-1], "slehrn") {
			return true
		}
		for i+1 < len(text) && '0' <= text[i+1] && text[i+1] <= '9' {
			i++
		}
		after := strings.TrimLeft(text[i+1:], " \t\n\f\r")
		switch {
		case after == "":
		case after[0] == '#' || after[0] >= 0x80, len(after) > 1 && (like(after[0], "bplkmw") && like(after[1], "asbpo") || like(after[0], "r") && after[1] <= '9'):
			return true
		}
	}
	return false
}

// like reports whether a letter is one of some small ones, in whatever case; one beyond ASCII may be,
// since k and s have such.
func like(c byte, letters string) bool { return c >= 0x80 || strings.IndexByte(letters, c|0x20) >= 0 }

// strengths notes the class, the standard and the pressures that a text of an item states and no key says.
func (r *reader) strengths(it *build.Item, text string, note func(words, why string)) {
	reading := title.Read(text)
	worded := func(w build.Worded) {
		w.Text = text
		it.Worded = append(it.Worded, w)
		note(w.Words, inAbout)
	}
	for _, words := range []string{reading.Class, reading.Schedule} {
		if words != "" && !strings.Contains(strings.ToLower(it.Class), words) {
			worded(build.Worded{Words: words, Class: words})
		}
	}
	stated := func(p quantity.Pressure) bool {
		return slices.ContainsFunc([]*quantity.Pressure{it.Rated, it.Set, it.FullFlow, it.Scale, it.Stall, it.Shutoff, it.Pressure, it.Vacuum, it.Process.MaxPressure}, func(k *quantity.Pressure) bool {
			return k != nil && math.Abs(float64(*k-p)) <= 0.02*float64(p)
		})
	}
	if rated := reading.Rated; reading.HasRated && !stated(rated) {
		worded(build.Worded{Words: rated.String(), Rated: &rated})
	}
	if spec, ok := pressure.HoseSpec(text); ok && it.Kind.Length && !strings.Contains(it.Spec, string(spec)) {
		worded(build.Worded{Words: string(spec), Spec: string(spec)})
	}
	for _, p := range reading.Pressures {
		if p.What != "full scale" && !stated(p.Pressure) {
			note(p.Words, p.What+", "+inAbout)
			if bar := p.Pressure; p.Bounds() {
				it.Worded = append(it.Worded, build.Worded{Text: text, Words: p.Words, Rated: &bar})
			}
		}
	}
}
