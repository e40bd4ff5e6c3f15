package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

func TestLower(t *testing.T) {
	hose := Rating{Pressure: 400 * quantity.Bar, Basis: HoseStandard, Text: "hose"}
	cone := Rating{Pressure: 315 * quantity.Bar, Basis: FittingClass, Text: "24 degree 12L"}
	elbow, ok := FittingRating("class 150", "316", "NPT", true, "1/2")
	require.True(t, ok)
	lowest, ok := Lower(hose, cone, elbow)
	require.True(t, ok)
	bar(t, 20.7, lowest) // the minimum rule of SAE J517 section 1
	lowest, ok = Lower(hose, Rating{})
	require.True(t, ok, "a part without a rating is passed over")
	require.Equal(t, hose, lowest)
	twin := Rating{Pressure: hose.Pressure, Basis: HoseStandard, Text: "twin"}
	lowest, _ = Lower(twin, hose)
	require.Equal(t, twin, lowest, "the earlier on a tie")
	_, ok = Lower()
	require.False(t, ok, "nothing is not a rating of nothing")
}

func TestGoverning(t *testing.T) {
	sheet := OfDataSheet(100*quantity.Bar, "hp-hose")
	standard, ok := HoseRating("100R8", 9.525)
	require.True(t, ok)
	guess := Rating{Pressure: 30 * quantity.Bar, Basis: Estimate, Text: "wall"}
	for _, c := range []struct {
		why  string
		in   []Rating
		want Rating
		ok   bool
	}{
		{"the data sheet below the standard", []Rating{standard, sheet}, sheet, true},
		{"the standard below the data sheet", []Rating{OfDataSheet(400*quantity.Bar, "x"), standard}, standard, true},
		{"an estimate says nothing beside either", []Rating{guess, standard}, standard, true},
		{"an estimate alone is better than nothing", []Rating{{}, guess}, guess, true},
		{"nothing", nil, Rating{}, false},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, ok := Governing(c.in...)
			require.Equal(t, c.ok, ok)
			require.Equal(t, c.want, got)
		})
	}
}

func TestOnePartMoreNeverRaisesTheWeakest(t *testing.T) {
	one := rapid.Custom(func(t *rapid.T) Rating {
		return Rating{
			Pressure: quantity.Pressure(rapid.Float64Range(1, 1e8).Draw(t, "p")),
			Basis:    Basis(rapid.IntRange(0, int(basisEnd)).Draw(t, "basis")),
		}
	})
	rapid.Check(t, func(t *rapid.T) {
		some := rapid.SliceOf(one).Draw(t, "some")
		before, ok := Lower(some...)
		after, ok2 := Lower(append(some, one.Draw(t, "more"))...)
		if ok && (!ok2 || after.Pressure > before.Pressure) {
			t.Fatalf("%v became %v", before, after)
		}
	})
}

func TestProof(t *testing.T) {
	for _, c := range []struct {
		why    string
		r      Rating
		psi    float64
		source string
	}{
		{"hydraulic hose: twice", Rating{Pressure: 575 * quantity.PSI, Basis: HoseStandard}, 1150, `page "The complicated world of SAE standards", overview table, 100R1`},
		{"stainless braided metal hose and fittings: one and a half times", Rating{Pressure: 792 * quantity.PSI, Basis: DataSheet}, 1188, `page "Stainless braided hose"`},
	} {
		t.Run(c.why, func(t *testing.T) {
			p, ok := Proof(c.r)
			require.True(t, ok)
			require.InDelta(t, c.psi, p.PSI(), 1e-6, c.source)
		})
	}
	_, ok := Proof(Rating{})
	require.False(t, ok)
	_, ok = Proof(Rating{Pressure: 1e6, Basis: Estimate})
	require.False(t, ok, "nobody tested an estimate")
}

func TestWords(t *testing.T) {
	require.Equal(t, "data sheet", DataSheet.String())
	require.Equal(t, "hose joint", HoseJoint.String())
	require.Equal(t, "no basis", Basis(0).String())
	require.Equal(t, "no basis", Basis(99).String())
	require.Equal(t, "seen", Seen.String())
	require.Equal(t, "memory", Memory.String())
	require.Equal(t, "no status", Status(0).String())
	require.Equal(t, "no status", Status(99).String())
	require.Equal(t, "unknown", Rating{}.String())
	r, _ := HoseRating("100R8", 9.525)
	require.Equal(t, "275.8 bar (hose standard: SAE 100R8 -6, bore 9.53 mm, 4000 psi)", r.String())
	require.Equal(t, "100 bar (data sheet: data sheet: 100 bar)", OfDataSheet(100*quantity.Bar, "x").String())
}
