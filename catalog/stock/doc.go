// Package stock is the generic fittings that standards list and shops carry, made from three
// small tables: which sizes, which patterns of ends, and which materials and classes.
//
// [Items] lists all of them, each once, in a fixed order. An item has no brand, no code and
// no price; its rating is asked of package pressure by class, material and size, so that the
// stock and a build cannot disagree. What has no rating there is kept, and is not known to
// hold anything.
package stock
