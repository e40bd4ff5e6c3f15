// Package makeup says how a joint is closed: what goes between the two ends, how
// far they are turned past hand tight or how hard, which part is held, what the
// hand should feel, and how long to wait before pressure.
//
// In goes a [threads.Mating], out comes a [Makeup]: see [Of]. The figures stand in
// table/makeup.csv, each with its source; where sources disagree the range of all
// of them is given. Lengths are millimetres, turns are turns of the wrench past
// finger tight, torques newton metres.
//
// It judges nothing: a joint that does not close has no make-up. It knows of a
// part's material only whether it is plastic; the caller drops a torque that was
// printed for another metal.
package makeup
