package rule

// refitSteps follow the remedies of the faults seeded in testdata/refit, and so on.
var refitSteps = []step{
	{"hose-may-collapse", "raw-1", "Take a hose rated for a vacuum of 0.85 bar or more", change(`vacuum = "0.4 bar"`, `vacuum = "0.85 bar"`)},
	{"relief-missing", "pump/starboard", "Put a relief valve on a tee at its outlet, set above the duty and below the weakest rating, with a free outlet",
		append(change(`"pump/starboard", "nipple-38"`, `"pump/starboard", "hp-tee/starboard", "nipple-38"`),
			put(part("second", "relief valve", `set = "60 bar"`, `full_flow = "64 bar"`, `flow = "9 L/min"`, `rated = "140 bar"`, `material = "316"`, "ports = { in = '1/4 NPT male', out = '13 mm barb' }"),
				"\n[[hose]]\nid = \"second-hose\"\nof = \"discharge-hose\"\nlength = \"0.5 m\"\n", part("second-out", "through-hull", `rated = "10 bar"`, `material = "bronze"`, "ports = { inboard = '13 mm barb' }"),
				run("second relief", "hp-tee/starboard.branch", "second", "second-hose", "second-out")))},
	{"end-not-said", "gauge-tee-hp/starboard.b - throttle-old.in", "write ports = { in = '…' } on `throttle-old`", change("ports    = { out = '3/8 NPT female' }\nmaterial = \"316\"\nrated    = \"200 bar\"", "ports    = { in = '3/8 NPT female', out = '3/8 NPT female' }\nmaterial = \"316\"\nrated    = \"200 bar\"")},
	{"makeshift-joint", "gauge-tee-hp/port.branch - press-gauge.in", "for more use a G male with a bonded washer", change("in = 'R 1/4'", "in = 'G 1/4 male'")},
	{"end-left-open", "gauge-tee-hp/starboard.branch - hp-gauge.in", "Is the 1/4 BSP male parallel (G)", change("'1/4 BSP male'", "'G 1/4 male'")},
	{"relief-discharge", "relief", "Lead it by hose overboard above the waterline, without a valve", change("\"relief-hose\",\n  \"bilge\"", "\"relief-hose\",\n  \"brine-outlet/relief\"", "id    = \"bilge\"", "id    = \"bilge\"\nextra = 1")},
	{"relief-set-low", "relief", "Set it at least a tenth above the duty: 58.3 bar", change(`set      = "50 bar"`, `set      = "58.3 bar"`)},
	{"galvanic-pair", "tail-ti34.a - strainer.in", "Buy both of one metal", change(`"titanium"`, `"bronze"`)},
	{"flush-runs-to-sea", "feed-pump", "Put a one-way valve between feed-pump and the flush tee", append(change("\"feed-pump\",\n  \"raw-3\",", "\"feed-pump\", \"raw-4\", \"one-way\",\n  \"raw-3\","),
		put(part("one-way", "check valve", `rated = "10 bar"`, `material = "bronze"`, "ports = { in = '19 mm barb long', out = '19 mm barb long' }"), "\n[[hose]]\nid = \"raw-4\"\nof = \"suction-hose\"\nlength = \"0.3 m\"\n"))},
	{"flush-runs-to-sea", "feed-pump", "or take a feed pump whose own valves hold (diaphragm)", change(`"centrifugal"`, `"diaphragm"`, `"centrifugal pump, bronze"`, `"diaphragm pump, bronze"`)},
	{"pressure-not-said", "feed-pump", "Write `shutoff` on `feed-pump`", change(`flow     = "20 L/min"`+"\nrated    = \"6 bar\"\nhave", "flow     = \"20 L/min\"\nshutoff = \"1.2 bar\"\nrated    = \"6 bar\"\nhave")},
	{"part-too-warm", "tail-pvc34/+1", "Move it to where it is cooler", change(`space    = "62 C"`, `space    = "43.3 C"`)},
	{"part-too-warm", "tail-pvc34/+1", "or buy it of a material that is rated there", change("a = '3/4 NPT male plastic', b = '19 mm barb long' }\nmaterial = \"PVC\"", "a = '3/4 NPT male plastic', b = '19 mm barb long' }\nmaterial = \"pp\"")},
	{"rigid-on-pump", "pump/starboard", "Put a length of high-pressure hose between pump/starboard and vessel/starboard", change(`"pump/starboard", "nipple-38", "union-38", "nipple-38-12", "vessel/starboard.feed"`, `"pump/starboard", "hp-feed-port/starboard", "jic-n12/+", "vessel/starboard.feed"`,
		"id       = \"nipple-38\"", "id       = \"nipple-38\"\nextra = 1", "id       = \"union-38\"", "id       = \"union-38\"\nextra = 1", "id       = \"nipple-38-12\"", "id       = \"nipple-38-12\"\nextra = 1")},
	{"hose-too-short", "hp-brine-starboard", "Order it 1.46 m long or more", change(`length   = "1.1 m"`, `length   = "1.46 m"`)},
	{"hose-too-short", "hp-brine-starboard", "or take an elbow end", change(`bend     = "270 deg"`, `bend     = "180 deg"`)},
	{"product-not-for-drinking", "to-tank", "Buy it of stainless or of a plastic that is declared for drinking water", change("\"blue tube for compressed air\"", "\"tube, drinking water quality\"", "material = \"polyurethane\"", "material = \"polyethylene\"")},
	{"sea-reaches-house", "house", "Put a one-way valve between the flush valve and the plant, its arrow to the plant", append(change(`"flush-nipple",`+"\n  \"flush-tee", `"one-way",`+"\n  \"flush-tee", "id       = \"flush-nipple\"", "id       = \"flush-nipple\"\nextra = 1"),
		put(part("one-way", "check valve", `rated = "10 bar"`, `material = "bronze"`, "ports = { in = '1/2 NPT male', out = '1/2 NPT male' }")))},
	{"under-rated", "carbon", "Buy it for 6 bar or more at 62 C (that is 9.66 bar or more on the data sheet)", change("about    = \"10 inch housing, takes the chlorine out\"\nports    = { in = '1/2 NPT female plastic', out = '1/2 NPT female plastic' }\nmaterial = \"pp\"\nrated    = \"8 bar\"", "about    = \"10 inch housing, takes the chlorine out\"\nports    = { in = '1/2 NPT female plastic', out = '1/2 NPT female plastic' }\nmaterial = \"pp\"\nrated    = \"9.66 bar\"")},
	{"part-too-warm", "raw-1", "or move it to where it is cooler", change(`space    = "62 C"`, `space    = "20 C"`)},
	{"brine-flow-low", "vessel/port", "Take a pump of 7 L/min or more on its plate", change(`flow     = "4 L/min"`, `flow     = "7 L/min"`)},
	{"gauge-range", "press-gauge", "Take one that reads to about 100 bar", change("scale    = \"250 bar\"\nrated    = \"250 bar\"", "scale    = \"100 bar\"\nrated    = \"100 bar\"")},
	{"relief-too-small", "relief", "write `flow`; it must pass the whole flow of pump/port", change(`set      = "50 bar"`, "set      = \"50 bar\"\nflow = \"4 L/min\"")},
	{"rating-unknown", "tail-g12", "write `rated`", change("x 13 mm barb, brass\"", "x 13 mm barb, brass\"\nrated = \"16 bar\"")},
}

