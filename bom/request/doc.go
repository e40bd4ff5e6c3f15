// Package request writes what one shop is asked for: a text to paste into a mail, and a
// table, in the shop's language.
//
// [Of] takes an order and a shop and gives a [Request]; [Request.Text] and [Request.CSV]
// write it. Words of kinds, ends, materials and units come from table/words.csv; a word
// that is not there stays English, in brackets. Designations are never translated.
//
// What a line says is all that its place needs: ends with their sex, material, class or
// rating, setting, scale, bore and length, so that a quote can be held against it by
// package cart. Lines of which something must be asked stand last, with the question.
//
// It reckons nothing: counts and prices are those of the order.
package request
