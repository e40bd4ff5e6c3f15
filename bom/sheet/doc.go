// Package sheet reads the sheets of an XLSX workbook within bounds: carts that come from
// anywhere, and the program's own list when it comes back.
//
// It reads a part at a time and never unpacks beyond its limits; it works out no formula,
// follows no link, and refuses macros, entities and parts that are named twice. What a cell
// shows is given as text; whether the text is fit to print is for its reader to see to.
//
// Source: ECMA-376 (ISO/IEC 29500-1), SpreadsheetML.
package sheet
