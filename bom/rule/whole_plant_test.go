package rule

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/read"
)

// sandpiper is the text of the clean demo plant, its fittings in one file with it.
func sandpiper(t *testing.T) string {
	t.Helper()
	var out []string
	for _, name := range []string{"build.toml", "fittings.toml"} {
		text, err := os.ReadFile(filepath.Join(demos, "clean", name))
		require.NoError(t, err)
		out = append(out, string(text))
	}
	return changed(t, strings.Join(out, "\n"), amend{`include   = ["fittings.toml"]`, ""})
}

// seen are the findings of a build's text, or the faults of its file.
func seen(text string) ([]finding.Finding, error) {
	build, faults := read.Parse("build.toml", []byte(text))
	if err := faults.Err(); err != nil {
		return nil, err
	}
	sys, faults := bom.Walk(build)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return Check(sys), nil
}

const (
	rawPath = `path = ["intake", "raw-1", "tail-g34/+", "strainer", "tail-g34/+", "raw-2", "feed-pump", "raw-3",
        "tail-n34/+", "filter-25", "union-n34", "filter-5", "tail-n34/+", "feed-1", "gauge-tee", "feed-2",
        "flush-tee", "feed-3", "tail-n12", "hp-pump"]`
	reliefPath = `path = ["hp-tee.branch", "relief", "tail-n38/+", "relief-hose", "relief-outlet"]`
	brinePath  = `path = ["throttle", "tail-n38/+", "brine-hose", "brine-outlet"]`
	highPath   = `path = ["hp-pump", "hp-tee", "hp-hose-feed", "jic-n12/+", "vessel.feed"]`
	brineHigh  = `path = ["vessel.brine", "jic-n12/+", "hp-hose-brine", "gauge-tee-hp", "throttle"]`
	product    = `path = ["vessel.product", "product-elbow", "product-1", "meter", "product-2", "probe-tee", "product-3", "selector.common"]`
	probePath  = "[[run]]\nname = \"probe\"\npath = [\"probe-tee.branch\", \"probe\"]"
	selectPath = "[[run]]\nname = \"to tank\"\npath = [\"selector.a\", \"to-tank\", \"tank\"]\n\n[[run]]\nname = \"to drain\"\npath = [\"selector.b\", \"to-drain\", \"galley-drain\"]"
	flushPath  = `path = ["house", "tail-g12", "flush-1", "tail-p12/+", "carbon", "tail-p12/+", "flush-2", "tail-n12-13", "flush-valve",
        "flush-check", "flush-tee.branch"]`
	pumpItem   = "kind     = \"plunger pump\"\nabout    = \"triplex, 316 head\"\nmotor    = \"24 V DC, belt drive\"\nports    = { in = '1/2 NPT female', out = '3/8 NPT female' }\nmaterial = \"316\"\nrated    = \"100 bar\"\nflow     = \"7 L/min\""
	jicEnds    = "ports    = { a = '1/2 NPT male', b = '-6 JIC male' }"
	throttleAs = "kind     = \"brine throttle\"\nabout    = \"needle valve, slow, 316\"\nports    = { in = '3/8 NPT female', out = '3/8 NPT female' }"
	elementAs  = "about  = \"seawater element 2.5 x 21\"\ninside = \"vessel\""
	runs       = "# --- Raw water"
)

