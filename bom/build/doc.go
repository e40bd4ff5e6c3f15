// Package build answers what a build file says: items with their ends and figures, runs,
// shops with their offers, the duty and the wish for spares.
//
// A [Build] is made by package read, and every name in it has been found; nothing of it is
// placed or joined yet. [Build.Swap] gives the build with one item in the place of another.
// A [Mark] is a place in the file, worked out only when it is asked for. A nil figure is not
// said, and is not zero; pressures are gauge, and a [money.Quantity] is thousandths of a
// piece or of a metre.
package build
