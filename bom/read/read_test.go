package read_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
	"handtight/bom/money"
	"handtight/bom/read"
)

// Whole messages, one of each sort: where, what was found, the line, what to write.
func TestFaultMessages(t *testing.T) {
	for _, c := range []struct{ name, after, want string }{
		{"a misspelt key", "[[item]]\nid = \"e\"\nkind = \"elbow\"\nmaterail = \"316\"\n",
			"boat.toml line 16, column 1: unknown key `materail`\n    materail = \"316\"\n  write `material`"},
		{"a key that is nothing like another", "[[option]]\nfor = \"well\"\nitem = \"sink\"\ncolour = \"red\"\n",
			"boat.toml line 16, column 1: unknown key `colour`\n    colour = \"red\"\n  remove it; the keys here are family, for, item, per"},
		{"a quantity without its unit", "[[item]]\nid = \"e\"\nkind = \"elbow\"\nrated = \"10\"\n",
			"boat.toml line 16, column 9: `10` has no unit\n    rated = \"10\"\n  write \"10 bar\" if that is what it is, or another of its units: bar, psi, Pa, kPa, MPa, kg/cm2, inHg, mmHg"},
		{"a quantity without quotes", "[[item]]\nid = \"e\"\nkind = \"elbow\"\nrated = 10\n",
			"boat.toml line 16, column 9: `rated` is the number 10 without its unit\n    rated = 10\n  write the unit, in quotes: for example `rated = \"10 bar\"`"},
		{"a unit of another quantity", "[[item]]\nid = \"e\"\nkind = \"elbow\"\nrated = \"10 mm\"\n",
			"boat.toml line 16, column 9: `10 mm` is a length, where a pressure is due\n    rated = \"10 mm\"\n  write a pressure such as \"58 bar\""},
		{"no number in quotes", "[[item]]\nid = \"e\"\nkind = \"elbow\"\nrated = \"NaN bar\"\n",
			"boat.toml line 16, column 9: `NaN bar` has no number\n    rated = \"NaN bar\"\n  write a pressure such as \"58 bar\""},
		{"no number of TOML's own", "[[item]]\nid = \"e\"\nkind = \"elbow\"\nrated = nan\n",
			"boat.toml line 16, column 9: `rated` is nan, which is no number of anything, and a text is due\n    rated = nan\n  write a text in quotes, for example `rated = \"100 bar\"`"},
		{"a negative length", "[[item]]\nid = \"s\"\nkind = \"hose stock\"\nbore = \"19 mm\"\n[[hose]]\nid = \"h\"\nof = \"s\"\nlength = \"-1 m\"\n",
			"boat.toml line 20, column 10: `-1 m` is below zero, which a length here cannot be\n    length = \"-1 m\"\n  write \"1 m\" or leave it out"},
		{"a length of nothing", "[[item]]\nid = \"s\"\nkind = \"hose stock\"\nbore = \"0 mm\"\n",
			"boat.toml line 16, column 8: `bore` is nothing: 0 mm must be above zero\n    bore = \"0 mm\"\n  write it like \"19 mm\""},
		{"bare money", "[[vendor]]\nid = \"v\"\ncurrency = \"EUR\"\n[[offer]]\nitem = \"sink\"\nvendor = \"v\"\nprice = 12.50\n",
			"boat.toml line 19, column 9: `price` is the number 12.50, and a text is due\n    price = 12.50\n  write it in quotes: `price = \"12.50\"`"},
		{"money with a decimal comma", "[[vendor]]\nid = \"v\"\ncurrency = \"EUR\"\n[[offer]]\nitem = \"sink\"\nvendor = \"v\"\nprice = \"12,50\"\n",
			"boat.toml line 19, column 9: `12,50` has a decimal comma\n    price = \"12,50\"\n  write 12.50"},
		{"a currency without a rate, once for all offers of a shop", "[[vendor]]\nid = \"v\"\ncurrency = \"USD\"\n[[offer]]\nitem = \"sink\"\nvendor = \"v\"\nprice = \"1.00\"\n[[offer]]\nitem = \"well\"\nvendor = \"v\"\nprice = \"2.00\"\n",
			"boat.toml line 15, column 12: there is no rate for USD, in which `v` sells\n    currency = \"USD\"\n  write in [rates]: USD = \"…\", what one USD costs in EUR, and the date"},
		{"a code that is no currency", "[[vendor]]\nid = \"v\"\ncurrency = \"EURO\"\n",
			"boat.toml line 15, column 12: `EURO` is not a currency code\n    currency = \"EURO\"\n  did you mean EUR? write a three-letter code of ISO 4217, such as \"EUR\""},
		{"a rate for no currency, once", "[rates]\ndate = 2026-11-20\nXXQ = \"2\"\n",
			"boat.toml line 15, column 7: `XXQ` is not a currency code\n    XXQ = \"2\"\n  write a three-letter code of ISO 4217, such as EUR"},
		{"rates without a date", "[rates]\nUSD = \"1.68\"\n",
			"boat.toml line 13, column 2: the rates have no date\n    [rates]\n  write the day they were looked up: date = 2026-11-20"},
		{"an id given twice", "[[item]]\nid = \"sink\"\nkind = \"elbow\"\n",
			"boat.toml line 14, column 6: the id `sink` is given twice: here, and in boat.toml line 7\n    id = \"sink\"\n  give one of them another id"},
		{"an id that no path could name", "[[item]]\nid = \"3/8 elbow\"\nkind = \"elbow\"\n",
			"boat.toml line 14, column 6: `3/8 elbow` cannot be an id: a path could not name it\n    id = \"3/8 elbow\"\n  use letters, digits, - and _ only, like \"elbow-3-8\""},
		{"a shop that is not there", "[[vendor]]\nid = \"hamburg\"\ncurrency = \"EUR\"\n[[offer]]\nitem = \"sink\"\nvendor = \"hamborg\"\n",
			"boat.toml line 18, column 10: there is no shop `hamborg`\n    vendor = \"hamborg\"\n  did you mean `hamburg`? give it a [[vendor]] with its currency"},
		{"an item that is not there", "[[vendor]]\nid = \"v\"\ncurrency = \"EUR\"\n[[offer]]\nitem = \"sinc\"\nvendor = \"v\"\n",
			"boat.toml line 17, column 8: there is no item `sinc` to offer\n    item = \"sinc\"\n  did you mean `sink`? name an [[item]], a [[hose]], or what a joint needs, such as \"tape 12 mm\""},
		{"a hose as an item", "[[item]]\nid = \"h\"\nkind = \"hose\"\n",
			"boat.toml line 15, column 8: a hose is not an [[item]]\n    kind = \"hose\"\n  hose that pieces are cut from is kind = \"hose stock\"; a piece is a [[hose]], with its length, and `of` its stock or with `ends`"},
		{"a hose of one end", "[[hose]]\nid = \"h\"\nlength = \"1 m\"\nends = ['3/8 NPT male']\n",
			"boat.toml line 16, column 8: a hose has two ends, and this has 1\n    ends = ['3/8 NPT male']\n  write both, also when they are alike"},
		{"a hose of no end", "[[hose]]\nid = \"h\"\nlength = \"1 m\"\nends = []\n",
			"boat.toml line 16, column 8: a hose has two ends, and this has 0\n    ends = []\n  write both, also when they are alike"},
		{"the class of the ends of a hose without any", "[[item]]\nid = \"stock\"\nkind = \"hose stock\"\noutside = \"20 mm\"\n[[hose]]\nid = \"h\"\nlength = \"1 m\"\nof = \"stock\"\nclass = \"SDR 11\"\n",
			"boat.toml line 21, column 9: the class of a hose is that of its end fittings, and this one has none\n    class = \"SDR 11\"\n  take it out, or write `ends` (the class of pipe, like \"SDR 11\", stands on its stock)"},
		{"a hose with nothing said", "[[hose]]\nid = \"h\"\n",
			"boat.toml line 13, column 3: the hose has no length\n    [[hose]]\n  write length = \"1.4 m\"\n\n" +
				"boat.toml line 13, column 3: the hose says neither what it is cut from nor what its ends are\n    [[hose]]\n  write of = \"lp-hose\" (an [[item]] of kind \"hose stock\"), or ends = ['3/8 NPT male', '9/16-18 JIC female swivel']"},
		{"a hose cut from what is no stock", "[[hose]]\nid = \"h\"\nlength = \"1 m\"\nof = \"sink\"\n",
			"boat.toml line 16, column 6: the hose is cut from `sink`, which is no hose stock\n    of = \"sink\"\n  name an [[item]] of kind \"hose stock\""},
		{"a run of one", "[[run]]\nname = \"r\"\npath = [\"well\"]\n",
			"boat.toml line 15, column 8: a run joins at least two units\n    path = [\"well\"]\n  write them in flow order, like [\"intake\", \"strainer\"]"},
		{"no steps at all", "[[run]]\nname = \"r\"\npath = [\"well>\", \"snik\"]\n",
			"boat.toml line 15, column 9: `well>` is not a step of a path\n    path = [\"well>\", \"snik\"]\n  write item[/label][.entry][>exit], like \"tee/1.branch>a\"\n\n" +
				"boat.toml line 15, column 18: there is no item or hose `snik`\n    path = [\"well>\", \"snik\"]\n  did you mean `sink`? give it an [[item]], or name one that there is"},
		{"a pump without a duty", "[[item]]\nid = \"p\"\nkind = \"plunger pump\"\n",
			"boat.toml: a plunger pump needs to know the pressure that is held on the throttle\n  write [duty] and pressure = \"58 bar\" (the figure that the membrane's data sheet asks for)"},
		{"a chance of everything", "[spares]\nconfidence = \"100 %\"\n",
			"boat.toml line 14, column 14: 100 % is not a chance that can be worked with\n    confidence = \"100 %\"\n  write a share above 0 % and below 100 %"},
		{"contents of nothing", "[[item]]\nid = \"c\"\nkind = \"filter cartridge\"\ninside = \"sinq\"\n",
			"boat.toml line 16, column 10: there is no item `sinq` for this to be inside of\n    inside = \"sinq\"\n  did you mean `sink`? name an [[item]] by its id"},
		{"a life of nothing", "[[item]]\nid = \"c\"\nkind = \"filter cartridge\"\nlife = \"0 h\"\n",
			"boat.toml line 16, column 8: nothing lasts no time at all\n    life = \"0 h\"\n  write how long one lasts, like \"150 h\""},
		{"ports of a part that is only counted", "[[item]]\nid = \"c\"\nkind = \"clamp\"\nports = { a = '1/2 NPT male' }\n",
			"boat.toml line 16, column 9: a clamp has no ports: it is counted, not joined\n    ports = { a = '1/2 NPT male' }\n  take `ports` out; contents of a unit are named by `inside`"},
		{"a passage between ports that are not there", "[[item]]\nid = \"c\"\nkind = \"passage\"\nports = { left = '1/2 NPT male', right = '1/2 NPT male' }\nopen = [\"left>middle\"]\n",
			"boat.toml line 17, column 9: `left>middle` does not name two ports of the part\n    open = [\"left>middle\"]\n  write two of its ports with > between, like \"left>right\""},
		{"an option for what is not there", "[[option]]\nfor = \"sonk\"\nitem = \"sink\"\n",
			"boat.toml line 14, column 7: there is no item `sonk`\n    for = \"sonk\"\n  did you mean `sink`? name an [[item]] by its id"},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, built.Faults(t, built.Head+built.Any+c.after, nil)) })
	}
}

