// Package title reads what a shop writes of a part: its ends, its kind, its
// material and its rating, in the languages of the lists under lexicon/.
//
// [Read] takes a shop's line and answers a [threads.Reading]; [ReadEnd] takes
// the text of exactly one end, such as a build file holds, and answers a
// [threads.EndReading] or a [ReadError]. An end that the words leave open has
// several candidates and the one question that decides.
//
// It does not judge whether ends fit: see package threads. How a line goes
// through: spelled to one alphabet (normal.go), cut into tokens (scan.go,
// number.go, pitch.go, units.go), its figures classified (classify.go,
// sizes.go, counts.go), parted into phrases (phrase.go), what is said once
// distributed over the ends (distribute.go, ends.go, relocate.go, sexes.go,
// trailing.go), each phrase resolved to candidates (resolve.go, unified.go) with
// its question (question.go).
package title
