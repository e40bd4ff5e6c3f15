package repair_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/build"
	"handtight/bom/read"
	"handtight/bom/repair"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/makeup"
	"handtight/threads/title"
)

func end(t require.TestingT, text string) threads.EndReading {
	r, err := title.ReadEnd(text)
	require.NoError(t, err, text)
	return r
}

const bar = quantity.Bar

// The cases that were worked out before there was any code. has and not are parts of the
// first chain's titles, joined by " + ".
type workedCase struct {
	name, a, b string
	o          repair.Options
	pieces     int
	has        []string
	not        []string // in no chain shown
	none       string
	direct     bool
}

var worked = []workedCase{
	{name: "A1", a: "1/2 NPT female", b: "G 1/2 female", o: repair.Options{Pressure: 60 * bar, Water: "sea"}, pieces: 1, has: []string{"1/2 NPT male", "G 1/2 male", "316"}, not: []string{"brass", "bronze"}},
	{name: "A2", a: "1/2 NPT male", b: "Rc 1/2", pieces: 1, has: []string{"1/2 NPT female", "R 1/2 male"}},
	{name: "A3", a: "G 3/4 male", b: "3/4 NPT male", o: repair.Options{Pressure: 6 * bar, Water: "sea", Below: true}, pieces: 1, has: []string{"G 3/4 female", "3/4 NPT female"}},
	{name: "A4", a: "1/4 NPT female", b: "G 1/4 male", o: repair.Options{Pressure: 90 * bar, Water: "sea"}, pieces: 1, has: []string{"1/4 NPT male", "G 1/4 female", "316"}},
	{name: "A5", a: "3/8 NPT male", b: "3/8 NPT male", o: repair.Options{Pressure: 90 * bar, Water: "sea"}, pieces: 1, has: []string{"oupling", "class 3000"}, not: []string{"class 150"}},
	{name: "A7", a: "JIC -6 male", b: "ORB -6 female", o: repair.Options{Pressure: 99 * bar}, pieces: 1, has: []string{"JIC -6 female swivel", "ORB -6 male"}},
	{name: "A8", a: "G 3/4 female plastic", b: "3/4 NPT female", o: repair.Options{Pressure: 6 * bar}, pieces: 1, has: []string{"G 3/4 male", "3/4 NPT male"}, not: []string{"R 3/4 male"}},
	{name: "A9", a: "12L male", b: "G 1/2 female", o: repair.Options{Pressure: 57 * bar}, pieces: 1, has: []string{"12L female swivel", "G 1/2 male"}},
	{name: "A10", a: "10 mm push-in", b: "G 1/2 male", o: repair.Options{Water: "product"}, pieces: 2, has: []string{"iece of tube", "G 1/2 female", "10 mm push-in", "acetal"}},
	{name: "A11", a: "3/4 NPS male", b: "3/4 NPT female", o: repair.Options{Below: true}, none: "nothing may stand between a skin fitting and its seacock"},
	{name: "A12", a: "M25x2 male", b: "G 3/4 female", o: repair.Options{Water: "sea"}, none: "replace the part"},
	{name: "A13", a: "1/2 NPT male", b: "1/2 NPT female", direct: true},
	{name: "A15", a: "G 2 male", b: "1/8 NPT female", o: repair.Options{Pressure: 57 * bar}, none: "change one of the two parts"},
}

func TestWorkedCases(t *testing.T) {
	for _, c := range slices.Concat(worked, blind, blindAgain) {
		t.Run(c.name, func(t *testing.T) {
			got := repair.Adapt(end(t, c.a), end(t, c.b), c.o)
			require.Equal(t, c.direct, got.Direct != nil)
			if c.direct {
				return
			}
			if c.none != "" {
				require.Empty(t, got.Chains)
				require.Contains(t, got.None, c.none)
				return
			}
			require.NotEmpty(t, got.Chains, got.None)
			first := titles(&got.Chains[0])
			require.Len(t, got.Chains[0].Pieces, c.pieces, first)
			for _, w := range c.has {
				require.Contains(t, first, w)
			}
			for i := range got.Chains {
				for _, w := range c.not {
					require.NotContains(t, titles(&got.Chains[i]), w)
				}
			}
		})
	}
}

func titles(c *repair.Chain) string {
	var out []string
	for _, p := range c.Pieces {
		out = append(out, p.Title)
	}
	return strings.Join(out, " + ")
}

