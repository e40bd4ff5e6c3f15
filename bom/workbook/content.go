// Package workbook writes the shopping list as a spreadsheet that works without
// the tool, and reads back what the buyer typed into it.
//
// [Save] makes the book from a [Content] and puts it at a path; where a book of
// ours stands there already it first reads what was typed into that one
// and carries it over, so that writing again loses nothing. [Came] reads what
// was ordered, paid and received.
//
// The first sheet, Buy, is for whoever buys: it prints on paper as it stands.
// Sums are live formulas with cached values that equal the decimals given in the
// Content; a Content that contradicts itself is refused by a [ContentError]. The
// same Content and the same earlier book give the same bytes. Texts never become
// formulas.
package workbook

import (
	"github.com/bojanz/currency"

	"handtight/bom/facts"
)

// Content is everything the workbook shows, already decided: the package adds
// no rule of its own.
type Content struct {
	Title       string
	Build       string // a hash of the build's files, by which a print is known again; "" for none
	Currency    string // the build's currency
	RatesDate   string // ISO date of the rates; "" if none were needed
	Rates       []Rate
	Shops       []Shop // in the order of the build file; lines without an offer stand in a shop with ID ""
	Spares      []Spare
	Joints      []Joint
	Hoses       []facts.HoseRow
	Test        []facts.TestStage
	Duty        []DutyRow // of the plants whose product could be reckoned
	Questions   []Question
	Findings    []facts.Finding // sorted
	Assumptions []Assumption
	Cautions    []string        // the usual cautions, one sentence each
	Total       currency.Amount // in the build's currency; lines without a price are not in it
}

// Rate is what one of Currency costs in the build's currency.
type Rate struct {
	Currency string
	Rate     string // decimal, as written in the build
}

// Shop is one vendor's part of the order. The sums cover what is bought:
// CustomsSum on Goods and Freight, TaxSum on these and CustomsSum. A shop
// without a Currency has lines only, no prices and no sums.
type Shop struct {
	ID, Name string
	Currency string
	Freight  currency.Amount // asked once anything with a price is ordered here
	FreeFrom currency.Amount // value of goods from which there is no freight; the zero Amount is never
	Customs  string          // percent as a decimal: "5"; "" is none
	Tax      string
	Lines    []Line
	Goods, CustomsSum, TaxSum, Sum,
	InBuild currency.Amount // Sum converted once to the build's currency
}

// Line is one thing to order. Quantities are decimals as text, in thousandths at
// the finest: pieces, or metres of hose. "" is 0; as Pack
// it is not known, and the order is then what is needed.
type Line struct {
	Key          string  // stable: the item's id, or hose spec, or generic item; a second share at one shop has a mark behind it
	Share        string  // "share 1 of 2" of a line that is bought at several offers
	Item         string  // id as the build writes it
	About        string  // kind and words
	Words        string  // what a shop is asked for: ends, material, rating
	URL          string  // the shop's page of it, http or https
	Danger       float64 // the greater, the worse it is to get it wrong: what it sees, in bar
	RatingNeeded string  // "58 bar normal, 75.4 bar worst"; "" if none applies
	RatingFound  string  // "345 bar, SAE 100R8 3/8 in"; "unknown"
	Code         string  // the shop's code, as text
	Placed       string  // placed units and contents
	Planned      string  // planned changes
	Spare        string
	Extra        string
	Have         string
	Order        string // rounded up to packs
	Unit         string // "pc", "m", "roll", "pack"
	Pack         string
	Price        currency.Amount // for one Unit, in the shop's currency; zero Amount with HasPrice false if unknown
	HasPrice     bool
	Total        currency.Amount
	Lead         string
	Joints       string // the joints it serves, by number
	Question     string // to ask the shop, where words leave it open
}

// Spare is one line of the spares sheet.
type Spare struct {
	Item, About, Rule string // Rule: "spoiled while fitting", "planned change", "random wear", "extra"
	Fitted, Count     string
	Why               string
}

// Question is one thing to ask before buying or joining.
type Question struct {
	About   string // the item, or the port
	Shop    string // whom to ask; "" where no shop is named
	Ask     string
	Settles string // "2 joints"; "" for none
}

// Joint is one line of the make-up card.
type Joint struct {
	Number     string // also written on a tag
	Run        string
	A, B       string // unit.port
	EndA, EndB string
	Verdict    string
	Reason     string
	Closes     string // what seals it, and make-up
	Care       string // how to go about it, the same for many joints
	HandTurns  string
	WorstBar   string
	Below      bool // below the waterline
}

// Assumption is a value that the list rests on, and where it comes from.
type Assumption struct{ What, Value, Basis string }
