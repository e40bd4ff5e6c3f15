package facts

import (
	"fmt"
	"slices"

	"handtight/bom/choose"
	"handtight/bom/finding"
	"handtight/bom/order"
)

// Choice is the plan that costs least landed, and what it is set against.
type Choice struct {
	Plan      *Order    `json:"plan"`
	Proved    bool      `json:"proved"`
	Bounded   []string  `json:"bounded"` // lines that were not divided in every way
	NoLess    string    `json:"no_less_than"`
	Currency  string    `json:"currency"`
	LineWise  Against   `json:"line_by_line"`
	OneShop   []OneShop `json:"one_shop"`
	Swaps     []Swap    `json:"swaps"`
	Refused   []Refused `json:"refused"`
	Arrivals  []Arrival `json:"arrivals"`
	Cuts      []Cut     `json:"cuts"`
	StopCount int       `json:"stops"`

	Standards []Standard `json:"standards"` // empty where nothing may be chosen
}

// Against is another way to buy, and what the plan saves against it.
type Against struct {
	Total string `json:"total"`
	Saved string `json:"saved"`
}

// OneShop is all from one shop.
type OneShop struct {
	Vendor string   `json:"vendor"`
	Total  *string  `json:"total"`
	Saved  *string  `json:"saved"`
	Lacks  []string `json:"lacks"`
}

// Swap is an option that the plan takes.
type Swap struct {
	For      string   `json:"for"`
	Item     string   `json:"item"`
	Cautions []string `json:"cautions"`
}

// Refused is an option that would have saved and was not taken.
type Refused struct {
	For    string  `json:"for"`
	Item   string  `json:"item"`
	Saves  *string `json:"saves"`
	Reason string  `json:"reason"`
}

// Arrival is what comes last from one shop.
type Arrival struct {
	Vendor  string   `json:"vendor"`
	Days    Number   `json:"days"`
	Items   []string `json:"items"`
	Unknown []string `json:"without_lead"`
}

// Cut is how one hose stock is cut.
type Cut struct {
	Item    string      `json:"item"`
	Vendor  string      `json:"vendor"`
	Bought  Number      `json:"bought_m"`
	Waste   Number      `json:"waste_m"`
	Proved  bool        `json:"proved"`
	Lengths []CutLength `json:"lengths"`
}

// CutLength is one length, and what is cut from it.
type CutLength struct {
	Long   Number     `json:"m"`
	Aboard bool       `json:"aboard"`
	Waste  Number     `json:"waste_m"`
	Pieces []CutPiece `json:"pieces"`
}

// CutPiece is one hose of a length.
type CutPiece struct {
	Hose string `json:"hose"`
	Long Number `json:"m"`
}

// ChoiceOf shows a choice of shops; its standards are set apart.
func ChoiceOf(c *choose.Choice) Choice {
	f := Choice{
		Plan: OrderOf(c.System, c.Order), Proved: c.Proved, Bounded: needKeys(c.Bounded), NoLess: c.Bound.Number(), Currency: c.System.Build.Currency,
		LineWise: Against{c.Cheapest.Total.Number(), SavedOn(c, c.Cheapest)},
		OneShop:  []OneShop{}, Swaps: []Swap{}, Refused: []Refused{}, Arrivals: []Arrival{},
		Cuts: cutsOf(c.Order), StopCount: finding.Count(c.Findings, finding.Stop),
	}
	for _, one := range c.One {
		row := OneShop{Vendor: one.Vendor.ID, Lacks: needKeys(one.Lacks)}
		if one.Order != nil {
			total, less := one.Order.Total.Number(), SavedOn(c, one.Order)
			row.Total, row.Saved = &total, &less
		}
		f.OneShop = append(f.OneShop, row)
	}
	for _, s := range c.Swaps {
		row := Swap{s.For, s.Item, []string{}}
		for _, x := range s.Cautions {
			row.Cautions = append(row.Cautions, x.Slug+": "+x.At())
		}
		f.Swaps = append(f.Swaps, row)
	}
	for _, r := range c.Refused {
		row := Refused{For: r.For, Item: r.Item, Reason: RefusedFor(&r)}
		if r.Saves.IsPositive() {
			saves := r.Saves.Number()
			row.Saves = &saves
		}
		f.Refused = append(f.Refused, row)
	}
	for _, r := range choose.Arrivals(c.Order) {
		row := Arrival{Vendor: r.Vendor.ID, Items: (LineKeys(r.Lines)), Unknown: (LineKeys(r.Unknown))}
		if r.Last != nil {
			row.Days = Figure(r.Last.Days())
		}
		f.Arrivals = append(f.Arrivals, row)
	}
	return f
}

// cutsOf lists how hose is cut.
func cutsOf(o *order.Order) []Cut {
	out := []Cut{}
	for _, l := range o.Lines {
		if l.Cut == nil || len(l.Cut.Lengths) == 0 {
			continue
		}
		row := Cut{Item: l.Need.Key, Vendor: l.Offer.Vendor.ID, Bought: inMetres(l.Cut.Bought), Waste: inMetres(l.Cut.Waste()), Proved: l.Cut.Proved}
		for i := range l.Cut.Lengths {
			from := &l.Cut.Lengths[i]
			length := CutLength{inMetres(from.Long), from.Aboard, inMetres(from.Waste()), []CutPiece{}}
			for _, p := range from.Pieces {
				length.Pieces = append(length.Pieces, CutPiece{p.Name, inMetres(p.Long)})
			}
			row.Lengths = append(row.Lengths, length)
		}
		out = append(out, row)
	}
	return out
}

// millimetres gives metres in JSON.
func inMetres(mm int) Number { return Figure(float64(mm) / 1000) }

// SavedOn is what a plan saves against an order, as a decimal; "0" where it saves nothing.
func SavedOn(c *choose.Choice, than *order.Order) string {
	if d, ok := c.Saves(than); ok {
		return d.Number()
	}
	return "0"
}

// RefusedFor says why an option was not taken, with the stop that it would make.
func RefusedFor(r *choose.Refusal) string {
	if r.Stop == nil {
		return r.Reason
	}
	return fmt.Sprintf("%s (%s, %s)", r.Reason, r.Stop.Slug, r.Stop.At())
}

// LineKeys names the things that lines are of, each once; never nil.
func LineKeys(lines []*order.Line) []string {
	out := []string{}
	for _, l := range lines {
		if !slices.Contains(out, l.Need.Key) { // shares of one line
			out = append(out, l.Need.Key)
		}
	}
	return out
}

func needKeys(needs []*order.Need) []string {
	out := []string{}
	for _, n := range needs {
		out = append(out, n.Key)
	}
	return out
}
