package workbook

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Rows of sheets that earlier issues had go back to where they stand now, with all that was
// typed, written over, coloured and noted beside them.
func TestRowsOfEarlierSheets(t *testing.T) {
	c := newCarry()
	hose, rate := rowID{"Hoses", "hose|raw-1"}, rowID{"Rates", "terms|elbe"}
	c.keep(cellID{hose.sheet, hose.key, "Done"}, typed{Text: "x"})
	c.keep(cellID{"Hoses", "added row 30", "Done"}, typed{Text: "by hand"})
	c.changes = append(c.changes, change{cellID{rate.sheet, rate.key, "Freight"}, "48", "55"})
	c.labels[hose], c.paints[hose], c.notes[hose], c.noted = "raw-1", map[string]paint{"Done": {fill: "FF0000"}}, []note{{title: "Done"}}, []rowID{hose}
	q, about := rowID{"Questions", "question|elbe|tee|Which thread?"}, rowID{ratesName, "rate|EUR"}
	c.keep(cellID{q.sheet, q.key, "Answer"}, typed{Text: "NPT"})
	c.paints[q], c.notes[about] = map[string]paint{"Answer": {fill: "00FF00"}}, []note{{title: "About"}}
	c.moved()
	answer, ok := c.take(cellID{ratesName, q.key, answerTitle})
	require.True(t, ok, "the questions stand under the findings")
	require.Equal(t, "NPT", answer.Text)
	require.Equal(t, "00FF00", c.paints[rowID{ratesName, q.key}][answerTitle].fill)
	require.Equal(t, answerTitle, c.notes[about][0].title, "the column has another head")
	now := rowID{jointsName, hose.key}
	v, ok := c.take(cellID{now.sheet, now.key, "Done"})
	require.True(t, ok)
	require.Equal(t, "x", v.Text)
	require.Equal(t, "by hand", c.peek(cellID{"Hoses", "added row 30", "Done"}).Text, "what is no row of ours is set aside from where it stood")
	require.Equal(t, cellID{ratesName, rate.key, "Freight"}, c.changes[0].id)
	require.Equal(t, "raw-1", c.labels[now])
	require.Equal(t, "FF0000", c.paints[now]["Done"].fill)
	require.Len(t, c.notes[now], 1)
	require.Equal(t, []rowID{now}, c.noted)
	require.Empty(t, c.notes[hose])
}

func TestEndsAndWhys(t *testing.T) {
	for _, tc := range []struct{ a, b, want string }{
		{"19 mm barb", "19 mm barb", "both 19 mm barb"}, {"3/8-18 NPT female", "3/8-18 NPT male", "3/8-18 NPT: female in male"},
		{"G 1/2", "R 1/2", "G 1/2 in R 1/2"}, {"10 mm", "10 mm push-in", "10 mm in 10 mm push-in"}, {"", "an end not said", " in an end not said"},
	} {
		require.Equal(t, tc.want, ends(tc.a, tc.b))
	}
	for _, tc := range []struct {
		q    quantities
		want string
	}{
		{quantities{need: 1000, placed: 1000}, "1"}, {quantities{need: 5000, placed: 1000, planned: 4000}, "5 = 1 + 4 changed"},
		{quantities{need: 1000, spare: 1000}, "1 spare"}, {quantities{need: 0, spare: 1000, have: 1000}, "0 = 1 spare - 1 aboard"},
		{quantities{need: 0, placed: 1000, have: 1000}, "0 = 1 - 1 aboard"}, {quantities{need: -1000, have: 1000}, "-1 = 0 - 1 aboard"},
		{quantities{need: 3500, placed: 1500, spare: 1000, extra: 1000}, "3.5 = 1.5 + 1 spare + 1 extra"},
	} {
		require.Equal(t, tc.want, tc.q.why())
	}
}