// An open end: what serves every reading, what each reading would take, and what tells them
// apart is asked (worked case A14).
func TestOpenEnd(t *testing.T) {
	got := repair.Adapt(end(t, "3/4 BSP female"), end(t, "3/4 NPT male"), repair.Options{})
	require.NotEmpty(t, got.Ask)
	require.Contains(t, titles(&got.Chains[0]), "3/4 NPT female")
	require.Contains(t, titles(&got.Chains[0]), "R 3/4 male")
	require.NotEmpty(t, got.Chains[0].Cautions, "the parallel reading closes at low pressure only")
	for _, c := range got.Chains {
		for _, r := range end(t, "3/4 BSP female").Candidates {
			e := c.Pieces[0].Ends[0]
			if c.Turned[0] {
				e = c.Pieces[0].Ends[1]
			}
			m := threads.Mate(r, e)
			require.True(t, m.Verdict.Holds() || m.Verdict == threads.LowPressureOnly)
		}
	}
	high := repair.Adapt(end(t, "3/4 BSP female"), end(t, "3/4 NPT male"), repair.Options{Pressure: 57 * bar})
	require.Empty(t, high.Chains)
	require.NotEmpty(t, high.None)
	male := map[threads.Family]string{threads.G: "G 3/4 male", threads.Rc: "R 3/4 male", threads.Rp: "R 3/4 male"}
	require.Len(t, high.Each, len(end(t, "3/4 BSP female").Candidates))
	for _, r := range high.Each {
		require.NotNil(t, r.Chain, "%s: %s", r.A, r.None)
		require.Contains(t, titles(r.Chain), male[r.A.Family])
	}
}

// What the text of a worked case says beside its pieces.
func TestWorkedTexts(t *testing.T) {
	got := repair.Adapt(end(t, "12L male"), end(t, "G 1/2 female"), repair.Options{Pressure: 57 * bar}) // A9
	for i := range got.Chains[0].Joints {
		mk := makeup.Of(&got.Chains[0].Joints[i])
		require.NotContains(t, mk.String(), "cutting ring")
	}
	got = repair.Adapt(end(t, "1/2 NPT female"), end(t, "G 1/2 female"), repair.Options{Pressure: 60 * bar, Water: "sea"}) // A1
	tape, washer := makeup.Of(&got.Chains[0].Joints[0]), makeup.Of(&got.Chains[0].Joints[1])
	require.Contains(t, tape.String(), "tape")
	require.Contains(t, washer.String(), "bonded")
	got = repair.Adapt(end(t, "M25x2 male"), end(t, "G 3/4 female"), repair.Options{Water: "sea"}) // A12
	require.Contains(t, got.None, "loose")
	require.Contains(t, got.None, "M25x2")
}

// A build's own items fill in prices, and --by price puts the cheaper first. Made up.
func TestPrices(t *testing.T) {
	build, faults := read.Parse("box.toml", []byte(`[build]
name = "box"
currency = "EUR"
[rates]
date = 2026-11-20
USD = "0.50"
[[vendor]]
id = "near"
name = "Near (invented)"
currency = "EUR"
[[vendor]]
id = "far"
name = "Far (invented)"
currency = "USD"
customs = "10 %"
tax = "20 %"
[[item]]
id = "sea"
kind = "sea"
[[item]]
id = "out"
kind = "drain"
[[run]]
name = "r"
path = ["sea", "out"]
[[item]]
id = "piece"
kind = "adaptor"
ports = { a = '1/2 NPT male', b = 'G 1/2 male' }
material = "316"
[[item]]
id = "short"
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
material = "316"
class = "3000"
[[offer]]
item = "piece"
vendor = "near"
price = "30.00"
[[offer]]
item = "piece"
vendor = "far"
price = "4.00"
pack = 10
[[offer]]
item = "short"
vendor = "far"
price = "10.00"
`))
	require.NoError(t, faults.Err())
	shelf := repair.WithBuild(build)
	got := repair.Adapt(end(t, "1/2 NPT female"), end(t, "G 1/2 female"), repair.Options{Shelf: shelf, Pressure: 60 * bar, Water: "sea"})
	piece := got.Chains[0].Pieces[0]
	require.Equal(t, "piece", piece.ID, "the stock's own of the same ends and material is this one, with a price")
	require.Equal(t, "26.40", piece.Price.Number(), "ten at 4.00 USD, customs and tax on it, at 0.50: less than 30.00")
	require.Equal(t, "Far (invented)", piece.Shop)
	got = repair.Adapt(end(t, "1/2 NPT male"), end(t, "1/2 NPT male"), repair.Options{Shelf: shelf, ByPrice: true})
	require.Equal(t, "short", got.Chains[0].Pieces[0].ID)
	require.Equal(t, "6.60", got.Chains[0].Pieces[0].Price.Number())
	require.Nil(t, got.Chains[1].Pieces[0].Price)
}

