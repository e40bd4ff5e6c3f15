package catalog

import (
	"slices"
	"sync"
)

// Role is what parts of a kind do in a plant: what code asks of a kind instead of its name,
// so that a new kind is a table and no code. Several may be joined: [Kind.Is] asks for any.
type Role uint64

// The roles of what water comes from, goes to or passes. Those of the second block follow
// from a kind's passages, and [Supplies] from its boundary; the others are its `roles`.
const (
	Sea           Role = 1 << iota // the sea itself, as a boundary
	SkinFitting                    // through the hull's skin: water comes in or goes out by it
	Outlet                         // water leaves the boat
	Store                          // holds made water, and may give it
	Drain                          // takes water inside the boat
	Strainer                       // holds back what is coarse
	Filter                         // a housing with a cartridge
	Carbon                         // takes chlorine out of the water
	Gauge                          // shows a pressure
	SalinityProbe                  // shows how salty the water is
	FlowMeter                      // shows a flow
	Hose                           // a made-up hose
	HoseStock                      // hose by the metre
	HoseTail                       // a tail that a hose is clamped to
	Cartridge                      // goes inside a housing
	Element                        // a membrane element, inside a vessel
	SealKit                        // seals of a pump
	Clamp                          // holds a hose on its tail
	Tape                           // closes a taper thread
	Oil                            // is filled into a pump
	Washer                         // closes between two faces
	ORing                          // a ring of rubber in a groove
	Bush                           // steps a thread in its own hole
	Elbow                          // turns a line
	InLine                         // lies in a line and does nothing but lead it
	Commodity                      // costs little, and is on one shelf with others of other ends
	Adapts                         // only joins one end to another
	Electric                       // runs on the boat's voltage
	Plug                           // closes an end
	Accumulator                    // stores water against a gas

	DrivesFeed  // lifts water up to its shut-off pressure
	DrivesHigh  // pushes until something opens
	Recovers    // drives the feed with the brine's pressure
	Relieves    // opens at its set pressure
	Throttles   // drops what the operator sets
	Separates   // makes product of feed, through a membrane
	StopsReturn // lets water forward only
	Unloads     // leads the pump's flow back, and is a relief only where its maker says so
	Supplies    // gives water at a pressure of its own
)

var roleNames = map[string]Role{
	"sea": Sea, "skin-fitting": SkinFitting, "outlet": Outlet, "store": Store, "drain": Drain,
	"strainer": Strainer, "filter": Filter, "carbon": Carbon, "gauge": Gauge, "salinity-probe": SalinityProbe,
	"flow-meter": FlowMeter, "hose": Hose, "hose-stock": HoseStock, "hose-tail": HoseTail, "cartridge": Cartridge,
	"element": Element, "seal-kit": SealKit, "clamp": Clamp, "tape": Tape, "oil": Oil, "washer": Washer, "o-ring": ORing,
	"bush": Bush, "elbow": Elbow, "in-line": InLine, "commodity": Commodity, "plug": Plug, "stores-pressure": Accumulator, "electric": Electric, "adapts": Adapts,
}

var roleOfFlow = map[Flow]Role{
	FeedPump: DrivesFeed, PositivePump: DrivesHigh, Recovery: Recovers, Relief: Relieves,
	Throttle: Throttles, Membrane: Separates, OneWay: StopsReturn, Unload: Unloads,
}

// Is reports whether parts of the kind have any of some roles; false of no kind.
func (k *Kind) Is(any Role) bool { return k != nil && k.roles&any != 0 }

// Closable reports whether a person can shut a passage of it.
func (k *Kind) Closable() bool {
	for _, p := range k.Passages {
		if p.Closable {
			return true
		}
	}
	return false
}

// IsKind reports whether a name is that of a kind with any of some roles; false of a name
// that is no kind's.
func IsKind(name string, any Role) bool {
	k, ok := KindNamed(name)
	return ok && k.Is(any)
}

// OfRole is the kind that has a role, the first by name where several have it; nil where
// none has.
func OfRole(role Role) *Kind { return firstOf()[role] }

var firstOf = sync.OnceValue(func() map[Role]*Kind {
	out := map[Role]*Kind{}
	for _, name := range KindNames() {
		k := kinds()[name]
		for role := Role(1); role != 0; role <<= 1 {
			if k.Is(role) && out[role] == nil {
				out[role] = k
			}
		}
	}
	return out
})

// LikelyKinds names the kinds that a part of so many ends mostly is, the likeliest first:
// what the table's `likely` says.
func LikelyKinds(ends int) []string {
	const many = 4 // and more
	var out []string
	for _, name := range KindNames() {
		if k, _ := KindNamed(name); k.Likely > 0 && min(len(k.Ports), many) == min(ends, many) {
			out = append(out, name)
		}
	}
	slices.SortFunc(out, func(a, b string) int { return kinds()[a].Likely - kinds()[b].Likely })
	return out
}
