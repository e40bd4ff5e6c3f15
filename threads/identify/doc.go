// Package identify tells which thread was measured, and what to measure next.
//
// In goes a [Measured]: what a calliper, a pitch gauge and the eye give of one
// thread, and where the part was bought. [Identify] ranks the threads of the tables
// by probability and names the measurement that splits the ranking best; [Gains]
// weighs all measurements. Diameters are millimetres across the crests, pitches
// millimetres, angles degrees, probabilities shares of 1, gains bits.
//
// The errors of the tools and the habits of countries are judgements and stand in
// likelihood.go and under table/. The ranking is no verdict: a marking on the part
// says more than any figure, and a thread that is in no table can only be called
// unlike all that are.
package identify
