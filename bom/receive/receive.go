package receive

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/cart"
	"handtight/bom/money"
	"handtight/bom/order"
	"handtight/bom/workbook"
)

// Report is what became of an order.
type Report struct {
	Out         []Line       // ordered, and not here in full; or here, and fewer than the list asks
	NotOrdered  []Line       // on the list, and neither ordered nor here
	In          []Line       // here in full
	Unclear     []Line       // marked in words that are neither a number nor yes
	Gone        []Line       // of the book, and no longer of the build
	Missing     []Line       // of the list as it is now, and in no row of the book
	Substitutes []Substitute // bought besides the list
	Prices      []Price      // paid otherwise than the offers say
	Partial     string       // why the book may not be whole
	Other       string       // the build that the book was made for, if it was another one
}

// Line is one line of the list and how it stands.
type Line struct {
	Shop, Item string
	Row        int
	Order      string // what the list asked for
	Ordered    string // as a number; "" where it is not known
	Received   string
	Short      string // how many are still out; "" for none
	Over       string // how many more came than were due; "" for none
	Said       string // what was written, where it is unclear
	Remark     string
}

// Substitute is a row of what was bought besides.
type Substitute struct {
	Row    int
	What   string
	Number string
	Came   string // of them, as it was written
	Remark string
	Item   string // that it may stand in the place of; "" for none
	Place  string // how that stands: "still out", "not ordered", "here already"; "" for none
	Status cart.Status
	Does   bool // in its place, as far as its words tell
	Reason string
	Remedy string
	Ask    string
}

// Price is what one of an item really cost.
type Price struct {
	Shop, Item, Currency string
	Was                  string // by the offer; "" if it had none
	Paid                 string
	offer                *build.Offer // nil: the shop had no offer of it
	code                 string
}

// Of compares a receipt with a build and its order.
func Of(sys *bom.System, o *order.Order, got *workbook.Receipt) (*Report, error) {
	r := &Report{Partial: got.Partial}
	if got.Title != sys.Build.Name {
		r.Other = got.Title
	}
	keys := map[string]bool{}
	for _, l := range o.Lines {
		keys[l.Need.Key] = true
	}
	stands, rows := map[string]string{}, map[string]bool{}
	for _, l := range got.Lines {
		r.line(&l, keys[l.Key], stands)
		r.price(sys.Build, &l)
		rows[l.Key] = true
	}
	for _, l := range o.Lines {
		if key := l.Need.Key; !rows[key] && l.Order > 0 {
			row := Line{Item: key, Order: l.Order.String()}
			if l.Offer != nil {
				row.Shop = l.Offer.Vendor.ID
			}
			r.Missing = append(r.Missing, row)
			worse(stands, key, "not ordered")
			rows[key] = true
		}
	}
	if err := r.besides(sys, o, got, stands); err != nil {
		return nil, err
	}
	return r, nil
}

// line puts one line where it belongs.
func (r *Report) line(l *workbook.CameLine, known bool, stands map[string]string) {
	row := Line{Shop: l.Shop, Item: l.Key, Row: l.Row, Order: l.Order, Remark: l.Remark}
	written := l.Ordered != "" || l.Received != ""
	order, _ := number(l.Order)
	ordered, okOrdered := quantity(l.Ordered, order)
	due := order
	if okOrdered {
		due = ordered
	}
	received, okReceived := quantity(l.Received, due)
	if okOrdered {
		row.Ordered = ordered.String()
	}
	if okReceived {
		row.Received = received.String()
	}
	switch {
	case !known && written:
		r.Gone = append(r.Gone, row)
		return
	case !known:
		return
	case l.Ordered != "" && !okOrdered, l.Received != "" && !okReceived:
		row.Said = l.Ordered
		if l.Ordered == "" || okOrdered {
			row.Said = l.Received
		}
		r.Unclear = append(r.Unclear, row)
		worse(stands, l.Key, "unclear")
	case !written && order == 0:
	case !written || l.Received == "" && ordered == 0:
		r.NotOrdered = append(r.NotOrdered, row)
		worse(stands, l.Key, "not ordered")
	case received < max(due, order): // fewer were ordered than the list asks: these are still to be had
		row.Short = (max(due, order) - received).String()
		r.Out = append(r.Out, row)
		worse(stands, l.Key, "still out")
	default:
		if received > due {
			row.Over = (received - due).String()
		}
		r.In = append(r.In, row)
		worse(stands, l.Key, "here already")
	}
}

// worse says how an item stands: of one bought in shares, how the share that lacks most does.
func worse(stands map[string]string, item, how string) {
	rank := []string{"", "here already", "unclear", "still out", "not ordered"}
	if slices.Index(rank, how) > slices.Index(rank, stands[item]) {
		stands[item] = how
	}
}

// quantity reads a number, or a word for all.
func quantity(text string, all money.Quantity) (money.Quantity, bool) {
	switch text {
	case "yes", "all", "x", "Yes", "YES", "X", "All":
		return all, true
	case "no", "No":
		return 0, true
	}
	return number(text)
}

