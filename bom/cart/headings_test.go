package cart

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What a heading names: all of it, or the longest run of its words that is known; a sentence
// names nothing.
func TestWhatAHeadingNames(t *testing.T) {
	for _, row := range []struct {
		heading string
		want    Role
		whole   bool
	}{
		{"Description", RoleText, true}, {"Qty", RoleQuantity, true}, {"QTY.", RoleQuantity, true}, {"Unit price", RolePrice, true}, {"Line total", RoleTotal, true}, {"Part #", RoleCode, true},
		{"Our item", RoleItem, true}, {"Currency", RoleCurrency, true}, {"Material", RoleMaterial, true}, {"UOM", RoleUnit, true},
		{"Qty on this order", RoleQuantity, false}, {"Unit price (EUR)", RolePrice, false}, {"Price incl. VAT", RolePrice, false},
		{"", "", false}, {"Xyzzy", "", false}, {"one two three four five six seven eight qty", "", false}, {"one two three four five six seven qty", RoleQuantity, false},
	} {
		got, weight := roleOf(row.heading)
		require.Equal(t, row.want, got, row.heading)
		if row.want != "" {
			require.Equal(t, row.whole, weight >= 1000, "%s: %d", row.heading, weight)
		} else {
			require.Zero(t, weight, row.heading)
		}
	}
	_, short := roleOf("Qty of it")
	_, long := roleOf("order qty of it")
	require.Greater(t, long, short, "more words weigh more")
}

func rowOf(texts ...string) row {
	r := row{number: 1}
	for _, text := range texts {
		r.cells = append(r.cells, cell{text: text})
	}
	return r
}

// Of two columns with one role the better heading wins, the first of like ones; texts are all
// kept, and prices without tax go before those with it.
func TestColumnsOfHeadings(t *testing.T) {
	for why, row := range map[string]struct {
		heads []string
		role  Role
		want  []int
	}{
		"all texts":                        {[]string{"Description", "Qty", "Name"}, RoleText, []int{0, 2}},
		"the first of two quantities":      {[]string{"Description", "Qty", "Quantity"}, RoleQuantity, []int{1}},
		"the whole heading before a part":  {[]string{"Description", "Qty on stock here", "Qty"}, RoleQuantity, []int{2}},
		"no tax before tax":                {[]string{"Description", "Price incl. VAT", "Price"}, RolePrice, []int{2}},
		"and where it stands behind":       {[]string{"Description", "Price", "Price incl. VAT"}, RolePrice, []int{1}},
		"with tax where nothing else is":   {[]string{"Description", "Price incl. VAT"}, RolePrice, []int{1}},
		"a blank heading names no column":  {[]string{"", "Description"}, RoleText, []int{1}},
		"a column of no use is left alone": {[]string{"Description", "Xyzzy"}, RoleNone, nil},
	} {
		r := rowOf(row.heads...)
		require.Equal(t, row.want, headings(&r)[row.role], why)
	}
	r := row{cells: []cell{{text: "Qty", number: true}, {text: "Description"}}}
	require.Empty(t, headings(&r)[RoleQuantity], "a figure is no heading")
}

func sheetOf(rows ...row) *tableSheet {
	for i := range rows {
		rows[i].number = i + 1
	}
	return &tableSheet{rows: rows}
}

// Headings are found under an address, and not beyond sixty rows.
func TestWhereHeadingsStand(t *testing.T) {
	address := rowOf("Harbour Parts, 1 Quay Street")
	heads, line := rowOf("Description", "Qty", "Price"), rowOf("Elbow 1/2 NPT female", "2", "3.00")
	for why, row := range map[string]struct {
		sheet *tableSheet
		head  int
	}{
		"at the top":             {sheetOf(heads, line), 0},
		"under an address":       {sheetOf(address, address, heads, line), 2},
		"the row that says more": {sheetOf(rowOf("Description", "Qty"), heads, line), 1},
		"the first of like rows": {sheetOf(heads, heads, line), 0},
		"a list without any":     {sheetOf(line, line), -1},
	} {
		require.Equal(t, row.head, func() int { l := lay(row.sheet); return l.head }(), why)
	}
	deep := func(n int) *tableSheet {
		var rows []row
		for range n {
			rows = append(rows, address)
		}
		return sheetOf(append(rows, heads, line)...)
	}
	within, beyond := lay(deep(headWithin-1)), lay(deep(headWithin))
	require.Equal(t, headWithin-1, within.head)
	require.Equal(t, -1, beyond.head)
	l := lay(sheetOf(heads, line))
	require.True(t, l.complete())
	require.True(t, l.priced())
	l = lay(sheetOf(rowOf("Description", "Code"), line))
	require.False(t, l.complete())
	l = lay(sheetOf(rowOf("Description", "Qty"), line))
	require.True(t, l.complete())
	require.False(t, l.priced())
	l = lay(sheetOf(rowOf("Description", "Total"), line))
	require.True(t, l.priced())
}

