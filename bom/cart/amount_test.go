package cart

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// lineOf reads a cart of one line.
func lineOf(t require.TestingT, text, quantity, unit string) *Line {
	data := "Description\tQty\tUnit\n" + text + "\t" + quantity + "\t" + unit + "\n"
	c, err := Read("c.csv", []byte(data), Options{})
	require.NoError(t, err)
	require.Len(t, c.Lines, 1)
	return &c.Lines[0]
}

// The forms are those of real parts lists (317 lines of 12 owners): 1pz, 1.5m, 2x,
// 3 ea, a coil, a pack of 10.
func TestHowMany(t *testing.T) {
	const tail = "Hose tail 1/2 NPT male x 13 mm barb"
	for why, row := range map[string]struct {
		text, quantity, unit string
		in                   string // how the build counts
		want                 string // "" if it is not known
	}{
		"a plain number":                         {tail, "3", "", "pc", "3"},
		"a number with its unit":                 {tail, "1pz", "", "pc", "1"},
		"each":                                   {tail, "3 ea", "", "pc", "3"},
		"times behind":                           {tail, "2x", "", "pc", "2"},
		"times before":                           {tail, "x2", "", "pc", "2"},
		"Japanese pieces":                        {tail, "2個", "", "pc", "2"},
		"three decimals that are noughts":        {tail, "2,000", "", "pc", "2"},
		"three decimals of a point":              {tail, "2.000", "Stk", "pc", "2"},
		"no number":                              {tail, "some", "", "pc", ""},
		"a question":                             {tail, "??", "", "pc", ""},
		"below nought":                           {tail, "-1", "", "pc", ""},
		"half a piece":                           {tail, "1.5", "", "pc", ""},
		"nothing said":                           {tail, "", "", "pc", ""},
		"times before the words":                 {"2x " + tail, "", "", "pc", "2"},
		"each before the words":                  {"3 ea " + tail, "", "", "pc", "3"},
		"pieces behind the words":                {tail + " (4 pcs)", "", "", "pc", "4"},
		"times behind the words":                 {tail + ", bronze x2", "", "", "pc", "2"},
		"the column is louder than the words":    {"2x " + tail, "5", "", "pc", "5"},
		"a size is no quantity":                  {"2 x 1/2 NPT nipple", "", "", "pc", ""},
		"a membrane's size is no quantity":       {"2.5 x 40 membrane element", "", "", "pc", ""},
		"a metric thread is no quantity":         {"Adaptor M22 x 1.5", "", "", "pc", ""},
		"a pack of ten":                          {"Bonded washer G 3/4, pack of 10", "2", "pack", "pc", "20"},
		"a pack of ten without unit":             {"Bonded washer G 3/4, pack of 10", "1", "", "pc", "10"},
		"a German pack":                          {"Dichtring G 3/4, 10er Pack", "1", "VE", "pc", "10"},
		"a French pack":                          {"Joint 3/4, lot de 5", "2", "lot", "pc", "10"},
		"an Italian pack":                        {"Guarnizione G 1/2, conf. 5 pz", "1", "conf", "pc", "5"},
		"two pieces of a pack of ten are packs":  {"Bonded washer G 3/4, pack of 10", "2", "pc", "pc", "20"},
		"twelve pieces are no packs of ten":      {"Bonded washer G 3/4, pack of 10", "12", "pc", "pc", "12"},
		"ten pieces of a pack of ten are either": {"Bonded washer G 3/4, pack of 10", "10", "pc", "pc", ""},
		"ten of a pack of ten are either":        {"Bonded washer G 3/4, pack of 10", "10", "", "pc", ""},
		"nylon 66 is no pack":                    {"Elbow 1/2 NPT female, PA 66", "1", "", "pc", "1"},
		"metres by the unit":                     {"Suction hose 19 mm", "5", "m", "m", "5"},
		"metres beside the number":               {"Suction hose 19 mm", "1.5m", "", "m", "1.5"},
		"metres with a comma":                    {"Saugschlauch 19 mm", "1,5 m", "", "m", "1.5"},
		"by the metre in words":                  {"Saugschlauch 19 mm, Meterware", "5", "", "m", "5"},
		"a coil":                                 {"Suction hose 19 mm, coil of 25 m", "2", "", "m", "50"},
		"a length at the end is how much":        {"Suction hose 19 mm 1.5m", "", "", "m", "1.5"},
		"centimetres":                            {"Suction hose 19 mm", "150", "cm", "m", "1.5"},
		"feet, 0.3048 m each":                    {"Suction hose 19 mm", "10", "ft", "m", "3.048"},
		"pieces of no length":                    {"Suction hose 19 mm", "2", "pc", "m", ""},
		"metres of a piece":                      {tail, "2", "m", "pc", ""},
		"rolls of tape are counted":              {"PTFE tape 12 mm x 12 m", "2", "roll", "roll", "2"},
	} {
		t.Run(why, func(t *testing.T) {
			q, _, doubt := lineOf(t, row.text, row.quantity, row.unit).Quantity(row.in, "")
			if row.want == "" {
				require.NotEmpty(t, doubt, "got %s", q)
				return
			}
			require.Empty(t, doubt)
			require.Equal(t, row.want, q.String())
		})
	}
}

