package workbook

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// scribble types into a book at random, as people do: into straw cells, over ours, into rows
// and columns of their own, on paper of their own. What it typed comes back as marks that
// stand nowhere else.
func scribble(t testing.TB, r *rand.Rand, path string) []string {
	t.Helper()
	var marks []string
	mark := func() string {
		marks = append(marks, fmt.Sprintf("mark%dq", len(marks)+100))
		return marks[len(marks)-1]
	}
	number := func() float64 {
		n := 700_000 + len(marks)*10
		marks = append(marks, fmt.Sprint(n, ".125"))
		return float64(n) + 0.125
	}
	doTo(t, path, func(f *excelize.File) {
		grid := func(sheet string) (rows [][]string, head int) {
			rows, err := f.GetRows(sheet)
			require.NoError(t, err)
			for n, x := range rows {
				if len(x) > 0 && strings.HasPrefix(x[len(x)-1], headKey) {
					head = n + 1
				}
			}
			return rows, head
		}
		lines := func() (first, last int) {
			rows, head := grid(buyName)
			for n, x := range rows {
				if n+1 > head && len(x) > 0 && strings.HasPrefix(x[len(x)-1], "line|") {
					last = n + 1
				}
			}
			return head + 1, last
		}
		put := func(sheet, cell string, number_ bool) {
			if number_ {
				require.NoError(t, f.SetCellValue(sheet, cell, number()))
				return
			}
			require.NoError(t, f.SetCellStr(sheet, cell, mark()))
		}
		if r.IntN(3) == 0 { // sorted in part, before anything is typed
			first, last := lines()
			swap(t, f, first+r.IntN(last-first+1), first+r.IntN(last-first+1), colSpent)
		}
		if r.IntN(4) == 0 { // a line copied
			first, last := lines()
			require.NoError(t, f.DuplicateRow(buyName, first+r.IntN(last-first+1)))
		}
		done := map[string]bool{}
		for range 4 + r.IntN(12) {
			sheet := []string{buyName, buyName, buyName, jointsName, detailsName, ratesName, "Leak test", ratesName}[r.IntN(8)]
			rows, head := grid(sheet)
			row := 1 + r.IntN(len(rows)+2)
			col := r.IntN(14)
			width := len(rows[head-1]) - 1
			if col >= width && sheet == buyName {
				col = r.IntN(colSpent)
			}
			if sheet != buyName {
				col = r.IntN(width)
			}
			first, last := lines()
			cell := at(col, row)
			switch r.IntN(8) {
			case 0, 1, 2: // any cell
				if !done[sheet+cell] && row != head {
					put(sheet, cell, r.IntN(3) == 0)
				}
			case 3: // a straw cell of a line
				cell = at([]int{colOrdered, colPaid, colReceived, colRemark}[r.IntN(4)], first+r.IntN(last-first+1))
				if sheet = buyName; !done[sheet+cell] {
					put(sheet, cell, r.IntN(2) == 0)
				}
			case 4: // a row put in
				at_ := first + r.IntN(last-first+1)
				require.NoError(t, f.InsertRows(buyName, at_, 1))
				for _, c := range []int{colShop, colItem, colOrdered, colPaid, colRemark} {
					put(buyName, at(c, at_), c == colOrdered || c == colPaid)
				}
				done = map[string]bool{}
				for n := range 40 { // rows moved: what was typed must not be written over
					for c := range 30 {
						if v := value(t, f, buyName, at(c, n+1)); strings.HasPrefix(v, "mark") || strings.HasPrefix(v, "70") {
							done[buyName+at(c, n+1)] = true
						}
					}
				}
				continue
			case 5: // a column of one's own
				c := len(buyColumns) + 1 + r.IntN(3)
				cell = at(c, first+r.IntN(last-first+1))
				if sheet = buyName; !done[sheet+cell] {
					put(sheet, cell, r.IntN(2) == 0)
				}
			case 6: // a comment
				cell = at(r.IntN(colSpent), row)
				if !done["note"+sheet+cell] && width > r.IntN(colSpent) {
					require.NoError(t, f.AddComment(sheet, excelize.Comment{Cell: cell, Author: "Mo", Text: mark()}))
				}
				done["note"+sheet+cell] = true
				continue
			case 7: // a sheet of one's own
				name := fmt.Sprint("own ", r.IntN(2))
				_, err := f.NewSheet(name)
				require.NoError(t, err)
				cell = at(r.IntN(5), 1+r.IntN(9))
				if sheet = name; !done[sheet+cell] {
					put(sheet, cell, r.IntN(2) == 0)
				}
			}
			done[sheet+cell] = true
		}
	})
	return marks
}

