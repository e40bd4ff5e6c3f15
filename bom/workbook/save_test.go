package workbook

import (
	"archive/zip"
	"bytes"
	"fmt"
	"io"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// typing is one cell that a buyer fills in.
type typing struct {
	sheet, cell string
	value       any
}

// saved writes the content to a new book and types into it.
func saved(t testing.TB, c Content, typed ...typing) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "order.xlsx")
	rep, err := Save(path, c, false)
	require.NoError(t, err)
	require.Equal(t, Report{Path: path}, rep)
	typeInto(t, path, typed...)
	return path
}

func typeInto(t testing.TB, path string, typed ...typing) {
	t.Helper()
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	for _, v := range typed {
		require.NoError(t, f.SetCellValue(v.sheet, v.cell, v.value))
	}
	require.NoError(t, f.Save())
	require.NoError(t, f.Close())
}

// reissued saves again and opens the book.
func reissued(t testing.TB, path string, c Content) (*excelize.File, Report) {
	t.Helper()
	rep, err := Save(path, c, false)
	require.NoError(t, err)
	require.True(t, rep.Reissued)
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	t.Cleanup(func() { f.Close() })
	return f, rep
}

// find gives the row of the first cell in a column that holds a text; 0 if none.
func find(t testing.TB, f *excelize.File, sheet, col, text string) int {
	t.Helper()
	for row := 1; row < 100; row++ {
		if value(t, f, sheet, fmt.Sprint(col, row)) == text {
			return row
		}
	}
	return 0
}

// buyer is what is typed in these tests: marks on three lines and two joints.
var buyer = []typing{
	{orderName, "V9", "yes"}, {orderName, "W9", "part"}, {orderName, "X9", "one box dented"},
	{orderName, "X10", "=cheaper by the hundred"},
	{orderName, "V19", "30 Nov"},
	{"Joints", "M4", "yes"}, {"Joints", "N4", "M."},
	{"Joints", "N5", "second try"},
}

// requireBuyer checks that the buyer's marks stand beside their lines, wherever
// these are now.
func requireBuyer(t testing.TB, f *excelize.File) {
	t.Helper()
	for _, tc := range []struct{ sheet, by, col, text, want string }{
		{orderName, "A", "V", "elbow-38", "yes"}, {orderName, "A", "W", "elbow-38", "part"}, {orderName, "A", "X", "elbow-38", "one box dented"},
		{orderName, "A", "X", "bonded washer 1/2", "=cheaper by the hundred"}, {orderName, "A", "V", "element-2521", "30 Nov"},
		{orderName, "A", "V", "hp-pump", ""},
		{"Joints", "C", "M", "intake.inboard to tail-19/1.a", "yes"}, {"Joints", "C", "N", "intake.inboard to tail-19/1.a", "M."},
		{"Joints", "C", "N", "hp-pump.out to elbow-38.a", "second try"},
	} {
		row := find(t, f, tc.sheet, tc.by, tc.text)
		require.NotZero(t, row, "%s is on sheet %s", tc.text, tc.sheet)
		require.Equal(t, tc.want, value(t, f, tc.sheet, fmt.Sprint(tc.col, row)), "%s, column %s", tc.text, tc.col)
	}
}

func TestReissueKeepsWhatWasTyped(t *testing.T) {
	extra := Line{Key: "new", Item: "new", Placed: "1", Unit: "pc", HasPrice: true}
	for _, tc := range []struct {
		why    string
		change func(c *Content)
	}{
		{"nothing changed", func(*Content) {}},
		{"a line was added before", func(c *Content) {
			extra.Price = price(t, "1.00", "EUR")
			c.Shops[0].Lines = append([]Line{extra}, c.Shops[0].Lines...)
		}},
		{"the lines were put in another order", func(c *Content) { slices.Reverse(c.Shops[0].Lines) }},
		{"the shops were put in another order", func(c *Content) { slices.Reverse(c.Shops) }},
		{"a line without marks is gone", func(c *Content) { c.Shops = c.Shops[:3] }},
		{"quantity and price changed", func(c *Content) {
			c.Shops[0].Lines[1].Placed, c.Shops[0].Lines[1].Price = "7", price(t, "18.00", "EUR")
		}},
		{"the joints were counted anew", func(c *Content) {
			slices.Reverse(c.Joints)
			for i := range c.Joints {
				c.Joints[i].Number = fmt.Sprint(100 + i)
			}
		}},
	} {
		t.Run(tc.why, func(t *testing.T) {
			path := saved(t, sample(t), buyer...)
			c := sample(t)
			tc.change(&c)
			f, rep := reissued(t, path, *settle(t, &c))
			requireBuyer(t, f)
			require.Equal(t, 5, rep.Kept, "three lines and two joints")
			require.Zero(t, rep.SetAside)
			require.NotContains(t, f.GetSheetList(), asideName)
			f, rep = reissued(t, path, c)
			requireBuyer(t, f)
			require.Equal(t, 5, rep.Kept, "and a third time")
		})
	}
}