// Ports that are plugged or left open on purpose must be ports of the build.
func TestPlugFaults(t *testing.T) {
	got := built.Faults(t, built.Head+"plugged = [\"well\", \"sonk.in\", \"sink.inn\"]\n"+built.Any, nil)
	line := "\n    plugged = [\"well\", \"sonk.in\", \"sink.inn\"]\n  "
	require.Equal(t, "boat.toml line 4, column 12: `well` names no port"+line+"write a unit and its port, like \"vessel.spare\"\n\n"+
		"boat.toml line 4, column 20: there is no item `sonk`"+line+"did you mean `sink`? name a unit of the build\n\n"+
		"boat.toml line 4, column 31: sink has no port `inn`"+line+"did you mean `in`? its ports are `in`", got)
}

// A shop's terms: sums in quotes, shares with their sign.
func TestTermFaults(t *testing.T) {
	got := built.Faults(t, built.Head+built.Any+"[[vendor]]\nid = \"v\"\ncurrency = \"EUR\"\nfreight = \"12,00\"\ncustoms = \"5\"\n[[vendor]]\nid = \"v\"\ncurrency = \"EUR\"\n", nil)
	require.Contains(t, got, "boat.toml line 16, column 11: `12,00` has a decimal comma\n")
	require.Contains(t, got, "boat.toml line 17, column 11: `5` has no percent sign\n")
	require.Contains(t, got, "boat.toml line 19, column 6: the shop `v` is given twice: here, and in boat.toml line 13\n")
}

