package workbook

import (
	"handtight/bom/facts"
	"handtight/bom/finding"
)

// The columns of the sheet of rates, and of the shops' terms under them.
const (
	rateColumn  = 1 // the rate that the sums use
	termRate    = 1
	termFreight = 2
	termFree    = 3
	termCustoms = 4
	termTax     = 5

	rateHeadRow = 3
	rateFormat  = "0.00########"
	// percentFormat shows 5 as 5 %; the number stays what the build file says.
	percentFormat = `General\ "%"`
)

// rateColumns are wide enough together for a sheet upright. What stands under the rates takes
// several of them for a cell of its own.
var rateColumns = []column{
	{title: "Money, shop", width: 10}, {title: "Rate", width: 19.5}, {title: "Freight", width: 22.5}, {title: "Freight free from", width: 13},
	{title: "Customs", width: 9}, {title: "Tax", width: 9}, {title: answerTitle, width: 42},
}

// answerTitle heads the last column: what is to know of a rate, and further down the buyer's answers.
const answerTitle = "About, or your answer"

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
	for i, r := range b.rates {
		if r.Currency == code {
			return rateHeadRow + 1 + i
		}
	}
	return 0
}

// termsRow gives the row of a shop's terms.
func (b *book) termsRow(s *countedShop) int {
	row := rateHeadRow + 1 + len(b.rates)
	for i := range b.c.shops {
		if b.c.shops[i].Currency == "" {
			continue
		}
		if b.c.shops[i].Shop == s.Shop {
			break
		}
		row++
	}
	return row
}

// rateSheet writes the cells that every sum looks up: rates, and what shops and the border ask.
func (b *book) rateSheet() error {
	tab := quietColor
	if facts.Count(b.c.Findings, finding.Stop) > 0 {
		tab = stopColor
	}
	s := b.newSheet(ratesName, rateColumns, frame{tab: tab, freeze: rateHeadRow - 1, locked: true})
	shops := 0
	for i := range b.c.shops {
		if b.c.shops[i].Currency != "" {
			shops++
		}
	}
	s.positive(at(rateColumn, rateHeadRow+1) + ":" + at(termTax, rateHeadRow+len(b.rates)+max(shops, 1)))
	about := "What one of each money costs in " + b.c.Currency
	if b.c.RatesDate != "" {
		about += " on " + b.c.RatesDate
	}
	s.title("Rates and terms, findings, what to ask, and what it makes", about+"; customs are on goods and freight, tax on these and the customs. The straw-coloured cells are yours.")
	s.head()
	words, given := b.st.id(wordsLook), b.st.id(look{border: true, right: true, format: rateFormat})
	straw := func(format string) int {
		return b.st.id(look{border: true, right: true, typed: true, fill: typedFill, format: format})
	}
	blank := func() {
		for i := range s.own {
			s.text(i, words, "")
		}
	}
	for i, r := range b.rates {
		blank()
		s.text(0, b.st.id(strongLook), r.Currency)
		if i == 0 {
			s.number(rateColumn, given, 1)
			s.text(6, words, "The build's own money.")
		} else {
			s.number(rateColumn, straw(rateFormat), textToCell(r.Rate))
		}
		s.endRow("rate|"+r.Currency, rowHeight(1, fontSize))
	}
	for i := range b.c.shops {
		sh := &b.c.shops[i]
		if sh.Currency == "" {
			continue
		}
		blank()
		money := straw(moneyFormat(sh.Currency, int(sh.digits)))
		s.text(0, b.st.id(strongLook), sh.label())
		s.formula(termRate, given, fixed(rateColumn, b.rateRow(sh.Currency)), textToCell(sh.rate))
		s.number(termFreight, money, toCell(sh.Freight))
		if sh.FreeFrom.IsZero() {
			s.text(termFree, money, "")
		} else {
			s.number(termFree, money, toCell(sh.FreeFrom))
		}
		s.number(termCustoms, straw(percentFormat), textToCell(sh.Customs))
		s.number(termTax, straw(percentFormat), textToCell(sh.Tax))
		about := sh.Name
		s.text(6, words, about)
		s.endRow("terms|"+clean(sh.ID), rowHeight(max(s.tallest(6, about, 1), s.tallest(0, sh.label(), 1)), fontSize))
	}
	s.findings()
	s.questions()
	s.duty()
	if len(b.c.Joints)+len(b.c.Hoses) == 0 {
		s.rests()
	}
	if len(b.c.Test) == 0 { // else they stand with the leak test
		s.cautions()
	}
	if len(b.c.Test) == 0 {
		s.cautions()
	}
	return s.finish()
}
