package workbook

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// Common practice, no source: 55 bar below. A check value, and no limit rests on it.

// typing is one cell that a buyer fills in: its row by the key, its column by the head.
type typing struct {
	sheet, key, title string
	value             any
}

// saved writes the content to a new book and types into it.
func saved(t testing.TB, c Content, list ...typing) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "order.xlsx")
	rep, err := Save(path, c, false)
	require.NoError(t, err)
	require.Equal(t, Report{Path: path}, rep)
	typeInto(t, path, list...)
	return path
}

func typeInto(t testing.TB, path string, list ...typing) {
	t.Helper()
	doTo(t, path, func(f *excelize.File) {
		for _, v := range list {
			cell := spot(t, f, v.sheet, v.key, v.title)
			require.NotEmpty(t, cell, "%s %s %s", v.sheet, v.key, v.title)
			require.NoError(t, f.SetCellValue(v.sheet, cell, v.value))
		}
	})
}

// change does something to a book as another program would.
func doTo(t testing.TB, path string, do func(f *excelize.File)) {
	t.Helper()
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	do(f)
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

// asides reads the sheet "Set aside": what it was, which cell, what was typed, was, now, why.
func asides(t testing.TB, f *excelize.File) [][]string {
	t.Helper()
	if !slices.Contains(f.GetSheetList(), asideName) {
		return nil
	}
	rows, err := f.GetRows(asideName, excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	var out [][]string
	for _, r := range rows[listHead:] {
		out = append(out, r[:6])
	}
	return out
}

// buyer is what is typed in these tests: marks on three lines and two joints.
var buyer = []typing{
	{buyName, elbow, "Ordered", "yes"}, {buyName, elbow, "Received", 3}, {buyName, elbow, "Remark", "one box dented"}, {buyName, elbow, "Paid each", 18.25},
	{buyName, washer, "Remark", "=cheaper by the hundred"}, {buyName, washer, "Price each", 21.5},
	{buyName, member, "Ordered", 1},
	{jointsName, intake, "Done", "yes"}, {jointsName, intake, "By whom", "M."},
	{ratesName, "question|hamburg|elbow-38|Is the JIC end 37 degrees, not 45?", answerTitle, "37, says the counter"},
	{"Leak test", "stage|intake|dry fit", "Date, who", "1 Dec, M."},
	{jointsName, "hose|lp-hose/1", "Done", "x"},
}

// requireBuyer checks that what the buyer typed stands beside its row, wherever that is now.
func requireBuyer(t testing.TB, f *excelize.File) {
	t.Helper()
	for _, v := range buyer {
		require.Equal(t, fmt.Sprint(v.value), seen(t, f, v.sheet, v.key, v.title), "%s %s", v.key, v.title)
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
				c.Joints[i].Number = fmt.Sprint("J", 100+i)
			}
		}},
	} {
		t.Run(tc.why, func(t *testing.T) {
			path := saved(t, sample(t), buyer...)
			c := sample(t)
			tc.change(&c)
			f, rep := reissued(t, path, *addUp(t, &c))
			requireBuyer(t, f)
			require.Equal(t, len(buyer), rep.Kept)
			require.Zero(t, rep.SetAside, "%v", asides(t, f))
			require.FileExists(t, strings.TrimSuffix(path, ".xlsx")+".issue-1.xlsx")
			f, rep = reissued(t, path, c)
			requireBuyer(t, f)
			require.Equal(t, len(buyer), rep.Kept, "and a third time")
			require.Empty(t, rep.Changed, "told once")
		})
	}
}

