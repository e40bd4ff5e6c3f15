package main

import "testing"

// What reads a build: check, order, spares, choose, compare, receive, page, picture, cart, duty, audit, draft, new.

var saidOfCheck = []call{
	{why: "a clean build", line: "check | clean/build.toml", says: "0 stops"},
	{why: "a careless one", line: "check | careless/build.toml", status: 1, says: "DO NOT ORDER, DO NOT PRESSURISE"},
	{why: "as facts", line: "check | clean/build.toml | --json", says: `"findings"`},
	{why: "every segment's pressure", line: "check | clean/build.toml | --pressures", says: "bar"},
	{why: "one state", line: "check | clean/build.toml | --state | throttle shut", says: "throttle shut"},
	{why: "all states", line: "check | clean/build.toml | --states", says: "throttle shut"},
	{why: "each part", line: "check | clean/build.toml | --parts", says: "hp-pump"},
	{why: "everything", line: "check | careless/build.toml | --all", status: 1, says: "flank-angles-differ"},
	{why: "a state that is none", line: "check | clean/build.toml | --state | no such", status: 2, says: "no such"},
	{why: "a file that is not there", line: "check | no.toml", status: 2, says: "no.toml"},
	{why: "a folder", line: "check | clean", status: 2, says: "clean"},
	{why: "no file", line: "check", status: 2, says: "takes one build file, and 0 were given"},
	{why: "a mended copy", line: "check | careless/build.toml | --fix | careless/mended.toml", status: 1, says: "Written: careless/mended.toml"},
	{why: "over a file that stands there", line: "check | careless/build.toml | --fix | careless/mended.toml", status: 2, says: "mended.toml"},
	{why: "with force", line: "check | careless/build.toml | --fix | careless/mended.toml | --force", status: 1, says: "Written: careless/mended.toml"},
	{why: "shown and not written", line: "check | careless/build.toml | --fix | careless/other.toml | --dry-run", status: 1, says: "+", silent: "Written"},
	{why: "adaptors alone", line: "check | careless/build.toml | --fix | careless/other.toml | --dry-run | --adapt-only", status: 1, says: "careless"},
	{why: "one finding alone", line: "check | careless/build.toml | --fix | careless/other.toml | --dry-run | --only | flank-angles-differ", status: 1, says: "careless"},
	{why: "a finding that is none", line: "check | careless/build.toml | --fix | careless/other.toml | --only | angles", status: 2, says: "angles"},
	{why: "a finding that is nearly one", line: "check | careless/build.toml | --fix | careless/other.toml | --only | flank-angle-differs", status: 2, says: "did you mean `flank-angles-differ`"},
	{why: "a copy in another folder", line: "check | careless/build.toml | --fix | other.toml", status: 2, says: "lies in another folder"},
	{why: "a dry run of nothing", line: "check | careless/build.toml | --dry-run", status: 2, says: "--dry-run goes with --fix"},
}

func TestCheckSays(t *testing.T) {
	demoFolder(t, "clean", "careless")
	sayAll(t, saidOfCheck)
}

