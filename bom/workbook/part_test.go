package workbook

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"

	"handtight/bom"
	"handtight/bom/facts"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

func TestPartsSheet(t *testing.T) {
	f := opened(t, sample(t), nil)
	rows, err := f.GetRows(partsName)
	require.NoError(t, err)
	require.Equal(t, partsTitle, rows[0][0])
	require.Equal(t, [][]string{
		{"Part", "What it is", "Segment", "High pressure", "Normal", "Worst", "What causes the worst", "Suction", "It holds", "Rating from", "Margin"},
		{"brine-hose", "hose", "brine", "", "0 bar", "no bound", "overboard (seacock) left shut", "", "10 bar", "data sheet: 10 bar", "OVER"},
		{"elbow-38", "elbow", "membrane", "yes", "55 bar", "71.5 bar", "brine throttle shut", "", "40 bar", "data sheet: 40 bar", "OVER by 31.5 bar"},
		{"lp-hose", "hose", "feed", "", "1.2 bar", "4.5 bar", "fresh-water flush", "vacuum: intake (seacock) left shut", "not known", "", "not known"},
	}, rows[2:])
	for cell, fill := range map[string]string{"F4": stopFill, "K4": stopFill, "K5": stopFill, "F5": "", "K6": "", "A4": ""} {
		var want []string
		if fill != "" {
			want = []string{fill}
		}
		require.Equal(t, want, cellStyle(t, f, partsName, cell).Fill.Color, cell)
	}
	require.True(t, cellStyle(t, f, partsName, "A5").Font.Bold)
	require.Contains(t, names(f), "_xlnm.Print_Titles 'Parts'!$3:$3")
	require.Equal(t, "No part is placed but what the boat has.", value(t, opened(t, Content{Currency: "EUR"}, nil), partsName, "A4"))
}

// The parts of the careless build: the shut overboard valve leaves the high-pressure side
// without a bound, and a selector that shuts between its ways loads the product side.
func TestPartsOfABuild(t *testing.T) {
	build, faults := bom.Read("../../testdata/careless/build.toml")
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	rows := map[string]Part{}
	held := false
	for _, p := range partsOf(facts.Of(sys, nil).WorstFirst) {
		rows[p.Name] = p
		held = held || !p.Over && !p.Unbounded
		require.False(t, held && p.Over, "%s: what is over stands before what holds", p.Name)
	}
	require.True(t, held)
	require.Len(t, rows, len(sys.Segments.Parts()))
	require.Equal(t, Part{
		Name: "meter", Kind: "flow meter", Segment: "product: vessel to selector", Normal: "0 bar", Worst: "58 bar",
		Cause: "selector (selector valve) left between its positions", Holds: "8 bar", Basis: "data sheet: 8 bar", Margin: "50 bar", Over: true,
	}, rows["meter"], "the feed side's pressure, since the product cannot leave")
	tee := rows["hp-tee"]
	require.Equal(t, []string{"no bound", "throttle (brine throttle) left shut", "20.7 bar", ""}, []string{tee.Worst, tee.Cause, tee.Holds, tee.Margin})
	require.True(t, tee.High && tee.Over && tee.Unbounded)
	require.Equal(t, "not known", rows["orb-n12"].Margin, "nothing says what it holds")
	require.Equal(t, "vacuum: ball-valve (shut-off valve) left shut", rows["raw-2"].Suction)
}

// Our own sheet is made anew; one of that name that a buyer added is not taken for it.
func TestASheetCalledPartsOfTheBuyersOwn(t *testing.T) {
	path := filepath.Join(t.TempDir(), "order.xlsx")
	require.NoError(t, os.WriteFile(path, made(t, sample(t), nil), 0o644))
	_, err := Save(path, sample(t), false)
	require.NoError(t, err)
	for why, title := range map[string]string{"with words of its own": "parts in the forepeak", "with nothing in it": ""} {
		data := changedBook(t, func(f *excelize.File) {
			require.NoError(t, f.DeleteSheet(partsName))
			_, err := f.NewSheet(partsName)
			require.NoError(t, err)
			require.NoError(t, f.SetCellStr(partsName, "A1", title))
		})
		require.NoError(t, os.WriteFile(path, data, 0o644))
		_, err = Save(path, sample(t), false)
		require.ErrorContains(t, err, `added by hand and would be lost: sheet "Parts"`, why)
	}
}

// What a plant makes stands on a sheet of its own, a limit that is not held in colour.
func TestDutySheet(t *testing.T) {
	f := opened(t, Content{Currency: "EUR", Duty: []DutyRow{
		{Plant: "vessel", What: "fresh water", Least: "27.1", Middle: "35.8", Greatest: "43.2", Unit: "L/h"},
		{Plant: "vessel", What: "recovery of any one element, at most", Least: "12.0", Middle: "16.0", Greatest: "19.0", Unit: "%", Limit: "15.0", Margin: "-1.0", Over: true},
	}}, nil)
	require.Equal(t, dutyTitle, value(t, f, dutyName, "A1"))
	require.Equal(t, "fresh water", value(t, f, dutyName, "B4"))
	require.Equal(t, "35.8", value(t, f, dutyName, "D4"))
	require.Equal(t, "OVER: -1.0", value(t, f, dutyName, "H5"))
	require.Equal(t, "The build has no pump and no pressure vessel.", value(t, opened(t, Content{Currency: "EUR"}, nil), dutyName, "A4"))
}