// places counts where each mark stands in a book: in cells, formulas and comments of every
// sheet but the hidden copy.
func places(t testing.TB, path string) map[string][]string {
	t.Helper()
	f, err := excelize.OpenFile(path)
	require.NoError(t, err)
	defer f.Close()
	out := map[string][]string{}
	note := func(where, text string) {
		for _, word := range strings.FieldsFunc(text, func(r rune) bool { return r <= ' ' || r == ',' || r == ':' || r == ';' }) {
			if strings.HasPrefix(word, "mark") || strings.HasSuffix(word, ".125") {
				out[word] = append(out[word], where)
			}
		}
	}
	for _, sheet := range f.GetSheetList() {
		if sheet == issueName {
			continue
		}
		rows, err := f.GetRows(sheet, excelize.Options{RawCellValue: true})
		require.NoError(t, err)
		for n, r := range rows {
			if last := len(r) - 1; last >= 0 && strings.HasPrefix(r[last], "[") {
				r = r[:last] // the key of a row that is set aside
			}
			for c, text := range r {
				cell := at(c, n+1)
				if formula(t, f, sheet, cell) == "" { // the helpers repeat what was typed
					note(sheet+"!"+cell, text)
				}
			}
		}
		comments, err := f.GetComments(sheet)
		require.NoError(t, err)
		for _, c := range comments {
			note(sheet+" comment "+c.Cell, noteText(c))
		}
	}
	return out
}

// altered is the order after the build was worked on.
func altered(t testing.TB, r *rand.Rand) Content {
	t.Helper()
	c := sample(t)
	for i := range c.Shops {
		s := &c.Shops[i]
		if r.IntN(3) == 0 {
			slices.Reverse(s.Lines)
		}
		for j := range s.Lines {
			if r.IntN(3) == 0 {
				s.Lines[j].Placed = fmt.Sprint(1 + r.IntN(9))
			}
			if r.IntN(3) == 0 && s.Lines[j].HasPrice {
				s.Lines[j].Price = price(t, fmt.Sprint(10+r.IntN(90)), s.Currency)
			}
		}
		if r.IntN(3) == 0 {
			s.Lines = s.Lines[:len(s.Lines)-1]
		}
	}
	c.Shops = slices.DeleteFunc(c.Shops, func(s Shop) bool { return len(s.Lines) == 0 })
	if r.IntN(2) == 0 {
		slices.Reverse(c.Shops)
	}
	if r.IntN(2) == 0 {
		c.Joints = c.Joints[1:]
	}
	if r.IntN(3) == 0 {
		c.Findings = c.Findings[1:]
	}
	return *addUp(t, &c)
}

// requireOnce checks that each mark stands in a book as often as it was typed.
func requireOnce(t testing.TB, marks []string, before, now map[string][]string) {
	t.Helper()
	for _, m := range marks {
		if len(before[m]) == 0 {
			continue // written over while scribbling
		}
		require.Len(t, now[m], len(before[m]), "%s stood at %v, and stands at %v", m, before[m], now[m])
	}
}

// Whatever is typed, and whatever the build becomes, each typed value stands once in the new
// book or on its sheet "Set aside"; issued once more, nothing changes.
func TestNothingTypedIsLost(t *testing.T) {
	books := uint64(30)
	if testing.Short() {
		books = 2 // under the race detector each takes seconds
	}
	for seed := range books {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			r := rand.New(rand.NewPCG(seed, 7))
			path := saved(t, sample(t))
			marks := scribble(t, r, path)
			before := places(t, path)
			c := altered(t, r)
			_, first := reissued(t, path, c)
			now := places(t, path)
			requireOnce(t, marks, before, now)
			_, second := reissued(t, path, c)
			require.Equal(t, now, places(t, path), "issued once more")
			require.Equal(t, first.SetAside, second.SetAside)
			reissued(t, path, sample(t))
			requireOnce(t, marks, before, places(t, path))
		})
	}
}

func FuzzReadEarlier(f *testing.F) {
	own := made(f, sample(f))
	f.Add(own)
	f.Add(own[:len(own)/3])
	first, err := os.ReadFile(filepath.Join("testdata", "first.xlsx"))
	require.NoError(f, err)
	f.Add(first)
	f.Add(archive(f, map[string]string{"xl/workbook.xml": "<workbook/>"}))
	f.Fuzz(func(t *testing.T, data []byte) {
		e, err := readEarlier(data)
		if err != nil {
			require.Nil(t, e)
			return
		}
		c := e.marks
		if c == nil {
			c = e.carryOver()
		}
		k, err := count(sample(t))
		require.NoError(t, err)
		var buf bytes.Buffer
		_, err = writeBook(&buf, k, c)
		require.NoError(t, err)
	})
}
