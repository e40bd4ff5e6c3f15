package facts

import (
	"slices"
	"time"

	"github.com/bojanz/currency"

	"handtight/bom"
	"handtight/bom/money"
	"handtight/bom/order"
	"handtight/bom/request"
	"handtight/pressure"
)

// Money is an exact sum in JSON, as a decimal; null where it is not known.
type Money struct {
	Amount currency.Amount
	Known  bool
}

// MarshalJSON writes the decimal, or null.
func (m Money) MarshalJSON() ([]byte, error) {
	if !m.Known {
		return []byte("null"), nil
	}
	return []byte(`"` + m.Amount.Number() + `"`), nil
}

func moneyOf(a *currency.Amount) Money {
	if a == nil {
		return Money{}
	}
	return Money{*a, true}
}

// Sum is a known sum.
func Sum(a currency.Amount) Money { return Money{a, true} }

// Quantity is pieces, or metres of hose.
type Quantity money.Quantity

// String writes it without trailing zeros: "1.25".
func (q Quantity) String() string { return money.Quantity(q).String() }

// MarshalJSON writes it as a number.
func (q Quantity) MarshalJSON() ([]byte, error) { return []byte(q.String()), nil }

// Order is what must be bought, by line and by shop.
type Order struct {
	Lines    []Line  `json:"lines"`
	Shops    []Shop  `json:"vendors"`
	Total    Money   `json:"total"` // in the build's currency; lines without a price are not in it
	Currency string  `json:"currency"`
	Unpriced int     `json:"unpriced_lines"`
	Cheaper  *Plan   `json:"cheaper,omitempty"` // a plan of the command choose that costs less, landed
	Splits   []Split `json:"splits,omitempty"`  // lines that cost less divided between two offers, each by itself

	Unoffered []Line  `json:"-"` // lines that no shop is named for
	Spares    []Spare `json:"-"`
	Rates     []Rate  `json:"-"`
	RatesDate string  `json:"-"` // ISO date; "" where no rate is used
}

// Plan is another way to buy the order, that costs less.
type Plan struct {
	Total    Money    `json:"total"`
	Saves    Money    `json:"saves"`
	Percent  string   `json:"percent"`           // of the order's total: "14.2"
	Swaps    int      `json:"swaps"`             // alternatives that it takes
	Divided  []string `json:"divided,omitempty"` // items that it buys at more than one offer
	Proved   bool     `json:"proved"`            // no plan costs less
	Currency string   `json:"currency"`
}

// Split is a line bought at two offers: the whole order then costs Total, landed.
type Split struct {
	Item     string   `json:"item"`
	First    string   `json:"vendor"`
	Code     string   `json:"code"`
	AtFirst  Quantity `json:"quantity"`
	Second   string   `json:"other_vendor"`
	Other    string   `json:"other_code"`
	AtSecond Quantity `json:"other_quantity"`
	Total    Money    `json:"total"`
	Saves    Money    `json:"saves"`
}

// Line is one thing to order.
type Line struct {
	Item     string    `json:"item"`
	About    string    `json:"about"`
	Ends     string    `json:"ends"`
	Shop     string    `json:"vendor"`
	Code     string    `json:"code"`
	Placed   Quantity  `json:"placed"`
	Need     Quantity  `json:"need"` // placed, planned and extra
	Have     Quantity  `json:"have"`
	Spare    Quantity  `json:"spare"`
	WhySpare string    `json:"why_spare"`
	Order    Quantity  `json:"order"` // rounded up to packs
	Unit     string    `json:"unit"`
	Pack     Quantity  `json:"pack"`
	Price    Money     `json:"price"` // for one unit
	Currency string    `json:"currency"`
	Total    Money     `json:"total"`
	Joints   []int     `json:"joints"`
	Question string    `json:"question,omitempty"`
	Planned  Quantity  `json:"planned"`
	Extra    Quantity  `json:"extra"`
	Lead     string    `json:"lead"` // "14 days"; "" where it is not known
	Material string    `json:"material"`
	URL      string    `json:"url,omitempty"`    // the shop's page of it
	Words    string    `json:"words"`            // what a shop is asked for: ends, material, rating
	Share    int       `json:"share,omitempty"`  // of a line that is bought at several offers: which share this is, from 1
	Shares   int       `json:"shares,omitempty"` // and of how many; each share has its part of placed, need, have and spare
	Mark     string    `json:"-"`                // tells a second share at one shop from the first
	Sold     string    `json:"-"`                // the unit that the shop sells it by
	Named    bool      `json:"-"`                // it is an item of the build, and not what joints need
	Rest     Quantity  `json:"-"`                // of the spare, what cutting leaves over
	Sees     Sees      `json:"-"`                // what it must hold
	Holds    Allowable `json:"-"`
}

// Sees is what a line's parts see over all states.
type Sees struct {
	Normal, Worst Number // not known where nothing can push, or no pressure comes of it
	Raised        bool   // some state is worse than normal running
	Vacuum        bool   // no pressure, and a vacuum
	Rated         bool   // the line is of a thing that holds pressure
}

