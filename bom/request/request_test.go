package request_test

import (
	"bytes"
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/order"
	"handtight/bom/read"
	"handtight/bom/request"
)

func plant(t *testing.T, path string) (*bom.System, *order.Order) {
	b, faults := bom.Read(path)
	require.Empty(t, faults)
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	o, err := sys.Order()
	require.NoError(t, err)
	return sys, o
}

// What a shop is asked for buys the build: the cart of each language is read back as
// covering everything, with no question.
func TestTheTablesAreCartsThatBuildIt(t *testing.T) {
	sys, o := plant(t, "../../testdata/clean/build.toml")
	for _, language := range request.Languages() {
		t.Run(language, func(t *testing.T) {
			var carts []*cart.Cart
			for _, v := range o.Vendors {
				r, err := request.Of(sys.Build, o, v.Vendor.ID, language)
				require.NoError(t, err)
				var b bytes.Buffer
				require.NoError(t, r.CSV(&b))
				c, err := cart.Read(v.Vendor.ID+".csv", b.Bytes(), cart.Options{})
				require.NoError(t, err)
				require.Len(t, c.Lines, len(r.Lines), "no line is lost")
				carts = append(carts, c)
			}
			report := cart.Judge(sys, o, carts, nil)
			require.True(t, report.Builds())
			require.Empty(t, report.Questions)
			for _, v := range report.Lines {
				require.Equal(t, cart.Covers, v.Status, "%s: %s", v.Line.Text, v.Reason)
			}
			for _, x := range report.Items {
				require.Equal(t, cart.Covered, x.Status, "%s: %s", x.Item, x.Reason)
			}
		})
	}
}

func TestTextForAMail(t *testing.T) {
	sys, o := plant(t, "../../testdata/clean/build.toml")
	r, err := request.Of(sys.Build, o, "elbe", "de")
	require.NoError(t, err)
	var b strings.Builder
	require.NoError(t, r.Text(&b, false))
	require.Contains(t, b.String(), "Bitte liefern Sie:")
	require.Contains(t, b.String(), "1 Stk  NV-38-200     Nadelventil, 3/8-18 NPT IG x 3/8-18 NPT IG, 1.4401 (316)")
	require.Contains(t, b.String(), "Verbunddichtring G 3/4, VE 10")
	require.NotContains(t, b.String(), "EUR", "no price unless it is wanted")
	b.Reset()
	require.NoError(t, r.Text(&b, true))
	require.Contains(t, b.String(), "Summe: 560,50 EUR")
	require.Contains(t, b.String(), "zulässig 200 bar  118,00 EUR")

	b.Reset()
	r, err = request.Of(sys.Build, o, "elbe", "")
	require.NoError(t, err)
	require.NoError(t, r.Text(&b, false))
	require.Contains(t, b.String(), "Please supply:", "a shop without a language is asked in English")
	require.Contains(t, b.String(), "needle valve, 3/8-18 NPT female x 3/8-18 NPT female, 316")
	require.Contains(t, b.String(), "Please confirm price, delivery, threads, material and allowable pressure")
}

func TestWhatIsNotKnownIsRefused(t *testing.T) {
	sys, o := plant(t, "../../testdata/clean/build.toml")
	_, err := request.Of(sys.Build, o, "nobody", "")
	require.ErrorContains(t, err, "write one of elbe, pier, wharf")
	_, err = request.Of(sys.Build, o, "elbe", "xx")
	require.ErrorContains(t, err, "write one of en, de, fr, es, it, nl")
}

const small = `
[build]
name = "Small"
currency = "EUR"
[[vendor]]
id = "v"
name = "V"
currency = "EUR"
language = "fr"
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '3/4 BSP male', b = '19 mm barb' }
material = "unobtainium"
[[item]]
id = "odd"
kind = "passage"
ports = { a = 'G 1/2 male', b = 'G 1/2 male' }
open = [["a", "b"]]
[[item]]
id = "hull"
kind = "through-hull"
ports = { inboard = '19 mm barb' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "19 mm"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[run]]
name = "r"
path = ["hull", "hose", "tail"]
[[offer]]
item = "tail"
vendor = "v"
code = "=1+1"
price = "2.00"
[[offer]]
item = "stock"
vendor = "v"
price = "3.00"
per = "m"
`

// What must be asked stands last with its question; a word that the table lacks stays
// English in brackets; a code that a spreadsheet would reckon is no formula.
func TestQuestionsWordsAndFormulas(t *testing.T) {
	b, faults := read.Parse("small.toml", []byte(strings.Replace(small, "[[item]]\nid = \"odd\"\nkind = \"passage\"\nports = { a = 'G 1/2 male', b = 'G 1/2 male' }\nopen = [[\"a\", \"b\"]]\n", "", 1)))
	require.Empty(t, faults)
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	o, err := sys.Order()
	require.NoError(t, err)
	r, err := request.Of(sys.Build, o, "v", "")
	require.NoError(t, err)
	require.NotEmpty(t, r.Lines)
	last := r.Lines[len(r.Lines)-1]
	require.Contains(t, last.Ask, "parallel (G) or taper (R)")
	var text strings.Builder
	require.NoError(t, r.Text(&text, false))
	require.Contains(t, text.String(), "À préciser :")
	require.Less(t, strings.Index(text.String(), "tuyau au mètre"), strings.Index(text.String(), "À préciser :"))
	require.Greater(t, strings.Index(text.String(), "embout cannelé"), strings.Index(text.String(), "À préciser :"))
	require.Contains(t, text.String(), "unobtainium")

	var table bytes.Buffer
	require.NoError(t, r.CSV(&table))
	require.True(t, bytes.HasPrefix(table.Bytes(), []byte("\xef\xbb\xbf")), "spreadsheets know UTF-8 by its mark")
	in := csv.NewReader(bytes.NewReader(table.Bytes()[3:]))
	in.Comma = ';'
	rows, err := in.ReadAll()
	require.NoError(t, err)
	require.Equal(t, []string{"Référence", "Désignation", "Quantité", "Unité", "Prix unitaire EUR", "Montant EUR"}, rows[0])
	for _, row := range rows[1:] {
		for _, cell := range row {
			require.NotContains(t, "=+-@", cell[:min(1, len(cell))]+"\x00", "%q would be reckoned", cell)
		}
	}
	require.Equal(t, "'=1+1", rows[len(rows)-1][0])
	c, err := cart.Read("v.csv", table.Bytes(), cart.Options{})
	require.NoError(t, err)
	require.Equal(t, "=1+1", c.Lines[len(c.Lines)-1].Code, "the guard is taken off again")
}
