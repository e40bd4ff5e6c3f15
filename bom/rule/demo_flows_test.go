package rule

import (
	"slices"
	"strings"
)

// The remedies of the demos whose faults are of flows.

const plateA = `flow = "9 L/min"` + "\nmotor"

// widened is the hose before the pumps of the engine demo with another bore, and tails to suit.
func widened(bore string) []amend {
	const both = "ports = { in = '12 mm barb', out = '12 mm barb' }"
	to := strings.ReplaceAll(both, "12 mm", bore)
	feed, fine, raw := "current = \"9 A\"\nrated = \"6 bar\"\n", "flow = \"6 L/min\"\nrated = \"8 bar\"\n", "material = \"bronze\"\nrated = \"6 bar\"\n"
	return change("bore = \"12 mm\"\ncorrugated", "bore = \""+bore+"\"\ncorrugated", feed+both, feed+to, fine+both, fine+to, raw+both, raw+to,
		"in = '12 mm barb', out = '3/8 NPT female'", "in = '"+bore+" barb', out = '3/8 NPT female'", "inboard = '12 mm barb'", "inboard = '"+bore+" barb'")
}

var engineSteps = []step{
	{"suction-lift-high", "feed-pump", "Set it 2 m or less above the water", change(`lift = "2.6 m"`, `lift = "2 m"`)},
	{"suction-lift-high", "feed-pump", "or take one that lifts more", change(`self_priming = "2 m"`, `self_priming = "4 m"`)},
	{"relief-too-small", "relief", "Buy one that passes 34.4 L/min or more at its setting", change(`flow = "20 L/min"`, `flow = "34.4 L/min"`)},
	{"line-loss-high", "lift", "Take 25 mm bore or more there", widened("25 mm")},
	{"feed-pump-too-small", "feed-pump", "Take a feed pump of 69 L/min or more", slices.Concat(widened("29 mm"), change(`flow = "12 L/min"`, `flow = "69 L/min"`))},
	{"voltages-differ", "feed-pump", "Take one of 12 V", change(`motor = "24 V DC"`, `motor = "12 V DC"`)},
	{"voltages-differ", "feed-pump", "if 24 V is right, write supply = \"24 V\" under [duty]", change(`supply = "12 V"`, `supply = "24 V"`)},
	{"filter-overloaded", "fine", "Take one for 35 L/min or more", change(`flow = "6 L/min"`, `flow = "35 L/min"`)},
	{"suction-too-fast", "feed", "Take hose of 29 mm bore or more, and tails to suit", widened("29 mm")},
	{"engine-range-wide", "pump", "Write the engine speeds that it will run at, narrower", change(`"700 to 2600 rpm"`, `"700 to 1100 rpm"`, `product = "110 L/h"`, `product = "40 L/h"`)},
	{"engine-range-wide", "pump", "else an unloader", append(change(`"pump", "tee", "high"`, `"pump", "tee", "unloader", "high"`), put(part("unloader", "unloader", `set = "60 bar"`, `rated = "200 bar"`, `material = "super duplex"`, "ports = { in = '3/8 NPT male', out = '3/8 NPT female', bypass = '3/8 NPT female' }"), part("bypass-out", "overboard"), run("bypass", "unloader.bypass", "bypass-out")))},
	{"pump-too-fast", "pump", "a motor pulley 41 % of what it is", change(`"130:95"`, `"53:95"`, `product = "110 L/h"`, `product = "40 L/h"`)},
	{"suction-npsh", "pump", "Turn the pump slower", slices.Concat(widened("29 mm"), change(`flow = "12 L/min"`, `flow = "69 L/min"`, `"130:95"`, `"53:95"`, `product = "110 L/h"`, `product = "40 L/h"`, "id = \"feed\"\nof = \"stock\"\nlength = \"0.5 m\"", "id = \"feed\"\nof = \"stock\"\nlength = \"0.2 m\"", "id = \"raw\"\nof = \"stock\"\nlength = \"0.6 m\"", "id = \"raw\"\nof = \"stock\"\nlength = \"0.3 m\"", "id = \"lift\"\nof = \"stock\"\nlength = \"0.6 m\"", "id = \"lift\"\nof = \"stock\"\nlength = \"0.3 m\"", "id = \"filtered\"\nof = \"stock\"\nlength = \"0.5 m\"", "id = \"filtered\"\nof = \"stock\"\nlength = \"0.2 m\"", "corrugated = true\n", ""))},
	{"line-loss-high", "high", "Take 11 mm bore or more there", change("bore = '3/16\"'", "bore = '1/2\"'")},
	{"line-too-fast", "high", "Take 13 mm bore or more, and ends to suit", change("bore = '3/16\"'", "bore = '5/8\"'")},
	{"line-too-fast", "brine", "Take 13 mm bore or more, and ends to suit", change("bore = '3/8\"'\nlength = \"0.6 m\"", "bore = '5/8\"'\nlength = \"0.6 m\"")},
	{"element-drop-high", "vessel", "or give it less flow", change(`flow = "14 L/min"`, `flow = "3 L/min"`, `product = "110 L/h"`, `product = "30 L/h"`)},
	{"feed-flow-over-element", "vessel", "or take a smaller pump", change(`flow = "14 L/min"`, `flow = "6 L/min"`, `product = "110 L/h"`, `product = "40 L/h"`)},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"product-below-wanted", "vessel", "Hold 64 bar on the throttle", change(`pressure = "57 bar"`, `pressure = "64 bar"`, `set = "66 bar"`, `set = "71 bar"`, `full_flow = "70 bar"`, `full_flow = "75 bar"`)},
	{"meter-range", "meter", "Take one that reads from 37 to 140 L/h or more", change(`"150 to 900 L/h"`, `"37 to 140 L/h"`)},
	{"hose-corrugated", "raw", "Take hose with a smooth bore before a pump, and take `corrugated` out", change("corrugated = true\n", "")},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
}

