package facts

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Entry by entry; within one no bound comes before any figure, and what is not known is last.
func TestInOrder(t *testing.T) {
	list := []Finding{
		{Group: 2, Stake: Number{Known: true, Value: 3}},
		{Group: 1},
		{Group: 2, Unbounded: true},
		{Group: 2, Stake: Number{Known: true, Value: 58}},
		{Group: 1, Stake: Number{Known: true, Value: 1}},
		{Group: 2, Stake: Number{Known: true, Value: 3}, Subject: Subject{Joint: 4}},
	}
	require.Equal(t, []int{4, 1, 2, 3, 0, 5}, InOrder(list))
}