// A kind that is missing names every kind; one that is misspelt names the nearest.
func TestKindFaults(t *testing.T) {
	missing := built.Faults(t, built.Head+built.Any+"[[item]]\nid = \"e\"\n", nil)
	require.True(t, strings.HasPrefix(missing, "boat.toml line 13, column 3: the item has no kind\n    [[item]]\n  write kind = \"…\", one of `O-ring`, `accumulator`, `adaptor`"), missing)
	misspelt := built.Faults(t, built.Head+built.Any+"[[item]]\nid = \"e\"\nkind = \"elbwo\"\n", nil)
	require.True(t, strings.HasPrefix(misspelt, "boat.toml line 15, column 8: `elbwo` is not a kind that is known\n    kind = \"elbwo\"\n  "), misspelt)
	require.Contains(t, misspelt, "elbow")
	title := built.Faults(t, built.Head+built.Any+"[[item]]\nid = \"e\"\ntitle = \"something shiny\"\n", nil)
	require.Contains(t, title, "the item has no kind, and its title names none that is known")
}

// What is missing as a whole is said of the file as a whole.
func TestFaultsOfTheWholeFile(t *testing.T) {
	require.Equal(t, "boat.toml: the file has no [build] section, so it is not a build file\n  begin it with [build], name = \"…\" and currency = \"EUR\"; `handtight new DIR` writes an example", built.Faults(t, built.Any, nil))
	require.Equal(t, "boat.toml: the build has no [[run]]: nothing is joined to anything\n  write the units in flow order: [[run]], name = \"raw water\", path = [\"intake\", \"strainer\"]", built.Faults(t, built.Head, nil))
}

