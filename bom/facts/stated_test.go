package facts_test

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/facts"
	"handtight/bom/read"
	"handtight/bom/rule"
	"handtight/catalog"
)

// Every key that the reader takes changes something of what check, order or duty say, or is shown as
// carried. That the words of an order repeat it is not enough: a key that is read and weighed nowhere is
// repeated as well. The keys are those that the reader itself names when it meets one that it does not know, so
// that a new key without a case fails here.

// places are what moves when a line is longer, and says nothing.
var places = regexp.MustCompile(`"(line|column)":\s*\d+`)

// repeated are the words of a part in an order, in which its keys are repeated.
var repeated = regexp.MustCompile(`"(about|words)":"(?:[^"\\]|\\.)*"`)

// told is everything that check, order and duty say of a build, without what only repeats it.
func told(text string) (string, error) {
	b, faults := read.Parse("build.toml", []byte(text))
	if err := faults.Err(); err != nil {
		return "", err
	}
	sys, faults := bom.Walk(b)
	if err := faults.Err(); err != nil {
		return "", err
	}
	list := rule.Check(sys)
	o, err := sys.Order()
	if err != nil {
		return "", err
	}
	var out strings.Builder
	e := json.NewEncoder(&out)
	all, ordered := facts.Of(sys, list), facts.OrderOf(sys, o)
	all.States = facts.States(sys.Segments.Views())
	for _, v := range []any{all, ordered, ordered.RatesDate, facts.DutyOf(duty.Of(sys), list, nil, false)} {
		if err := e.Encode(v); err != nil {
			return "", err
		}
	}
	return repeated.ReplaceAllString(places.ReplaceAllString(out.String(), ""), ""), nil
}

var header = regexp.MustCompile(`(?m)^\[\[?[a-z]+\]\]?[ \t]*(?:#.*)?$`)

// tableAt is the part of a text from the header of a table to the next.
func tableAt(text, mark string) (start, end int) {
	at := strings.Index(text, mark)
	if at < 0 {
		return 0, 0
	}
	end = len(text)
	for _, m := range header.FindAllStringIndex(text, -1) {
		if m[0] <= at {
			start = m[0]
		} else {
			return start, m[0]
		}
	}
	return start, end
}

// with is a build in which a key of the table that holds a mark has a value.
func with(text, mark, key, value string) string {
	start, end := tableAt(text, mark)
	table := text[start:end]
	if re := regexp.MustCompile(`(?m)^` + key + `[ \t]*=.*$`); re.MatchString(table) {
		table = re.ReplaceAllLiteralString(table, key+" = "+value)
	} else {
		first, rest, _ := strings.Cut(table, "\n")
		table = first + "\n" + key + " = " + value + "\n" + rest
	}
	return text[:start] + table + text[end:]
}

// keysOf asks the reader which keys a table takes: it names them when it meets one that it does not know.
func keysOf(t *testing.T, table string) []string {
	t.Helper()
	const heading = "[build]\nname = \"x\"\ncurrency = \"EUR\"\n"
	if table != "[build]\n" {
		table = heading + table
	} else {
		table = heading
	}
	_, faults := read.Parse("build.toml", []byte(table+"qqqqqqqqqqqqqqqqqqqq = 1\n"))
	for _, f := range faults {
		if _, list, ok := strings.Cut(f.Remedy, "the keys here are "); ok {
			return strings.Split(list, ", ")
		}
	}
	require.Fail(t, "the reader names no keys", "%s: %v", table, faults)
	return nil
}

