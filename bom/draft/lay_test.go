package draft_test

import (
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/draft"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/bom/rule"
)

func walkedText(t testing.TB, text []byte) *bom.System {
	b, faults := read.Parse("build.toml", text)
	require.Empty(t, faults)
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	return sys
}

func stopsOf(sys *bom.System) int { return finding.Count(rule.Check(sys), finding.Stop) }

// outAndBack drafts lists without one piece, brings that piece by a later list, and counts the
// joints that are as in the draft of the whole.
func outAndBack(t *testing.T, carts []*cart.Cart, whole map[string]int, stops, k, i int) (same, all int, missing bool) {
	less := make([]*cart.Cart, len(carts))
	for n, c := range carts {
		copied := *c
		copied.Lines = slices.Clone(c.Lines)
		less[n] = &copied
	}
	brought := *carts[k]
	brought.Name = "later.csv"
	line := less[k].Lines[i]
	line.Cart = brought.Name
	brought.Lines = []cart.Line{line}
	less[k].Lines = slices.Delete(less[k].Lines, i, i+1)
	d, err := draft.Of(less, draft.Options{})
	require.NoError(t, err)
	if d.None != "" || len(pieces(d)) == 0 {
		return 0, 0, false
	}
	sys := walkedText(t, d.Text)
	a, err := draft.Into(sys, d.Text, []*cart.Cart{&brought})
	require.NoError(t, err)
	if a.Text == nil {
		t.Logf("%s: nothing is added", line.Text)
		return 0, 1, true
	}
	next := walkedText(t, a.Text)
	require.LessOrEqual(t, stopsOf(next), max(stopsOf(sys), stops), line.Text)
	same, all = shared(whole, jointsOf(next))
	if same < all {
		t.Logf("%s: %d of %d; fills %v, new %v, doubles %v, wrong %v, aside %v", line.Text, same, all, a.Fills, a.New, a.Doubles, a.Wrong, a.Aside)
	}
	return same, all, true
}

// Each line of a plant's lists that leaves a place of it missing a piece is taken out, and
// brought by a later list: no stop comes of it, and the build is as if it had been there from the
// start where nothing else was drafted another way without it. First figures: 6 of 20 lines, then 11,
// now 17. Otherwise are a throttle (laid, but its hose and its gauge's tee serve elsewhere by then), the
// product's hose (its probe had no line to hang on) and the vessel (everything hangs on it).
func TestEachPieceLater(t *testing.T) {
	if testing.Short() {
		t.Skip("drafts a plant as often as it has lines")
	}
	sys := load(t, "../../testdata/engine/build.toml")
	carts := shopLists(t, sys, "en")
	d, err := draft.Of(carts, draft.Options{})
	require.NoError(t, err)
	all := walkedText(t, d.Text)
	whole, stops := jointsOf(all), stopsOf(all)
	back, cases := 0, 0
	for k, c := range carts {
		for i := range c.Lines {
			if same, all, ok := outAndBack(t, carts, whole, stops, k, i); ok {
				cases++
				back += map[bool]int{true: 1}[same == all]
			}
		}
	}
	t.Logf("%d of %d lines came back whole", back, cases)
	require.GreaterOrEqual(t, back*20, cases*17)
}

// laterCase is a build, a later list, and what must come of it.
type laterCase struct {
	name  string
	out   []string // lines of the small bag that the first list lacks, by how they begin
	later []bagLine
	fills int    // lines that find a place
	more  int    // joints beside those that stood
	holds string // what the text then has
	lacks string // and no longer has
}