// feedRelief is a relief valve between the feed pump and the energy-recovery pump.
var feedRelief = append(change(`"filtered", "fine", "feed", "pump.in"`, `"filtered", "fine", "feed", "feed-tee", "feed-2", "pump.in"`, `set = "95 bar"`, `set = "71 bar"`, `full_flow = "99 bar"`, `full_flow = "75 bar"`),
	put(part("feed-tee", "tee", `rated = "10 bar"`, `material = "bronze"`, "ports = { a = '13 mm barb', b = '13 mm barb', branch = '13 mm barb' }"), part("feed-relief", "relief valve", `set = "5.2 bar"`, `full_flow = "5.8 bar"`, `flow = "12 L/min"`, `rated = "10 bar"`, `material = "bronze"`, "ports = { in = '13 mm barb', out = '13 mm barb' }"),
		"\n[[hose]]\nid = \"feed-2\"\nof = \"stock\"\nlength = \"0.5 m\"\n[[hose]]\nid = \"feed-3\"\nof = \"stock\"\nlength = \"0.5 m\"\n[[hose]]\nid = \"feed-4\"\nof = \"stock\"\nlength = \"0.5 m\"\n", run("feed relief", "feed-tee.branch", "feed-3", "feed-relief", "feed-4", "discharge/feed")))

