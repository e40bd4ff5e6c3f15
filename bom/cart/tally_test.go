package cart

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// A bore of the next size is named with the hose that it is like; one further off is another.
func TestBoresOfTheNextSize(t *testing.T) {
	for _, row := range []struct {
		bore   float64
		near   bool
		differ bool
	}{{19, false, false}, {19.5, false, false}, {18.5, false, false}, {19.7, true, true}, {20.5, true, true}, {17.5, true, true}, {20.7, false, true}, {17.3, false, true}, {25, false, true}} {
		m := against(stockKind(), facts{bore: 19})
		m.compareBore(&facts{kind: stockKind(), bore: quantity.Length(row.bore)}, &m.need.facts)
		require.Equal(t, row.near, m.has(byBoreNear), row.bore)
		require.Equal(t, row.differ, m.differs.has(inBore), row.bore)
	}
	inner, outer := tubeIn("1 mm ID")
	require.EqualValues(t, 1, inner)
	require.Zero(t, outer)
}

// A column of ratings is read with its unit; a bare figure in it says nothing.
func TestColumnsOfRatings(t *testing.T) {
	for rating, want := range map[string]quantity.Pressure{"200 bar": 200 * quantity.Bar, "PN16": 16 * quantity.Bar, "200": 0, "": 0, "3000 psi": 3000 * quantity.PSI} {
		c, err := Read("c.csv", []byte("Description;Qty;Rating\nElbow 1/2 NPT female;1;"+rating+"\n"), Options{Columns: Columns{RoleText: "Description", RoleRating: "Rating"}})
		require.NoError(t, err)
		require.InDelta(t, float64(want), float64(c.Lines[0].facts.rated), 1, rating)
		require.Equal(t, want > 0, c.Lines[0].added != "", rating)
	}
}

// What becomes of a need by what the carts bring of it: status, reason and what to order.
func TestTalliesOfANeed(t *testing.T) {
	for why, row := range map[string]struct {
		build, spare, have, in int64
		unsure                 []string
		status                 Status
		reason                 string
	}{
		"all of it":              {4, 2, 0, 6, nil, Covered, ""},
		"nothing":                {4, 0, 0, 0, nil, Missing, "Nothing of it in the cart, 4 pc needed."},
		"nothing, with spares":   {4, 2, 0, 0, nil, Missing, "Nothing of it in the cart, 6 pc needed, of them 2 spare."},
		"too few to build":       {4, 2, 0, 3, nil, Short, "3 pc in the cart, 6 pc needed, of them 2 spare."},
		"enough to build":        {4, 2, 0, 4, nil, ShortOfSpares, "4 pc in the cart: enough to build, and 2 pc short of the spares."},
		"spares alone":           {4, 2, 4, 0, nil, ShortOfSpares, "0 pc in the cart: enough to build, and 2 pc short of the spares."},
		"one too many":           {4, 2, 0, 7, nil, Surplus, "7 pc in the cart, 6 pc needed with spares."},
		"it may be another line": {4, 0, 0, 0, []string{"a line 3", "b line 4"}, Missing, "Nothing of it in the cart, 4 pc needed. It may be a line 3, or b line 4, which is asked about."},
	} {
		j, list := alloting(pieces(row.build))
		n := list[0].need
		n.Spare, n.Have = pieces(row.spare), pieces(row.have)
		n.line.Order = n.Buy()
		j.match, j.in[0], j.unsure = &matcher{needs: []*need{n}}, pieces(row.in), [][]string{row.unsure}
		j.tally()
		require.Len(t, j.report.Items, 1, why)
		got := j.report.Items[0]
		require.Equal(t, row.status, got.Status, why)
		require.Equal(t, row.reason, got.Reason, why)
		require.Equal(t, row.status == Covered, got.Remedy == "", why)
		if row.unsure != nil {
			require.Contains(t, got.Remedy, "Settle that line first; else order 4 pc: ", why)
		}
		require.Equal(t, row.status != Short && row.status != Missing, j.report.Builds(), why)
		require.Equal(t, 1, j.report.CountItems(row.status), why)
	}
	j, list := alloting(pieces(2))
	list[0].need.Have = pieces(2)
	j.match, j.unsure = &matcher{needs: []*need{list[0].need}}, [][]string{nil}
	j.tally()
	require.Empty(t, j.report.Items, "what is aboard is not spoken of")
}

