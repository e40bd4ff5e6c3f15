package cart_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/order"
)

// One size said in two units that disagree is asked about, with both; where they agree nothing is
// asked. Written down before any was judged.
func TestASizeSaidTwice(t *testing.T) {
	sys, o := plant(t)
	for _, row := range []struct {
		line string
		item string
		asks []string // of the question; none: it covers
	}{
		{`Suction hose 19 mm (3/4"), wire helix, per metre`, "suction-hose", nil},
		{`Suction hose 3/4" (19 mm), wire helix, per metre`, "suction-hose", nil},
		{`Suction hose 19 mm = 3/4", wire helix, per metre`, "suction-hose", nil},
		{`Suction hose 20 mm (3/4"), wire helix, per metre`, "suction-hose", []string{"20 mm", `3/4"`}}, // the answer was first that it covers: a clamp only hides the millimetre
		{`Suction hose 19 mm (1/2"), wire helix, per metre`, "suction-hose", []string{"19 mm", `1/2"`}},
		{`Suction hose 1/2" (19 mm), wire helix, per metre`, "suction-hose", []string{"19 mm", `1/2"`}},
		{`Suction hose 3/4" (16 mm), wire helix, per metre`, "suction-hose", []string{"16 mm", `3/4"`}},
		{`Saugschlauch 19 mm (1 Zoll), Stahlspirale, Meterware`, "suction-hose", []string{"19 mm", "1 Zoll"}},
		{`Rubber water hose 13 mm (3/8"), 10 bar, per metre`, "discharge-hose", []string{"13 mm", `3/8"`}},
		{`Rubber water hose 13 mm / 3/4", 10 bar, per metre`, "discharge-hose", []string{"13 mm", `3/4"`}},
		{`Rubber water hose 13 mm 5/8", 10 bar, per metre`, "discharge-hose", []string{"13 mm", `5/8"`}},
		{`Hose tail G 3/4 male x 19 mm (3/4") barb, bronze`, "tail-g34", nil},
		{`Hose tail G 3/4 male x 19 mm (1/2") barb, bronze`, "tail-g34", []string{"19 mm", `1/2"`}},
		{`Hose tail G 3/4 male x barb 3/4 (16 mm), bronze`, "tail-g34", []string{"16 mm", "3/4"}},
		{`Hose SAE 100R8 3/8" (10 mm), 1.2 m, 3/8 NPT male x 9/16-18 JIC female swivel, 316 ends`, "hp-hose-feed", nil},
		{`Hose SAE 100R8 3/8" (13 mm), 1.2 m, 3/8 NPT male x 9/16-18 JIC female swivel, 316 ends`, "hp-hose-feed", []string{"13 mm", `3/8"`}},
		{`Push-in elbow 1/4 NPT male x 10 mm (1/2"), acetal, drinking water`, "product-elbow", []string{"10 mm", `1/2"`}},
	} {
		coversOrAsks(t, sys, o, row.line, row.item, row.asks)
	}
}

// Two materials in one line: where both suit the place it is covered, and where one does not, it is
// asked which is meant. Written down before any was judged.
func TestTwoMaterials(t *testing.T) {
	sys, o := plant(t)
	for _, row := range []struct {
		line string
		item string
		asks []string
	}{
		{"Needle valve 3/8 NPT female, 316 (1.4404), 200 bar", "throttle", nil},
		{"Needle valve 3/8 NPT female, 316/316L, 200 bar", "throttle", nil},
		{"Needle valve 3/8 NPT female, 316 with PTFE seats, 200 bar", "throttle", nil},
		{"Needle valve 3/8 NPT female, 316 or super duplex, 200 bar", "throttle", nil},
		{"Needle valve 3/8 NPT female, 316/brass, 200 bar", "throttle", []string{"316", "brass"}},
		{"Needle valve 3/8 NPT female, 316 (304), 200 bar", "throttle", []string{"316", "304"}},
		{"Nadelventil 3/8 NPT IG, Edelstahl 316 / Messing, 200 bar", "throttle", []string{"316", "brass"}},
		{"Robinet à pointeau 3/8 NPT femelle, inox 316 ou laiton, 200 bar", "throttle", []string{"316", "brass"}},
		{"Hose tail G 3/4 male x 19 mm barb, bronze/brass", "tail-g34", []string{"bronze", "brass"}},
		{"Hose tail G 3/4 male x 19 mm barb, bronze (galvanised)", "tail-g34", []string{"bronze", "galvanised"}},
		{"Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316 / carbon steel, class 3000", "hp-tee", []string{"316", "carbon steel"}},
	} {
		coversOrAsks(t, sys, o, row.line, row.item, row.asks)
	}
}

// coversOrAsks holds that a line covers an item with no question, or that what is asked of it names all of asks.
func coversOrAsks(t *testing.T, sys *bom.System, o *order.Order, line, item string, asks []string) {
	t.Helper()
	v, r := one(t, sys, o, "\t"+line+"\t1")
	if asks == nil {
		require.Contains(t, []cart.Status{cart.Covers, cart.Surplus}, v.Status, "%s: %s %s", line, v.Reason, v.Ask)
		require.Empty(t, r.Questions, line)
	} else {
		require.Equal(t, cart.Unsure, v.Status, "%s: %s", line, v.Reason)
		for _, a := range asks {
			require.Contains(t, v.Ask, a, line)
		}
	}
	require.Contains(t, v.Items, item, line)
}
