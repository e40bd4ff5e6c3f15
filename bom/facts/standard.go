package facts

import "handtight/bom/choose"

// Standard is the build in one way: as it is, in one standard, or the best.
type Standard struct {
	Name     string      `json:"name"`
	None     string      `json:"none"` // why there is no such way; "" where there is
	Only     []string    `json:"only"` // parts made in another standard alone
	Total    *string     `json:"total"`
	NoOffer  int         `json:"no_offer"` // pieces to buy without a price, in no total
	Joints   int         `json:"joints"`
	Adaptors int         `json:"adaptors"`
	Families []string    `json:"families"`
	Cautions int         `json:"cautions"`
	Stops    int         `json:"stops"`
	Proved   bool        `json:"proved"`
	NoLess   *string     `json:"no_less_than"` // null where nothing is Figure of the cost of all ways
	Taken    []Taken     `json:"taken"`
	Needs    []JointNeed `json:"joints_need"`
}

// Taken is an item that a way takes in the place of another.
type Taken struct {
	For  string `json:"for"`
	Item string `json:"item"`
	Buy  string `json:"buy"` // a generic fitting in shop words; "" for an item of the build
}

// JointNeed is what a joint still takes in a way.
type JointNeed struct {
	Joint string   `json:"joint"`
	Buy   []string `json:"buy"`
}

// StandardOf shows one way to build.
func StandardOf(p *choose.Plan) Standard {
	f := Standard{
		Name: p.Name, None: p.None, Only: orEmpty(p.Only), NoOffer: p.Unpriced, Joints: p.Joints, Adaptors: p.Adaptors, Families: orEmpty(p.Families),
		Cautions: p.Cautions, Stops: p.Stops, Proved: p.Proved, Taken: []Taken{}, Needs: []JointNeed{},
	}
	if p.None != "" {
		return f
	}
	total := p.Order.Total.Number()
	f.Total = &total
	if p.Bound.CurrencyCode() != "" {
		bound := p.Bound.Number()
		f.NoLess = &bound
	}
	for _, t := range p.Taken {
		f.Taken = append(f.Taken, Taken{t.For, t.Item, t.Title})
	}
	for _, j := range p.Fitted {
		n := JointNeed{Joint: j.Joint}
		for _, q := range j.Chain.Pieces {
			n.Buy = append(n.Buy, q.Title)
		}
		f.Needs = append(f.Needs, n)
	}
	return f
}