// Includes: what cannot be read is a fault of the line that names it, what is wrong in
// it is a fault of its own lines, and the faults of all files are reported at once.
func TestIncludeFaults(t *testing.T) {
	include := func(list string) string { return built.Head + "include = [" + list + "]\n" + built.Any }
	for _, c := range []struct {
		name, text string
		files      map[string]string
		want       string
	}{
		{"a file that is not there", include(`"more.toml"`), nil,
			"boat.toml line 4, column 12: the included file `more.toml` cannot be read: there is no such file\n    include = [\"more.toml\"]\n"},
		{"the file itself", include(`"./boat.toml"`), nil,
			"boat.toml line 4, column 12: `./boat.toml` includes itself\n    include = [\"./boat.toml\"]\n  take the name out of `include`; a file is read once"},
		{"a file twice", include(`"more.toml", "more.toml"`), map[string]string{"more.toml": "[[item]]\nid = \"e\"\nkind = \"elbow\"\n"},
			"boat.toml line 4, column 25: `more.toml` is included twice\n    include = [\"more.toml\", \"more.toml\"]\n  take the name out of `include`; a file is read once"},
		{"a fault in it", include(`"more.toml"`), map[string]string{"more.toml": "[[item]]\nid = \"e\"\nkind = \"elbow\"\nrated = \"10\"\n"},
			"more.toml line 4, column 9: `10` has no unit\n    rated = \"10\"\n  write \"10 bar\" if that is what it is, or another of its units: bar, psi, Pa, kPa, MPa, kg/cm2, inHg, mmHg"},
		{"an id of both", include(`"more.toml"`), map[string]string{"more.toml": "[[item]]\nid = \"sink\"\nkind = \"elbow\"\n"},
			"more.toml line 2, column 6: the id `sink` is given twice: here, and in boat.toml line 8\n    id = \"sink\"\n  give one of them another id"},
		{"a run in it", include(`"more.toml"`), map[string]string{"more.toml": "[[run]]\nname = \"r\"\npath = [\"a\", \"b\"]\n"},
			"more.toml line 1, column 3: unknown key `run`\n    [[run]]\n  remove it; the keys here are hose, item, offer, option, vendor"},
		{"a fault of syntax beside others", include(`"more.toml"`) + "[[item]]\nid = \"e\"\nkind = \"elbow\"\nrated = \"10\"\n", map[string]string{"more.toml": "[[item]\nid = \"e\"\n"},
			"boat.toml line 17, column 9: `10` has no unit\n    rated = \"10\"\n  write \"10 bar\" if that is what it is, or another of its units: bar, psi, Pa, kPa, MPa, kg/cm2, inHg, mmHg\n\n" +
				"more.toml line 1, column 7: the header is not closed\n    [[item]\n  write [[item]]"},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := built.Faults(t, c.text, c.files)
			if strings.HasSuffix(c.want, "\n") {
				got = got[:min(len(got), len(c.want))] // its remedy lists the folder
			}
			require.Equal(t, c.want, got)
		})
	}
}

