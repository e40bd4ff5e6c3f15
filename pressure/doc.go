// Package pressure answers what pressure a hose, a fitting or a joint is good for.
//
// It answers by published ratings: [HoseRating] by hose standard and bore,
// [FittingRating] by class, material, thread family and size, [ClampJoint] for a
// bore on a barb, [PipeRating] for plastic pipe, [TubeRating] for stainless tube. Each [Rating] says which
// table it rests on and whether that table was seen, computed, or only
// remembered. [DerateHose] and [DerateMaterial] lower it for temperature, and
// [Lower] and [Governing] choose among several.
//
// # Units
//
// Pressures are gauge pressures of [quantity.Pressure]. The tables under table/
// keep the figures as their sources print them; what a source did not print is
// left empty and converted here.
//
// # Which figure rules
//
// Where several tables answer for one standard and size, the lowest rules. A row
// that is only remembered never raises a rating that was seen, and it lowers one
// only by more than rounding. What is in no table is unknown: (Rating, false),
// never a pressure of nothing.
//
// # What it does not do
//
// It approves no design: a maker's data sheet for the part rules if it is lower.
// It knows nothing of a build file, of mating threads or of corrosion.
package pressure