var laterCases = []laterCase{
	{name: "the piece that was missing", out: []string{"Hose tail 1/2 NPT"}, later: []bagLine{{1, "Hose tail 1/2 NPT male x 19 mm barb, 316, PN16"}}, fills: 1, lacks: "buy Hose tail"},
	{name: "the same of another metal", out: []string{"Hose tail 1/2 NPT"}, later: []bagLine{{1, "Hose tail 1/2 NPT male x 19 mm barb, bronze, PN16"}}, fills: 1, lacks: "buy Hose tail"},
	{name: "of a metal that sea water eats", out: []string{"Hose tail 1/2 NPT"}, later: []bagLine{{1, "Hose tail 1/2 NPT male x 19 mm barb, galvanised steel, PN16"}}, fills: 0},
	{name: "of another thread", out: []string{"Hose tail 1/2 NPT"}, later: []bagLine{{1, "Hose tail M22x1.5 male x 19 mm barb, 316, PN16"}}, fills: 0},
	{name: "an elbow to the tank", out: []string{"Elbow"}, later: []bagLine{{1, "Elbow 1/4 NPT male x 10 mm push-in, acetal, 10 bar"}}, fills: 1},
	{name: "a gauge on a tee", later: []bagLine{{1, "Gauge 0-100 bar, 1/4 NPT male, 316, rated 100 bar"}, {1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000"}}, fills: 2, more: 2, holds: "gauge at "},
	{name: "a gauge on a tee with its nipple", later: []bagLine{{1, "Gauge 0-100 bar, 1/4 NPT male, 316, rated 100 bar"}, {1, "Tee 3/8 NPT male x 3/8 NPT female x 3/8 NPT female, 316, class 3000"}, {1, "Adaptor 3/8 NPT male x 1/4 NPT female, 316, class 3000"}}, fills: 3, more: 3, holds: "gauge at "},
	{name: "a gauge without a tee", later: []bagLine{{1, "Gauge 0-100 bar, 1/4 NPT male, 316, rated 100 bar"}}, fills: 0},
	{name: "a relief on a tee", out: []string{"Relief", "Tee"}, later: []bagLine{{1, "Relief valve 1/4 NPT male x 3/8 NPT female, 316, set at 64 bar, 12 L/min, rated 140 bar"}, {1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000"}}, fills: 2, holds: "relief-outlet"},
	{name: "a relief on a tee too weak", out: []string{"Relief", "Tee"}, later: []bagLine{{1, "Relief valve 1/4 NPT male x 3/8 NPT female, 316, set at 64 bar, 12 L/min, rated 140 bar"}, {1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, rated 10 bar"}}, fills: 0},
	{name: "a coupling that no place takes", later: []bagLine{{1, "Coupling G 2 female x G 2 female, bronze"}}, fills: 0},
	{name: "the hose for high pressure", out: []string{"Hose SAE"}, later: []bagLine{{2, `Hose SAE 100R8 3/8", 1 m, 3/8 NPT male x 9/16-18 JIC female swivel, nylon core, 316 ends`}}, fills: 1},

	// the second lot
	{name: "a feed gauge on a tee of hose", later: []bagLine{{1, "Gauge 0-6 bar, 1/4 NPT male, bronze, rated 6 bar"}, {1, "Tee 19 mm barb x 19 mm barb x 1/4 NPT female, bronze, 10 bar"}}, fills: 2, more: 3, holds: "gauge at tee-19-19-npt14f.branch"},
	{name: "a gauge to 100 bar with a tee for the feed", later: []bagLine{{1, "Gauge 0-100 bar, 1/4 NPT male, 316, rated 100 bar"}, {1, "Tee 19 mm barb x 19 mm barb x 1/4 NPT female, bronze, 10 bar"}}, fills: 0},
	{name: "a gauge to 6 bar with a tee for the pressure side", later: []bagLine{{1, "Gauge 0-6 bar, 1/4 NPT male, 316, rated 6 bar"}, {1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000"}}, fills: 1}, // the tee buys the build's own
	{name: "a flush line", later: []bagLine{{1, "Carbon filter 10 inch, 1/2 NPT female x 1/2 NPT female, polypropylene, 8 bar"}, {1, "Solenoid valve 24 V, 1/2 NPT female x 1/2 NPT female, bronze, 10 bar, shut without current"},
		{1, "Check valve 1/2 NPT female x 1/2 NPT female, bronze, 10 bar"}, {1, "Tee 19 mm barb x 19 mm barb x 1/2 NPT female, bronze, 10 bar"}, {3, "Nipple 1/2 NPT male x 1/2 NPT male, bronze, 16 bar"},
		{1, "Hose tail 1/2 NPT male x 13 mm barb, bronze, PN16"}, {1, "Hose tail G 1/2 female swivel flat seat x 13 mm barb, bronze, PN16"}}, fills: 7, holds: "\"flush\""},
	{name: "a flush line without its tee", later: []bagLine{{1, "Carbon filter 10 inch, 1/2 NPT female x 1/2 NPT female, polypropylene, 8 bar"}, {1, "Solenoid valve 24 V, 1/2 NPT female x 1/2 NPT female, bronze, 10 bar, shut without current"},
		{2, "Nipple 1/2 NPT male x 1/2 NPT male, bronze, 16 bar"}}, fills: 0},
	{name: "a relief with its way overboard", out: []string{"Relief", "Tee", "Hose tail 3/8", "Skin"}, later: []bagLine{{1, "Relief valve 1/4 NPT male x 3/8 NPT female, 316, set at 64 bar, 12 L/min, rated 140 bar"},
		{1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000"}, {2, "Hose tail 3/8 NPT male x 13 mm barb, 316, PN40"}, {2, "Skin fitting 13 mm barb, bronze, 10 bar"}}, fills: 4, holds: "relief valve at "},
	{name: "the tee that was missing", out: []string{"Tee"}, later: []bagLine{{1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, class 3000"}}, fills: 1, lacks: "buy tee"},
	{name: "a tee of other ends for the one that was missing", out: []string{"Tee"}, later: []bagLine{{1, "Tee 3/8 NPT male x 3/8 NPT female x 3/8 NPT female, 316, class 3000"}, {1, "Bush 3/8 NPT male x 1/4 NPT female, 316, class 3000"}}, fills: 2, lacks: "buy tee"},
	{name: "a tee that is too weak for the one that was missing", out: []string{"Tee"}, later: []bagLine{{1, "Tee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, rated 10 bar"}}, fills: 0},
	{name: "a probe on its tee", later: []bagLine{{1, "Salinity probe 1/4 NPT male, drinking water, 8 bar"}, {1, "Tee 10 mm push-in x 10 mm push-in x 1/4 NPT female, acetal, drinking water, 10 bar"}}, fills: 2, more: 3, holds: "salinity probe at "},
	{name: "a meter in the tube", later: []bagLine{{1, "Flow meter 6 to 75 L/h, 10 mm push-in x 10 mm push-in, 8 bar"}}, fills: 1, more: 2},
	{name: "a feed gauge beside the one for the pressure side", later: []bagLine{{1, "Gauge 0-6 bar, 1/4 NPT male, bronze, rated 6 bar"}, {1, "Tee 19 mm barb x 19 mm barb x 1/4 NPT female, bronze, 10 bar"}, {1, "Gauge 0-100 bar, 1/4 NPT male, 316, rated 100 bar"}, {1, "Tee 3/8 NPT male x 3/8 NPT female x 3/8 NPT female, 316, class 3000"}, {1, "Adaptor 3/8 NPT male x 1/4 NPT female, 316, class 3000"}}, fills: 5, more: 6},
	{name: "a second vessel in the row", later: []bagLine{{1, "Pressure vessel 2.5 x 21, 1/2 NPT female x 1/2 NPT female x 1/4 NPT female, 83 bar"}, {1, "Membrane element, sea water, 2.5 x 21"},
		{1, "Hose SAE 100R8 3/8\", 0.5 m, 9/16-18 JIC female swivel x 9/16-18 JIC female swivel, nylon core, 316 ends"}, {2, "Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar"},
		{1, "Elbow 1/4 NPT male x 10 mm push-in, acetal, 10 bar"}, {1, "Tee 10 mm push-in x 10 mm push-in x 10 mm push-in, acetal, drinking water, 10 bar"}}, fills: 6, holds: "vessel/2"},
}

// The cases and their answers were written before the program saw them. First figures: 7 of the
// first 12, for the build's own pieces that were left over were not taken, nor lines that are like a
// part of the build and are for another place; 9 of the other
// 12: a gauge for the feed stood behind the relief, a tee that gives way was not found, and nothing
// lays a second vessel; one answer was counted wrong, for its tee buys the build's own.
func TestLaterLists(t *testing.T) {
	if testing.Short() {
		t.Skip("many lists, one after the other: in the full run")
	}
	good := 0
	for _, c := range laterCases {
		bag := slices.DeleteFunc(slices.Clone(small), func(l bagLine) bool {
			return slices.ContainsFunc(c.out, func(o string) bool { return strings.HasPrefix(l.text, o) })
		})
		d := drafted(t, bag)
		require.Empty(t, d.None, c.name)
		sys := walkedText(t, d.Text)
		a, err := draft.Into(sys, d.Text, []*cart.Cart{listOf(t, c.later)})
		require.NoError(t, err)
		next := walkedText(t, a.Text)
		text := string(a.Text)
		ok := len(a.Fills) == c.fills && (c.more == 0 || len(next.Graph.Joints) == len(sys.Graph.Joints)+c.more) && stopsOf(next) <= stopsOf(sys) &&
			strings.Contains(text, c.holds) && (c.lacks == "" || !strings.Contains(strings.ReplaceAll(text, "\n#  ", ""), c.lacks))
		if ok {
			good++
			continue
		}
		{
			t.Errorf("%s: fills %v, new %v, wrong %v, doubles %v, joints %d to %d, stops %d to %d", c.name, a.Fills, a.New, a.Wrong, a.Doubles, len(sys.Graph.Joints), len(next.Graph.Joints), stopsOf(sys), stopsOf(next))
		}
	}
	t.Logf("%d of %d", good, len(laterCases))
}

// A later list with a second vessel, of a plant whose first has an offer: the vessel stands behind
// the first with its product in the tube, its element is bought with it, and the check finds no
// further stop. A list that brings a pump too is another offer of the plant: no vessel is laid.
func TestSecondVessel(t *testing.T) {
	var first strings.Builder
	first.WriteString("Code;Description;Qty;Price EUR\n")
	for i, l := range small {
		fmt.Fprintf(&first, "A-%d;\"%s\";%d;10,00\n", i, strings.ReplaceAll(l.text, `"`, `""`), l.n)
	}
	c, err := cart.Read("first.csv", []byte(first.String()), cart.Options{})
	require.NoError(t, err)
	d, err := draft.Of([]*cart.Cart{c}, draft.Options{})
	require.NoError(t, err)
	sys := walkedText(t, d.Text)
	second := "Code;Description;Qty;Price EUR\n" +
		"V-1;\"Pressure vessel 2.5 x 21, 1/2 NPT female x 1/2 NPT female x 1/4 NPT female, 83 bar\";1;380,00\n" +
		"E-1;\"Membrane element, sea water, 2.5 x 21\";1;240,00\n" +
		"H-1;\"Hose SAE 100R8 3/8\"\", 0.5 m, 9/16-18 JIC female swivel x 9/16-18 JIC female swivel, nylon core, 316 ends\";1;48,00\n" +
		"A-1;\"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar\";2;11,00\n" +
		"B-1;\"Elbow 1/4 NPT male x 10 mm push-in, acetal, 10 bar\";1;4,00\n" +
		"T-1;\"Tee 10 mm push-in x 10 mm push-in x 10 mm push-in, acetal, drinking water, 10 bar\";1;5,00\n"
	c, err = cart.Read("second.csv", []byte(second), cart.Options{})
	require.NoError(t, err)
	a, err := draft.Into(sys, d.Text, []*cart.Cart{c})
	require.NoError(t, err)
	next := walkedText(t, a.Text)
	require.LessOrEqual(t, stopsOf(next), stopsOf(sys), "%v", a)
	require.Contains(t, string(a.Text), `"vessel/2.feed>brine"`)
	needs, err := next.Needs()
	require.NoError(t, err)
	for _, n := range needs {
		if n.Key == "element" || n.Key == "vessel" {
			require.Equal(t, "2", n.Build().String(), n.Key)
		}
	}
	offered := 0
	for _, o := range next.Build.Offers {
		if o.Vendor.ID == "second" {
			offered++
		}
	}
	require.Equal(t, 6, offered)

	c, err = cart.Read("second.csv", []byte(second+"P-1;\"Plunger pump, 1/2 NPT female x 3/8 NPT female, 316, 7 L/min, 24 V, rated 110 bar\";1;900,00\n"), cart.Options{})
	require.NoError(t, err)
	a, err = draft.Into(sys, d.Text, []*cart.Cart{c})
	require.NoError(t, err)
	require.NotContains(t, string(a.Text), "vessel/2")
}

// What a check stops at is told of the whole that comes out: a selector whose second way gets its drain
// right after shuts nothing.
func TestWhatIsLaidIsToldOfTheWhole(t *testing.T) {
	base := draftOf(t, "testdata/blind5/d.csv", nil)
	later, err := draft.ReadList("later.csv", []byte("Code,Description,Quantity,GBP each\nZ1,\"Three-way selector valve 8 mm push-in x 3, acetal, drinking water, 10 bar, both ways open between\",1,31.00\n"), cart.Options{})
	require.NoError(t, err)
	a, err := draft.Into(walkedText(t, base.Text), base.Text, []*cart.Cart{later})
	require.NoError(t, err)
	require.Contains(t, string(a.Text), `path = ["selector.b", "stock-8-2", "drain.in"]`)
	require.Zero(t, stopsOf(walkedText(t, a.Text)))
	require.NotContains(t, string(a.Text), "a check stops at it")
}
