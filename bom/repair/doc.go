// Package repair says what to buy so that two ends join: it sets the generic stock, a build's
// own items, their ratings, materials and prices behind the search of threads/adapt.
//
// [Adapt] answers with the best chains of pieces, or with the first wall that every chain
// meets. A chain is what a fitter would do: one piece where one is made, none that is not
// rated for the pressure, none whose material fails in the water, nothing stacked below the
// waterline. Chains are ordered by plain reasons one after another, and not by weights, so
// that it can be said why the first is first.
//
// [Remedies] names what mends a finding: a chain, another part in one's place, a plug; or a
// question that comes before anything is bought. The generic stock is searched, and with
// [WithBuild] a build's own items beside it.
package repair
