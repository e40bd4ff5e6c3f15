package workbook

import (
	"archive/zip"
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"
	"time"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// needOffice says, set to 1, that a missing spreadsheet program is a failure.
const needOffice = "HANDTIGHT_NEED_OFFICE"

// office is a spreadsheet program with a profile of its own.
type office struct{ program, profile string }

// always makes LibreOffice recalculate every book it opens; by itself it shows
// the cached values.
const always = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`

func findOffice(t *testing.T, recalculate bool) office {
	t.Helper()
	program, err := exec.LookPath("soffice")
	if err != nil {
		if os.Getenv(needOffice) == "1" {
			t.Fatalf("soffice is not installed, and %s=1 asks for it", needOffice)
		}
		t.Skipf("soffice is not installed: the formulas were not recalculated (%s=1 makes this a failure)", needOffice)
	}
	profile := t.TempDir()
	if recalculate {
		require.NoError(t, os.Mkdir(filepath.Join(profile, "user"), 0o755))
		require.NoError(t, os.WriteFile(filepath.Join(profile, "user", "registrymodifications.xcu"), []byte(always), 0o644))
	}
	return office{program, profile}
}

// convert turns files into another format and returns the folder they are in.
func (o office) convert(t *testing.T, to string, files ...string) string {
	t.Helper()
	ctx, cancel := context.WithTimeout(context.Background(), 120*time.Second)
	defer cancel()
	out := t.TempDir()
	args := append([]string{"-env:UserInstallation=file://" + o.profile, "--headless", "--norestore", "--convert-to", to, "--outdir", out}, files...)
	said, err := exec.CommandContext(ctx, o.program, args...).CombinedOutput()
	require.NoError(t, err, string(said))
	return out
}

// everySheet asks for a CSV file of each sheet, with numbers in full.
const everySheet = "csv:Text - txt - csv (StarCalc):44,34,76,1,,0,false,false,false,false,false,-1"

// orderTable reads the order sheet of a converted book.
func orderTable(t *testing.T, dir, book string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join(dir, book+"-Order.csv"))
	require.NoError(t, err)
	defer f.Close()
	r := csv.NewReader(f)
	r.FieldsPerRecord = -1
	rows, err := r.ReadAll()
	require.NoError(t, err)
	return rows
}

// poisoned gives a book whose every cached number is wrong.
func poisoned(t *testing.T, book []byte) []byte {
	t.Helper()
	return edited(t, book, func(text string) string {
		return regexp.MustCompile(`</f><v>[0-9.]+</v>`).ReplaceAllString(text, "</f><v>999</v>")
	})
}

// edited gives a book after a change to the text of each part.
func edited(t testing.TB, book []byte, change func(string) string) []byte {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(book), int64(len(book)))
	require.NoError(t, err)
	parts := map[string]string{}
	for _, part := range z.File {
		r, err := part.Open()
		require.NoError(t, err)
		text, err := io.ReadAll(r)
		require.NoError(t, err)
		parts[part.Name] = change(string(text))
	}
	return archive(t, parts)
}

// requireSums checks an order sheet against the decimals of its Content, to the
// last digit of each currency.
func requireSums(t *testing.T, c Content, table [][]string) {
	t.Helper()
	k, err := count(c)
	require.NoError(t, err)
	rows, end := layout(k.shops)
	number := func(col, row int, digits int) string {
		f, err := strconv.ParseFloat(table[row-1][col], 64)
		require.NoError(t, err, at(col, row))
		return strconv.FormatFloat(f, 'f', digits, 64)
	}
	amount := func(want currency.Amount, row int) {
		want = want.Round()
		digits, _ := currency.GetDigits(want.CurrencyCode())
		require.Equal(t, want.Number(), number(colTotal, row, int(digits)), at(colTotal, row))
	}
	for i, s := range k.shops {
		for j, l := range s.Lines {
			row := rows[i].first + j
			require.Equal(t, thousandthText(s.lines[j].need), number(colNeed, row, 3), at(colNeed, row))
			require.Equal(t, thousandthText(s.lines[j].order), number(colOrder, row, 3), at(colOrder, row))
			switch {
			case l.HasPrice:
				amount(l.Total, row)
			case s.lines[j].order > 0:
				require.Equal(t, noPrice, table[row-1][colTotal])
			}
		}
		if s.Currency != "" {
			amount(s.Goods, rows[i].goods)
			amount(s.freight, rows[i].freight())
			amount(s.CustomsSum, rows[i].customs())
			amount(s.TaxSum, rows[i].tax())
			amount(s.Sum, rows[i].total())
			amount(s.InBuild, rows[i].inBuild())
		}
	}
	amount(c.Total, end)
	digits, _ := currency.GetDigits(c.Currency)
	require.Equal(t, c.Total.Round().Number(), number(colEnds, totalRow, int(digits)), "the total at the top")
}

func thousandthText(q thousandth) string { return strconv.FormatFloat(q.cell(), 'f', 3, 64) }

// The formulas and the decimals are two ways to the same sums. The cached values
// are spoiled first, so that what comes out was calculated.
func TestRecalculatedSumsEqualTheDecimals(t *testing.T) {
	o := findOffice(t, true)
	dir := t.TempDir()
	contents := map[string]Content{"sample": sample(t)}
	for seed := range uint64(8) {
		contents[fmt.Sprint("seed", seed)] = randomContent(t, seed, 150)
	}
	var files []string
	for name, c := range contents {
		path := filepath.Join(dir, name+".xlsx")
		require.NoError(t, os.WriteFile(path, poisoned(t, made(t, c, nil)), 0o644))
		files = append(files, path)
	}
	out := o.convert(t, everySheet, files...)
	for name, c := range contents {
		t.Run(name, func(t *testing.T) { requireSums(t, c, orderTable(t, out, name)) })
	}
	require.Contains(t, orderTable(t, out, "sample")[unpricedRow-1][0], "2 to order without a price")
}

// A program that does not calculate, or not by itself, shows the cached values.
func TestCachedValuesAreShown(t *testing.T) {
	o := findOffice(t, false)
	dir := t.TempDir()
	c := randomContent(t, 3, 60)
	book, wrong := filepath.Join(dir, "book.xlsx"), filepath.Join(dir, "wrong.xlsx")
	require.NoError(t, os.WriteFile(book, made(t, c, nil), 0o644))
	require.NoError(t, os.WriteFile(wrong, poisoned(t, made(t, c, nil)), 0o644))
	out := o.convert(t, everySheet, book, wrong)
	requireSums(t, c, orderTable(t, out, "book"))
	require.Equal(t, "999", orderTable(t, out, "wrong")[totalRow-1][colEnds], "it does show what is cached")
}

func TestReissueAfterAnotherProgramSavedTheBook(t *testing.T) {
	o := findOffice(t, false)
	path := saved(t, sample(t), append(buyer, typing{orderName, "Q12", 55}, typing{orderName, "X8", "café, 4分, =1+1"})...)
	out := o.convert(t, "xlsx", path)
	data, err := os.ReadFile(filepath.Join(out, "order.xlsx"))
	require.NoError(t, err)
	f, err := excelize.OpenReader(bytes.NewReader(data))
	require.NoError(t, err)
	app, err := f.GetAppProps()
	require.NoError(t, err)
	require.Contains(t, app.Application, "LibreOffice", "another program wrote it")
	require.NoError(t, f.Close())
	require.NoError(t, os.WriteFile(path, data, 0o644))

	c := sample(t)
	c.Shops[0].Lines[0], c.Shops[0].Lines[2] = c.Shops[0].Lines[2], c.Shops[0].Lines[0]
	f, rep := reissued(t, path, *settle(t, &c))
	requireBuyer(t, f)
	require.Empty(t, rep.Changed)
	require.Equal(t, 6, rep.Kept)
	require.Equal(t, "café, 4分, =1+1", value(t, f, orderName, fmt.Sprint("X", find(t, f, orderName, "A", "hp-pump"))))
	require.Equal(t, 1, rep.SetAside)
	require.Equal(t, []string{"Freight at shop hamburg", "55"}, []string{value(t, f, asideName, "A4"), value(t, f, asideName, "H4")})
}
