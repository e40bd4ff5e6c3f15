package workbook

import (
	"bytes"
	"fmt"
	"io"
	"math/big"
	"math/rand/v2"
	"strconv"
	"testing"

	"github.com/bojanz/currency"
	"github.com/stretchr/testify/require"

	"handtight/bom/facts"
	"handtight/bom/finding"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// rat reads an exact decimal.
func rat(t testing.TB, s string) *big.Rat {
	t.Helper()
	if s == "" {
		return new(big.Rat)
	}
	r, ok := new(big.Rat).SetString(s)
	require.True(t, ok, "decimal %q", s)
	return r
}

// halfUp rounds a fraction to that many decimals, halves up: the check's own
// arithmetic, apart from the package's.
func halfUp(r *big.Rat, digits uint8) *big.Rat {
	scale := new(big.Rat).SetInt(new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(digits)), nil))
	x := new(big.Rat).Mul(r, scale)
	x.Add(x, big.NewRat(1, 2))
	whole := new(big.Int).Div(x.Num(), x.Denom()) // floor
	return new(big.Rat).Quo(new(big.Rat).SetInt(whole), scale)
}

func amount(t testing.TB, r *big.Rat, code string) currency.Amount {
	t.Helper()
	d, ok := currency.GetDigits(code)
	require.True(t, ok)
	a, err := currency.NewAmount(r.FloatString(int(d)), code)
	require.NoError(t, err)
	return a
}

func price(t testing.TB, s, code string) currency.Amount {
	t.Helper()
	a, err := currency.NewAmount(s, code)
	require.NoError(t, err)
	return a
}

// addUp fills in the orders and sums of a Content from its lines and rates.
func addUp(t testing.TB, c *Content) *Content {
	t.Helper()
	rates := map[string]string{c.Currency: "1"}
	for _, r := range c.Rates {
		rates[r.Currency] = r.Rate
	}
	total := new(big.Rat)
	for i := range c.Shops {
		s := &c.Shops[i]
		goods, bought := new(big.Rat), false
		digits, _ := currency.GetDigits(s.Currency)
		for j := range s.Lines {
			l := &s.Lines[j]
			order := settleOrder(t, l)
			bought = bought || order.Sign() > 0 && l.HasPrice
			if l.HasPrice {
				sum := halfUp(new(big.Rat).Mul(rat(t, l.Price.Number()), order), digits)
				l.Total = amount(t, sum, s.Currency)
				goods.Add(goods, sum)
			}
		}
		if s.Currency != "" {
			inBuild := settleShop(t, s, goods, bought, digits, rat(t, rates[s.Currency]), c.Currency)
			total.Add(total, inBuild)
		}
	}
	c.Total = amount(t, total, c.Currency)
	return c
}

func settleOrder(t testing.TB, l *Line) *big.Rat {
	need := new(big.Rat)
	for _, part := range []string{l.Placed, l.Planned, l.Spare, l.Extra} {
		need.Add(need, rat(t, part))
	}
	need.Sub(need, rat(t, l.Have))
	order := new(big.Rat)
	if need.Sign() > 0 && l.Pack == "" {
		order.Set(need)
	} else if need.Sign() > 0 {
		pack := rat(t, l.Pack)
		packs := new(big.Rat).Quo(need, pack)
		n := new(big.Int).Add(packs.Num(), new(big.Int).Sub(packs.Denom(), big.NewInt(1)))
		order.Mul(new(big.Rat).SetInt(n.Div(n, packs.Denom())), pack)
	}
	l.Order = order.FloatString(3)
	return order
}