// A person's columns, by heading or by number, and what is refused of them.
func TestColumnsThatAPersonGives(t *testing.T) {
	for _, row := range []struct{ text, fault string }{
		{"text=Benennung", ""}, {" text = Benennung , quantity = 3 ", ""},
		{"text", `"text" does not say which column is what: write text=Description,quantity=3`},
		{"text=", `"text=" does not say which column is what`}, {"", `"" does not say which column is what`},
		{"colour=3", `"colour" is no part of a cart: write one of text, code, item, quantity, unit, pack, price, total, currency, material, rating, size or status`},
		{"none=3", `"none" is no part of a cart`}, {"text=1,text=2", `"text" is given twice: give it one column`},
	} {
		got, err := ParseColumns(row.text)
		if row.fault == "" {
			require.NoError(t, err, row.text)
			require.Equal(t, "Benennung", got[RoleText])
			continue
		}
		require.ErrorContains(t, err, row.fault, row.text)
	}
	const data = "Wofür;Was;Zahl;Preis\nKahn;Bogen 1/2 NPT innen;2;3,00\n"
	for why, row := range map[string]struct {
		columns Columns
		text    string
		amount  string
		fault   string
	}{
		"by heading":           {Columns{RoleText: "Was", RoleQuantity: "Zahl"}, "Bogen 1/2 NPT innen", "2", ""},
		"in other capitals":    {Columns{RoleText: "WAS", RoleQuantity: "zahl"}, "Bogen 1/2 NPT innen", "2", ""},
		"by number":            {Columns{RoleText: "2", RoleQuantity: "3"}, "Bogen 1/2 NPT innen", "2", ""},
		"a column beyond all":  {Columns{RoleText: "2", RoleQuantity: "9"}, "Bogen 1/2 NPT innen", "0", ""},
		"the last that is one": {Columns{RoleText: "2", RoleQuantity: "256"}, "Bogen 1/2 NPT innen", "0", ""},
		"a number too large":   {Columns{RoleText: "257"}, "", "", `there is no column "257" for text`},
		"nought":               {Columns{RoleText: "0"}, "", "", `there is no column "0" for text`},
		"no such heading":      {Columns{RoleText: "Nichts"}, "", "", `there is no column "Nichts" for text`},
	} {
		c, err := Read("c.csv", []byte(data), Options{Columns: row.columns})
		if row.fault != "" {
			require.ErrorContains(t, err, row.fault, why)
			require.ErrorContains(t, err, "write its number, counted from 1", why)
			continue
		}
		require.NoError(t, err, why)
		last := c.Lines[len(c.Lines)-1]
		require.Equal(t, row.text, last.Text, why)
		require.Equal(t, row.amount, last.Amount.String(), why)
	}
	_, err := Read("c.csv", []byte("Elbow 1/2 NPT female\nTee 1/2 NPT female\n"), Options{Columns: Columns{RoleText: "Nothing"}})
	require.EqualError(t, err, "c.csv: there is no column \"Nothing\" for text\n  write its number, counted from 1")
}

// A column has one role: what a person gives it is taken from where it was.
func TestAColumnHasOneRole(t *testing.T) {
	c, err := Read("c.csv", []byte("Description;Price;Total\nElbow 1/2 NPT female;4;2\n"), Options{Columns: Columns{RoleQuantity: "Price"}})
	require.NoError(t, err)
	require.Equal(t, "4", c.Lines[0].Amount.String())
	require.Equal(t, "0.5", c.Lines[0].Price, "the total parted by four")
}