var saidOfOrder = []call{
	{why: "printed", line: "order | clean/build.toml", says: "Total"},
	{why: "as facts", line: "order | clean/build.toml | --json", says: `"lines"`},
	{why: "as a workbook", line: "order | clean/build.toml | -o | list.xlsx", says: "Written: list.xlsx"},
	{why: "issued again", line: "order | clean/build.toml | -o | list.xlsx | --force", says: "list.xlsx"},
	{why: "a list of what stops is written too", line: "order | careless/build.toml | -o | careless.xlsx", status: 1, says: "Written: careless.xlsx"},
	{why: "chosen shops", line: "order | shops/build.toml | --choose", says: "Total 605.60 NZD"},
	{why: "not chosen", line: "order | shops/build.toml", says: "Total 714.53 NZD"},
	{why: "a mail", line: "order | clean/build.toml | --text | elbe | --language | de", says: "Stück"},
	{why: "without prices", line: "order | clean/build.toml | --text | elbe | --language | en", silent: "EUR", says: "tail"},
	{why: "with prices", line: "order | clean/build.toml | --text | elbe | --language | en | --prices", says: "EUR"},
	{why: "tables", line: "order | clean/build.toml | --csv | quotes", says: "quotes"},
	{why: "a shop that is none", line: "order | clean/build.toml | --text | alster", status: 2, says: "alster"},
	{why: "a mail as JSON", line: "order | clean/build.toml | --text | elbe | --json", says: "\"vendor\": \"elbe\""},
	{why: "tables as JSON", line: "order | clean/build.toml | --csv | as-json | --json", says: "\"lines\": "},
	{why: "a mail and a workbook at once", line: "order | clean/build.toml | --text | elbe | -o | both.xlsx", status: 2, says: "once for each"},
	{why: "a language of nothing", line: "order | clean/build.toml | --language | de", status: 2, says: "--language goes with"},
	{why: "prices of nothing", line: "order | clean/build.toml | --prices", status: 2, says: "--prices goes with"},
	{why: "a language that is none", line: "order | clean/build.toml | --text | elbe | --language | xx", status: 2, says: "xx"},
	{why: "an ending that is none", line: "order | clean/build.toml | -o | list.txt", status: 2, says: ".xlsx"},
	{why: "no folder", line: "order | clean/build.toml | -o | no/list.xlsx", status: 2, says: "no"},
	{why: "what came back: nothing yet", line: "receive | clean/build.toml | list.xlsx", says: "not"},
	{why: "as facts", line: "receive | clean/build.toml | list.xlsx | --json", says: `"not_ordered"`},
	{why: "with nothing to amend", line: "receive | clean/build.toml | list.xlsx | --amend", says: ""},
	{why: "no book", line: "receive | clean/build.toml | no.xlsx", status: 2, says: "no.xlsx"},
	{why: "one word", line: "receive | clean/build.toml", status: 2, says: "1 were given"},
	{why: "shops", line: "choose | shops/build.toml", says: "this plan"},
	{why: "the fewest adaptors", line: "choose | shops/build.toml | --for | adaptors", says: "adaptors"},
	{why: "as facts", line: "choose | shops/build.toml | --json", says: `"proved"`},
	{why: "a goal that is none", line: "choose | shops/build.toml | --for | beauty", status: 2, says: "beauty"},
	{why: "spares", line: "spares | clean/build.toml", says: "Random wear"},
	{why: "what stays aboard", line: "spares | clean/build.toml | --kit", says: "What stays aboard", silent: "What one more"},
	{why: "as facts", line: "spares | clean/build.toml | --json", says: `"chance_without_any"`},
	{why: "no build", line: "spares | no.toml", status: 2, says: "no.toml"},
	{why: "for the better", line: "compare | careless/build.toml | clean/build.toml", says: "gone"},
	{why: "for the worse", line: "compare | clean/build.toml | careless/build.toml", status: 1, says: "new"},
	{why: "with itself", line: "compare | clean/build.toml | clean/build.toml", says: "Nothing changed"},
	{why: "as facts", line: "compare | clean/build.toml | clean/build.toml | --json", says: `"new_findings"`},
	{why: "one build", line: "compare | clean/build.toml", status: 2, says: "1 were given"},
	{why: "one that is not there", line: "compare | clean/build.toml | no.toml", status: 2, says: "no.toml"},
}

func TestOrderSays(t *testing.T) {
	demoFolder(t, "clean", "careless", "shops")
	sayAll(t, saidOfOrder)
}

