package cart

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/money"
	"handtight/bom/order"
)

// The column of the pack counts as its words would: two packs of ten clamps are twenty, and a
// shop that says both is read by its column.
func TestThePackHasAColumn(t *testing.T) {
	for _, row := range []struct{ why, text, quantity, unit, pack, want string }{
		{"two packs of ten", "Clamp 16-27 mm, 316", "2", "pack", "10", "20"},
		{"two, and fewer than a pack", "Clamp 16-27 mm, 316", "2", "", "10", "20"},
		{"the pack with its unit", "Clamp 16-27 mm, 316", "2", "pack", "10 pcs", "20"},
		{"the column before the words", "Clamp 16-27 mm, 316, pack of 5", "2", "pack", "10", "20"},
		{"no pack in the column, one in the words", "Clamp 16-27 mm, 316, pack of 5", "2", "pack", "", "10"},
		{"a pack of one is a piece", "Clamp 16-27 mm, 316", "2", "", "1", "2"},
		{"what is no number is no pack", "Clamp 16-27 mm, 316", "2", "", "bag", "2"},
	} {
		c, err := Read("c.csv", []byte("Description\tQty\tUnit\tPack size\n"+row.text+"\t"+row.quantity+"\t"+row.unit+"\t"+row.pack+"\n"), Options{})
		require.NoError(t, err, row.why)
		q, _, doubt := c.Lines[0].Quantity("pc", "")
		require.Empty(t, doubt, row.why)
		require.Equal(t, row.want, q.String(), row.why)
	}
}

// Why a quantity is not known is said in the words of what stands there, so that a buyer knows
// which cell to mend.
func TestWhyHowManyIsNotKnown(t *testing.T) {
	for _, row := range []struct{ text, quantity, doubt string }{
		{"Elbow 1/2 NPT female", "", "the line says no quantity"},
		{"Elbow 1/2 NPT female", "??", `its quantity is "??"`},
		{"Elbow 1/2 NPT female", "some", `its quantity "some" is no plain number`},
		{"Elbow 1/2 NPT female", "3 boats", `its quantity "3 boats" is no plain number`},
		{"Elbow 1/2 NPT female", "1,250", `its quantity "1,250" may be thousands or decimals`},
		{"Elbow 1/2 NPT female", "3 1/2", `its quantity "3 1/2" is no plain number`},
	} {
		c, err := Read("c.csv", []byte("Description\tQty\n"+row.text+"\t"+row.quantity+"\n"), Options{})
		require.NoError(t, err)
		l := &c.Lines[0]
		require.False(t, l.Counted, row.quantity)
		require.Equal(t, row.doubt, l.Doubt, row.quantity)
		_, _, doubt := l.Quantity("pc", "")
		require.Equal(t, row.doubt, doubt)
	}
}

