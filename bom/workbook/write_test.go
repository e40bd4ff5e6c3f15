package workbook

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// opened writes a book and opens it again.
func opened(t testing.TB, c Content) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(made(t, c)))
	require.NoError(t, err)
	t.Cleanup(func() { f.Close() })
	return f
}

// value reads a cell as it is stored.
func value(t testing.TB, f *excelize.File, sheet, cell string) string {
	t.Helper()
	v, err := f.GetCellValue(sheet, cell, excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	return v
}

func formula(t testing.TB, f *excelize.File, sheet, cell string) string {
	t.Helper()
	v, err := f.GetCellFormula(sheet, cell)
	require.NoError(t, err)
	return v
}

func cellStyle(t testing.TB, f *excelize.File, sheet, cell string) *excelize.Style {
	t.Helper()
	id, err := f.GetCellStyle(sheet, cell)
	require.NoError(t, err)
	st, err := f.GetStyle(id)
	require.NoError(t, err)
	return st
}

// spot names the cell of a row, by its key, under a head; "" if there is none.
func spot(t testing.TB, f *excelize.File, sheet, key, title string) string {
	t.Helper()
	rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
	require.NoError(t, err)
	col, keys := -1, -1
	for _, r := range rows {
		if i := slices.IndexFunc(r, func(s string) bool { return strings.HasPrefix(s, headKey) }); i >= 0 {
			col, keys = slices.Index(r, title), i
		}
	}
	besides, nth := 0, 0
	for n, r := range rows {
		if keys >= 0 && col >= 0 && keys < len(r) && r[keys] == key {
			return at(col, n+1)
		}
		if keys >= 0 && keys < len(r) && r[keys] == "besides" {
			besides = n + 1
		}
	}
	if _, err := fmt.Sscanf(key, "besides|%d", &nth); err == nil && col >= 0 { // an empty row has no key
		return at(col, besides+nth)
	}
	return ""
}

// seen reads the cell of a row under a head.
func seen(t testing.TB, f *excelize.File, sheet, key, title string) string {
	t.Helper()
	cell := spot(t, f, sheet, key, title)
	require.NotEmpty(t, cell, "%s: %s, %s", sheet, key, title)
	return value(t, f, sheet, cell)
}

const (
	elbow  = "line|hamburg|elbow-38"
	washer = "line|hamburg|washer-12"
	pump   = "line|hamburg|hp-pump"
	member = "line|osaka|element"
	intake = "intake.inboard | tail-19/1.a | G 3/4 male | G 3/4 female, cone 60"
)

func TestBuyCells(t *testing.T) {
	f := opened(t, sample(t))
	for _, tc := range []struct{ why, key, title, want string }{
		{"a shop is named with its money", elbow, "Shop", "hamburg EUR"},
		{"shop words, then the build's name for it; to be asked", elbow, "Item and what it is",
			"ASK FIRST (sheet Findings): elbow 90 degrees, 3/8 NPT male x 9/16-18 JIC 37 degree male, 316 [elbow-38, 2 packs of 2]"},
		{"code", elbow, "Code", "00417"}, {"a code that looks like a formula", "line|port|lp-hose", "Code", "=SUM(1,1)"},
		{"rounded up to packs", elbow, "Order", "4"}, {"price", elbow, "Price each", "17.385"}, {"total", elbow, "Total", "69.54"},
		{"nothing is ordered", elbow, "State", ""}, {"nor does it differ", elbow, "Difference", ""},
		{"no price", washer, "Total", "no price"}, {"aboard", pump, "Order", "0"},
		{"no shop", "line||probe", "Shop", "?"},
		{"goods", "shop|hamburg", "Code", "69.54"}, {"freight", "shop|hamburg", "Order", "48"}, {"customs", "shop|hamburg", "Price each", "5.88"},
		{"tax", "shop|hamburg", "Total", "18.51"}, {"shop total", "shop|hamburg", "Ordered", "141.93"}, {"in the build's money", "shop|hamburg", "Received", "272.51"},
		{"grand total", "grand", "Received", "1397.75"},
		{"unpriced lines are said", "unpriced", "Shop", "2" + unpricedText},
	} {
		t.Run(tc.why, func(t *testing.T) { require.Equal(t, tc.want, seen(t, f, buyName, tc.key, tc.title)) })
	}
	var order []string
	rows, err := f.GetRows(buyName)
	require.NoError(t, err)
	for _, r := range rows {
		if key := r[len(r)-1]; strings.HasPrefix(key, "line|") {
			order = append(order, strings.TrimPrefix(key, "line|"))
		}
	}
	require.Equal(t, []string{"hamburg|elbow-38", "hamburg|hp-pump", "hamburg|washer-12", "osaka|element", "port|lp-hose", "|probe"}, order, "by shop, the most dangerous first")
	ok, link, err := f.GetCellHyperLink(buyName, spot(t, f, buyName, elbow, "Code"))
	require.NoError(t, err)
	require.True(t, ok)
	require.Equal(t, "https://shop.example/00417", link)
}

// A link opens a page of the web, and nothing else.
func TestOnlyWebPagesAreLinked(t *testing.T) {
	for _, url := range []string{"javascript:alert(1)", "file:///etc/hosts", "plain words", "ftp://shop.example", "HTTPS//x"} {
		c := sample(t)
		c.Shops[0].Lines[1].URL = url
		z, err := zip.NewReader(bytes.NewReader(made(t, c)), int64(len(made(t, c))))
		require.NoError(t, err)
		for _, part := range z.File {
			r, err := part.Open()
			require.NoError(t, err)
			data, err := io.ReadAll(r)
			require.NoError(t, err)
			require.NotContains(t, string(data), "<hyperlink ", part.Name)
		}
	}
}

func TestBanner(t *testing.T) {
	stop, caution := finding.Finding{Severity: finding.Stop}, finding.Finding{Severity: finding.Caution}
	for _, tc := range []struct {
		want string
		list []finding.Finding
	}{
		{"No stops.", nil},
		{"No stops. 1 caution: read it on sheet Findings before you order.", []finding.Finding{caution}},
		{"No stops. 2 cautions: read them on sheet Findings before you order.", []finding.Finding{caution, caution}},
		{"DO NOT ORDER: 1 stop. Sheet Findings says what to settle first.", []finding.Finding{stop, caution}},
		{"DO NOT ORDER: 2 stops. Sheet Findings says what to settle first.", []finding.Finding{stop, stop}},
	} {
		c := sample(t)
		c.Findings = facts.Findings(tc.list)
		f := opened(t, c)
		require.Equal(t, tc.want, seen(t, f, buyName, "banner", "Shop"))
	}
}

func names(f *excelize.File) (out []string) {
	for _, n := range f.GetDefinedName() {
		out = append(out, n.Name+" "+n.RefersTo)
	}
	return out
}

func TestLockedAndUnlocked(t *testing.T) {
	f := opened(t, sample(t))
	for _, tc := range []struct {
		why, sheet, key, title string
		locked                 bool
	}{
		{"total", buyName, elbow, "Total", true}, {"grand total", buyName, "grand", "Received", true}, {"known price", buyName, elbow, "Price each", true},
		{"unknown price", buyName, washer, "Price each", false}, {"ordered", buyName, elbow, "Ordered", false}, {"received", buyName, elbow, "Received", false},
		{"paid", buyName, elbow, "Paid each", false}, {"remark", buyName, elbow, "Remark", false}, {"besides", buyName, "besides|1", "Item and what it is", false},
		{"freight", ratesName, "terms|hamburg", "Freight", false}, {"customs", ratesName, "terms|hamburg", "Customs", false},
		{"rate", ratesName, "rate|EUR", "Rate", false}, {"own rate", ratesName, "rate|NZD", "Rate", true},
		{"done", jointsName, intake, "Done", false}, {"the joint", jointsName, intake, "Joint and its ends", true},
	} {
		t.Run(tc.why, func(t *testing.T) {
			require.Equal(t, tc.locked, cellStyle(t, f, tc.sheet, spot(t, f, tc.sheet, tc.key, tc.title)).Protection.Locked)
		})
	}
	for _, name := range []string{buyName, ratesName, jointsName} {
		p, err := f.GetSheetProtection(name)
		require.NoError(t, err)
		require.True(t, p.SelectLockedCells && p.SelectUnlockedCells && p.FormatColumns && p.AutoFilter && p.InsertRows, "%s: locked, and still to be read, widened and filtered", name)
		require.Empty(t, p.Password)
	}
}

func TestSheetsAndPaper(t *testing.T) {
	f := opened(t, sample(t))
	require.Equal(t, []string{"Buy", "Joints", "Details", "Leak test", "Findings", "issue"}, f.GetSheetList())
	for _, name := range f.GetSheetList()[:5] {
		layout, err := f.GetPageLayout(name)
		require.NoError(t, err)
		require.Equal(t, []int{1, 0}, []int{*layout.FitToWidth, *layout.FitToHeight}, "%s: one page wide", name)
		require.Equal(t, 9, *layout.Size, "A4")
		props, err := f.GetSheetProps(name)
		require.NoError(t, err)
		require.True(t, *props.FitToPage, "%s: the filter takes this away when it comes too late", name)
		foot, err := f.GetHeaderFooter(name)
		require.NoError(t, err)
		require.Contains(t, foot.OddFooter, "Page &P of &N")
		panes, err := f.GetPanes(name)
		require.NoError(t, err)
		require.True(t, panes.Freeze)
		require.Contains(t, strings.Join(names(f), "\n"), "_xlnm.Print_Area '"+name+"'!$A$1:$")
	}
	visible, err := f.GetSheetVisible(issueName)
	require.NoError(t, err)
	require.False(t, visible)
	require.Contains(t, strings.Join(names(f), "\n"), "_xlnm._FilterDatabase 'Buy'!$A$")
	for _, col := range []int{colSpent, colCount, colCame, len(buyColumns)} {
		visible, err := f.GetColVisible(buyName, letters(col))
		require.NoError(t, err)
		require.False(t, visible, "the helpers and the keys are hidden")
	}
}

const asked = "question|hamburg|elbow-38|Is the JIC end 37 degrees, not 45?"

func TestListCells(t *testing.T) {
	f := opened(t, sample(t))
	for _, tc := range []struct{ sheet, cell, want string }{
		{"Details", "C5", "4 = 3 + 1 spare (1)"}, {"Details", "C4", "0 = 1 - 1 aboard"}, {"Details", "C8", "3.8 = 3.4 + 0.7 spare - 0.3 aboard"},
		{"Details", "D5", "55, worst 71.5 bar"}, {"Details", "A10", "(1) spoiled while fitting: 3 to fit, 3 % spoiled each: 1 spare gives 99.5 % to have enough (asked 95 %).   (2) planned change: Changed once in 9 months, and 3 for what is spoiled."},
		{"Joints", "A4", "J1"}, {"Joints", "B4", "intake.inboard - tail-19/1.a, G 3/4: male in female, cone 60"}, {"Joints", "E4", "0.3 bar B"},
		{"Joints", "B5", "hp-pump.out - elbow-38.a, 3/8 NPT: female in male"}, {"Joints", "B6", "elbow-38.b - hp-hose.a\n9/16-18 JIC 37 degree male in G 1/4 female"},
		{"Joints", "C6", "STOP: will not start: The thread is 14.3 mm on one side and 13.2 mm on the other."},
		{"Joints", "A7", "Care 1: Hold the seacock, turn the nut: 2 turns by hand, then 40 N m."},
		{"Findings", "A13", "STOP"}, {"Findings", "G13", "Buy the hose with a 9/16-18 JIC female swivel."},
		{"Findings", "B13", "elbow-38.b to hp-hose.a\nkittiwake.toml, line 31"},
		{"Findings", "A5", "EUR"}, {"Findings", "B5", "1.92"}, {"Joints", spot(t, f, "Joints", "rests|Chance that a fitting is spoiled while fitting", "No."), "Chance that a fitting is spoiled while fitting: 3 % (a judgement, given in the build file)"},
		{"Leak test", spot(t, f, "Leak test", "caution|1", "Stage"), "Never tighten a joint under pressure."},
		{"Leak test", "A5", "1 dock flush"}, {"Joints", "A14", "lp-hose/1: J1 tail-19/1.b to J2 strainer.in"}, {"Joints", "C14", "19 mm bore, stands a vacuum; note 1"}, {"Joints", "E14", "840"}, {"Findings", spot(t, f, "Findings", asked, "Freight"), "Is the JIC end 37 degrees, not 45? (settles 1 joint)"},
		{"Details", "A5", "elbow-38"},
	} {
		require.Equal(t, tc.want, value(t, f, tc.sheet, tc.cell), "%s %s", tc.sheet, tc.cell)
	}
	require.Empty(t, spot(t, f, "Details", elbow, "Extra"), "a column in which nothing stands is left out")
}

func TestDutySheet(t *testing.T) {
	f := opened(t, Content{Currency: "EUR", Duty: []DutyRow{
		{Plant: "main", What: "fresh water", Least: "28.1", Middle: "35.8", Greatest: "44", Unit: "L/h"},
		{Plant: "main", What: "flux", Middle: "31", Limit: "30", Margin: "-1.0", Over: true},
		{Plant: "main", Note: "Rests on water: said, 17 C"}, {Plant: "main", Note: "Rests on age: not said, new"},
	}})
	for title, want := range map[string]string{"Money, shop": "fresh water, L/h", "Freight free from": "28.1", "Customs": "35.8", "Tax": "44"} {
		require.Equal(t, want, seen(t, f, ratesName, "duty|main|fresh water|1", title), "the table takes the columns of the rates")
	}
	require.Equal(t, dutyTitle, seen(t, f, ratesName, "duty", "Money, shop"))
	require.Equal(t, "OVER: limit 30, margin -1.0", seen(t, f, ratesName, "duty|main|flux|1", answerTitle))
	require.Equal(t, "Rests on water: said, 17 C; age: not said, new", seen(t, f, ratesName, "duty note|0", "Money, shop"), "what the figures rest on stands in one row")
}

// The demo's duty: what is made, how salt, what it takes; nothing where it cannot be reckoned.
func TestDutyOfTheDemo(t *testing.T) {
	var said []string
	for _, d := range demo(t, "clean").Duty {
		said = append(said, d.What+" "+d.Unit)
	}
	for _, want := range []string{"fresh water L/h", "salt in it mg/L", "energy for a litre Wh/L"} {
		require.Contains(t, said, want)
	}
	require.Empty(t, dutyOf([]facts.DutyPlant{{Name: "p", WhyNot: "no pump", Rests: []facts.DutyBasis{{What: "x"}}}}))
}

func TestTextsNeverBecomeFormulas(t *testing.T) {
	for _, text := range []string{`=HYPERLINK("http://example.org","x")`, "+33 1", "-1+1", "@SUM(A1)", "\t=1", "_x0041_", "'quoted", "<b>&amp;", " both sides "} {
		c := sample(t)
		c.Title, c.Shops[0].Name = text, text
		l := &c.Shops[0].Lines[0]
		l.Item, l.Code, l.About = text, text, text
		c.Findings[0].Reason, c.Joints[0].Closes, c.Spares[0].Why, c.Cautions[0] = text, text, text, text
		f := opened(t, c)
		for _, p := range []struct{ sheet, cell string }{
			{buyName, "A1"}, {buyName, spot(t, f, buyName, pump, "Code")}, {buyName, spot(t, f, buyName, pump, "Item and what it is")},
			{"Findings", "D13"}, {"Details", "A10"}, {"Leak test", spot(t, f, "Leak test", "caution|0", "Stage")}, {"Details", "A4"},
		} {
			require.Contains(t, value(t, f, p.sheet, p.cell), strings.ReplaceAll(text, "\t", " "), "%s %s", p.sheet, p.cell)
			require.Empty(t, formula(t, f, p.sheet, p.cell))
		}
	}
}

func TestSameContentSameBytes(t *testing.T) {
	sums := map[string]bool{}
	for range 10 {
		sums[fmt.Sprintf("%x", sha256.Sum256(made(t, sample(t))))] = true
	}
	require.Len(t, sums, 1)
	props, err := opened(t, sample(t)).GetDocProps()
	require.NoError(t, err)
	require.Equal(t, []string{"handtight", "handtight", "2026-11-20T00:00:00Z", "2026-11-20T00:00:00Z"},
		[]string{props.Creator, props.LastModifiedBy, props.Created, props.Modified}, "never the clock's time")
}

func TestEmptyContent(t *testing.T) {
	f := opened(t, Content{Title: "Nothing", Currency: "EUR"})
	require.Equal(t, "0", seen(t, f, buyName, "grand", "Received"))
	require.Equal(t, []string{"Buy", "Details", "Findings", "issue"}, f.GetSheetList(), "sheets without a row are left out")
}

func TestFigureColumnsAreWideEnough(t *testing.T) {
	c := Content{Currency: "EUR", Rates: []Rate{{"VND", "0.0000351"}}, Shops: []Shop{{ID: "v", Currency: "VND",
		Lines: []Line{{Key: "a", Placed: "12345.789", Price: price(t, "98765432", "VND"), HasPrice: true}}}}}
	f := opened(t, *addUp(t, &c))
	for col, figure := range map[int]string{colPrice: "98,765,432", colTotal: "1,219,337,178,822"} {
		width, err := f.GetColWidth(buyName, letters(col))
		require.NoError(t, err)
		require.GreaterOrEqual(t, width, figureWidth(figure), figure)
	}
}

type brokenWriter struct{ room int }

var errBroken = errors.New("no space left")

func (w *brokenWriter) Write(p []byte) (int, error) {
	if len(p) > w.room {
		return w.room, errBroken
	}
	w.room -= len(p)
	return len(p), nil
}

func TestWriteReturnsTheWritersError(t *testing.T) {
	require.ErrorIs(t, Write(&brokenWriter{room: 100}, sample(t)), errBroken)
}

// What a list rests on and the cautions have their place on other sheets, which a list without
// joints or leak test has not.
func TestWhatHasNoSheetIsSaidAllTheSame(t *testing.T) {
	c := Content{Currency: "EUR", Cautions: []string{"Water at this pressure goes through skin."}}
	for i := range 200 {
		c.Assumptions = append(c.Assumptions, Assumption{What: fmt.Sprintf("part %03d", i), Value: "10 bar", Basis: "a usual claim"})
	}
	var buf bytes.Buffer
	require.NoError(t, Write(&buf, c))
	f, err := excelize.OpenReader(&buf)
	require.NoError(t, err)
	defer f.Close()
	rows, err := f.GetRows("Findings")
	require.NoError(t, err)
	said := fmt.Sprint(rows)
	require.Contains(t, said, c.Cautions[0])
	for _, a := range c.Assumptions {
		require.Contains(t, said, a.What+": 10 bar")
	}
	for _, row := range rows {
		for _, cell := range row {
			require.Less(t, len(cell), 1600, "a row is no higher than is seen")
		}
	}
}

func TestTooLargeABookIsRefused(t *testing.T) {
	if testing.Short() {
		t.Skip("a large book: in the full run")
	}
	c := Content{Currency: "EUR"}
	for i := range 600 {
		c.Assumptions = append(c.Assumptions, Assumption{What: fmt.Sprint(i), Value: strings.Repeat("x", 32000),
			Basis: strings.Repeat("y", 32000) + strings.Repeat("z", 700)})
		c.Cautions = append(c.Cautions, strings.Repeat("w", 32700))
	}
	var buf bytes.Buffer
	require.ErrorContains(t, Write(&buf, c), "split the build into several")
	require.Zero(t, buf.Len())
}