var saidOfPages = []call{
	{why: "a page", line: "page | clean/build.toml | -o | plant.html", says: "Written: plant.html"},
	{why: "again", line: "page | clean/build.toml | -o | plant.html | --force", says: "Written: plant.html"},
	{why: "some sections", line: "page | clean/build.toml | -o | - | --only | cards", says: "<!doctype html>"},
	{why: "a section that is none", line: "page | clean/build.toml | -o | x.html | --only | card", status: 2, says: `no section "card"`},
	{why: "no file", line: "page | clean/build.toml", status: 2, says: "a page needs a file"},
	{why: "an ending that is none", line: "page | clean/build.toml | -o | x.pdf", status: 2, says: ".html"},
	{why: "a sheet of equipment", line: "picture | clean/build.toml | -o | plant.svg | --overview", says: "Written: plant.svg"},
	{why: "again", line: "picture | clean/build.toml | -o | plant.svg | --overview | --force", says: "Written: plant.svg"},
	{why: "one panel", line: "picture | clean/build.toml | -o | - | --panel | B", says: "<svg"},
	{why: "for a phone, in a state", line: "picture | clean/build.toml | -o | - | --panel | B | --narrow | --state | throttle shut", says: "<svg"},
	{why: "a panel that is none", line: "picture | clean/build.toml | -o | - | --panel | Z", status: 2, says: `no panel "Z"`},
	{why: "a state that is none", line: "picture | clean/build.toml | -o | - | --overview | --state | no such", status: 2, says: "no such"},
	{why: "several to the output", line: "picture | clean/build.toml | -o | -", status: 2, says: "--panel or --overview"},
	{why: "no file", line: "picture | clean/build.toml", status: 2, says: "a picture needs a file"},
}

func TestPageAndPictureSay(t *testing.T) {
	demoFolder(t, "clean")
	sayAll(t, saidOfPages)
}

var saidOfCart = []call{
	{why: "a cart that is not enough", line: "cart | clean/build.toml | carts/quai.csv", status: 1, says: "tail-n12"},
	{why: "three that are", line: "cart | clean/build.toml | carts/elbe.csv | carts/wharf.csv | carts/pier.xlsx", says: "covered"},
	{why: "every line", line: "cart | clean/build.toml | carts/owner.csv | --all", status: 1, says: "suction-hose"},
	{why: "with its points", line: "cart | clean/build.toml | carts/owner.csv | --why", status: 1, says: "the same kind of part"},
	{why: "as facts", line: "cart | clean/build.toml | carts/owner.csv | --json", status: 1, says: `"confidence"`},
	{why: "columns by number", line: "cart | clean/build.toml | carts/owner.csv | --columns | text=2 | --encoding | utf-8 | --currency | EUR", status: 1, says: ""},
	{why: "one sheet", line: "cart | clean/build.toml | carts/muelle.xlsx | --sheet | nowhere", status: 2, says: "nowhere"},
	{why: "a currency that is none", line: "cart | clean/build.toml | carts/owner.csv | --currency | EURO", status: 2, says: "EURO"},
	{why: "an encoding that is none", line: "cart | clean/build.toml | carts/owner.csv | --encoding | runes", status: 2, says: "runes"},
	{why: "a column that is none", line: "cart | clean/build.toml | carts/owner.csv | --columns | colour=1", status: 2, says: "colour"},
	{why: "what was confirmed is not there", line: "cart | clean/build.toml | carts/owner.csv | --accepted | no.toml", status: 2, says: "no.toml"},
	{why: "no cart", line: "cart | clean/build.toml", status: 2, says: "1 were given"},
	{why: "a cart that is not there", line: "cart | clean/build.toml | no.csv", status: 2, says: "no.csv"},
}

func TestCartSays(t *testing.T) {
	demoFolder(t, "clean", "carts")
	sayAll(t, saidOfCart)
}

