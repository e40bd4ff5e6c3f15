package workbook

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A segment that sees more than it holds stands out by its word and its colour.
func TestSegmentOver(t *testing.T) {
	c := sample(t)
	c.Segments[0].Margin, c.Segments[0].Over = "-2 bar", true
	c.Segments[1].Worst, c.Segments[1].Rating, c.Segments[1].Margin, c.Segments[1].Over = "no bound", "10 bar", "", true
	f := opened(t, c, nil)
	require.Equal(t, "OVER by 2 bar", value(t, f, "Segments", "J4"))
	over := cellStyle(t, f, "Segments", "J4")
	require.Equal(t, over, cellStyle(t, f, "Segments", "E5"), "no bound")
	require.Equal(t, "OVER", value(t, f, "Segments", "J5"))
	require.Equal(t, over, cellStyle(t, f, "Segments", "J5"))
	require.NotEqual(t, over, cellStyle(t, f, "Segments", "E4"))
}
