package main

import (
	"bytes"
	"encoding/csv"
	"encoding/json"
	"encoding/xml"
	"errors"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
	"golang.org/x/net/html"
)

// wordsOfAStranger is hostileBuild with a stranger's words in each place that holds words: the
// build's name, a shop's, a part's description, its code in the shop.
func wordsOfAStranger(words string) string {
	quoted := func(s string) string {
		q, _ := json.Marshal(s) // a JSON text is a TOML text too
		return string(q)
	}
	clean := strings.ToValidUTF8(words, "?")
	// An address that is none is refused with its place, and then tells nothing of the rest.
	link, address := "", "https://quay.example/"+clean
	if _, err := url.Parse(address); err == nil && !strings.ContainsAny(address, " \"<>") {
		link = "\nurl = " + quoted(address)
	}
	return strings.NewReplacer(
		`"Petrel"`, quoted("Petrel "+clean),
		`"Quay (invented)"`, quoted(clean+" Quay"),
		`"a reducing adaptor"`, quoted(clean),
		`"hose by the metre"`, quoted("hose "+clean),
		`code = "Q-1"`, `code = `+quoted(clean)+link,
	).Replace(hostileBuild)
}

// A page's elements and attributes that a browser acts on.
func requireNothingRuns(t *testing.T, page []byte) {
	t.Helper()
	for z := html.NewTokenizer(bytes.NewReader(page)); ; {
		switch z.Next() {
		case html.ErrorToken:
			require.ErrorIs(t, z.Err(), io.EOF)
			return
		case html.StartTagToken, html.SelfClosingTagToken:
			tag := z.Token()
			require.NotContains(t, []string{"script", "iframe", "object", "embed", "form", "base", "link", "foreignobject"}, strings.ToLower(tag.Data))
			for _, a := range tag.Attr {
				require.False(t, strings.HasPrefix(strings.ToLower(a.Key), "on"), "%s of %s", a.Key, tag.Data)
				if k := strings.ToLower(a.Key); k == "href" || k == "src" || strings.HasSuffix(k, ":href") {
					require.True(t, strings.HasPrefix(a.Val, "#") || strings.HasPrefix(a.Val, "https://") || strings.HasPrefix(a.Val, "http://"), "%s=%q", a.Key, a.Val)
				}
			}
		}
	}
}

