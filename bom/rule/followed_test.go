package rule

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/finding"
)

// part is a table of an item, for an edit that puts one in.
func part(id, kind string, keys ...string) string {
	return fmt.Sprintf("\n[[item]]\nid = %q\nkind = %q\n%s\n", id, kind, strings.Join(keys, "\n"))
}

// first puts tables before the first run of a fragment.
func first(tables ...string) amend { return amend{"[[run]]", strings.Join(tables, "") + "\n[[run]]"} }

const (
	leftRight = `path = ["left", "right"]`
	mended    = `path = ["left", "between", "right"]`
)

// followed are the remedies of the rules, followed to the letter in the rule's wrong example. Each
// alternative that a remedy offers is a line; `says` stands in the remedy that is printed.
var followed = []struct {
	slug, says string
	edits      []amend
}{
	{"same-sex", "Buy one of the two as female", []amend{{"id = \"right\"\nkind = \"adaptor\"\nports = { a = '1/2 NPT male'", "id = \"right\"\nkind = \"adaptor\"\nports = { a = '1/2 NPT female'"}}},
	{"same-sex", "or a socket (female both ends) of 1/2-14 NPT", []amend{{leftRight, mended}, first(part("between", "coupling", "ports = { a = '1/2-14 NPT female', b = '1/2-14 NPT female' }"))}},
	{"thread-does-not-start", "Buy an adaptor 3/4-14 NPT female x 1/2-14 NPT male", []amend{{leftRight, mended}, first(part("between", "adaptor", "ports = { a = '3/4-14 NPT female', b = '1/2-14 NPT male' }"))}},
	{"thread-does-not-start", "or another part: ", []amend{{"'1/2 NPT female'", "'3/4-14 NPT female'"}}},
	{"thread-too-slack", "Buy an adaptor G 1/4 female x M14x1.5 male", []amend{{leftRight, mended}, first(part("between", "adaptor", "ports = { a = 'G 1/4 female', b = 'M14x1.5 male' }"))}},
	{"thread-too-slack", "or another part: ", []amend{{"'M14x1.5 female'", "'G 1/4 female'"}}},
	{"pitches-differ", "Buy an adaptor 1/4-18 NPT female x R 1/4 male", []amend{{leftRight, mended}, first(part("between", "adaptor", "ports = { a = '1/4-18 NPT female', b = 'R 1/4 male' }"))}},
	{"pitches-differ", "or another part: ", []amend{{"'Rc 1/4'", "'1/4-18 NPT female'"}}},
	{"flank-angles-differ", "Buy an adaptor 1/2-14 NPT female x R 1/2 male", []amend{{leftRight, mended}, first(part("between", "adaptor", "ports = { a = '1/2-14 NPT female', b = 'R 1/2 male' }"))}},
	{"flank-angles-differ", "or another part: ", []amend{{"'1/2 NPT male'", "'R 1/2 male'"}}},
	{"parallel-in-taper", "Use an R male with tape", []amend{{"'G 1/2 male'", "'R 1/2 male'"}}},
	{"parallel-in-taper", "or a G female with a washer", []amend{{"'Rc 1/2'", "'G 1/2 female'"}}},
	{"taper-in-parallel", "Use a male with the 30 degree chamfer under a swivel", []amend{{"'1/2 NPT male'", "'1/2 NPSM male chamfer'"}, {"'1/2 NPSM female'", "'1/2 NPSM female swivel'"}}},
	{"taper-in-parallel", "or an adaptor NPT female x NPSM male", []amend{{leftRight, mended}, first(part("between", "adaptor", "ports = { a = '1/2 NPT female', b = '1/2 NPSM male' }"))}},
	{"seats-differ", "Use ends of one cone angle", []amend{{"'-4 SAE45 female swivel'", "'-4 JIC female swivel'"}}},
	{"seats-differ", "Use ends of one cone angle", []amend{{"'-4 JIC male'", "'-4 SAE45 male'"}}},
	{"seat-not-said", "write `60 cone`", []amend{{"'G 1/2 female swivel'", "'G 1/2 female swivel 60 cone'"}, {"'G 1/2 male'", "'G 1/2 male chamfer'"}}},
	{"seat-not-said", "or `flat face`", []amend{{"'G 1/2 female swivel'", "'G 1/2 female swivel flat face'"}}},
	{"hands-differ", "right hand in place of G 1/2 LH", []amend{{"'G 1/2 male LH'", "'G 1/2 male'"}}},
	{"hands-differ", "or left hand in place of G 1/2", []amend{{"'G 1/2 female'", "'G 1/2 female LH'"}}},
	{"flanges-differ", "Buy the two ferrules of one flange", []amend{{"'2 in ferrule'", "'1 1/2 in ferrule'"}}},
	{"flanges-differ", "or a reducer with a ferrule of each", []amend{{leftRight, mended}, first(part("between", "adaptor", "ports = { a = '1 1/2 in ferrule', b = '2 in ferrule' }"))}},
	{"nothing-seals", "Buy the part with the male as an ORB stud", []amend{{"b = '-6 JIC male'", "b = '-6 ORB male'"}}},
	{"nothing-seals", "or screw an O-ring stud with a flare on its other end into the port, and join the two flares by a swivel", []amend{{leftRight, `path = ["left", "swivel", "between", "right"]`}, first(part("swivel", "coupling", "ports = { a = '-6 JIC female swivel', b = '-6 JIC female swivel' }"), part("between", "adaptor", "ports = { a = '-6 JIC male', b = '-6 ORB male' }"))}},
	{"makeshift-joint", "for more use a G male with a bonded washer", []amend{{"'R 1/2'", "'G 1/2 male'"}}},
	{"ends-of-different-sorts", "Put hose of 13 mm bore between them, and a hose tail 1/2-14 NPT female x 13 mm barb", []amend{{leftRight, `path = ["left", "tail", "piece", "right"]`},
		first(part("tail", "hose tail", "ports = { a = '1/2-14 NPT female', b = '13 mm barb' }"), part("stock", "hose stock", `bore = "13 mm"`), "\n[[hose]]\nid = \"piece\"\nof = \"stock\"\nlength = \"1 m\"\n")}},
	{"barb-and-bore-differ", "both 16 mm", []amend{{`bore = "19 mm"`, `bore = "16 mm"`}}},
	{"barb-and-bore-differ", "or both 19 mm", []amend{{"16 mm barb long", "19 mm barb long"}}},
	{"end-left-open", "parallel (G) or taper (R)", []amend{{"'1/2 BSP male'", "'R 1/2 male'"}}},
	{"end-left-open", "Look for P or T after BSP", []amend{{"'1/2 BSP male'", "'1/2 BSPT male'"}}},
	{"end-not-said", "write ports = { in = '…' } on `meter`", []amend{{"kind = \"flow meter\"", "kind = \"flow meter\"\nports = { in = '1/2 NPT female' }"}}},
	{"nothing-turns", "a union", []amend{{"kind = \"nipple\"", "kind = \"union\""}}},
	{"nothing-turns", "an end with a swivel nut", []amend{{"b = '3/4 NPT male'", "b = '3/4 NPSM male'"}, {"about = \"panel meter\"\nports = { in = '3/4 NPT female'", "about = \"panel meter\"\nports = { in = '3/4 NPSM female swivel'"}}},
	{"nothing-turns", "or a hose on a tail", []amend{{`["housing", "nipple", "meter"]`, `["housing", "tail/+", "piece", "tail/+", "meter"]`}, {`id = "nipple"`, "id = \"nipple\"\nextra = 1"},
		first(part("tail", "hose tail", "ports = { a = '3/4 NPT male', b = '19 mm barb long' }"), part("stock", "hose stock", `bore = "19 mm"`), "\n[[hose]]\nid = \"piece\"\nof = \"stock\"\nlength = \"1 m\"\n")}},
	{"port-open", "Join it in a run", []amend{{"[[run]]", "[[run]]\nname = \"branch\"\npath = [\"tee.branch\", \"nipple/third\", \"cap/third\"]\n[[run]]"}}},
	{"port-open", "put a plug or cap on it", []amend{{"[[run]]", part("plug", "plug", "ports = { a = '1/2-14 NPT male' }") + "[[run]]\nname = \"branch\"\npath = [\"tee.branch\", \"plug\"]\n[[run]]"}}},
	{"port-open", "or write \"tee.branch\" under `plugged`", []amend{{"currency = \"EUR\"", "currency = \"EUR\"\nplugged = [\"tee.branch\"]"}}},
	{"port-open", "or `left_open`", []amend{{"currency = \"EUR\"", "currency = \"EUR\"\nleft_open = [\"tee.branch\"]"}}},
	{"intake-without-valve", "Screw a seacock straight onto skin", []amend{{`["skin", "tail", "hose"`, `["skin", "cock.sea>inboard", "hose"`}, first(part("cock", "seacock", "ports = { sea = '3/4 NPS female', inboard = '19 mm barb long' }"))}},
	{"intake-without-valve", "or lead it out above the waterline", []amend{{"below_waterline = true", ""}}},
	{"brine-into-tank", "Lead the brine overboard by a line of its own", []amend{{`"throttle", "tank-2"]`, `"throttle", "discharge"]`}}},
	{"brine-into-bilge", "Lead the brine overboard, above the waterline", []amend{{`"throttle", "bilge"]`, `"throttle", "discharge"]`}}},
	{"product-port-closed", "Lead vessel.product to a tank and a drain with nothing that shuts between", []amend{{`["vessel.product", "cap"]`, `["vessel.product", "ways.common"]` + "\n[[run]]\nname = \"t\"\npath = [\"ways.a\", \"tank\"]\n[[run]]\nname = \"d\"\npath = [\"ways.b\", \"drain\"]"},
		{"[[run]]\nname = \"product\"", part("tank", "tank") + part("drain", "drain") + part("ways", "selector valve", `between = "open"`, `material = "316"`, `rated = "200 bar"`, "ports = { common = '1/4 NPT male swivel', a = '1/4 NPT female', b = '1/4 NPT female' }") + "[[run]]\nname = \"product\""}}},
	{"product-no-drain-way", "Put a selector into the product line", []amend{{`["vessel.product", "tank"]`, `["vessel.product", "ways.common"]` + "\n[[run]]\nname = \"t\"\npath = [\"ways.a\", \"tank\"]\n[[run]]\nname = \"d\"\npath = [\"ways.b\", \"drain\"]"},
		{"[[run]]\nname = \"product\"", part("drain", "drain") + part("ways", "selector valve", `between = "open"`, `material = "316"`, `rated = "200 bar"`, "ports = { common = '1/4 NPT male swivel', a = '1/4 NPT female', b = '1/4 NPT female' }") + "[[run]]\nname = \"product\""}}},
	{"element-missing", "Add the element as an item", []amend{{"[[item]]\nid = \"rings\"", part("element", "membrane element", `size = "2521"`, `inside = "vessel"`) + "[[item]]\nid = \"rings\""}}},
	{"element-and-vessel-differ", "Buy an element of 2.5 x 21 inches", []amend{{"seawater element 2.5 x 40", "seawater element 2.5 x 21"}}},
	{"element-and-vessel-differ", "or another vessel", []amend{{"about = \"2.5 x 21\"", "about = \"2.5 x 40\""}}},
	{"cartridge-and-housing-differ", "Buy a cartridge of 10 inches", []amend{{"pleated, 20 inch", "pleated, 10 inch"}}},
	{"no-strainer", "Put a strainer before feed", []amend{{`"intake", "hose/+", "filter"`, `"intake", "hose/+", "strainer", "hose/+", "filter"`}}},
	{"no-fine-filter", "Put a filter housing with a cartridge of 5 micron before pump", []amend{{`"strainer", "hose/+", "feed"`, `"strainer", "hose/+", "filter", "hose/+", "feed"`}}},
	{"probe-missing", "Put a salinity probe on a tee in the product line", []amend{{`["vessel.product", "jug"]`, `["vessel.product", "probe-tee", "jug"]` + "\n[[run]]\nname = \"probe\"\npath = [\"probe-tee.branch\", \"probe\"]"},
		{"[[run]]\nname = \"product\"", part("probe", "salinity probe", "ports = { in = '1/4 NPT male' }") + part("probe-tee", "tee", `material = "316"`, `rated = "200 bar"`, "ports = { a = '1/4 NPT male', b = '1/4 NPT male', branch = '1/4 NPT female' }") + "[[run]]\nname = \"product\""}}},
	{"probe-missing", "(a salinity probe with `extra = 1`)", []amend{{"[[run]]\nname = \"product\"", part("meter", "salinity probe", "extra = 1") + "[[run]]\nname = \"product\""}}},
	{"throttle-is-quick-valve", "Take a needle valve", []amend{{"ball valve with lever", "needle valve"}}},
	{"throttle-is-quick-valve", "or a regulator that is made to hold pressure", []amend{{"kind = \"brine throttle\"\nabout = \"ball valve with lever\"", "kind = \"back-pressure regulator\"\nset = \"56 bar\""}}},
	{"pressure-over-element", "Hold less on the throttle and set the relief below 41 bar", []amend{{`pressure = "56 bar"`, `pressure = "34 bar"`}, {`set = "65 bar"`, `set = "37.2 bar"`}}},
	{"pressure-over-element", "or buy an element for 71.5 bar or more", []amend{{`rated = "41 bar"`, `rated = "71.5 bar"`}}},
	{"item-not-placed", "Place it in a run", []amend{{`path = ["y", "x"]`, `path = ["y", "elbow", "x"]`}}},
	{"item-not-placed", "name the unit it is `inside` of", []amend{{`kind = "elbow"`, "kind = \"elbow\"\ninside = \"x\""}}},
	{"item-not-placed", "write `extra` if it is a store", []amend{{`kind = "elbow"`, "kind = \"elbow\"\nextra = 1"}}},
	{"one-clamp-below-waterline", "Take a long tail and two clamps", []amend{{"'19 mm barb'", "'19 mm barb long'"}}},
	{"filters-out-of-order", "Put the coarse filter first", []amend{{`["f5", "union", "f20"]`, `["f20", "union", "f5"]`}}},
	{"under-rated", "Buy it of another sort or class, for 71.5 bar or more", []amend{{`spec = "SAE 100R6"`, `spec = "SAE 100R8"`}}},
	{"rating-unknown", "Write `rated` on `pump` from its data sheet", []amend{{"flow = \"9 L/min\"\nports = { in = '1/2 NPT female', out = '3/8 NPT female' }", "flow = \"9 L/min\"\nrated = \"71.5 bar\"\nports = { in = '1/2 NPT female', out = '3/8 NPT female' }"}}},
	{"rated-above-standard", "Check the data sheet", []amend{{`rated = "700 bar"`, `rated = "275 bar"`}}},
	{"threads-too-weak", "Buy the weaker part of a stronger material", []amend{{`material = "PVC"`, `material = "316"`}}},
	{"no-way-out", "its own", []amend{{`"hp-tee.branch", "relief", "out-tee.branch"]`, `"hp-tee.branch", "relief", "relief-out"]`}, {`"throttle", "out-tee", "out-valve", "discharge"]`, `"throttle", "discharge"]`}, {"id = \"out-tee\"", "id = \"out-tee\"\nextra = 1"}, {"id = \"out-valve\"", "id = \"out-valve\"\nextra = 1"}}},
	{"relief-missing", "Put a relief valve on a tee at its outlet", []amend{{"# no run leads to the relief valve", "[[run]]\nname = \"relief\"\npath = [\"tee.branch\", \"relief\", \"relief-out\"]"}}},
	{"relief-cut-off", "Lead the relief straight from the pump's outlet", []amend{{`"tee.branch", "valve", "relief"`, `"tee.branch", "relief"`}, {`id = "valve"`, "id = \"valve\"\nextra = 1"}}},
	{"relief-set-high", "Set it to 90 bar or less", []amend{{`set = "300 bar"`, `set = "90 bar"`}}},
	{"relief-set-low", "61.6 bar", []amend{{`set = "50 bar"`, `set = "61.6 bar"`}}},
	{"relief-margin-thin", "Set it to 61.6 bar or more", []amend{{`set = "60 bar"`, `set = "61.6 bar"`}}},
	{"relief-too-small", "Buy one that passes 9 L/min or more at its setting", []amend{{`flow = "2 L/min"`, `flow = "9 L/min"`}}},
	{"hose-may-collapse", "rated for a vacuum of 0.85 bar or more, and write `vacuum` on `stock`", []amend{{`rated = "6 bar"` + "\n[[hose]]", "rated = \"6 bar\"\nvacuum = \"0.85 bar\"\n[[hose]]"}}},
	{"hose-too-short", "Order it 433 mm long or more", []amend{{`length = "0.15 m"`, `length = "433 mm"`}}},
	{"hose-too-short", "or take an elbow end", []amend{{`bend = "180 deg"`, `bend = "0 deg"`}}},
	{"pressure-not-said", "Write `pressure` on `house`", []amend{{"kind = \"house supply\"", "kind = \"house supply\"\npressure = \"3 bar\""}}},
	{"flush-runs-to-sea", "Put a one-way valve between feed and the flush tee", []amend{{`"feed", "tee", "pump"]`, `"feed", "raw-check", "tee", "pump"]`}, {"id = \"feed\"\n", "id = \"raw-check\"\nkind = \"check valve\"\nmaterial = \"super duplex\"\nrated = \"16 bar\"\nports = { in = '1/2 NPT female', out = '1/2 NPT male' }\n[[item]]\nid = \"feed\"\n"}}},
	{"flush-runs-to-sea", "or take a feed pump whose own valves hold (diaphragm)", []amend{{`type = "centrifugal"`, `type = "diaphragm"`}}},
	{"flush-misses-membrane", "look at the arrows on the one-way valves", []amend{{`"check.out>in"`, `"check"`}}},
	{"sea-reaches-house", "Put a one-way valve between the flush valve and the plant", []amend{{`"valve", "nipple", "tee.branch"`, `"valve", "check", "tee.branch"`}, {`id = "nipple"`, "id = \"nipple\"\nextra = 1"}}},
	{"house-water-runs", "Put a flush valve (a solenoid", []amend{{`"carbon", "check", "tee.branch"`, `"carbon", "valve", "check", "tee.branch"`}}},
	{"house-water-runs", "or a shut-off valve that says `normal = \"flush\"`", []amend{{`"carbon", "check", "tee.branch"`, `"carbon", "cock", "check", "tee.branch"`}, {"[[run]]\nname = \"flush\"", part("cock", "shut-off valve", `normal = "flush"`, `material = "super duplex"`, `rated = "16 bar"`, "ports = { in = '1/2 NPT male', out = '1/2 NPT female' }") + "[[run]]\nname = \"flush\""}}},
	{"pump-gets-no-water", "Turn about what stands the wrong way round", []amend{{"raw-check.out>in", "raw-check"}}},
	{"relief-stands-open", "Turn about what stands the wrong way round", []amend{{"hp-check.out>in", "hp-check"}}},
	{"membrane-without-pressure", "Put the brine throttle behind vessel.brine", []amend{{`"vessel.brine", "discharge"]`, `"vessel.brine", "throttle", "discharge"]`}}},
	{"gauge-range", "Take one that reads to 100 bar or more", []amend{{`scale = "60 bar"`, `scale = "100 bar"`}}},
	{"gauge-missing", "Put a gauge on a tee between pump and the throttle", []amend{{`["gauge-tee.branch", "plug"]`, `["gauge-tee.branch", "gauge"]`}}},
	{"supply-too-weak", "Take a smaller pump", []amend{{`flow = "9 L/min"`, `flow = "5 L/min"`}, {`flow = "10 L/min"`, `flow = "9 L/min"`}}},
	{"supply-too-weak", "a motor and a `supply` of a higher voltage", []amend{{`supply = "12 V"`, `supply = "24 V"`}}},
	{"supply-too-weak", "or an engine or mains drive, and write it as the pump's `motor`", []amend{{`flow = "9 L/min"`, "flow = \"9 L/min\"\nmotor = \"engine\""}}},
	{"voltages-differ", "Take one of 12 V", []amend{{"diaphragm pump, 24 V", "diaphragm pump, 12 V"}}},
	{"voltages-differ", "or one for both", []amend{{"diaphragm pump, 24 V", "diaphragm pump, 12/24 V"}}},
	{"voltages-differ", "write supply = \"24 V\" under [duty]", []amend{{`supply = "12 V"`, `supply = "24 V"`}}},
	{"voltages-differ", "or what feeds it (\"converter\") in its words", []amend{{"diaphragm pump, 24 V", "diaphragm pump, 24 V, converter"}}},
	{"valve-shuts-fast", "Take wider", []amend{{`bore = "10 mm"`, `bore = "19 mm"`}, {"'10 mm barb'", "'19 mm barb'"}}},
	{"valve-shuts-fast", "or shorter hose", []amend{{`length = "6 m"`, `length = "1 m"`}}},
	{"valve-shuts-fast", "(a flush timer valve", []amend{{"solenoid valve", "flush timer valve"}}},
	{"valve-shuts-fast", "or one that is turned by hand)", []amend{{"kind = \"solenoid valve\"", "kind = \"shut-off valve\"\nnormal = \"flush\""}}},
	{"part-too-warm", "Move it to where it is cooler", []amend{{`space = "80 C"`, `space = "43 C"`}}},
	{"part-too-warm", "or buy it of a material that is rated there", []amend{{"material = \"PVC\"\nports = { a = '1/2 NPT male plastic', b = '1/2 NPT male plastic' }", "material = \"316\"\nports = { a = '1/2 NPT male', b = '1/2 NPT male' }"}}},
	{"relief-discharge", "Lead it by hose overboard", []amend{{`kind = "drain"`, `kind = "overboard"`}}},
	{"rigid-on-pump", "Put a length of high-pressure hose between pump and vessel", []amend{{`["pump", "nipple", "vessel.feed"]`, `["pump", "piece", "vessel.feed"]`}, {`id = "nipple"`, "id = \"nipple\"\nextra = 1"}, first("\n[[hose]]\nid = \"piece\"\nspec = \"SAE 100R8\"\nbore = '1/2\"'\nlength = \"1 m\"\nends = ['1/2 NPT male', '1/2 NPT male swivel']\n")}},
	{"suction-too-fast", "Take hose of 15 mm bore or more, and tails to suit", []amend{{`bore = "10 mm"`, `bore = "15 mm"`}, {"'10 mm barb'", "'15 mm barb'"}}},
	{"material-not-for-seawater", "Buy it of bronze", []amend{{`material = "brass"`, `material = "bronze"`}}},
	{"material-not-for-seawater", "or above the waterline of polypropylene for low pressure", []amend{{`material = "brass"`, `material = "polypropylene"`}, {"below_waterline = true", ""}}},
	{"material-unknown", "write `material`", []amend{{"kind = \"hose tail\"", "kind = \"hose tail\"\nmaterial = \"bronze\""}}},
	{"galvanic-pair", "Buy both of one metal", []amend{{`material = "titanium"`, `material = "bronze"`}}},
	{"stainless-galls", "Add the paste as an item that says \"anti-seize\"", []amend{first(part("paste", "tape", `about = "anti-seize paste"`))}},
	{"product-not-for-drinking", "write it into `about`, as in about = \"push-in elbow, drinking water quality\"", []amend{{"material = \"acetal\"", "material = \"acetal\"\nabout = \"push-in elbow, drinking water quality\""}}},
	{"product-not-for-drinking", "NSF/ANSI/CAN 61", []amend{{"material = \"acetal\"", "material = \"acetal\"\nabout = \"NSF/ANSI/CAN 61\""}}},
	{"product-not-for-drinking", "BS 6920", []amend{{"material = \"acetal\"", "material = \"acetal\"\nabout = \"BS 6920\""}}},
	{"chlorine-on-membrane", "Put a carbon filter into the flush line, before its valve", []amend{{`"house", "valve"`, `"house", "carbon", "valve"`}, first(part("carbon", "carbon filter", "ports = { in = 'Rp 1/2 swivel', out = 'R 1/2' }"))}},
	{"chlorine-on-membrane", "or write holds = \"product\" on `house`", []amend{{`kind = "house supply"`, "kind = \"house supply\"\nholds = \"product\""}}},
	{"title-not-used", "Write in keys of the item what matters of a title", []amend{{"title = \"Elbow 1/2 NPT male x 1/2 NPT female, 316, frobnicated, tested to 90 bar\"", "kind = \"elbow\"\nrated = \"60 bar\"\nmaterial = \"316\"\nports = { a = '1/2 NPT male', b = '1/2 NPT female' }"}}},
	{"rate-inverted", "write under [rates] what one TRY costs in EUR", []amend{{`TRY = "48.8"`, `TRY = "0.0205"`}}},
	{"water-freezes", "write the water that it will run in", []amend{{`"-2.2 to 4 C"`, `"4 to 10 C"`}}},
	{"pressure-below-osmotic", "Hold 46 bar on the throttle", []amend{{`pressure = "24 bar"`, `pressure = "46 bar"`}}},
	{"pressure-far-from-good", "Hold more pressure", []amend{{`pressure = "30 bar"`, `pressure = "40 bar"`}}},
	{"product-below-wanted", "Hold 80 bar on the throttle, if the element, the vessel, the relief and the motor allow it", []amend{{`pressure = "54 bar"`, `pressure = "80 bar"`}, {`set = "64 bar"`, `set = "90 bar"`}, {`full_flow = "68 bar"`, `full_flow = "96 bar"`}, {`rated = "83 bar"`, `rated = "100 bar"`}, {`motor_power = "1.5 kW"`, `motor_power = "3 kW"`}, {`motor = "24 V DC, belt"`, `motor = "engine, belt"`}}},
	{"product-more-than-pump", "or want less", []amend{{`product = "170 L/h"`, `product = "50 L/h"`}}},
	{"water-too-salty", "Hold 39 bar", []amend{{`pressure = "36 bar"`, `pressure = "39 bar"`}}},
	{"water-too-salty", "run in water of 10 C or cooler", []amend{{`water = "28 to 30 C"`, `water = "8 to 10 C"`}}},
	{"water-too-salty", "or take an element that holds back more", []amend{{`size = "2540"` + "\n\n", "size = \"2540\"\nrejection = \"99.8 %\"\nrejection_min = \"99.7 %\"\n"}}},
	{"recovery-too-high", "or hold less pressure", []amend{{`pressure = "54 bar"`, `pressure = "46 bar"`}, {`product = "50 L/h"`, `product = "40 L/h"`}}},
	{"feed-flow-over-element", "or take a smaller pump", []amend{{`flow = "30 L/min"`, `flow = "9 L/min"`}}},
	{"polarisation-high", "Take a smaller element", []amend{{`size = "4040"`, `size = "2540"`}}},
	{"element-drop-high", "or give it less flow", []amend{{`flow = "9 L/min"`, `flow = "5.5 L/min"`}}},
	{"water-too-warm", "write the water that it will run in", []amend{{`"40 to 48 C"`, `"20 to 30 C"`}}},
	{"motor-too-weak", "or hold less pressure", []amend{{`pressure = "54 bar"`, `pressure = "40 bar"`}, {`product = "50 L/h"`, `product = "20 L/h"`}}},
	{"power-impossible", "Ask for the current at this flow and pressure", []amend{{`motor_current = "22 A"`, `motor_current = "48 A"`}}},
	{"hose-corrugated", "take `corrugated` out", []amend{{"corrugated = true", ""}}},
	{"pump-too-fast", "a motor pulley 72 % of what it is", []amend{{"pulley = \"80:112\"", "pulley = \"57.6:112\""}}},
	{"battery-too-small", "Make less water a day", []amend{{`litres = "900 L"`, `litres = "60 L"`}}},
	{"battery-too-small", "or run it with the engine", []amend{{`motor = "24 V DC, belt"`, `motor = "engine, belt"`}}},
	{"engine-range-wide", "Write the engine speeds that it will run at, narrower", []amend{{`"700 to 3200 rpm"`, `"1500 to 1900 rpm"`}}},
	{"energy-recovery-stall", "or take parts that hold 90 bar, and set their relief a tenth below that", []amend{{`rated = "83 bar"`, `rated = "90 bar"`}, {`set = "95 bar"`, `set = "81 bar"`}, {`full_flow = "98 bar"`, `full_flow = "85 bar"`}}},
	{"energy-recovery-mismatch", "Take a pump of a smaller rod", []amend{{`ratio = "24 %"`, `ratio = "10 %"`}}},
	{"feed-pump-not-said", "Put a feed pump of about 18 L/min before the filters", []amend{{"kind = \"shut-off valve\"\nmaterial", "kind = \"feed pump\"\ntype = \"diaphragm\"\nflow = \"18 L/min\"\nshutoff = \"2.5 bar\"\nself_priming = \"2 m\"\nmaterial"}}},
	{"element-size-unknown", "write `size = \"2540\"`", []amend{{"inside = \"vessel\"", "inside = \"vessel\"\nsize = \"2540\""}}},
	{"element-size-unknown", "or the sheet's `area` and `product`", []amend{{"inside = \"vessel\"", "inside = \"vessel\"\narea = \"2.8 m2\"\nproduct = \"110 L/h\""}}},
}

