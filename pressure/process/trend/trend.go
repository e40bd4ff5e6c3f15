// Package trend answers why a plant makes less, or saltier, water than it did: its readings
// are brought to the same conditions, and what is left of the change is told apart.
//
// [Normalise] is the way of ASTM D4516: the product is multiplied by the net driving
// pressure and the temperature factor of the standard over those of the reading, with the
// log mean of the concentration along the element; the salt passage by the flows and the
// inverse of the temperature factors (that form is from memory). The formulas are those
// that published plant codes and manuals give for it; the standard itself was not at hand.
// [Look] compares the last readings with the first good ones.
//
// It tells apart what leaves different traces: cold water (nothing is left once it is
// brought to the same temperature), fouling, scale, a leaking seal or O-ring, a worn pump, a
// blocked filter. It names nothing where the change is within the scatter of the readings.
package trend

import (
	"time"

	"handtight/pressure/process/membrane"
	"handtight/pressure/quantity"
)

// Maybe is a figure that may not have been read.
type Maybe[Q ~float64] struct {
	Value Q
	Read  bool
}

// Known is a figure that was read.
func Known[Q ~float64](q Q) Maybe[Q] { return Maybe[Q]{q, true} }

// Reading is one line of a log. Product, Feed pressure and Water are needed for anything to
// be said of the membrane.
type Reading struct {
	Date          time.Time
	BeforeFilters Maybe[quantity.Pressure]
	AfterFilters  Maybe[quantity.Pressure]
	Feed          Maybe[quantity.Pressure] // at the vessel's inlet
	Brine         Maybe[quantity.Pressure] // at its outlet
	Product       Maybe[quantity.Flow]
	Salt          Maybe[membrane.MilligramPerLitre]
	Water         Maybe[quantity.Temperature]
	Salinity      Maybe[quantity.Salinity] // of the sea, where it was measured
}

// Plant is what a log does not say.
type Plant struct {
	Feed     quantity.Flow     // what the pump delivers when it is well; 0: not known
	Salinity quantity.Salinity // of the sea
	// Expected is what the plant makes by its makers' tests, at Standard conditions; not Read:
	// the first readings are the base.
	Expected Maybe[quantity.Flow]
}

// Cause is what a change comes from.
type Cause uint8

// The causes that are told apart. Unclear is a change that fits none of them; Partly is no change in
// what was read, where not all was read that would show one.
const (
	Nothing Cause = iota
	ColdWater
	Fouling
	Scale
	LeakingSeal
	PumpWear
	BlockedFilter
	Unclear
	Partly
)

var words = [...]struct{ name, first, not string }{
	Nothing:       {"no fault", "Nothing to do: keep the log.", "Do not clean an element that has not lost: cleaning wears it."},
	ColdWater:     {"cold water", "Nothing is wrong: cold water passes a membrane more slowly. Run longer.", "Do not raise the pressure above the element's and the vessel's limits, and do not clean for it."},
	Fouling:       {"fouling", "Look at the filters and at what the intake takes in; then clean the element as its maker says.", "Do not raise the pressure to make up for it: it packs the dirt. Do not clean with anything that holds chlorine."},
	Scale:         {"scale", "Look at the recovery: less pressure or more feed; then clean with an acid that the element's maker allows.", "Do not clean with an alkali first: it sets scale. Do not go on with the throttle further shut."},
	LeakingSeal:   {"a leaking seal or O-ring", "Look at the O-rings of the product tube and the element's seal: open the vessel with no pressure in it, and measure the salt at each end.", "Do not clean the element for it, and do not drink what is over your limit of salt."},
	PumpWear:      {"pump wear", "Measure the brine and the product together in a bucket: it is less than the pump's flow. Then look at its valves, packings and belt.", "Do not shut the throttle further to hold the pressure: the element then gets too little water."},
	BlockedFilter: {"a blocked filter", "Change the cartridges, the finest last; look at the strainer.", "Do not run on: a starved pump knocks and wears. Do not wash and turn a cartridge round."},
	Unclear:       {"a change that fits no single cause", "Check the instruments first: gauge, meter and probe against a second one.", "Do not clean or buy before the readings agree."},
	Partly:        {"no fault in what was read, and not all was read", "Read what is asked for below as well, six times or more: of it nothing is known.", "Do not take the plant for sound by this log alone."},
}

// String is the cause in words.
func (c Cause) String() string { return words[min(int(c), len(words)-1)].name }

// First is what to look at first.
func (c Cause) First() string { return words[min(int(c), len(words)-1)].first }

// Not is what not to do.
func (c Cause) Not() string { return words[min(int(c), len(words)-1)].not }
