package facts

import (
	"fmt"

	"handtight/bom/cart"
)

// Cart is what carts bring to a build.
type Cart struct {
	Build     string         `json:"build"`
	Lines     []CartLine     `json:"lines"`
	Items     []CartItem     `json:"items"`
	Questions []CartQuestion `json:"questions"`
	Notes     []CartNote     `json:"notes"`
	Counts    CartCounts     `json:"counts"`
}

// CartLine is one line of a cart, and what it is taken for.
type CartLine struct {
	Cart       string         `json:"cart"`
	Sheet      string         `json:"sheet,omitempty"`
	Line       int            `json:"line"`
	Text       string         `json:"text"`
	Code       string         `json:"code"`
	Status     string         `json:"status"`
	Also       []string       `json:"also"`
	Item       string         `json:"item"`
	Items      []string       `json:"items"`
	Confidence Number         `json:"confidence"`
	Evidence   []CartEvidence `json:"evidence"`
	Reason     string         `json:"reason"`
	Remedy     string         `json:"remedy"`
	Quantity   Number         `json:"quantity"`
	Unit       string         `json:"unit"`
	Price      *string        `json:"price"`
	Currency   string         `json:"currency"`
	Wrong      bool           `json:"wrong"`
	Ask        string         `json:"ask"`
	NotUsed    []string       `json:"not_used"`
	Joint      string         `json:"joint,omitempty"`
	Pressure   Number         `json:"pressure_bar,omitempty"`
}

// CartEvidence is one reason for taking a line for an item.
type CartEvidence struct {
	Says   string `json:"says"`
	Points Number `json:"points"`
}

// CartItem is one thing to buy, and whether the carts cover it.
type CartItem struct {
	Item   string   `json:"item"`
	About  string   `json:"about"`
	Unit   string   `json:"unit"`
	Need   Number   `json:"need"`
	Build  Number   `json:"need_to_build"`
	Spare  Number   `json:"spare"`
	Have   Number   `json:"have"`
	Buy    Number   `json:"to_buy"`
	InCart Number   `json:"in_cart"`
	Status string   `json:"status"`
	Unsure []string `json:"unsure"`
	Reason string   `json:"reason"`
	Remedy string   `json:"remedy"`
}

// CartQuestion is one thing to ask a shop.
type CartQuestion struct {
	Cart    string   `json:"cart"`
	Line    int      `json:"line"`
	Item    string   `json:"item"`
	Choices []string `json:"choices"`
	Ask     string   `json:"ask"`
	Settles int      `json:"settles"`
}

// CartNote is what was noticed of a cart as a whole.
type CartNote struct {
	Cart string `json:"cart"`
	Note string `json:"note"`
}

// CartCounts is how much there is of everything.
type CartCounts struct {
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

// CartOf shows what became of carts.
func CartOf(r *cart.Report) Cart {
	f := Cart{Build: r.Build, Lines: []CartLine{}, Items: []CartItem{}, Questions: []CartQuestion{}, Notes: []CartNote{}}
	f.Counts = CartCounts{
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
		f.Items = append(f.Items, CartItem{
			t.Item, t.About, t.Unit, pieces(t.Takes), pieces(t.Build), pieces(t.Spare), pieces(t.Have), pieces(t.Need), pieces(t.InCart), string(t.Status), orEmpty(t.Unsure), t.Reason, t.Remedy,
		})
	}
	for _, q := range r.Questions {
		f.Questions = append(f.Questions, CartQuestion{q.Cart, q.Line, q.Item, orEmpty(q.Choices), q.Ask, q.Settles})
	}
	for _, c := range r.Carts {
		for _, n := range c.Notes {
			f.Notes = append(f.Notes, CartNote{c.Name, n})
		}
	}
	return f
}

func cartLineOf(v *cart.Verdict) CartLine {
	l := v.Line
	f := CartLine{
		Cart: l.Cart, Sheet: l.Sheet, Line: l.Row, Text: l.Text, Code: l.Code, Status: string(v.Status), Also: []string{}, Item: v.Item(), Items: orEmpty(v.Items),
		Confidence: Figure(v.Confidence), Evidence: []CartEvidence{}, Reason: v.Reason, Remedy: v.Remedy, Unit: l.Unit, Currency: l.Currency,
		Wrong: v.IsWrong(), Ask: v.Ask, NotUsed: orEmpty(v.PassedOver),
	}
	if v.Joint != nil {
		f.Joint, f.Pressure = fmt.Sprintf("J%d", v.Joint.Number), Figure(v.Worst.Bar())
	}
	for _, s := range v.Also {
		f.Also = append(f.Also, string(s))
	}
	for _, e := range v.Evidence {
		f.Evidence = append(f.Evidence, CartEvidence{e.Says, Figure(float64(e.Points) / 100)})
	}
	switch {
	case v.Known:
		f.Quantity, f.Unit = pieces(v.Quantity), v.Unit
	case l.Counted:
		f.Quantity = pieces(l.Amount)
	}
	if price := l.PriceText(); price != "" {
		f.Price = &price
	}
	return f
}