// The price tells pieces from packs where the words do not.
func TestThePriceTellsPiecesFromPacks(t *testing.T) {
	for why, row := range map[string]struct{ price, want string }{
		"the price of one":     {"0.85", "10"},
		"the price of a pack":  {"8.50", "100"},
		"the price of neither": {"3.00", ""},
	} {
		l := &Line{Counted: true, Amount: 10_000, Unit: "pc", Pack: 10_000, Price: row.price}
		q, _, doubt := l.Quantity("pc", "0.85")
		require.Equal(t, row.want == "", doubt != "", why)
		if doubt == "" {
			require.Equal(t, row.want, q.String(), why)
		}
	}
}

func TestWhatTheWordsLoseIsNoEnd(t *testing.T) {
	for text, want := range map[string]string{
		"2x Hose tail 1/2 NPT male":          "Hose tail 1/2 NPT male",
		"Washer G 3/4, pack of 10":           "Washer G 3/4",
		"Adaptor M22 x 1.5":                  "Adaptor M22 x 1.5",
		"2.5 x 40 element":                   "2.5 x 40 element",
		"Elbow 1/2 NPT female 12.50 EUR":     "Elbow 1/2 NPT female",
		"Adaptor 1/2 NPT x 9/16-18 JIC (x2)": "Adaptor 1/2 NPT x 9/16-18 JIC",
	} {
		require.Equal(t, want, withoutQuantity(text), text)
	}
}

func TestPricesThatAreUnknownAreNotFree(t *testing.T) {
	for why, row := range map[string]struct{ price, want, currency string }{
		"nought":               {"0,00", "", ""},
		"a question":           {"??", "", ""},
		"on request":           {"auf Anfrage", "", ""},
		"a blank":              {"", "", ""},
		"below nought":         {"-3,00", "", ""},
		"a percentage":         {"15 %", "", ""},
		"two numbers":          {"1,00 - 2,00", "", ""},
		"a sign":               {"€ 6,35", "6.35", "EUR"},
		"a code":               {"6,35 CHF", "6.35", "CHF"},
		"a sign of several":    {"$6.35", "6.35", ""},
		"thousands":            {"1.240,50 EUR", "1240.5", "EUR"},
		"more than it can say": {"9999999999999999999999", "", ""},
	} {
		c, err := Read("c.csv", []byte("Bezeichnung\tMenge\tPreis\nBogen 1/2 NPT\t1\t"+row.price+"\n"), Options{})
		require.NoError(t, err)
		require.Equal(t, row.want, c.Lines[0].Price, why)
		require.Equal(t, row.currency, c.Lines[0].Currency, why)
	}
}

