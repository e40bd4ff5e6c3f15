package cart_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/order"
)

// Common practice, no source: 60 L/h below. Check values, and no limit rests on them.

// one judges one line against the clean example: code, text, quantity.
func one(t require.TestingT, sys *bom.System, order *order.Order, line string) (*cart.Verdict, *cart.Report) {
	c, err := cart.Read("c.csv", []byte("Code\tDescription\tQty\n"+line+"\n"), cart.Options{Currency: "EUR"})
	require.NoError(t, err)
	require.Len(t, c.Lines, 1)
	r := cart.Judge(sys, order, []*cart.Cart{c}, nil)
	return r.Lines[0], r
}

// right are lines that cover their place, in words that say all that it needs.
var right = map[string]string{
	"intake":               `Flanged seacock 3/4", bronze, 19 mm hose barb, PN16`,
	"throttle":             "Needle valve 3/8 NPT female, 316, 200 bar",
	"hp-tee":               "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000",
	"jic-n12":              "Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar",
	"gauge-tee-hp":         "Tee 9/16-18 JIC male x 3/8 NPT male x 1/4 NPT female, 316, 270 bar",
	"hp-gauge":             "Gauge 0-100 bar, 1/4 NPT male, 316",
	"relief":               "Relief valve 1/4 NPT male x 3/8 NPT female, 316, set 65 bar, rated 140 bar, 12 L/min",
	"hp-hose-feed":         "Hose SAE 100R8 3/8\", 1.2 m, 3/8 NPT male x 9/16-18 JIC female swivel, 316 ends",
	"hp-hose-brine":        "Hose SAE 100R8 3/8\", 0.9 m, 9/16-18 JIC female swivel both ends, 316 fittings",
	"feed-pump":            "Feed pump, diaphragm, 24 V, 14 L/min, 19 mm barbs",
	"hp-pump":              "Plunger pump, 316 head, 1/2 NPT female x 3/8 NPT female, 7 L/min, 100 bar",
	"flush-valve":          "Solenoid valve 24 V, 1/2 NPT female, bronze, PN 10",
	"cartridge-5":          "Filter cartridge 10 inch, 5 micron, pleated",
	"cartridge-25":         "Filter cartridge 10 inch, 25 micron, pleated",
	"carbon-block":         "Carbon block cartridge 10 inch",
	"vessel":               "Pressure vessel 2.5 x 21, 1/2 NPT female x 1/2 NPT female x 1/4 NPT female, 83 bar",
	"element":              "Seawater membrane element 2.5 x 21",
	"suction-hose":         "Suction hose 19 mm, wire helix, per metre",
	"discharge-hose":       "Rubber water hose 13 mm, 10 bar, per metre",
	"tube-10":              "Tube 10 mm outside, drinking water, per metre",
	"product-elbow":        "Push-in elbow 1/4 NPT male x 10 mm, acetal, drinking water",
	"meter":                "Flow meter 5-60 L/h, 10 mm push-in, drinking water",
	"tail-g34":             "Hose tail G 3/4 male x 19 mm barb, bronze",
	"clamp for 19 mm hose": "Hose clamp 16-27 mm, 316",
	"clamp for 13 mm hose": "Hose clamp 11-20 mm, 316",
	"bonded washer G 3/4":  "Bonded washer G 3/4",
	"flat gasket G 1/2":    "Flat gasket G 1/2",
	"tape 12 mm":           "PTFE tape 12 mm x 12 m",
}

func TestLinesThatSayAllThatTheirPlaceNeedsCover(t *testing.T) {
	sys, order := plant(t)
	for item, text := range right {
		v, r := one(t, sys, order, "\t"+text+"\t1")
		require.Contains(t, []cart.Status{cart.Covers, cart.Surplus}, v.Status, "%s: %s %s", text, v.Reason, v.Ask)
		require.Contains(t, v.Items, item, text)
		require.Empty(t, r.Questions, text)
		require.Empty(t, v.Ask, text)
	}
}

// change is a fact of a right line that is put in place of another, and what it comes to.
type change struct {
	item, from, to string
	status         cart.Status
	says           string
}

