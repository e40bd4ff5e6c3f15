package rule

import "slices"

// The remedies of testdata/oldplant, a plant that stands, and of testdata/states, of which only
// pressures are asked. What was noted of a joint is taken out where the joint is made anew.

// noted is a [[joint]] or an [[end]] that is taken out of the old plant.
func noted(lines string) []amend { return change(lines, "") }

var (
	noteJ11 = noted("[[joint]]\nat        = [\"filter-30.out\", \"nipple-34.a\"]\ndry_since = \"2023-06\"\n")
	noteJ12 = noted("[[joint]]\nat        = [\"nipple-34.b\", \"filter-5.in\"]\nwept      = \"2025, wet under the housing\"\n")
	noteJ31 = noted("[[joint]]\nat        = [\"vessel.brine\", \"vessel-out.a\"]\ndry_since = 2013\nsealant   = \"tape\"\n")
	noteJ51 = noted("[[joint]]\nat        = [\"probe-tee.branch\", \"probe.in\"]\ndry_since = 2020\n")
	noteEnd = noted("[[end]]\nat    = \"relief-tail.a\"\nod    = \"20.8 mm\"\ntaper = \"no\"\nangle = \"55\"\n")

	tailsAreG  = change("a = 'some 3/4 thread male', b = '19 mm barb long'", "a = 'G 3/4 male', b = '19 mm barb long'")
	intakeIsG  = change("inboard = 'some 3/4 thread female'", "inboard = 'G 3/4 female'")
	washersPut = change("at        = [\"tail-34/+2.a\", \"strainer.in\"]\nsealant   = \"tape\"", "at        = [\"tail-34/+2.a\", \"strainer.in\"]\nsealant   = \"washer\"", "more tape put on\"\nsealant   = \"tape\"", "more tape put on\"\nsealant   = \"washer\"")
)

