package makeup

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/internal/endtest"
)

// Materials as builders and shops write them. Numbers: EN 10088 (1.44.., 1.43..), EN 12164 (CW6..).
func TestMetalsByName(t *testing.T) {
	for want, names := range map[metal][]string{
		stainless:   {"316", "316L", "AISI 316", "304", "stainless steel", "Stainless", "1.4404", "1.4462 duplex", "A4", "a2", "super duplex", "904L"},
		copperAlloy: {"brass", "DZR", "dzr brass", "CW617N", "cw602n", "bronze", "gunmetal", "copper", "dezincification resistant"},
		plastic:     {"plastic", "PP", "PVC", "PA", "pe", "POM", "acetal", "nylon 66", "polypropylene", "PVDF", "ABS"},
		other:       {"titanium", "aluminium", "cast iron", "alloy 400"},
		steel:       {"steel", "carbon steel", "zinc plated steel"},
		0:           {"", "wood", "ceramic", "pps", "a40"},
	} {
		for _, name := range names {
			require.Equal(t, want, metalOf(name), "%q", name)
		}
	}
}

// A torque printed for steel stands for steel in steel, is halved beside brass or bronze, and
// for all else nothing is said (engine workshop manual: half).
func TestTorqueByTheTwoMaterials(t *testing.T) {
	m := threads.Mate(endtest.EndOf(t, "G 1/2 male"), endtest.EndOf(t, "G 1/2 female"))
	mk := Of(&m)
	require.Equal(t, "steel", mk.TorqueMaterial)
	require.Equal(t, Range[quantity.Torque]{98, 118, true}, Range[quantity.Torque]{quantity.Torque(round(mk.Torque.Least)), quantity.Torque(round(mk.Torque.Most)), mk.Torque.Known})
	for _, row := range []struct {
		why, a, b string
		share     float64 // of the printed torque; 0: none is given
	}{
		{"what it was printed for", "steel", "carbon steel", 1},
		{"brass in steel", "brass", "steel", 0.5},
		{"steel in bronze", "steel", "bronze", 0.5},
		{"brass in brass", "brass", "dzr", 0.5},
		{"stainless galls, and no figure was printed", "316", "316", 0},
		{"stainless in steel", "316", "steel", 0},
		{"stainless in brass", "316", "brass", 0},
		{"titanium", "titanium", "steel", 0},
		{"one is not said", "steel", "", 0},
		{"neither is said", "", "", 0},
		{"plastic", "steel", "pp", 0},
	} {
		for _, pair := range [][2]string{{row.a, row.b}, {row.b, row.a}} {
			got := mk.ForMetals(pair[0], pair[1])
			require.Equal(t, row.share > 0, got.Torque.Known, row.why)
			require.InDelta(t, row.share*float64(mk.Torque.Most), float64(got.Torque.Most), 1e-9, row.why)
			require.InDelta(t, row.share*float64(mk.Torque.Least), float64(got.Torque.Least), 1e-9, row.why)
			require.Equal(t, map[float64]string{0: "", 0.5: "brass or bronze", 1: "steel"}[row.share], got.TorqueMaterial, row.why)
		}
	}
}

func round(q quantity.Torque) int { return int(float64(q) + 0.5) }

// A torque printed for brass holds where each part is brass or steel, and is not raised.
func TestTorqueOfBrass(t *testing.T) {
	m := threads.Mate(endtest.EndOf(t, "ISO6149 M18x1.5 male"), endtest.EndOf(t, "ISO6149 M18x1.5 female"))
	mk := Of(&m)
	require.Equal(t, "brass", mk.TorqueMaterial)
	for pair, holds := range map[[2]string]bool{
		{"brass", "brass"}: true, {"steel", "brass"}: true, {"brass", "steel"}: true, {"bronze", "dzr"}: true, {"steel", "steel"}: true,
		{"316", "brass"}: false, {"brass", "316"}: false, {"brass", ""}: false, {"", "brass"}: false, {"pp", "brass"}: false, {"brass", "pp"}: false, {"titanium", "brass"}: false,
	} {
		got := mk.ForMetals(pair[0], pair[1])
		require.Equal(t, holds, got.Torque.Known, pair)
		if holds {
			require.Equal(t, mk.Torque, got.Torque, pair)
		}
	}
}

// Turns printed for steel crush a softer part sooner: they are dropped there, and kept for
// steel and stainless; those of stainless are dropped for brass alone; those of any metal stay.
func TestTurnsByTheTwoMaterials(t *testing.T) {
	turns := Range[threads.Turns]{1.25, 1.5, true}
	for _, row := range []struct {
		printed, a, b string
		kept          bool
	}{
		{"steel", "steel", "steel", true}, {"steel", "316", "steel", true}, {"steel", "brass", "steel", false}, {"steel", "steel", "brass", false},
		{"steel", "steel", "pp", false}, {"steel", "pp", "steel", false}, {"steel", "", "", true},
		{"stainless", "316", "316", true}, {"stainless", "brass", "316", false}, {"stainless", "316", "brass", false}, {"stainless", "316", "pp", true}, {"stainless", "steel", "316", true},
		{"metal", "brass", "brass", true}, {"any", "brass", "pp", true}, {"brass", "brass", "brass", true},
	} {
		got := Makeup{TurnsPast: turns, TurnsMaterial: row.printed}.ForMetals(row.a, row.b)
		require.Equal(t, row.kept, got.TurnsPast.Known, row)
		if row.kept {
			require.Equal(t, turns, got.TurnsPast, row)
			require.Equal(t, row.printed, got.TurnsMaterial, row)
		} else {
			require.Empty(t, got.TurnsMaterial, row)
		}
	}
	none := Makeup{TurnsMaterial: "steel"}.ForMetals("brass", "brass")
	require.Equal(t, "steel", none.TurnsMaterial, "where there are no turns nothing is dropped")
}
