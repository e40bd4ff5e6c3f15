package workbook

import (
	"archive/zip"
	"bytes"
	"crypto/sha256"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// opened writes a book and opens it again.
func opened(t testing.TB, c Content, marks Marks) *excelize.File {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(made(t, c, marks)))
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

// In the sample, the shop in Hamburg heads row 7, its lines are rows 8 to 10 and
// its sums rows 11 to 16; Osaka follows in row 18, line 19, sums 20 to 25.
func TestOrderCells(t *testing.T) {
	f := opened(t, sample(t), nil)
	for _, tc := range []struct{ why, cell, value, formula string }{
		{"title", "A1", "Kittiwake: 24 V desalinator, one 2.5 x 21 element", ""},
		{"grand total at the top is the one at the bottom", "C3", "1397.75", "R39"},
		{"count of what has no price", "A4", "2 to order without a price: the total is without them. Ask, and write the price into its straw-coloured cell, or name a shop for it in the build file.",
			`IF(COUNTIF(R7:R39,"no price")=0,"",COUNTIF(R7:R39,"no price")&" to order without a price: the total is without them. Ask, and write the price into its straw-coloured cell, or name a shop for it in the build file.")`},
		{"banner", "A5", "2 STOPS: do not order before they are settled, see sheet Findings", ""},
		{"shop", "A7", "Hydraulics counter, Hamburg: prices in EUR", ""},
		{"both ends", "C9", "a: 3/8 NPT male; b: 9/16-18 JIC 37 degree male", ""},
		{"a code with leading zeros stays", "G9", "00417", ""},
		{"a code that looks like a date stays", "G19", "3-4", ""},
		{"need", "M10", "11", "ROUND(SUM(H10:K10)-L10,3)"},
		{"order in packs", "N10", "20", "IF(M10<=0,0,ROUND(ROUNDUP(ROUND(M10/P10,9),0)*P10,3))"},
		{"aboard already, and no pack known", "N8", "0", "MAX(M8,0)"},
		{"hose in half metres", "N28", "4", "IF(M28<=0,0,ROUND(ROUNDUP(ROUND(M28/P28,9),0)*P28,3))"},
		{"price", "Q9", "17.385", ""},
		{"line total", "R9", "69.54", "ROUND(Q9*N9,2)"},
		{"no price is not zero", "R10", "no price", `IF(ISNUMBER(Q10),ROUND(Q10*N10,2),IF(N10>0,"no price",""))`},
		{"and its cell is empty", "Q10", "", ""},
		{"goods", "R11", "69.54", "ROUND(SUM(R8:R10),2)"},
		{"freight", "R12", "48", `IF(COUNTIFS(N8:N10,">0",R8:R10,">=0")>0,ROUND(Q12,2),0)`},
		{"customs", "R13", "5.88", "ROUND((R11+R12)*Q13/100,2)"},
		{"tax", "R14", "18.51", "ROUND((R11+R12+R13)*Q14/100,2)"},
		{"shop total", "R15", "141.93", "ROUND(SUM(R11:R14),2)"},
		{"rate", "Q16", "1.92", "Rates!$B$5"},
		{"converted once", "R16", "272.51", "ROUND(R15*Q16,2)"},
		{"yen are whole", "R23", "12330", "ROUND((R20+R21+R22)*Q23/100,0)"},
		{"grand total", "R39", "1397.75", "ROUND(R16+R25+R34,2)"},
		{"a text like a formula is a text", "G28", "=SUM(1,1)", ""},
	} {
		t.Run(tc.why, func(t *testing.T) {
			require.Equal(t, tc.value, value(t, f, orderName, tc.cell))
			require.Equal(t, tc.formula, formula(t, f, orderName, tc.cell))
		})
	}
}

func TestShownMoney(t *testing.T) {
	f := opened(t, sample(t), nil)
	for cell, want := range map[string]string{"Q9": "17.385 EUR", "R9": "69.54 EUR", "R24": "94,530 JPY", "R39": "1,397.75 NZD", "R20": "77,000 JPY"} {
		got, err := f.GetCellValue(orderName, cell)
		require.NoError(t, err)
		require.Equal(t, want, got, cell)
	}
	c := Content{Currency: "KWD", Shops: []Shop{{ID: "k", Currency: "KWD",
		Lines: []Line{{Key: "a", Placed: "1", Price: price(t, "2.5", "KWD"), HasPrice: true}}}}}
	got, err := opened(t, *settle(t, &c), nil).GetCellValue(orderName, "R8")
	require.NoError(t, err)
	require.Equal(t, "2.500 KWD", got, "three decimals, ISO 4217")
}

func TestBanner(t *testing.T) {
	stop, caution := finding.Finding{Severity: finding.Stop}, finding.Finding{Severity: finding.Caution}
	for _, tc := range []struct {
		want string
		list []finding.Finding
	}{
		{"No stops. ", nil},
		{"No stops. 1 caution: read it on sheet Findings before you order.", []finding.Finding{caution}},
		{"No stops. 2 cautions: read them on sheet Findings before you order.", []finding.Finding{caution, caution}},
		{"1 STOP: do not order before it is settled, see sheet Findings", []finding.Finding{stop, caution}},
		{"2 STOPS: do not order before they are settled, see sheet Findings", []finding.Finding{stop, stop}},
	} {
		c := sample(t)
		c.Findings = facts.Findings(tc.list)
		f := opened(t, c, nil)
		require.Equal(t, tc.want, value(t, f, orderName, "A5"))
		if strings.Contains(tc.want, "STOP") {
			require.Equal(t, []string{stopColor}, cellStyle(t, f, orderName, "X5").Fill.Color, "over the whole width")
			require.Contains(t, names(f), "_xlnm.Print_Titles 'Order'!$5:$6", "and on every page")
		}
	}
}

func names(f *excelize.File) (out []string) {
	for _, n := range f.GetDefinedName() {
		out = append(out, n.Name+" "+n.RefersTo)
	}
	return out
}

func TestLockedAndUnlocked(t *testing.T) {
	f := opened(t, sample(t), nil)
	for _, tc := range []struct {
		why, sheet, cell string
		locked           bool
	}{
		{"total", orderName, "R9", true}, {"grand total", orderName, "R39", true}, {"known price", orderName, "Q9", true},
		{"unknown price", orderName, "Q10", false}, {"freight", orderName, "Q12", false}, {"customs", orderName, "Q13", false},
		{"tax", orderName, "Q14", false}, {"ordered", orderName, "V9", false}, {"received", orderName, "W9", false},
		{"remark", orderName, "X9", false}, {"rate", ratesName, "B5", false}, {"own rate", ratesName, "B4", true},
		{"done", "Joints", "M4", false}, {"by whom", "Joints", "N4", false}, {"verdict", "Joints", "F4", true},
	} {
		t.Run(tc.why, func(t *testing.T) {
			require.Equal(t, tc.locked, cellStyle(t, f, tc.sheet, tc.cell).Protection.Locked)
		})
	}
	for _, name := range []string{orderName, ratesName, "Joints"} {
		p, err := f.GetSheetProtection(name)
		require.NoError(t, err)
		require.True(t, p.SelectLockedCells && p.SelectUnlockedCells && p.FormatColumns, "%s: locked, and still to be read and widened", name)
		require.Empty(t, p.Password)
	}
}

func TestSheetsAndPaper(t *testing.T) {
	f := opened(t, sample(t), Marks{{Kind: kindLine, Shop: "gone", Key: "x", Label: "x", Remark: "paid"}})
	require.Equal(t, []string{"Order", "Spares", "Joints", "Segments", "States", "Parts", "Duty", "Findings", "Rates", "Assumptions", "Set aside"}, f.GetSheetList())
	for _, name := range f.GetSheetList() {
		layout, err := f.GetPageLayout(name)
		require.NoError(t, err)
		require.Equal(t, []any{9, "landscape", 1, 0}, []any{*layout.Size, *layout.Orientation, *layout.FitToWidth, *layout.FitToHeight}, "%s: A4, one page wide", name)
		foot, err := f.GetHeaderFooter(name)
		require.NoError(t, err)
		require.Contains(t, foot.OddFooter, "Page &P of &N")
		panes, err := f.GetPanes(name)
		require.NoError(t, err)
		require.True(t, panes.Freeze)
		require.Contains(t, strings.Join(names(f), "\n"), "_xlnm.Print_Area '"+name+"'!$A$1:$")
	}
	require.Contains(t, names(f), "_xlnm.Print_Area 'Order'!$A$1:$X$39")
	visible, err := f.GetColVisible(orderName, letters(colKind))
	require.NoError(t, err)
	require.False(t, visible, "the keys are hidden")
	dvs, err := f.GetDataValidations(orderName)
	require.NoError(t, err)
	require.Equal(t, "V7:V39", dvs[0].Sqref)
	require.Equal(t, `"yes,part"`, dvs[0].Formula1)
	formats, err := f.GetConditionalFormats(orderName)
	require.NoError(t, err)
	require.Equal(t, `AND($Y7="line",$W7<>"",$W7<>"part",$W7<>"no")`, formats["A7:U39"][0].Criteria)
}

func TestListCells(t *testing.T) {
	f := opened(t, sample(t), nil)
	for _, tc := range []struct{ sheet, cell, want string }{
		{"Spares", "A4", "elbow-38"}, {"Spares", "D4", "1"},
		{"Joints", "A4", "1"}, {"Joints", "C4", "intake.inboard to tail-19/1.a"}, {"Joints", "L4", "BELOW"}, {"Joints", "F6", "will not start"},
		{"Segments", "C5", "yes"}, {"Segments", "H5", "unknown"},
		{"Findings", "A4", "STOP"}, {"Findings", "D4", "Buy the hose with a 9/16-18 JIC female swivel."},
		{"Findings", "E4", "kittiwake.toml, line 31"}, {"Findings", "E6", "kittiwake.toml"},
		{"Findings", "A2", "2 stops, 1 caution, 1 note. A stop means: do not order or pressurise before it is settled."},
		{"Rates", "A5", "EUR"}, {"Rates", "B5", "1.92"}, {"Rates", "C5", "1.92"},
		{"Assumptions", "B4", "3 %"}, {"Assumptions", "A9", "Never tighten a joint under pressure."},
	} {
		require.Equal(t, tc.want, value(t, f, tc.sheet, tc.cell), "%s %s", tc.sheet, tc.cell)
	}
}

func TestTextsNeverBecomeFormulas(t *testing.T) {
	for _, text := range []string{`=HYPERLINK("http://example.org","x")`, "+33 1", "-1+1", "@SUM(A1)", "\t=1", "_x0041_", "'quoted", "<b>&amp;", " both sides "} {
		c := sample(t)
		c.Title, c.Shops[0].Name = text, text
		l := &c.Shops[0].Lines[0]
		l.Item, l.Code, l.Question = text, text, text
		c.Findings[0].Reason, c.Joints[0].Reason, c.Spares[0].Why, c.Cautions[0] = text, text, text, text
		f := opened(t, c, Marks{{Kind: kindLine, Shop: "hamburg", Key: "hp-pump", Remark: text}})
		for _, at := range []struct{ sheet, cell string }{
			{orderName, "A1"}, {orderName, "A8"}, {orderName, "G8"}, {orderName, "U8"}, {orderName, "X8"},
			{"Findings", "C4"}, {"Joints", "G4"}, {"Spares", "F4"}, {"Assumptions", "A8"},
		} {
			require.Equal(t, strings.ReplaceAll(text, "\t", " "), value(t, f, at.sheet, at.cell), "%s %s", at.sheet, at.cell)
			require.Empty(t, formula(t, f, at.sheet, at.cell))
		}
	}
}

func TestNoLinksLeaveTheBook(t *testing.T) {
	z, err := zip.NewReader(bytes.NewReader(made(t, sample(t), nil)), int64(len(made(t, sample(t), nil))))
	require.NoError(t, err)
	for _, part := range z.File {
		r, err := part.Open()
		require.NoError(t, err)
		data, err := io.ReadAll(r)
		require.NoError(t, err)
		require.NotRegexp(t, regexp.MustCompile(`<hyperlink|TargetMode="External"`), string(data), part.Name)
	}
}

func TestSameContentSameBytes(t *testing.T) {
	marks := Marks{{Kind: kindLine, Shop: "hamburg", Key: "gone", Label: "gone", Remark: "paid"}, {Kind: kindRate, Key: "EUR", Given: "1.92", Typed: "1.95"}}
	sums := map[string]bool{}
	for range 10 {
		sums[fmt.Sprintf("%x", sha256.Sum256(made(t, sample(t), marks)))] = true
	}
	require.Len(t, sums, 1)
	props, err := opened(t, sample(t), nil).GetDocProps()
	require.NoError(t, err)
	require.Equal(t, []string{"handtight", "handtight", "2026-11-20T00:00:00Z", "2026-11-20T00:00:00Z"},
		[]string{props.Creator, props.LastModifiedBy, props.Created, props.Modified}, "never the clock's time")
}

func TestEmptyContent(t *testing.T) {
	f := opened(t, Content{Title: "Nothing", Currency: "EUR"}, nil)
	require.Equal(t, "0", value(t, f, orderName, "R7"))
	require.Equal(t, "The build has no joint.", value(t, f, "Joints", "A4"))
	require.Equal(t, "The check found nothing to say. It is a check, not a certificate.", value(t, f, "Findings", "A4"))
}

func TestFigureColumnsAreWideEnough(t *testing.T) {
	c := Content{Currency: "EUR", Rates: []Rate{{"VND", "0.0000351"}}, Shops: []Shop{{ID: "v", Currency: "VND",
		Lines: []Line{{Key: "a", Placed: "123456.789", Price: price(t, "98765432", "VND"), HasPrice: true}}}}}
	f := opened(t, *settle(t, &c), nil)
	for col, figure := range map[int]string{colPlaced: "123456.789", colOrder: "123457", colPrice: "98,765,432 VND", colTotal: "12,193,284,133,416 VND"} {
		width, err := f.GetColWidth(orderName, letters(col))
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
	require.ErrorIs(t, Write(&brokenWriter{room: 100}, sample(t), nil), errBroken)
}

func TestTooLargeABookIsRefused(t *testing.T) {
	c := Content{Currency: "EUR"}
	for i := range 700 {
		c.Assumptions = append(c.Assumptions, Assumption{What: fmt.Sprint(i), Value: strings.Repeat("x", 32000),
			Basis: strings.Repeat("y", 32000) + strings.Repeat("z", 700)})
		c.Cautions = append(c.Cautions, strings.Repeat("w", 32700))
	}
	var buf bytes.Buffer
	require.ErrorContains(t, Write(&buf, c, nil), "split the build into several")
	require.Zero(t, buf.Len())
}