// What a build counts in pieces, metres or rolls, and a line in pieces, packs, lengths or metres.
func TestQuantitiesInTheUnitOfTheBuild(t *testing.T) {
	one := money.Quantity(money.Piece)
	for _, row := range []struct {
		why        string
		line       Line
		unit       string
		want       money.Quantity
		how, doubt string
	}{
		{"metres by the unit", Line{Counted: true, Amount: 5 * one, Unit: "m"}, "m", 5 * one, "", ""},
		{"metres by the words", Line{Counted: true, Amount: 5 * one, PerMetre: true}, "m", 5 * one, "", ""},
		{"two lengths", Line{Counted: true, Amount: 2 * one, Length: one * 3 / 2}, "m", 3 * one, "2 x 1.5 m", ""},
		{"half a length", Line{Counted: true, Amount: one / 2, Length: one}, "m", 0, "", "0.5 pieces of 1 m cannot be"},
		{"more lengths than a ship takes", Line{Counted: true, Amount: 10_001 * one, Length: one}, "m", 0, "", "10001 pieces of 1 m cannot be"},
		{"as many as are still read", Line{Counted: true, Amount: 10_000 * one, Length: one}, "m", 10_000 * one, "10000 x 1 m", ""},
		{"pieces of hose, and no length", Line{Counted: true, Amount: 2 * one}, "m", 0, "", "the line says 2, and not whether metres or pieces, or how long one is"},
		{"metres of a fitting", Line{Counted: true, Amount: 2 * one, Unit: "m"}, "pc", 0, "", "it is counted in metres, and the build counts pieces"},
		{"half a fitting", Line{Counted: true, Amount: one / 2}, "pc", 0, "", "0.5 pieces cannot be"},
		{"a pack of one", Line{Counted: true, Amount: 4 * one, Pack: one}, "pc", 4 * one, "", ""},
		{"rolls are counted, whatever a carton holds", Line{Counted: true, Amount: 2 * one, Pack: 10 * one}, "roll", 2 * one, "", ""},
		{"fewer than a pack are packs", Line{Counted: true, Amount: 2 * one, Pack: 10 * one}, "pc", 20 * one, "2 packs of 10", ""},
		{"packs by the unit", Line{Counted: true, Amount: 20 * one, Unit: "pack", Pack: 10 * one}, "pc", 200 * one, "20 packs of 10", ""},
		{"a pair is always a pair", Line{Counted: true, Amount: 2 * one, Pack: 2 * one, Bundle: true}, "pc", 4 * one, "2 packs of 2", ""},
		{"no whole packs are pieces", Line{Counted: true, Amount: 11 * one, Pack: 10 * one}, "pc", 11 * one, "", ""},
		{"whole packs may be either", Line{Counted: true, Amount: 10 * one, Pack: 10 * one}, "pc", 0, "", "a pack holds 10, and the line says 10: it may mean pieces or packs"},
		{"more packs than a boat holds", Line{Counted: true, Amount: 100_001 * one, Unit: "pack", Pack: 10 * one}, "pc", 0, "", "the quantity is beyond what a boat holds"},
		{"nothing counted", Line{Amount: one}, "pc", 0, "", "the line says no quantity"},
	} {
		q, how, doubt := row.line.Quantity(row.unit, "")
		require.Equal(t, row.want, q, row.why)
		require.Equal(t, row.how, how, row.why)
		require.Equal(t, row.doubt, doubt, row.why)
	}
}

// Hose that is sold in coils, and clamps in packs, leave something over that nobody can leave out:
// no surplus. What goes beyond the pack is.
func TestWhatAPackLeavesOverIsNoSurplus(t *testing.T) {
	one := money.Quantity(money.Piece)
	for _, row := range []struct {
		why  string
		unit string
		buy  money.Quantity // what the build needs
		line Line
		more money.Quantity // what the order of the build takes of it
		want money.Quantity
	}{
		{"twelve metres in a coil of 25", "m", 12 * one, Line{Length: 25 * one}, 12 * one, 25 * one},
		{"twelve metres off the reel", "m", 12 * one, Line{}, 12 * one, 12 * one},
		{"a pack counts no metres", "m", 12 * one, Line{Pack: 50 * one}, 12 * one, 12 * one},
		{"five clamps in packs of four", "pc", 5 * one, Line{Pack: 4 * one}, 5 * one, 8 * one},
		{"five clamps, and the build's offer has ten", "pc", 5 * one, Line{Pack: 4 * one}, 10 * one, 10 * one},
		{"five clamps one by one", "pc", 5 * one, Line{}, 5 * one, 5 * one},
		{"two rolls of a carton of ten", "roll", 2 * one, Line{Pack: 10 * one}, 2 * one, 2 * one},
	} {
		n := &need{Need: &order.Need{Key: "n", Unit: row.unit, Placed: row.buy}}
		n.line = &order.Line{Need: n.Need, Order: row.more}
		require.Equal(t, row.want, (&judge{}).packed(n, &row.line), row.why)
	}
}

// A count that ends in three noughts behind a mark is how programs write a whole one, as long as
// a boat could take it.
func TestThreeNoughts(t *testing.T) {
	for text, want := range map[string]string{"2,000": "2", "2.000": "2", "12,000": "12", "2'000": "", "250,000": "", "2,500": "", "2000": "", ",000": "", "0,000": "0", "2 000": ""} {
		got, ok := wholeOf(text)
		require.Equal(t, want, got, text)
		require.Equal(t, want != "", ok, text)
	}
}