// number reads a decimal from 0 up, to the thousandth.
func number(text string) (money.Quantity, bool) {
	f, err := strconv.ParseFloat(text, 64)
	if err != nil || !(f >= 0) || f > 1e9 {
		return 0, false
	}
	return money.Quantity(math.Round(f * 1000)), true
}

// price notes a price that is not the offer's.
func (r *Report) price(b *build.Build, l *workbook.CameLine) {
	if _, err := strconv.ParseFloat(l.Paid, 64); err != nil {
		return
	}
	o := offerOf(b, l)
	if o == nil {
		return
	}
	p := Price{Shop: l.Shop, Item: l.Key, Currency: o.Vendor.Currency, Paid: l.Paid, offer: o}
	if o.Price != nil {
		p.Was = o.Price.Number()
	}
	if !same(p.Was, p.Paid) {
		r.Prices = append(r.Prices, p)
	}
}

// offerOf is the offer that a line was bought at: of several at one shop the one with the
// line's code and listed price; nil if the shop has none any more.
func offerOf(b *build.Build, l *workbook.CameLine) *build.Offer {
	var best *build.Offer
	most := -1
	for _, o := range b.Offers {
		if o.Item != l.Key || o.Vendor == nil || o.Vendor.ID != l.Shop {
			continue
		}
		fits := 0
		if o.Code == l.Code {
			fits += 2
		}
		if o.Price == nil && l.Listed == "" || o.Price != nil && same(o.Price.Number(), l.Listed) {
			fits++
		}
		if fits > most {
			best, most = o, fits
		}
	}
	return best
}

func same(a, b string) bool {
	x, errX := strconv.ParseFloat(a, 64)
	y, errY := strconv.ParseFloat(b, 64)
	return errX == nil && errY == nil && x == y
}

// besides judges what was bought besides the list: each row as a cart of its own, so that one
// does not stand in another's light.
func (r *Report) besides(sys *bom.System, o *order.Order, got *workbook.Receipt, stands map[string]string) error {
	for _, b := range got.Besides {
		if b.What == "" && b.Code == "" {
			continue
		}
		s := Substitute{Row: b.Row, What: b.What, Number: b.Number, Came: b.Received, Remark: b.Remark, Status: cart.NoEnd, Reason: "No end and no kind is found in its words: write them as the shop has them."}
		if b.What == "" {
			s.What = b.Code
		}
		c, err := cartOf(b)
		if err != nil {
			return fmt.Errorf("row %d of what was bought besides the list cannot be read: %w", b.Row, err)
		}
		if lines := cart.Judge(sys, o, []*cart.Cart{c}, nil).Lines; len(lines) > 0 {
			v := lines[0]
			s.Item, s.Status, s.Reason, s.Remedy, s.Ask = v.Item(), v.Status, v.Reason, v.Remedy, v.Ask
			s.Does = s.Item != "" && (v.Status == cart.Covers || v.Status == cart.OtherPrice || v.Status == cart.Surplus)
		}
		if s.Item != "" {
			if s.Place = stands[s.Item]; s.Place == "" {
				s.Place = "not on the list"
			}
		}
		r.Substitutes = append(r.Substitutes, s)
		r.newOffer(sys.Build, &s, b)
	}
	return nil
}

// cartOf is one row as a cart.
func cartOf(b workbook.CameBesides) (*cart.Cart, error) {
	number := b.Number
	if number == "" {
		number = "1" // how many does not change what it is
	}
	var text bytes.Buffer
	w := csv.NewWriter(&text)
	_ = w.Write([]string{"code", "description", "quantity", "price", "currency"})
	_ = w.Write([]string{b.Code, b.What, number, b.Price, b.Currency})
	w.Flush()
	return cart.Read("bought besides.csv", text.Bytes(), cart.Options{})
}

// newOffer notes the price of a substitute that does, at a shop of the build's.
func (r *Report) newOffer(b *build.Build, s *Substitute, row workbook.CameBesides) {
	v := slices.IndexFunc(b.Vendors, func(v *build.Vendor) bool { return v.ID == row.Shop && v.Currency == row.Currency })
	if _, err := strconv.ParseFloat(row.Price, 64); err != nil || !s.Does || v < 0 {
		return
	}
	p := Price{Shop: row.Shop, Item: s.Item, Currency: row.Currency, Paid: row.Price, code: row.Code}
	for _, o := range b.Offers {
		if o.Item == s.Item && o.Vendor == b.Vendors[v] && (o.Code == row.Code || row.Code == "") {
			p.offer = o
			if o.Price != nil {
				p.Was = o.Price.Number()
			}
		}
	}
	if !same(p.Was, p.Paid) {
		r.Prices = append(r.Prices, p)
	}
}

// Stops reports whether something that came does not do in its place.
func (r *Report) Stops() bool {
	return slices.ContainsFunc(r.Substitutes, func(s Substitute) bool { return slices.Contains(cart.Wrong(), s.Status) })
}
