package workbook

import "slices"

// The rates sheet.
const (
	rateColumn  = 1 // the rate that the sums use
	rateHeadRow = 3
	rateFormat  = "0.00########"
)

var rateColumns = slices.Concat([]column{
	{title: "One", width: 10},
	{title: "Rate, used by the sums", width: 18},
	{title: "Rate in the build file", width: 18},
	{title: "What to do with it", width: 60},
}, hiddenColumns)

// ownRates lists the rates as the sheet shows them: the build's currency first.
func (c *counted) ownRates() []Rate {
	out := []Rate{{Currency: c.Currency, Rate: "1"}}
	for _, r := range c.Rates {
		if r.Currency != c.Currency {
			out = append(out, r)
		}
	}
	return out
}

// rateRow gives the row of a currency's rate; count has seen that it is there.
func (b *book) rateRow(code string) int {
	i := slices.IndexFunc(b.rates, func(r Rate) bool { return r.Currency == code })
	return rateHeadRow + 1 + i
}

// rateSheet writes the cells that every conversion looks up.
func (b *book) rateSheet() error {
	s := b.newSheet(ratesName, rateColumns, frame{tab: quietColor, headRow: rateHeadRow, repeat: rateHeadRow, locked: true})
	s.positive(span(rateColumn, rateHeadRow+1, rateHeadRow+len(b.rates)))
	about := "What one of each currency costs in " + b.c.Currency + "."
	if b.c.RatesDate != "" {
		about = "What one of each currency cost in " + b.c.Currency + " on " + b.c.RatesDate + "."
	}
	s.title("Rates", about)
	s.head()
	words, given := b.st.id(wordsLook), b.st.id(look{border: true, right: true, format: rateFormat})
	typed := b.st.id(look{border: true, right: true, typed: true, fill: typedFill, format: rateFormat})
	for i, r := range b.rates {
		s.text(0, b.st.id(strongLook), r.Currency)
		if i == 0 {
			s.number(rateColumn, given, 1)
			s.number(2, given, 1)
			s.text(3, words, "The build's own currency.")
		} else {
			s.number(rateColumn, typed, textToCell(r.Rate))
			s.number(2, given, textToCell(r.Rate))
			s.text(3, words, "Type today's rate into the straw-coloured cell: every total follows.")
			s.keys(kindRate, "", r.Currency, r.Rate)
		}
		s.endRow(15)
	}
	return s.finish()
}
