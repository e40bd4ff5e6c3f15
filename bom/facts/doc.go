// Package facts is what is shown of a checked build, made once: text, JSON and the workbook
// render it and reckon nothing themselves.
//
// The names of the JSON fields stand on the types. Fields may be added; none is renamed.
// Pressures are in bar gauge.
package facts