func settleShop(t testing.TB, s *Shop, goods *big.Rat, bought bool, digits uint8, rate *big.Rat, build string) *big.Rat {
	freight := new(big.Rat)
	if free := rat(t, s.FreeFrom.Number()); bought && (free.Sign() == 0 || goods.Cmp(free) < 0) {
		freight = rat(t, s.Freight.Number())
	}
	share := func(of *big.Rat, percent string) *big.Rat {
		x := new(big.Rat).Mul(of, rat(t, percent))
		return halfUp(x.Quo(x, big.NewRat(100, 1)), digits)
	}
	base := new(big.Rat).Add(goods, freight)
	customs := share(base, s.Customs)
	base.Add(base, customs)
	tax := share(base, s.Tax)
	base.Add(base, tax)
	buildDigits, _ := currency.GetDigits(build)
	inBuild := halfUp(new(big.Rat).Mul(base, rate), buildDigits)
	s.Goods, s.CustomsSum, s.TaxSum = amount(t, goods, s.Currency), amount(t, customs, s.Currency), amount(t, tax, s.Currency)
	s.Sum, s.InBuild = amount(t, base, s.Currency), amount(t, inBuild, build)
	return inBuild
}

// sample is a small order with everything in it: two currencies, a shop in the
// build's own, hose by the metre, a line without a price, and lines without a shop.
func sample(t testing.TB) Content {
	c := Content{
		Title: "Kittiwake: 24 V desalinator, one 2.5 x 21 element", Currency: "NZD", RatesDate: "2026-11-20",
		Rates: []Rate{{"EUR", "1.92"}, {"JPY", "0.0114"}},
		Shops: []Shop{
			{ID: "hamburg", Name: "Hydraulics counter, Hamburg", Currency: "EUR", Freight: price(t, "48.00", "EUR"), Customs: "5", Tax: "15",
				Lines: []Line{
					{Key: "hp-pump", Item: "hp-pump", About: "plunger pump, triplex, 316 head", RatingNeeded: "55 bar normal, 71.5 bar worst", RatingFound: "100 bar, its data sheet", Code: "TP-8-100",
						Placed: "1", Have: "1", Unit: "pc", Price: price(t, "1240.00", "EUR"), HasPrice: true, Lead: "14 days", Joints: "7, 8"},
					{Key: "elbow-38", Item: "elbow-38", About: "elbow, 90 degrees", Words: "elbow 90 degrees, 3/8 NPT male x 9/16-18 JIC 37 degree male, 316", URL: "https://shop.example/00417", Danger: 71.5, RatingNeeded: "55 bar normal, 71.5 bar worst", RatingFound: "345 bar, SAE J514 table 4", Code: "00417",
						Placed: "3", Spare: "1", Unit: "pc", Pack: "2", Price: price(t, "17.385", "EUR"), HasPrice: true, Lead: "5 days", Joints: "8, 9, 11, 14",
						Question: "Is the JIC end 37 degrees, not 45?"},
					{Key: "washer-12", Item: "bonded washer 1/2", About: "washer, bonded, for a G 1/2 face",
						RatingNeeded: "55 bar normal", RatingFound: "unknown", Placed: "4", Spare: "3", Planned: "4", Unit: "pack", Pack: "10",
						Lead: "5 days", Joints: "3, 4, 5, 6", Question: "Price a pack of ten? Which pressure are they rated to?"},
				}},
			{ID: "osaka", Name: "Membrane works, Osaka", Currency: "JPY", Freight: price(t, "5200", "JPY"), Tax: "15",
				Lines: []Line{{Key: "element", Item: "element-2521", About: "membrane element, 2.5 x 21 in, seawater",
					RatingNeeded: "55 bar", RatingFound: "69 bar, its data sheet", Code: "3-4", Placed: "1", Planned: "1", Unit: "pc",
					Price: price(t, "38500", "JPY"), HasPrice: true, Lead: "6 weeks", Question: "Which preservative is it packed in?"}}},
			{ID: "port", Name: "Chandler at the port", Currency: "NZD", Tax: "0",
				Lines: []Line{{Key: "lp-hose", Item: "lp-hose", About: "suction hose, wire helix, bore 19 mm", RatingNeeded: "1.2 bar, and 0.3 bar vacuum", RatingFound: "6 bar, 0.9 bar vacuum", Code: "=SUM(1,1)",
					Placed: "3.4", Spare: "0.7", Have: "0.3", Unit: "m", Pack: "0.5", Price: price(t, "11.90", "NZD"), HasPrice: true, Joints: "1, 2"}}},
			{ID: "", Lines: []Line{{Key: "probe", Item: "probe-g14", About: "salinity probe",
				RatingNeeded: "0.2 bar", RatingFound: "unknown", Placed: "1", Unit: "pc", Joints: "22", Question: "Is it sold with its O-ring?"}}},
		},
		Spares: []Spare{
			{"elbow-38", "elbow, 90 degrees", "spoiled while fitting", "3", "1", "3 to fit, 3 % spoiled each: 1 spare gives 99.5 % to have enough (asked 95 %)."},
			{"bonded washer 1/2", "washer", "planned change", "4", "7", "Changed once in 9 months, and 3 for what is spoiled."},
		},
		Joints: []Joint{
			{"J1", "raw water", "intake.inboard", "tail-19/1.a", "G 3/4 male", "G 3/4 female, cone 60", "seals with", "Both are G; the washer closes on the face.",
				"Bonded washer G 3/4", "Hold the seacock, turn the nut: 2 turns by hand, then 40 N m.", "4 to 5", "0.3 bar", true},
			{"J8", "high pressure", "hp-pump.out", "elbow-38.a", "3/8 NPT female", "3/8 NPT male", "seals", "Two tapers of one kind.",
				"Tape, 3 wraps, 250 mm; 2 to 3 turns past finger tight", "Do not turn back to line up.", "4.3", "71.5 bar", false},
			{"J9", "high pressure", "elbow-38.b", "hp-hose.a", "9/16-18 JIC 37 degree male", "G 1/4 female", "will not start", "The thread is 14.3 mm on one side and 13.2 mm on the other.",
				"Nothing closes it.", "", "0", "71.5 bar", false},
		},
		Hoses: []facts.HoseRow{{Name: "lp-hose/1", From: "J1, tail-19/1.b, 19 mm barb", To: "J2, strainer.in, 19 mm barb", Planned: "820 mm", Cut: "840 mm",
			How: "planned length and an allowance for squaring (a judgement)", Bend: "not in the tables: ask the maker", Needs: "19 mm bore, stands a vacuum"}},
		Test: []facts.TestStage{{Plant: "intake", Number: 0, Name: "dry fit", How: "no water, no current", Notes: "Pull at each hose."},
			{Plant: "intake", Number: 1, Name: "dock flush", How: "fresh water", Stands: "intake shut", First: "J1, J8 to J9", Notes: "NOT TO BE MADE: elbow-38 sees 71.5 bar", Blocked: true}},
		Questions: []Question{{About: "elbow-38", Shop: "hamburg", Ask: "Is the JIC end 37 degrees, not 45?", Settles: "1 joint"}},
		Findings: facts.Findings([]finding.Finding{
			{Severity: finding.Stop, Slug: "will-not-start", Subject: finding.Subject{Kind: finding.Segment, Segment: "elbow-38.b to hp-hose.a"}, Place: finding.Place{File: "kittiwake.toml", Line: 31, Column: 9},
				Reason: "9/16-18 JIC male is 14.3 mm across its thread, G 1/4 female takes 13.2 mm: it will not start.", Remedy: "Buy the hose with a 9/16-18 JIC female swivel."},
			{Severity: finding.Stop, Slug: "rating-unknown", Subject: finding.Subject{Kind: finding.Segment, Segment: "segment membrane"}, Place: finding.Place{File: "kittiwake.toml", Line: 44},
				Reason: "Nothing says what bonded washer 1/2 bears, and it sees 71.5 bar.", Remedy: "Ask the shop, and write rated = \"…\" beside the item."},
			{Severity: finding.Caution, Slug: "several-readings", Subject: finding.Subject{Kind: finding.Segment, Segment: "probe-g14.in"}, Place: finding.Place{File: "kittiwake.toml"},
				Reason: "The shop's words leave the seal open.", Remedy: "Ask whether the O-ring comes with it."},
			{Severity: finding.Note, Slug: "choice-shown", Subject: finding.Subject{Kind: finding.Segment, Segment: "tail-19/1"}, Place: finding.Place{File: "kittiwake.toml", Line: 12}, Reason: "The tail was turned so that its nut meets the seacock.", Remedy: "Nothing, unless you meant the other way."},
		}),
		Assumptions: []Assumption{{"Chance that a fitting is spoiled while fitting", "3 %", "a judgement, given in the build file"},
			{"Rates", "2026-11-20", "given in the build file"}},
		Cautions: []string{"High pressure water injects through skin: never feel for a leak with a hand.", "Never tighten a joint under pressure.",
			"A failed fitting below the waterline sinks the boat: fit a seacock that can be reached.",
			"New membranes carry preservative: run the first product overboard until the data sheet says otherwise."},
	}
	return *addUp(t, &c)
}

