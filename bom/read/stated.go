package read

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
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
		p := quantity.Pressure(reading.RatedBar) * quantity.Bar
		it.Rated = pressureOf(t, "rated", it.Rated, p, "rates the part at")
	}
	it.Class = classOf(t, it.Class, reading)
	it.Spec = specOf(t, it)
	has := func(key string) bool { return slices.Contains(it.Kind.Keys, key) }
	for _, p := range reading.Pressures {
		bar := quantity.Pressure(p.Bar) * quantity.Bar
		switch {
		case p.What == "setting" && has("set"):
			it.Set = pressureOf(t, "set", it.Set, bar, "sets the part at")
		case p.What == "full scale" && has("scale") && it.Kind.Name == "gauge":
			it.Scale = pressureOf(t, "scale", it.Scale, bar, "gives a scale to")
		default:
			it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: p.Words, Why: p.What + ", which is no rating"})
		}
	}
	for _, s := range reading.Standards {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: s, Why: "a standard: no key takes it"})
	}
	if reading.HasCelsius {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: fmt.Sprintf("%.4g C", reading.Celsius), Why: "a temperature: ratings are derated by the build's own"})
	}
	if reading.Grade != "" && it.Material != reading.Material {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: reading.Grade, Why: "a grade, where the item's material is said"})
	}
	it.NotUsed = append(it.NotUsed, reading.NotUsed...)
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
var classNumber = regexp.MustCompile(`\d+`)

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
	if !ok || it.Kind.Name != "hose stock" || it.Spec == "" && t.Has("spec") {
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
