package cart

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"pgregory.net/rapid"
)

// unescaped reads _x0041_ as the letter A: the library does not escape it.
func unescaped(text string) string {
	return regexp.MustCompile(`_x[0-9A-Fa-f]{4}_`).ReplaceAllStringFunc(text, func(m string) string {
		n, err := strconv.ParseUint(m[2:6], 16, 16)
		if err != nil {
			return m
		}
		return string(rune(n))
	})
}

// What a general library writes, cell by cell, this reader reads: texts, numbers,
// blanks, across gaps.
func TestWorkbookRoundTrip(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		f := excelize.NewFile()
		want := map[string]string{}
		for range rapid.IntRange(1, 30).Draw(rt, "cells") {
			row, column := rapid.IntRange(1, 40).Draw(rt, "row"), rapid.IntRange(1, 30).Draw(rt, "column")
			name := cellName(t, column, row)
			if rapid.Bool().Draw(rt, "number") {
				cents := rapid.IntRange(-99_999, 99_999).Draw(rt, "cents")
				require.NoError(rt, f.SetCellValue("Sheet1", name, float64(cents)/100))
				want[name], _ = decimalText(fmt.Sprintf("%.2f", float64(cents)/100))
			} else {
				text := rapid.StringMatching(`[a-zäßΩ"&<>=+@_x0-9 ]{1,20}`).Draw(rt, "text")
				require.NoError(rt, f.SetCellStr("Sheet1", name, text))
				want[name] = clean(unescaped(text))
			}
		}
		got := map[string]string{}
		sheets, err := readWorkbook("b", bytesOf(t, f), &Cart{})
		require.NoError(rt, err)
		for _, r := range sheets[0].rows {
			for i, c := range r.cells {
				if c.text != "" {
					got[cellName(t, i+1, r.number)] = c.text
				}
			}
		}
		for name, text := range want {
			if text == "" {
				delete(want, name)
			}
		}
		require.Equal(rt, want, got)
	})
}

func TestWhatACellSays(t *testing.T) {
	f := excelize.NewFile()
	money, err := f.NewStyle(&excelize.Style{CustomNumFmt: new(`#,##0.00\ [$EUR]`)})
	require.NoError(t, err)
	date, err := f.NewStyle(&excelize.Style{NumFmt: 14})
	require.NoError(t, err)
	for i, v := range []any{"Description", "Qty", "Price"} {
		require.NoError(t, f.SetCellValue("Sheet1", cellName(t, i+1, 1), v))
	}
	require.NoError(t, f.SetCellRichText("Sheet1", "A2", []excelize.RichTextRun{
		{Text: "Elbow ", Font: &excelize.Font{Bold: true, Strike: true}}, {Text: "1/2 NPT", Font: &excelize.Font{Strike: true}},
	}))
	require.NoError(t, f.SetCellRichText("Sheet1", "A3", []excelize.RichTextRun{
		{Text: "Elbow 1/2 NPT "}, {Text: "brass", Font: &excelize.Font{Strike: true}},
	}))
	require.NoError(t, f.SetCellStr("Sheet1", "A4", "Tee 1/2 NPT"))
	require.NoError(t, f.SetCellValue("Sheet1", "C4", 6.35))
	require.NoError(t, f.SetCellStyle("Sheet1", "C4", "C4", money))
	require.NoError(t, f.SetCellFormula("Sheet1", "B4", "1+1"))
	require.NoError(t, f.SetCellStr("Sheet1", "A5", "Union 1/2 NPT"))
	require.NoError(t, f.SetCellValue("Sheet1", "B5", 45659))
	require.NoError(t, f.SetCellStyle("Sheet1", "B5", "B5", date))
	c, err := Read("b.xlsx", bytesOf(t, f), Options{})
	require.NoError(t, err)
	require.Len(t, c.Lines, 4)
	require.Contains(t, c.Lines[0].Out, "struck out", "every run of the text is")
	require.Empty(t, c.Lines[1].Out, "one word of it is not the line")
	require.Equal(t, "EUR", c.Lines[2].Currency, "the cell's format says so")
	require.Equal(t, "6.35", c.Lines[2].Price)
	require.False(t, c.Lines[2].Counted, "a formula is never worked out")
	require.Contains(t, strings.Join(c.Notes, "|"), "formulas without a value are unknown")
	require.False(t, c.Lines[3].Counted, "2025-01-02 was 1/2 before a spreadsheet took it for a date")
}

