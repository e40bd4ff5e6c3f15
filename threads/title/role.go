package title

// role is what a figure is, where it is no size of an end: a length, a count, a
// class. Every figure that no end takes has one, so that it can be named.
type role uint8

const (
	noRole role = iota
	asRating
	asBore
	asPhi
	asHex // a spanner's size behind a size, else the form of the part
	asCount
	asDenied     // what the text says that the part has not
	asThousands  // a pressure with a comma or a blank that may part its thousands
	asOtherClass // a second class, higher than the part's
	asEndMark    // what numbers the ends of a hose
	asLength
	// from here on the figure is no size of an end wherever it stands
	asSpanner
	asDial
	asMeasure
	asHole
	asCore
	asDrive
	asTurn
	asAngle
	asSetting
	asStandard
	asClass
	asSchedule
	asSDR
	asCode
	asVolume
	asFlow
	asWeight
	asPower
	asFrequency
	asCharge
	asCurrent
	asVoltage
	asCelsius
	asFahrenheit
	asFineness
	asShare
	asSpeed
	asTime
	asArea
	asTorque
	asScale      // the beginning of a range
	asPressure   // a pressure that is no rating
	asGrade      // R7 of a hose, A4 of a steel
	asElement    // 2.5 x 40: what a housing holds
	asRing       // the measures of a washer
	asRepeat     // the same size in other words
	asWallOf     // the wall of a tube, 15x1.5
	asScaleOf    // a second pressure, higher than the rating
	asBoreBeside // a nominal bore beside ends that are given another way
	asNose       // the nose of a pressure washer's joint
	asPort       // how many ends the part has
	asPrice      // an amount of money
	asBoreOf     // the bore of a hose
	asWays       // 5/2 of a valve: its ports and its positions
	asDate       // of a calendar
	asListed     // the number of the line in its list
	asEither     // one of two sizes that the text gives
	asWhatFor    // of what the part is for
	asNothing    // nothing says what it is
)

// roleNamed are the roles that a word of the lexicon gives the figure beside it.
var roleNamed = map[string]role{
	"pressure": asRating, "dn": asBore, "phi": asPhi, "hex": asHex, "count": asCount, "length": asLength, "spanner": asSpanner,
	"dial": asDial, "measure": asMeasure, "hole": asHole, "core": asCore, "drive": asDrive, "turn": asTurn, "degree": asAngle,
	"setting": asSetting, "standard": asStandard, "class": asClass, "schedule": asSchedule, "sdr": asSDR, "code": asCode,
	"volume": asVolume, "flow": asFlow, "weight": asWeight, "power": asPower, "frequency": asFrequency, "charge": asCharge,
	"current": asCurrent, "voltage": asVoltage, "celsius": asCelsius, "fahrenheit": asFahrenheit, "fineness": asFineness,
	"share": asShare, "speed": asSpeed, "time": asTime, "area": asArea, "torque": asTorque, "price": asPrice, "vacuum": asScale, "qty": asCount,
}

// whyNot says why a figure of a role is no size of an end, and is not used.
var whyNot = map[role]string{
	asCount: "a count", asDenied: "the text says that it is not", asThousands: "thousands or decimals: ask for the figure", asOtherClass: "a second class, where the lower is taken", asEndMark: "the end's number in the text", asLength: "a length", asSpanner: "a spanner's size", asDial: "a dial", asMeasure: "a measure of the part",
	asHole: "a hole", asCore: "a count of cores", asDrive: "a tool's drive", asTurn: "turns", asAngle: "an angle", asSetting: "a setting",
	asCode: "a code or type", asVolume: "a volume", asFlow: "a flow", asWeight: "a weight", asPower: "a power", asFrequency: "a frequency",
	asCharge: "a charge", asCurrent: "a current", asVoltage: "a voltage", asFineness: "a fineness", asShare: "a share", asSpeed: "a speed",
	asTime: "a time", asArea: "a section", asTorque: "a torque", asScale: "the beginning of a range", asGrade: "a grade",
	asElement: "the size of what the housing holds", asRing: "a measure of the ring", asWallOf: "the wall of the tube",
	asBoreBeside: "a nominal bore, where the ends are given another way", asScaleOf: "a second pressure, where the lower is taken as the rating", asNose: "the nose of a washer joint", asPort: "a count of ends", asHex: "a spanner's size", asPhi: "an outside diameter",
	asBore: "a nominal bore that is not known", asPrice: "a price", asBoreOf: "the bore of the hose", asWays: "a valve's ports and positions", asDate: "a date", asListed: "the line's number in its list", asEither: "one of two sizes, which is asked", asNothing: "nothing says what it is", asWhatFor: "said of what the part is for",
}

// used roles are those that the reading uses in another field, or that say
// again what an end has.
func (r role) used() bool {
	switch r {
	case asRating, asClass, asSchedule, asSDR, asStandard, asCelsius, asFahrenheit, asPressure, asRepeat:
		return true
	}
	return false
}

// other reports whether a word of this role takes the figure away from the ends
// wherever it stands.
func (r role) other() bool { return r >= asSpanner }

// drop takes a figure away from the ends, in a role.
func (f *figure) drop(r role) figureKind {
	f.kind, f.role = junkFigure, r
	return junkFigure
}
