package workbook

import (
	"fmt"
	"io"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// BenchmarkWrite measures a whole book of so many lines.
func BenchmarkWrite(b *testing.B) {
	for _, lines := range []int{100, 1000, 10_000} {
		c := randomContent(b, 1, lines)
		b.Run(fmt.Sprint(lines), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				require.NoError(b, Write(io.Discard, c, nil))
			}
		})
	}
}

// BenchmarkBare streams the same cells of the order with nothing else done: the
// floor that BenchmarkWrite is measured by.
func BenchmarkBare(b *testing.B) {
	for _, lines := range []int{100, 1000, 10_000} {
		rows := orderCells(b, randomContent(b, 1, lines))
		b.Run(fmt.Sprint(lines), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				bare(b, rows)
			}
		})
	}
}

// orderCells reads back the order's cells, formulas and all.
func orderCells(b *testing.B, c Content) [][]any {
	f := opened(b, c, nil)
	rows := make([][]any, 0, len(c.Shops))
	texts, err := f.GetRows(orderName, excelize.Options{RawCellValue: true})
	require.NoError(b, err)
	for i := range texts {
		var row []any
		for col := range orderColumns {
			row = append(row, orderCell(b, f, at(col, i+1)))
		}
		rows = append(rows, row)
	}
	return rows
}

func orderCell(b *testing.B, f *excelize.File, name string) any {
	style, err := f.GetCellStyle(orderName, name)
	require.NoError(b, err)
	text := value(b, f, orderName, name)
	if style == 0 && text == "" {
		return nil
	}
	kind, err := f.GetCellType(orderName, name)
	require.NoError(b, err)
	cell := excelize.Cell{Formula: formula(b, f, orderName, name), StyleID: 1}
	switch {
	case text == "":
	case kind == excelize.CellTypeUnset || kind == excelize.CellTypeNumber:
		cell.Value = textToCell(text)
	default:
		cell.Value = text
	}
	return cell
}

func bare(b *testing.B, rows [][]any) {
	f := excelize.NewFile()
	defer f.Close()
	_, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Family: fontName, Size: fontSize}})
	require.NoError(b, err)
	w, err := f.NewStreamWriter("Sheet1")
	require.NoError(b, err)
	for i, row := range rows {
		require.NoError(b, w.SetRow(at(0, i+1), row, excelize.RowOpts{Height: 15}))
	}
	require.NoError(b, w.Flush())
	require.NoError(b, f.Write(io.Discard))
}
