package main

import "testing"

// thread, mate, adapt, identify: what needs no build.

var saidOfThread = []call{
	{why: "an unambiguous end", line: "thread | G 3/4 female", says: "G 3/4 female"},
	{why: "an open end asks", line: "thread | 1/2 BSP male", says: "parallel (G) or taper (R)"},
	{why: "a shop's whole line", line: "thread | Hose tail 3/4 BSPP male x 19 mm barb, bronze", says: "19 mm barb"},
	{why: "a dash size is no flag", line: "thread | -6 JIC male", says: "9/16-18 JIC -6 male"},
	{why: "words that are no end", line: "thread | Winch handle", silent: "NPT"},
	{why: "as facts", line: "thread | G 3/4 female | --json", says: `"family": "G"`},
	{why: "lines from the input", line: "thread | -", in: "1/2 NPT male\nG 3/4 female\n", says: "G 3/4 female"},
	{why: "an object a line", line: "thread | - | --json", in: "1/2 NPT male\n19 mm barb\n", says: `"family":"NPT"`},
	{why: "a card", line: "thread | G 1/2 male | --card", says: "Card: G 1/2 male"},
	{why: "the flag before the text", line: "thread | --card | R 1/2 male", says: "55 degree"},
	{why: "a card of an open end asks first", line: "thread | 1/2 BSP male | --card", says: "parallel (G) or taper (R)", silent: "Card: "},
	{why: "a family's table", line: "thread | --list | NPT", says: "1/2-14 NPT"},
	{why: "in small letters", line: "thread | --list | jic", says: "9/16-18 JIC -6"},
	{why: "a name that stands for several", line: "thread | --list | bsp", status: 2, says: "write one of them"},
	{why: "a family without a thread", line: "thread | --list | barb", status: 2, says: "has no table"},
	{why: "a family that is none", line: "thread | --list | NPTX", status: 2, says: "did you mean"},
	{why: "a text beside the list", line: "thread | --list | G | G 1/2", status: 2, says: "no text beside --list"},
	{why: "no text", line: "thread", status: 2, says: "0 were given"},
	{why: "unquoted", line: "thread | G | 1/2", status: 2, says: "2 were given"},
	{why: "a card of the input", line: "thread | - | --card", status: 2, says: "--card takes one text"},
	{why: "a flag that is none", line: "thread | G 1/2 | --crad", status: 2, says: "did you mean `--card`"},
}

func TestThreadSays(t *testing.T) { sayAll(t, saidOfThread) }

var saidOfMate = []call{
	{why: "a taper in its own", line: "mate | 1/2 NPT male | 1/2 NPT female", says: "4 wraps"},
	{why: "in the other order", line: "mate | 1/2 NPT female | 1/2 NPT male", says: "4 wraps"},
	{why: "two angles", line: "mate | 1/2 NPT male | Rc 1/2", status: 1, says: "Rc 1/2 has 55"},
	{why: "two males", line: "mate | G 1/2 male | G 1/2 male", status: 1, says: "both male"},
	{why: "a washer is enough", line: "mate | G 1/2 male | G 1/2 female", says: "washer"},
	{why: "a makeshift is none", line: "mate | R 1/2 | G 1/2 female", status: 1, says: "LOW PRESSURE ONLY"},
	{why: "a hose on its tail", line: "mate | 19 mm barb | 19 mm bore", says: "clamp"},
	{why: "a hose on another tail", line: "mate | 19 mm barb | 25 mm bore", status: 1, says: "differ"},
	{why: "two dashes", line: "mate | -6 JIC male | -6 JIC female swivel", says: "flats"},
	{why: "as facts", line: "mate | 1/2 NPT male | Rc 1/2 | --json", status: 1, says: `"verdict": `},
	{why: "the worst of an open end", line: "mate | 1/2 BSP male | Rc 1/2", status: 1, says: "G 1/2"},
	{why: "by turns", line: "mate | 1/2 NPT male | 1/2 NPT female | --turns | 4", says: "1/2-14 NPT"},
	{why: "what somebody has in mind", line: "mate | 1/4 NPT male | 1/4 NPT female | --turns | 1.5 | --in-mind", status: 1, says: "%"},
	{why: "by turns, as facts", line: "mate | 1/2 NPT male | 1/2 NPT female | --turns | about 4 | --json", says: "{"},
	{why: "a guess without turns", line: "mate | 1/2 NPT male | Rc 1/2 | --in-mind", status: 2, says: "--in-mind goes with --turns"},
	{why: "turns that are none", line: "mate | 1/2 NPT male | Rc 1/2 | --turns | some", status: 2, says: "some"},
	{why: "no end", line: "mate | x | G 1/2 male", status: 2, says: `"x"`},
	{why: "two ends in one text", line: "mate | 1/2 NPT male x 3/8 NPT male | G 1/2 male", status: 2, says: "2 ends"},
	{why: "one end", line: "mate | G 1/2 male", status: 2, says: "takes two ends, and 1 were given"},
}

