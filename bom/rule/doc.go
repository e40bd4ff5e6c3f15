// Package rule holds what a check looks for: one file a rule, with its
// explanation and its examples beside it.
//
// [Check] runs every rule over a system and returns the findings in the order
// people read them; [Find] gives one rule by its slug, for its explanation. Each
// rule's wrong example is found by that rule, and its right example is not: a test
// runs them all.
package rule
