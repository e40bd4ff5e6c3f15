package bom

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/joint"
	"handtight/bom/read"
	"handtight/bom/state"
	"handtight/pressure/quantity"
)

// What is left open is asked once a port of an item, the question first that settles
// most joints; what is not joined and not said is not asked about.
func TestQuestions(t *testing.T) {
	text := head + ended("bsp", "nipple", "1/2 BSP male", "G 1/2 male") + ended("cup", "coupling", "G 1/2 female", "G 1/2 female") +
		"[[item]]\nid = \"meter\"\nkind = \"flow meter\"\n[[item]]\nid = \"sink\"\nkind = \"drain\"\n" +
		runs("meter bsp/1.a>b cup/1", "meter/2 bsp/2.a>b cup/2", "meter/3 sink")
	var got []string
	sys := walked(t, "ask.toml", text)
	for _, q := range joint.Questions(sys.Graph) {
		require.NotEmpty(t, q.Ask)
		got = append(got, q.Port)
	}
	require.Equal(t, []string{"meter.out", "bsp.a"}, got, "three joints, then two; a drain's pipe is no joint to judge")
	require.Equal(t, 3, joint.Questions(sys.Graph)[0].Joints)
	require.Equal(t, "Which thread or hose size is it, and is it male or female?", joint.Questions(sys.Graph)[0].Ask)
	require.Contains(t, joint.Questions(sys.Graph)[1].Ask, "BSP")
}

// How a joint is made, in one line; nothing where it does not hold.
func TestMakeupText(t *testing.T) {
	for _, c := range []struct{ why, a, b, material, want string }{
		{"a taper takes tape", "1/2 NPT male", "1/2 NPT female", "316", "4 wraps of 12 mm tape"},
		{"a joint that does not hold must be changed first", "1/2 NPT male", "Rc 1/2", "316", ""},
		{"bronze takes half of what is printed for steel", "-6 JIC male", "-6 JIC female swivel", "bronze", "10 to 15 N m in brass or bronze"},
		{"and stainless none of it", "-6 JIC male", "-6 JIC female swivel", "316", "!N m"},
		{"and is for steel", "-6 JIC male", "-6 JIC female swivel", "carbon steel", "N m"},
	} {
		text := head + "[[item]]\nid = \"l\"\nkind = \"nipple\"\nmaterial = \"" + c.material + "\"\nports = { a = '" + c.a + "', b = '" + c.a + "' }\n" +
			"[[item]]\nid = \"r\"\nkind = \"coupling\"\nmaterial = \"" + c.material + "\"\nports = { a = '" + c.b + "', b = '" + c.b + "' }\n" + runs("l r")
		sys := walked(t, "make.toml", text)
		got := joint.MakeupText(sys.Graph, sys.Graph.Joints[0])
		switch without, found := strings.CutPrefix(c.want, "!"); {
		case found:
			require.NotContains(t, got, without, c.why)
			require.NotEmpty(t, got)
		case c.want == "":
			require.Empty(t, got, c.why)
		default:
			require.Contains(t, got, c.want, c.why)
		}
	}
	sys := walked(t, "store.toml", store)
	require.Equal(t, "two clamps, their screws on opposite sides", joint.MakeupText(sys.Graph, sys.Graph.Joints[0]))
}

// A need says why so many, which joints it serves, and what its ends are.
func TestNeedInWords(t *testing.T) {
	needs := needsOf(t, store)
	require.Equal(t, []int{1, 2, 5, 6}, needs["tail"].Joints)
	require.Equal(t, "a: 3/4-14 NPT male; b: 19 mm barb long", needs["tail"].Item.Ends())
	require.Contains(t, needs["nipple"].WhySpare(), "2 more asked for by `extra`")
	require.Contains(t, needs["cartridge"].WhySpare(), "60")
	require.Equal(t, "hose stock, bore 19 mm", needs["hose"].About)
}

// A shop's own line is enough: kind, ends, material and rating are read from it, in the
// order of the kind's ports.
func TestItemFromTitle(t *testing.T) {
	text := head + any2 + "[[item]]\nid = \"tail\"\ntitle = \"Hose tail 1/2 BSPP female swivel x 13 mm barb, brass, PN16\"\nextra = 1\n"
	build, faults := read.Parse("title.toml", []byte(text))
	require.NoError(t, faults.Err())
	it, _ := build.Item("tail")
	require.Equal(t, "hose tail", it.Kind.Name)
	require.Equal(t, "brass", it.Material)
	require.InDelta(t, 16, it.Rated.Bar(), 1e-9)
	require.Equal(t, "a: G 1/2 female swivel; b: 13 mm barb", it.Ends())
}

// The worst of a load: no bound by an act, then by a failure, then the higher figure.
func TestWorstLoad(t *testing.T) {
	act, fail := &state.State{Name: "act"}, &state.State{Name: "fail", Failure: true}
	for _, c := range []struct {
		why   string
		load  state.Load
		worst quantity.Pressure
		by    *state.State
	}{
		{"nothing pushes", state.Load{}, 0, nil},
		{"the act is the higher", state.Load{Act: 65, ByAct: act, Fail: 55, ByFail: fail}, 65, act},
		{"the failure is the higher", state.Load{Act: 55, ByAct: act, Fail: 65, ByFail: fail}, 65, fail},
		{"alike: the act, which is worse to answer for", state.Load{Act: 55, ByAct: act, Fail: 55, ByFail: fail}, 55, act},
		{"no bound by a failure", state.Load{Act: 55, ByAct: act, NoBoundFail: fail}, quantity.NoBound(), fail},
		{"no bound by both", state.Load{Act: 55, ByAct: act, NoBound: act, NoBoundFail: fail}, quantity.NoBound(), act},
	} {
		worst, by := c.load.Worst()
		require.Equal(t, c.worst, worst, c.why)
		require.Equal(t, c.by, by, c.why)
	}
}
