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
				require.NoError(b, Write(io.Discard, c))
			}
		})
	}
}

// BenchmarkBare streams the same cells of every sheet, the hidden copy too, with nothing else
// done: the floor that BenchmarkWrite is measured by.
func BenchmarkBare(b *testing.B) {
	for _, lines := range []int{100, 1000, 10_000} {
		sheets := allCells(b, randomContent(b, 1, lines))
		b.Run(fmt.Sprint(lines), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				bare(b, sheets)
			}
		})
	}
}

// allCells reads back every cell of a book, formulas and all.
func allCells(b *testing.B, c Content) [][][]any {
	f := opened(b, c)
	var out [][][]any
	for _, sheet := range f.GetSheetList() {
		texts, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		require.NoError(b, err)
		var rows [][]any
		for i := range texts {
			row := make([]any, len(texts[i]))
			for col := range row {
				row[col] = bareCell(b, f, sheet, at(col, i+1), texts[i][col])
			}
			rows = append(rows, row)
		}
		out = append(out, rows)
	}
	return out
}

func bareCell(b *testing.B, f *excelize.File, sheet, name, text string) any {
	style, err := f.GetCellStyle(sheet, name)
	require.NoError(b, err)
	if style == 0 && text == "" {
		return nil
	}
	kind, err := f.GetCellType(sheet, name)
	require.NoError(b, err)
	cell := excelize.Cell{Formula: formula(b, f, sheet, name), StyleID: 1}
	switch {
	case text == "":
	case kind == excelize.CellTypeUnset || kind == excelize.CellTypeNumber:
		cell.Value = textToCell(text)
	default:
		cell.Value = text
	}
	return &cell
}

func bare(b *testing.B, sheets [][][]any) {
	f := excelize.NewFile()
	defer f.Close()
	_, err := f.NewStyle(&excelize.Style{Font: &excelize.Font{Family: fontName, Size: fontSize}})
	require.NoError(b, err)
	for n, rows := range sheets {
		name := fmt.Sprint("s", n)
		_, err := f.NewSheet(name)
		require.NoError(b, err)
		w, err := f.NewStreamWriter(name)
		require.NoError(b, err)
		for i, row := range rows {
			require.NoError(b, w.SetRow(at(0, i+1), row, excelize.RowOpts{Height: 15}))
		}
		require.NoError(b, w.Flush())
	}
	require.NoError(b, f.Write(io.Discard))
}
