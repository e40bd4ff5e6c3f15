package cart_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/cart"
	"handtight/bom/order"
)

// wholeOf is a line of the right part, as many as the build needs of it.
func wholeOf(t *testing.T, o *order.Order, item string) string {
	for _, l := range o.Lines {
		if l.Need.Key == item {
			return fmt.Sprintf("\t%s\t%s\n", right[item], l.Need.Buy())
		}
	}
	require.Fail(t, "no item "+item)
	return ""
}

// A line beside the right one, which covers all that is needed. What would be dangerous in its
// place is said all the same, for it is taken for the right one when it lies beside it; what only
// does not fit is nothing that the build needs. Alone, each is what it is. Written down before
// any was judged.
func TestALineBesideTheRightOneAndAlone(t *testing.T) {
	sys, o := plant(t)
	for _, row := range []struct {
		why, item, line string
		beside, alone   cart.Status
	}{
		{"once more", "throttle", "Needle valve 3/8 NPT female, 316, 200 bar", cart.Surplus, cart.Covers},
		{"too weak", "throttle", "Needle valve 3/8 NPT female, 316, 20 bar", cart.LowRating, cart.LowRating},
		{"of brass", "throttle", "Needle valve 3/8 NPT female, brass, 200 bar", cart.NotNeeded, cart.WrongMaterial},
		{"of another thread", "throttle", "Needle valve G 3/8 female, 316, 200 bar", cart.NotNeeded, cart.WrongThread},
		{"a relief that opens too late", "relief", "Relief valve 1/4 NPT male x 3/8 NPT female, 316, set 90 bar, rated 140 bar", cart.WrongSetting, cart.WrongSetting},
		{"a gauge that is bent at work", "hp-gauge", "Gauge 0-60 bar, 1/4 NPT male, 316", cart.LowRating, cart.LowRating},
		{"a hose of a weaker standard", "hp-hose-feed", "Hose SAE 100R6 3/8\", 1.2 m, 3/8 NPT male x 9/16-18 JIC female swivel, 316 ends", cart.LowRating, cart.LowRating},
		{"a hose of another standard", "hp-hose-feed", "Hose SAE 100R7 3/8\", 1.2 m, 3/8 NPT male x 9/16-18 JIC female swivel, 316 ends", cart.WrongStandard, cart.WrongStandard},
		{"a tail whose thread is open, while other tails are short", "tail-g34", "Hose tail 3/4 BSP male x 19 mm, bronze", cart.Unsure, cart.Unsure},
		{"nothing of the build's", "throttle", "Union M22x1.5 female, brass", cart.NotNeeded, cart.NotNeeded},
	} {
		alone, _ := one(t, sys, o, "\t"+row.line+"\t1")
		require.Equal(t, row.alone, alone.Status, "alone, %s: %s", row.why, alone.Reason)
		both := text(t, "c.csv", "Code\tDescription\tQty\n"+wholeOf(t, o, row.item)+"\t"+row.line+"\t1\n")
		r := cart.Judge(sys, o, []*cart.Cart{both}, nil)
		require.Equal(t, cart.Covers, r.Lines[0].Status, "%s: %s", row.why, r.Lines[0].Reason)
		require.Equal(t, row.beside, r.Lines[1].Status, "beside it, %s: %s", row.why, r.Lines[1].Reason)
		wrong := !slices.Contains([]cart.Status{cart.NotNeeded, cart.Surplus, cart.Unsure}, row.beside)
		require.Equal(t, wrong, r.Lines[1].IsWrong(), row.why)
		require.NotEmpty(t, r.Lines[1].Remedy, row.why)
	}
}

// Where nothing is short any more, what the words leave open is not asked about: it is like what is
// covered, and to be taken out.
func TestALineBesideAllThatIsNeeded(t *testing.T) {
	sys, o := plant(t)
	for line, item := range map[string]string{
		"Hose tail 3/4 BSP male x 19 mm, bronze": "tail-g34",
		"Needle valve 3/8 NPT, 316, 200 bar":     "throttle",
		"Adaptor 1/2 NPT x 9/16-18 JIC, 316":     "jic-n12",
	} {
		more := text(t, "more.csv", "Code\tDescription\tQty\n\t"+line+"\t1\n")
		r := cart.Judge(sys, o, []*cart.Cart{sample(t, "elbe.csv"), sample(t, "wharf.csv"), sample(t, "pier.xlsx"), more}, nil)
		v := r.Lines[len(r.Lines)-1]
		require.Equal(t, cart.NotNeeded, v.Status, "%s: %s", line, v.Reason)
		require.Equal(t, []string{item}, v.Items, line)
		require.Contains(t, v.Reason, "which is covered already", line)
		require.Empty(t, r.Questions, line)
	}
}

// The same line in a second cart is money for nothing: which cart has it already is said, and of
// one cart alone it is a surplus that may be kept as a spare.
func TestBoughtTwiceNamesTheOtherCart(t *testing.T) {
	sys, o := plant(t)
	line := "Code\tDescription\tQty\n" + wholeOf(t, o, "throttle")
	r := cart.Judge(sys, o, []*cart.Cart{text(t, "elbe.csv", line), text(t, "wharf.csv", line)}, nil)
	require.Equal(t, cart.Covers, r.Lines[0].Status)
	require.Equal(t, cart.BoughtTwice, r.Lines[1].Status)
	require.Contains(t, r.Lines[1].Reason, "elbe.csv buys it too.")
	require.NotContains(t, r.Lines[1].Reason, "wharf.csv")
	require.Contains(t, r.Lines[1].Remedy, "out of the cart, or keep it as a further spare.")
	require.Equal(t, "throttle", r.Lines[1].Item())
}

// Where a line is taken out by its owner nothing is counted of it and nothing is asked, also if
// it is the wrong part.
func TestAStruckLineIsNeitherCountedNorJudged(t *testing.T) {
	sys, o := plant(t)
	for _, line := range []string{"\tNeedle valve 3/8 NPT female, 316, 200 bar\t0", "\t~~Needle valve G 3/8 female, brass~~\t1", "\tTotal\t12"} {
		v, r := one(t, sys, o, line)
		require.Equal(t, cart.Out, v.Status, line)
		require.False(t, v.Known, line)
		require.Empty(t, r.Questions, line)
		require.Zero(t, tally(t, r, "throttle").InCart, line)
		require.Equal(t, cart.Missing, tally(t, r, "throttle").Status, line)
	}
}

// What a person confirms to be nothing of the build's is not asked about again, and what he
// confirms to be an item that the build has no more is judged by its words.
func TestWhatIsConfirmedToBeNothing(t *testing.T) {
	sys, o := plant(t)
	for _, row := range []struct {
		item   string
		status cart.Status
	}{{"", cart.NotNeeded}, {"sold-last-year", cart.Covers}, {"throttle", cart.Covers}} {
		c := text(t, "c.csv", "Code\tDescription\tQty\n\tNeedle valve 3/8 NPT female, 316, 200 bar\t1\n")
		accepted := &cart.Accepted{}
		accepted.Add(&c.Lines[0], row.item)
		r := cart.Judge(sys, o, []*cart.Cart{c}, accepted)
		require.Equal(t, row.status, r.Lines[0].Status, "%q: %s", row.item, r.Lines[0].Reason)
	}
}