func TestLinesThatStayOut(t *testing.T) {
	for why, row := range map[string]struct{ text, quantity, price, remark, out string }{
		"nought":           {"Elbow 1/2 NPT", "0", "2.00", "", "quantity is 0"},
		"struck out":       {"~~Elbow 1/2 NPT~~", "1", "2.00", "", "struck out"},
		"not wanted":       {"Elbow 1/2 NPT", "1", "2.00", "unneeded", "not wanted"},
		"not wanted (de)":  {"Bogen 1/2 NPT", "1", "2.00", "entfällt", "not wanted"},
		"aboard":           {"Elbow 1/2 NPT", "1", "have", "", "aboard"},
		"aboard (fr)":      {"Coude 1/2 NPT", "1", "2.00", "déjà à bord", "aboard"},
		"a sum":            {"Total", "", "12.00", "", "sum"},
		"net, Italian":     {"Imponibile", "", "12.00", "", "sum"},
		"base, Italian":    {"Base imponibile", "", "12.00", "", "sum"},
		"net and sign":     {"Totale imponibile EUR", "", "12.00", "", "sum"},
		"document":         {"Totale documento", "", "12.00", "", "sum"},
		"net, Spanish":     {"Total base imponible", "", "12.00", "", "sum"},
		"to pay, Spanish":  {"Importe total", "", "12.00", "", "sum"},
		"net, French":      {"Total H.T.", "", "12.00", "", "sum"},
		"base, French":     {"Base HT", "", "12.00", "", "sum"},
		"net, Portuguese":  {"Incidência", "", "12.00", "", "sum"},
		"base, Portuguese": {"Base de incidência", "", "12.00", "", "sum"},
		"subtotal (pt)":    {"Subtotal s/ IVA", "", "12.00", "", "sum"},
		"net, German":      {"Nettobetrag", "", "12.00", "", "sum"},
		"whole, German":    {"Endbetrag", "", "12.00", "", "sum"},
		"net, Dutch":       {"Totaal excl. btw", "", "12.00", "", "sum"},
		"to pay, Dutch":    {"Te betalen", "", "12.00", "", "sum"},
		"net, Swedish":     {"Nettobelopp", "", "12.00", "", "sum"},
		"to pay, Swedish":  {"Att betala", "", "12.00", "", "sum"},
		"net, Danish":      {"Beløb ekskl. moms", "", "12.00", "", "sum"},
		"to pay, Polish":   {"Do zapłaty", "", "12.00", "", "sum"},
		"net, English":     {"Net total", "", "12.00", "", "sum"},
		"a sum (es)":       {"Base imponible", "", "12.00", "", "sum"},
		"carriage":         {"Shipping", "1", "12.00", "", "sum"},
		"a part counts":    {"Elbow 1/2 NPT", "1", "2.00", "blue", ""},
		"total flow":       {"Total flow meter 1/2 NPT", "1", "2.00", "", ""},
	} {
		c, err := Read("c.csv", []byte("Description\tQty\tPrice\tRemark\n"+row.text+"\t"+row.quantity+"\t"+row.price+"\t"+row.remark+"\n"), Options{})
		require.NoError(t, err)
		if row.out == "" {
			require.Empty(t, c.Lines[0].Out, why)
			continue
		}
		require.Contains(t, c.Lines[0].Out, row.out, why)
	}
}

func TestQuantitiesAddUp(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 500).Draw(t, "n")
		pack := rapid.IntRange(2, 50).Draw(t, "pack")
		l := lineOf(t, "Washer G 3/4, pack of "+digits(pack), digits(n), "pack")
		q, _, doubt := l.Quantity("pc", "")
		require.Empty(t, doubt)
		require.Equal(t, digits(n*pack), q.String())
	})
}
