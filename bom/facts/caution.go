package facts

import (
	"slices"

	"handtight/bom"
	"handtight/bom/graph"
)

// Cautions are the usual ones, said with every check.
func Cautions(sys *bom.System) []string {
	start := "Start the high-pressure pump with the throttle open, then raise the pressure slowly; stop in the reverse order."
	if slices.ContainsFunc(sys.Graph.Units, func(u *graph.Unit) bool { return u.Item.Kind.Name == "feed pump" }) {
		start = "Start the feed pump, then the high-pressure pump, then raise the pressure slowly; stop in the reverse order."
	}
	return []string{
		"High-pressure water injects through skin: no hands near a leak, and no joint is tightened under pressure.",
		"A failed fitting below the waterline sinks boats: seacocks shut when you leave.",
		start,
		"New membranes carry preservative: product goes to the drain for the first hour, and never to the tank.",
		"A fresh-water flush at the dock wets most joints; the rest see water first under way: look at them then.",
		"This is a check and not a certificate: data sheets, local codes and licensed practice come first.",
	}
}
