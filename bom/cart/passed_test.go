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

// What a line says that a part may not be used for is asked before it covers; low pressure is asked where the pressure is high.
func TestLimitsOfUseAreAsked(t *testing.T) {
	sys, order := plant(t)
	for text, want := range map[string]cart.Status{
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, not for pressure": cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, air use only":     cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar, low pressure":     cart.Unsure,
		"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar":                   cart.Covers,
		"Carbon block cartridge 10 inch, low pressure":                            cart.Covers,
		"Carbon block cartridge 10 inch, not for seawater":                        cart.Unsure,
	} {
		v, _ := one(t, sys, order, "\t"+text+"\t1")
		require.Equal(t, want, v.Status, text)
	}
}
