// Package source reads TOML text into a tree of values that know their place, and collects every fault at once.
//
// [ReadFile] reads a file, and [Parse] makes of its text a [Document], or gives the
// [Faults] that stop it, never half of each. A [Reader] walks the
// document's tables with typed questions ([Table.Text], [Table.Tables] and the
// like), so that the reader of a build file is plain code: each wrong type, each
// missing key and each unknown key becomes a [Fault] with its line, and reading
// goes on. [Reader.Faults] gives them all, in the order of the text.
//
// # Places
//
// A [Place] is a line and a column, both counted from 1, columns in code points.
// No position is worked out before one is asked for: the first question runs one
// pass over the text, and the answer is kept. A Document may be shared between
// goroutines; a Reader may not.
//
// # What it does not do
//
// It knows no key of the build file and no unit: those belong to its caller. It
// reads only the file it is given, so that the caller decides what an include is.
// Of the statements that run over several lines it reports one syntax fault each.
package source