// What the buyer typed is reckoned with in the values that are saved with the formulas.
func TestWhatWasTypedIsReckoned(t *testing.T) {
	path := saved(t, sample(t), append(buyer,
		typing{buyName, "besides|1", "Shop", "hamburg EUR"}, typing{buyName, "besides|1", "Item and what it is", "thread sealant"},
		typing{buyName, "besides|1", "Order", 2}, typing{buyName, "besides|1", "Price each", 4.125})...)
	f, rep := reissued(t, path, sample(t))
	require.Equal(t, 1, rep.Besides)
	for _, tc := range []struct{ why, key, title, want string }{
		{"3 of 4 came", elbow, "State", "short 1"}, {"4 at 18.25 less 69.54", elbow, "Difference", "3.46"},
		{"ordered whole, nothing came", member, "State", "short 1"},
		{"2 at 4.125", "besides|1", "Total", "8.25"},
		{"69.54, 20 washers at 21.50 and 8.25", "shop|hamburg", "Code", "507.79"},
		{"73.00 and 8.25", "shop|hamburg", "Difference", "81.25"},
	} {
		require.Equal(t, tc.want, seen(t, f, buyName, tc.key, tc.title), tc.why)
	}
}

func TestWhatHasNoRowIsSetAsideAndComesBack(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	c := sample(t)
	c.Shops[0].Lines = slices.Delete(c.Shops[0].Lines, 1, 2) // elbow-38
	c.Joints[0].EndB = "G 3/4 female, flat"                  // to be made up again
	addUp(t, &c)
	for range 2 { // and again from the set-aside sheet
		f, rep := reissued(t, path, c)
		require.Equal(t, len(buyer)-6, rep.Kept)
		require.Equal(t, 6, rep.SetAside)
		gone := "Its row is no longer there."
		require.Equal(t, [][]string{
			{"elbow-38, hamburg", "Buy: Ordered", "yes", "", "", gone}, {"elbow-38, hamburg", "Buy: Paid each", "18.25", "", "", gone},
			{"elbow-38, hamburg", "Buy: Received", "3", "", "", gone}, {"elbow-38, hamburg", "Buy: Remark", "one box dented", "", "", gone},
			{"J1, intake.inboard - tail-19/1.a, G 3/4: male in female, cone 60", "Joints: Done", "yes", "", "", gone},
			{"J1, intake.inboard - tail-19/1.a, G 3/4: male in female, cone 60", "Joints: By whom", "M.", "", "", gone},
		}, asides(t, f))
	}
	f, rep := reissued(t, path, sample(t))
	requireBuyer(t, f)
	require.Zero(t, rep.SetAside, "the line and the joint are back, and so are their figures")
}

func TestALineAtAnotherShopIsNotTheSameOrder(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	c := sample(t)
	l := c.Shops[0].Lines[1]
	c.Shops[0].Lines = slices.Delete(c.Shops[0].Lines, 1, 2)
	l.Price = price(t, "30.00", "NZD")
	c.Shops[2].Lines = append(c.Shops[2].Lines, l)
	f, rep := reissued(t, path, *addUp(t, &c))
	require.Equal(t, 4, rep.SetAside)
	require.Empty(t, seen(t, f, buyName, "line|port|elbow-38", "Ordered"))
}

func TestWhatChangedIsTold(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	c := sample(t)
	c.Shops[0].Lines[1].Placed, c.Shops[0].Lines[2].Placed = "6", "90"
	c.Shops[0].Lines[0].Price, c.Shops[0].Lines[0].RatingNeeded = price(t, "1300.00", "EUR"), "60 bar"
	f, rep := reissued(t, path, *addUp(t, &c))
	require.Equal(t, []string{"elbow-38, elbow, 90 degrees: order 4 -> 8; marked as ordered: yes",
		"hp-pump, plunger pump, triplex, 316 head: price 1240 -> 1300.00; must hold 55, worst 71.5 bar -> 60 bar",
		"bonded washer 1/2, washer, bonded, for a G 1/2 face: order 20 -> 100"}, rep.Changed)
	require.Equal(t, "order 4 -> 8", seen(t, f, detailsName, elbow, changedTitle))
	_, rep = reissued(t, path, c)
	require.Empty(t, rep.Changed, "told once")
}