var saidOfDuty = []call{
	{why: "does it make water", line: "duty | clean/build.toml", says: "fresh water"},
	{why: "beside what stands", line: "duty | clean/build.toml | --with | elements=2 | --with | flow=9 L/min", says: "fresh water"},
	{why: "by a log", line: "duty | clean/build.toml | --log | logs/summer.csv", says: "fouling"},
	{why: "as facts", line: "duty | clean/build.toml | --json", says: `"curves"`},
	{why: "a word that is none", line: "duty | clean/build.toml | --with | elemnts=2", status: 2, says: "did you mean `elements`"},
	{why: "no unit", line: "duty | clean/build.toml | --with | pressure=55", status: 2, says: "has no unit"},
	{why: "no log", line: "duty | clean/build.toml | --log | no.csv", status: 2, says: "no.csv"},
	{why: "an old plant", line: "audit | oldplant/build.toml | --on | 2026-11-28", status: 1, says: "Open this first"},
	{why: "with its readings", line: "audit | oldplant/build.toml | --on | 2026-11-28 | --why", status: 1, says: "Judgements that it rests on"},
	{why: "into files", line: "audit | oldplant/build.toml | --on | 2026-11-28 | --record | oldplant/new.toml | -o | work.txt", status: 1, says: "Written: work.txt"},
	{why: "over them", line: "audit | oldplant/build.toml | --on | 2026-11-28 | --record | oldplant/new.toml | -o | work.txt", status: 2, says: "is kept"},
	{why: "with force", line: "audit | oldplant/build.toml | --on | 2026-11-28 | --record | oldplant/new.toml | -o | work.txt | --force", status: 1, says: "Written: work.txt"},
	{why: "into the build", line: "audit | oldplant/build.toml | --on | 2026-11-28 | --amend", status: 1, says: "kept as"},
	{why: "both", line: "audit | oldplant/build.toml | --record | x.toml | --amend", status: 2, says: "amend"},
	{why: "no day", line: "audit | oldplant/build.toml | --on | yesterday", status: 2, says: "is no day"},
}

func TestDutyAndAuditSay(t *testing.T) {
	demoFolder(t, "clean", "oldplant", "logs")
	sayAll(t, saidOfDuty)
}

var saidOfNew = []call{
	{why: "a starter", line: "new | boat", says: "boat"},
	{why: "it checks without a stop", line: "check | boat/build.toml", says: "0 stops"},
	{why: "never over a file", line: "new | boat", status: 2, says: "build.toml"},
	{why: "another sort of plant", line: "new | other | --volts | 12 | --elements | 2 | --drive | recovery | --country | NZ,US", says: "other"},
	{why: "a voltage that is none", line: "new | third | --volts | 13", status: 2, says: "13"},
	{why: "no folder", line: "new", status: 2, says: "takes one folder"},
	{why: "a bag of parts", line: "draft | draft/kontor.csv | draft/quay.csv | --yes | -o | bag.toml | --name | bag | --rate | USD=0.92 | --rate-day | 2026-11-20 | --currency | EUR", status: 1, says: "bag.toml"},
	{why: "over it", line: "draft | draft/kontor.csv | draft/quay.csv | --yes | -o | bag.toml", status: 2, says: "bag.toml"},
	{why: "with force, and few steps", line: "draft | draft/kontor.csv | draft/quay.csv | --yes | -o | bag.toml | --force | --steps | 2000 | --rate | USD=0.92 | --rate-day | 2026-11-20 | --currency | EUR | --like | throttle", status: 1, says: "bag.toml"},
	{why: "more into a build", line: "draft | draft/quay.csv | --into | clean/build.toml | --encoding | utf-8", status: 1, says: "doubles suction-hose", silent: "Written"},
	{why: "amend without a build", line: "draft | draft/quay.csv | --amend", status: 2, says: "--amend goes with --into"},
	{why: "both ways at once", line: "draft | draft/quay.csv | --into | clean/build.toml | -o | x.toml", status: 2, says: "say one of them"},
	{why: "a plant that is none", line: "draft | draft/kontor.csv | draft/quay.csv | --like | steam", status: 2, says: "steam"},
	{why: "a column that is none", line: "draft | draft/quay.csv | --columns | colour=1", status: 2, says: "colour"},
	{why: "a sheet of no book", line: "draft | draft/quay.csv | --sheet | two", status: 2, says: ""},
	{why: "no list", line: "draft", status: 2, says: "0 were given"},
	{why: "a list that is not there", line: "draft | no.csv", status: 2, says: "no.csv"},
}

func TestNewAndDraftSay(t *testing.T) {
	demoFolder(t, "clean", "draft")
	sayAll(t, saidOfNew)
}
