// Package running answers where water goes in a state, and where it does not: suction lines
// and what they carry, the flush and what it misses, water that stands, runs away or runs
// back, pumps that get none, vessels that come to no pressure, and valves that shut at once.
//
// A [Running] holds the solved segments and the waters of a build; each of its methods looks
// at one of these and lists units with figures. What is wrong with them is not said here.
package running
