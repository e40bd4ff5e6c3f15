// Package facts is what is shown of a checked build, made once: text, JSON, the workbook and the
// page render it and reckon nothing themselves.
//
// [Of] takes a walked build and its findings; [OrderOf], [CompareOf], [ChoiceOf] and their like
// take the answers of other commands, and each gives a value that is written as it stands.
//
// The names of the JSON fields stand on the types. Fields may be added; none is renamed.
// Pressures are in bar gauge.
package facts
