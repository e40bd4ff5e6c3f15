package threads

import (
	"strings"
	"sync"

	"handtight/pressure/quantity"
)

// sealRule is one row of table/seal.csv: what closes, or does not, when two
// ends of alike threads are joined. The first row that fits a pair rules.
type sealRule struct {
	maleSeals, femaleSeals [sealEnd]bool
	sameSize               wish // of the two ends: sizes of one family may share a thread
	swivel, plastic        wish
	verdict                Verdict
	limit                  quantity.Pressure // 0 where the row sets none
	makes                  string            // the kind of make-up, as makeup/table/makeup.csv names it
	closes, reason, remedy string
	ask                    string // what must be asked before the joint is cleared; "" if nothing
	source                 string
}

// wish is a condition that a row may set.
type wish uint8

const (
	any_ wish = iota
	yes
	no
)

func (w wish) fits(is bool) bool { return w == any_ || (w == yes) == is }

type sealBook [familyEnd][familyEnd][]sealRule

var seals = sync.OnceValue(func() *sealBook {
	book := &sealBook{}
	for _, r := range eachRow("seal.csv") {
		verdict, _ := VerdictNamed(r["verdict"])
		rule := sealRule{
			maleSeals: sealSet(r["male_seal"]), femaleSeals: sealSet(r["female_seal"]),
			sameSize: wishOf(r["size"]), swivel: wishOf(r["swivel"]), plastic: wishOf(r["plastic"]), verdict: verdict,
			makes: r["make"], closes: r["closes"], reason: r["reason"], remedy: r["remedy"], ask: r["ask"], source: r["source"],
		}
		if r.has("limit_bar") {
			rule.limit = quantity.Pressure(r.number("limit_bar")) * quantity.Bar
		}
		for _, m := range strings.Split(r["male"], "|") {
			for _, f := range strings.Split(r["female"], "|") {
				male, _ := FamilyNamed(m)
				female, _ := FamilyNamed(f)
				book[male][female] = append(book[male][female], rule)
			}
		}
	}
	return book
})

func sealSet(text string) [sealEnd]bool {
	var set [sealEnd]bool
	for i := range set {
		set[i] = text == "*"
	}
	for _, name := range strings.Split(text, "|") {
		if name == "none" {
			set[NoSeal] = true
			continue
		}
		if name == "" {
			continue
		}
		if s, ok := SealNamed(name); ok {
			set[s] = true
		}
	}
	return set
}

func wishOf(text string) wish {
	switch text {
	case "yes", "same":
		return yes
	case "no", "other":
		return no
	}
	return any_
}

// sealOf finds the row for a male and a female of alike threads; nil if none.
func sealOf(male, female *End) *sealRule {
	rules := seals()[male.Family][female.Family]
	for i := range rules {
		r := &rules[i]
		if r.maleSeals[male.Seal] && r.femaleSeals[female.Seal] &&
			r.sameSize.fits(male.Size == female.Size && male.Nose == female.Nose) && r.swivel.fits(female.Swivel || male.Swivel) && r.plastic.fits(female.Plastic && !male.Plastic) {
			return r
		}
	}
	return nil
}
