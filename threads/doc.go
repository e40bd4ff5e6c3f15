// Package threads tells which pipe and port threads mate, seal, or only look alike.
//
// It answers by geometry: the tables under table/ hold each family's sizes as
// its standard prints them, and [Mate] slides the profile of one end into the
// other. Package title reads an end from what people write, [Find] and [Forms] give
// the tables. How a joint is closed is answered by package makeup, which thread was
// measured by identify, and all that is looked up of one end by card.
//
// # Units
//
// Lengths are [Length], in millimetres; angles are degrees; turns are turns of
// the wrench. Diameters of tapered threads are those at the gauge plane, where
// the standards give them.
//
// # What it does not do
//
// It knows nothing of pressure beyond the limit that a makeshift joint is held
// to, nothing of hoses' ratings, and nothing of a build file.
package threads