var oldPlantSteps = []step{
	{"flank-angles-differ", "nipple-34.b - filter-5.in", "Buy an adaptor Rc 3/4 female x 3/4-14 NPT male plastic",
		slices.Concat(noteJ12, change(`"nipple-34", "filter-5"`, `"nipple-34", "between", "filter-5"`), []amend{put(part("between", "adaptor", `rated = "10 bar"`, `material = "pp"`, "ports = { a = 'Rc 3/4 female', b = '3/4 NPT male plastic' }"))})},
	{"flank-angles-differ", "nipple-34.b - filter-5.in", "or another part: 3/4-14 NPT male plastic in place of R 3/4 male", slices.Concat(noteJ12, change("ports    = { a = 'R 3/4 male', b = 'R 3/4 male' }", "ports    = { a = 'R 3/4 male', b = '3/4 NPT male plastic' }"))},
	{"flank-angles-differ", "nipple-34.b - filter-5.in", "or Rc 3/4 female in place of 3/4-14 NPT female plastic", slices.Concat(noteJ12, change("about    = \"10 inch housing, 5 micron\"\nmicron   = \"5 micron\"\norigin   = \"US\"\nports    = { in = '3/4 NPT female plastic'", "about    = \"10 inch housing, 5 micron\"\nmicron   = \"5 micron\"\norigin   = \"US\"\nports    = { in = 'Rc 3/4 female'"))},
	{"nothing-turns", "nipple-34.b - filter-5.in", "a union", change("id       = \"nipple-34\"\nkind     = \"nipple\"", "id       = \"nipple-34\"\nkind     = \"union\"")},
	{"nothing-turns", "nipple-34.b - filter-5.in", "or a hose on a tail", slices.Concat(noteJ11, noteJ12, change(`"nipple-34", "filter-5"`, `"tail-n34/+", "piece", "tail-n34/+", "filter-5"`, "id       = \"nipple-34\"\n", "id       = \"nipple-34\"\nextra = 1\n"), []amend{put("\n[[hose]]\nid = \"piece\"\nof = \"suction-hose\"\nlength = \"0.5 m\"\n")})},
	{"nothing-turns", "nipple-n34.b - filter-1.in", "a union", change("id       = \"nipple-n34\"\nkind     = \"nipple\"", "id       = \"nipple-n34\"\nkind     = \"union\"")},
	{"end-left-open", "vessel-in.b - vessel.feed", "Which thread is the 1/2 pipe thread male", change("b = 'some 1/2 thread male'", "b = 'G 1/2 male'")},
	{"flank-angles-differ", "relief.out - relief-tail.a", "Buy an adaptor 1/2-14 NPT male x G 1/2 female",
		append(change(`"relief", "relief-tail"`, `"relief", "between", "relief-tail"`), put(part("between", "adaptor", `rated = "16 bar"`, `material = "316"`, "ports = { a = '1/2 NPT male', b = 'G 1/2 female' }")))},
	{"flank-angles-differ", "relief.out - relief-tail.a", "or another part: G 1/2 female in place of 1/2-14 NPT female", change("ports    = { in = '1/4 NPT male', out = '1/2 NPT female' }", "ports    = { in = '1/4 NPT male', out = 'G 1/2 female' }")},
	{"flank-angles-differ", "relief.out - relief-tail.a", "or 1/2-14 NPT male in place of G 1/2 male", slices.Concat(noteEnd, change("ports    = { a = '1/2 male', b = '13 mm barb' }", "ports    = { a = '1/2 NPT male', b = '13 mm barb' }"))},
	{"flank-angles-differ", "vessel.brine - vessel-out.a", "Buy an adaptor G 1/2 male x 1/2-14 NPT female",
		slices.Concat(noteJ31, change(`"vessel.brine", "vessel-out"`, `"vessel.brine", "between", "vessel-out"`), []amend{put(part("between", "adaptor", `rated = "120 bar"`, `material = "316"`, "ports = { a = 'G 1/2 male', b = '1/2 NPT female' }"))})},
	{"flank-angles-differ", "vessel.brine - vessel-out.a", "or G 1/2 male in place of 1/2-14 NPT male", slices.Concat(noteJ31, change("a = '1/2 NPT male', b = 'JIC -6 male'", "a = 'G 1/2 male', b = 'JIC -6 male'"))},
	{"flank-angles-differ", "vessel.brine - vessel-out.a", "or another part: 1/2-14 NPT female in place of G 1/2 female", slices.Concat(noteJ31, change("brine = 'G 1/2 female', product", "brine = '1/2 NPT female', product"))},
	{"end-left-open", "gauge-tee.branch - gauge.in", "Which thread is the 1/4 pipe thread male", change("ports    = { in = '1/4 male' }\nmaterial = \"316\"", "ports    = { in = 'R 1/4 male' }\nmaterial = \"316\"")},
	{"joint-wept", "strainer.out - tail-34/+3.a", "Made up anew, write made_up, and take `wept` out", change(`wept      = "2024, a drop a minute, more tape put on"`, "made_up = 2026")},
	{"joint-wept", "feed-adaptor.b - hp-hose.a", "Made up anew, write made_up, and take `wept` out", change(`wept      = "2025, salt crust on the nut"`, "made_up = 2026")},
	{"closing-part-missing", "vessel.product - product-elbow.a", "put in a bonded washer on the face; then write what is there now", change(`sealant   = "none"`, `sealant   = "washer"`)},
	{"end-left-open", "intake.inboard - tail-34/+1.a", "Which thread is the 3/4 pipe thread female", slices.Concat(intakeIsG, tailsAreG, washersPut)},
	{"end-left-open", "tail-34/+2.a - strainer.in", "Which thread is the 3/4 pipe thread male", slices.Concat(tailsAreG, washersPut)},
	{"end-left-open", "strainer.out - tail-34/+3.a", "Which thread is the 3/4 pipe thread male", slices.Concat(tailsAreG, washersPut)},
	{"flank-angles-differ", "filter-30.out - nipple-34.a", "when it weeps: Do not force it. Buy an adaptor 3/4-14 NPT male plastic x Rc 3/4 female",
		slices.Concat(noteJ11, change(`"filter-30", "nipple-34"`, `"filter-30", "between", "nipple-34"`), []amend{put(part("between", "adaptor", `rated = "10 bar"`, `material = "pp"`, "ports = { a = '3/4 NPT male plastic', b = 'Rc 3/4 female' }"))})},
	{"material-not-for-seawater", "pump-tail", "buy what is at high pressure of super duplex", []amend{{everywhere + `material = "316"`, `material = "super duplex"`}, {everywhere + "nylon core, 316 ends", "nylon core, super duplex ends"}}},
	{"end-left-open", "feed-tee.branch - feed-gauge.in", "Which thread is the 1/4 pipe thread male", change("ports    = { in = '1/4 male' }\nmaterial = \"bronze\"", "ports    = { in = 'G 1/4 male' }\nmaterial = \"bronze\"")},
	{"element-size-unknown", "element", "write `size = \"2540\"`", change("kind   = \"membrane element\"\n", "kind   = \"membrane element\"\nsize = \"2540\"\n")},
	{"end-not-said", "meter.out - meter-out.a", "write ports = { out = '…' } on `meter`, and ports = { a = '…' } on `meter-out`", change("ports    = { in = '8 mm push-in' }\nrated    = \"8 bar\"", "ports    = { in = '8 mm push-in', out = 'G 1/4 female' }\nrated    = \"8 bar\"", "ports    = { a = 'male', b = '8 mm push-in' }", "ports    = { a = 'G 1/4 male', b = '8 mm push-in' }")},
	{"pitches-differ", "probe-tee.branch - probe.in", "when it weeps: Do not force it. Buy an adaptor G 1/4 male x 1/4-18 NPT female",
		slices.Concat(noteJ51, change(`"probe-tee.branch", "probe"`, `"probe-tee.branch", "between", "probe"`), []amend{put(part("between", "adaptor", `rated = "10 bar"`, `material = "pom"`, `about = "drinking water quality"`, "ports = { a = 'G 1/4 male', b = '1/4 NPT female' }"))})},
	{"stainless-galls", "pump-tail.a - pump.in", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
	{"gauge-range", "feed-gauge", "Take one that reads to about 2.5 bar", change("scale    = \"6 bar\"", "scale    = \"2.5 bar\"")},
}

// saidEnds are the ends of all parts of testdata/states, asked for and written down. The flow of its
// pump is common practice, as in that file.
var saidEnds = change(
	"kind = \"seacock\"", "kind = \"seacock\"\nports = { inboard = '19 mm barb long' }",
	"kind = \"strainer\"", "kind = \"strainer\"\nports = { in = '19 mm barb long', out = 'G 3/4 male chamfer' }",
	"id      = \"feed-pump\"\n", "id      = \"feed-pump\"\nports = { in = 'G 3/4 female swivel 60 cone', out = 'G 3/4 male chamfer' }\n",
	"kind = \"filter housing\"", "kind = \"filter housing\"\nports = { in = 'G 3/4 female swivel 60 cone', out = 'JIC -6 male' }",
	"kind = \"tee\"", "kind = \"tee\"\nports = { a = 'JIC -6 female swivel', b = 'JIC -6 male', branch = '1/4 NPT female' }",
	"kind  = \"gauge\"", "kind  = \"gauge\"\nports = { in = '1/4 NPT male' }",
	"kind = \"plunger pump\"\nflow = \"8 L/min\"\n\n[[item]]\nid    = \"pump-120\"", "kind = \"plunger pump\"\nflow = \"8 L/min\"\nports = { in = 'JIC -6 female swivel', out = 'JIC -6 male' }\n\n[[item]]\nid    = \"pump-120\"",
	"id   = \"relief\"\n", "id   = \"relief\"\nports = { in = '1/4 NPT male', out = 'G 1/2 male chamfer' }\n",
	"kind = \"pressure vessel\"", "kind = \"pressure vessel\"\nports = { feed = '3/8 NPT female', brine = 'JIC -6 male', product = 'JIC -4 male' }",
	"ends   = ['3/8 NPT male', '3/8 NPT male']", "ends   = ['JIC -6 female swivel', '3/8 NPT male']",
	"kind = \"brine throttle\"", "kind = \"brine throttle\"\nports = { in = 'JIC -6 female swivel', out = '19 mm barb' }",
	"kind = \"shut-off valve\"", "kind = \"shut-off valve\"\nports = { in = 'G 1/2 female swivel 60 cone', out = 'G 1/2 female' }",
	"\"tee/outlet\", \"overboard-valve\"", "\"outlet-tee\", \"overboard-valve\"", "\"tee/outlet.branch\"", "\"outlet-tee.branch\"",
	"id   = \"throttle\"\n", "id   = \"outlet-tee\"\nkind = \"tee\"\nports = { a = '19 mm barb', b = 'G 1/2 male chamfer', branch = 'G 1/2 female swivel 60 cone' }\n\n[[item]]\nid   = \"throttle\"\n",
	"kind = \"flow meter\"", "kind = \"flow meter\"\nports = { in = 'JIC -4 female swivel', out = 'JIC -4 male' }",
	"id   = \"selector\"  ", "ports = { common = 'JIC -4 female swivel' }\nid   = \"selector\"  ",
	"kind     = \"house supply\"", "kind     = \"house supply\"\nports = { out = 'G 1/2 male chamfer' }",
	"kind = \"carbon filter\"", "kind = \"carbon filter\"\nports = { in = 'G 1/2 female swivel 60 cone', out = 'G 1/2 male chamfer' }",
	"kind = \"solenoid valve\"", "kind = \"solenoid valve\"\nports = { in = 'G 1/2 female swivel 60 cone', out = 'G 1/2 male chamfer' }",
	"kind = \"check valve\"", "kind = \"check valve\"\nports = { in = 'G 1/2 female swivel 60 cone', out = '1/4 NPT male' }",
)

// stateUnits are items of testdata/states with a line of each that stands once.
var stateUnits = map[string]string{
	"pump": "id   = \"pump\"  ", "tee": "id   = \"tee\"\n", "hp-hose": "id     = \"hp-hose\"\n", "vessel": "id   = \"vessel\"\n", "throttle": "id   = \"throttle\"\n",
	"gauge": "id    = \"gauge\"\n", "relief": "id   = \"relief\"\n", "intake": "id   = \"intake\"\n", "strainer": "id   = \"strainer\"\n", "feed-pump": "id      = \"feed-pump\"\n",
	"filter": "id   = \"filter\"\n", "check": "id   = \"check\"\n", "stock": "id    = \"stock\"\n", "overboard-valve": "id   = \"overboard-valve\"\n", "meter": "id   = \"meter\"\n",
	"selector": "id   = \"selector\"  ", "carbon": "id   = \"carbon\"\n", "flush-valve": "id   = \"flush-valve\"\n",
	"centrifugal": "id      = \"centrifugal\"\n", "pump-120": "id    = \"pump-120\"\n", "pump-60": "id    = \"pump-60\"  ", "low-relief": "id   = \"low-relief\"\n", "selector-open": "id      = \"selector-open\"\n",
}

// told writes a key on items of testdata/states.
func told(key string, items ...string) []amend {
	var out []amend
	for _, it := range items {
		out = append(out, amend{stateUnits[it], key + "\n" + stateUnits[it]})
	}
	return out
}

// ownOutlet leads the relief overboard by a line of its own.
var ownOutlet = change("\"relief\", \"tee/outlet.branch\"", "\"relief\", \"relief-outlet\"", "\"tee/outlet\", ", "")

// answered are the questions for ends, with everything that was asked.
func answered(places ...string) []step {
	var out []step
	for _, at := range places {
		out = append(out, step{"end-not-said", at, "Ask the shop, or measure it, and write", saidEnds})
	}
	return out
}

// placed are what stands on the list and nowhere else, taken as a store.
func stored(items ...string) []step {
	var out []step
	for _, it := range items {
		out = append(out, step{"item-not-placed", it, "write `extra` if it is a store", told("extra = 1", it)})
	}
	return out
}

// rated writes what was asked of a part.
func rated(at, says, bar string, items ...string) step {
	return step{"rating-unknown", at, says, told("rated = \""+bar+"\"", items...)}
}

var stateSteps = slices.Concat(
	answered("pump.out - tee/relief.a", "tee/relief.b - hp-hose.a", "hp-hose.b - vessel.feed", "vessel.brine - tee/hp-gauge.a", "tee/hp-gauge.b - throttle.in", "tee/hp-gauge.branch - gauge/hp.in",
		"tee/relief.branch - relief.in", "intake.inboard - raw-hose.a", "raw-hose.b - strainer.in", "strainer.out - feed-pump.in", "feed-pump.out - filter.in", "filter.out - tee/gauge.a",
		"tee/gauge.b - tee/flush.a", "tee/flush.b - pump.in", "tee/gauge.branch - gauge.in", "throttle.out - brine-hose.a", "brine-hose.b - tee/outlet.a", "tee/outlet.b - overboard-valve.in",
		"relief.out - tee/outlet.branch", "vessel.product - meter.in", "meter.out - selector.common", "house.out - carbon.in", "carbon.out - flush-valve.in", "flush-valve.out - check.in", "check.out - tee/flush.branch"),
	stored("centrifugal", "pump-120", "pump-60", "low-relief", "selector-open"),
	[]step{
		rated("pump", "Write `rated` on `pump` from its data sheet", "71.5 bar", "pump"),
		rated("tee/relief", "Write `rated` on `tee` from its data sheet", "71.5 bar", "tee"),
		rated("hp-hose", "Write `rated` on `hp-hose` from its data sheet", "71.5 bar", "hp-hose"),
		rated("vessel", "Write `rated` on `vessel` from its data sheet", "71.5 bar", "vessel"),
		rated("throttle", "Write `rated` on `throttle` from its data sheet", "71.5 bar", "throttle"),
		rated("gauge/hp", "Write `rated` on `gauge` from its data sheet", "71.5 bar", "gauge"),
		rated("relief", "Write `rated` on `relief` from its data sheet", "71.5 bar", "relief"),
		rated("intake", "Ask for the pressure rating and write `rated`", "10 bar", "intake", "stock", "strainer", "feed-pump"),
		rated("feed-pump", "Ask for the pressure rating and write `rated`", "100 bar", "feed-pump", "filter", "gauge", "check", "tee"),
		rated("brine-hose", "Ask for the pressure rating and write `rated`", "100 bar", "stock", "tee", "overboard-valve"),
		rated("overboard-valve", "Ask for the pressure rating and write `rated`", "10 bar", "overboard-valve"),
		rated("meter", "Ask for the pressure rating and write `rated`", "80 bar", "meter", "selector"),
		rated("selector", "Ask for the pressure rating and write `rated`", "80 bar", "selector"),
		rated("carbon", "Ask for the pressure rating and write `rated`", "8 bar", "carbon", "flush-valve"),
		rated("flush-valve", "Ask for the pressure rating and write `rated`", "8 bar", "flush-valve", "check"),
		{"element-missing", "vessel", "Add the element as an item of kind = \"membrane element\" with inside = \"vessel\"", []amend{put(part("element", "membrane element", `inside = "vessel"`, `size = "2540"`))}},
		{"no-way-out", "overboard-valve shut", "a free outlet (its own", ownOutlet},
		{"no-way-out", "overboard-valve shut", "let nothing shut the line behind the throttle", change("\"overboard-valve\", ", "", "id   = \"overboard-valve\"\n", "id   = \"overboard-valve\"\nextra = 1\n")},
		{"relief-cut-off", "relief", "its outlet to a place of its own: overboard above the waterline without a valve", ownOutlet},
		{"hose-may-collapse", "raw-hose", "rated for a vacuum of 0.85 bar or more, and write `vacuum` on `stock`", told(`vacuum = "0.85 bar"`, "stock")},
		{"material-unknown", "pump", "Ask the shop, and write `material`", told(`material = "super duplex"`, "pump", "tee", "hp-hose", "vessel", "gauge", "throttle", "relief")},
		{"material-unknown", "intake", "Ask the shop, and write `material`", told(`material = "bronze"`, "intake", "strainer", "feed-pump", "filter", "tee", "gauge", "overboard-valve", "check", "carbon", "flush-valve")},
		{"no-fine-filter", "pump", "Write `micron` on the cartridges, or on their housings", told(`micron = "5 micron"`, "filter")},
		{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
		{"gauge-range", "gauge/hp", "Take one that reads to 100 bar or more", change(`scale = "6 bar"`, `scale = "100 bar"`)},
		{"relief-too-small", "relief", "Ask for its capacity at the set pressure and write `flow`", told(`flow = "9 L/min"`, "relief")},
		{"product-not-for-drinking", "meter", "write it into `about`", told(`about = "drinking water quality"`, "meter", "selector")},
	})
