package cart_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/cart"
)

// A word that nothing understands takes nothing from a line that covers, and is named; words
// that the tables or the build have are not.
func TestWordsThatNobodyUnderstandsAreNamed(t *testing.T) {
	sys, order := plant(t)
	for _, c := range []struct {
		text string
		want []string
	}{
		{"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar", nil},
		{"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, zwquv", []string{"zwquv"}},
		{"Adaptor zwquv 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, blurbed", []string{"zwquv", "blurbed"}},
		{"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, lever left", []string{"lever left"}},
		{"Carbon block cartridge 10 inch", nil},
		{"Filter cartridge 10 inch, 5 micron, pleated", nil},
	} {
		v, _ := one(t, sys, order, "\t"+c.text+"\t1")
		require.Equal(t, cart.Covers, v.Status, c.text)
		require.Equal(t, c.want, v.PassedOver, c.text)
	}
}

// The figure of a line may be above what its class holds: then not the build is to be mended,
// whose part holds what the place sees.
func TestAClassBelowTheFigureIsTheLinesFault(t *testing.T) {
	sys, order := plant(t)
	for _, text := range []string{
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 400 bar, class 150",
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, class 150",
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 20 bar",
	} {
		v, _ := one(t, sys, order, "\t"+text+"\t3")
		require.Equal(t, cart.LowRating, v.Status, text)
		require.Contains(t, v.Remedy, "Order instead", text)
	}
}

// A part holds no more than it bursts at, or is tested to, whatever rating stands beside it.
func TestABurstOrTestBelowThePlaceIsAsked(t *testing.T) {
	sys, order := plant(t)
	for words, want := range map[string]cart.Status{
		"burst 20 bar": cart.Unsure, "20 bar burst": cart.Unsure, "Berstdruck: 20 bar": cart.Unsure, "éclatement à 20 bar": cart.Unsure,
		"scoppio 20 bar": cart.Unsure, "rotura 20 bar": cart.Unsure, "reventón 20 bar": cart.Unsure, "platz 20 bar": cart.Unsure,
		"test 30 bar": cart.Unsure, "tested to 30 bar": cart.Unsure, "prova 30 bar": cart.Unsure, "essai 30 bar": cart.Unsure,
		"zwquv at 20 bar": cart.Unsure, "20 bar zwquv": cart.Unsure, "maybe 20 bar": cart.Unsure, "20 bar?": cart.Unsure, "surge 20 bar": cart.Unsure,
		"burst 1600 bar": cart.Covers, "test 600 bar": cart.Covers, "replaces a 20 bar one": cart.Covers,
	} {
		v, _ := one(t, sys, order, "\tAdaptor 1/2 NPT male x 9/16-18 JIC male, 316, 400 bar, "+words+"\t1")
		require.Equal(t, want, v.Status, words)
		if want == cart.Unsure {
			require.Contains(t, v.Remedy, "hat does it hold (its words say ", words)
		}
	}
}

// A pressure that is only doubted, or said in words that are not understood, rates no part.
func TestADoubtedPressureRatesNothing(t *testing.T) {
	sys, order := plant(t)
	for _, words := range []string{"zwquv at 400 bar", "400 bar?", "maybe 400 bar", "blew at 400 bar", "400 bar short term", "working / burst: 20 / 400 bar", "beside a 400 bar hose", "max 400 bar burst", "max. 400 bar (burst)", "maximum 400 bar test pressure"} {
		v, _ := one(t, sys, order, "\tAdaptor 1/2 NPT male x 9/16-18 JIC male, 316, "+words+"\t1")
		require.NotEqual(t, cart.Covers, v.Status, words)
	}
}

// What a line says that a part may not be used for is asked before it covers; low pressure is asked where the pressure is high.
func TestLimitsOfUseAreAsked(t *testing.T) {
	sys, order := plant(t)
	for text, want := range map[string]cart.Status{
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, not for pressure": cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, air use only":     cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, low pressure":     cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, oil only":         cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, not rated":        cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, pas pour eau":     cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, nur für Luft":     cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar":                   cart.Covers,
		"Carbon block cartridge 10 inch, low pressure":                            cart.Covers,
		"Carbon block cartridge 10 inch, not for seawater":                        cart.Unsure,
	} {
		v, _ := one(t, sys, order, "\t"+text+"\t1")
		require.Equal(t, want, v.Status, text)
	}
}