// changes are one fact each. What each says, with the place that it would spoil, is what a
// fitter at the counter would say.
var changes = []change{
	{"throttle", "200 bar", "20 bar", cart.LowRating, "sees 70 bar"},
	{"throttle", "200 bar", "PN 63", cart.LowRating, "holds 63 bar"},
	{"throttle", "200 bar", "150 psi", cart.LowRating, "sees 70 bar"},
	{"throttle", "316", "brass", cart.WrongMaterial, "It is of brass"},
	{"throttle", "316", "304", cart.WrongMaterial, "of 304"},
	{"throttle", "3/8 NPT", "G 3/8", cart.WrongThread, "would spoil J28"},
	{"hp-tee", "class 3000", "class 150", cart.LowRating, "sees 70 bar"},
	{"hp-tee", "x 1/4 NPT female", "x G 1/4 female", cart.WrongThread, "would spoil J30"},
	{"hp-tee", "316", "brass", cart.WrongMaterial, "It is of brass"},
	{"jic-n12", "9/16-18 JIC male", "3/4-16 JIC male", cart.WrongSize, "in place of 9/16-18 JIC -6 male"},
	{"jic-n12", "9/16-18 JIC male", "9/16-18 JIC female", cart.WrongSex, "both female"},
	{"jic-n12", "1/2 NPT", "R 1/2", cart.WrongThread, "would spoil J24"},
	{"hp-gauge", "0-100 bar", "0-60 bar", cart.LowRating, "scale ends at 60 bar"},
	{"hp-gauge", "0-100 bar", "0-1000 psi", cart.LowRating, "scale ends at 68.95 bar"},
	{"hp-gauge", "1/4 NPT", "G 1/4", cart.WrongThread, "would spoil J29"},
	{"relief", "set 65 bar", "set 90 bar", cart.WrongSetting, "set to 90 bar"},
	{"relief", "set 65 bar", "set 30 bar", cart.WrongSetting, "set to 30 bar"},
	{"relief", "rated 140 bar", "rated 25 bar", cart.LowRating, "holds 25 bar"},
	{"hp-hose-feed", "100R8", "100R6", cart.LowRating, "a hose of 100R6"},
	{"hp-hose-feed", "100R8", "100R7", cart.WrongStandard, "100R7"},
	{"hp-hose-feed", "1.2 m", "0.5 m", cart.WrongLength, "500 mm long"},
	{"hp-hose-feed", "3/8\"", "1/4\"", cart.WrongSize, "its bore is"},
	{"intake", `3/4"`, `1/2"`, cart.WrongSize, "It is of 0.5 inch"},
	{"feed-pump", "24 V", "12 V", cart.WrongVoltage, "It is for 12 V"},
	{"feed-pump", "14 L/min", "4 L/min", cart.WrongFlow, "It is for 4 L/min"},
	{"feed-pump", "19 mm barbs", "25 mm barbs", cart.WrongSize, "25 mm barb"},
	{"hp-pump", "7 L/min", "15 L/min", cart.WrongFlow, "15 L/min"},
	{"hp-pump", "100 bar", "60 bar", cart.LowRating, "sees 70 bar"},
	{"flush-valve", "24 V", "230 V", cart.WrongVoltage, "It is for 230 V"},
	{"cartridge-5", "5 micron", "1 micron", cart.WrongFineness, "holds back 1 micron"},
	{"cartridge-5", "10 inch", "20 inch", cart.WrongSize, "20 inches long"},
	{"vessel", "83 bar", "300 psi", cart.LowRating, "sees 70 bar"},
	{"vessel", "2.5 x 21", "2.5 x 40", cart.WrongSize, "2.5 x 40 inches"},
	{"element", "2.5 x 21", "4 x 40", cart.WrongSize, "4 x 40 inches"},
	{"element", "Seawater", "Brackish", cart.WrongUse, "say brackish"},
	{"suction-hose", "19 mm", "20 mm", cart.WrongSize, "its bore is 20 mm in place of 19 mm"},
	{"suction-hose", "Suction hose", "Fuel suction hose", cart.WrongUse, "say fuel"},
	{"discharge-hose", "10 bar", "2 bar", cart.LowRating, "sees 3 bar"},
	{"tube-10", "drinking water", "compressed air", cart.WrongUse, "say air"},
	{"product-elbow", "10 mm", "12 mm", cart.WrongSize, "12 mm push-in"},
	{"product-elbow", "1/4 NPT", "G 1/4", cart.WrongThread, "would spoil J37"},
	{"meter", "5-60 L/h", "1-10 L/min", cart.WrongFlow, "It is for"},
	{"tail-g34", "G 3/4", "3/4 NPT", cart.WrongThread, "never seals"},
	{"tail-g34", "G 3/4 male", "G 3/4 female", cart.WrongSex, "both female"},
	{"tail-g34", "19 mm", "25 mm", cart.WrongSize, "25 mm barb"},
	{"tail-g34", "bronze", "brass", cart.WrongMaterial, "It is of brass"},
	{"bonded washer G 3/4", "G 3/4", "G 1", cart.WrongSize, "G 1 in place of G 3/4"},
	{"flat gasket G 1/2", "G 1/2", "G 1", cart.WrongSize, "G 1 washer in place of G 1/2 washer"},
	{"clamp for 19 mm hose", "16-27", "40-60", cart.WrongSize, "closes on 40 to 60 mm"},
}

