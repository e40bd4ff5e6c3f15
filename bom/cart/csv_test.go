package cart

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/unicode"
	"pgregory.net/rapid"
)

func split(text string, sep byte) [][]string {
	s := splitter{rest: text, sep: sep}
	var out [][]string
	for s.next() {
		out = append(out, append([]string(nil), s.fields...))
	}
	return out
}

func TestQuotesAreReadAsPeopleAndProgramsWriteThem(t *testing.T) {
	for why, row := range map[string]struct {
		text string
		want [][]string
	}{
		"RFC 4180 section 2 rule 7: a quote is doubled":       {`"1/2"" NPT",2`, [][]string{{`1/2" NPT`, "2"}}},
		"an inch mark that nobody doubled":                    {`"1/2" NPT male",2`, [][]string{{`1/2" NPT male`, "2"}}},
		"an inch mark without quotes around":                  {`1/2" NPT,2`, [][]string{{`1/2" NPT`, "2"}}},
		"two inch marks without quotes around":                {`1/2" x 3/4",2`, [][]string{{`1/2" x 3/4"`, "2"}}},
		"RFC 4180 section 2 rule 6: a separator within":       {`"a, b",2`, [][]string{{"a, b", "2"}}},
		"RFC 4180 section 2 rule 6: a line break within":      {"\"a\nb\",2\nc,3", [][]string{{"a\nb", "2"}, {"c", "3"}}},
		"blanks around quotes":                                {` "a" ,2`, [][]string{{"a", "2"}}},
		"a quote that never closes stays a letter":            {"\"a,2\nb,3", [][]string{{`"a`, "2"}, {"b", "3"}}},
		"Windows, Unix and old ends of lines":                 {"a\r\nb\nc\rd", [][]string{{"a"}, {"b"}, {"c"}, {"d"}}},
		"a field that is empty, and one behind the last mark": {"a,,", [][]string{{"a", "", ""}}},
	} {
		t.Run(why, func(t *testing.T) { require.Equal(t, row.want, split(row.text, ',')) })
	}
}

func TestLinesAreCountedAsAnEditorDoes(t *testing.T) {
	s := splitter{rest: "a\n\"b\nc\"\nd\n", sep: ','}
	var at []int
	for s.next() {
		at = append(at, s.line)
	}
	require.Equal(t, []int{1, 2, 4}, at, "the second record takes two lines")
}

func TestTheSeparatorIsFound(t *testing.T) {
	for why, row := range map[string]struct {
		text string
		want byte
	}{
		"semicolons beside decimal commas":    {"Bezeichnung;Menge;Preis\nTülle, lang;2;1,20\nBogen, kurz;1;3,50\n", ';'},
		"commas":                              {"Description,Qty,Price\nTail; long,2,1.20\n", ','},
		"tabs beside commas in every text":    {"Description\tQty\nTail, long, bronze\t2\nElbow, short, bronze\t1\n", '\t'},
		"bars":                                {"Description|Qty\nTail|2\n", '|'},
		"headings speak louder than the rest": {"Description;Qty;Price\na,b,c;1;2\nd,e,f;1;2\n", ';'},
		"a list of one column has none":       {"Tail\nElbow\n", 0},
	} {
		t.Run(why, func(t *testing.T) { require.Equal(t, string(row.want), string(findSeparator(row.text))) })
	}
	_, sep, said := saidSeparator("sep=|\na|b\n")
	require.True(t, said, "spreadsheet programs write the separator first")
	require.Equal(t, byte('|'), sep)
}

// What is written with quotes where they are due is read back, with any separator.
func TestCSVRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		sep := rapid.SampledFrom([]byte(separators)).Draw(t, "separator")
		end := rapid.SampledFrom([]string{"\n", "\r\n"}).Draw(t, "end")
		rows := rapid.SliceOfN(rapid.SliceOfN(rapid.StringMatching(`[a-z ",;|0-9/äß]{0,12}`), 2, 6), 1, 8).Draw(t, "rows")
		var b strings.Builder
		for _, r := range rows {
			for i, f := range r {
				if i > 0 {
					b.WriteByte(sep)
				}
				b.WriteString(`"` + strings.ReplaceAll(f, `"`, `""`) + `"`)
			}
			b.WriteString(end)
		}
		require.Equal(t, rows, split(b.String(), sep))
	})
}

