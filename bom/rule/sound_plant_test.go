package rule

import (
	"testing"

	"handtight/bom/finding"
)

// more puts further tables into the plant before its runs.
func more(text string) amend { return amend{runs, text + "\n" + runs} }

// Plants of other layouts, each as sound as the clean one: nothing in them is a stop or a
// caution, but for what `says` names. Written down before the tool saw them.
var soundPlants = []struct {
	why   string
	edits []amend
	says  []string // "slug severity" that is right to be said
}{
	{"as it is", nil, nil},
	{"two vessels in series", []amend{
		{brineHigh, `path = ["vessel.brine", "jic-n12/+", "hp-hose-link", "jic-n12/+", "vessel-2.feed"]` + "\n[[run]]\nname = \"brine, second\"\n" + `path = ["vessel-2.brine", "jic-n12/+", "hp-hose-brine", "gauge-tee-hp", "throttle"]`},
		{"6 to 70 L/h", "15 to 120 L/h"},
		{product, `path = ["vessel.product", "product-elbow", "product-1", "join", "product-5", "meter", "product-2", "probe-tee", "product-3", "selector.common"]` + "\n[[run]]\nname = \"second product\"\n" + `path = ["vessel-2.product", "product-elbow/+", "product-4", "join.branch"]`},
		more("[[item]]\nid = \"vessel-2\"\nkind = \"pressure vessel\"\nabout = \"2.5 x 21, end ports\"\nports = { feed = '1/2 NPT female', brine = '1/2 NPT female', product = '1/4 NPT female' }\nmaterial = \"fibreglass\"\nrated = \"83 bar\"\n[[item]]\nid = \"element-2\"\nkind = \"membrane element\"\nabout = \"seawater element 2.5 x 21\"\ninside = \"vessel-2\"\n[[hose]]\nid = \"hp-hose-link\"\nspec = \"SAE 100R8\"\nbore = '3/8\"'\nlength = \"0.7 m\"\nends = ['9/16-18 JIC female swivel', '9/16-18 JIC female swivel']\nmaterial = \"nylon core, 316 ends\"\n[[item]]\nid = \"join\"\nkind = \"tee\"\nabout = \"drinking water quality\"\nports = { a = '10 mm push-in', b = '10 mm push-in', branch = '10 mm push-in' }\nmaterial = \"pom\"\nrated = \"10 bar\"\n[[hose]]\nid = \"product-4\"\nof = \"tube-10\"\nlength = \"0.4 m\"\n[[hose]]\nid = \"product-5\"\nof = \"tube-10\"\nlength = \"0.4 m\""),
	}, nil},
	{"the relief on a tee at the pump's own port", []amend{
		{highPath, `path = ["hp-pump", "pump-tee", "hp-hose-feed", "jic-n12/+", "vessel.feed"]`},
		{reliefPath, `path = ["pump-tee.branch", "relief", "tail-n38/+", "relief-hose", "relief-outlet"]`},
		more("[[item]]\nid = \"pump-tee\"\nkind = \"tee\"\nabout = \"forged street tee\"\nports = { a = '3/8 NPT male', b = '3/8 NPT female', branch = '1/4 NPT female' }\nmaterial = \"super duplex\"\nclass = \"class 3000\""),
		{`id       = "hp-tee"`, "id = \"hp-tee\"\nextra = 1"},
	}, nil},
	{"product by gravity into a jug, and the tank filled from it by hand", []amend{
		{`"product-3", "selector.common"]`, `"to-drain", "galley-drain"]`}, {selectPath, ""},
		{`id       = "selector"`, "id = \"selector\"\nextra = 1"},
	}, nil},
	{"fed from a tank of sea water", []amend{
		{`path = ["intake", "raw-1", "tail-g34/+", "strainer"`, `path = ["salt", "raw-1", "tail-g34/+", "strainer"`},
		{"name = \"raw water\"\nbelow_waterline = true", "name = \"raw water\""},
		more("[[item]]\nid = \"salt\"\nkind = \"sea\"\nabout = \"day tank of sea water\"\nports = { out = '19 mm barb long' }"),
	}, nil},
	{"a day boat without a flush", []amend{
		{`"feed-1", "gauge-tee", "feed-2",
        "flush-tee", "feed-3", "tail-n12", "hp-pump"]`, `"feed-1", "gauge-tee", "feed-3", "tail-n12", "hp-pump"]`},
		{"[[run]]\nname = \"flush\"\n" + flushPath, ""},
	}, []string{"material-not-for-seawater caution"}}, // 316 that is never rinsed pits
	{"a back-pressure regulator set at the duty, for the throttle", []amend{
		{throttleAs, "kind = \"back-pressure regulator\"\nset = \"58 bar\"\nabout = \"316\"\nports = { in = '3/8 NPT female', out = '3/8 NPT female' }"},
	}, nil},
	{"a throttle hung between two hoses", []amend{
		{brinePath, `path = ["throttle", "swivel-tail", "brine-hose", "brine-outlet"]`},
		{brineHigh, `path = ["vessel.brine", "jic-n12/+", "hp-hose-brine", "gauge-tee-hp>b", "throttle"]`},
		{"about    = \"needle valve, slow, 316\"\nports    = { in = '3/8 NPT female', out = '3/8 NPT female' }", "about = \"needle valve, slow, 316\"\nports = { in = '3/8 NPT female', out = '-6 JIC male' }"},
		more("[[item]]\nid = \"swivel-tail\"\nkind = \"hose tail\"\nmaterial = \"316\"\nrated = \"40 bar\"\nports = { a = '-6 JIC female swivel', b = '13 mm barb' }"),
	}, nil},
	{"a throttle between a hose and a tail, and no tee", []amend{
		{brineHigh, `path = ["vessel.brine", "tee-n12", "jic-n12/+", "hp-hose-brine", "jic-n38", "throttle"]`},
		{"path = [\"gauge-tee-hp.branch\", \"hp-gauge\"]", "path = [\"tee-n12.branch\", \"hp-gauge\"]"},
		more("[[item]]\nid = \"tee-n12\"\nkind = \"tee\"\nmaterial = \"316\"\nclass = \"class 3000\"\nports = { a = '1/2 NPT male', b = '1/2 NPT female', branch = '1/4 NPT female' }\n[[item]]\nid = \"jic-n38\"\nkind = \"adaptor\"\nmaterial = \"316\"\nrated = \"270 bar\"\nports = { a = '-6 JIC male', b = '3/8 NPT male' }"),
	}, nil},
	{"a strainer of barbs between two hoses", []amend{
		{`"raw-1", "tail-g34/+", "strainer", "tail-g34/+", "raw-2"`, `"raw-1", "strainer", "raw-2"`},
		{"about    = \"basket strainer, clear bowl\"\nports    = { in = 'G 3/4 female', out = 'G 3/4 female' }", "about = \"basket strainer, clear bowl\"\nports = { in = '19 mm barb long', out = '19 mm barb long' }"},
	}, nil},
	{"a flow meter of threads hung between two tubes", []amend{
		{"ports = { in = '10 mm push-in', out = '10 mm push-in' }\nrated = \"8 bar\"", "ports = { in = '1/4 NPT female', out = '1/4 NPT female' }\nrated = \"8 bar\""},
		{`"product-1", "meter", "product-2"`, `"product-1", "straight/+.b>a", "meter", "straight/+", "product-2"`},
		more("[[item]]\nid = \"straight\"\nkind = \"adaptor\"\nabout = \"push-in, drinking water quality\"\nmaterial = \"pom\"\nrated = \"10 bar\"\nports = { a = '1/4 NPT male plastic', b = '10 mm push-in' }"),
	}, nil},
	{"fittings of super duplex, titanium and 904L of class 3000", []amend{
		{"material = \"316\"\nclass    = \"class 3000\"", "material = \"super duplex\"\nclass = \"class 3000\""},
		{`"hp-pump", "hp-tee", "hp-hose-feed", "jic-n12/+", "vessel.feed"`, `"hp-pump", "hp-tee", "ti", "904", "hp-hose-feed", "jic-n12/+", "vessel.feed"`},
		more("[[item]]\nid = \"ti\"\nkind = \"elbow\"\nmaterial = \"titanium\"\nclass = \"class 3000\"\nports = { a = '3/8 NPT male', b = '3/8 NPT female' }\n[[item]]\nid = \"904\"\nkind = \"elbow\"\nmaterial = \"904L\"\nclass = \"class 3000\"\nports = { a = '3/8 NPT male', b = '3/8 NPT female' }"),
	}, nil},
	{"a timer valve for the flush", []amend{
		{"kind     = \"solenoid valve\"\nabout    = \"24 V, shut without current\"", "kind     = \"flush timer valve\"\nabout    = \"24 V, shut without current\""},
	}, nil},
	{"a flush valve turned by hand", []amend{
		{"kind     = \"solenoid valve\"\nabout    = \"24 V, shut without current\"", "kind     = \"shut-off valve\"\nnormal = \"flush\"\nabout    = \"ball valve, turned by hand\""},
	}, nil},
	{"flushed from a jug of product by the feed pump", []amend{
		{flushPath, `path = ["jug", "flush-1", "cock", "flush-2", "flush-check", "flush-tee.branch"]`},
		{"ports    = { in = '1/2 NPT male', out = '1/2 NPT male' }\nmaterial = \"bronze\"\nrated    = \"16 bar\"\nfails", "ports    = { in = '13 mm barb', out = '1/2 NPT male' }\nmaterial = \"bronze\"\nrated    = \"16 bar\"\nfails"},
		more("[[item]]\nid = \"jug\"\nkind = \"house supply\"\nabout = \"jug of product water on a shelf\"\npressure = \"0.1 bar\"\nflow = \"7 L/min\"\nports = { out = '13 mm barb' }\n[[item]]\nid = \"cock\"\nkind = \"shut-off valve\"\nnormal = \"flush\"\nmaterial = \"bronze\"\nrated = \"10 bar\"\nports = { in = '13 mm barb', out = '13 mm barb' }"),
	}, []string{"hose-may-collapse caution"}}, // with the seacock shut, the feed pump draws through the check valve
	{"figures in the units of another country", []amend{
		{`pressure = "58 bar"`, `pressure = "841 psi"`}, {`product  = "26 L/h"`, `product = "6.9 gal/h"`}, {`water    = "17 C"`, `water = "63 F"`},
		{`set      = "65 bar"`, `set = "943 psi"`}, {`full_flow = "70 bar"`, `full_flow = "1015 psi"`}, {`flow     = "7 L/min"`, `flow = "1.85 gpm"`},
	}, nil},
	{"three filters, of 50, 20 and 5 micron", []amend{
		{`"filter-25", "union-n34", "filter-5"`, `"filter-50", "union-n34/+", "filter-25", "union-n34/+", "filter-5"`},
		{`micron   = "25 micron"`, `micron = "20 micron"`}, {`micron = "25 micron"`, `micron = "20 micron"`}, {`"10 inch housing, 25 micron"`, `"10 inch housing, 20 micron"`},
		more("[[item]]\nid = \"filter-50\"\nkind = \"filter housing\"\nabout = \"10 inch housing, 50 micron\"\nmicron = \"50 micron\"\nports = { in = '3/4 NPT female plastic', out = '3/4 NPT female plastic' }\nmaterial = \"pp\"\nrated = \"8 bar\"\n[[item]]\nid = \"cartridge-50\"\nkind = \"filter cartridge\"\nabout = \"pleated, 10 inch\"\nmicron = \"50 micron\"\ninside = \"filter-50\"\nlife = \"60 h\""),
	}, nil},
	{"the relief led back to the pump's inlet", []amend{
		{`"flush-tee", "feed-3", "tail-n12", "hp-pump"]`, `"flush-tee", "feed-3", "back-tee", "feed-4", "tail-n12", "hp-pump"]`},
		{reliefPath, `path = ["hp-tee.branch", "relief", "tail-n38/+", "relief-hose", "back-tee.branch"]`}, {`id       = "relief-outlet"`, "id       = \"relief-outlet\"\nextra = 1"},
		more("[[item]]\nid = \"back-tee\"\nkind = \"tee\"\nports = { a = '19 mm barb long', b = '19 mm barb long', branch = '13 mm barb' }\nmaterial = \"bronze\"\nrated = \"10 bar\"\n[[hose]]\nid = \"feed-4\"\nof = \"suction-hose\"\nlength = \"0.3 m\""),
	}, []string{"hose-may-collapse caution"}}, // the relief's hose is then part of the suction
	{"relief and brine leave by one skin fitting without a valve", []amend{
		{brinePath, `path = ["throttle", "tail-n38/+", "brine-hose", "out-tee", "brine-hose-2", "brine-outlet"]`},
		{reliefPath, `path = ["hp-tee.branch", "relief", "tail-n38/+", "relief-hose", "out-tee.branch"]`}, {`id       = "relief-outlet"`, "id       = \"relief-outlet\"\nextra = 1"},
		more("[[item]]\nid = \"out-tee\"\nkind = \"tee\"\nports = { a = '13 mm barb', b = '13 mm barb', branch = '13 mm barb' }\nmaterial = \"bronze\"\nrated = \"10 bar\"\n[[hose]]\nid = \"brine-hose-2\"\nof = \"discharge-hose\"\nlength = \"0.3 m\""),
	}, nil},
	{"the pump driven by the engine", []amend{{`motor    = "24 V DC, belt drive"`, `motor    = "engine, belt and clutch"`}, {`supply   = "24 V"`, ""}}, nil},
	{"no feed pump: the plunger pump stands below the waterline", []amend{
		{`"raw-2", "feed-pump", "raw-3",`, `"raw-2",`}, {`water    = "17 C"`, "water    = \"17 C\"\nlift = \"-0.6 m\""},
	}, []string{"feed-pump-not-said caution", "hose-may-collapse caution", "flush-runs-to-sea caution"}},
	{"high pressure on 24 degree ends with O-rings", []amend{
		{"ports    = { a = '1/2 NPT male', b = '-6 JIC male' }\nmaterial = \"316\"\nrated    = \"270 bar\"", "ports    = { a = '1/2 NPT male', b = '12S 24 degree male' }\nmaterial = \"316\"\nrated    = \"270 bar\""},
		{`ends     = ['3/8 NPT male', '9/16-18 JIC female swivel']`, `ends     = ['3/8 NPT male', 'DKOS 12S']`}, {`ends     = ['9/16-18 JIC female swivel', '9/16-18 JIC female swivel']`, `ends     = ['DKOS 12S', 'DKOS 12S']`},
		{"ports    = { a = '-6 JIC male', b = '3/8 NPT male', branch = '1/4 NPT female' }", "ports    = { a = '12S 24 degree male', b = '3/8 NPT male', branch = '1/4 NPT female' }"},
	}, nil},
	{"the brine shuts by nothing, and the vessel has a spare port with a plug", []amend{
		{"ports    = { feed = '1/2 NPT female', brine = '1/2 NPT female', product = '1/4 NPT female' }", "ports = { feed = '1/2 NPT female', brine = '1/2 NPT female', product = '1/4 NPT female', spare = '1/4 NPT female' }"},
		{`plugged   = []`, `plugged = ["vessel.spare"]`},
	}, nil},
	{"G studs with bonded washers on the throttle", []amend{
		{"about    = \"needle valve, slow, 316\"\nports    = { in = '3/8 NPT female', out = '3/8 NPT female' }", "about    = \"needle valve, slow, 316\"\nports    = { in = 'G 3/8 female', out = 'G 3/8 female' }"},
		{"ports    = { a = '-6 JIC male', b = '3/8 NPT male', branch = '1/4 NPT female' }", "ports    = { a = '-6 JIC male', b = 'G 3/8 male', branch = '1/4 NPT female' }"},
		{brinePath, `path = ["throttle", "tail-g38", "brine-hose", "brine-outlet"]`},
		more("[[item]]\nid = \"tail-g38\"\nkind = \"hose tail\"\nmaterial = \"316\"\nrated = \"40 bar\"\nports = { a = 'G 3/8 male', b = '13 mm barb' }"),
	}, nil},
	{"a seacock screwed on a skin fitting", []amend{
		{`path = ["intake", "raw-1"`, `path = ["skin", "cock", "tail-n34-m", "raw-1"`}, {`id       = "intake"`, "id       = \"intake\"\nextra = 1"},
		more("[[item]]\nid = \"skin\"\nkind = \"through-hull\"\nmaterial = \"bronze\"\nrated = \"16 bar\"\nports = { inboard = 'G 3/4 male' }\n[[item]]\nid = \"cock\"\nkind = \"shut-off valve\"\nmaterial = \"bronze\"\nrated = \"16 bar\"\nports = { in = 'G 3/4 female', out = 'Rp 3/4 female' }\n[[item]]\nid = \"tail-n34-m\"\nkind = \"hose tail\"\nmaterial = \"bronze\"\nrated = \"16 bar\"\nports = { a = 'R 3/4 male', b = '19 mm barb long' }"),
	}, nil},
}

// What is sound is not blamed.
func TestSoundPlants(t *testing.T) {
	clean := sandpiper(t)
	wrong := 0
	for _, c := range soundPlants {
		got, err := seen(changed(t, clean, c.edits...))
		if err != nil {
			t.Errorf("%s: the file is at fault: %v", c.why, err)
			wrong++
			continue
		}
		right := true
		for _, f := range got {
			named := false
			for _, s := range c.says {
				named = named || s == f.Slug+" "+f.Severity.String()
			}
			if f.Severity != finding.Note && !named && f.Slug != itemNotPlaced.Slug { // what an edit takes out stays on the list
				right = false
				t.Errorf("%s: %s (%s): %s", c.why, f.Slug, f.Severity, f.Reason)
			}
		}
		if !right {
			wrong++
		}
	}
	t.Logf("%d of %d sound plants blamed", wrong, len(soundPlants))
}