// A cell of ours that was written over: the build's figure stands, and both are told.
func TestCellsOfOursWrittenOver(t *testing.T) {
	path := saved(t, sample(t), typing{buyName, elbow, "Price each", 16.5}, typing{buyName, elbow, "Code", "00417-B"}, typing{buyName, pump, "Order", 2},
		typing{ratesName, "terms|hamburg", "Freight", 55}, typing{ratesName, "terms|hamburg", "Customs", 5}, typing{ratesName, "rate|EUR", "Rate", 1.95},
		typing{buyName, "shop|osaka", "Ordered", 1000}, typing{detailsName, elbow, "Need, and why so many", "I want two"})
	c := sample(t)
	for range 2 {
		f, rep := reissued(t, path, c)
		list := asides(t, f)
		require.Equal(t, 7, rep.SetAside, "the customs were typed as they stood: %v", list)
		for _, want := range [][]string{
			{"elbow-38, hamburg", "Buy: Price each", "16.5", "17.385", "17.385"}, {"elbow-38, hamburg", "Buy: Code", "00417-B", "00417", "00417"},
			{"hp-pump, hamburg", "Buy: Order", "2", "0", "0"}, {"hamburg EUR", "Findings: Freight", "55", "48", "48"}, {"EUR", "Findings: Rate", "1.95", "1.92", "1.92"},
			{"osaka JPY, Membrane works, Osaka: 1 line", "Buy: Ordered", "1000", "94530", "94530"},
			{"elbow-38, hamburg", "Details: Need, and why so many", "I want two", "4 = 3 + 1 spare (1)", "4 = 3 + 1 spare (1)"},
		} {
			require.True(t, slices.ContainsFunc(list, func(r []string) bool { return slices.Equal(r[1:5], want[1:]) }), "%v in %v", want, list)
		}
		require.Equal(t, "48", seen(t, f, ratesName, "terms|hamburg", "Freight"), "the build file rules")
		require.Contains(t, seen(t, f, buyName, elbow, "Item and what it is"), "You wrote over this row", "the row is marked")
	}
	c.Shops[0].Freight, c.Rates[0].Rate = price(t, "55.00", "EUR"), "1.95"
	_, rep := reissued(t, path, *addUp(t, &c))
	require.Equal(t, 5, rep.SetAside, "what the build file has taken over is dealt with")
}

// Both changed a price: the build's stands, the buyer's is what was paid.
func TestBothChangedAPrice(t *testing.T) {
	path := saved(t, sample(t), typing{buyName, elbow, "Price each", 16.5})
	c := sample(t)
	c.Shops[0].Lines[1].Price = price(t, "18.00", "EUR")
	f, rep := reissued(t, path, *addUp(t, &c))
	require.Equal(t, []string{"18", "16.5"}, []string{seen(t, f, buyName, elbow, "Price each"), seen(t, f, buyName, elbow, "Paid each")})
	require.Contains(t, rep.Changed, "elbow-38, hamburg: price each was 17.385, you typed 16.5, and the build now says 18.00")
	require.Zero(t, rep.SetAside)
}

func TestRowsThatWereAdded(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	doTo(t, path, func(f *excelize.File) {
		var row int
		_, err := fmt.Sscanf(strings.TrimLeft(spot(t, f, buyName, pump, "Shop"), "A"), "%d", &row)
		require.NoError(t, err)
		require.NoError(t, f.InsertRows(buyName, row, 1))
		for cell, v := range map[string]any{"A": "hamburg EUR", "B": "olive oil", "G": 2, "H": 3.5, "L": "for the cook"} {
			require.NoError(t, f.SetCellValue(buyName, fmt.Sprint(cell, row), v))
		}
		require.NoError(t, f.DuplicateRow(buyName, row-1)) // the elbow's, with its key
	})
	f, rep := reissued(t, path, sample(t))
	requireBuyer(t, f)
	require.Equal(t, 2, rep.Besides)
	require.Equal(t, []string{"row 1 under the table reads as elbow-38: does it stand in its place? Then write 0 as ordered at the line"}, rep.Ask)
	require.Equal(t, []string{"olive oil", "2", "3.5", "for the cook", "7"}, []string{
		seen(t, f, buyName, "besides|2", "Item and what it is"), seen(t, f, buyName, "besides|2", "Ordered"), seen(t, f, buyName, "besides|2", "Paid each"),
		seen(t, f, buyName, "besides|2", "Remark"), seen(t, f, buyName, "besides|2", "Total")})
	require.Equal(t, "4", seen(t, f, buyName, "besides|1", "Order"), "the copy keeps its number")
	require.Zero(t, rep.SetAside, "%v", asides(t, f))
}

