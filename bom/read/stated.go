package read

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// stated takes what an item's title states beside its kind and its ends: rating,
// class, schedule, setting, scale and the standard of a hose, each as if it were
// written in its key. A title and a key that differ are a fault that names both.
// What no key takes is noted as not used.
func (r *reader) stated(t *source.Table, it *build.Item, reading threads.Reading) {
	if it.Title == "" {
		return
	}
	if reading.HasRated {
		p := reading.Rated
		it.Rated = pressureOf(t, "rated", it.Rated, p, "rates the part at")
	}
	it.Class = classOf(t, it.Class, reading)
	it.Spec = specOf(t, it)
	r.materialOf(t, it, reading)
	has := func(key string) bool { return slices.Contains(it.Kind.Keys, key) }
	for _, p := range reading.Pressures {
		bar := p.Pressure
		switch {
		case p.What == "setting" && has("set"):
			it.Set = pressureOf(t, "set", it.Set, bar, "sets the part at")
		case p.What == "full scale" && has("scale") && it.Kind.Is(catalog.Gauge):
			it.Scale = pressureOf(t, "scale", it.Scale, bar, "gives a scale to")
		default:
			it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: p.Words, Why: p.What + ", which is no rating"})
		}
	}
	for _, s := range reading.Standards {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: s, Why: "a standard: no key takes it"})
	}
	if reading.HasTemperature {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: quantity.Significant(reading.Temperature.Celsius(), 4) + " C", Why: "a temperature: ratings are derated by the build's own"})
	}
	if reading.Grade != "" && it.Material != reading.Material {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: reading.Grade, Why: "a grade, where the item's material is said"})
	}
	it.NotUsed = append(it.NotUsed, reading.NotUsed...)
}

// materialOf reports a title and a key of two materials of which neither is the other's wider word.
func (r *reader) materialOf(t *source.Table, it *build.Item, reading threads.Reading) {
	said, ok := t.Text("material")
	if !ok || reading.Material == "" {
		return
	}
	titled, keyed := r.materials(reading.Material), r.materials(said)
	if len(titled) == 0 || len(keyed) == 0 {
		return
	}
	for _, a := range titled {
		for _, b := range keyed {
			if a == b || wider(a, b) || wider(b, a) {
				return
			}
		}
	}
	t.Fault("material", fmt.Sprintf("the title says %s, and `material` says %s", titled[0].Title, said), "write the one that stands on the part, and take the other out")
}

// wider reports whether a material's name is a word for a sort that another belongs to: stainless of
// 316, brass of DZR brass, plastic of all plastics.
func wider(a, b *catalog.Material) bool {
	word, _, _ := strings.Cut(a.Name, " ")
	return strings.Contains(strings.ToLower(b.Title), strings.ToLower(word)) || a.Name == "plastic" && b.Group == "plastic"
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

// wordsOnly notes the figures of strength that an item's `about` states: a description is no key, and
// no figure is read from it.
func (r *reader) wordsOnly(it *build.Item) {
	if !mayState(it.About) || !strengths.MatchString(it.About) {
		return
	}
	const why = "in `about`, from which no figure is read"
	reading := title.Read(it.About)
	note := func(words string) {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: words, Why: why})
	}
	for _, words := range []string{reading.Class, reading.Schedule} {
		if words != "" && !strings.Contains(strings.ToLower(it.Class), words) {
			note(words)
		}
	}
	stated := func(p quantity.Pressure) bool {
		return slices.ContainsFunc([]*quantity.Pressure{it.Rated, it.Set, it.FullFlow, it.Scale, it.Stall, it.Shutoff, it.Pressure, it.Vacuum, it.Process.MaxPressure}, func(k *quantity.Pressure) bool {
			return k != nil && math.Abs(float64(*k-p)) <= 0.02*float64(p)
		})
	}
	if rated := reading.Rated; reading.HasRated && !stated(rated) {
		note(rated.String())
	}
	if spec, ok := pressure.HoseSpec(it.About); ok && it.Kind.Length && !strings.Contains(it.Spec, string(spec)) {
		note(string(spec))
	}
	for _, p := range reading.Pressures {
		if p.What != "full scale" && !stated(p.Pressure) {
			it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: p.Words, Why: p.What + ", " + why})
		}
	}
}

// pressureOf is the pressure of a key, else that of the title. Two that differ by
// more than they are rounded are a fault.
func pressureOf(t *source.Table, key string, said *quantity.Pressure, titled quantity.Pressure, does string) *quantity.Pressure {
	switch {
	case said == nil && t.Has(key):
		return nil // the key is at fault itself
	case said == nil:
		return &titled
	case math.Abs(float64(*said-titled)) > 0.02*math.Abs(float64(titled)):
		t.Fault(key, fmt.Sprintf("the title %s %s, and `%s` says %s", does, titled, key, said), "write the one that stands on the part, and take the other out")
	}
	return said
}

// classNumber finds the number of a class or schedule in what people write.
var classNumber = pattern.New(`\d+`)

// classOf is the class of the key, else that of the title.
func classOf(t *source.Table, said string, reading threads.Reading) string {
	titled := strings.TrimSpace(reading.Class + " " + reading.Schedule)
	if titled == "" || said == "" && t.Has("class") {
		return said
	}
	if said == "" {
		return titled
	}
	for _, part := range []string{reading.Class, reading.Schedule} {
		sort, number, _ := strings.Cut(part, " ")
		about := strings.Contains(strings.ToLower(said), strings.ToLower(sort)) || sort == "class" && strings.ContainsAny(said, "#") || sort == "class" && strings.Contains(strings.ToLower(said), "lb")
		if part != "" && about && !slices.Contains(classNumber.FindAllString(said, -1), number) {
			t.Fault("class", fmt.Sprintf("the title says %s, and `class` says %s", part, said), "write the one that stands on the part, and take the other out")
		}
	}
	return said
}

// specOf is the hose standard of the key, else that of the title of a hose.
func specOf(t *source.Table, it *build.Item) string {
	titled, ok := pressure.HoseSpec(it.Title)
	if !ok || !it.Kind.Is(catalog.HoseStock) || it.Spec == "" && t.Has("spec") {
		return it.Spec
	}
	if it.Spec == "" {
		return string(titled)
	}
	if said, ok := pressure.HoseSpec(it.Spec); ok && said != titled {
		t.Fault("spec", fmt.Sprintf("the title says %s, and `spec` says %s", titled, it.Spec), "write the one that stands on the hose, and take the other out")
	}
	return it.Spec
}
