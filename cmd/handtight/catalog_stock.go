package main

import (
	"fmt"
	"strings"

	"handtight/bom/build"
	"handtight/catalog/stock"
	"handtight/threads"
)

// stockFacts is one generic fitting, in JSON.
type stockFacts struct {
	Title    string   `json:"title"`
	Kind     string   `json:"kind"`
	Ends     []string `json:"ends"`
	Material string   `json:"material"`
	Class    string   `json:"class"`
	Standard string   `json:"standard"`
	Source   string   `json:"source"`
}

// ownFacts is one item of a build, with what shops ask for it.
type ownFacts struct {
	ID       string      `json:"id"`
	Kind     string      `json:"kind"`
	Title    string      `json:"title"`
	Ends     []string    `json:"ends"`
	Material string      `json:"material"`
	Offers   []soldFacts `json:"offers"`
}

type soldFacts struct {
	Vendor string  `json:"vendor"`
	Code   string  `json:"code"`
	Price  *string `json:"price"` // null where it is not known, which is not free
	Money  string  `json:"currency"`
}

// sought is what is looked for: words, or ends that a part must have.
type sought struct {
	words []string
	ends  []threads.EndReading
}

func (s *sought) empty() bool { return len(s.words)+len(s.ends) == 0 }

// stockOf lists the generic fittings that are looked for.
func (s *sought) stockOf() []stockFacts {
	out := []stockFacts{}
	if s.empty() {
		return out
	}
	list := stock.Find(strings.Join(s.words, " "))
	if len(s.ends) > 0 {
		list = stock.WithEnds(s.ends...)
	}
	for _, it := range list {
		out = append(out, stockFacts{it.Title(), it.Kind, it.Texts, it.Material, it.Class, it.Standard, it.Source})
	}
	return out
}

// itemsOf lists the items of a build that are looked for: by their id, title, ends, material,
// or by what a shop that sells them calls them.
func (s *sought) itemsOf(b *build.Build) []ownFacts {
	out := []ownFacts{}
	if b == nil || s.empty() {
		return out
	}
	offers := b.OffersByItem()
	for _, it := range b.Items {
		f := ownFacts{ID: it.ID, Kind: it.Kind.Name, Title: strings.TrimSpace(it.Title + " " + it.About), Ends: []string{}, Material: it.Material, Offers: []soldFacts{}}
		line := strings.Join([]string{it.ID, it.Kind.Name, f.Title, it.Material}, " ")
		var ends []threads.End
		for i := range it.Ports {
			if p := &it.Ports[i]; p.Said {
				f.Ends = append(f.Ends, p.Words())
				line += " " + p.Words()
				ends = append(ends, p.End.Candidates...)
			}
		}
		for _, o := range offers[it.ID] {
			sold := soldFacts{Code: o.Code}
			if o.Vendor != nil {
				sold.Vendor, sold.Money = o.Vendor.Name, o.Vendor.Currency
				line += " " + o.Vendor.Name
			}
			if o.Price != nil {
				n := o.Price.Number()
				sold.Price = &n
			}
			line += " " + o.Code
			f.Offers = append(f.Offers, sold)
		}
		if len(s.ends) > 0 && !stock.Has(ends, s.ends) || len(s.ends) == 0 && !stock.Holds(line, s.words) {
			continue
		}
		out = append(out, f)
	}
	return out
}

// mostStock is how many generic fittings are printed: a word such as "316" names thousands.
const mostStock = 12

func (a *app) printStock(list []stockFacts) {
	if len(list) == 0 {
		return
	}
	u := a.ui
	u.say(bold, "Generic fittings, as standards list and shops carry them: %d", len(list))
	for _, f := range list[:min(len(list), mostStock)] {
		u.fold("  -", fmt.Sprintf("%s (%s)", f.Title, f.Standard))
	}
	if len(list) > mostStock {
		u.fold("  …", fmt.Sprintf("and %d more: another word narrows them, and --json lists all", len(list)-mostStock))
	}
	u.line("")
}

func (a *app) printOwn(list []ownFacts) {
	if len(list) == 0 {
		return
	}
	u := a.ui
	u.say(bold, "Items of the build")
	for _, f := range list {
		text := f.ID + ": " + f.Kind
		if len(f.Ends) > 0 {
			text += " " + strings.Join(f.Ends, " x ")
		}
		if f.Material != "" {
			text += ", " + f.Material
		}
		u.fold("  -", text)
		for _, o := range f.Offers {
			price := "price not known"
			if o.Price != nil {
				price = *o.Price + " " + o.Money
			}
			u.fold("", strings.TrimSpace(fmt.Sprintf("%s: %s %s", o.Vendor, price, o.Code)))
		}
		if len(f.Offers) == 0 {
			u.fold("", "no offer")
		}
	}
	u.line("")
}