func TestWhatHasNoRowIsSetAsideAndComesBack(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	c := sample(t)
	c.Shops[0].Lines = slices.Delete(c.Shops[0].Lines, 1, 2) // elbow-38
	c.Joints[0].EndB = "G 3/4 female, flat"                  // to be made up again
	settle(t, &c)
	for range 2 { // and again from the set-aside sheet
		f, rep := reissued(t, path, c)
		require.Equal(t, 3, rep.Kept)
		require.Equal(t, 2, rep.SetAside)
		var rows [][]string
		for _, row := range []string{"4", "5"} {
			var cells []string
			for _, col := range []string{"A", "B", "C", "D", "E", "F", "G", "I"} {
				cells = append(cells, value(t, f, asideName, col+row))
			}
			rows = append(rows, cells)
		}
		require.Equal(t, [][]string{
			{"elbow-38, elbow, 90 degrees", "hamburg", "yes", "part", "", "", "one box dented", "This shop's order has no such line now."},
			{"1, intake.inboard to tail-19/1.a", "", "", "", "yes", "M.", "", "No joint has these ports and ends now."},
		}, rows)
	}
	f, rep := reissued(t, path, sample(t))
	requireBuyer(t, f)
	require.Equal(t, 5, rep.Kept)
	require.Zero(t, rep.SetAside, "the line and the joint are back, and so are their marks")
}

func TestALineAtAnotherShopIsNotTheSameOrder(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	c := sample(t)
	l := c.Shops[0].Lines[1]
	c.Shops[0].Lines = slices.Delete(c.Shops[0].Lines, 1, 2)
	l.Price = price(t, "30.00", "NZD")
	c.Shops[2].Lines = append(c.Shops[2].Lines, l)
	f, rep := reissued(t, path, *settle(t, &c))
	require.Equal(t, 1, rep.SetAside)
	require.Empty(t, value(t, f, orderName, fmt.Sprint("V", find(t, f, orderName, "A", "elbow-38"))))
	require.Equal(t, "yes", value(t, f, asideName, "C4"))
}

func TestNewerMarkWinsAndOlderIsKept(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	without := sample(t)
	without.Shops[0].Lines = slices.Delete(without.Shops[0].Lines, 1, 2)
	settle(t, &without)
	reissued(t, path, without)
	with, err := Save(path, sample(t), false) // the mark is back
	require.NoError(t, err)
	require.Equal(t, 5, with.Kept)
	c, err := count(sample(t))
	require.NoError(t, err)
	old, newer := Mark{Kind: kindLine, Shop: "hamburg", Key: "elbow-38", Remark: "old"}, Mark{Kind: kindLine, Shop: "hamburg", Key: "elbow-38", Remark: "new"}
	p := place(c, Marks{newer, old, old})
	require.Equal(t, "new", p.line("hamburg", "elbow-38").Remark)
	require.Equal(t, []asideMark{{old, "A second mark for the same row."}}, p.aside, "kept once")
}

func TestANumberThatChangedAfterOrderingIsTold(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	c := sample(t)
	c.Shops[0].Lines[1].Placed, c.Shops[0].Lines[2].Placed = "6", "90" // the second was never ordered
	_, rep := reissued(t, path, *settle(t, &c))
	require.Equal(t, []string{"elbow-38, elbow, 90 degrees: marked as ordered when 4 were due, and now it is 8",
		"bonded washer 1/2, washer, bonded, for a G 1/2 face: order 20 -> 100"}, rep.Changed)
	_, rep = reissued(t, path, c)
	require.Empty(t, rep.Changed, "told once")
}

