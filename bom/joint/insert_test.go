package joint_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
	"handtight/threads/makeup"
)

// A build's own tube of plastic takes an insert under an olive; one of copper takes none.
func TestInsertOfABuildsTube(t *testing.T) {
	const text = `[build]
name = "x"
currency = "EUR"
[[item]]
id = "tube"
kind = "hose stock"
outside = "10 mm"
material = "MATERIAL"
rated = "10 bar"
[[hose]]
id = "piece"
of = "tube"
length = "1 m"
[[item]]
id = "elbow"
kind = "elbow"
ports = { a = '10 mm compression', b = '10 mm compression' }
[[run]]
name = "line"
path = ["piece", "elbow"]
`
	for material, want := range map[string]string{"PE": "insert 10 mm", "copper": ""} {
		b, faults := read.Parse("build.toml", []byte(strings.Replace(text, "MATERIAL", material, 1)))
		require.NoError(t, faults.Err())
		sys, faults := bom.Walk(b)
		require.NoError(t, faults.Err())
		m := makeup.Of(&sys.Graph.Joints[0].Mating)
		require.Equal(t, want, m.Insert, material)
		require.NotEmpty(t, m.Ring)
	}
}
