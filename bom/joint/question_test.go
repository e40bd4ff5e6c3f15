package joint_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
	"handtight/bom/joint"
)

// What is left open is asked once a port of an item, the question first that settles
// most joints; what is not joined and not said is not asked about.
func TestQuestions(t *testing.T) {
	text := built.Head + built.Ended("bsp", "nipple", "1/2 BSP male", "G 1/2 male") + built.Ended("cup", "coupling", "G 1/2 female", "G 1/2 female") +
		"[[item]]\nid = \"meter\"\nkind = \"flow meter\"\n[[item]]\nid = \"sink\"\nkind = \"drain\"\n" +
		built.Runs("meter bsp/1.a>b cup/1", "meter/2 bsp/2.a>b cup/2", "meter/3 sink")
	var got []string
	sys := built.Walk(t, "ask.toml", text)
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
		text := built.Head + "[[item]]\nid = \"l\"\nkind = \"nipple\"\nmaterial = \"" + c.material + "\"\nports = { a = '" + c.a + "', b = '" + c.a + "' }\n" +
			"[[item]]\nid = \"r\"\nkind = \"coupling\"\nmaterial = \"" + c.material + "\"\nports = { a = '" + c.b + "', b = '" + c.b + "' }\n" + built.Runs("l r")
		sys := built.Walk(t, "make.toml", text)
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
	sys := built.Walk(t, "clamps.toml", built.Head+"[[item]]\nid = \"tail\"\nkind = \"hose tail\"\nports = { a = '3/4 NPT male', b = '19 mm barb long' }\n"+
		"[[item]]\nid = \"stock\"\nkind = \"hose stock\"\nbore = \"19 mm\"\n[[hose]]\nid = \"hose\"\nof = \"stock\"\nlength = \"1 m\"\n"+
		strings.Replace(built.Runs("tail.b hose"), "path", "below_waterline = true\npath", 1))
	require.Equal(t, "two clamps, their screws on opposite sides", joint.MakeupText(sys.Graph, sys.Graph.Joints[0]))
}