// All faults of a file are given at once, in the order of its lines.
func TestAllFaultsAtOnce(t *testing.T) {
	text := built.Head + built.Any + "[[item]]\nid = \"e\"\nkind = \"elbow\"\nrated = \"10\"\nports = { a = 'banana', c = '1/2 NPT male' }\nhave = -1\neach = 0\n" +
		"[[hose]]\nid = \"h\"\n[duty]\npressure = \"-5 bar\"\n[[run]]\nname = \"r\"\npath = [\"wel\", \"e\"]\n"
	t.Chdir(t.TempDir())
	_, faults := read.Parse("boat.toml", []byte(text))
	var lines []int
	for _, f := range faults {
		require.Equal(t, "boat.toml", f.File)
		require.NotEmpty(t, f.Remedy, f.Reason)
		lines = append(lines, f.Line)
	}
	require.Equal(t, []int{16, 17, 17, 18, 19, 20, 20, 23, 26}, lines)
	_, again := read.Parse("boat.toml", []byte(text))
	require.Equal(t, faults, again, "the same text, the same faults in the same order")
}

// What is read stands in the build as it was written.
func TestReadsPlant(t *testing.T) {
	build, faults := read.Read(built.DemoPath(t, "states/plant.toml"))
	require.NoError(t, faults.Err())
	pump, ok := build.Item("pump-120")
	require.True(t, ok)
	require.InDelta(t, 120, pump.Stall.Bar(), 1e-9)
	require.Equal(t, built.DemoPath(t, "states/parts.toml"), pump.Place.Place().File, "the file that it stands in")
	require.Nil(t, pump.Rated, "unknown is not zero")
	hose, ok := build.Item("raw-hose")
	require.True(t, ok)
	require.Equal(t, "19 mm", hose.Bore.String(), "taken from its stock")
	require.True(t, hose.Ports[0].Said && hose.Ports[1].Said)
	require.Len(t, build.Runs, 10)
	_, ok = build.Item("nothing")
	require.False(t, ok)
}

