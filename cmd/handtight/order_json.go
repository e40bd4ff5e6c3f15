package main

import (
	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/money"
)

type orderFacts struct {
	Lines    []lineFacts   `json:"lines"`
	Vendors  []vendorFacts `json:"vendors"`
	Total    string        `json:"total"`
	Currency string        `json:"currency"`
	Unpriced int           `json:"unpriced_lines"`
}

type lineFacts struct {
	Item     string  `json:"item"`
	About    string  `json:"about"`
	Ends     string  `json:"ends"`
	Vendor   string  `json:"vendor"`
	Code     string  `json:"code"`
	Placed   number  `json:"placed"`
	Need     number  `json:"need"`
	Have     number  `json:"have"`
	Spare    number  `json:"spare"`
	WhySpare string  `json:"why_spare"`
	Order    number  `json:"order"`
	Unit     string  `json:"unit"`
	Pack     number  `json:"pack"`
	Price    *string `json:"price"`
	Currency string  `json:"currency"`
	Total    *string `json:"total"`
	Joints   []int   `json:"joints"`
	Question string  `json:"question,omitempty"`
}

type vendorFacts struct {
	Vendor   string `json:"vendor"`
	Goods    string `json:"goods"`
	Freight  string `json:"freight"`
	Customs  string `json:"customs"`
	Tax      string `json:"tax"`
	Total    string `json:"total"`
	Currency string `json:"currency"`
	InBuild  string `json:"total_in_build_currency"`
}

func orderFactsOf(sys *bom.System, o *bom.Order) orderFacts {
	f := orderFacts{Lines: []lineFacts{}, Vendors: []vendorFacts{}, Total: o.Total.Number(), Currency: sys.Build.Currency, Unpriced: o.Unpriced}
	for _, l := range o.Lines {
		f.Lines = append(f.Lines, lineFactsOf(l))
	}
	for _, v := range o.Vendors {
		s := v.Sums
		f.Vendors = append(f.Vendors, vendorFacts{
			v.Vendor.ID, s.Goods.Number(), s.Freight.Number(), s.Customs.Number(), s.Tax.Number(), s.Total.Number(),
			v.Vendor.Currency, v.InBuild.Number(),
		})
	}
	return f
}

func lineFactsOf(l *bom.Line) lineFacts {
	n := l.Need
	f := lineFacts{
		Item: n.Key, About: n.About, Placed: quantity(n.Placed), Need: quantity(n.Build()), Have: quantity(n.Have),
		Spare: quantity(n.Spare), WhySpare: n.WhySpare(), Order: quantity(l.Order), Unit: n.Unit, Pack: quantity(money.Piece),
		Joints: n.Joints, Question: n.Question,
	}
	if f.Joints == nil {
		f.Joints = []int{}
	}
	if n.Item != nil {
		f.Ends = n.Item.Ends()
	}
	if o := l.Offer; o != nil {
		f.Vendor, f.Code, f.Pack, f.Currency = o.Vendor.ID, o.Code, quantity(o.Pack), o.Vendor.Currency
		if o.Price != nil {
			price := o.Price.Number()
			f.Price = &price
		}
	}
	if l.Total != nil {
		total := l.Total.Number()
		f.Total = &total
	}
	return f
}

// quantity is pieces or metres.
func quantity(q money.Quantity) number { return known(float64(q) / float64(money.Piece)) }

// amount writes a sum with its currency: "12.50 EUR".
func amount(a currency.Amount) string { return a.Number() + " " + a.CurrencyCode() }
