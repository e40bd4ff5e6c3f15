package main

import (
	"fmt"

	"handtight/bom/cart"
)

type cartFacts struct {
	Build     string              `json:"build"`
	Lines     []cartLineFacts     `json:"lines"`
	Items     []cartItemFacts     `json:"items"`
	Questions []cartQuestionFacts `json:"questions"`
	Notes     []cartNoteFacts     `json:"notes"`
	Counts    cartCountFacts      `json:"counts"`
}

type cartLineFacts struct {
	Cart       string          `json:"cart"`
	Sheet      string          `json:"sheet,omitempty"`
	Line       int             `json:"line"`
	Text       string          `json:"text"`
	Code       string          `json:"code"`
	Status     string          `json:"status"`
	Also       []string        `json:"also"`
	Item       string          `json:"item"`
	Items      []string        `json:"items"`
	Confidence number          `json:"confidence"`
	Evidence   []evidenceFacts `json:"evidence"`
	Reason     string          `json:"reason"`
	Remedy     string          `json:"remedy"`
	Quantity   number          `json:"quantity"`
	Unit       string          `json:"unit"`
	Price      *string         `json:"price"`
	Currency   string          `json:"currency"`
	Wrong      bool            `json:"wrong"`
	Ask        string          `json:"ask"`
	Joint      string          `json:"joint,omitempty"`
	Pressure   number          `json:"pressure_bar,omitempty"`
}

type evidenceFacts struct {
	Says   string `json:"says"`
	Points number `json:"points"`
}

type cartItemFacts struct {
	Item   string   `json:"item"`
	About  string   `json:"about"`
	Unit   string   `json:"unit"`
	Need   number   `json:"need"`
	Build  number   `json:"need_to_build"`
	Spare  number   `json:"spare"`
	Have   number   `json:"have"`
	Buy    number   `json:"to_buy"`
	InCart number   `json:"in_cart"`
	Status string   `json:"status"`
	Unsure []string `json:"unsure"`
	Reason string   `json:"reason"`
	Remedy string   `json:"remedy"`
}

type cartQuestionFacts struct {
	Cart    string   `json:"cart"`
	Line    int      `json:"line"`
	Item    string   `json:"item"`
	Choices []string `json:"choices"`
	Ask     string   `json:"ask"`
	Settles int      `json:"settles"`
}

type cartNoteFacts struct {
	Cart string `json:"cart"`
	Note string `json:"note"`
}

type cartCountFacts struct {
	Lines         int            `json:"lines"`
	Wrong         int            `json:"wrong"`
	ByStatus      map[string]int `json:"by_status"`
	Items         int            `json:"items"`
	Covered       int            `json:"covered"`
	Surplus       int            `json:"surplus"`
	Short         int            `json:"short"`
	ShortOfSpares int            `json:"short_of_spares"`
	Missing       int            `json:"missing"`
	Questions     int            `json:"questions"`
	Builds        bool           `json:"builds"`
}

func cartFactsOf(r *cart.Report) cartFacts {
	f := cartFacts{Build: r.Build, Lines: []cartLineFacts{}, Items: []cartItemFacts{}, Questions: []cartQuestionFacts{}, Notes: []cartNoteFacts{}}
	f.Counts = cartCountFacts{
		Lines: len(r.Lines), ByStatus: map[string]int{}, Items: len(r.Items), Covered: r.CountItems(cart.Covered), Surplus: r.CountItems(cart.Surplus),
		Short: r.CountItems(cart.Short), ShortOfSpares: r.CountItems(cart.ShortOfSpares), Missing: r.CountItems(cart.Missing),
		Questions: len(r.Questions), Builds: r.Builds(),
	}
	for _, v := range r.Lines {
		f.Lines = append(f.Lines, cartLineOf(v))
		f.Counts.ByStatus[string(v.Status)]++
		if v.IsWrong() {
			f.Counts.Wrong++
		}
	}
	for _, t := range r.Items {
		f.Items = append(f.Items, cartItemFacts{
			t.Item, t.About, t.Unit, inPieces(t.Takes), inPieces(t.Build), inPieces(t.Spare), inPieces(t.Have), inPieces(t.Need), inPieces(t.InCart), string(t.Status), list(t.Unsure), t.Reason, t.Remedy,
		})
	}
	for _, q := range r.Questions {
		f.Questions = append(f.Questions, cartQuestionFacts{q.Cart, q.Line, q.Item, list(q.Choices), q.Ask, q.Settles})
	}
	for _, c := range r.Carts {
		for _, n := range c.Notes {
			f.Notes = append(f.Notes, cartNoteFacts{c.Name, n})
		}
	}
	return f
}

func cartLineOf(v *cart.Verdict) cartLineFacts {
	l := v.Line
	f := cartLineFacts{
		Cart: l.Cart, Sheet: l.Sheet, Line: l.Row, Text: l.Text, Code: l.Code, Status: string(v.Status), Also: []string{}, Item: v.Item(), Items: list(v.Items),
		Confidence: known(v.Confidence), Evidence: []evidenceFacts{}, Reason: v.Reason, Remedy: v.Remedy, Unit: l.Unit, Currency: l.Currency,
		Wrong: v.IsWrong(), Ask: v.Ask,
	}
	if v.Joint != nil {
		f.Joint, f.Pressure = fmt.Sprintf("J%d", v.Joint.Number), known(v.Worst.Bar())
	}
	for _, s := range v.Also {
		f.Also = append(f.Also, string(s))
	}
	for _, e := range v.Evidence {
		f.Evidence = append(f.Evidence, evidenceFacts{e.Says, known(float64(e.Points) / 100)})
	}
	switch {
	case v.Known:
		f.Quantity, f.Unit = inPieces(v.Quantity), v.Unit
	case l.Counted:
		f.Quantity = inPieces(l.Amount)
	}
	if price := l.PriceText(); price != "" {
		f.Price = &price
	}
	return f
}

// list is never null in JSON.
func list(s []string) []string {
	if s == nil {
		return []string{}
	}
	return s
}
