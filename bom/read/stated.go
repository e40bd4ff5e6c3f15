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
			if p.Bounds() {
				it.Worded = append(it.Worded, build.Worded{Text: it.Title, Words: p.Words, Rated: &bar})
			}
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
	for _, limit := range reading.Limits {
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: limit.Words, Why: "what it may be used for: ask whether it suits its place"})
	}
}

// materialOf reports a title and a key of two materials of which neither is the other's wider word.
func (r *reader) materialOf(t *source.Table, it *build.Item, reading threads.Reading) {
	said, ok := t.Text("material")
	if !ok || reading.Material == "" {
		return
	}
	titled, keyed := r.materials(reading.Material), r.materials(said)
	if a, _ := apart(titled, keyed); a == nil {
		return
	}
	t.Fault("material", fmt.Sprintf("the title says %s, and `material` says %s", titled[0].Title, said), "write the one that stands on the part, and take the other out")
}

// wider reports whether a material's name is a word for a sort that another belongs to: stainless of
// 316, brass of DZR brass, plastic of all plastics.
func wider(a, b *catalog.Material) bool {
	word, _, _ := strings.Cut(a.Name, " ")
	return strings.Contains(strings.ToLower(b.Title), strings.ToLower(word)) || a.Name == "plastic" && b.Group == "plastic"
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

// titledEnds compares the ends that a title names with the `ports` beside it. As many threads as there are
// ports, and one of them on none, is a fault that names both; what else no port has is noted.
func titledEnds(t *source.Table, it *build.Item, reading threads.Reading) {
	if !t.Has("ports") {
		return // the ports are the title's own
	}
	for _, e := range reading.Ends {
		if len(e.Candidates) > 1 && it.Kind.Is(catalog.Separates) {
			continue // 4 x 40 is the size of its elements
		}
		if len(e.Candidates) == 0 || len(it.Ports) == 0 || slices.ContainsFunc(it.Ports, func(p build.Port) bool { return len(p.End.Candidates) == 0 || saysOf(p.End, e) }) {
			continue
		}
		if len(e.Candidates) == 1 && len(reading.Ends) == len(it.Ports) && !slices.ContainsFunc(it.Ports, func(p build.Port) bool { return sameThread(p.End, e) }) {
			t.Fault("ports", fmt.Sprintf("the title names an end %s, and none of `ports` is one", e.Candidates[0]), "write the ends that stand on the part, and mend the other")
			continue
		}
		it.NotUsed = append(it.NotUsed, threads.NotUsed{Words: e.Words, Why: "an end of the title that no port has"})
	}
}

// saysOf reports whether an end of `ports` can be all that a title says of an end.
func saysOf(port, titled threads.EndReading) bool {
	return slices.ContainsFunc(port.Candidates, func(p threads.End) bool {
		return slices.ContainsFunc(titled.Candidates, func(e threads.End) bool {
			sex := p.Sex == e.Sex || p.Sex == threads.NoSex || e.Sex == threads.NoSex || titled.Question != ""
			size := p.Form == e.Form && (p.Form != nil || p.Family == e.Family && math.Abs(float64(p.Diameter-e.Diameter)) < 1)
			return size && sex && p.Left == e.Left && (p.Seal == e.Seal || e.Seal == threads.NoSeal) && (p.Swivel || !e.Swivel)
		})
	})
}