// One wrong fact in a line, and it covers nothing: it is named wrong with the place that it
// would spoil, or, where it is like nothing, as nothing of the build's.
func TestOneWrongFactAndTheLineCoversNothing(t *testing.T) {
	sys, order := plant(t)
	for _, c := range changes {
		text := strings.Replace(right[c.item], c.from, c.to, 1)
		require.NotEqual(t, right[c.item], text, "%s has no %s", c.item, c.from)
		v, r := one(t, sys, order, "\t"+text+"\t1")
		require.Equal(t, c.status, v.Status, "%s: %s %s", text, v.Reason, v.Ask)
		require.Contains(t, v.Reason, c.says, text)
		require.NotEmpty(t, v.Remedy, text)
		require.False(t, v.Known, "it brings nothing")
		if c.status == cart.NotNeeded {
			continue
		}
		require.Equal(t, c.item, v.Item(), text)
		require.True(t, v.IsWrong(), text)
		require.Zero(t, tally(t, r, c.item).InCart, text)
		require.Equal(t, cart.Wrong()[slices.Index(cart.Wrong(), c.status)], v.Status)
	}
}

// The shop's own code does not make it right: it is a conflict, and asked about.
func TestACodeThatTheWordsContradictIsAsked(t *testing.T) {
	sys, order := plant(t)
	codes := map[string]string{}
	for _, o := range sys.Build.Offers {
		codes[o.Item] = o.Code
	}
	for _, c := range changes {
		if codes[c.item] == "" || c.status == cart.NotNeeded {
			continue
		}
		text := strings.Replace(right[c.item], c.from, c.to, 1)
		v, r := one(t, sys, order, fmt.Sprintf("%s\t%s\t1", codes[c.item], text))
		require.NotContains(t, []cart.Status{cart.Covers, cart.Surplus, cart.OtherPrice}, v.Status, "%s: %s", text, v.Reason)
		require.NotEmpty(t, r.Questions, text)
		require.Contains(t, v.Ask, "the code or the words", text)
		require.Zero(t, tally(t, r, c.item).InCart, text)
	}
}

// What a high-pressure place needs and the line does not say is asked, whatever its code.
func TestSilenceUnderHighPressureIsAsked(t *testing.T) {
	sys, order := plant(t)
	for _, c := range []struct{ code, text, asks string }{
		{"T3-38-14", "Tee", "what are its ends"},
		{"T3-38-14", "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316", "What pressure does it hold"},
		{"T3-38-14", "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, test pressure 400 bar", "What pressure does it hold"},
		{"T3-38-14", "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, burst 800 bar", "What pressure does it hold"},
		{"T3-38-14", "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, class 3000", "Of what material"},
		{"G100-63", "Gauge 1/4 NPT male, 316", "How far does its scale read"},
		{"RV-65", "Relief valve 1/4 NPT male x 3/8 NPT female, 316, rated 140 bar", "What is it set to"},
		{"R8-06-1200-A", "Hose 3/8\", 1.2 m, 3/8 NPT male x 9/16-18 JIC female swivel", "What pressure does it hold"},
		{"", "Needle valve 3/8 NPT female, 316", "What pressure does it hold"},
		{"", "Needle valve 3/8 NPT female, stainless, 200 bar", "Which stainless steel"},
	} {
		v, r := one(t, sys, order, c.code+"\t"+c.text+"\t1")
		require.Equal(t, cart.Unsure, v.Status, "%s: %s", c.text, v.Reason)
		require.Contains(t, strings.ToLower(v.Ask), strings.ToLower(c.asks), c.text)
		require.Contains(t, v.Ask, "70 bar", "the pressure at stake is said")
		require.Len(t, r.Questions, 1, c.text)
		require.Zero(t, tally(t, r, v.Item()).InCart)
	}
}

// At low pressure a code speaks for what the words leave out.
func TestSilenceAtLowPressureIsNot(t *testing.T) {
	sys, order := plant(t)
	for code, text := range map[string]string{"HT-G34-19": "Hose tail", "FP-14-24": "Feed pump", "SH-19": "Suction hose, 5 m", "C5-10": "Cartridges"} {
		v, r := one(t, sys, order, code+"\t"+text+"\t1")
		require.Contains(t, []cart.Status{cart.Covers, cart.Surplus}, v.Status, "%s: %s", text, v.Reason)
		require.Empty(t, r.Questions)
	}
}