// Lives of the calendar and lives of running hours, by their unit, each for itself.
func TestLivesByDateOrHour(t *testing.T) {
	for unit, byDate := range map[string]bool{
		"h": false, "hr": false, "hrs": false, "hour": false, "hours": false, "H": false,
		"d": true, "days": true, "wk": true, "weeks": true, "mo": true, "mths": true, "month": true, "months": true, "yr": true, "years": true,
	} {
		text := built.Head + built.Any + "[[item]]\nid = \"c\"\nkind = \"filter cartridge\"\ninside = \"sink\"\nlife = \"6 " + unit + "\"\nfails = \"2000 h\"\n"
		build, faults := read.Parse("boat.toml", []byte(text))
		require.NoError(t, faults.Err(), unit)
		it, _ := build.Item("c")
		require.Equal(t, byDate, it.LifeByDate, unit)
		require.False(t, it.FailsByDate, "%s: the other life runs by the hour", unit)
	}
}

// Counts are pieces, and metres of what is bought by length.
func TestCountsOfPiecesAndMetres(t *testing.T) {
	text := built.Head + built.Any + "[[item]]\nid = \"s\"\nkind = \"hose stock\"\nbore = \"19 mm\"\nhave = \"2.5 m\"\nextra = \"50 cm\"\n[[item]]\nid = \"e\"\nkind = \"elbow\"\nhave = 2\n"
	build, faults := read.Parse("boat.toml", []byte(text))
	require.NoError(t, faults.Err())
	stock, _ := build.Item("s")
	require.Equal(t, money.Quantity(2500), stock.Have)
	require.Equal(t, money.Quantity(500), stock.Extra)
	elbow, _ := build.Item("e")
	require.Equal(t, 2*money.Piece, elbow.Have)
}

// A duty of nothing is no duty: it is refused at its place.
func TestDutyOfNothing(t *testing.T) {
	for key, text := range map[string]string{"pressure": "0 bar", "product": "0 L/h", "supply": "0 V"} {
		_, faults := read.Parse("x.toml", []byte("[build]\nname = \"x\"\ncurrency = \"EUR\"\n[duty]\n"+key+" = \""+text+"\"\n[[item]]\nid = \"a\"\nkind = \"drain\"\n[[item]]\nid = \"b\"\nkind = \"sea\"\n[[run]]\nname = \"r\"\npath = [\"b\", \"a\"]\n"))
		require.Len(t, faults, 1, key)
		require.Equal(t, 5, faults[0].Place.Line, key)
		require.Contains(t, faults[0].Remedy, "above 0", key)
	}
}

// A shop's own line is enough: kind, ends, material and rating are read from it, in the
// order of the kind's ports.
func TestItemFromTitle(t *testing.T) {
	text := built.Head + built.Any + "[[item]]\nid = \"tail\"\ntitle = \"Hose tail 1/2 BSPP female swivel x 13 mm barb, brass, PN16\"\nextra = 1\n"
	build, faults := read.Parse("title.toml", []byte(text))
	require.NoError(t, faults.Err())
	it, _ := build.Item("tail")
	require.Equal(t, "hose tail", it.Kind.Name)
	require.Equal(t, "brass", it.Material)
	require.InDelta(t, 16, it.Rated.Bar(), 1e-9)
	require.Equal(t, "a: G 1/2 female swivel; b: 13 mm barb", it.Ends())
}