// randomContent is an order of that many lines over several currencies, the same
// for the same seed.
func randomContent(t testing.TB, seed uint64, lines int) Content {
	r := rand.New(rand.NewPCG(seed, 1))
	c := Content{Title: "Random", Currency: "NZD", RatesDate: "2026-11-20",
		Rates: []Rate{{"EUR", "1.92"}, {"JPY", "0.011437"}, {"KWD", "5.4321"}, {"VND", "0.0000651"}}}
	codes := []string{"EUR", "JPY", "KWD", "VND", "NZD"}
	shops := min(max(lines/12, 3), 40)
	for i := range shops {
		code := codes[r.IntN(len(codes))]
		digits, _ := currency.GetDigits(code)
		s := Shop{ID: fmt.Sprintf("shop-%d", i), Name: fmt.Sprintf("Shop %d", i), Currency: code,
			Freight: price(t, big.NewRat(r.Int64N(90000), 1000).FloatString(int(digits)), code),
			Customs: []string{"", "5", "7.5", "12.25"}[r.IntN(4)], Tax: []string{"0", "15", "19", "8.875"}[r.IntN(4)]}
		if i%3 == 0 {
			s.FreeFrom = price(t, big.NewRat(r.Int64N(900000)+1000, 1000).FloatString(int(digits)), code)
		}
		for j := range lines / shops {
			s.Lines = append(s.Lines, randomLine(t, r, fmt.Sprintf("item-%d-%d", i, j), code, int(digits)))
		}
		c.Shops = append(c.Shops, s)
	}
	return *addUp(t, &c)
}

