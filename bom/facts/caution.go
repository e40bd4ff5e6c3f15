package facts

import (
	"fmt"
	"math"
	"slices"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/stages"
	"handtight/catalog"
)

// How a plant is started, with a feed pump and without.
const (
	startFed   = "Start the feed pump, then the high-pressure pump, then raise the pressure slowly; stop in the reverse order (common practice)."
	startUnfed = "Start the high-pressure pump with the throttle open, then raise the pressure slowly; stop in the reverse order (common practice)."
)

// Cautions are the usual ones, said with every check.
func Cautions(sys *bom.System) []string {
	start := startUnfed
	if slices.ContainsFunc(sys.Graph.Units, func(u *graph.Unit) bool { return u.Item.Kind.Is(catalog.DrivesFeed) }) {
		start = startFed
	}
	return cautions(dockFlush(sys), start)
}

// AlwaysCautions are the usual ones for a plant of which nothing is known.
func AlwaysCautions() []string {
	return cautions("A fresh-water flush at the dock wets about nine joints in ten (common practice; check --all reckons it for a build); the rest see water first under way: look at them then.",
		startFed, "Without a feed pump: start the high-pressure pump with the throttle open, then raise the pressure slowly (common practice).")
}

// dockFlush says how many joints a flush at the dock wets in this build, and beside it what is
// said of such plants in general; "" where nothing is flushed or left dry.
func dockFlush(sys *bom.System) string {
	all, wet := 0, 0.0
	for _, sheet := range stages.Of(sys) {
		all += len(sheet.Joints)
		wet += sheet.Flushed * float64(len(sheet.Joints))
	}
	n := int(math.Round(wet))
	switch {
	case all == 0:
		return "" // nothing here is tested in stages
	case n == 0:
		return "No flush at the dock reaches a joint of this build: all see water first under way. Look at them then."
	case n == all:
		return fmt.Sprintf("A flush at the dock reaches all %d joints of this build (common practice says about nine in ten), at low pressure: look at them again under way.", all)
	}
	return fmt.Sprintf("A flush at the dock reaches %d of %d joints of this build (common practice says about nine in ten); the rest see water first under way: look at them then.", n, all)
}

func cautions(flush string, start ...string) []string {
	return slices.DeleteFunc(slices.Concat([]string{
		"High-pressure water injects through skin: no hands near a leak, and no joint is tightened under pressure (common practice).",
		"A failed fitting below the waterline sinks boats: seacocks shut when you leave (common practice).",
	}, start, []string{
		"New membranes carry preservative: product goes to the drain for the first hour (common practice), and never to the tank.",
		flush,
		"This is a check and not a certificate: data sheets, local codes and licensed practice come first.",
	}), func(line string) bool { return line == "" })
}
