package rule

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/circuit"
	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/pattern"
)

// vessels lists the pressure vessels, in their order.
func vessels(s *bom.System) []*graph.Unit { return ofKind(s, catalog.Separates) }

// ofKind lists the units whose kind has a role.
func ofKind(s *bom.System, role catalog.Role) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Is(role) {
			out = append(out, u)
		}
	}
	return out
}

// contents lists the items of a role that are inside another.
func contents(s *bom.System, holder *build.Item, role catalog.Role) []*build.Item {
	var out []*build.Item
	for _, it := range s.Graph.Contents(holder) {
		if it.Kind.Is(role) {
			out = append(out, it)
		}
	}
	return out
}

// port is the index of a unit's port of a name; ok is false where it has none.
func port(u *graph.Unit, name string) (int, bool) {
	i := u.Item.PortIndex(name)
	return u.First + i, i >= 0
}

// wordsOf is what a shop or a builder wrote of an item, in small letters.
func wordsOf(it *build.Item) string {
	return strings.ToLower(strings.Join([]string{strings.ReplaceAll(it.ID, "-", " "), it.About, it.Title}, " | "))
}

// onward is how water can go on from a port, if people turn every valve and selector as they
// like, without passing a membrane, a relief or a pump.
func onward(s *bom.System, from int) *circuit.Reached {
	return s.Circuit.Reach(s.Circuit.JunctionOf[from], func(e *circuit.Link, back bool) bool {
		return circuit.Flows(e, back, true) || e.Is == catalog.Throttle && !back
	})
}

// leftOpen reports whether water that is reached leaves by a port that stands open on purpose.
func leftOpen(s *bom.System, from *circuit.Reached) bool {
	return slices.ContainsFunc(s.Build.LeftOpen, func(r build.PortRef) bool {
		u, ok := s.Graph.Unit(r.Unit)
		return ok && u.Item.PortIndex(r.Port) >= 0 && from.Port(u.First+u.Item.PortIndex(r.Port))
	})
}

// reachedOf lists the units of a role that are reached at a port.
func reachedOf(s *bom.System, start int, from *circuit.Reached, role catalog.Role) []*graph.Unit {
	var out []*graph.Unit
	for _, u := range s.Circuit.UnitsAround(start) {
		if !u.Item.Kind.Is(role) {
			continue
		}
		for i := range u.Item.Ports {
			if from.Port(u.First + i) {
				out = append(out, u)
				break
			}
		}
	}
	return out
}

// without reports whether sea water comes from an intake to a port by a way that no unit of
// some sort stands in.
func without(s *bom.System, to int, stands func(*graph.Unit) bool) bool {
	for _, u := range s.Circuit.UnitsAround(to) {
		if !s.Waters.Intake(u) {
			continue
		}
		start := u.First + len(u.Item.Ports) - 1
		reached := s.Circuit.Reach(s.Circuit.JunctionOf[start], func(e *circuit.Link, back bool) bool {
			return !stands(e.Unit) && (circuit.Flows(e, back, true) && !e.ShutNormally() || e.Is == catalog.FeedPump && !back)
		})
		if reached.Port(to) {
			return true
		}
	}
	return false
}

var (
	sizePair  = pattern.New(`(?:^|[^\d.,])(1\.8|2\.5|4|8)\s*(?:"|''|in\b|inch|inches)?\s*[x×]\s*(1[24]|21|2[46]|40|60|80|120)(?:$|[^\d.,]|[.,](?:\D|$))`)
	sizeCode  = pattern.New(`(?:^|[^\d.,])(18|24|25|40|80)(12|14|21|26|40|60|80)(?:[^\d]|$)`)
	inchWords = pattern.New(`(?:^|[^\d./,])(\d{1,2}(?:[.,]\d+)?)\s*-?\s*(?:"|''|in\b|inch\b|inches\b)`)
)

// vesselSize reads the size of an element or a vessel from its words, in inches across and
// long: "2.5 x 21", "2521". ok is false where they do not say it.
//
// Source of the code: tenths of an inch across and whole inches long, common practice.
func vesselSize(text string) (across, long float64, ok bool) {
	text = strings.ReplaceAll(text, "2,5", "2.5")
	m, tenths := sizePair.FindStringSubmatch(text), 1.0
	if m == nil {
		m, tenths = sizeCode.FindStringSubmatch(text), 10
	}
	if m == nil {
		return 0, 0, false
	}
	across, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		return 0, 0, false
	}
	long, err = strconv.ParseFloat(m[2], 64)
	return across / tenths, long, err == nil
}

// sizeOf is the size of an element or a vessel: as `size` says it, else by its words. An element's own
// `length` comes before that of either, as far as it is another.
func sizeOf(it *build.Item) (across, long float64, ok bool) {
	if it.Process.Size != "" {
		across, long, ok = vesselSize(it.Process.Size)
	}
	for _, text := range []string{it.Title, it.About, it.ID} { // as the flows are reckoned: the title goes first
		if !ok {
			across, long, ok = vesselSize(strings.ReplaceAll(text, "-", " "))
		}
	}
	if ok && it.Length != nil && it.Kind.Is(catalog.Element) {
		if said := it.Length.Millimetres() / 25.4; math.Abs(said-long) > 1 { // elements of one code differ by less
			long = math.Round(said*10) / 10
		}
	}
	return across, long, ok
}

// inchesLong reads the length of a cartridge or a housing from its words, in inches: those
// that are sold are of 5, 9.75 or 10, 20, 30 and 40 inches (common practice).
func inchesLong(text string) (long float64, ok bool) {
	for _, m := range inchWords.FindAllStringSubmatch(text, -1) {
		v, err := strconv.ParseFloat(strings.Replace(m[1], ",", ".", 1), 64)
		switch {
		case err != nil:
		case v == 9.75 || v == 9.78 || v == 9.8:
			return 10, true
		case v == 5 || v == 10 || v == 20 || v == 30 || v == 40:
			return v, true
		}
	}
	return 0, false
}
