package main

import (
	"handtight/bom/choose"
	"handtight/bom/facts"
	"handtight/bom/money"
	"handtight/bom/order"
)

type chooseFacts struct {
	Plan      *facts.Order   `json:"plan"`
	Proved    bool           `json:"proved"`
	NoLess    string         `json:"no_less_than"`
	Currency  string         `json:"currency"`
	LineWise  againstFacts   `json:"line_by_line"`
	OneShop   []oneShopFacts `json:"one_shop"`
	Swaps     []swapFacts    `json:"swaps"`
	Refused   []refusedFacts `json:"refused"`
	Arrivals  []arrivalFacts `json:"arrivals"`
	Cuts      []cutFacts     `json:"cuts"`
	StopCount int            `json:"stops"`

	Standards []standardFacts `json:"standards"` // empty where nothing may be chosen
}

type againstFacts struct {
	Total string `json:"total"`
	Saved string `json:"saved"`
}

type oneShopFacts struct {
	Vendor string   `json:"vendor"`
	Total  *string  `json:"total"`
	Saved  *string  `json:"saved"`
	Lacks  []string `json:"lacks"`
}

type swapFacts struct {
	For      string   `json:"for"`
	Item     string   `json:"item"`
	Cautions []string `json:"cautions"`
}

type refusedFacts struct {
	For    string  `json:"for"`
	Item   string  `json:"item"`
	Saves  *string `json:"saves"`
	Reason string  `json:"reason"`
}

type arrivalFacts struct {
	Vendor  string   `json:"vendor"`
	Days    number   `json:"days"`
	Items   []string `json:"items"`
	Unknown []string `json:"without_lead"`
}

type cutFacts struct {
	Item    string        `json:"item"`
	Vendor  string        `json:"vendor"`
	Bought  number        `json:"bought_m"`
	Waste   number        `json:"waste_m"`
	Proved  bool          `json:"proved"`
	Lengths []lengthFacts `json:"lengths"`
}

type lengthFacts struct {
	Long   number       `json:"m"`
	Aboard bool         `json:"aboard"`
	Waste  number       `json:"waste_m"`
	Pieces []pieceFacts `json:"pieces"`
}

type pieceFacts struct {
	Hose string `json:"hose"`
	Long number `json:"m"`
}

func chooseFactsOf(c *choose.Choice) chooseFacts {
	f := chooseFacts{
		Plan: facts.OrderOf(c.System, c.Order), Proved: c.Proved, NoLess: c.Bound.Number(), Currency: c.System.Build.Currency,
		LineWise: againstFacts{c.Cheapest.Total.Number(), saved(c, c.Cheapest)},
		OneShop:  []oneShopFacts{}, Swaps: []swapFacts{}, Refused: []refusedFacts{}, Arrivals: []arrivalFacts{},
		Cuts: cutFactsOf(c.Order), StopCount: stops(c.Findings),
	}
	for _, one := range c.One {
		row := oneShopFacts{Vendor: one.Vendor.ID, Lacks: names(keys(one.Lacks))}
		if one.Order != nil {
			total, less := one.Order.Total.Number(), saved(c, one.Order)
			row.Total, row.Saved = &total, &less
		}
		f.OneShop = append(f.OneShop, row)
	}
	for _, s := range c.Swaps {
		row := swapFacts{s.For, s.Item, []string{}}
		for _, x := range s.Cautions {
			row.Cautions = append(row.Cautions, x.Slug+": "+x.At())
		}
		f.Swaps = append(f.Swaps, row)
	}
	for _, r := range c.Refused {
		row := refusedFacts{For: r.For, Item: r.Item, Reason: refusal(choose.Refusal{Reason: r.Reason, Stop: r.Stop})}
		if r.Saves.IsPositive() {
			saves := r.Saves.Number()
			row.Saves = &saves
		}
		f.Refused = append(f.Refused, row)
	}
	for _, r := range choose.Arrivals(c.Order) {
		row := arrivalFacts{Vendor: r.Vendor.ID, Items: names(lineKeys(r.Lines)), Unknown: names(lineKeys(r.Unknown))}
		if r.Last != nil {
			row.Days = known(r.Last.Days())
		}
		f.Arrivals = append(f.Arrivals, row)
	}
	return f
}

// cutFactsOf lists how hose is cut.
func cutFactsOf(o *order.Order) []cutFacts {
	out := []cutFacts{}
	for _, l := range o.Lines {
		if l.Cut == nil || len(l.Cut.Lengths) == 0 {
			continue
		}
		row := cutFacts{Item: l.Need.Key, Vendor: l.Offer.Vendor.ID, Bought: millimetres(l.Cut.Bought), Waste: millimetres(l.Cut.Waste()), Proved: l.Cut.Proved}
		for i := range l.Cut.Lengths {
			from := &l.Cut.Lengths[i]
			length := lengthFacts{millimetres(from.Long), from.Aboard, millimetres(from.Waste()), []pieceFacts{}}
			for _, p := range from.Pieces {
				length.Pieces = append(length.Pieces, pieceFacts{p.Name, millimetres(p.Long)})
			}
			row.Lengths = append(row.Lengths, length)
		}
		out = append(out, row)
	}
	return out
}

// millimetres gives metres in JSON.
func millimetres(mm int) number { return known(float64(mm) / 1000) }

// quantityText writes thousandths without trailing zeros.
func quantityText(thousandths int) string { return money.Quantity(thousandths).String() }

// names is a list that is empty rather than null.
func names(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}