// Shop is one shop's part of the order.
type Shop struct {
	ID       string `json:"vendor"`
	Goods    Money  `json:"goods"`
	Freight  Money  `json:"freight"`
	Customs  Money  `json:"customs"`
	Tax      Money  `json:"tax"`
	Total    Money  `json:"total"`
	Currency string `json:"currency"`
	InBuild  Money  `json:"total_in_build_currency"`
	Name     string `json:"name"`
	Lines    []Line `json:"-"`

	CustomsRate string          `json:"-"` // percent as a decimal; "" for none
	TaxRate     string          `json:"-"`
	AskFreight  currency.Amount `json:"-"` // what the shop asks once anything is ordered
	FreeFrom    currency.Amount `json:"-"` // value of goods from which there is no freight; the zero value is never
}

// Spare is one reason for spares or planned changes of a line.
type Spare struct {
	Item, About, Rule string
	Fitted, Count     Quantity
	Why               string
}

// Rate is what one of a currency costs in the build's.
type Rate struct{ Currency, Rate string }

// OrderOf shows an order.
func OrderOf(sys *bom.System, o *order.Order) *Order {
	f := &Order{Lines: []Line{}, Shops: []Shop{}, Total: Sum(o.Total), Currency: sys.Build.Currency, Unpriced: o.Unpriced, Unoffered: lines(o.Unoffered())}
	f.Lines = append(f.Lines, lines(o.Bought())...)
	for _, l := range o.Lines {
		f.Spares = append(f.Spares, sparesOf(l.Need)...)
	}
	for _, v := range o.Vendors {
		f.Shops = append(f.Shops, shopOf(v))
	}
	for _, code := range sys.Build.Rates.Codes() {
		used := slices.ContainsFunc(o.Vendors, func(v *order.VendorOrder) bool { return v.Vendor.Currency == code })
		if rate, ok := sys.Build.Rates.Rate(code); ok && used {
			f.Rates, f.RatesDate = append(f.Rates, Rate{code, rate.Number()}), sys.Build.Rates.Date.Format(time.DateOnly)
		}
	}
	return f
}

func shopOf(v *order.VendorOrder) Shop {
	t := v.Vendor.Terms
	return Shop{
		ID: v.Vendor.ID, Name: v.Vendor.Name, Currency: v.Vendor.Currency, Goods: Sum(v.Sums.Goods), Freight: Sum(v.Sums.Freight),
		Customs: Sum(v.Sums.Customs), Tax: Sum(v.Sums.Tax), Total: Sum(v.Sums.Total), InBuild: Sum(v.InBuild), Lines: lines(v.Lines),
		CustomsRate: t.Customs.Number(), TaxRate: t.Tax.Number(), AskFreight: t.Freight, FreeFrom: t.FreeFrom,
	}
}

func lines(list []*order.Line) []Line {
	var out []Line
	for _, l := range list {
		out = append(out, lineOf(l))
	}
	return out
}

func lineOf(l *order.Line) Line {
	n := l.Need
	row := Line{
		Item: n.Key, About: n.About, Placed: Quantity(n.Placed), Need: Quantity(n.Build()), Have: Quantity(n.Have), Spare: Quantity(n.Spare),
		WhySpare: n.WhySpare(), Order: Quantity(l.Order), Unit: n.Unit, Pack: Quantity(money.Piece), Total: moneyOf(l.Total), Joints: n.Joints,
		Question: n.Question, Sold: n.Unit, Planned: Quantity(n.Planned), Extra: Quantity(n.Extra), Rest: Quantity(n.LeftOver()),
		Named: n.Item != nil, Words: request.Words(n), Sees: seesOf(n), Holds: AllowableOf(n.Allowable),
	}
	row.Share, row.Shares, _ = l.Number()
	row.Mark = l.Mark
	if row.Joints == nil {
		row.Joints = []int{}
	}
	if n.Item != nil {
		row.Ends, row.Material = n.Item.Ends(), n.Item.Material
	}
	if o := l.Offer; o != nil {
		row.URL = o.URL
		row.Shop, row.Code, row.Pack, row.Currency, row.Price = o.Vendor.ID, o.Code, Quantity(o.Pack), o.Vendor.Currency, moneyOf(o.Price)
		if o.Unit != "" {
			row.Sold = o.Unit
		}
		if o.Lead != nil {
			row.Lead = o.Lead.Calendar()
		}
	}
	return row
}

func seesOf(n *order.Need) Sees {
	worst, state := n.Load.Worst()
	x := Sees{Rated: n.Item != nil && !n.Item.Kind.Loose}
	switch {
	case state == nil:
	case pressure.Above(worst, 0):
		x.Normal, x.Worst, x.Raised = bars(n.Load.Normal), bars(worst), pressure.Above(worst, n.Load.Normal)
	default:
		x.Vacuum = n.Load.Low < 0
	}
	return x
}

func sparesOf(n *order.Need) []Spare {
	var out []Spare
	row := Spare{Item: n.Key, About: n.About, Fitted: Quantity(n.Placed)}
	for _, w := range n.Advice {
		row.Rule, row.Count, row.Why = w.Rule, Quantity(w.Count), w.Text
		out = append(out, row)
	}
	if n.Extra > 0 {
		row.Rule, row.Count, row.Why = "asked for", Quantity(n.Extra), "the build asks for it by `extra`"
		out = append(out, row)
	}
	return out
}
