package table

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
)

func TestRead(t *testing.T) {
	files := fstest.MapFS{
		"a.csv": {Data: []byte("size,mm,names\n1/2,20.955,A|B\n\"3/4\",,\n")},
		"b.csv": {Data: []byte("size,mm\n1/2\n")},
	}
	rows := Read(files, "a.csv")
	require.Len(t, rows, 2)
	require.Equal(t, 20.955, rows[0].Number("mm"))
	require.Equal(t, []string{"A", "B"}, rows[0].List("names"))
	require.Empty(t, rows[1].List("names"))
	require.False(t, rows[1].Has("mm"))
	require.Panics(t, func() { rows[1].Number("mm") }, "an empty cell is no number, and not 0")
	require.Panics(t, func() { Read(files, "b.csv") }, "a line with a cell too few")
	require.Panics(t, func() { Read(files, "c.csv") }, "no such table")
}
