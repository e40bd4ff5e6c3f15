package facts

import (
	"handtight/bom"
	"handtight/bom/kit"
	"handtight/bom/money"
)

// Kit is what stays aboard, and what a little more money buys.
type Kit struct {
	Spares   []KitPart `json:"spares"`
	Without  Number    `json:"chance_without_any"`
	Fitting  Number    `json:"chance_while_fitting"`
	NoLife   []string  `json:"no_life"`
	Next     []KitNext `json:"next"`
	Currency string    `json:"currency"`
	Unpriced int       `json:"unpriced"`
}

// KitPart is one thing that stays aboard.
type KitPart struct {
	Item    string `json:"item"`
	About   string `json:"about"`
	Class   string `json:"class"`
	Placed  Number `json:"placed"`
	Planned Number `json:"planned"`
	Spares  Number `json:"spares"`
	Aboard  Number `json:"aboard"`
	Unit    string `json:"unit"`
	Without Number `json:"chance_without"`
	Why     string `json:"why"`
}

// KitNext is one more pack, and by how much it lowers the chance of being without.
type KitNext struct {
	Item   string `json:"item"`
	Pieces int    `json:"pieces"`
	Cost   string `json:"cost"`
	Before Number `json:"chance_before"`
	After  Number `json:"chance_after"`
	Fall   Number `json:"fall_per_unit"`
}

// KitOf shows what stays aboard of an order.
func KitOf(sys *bom.System, k *kit.Kit, next []kit.Buy, unpriced int) Kit {
	f := Kit{Spares: []KitPart{}, Without: Figure(k.Without), Fitting: Figure(k.Fitting), NoLife: []string{}, Next: []KitNext{}, Currency: sys.Build.Currency, Unpriced: unpriced}
	for _, it := range k.Unknown {
		f.NoLife = append(f.NoLife, it.ID)
	}
	for _, p := range k.Parts {
		n := p.Line.Need
		row := KitPart{
			Item: n.Key, About: n.About, Class: p.Class.String(), Placed: pieces(n.Placed), Planned: pieces(p.Planned),
			Spares: pieces(money.Quantity(p.Spare) * money.Piece), Aboard: pieces(p.Aboard), Unit: n.Unit, Why: n.WhySpare(),
		}
		if p.Risk {
			row.Without = Figure(p.Without)
		}
		f.Spares = append(f.Spares, row)
	}
	for _, b := range next {
		f.Next = append(f.Next, KitNext{b.Part.Line.Need.Key, b.Pieces, b.Cost.Number(), Figure(b.Before), Figure(b.After), Figure(b.PerUnit)})
	}
	return f
}