// sortedInPart is the table as someone leaves it who sorts the visible columns alone.
func TestKeysThatBroke(t *testing.T) {
	for _, tc := range []struct {
		why string
		do  func(f *excelize.File, rows map[string]int)
	}{
		{"sorted, and the keys not with it", func(f *excelize.File, rows map[string]int) {
			swap(t, f, rows[elbow], rows[washer], colSpent)
		}},
		{"the hidden columns are gone", func(f *excelize.File, rows map[string]int) {
			for range len(buyColumns) + 1 - colSpent {
				require.NoError(t, f.RemoveCol(buyName, letters(colSpent)))
			}
		}},
		{"the sheet has another name, and a column before it", func(f *excelize.File, rows map[string]int) {
			require.NoError(t, f.SetSheetName(buyName, "Einkauf"))
			require.NoError(t, f.InsertCols("Einkauf", "B", 1))
		}},
		{"the property is gone", func(f *excelize.File, rows map[string]int) {
			require.NoError(t, f.SetCustomProps(excelize.CustomProperty{Name: formatName, Value: nil}))
		}},
	} {
		t.Run(tc.why, func(t *testing.T) {
			path := saved(t, sample(t), buyer...)
			doTo(t, path, func(f *excelize.File) {
				rows := map[string]int{}
				list, err := f.GetRows(buyName)
				require.NoError(t, err)
				for n, r := range list {
					rows[r[len(r)-1]] = n + 1
				}
				tc.do(f, rows)
			})
			f, rep := reissued(t, path, sample(t))
			requireBuyer(t, f)
			require.Zero(t, rep.SetAside, "%v", asides(t, f))
		})
	}
}

// swap changes two rows with each other, in so many columns.
func swap(t testing.TB, f *excelize.File, a, b, columns int) {
	t.Helper()
	for c := range columns {
		x, y := at(c, a), at(c, b)
		vx, vy := value(t, f, buyName, x), value(t, f, buyName, y)
		fx, fy := formula(t, f, buyName, x), formula(t, f, buyName, y)
		put := func(cell, v, formula string) {
			if formula != "" {
				require.NoError(t, f.SetCellFormula(buyName, cell, formula))
				return
			}
			if n, ok := decimalOf(v); ok && c != colCode {
				require.NoError(t, f.SetCellValue(buyName, cell, textToCell(n)))
				return
			}
			require.NoError(t, f.SetCellStr(buyName, cell, v))
		}
		put(x, vy, fy)
		put(y, vx, fx)
	}
}

