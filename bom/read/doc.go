// Package read answers whether a text is a build, and which: TOML in, a [build.Build] out.
//
// [Read] takes a path, [Parse] a text at hand; both read what it includes from disk. They
// give the build, or every fault at once with its file, line and column and what to write
// instead: nothing is half-read. Ends are read as shops write them, and what an item does
// not say stays unsaid.
package read