// values are two of each key; those of one table alone stand under its name.
var values = map[string][2]string{
	"about": {`"stamped 7 bar"`, `"stamped 9 bar"`}, "title": {`"Elbow 1/2 NPT male x 1/2 NPT female, 316"`, `"Elbow 1/2 NPT male x 1/2 NPT female, brass"`},
	"material": {`"316"`, `"brass"`}, "rated": {`"20 bar"`, `"300 bar"`}, "class": {`"class 150"`, `"class 3000"`}, "spec": {`"SAE 100R6"`, `"SAE 100R8"`},
	"bore": {`"13 mm"`, `"19 mm"`}, "outside": {`"10 mm"`, `"12 mm"`}, "wall": {`"0.5 mm"`, `"3 mm"`}, "vacuum": {`"0.2 bar"`, `"0.9 bar"`}, "each": {"1", "2"},
	"life": {`"100 h"`, `"900 h"`}, "fails": {`"100 h"`, `"9000 h"`}, "have": {"0", "1"}, "extra": {"1", "5"}, "kv": {`"0.3 m3/h"`, `"9 m3/h"`}, "inside": {`"hp-pump"`, `"vessel"`},
	"size": {`"2521"`, `"2540"`}, "micron": {`"5 micron"`, `"50 micron"`}, "loss": {`"0.1 bar at 9 L/min"`, `"1.5 bar at 9 L/min"`}, "loss_dirty": {`"0.2 bar at 9 L/min"`, `"2.4 bar at 9 L/min"`},
	"flow": {`"2 L/min"`, `"11 L/min"`}, "shutoff": {`"1 bar"`, `"3 bar"`}, "type": {`"diaphragm"`, `"centrifugal"`}, "motor": {`"24 V DC"`, `"engine"`},
	"curve":        {`[["0 L/min", "2.5 bar"], ["14 L/min", "0 bar"]]`, `[["0 L/min", "3.5 bar"], ["24 L/min", "0 bar"]]`},
	"self_priming": {`"0.1 m"`, `"2.5 m"`}, "current": {`"4 A"`, `"9 A"`}, "stall": {`"59 bar"`, `"200 bar"`}, "flow_at": {`"20 bar"`, `"90 bar"`}, "speed": {`"1000 rpm"`, `"1450 rpm"`},
	"motor_speed": {`"900 rpm"`, `"1750 rpm"`}, "engine_speed": {`"900 to 1000 rpm"`, `"900 to 3000 rpm"`}, "pulley": {`"80:112"`, `"112:80"`}, "volumetric": {`"80 %"`, `"95 %"`},
	"efficiency": {`"70 %"`, `"90 %"`}, "motor_power": {`"0.5 kW"`, `"3 kW"`}, "motor_current": {`"30 A"`, `"60 A"`}, "motor_efficiency": {`"60 %"`, `"90 %"`}, "npsh": {`"1 m"`, `"9 m"`},
	"plunger_bore": {`"10 mm"`, `"14 mm"`}, "stroke": {`"10 mm"`, `"14 mm"`}, "plungers": {"2", "3"}, "precharge": {`"90 bar"`, `"5 bar"`}, "gas": {`"air"`, `"oxygen"`}, "height": {`"1 m"`, `"15 m"`}, "relieves": {"false", "true"}, "ratio": {`"8 %"`, `"12 %"`}, "leak": {`"0 %"`, `"2 %"`}, "friction": {`"0.1 bar"`, `"0.9 bar"`},
	"scale": {`"60 bar"`, `"160 bar"`}, "elements": {"1", "2"}, "set": {`"60 bar"`, `"68 bar"`}, "full_flow": {`"70 bar"`, `"80 bar"`}, "normal": {`"open"`, `"shut"`}, "between": {`"open"`, `"shut"`},
	"pressure": {`"1 bar"`, `"5 bar"`}, "holds": {`"product"`, `"town water"`}, "length": {`"0.3 m"`, `"1.1 m"`}, "product": {`"500 gpd"`, `"900 gpd"`}, "tolerance": {`"5 %"`, `"30 %"`},
	"rejection": {`"99 %"`, `"99.7 %"`}, "rejection_min": {`"98 %"`, `"99 %"`}, "area": {`"2 m2"`, `"3 m2"`}, "test_pressure": {`"50 bar"`, `"60 bar"`}, "test_salt": {`"30 g/L"`, `"35 g/L"`},
	"test_recovery": {`"6 %"`, `"10 %"`}, "spacer": {`"0.6 mm"`, `"0.9 mm"`}, "max_pressure": {`"40 bar"`, `"83 bar"`}, "max_flow": {`"4 L/min"`, `"20 L/min"`}, "min_brine": {`"2 L/min"`, `"9 L/min"`},
	"max_recovery": {`"2 %"`, `"20 %"`}, "max_drop": {`"0.01 bar"`, `"2 bar"`}, "max_water": {`"10 C"`, `"45 C"`}, "roughness": {`"0.001 mm"`, `"0.5 mm"`}, "corrugated": {"false", "true"},
	"bend": {`"0 deg"`, `"700 deg"`}, "bend_radius": {`"20 mm"`, `"900 mm"`},
	"filter cartridge.inside": {`"filter-25"`, `"filter-5"`}, "tee.title": {`"Tee, tested to 90 bar"`, `"Tee, tested to 80 bar"`}, "seal kit.inside": {`"hp-pump"`, `"feed-pump"`},
	"flow meter.scale": {`"1 to 30 L/h"`, `"5 to 500 L/h"`}, "salinity probe.scale": {`"1000 mg/L"`, `"2000 mg/L"`},

	"[build].name": {`"one"`, `"two"`}, "[build].currency": {`"NZD"`, `"AUD"`},
	"[build].plugged": {`[]`, `["probe-tee.branch"]`}, "[build].left_open": {`[]`, `["probe-tee.branch"]`},
	"[duty].pressure": {`"50 bar"`, `"58 bar"`}, "[duty].product": {`"20 L/h"`, `"90 L/h"`}, "[duty].salinity": {`"20 g/kg"`, `"38 g/kg"`}, "[duty].water": {`"10 C"`, `"28 C"`}, "[duty].litres": {`"50 L"`, `"500 L"`},
	"[duty].age": {`"1 year"`, `"9 years"`}, "[duty].lift": {`"-0.5 m"`, `"3 m"`}, "[duty].space": {`"20 C"`, `"40 C"`}, "[duty].supply": {`"12 V"`, `"24 V"`},
	"[power].battery": {`"100 Ah"`, `"900 Ah"`}, "[power].usable": {`"30 %"`, `"80 %"`}, "[power].solar": {`"100 W"`, `"900 W"`}, "[power].sun": {`"3 h"`, `"6 h"`}, "[power].inverter": {`"70 %"`, `"95 %"`},
	"[power].cable": {`"6 mm2"`, `"50 mm2"`}, "[power].cable_length": {`"2 m"`, `"20 m"`}, "[power].alternator": {`"30 A"`, `"200 A"`}, "[power].breaker": {`"30 A"`, `"200 A"`},
	"[spares].away": {`"1 month"`, `"2 years"`}, "[spares].hours": {`"50 h"`, `"2000 h"`}, "[spares].confidence": {`"80 %"`, `"99 %"`}, "[spares].spoil": {`"1 %"`, `"20 %"`},
	"[rates].date": {"2026-11-20", "2026-10-20"}, "[rates].EUR": {`"1.92"`, `"1.82"`},
	"vendor.name": {`"one"`, `"two"`}, "vendor.currency": {`"EUR"`, `"USD"`}, "vendor.freight": {`"1.00"`, `"99.00"`}, "vendor.minimum": {`"1.00"`, `"99999.00"`}, "vendor.free_from": {`"1.00"`, `"99999.00"`},
	"vendor.customs": {`"1 %"`, `"30 %"`}, "vendor.tax": {`"1 %"`, `"30 %"`}, "vendor.language": {`"en"`, `"de"`},
	"offer.code": {`"A"`, `"B"`}, "offer.url": {`"https://example.org/a"`, `"https://example.org/b"`}, "offer.price": {`"1.00"`, `"2.00"`}, "offer.unit": {`"bag"`, `"box"`}, "offer.pack": {"2", "7"}, "offer.lead": {`"1 day"`, `"90 days"`},
	"hose.material": {`"brass ends"`, `"316 ends"`}, "hose.ends": {`['3/8 NPT male', '9/16-18 JIC female swivel']`, `['G 3/8 male', '9/16-18 JIC female swivel']`}, "hose.length": {`"0.8 m"`, `"2 m"`},
	"hose.bore": {`'3/8"'`, `'1/2"'`}, "hose.rated": {`"20 bar"`, `"200 bar"`}, "run.name": {`"one"`, `"two"`}, "run.below_waterline": {"false", "true"},
}

