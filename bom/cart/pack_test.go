package cart

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// How shops say how many are in one, and by what it is sold.
func TestPacksPairsAndFeet(t *testing.T) {
	for why, row := range map[string]struct {
		line string // text, quantity
		unit string
		want string
	}{
		"a pair":                 {"Hose tails G 3/4 male x 19 mm (pair)\t2", "pc", "4"},
		"a set of two":           {"Hose tails G 3/4 male x 19 mm, set of 2\t2", "pc", "4"},
		"set to a pressure":      {"Relief valve 1/4 NPT male, set 65 bar\t2", "pc", "2"},
		"a set pressure":         {"Relief valve, set of 65 bar\t2", "pc", "2"},
		"a pack of ten":          {"Clamp 16-27, pack of 10\t3", "pc", "30"},
		"a box in French":        {"Colliers 16-27 mm, boîte de 25\t2", "pc", "50"},
		"a bag in Spanish":       {"Abrazadera 16-27 mm, bolsa de 10\t3", "pc", "30"},
		"pieces a pack, German":  {"Schlauchschelle 11-20 mm, 10 Stück/VE\t1", "pc", "10"},
		"by the foot":            {"Suction hose 3/4 inch ID, sold per foot\t10", "m", "3.048"},
		"by the metre":           {"Suction hose 19 mm, per metre\t5", "m", "5"},
		"a coil of ten metres":   {"Suction hose 19 mm, 10 m coil\t2", "m", "20"},
		"a roll of thirty feet":  {"Suction hose 19 mm, 30 ft roll\t1", "m", "9.144"},
		"pieces where none says": {"Elbow 1/2 NPT female\t3", "pc", "3"},
	} {
		c, err := Read("c.csv", []byte("Description\tQty\n"+row.line+"\n"), Options{})
		require.NoError(t, err, why)
		q, _, doubt := c.Lines[0].Quantity(row.unit, "")
		require.Empty(t, doubt, why)
		require.Equal(t, row.want, q.String(), why)
	}
}

// Whose a price is, of one or of the line, is told by the sum; else it is kept open.
func TestWhosePriceItIs(t *testing.T) {
	for why, row := range map[string]struct {
		cart, price, whose string
	}{
		"the sum is that of the lines": {"Description\tQty\tPrice\nElbow\t4\t8.00\nTee\t1\t3.00\nTotal\t\t11.00\n", "2", ""},
		"the sum is that of the units": {"Description\tQty\tPrice\nElbow\t4\t8.00\nTee\t1\t3.00\nTotal\t\t35.00\n", "8", ""},
		"there is no sum":              {"Description\tQty\tPrice\nElbow\t4\t8.00\nTee\t1\t3.00\n", "8", "Price"},
		"the heading says of one":      {"Description\tQty\tUnit price\nElbow\t4\t8.00\n", "8", ""},
		"all are bought once":          {"Description\tQty\tPrice\nElbow\t1\t8.00\n", "8", ""},
	} {
		c, err := Read("c.csv", []byte(row.cart), Options{})
		require.NoError(t, err, why)
		require.Equal(t, row.price, c.Lines[0].Price, why)
		require.Equal(t, row.whose, c.Lines[0].whose, why)
	}
}

// What no heading names is found by what its cells look like, and said.
func TestColumnsByWhatTheirCellsLookLike(t *testing.T) {
	for why, row := range map[string]struct{ cart, text, code, note string }{
		"an odd heading over the descriptions": {"Wofür,Qty,Price\nHose tail G 3/4 male x 19 mm,2,1.00\nElbow 1/2 NPT female,1,2.00\n", "Hose tail G 3/4 male x 19 mm", "", "taken for a description"},
		"two headings that both name parts":    {"Item,Description,Qty\nA-11,Elbow 1/2 NPT female,1\nB-12,Tee 1/2 NPT female,2\n", "Elbow 1/2 NPT female", "A-11", "taken for the shop's code"},
		"a second description":                 {"Description,Zubehör,Qty\nElbow,1/2 NPT female brass,1\nTee,1/4 NPT female brass,2\n", "Elbow, 1/2 NPT female brass", "", "taken for a description"},
	} {
		c, err := Read("c.csv", []byte(row.cart), Options{})
		require.NoError(t, err, why)
		require.Len(t, c.Lines, 2, why)
		require.Equal(t, row.text, c.Lines[0].Text, why)
		require.Equal(t, row.code, c.Lines[0].Code, why)
		require.Contains(t, c.Notes[0], row.note, why)
	}
}

// Numbers of columns lose no line, whatever stands in the rows.
func TestColumnNumbersLoseNoLine(t *testing.T) {
	data := []byte("1,Elbow 1/2 NPT female,2\n2,Price list tee 1/2 NPT female,3\n3,Nipple 1/2 NPT male,1\n")
	c, err := Read("c.csv", data, Options{Columns: Columns{RoleText: "2", RoleQuantity: "3"}})
	require.NoError(t, err)
	require.Len(t, c.Lines, 3)
	c, err = Read("c.csv", append([]byte("Nr,Was,Wieviel\n"), data...), Options{Columns: Columns{RoleText: "2", RoleQuantity: "3"}})
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(c.Lines), 3)
}
