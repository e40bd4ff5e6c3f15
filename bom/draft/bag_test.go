package draft_test

import (
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/draft"
	"handtight/bom/rule"
	"handtight/catalog"
	"handtight/catalog/stock"
	"handtight/threads"
)

// bagLine is one line of a bag made for a test.
type bagLine struct {
	n    int
	text string
}

// listOf makes a list of lines.
func listOf(t testing.TB, lines []bagLine) *cart.Cart {
	var b strings.Builder
	w := csv.NewWriter(&b)
	require.NoError(t, w.Write([]string{"Quantity", "Description"}))
	for _, l := range lines {
		require.NoError(t, w.Write([]string{fmt.Sprint(l.n), l.text}))
	}
	w.Flush()
	c, err := cart.Read("bag.csv", []byte(b.String()), cart.Options{})
	require.NoError(t, err)
	return c
}

// small is the least plant with a place for each sort of piece. Its shop and figures are
// invented.
var small = []bagLine{
	{1, "Seacock bronze, 19 mm barb, PN16"},
	{1, "Basket strainer bronze, G 3/4 female x G 3/4 female, 6 bar"},
	{2, "Hose tail G 3/4 male x 19 mm barb, bronze, PN16"},
	{1, "Filter housing 5 micron, 3/4 NPT female x 3/4 NPT female, polypropylene, 8 bar"},
	{2, "Hose tail 3/4 NPT male x 19 mm barb, polypropylene, PN10"},
	{1, "Hose tail 1/2 NPT male x 19 mm barb, 316, PN16"},
	{1, "Plunger pump, 1/2 NPT female x 3/8 NPT female, 316, 7 L/min, 24 V, rated 110 bar"},
	{1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000"},
	{2, "Hose SAE 100R8 3/8\", 1 m, 3/8 NPT male x 9/16-18 JIC female swivel, nylon core, 316 ends"},
	{2, "Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar"},
	{1, "Pressure vessel 2.5 x 21, 1/2 NPT female x 1/2 NPT female x 1/4 NPT female, 83 bar"},
	{1, "Membrane element, sea water, 2.5 x 21"},
	{1, "Needle valve 3/8 NPT female x 3/8 NPT female, 316, 200 bar"},
	{1, "Relief valve 1/4 NPT male x 3/8 NPT female, 316, set at 64 bar, 12 L/min, rated 140 bar"},
	{2, "Hose tail 3/8 NPT male x 13 mm barb, 316, PN40"},
	{2, "Skin fitting bronze, 13 mm barb, 10 bar"},
	{6, "Suction hose 19 mm, per metre, 6 bar"},
	{4, "Water hose 13 mm, per metre, 10 bar"},
	{1, "Elbow 1/4 NPT male x 10 mm push-in, acetal, 10 bar"},
	{3, "Tube 10 mm outside, push-in, per metre, 10 bar"},
	{20, "Hose clamp for 19 mm"},
	{12, "Hose clamp for 13 mm"},
	{4, "Bonded washer G 3/4"},
	{2, "PTFE tape 12 mm x 12 m"},
}

func drafted(t testing.TB, lines []bagLine) *draft.Draft {
	d, err := draft.Of([]*cart.Cart{listOf(t, lines)}, draft.Options{})
	require.NoError(t, err)
	return d
}

// pieces lists what is missing that is no role.
func pieces(d *draft.Draft) []draft.Missing {
	return slices.DeleteFunc(slices.Clone(d.Missing), func(m draft.Missing) bool { return m.Role || m.Count })
}

func TestTheSmallBagIsWhole(t *testing.T) {
	d := drafted(t, small)
	require.Empty(t, pieces(d))
	require.Empty(t, d.Misfits)
	require.Empty(t, d.Left)
	require.Equal(t, d.Joints, d.Made)
	require.True(t, d.Proven)
	for _, m := range d.Missing {
		require.True(t, m.Role, m.What)
	}
	few := drafted(t, slices.DeleteFunc(slices.Clone(small), func(l bagLine) bool {
		return strings.HasPrefix(l.text, "Bonded") || strings.HasPrefix(l.text, "Hose clamp for 13")
	}))
	counted := slices.DeleteFunc(few.Missing, func(m draft.Missing) bool { return !m.Count })
	require.Len(t, counted, 2, "clamps and washers by count: %+v", counted)
	_, faults := bom.Walk(d.Build)
	require.Empty(t, faults)
}

// One fitting out of the bag, and exactly its place is missing.
func TestOneFittingOut(t *testing.T) {
	whole := drafted(t, small)
	for i, l := range small {
		fitting := strings.HasPrefix(l.text, "Hose tail") || strings.HasPrefix(l.text, "Adaptor") || strings.HasPrefix(l.text, "Tee") || strings.HasPrefix(l.text, "Elbow") || strings.HasPrefix(l.text, "Hose SAE")
		if !fitting {
			continue
		}
		bag := slices.Clone(small)
		if bag[i].n--; bag[i].n == 0 {
			bag = slices.Delete(bag, i, i+1)
		}
		d := drafted(t, bag)
		places := map[string]bool{}
		for _, m := range pieces(d) {
			places[m.Where] = true
		}
		require.Len(t, places, 1, "%s: %+v", l.text, pieces(d))
		require.Less(t, d.Made, whole.Joints, l.text)
		require.GreaterOrEqual(t, d.Made, whole.Joints-4, l.text)
		require.True(t, d.Proven)
		_, faults := bom.Walk(d.Build)
		require.Empty(t, faults, l.text)
	}
}

// A wrong one in its place: it is left over with the reason or without, or a check stops there.
func TestOneFittingWrong(t *testing.T) {
	for _, swap := range [][2]string{
		{"Hose tail 1/2 NPT male x 19 mm barb, 316, PN16", "Hose tail G 1/2 male x 19 mm barb, 316, PN16"},
		{"Hose tail 1/2 NPT male x 19 mm barb, 316, PN16", "Hose tail 1/2 NPT male x 16 mm barb, 316, PN16"},
		{"Hose tail 1/2 NPT male x 19 mm barb, 316, PN16", "Hose tail 1/2 NPT female x 19 mm barb, 316, PN16"},
		{"Hose tail 1/2 NPT male x 19 mm barb, 316, PN16", "Hose tail 1/2 NPT male x 19 mm barb, galvanised steel, PN16"},
		{"Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000", "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, rated 10 bar"},
		{"Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000", "Tee 3/8 NPT male x 3/8 NPT female x 1/8 NPT female, 316, class 3000"},
		{"Elbow 1/4 NPT male x 10 mm push-in, acetal, 10 bar", "Elbow G 1/4 male x 10 mm push-in, acetal, 10 bar"},
	} {
		bag := slices.Clone(small)
		i := slices.IndexFunc(bag, func(l bagLine) bool { return l.text == swap[0] })
		bag[i].text = swap[1]
		d := drafted(t, bag)
		place := fmt.Sprintf("bag.csv line %d", i+2)
		aside := slices.ContainsFunc(d.Misfits, func(m draft.Misfit) bool { return m.Where == place }) || slices.ContainsFunc(d.Left, func(l draft.Left) bool { return l.Where == place })
		if !aside {
			sys, faults := bom.Walk(d.Build)
			require.Empty(t, faults)
			p := d.Parts[i]
			for _, f := range rule.Check(sys) {
				if strings.Contains(f.Subject.String()+f.Reason, p.ID) && f.Severity.String() != "note" {
					aside = true
				}
			}
		}
		require.True(t, aside, "%s was taken as it is", swap[1])
	}
}

// Random bags: any part of the small bag, with strangers among it, is drafted without a fault;
// no line is lost, and no piece is in two places.
func TestRandomBags(t *testing.T) {
	items := stock.Items()
	for seed := range 12 {
		r := rand.New(rand.NewPCG(uint64(seed), 1))
		var bag []bagLine
		for _, l := range small {
			if r.IntN(5) > 0 {
				bag = append(bag, bagLine{max(1, l.n+r.IntN(3)-1), l.text})
			}
		}
		for range r.IntN(8) {
			bag = append(bag, bagLine{1 + r.IntN(3), items[r.IntN(len(items))].Title()})
		}
		bag = append(bag, bagLine{1, "Fishing line 0.3 mm"})
		d := drafted(t, bag)
		require.Equal(t, len(bag), d.Lines)
		if d.None != "" {
			continue
		}
		sys, faults := bom.Walk(d.Build)
		require.Empty(t, faults, "seed %d", seed)
		used := map[string]int{}
		for _, u := range sys.Graph.Units {
			used[u.Item.ID]++
		}
		for _, p := range d.Parts {
			require.Contains(t, string(d.Text), p.Where()+": ")
			if p.Aside == "" && !p.Kind.Loose {
				require.LessOrEqual(t, used[p.ID], p.Pieces, "seed %d: %s", seed, p.ID)
			}
		}
	}
}

// A cart of another trade is no plant, and two pumps are asked about.
func TestOtherTradesAndTwoPlants(t *testing.T) {
	d := drafted(t, []bagLine{{1, "Bilge pump 24 V"}, {2, "Hose tail 3/4 NPT male x 19 mm barb, brass"}, {1, "Gauge 0-10 bar 1/4 NPT male"}, {5, "Garden hose 19 mm, per metre"}})
	require.NotEmpty(t, d.None)
	require.Empty(t, d.Text)

	for _, name := range []string{"shops", "standing"} { // the sea side alone, and a tap: no plants
		d, err := draft.Of(shopLists(t, load(t, "../../testdata/"+name+"/build.toml"), "en"), draft.Options{})
		require.NoError(t, err)
		require.Contains(t, d.None, "are its signs; of what a plant has beside them the lists hold ", name)
	}

	two := slices.Clone(small)
	for i := range two {
		two[i].n *= 2
	}
	d = drafted(t, two)
	require.Empty(t, d.None)
	i := slices.IndexFunc(d.Questions, func(q draft.Question) bool { return q.Key == "plants" })
	require.GreaterOrEqual(t, i, 0)
	require.Equal(t, "more", d.Questions[i].Default)
	require.Equal(t, "throttle two", d.Plant)
	require.Contains(t, d.Others, "throttle series", "one plant, its vessels one behind the other")
	sys, faults := bom.Walk(d.Build)
	require.Empty(t, faults)
	for _, p := range d.Parts {
		if p.Kind != nil && p.Kind.Is(catalog.DrivesHigh|catalog.Separates|catalog.Throttles|catalog.Relieves) {
			n := 0
			for _, u := range sys.Graph.Units {
				n += map[bool]int{true: 1}[u.Item.ID == p.ID]
			}
			require.Equal(t, 2, n, "both have a place: %s", p.ID)
		}
	}
	require.Empty(t, pieces(d))
	one, err := draft.Of([]*cart.Cart{listOf(t, two)}, draft.Options{Answers: map[string]string{"plants": "one"}})
	require.NoError(t, err)
	require.NotContains(t, one.Plant, "two")
}

// What stops in a careless build is never joined as if it were well: its joint is not in the
// draft, or a check of the draft finds it again.
func TestCarelessJointsAreNotCleared(t *testing.T) {
	if testing.Short() {
		t.Skip("many lists, one after the other: in the full run")
	}
	sys := load(t, "../../testdata/careless/build.toml")
	for _, language := range []string{"en"} {
		_, got, _, _ := again(t, sys, language)
		bad := map[string]bool{}
		for _, j := range sys.Graph.Joints {
			if v := j.Mating.Verdict; j.Known && !v.Holds() && v != threads.LowPressureOnly {
				a, b := side(sys, j.A), side(sys, j.B)
				bad[min(a, b)+" = "+max(a, b)] = true
			}
		}
		require.Greater(t, len(bad), 8)
		for _, j := range got.Graph.Joints {
			a, b := side(got, j.A), side(got, j.B)
			if bad[min(a, b)+" = "+max(a, b)] {
				require.False(t, j.Known && j.Mating.Verdict.Holds(), "%s = %s", a, b)
			}
		}
	}
}

// The example lists give a build that a check stops nowhere.
func TestTheExampleIsAPlant(t *testing.T) {
	var carts []*cart.Cart
	for _, name := range []string{"kontor.csv", "quay.csv"} {
		data, err := os.ReadFile("../../testdata/draft/" + name)
		require.NoError(t, err)
		c, err := draft.ReadList(name, data, cart.Options{})
		require.NoError(t, err)
		carts = append(carts, c)
	}
	d, err := draft.Of(carts, draft.Options{})
	require.NoError(t, err)
	o := draft.Options{Answers: d.Defaults()}
	d, err = draft.Of(carts, o)
	require.NoError(t, err)
	sys, faults := bom.Walk(d.Build)
	require.Empty(t, faults)
	for _, f := range rule.Check(sys) {
		require.NotEqual(t, "stop", f.Severity.String(), "%s %s: %s", f.Slug, f.Subject, f.Reason)
	}
	require.Len(t, pieces(d), 1)
	require.Len(t, d.Misfits, 1)
}

// Plain lines are a list too.
func TestPlainLines(t *testing.T) {
	var text strings.Builder
	for i, l := range small {
		if i%2 == 0 {
			fmt.Fprintf(&text, "%d %s\n", l.n, l.text)
		} else {
			fmt.Fprintf(&text, "%d x %s\n\n", l.n, l.text)
		}
	}
	c, err := draft.ReadList("list", []byte(text.String()), cart.Options{})
	require.NoError(t, err)
	require.Len(t, c.Lines, len(small))
	d, err := draft.Of([]*cart.Cart{c}, draft.Options{})
	require.NoError(t, err)
	require.Empty(t, d.None)
	require.Equal(t, d.Joints, d.Made)
}

// bigBag is a bag of many lines: the small one, and fittings of the stock among it.
func bigBag(lines int) []bagLine {
	items := stock.Items()
	r := rand.New(rand.NewPCG(7, 7))
	bag := slices.Clone(small)
	for len(bag) < lines {
		bag = append(bag, bagLine{1 + r.IntN(3), items[r.IntN(len(items))].Title()})
	}
	return bag
}

func BenchmarkDraft60(b *testing.B)  { benchmarkDraft(b, 60) }
func BenchmarkDraft300(b *testing.B) { benchmarkDraft(b, 300) }

func benchmarkDraft(b *testing.B, lines int) {
	c := []*cart.Cart{listOf(b, bigBag(lines))}
	b.ReportAllocs()
	for b.Loop() {
		d, err := draft.Of(c, draft.Options{})
		require.NoError(b, err)
		b.ReportMetric(float64(len(d.Missing)), "missing")
		b.ReportMetric(map[bool]float64{true: 1}[d.Proven], "proven")
	}
}
