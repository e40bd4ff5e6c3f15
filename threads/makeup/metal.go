package makeup

import (
	"strings"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// metal is what a torque or a count of turns was printed for. The zero value is a
// material that is not known.
type metal uint8

const (
	steel metal = iota + 1
	stainless
	copperAlloy
	plastic
	other // a metal for which no table prints a figure
)

// metalOf sorts a material's name, as a builder or a shop writes it.
func metalOf(name string) metal {
	name = strings.ToLower(name)
	for _, c := range []struct {
		metal metal
		words []string
	}{
		{stainless, []string{"stainless", "304", "316", "duplex", "904", "1.44", "a4", "a2"}},
		{copperAlloy, []string{"brass", "bronze", "gunmetal", "copper", "dzr", "dezincification", "cw6"}},
		{plastic, []string{"plastic", "pp", "pvc", "pa", "pe", "pom", "acetal", "nylon", "polypropylene", "pvdf", "abs"}},
		{other, []string{"titanium", "aluminium", "alloy", "iron"}},
		{steel, []string{"steel"}},
	} {
		for _, w := range c.words {
			long := len(w) > 3 || len(w) == 3 && strings.ContainsAny(w, "0123456789") // 316L, CW617N; no pa in spare
			if name == w || long && strings.Contains(name, w) {
				return c.metal
			}
		}
	}
	return 0
}

// nonferrousShare is what of steel's torque a joint with a brass or bronze part
// takes: half, by an engine workshop manual's standard torques of flared and
// face-seal fittings. A grain conveyor manual prints 70 percent for brass seats;
// the lower of the two is kept.
const nonferrousShare = 0.5

const nonferrousSource = "half of steel's where a part is not steel (engine workshop manual, torque tables for flared and O ring fittings)"

// ForMetals fits a make-up to the materials of the two parts, by their names: "316",
// "brass", "carbon steel"; "" where one is not said. A torque that was printed for
// steel stands for steel in steel, is halved where the other or both are copper
// alloys, and is dropped for all else and where a material is not known. Turns that
// were printed for steel are dropped for copper alloys, since they crush sooner.
// Plastics take no figure but those for plastic threads.
func (mk Makeup) ForMetals(a, b string) Makeup {
	m, n := metalOf(a), metalOf(b)
	soft := m == copperAlloy || n == copperAlloy
	known := m != 0 && n != 0
	if mk.Torque.Known {
		printed := metalOf(mk.TorqueMaterial)
		switch {
		case known && m == printed && n == printed:
		case known && printed == copperAlloy && (m == steel || m == copperAlloy) && (n == steel || n == copperAlloy):
		case known && printed == steel && soft && (m == steel || m == copperAlloy) && (n == steel || n == copperAlloy):
			mk.Torque.Least, mk.Torque.Most = nonferrousShare*mk.Torque.Least, nonferrousShare*mk.Torque.Most
			mk.TorqueMaterial = "brass or bronze"
			mk.Source = strings.Join(distinct([]string{mk.Source, nonferrousSource}), "; ")
		default:
			mk.Torque, mk.TorqueMaterial = Range[quantity.Torque]{}, ""
		}
	}
	printed := metalOf(mk.TurnsMaterial)
	if mk.TurnsPast.Known && (printed == steel && (soft || m == plastic || n == plastic) || printed == stainless && soft) {
		mk.TurnsPast, mk.TurnsMaterial = Range[threads.Turns]{}, ""
	}
	return mk
}
