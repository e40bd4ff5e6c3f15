package workbook

import (
	"archive/zip"
	"bytes"
	"compress/zlib"
	"context"
	"encoding/csv"
	"fmt"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"handtight/bom"
	"handtight/bom/facts"
	"handtight/bom/rule"
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

// poisoned gives a book whose every cached number is wrong.
func poisoned(t *testing.T, book []byte) []byte {
	t.Helper()
	return edited(t, book, func(text string) string {
		return regexp.MustCompile(`</f><v>-?[0-9.]+</v>`).ReplaceAllString(text, "</f><v>999</v>")
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

// demo is the Content of a build that stands under testdata.
func demo(t testing.TB, name string) Content {
	t.Helper()
	b, faults := bom.Read(filepath.Join("..", "..", "testdata", name, "build.toml"))
	require.Empty(t, faults)
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	order, err := sys.Order()
	require.NoError(t, err)
	return From(facts.Of(sys, rule.Check(sys)), facts.OrderOf(sys, order), facts.BoatOf(sys))
}

// demos are all builds under testdata.
func demos(t testing.TB) []string {
	t.Helper()
	list, err := filepath.Glob(filepath.Join("..", "..", "testdata", "*", "build.toml"))
	require.NoError(t, err)
	require.Greater(t, len(list), 10)
	var out []string
	for _, path := range list {
		out = append(out, filepath.Base(filepath.Dir(path)))
	}
	return out
}

// requireCalculated compares every formula of the sheets with sums: the value saved with it,
// which decimals made, with what another program makes of it. It gives how many there were.
func requireCalculated(t *testing.T, book []byte, dir, name string) (formulas int) {
	t.Helper()
	f, err := excelize.OpenReader(bytes.NewReader(book))
	require.NoError(t, err)
	defer f.Close()
	for _, sheet := range []string{buyName, ratesName} {
		under := map[string]bool{} // cells that a joined cell covers
		merged, err := f.GetMergeCells(sheet, true)
		require.NoError(t, err)
		for _, m := range merged {
			c, row, err := excelize.CellNameToCoordinates(m.GetStartAxis())
			require.NoError(t, err)
			to, _, err := excelize.CellNameToCoordinates(m.GetEndAxis())
			require.NoError(t, err)
			for c++; c <= to; c++ {
				under[at(c-1, row)] = true
			}
		}
		file, err := os.Open(filepath.Join(dir, name+"-"+sheet+".csv"))
		require.NoError(t, err)
		r := csv.NewReader(file)
		r.FieldsPerRecord = -1
		table, err := r.ReadAll()
		require.NoError(t, err)
		require.NoError(t, file.Close())
		for n, row := range table {
			for c := range row {
				cell := at(c, n+1)
				if under[cell] || formula(t, f, sheet, cell) == "" {
					continue
				}
				formulas++
				want, errWant := strconv.ParseFloat(value(t, f, sheet, cell), 64)
				got, errGot := strconv.ParseFloat(row[c], 64)
				if errWant != nil || errGot != nil {
					require.Equal(t, value(t, f, sheet, cell), row[c], "%s %s!%s", name, sheet, cell)
					continue
				}
				require.LessOrEqual(t, math.Abs(want-got), 1e-9*math.Max(1, math.Abs(want)), "%s %s!%s: %v and %v", name, sheet, cell, want, got)
			}
		}
	}
	return formulas
}

// The formulas and the decimals are two ways to the same sums, for every demo build, for random
// orders, and for a book that somebody bought by. The saved values are spoiled first, so that
// what comes out was calculated.
func TestRecalculatedSumsEqualTheDecimals(t *testing.T) {
	if testing.Short() {
		t.Skip("another program opens many books here: in the full run")
	}
	o := findOffice(t, true)
	dir := t.TempDir()
	books := map[string][]byte{"sample": made(t, sample(t))}
	for seed := range uint64(8) {
		books[fmt.Sprint("seed", seed)] = made(t, randomContent(t, seed, 150))
	}
	for _, name := range demos(t) {
		books[name] = made(t, demo(t, name))
	}
	for seed := range uint64(6) {
		books[fmt.Sprint("bought", seed)] = bought(t, seed)
	}
	var files []string
	for name, book := range books {
		path := filepath.Join(dir, name+".xlsx")
		require.NoError(t, os.WriteFile(path, poisoned(t, book), 0o644))
		files = append(files, path)
	}
	out := o.convert(t, everySheet, files...)
	formulas := 0
	for name, book := range books {
		t.Run(name, func(t *testing.T) { formulas += requireCalculated(t, book, out, name) })
	}
	t.Logf("%d formulas in %d books", formulas, len(books))
	require.Greater(t, formulas, 5000)
}

// bought is a random order with everything typed into it that its formulas read.
func bought(t testing.TB, seed uint64) []byte {
	t.Helper()
	c := randomContent(t, 100+seed, 40)
	path := saved(t, c)
	r := rand.New(rand.NewPCG(seed, 3))
	doTo(t, path, func(f *excelize.File) {
		rows, err := f.GetRows(buyName)
		require.NoError(t, err)
		under := false
		for n, row := range rows {
			key := ""
			if len(row) > 0 {
				key = row[len(row)-1]
			}
			if under && n < len(rows) {
				key = "besides|"
			}
			under = under || key == "besides"
			set := func(col int, v any) { require.NoError(t, f.SetCellValue(buyName, at(col, n+1), v)) }
			quantity := func() any { return []any{float64(r.IntN(9)), "yes", "no", "maybe", 1.5, 0, ""}[r.IntN(7)] }
			if strings.HasPrefix(key, "line|") && r.IntN(3) > 0 {
				set(colOrdered, quantity())
				if r.IntN(2) == 0 {
					set(colPaid, float64(r.IntN(100000))/1000)
				}
				if r.IntN(2) == 0 {
					set(colReceived, quantity())
				}
			}
			if strings.HasPrefix(key, "besides|") && r.IntN(3) > 0 {
				s := c.Shops[r.IntN(len(c.Shops))]
				set(colShop, s.ID+" "+s.Currency)
				set(colOrder, r.IntN(9))
				set(colPrice, float64(r.IntN(100000))/1000)
			}
		}
	})
	_, rep := reissued(t, path, c)
	require.Positive(t, rep.Besides)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	return data
}

// A program that does not calculate, or not by itself, shows the saved values; and twenty books
// that were typed into come back from another program's hands with nothing lost.
func TestAnotherProgramSavedTheBook(t *testing.T) {
	if testing.Short() {
		t.Skip("another program opens many books here: in the full run")
	}
	o := findOffice(t, false)
	dir := t.TempDir()
	type one struct {
		path  string
		marks []string
		now   Content
	}
	var all []one
	var files []string
	for seed := range uint64(20) {
		r := rand.New(rand.NewPCG(seed, 11))
		x := one{path: saved(t, sample(t), buyer...)}
		x.marks = scribble(t, r, x.path)
		x.now = altered(t, r)
		data, err := os.ReadFile(x.path)
		require.NoError(t, err)
		copied := filepath.Join(dir, fmt.Sprintf("typed%d.xlsx", seed))
		require.NoError(t, os.WriteFile(copied, data, 0o644))
		all, files = append(all, x), append(files, copied)
	}
	wrong := filepath.Join(dir, "wrong.xlsx")
	require.NoError(t, os.WriteFile(wrong, poisoned(t, made(t, sample(t))), 0o644))
	out := o.convert(t, "xlsx", append(files, wrong)...)
	for n, x := range all {
		data, err := os.ReadFile(filepath.Join(out, fmt.Sprintf("typed%d.xlsx", n)))
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(x.path, data, 0o644))
		before := places(t, x.path)
		f, rep := reissued(t, x.path, x.now)
		app, err := f.GetAppProps()
		require.NoError(t, err)
		require.Equal(t, "handtight", app.Application)
		now := places(t, x.path)
		requireOnce(t, x.marks, before, now)
		_, again := reissued(t, x.path, x.now)
		require.Equal(t, now, places(t, x.path))
		require.Equal(t, rep.SetAside, again.SetAside)
	}
	f, err := excelize.OpenFile(filepath.Join(out, "wrong.xlsx"))
	require.NoError(t, err)
	defer f.Close()
	require.Equal(t, "999", seen(t, f, buyName, "grand", "Received"), "it does show what is saved")
	app, err := f.GetAppProps()
	require.NoError(t, err)
	require.Contains(t, app.Application, "LibreOffice", "another program wrote it")
}

// On paper: "Buy" in type of 9 points or more on A4 and Letter, on at most four pages for the
// first demo; the whole book on at most demoPages of A4; no letter anywhere under 8 points.
func TestOnPaper(t *testing.T) {
	if testing.Short() {
		t.Skip("another program opens many books here: in the full run")
	}
	o := findOffice(t, false)
	for _, tool := range []string{"pdftotext", "pdfinfo"} {
		if _, err := exec.LookPath(tool); err != nil {
			if os.Getenv(needOffice) == "1" {
				t.Fatalf("%s is not installed, and %s=1 asks for it", tool, needOffice)
			}
			t.Skipf("%s is not installed: the pages were not looked at", tool)
		}
	}
	dir, face := t.TempDir(), paperFace(t)
	book := made(t, demo(t, "clean"))
	letter := edited(t, book, func(text string) string { return strings.ReplaceAll(text, `paperSize="9"`, `paperSize="1"`) })
	a4, us := filepath.Join(dir, "a4.xlsx"), filepath.Join(dir, "us.xlsx")
	require.NoError(t, os.WriteFile(a4, book, 0o644))
	require.NoError(t, os.WriteFile(us, letter, 0o644))
	out := o.convert(t, "pdf", a4, us)
	for _, name := range []string{"a4", "us"} {
		text, err := exec.Command("pdftotext", "-layout", filepath.Join(out, name+".pdf"), "-").Output()
		require.NoError(t, err)
		pages := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
		buy := 0
		for _, p := range pages {
			if strings.Contains(p, ", Buy ") {
				buy++
			}
			require.Greater(t, strings.Count(strings.TrimSpace(p), "\n"), 5, "%s: a page that is all but empty:\n%s", name, p)
		}
		t.Logf("%s: %d pages, %d of them to buy by", name, len(pages), buy)
		require.LessOrEqual(t, buy, 4)
		if name == "a4" {
			require.LessOrEqual(t, len(pages), demoPages)
		}
		data, err := os.ReadFile(filepath.Join(out, name+".pdf"))
		require.NoError(t, err)
		sizes := typeSizes(t, data)
		require.Len(t, sizes, len(pages))
		bought := slices.Min(sizes[:buy])
		t.Logf("%s: the least type is of %.2f points on the sheet to buy by, and of %.2f elsewhere", name, bought, slices.Min(sizes[buy:]))
		require.GreaterOrEqual(t, bought, 8.99*face)
		if name == "a4" {
			require.GreaterOrEqual(t, slices.Min(sizes[buy:]), 7.99*face)
		}
	}
}

// paperFace says what part of its size is left of the type where another face stands in for the
// one that the book names: columns are counted in its digits, and the sheets shrunk to the paper.
func paperFace(t *testing.T) float64 {
	t.Helper()
	name, err := exec.Command("fc-match", "Arial").Output()
	if err == nil && regexp.MustCompile(`Arial|Arimo|Liberation Sans|Nimbus Sans`).Match(name) {
		return 1
	}
	t.Logf("no face of Arial's measure is installed: %s stands in, which is wider, so the pages are shrunk more", bytes.TrimSpace(name))
	return 0.87
}

// demoPages is how many pages of A4 the first demo's book takes, at the most, with its duty.
const demoPages = 9

// typeSizes gives the smallest type of each page, as its drawing says: a size stands behind
// the name of a face and before Tf (ISO 32000-1, 9.3.1). Boxes of words say less: they are as
// high as a face's tallest letters.
func typeSizes(t *testing.T, data []byte) []float64 {
	t.Helper()
	var out []float64
	for _, m := range regexp.MustCompile(`(?s)stream\r?\n(.*?)endstream`).FindAllSubmatch(data, -1) {
		r, err := zlib.NewReader(bytes.NewReader(m[1]))
		if err != nil {
			continue
		}
		text, err := io.ReadAll(r)
		if err != nil && len(text) == 0 {
			continue
		}
		least := 1000.0
		for _, f := range regexp.MustCompile(`/F[0-9]+ ([0-9.]+) Tf`).FindAllSubmatch(text, -1) {
			size, err := strconv.ParseFloat(string(f[1]), 64)
			require.NoError(t, err)
			least = min(least, size)
		}
		if least < 1000 {
			out = append(out, least)
		}
	}
	return out
}
