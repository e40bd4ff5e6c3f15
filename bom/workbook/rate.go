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
	aboutColumn = 6

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
	var shops []*countedShop
	for i := range b.c.shops {
		if b.c.shops[i].Currency != "" {
			shops = append(shops, &b.c.shops[i])
		}
	}
	s.positive(at(rateColumn, rateHeadRow+1) + ":" + at(termTax, rateHeadRow+len(b.rates)+max(len(shops), 1)))
	about := "What one of each money costs in " + b.c.Currency
	if b.c.RatesDate != "" {
		about += " on " + b.c.RatesDate
	}
	s.title("Rates and terms, findings, what to ask, and what it makes", about+"; customs are on goods and freight, tax on these and the customs. The straw-coloured cells are yours.")
	s.head()
	rows := rateRows{s, b.st.id(wordsLook), b.st.id(look{border: true, right: true, format: rateFormat})}
	for i, r := range b.rates {
		rows.rate(r, i == 0)
	}
	for _, sh := range shops {
		rows.terms(sh)
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
	return s.finish()
}

// rateRows writes the rows of rates and terms.
type rateRows struct {
	*sheet
	words, given int // styles: of words, and of a figure that is not the buyer's to change
}

// rate writes the row of one money.
func (s *rateRows) rate(r Rate, own bool) {
	s.empty()
	s.text(0, s.b.st.id(strongLook), r.Currency)
	if own {
		s.number(rateColumn, s.given, 1)
		s.text(aboutColumn, s.words, "The build's own money.")
	} else {
		s.number(rateColumn, s.straws(rateFormat), textToCell(r.Rate))
	}
	s.endRow("rate|"+r.Currency, rowHeight(1, fontSize))
}

// terms writes the row of what one shop asks, and the border for its goods.
func (s *rateRows) terms(sh *countedShop) {
	s.empty()
	money := s.straws(moneyFormat(sh.Currency, int(sh.digits)))
	s.text(0, s.b.st.id(strongLook), sh.label())
	s.formula(termRate, s.given, fixed(rateColumn, s.b.rateRow(sh.Currency)), textToCell(sh.rate))
	s.number(termFreight, money, toCell(sh.Freight))
	if sh.FreeFrom.IsZero() {
		s.text(termFree, money, "")
	} else {
		s.number(termFree, money, toCell(sh.FreeFrom))
	}
	s.number(termCustoms, s.straws(percentFormat), textToCell(sh.Customs))
	s.number(termTax, s.straws(percentFormat), textToCell(sh.Tax))
	s.text(aboutColumn, s.words, sh.Name)
	s.endRow("terms|"+clean(sh.ID), rowHeight(max(s.tallest(aboutColumn, sh.Name, 1), s.tallest(0, sh.label(), 1)), fontSize))
}

// empty writes every cell of a row empty, so that all of it has its borders.
func (s *rateRows) empty() {
	for i := range s.own {
		s.text(i, s.words, "")
	}
}

// straws is the style of a figure that the buyer may type over.
func (s *rateRows) straws(format string) int {
	return s.b.st.id(look{border: true, right: true, typed: true, fill: typedFill, format: format})
}
