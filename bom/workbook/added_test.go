package workbook

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// ownColumns are three columns of a buyer's, right of the hidden ones.
var ownColumns = []typing{
	{orderName, "AC6", "Shelf"}, {orderName, "AD6", "Done"}, {orderName, "AE6", "key"},
	{orderName, "AC9", "=locker 4"}, {orderName, "AD9", 12.5}, {orderName, "AE9", time.Date(2026, 11, 25, 0, 0, 0, 0, time.UTC)},
	{orderName, "AC10", strings.Repeat("x", cellLimit)},
}

func TestAddedColumnsComeBackRightOfRemark(t *testing.T) {
	path := saved(t, sample(t), append(buyer, ownColumns...)...)
	c := sample(t)
	slices.Reverse(c.Shops[0].Lines)
	for range 3 {
		f, rep := reissued(t, path, *settle(t, &c))
		requireBuyer(t, f)
		require.Zero(t, rep.SetAside)
		row := find(t, f, orderName, "A", "elbow-38")
		for col, want := range map[string][2]string{
			"Y": {"Shelf", "=locker 4"}, "Z": {"Done", "12.5"}, "AA": {"key", "2026-11-25"}, "AB": {formatMark, kindLine},
		} {
			require.Equal(t, want[0], value(t, f, orderName, col+fmt.Sprint(headRow)))
			require.Equal(t, want[1], value(t, f, orderName, fmt.Sprint(col, row)))
		}
		formula, err := f.GetCellFormula(orderName, fmt.Sprint("Y", row))
		require.NoError(t, err)
		require.Empty(t, formula)
	}
}

func TestAddedCellsOfALineThatIsGoneAreSetAsideAndComeBack(t *testing.T) {
	path := saved(t, sample(t), append(buyer, ownColumns...)...)
	c := sample(t)
	c.Shops[0].Lines = slices.Delete(c.Shops[0].Lines, 1, 2)
	for range 2 {
		f, rep := reissued(t, path, *settle(t, &c))
		require.Equal(t, 1, rep.SetAside)
		for col, want := range map[string][2]string{"J": {"Shelf", "=locker 4"}, "K": {"Done", "12.5"}, "L": {"key", "2026-11-25"}} {
			require.Equal(t, want, [2]string{value(t, f, asideName, col+"3"), value(t, f, asideName, col+"4")})
		}
	}
	f, rep := reissued(t, path, sample(t))
	require.Zero(t, rep.SetAside)
	require.Equal(t, "=locker 4", value(t, f, orderName, fmt.Sprint("Y", find(t, f, orderName, "A", "elbow-38"))))
}

func TestTooManyAddedColumnsAreRefused(t *testing.T) {
	var typed []typing
	for i := range maxAdded + 1 {
		typed = append(typed, typing{orderName, at(28+i, headRow), fmt.Sprint("own ", i)})
	}
	path := saved(t, sample(t), typed...)
	_, err := Save(path, sample(t), false)
	require.ErrorContains(t, err, "it has 21 added columns, and at most 20 are kept")
}

func TestWhatChangedIsMarkedOnce(t *testing.T) {
	path := saved(t, sample(t))
	c := sample(t)
	l := &c.Shops[0].Lines[1]
	l.Placed, l.Price, l.RatingNeeded = "6", price(t, "18.00", "EUR"), "60 bar"
	settle(t, &c)
	f, rep := reissued(t, path, c)
	want := []string{"order 4 -> 8", "price 17.385 -> 18.00", "rating needed 55 bar normal, 71.5 bar worst -> 60 bar"}
	require.Equal(t, []string{"elbow-38, elbow, 90 degrees: " + strings.Join(want, "; ")}, rep.Changed)
	require.Equal(t, changedTitle, value(t, f, orderName, "Y6"))
	require.Equal(t, strings.Join(want, "\n"), value(t, f, orderName, "Y9"))
	require.Empty(t, value(t, f, orderName, "Y8"))
	f, rep = reissued(t, path, c)
	require.Empty(t, rep.Changed)
	require.Equal(t, formatMark, value(t, f, orderName, "Y6"), "nothing changed since: no such column")
}

func TestAddedColumnsAfterAnotherProgramSavedTheBook(t *testing.T) {
	o := findOffice(t, false)
	path := saved(t, sample(t), append(buyer, ownColumns[:6]...)...)
	data, err := os.ReadFile(filepath.Join(o.convert(t, "xlsx", path), "order.xlsx"))
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, data, 0o644))
	f, rep := reissued(t, path, sample(t))
	requireBuyer(t, f)
	require.Empty(t, rep.Changed)
	require.Equal(t, []string{"=locker 4", "12.5"}, []string{value(t, f, orderName, "Y9"), value(t, f, orderName, "Z9")})
	require.Regexp(t, `^(2026-11-25|11/25/2026)$`, value(t, f, orderName, "AA9"), "the day, as that program shows it")
}

// The sheet is locked against slips, but the columns beyond ours are free to be filled.
func TestRoomForColumns(t *testing.T) {
	var buf bytes.Buffer
	require.NoError(t, Write(&buf, sample(t), nil))
	f, err := excelize.OpenReader(&buf)
	require.NoError(t, err)
	defer f.Close()
	style, err := f.GetColStyle("Order", "AD")
	require.NoError(t, err)
	got, err := f.GetStyle(style)
	require.NoError(t, err)
	require.NotNil(t, got.Protection)
	require.False(t, got.Protection.Locked)
}