// elsewhere are keys that another test speaks of, each with its reason.
var elsewhere = map[string]string{
	"[build].include": "which files are read: bom/read tests it",
	"option.for":      "the choice between alternatives is of `choose`, and tested in bom/choose", "option.item": "as option.for", "option.family": "as option.for", "option.per": "as option.for",
	"[build].origin": "a prior of what a thread is that words leave open: of `audit`", "item.origin": "as [build].origin", "hose.origin": "as [build].origin",
	"item.id": "what it is called: every other table names it", "item.kind": "which part it is: all below hangs on it", "item.ports": "its ends: threads and bom/rule test them",
	"hose.id": "as item.id", "hose.of": "which stock it is cut from: a fault where there is none", "vendor.id": "as item.id", "offer.item": "as item.id", "offer.vendor": "as item.id",
	"offer.per": "only `m` or a piece: a fault on all but hose stock", "offer.lengths": "only with per = \"m\": bom/cut tests it", "run.path": "which parts meet: every other test",
	"passage.open": "ports of its own: bom tests them", "passage.one_way": "as open", "passage.shut": "as open",
	"vendor.language": "the words of an order to a shop: bom/request tests them", "offer.unit": "as vendor.language",
	"tee.spec": "of a fitting only its words are read, as those of `about`: bom/rule tests them", "through-hull.size": "the words of an order: a hole is not judged by it", "seacock.size": "as through-hull.size",
	"hose.vacuum": "as that of its stock, on which it is tried: no made-up hose of the plants sucks",
}