func randomLine(t testing.TB, r *rand.Rand, key, code string, digits int) Line {
	l := Line{Key: key, Item: key, About: "elbow, 90 degrees, forged",
		RatingNeeded: "55 bar normal, 71.5 bar worst", RatingFound: "345 bar", Code: strconv.Itoa(r.IntN(90000)), Unit: "pc",
		Placed: strconv.Itoa(r.IntN(6)), Planned: strconv.Itoa(r.IntN(3)), Spare: strconv.Itoa(r.IntN(3)), Extra: "", Have: strconv.Itoa(r.IntN(4)),
		Pack: []string{"", "1", "2", "5", "10"}[r.IntN(5)], Lead: "5 days", Joints: "1, 2, 3"}
	if r.IntN(3) == 0 { // hose, by the metre: sums such as 0.1 + 0.2 - 0.3
		tenth := func(n int) string { return big.NewRat(int64(r.IntN(n)), 10).FloatString(1) }
		l.Unit, l.Placed, l.Planned, l.Spare, l.Have = "m", tenth(40), tenth(5), tenth(9), tenth(30)
		l.Pack = []string{"0.1", "0.3", "0.7", "1", "1.25", ""}[r.IntN(6)]
	}
	l.HasPrice = r.IntN(12) != 0
	if l.HasPrice { // some prices end in a half of the smallest coin
		l.Price = price(t, big.NewRat(r.Int64N(300000)*5, 1000).FloatString(digits+1), code)
	}
	return l
}

// made writes a book and returns its bytes.
func made(t testing.TB, c Content) []byte {
	t.Helper()
	var buf bytes.Buffer
	require.NoError(t, Write(&buf, c))
	return buf.Bytes()
}

// Write writes the workbook for a Content to w: a first issue, with nothing carried over.
func Write(w io.Writer, c Content) error {
	k, err := count(c)
	if err != nil {
		return err
	}
	_, err = writeBook(w, k, newCarry())
	return err
}