// A remedy followed to the letter ends what it is the remedy of: no fault of the file comes of it,
// and no stop that was not there.
func TestRemediesFollowed(t *testing.T) {
	failed := 0
	for _, c := range followed {
		r, ok := Find(c.slug)
		require.True(t, ok, c.slug)
		text := whole(r.Example(r.Wrong))
		before, err := seen(text)
		require.NoError(t, err)
		if why := follow(text, before, c.slug, c.says, c.edits); why != "" {
			failed++
			t.Errorf("%s, followed as %q: %s", c.slug, c.says, why)
		}
	}
	t.Logf("%d of %d remedies worked", len(followed)-failed, len(followed))
}

// follow makes the edits of a remedy and tells what is wrong after it; "" where all is right.
func follow(text string, before []finding.Finding, slug, says string, edits []amend) string {
	was, stops, said := finding.Note, map[string]bool{}, false
	for _, f := range before {
		if f.Slug == slug {
			was, said = min(was, f.Severity), said || strings.Contains(f.Remedy, says)
		}
		if f.Severity == finding.Stop {
			stops[f.Slug+" "+f.At()] = true
		}
	}
	if !said {
		return "no remedy says so"
	}
	for _, e := range edits {
		if !strings.Contains(text, e.from) {
			return fmt.Sprintf("the build has no %q", e.from)
		}
		text = strings.Replace(text, e.from, e.to, 1)
		if strings.Contains(e.from, "'") && !strings.Contains(e.from, "\n") {
			text = strings.ReplaceAll(text, e.from, e.to) // an end that stands at both ports
		}
	}
	after, err := seen(text)
	if err != nil {
		return "the file is at fault: " + err.Error()
	}
	var wrong []string
	for _, f := range after {
		if f.Slug == slug && (f.Severity < finding.Note || was == finding.Note) {
			wrong = append(wrong, "it is still there: "+f.Reason)
		}
		if f.Severity == finding.Stop && f.Slug != slug && !stops[f.Slug+" "+f.At()] && f.Slug != portOpen.Slug { // a fragment has open ends
			wrong = append(wrong, "a new stop: "+f.Slug+" "+f.At()+": "+f.Reason)
		}
	}
	return strings.Join(wrong, "; ")
}
