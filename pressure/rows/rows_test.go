package rows

import (
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/require"
)

func TestEach(t *testing.T) {
	files := fstest.MapFS{
		"a.csv":     {Data: []byte("size,mm\n1/2,20.955\n\"3/4\",\n")},
		"short.csv": {Data: []byte("size,mm\n1/2,1\n3/4\n")},
		"empty.csv": {},
		"head.csv":  {Data: []byte("size,mm\n")},
	}
	var sizes, mm []string
	for i, r := range Each[map[string]string]("x", files, "a.csv") {
		require.Equal(t, len(sizes), i)
		sizes, mm = append(sizes, r["size"]), append(mm, r["mm"])
	}
	require.Equal(t, []string{"1/2", "3/4"}, sizes)
	require.Equal(t, []string{"20.955", ""}, mm, "an empty cell takes the place of the last line's")

	all := All[map[string]string]("x", files, "a.csv")
	require.Equal(t, []map[string]string{{"size": "1/2", "mm": "20.955"}, {"size": "3/4", "mm": ""}}, all)
	require.Empty(t, All[map[string]string]("x", files, "head.csv"))

	for range Each[map[string]string]("x", files, "short.csv") {
		break // a reader may stop before a fault
	}
	require.PanicsWithValue(t, "x: short.csv: record on line 3: wrong number of fields", func() { All[map[string]string]("x", files, "short.csv") })
	require.Panics(t, func() { All[map[string]string]("x", files, "empty.csv") })
	require.Panics(t, func() { All[map[string]string]("x", files, "none.csv") })
}
