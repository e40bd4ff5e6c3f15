// Package drawing lays out the piping of a plant as a picture and writes it as SVG.
//
// What comes in is a [Scheme]: parts with a symbol, and the joints between them in the
// direction of the flow. [Lay] gives a [Picture], in which every part has a place, every
// joint a line and every text a box; [Picture.WriteSVG] writes it. It is deterministic: every
// choice that ties is decided by the order of the scheme, so the same scheme gives the
// same bytes.
//
// Pipework is long chains with few branches. So the longest chain is folded to and fro
// over the sheet, chains that hang on it stand in rows between, and what is left is led
// by right-angled lines that keep clear of symbols and texts. The picture means order and
// joints, not place aboard: lines of one row are spaced alike whatever their length.
//
// The symbols are drawn again after the conventions of ISO 10628-2, ISO 14617 and
// ISO 1219-1, from memory; nobody claims that they conform.
package drawing
