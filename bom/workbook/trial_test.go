package workbook

import (
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// What a buyer does to a list, one thing to each book, on the lists of two demo builds. The
// right answers were written down before any was tried: each holds of the book issued again.
func TestBuyersActions(t *testing.T) {
	if testing.Short() {
		t.Skip("two dozen books here: in the full run")
	}
	for _, demoName := range []string{"clean", "shops"} {
		c := demo(t, demoName)
		var shop *Shop
		var l *Line
		for i := range c.Shops {
			for j := range c.Shops[i].Lines {
				if x := &c.Shops[i].Lines[j]; l == nil && x.HasPrice && x.Code != "" && x.Order != "0" && x.Order != "1" {
					shop, l = &c.Shops[i], x
				}
			}
		}
		require.NotNil(t, l, "a line of more than one piece")
		key := lineKey(shop.ID, l.Key)
		type book = *excelize.File
		cell := func(t *testing.T, f book, title string) string { return spot(t, f, buyName, key, title) }
		set := func(title string, v any) func(*testing.T, book) {
			return func(t *testing.T, f book) { require.NoError(t, f.SetCellValue(buyName, cell(t, f, title), v)) }
		}
		kept := func(title, want string) func(*testing.T, book, Report, string) {
			return func(t *testing.T, f book, rep Report, _ string) {
				require.Equal(t, want, seen(t, f, buyName, key, title))
				require.Zero(t, rep.SetAside)
			}
		}
		aside := func(title, typed string) func(*testing.T, book, Report, string) {
			return func(t *testing.T, f book, rep Report, _ string) {
				require.Equal(t, 1, rep.SetAside)
				require.True(t, slices.ContainsFunc(asides(t, f), func(r []string) bool { return r[1] == "Buy: "+title && r[2] == typed }), "%v", asides(t, f))
			}
		}
		for _, tc := range []struct {
			what  string
			do    func(*testing.T, book)
			after func(*testing.T, []byte) []byte
			right func(*testing.T, book, Report, string)
		}{
			{what: "a price typed", do: set("Paid each", 7.25), right: kept("Paid each", "7.25")},
			{what: "a remark", do: set("Remark", "comes on Friday"), right: kept("Remark", "comes on Friday")},
			{what: "a colour", do: func(t *testing.T, f book) {
				id, err := f.NewStyle(&excelize.Style{Fill: excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{"00FF00"}}})
				require.NoError(t, err)
				at := cell(t, f, "Remark")
				require.NoError(t, f.SetCellStyle(buyName, at, at, id))
			}, right: func(t *testing.T, f book, _ Report, _ string) {
				require.Equal(t, []string{"00FF00"}, cellStyle(t, f, buyName, cell(t, f, "Remark")).Fill.Color)
			}},
			{what: "a row added in the table", do: func(t *testing.T, f book) {
				_, row, err := excelize.CellNameToCoordinates(cell(t, f, "Remark"))
				require.NoError(t, err)
				require.NoError(t, f.InsertRows(buyName, row+1, 1))
				for col, v := range map[int]any{colShop: shop.ID + " " + shop.Currency, colItem: "a roll of rag", colOrder: 2, colPrice: 3.5} {
					require.NoError(t, f.SetCellValue(buyName, at(col, row+1), v))
				}
			}, right: func(t *testing.T, f book, rep Report, _ string) {
				require.Equal(t, "a roll of rag", seen(t, f, buyName, besidesKey(0), "Item and what it is"))
				require.Equal(t, "7", seen(t, f, buyName, besidesKey(0), "Total"))
			}},
			{what: "a sheet added", do: func(t *testing.T, f book) {
				_, err := f.NewSheet("Mine")
				require.NoError(t, err)
				require.NoError(t, f.SetCellValue("Mine", "B2", "phone numbers"))
			}, right: func(t *testing.T, f book, _ Report, _ string) {
				require.Equal(t, "phone numbers", value(t, f, "Mine", "B2"))
			}},
			{what: "a row deleted", do: func(t *testing.T, f book) {
				_, row, err := excelize.CellNameToCoordinates(cell(t, f, "Remark"))
				require.NoError(t, err)
				require.NoError(t, f.RemoveRow(buyName, row))
			}, right: func(t *testing.T, f book, rep Report, _ string) {
				require.Equal(t, l.Order, seen(t, f, buyName, key, "Order"), "the build still asks for it")
				require.Zero(t, rep.SetAside)
			}},
			{what: "a code corrected", do: set("Code", "NEW-77"), right: aside("Code", "NEW-77")},
			{what: "sorted", do: func(t *testing.T, f book) { // two rows change places, with what was typed beside one
				set("Remark", "this one")(t, f)
				other := ""
				for i := range c.Shops {
					for j := range c.Shops[i].Lines {
						if k := lineKey(c.Shops[i].ID, c.Shops[i].Lines[j].Key); k != key {
							other = k
						}
					}
				}
				_, a, err := excelize.CellNameToCoordinates(cell(t, f, "Remark"))
				require.NoError(t, err)
				_, b, err := excelize.CellNameToCoordinates(spot(t, f, buyName, other, "Remark"))
				require.NoError(t, err)
				for c := range len(buyColumns) + 1 {
					x, y := at(c, a), at(c, b)
					vx, vy := value(t, f, buyName, x), value(t, f, buyName, y)
					if formula(t, f, buyName, x) != "" {
						continue
					}
					require.NoError(t, f.SetCellStr(buyName, x, vy))
					require.NoError(t, f.SetCellStr(buyName, y, vx))
				}
			}, right: func(t *testing.T, f book, _ Report, _ string) {
				require.Equal(t, "this one", seen(t, f, buyName, key, "Remark"))
			}},
			{what: "formulas without saved values", do: set("Ordered", 1), after: func(t *testing.T, data []byte) []byte {
				return edited(t, data, func(text string) string { return regexp.MustCompile(`</f><v>[^<]*</v>`).ReplaceAllString(text, "</f>") })
			}, right: kept("Ordered", "1")},
			{what: "the quantity changed", do: set("Order", 99), right: aside("Order", "99")},
			{what: "a part of it delivered", do: func(t *testing.T, f book) {
				set("Ordered", "yes")(t, f)
				set("Received", 1)(t, f)
			}, right: func(t *testing.T, f book, rep Report, path string) {
				require.True(t, strings.HasPrefix(seen(t, f, buyName, key, "State"), "short "), seen(t, f, buyName, key, "State"))
				data, err := os.ReadFile(path)
				require.NoError(t, err)
				got, err := Came(path, data)
				require.NoError(t, err)
				require.True(t, slices.ContainsFunc(got.Lines, func(x CameLine) bool {
					return x.Shop == shop.ID && x.Key == l.Key && x.Ordered == "yes" && x.Received == "1" && strings.HasPrefix(x.State, "short ")
				}), "%v", got.Lines)
			}},
			{what: "saved by another program", do: set("Remark", "kept there too"), after: func(t *testing.T, data []byte) []byte {
				o := findOffice(t, false)
				from := filepath.Join(t.TempDir(), "typed.xlsx")
				require.NoError(t, os.WriteFile(from, data, 0o644))
				out, err := os.ReadFile(filepath.Join(o.convert(t, "xlsx", from), "typed.xlsx"))
				require.NoError(t, err)
				return out
			}, right: kept("Remark", "kept there too")},
		} {
			t.Run(demoName+": "+tc.what, func(t *testing.T) {
				path := filepath.Join(t.TempDir(), "list.xlsx")
				_, err := Save(path, c, false)
				require.NoError(t, err)
				doTo(t, path, func(f *excelize.File) { tc.do(t, f) })
				if tc.after != nil {
					data, err := os.ReadFile(path)
					require.NoError(t, err)
					require.NoError(t, os.WriteFile(path, tc.after(t, data), 0o644))
				}
				f, rep := reissued(t, path, c)
				tc.right(t, f, rep, path)
			})
		}
	}
}