// xlsxOf packs parts of a workbook by hand: what no honest program writes.
func xlsxOf(t *testing.T, parts map[string]string) []byte {
	t.Helper()
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	all := map[string]string{
		"xl/workbook.xml":            `<workbook xmlns:r="r"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>`,
		"xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="worksheets/sheet1.xml"/></Relationships>`,
		"xl/worksheets/sheet1.xml":   sheetXML(`<row r="1"><c r="A1" t="inlineStr"><is><t>Description</t></is></c><c r="B1" t="inlineStr"><is><t>Qty</t></is></c></row>` + oneRow),
	}
	for name, text := range parts {
		all[name] = text
	}
	for name, text := range all {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = io.WriteString(w, text)
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return b.Bytes()
}

const oneRow = `<row r="2"><c r="A2" t="inlineStr"><is><t>Elbow 1/2 NPT</t></is></c><c r="B2"><v>2</v></c></row>`

func sheetXML(rows string) string {
	return `<worksheet><sheetData>` + rows + `</sheetData></worksheet>`
}

func TestHostileWorkbooksAreRefusedInWords(t *testing.T) {
	if testing.Short() {
		t.Skip("workbooks of many megabytes, one after the other: in the full run")
	}
	const sheet = "xl/worksheets/sheet1.xml"
	for why, row := range map[string]struct {
		parts  map[string]string
		reason string // "" if it is read
	}{
		"an honest one":                   {nil, ""},
		"a bomb of blanks":                {map[string]string{sheet: sheetXML(strings.Repeat(" ", 60<<20))}, "unpacks"},
		"a tag of a million attributes":   {map[string]string{sheet: "<worksheet " + strings.Repeat(`a="" `, 1_000_000) + "/>"}, "more than a megabyte"},
		"a bomb of shared texts":          {map[string]string{"xl/sharedStrings.xml": "<sst>" + strings.Repeat("<si><t>a</t></si>", 1_400_000) + "</sst>"}, "too large"},
		"a bomb of empty rows":            {map[string]string{sheet: sheetXML(strings.Repeat("<row/>", 3_000_000))}, "too many elements"},
		"more rows than a cart has":       {map[string]string{sheet: sheetXML(strings.Repeat(`<row><c><v>1</v></c></row>`, maxRows+1))}, "rows"},
		"a cell at the edge of the sheet": {map[string]string{sheet: sheetXML(`<row r="1"><c r="XFD1"><v>1</v></c></row>`)}, "column 16384"},
		"a column beyond any sheet":       {map[string]string{sheet: sheetXML(`<row r="1"><c r="ZZZZZZZZZ1"><v>1</v></c></row>`)}, "column"},
		"a row far below":                 {map[string]string{sheet: sheetXML(oneRow + `<row r="1048576"><c r="A1048576"><v>1</v></c></row>`)}, ""},
		"elements too deep":               {map[string]string{sheet: strings.Repeat("<a>", 100_000)}, "too deep"},
		"entities that multiply":          {map[string]string{sheet: `<!DOCTYPE a [<!ENTITY b "bbbb"><!ENTITY c "&b;&b;">]><a>&c;</a>`}, "entities"},
		"another encoding":                {map[string]string{sheet: `<?xml version="1.0" encoding="UTF-7"?><worksheet/>`}, "UTF-7"},
		"macros":                          {map[string]string{"xl/vbaProject.bin": "x"}, "macros"},
		"macros in sheets":                {map[string]string{"xl/macrosheets/sheet1.xml": "x"}, "macros"},
		"links to other files":            {map[string]string{"xl/externalLinks/externalLink1.xml": "<x/>"}, ""},
		"a sheet somewhere else":          {map[string]string{"xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="file:///etc/passwd" TargetMode="External"/></Relationships>`}, "no line"},
		"a sheet outside the workbook":    {map[string]string{"xl/_rels/workbook.xml.rels": `<Relationships><Relationship Id="rId1" Type="x/worksheet" Target="../../../../etc/passwd"/></Relationships>`}, "no line"},
		"a shared text that is not there": {map[string]string{sheet: sheetXML(`<row r="1"><c r="A1" t="s"><v>-5</v></c><c r="B1" t="s"><v>99</v></c></row>` + oneRow)}, ""},
		"a style that is not there":       {map[string]string{sheet: sheetXML(`<row r="1"><c r="A1" s="-1"><v>1</v></c><c r="B1" s="77"><v>1</v></c></row>` + oneRow)}, ""},
		"rows without end":                {map[string]string{sheet: sheetXML(`<row r="-4"><c><v>1</v></c></row><row r="99999999999999999999"><c><v>2</v></c></row>` + oneRow)}, ""},
		"broken XML":                      {map[string]string{sheet: `<worksheet><sheetData><row`}, "cannot be read"},
		"one part for two sheets":         {map[string]string{"xl/workbook.xml": `<workbook xmlns:r="r"><sheets><sheet name="S" sheetId="1" r:id="rId1"/><sheet name="T" sheetId="2" r:id="rId1"/></sheets></workbook>`}, "two of its sheets"},
		"an OpenDocument file":            {map[string]string{"mimetype": "x"}, "OpenDocument"},
	} {
		t.Run(why, func(t *testing.T) {
			data := xlsxOf(t, row.parts)
			var after runtime.MemStats
			c, err := Read("b.xlsx", data, Options{})
			runtime.ReadMemStats(&after)
			require.Less(t, after.HeapSys, uint64(2<<30), "bounded memory")
			if row.reason == "" {
				require.NoError(t, err)
				require.NotEmpty(t, c.Lines)
				return
			}
			var re *ReadError
			require.ErrorAs(t, err, &re)
			require.Contains(t, re.Reason, row.reason)
			require.NotEmpty(t, re.Remedy)
		})
	}
	t.Run("a file that says it is one", func(t *testing.T) {
		_, err := Read("b.xlsx", []byte("PK\x03\x04 and nothing"), Options{})
		require.ErrorContains(t, err, "cannot be read")
	})
	t.Run("any packed file", func(t *testing.T) {
		var b bytes.Buffer
		z := zip.NewWriter(&b)
		_, err := z.Create("photo.jpg")
		require.NoError(t, err)
		require.NoError(t, z.Close())
		_, err = Read("b.zip", b.Bytes(), Options{})
		require.ErrorContains(t, err, "without a workbook")
	})
}

func TestSheetsThatAreReadAndThoseThatAreNot(t *testing.T) {
	f := excelize.NewFile()
	fill := func(name string, rows ...[]any) {
		if name != "Sheet1" {
			_, err := f.NewSheet(name)
			require.NoError(t, err)
		}
		for i := range rows {
			require.NoError(t, f.SetSheetRow(name, cellName(t, 1, i+1), &rows[i]))
		}
	}
	fill("Sheet1", []any{"Dear customer"}, []any{"thank you"})
	fill("Cart", []any{"Description", "Qty", "Price"}, []any{"Elbow 1/2 NPT", 2, 3.5})
	fill("Old", []any{"Description", "Qty", "Price"}, []any{"Tee 1/2 NPT", 2, 3.5})
	require.NoError(t, f.SetSheetVisible("Old", false))
	data := bytesOf(t, f)
	c, err := Read("b.xlsx", data, Options{})
	require.NoError(t, err)
	require.Len(t, c.Lines, 1)
	require.Equal(t, "b.xlsx, sheet Cart, row 2", c.Lines[0].Where())
	require.Len(t, c.Notes, 2, "what is left out is said: %v", c.Notes)
	c, err = Read("b.xlsx", data, Options{Sheet: "Old"})
	require.NoError(t, err)
	require.Equal(t, "Tee 1/2 NPT", c.Lines[0].Text)
	_, err = Read("b.xlsx", data, Options{Sheet: "New"})
	require.ErrorContains(t, err, "its sheets are Sheet1, Cart, Old")
}

func FuzzReadWorkbook(f *testing.F) {
	f.Add(`<row r="1"><c r="A1" t="inlineStr"><is><t>Description</t></is></c></row>`, `<fonts><font><strike/></font></fonts><cellXfs><xf fontId="0" numFmtId="14"/></cellXfs>`, `<si><t>a</t></si>`)
	f.Add(`<row r="9"><c r="B9" s="0"><f>A1</f><v>1E3</v></c><c t="s"><v>0</v></c></row>`, `<numFmts><numFmt numFmtId="200" formatCode="[$€-407]"/></numFmts>`, `<si><r><rPr><strike/></rPr><t>_x0041_</t></r><rPh><t>k</t></rPh></si>`)
	f.Fuzz(func(t *testing.T, rows, styles, texts string) {
		data := xlsxOf(t, map[string]string{
			"xl/worksheets/sheet1.xml": sheetXML(rows), "xl/styles.xml": "<styleSheet>" + styles + "</styleSheet>", "xl/sharedStrings.xml": "<sst>" + texts + "</sst>",
		})
		c, err := Read("f", data, Options{})
		if err != nil {
			var re *ReadError
			require.ErrorAs(t, err, &re)
			return
		}
		for i := range c.Lines {
			require.False(t, strings.ContainsFunc(c.Lines[i].Text, func(r rune) bool { return r < ' ' }))
		}
	})
}

func FuzzReadPacked(f *testing.F) {
	f.Add([]byte("PK\x03\x04"))
	f.Fuzz(func(t *testing.T, data []byte) {
		_, err := Read("f", append([]byte("PK"), data...), Options{})
		if err != nil {
			var re *ReadError
			require.ErrorAs(t, err, &re)
		}
	})
}
