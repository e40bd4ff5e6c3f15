// Package catalog knows the kinds of parts a desalinator is built from: their
// ports, what happens between the ports, and how they are counted and spared; and
// what they are made of.
//
// [KindNamed] finds a kind by its name, [KindMeant] the one that another word stands for;
// what a kind does is asked by its roles ([Kind.Is]). [MaterialNamed] and [MaterialsIn] find
// materials in a text, and [GalvanicGap] says how far two are apart in sea water. Kinds and
// materials are data under table/, so that a new one needs no code.
package catalog
