// Package cart tells whether a cart, a quote or an invoice can build the build:
// what is covered, short, not needed, of the wrong thread, rating or material.
//
// [Read] takes a file (CSV or XLSX) and gives its lines; [Judge] matches them to
// what the build needs and says what becomes of each; [ReadAccepted] and
// [Accepted.Write] keep what a person confirmed for the next run.
//
// # What it promises
//
// No line is dropped: one without an end, a quantity or a price is shown as such.
// Nothing unsure is assumed: it becomes a question. A price of 0, ?? or a blank is
// unknown and not free. A word that denies, that names a piece of the part, another medium
// or used goods, and a pressure that is no rating, clear nothing: they are asked about
// (table/doubt.csv, table/figure.csv), and what changes nothing is named as not used. The
// confidence of a match is the sum of its evidence, whose points are in table/evidence.csv.
//
// # Hostile files
//
// Workbooks are read by package sheet, a part at a time, so that memory and
// time stay bounded and struck-out rows can be told: a part is never unpacked beyond
// its limit, formulas are never worked out, links to other files never followed, and
// a workbook with macros is refused.
//
// # Units
//
// Quantities are [money.Quantity]; prices are decimal strings of one piece, metre or
// pack, as the cart has them; pressures and lengths are those of package quantity.
package cart