// marked finds the text that a table of a plant is known by.
func marked(plant, id string) string {
	return regexp.MustCompile(`(?m)^id[ \t]*=[ \t]*"` + regexp.QuoteMeta(id) + `"`).FindString(plant)
}

// plants are the demo builds that the keys are tried on, their files put together.
func plants(t *testing.T) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, name := range []string{"clean", "recovery", "engine"} {
		var text []string
		for _, file := range []string{"build.toml", "fittings.toml"} {
			if b, err := os.ReadFile(filepath.Join("..", "..", "testdata", name, file)); err == nil {
				text = append(text, string(b))
			}
		}
		out[name] = regexp.MustCompile(`(?m)^include.*$`).ReplaceAllString(strings.Join(text, "\n"), "")
	}
	// An unloader's figures tell something only where its maker says that it relieves.
	if b, err := os.ReadFile(filepath.Join("..", "..", "testdata", "damper", "build.toml")); err == nil {
		out["damper"] = strings.Replace(string(b), "set = \"52 bar\"\n", "set = \"57 bar\"\nrelieves = true\n", 1)
	}
	clean := out["clean"]
	swap := func(name string, list ...string) {
		text := clean
		for i := 0; i < len(list); i += 2 {
			require.Contains(t, text, list[i])
			text = strings.Replace(text, list[i], list[i+1], 1)
		}
		out[name] = text
	}
	swap("regulator", "kind     = \"brine throttle\"", "kind = \"back-pressure regulator\"")
	swap("timer", "kind     = \"solenoid valve\"", "kind = \"flush timer valve\"")
	swap("by hand", "kind     = \"solenoid valve\"", "kind = \"shut-off valve\"")
	swap("bare pump", "flow     = \"7 L/min\"\n\n[[item]]\nid    = \"seal-kit\"", "motor_speed = \"1400 rpm\"\nplunger_bore = \"12 mm\"\nstroke = \"12 mm\"\nplungers = 3\n\n[[item]]\nid    = \"seal-kit\"")
	swap("bent", "length   = \"1.2 m\"", "length = \"1.2 m\"\nbend = \"180 deg\"\nbend_radius = \"100 mm\"")
	swap("sheet", "about  = \"seawater element 2.5 x 21\"", "about = \"seawater element 2.5 x 21\"\nproduct = \"700 gpd\"")
	swap("driven", "motor    = \"24 V DC, belt drive\"", "motor = \"24 V DC, belt drive\"\nspeed = \"1450 rpm\"\nmotor_speed = \"1750 rpm\"\npulley = \"80:112\"")
	swap("open port", "[[run]]\nname = \"probe\"\npath = [\"probe-tee.branch\", \"probe\"]", "")
	swap("by standard", "rated  = \"6 bar\"\nvacuum = \"0.9 bar\"", "vacuum = \"0.9 bar\"")
	swap("fine carbon", "inside = \"carbon\"", "inside = \"carbon\"\nmicron = \"5 micron\"")
	swap("no carbon", "kind     = \"carbon filter\"", "kind = \"filter housing\"")
	swap("alternator", "[spares]", "[power]\nalternator = \"90 A\"\n[spares]")
	swap("powered", "[spares]", "[power]\nbattery = \"300 Ah\"\nsolar = \"300 W\"\nsun = \"5 h\"\ncable = \"16 mm2\"\ncable_length = \"6 m\"\n[spares]", "supply   = \"24 V\"", "supply = \"24 V\"\nlitres = \"200 L\"")
	swap("mains", "[spares]", "[power]\ninverter = \"90 %\"\nbattery = \"300 Ah\"\n[spares]", "supply   = \"24 V\"", "supply = \"24 V\"\nlitres = \"200 L\"", "motor    = \"24 V DC, belt drive\"", "motor = \"230 V AC, inverter\"")
	return out
}