var recoverySteps = []step{
	{"pressure-over-element", "element", "Guard the high side by a relief on the feed side", feedRelief},
	{"pressure-over-element", "element", "or take an energy-recovery pump of a larger rod", change(`ratio = "7 %"`, `ratio = "12 %"`, `set = "95 bar"`, `set = "71 bar"`, `full_flow = "99 bar"`, `full_flow = "75 bar"`)},
	{"pressure-over-element", "element", "or buy an element for 99 bar or more", change("size = \"2540\"\n\n", "size = \"2540\"\nrated = \"100 bar\"\n\n")},
	{"suction-too-fast", "raw", "Take hose of 16 mm bore or more, and tails to suit", change(`bore = "13 mm"`, `bore = "16 mm"`, "{ in = '13 mm barb', out = '3/8", "{ in = '16 mm barb', out = '3/8", "waste = '13 mm", "waste = '16 mm",
		"[\"12 L/min\", \"0 bar\"]]\nrated = \"10 bar\"\nports = { in = '13 mm barb', out = '13 mm", "[\"12 L/min\", \"0 bar\"]]\nrated = \"10 bar\"\nports = { in = '16 mm barb', out = '16 mm",
		"micron\"\nrated = \"10 bar\"\nports = { in = '13 mm barb', out = '13 mm", "micron\"\nrated = \"10 bar\"\nports = { in = '16 mm barb', out = '16 mm",
		"rated = \"6 bar\"\nports = { in = '13 mm barb', out = '13 mm", "rated = \"6 bar\"\nports = { in = '16 mm barb', out = '16 mm",
		"inboard = '13 mm", "inboard = '16 mm", "kind = \"overboard\"\nports = { in = '13 mm", "kind = \"overboard\"\nports = { in = '16 mm")},
	{"energy-recovery-stall", "pump", "Put a relief on the feed side that passes the whole feed at 5.8 bar or less", feedRelief},
	{"energy-recovery-stall", "pump", "or take parts that hold 100 bar, and set their relief a tenth below that", change(`rated = "83 bar"`, `rated = "100 bar"`, `set = "95 bar"`, `set = "90 bar"`, `full_flow = "99 bar"`, `full_flow = "94 bar"`)},
	{"under-rated", "vessel", "Buy it for 105 bar or more", change(`rated = "83 bar"`, `rated = "105 bar"`)},
	{"energy-recovery-mismatch", "vessel", "Take a smaller element", change("inside = \"vessel\"\nsize = \"2540\"", "inside = \"vessel\"\nsize = \"2521\"", "size = \"2540\"\nelements", "size = \"2521\"\nelements", `product = "52 L/h"`, `product = "30 L/h"`)},
	{"energy-recovery-mismatch", "vessel", "or one that holds back more", change("inside = \"vessel\"\nsize = \"2540\"", "inside = \"vessel\"\nsize = \"2540\"\nrejection = \"99.8 %\"\nrejection_min = \"99.7 %\"", `product = "52 L/h"`, `product = "30 L/h"`)},
	{"energy-recovery-mismatch", "vessel", "or do not run it in water that warm", change(`"27 to 33 C"`, `"20 to 22 C"`, `product = "52 L/h"`, `product = "30 L/h"`)},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"relief-set-high", "relief", "Buy pump, gauge and relief for 105 bar or more", change("friction = \"0.4 bar\"\nrated = \"100 bar\"", "friction = \"0.4 bar\"\nrated = \"105 bar\"", "flow = \"16 L/min\"\nrated = \"100 bar\"", "flow = \"16 L/min\"\nrated = \"105 bar\"", "scale = \"100 bar\"\nrated = \"100 bar\"", "scale = \"160 bar\"\nrated = \"105 bar\"")},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
}

var coldSteps = []step{
	{"energy-recovery-mismatch", "vessel", "Take a pump of a smaller rod", change(`ratio = "16 %"`, `ratio = "11 %"`, `product = "30 L/h"`, `product = "18 L/h"`)},
	{"energy-recovery-mismatch", "vessel", "a feed pump of more pressure", change(`["0 L/min", "6 bar"], ["5 L/min", "5 bar"], ["9 L/min", "3 bar"]`, `["0 L/min", "10 bar"], ["5 L/min", "9 bar"], ["9 L/min", "8 bar"]`)},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
}

var balticSteps = []step{
	{"water-freezes", "vessel", "write the water that it will run in", change(`"-1 to 8 C"`, `"1 to 8 C"`)},
	{"cable-too-thin", "pump", "Take 9 mm2 or more for 3 %", change(`"6 mm2"`, `"9 mm2"`)},
	{"current-over-supply", "pump", "Have the supply made for 55 A", change(`"25 A"`, `"55 A"`, `"150 Ah"`, `"180 Ah"`)},
	{"current-over-supply", "pump", "or take a smaller pump", change(plateA, "flow = \"4 L/min\"\nmotor")},
	{"current-over-supply", "pump", "a higher voltage", change(`supply = "24 V"`, `supply = "48 V"`, "motor = \"24 V DC, belt\"", "motor = \"48 V DC, belt\"")},
	{"current-over-supply", "pump", "or an engine", change("motor = \"24 V DC, belt\"", "motor = \"engine, belt\"")},
	{"motor-too-weak", "pump", "Take a motor of 650 W or more", change(`"0.5 kW"`, `"650 W"`)},
	{"motor-too-weak", "pump", "or hold less pressure", change(`pressure = "30 bar"`, `pressure = "22 bar"`, `product = "50 L/h"`, `product = "20 L/h"`)},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
}

