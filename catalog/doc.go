// Package catalog knows the kinds of parts a desalinator is built from: their
// ports, what happens between the ports, and how they are counted and spared.
//
// [KindNamed] finds a kind; the kinds are data, in table/kind.toml, so that a new
// one needs no code.
package catalog