var pages = map[string]encoding.Encoding{
	"UTF-8": encoding.Nop, "UTF-16 LE with mark": unicode.UTF16(unicode.LittleEndian, unicode.UseBOM), "UTF-16 BE with mark": unicode.UTF16(unicode.BigEndian, unicode.UseBOM),
	"UTF-16 LE": unicode.UTF16(unicode.LittleEndian, unicode.IgnoreBOM), "Windows-1252": charmap.Windows1252,
}

// A cart reads the same in every encoding that holds its letters, with every separator,
// and with a decimal comma or point.
func TestEncodingSeparatorAndDecimalSignDoNotMatter(t *testing.T) {
	names := []string{"UTF-8", "UTF-16 LE with mark", "UTF-16 BE with mark", "UTF-16 LE", "Windows-1252"}
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom(names).Draw(t, "encoding")
		sep := rapid.SampledFrom([]string{";", "\t", "|", ","}).Draw(t, "separator")
		sign := rapid.SampledFrom([]string{",", "."}).Draw(t, "sign")
		thousand := map[string][]string{",": {"", ".", " "}, ".": {"", ",", " "}}[sign]
		group := rapid.SampledFrom(thousand).Draw(t, "thousands")
		price := rapid.IntRange(1, 99_999).Draw(t, "price")
		cents := rapid.IntRange(0, 99).Draw(t, "cents")
		whole := digits(price)
		if len(whole) > 3 {
			whole = whole[:len(whole)-3] + group + whole[len(whole)-3:]
		}
		field := whole + sign + twoDigits(cents)
		text := strings.Join([]string{"Bezeichnung", "Menge", "Preis EUR"}, sep) + "\n" +
			strings.Join([]string{`"Schlauchtülle G 3/4 AG größer"`, "3", `"` + field + `"`}, sep) + "\n"
		data, err := pages[name].NewEncoder().Bytes([]byte(text))
		require.NoError(t, err)
		c, err := Read("cart.csv", data, Options{})
		require.NoError(t, err)
		require.Len(t, c.Lines, 1)
		l := c.Lines[0]
		require.Equal(t, "Schlauchtülle G 3/4 AG größer", l.Text)
		require.Equal(t, "3", l.Amount.String())
		want, _ := decimalText(digits(price) + "." + twoDigits(cents))
		require.Equal(t, want, l.Price, field)
		require.Equal(t, "EUR", l.Currency)
	})
}

func digits(n int) string {
	if n < 10 {
		return string(rune('0' + n))
	}
	return digits(n/10) + digits(n%10)
}

func twoDigits(n int) string { return digits(n/10) + digits(n%10) }

func TestCodePagesAreFoundByTheirLetters(t *testing.T) {
	for why, row := range map[string]struct {
		page *charmap.Charmap
		text string
	}{
		"German":              {charmap.Windows1252, "Schlauchtülle größer"},
		"French":              {charmap.Windows1252, "Té mâle à visser, pièce"},
		"Polish":              {charmap.Windows1250, "złączka wąż śrubunek, gwint zewnętrzny, wąż średni"},
		"Russian":             {charmap.Windows1251, "штуцер латунный, наружная резьба"},
		"a foot and an inch²": {charmap.Windows1252, "12 cm² Ø 19"},
	} {
		t.Run(why, func(t *testing.T) {
			data, err := row.page.NewEncoder().Bytes([]byte(row.text))
			require.NoError(t, err)
			text, label, err := decode(data, "")
			require.NoError(t, err)
			require.Equal(t, row.text, text)
			require.NotEmpty(t, label, "a guess is said")
		})
	}
	data, err := charmap.Windows1250.NewEncoder().Bytes([]byte("č, ř, ů"))
	require.NoError(t, err)
	text, _, err := decode(data, "windows-1250")
	require.NoError(t, err)
	require.Equal(t, "č, ř, ů", text, "a person may say it")
}

