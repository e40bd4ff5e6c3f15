package facts

import (
	"slices"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/catalog"
)

// How a plant is started, with a feed pump and without.
const (
	startFed   = "Start the feed pump, then the high-pressure pump, then raise the pressure slowly; stop in the reverse order."
	startUnfed = "Start the high-pressure pump with the throttle open, then raise the pressure slowly; stop in the reverse order."
)

// Cautions are the usual ones, said with every check.
func Cautions(sys *bom.System) []string {
	if slices.ContainsFunc(sys.Graph.Units, func(u *graph.Unit) bool { return u.Item.Kind.Is(catalog.DrivesFeed) }) {
		return cautions(startFed)
	}
	return cautions(startUnfed)
}

// AlwaysCautions are the usual ones for a plant of which nothing is known.
func AlwaysCautions() []string {
	return cautions(startFed, "Without a feed pump: start the high-pressure pump with the throttle open, then raise the pressure slowly.")
}

func cautions(start ...string) []string {
	return slices.Concat([]string{
		"High-pressure water injects through skin: no hands near a leak, and no joint is tightened under pressure.",
		"A failed fitting below the waterline sinks boats: seacocks shut when you leave.",
	}, start, []string{
		"New membranes carry preservative: product goes to the drain for the first hour, and never to the tank.",
		"A fresh-water flush at the dock wets most joints; the rest see water first under way: look at them then.",
		"This is a check and not a certificate: data sheets, local codes and licensed practice come first.",
	})
}
