// Package money tells what a list of offers costs, in exact decimals, by the minor
// units of ISO 4217.
//
// [ParseAmount], [ParseRate] and [ParsePercent] read what a build file says;
// [LineTotal] prices a line, [LandedCost] adds freight, customs and tax to a vendor's
// lines, and [Rates.Convert] brings a vendor's total into the build's currency.
//
// # Where a sum is rounded
//
// Each figure that a person can see is rounded once, half up (a half goes away from
// zero), to the minor unit of its currency: the line, the freight, the customs, the
// tax, and the vendor's total after conversion. Everything between is exact, however
// many digits it takes. Half up is the rule of Council Regulation (EC) No 1103/97,
// article 5, and of the ROUND of spreadsheet programs.
//
// # Units
//
// An amount carries its currency; two currencies are never added. A [Quantity] counts
// thousandths: of a piece, or of a metre. A [Percent] is what stands before the
// percent sign. Binary floating point appears nowhere.
//
// # What it does not do
//
// It looks up no rate and knows no tax law: rates, customs and tax are the build
// file's. It does not round to coins (0.05 CHF, 0.10 NZD): that is for cash.
package money