var gulfSteps = []step{
	{"power-impossible", "pump", "Ask for the current at this flow and pressure", change(`"24 A"`, `"44 A"`)},
	{"element-size-unknown", "element", "write `size = \"2540\"`", change(`about = "seawater element"`, `size = "2540"`)},
	{"element-size-unknown", "element", "or the sheet's `area` and `product`", change(`about = "seawater element"`, "area = \"2.8 m2\"\nproduct = \"110 L/h\"")},
	{"feed-pump-not-said", "pump", "Put a feed pump of about 18 L/min before the filters", change("kind = \"check valve\"\nmaterial = \"bronze\"", "kind = \"feed pump\"\ntype = \"diaphragm\"\nflow = \"18 L/min\"\nshutoff = \"2.5 bar\"\nself_priming = \"2 m\"\nmaterial = \"pp\"")},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"water-too-warm", "vessel", "write the water that it will run in", change(`"42 to 50 C"`, `"30 to 44 C"`)},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
}

var redseaSteps = []step{
	{"product-below-wanted", "vessel", "Hold 59 bar on the throttle", change(`pressure = "37 bar"`, `pressure = "59 bar"`, `set = "64 bar"`, `set = "66 bar"`, `full_flow = "68 bar"`, `full_flow = "70 bar"`)},
	{"battery-too-small", "pump", "Make less water a day", change(`"600 L"`, `"30 L"`)},
	{"battery-too-small", "pump", "or run it with the engine", change(`motor = "24 V DC, belt"`, `motor = "engine, belt"`)},
	{"pressure-far-from-good", "vessel", "Hold more pressure", change(`pressure = "37 bar"`, `pressure = "50 bar"`)},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"product-more-than-pump", "vessel", "Take a pump of 10 L/min or more, with a motor to suit", change(plateA, "flow = \"10 L/min\"\nmotor")},
	{"product-more-than-pump", "vessel", "or want less", change(`product = "85 L/h"`, `product = "40 L/h"`)},
	{"water-too-salty", "vessel", "Hold 48 bar", change(`pressure = "37 bar"`, `pressure = "48 bar"`)},
	{"water-too-salty", "vessel", "or take an element that holds back more", change("inside = \"vessel\"\nsize = \"2540\"", "inside = \"vessel\"\nsize = \"2540\"\nrejection = \"99.8 %\"\nrejection_min = \"99.7 %\"")},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
}

var dripSteps = []step{
	{"pressure-below-osmotic", "vessel", "what is wanted besides takes another pump or element", change(`pressure = "24 bar"`, `pressure = "54 bar"`, `product = "130 L/h"`, `product = "45 L/h"`)},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"product-more-than-pump", "vessel", "Take a pump of 15 L/min or more, with a motor to suit", change("flow = \"6 L/min\"\nmotor", "flow = \"15 L/min\"\nmotor", `"1.5 kW"`, `"3 kW"`)},
	{"product-more-than-pump", "vessel", "or want less", change(`product = "130 L/h"`, `product = "30 L/h"`)},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
}

var trickleSteps = []step{
	{"feed-too-small", "vessel", "Take a pump of 17 L/min or more on its plate", change("flow = \"7 L/min\"\nmotor", "flow = \"17 L/min\"\nmotor", `flow = "16 L/min"`, `flow = "20 L/min"`, `"1.5 kW"`, `"3 kW"`)},
	{"feed-too-small", "vessel", "or a smaller element", change("inside = \"vessel\"\nsize = \"4040\"", "inside = \"vessel\"\nsize = \"2540\"", "size = \"4040\"\nelements", "size = \"2540\"\nelements")},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
	{"polarisation-high", "vessel", "Take a smaller element", change("inside = \"vessel\"\nsize = \"4040\"", "inside = \"vessel\"\nsize = \"2540\"", "size = \"4040\"\nelements", "size = \"2540\"\nelements")},
	{"polarisation-high", "vessel", "or more feed", change("flow = \"7 L/min\"\nmotor", "flow = \"14 L/min\"\nmotor")},
	{"product-back-pressure", "vessel", "Let the product run into a lower tank", change(`height = "8 m"`, `height = "1 m"`)},
}

var longrowSteps = []step{
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"meter-range", "meter", "Take one that reads from 78 to 170 L/h or more", change(`"10 to 110 L/h"`, `"78 to 170 L/h"`)},
	{"stainless-galls", "pump.out - tee.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
	{"recovery-too-high", "vessel", "Take a pump that delivers 10 L/min or more (11 L/min on its plate)", change("flow = \"7.5 L/min\"", "flow = \"11 L/min\"")},
	{"recovery-too-high", "vessel", "or hold less pressure", change(`pressure = "54 bar"`, `pressure = "44 bar"`)},
}