// An item more never makes the best worse, more pressure never makes a chain appear, and the
// ends the other way round give the same.
func TestMoreItemsAndMorePressure(t *testing.T) {
	texts := []string{"1/2 NPT", "G 1/2", "3/4 NPT", "G 3/4", "3/8 NPT", "JIC -8"}
	rapid.Check(t, func(t *rapid.T) {
		pick := func(name string) string {
			return rapid.SampledFrom(texts).Draw(t, name) + " " + rapid.SampledFrom([]string{"male", "female"}).Draw(t, name+" sex")
		}
		var rows []string
		for range rapid.IntRange(1, 12).Draw(t, "items") {
			rows = append(rows, "adaptor|"+pick("a")+"|"+pick("b")+"|316")
		}
		x, y := end(t, pick("x")), end(t, pick("y"))
		o := repair.Options{Pressure: quantity.Pressure(rapid.IntRange(1, 99).Draw(t, "bar")) * bar, Shelf: bag(t, rows[:len(rows)-1]...)}
		less := repair.Adapt(x, y, o)
		back := repair.Adapt(y, x, o)
		require.Equal(t, len(less.Chains), len(back.Chains))
		if len(less.Chains) > 0 {
			require.Equal(t, len(less.Chains[0].Pieces), len(back.Chains[0].Pieces))
		}
		o.Shelf = bag(t, rows...)
		more := repair.Adapt(x, y, o)
		if len(less.Chains) > 0 {
			require.NotEmpty(t, more.Chains)
			require.LessOrEqual(t, len(more.Chains[0].Cautions), len(less.Chains[0].Cautions))
			if len(more.Chains[0].Cautions) == len(less.Chains[0].Cautions) {
				require.LessOrEqual(t, len(more.Chains[0].Pieces), len(less.Chains[0].Pieces))
			}
		}
		o.Pressure = 120 * bar
		if high := repair.Adapt(x, y, o); len(high.Chains) > 0 {
			require.NotEmpty(t, more.Chains)
		}
	})
}

// ended are the fittings of the stock that have ends: washers have none.
func ended() []*stock.Item {
	return slices.DeleteFunc(slices.Clone(stock.Items()), func(it *stock.Item) bool { return len(it.Ends) == 0 })
}

// Over pairs of ends of the whole stock: every joint of every chain that is shown passes the
// judge again, every piece is rated or says that it is not, and no piece of a metal that fails
// in sea water is bought for it.
func TestChainsHold(t *testing.T) {
	items := ended()
	rapid.Check(t, func(t *rapid.T) {
		pick := func(name string) threads.EndReading {
			it := items[rapid.IntRange(0, len(items)-1).Draw(t, name)]
			return threads.EndReading{Candidates: []threads.End{it.Ends[rapid.IntRange(0, len(it.Ends)-1).Draw(t, name+" end")]}}
		}
		a, b := pick("a"), pick("b")
		o := repair.Options{Pressure: quantity.Pressure(rapid.IntRange(1, 120).Draw(t, "bar")) * bar, Water: rapid.SampledFrom([]string{"", "sea", "product"}).Draw(t, "water"), Most: 2}
		got := repair.Adapt(a, b, o)
		if len(got.Chains) == 0 {
			require.True(t, got.Direct != nil || got.None != "", "neither a chain nor a reason")
			return
		}
		for i := range got.Chains {
			c := &got.Chains[i]
			require.Len(t, c.Joints, len(c.Pieces)+1)
			for k := range c.Joints {
				m := threads.Mate(c.Joints[k].A, c.Joints[k].B)
				ok := m.Verdict.Holds() || m.Verdict == threads.LowPressureOnly && o.Pressure <= m.Limit
				require.True(t, ok, "%s with %s", m.A, m.B)
			}
			first, last := c.Joints[0].A, c.Joints[len(c.Joints)-1].B // the judge may add an unsaid sex
			require.Equal(t, []any{a.Candidates[0].Family, a.Candidates[0].Size}, []any{first.Family, first.Size})
			require.Equal(t, []any{b.Candidates[0].Family, b.Candidates[0].Size}, []any{last.Family, last.Size})
			for _, p := range c.Pieces {
				if r, ok := p.Holds(); ok && p.Kind != "hose" {
					require.GreaterOrEqual(t, r.Pressure.Bar(), o.Pressure.Bar(), p.Title)
				} else {
					require.LessOrEqual(t, o.Pressure.Bar(), 10.0, p.Title)
				}
				if o.Water == "sea" {
					require.NotEqual(t, "brass", p.Material)
					require.NotEqual(t, "galvanised iron", p.Material)
				}
			}
		}
	})
}