var arrowSteps = []step{
	{"pump-gets-no-water", "pump", "Turn about what stands the wrong way round", change(`"one-way/raw.out>in"`, `"one-way/raw"`)},
	{"relief-stands-open", "relief", "Turn about what stands the wrong way round", change(`"hp-one-way.out>in"`, `"hp-one-way"`)},
	{"membrane-without-pressure", "vessel/starboard", "Put the brine throttle behind vessel/starboard.brine, and nothing that is open before it", change(
		`"hp-hose/starboard", "jic-n38",`, `"hp-hose/starboard", "jic-n12/+",`, "\"throttle/starboard\", \"hose/+\", \"tail-n12/+\",\n", "",
		"\"vessel/starboard.brine\", \"tail-n12/+\", \"hose/+\",", "\"vessel/starboard.brine\", \"jic-n12/+\", \"hp-hose/brine-starboard\", \"throttle/starboard\", \"hose/+\",",
		"id       = \"jic-n38\"", "id       = \"jic-n38\"\nextra = 1", "id       = \"tail-n12\"", "id       = \"tail-n12\"\nextra = 1")},
	{"material-not-for-seawater", "pump", "Lead a fresh-water flush through it", change(`"one-way/flush.out>in"`, `"one-way/flush"`, `"one-way/raw.out>in"`, `"one-way/raw"`, `"hp-one-way.out>in"`, `"hp-one-way"`,
		// the second plant is on no flush: its tee stands before its pump
		`"filter-5/starboard", "hose/+",`, `"filter-5/starboard", "hose/+", "one-way/starboard", "hose/+", "tee/starboard", "hose/+",`, `"tee/house", "hose/+", "flush-valve"`, `"tee/house", "hose/+", "tee/second", "hose/+", "flush-valve"`,
		"[[run]]\nname = \"strainer rinse\"", run("second flush", "tee/second.branch", "hose/+", "flush-valve/second", "hose/+", "one-way/second", "hose/+", "tee/starboard.branch")+"\n[[run]]\nname = \"strainer rinse\"")},
	{"flush-misses-membrane", "vessel", "look at the arrows on the one-way valves in its line", change(`"one-way/flush.out>in"`, `"one-way/flush"`, `"hp-one-way.out>in"`, `"hp-one-way"`)},
	{"probe-missing", "vessel", "a salinity probe with `extra = 1`", []amend{put(dip)}},
	{"house-water-runs", "house", "Put a flush valve (a solenoid", change(`"one-way/rinse", "hose/+", "tee/rinse.branch"`, `"one-way/rinse", "hose/+", "flush-valve/rinse", "hose/+", "tee/rinse.branch"`)},
	{"sea-reaches-house", "house", "where there is one, look at its arrow", change(`"one-way/flush.out>in"`, `"one-way/flush"`)},
	{"feed-pump-not-said", "pump/starboard", "Put a feed pump of about 8", append(change(`"strainer/starboard", "hose/+", "filter-5/starboard"`, `"strainer/starboard", "hose/+", "feed", "hose/+", "filter-5/starboard"`),
		put(part("feed", "feed pump", `flow = "8.5 L/min"`, `type = "diaphragm"`, `shutoff = "2 bar"`, `self_priming = "2 m"`, `rated = "6 bar"`, `material = "pp"`, "ports = { in = '13 mm barb long', out = '13 mm barb long' }")))},
	{"gauge-missing", "pump/starboard", "Put a gauge on a tee between pump/starboard and the throttle", append(change(`"hp-tee/relief-starboard", "hp-hose/starboard"`, `"hp-tee/relief-starboard", "hp-tee/gauge-starboard", "hp-hose/starboard"`), put(run("gauge, starboard", "hp-tee/gauge-starboard.branch", "gauge/starboard")))},
	{"material-not-for-seawater", "outlet/brine-starboard", "Buy it of super duplex", change("\n  \"outlet/brine-starboard\"", "\n  \"outlet-2\"",
		"[[run]]\nname = \"high pressure\"\n", part("outlet-2", "through-hull", `rated = "99 bar"`, `material = "super duplex"`, "ports = { inboard = '13 mm barb' }")+"[[run]]\nname = \"high pressure\"\n")},
	{"stainless-galls", "pump.out - hp-tee/relief.a", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
	{"brine-flow-low", "vessel", "Take a pump of 6 L/min or more on its plate", change(`flow     = "4 L/min"`, `flow     = "6 L/min"`)},
	{"brine-flow-low", "vessel/starboard", "Take a pump of 6 L/min or more on its plate", change(`flow     = "4 L/min"`, `flow     = "6 L/min"`)},
}

// fine is a filter housing with its cartridge for the forepeak, and ways a selector with a drain.
var (
	fineFore = []string{part("strainer-fore", "strainer", `rated = "6 bar"`, `material = "bronze"`, "ports = { in = '13 mm barb long', out = '13 mm barb long' }"),
		part("coarse", "filter housing", `micron = "20 micron"`, `rated = "8 bar"`, `material = "pp"`, "ports = { in = '13 mm barb long', out = '13 mm barb long' }"),
		part("fine", "filter housing", `micron = "5 micron"`, `rated = "8 bar"`, `material = "pp"`, "ports = { in = '13 mm barb long', out = '13 mm barb long' }"),
		part("fine-5", "filter cartridge", `micron = "5 micron"`, `inside = "fine"`)}
	ways = []string{part("ways", "selector valve", `between = "open"`, `about = "drinking water quality"`, `material = "pom"`, `rated = "10 bar"`, "ports = { common = '13 mm barb', a = '13 mm barb', b = '13 mm barb' }"), part("sink", "drain")}
)

var leftoverSteps = []step{
	{"intake-without-valve", "skin", "Screw a seacock straight onto skin", append(change("\"skin\", \"hose/+\",", "\"skin\", \"cock.sea>inboard\", \"hose/+\",", "id       = \"skin\"\nkind     = \"through-hull\"\nports    = { inboard = '13 mm barb long' }", "id       = \"skin\"\nkind     = \"through-hull\"\nports    = { inboard = '1/2 NPS male' }"),
		put(part("cock", "seacock", `rated = "16 bar"`, `material = "bronze"`, "ports = { sea = '1/2 NPS female', inboard = '13 mm barb long' }")))},
	{"no-fine-filter", "pump/fore", "Put a filter housing with a cartridge of 5 micron before pump/fore, and a coarser one before that", append(change("  \"pump/fore\",\n]", "  \"coarse\", \"hose/+\", \"fine\", \"hose/+\", \"pump/fore\",\n]"), put(fineFore[1:]...))},
	{"element-missing", "vessel-fore", "Add the element as an item of kind = \"membrane element\" with inside = \"vessel-fore\"", []amend{put(part("element-fore", "membrane element", `inside = "vessel-fore"`))}},
	{"product-port-closed", "vessel-fore.product", "Take vessel-fore.product off `plugged`, and lead it to a tank and a drain", append(change("plugged  = [\"vessel-fore.product\"]", "plugged  = []"),
		put(append(ways, part("tank-fore", "tank"), run("product, forepeak", "vessel-fore.product", "hose/+", "ways.common"), run("t", "ways.a", "hose/+", "tank-fore"), run("d", "ways.b", "hose/+", "sink"))...))},
	{"brine-into-tank", "tank", "Lead the brine overboard by a line of its own", change("  \"tank\",\n]", "  \"outlet/brine-fore\",\n]", "id    = \"tank\"\nkind  = \"tank\"", "id    = \"tank\"\nkind  = \"tank\"\nextra = 1")},
	{"cartridge-and-housing-differ", "cartridge", "Buy a cartridge of 10 inches", change("pleated, 20 inch", "pleated, 10 inch")},
	{"element-and-vessel-differ", "element", "Buy an element of 2.5 x 21 inches", change("brackish-water element 2.5 x 40", "brackish-water element 2.5 x 21")},
	{"element-and-vessel-differ", "element", "or another vessel", change("id       = \"vessel-aft\"\nkind     = \"pressure vessel\"\nabout    = \"2.5 x 21\"", "id       = \"vessel-aft\"\nkind     = \"pressure vessel\"\nabout    = \"2.5 x 40\"")},
	{"pressure-over-element", "element", "Hold less on the throttle and set the relief below 41 bar", change(`pressure = "52 bar"`, `pressure = "34 bar"`, "set       = \"62 bar\"\nfull_flow = \"68 bar\"", "set       = \"37.4 bar\"\nfull_flow = \"40 bar\"")},
	{"pressure-over-element", "element", "or buy an element for 68 bar or more", change(`rated  = "41 bar"`, `rated  = "68 bar"`)},
	{"brine-into-bilge", "bilge", "Lead the brine overboard, above the waterline and without a valve", change("  \"bilge\",\n]", "  \"outlet/brine-aft\",\n]", "id    = \"bilge\"", "id    = \"bilge\"\nextra = 1")},
	{"no-strainer", "pump/fore", "Put a strainer before pump/fore", change("  \"pump/fore\",\n]", "  \"strainer/fore\", \"hose/+\", \"pump/fore\",\n]")},
	{"relief-margin-thin", "relief-fore", "Set it to 57.2 bar or more", change("set       = \"54 bar\"", "set       = \"57.2 bar\"")},
	{"throttle-is-quick-valve", "throttle-fore", "Take a needle valve", change("ball valve with lever, rated for oil", "needle valve")},
	{"throttle-is-quick-valve", "throttle-fore", "or a regulator that is made to hold pressure", change("kind     = \"brine throttle\"\nabout    = \"ball valve with lever, rated for oil\"", "kind     = \"back-pressure regulator\"\nset = \"52 bar\"")},
	{"feed-pump-not-said", "pump/aft", "Put a feed pump of about 8", append(change("\"strainer\", \"hose/+\", \"filter\"", "\"strainer\", \"hose/+\", \"feed\", \"hose/+\", \"filter\""),
		put(part("feed", "feed pump", `flow = "8.5 L/min"`, `type = "diaphragm"`, `shutoff = "2 bar"`, `self_priming = "2 m"`, `rated = "6 bar"`, `material = "pp"`, "ports = { in = '13 mm barb long', out = '13 mm barb long' }")))},
	{"probe-missing", "vessel-aft", "Put a salinity probe on a tee in the product line", append(change("\"vessel-aft.product\", \"hose/+\", \"tank-aft\"", "\"vessel-aft.product\", \"hose/+\", \"probe-tee\", \"hose/+\", \"tank-aft\""),
		put(part("probe-tee", "tee", `about = "drinking water quality"`, `rated = "10 bar"`, `material = "pom"`, "ports = { a = '13 mm barb', b = '13 mm barb', branch = '1/4 NPT female plastic' }"), part("probe", "salinity probe", `about = "drinking water quality"`, `rated = "8 bar"`, "ports = { in = '1/4 NPT male plastic' }"), run("probe", "probe-tee.branch", "probe")))},
	{"product-no-drain-way", "vessel-aft", "Put a selector into the product line, open between its positions, with the drain at its other way", append(change("\"vessel-aft.product\", \"hose/+\", \"tank-aft\"", "\"vessel-aft.product\", \"hose/+\", \"ways.common\""),
		put(append(ways, run("t", "ways.a", "hose/+", "tank-aft"), run("d", "ways.b", "hose/+", "sink"))...))},
	{"rate-inverted", "rates", "write under [rates] what one TRY costs in NZD", change(`"28.4"`, `"0.0352"`)},
	{"title-not-used", "jic-n12", "Write in keys of the item what matters of a title", change(`about    = "stamped 350 bar"`, "")},
	{"brine-flow-low", "vessel-aft", "Take a pump of 7 L/min or more on its plate", change(`flow     = "4 L/min"`, `flow     = "7 L/min"`)},
	{"recovery-too-high", "vessel-aft", "Take a pump that delivers 7 L/min or more (7 L/min on its plate)", change(`flow     = "4 L/min"`, `flow     = "7 L/min"`)},
	{"recovery-too-high", "vessel-aft", "or hold less pressure", change(`pressure = "52 bar"`, `pressure = "44 bar"`)},
}

var damperSteps = []step{
	{"unloader-set-wrong", "unloader", "Set it above the duty and below the relief: 56.7 bar", change(`set = "52 bar"`, `set = "56.7 bar"`)},
	{"accumulator-gas", "damper-1", "write gas = \"nitrogen\"", change(`gas = "oxygen"`, `gas = "nitrogen"`)},
	{"accumulator-precharge", "damper-1", "Have it charged to 30 bar", change(`precharge = "75 bar"`, `precharge = "30 bar"`)},
	{"accumulator-cut-off", "damper-2", "Put the valve elsewhere", change(`"tee-2.branch", "stop", "damper-2"`, `"tee-2.branch", "damper-2"`, `id = "stop"`, "id = \"stop\"\nextra = 1")},
	{"accumulator-cut-off", "damper-2", "or a relief valve on the accumulator's side of it", append(change(`"stop", "damper-2"`, `"stop", "tee/second.a>b", "damper-2"`), put(run("r2", "tee/second.branch", "relief/second", "relief-out/second")))},
	{"accumulator-no-bleed", "damper-3", "Put a valve beside it that leads to a drain or overboard (a shut-off valve that says normal = \"shut\"), and a gauge", append(change(`"check", "damper-3"`, `"check", "tee/bleed", "gauge-tee/bleed.b>a", "nipple", "damper-3"`),
		put(part("nipple", "coupling", `rated = "200 bar"`, `material = "super duplex"`, "ports = { a = '3/8 NPT male', b = '3/8 NPT female' }"), part("bleed", "shut-off valve", `normal = "shut"`, `rated = "200 bar"`, `material = "super duplex"`, "ports = { in = '3/8 NPT male', out = '3/8 NPT female' }"), run("b", "tee/bleed.branch", "bleed", "discharge/bleed"), run("g", "gauge-tee/bleed.branch", "gauge/bleed")))},
	{"stainless-galls", "tee-1.branch - damper-1.in", "Add the paste as an item that says \"anti-seize\"", []amend{put(antiSeize)}},
}

var standingSteps = []step{
	{"thread-too-slack", "valve.out - g-34.a", "Buy an adaptor G 3/4 male x M25x2 female", append(change("\"g-34\", \"tee\"", "\"between\", \"g-34\", \"tee\""), put(part("between", "adaptor", `rated = "16 bar"`, `material = "bronze"`, "ports = { a = 'G 3/4 male', b = 'M25x2 female' }")))},
	{"thread-too-slack", "valve.out - g-34.a", "or one of the two parts with the other's thread", change("out = 'G 3/4 female'", "out = 'M25x2 female'")},
	{"closing-part-missing", "filter.out - g-nipple.a", "put in a bonded washer on the face; then write what is there now as `sealant`", change(`sealant = "none"`, `sealant = "washer"`)},
	{"pitches-differ", "tee.branch - gauge.in", "Buy an adaptor G 1/4 male x 1/4-18 NPT female", append(change("\"tee.branch\", \"gauge\"", "\"tee.branch\", \"between\", \"gauge\"", "at        = [\"tee.branch\", \"gauge.in\"]\ndry_since = 2019\nmade_up   = 2018\n", "at = [\"tee.branch\", \"between.a\"]\n"),
		put(part("between", "adaptor", `rated = "16 bar"`, `material = "bronze"`, "ports = { a = 'G 1/4 male', b = '1/4-18 NPT female' }")))},
	{"pitches-differ", "tee.branch - gauge.in", "or one of the two parts with the other's thread", change("branch = 'G 1/4 female'", "branch = '1/4 NPT female'")},
	{"joint-wept", "union.b - filter.in", "Made up anew, write made_up, and take `wept` out", change(`wept = "2025, a drop after the pump starts"`, "made_up = 2026")},
	{"sealant-differs", "g-nipple.b - valve.in", "put in what closes it", change(`sealant = "tape"`, `sealant = "washer"`)},
	{"sealant-differs", "g-nipple.b - valve.in", "if it is a taper, mend the item", change("ports    = { a = 'G 1/2 male', b = 'G 1/2 male' }", "ports    = { a = 'G 1/2 male', b = 'R 1/2' }", "ports    = { in = 'G 1/2 female', out = 'G 3/4 female' }", "ports    = { in = 'Rp 1/2', out = 'G 3/4 female' }")},
	{"turns-fit-nothing", "g-34.b - tee.a", "Open it without pressure and measure both threads", change(`turns = "12"`, `turns = "4"`)},
	{"measured-otherwise", "g-34.a", "mend the figures of the [[end]]", change("od    = \"24.9 mm\"\npitch = \"2 mm\"", "od    = \"26.3 mm\"\npitch = \"1.814 mm\"")},
	{"measured-otherwise", "g-34.a", "write in the item what it is", change("a = 'G 3/4 male', b = '1/4 NPT male'", "a = 'M25x2 male', b = '1/4 NPT male'")},
}