func TestColumnsCommentsColoursAndSheetsOfTheBuyers(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	doTo(t, path, func(f *excelize.File) {
		head, row := spot(t, f, buyName, headKey+buyName, "Shop"), spot(t, f, buyName, elbow, "Shop")
		require.NoError(t, f.SetCellValue(buyName, "U"+head[1:], "Shelf"))
		require.NoError(t, f.SetCellValue(buyName, "U"+row[1:], "C4"))
		require.NoError(t, f.SetCellValue(buyName, "V"+row[1:], 77)) // a column without a head
		require.NoError(t, f.AddComment(buyName, excelize.Comment{Cell: "B" + row[1:], Author: "Mo", Text: "ask Ines"}))
		cross := spot(t, f, buyName, "line|port|lp-hose", "Remark")
		st, err := f.NewStyle(&excelize.Style{Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"66FF66"}}, Font: &excelize.Font{Strike: true, Color: "FF00FF"}})
		require.NoError(t, err)
		require.NoError(t, f.SetCellStyle(buyName, cross, cross, st))
		_, err = f.NewSheet("My notes")
		require.NoError(t, err)
		require.NoError(t, f.SetCellValue("My notes", "B2", "call the yard"))
		require.NoError(t, f.SetCellValue("My notes", "B3", 12))
		require.NoError(t, f.SetCellFormula("My notes", "B4", "B3*2"))
		require.NoError(t, f.SetCellFormula("My notes", "B5", "SUM(Buy!F1:F9)"))
		require.NoError(t, f.SetCellStyle("My notes", "B2", "B2", st))
		require.NoError(t, f.MergeCell("My notes", "D1", "E2"))
		require.NoError(t, f.AddComment("My notes", excelize.Comment{Cell: "B2", Author: "Mo", Text: "on Monday"}))
		// a straw cell with a formula that was never worked out
		require.NoError(t, f.SetCellFormula(buyName, spot(t, f, buyName, pump, "Received"), "3-2"))
		require.NoError(t, f.SetCellFormula(buyName, spot(t, f, buyName, pump, "Remark"), "G9*2"))
	})
	for n := range 2 {
		f, rep := reissued(t, path, sample(t))
		requireBuyer(t, f)
		require.Equal(t, "C4", seen(t, f, buyName, elbow, "Shelf"))
		require.Equal(t, "77", seen(t, f, buyName, elbow, "column V"))
		comments, err := f.GetComments(buyName)
		require.NoError(t, err)
		require.Len(t, comments, 1)
		require.Equal(t, spot(t, f, buyName, elbow, "Item and what it is"), comments[0].Cell)
		require.Contains(t, noteText(comments[0]), "ask Ines")
		st := cellStyle(t, f, buyName, spot(t, f, buyName, "line|port|lp-hose", "Remark"))
		require.Equal(t, []any{[]string{"66FF66"}, true, "FF00FF"}, []any{st.Fill.Color, st.Font.Strike, st.Font.Color})
		require.Equal(t, []string{"call the yard", "12", "B3*2", "=SUM(Buy!F1:F9)"}, []string{
			value(t, f, "My notes", "B2"), value(t, f, "My notes", "B3"), formula(t, f, "My notes", "B4"), value(t, f, "My notes", "B5")}, "issue %d", n+2)
		require.Equal(t, []string{"66FF66"}, cellStyle(t, f, "My notes", "B2").Fill.Color)
		notes, err := f.GetComments("My notes")
		require.NoError(t, err)
		require.Len(t, notes, 1)
		merged, err := f.GetMergeCells("My notes")
		require.NoError(t, err)
		require.Len(t, merged, 1)
		require.Equal(t, "3-2", formula(t, f, buyName, spot(t, f, buyName, pump, "Received")))
		require.Equal(t, "=G9*2", seen(t, f, buyName, pump, "Remark"), "it looked at a row that stands elsewhere now: its text is kept")
		require.Zero(t, rep.SetAside, "%v", asides(t, f))
	}
	// the commented line is gone: the comment and the shelf are set aside
	c := sample(t)
	c.Shops[0].Lines = slices.Delete(c.Shops[0].Lines, 1, 2)
	f, rep := reissued(t, path, *addUp(t, &c))
	require.Equal(t, 4+2+1, rep.SetAside, "%v", asides(t, f))
	list := fmt.Sprint(asides(t, f))
	require.Contains(t, list, "Buy: Shelf C4")
	require.Contains(t, list, "comment on Buy: Item and what it is")
}