func TestChangedValuesAreTold(t *testing.T) {
	path := saved(t, sample(t), typing{orderName, "Q10", 21.5}, typing{orderName, "Q12", 55}, typing{orderName, "Q13", 5.0},
		typing{orderName, "Q23", 12.5}, typing{ratesName, "B5", 1.95})
	c := sample(t)
	for range 2 {
		f, rep := reissued(t, path, c)
		require.Equal(t, 4, rep.SetAside, "the customs were typed as they stood")
		for i, want := range [][]string{
			{"Price of bonded washer 1/2, washer, bonded, for a G 1/2 face", "21.5", "The build file knows none: write it there to use it."},
			{"Freight at shop hamburg", "55", "The build file says 48.00, and that is used: write yours there to use it."},
			{"Tax at shop osaka", "12.5", "The build file says 15, and that is used: write yours there to use it."},
			{"Rate of EUR", "1.95", "The build file says 1.92, and that is used: write yours there to use it."},
		} {
			row := fmt.Sprint(4 + i)
			require.Equal(t, want, []string{value(t, f, asideName, "A"+row), value(t, f, asideName, "H"+row), value(t, f, asideName, "I"+row)})
		}
		require.Equal(t, "48", value(t, f, orderName, "Q12"), "the build file rules")
	}
	c.Shops[0].Freight = price(t, "55.00", "EUR")
	c.Rates[0].Rate = "1.95"
	_, rep := reissued(t, path, *settle(t, &c))
	require.Equal(t, 2, rep.SetAside, "what the build file has taken over is settled")
}

func TestOddThingsTyped(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	date, err := f.NewStyle(&excelize.Style{NumFmt: 14})
	require.NoError(t, err)
	require.NoError(t, f.SetCellValue(orderName, "W28", 46357)) // 2026-12-01
	require.NoError(t, f.SetCellStyle(orderName, "W28", "W28", date))
	require.NoError(t, f.SetCellValue(orderName, "X28", 12)) // a number among words
	require.NoError(t, f.SetCellValue(orderName, "A41", "olive oil"))
	require.NoError(t, f.SetCellValue(orderName, "B41", "2 bottles"))
	require.NoError(t, f.SetCellValue(orderName, "X41", "a line of the buyer's own"))
	require.NoError(t, f.InsertCols(orderName, "C", 1))
	require.NoError(t, f.SetSheetName(orderName, "Bestellung"))
	require.NoError(t, f.MoveSheet("Joints", "Bestellung"))
	require.NoError(t, f.DeleteSheet("Spares"))
	require.NoError(t, f.Save())
	require.NoError(t, f.Close())

	f, rep := reissued(t, path, sample(t))
	requireBuyer(t, f)
	require.Equal(t, 6, rep.Kept)
	require.Equal(t, []string{"2026-12-01", "12"}, []string{value(t, f, orderName, "W28"), value(t, f, orderName, "X28")})
	require.Equal(t, []string{"olive oil, 2 bottles", "a line of the buyer's own", "This row was added by hand."},
		[]string{value(t, f, asideName, "A4"), value(t, f, asideName, "G4"), value(t, f, asideName, "I4")})
}

func TestABookThatLostItsPropertyIsStillOurs(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	require.NoError(t, f.SetCustomProps(excelize.CustomProperty{Name: formatName, Value: nil}))
	require.NoError(t, f.Save())
	require.NoError(t, f.Close())
	f, _ = reissued(t, path, sample(t))
	requireBuyer(t, f)
}

// archive makes a zip archive of parts, by name.
func archive(t testing.TB, parts map[string]string) []byte {
	t.Helper()
	var buf bytes.Buffer
	z := zip.NewWriter(&buf)
	for _, name := range slices.Sorted(maps.Keys(parts)) {
		w, err := z.Create(name)
		require.NoError(t, err)
		_, err = io.WriteString(w, parts[name])
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	return buf.Bytes()
}

// changedBook is a book of ours after something was done to it.
func changedBook(t testing.TB, do func(f *excelize.File)) []byte {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(made(t, sample(t), nil)))
	require.NoError(t, err)
	defer f.Close()
	do(f)
	buf, err := f.WriteToBuffer()
	require.NoError(t, err)
	return buf.Bytes()
}