// BenchmarkAdapt asks pairs of ends of the whole stock, with 100,000 items of a build beside it.
func BenchmarkAdapt(b *testing.B) {
	items := ended()
	own := &build.Build{Currency: "EUR"}
	kind, _ := catalog.KindNamed("adaptor")
	for i := range 100_000 {
		s := items[i*7919%len(items)]
		if len(s.Ends) != 2 {
			continue
		}
		rated := quantity.Pressure(20+i*31%400) * bar
		it := &build.Item{ID: fmt.Sprintf("own-%d", i), Kind: kind, Material: s.Material, Made: catalog.MaterialsIn(s.Material), Rated: &rated}
		for k, e := range s.Ends {
			it.Ports = append(it.Ports, build.Port{Name: []string{"a", "b"}[k], End: threads.EndReading{Candidates: []threads.End{e}}, Said: true})
		}
		own.Items = append(own.Items, it)
	}
	shelf := repair.WithBuild(own)
	var times []time.Duration
	b.ResetTimer()
	for i := 0; b.Loop(); i++ {
		x, y := items[i*104729%len(items)], items[i*1299709%len(items)]
		one := func(e threads.End) threads.EndReading { return threads.EndReading{Candidates: []threads.End{e}} }
		start := time.Now()
		repair.Adapt(one(x.Ends[0]), one(y.Ends[0]), repair.Options{Pressure: quantity.Pressure(1+i%90) * bar, Water: "sea", Shelf: shelf})
		times = append(times, time.Since(start))
	}
	slices.Sort(times)
	b.ReportMetric(float64(times[len(times)/2].Microseconds())/1000, "median-ms/query")
	b.ReportMetric(float64(times[len(times)*99/100].Microseconds())/1000, "p99-ms/query")
	b.ReportMetric(float64(len(shelf.Pieces())), "pieces")
}

// What joins as it is may still not hold what is asked: a washer and a clamp have their own limit,
// and what nobody said of the water is said not to be looked at.
func TestDirectHasItsLimit(t *testing.T) {
	for _, c := range []struct {
		a, b   string
		p      quantity.Pressure
		direct bool
		none   string
	}{
		{"3/4 NH male", "3/4 NH female swivel", 4 * bar, true, ""},
		{"3/4 NH male", "3/4 NH female swivel", 60 * bar, false, "the flat washer in the coupling holds 8.62 bar"},
		{"19 mm barb", "19 mm bore", 6 * bar, true, ""},
		{"19 mm barb", "19 mm bore", 60 * bar, false, "hose clamp holds 13.8 bar"},
		{"3/4 NPS male", "3/4 NPS female", 60 * bar, false, "bedding compound holds 3 bar"},
		{"1/2 NPT male", "1/2 NPT female", 60 * bar, true, ""},
		{"3/4 NH male", "3/4 NPT male", 20 * bar, false, "but the flat washer in the coupling holds 8.62 bar"},
	} {
		got := repair.Adapt(end(t, c.a), end(t, c.b), repair.Options{Pressure: c.p})
		require.Equal(t, c.direct, got.Direct != nil, "%s with %s at %s", c.a, c.b, c.p)
		require.Empty(t, got.Chains)
		require.Contains(t, got.None, c.none)
		require.Equal(t, []string{"no water is given, so whether the materials bear it was not looked at"}, got.Assumed)
	}
}

// Below the waterline the water is the sea's where nothing else is said: no brass there.
func TestBelowIsSeaWater(t *testing.T) {
	got := repair.Adapt(end(t, "G 1 1/2 male"), end(t, "1 1/4 NPT male"), repair.Options{Pressure: 5 * bar, Below: true, Count: repair.MostShown})
	require.NotEmpty(t, got.Chains)
	for i := range got.Chains {
		require.NotEqual(t, "brass", got.Chains[i].Pieces[0].Material)
	}
	require.Contains(t, got.Assumed[0], "taken for sea water")
	got = repair.Adapt(end(t, "G 1 1/2 male"), end(t, "1 1/4 NPT male"), repair.Options{Pressure: 5 * bar, Below: true, Water: "product"})
	require.Empty(t, got.Assumed)
}

// Below the waterline a tail of metal comes before one of plastic, which is cautioned, and two clamps are asked for.
func TestTailsBelowTheWaterline(t *testing.T) {
	got := repair.Adapt(end(t, "1 NPT female"), end(t, "25 mm bore"), repair.Options{Pressure: 6 * bar, Water: "sea", Below: true, Count: repair.MostShown})
	require.NotEmpty(t, got.Chains)
	plastic := false
	for i := range got.Chains {
		c := &got.Chains[i]
		is := strings.Contains(c.Pieces[0].Title, "lastic")
		require.False(t, plastic && !is, "metal behind plastic")
		plastic = is
		require.Equal(t, is, strings.Contains(strings.Join(c.Cautions, " "), "plastic below the waterline"), c.Pieces[0].Title)
		require.Contains(t, strings.Join(c.Notes, " "), "two clamps")
	}
	require.False(t, strings.Contains(got.Chains[0].Pieces[0].Title, "lastic"))
	above := repair.Adapt(end(t, "1 NPT female"), end(t, "25 mm bore"), repair.Options{Pressure: 6 * bar, Water: "sea"})
	require.Empty(t, above.Chains[0].Cautions)
}