// The currency is asked once a cart, for the lines with a price that count.
func TestCurrencyIsAskedOnce(t *testing.T) {
	for why, row := range map[string]struct {
		lines   []Line
		settles int
		first   int
	}{
		"two lines":         {[]Line{{Row: 2, Price: "1"}, {Row: 3, Total: "2"}}, 2, 2},
		"one names it":      {[]Line{{Row: 2, Price: "1", Currency: "EUR"}, {Row: 3, Price: "2"}}, 1, 3},
		"one stays out":     {[]Line{{Row: 2, Price: "1", Out: "a sum"}, {Row: 3, Price: "2"}}, 1, 3},
		"no prices":         {[]Line{{Row: 2}}, 0, 0},
		"all of them named": {[]Line{{Row: 2, Price: "1", Currency: "EUR"}}, 0, 0},
	} {
		j := &judge{report: &Report{}}
		j.currencyQuestion(&Cart{Name: "a.csv", Lines: row.lines})
		if row.settles == 0 {
			require.Empty(t, j.report.Questions, why)
			continue
		}
		require.Len(t, j.report.Questions, 1, why)
		q := j.report.Questions[0]
		require.Equal(t, []int{row.settles, row.first}, []int{q.Settles, q.Line}, why)
		require.Equal(t, "In which currency are the prices? They were not compared with the offers; say --currency, such as --currency EUR.", q.Ask)
	}
}

// What a person may answer to a question, and what is no answer.
func TestAnswers(t *testing.T) {
	for _, row := range []struct {
		answer  string
		choices []string
		ok      bool
		item    string
	}{
		{"y", []string{"a"}, true, "a"}, {" YES ", []string{"a"}, true, "a"}, {"y", []string{"a", "b"}, false, ""}, {"n", []string{"a", "b"}, true, ""}, {"No", []string{"a"}, true, ""}, {"0", []string{"a"}, true, ""},
		{"1", []string{"a", "b"}, true, "a"}, {"2", []string{"a", "b"}, true, "b"}, {"3", []string{"a", "b"}, false, ""}, {"-1", []string{"a"}, false, ""}, {"B", []string{"a", "b"}, true, "b"}, {"c", []string{"a", "b"}, false, ""}, {"", []string{"a"}, false, ""}, {"y", nil, false, ""},
	} {
		var a Accepted
		q := Question{Choices: row.choices, lines: []*Verdict{{Line: &Line{Text: "one"}}, {Line: &Line{Text: "two"}}}}
		require.Equal(t, row.ok, q.Answer(&a, row.answer), "%q of %v", row.answer, row.choices)
		if !row.ok {
			require.Empty(t, a.Entries(), row.answer)
			continue
		}
		require.Equal(t, []Entry{{"one", "", row.item}, {"two", "", row.item}}, a.Entries(), row.answer)
	}
	require.True(t, IsAccepted(nil))
	require.True(t, IsAccepted([]byte(acceptedHead)))
	require.True(t, IsAccepted([]byte(acceptedHead+"\r\n")))
	require.False(t, IsAccepted([]byte("x = 1")))
	require.False(t, IsAccepted([]byte(acceptedHead+"# mine\n")))
	require.Equal(t, `"a\"b\\c\u000Ad"`, tomlText("a\"b\\c\nd"))
	require.True(t, onlyComments("# a\n\n  # b\n"))
	require.False(t, onlyComments("# a\nb"))
}