// Single faults put into the clean plant, each with the answer of a careful fitter, which was
// written down before the tool saw it: any one of `finds` says the fault, and none of the
// build's other parts is blamed with a stop for it unless it is named in `may`.
var oneFault = []struct {
	why   string
	edits []amend
	finds string // slugs with a severity, any of which is right: "relief-set-low stop"; "file" for a fault of the file
}{
	{"a relief set below ten bar", []amend{{`set      = "65 bar"`, `set      = "8 bar"`}, {`full_flow = "70 bar"`, `full_flow = "9 bar"`}}, "relief-set-low stop"},
	{"and the high-pressure side stays one: a fitting's end is open", []amend{{`set      = "65 bar"`, `set      = "8 bar"`}, {`full_flow = "70 bar"`, `full_flow = "9 bar"`}, {"ports    = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '1/4 NPT female' }\nmaterial = \"316\"\nclass", "ports    = { a = '3/8 male', b = '3/8 NPT female', branch = '1/4 NPT female' }\nmaterial = \"316\"\nclass"}}, "end-left-open stop"},
	{"the duty in psi", []amend{{`pressure = "58 bar"`, `pressure = "58 psi"`}}, "pressure-below-osmotic stop"},
	{"and the side stays a high one", []amend{{`pressure = "58 bar"`, `pressure = "58 psi"`}, {"class    = \"class 3000\"", "class    = \"class 150\""}}, "under-rated stop|relief-set-high stop"},
	{"a feed pump in the pump's place", []amend{{pumpItem, "kind = \"feed pump\"\nports = { in = '1/2 NPT female', out = '3/8 NPT female' }\nmaterial = \"316\"\nrated = \"100 bar\"\nflow = \"7 L/min\"\nshutoff = \"3 bar\""}}, "membrane-without-pressure stop"},
	{"a plain passage in the pump's place", []amend{{pumpItem, "kind = \"passage\"\nports = { in = '1/2 NPT female', out = '3/8 NPT female' }\nopen = [\"in>out\"]\nrated = \"100 bar\""}, {`"tail-n12", "hp-pump"]`, `"tail-n12", "hp-pump.in"]`}, {highPath, strings.Replace(highPath, "hp-pump", "hp-pump.out", 1)}}, "membrane-without-pressure stop"},
	{"nothing in the pump's place, a nipple", []amend{{pumpItem, "kind = \"adaptor\"\nports = { a = '1/2 NPT female', b = '3/8 NPT female' }\nmaterial = \"316\"\nrated = \"100 bar\""}, {`inside = "hp-pump"`, ""}}, "membrane-without-pressure stop"},
	{"a relief set above its full flow", []amend{{`full_flow = "70 bar"`, `full_flow = "60 bar"`}}, "file"},
	{"two reliefs, the first too small for the pump and the second above the vessel", []amend{{`flow     = "12 L/min"`, `flow     = "2 L/min"`},
		{runs, "[[item]]\nid = \"relief-2\"\nkind = \"relief valve\"\nports = { in = '1/4 NPT male', out = '3/8 NPT female' }\nmaterial = \"316\"\nset = \"90 bar\"\nfull_flow = \"96 bar\"\nflow = \"12 L/min\"\nrated = \"140 bar\"\n[[item]]\nid = \"hp-tee-2\"\nkind = \"tee\"\nports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '1/4 NPT female' }\nmaterial = \"316\"\nclass = \"class 3000\"\n[[run]]\nname = \"second relief\"\npath = [\"hp-tee-2.branch\", \"relief-2\", \"overboard-2\"]\n[[item]]\nid = \"overboard-2\"\nkind = \"overboard\"\n" + runs},
		{`"hp-pump", "hp-tee", "hp-hose-feed"`, `"hp-pump", "hp-tee", "hp-tee-2", "hp-hose-feed"`}}, "under-rated stop|relief-too-small stop|relief-set-high stop"},
	{"a relief that cannot pass the pump's flow", []amend{{`flow     = "12 L/min"`, `flow     = "2 L/min"`}}, "relief-too-small stop"},
	{"an intake of a plain skin fitting", []amend{{"kind     = \"seacock\"\nabout    = \"flanged seacock, 3/4\"", "kind     = \"through-hull\"\nabout    = \"skin fitting, 3/4\""}}, "intake-without-valve stop"},
	{"a brine outlet below the waterline without a valve", []amend{{"name = \"brine overboard\"", "name = \"brine overboard\"\nbelow_waterline = true"}}, "intake-without-valve stop"},
	{"brine into the tank", []amend{{brinePath, `path = ["throttle", "tail-n38/+", "brine-hose", "tank-2"]` + "\n[[item]]\nid = \"tank-2\"\nkind = \"tank\"\nports = { in = '13 mm barb' }"}, {`id       = "brine-outlet"`, `id = "brine-outlet"` + "\nextra = 1"}}, "brine-into-tank stop"},
	{"brine into the bilge", []amend{{brinePath, `path = ["throttle", "tail-n38/+", "brine-hose", "bilge"]` + "\n[[item]]\nid = \"bilge\"\nkind = \"drain\"\nabout = \"led into the bilge\""}, {`id       = "brine-outlet"`, `id = "brine-outlet"` + "\nextra = 1"}}, "brine-into-bilge stop"},
	{"the relief into a tank", []amend{{reliefPath, `path = ["hp-tee.branch", "relief", "tail-n38/+", "relief-hose", "tank-2"]` + "\n[[item]]\nid = \"tank-2\"\nkind = \"tank\"\nports = { in = '13 mm barb' }"}, {`id       = "relief-outlet"`, `id = "relief-outlet"` + "\nextra = 1"}}, "relief-discharge stop|brine-into-tank stop"},
	{"the relief into the bilge", []amend{{reliefPath, `path = ["hp-tee.branch", "relief", "tail-n38/+", "relief-hose", "bilge"]` + "\n[[item]]\nid = \"bilge\"\nkind = \"drain\"\nabout = \"led into the bilge\""}, {`id       = "relief-outlet"`, `id = "relief-outlet"` + "\nextra = 1"}}, "relief-discharge stop"},
	{"the product straight to the tank", []amend{{`"product-3", "selector.common"]`, `"product-3", "tank"]`}, {selectPath, ""}, {`id       = "selector"`, `id = "selector"` + "\nextra = 1"}, {`id     = "to-tank"`, `id = "to-tank"` + "\nextra = 1"}, {`id     = "to-drain"`, `id = "to-drain"` + "\nextra = 1"}}, "product-no-drain-way caution"},
	{"a plug in the vessel's product port", []amend{{product, `path = ["vessel.product", "plug"]` + "\n[[item]]\nid = \"plug\"\nkind = \"plug\"\nports = { a = '1/4 NPT male' }\nrated = \"100 bar\"\nmaterial = \"316\"\n[[run]]\nname = \"rest\"\n" + `path = ["product-1", "meter", "product-2", "probe-tee", "product-3", "selector.common"]`}, {`plugged   = []`, `plugged = []` + "\n"}}, "product-port-closed stop"},
	{"the product port said plugged", []amend{{product, `path = ["product-1", "meter", "product-2", "probe-tee", "product-3", "selector.common"]`}, {`plugged   = []`, `plugged = ["vessel.product"]`}}, "product-port-closed stop"},
	{"the product port joined to nothing", []amend{{product, `path = ["product-1", "meter", "product-2", "probe-tee", "product-3", "selector.common"]`}}, "port-open stop|product-port-closed stop"},
	{"a valve shut behind the product", []amend{{`"product-3", "selector.common"]`, `"cock", "selector.common"]` + "\n[[item]]\nid = \"cock\"\nkind = \"shut-off valve\"\nnormal = \"shut\"\nports = { in = '10 mm push-in', out = '10 mm push-in' }\nmaterial = \"pom\"\nrated = \"10 bar\""}, {`"probe-tee", "cock"`, `"probe-tee", "product-3", "cock", "product-4"`}, {`id     = "product-3"`, "id = \"product-4\"\nof = \"tube-10\"\nlength = \"0.4 m\"\n[[hose]]\nid     = \"product-3\""}}, "product-port-closed stop"},
	{"no salinity probe", []amend{{probePath, ""}, {"branch = '1/4 NPT female plastic' }\nmaterial = \"pom\"", "branch = '1/4 NPT female plastic' }\nmaterial = \"pom\""}, {`plugged   = []`, `plugged = ["probe-tee.branch"]`}}, "probe-missing caution"},
	{"a ball valve as the throttle", []amend{{`"needle valve, slow, 316"`, `"ball valve, 316"`}}, "throttle-is-quick-valve caution"},
	{"a ball valve, said so by its kind", []amend{{throttleAs, "kind = \"shut-off valve\"\nabout = \"ball valve, 316\"\nports = { in = '3/8 NPT female', out = '3/8 NPT female' }"}}, "throttle-is-quick-valve caution|membrane-without-pressure stop"},
	{"no fine filter behind the coarse one", []amend{{`"filter-25", "union-n34", "filter-5", "tail-n34/+"`, `"filter-25", "tail-n34/+"`}, {`id       = "filter-5"`, "id = \"filter-5\"\nextra = 1"}}, "no-fine-filter caution"},
	{"the fine filter is of twenty micron", []amend{{`micron   = "5 micron"`, `micron   = "20 micron"`}, {`micron = "5 micron"`, `micron = "20 micron"`}}, "no-fine-filter caution"},
	{"no filter at all", []amend{{`"raw-3",
        "tail-n34/+", "filter-25", "union-n34", "filter-5", "tail-n34/+", "feed-1"`, `"feed-1"`}, {`"feed-pump", "feed-1"`, `"feed-pump", "feed-1"`}}, "no-fine-filter stop"},
	{"no strainer", []amend{{`"raw-1", "tail-g34/+", "strainer", "tail-g34/+", "raw-2", "feed-pump"`, `"raw-1", "feed-pump"`}}, "no-strainer caution"},
	{"the fine filter before the coarse one", []amend{{`"filter-25", "union-n34", "filter-5"`, `"filter-5", "union-n34", "filter-25"`}}, "filters-out-of-order caution"},
	{"the fineness of the housings exchanged", []amend{{`micron   = "25 micron"`, `micron   = "9 micron"`}, {`micron   = "5 micron"`, `micron   = "25 micron"`}, {`micron   = "9 micron"`, `micron   = "5 micron"`}}, "cartridge-and-housing-differ stop"},
	{"a cartridge of one micron in a housing of five", []amend{{`micron = "5 micron"`, `micron = "1 micron"`}}, "cartridge-and-housing-differ stop"},
	{"a cartridge of twenty inches in a housing of ten", []amend{{"about  = \"pleated, 10 inch\"\nmicron = \"5 micron\"", "about  = \"pleated, 20 inch\"\nmicron = \"5 micron\""}}, "cartridge-and-housing-differ stop"},
	{"an end at high pressure called taper and parallel", []amend{{jicEnds, strings.Replace(jicEnds, "1/2 NPT male", "1/2 NPT male taper parallel", 1)}}, "end-left-open stop"},
	{"an end at high pressure called a thread and a solder end", []amend{{jicEnds, strings.Replace(jicEnds, "1/2 NPT male", "1/2 NPT male solder", 1)}}, "end-not-said stop"},
	{"a title of another thread than the ports", []amend{{jicEnds, jicEnds + "\ntitle = \"Adaptor 1/2 BSPT male x 9/16-18 JIC male\""}}, "file"},
	{"a title of another voltage than the description", []amend{{`"24 V, shut without current"`, "\"24 V, shut without current\"\ntitle = \"Solenoid valve 1/2 NPT female 12 V DC\""}}, "voltages-differ caution"},
	{"a relief three bar above the duty", []amend{{`set      = "65 bar"`, `set      = "60 bar"`}}, "relief-margin-thin caution"},
	{"an element rated below the duty", []amend{{elementAs, elementAs + "\nrated = \"41 bar\""}}, "pressure-over-element stop"},
	{"no element", []amend{{"id     = \"element\"\nkind   = \"membrane element\"\nabout  = \"seawater element 2.5 x 21\"\ninside = \"vessel\"", "id = \"element\"\nkind = \"membrane element\"\nabout = \"seawater element 2.5 x 21\"\nextra = 1"}}, "element-missing stop"},
	{"a four-inch element in the vessel", []amend{{`"seawater element 2.5 x 21"`, `"seawater element 4 x 40"`}}, "element-and-vessel-differ stop"},
	{"an element longer than its vessel", []amend{{`"seawater element 2.5 x 21"`, `"seawater element 2.5 x 40"`}}, "element-and-vessel-differ stop"},
	{"suction hose of 13 mm on barbs of 19", []amend{{"about  = \"suction hose, wire helix\"\nbore   = \"19 mm\"", "about  = \"suction hose, wire helix\"\nbore   = \"13 mm\""}}, "barb-and-bore-differ stop"},
	{"suction hose that says nothing of a vacuum", []amend{{`vacuum = "0.9 bar"`, ""}}, "hose-may-collapse caution"},
	{"a valve in the relief's outlet", []amend{{reliefPath, `path = ["hp-tee.branch", "relief", "cock", "tail-n38/+", "relief-hose", "relief-outlet"]` + "\n[[item]]\nid = \"cock\"\nkind = \"shut-off valve\"\nports = { in = '3/8 NPT male', out = '3/8 NPT female' }\nmaterial = \"316\"\nrated = \"100 bar\""}}, "relief-cut-off stop"},
	{"a valve before the relief", []amend{{reliefPath, `path = ["hp-tee.branch", "cock", "relief", "tail-n38/+", "relief-hose", "relief-outlet"]` + "\n[[item]]\nid = \"cock\"\nkind = \"shut-off valve\"\nports = { in = '1/4 NPT male', out = '1/4 NPT female' }\nmaterial = \"316\"\nrated = \"100 bar\""}}, "relief-cut-off stop"},
	{"no relief", []amend{{reliefPath, `path = ["hp-tee.branch", "plug"]` + "\n[[item]]\nid = \"plug\"\nkind = \"plug\"\nports = { a = '1/4 NPT male' }\nrated = \"200 bar\"\nmaterial = \"316\""}}, "relief-missing stop"},
	{"a relief above its vessel", []amend{{`set      = "65 bar"`, `set      = "90 bar"`}, {`full_flow = "70 bar"`, `full_flow = "96 bar"`}}, "relief-set-high stop|under-rated stop"},
	{"a relief below the duty", []amend{{`set      = "65 bar"`, `set      = "53 bar"`}, {`full_flow = "70 bar"`, `full_flow = "60 bar"`}}, "relief-set-low stop"},
	{"a tee of class 150", []amend{{`class    = "class 3000"`, `class    = "class 150"`}}, "under-rated stop"},
	{"a hose of 100R6", []amend{{`spec     = "SAE 100R8"`, `spec     = "SAE 100R6"`}}, "under-rated stop"},
	{"a vessel of 40 bar", []amend{{`rated    = "83 bar"`, `rated    = "40 bar"`}}, "under-rated stop"},
	{"a tee without a class", []amend{{`class    = "class 3000"`, ""}}, "rating-unknown stop"},
	{"a seacock on the brine outlet that can be shut", []amend{{"kind     = \"through-hull\"\nabout    = \"skin fitting above the waterline\"\nports    = { inboard = '13 mm barb' }\nmaterial = \"bronze\"\nrated    = \"10 bar\"\n\n[[item]]\nid       = \"relief-outlet\"", "kind = \"seacock\"\nports = { inboard = '13 mm barb' }\nmaterial = \"bronze\"\nrated = \"10 bar\"\n\n[[item]]\nid       = \"relief-outlet\""}}, "under-rated stop|no-way-out stop"},
	{"a gauge to 60 bar", []amend{{`scale = "100 bar"`, `scale = "60 bar"`}}, "gauge-range caution"},
	{"no gauge on the high side", []amend{{"[[run]]\nname = \"high-pressure gauge\"\npath = [\"gauge-tee-hp.branch\", \"hp-gauge\"]", ""}, {`plugged   = []`, `plugged = ["gauge-tee-hp.branch"]`}}, "gauge-missing caution"},
	{"an NPT male in a G throttle", []amend{{"about    = \"needle valve, slow, 316\"\nports    = { in = '3/8 NPT female'", "about    = \"needle valve, slow, 316\"\nports    = { in = 'G 3/8 female'"}}, "flank-angles-differ stop|pitches-differ stop|taper-in-parallel stop"},
	{"a left-handed throttle", []amend{{"about    = \"needle valve, slow, 316\"\nports    = { in = '3/8 NPT female'", "about    = \"needle valve, slow, 316\"\nports    = { in = '3/8 NPT female LH'"}}, "hands-differ stop"},
	{"a brass seacock", []amend{{"size     = '3/4\"'\nports    = { inboard = '19 mm barb long' }\nmaterial = \"bronze\"", "size     = '3/4\"'\nports    = { inboard = '19 mm barb long' }\nmaterial = \"brass\""}}, "material-not-for-seawater caution|material-not-for-seawater stop"},
	{"no check valve in the flush", []amend{{`"flush-valve",
        "flush-check", "flush-tee.branch"]`, `"flush-valve",
        "nip", "flush-tee.branch"]` + "\n[[item]]\nid = \"nip\"\nkind = \"nipple\"\nports = { a = '1/2 NPT male', b = '1/2 NPT male' }\nmaterial = \"bronze\"\nrated = \"16 bar\""}}, "sea-reaches-house stop|sea-reaches-house caution"},
	{"no carbon in the flush", []amend{{`"flush-1", "tail-p12/+", "carbon", "tail-p12/+", "flush-2"`, `"flush-1", "join", "flush-2"`}, {runs, "[[item]]\nid = \"join\"\nkind = \"nipple\"\nports = { a = '13 mm barb', b = '13 mm barb' }\nmaterial = \"bronze\"\nrated = \"10 bar\"\n" + runs}}, "chlorine-on-membrane caution"},
	{"the flush check valve the wrong way round", []amend{{`"flush-check", "flush-tee.branch"`, `"flush-check.out>in", "flush-tee.branch"`}}, "flush-misses-membrane caution|flush-misses-membrane stop"},
	{"water of -1 C", []amend{{`water    = "17 C"`, `water    = "-1.8 C"`}}, "water-freezes caution|water-freezes stop"},
	{"water of 48 C", []amend{{`water    = "17 C"`, `water    = "48 C"`}}, "water-too-warm stop"},
	{"a brine lake", []amend{{`salinity = "34 g/kg"`, `salinity = "90 g/kg"`}}, "pressure-below-osmotic stop|pressure-below-osmotic caution"},
	{"too much product wanted", []amend{{`product  = "26 L/h"`, `product  = "90 L/h"`}}, "product-below-wanted stop"},
	{"a meter that begins above the product", []amend{{"6 to 70 L/h", "100 to 500 L/h"}}, "meter-range caution"},
	{"a supply of 12 V for a pump of 24", []amend{{`supply   = "24 V"`, `supply   = "12 V"`}}, "voltages-differ caution"},
	{"a selector that shuts between", []amend{{`between  = "open"`, `between  = "shut"`}}, "under-rated stop|no-way-out stop|product-port-closed stop|product-port-closed caution"},
	{"a hose too short for its bend", []amend{{"length   = \"1.2 m\"", "length   = \"0.2 m\"\nbend = \"180 deg\"\nbend_radius = \"127 mm\""}}, "hose-too-short stop|hose-too-short caution"},
	{"a push-in elbow on the high side", []amend{{highPath, `path = ["hp-pump", "hp-tee", "hp-hose-feed", "jic-n12/+", "weak", "vessel.feed"]` + "\n[[item]]\nid = \"weak\"\nkind = \"coupling\"\nmaterial = \"pp\"\nports = { a = '1/2 NPT female plastic', b = '1/2 NPT male plastic' }\nrated = \"10 bar\""}}, "under-rated stop"},
	{"the sea water meets mild steel", []amend{{"ports    = { a = '1/2 NPT male', b = '19 mm barb long' }\nmaterial = \"316\"", "ports    = { a = '1/2 NPT male', b = '19 mm barb long' }\nmaterial = \"steel\""}}, "material-not-for-seawater stop|material-not-for-seawater caution"},
	{"a rigid pipe to the pump", []amend{{"\"hp-tee\", \"hp-hose-feed\", \"jic-n12/+\", \"vessel.feed\"", "\"hp-tee\", \"pipe\", \"vessel.feed\""}, {runs, "[[item]]\nid = \"pipe\"\nkind = \"nipple\"\nports = { a = '3/8 NPT male', b = '1/2 NPT male' }\nmaterial = \"316\"\nrated = \"300 bar\"\n" + runs}}, "nothing-turns stop|nothing-turns caution"},
}

// Every single fault put into the clean plant is found.
func TestSingleFaults(t *testing.T) {
	clean := sandpiper(t)
	missed := 0
	for _, c := range oneFault {
		got, err := seen(changed(t, clean, c.edits...))
		if err != nil {
			if c.finds != "file" {
				missed++
				t.Errorf("%s: the file is at fault: %v", c.why, err)
			}
			continue
		}
		var list []string
		right := false
		for _, f := range got {
			list = append(list, f.Slug+" "+f.Severity.String())
			for _, want := range strings.Split(c.finds, "|") {
				right = right || want == f.Slug+" "+f.Severity.String()
			}
		}
		if !right {
			missed++
			t.Errorf("%s: not found (%s); there is %s", c.why, c.finds, strings.Join(list, ", "))
		}
	}
	t.Logf("%d of %d single faults found", len(oneFault)-missed, len(oneFault))
}