func TestOddThingsTyped(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	doTo(t, path, func(f *excelize.File) {
		date, err := f.NewStyle(&excelize.Style{NumFmt: 14})
		require.NoError(t, err)
		cell := spot(t, f, buyName, "line|port|lp-hose", "Received")
		require.NoError(t, f.SetCellValue(buyName, cell, 46357)) // 2026-12-01
		require.NoError(t, f.SetCellStyle(buyName, cell, cell, date))
		require.NoError(t, f.SetCellValue(buyName, spot(t, f, buyName, "line|port|lp-hose", "Remark"), 12)) // a number among words
		require.NoError(t, f.SetCellValue(buyName, "E1", "a note beside the title"))
		require.NoError(t, f.SetCellValue(jointsName, "B40", "a row under the joints"))
		require.NoError(t, f.MoveSheet(jointsName, buyName))
		require.NoError(t, f.DeleteSheet(detailsName))
	})
	f, rep := reissued(t, path, sample(t))
	requireBuyer(t, f)
	require.Equal(t, []string{"2026-12-01", "12"}, []string{seen(t, f, buyName, "line|port|lp-hose", "Received"), seen(t, f, buyName, "line|port|lp-hose", "Remark")})
	require.Equal(t, 2, rep.SetAside)
	require.Contains(t, fmt.Sprint(asides(t, f)), "a note beside the title")
	require.Contains(t, fmt.Sprint(asides(t, f)), "row 40, added on sheet Joints")
}

// A book without its hidden copy: what stands in straw cells is kept, and that the rest was
// not compared is said.
func TestWithoutTheHiddenCopy(t *testing.T) {
	path := saved(t, sample(t), buyer...)
	doTo(t, path, func(f *excelize.File) { require.NoError(t, f.DeleteSheet(issueName)) })
	f, rep := reissued(t, path, sample(t))
	require.Contains(t, rep.Partial, "its hidden copy is gone")
	for _, v := range buyer {
		if v.title != "Price each" {
			require.Equal(t, fmt.Sprint(v.value), seen(t, f, v.sheet, v.key, v.title))
		}
	}
}

// old.xlsx was written by the first version, with marks on a line, a joint and a rate.
func TestABookOfTheFirstFormat(t *testing.T) {
	data, err := os.ReadFile(filepath.Join("testdata", "first.xlsx"))
	require.NoError(t, err)
	path := filepath.Join(t.TempDir(), "order.xlsx")
	require.NoError(t, os.WriteFile(path, data, 0o644))
	f, rep := reissued(t, path, sample(t))
	require.Contains(t, rep.Partial, "earlier version")
	require.Equal(t, []string{"yes", "one box dented", "yes", "M."}, []string{seen(t, f, buyName, elbow, "Ordered"), seen(t, f, buyName, elbow, "Remark"),
		seen(t, f, jointsName, intake, "Done"), seen(t, f, jointsName, intake, "By whom")})
	require.Contains(t, fmt.Sprint(asides(t, f)), "Findings: Rate 1.95 1.92 1.92")
	require.Equal(t, 1, rep.SetAside)
}

// What another program leaves beside an open book.
func TestOpenElsewhere(t *testing.T) {
	for _, lock := range []string{".~lock.order.xlsx#", "~$order.xlsx"} {
		path := saved(t, sample(t), buyer...)
		before, err := os.ReadFile(path)
		require.NoError(t, err)
		beside := filepath.Join(filepath.Dir(path), lock)
		require.NoError(t, os.WriteFile(beside, []byte(",mo,galley,28.11.2026 10:00,file:///home/mo;"), 0o644))
		_, err = Save(path, sample(t), false)
		require.ErrorContains(t, err, "seems to be open in another program")
		require.ErrorContains(t, err, "--force")
		now, err := os.ReadFile(path)
		require.NoError(t, err)
		require.True(t, bytes.Equal(before, now))
		f, err := Save(path, sample(t), true)
		require.NoError(t, err)
		require.Equal(t, len(buyer), f.Kept, "forced, and still read")
	}
}
