// Package audit gives the order of work on a plant that stands: what is known to be wrong, what
// to open first, what to measure, what to prove by test, what may be left and watched.
//
// [Judge] puts one joint into its section by what is written, measured and remembered of it
// ([handtight/threads/evidence]) and by where it stands: what it costs if it is bad
// (table/cost.csv, judgements). [Of] makes the whole list, with the measurement first that is
// worth most: one look at a part settles all joints of that item. [Plan.Record] writes it into a
// block of the build file that is the tool's own.
//
// What was not looked at is never cleared. A dry history clears no pair that is known to be
// wrong at high pressure or below the waterline. A day comes from the build file or from whoever
// asks, never from the clock.
package audit