// Things of another trade are matched to nothing and asked about nothing.
func TestThingsOfAnotherTrade(t *testing.T) {
	sys, order := plant(t)
	for _, text := range []string{
		"Hydraulic oil ISO 46, 20 L", "Fuel hose 10 mm, per metre", "Garden hose 19 mm, 25 m", "Bolt M8 x 40 stainless", "Cable 3 x 2.5 mm2, 24 V",
		"Battery 12 V 100 Ah", "Copper washer 10 mm", "Winch handle 10 inch", "Paint, 2.5 litre", "Oil filter for the engine",
		"Ball valve DN 50 brass", "Kitchen mixer tap, flexible hoses 3/8", "Duct tape 50 mm", "Sandpaper 5 micron", "Impeller", "LPG hose 8 mm",
	} {
		v, r := one(t, sys, order, "\t"+text+"\t1")
		require.Contains(t, []cart.Status{cart.NotNeeded, cart.NoEnd}, v.Status, "%s: %s", text, v.Reason)
		require.Empty(t, v.Items, text)
		require.Empty(t, r.Questions, text)
	}
}

// A line that says less is never better off, and none that says something wrong covers.
func TestAWordLessNeverMakesALineCoverUnderHighPressure(t *testing.T) {
	sys, order := plant(t)
	high := []string{"throttle", "hp-tee", "jic-n12", "gauge-tee-hp", "hp-gauge", "relief", "hp-hose-feed", "vessel", "hp-pump"}
	rapid.Check(t, func(rt *rapid.T) {
		item := rapid.SampledFrom(high).Draw(rt, "item")
		words := strings.Split(right[item], ", ")
		gone := rapid.IntRange(1, len(words)-1).Draw(rt, "gone")
		text := strings.Join(slices.Delete(slices.Clone(words), gone, gone+1), ", ")
		v, _ := one(rt, sys, order, "\t"+text+"\t1")
		if v.Status == cart.Covers {
			// only what no place asks for may be left out
			require.Contains(rt, []string{"diaphragm", "pleated", "0.9 m", "7 L/min"}, words[gone], "%s without %q covers", right[item], words[gone])
		}
	})
}

// Two lines of one code share what the code serves: the second brings what the first did not.
func TestWhatOtherLinesBroughtIsCounted(t *testing.T) {
	sys, order := plant(t)
	c := text(t, "c.csv", "Code\tDescription\tQty\nFH-10\tFilter housing\t1\nFH-10\tFilter housing\t1\n")
	r := cart.Judge(sys, order, []*cart.Cart{c}, nil)
	for _, item := range []string{"filter-25", "filter-5"} {
		x := tally(t, r, item)
		require.Equal(t, cart.Covered, x.Status, "%s: %s", item, x.Reason)
		require.Equal(t, "1", x.InCart.String(), item)
	}
	for _, v := range r.Lines {
		require.Equal(t, cart.Covers, v.Status, v.Reason)
	}
	c = text(t, "c.csv", "Code\tDescription\tQty\nFH-10\tFilter housing\t1\nFH-10\tFilter housing\t2\n")
	r = cart.Judge(sys, order, []*cart.Cart{c}, nil)
	require.Equal(t, cart.Surplus, r.Lines[1].Status)
	require.Contains(t, r.Lines[1].Reason, "1 pc more")
	require.Equal(t, cart.Covered, tally(t, r, "filter-25").Status)
}

// What is short is said in the packs of the shop.
func TestRemediesSpeakInThePacksOfTheShop(t *testing.T) {
	sys, order := plant(t)
	c := text(t, "c.csv", "Code\tDescription\tQty\nSH-19\tSuction hose 19 mm, per metre\t5\n")
	r := cart.Judge(sys, order, []*cart.Cart{c}, nil)
	require.Contains(t, tally(t, r, "clamp for 19 mm hose").Remedy, "Order 13 packs of 2 (26 pc)")
	require.Contains(t, tally(t, r, "bonded washer G 3/4").Remedy, "Order 1 pack of 10 (10 pc)")
	require.Contains(t, tally(t, r, "tail-g34").Remedy, "Order 3 pc")
}

// What the words leave open is shown as open, and not as its likeliest reading.
func TestOpenFamiliesAreShownAsOpen(t *testing.T) {
	sys, order := plant(t)
	v, _ := one(t, sys, order, "\tElbow 1 BSP female, bronze\t1")
	require.Equal(t, cart.NotNeeded, v.Status)
	require.Contains(t, v.Reason, "G 1 female or Rp 1 female or Rc 1 female")
}

// Hose by the metre has no ends: a line that speaks of some, or of a hand, is asked about.
func TestHoseThatSpeaksOfEndsIsAsked(t *testing.T) {
	sys, order := plant(t)
	for _, text := range []string{
		"Suction hose 19 mm, wire helix, left-hand nuts, per metre",
		"Suction hose 19 mm, wire helix, with 3/4 BSP female swivel ends LH, per metre",
	} {
		_, r := one(t, sys, order, "\t"+text+"\t5")
		require.Len(t, r.Questions, 1, text)
		require.Contains(t, r.Questions[0].Ask, "without the ends that its words speak of", text)
	}
}
