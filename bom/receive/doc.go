// Package receive compares what came with what was ordered: what is still out, what came in
// place of what, whether a substitute does in its place, and what was really paid.
//
// It reads a [workbook.Receipt], judges what was bought besides the list by the rules of the
// cart, and puts real prices into copies of the build's files. It writes nothing.
package receive