// The page, the picture, the order for a shop and the workbook take any words as words.
func FuzzNamesRunNothing(f *testing.F) {
	for _, s := range []string{
		`<script>alert(1)</script>`, `"><img src=x onerror=alert(1)>`, `</style><svg onload=alert(1)>`, `javascript:alert(1)`, `]]><x/>`,
		`=HYPERLINK("http://evil.example";"pay")`, `+1+cmd|' /C calc'!A0`, `-2+3`, `@SUM(A1)`, "\t=1+1", "\r=1+1", `{{.}}`, "&lt;b&gt;", "\u202egnp.exe", "a\nb\r\nc", `'`, "＝1+1",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, words string) {
		if len(words) > 400 {
			return
		}
		dir := t.TempDir()
		build := filepath.Join(dir, "build.toml")
		require.NoError(t, os.WriteFile(build, []byte(wordsOfAStranger(words)), 0o644))
		firstFault := ""
		do := func(args ...string) int {
			var out, errOut bytes.Buffer
			status := run(args, strings.NewReader(""), &out, &errOut)
			require.False(t, strings.ContainsFunc(out.String()+errOut.String(), drives), "%q", out.String()+errOut.String())
			if status == exitFault {
				firstFault = errOut.String()
			}
			return status
		}
		if do("check", build) == exitFault {
			t.Log("refused", firstFault)
			return // refused, with its place: control characters, for one
		}
		require.NotEqual(t, exitFault, do("page", build, "-o", filepath.Join(dir, "p.html")))
		page, err := os.ReadFile(filepath.Join(dir, "p.html"))
		require.NoError(t, err)
		requireNothingRuns(t, page)

		require.NotEqual(t, exitFault, do("picture", build, "-o", filepath.Join(dir, "p.svg")))
		pictures, _ := filepath.Glob(filepath.Join(dir, "p*.svg"))
		require.NotEmpty(t, pictures)
		for _, name := range pictures {
			svg, err := os.ReadFile(name)
			require.NoError(t, err)
			requireNothingRuns(t, svg)
			for d := xml.NewDecoder(bytes.NewReader(svg)); ; {
				if _, err := d.Token(); errors.Is(err, io.EOF) {
					break
				} else {
					require.NoError(t, err, "a picture is well-formed XML")
				}
			}
		}

		require.NotEqual(t, exitFault, do("order", build, "--csv", filepath.Join(dir, "csv")))
		lists, _ := filepath.Glob(filepath.Join(dir, "csv", "*.csv"))
		require.NotEmpty(t, lists)
		for _, name := range lists {
			text, err := os.ReadFile(name)
			require.NoError(t, err)
			r := csv.NewReader(bytes.NewReader(bytes.TrimPrefix(text, []byte("\ufeff"))))
			r.FieldsPerRecord, r.LazyQuotes = -1, true
			if bytes.Count(text, []byte(";")) > bytes.Count(text, []byte(",")) {
				r.Comma = ';'
			}
			rows, err := r.ReadAll()
			require.NoError(t, err)
			for _, row := range rows {
				for _, cell := range row {
					require.False(t, strings.IndexAny(cell, "=+-@\t\r") == 0 && !figureCell.MatchString(cell), "a cell that a spreadsheet reckons: %q", cell)
				}
			}
		}

		require.NotEqual(t, exitFault, do("order", build, "-o", filepath.Join(dir, "list.xlsx")))
		book, err := excelize.OpenFile(filepath.Join(dir, "list.xlsx"))
		require.NoError(t, err)
		defer book.Close()
		if marked := strings.TrimSpace(words); len(marked) > 3 {
			for _, sheet := range book.GetSheetList() {
				rows, err := book.GetRows(sheet)
				require.NoError(t, err)
				for y, row := range rows {
					for x := range row {
						cell, _ := excelize.CoordinatesToCellName(x+1, y+1)
						formula, err := book.GetCellFormula(sheet, cell)
						require.NoError(t, err)
						require.NotContains(t, formula, marked, "%s!%s", sheet, cell)
					}
				}
			}
		}
	})
}

// A cell that begins with a sign and is a plain figure.
var figureCell = regexp.MustCompile(`^[+-]?[0-9][0-9.,]*%?$`)

// Any list of a shop against a build: the cart ends in one of its three ways, drives no
// terminal, says the same twice, and answers as JSON when asked.
func FuzzCart(f *testing.F) {
	f.Add([]byte("code,description,qty,price\nQ-1,Adaptor 1/2 NPT M x F 316,1,2.40\n"), byte(0))
	f.Add([]byte("Stk;Bezeichnung;Preis\n1;Doppelnippel 1/2 NPT;2,40\n"), byte(1))
	f.Add([]byte("Hose 13 mm 1.2 m\n2 x Adaptor 1/2\" NPT\n"), byte(2))
	f.Add([]byte("\xff\xfe1\x00,\x002\x00"), byte(0))
	f.Add([]byte("a,b\n\"unfinished"), byte(1))
	f.Fuzz(func(t *testing.T, list []byte, how byte) {
		dir := t.TempDir()
		build, cart := filepath.Join(dir, "build.toml"), filepath.Join(dir, "cart."+[]string{"csv", "txt", "xlsx"}[int(how)%3])
		require.NoError(t, os.WriteFile(build, []byte(hostileBuild), 0o644))
		require.NoError(t, os.WriteFile(cart, list, 0o644))
		judged := func(args ...string) (int, string, string) {
			var out, errOut bytes.Buffer
			status := run(append([]string{"cart", build, cart}, args...), strings.NewReader(""), &out, &errOut)
			require.Contains(t, []int{exitClear, exitStops, exitFault}, status)
			require.False(t, strings.ContainsFunc(out.String()+errOut.String(), drives), "%q", out.String()+errOut.String())
			return status, out.String(), errOut.String()
		}
		status, out, errOut := judged()
		again, same, _ := judged()
		require.Equal(t, status, again)
		require.Equal(t, out, same)
		require.Equal(t, status == exitFault, errOut != "" && out == "" || status == exitFault)
		if jsonStatus, text, _ := judged("--json"); jsonStatus != exitFault {
			require.Equal(t, status, jsonStatus)
			require.True(t, json.Valid([]byte(text)))
		}
	})
}
