// Package card gathers what a fitter looks up of one end: its limits, the threads
// that it is mistaken for and how to tell them, what it goes with, and how its own
// kind of joint is made.
//
// In goes a [threads.End] with its sex, out comes a [Card]: see [Of]. Lengths are
// millimetres. Nothing is reckoned here that threads, identify and makeup do not
// answer already.
package card
