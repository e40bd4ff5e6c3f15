package main

import (
	"handtight/bom"
	"handtight/bom/kit"
	"handtight/bom/money"
)

type sparesFacts struct {
	Spares   []spareFacts `json:"spares"`
	Without  number       `json:"chance_without_any"`
	Fitting  number       `json:"chance_while_fitting"`
	NoLife   []string     `json:"no_life"`
	Next     []nextFacts  `json:"next"`
	Currency string       `json:"currency"`
	Unpriced int          `json:"unpriced"`
}

type spareFacts struct {
	Item    string `json:"item"`
	About   string `json:"about"`
	Class   string `json:"class"`
	Placed  number `json:"placed"`
	Planned number `json:"planned"`
	Spares  number `json:"spares"`
	Aboard  number `json:"aboard"`
	Unit    string `json:"unit"`
	Without number `json:"chance_without"`
	Why     string `json:"why"`
}

type nextFacts struct {
	Item   string `json:"item"`
	Pieces int    `json:"pieces"`
	Cost   string `json:"cost"`
	Before number `json:"chance_before"`
	After  number `json:"chance_after"`
	Fall   number `json:"fall_per_unit"`
}

func sparesFactsOf(sys *bom.System, k *kit.Kit, next []kit.Buy, unpriced int) sparesFacts {
	f := sparesFacts{Spares: []spareFacts{}, Without: known(k.Without), Fitting: known(k.Fitting), NoLife: []string{}, Next: []nextFacts{}, Currency: sys.Build.Currency, Unpriced: unpriced}
	for _, it := range k.Unknown {
		f.NoLife = append(f.NoLife, it.ID)
	}
	for _, p := range k.Parts {
		n := p.Line.Need
		row := spareFacts{
			Item: n.Key, About: n.About, Class: p.Class.String(), Placed: inPieces(n.Placed), Planned: inPieces(p.Planned),
			Spares: inPieces(money.Quantity(p.Spare) * money.Piece), Aboard: inPieces(p.Aboard), Unit: n.Unit, Why: n.WhySpare(),
		}
		if p.Risk {
			row.Without = known(p.Without)
		}
		f.Spares = append(f.Spares, row)
	}
	for _, b := range next {
		f.Next = append(f.Next, nextFacts{b.Part.Line.Need.Key, b.Pieces, b.Cost.Number(), known(b.Before), known(b.After), known(b.PerUnit)})
	}
	return f
}
