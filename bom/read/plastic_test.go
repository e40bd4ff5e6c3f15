package read_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
	"handtight/threads"
)

// A metal taper in a female thread of a plastic part is a makeshift joint, whether the end
// or the material says that it is plastic; a metal part with the same words is not.
// Source: page "Threaded Connections" of a maker of plastic valves, as in table/seal.csv.
func TestPlasticByMaterial(t *testing.T) {
	const text = `
[build]
name = "plastic"
currency = "EUR"
[[item]]
id = "nipple"
kind = "nipple"
material = "316"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "socket"
kind = "coupling"
material = "%s"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[item]]
id = "metal"
kind = "coupling"
material = "bronze"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[run]]
name = "line"
path = ["metal", "nipple", "socket"]
`
	for material, want := range map[string]threads.Verdict{
		"PVC": threads.LowPressureOnly, "acetal": threads.LowPressureOnly, "glass filled nylon": threads.LowPressureOnly,
		"PP, brass insert": threads.SealsWith, "bronze": threads.SealsWith, "": threads.SealsWith, "unobtainium": threads.SealsWith,
	} {
		sys := built.Walk(t, "plastic.toml", fmt.Sprintf(text, material))
		require.Equal(t, threads.SealsWith, sys.Graph.Joints[0].Mating.Verdict, "%s: the metal socket with the same words", material)
		require.Equal(t, want, sys.Graph.Joints[1].Mating.Verdict, material)
	}
}