func TestWhatIsNoTextIsRefused(t *testing.T) {
	for why, row := range map[string]struct {
		data   string
		o      Options
		reason string
	}{
		"nothing":                      {"", Options{}, "empty"},
		"blanks":                       {" \n\t\n", Options{}, "empty"},
		"zero bytes":                   {"a\x00b\x00\x00c,1\n", Options{}, "zero bytes"},
		"control characters":           {"\x01\x02\x03\x04 a,1\n", Options{}, "control characters"},
		"UTF-32":                       {"\xff\xfe\x00\x00a\x00\x00\x00", Options{}, "UTF-32"},
		"an encoding nobody knows":     {"a,1\n", Options{Encoding: "latin-99"}, "no encoding"},
		"a PDF":                        {"%PDF-1.7\n", Options{}, "PDF"},
		"a page that calls itself XLS": {"<html><table><tr><td>a", Options{}, "web page"},
		"an old workbook":              {"\xd0\xcf\x11\xe0\xa1\xb1\x1a\xe1", Options{}, "old XLS"},
		"a picture":                    {"\x89PNG\r\n", Options{}, "picture"},
		"a row without an end":         {strings.Repeat("a,", 400) + "\n", Options{}, "columns"},
		"a cell without an end":        {"Description,Qty\n" + strings.Repeat("a", 40_000) + ",1\n", Options{}, "characters"},
		"a catalogue":                  {"Description,Qty\n" + strings.Repeat("a,1\n", maxRows+5), Options{}, "rows"},
		"headings and no line":         {"Description,Qty\n", Options{}, "no line"},
	} {
		t.Run(why, func(t *testing.T) {
			_, err := Read("cart.csv", []byte(row.data), row.o)
			var re *ReadError
			require.ErrorAs(t, err, &re)
			require.Contains(t, re.Reason, row.reason)
			require.NotEmpty(t, re.Remedy, "a refusal says what to do")
			require.Contains(t, err.Error(), "cart.csv")
		})
	}
	_, err := Read("cart.csv", make([]byte, maxFile+1), Options{})
	require.ErrorContains(t, err, "larger than 16 MB")
}

// Quotes that never close cost no more than the file is long.
func TestStrayQuotesStayCheap(t *testing.T) {
	text := "Description,Qty\n" + strings.Repeat(`"a,"b,"c,1`+"\n", 19_000)
	c, err := Read("cart.csv", []byte(text), Options{})
	require.NoError(t, err)
	require.NotEmpty(t, c.Lines)
}

// What a terminal would obey is taken out of every text.
func TestTextsAreSafeToPrint(t *testing.T) {
	c, err := Read("cart.csv", []byte("Description,Qty\n\"\x1b[31mred\u202egpj.exe\u200b\",1\n=HYPERLINK(1),1\n"), Options{})
	require.NoError(t, err)
	require.Equal(t, "[31mredgpj.exe", c.Lines[0].Text)
	require.Equal(t, "=HYPERLINK(1)", c.Lines[1].Text, "text stays text: nothing here is ever a formula")
}

func FuzzReadText(f *testing.F) {
	for _, seed := range []string{
		"Description,Qty,Price\nHose tail 1/2 NPT male,2,1.20\n", "sep=;\nBezeichnung;Menge\n\"1/2\" AG\";3 Stk\n", "\"\n\"\n\"", "\xff\xfea\x00,\x00",
		"Item\n2x Elbow\n1.5m hose\n", "Désignation\tQté\n\tTotal\t1 234,50\n",
	} {
		f.Add([]byte(seed), uint8(0))
	}
	f.Fuzz(func(t *testing.T, data []byte, how uint8) {
		o := Options{}
		if how%3 == 1 {
			o.Encoding = "windows-1250"
		}
		if how%5 == 1 {
			o.Columns = Columns{RoleText: "1", RoleQuantity: "2"}
		}
		c, err := Read("f", data, o)
		if err != nil {
			var re *ReadError
			require.ErrorAs(t, err, &re)
			return
		}
		for i := range c.Lines {
			l := &c.Lines[i]
			require.False(t, strings.ContainsFunc(l.Text, func(r rune) bool { return r < ' ' || r == 0x7f }), "%q", l.Text)
			require.True(t, l.Amount >= 0, "no quantity is below zero")
			require.NotEqual(t, "0", l.Price, "nothing is free")
			l.Quantity("pc", "1.00")
			l.Quantity("m", "")
		}
		again, err := Read("f", bytes.Clone(data), o)
		require.NoError(t, err)
		require.Equal(t, c, again, "the same bytes read the same")
	})
}

func TestAWrongSeparatorIsSaid(t *testing.T) {
	c, err := Read("c.csv", []byte("sep=;\nDescription,Qty\nElbow 1/2 NPT female,2\nTee 1/2 NPT female,1\n"), Options{})
	require.NoError(t, err)
	require.Equal(t, "2", c.Lines[0].Amount.String())
	require.Contains(t, strings.Join(c.Notes, "\n"), `says that ";" parts the columns, and it parts none`)
	c, err = Read("c.csv", []byte("Description^Qty\nElbow 1/2 NPT female^2\nTee 1/2 NPT female^1\n"), Options{})
	require.NoError(t, err)
	require.Contains(t, strings.Join(c.Notes, "\n"), `look parted by "^"`)
}
