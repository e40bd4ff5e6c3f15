package cart

import (
	"fmt"
	"slices"

	"handtight/bom/graph"
	"handtight/bom/money"
	"handtight/pressure/quantity"
)

// Status says what becomes of a line or of an item, in the word that stands in JSON.
type Status string

// The statuses of a line, and after them those of an item. The empty one is none.
const (
	Covers        Status = "covers"
	WrongThread   Status = "wrong-thread"
	WrongSex      Status = "wrong-sex"
	WrongSize     Status = "wrong-size"
	LowRating     Status = "low-rating"
	WrongMaterial Status = "wrong-material"
	WrongStandard Status = "wrong-standard" // of a hose
	WrongSetting  Status = "wrong-setting"  // of a relief valve
	WrongLength   Status = "wrong-length"
	WrongVoltage  Status = "wrong-voltage"
	WrongFlow     Status = "wrong-flow"
	WrongFineness Status = "wrong-fineness"
	WrongUse      Status = "wrong-use"    // for another water, or another thing
	Unsure        Status = "unsure"       // asked about
	NoQuantity    Status = "no-quantity"  // matched, and how many is asked about
	BoughtTwice   Status = "bought-twice" // another cart buys it already
	Surplus       Status = "surplus"      // more than is needed; of an item too
	OtherPrice    Status = "other-price"  // covers, at another price than the offer
	SumDiffers    Status = "sum-differs"  // quantity times price is not the total
	NotNeeded     Status = "not-needed"   // a part, and nothing in the build is like it
	NoEnd         Status = "no-end"       // no end and no kind found in the words
	Out           Status = "out"          // struck out, quantity 0, a sum line

	Covered       Status = "covered"
	Short         Status = "short"           // not enough to build
	ShortOfSpares Status = "short-of-spares" // enough to build, not all spares
	Missing       Status = "missing"         // nothing of it in any cart
)

// Verdict is what becomes of one line.
type Verdict struct {
	Line       *Line
	Status     Status
	Also       []Status // what else there is to say
	Items      []string // that it serves; the first is the likeliest where it is unsure
	Confidence float64  // 0 to 1: the sum of the evidence
	Evidence   []Evidence
	Quantity   money.Quantity // in Unit; see Known
	Unit       string         // that the build counts in
	Known      bool
	Reason     string
	Remedy     string
	Ask        string   // what must be asked; "" for nothing
	PassedOver []string // words of a line that covers which nothing understands

	// Joint is the joint that stands under the highest pressure of the places that the part is
	// for, and Worst that pressure; nil and 0 for a part that is joined to nothing.
	Joint *graph.Joint
	Worst quantity.Pressure
}

// Wrong lists the statuses of a line that is like a part of the build and not it.
func Wrong() []Status {
	return []Status{WrongThread, WrongSex, WrongSize, LowRating, WrongStandard, WrongSetting, WrongVoltage, WrongFlow, WrongLength, WrongFineness, WrongUse, WrongMaterial}
}

// IsWrong reports whether the line is like a part of the build and not it.
func (v *Verdict) IsWrong() bool { return slices.Contains(Wrong(), v.Status) }

// Item gives the first item; "" if the line matches none.
func (v *Verdict) Item() string {
	if len(v.Items) == 0 {
		return ""
	}
	return v.Items[0]
}

// Tally is what becomes of one thing that the build needs.
type Tally struct {
	Item   string
	About  string
	Unit   string
	Need   money.Quantity // to buy, with spares, without what is aboard
	Takes  money.Quantity // placed, planned and extra: what an order calls its need
	Spare  money.Quantity
	Have   money.Quantity
	Build  money.Quantity // of it what the build itself takes
	InCart money.Quantity // of good lines only
	Status Status
	Unsure []string // places of lines that may be it
	Reason string
	Remedy string
}

// Question is one thing to ask before buying.
type Question struct {
	Cart    string
	Line    int    // row of the file
	Item    string // the likeliest; "" if it is not about an item
	Choices []string
	Ask     string
	Settles int // how many lines the answer settles

	lines []*Verdict
}

// Report is what the carts come to.
type Report struct {
	Build     string
	Carts     []*Cart
	Lines     []*Verdict // in the order of the carts
	Items     []*Tally   // in the order of the build
	Questions []Question // those that settle most first
}

// Builds reports whether the carts and what is aboard can build the build; spares are
// not asked for.
func (r *Report) Builds() bool {
	for _, t := range r.Items {
		if t.Status == Short || t.Status == Missing && t.Build > 0 {
			return false
		}
	}
	return true
}

// CountItems tells how many items have a status.
func (r *Report) CountItems(s Status) int {
	n := 0
	for _, t := range r.Items {
		if t.Status == s {
			n++
		}
	}
	return n
}

// amount writes a quantity with its unit: "3 pc", "1.4 m".
func amount(q money.Quantity, unit string) string { return fmt.Sprintf("%s %s", q, unit) }
