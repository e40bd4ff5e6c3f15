package sheet_test

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"handtight/bom/sheet"
)

var limits = sheet.Limits{Rows: 20_000, Columns: 256, CellBytes: 1 << 17}

// lines makes a workbook of so many lines of eight cells.
func lines(tb testing.TB, n int) []byte {
	tb.Helper()
	f := excelize.NewFile()
	w, err := f.NewStreamWriter("Sheet1")
	require.NoError(tb, err)
	for i := range n {
		at, err := excelize.CoordinatesToCellName(1, i+1)
		require.NoError(tb, err)
		require.NoError(tb, w.SetRow(at, []any{fmt.Sprintf("C-%d", i), "Adaptor 1/2 NPT male", 3, "pc", 6.35, 19.05, "EUR", "316"}))
	}
	require.NoError(tb, w.Flush())
	var b bytes.Buffer
	require.NoError(tb, f.Write(&b))
	return b.Bytes()
}

// 5,000 lines, by this reader and by the general library.
func BenchmarkRead(b *testing.B) {
	data := lines(b, 5_000)
	b.Run("ours", func(b *testing.B) {
		b.ReportAllocs()
		for range b.N {
			got, err := sheet.Read(data, limits)
			require.NoError(b, err)
			require.Len(b, got.Sheets[0].Rows, 5_000)
		}
	})
	b.Run("library", func(b *testing.B) {
		b.ReportAllocs()
		for range b.N {
			f, err := excelize.OpenReader(bytes.NewReader(data))
			require.NoError(b, err)
			rows, err := f.GetRows("Sheet1")
			require.NoError(b, err)
			require.Len(b, rows, 5_000)
		}
	})
}
