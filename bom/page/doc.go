// Package page writes one HTML file of a checked build, to read on a phone under the sink or
// to print: what stops, the piping picture, what to buy, a card for each joint, the leak
// test by stages, the acts of each occasion, hoses and tools, spares, and what all of it
// rests on.
//
// [Of] gathers it, [Write] writes it. The file asks nothing of any network, runs no script,
// and every name in it is text and never markup. The same build gives the same bytes.
package page