func TestMateSays(t *testing.T) { sayAll(t, saidOfMate) }

var saidOfAdapt = []call{
	{why: "one piece", line: "adapt | 1/2 NPT male | Rc 1/2", says: "R 1/2 male"},
	{why: "they join already", line: "adapt | 1/2 NPT male | 1/2 NPT female", says: "they join already"},
	{why: "at a pressure, in the sea", line: "adapt | 1/2 NPT female | G 1/2 female | --bar | 60 | --water | sea", says: "316"},
	{why: "a pressure in pounds", line: "adapt | 1/2 NPT female | G 1/2 female | --bar | 870 psi", says: "buy"},
	{why: "of a material", line: "adapt | 1/2 NPT male | Rc 1/2 | --material | bronze", says: "bronze"},
	{why: "of none that is made so", line: "adapt | 3/8 NPT male | 3/8 NPT male | --bar | 90 | --material | bronze", status: 1, says: "it is not made of bronze"},
	{why: "one piece at most", line: "adapt | M22x1.5 male | -6 JIC female | --max | 1", status: 1, says: "NONE"},
	{why: "a dash size is no flag", line: "adapt | -6 JIC female swivel | -6 JIC male", says: "they join already"},
	{why: "three pieces", line: "adapt | 1/2 NPT male | Rc 1/2 | --max | 3", says: "buy"},
	{why: "below the waterline", line: "adapt | G 3/4 male | 3/4 NPT male | --below", says: "buy"},
	{why: "one turns last", line: "adapt | G 1/2 male | G 1/2 male | --turns", says: "union"},
	{why: "one chain shown", line: "adapt | 1/2 NPT male | Rc 1/2 | -n | 1", says: "1.", silent: "2. "},
	{why: "as facts", line: "adapt | 10 mm push-in | G 1/2 male | --water | product | --json", says: `"chains"`},
	{why: "with a build's own pieces", line: "adapt | 1/2 NPT male | 1/2 NPT male | --with | clean/build.toml | --by | joints", says: "buy"},
	{why: "a build that is not there", line: "adapt | 1/2 NPT male | Rc 1/2 | --with | no.toml", status: 2, says: "no.toml"},
	{why: "a water that is none", line: "adapt | 1/2 NPT male | Rc 1/2 | --water | salt", status: 2, says: "sea, product or fresh"},
	{why: "too many pieces", line: "adapt | 1/2 NPT male | Rc 1/2 | --max | 4", status: 2, says: "what a fitter would stack"},
	{why: "fewer than none", line: "adapt | 1/2 NPT male | Rc 1/2 | --max=-1", status: 2, says: "what a fitter would stack"},
	{why: "an order that is none", line: "adapt | 1/2 NPT male | Rc 1/2 | --by | weight", status: 2, says: "--by is joints or price"},
	{why: "too many chains", line: "adapt | 1/2 NPT male | Rc 1/2 | -n | 9", status: 2, says: "1 to 8 chains"},
	{why: "a pressure that is none", line: "adapt | 1/2 NPT male | Rc 1/2 | --bar | high", status: 2, says: "high"},
	{why: "an end that is none", line: "adapt | 1/2 NPT male | pipe", status: 2, says: "pipe"},
}

func TestAdaptSays(t *testing.T) {
	demoFolder(t, "clean")
	sayAll(t, saidOfAdapt)
}