// Every sort of file that is no table is refused in words, with what to do.
func TestWhatIsNoCart(t *testing.T) {
	for _, row := range []struct{ why, data, says, remedy string }{
		{"nothing", "", "the file is empty", "export the cart again, as CSV or XLSX"},
		{"blanks alone", " \n\t\n", "the file is empty", "export the cart again"},
		{"an old workbook", "\xd0\xcf\x11\xe0rest", "it is an old XLS workbook, or one with a password", "save it as XLSX without a password"},
		{"a PDF", "%PDF-1.7 x", "it is a PDF, which has no table to read", "copy its lines into a spreadsheet"},
		{"a page", "<!DOCTYPE html><p>", "it is a web page or XML, whatever its name says", "save it as XLSX or CSV"},
		{"a page with a mark before it", "\ufeff  <HTML>", "it is a web page or XML", "save it as XLSX or CSV"},
		{"a bare table", "<table><tr>", "it is a web page or XML", "save it as XLSX or CSV"},
		{"XML", "<?xml version='1.0'?>", "it is a web page or XML", "save it as XLSX or CSV"},
		{"packed", "\x1f\x8bxx", "it is packed data or a picture", "give the table itself"},
		{"a photograph", "\xff\xd8\xffxx", "it is packed data or a picture", "give the table itself"},
		{"a drawing", "\x89PNGxx", "it is packed data or a picture", "give the table itself"},
		{"headings alone", "Description,Qty\n", "no line of a cart is in it", "a cart has a row of headings"},
		{"too many columns", "Description,Qty\n" + strings.Repeat("a,", 256) + "a\n", "c.csv row 2: the row has 257 columns", "check the separator"},
		{"a cell too long", "Description,Qty\n" + strings.Repeat("a", maxCell+1) + ",1\n", "c.csv row 2: a cell holds more than 32767 characters", "a quote that never closes"},
		{"too many rows", strings.Repeat("a,b\n", maxRows+1), "it has more than 20000 rows", "give a cart, not a catalogue"},
		{"UTF-32", "\xff\xfe\x00\x00a", "it is in UTF-32, so it is no text table", "say its encoding by --encoding"},
		{"zero bytes", "Description,Qty\x00\nabcdef", "it holds zero bytes, so it is no text table", "save it as CSV in UTF-8"},
		{"control characters", "\x01\x02\x03\x04ab", "it holds control characters", "save it as CSV in UTF-8"},
	} {
		_, err := Read("c.csv", []byte(row.data), Options{})
		require.ErrorContains(t, err, row.says, row.why)
		require.ErrorContains(t, err, row.remedy, row.why)
		var fault *ReadError
		require.ErrorAs(t, err, &fault, row.why)
	}
	_, err := Read("c.csv", []byte("Description,Qty\nElbow,1\n"), Options{Encoding: "klingon"})
	require.ErrorContains(t, err, `"klingon" is no encoding that is known`)
	for _, most := range []string{strings.Repeat("a,", 255) + "a\n", strings.Repeat("a", maxCell) + ",1\n"} {
		_, err := Read("c.csv", []byte("Description,Qty\n"+most), Options{})
		require.NoError(t, err, "as much as is read")
	}
}

// One control character in twenty is still text.
func TestControlCharactersAtTheEdge(t *testing.T) {
	for _, row := range []struct {
		text string
		ok   bool
	}{{"\x01" + strings.Repeat("a", 19), true}, {"\x01" + strings.Repeat("a", 18), false}, {"\t\n\r", true}, {"\x7f" + strings.Repeat("a", 18), false}, {"", true}, {"a\x00", false}} {
		_, _, err := checked(row.text, "")
		require.Equal(t, row.ok, err == nil, "%q", row.text)
	}
}

// UTF-16 without a mark is known by its zero bytes; a few say nothing.
func TestZeroBytesTellUTF16(t *testing.T) {
	little := func(s string) string { return strings.Join(strings.Split(s, ""), "\x00") + "\x00" }
	for why, row := range map[string]struct {
		data, want string
	}{
		"little end first": {little("Description,Qty\nElbow,1\n"), "Elbow"},
		"big end first":    {"\x00" + strings.TrimSuffix(little("Description,Qty\nElbow,1\n"), "\x00"), "Elbow"},
	} {
		c, err := Read("c.csv", []byte(row.data), Options{})
		require.NoError(t, err, why)
		require.Equal(t, row.want, c.Lines[0].Text, why)
		require.Contains(t, c.Notes, "the text was taken as UTF-16; say --encoding if letters look wrong", why)
	}
	for _, row := range []struct {
		data string
		want bool
	}{{"a\x00b\x00c\x00", true}, {"\x00a\x00b\x00c", true}, {"a\x00bbbb", false}, {"a\x00b\x00bb", true}, {"abcdef", false}, {"", false}, {"\x00\x00\x00\x00\x00\x00", false}} {
		_, ok := nulls([]byte(row.data))
		require.Equal(t, row.want, ok, "%q", row.data)
	}
}
