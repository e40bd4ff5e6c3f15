// Package order answers what must be bought, and what it costs.
//
// [Needs] counts what a solved and rated build takes, spares included; [Of] prices it at the
// cheapest offers, [At] at chosen ones. Money is exact decimals in the currency of the shop,
// converted once; a line without a price is counted as such and is not free.
package order