func TestForeignFilesAreRefusedAndLeftAlone(t *testing.T) {
	own := made(t, sample(t), nil)
	for _, tc := range []struct {
		why  string
		data []byte
		says string
	}{
		{"text", []byte("dear diary, this is not a workbook"), "it cannot be opened as a workbook"},
		{"empty", nil, "it cannot be opened as a workbook"},
		{"another workbook, whatever its name", func() []byte {
			f := excelize.NewFile()
			require.NoError(t, f.SetSheetName("Sheet1", orderName))
			buf, err := f.WriteToBuffer()
			require.NoError(t, err)
			return buf.Bytes()
		}(), "no sheet in it has the mark of an order of ours"},
		{"cut short", own[:len(own)/2], "it cannot be opened as a workbook"},
		{"a zip bomb", archive(t, map[string]string{"xl/workbook.xml": strings.Repeat(" ", unzippedLimit+1)}), "it cannot be opened as a workbook"},
		{"an archive of something else", archive(t, map[string]string{"readme.txt": "hello"}), "it cannot be opened as a workbook"},
		{"of a newer format", changedBook(t, func(f *excelize.File) {
			require.NoError(t, f.SetCustomProps(excelize.CustomProperty{Name: formatName, Value: "2"}))
		}), "it is of format 2, and this handtight knows format 1"},
		{"of a newer format, property lost", changedBook(t, func(f *excelize.File) {
			require.NoError(t, f.SetCustomProps(excelize.CustomProperty{Name: formatName, Value: nil}))
			require.NoError(t, f.SetCellStr(orderName, at(colKind, headRow), "handtight 2"))
		}), `it is marked "handtight 2", and this handtight knows "handtight 1"`},
		{"with a sheet of the buyer's own", changedBook(t, func(f *excelize.File) {
			_, err := f.NewSheet("My notes")
			require.NoError(t, err)
		}), `it has what was added by hand and would be lost: sheet "My notes"`},
		{"with a row as wide as a sheet", changedBook(t, func(f *excelize.File) {
			require.NoError(t, f.SetCellStr(orderName, "XFD8", "x"))
		}), `sheet "Order" is too large to be ours`},
	} {
		t.Run(tc.why, func(t *testing.T) {
			path := filepath.Join(t.TempDir(), "order.xlsx")
			require.NoError(t, os.WriteFile(path, tc.data, 0o644))
			_, err := Save(path, sample(t), false)
			var foreign *ForeignFileError
			require.ErrorAs(t, err, &foreign)
			require.Equal(t, path, foreign.Path)
			require.ErrorContains(t, err, tc.says)
			require.ErrorContains(t, err, "Choose another name with -o, or write over it with --force")
			requireAlone(t, path, tc.data)

			rep, err := Save(path, sample(t), true)
			require.NoError(t, err, "forced")
			require.False(t, rep.Reissued)
			written, err := os.ReadFile(path)
			require.NoError(t, err)
			require.Equal(t, own, written)
		})
	}
}

// requireAlone checks that a file holds that and stands alone in its folder.
func requireAlone(t testing.TB, path string, data []byte) {
	t.Helper()
	now, err := os.ReadFile(path)
	require.NoError(t, err)
	require.True(t, bytes.Equal(data, now), "the file is as it was")
	list, err := os.ReadDir(filepath.Dir(path))
	require.NoError(t, err)
	require.Len(t, list, 1, "and nothing is left beside it")
}

func TestForceKeepsTheMarksOfOurOwn(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	rep, err := Save(path, sample(t), true)
	require.NoError(t, err)
	require.True(t, rep.Reissued)
	require.Equal(t, 5, rep.Kept)
}

