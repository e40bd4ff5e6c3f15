package repair_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/read"
	"handtight/bom/repair"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/threads"
	"handtight/threads/makeup"
)

// bag is a shelf of items written as a build writes them: kind, two ends, material and rating.
func bag(t require.TestingT, rows ...string) *repair.Shelf {
	text := "[build]\nname = \"a box of parts\"\ncurrency = \"EUR\"\n[[item]]\nid = \"sea\"\nkind = \"sea\"\n[[item]]\nid = \"out\"\nkind = \"drain\"\n[[run]]\nname = \"r\"\npath = [\"sea\", \"out\"]\n"
	for i, r := range rows {
		f := strings.Split(r, "|")
		text += fmt.Sprintf("[[item]]\nid = \"p%d\"\nkind = %q\nports = { a = '%s', b = '%s' }\nmaterial = %q\nrated = \"100 bar\"\n", i, f[0], f[1], f[2], f[3])
	}
	build, faults := read.Parse("box.toml", []byte(text))
	require.NoError(t, faults.Err())
	return repair.Bag(build)
}

func ask(t *testing.T, a, b string, o repair.Options) repair.Answer {
	return repair.Adapt(end(t, a), end(t, b), o)
}

// none and some say whether a bag's pieces may be used.
func none(t *testing.T, got repair.Answer) {
	t.Helper()
	require.Empty(t, got.Chains)
	require.NotEmpty(t, got.None)
}

func some(t *testing.T, got repair.Answer, pieces int) {
	t.Helper()
	require.NotEmpty(t, got.Chains, got.None)
	require.Len(t, got.Chains[0].Pieces, pieces)
}