// sections are the tables that stand once or in a list, the text they are known by, and the plants.
var sections = []struct{ name, table, mark string }{
	{"[build]", "[build]\n", "[build]"}, {"[duty]", "[duty]\n", "[duty]"}, {"[power]", "[power]\n", "[power]"}, {"[spares]", "[spares]\n", "[spares]"},
	{"vendor", "[[vendor]]\nid = \"v\"\ncurrency = \"EUR\"\n", "id       = \"elbe\""}, {"offer", "[[offer]]\nitem = \"x\"\nvendor = \"v\"\n", "code   = \"T3-38-14\""},
	{"option", "[[option]]\nfor = \"x\"\nitem = \"x\"\n", ""}, {"run", "[[run]]\nname = \"x\"\npath = [\"a\", \"b\"]\n", "name = \"brine overboard\""},
	{"hose", "[[hose]]\nid = \"x\"\nlength = \"1 m\"\nends = ['1/2 NPT male', '1/2 NPT male']\n", "id       = \"hp-hose-feed\""},
}

var bases = map[string]string{}

// base is what a plant tells as it is.
func base(name, text string) string {
	if bases[name] == "" {
		bases[name], _ = told(text)
	}
	return bases[name]
}

// changes reports whether one of two values of a key tells anything else than the plant as it is, in any
// of the plants.
func changes(all map[string]string, names []string, mark func(plant string) []string, key string, v [2]string) (changed, tried bool) {
	for _, name := range names {
		for _, m := range mark(all[name]) {
			if m == "" || !strings.Contains(all[name], m) {
				continue
			}
			// What the plant tells as it is, is the second text; it may hold the value already.
			for _, value := range v {
				text := with(all[name], m, key, value)
				if got, err := told(text); err == nil && text != all[name] {
					if tried = true; got != base(name, all[name]) {
						return true, true
					}
				}
			}
		}
	}
	return false, tried
}

var plantNames = []string{"clean", "powered", "driven", "bare pump", "sheet", "bent", "mains", "open port", "by standard", "fine carbon", "no carbon", "alternator", "timer", "by hand", "regulator", "recovery", "engine", "damper"}

func TestEveryKeyIsUsedOrCarried(t *testing.T) {
	if testing.Short() {
		t.Skip("some thousand builds, one after the other: in the full run")
	}
	all := plants(t)
	all["clean"] = strings.Replace(all["clean"], "[build]", "[build]\n", 1)
	try := func(table, key string, names []string, mark func(string) []string) {
		name := table + "." + key
		if elsewhere[name] != "" || elsewhere["item."+key] != "" && !slices.ContainsFunc(sections, func(s struct{ name, table, mark string }) bool { return s.name == table }) {
			return
		}
		v, ok := values[name]
		if !ok {
			v, ok = values[key]
		}
		if !ok {
			t.Errorf("%s has no case: give it two values", name)
			return
		}
		switch changed, tried := changes(all, names, mark, key, v); {
		case !tried:
			t.Errorf("%s: no plant takes it", name)
		case !changed:
			t.Errorf("%s: %s and %s tell the same", name, v[0], v[1])
		}
	}
	for _, s := range sections {
		for _, key := range keysOf(t, s.table) {
			try(s.name, key, plantNames, func(string) []string { return []string{s.mark} })
		}
	}
	try("[rates]", "date", plantNames, func(string) []string { return []string{"[rates]"} })
	try("[rates]", "EUR", plantNames, func(string) []string { return []string{"[rates]"} })

	// The keys of a kind are its own; those of all kinds are tried on a few, and the table of those that
	// a kind does not use is held below.
	common := keysOf(t, "[[item]]\nid = \"x\"\nkind = \"seal kit\"\n")
	own := map[string][]string{"tee": common, "filter cartridge": {"each", "inside"}, "hose stock": {"wall"}}
	for _, name := range catalog.KindNames() {
		if name == "hose" {
			continue
		}
		list := own[name]
		k, _ := catalog.KindNamed(name)
		for _, key := range k.Keys {
			if !slices.Contains(list, key) {
				list = append(list, key)
			}
		}
		for _, key := range list {
			if name == "tee" && slices.Contains([]string{"each", "inside", "wall"}, key) {
				continue // tried on a kind that it is for
			}
			try(name, key, plantNames, func(plant string) []string {
				var out []string
				b, faults := read.Parse("build.toml", []byte(plant))
				if faults.Err() != nil {
					return nil
				}
				for _, it := range b.Items {
					if it.Kind.Name == name && len(out) < 4 {
						out = append(out, marked(plant, it.ID))
					}
				}
				return out
			})
		}
	}
}