// A row may say that it is the last of a million: that is legal, and must not
// make a million rows of it.
func TestAFarRowDoesNotHoldUpReading(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	far := edited(t, data, func(text string) string {
		return strings.Replace(text, "</sheetData>",
			`<row r="1048576"><c r="A1048576" t="inlineStr"><is><t>far</t></is></c></row></sheetData>`, 1)
	})
	require.NoError(t, os.WriteFile(path, far, 0o644))
	f, _ := reissued(t, path, sample(t))
	requireBuyer(t, f)
}

func TestNothingIsHalfWritten(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	before, err := os.ReadFile(path)
	require.NoError(t, err)
	c := sample(t)
	c.Total = price(t, "1", "NZD")
	_, err = Save(path, c, true)
	require.Error(t, err, "a content that contradicts itself")
	requireAlone(t, path, before)
}

func TestPathsThatCannotBeWritten(t *testing.T) {
	dir := t.TempDir()
	require.NoError(t, os.Mkdir(filepath.Join(dir, "folder.xlsx"), 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(dir, "plain"), nil, 0o644))
	for _, tc := range []struct{ why, path, says string }{
		{"a directory", "folder.xlsx", "folder.xlsx: this is a folder, not a file; name a file in it"},
		{"no such folder", "none/order.xlsx", "order.xlsx: it cannot be written: its folder is not there"},
		{"a file where a folder is due", "plain/order.xlsx", "order.xlsx: it cannot be written: not a directory"},
		{"another ending", "order.ods", "does not end in .xlsx, and spreadsheet programs go by the ending; write "},
		{"no ending", "order", "order.xlsx"},
	} {
		t.Run(tc.why, func(t *testing.T) {
			_, err := Save(filepath.Join(dir, tc.path), sample(t), false)
			require.ErrorContains(t, err, tc.says)
		})
	}
	input := filepath.Join(dir, "input.xlsx")
	require.NoError(t, os.WriteFile(input, []byte("kept"), 0o644))
	_, err := Save(input, sample(t), true, input)
	require.ErrorContains(t, err, "never written over", "also when it is forced")
}

func TestAFolderWithoutLeaveToWrite(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "kept")
	require.NoError(t, os.Mkdir(dir, 0o555))
	t.Cleanup(func() { os.Chmod(dir, 0o755) })
	if f, err := os.Create(filepath.Join(dir, "probe")); err == nil {
		f.Close()
		t.Skip("this user may write into any folder")
	}
	_, err := Save(filepath.Join(dir, "order.xlsx"), sample(t), false)
	require.ErrorContains(t, err, "order.xlsx: it cannot be written: permission denied")
}

func TestSaveKeepsRightsAndLinks(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	require.NoError(t, os.Chmod(path, 0o600))
	link := filepath.Join(t.TempDir(), "link.xlsx")
	require.NoError(t, os.Symlink(path, link))
	f, _ := reissued(t, link, sample(t))
	requireBuyer(t, f)
	info, err := os.Lstat(link)
	require.NoError(t, err)
	require.NotZero(t, info.Mode()&os.ModeSymlink, "the link is still one")
	info, err = os.Stat(path)
	require.NoError(t, err)
	require.Equal(t, os.FileMode(0o600), info.Mode().Perm())
}

func FuzzReadMarks(f *testing.F) {
	own := made(f, sample(f), nil)
	f.Add(own)
	f.Add(own[:len(own)/3])
	f.Add(archive(f, map[string]string{"xl/workbook.xml": "<workbook/>"}))
	f.Fuzz(func(t *testing.T, data []byte) {
		marks, err := ReadMarks(bytes.NewReader(data))
		if err != nil {
			require.Nil(t, marks)
			return
		}
		made(t, sample(t), marks)
	})
}

// The marks of another build's book are kept where a line has the same key, and the
// report says whose book it was.
func TestAnotherBuildsBook(t *testing.T) {
	path := filepath.Join(t.TempDir(), "list.xlsx")
	c := sample(t)
	_, err := Save(path, c, false)
	require.NoError(t, err)
	rep, err := Save(path, c, false)
	require.NoError(t, err)
	require.Empty(t, rep.Other)
	old := c.Title
	c.Title = "Tern: another build"
	rep, err = Save(path, c, false)
	require.NoError(t, err)
	require.Equal(t, old, rep.Other)
}
