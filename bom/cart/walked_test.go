package cart

import (
	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/order"
)

// Walked reads the build at a path, which has no fault, walks it and takes its order.
func Walked(t require.TestingT, path string) (*bom.System, *order.Order) {
	build, faults := bom.Read(path)
	require.Empty(t, faults)
	sys, faults := bom.Walk(build)
	require.Empty(t, faults)
	order, err := sys.Order()
	require.NoError(t, err)
	return sys, order
}
