package threads

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// perDegree is the growth of the virtual diameter, in pitches, for one degree on
// both half angles together as the rule counts them: half a degree on each flank
// makes one degree on the included angle.
func perDegree(e, i profile, flank float64) float64 {
	grown := virtualDiameter(e, i, flank+0.01, flank, 0) - e.dia
	return grown / e.pitch / 0.01
}

// Angle errors, Whitworth: 0.0105 p for each degree of the two half angle errors
// together (Machinery's Handbook, errors in angle of screw threads; BS 84). Our
// own straight flanks must give it, at the sizes of the standard.
func TestVirtualDiameterWhitworth(t *testing.T) {
	for _, pair := range [][2]Family{{G, G}, {R, Rc}} {
		for _, e := range Forms(pair[0]) {
			i, ok := Find(pair[1], e.Size)
			require.True(t, ok)
			got := perDegree(e.external(e.outside.tight), i.internal(i.inside.tight), 55)
			require.InEpsilon(t, 0.0105, got, 0.02, e.Designation)
		}
	}
}

// 60 degrees: 0.0098 p a degree (same source), which takes 0.486 p of straight
// flank. The bare ISO flank of 5/8 H = 0.541 p gives 0.0109; that never rules
// here, since threads of unlike angle are a 60 with a 55, and the shorter
// straight flank, Whitworth's 0.4925 p, is the one in contact.
func TestVirtualDiameterISO(t *testing.T) {
	e := profile{pitch: 1, tan: halfTan(60), dia: 20, flankC: 0.243, flankR: 0.243}
	require.InEpsilon(t, 0.0098, perDegree(e, e, 60), 0.02)
	e.flankC, e.flankR = 0.375*sharpHeight60, 0.25*sharpHeight60
	require.InEpsilon(t, 0.0109, perDegree(e, e, 60), 0.02)

	npt, rc := endOf(t, "NPT 1/2 male").Form, endOf(t, "Rc 1/2 female").Form
	p := npt.external(npt.outside.tight)
	got := virtualDiameter(p, rc.internal(rc.inside.tight), 60, 55, 0) - p.dia
	require.InEpsilon(t, 0.4925*p.pitch*5*math.Pi/180/math.Sin(57.5*math.Pi/180), got, 0.02)
}

// Pitch errors: the error over the length engaged times the cotangent of the
// half angle, 1.921 for Whitworth and 1.732 for 60 degrees (same source).
func TestVirtualDiameterPitch(t *testing.T) {
	for _, c := range []struct {
		why        string
		flank, cot float64
	}{{"Whitworth", 55, 1.921}, {"ISO", 60, 1.732}} {
		t.Run(c.why, func(t *testing.T) {
			e, i := flatProfile(2, 20, halfTan(c.flank)), flatProfile(2.01, 20, halfTan(c.flank))
			require.InDelta(t, c.cot*0.05, virtualDiameter(e, i, c.flank, c.flank, 5)-20, 0.0001)
		})
	}
}

// So a clearance of parallel threads is used up after clearance x tan of the half
// angle / pitch difference turns (the same rule, solved for the length). Teeth at
// the ends meet a third of a turn sooner, as the drawn profiles show.
func TestTurnsBeforeBinding(t *testing.T) {
	for _, c := range []struct {
		why          string
		outer, inner float64 // pitch of the external and of the internal thread
	}{
		{"external finer", 1.5, 1.6}, {"external coarser", 1.6, 1.5}, {"nearly alike", 1.5, 1.52}, {"27 in 28 to the inch", 25.4 / 27, 25.4 / 28},
	} {
		t.Run(c.why, func(t *testing.T) {
			e, i := flatProfile(c.outer, 20, halfTan(60)), flatProfile(c.inner, 20.4, halfTan(60))
			rule := 0.4 * halfTan(60) / math.Abs(c.outer-c.inner)
			got := meet(e, i).turns()
			require.LessOrEqual(t, got, rule)
			require.InDelta(t, rule-1.0/3, got, 0.15)
		})
	}
}
