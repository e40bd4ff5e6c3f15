package facts

import (
	"handtight/bom/rating"
	"handtight/pressure"
)

// Allowable is what something holds, and how well that is known.
type Allowable struct {
	Bar      Number `json:"rating_bar"`
	Basis    string `json:"rating_basis"`
	Status   string `json:"rating_status"` // how well the figure is known; "" where there is none
	Derated  bool   `json:"derated"`       // lowered for the duty's temperatures
	Estimate bool   `json:"estimate"`      // a guess, such as an estimate: never enough on high pressure
	Text     string `json:"rating_text"`   // in full: "SAE 100R8 3/8 in: 345 bar"

	Sheet  bool `json:"-"` // the figure of a data sheet, whose text says so
	Claim  bool `json:"-"` // what such parts are commonly sold for
	Series bool `json:"-"` // one maker's series, without a figure of the standard
	Other  bool `json:"-"` // another size's figure
	Memory bool `json:"-"` // nobody has looked it up
	Mixed  bool `json:"-"` // the figures were looked up, their sizes were not
}

// AllowableOf shows what a port, a joint or the weakest of a segment holds.
func AllowableOf(h rating.Allowable) Allowable {
	a := Allowable{Derated: h.Derated, Estimate: h.Estimate}
	if h.Known {
		r := h.Rating
		a.Bar, a.Basis, a.Status, a.Text = bars(r.Pressure), r.Basis.String(), r.Status.String(), r.Text
		a.Sheet, a.Claim, a.Series, a.Other = r.Basis == pressure.DataSheet, r.Basis == pressure.Claim, r.Basis == pressure.MakersSeries, r.Basis == pressure.OtherSize
		a.Memory, a.Mixed = r.Status == pressure.Memory, r.Status == pressure.Mixed
	}
	return a
}