var saidOfIdentify = []call{
	{why: "a male by its outside", line: "identify | --od | 20.9 mm | --tpi | 14", says: "G 1/2 male"},
	{why: "a female by its inside", line: "identify | --id | 18.9 mm | --pitch | 1.8 mm", says: "G 1/2 female"},
	{why: "a taper of 60 degrees", line: "identify | --od | 20.9 mm | --tpi | 14 | --taper | yes | --angle | 60", says: "1/2-14 NPT male"},
	{why: "a cone", line: "identify | --od | 14.2 mm | --tpi | 18 | --seat | 37", says: "9/16-18 JIC -6 male"},
	{why: "a cone, and which is asked", line: "identify | --od | 14.2 mm | --tpi | 18 | --cone | yes", says: "JIC -6"},
	{why: "a groove for a ring", line: "identify | --od | 14.2 mm | --tpi | 18 | --groove | yes | --cone | no", says: "OR"},
	{why: "a straight edge that rocks", line: "identify | --od | 20.9 mm | --tpi | 14 | --edge | rocks", says: "male"},
	{why: "what it is on", line: "identify | --od | 22.4 mm | --tpi | 18 | --context | electrical", says: "PG"},
	{why: "where it was bought", line: "identify | --od | 20.9 mm | --tpi | 14 | --country | NZ", says: "male"},
	{why: "turns in a known part", line: "identify | --tpi | 14 | --turns | 5 | --in | G 1/2 female", says: "male"},
	{why: "a known part slides over it", line: "identify | --od | 20.9 mm | --slides | G 3/4 female", says: "male"},
	{why: "as facts", line: "identify | --od | 20.9 mm | --tpi | 14 | --json", says: `"probability"`},
	{why: "nothing fits", line: "identify | --od | 20.9 mm | --tpi | 40", status: 1, says: ""},
	{why: "no figure, and nobody to ask", line: "identify", status: 2, says: "needs a figure"},
	{why: "no unit", line: "identify | --od | 20.9", status: 2, says: "has no unit"},
	{why: "male and female at once", line: "identify | --od | 20.9 mm | --id | 18.6 mm", status: 2, says: "either a male"},
	{why: "one figure twice", line: "identify | --tpi | 14 | --pitch | 1.8 mm", status: 2, says: "they are one figure"},
	{why: "a country that is none", line: "identify | --tpi | 14 | --country | Atlantis", status: 2, says: "Atlantis"},
	{why: "a seat that is none", line: "identify | --seat | 52", status: 2, says: "52 degrees"},
	{why: "an edge that is none", line: "identify | --tpi | 14 | --edge | wavy", status: 2, says: "wavy"},
	{why: "turns in nothing", line: "identify | --tpi | 14 | --turns | 5", status: 2, says: "--in"},
	{why: "a word too many", line: "identify | G", status: 2, says: "figures as flags"},
}

func TestIdentifySays(t *testing.T) { sayAll(t, saidOfIdentify) }

var saidOfCatalog = []call{
	{why: "all kinds and materials", line: "catalog", says: "plunger pump"},
	{why: "a word", line: "catalog | strainer", says: "strainer", silent: "plunger pump"},
	{why: "every word of a fitting", line: "catalog | bush 1/2 npt 316", says: "1/2 NPT"},
	{why: "by two ends", line: "catalog | --stock | 1/2 NPT male | G 1/2 male", says: "G 1/2 male"},
	{why: "by one", line: "catalog | --stock | 1/2 NPT male", says: "1/2 NPT male"},
	{why: "with a build's own", line: "catalog | strainer | --with | clean/build.toml", says: "strainer"},
	{why: "by a dash size", line: "catalog | --stock | -6 JIC male", says: "JIC -6 male"},
	{why: "as facts", line: "catalog | gauge | --json", says: `"kinds"`},
	{why: "two words unquoted", line: "catalog | bush | npt", status: 2, says: "put several between quotes"},
	{why: "no end", line: "catalog | --stock", status: 2, says: "one end or two"},
	{why: "three ends", line: "catalog | --stock | G 1/2 male | G 1/2 male | G 1/2 male", status: 2, says: "3 were given"},
	{why: "an end that is none", line: "catalog | --stock | nonsense", status: 2, says: "nonsense"},
	{why: "a build that is not there", line: "catalog | gauge | --with | no.toml", status: 2, says: "no.toml"},
}

func TestCatalogSays(t *testing.T) {
	demoFolder(t, "clean")
	sayAll(t, saidOfCatalog)
}

var saidOfWhy = []call{
	{why: "one finding", line: "why | flank-angles-differ", says: "Wrong"},
	{why: "all of them", line: "why", says: "flank-angles-differ"},
	{why: "what stands on every run", line: "why | always", says: "data sheet"},
	{why: "as facts", line: "why | same-sex | --json", says: `"slug": "same-sex"`},
	{why: "all as facts", line: "why | --json", says: `"slug": "flank-angles-differ"`},
	{why: "nearly", line: "why | flank-angle-differs", status: 2, says: "did you mean `flank-angles-differ`"},
	{why: "nothing like it", line: "why | xyz", status: 2, says: "`handtight why` lists them all"},
	{why: "two at once", line: "why | same-sex | port-open", status: 2, says: "2 were given"},
	{why: "a schema to the output", line: "schema", says: `"$schema"`},
	{why: "to a file", line: "schema | -o | build.schema.json", says: "Written: build.schema.json"},
	{why: "to a file, as facts", line: "schema | -o | build.schema.json | --json", says: `"written": "build.schema.json"`},
	{why: "into no folder", line: "schema | -o | no/build.schema.json", status: 2, says: "no"},
	{why: "words beside it", line: "schema | build.toml", status: 2, says: "takes no words"},
	{why: "the program's version", line: "--version", says: "handtight "},
	{why: "the licences", line: "--licences", says: "MIT"},
	{why: "no command", line: "", says: "handtight new my-boat"},
	{why: "a command that is none", line: "chek", status: 2, says: "unknown command"},
	{why: "a flag that is none", line: "--frobnicate", status: 2, says: "unknown flag"},
}

func TestWhyAndSchemaSay(t *testing.T) {
	demoFolder(t)
	sayAll(t, saidOfWhy)
}