// What a fitter does and does not do, rule by rule; each with the same parts where the rule
// does not bind, so that it is the rule that refuses. Source: common practice.
func TestHygiene(t *testing.T) {
	two := func(t *testing.T) *repair.Shelf {
		return bag(t, "coupling|1/2 NPT female|1/2 NPT female|316", "adaptor|1/2 NPT male|G 1/2 male|316")
	}
	t.Run("H1 one piece below the waterline, none on a skin fitting", func(t *testing.T) {
		some(t, ask(t, "1/2 NPT male", "G 1/2 female", repair.Options{Shelf: two(t)}), 2)
		got := ask(t, "1/2 NPT male", "G 1/2 female", repair.Options{Shelf: two(t), Below: true})
		none(t, got)
		require.Contains(t, got.None, "below the waterline one piece")
		none(t, ask(t, "3/4 NPS male", "3/4 NPT female", repair.Options{Below: true}))
	})
	t.Run("H2 two pieces, three when asked for", func(t *testing.T) {
		three := bag(t, "coupling|1/2 NPT female|1/2 NPT female|316", "adaptor|1/2 NPT male|G 1/2 male|316", "adaptor|G 1/2 female|R 1/2 male|316")
		got := ask(t, "1/2 NPT male", "Rc 1/2 female", repair.Options{Shelf: three})
		none(t, got)
		require.Contains(t, got.None, "3 pieces")
		some(t, ask(t, "1/2 NPT male", "Rc 1/2 female", repair.Options{Shelf: three, Most: 3}), 3)
	})
	t.Run("H3 no bush on a hose end at high pressure", func(t *testing.T) {
		bush := bag(t, "bush|3/4 NPT male|1/2 NPT female|316")
		some(t, ask(t, "3/4 NPT female", "1/2 NPT male", repair.Options{Shelf: bush, Pressure: 60 * bar}), 1)
		none(t, ask(t, "3/4 NPT female", "1/2 NPT male", repair.Options{Shelf: bush, Pressure: 60 * bar, Hose: [2]bool{true, false}}))
		some(t, ask(t, "3/4 NPT female", "1/2 NPT male", repair.Options{Shelf: bush, Pressure: 6 * bar, Hose: [2]bool{true, false}}), 1)
	})
	t.Run("H4 no bush in a bush, none of three steps at high pressure", func(t *testing.T) {
		none(t, ask(t, "3/4 NPT female", "1/4 NPT male", repair.Options{Shelf: bag(t, "bush|3/4 NPT male|1/2 NPT female|316", "bush|1/2 NPT male|1/4 NPT female|316")}))
		low := ask(t, "1 NPT female", "3/8 NPT male", repair.Options{Pressure: 5 * bar})
		some(t, low, 1)
		require.Contains(t, titles(&low.Chains[0]), "bush")
		for _, c := range ask(t, "1 NPT female", "3/8 NPT male", repair.Options{Pressure: 60 * bar}).Chains {
			require.NotContains(t, titles(&c), "bush 1 NPT male x 3/8")
		}
	})
	t.Run("H5 one street piece before nipple and coupling", func(t *testing.T) {
		both := bag(t, "nipple|1/2 NPT male|1/2 NPT male|316", "coupling|1/2 NPT female|3/8 NPT female|316", "adaptor|1/2 NPT male|3/8 NPT female|316")
		some(t, ask(t, "1/2 NPT female", "3/8 NPT male", repair.Options{Shelf: both}), 1)
	})
	t.Run("H6 no metal taper in a plastic female", func(t *testing.T) {
		r := bag(t, "adaptor|R 3/4 male|3/4 NPT male|bronze")
		none(t, ask(t, "G 3/4 female plastic", "3/4 NPT female", repair.Options{Shelf: r}))
		some(t, ask(t, "G 3/4 female", "3/4 NPT female", repair.Options{Shelf: r}), 1)
	})
	t.Run("H7 metals in sea water", func(t *testing.T) {
		for _, metal := range []string{"brass", "galvanised steel", "304"} {
			one := bag(t, "coupling|1/2 NPT female|1/2 NPT female|"+metal)
			none(t, ask(t, "1/2 NPT male", "1/2 NPT male", repair.Options{Shelf: one, Water: "sea"}))
			some(t, ask(t, "1/2 NPT male", "1/2 NPT male", repair.Options{Shelf: one, Water: "fresh"}), 1)
		}
		beside := [2][]*catalog.Material{catalog.MaterialsIn("titanium")}
		one := bag(t, "coupling|1/2 NPT female|1/2 NPT female|bronze")
		some(t, ask(t, "1/2 NPT male", "1/2 NPT male", repair.Options{Shelf: one, Water: "sea"}), 1)
		none(t, ask(t, "1/2 NPT male", "1/2 NPT male", repair.Options{Shelf: one, Water: "sea", Beside: beside}))
	})
	t.Run("H8 product water", func(t *testing.T) {
		none(t, ask(t, "1/2 NPT male", "1/2 NPT male", repair.Options{Shelf: bag(t, "coupling|1/2 NPT female|1/2 NPT female|steel"), Water: "product"}))
		for _, it := range stock.Items() { // what closes with bedding compound is not stocked
			for _, e := range it.Ends {
				require.NotEqual(t, threads.NPS, e.Family, it.String())
			}
		}
	})
	t.Run("H9 no swivel without a seat", func(t *testing.T) {
		for _, it := range stock.Items() {
			for _, e := range it.Ends {
				seated := e.Seal != threads.NoSeal || e.Family == threads.JIC || e.Family == threads.SAE45 || e.Family == threads.NH || e.Family == threads.ORFS
				require.True(t, !e.Swivel || seated, it.String())
			}
		}
		none(t, ask(t, "G 1/2 male", "1/2 NPT female", repair.Options{Pressure: 60 * bar, Shelf: bag(t, "adaptor|G 1/2 female swivel|1/2 NPT male|316")}))
	})
	t.Run("H10 no taper male under a swivel", func(t *testing.T) {
		s := bag(t, "adaptor|G 1/2 female swivel 60 cone|1/2 NPT male|316", "adaptor|1/2 NPSM female swivel 60 cone|1/2 NPT male|316")
		none(t, ask(t, "R 1/2 male", "1/2 NPT female", repair.Options{Shelf: s}))
		none(t, ask(t, "1/2 NPT male", "G 1/2 female", repair.Options{Shelf: bag(t, "adaptor|1/2 NPSM female swivel washer|G 1/2 male|316")}))
		some(t, ask(t, "1/2 NPT male chamfer", "G 1/2 female", repair.Options{Shelf: bag(t, "adaptor|1/2 NPSM female swivel 60 cone|G 1/2 male|316")}), 1)
	})
	t.Run("H11 no cutting ring on a hose end, a socket on its own tube", func(t *testing.T) {
		got := ask(t, "12L male", "G 1/2 female", repair.Options{Pressure: 55 * bar})
		some(t, got, 1)
		for _, c := range got.Chains {
			for i := range c.Joints {
				mk := makeup.Of(&c.Joints[i])
				require.NotContains(t, mk.String(), "cutting ring")
			}
		}
		none(t, ask(t, "10 mm push-in", "1/2 NPT female", repair.Options{Shelf: bag(t, "adaptor|8 mm push-in male|1/2 NPT male|316")}))
		for _, it := range stock.Items() {
			for _, e := range it.Ends {
				require.False(t, e.Plastic && strings.HasPrefix(e.Family.String(), "24"), it.String())
			}
		}
	})
	t.Run("H12 something turns where it must", func(t *testing.T) {
		fixed := "adaptor|1/2 NPT female|G 1/2 male|316"
		none(t, ask(t, "1/2 NPT male", "G 1/2 female", repair.Options{Shelf: bag(t, fixed), Turns: true}))
		some(t, ask(t, "1/2 NPT male", "1/2 NPT male", repair.Options{Shelf: bag(t, "union|1/2 NPT female|1/2 NPT female|316"), Turns: true}), 1)
	})
	t.Run("H13 stainless in stainless is told of", func(t *testing.T) {
		got := ask(t, "1/2 NPT male", "1/2 NPT male", repair.Options{Material: "316"})
		require.Contains(t, strings.Join(got.Chains[0].Notes, ";"), "galling")
		got = ask(t, "1/2 NPT male", "1/2 NPT male", repair.Options{Material: "bronze"})
		require.NotContains(t, strings.Join(got.Chains[0].Notes, ";"), "galling")
	})
	t.Run("H14 a suction or a relief outlet is not narrowed", func(t *testing.T) {
		s := bag(t, "coupling|3/4 NPT female|1/2 NPT female|316", "adaptor|1/2 NPT male|G 3/4 male|316")
		some(t, ask(t, "3/4 NPT male", "G 3/4 female", repair.Options{Shelf: s}), 2)
		none(t, ask(t, "3/4 NPT male", "G 3/4 female", repair.Options{Shelf: s, Wide: true}))
	})
	t.Run("H15 marked ends before unmarked ones", func(t *testing.T) {
		s := bag(t, "adaptor|1/2 NPT male|R 1/2 male|316", "adaptor|1/2 NPT male|G 1/2 male|316")
		got := ask(t, "1/2 NPT female", "G 1/2 female", repair.Options{Shelf: s})
		require.Contains(t, got.Chains[0].Pieces[0].Texts[1]+got.Chains[0].Pieces[0].Texts[0], "G 1/2")
	})
	t.Run("H16 no garden hose thread in the middle", func(t *testing.T) {
		s := bag(t, "adaptor|1/2 NPT male|3/4 NH male|316", "adaptor|3/4 NH female swivel|G 1/2 male|316")
		none(t, ask(t, "1/2 NPT female", "G 1/2 female", repair.Options{Shelf: s}))
		some(t, ask(t, "3/4 NH male", "G 1/2 female", repair.Options{Shelf: s}), 1)
	})
}
