package cart_test

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/money"
	"handtight/bom/order"
)

const samples = "../../testdata/carts"

// plant gives the clean example, walked and ordered.
func plant(t require.TestingT) (*bom.System, *order.Order) {
	return cart.Walked(t, "../../testdata/clean/build.toml")
}

func sample(t require.TestingT, name string) *cart.Cart {
	data, err := os.ReadFile(filepath.Join(samples, name))
	require.NoError(t, err)
	c, err := cart.Read(name, data, cart.Options{})
	require.NoError(t, err)
	return c
}

func text(t require.TestingT, name, data string) *cart.Cart {
	c, err := cart.Read(name, []byte(data), cart.Options{})
	require.NoError(t, err)
	return c
}

func tally(t require.TestingT, r *cart.Report, item string) *cart.Tally {
	for _, x := range r.Items {
		if x.Item == item {
			return x
		}
	}
	require.Fail(t, "no item "+item)
	return nil
}

// The three carts of the clean example buy it, in German, British and American ways.
func TestTheCleanCartsBuildIt(t *testing.T) {
	sys, order := plant(t)
	r := cart.Judge(sys, order, []*cart.Cart{sample(t, "elbe.csv"), sample(t, "wharf.csv"), sample(t, "pier.xlsx")}, nil)
	require.True(t, r.Builds())
	for _, x := range r.Items {
		require.Equal(t, cart.Covered, x.Status, "%s: %s", x.Item, x.Reason)
	}
	for _, v := range r.Lines {
		require.Contains(t, []cart.Status{cart.Covers, cart.Out}, v.Status, "%s: %s", v.Line.Where(), v.Reason)
		require.Empty(t, v.Also, "%s: %s", v.Line.Where(), v.Reason)
	}
	require.Empty(t, r.Questions)
}

// Without codes the words alone must do; what they cannot is asked, and nothing is
// taken for something else.
func TestTheCleanCartsWithoutTheirCodes(t *testing.T) {
	sys, order := plant(t)
	codes := cart.Judge(sys, order, []*cart.Cart{sample(t, "elbe.csv"), sample(t, "wharf.csv"), sample(t, "pier.xlsx")}, nil)
	carts := []*cart.Cart{sample(t, "elbe.csv"), sample(t, "wharf.csv"), sample(t, "pier.xlsx")}
	for _, c := range carts {
		for i := range c.Lines {
			c.Lines[i].Code = ""
		}
	}
	r := cart.Judge(sys, order, carts, nil)
	sure := 0
	for i, v := range r.Lines {
		if slices.Contains([]cart.Status{cart.Covers, cart.OtherPrice, cart.Surplus}, v.Status) {
			sure++
			require.Equal(t, codes.Lines[i].Items[0], v.Items[0], "%s: %s", v.Line.Text, v.Reason)
			continue
		}
		require.Contains(t, []cart.Status{cart.Unsure, cart.Out, cart.NoEnd, cart.NotNeeded}, v.Status, "%s: %s", v.Line.Text, v.Reason)
	}
	require.GreaterOrEqual(t, sure, 42, "of 48 lines that buy something; the others are asked about")
}

// want is what a seeded fault must come to.
type want struct {
	status cart.Status
	item   string
	says   string
}

// The faults that testdata/carts/README.md lists, by row.
func TestSeededFaults(t *testing.T) {
	for name, rows := range map[string]map[int]want{
		"quai.csv": {
			5:  {cart.OtherPrice, "hp-gauge", "33.00 and not 31.20 EUR"},
			6:  {cart.Unsure, "hp-tee", "not all that its place needs"},
			7:  {cart.WrongThread, "jic-n12", "would spoil J24, jic-n12/+1.a - vessel.feed"},
			8:  {cart.WrongSex, "tail-n12", "both female"},
			9:  {cart.WrongMaterial, "tail-n38", "It is of brass"},
			10: {cart.Unsure, "tail-g34", "leave its ends open"},
			11: {cart.Surplus, "flush-check", "1 pc more than is needed"},
			12: {cart.NoEnd, "", "No end was found"},
			13: {cart.OtherPrice, "flush-valve", "49.90 and not 54.60 EUR"},
			14: {cart.NotNeeded, "", "reads as an elbow"},
			15: {cart.Out, "", "sum"},
		},
		"banchina.xlsx": {
			3:  {cart.OtherPrice, "tail-g34", "6.90 and not 6.35 EUR"},
			4:  {cart.Covers, "tail-n38", ""},
			5:  {cart.LowRating, "throttle", "holds 20 bar"},
			6:  {cart.Out, "", "quantity is 0"},
			7:  {cart.Out, "", "struck out"},
			8:  {cart.Covers, "flat gasket G 1/2", ""},
			9:  {cart.WrongSex, "jic-n12", "both female"},
			10: {cart.Covers, "clamp for 19 mm hose", ""},
			11: {cart.Surplus, "tape 12 mm", ""},
			12: {cart.Out, "", "hidden"},
		},
		"muelle.xlsx": {
			3: {cart.Covers, "tail-g34", ""},
			4: {cart.SumDiffers, "tail-n12", "1 x 9.1 is not the total 19.1"},
			5: {cart.WrongSize, "suction-hose", "its bore is 20 mm in place of 19 mm"},
			6: {cart.NotNeeded, "", "M22x1.5"},
		},
		"owner.csv": {
			2:  {cart.Surplus, "tail-n12-13", "1 pc more"},
			3:  {cart.Unsure, "jic-n12", ""},
			4:  {cart.Covers, "suction-hose", ""},
			5:  {cart.Covers, "bonded washer G 3/4", "1 packs of 10"},
			6:  {cart.Out, "", "aboard"},
			7:  {cart.NotNeeded, "", ""},
			8:  {cart.NoEnd, "", ""},
			9:  {cart.Out, "", "quantity is 0"},
			10: {cart.LowRating, "throttle", "holds 6.895 bar"},
			11: {cart.NoEnd, "", ""},
			12: {cart.Surplus, "tail-n12-13", "1 pc more"},
		},
	} {
		t.Run(name, func(t *testing.T) {
			sys, order := plant(t)
			r := cart.Judge(sys, order, []*cart.Cart{sample(t, name)}, nil)
			require.Len(t, r.Lines, len(rows), "no line is dropped")
			require.False(t, r.Builds())
			for _, v := range r.Lines {
				w := rows[v.Line.Row]
				if w.status == cart.SumDiffers {
					require.Contains(t, append(v.Also, v.Status), w.status)
				} else {
					require.Equal(t, w.status, v.Status, "row %d: %s", v.Line.Row, v.Reason)
				}
				require.Equal(t, w.item, v.Item(), "row %d: %s", v.Line.Row, v.Reason)
				require.Contains(t, v.Reason, w.says, "row %d", v.Line.Row)
				if v.Status != cart.Covers {
					require.NotEmpty(t, v.Remedy, "row %d has no remedy", v.Line.Row)
				}
			}
		})
	}
}

func TestAWrongPartCoversNothingAndIsNamedWithTheRightOne(t *testing.T) {
	sys, order := plant(t)
	r := cart.Judge(sys, order, []*cart.Cart{sample(t, "quai.csv")}, nil)
	x := tally(t, r, "jic-n12")
	require.Equal(t, cart.Missing, x.Status)
	require.Contains(t, x.Remedy, "Order 3 pc")
	for _, v := range r.Lines {
		if v.Status == cart.WrongThread {
			require.Contains(t, v.Remedy, "1/2-14 NPT male")
			require.Contains(t, v.Remedy, "A-J6-N8", "the offer's code")
			require.Contains(t, v.Reason, "never seals")
		}
	}
}

func TestTwoCartsThatBuyTheSame(t *testing.T) {
	sys, order := plant(t)
	r := cart.Judge(sys, order, []*cart.Cart{sample(t, "elbe.csv"), sample(t, "muelle.xlsx")}, nil)
	twice := map[string]bool{}
	for _, v := range r.Lines {
		if v.Status == cart.BoughtTwice {
			require.Equal(t, "muelle.xlsx", v.Line.Cart, "the later one is named")
			require.Contains(t, v.Reason, "elbe.csv buys it too")
			twice[v.Item()] = true
		}
	}
	require.Equal(t, map[string]bool{"tail-g34": true, "tail-n12": true}, twice)
	require.Equal(t, cart.Surplus, tally(t, r, "tail-g34").Status)
}

// Half here and half there is no fault.
func TestTwoCartsMayShareWhatIsNeeded(t *testing.T) {
	sys, order := plant(t)
	a := text(t, "a.csv", "Code,Description,Qty\nHT-G34-19,Hose tail G 3/4 male x 19 mm bronze,2\n")
	b := text(t, "b.csv", "Code,Description,Qty\nHT-G34-19,Hose tail G 3/4 male x 19 mm bronze,1\n")
	r := cart.Judge(sys, order, []*cart.Cart{a, b}, nil)
	require.Equal(t, cart.Covered, tally(t, r, "tail-g34").Status)
	require.Zero(t, countOf(r, cart.BoughtTwice))
}

// tail-g34: 2 placed and 1 spare.
func TestSparesAreCounted(t *testing.T) {
	sys, order := plant(t)
	for n, want := range map[int]cart.Status{1: cart.Short, 2: cart.ShortOfSpares, 3: cart.Covered, 4: cart.Surplus} {
		c := text(t, "c.csv", fmt.Sprintf("Code,Qty\nHT-G34-19,%d\n", n))
		x := tally(t, cart.Judge(sys, order, []*cart.Cart{c}, nil), "tail-g34")
		require.Equal(t, want, x.Status, "%d in the cart: %s", n, x.Reason)
		require.Equal(t, "3", x.Need.String())
		require.Equal(t, "2", x.Build.String())
	}
}

func TestOneLineForItemsThatAreBoughtAlike(t *testing.T) {
	sys, order := plant(t)
	r := cart.Judge(sys, order, []*cart.Cart{text(t, "c.csv", "Code,Qty\nFH-10,2\n")}, nil)
	require.Equal(t, []string{"filter-25", "filter-5"}, r.Lines[0].Items)
	require.Equal(t, cart.Covered, tally(t, r, "filter-25").Status)
	require.Equal(t, cart.Covered, tally(t, r, "filter-5").Status)
	r = cart.Judge(sys, order, []*cart.Cart{text(t, "c.csv", "Code,Qty\nFH-10,3\n")}, nil)
	require.Equal(t, cart.Surplus, r.Lines[0].Status)
}

func TestCases(t *testing.T) {
	for why, row := range map[string]struct {
		line string // code, text, quantity, price
		want want
	}{
		"the code is right and the words are not":          {"HT-G34-19\tHose tail 3/4 NPT male x 19 mm, bronze\t3\t", want{cart.WrongThread, "tail-g34", "flanks"}},
		"the code is right, the words are of another part": {"HT-G34-19\tTee 1/4 NPT female\t3\t", want{cart.Unsure, "tail-g34", "its words are not"}},
		"a code in other letters":                          {"ht g34 19\tHose tail\t3\t", want{cart.Covers, "tail-g34", "the code is the offer's"}},
		"the build's own id":                               {"\ttail-g34\t3\t", want{cart.Covers, "tail-g34", "the line names"}},
		"rated below the pump's own pressure":              {"T3-38-14\tTee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, 316, PN 16\t1\t", want{cart.LowRating, "hp-tee", "sees 70 bar"}},
		"two faults are both said":                         {"T3-38-14\tTee 3/8 NPT male x 3/8 NPT female x 1/4 NPT female, brass, PN 16\t1\t", want{cart.LowRating, "hp-tee", "It is of brass"}},
		"stainless may be 316":                             {"\tNeedle valve 3/8 NPT female, stainless, 200 bar\t1\t", want{cart.Unsure, "throttle", "not all that its place needs"}},
		"304 is not 316":                                   {"\tNeedle valve 3/8 NPT female, 304, 200 bar\t1\t", want{cart.WrongMaterial, "throttle", "of 304"}},
		"a vacuum and a setting are no ratings":            {"SH-19\tSuction hose 19 mm, vacuum 0.9 bar, per metre\t5\t", want{cart.Covers, "suction-hose", ""}},
		"nor is what a pump shuts off at":                  {"FP-14-24\tFeed pump, 19 mm barbs, shut-off 2.5 bar\t2\t", want{cart.Covers, "feed-pump", ""}},
		"a rating beside a setting":                        {"RV-65\tRelief valve 1/4 NPT male x 3/8 NPT female, 316, set 65 bar, rated 20 bar\t2\t", want{cart.LowRating, "relief", "holds 20 bar"}},
		"a gauge of too short a scale":                     {"G100-63\tGauge 0-60 bar 1/4 NPT male\t1\t", want{cart.LowRating, "hp-gauge", "scale ends at 60 bar"}},
		"a barb in inches is the same barb":                {"\tHose tail 1/2 NPT male x 3/4 inch barb, 316\t1\t", want{cart.Covers, "tail-n12", ""}},
		"the hose of the other length":                     {"\tHose SAE 100R8 3/8\" 1.2 m, 3/8 NPT male x 9/16-18 JIC female swivel, 316 ends\t1\t", want{cart.Covers, "hp-hose-feed", "the same standard"}},
		"nothing of ours":                                  {"\tUnion M22x1.5 female, brass\t1\t", want{cart.NotNeeded, "", "nothing in the build is like it"}},
		"BSP without P or T is asked about":                {"\tHose tail 3/4 BSP male x 19 mm, bronze\t3\t", want{cart.Unsure, "tail-g34", "open"}},
		"a sex that is not said is asked about":            {"\tHose tail G 3/4 x 19 mm bronze\t3\t", want{cart.Unsure, "tail-g34", ""}},
		"a match without a quantity":                       {"HT-G34-19\tHose tail G 3/4 male x 19 mm\t\t", want{cart.NoQuantity, "tail-g34", "no quantity"}},
		"a price of nought is unknown":                     {"HT-G34-19\tHose tail G 3/4 male x 19 mm\t3\t0.00", want{cart.Covers, "tail-g34", ""}},
	} {
		t.Run(why, func(t *testing.T) {
			sys, order := plant(t)
			c, err := cart.Read("c.csv", []byte("Code\tDescription\tQty\tPrice\n"+row.line+"\n"), cart.Options{Currency: "EUR"})
			require.NoError(t, err)
			r := cart.Judge(sys, order, []*cart.Cart{c}, nil)
			v := r.Lines[0]
			require.Equal(t, row.want.status, v.Status, v.Reason)
			require.Equal(t, row.want.item, v.Item(), v.Reason)
			require.Contains(t, v.Reason, row.want.says)
		})
	}
}

// A seal kit is a spare and no part of what is placed: without it the build is built.
func TestSparesAloneDoNotStopTheBuilding(t *testing.T) {
	sys, order := plant(t)
	pier := sample(t, "pier.xlsx")
	pier.Lines = slices.DeleteFunc(pier.Lines, func(l cart.Line) bool { return l.Code == "TRX-SK" })
	r := cart.Judge(sys, order, []*cart.Cart{sample(t, "elbe.csv"), sample(t, "wharf.csv"), pier}, nil)
	require.Equal(t, cart.ShortOfSpares, tally(t, r, "seal-kit").Status)
	require.True(t, r.Builds())
}

// A wrong line beside the right one is to be taken out, and nothing more is to be ordered.
func TestAWrongLineBesideTheRightOne(t *testing.T) {
	sys, order := plant(t)
	for why, row := range map[string]struct {
		line   string
		status cart.Status
	}{
		"of another material":      {"Hose tail 3/8 NPT male x 13 mm barb, brass", cart.NotNeeded},
		"of another thread":        {"Hose tail R 3/8 male x 13 mm barb, 316", cart.NotNeeded},
		"of too low a rating (16)": {"Adaptor 1/2 NPT male x 9/16-18 JIC male, 316, PN 16", cart.LowRating},
	} {
		c := text(t, "c.csv", "Code\tDescription\tQty\n\t"+row.line+"\t3\nHT-N38-13\tHose tail 3/8 NPT male x 13 mm barb, 316\t3\nA-J6-N8\tAdaptor 1/2 NPT male x 9/16-18 JIC male, 316, 270 bar\t3\n")
		r := cart.Judge(sys, order, []*cart.Cart{c}, nil)
		require.Equal(t, row.status, r.Lines[0].Status, "%s: %s", why, r.Lines[0].Reason)
		require.NotContains(t, r.Lines[0].Remedy, "Order instead", why)
		require.Equal(t, cart.Covered, tally(t, r, "tail-n38").Status, why)
	}
}

// Where the build itself plans too weak a part, ordering that part is no remedy.
func TestAWeakPlanIsMendedFirst(t *testing.T) {
	sys, order := cart.Walked(t, "../../testdata/careless/build.toml")
	n := 0
	for _, l := range order.Lines {
		if l.Need.Item == nil || l.Need.Item.Rated == nil || l.Need.Load.Act <= *l.Need.Item.Rated || l.Need.Kind == "gauge" {
			continue
		}
		c := text(t, "c.csv", fmt.Sprintf("Item id\tDescription\tQty\n%s\t%s, %g bar\t1\n", l.Need.Key, l.Need.Kind, l.Need.Item.Rated.Bar()))
		v := cart.Judge(sys, order, []*cart.Cart{c}, nil).Lines[0]
		require.Equal(t, cart.LowRating, v.Status, "%s: %s", l.Need.Key, v.Reason)
		require.Contains(t, v.Remedy, "mend the build first")
		n++
	}
	require.NotZero(t, n, "the careless build has a part that is too weak")
}

// Every question has a line, and an unsure line is always asked about.
func TestUnsureLinesAreAsked(t *testing.T) {
	sys, order := plant(t)
	for _, name := range []string{"quai.csv", "banchina.xlsx", "muelle.xlsx", "owner.csv"} {
		r := cart.Judge(sys, order, []*cart.Cart{sample(t, name)}, nil)
		for _, v := range r.Lines {
			if v.Status != cart.Unsure && v.Status != cart.NoQuantity {
				continue
			}
			require.True(t, slices.ContainsFunc(r.Questions, func(q cart.Question) bool { return q.Line == v.Line.Row }), "%s: nobody asks", v.Line.Where())
			require.NotEqual(t, cart.Covered, tally(t, r, v.Item()).Status, "what is unsure covers nothing")
		}
		for i := 1; i < len(r.Questions); i++ {
			require.LessOrEqual(t, r.Questions[i].Settles, r.Questions[i-1].Settles, "those that settle most first")
		}
	}
}

// The order of the lines does not matter to what is covered, and the same carts say
// the same.
func TestTheOrderOfLinesDoesNotMatter(t *testing.T) {
	sys, order := plant(t)
	rapid.Check(t, func(rt *rapid.T) {
		c := sample(rt, rapid.SampledFrom([]string{"quai.csv", "banchina.xlsx", "owner.csv", "wharf.csv"}).Draw(rt, "cart"))
		before := cart.Judge(sys, order, []*cart.Cart{c}, nil)
		again := cart.Judge(sys, order, []*cart.Cart{c}, nil)
		require.Equal(rt, states(before), states(again))
		c.Lines = rapid.Permutation(c.Lines).Draw(rt, "lines")
		after := cart.Judge(sys, order, []*cart.Cart{c}, nil)
		require.Equal(rt, states(before), states(after))
	})
}

func states(r *cart.Report) []string {
	var out []string
	for _, x := range r.Items {
		out = append(out, fmt.Sprintf("%s %s %s", x.Item, x.InCart, x.Status))
	}
	return out
}

// What lines are said to cover is what items are said to get, and confidence is the
// sum of the evidence.
func TestTheSumsAgree(t *testing.T) {
	sys, order := plant(t)
	for _, names := range [][]string{{"elbe.csv", "wharf.csv", "pier.xlsx"}, {"elbe.csv", "muelle.xlsx"}, {"quai.csv"}, {"owner.csv"}} {
		var carts []*cart.Cart
		for _, n := range names {
			carts = append(carts, sample(t, n))
		}
		r := cart.Judge(sys, order, carts, nil)
		var lines, items money.Quantity
		for _, v := range r.Lines {
			if v.Known {
				lines += v.Quantity
			}
			points := 0
			for _, e := range v.Evidence {
				points += e.Points
			}
			if v.Confidence < 1 && v.Confidence > 0 {
				require.InDelta(t, float64(points)/100, v.Confidence, 1e-9, v.Line.Text)
			}
		}
		for _, x := range r.Items {
			items += x.InCart
		}
		require.Equal(t, lines, items, "%v", names)
	}
}

func TestConfirmedLines(t *testing.T) {
	sys, order := plant(t)
	c := sample(t, "quai.csv")
	r := cart.Judge(sys, order, []*cart.Cart{c}, nil)
	i := slices.IndexFunc(r.Questions, func(q cart.Question) bool { return q.Line == 10 })
	require.Equal(t, []string{"tail-g34"}, r.Questions[i].Choices, "bronze is no polypropylene")
	a := &cart.Accepted{}
	for _, answer := range []string{"", "maybe", "3", "-1"} {
		require.False(t, r.Questions[i].Answer(a, answer), "%q is no answer", answer)
	}
	require.True(t, r.Questions[i].Answer(a, "1"))

	var file strings.Builder
	require.NoError(t, a.Write(&file))
	back, faults := cart.ReadAccepted("confirmed.toml", []byte(file.String()))
	require.Empty(t, faults)
	require.Equal(t, a.Entries(), back.Entries())
	after := cart.Judge(sys, order, []*cart.Cart{c}, back)
	require.Equal(t, cart.Covered, tally(t, after, "tail-g34").Status)
	require.Len(t, after.Questions, len(r.Questions)-1)

	require.True(t, r.Questions[i].Answer(a, "n"))
	none := cart.Judge(sys, order, []*cart.Cart{c}, a)
	require.Equal(t, cart.Missing, tally(t, none, "tail-g34").Status)
}

// A person's word does not make a wrong thread right.
func TestAConfirmedLineIsStillJudged(t *testing.T) {
	sys, order := plant(t)
	c := sample(t, "quai.csv")
	a := &cart.Accepted{}
	a.Add(&c.Lines[2], "jic-n12")
	r := cart.Judge(sys, order, []*cart.Cart{c}, a)
	require.Equal(t, cart.WrongThread, r.Lines[2].Status, r.Lines[2].Reason)
}

func TestFilesOfConfirmedLinesAreReadInFull(t *testing.T) {
	for why, row := range map[string]struct{ text, says string }{
		"no item":        {"[[accepted]]\ntext = \"a\"\n", "confirmed to be"},
		"no line":        {"[[accepted]]\nitem = \"a\"\n", "which line"},
		"an unknown key": {"[[accepted]]\ntext = \"a\"\nitem = \"b\"\nitm = \"c\"\n", "itm"},
		"no TOML":        {"[[accepted\n", ""},
	} {
		_, faults := cart.ReadAccepted("c.toml", []byte(row.text))
		require.NotEmpty(t, faults, why)
		require.Contains(t, faults.Error(), row.says, why)
	}
	rapid.Check(t, func(t *rapid.T) {
		a := &cart.Accepted{}
		for range rapid.IntRange(0, 5).Draw(t, "n") {
			l := &cart.Line{Text: "a" + rapid.String().Draw(t, "text"), Code: rapid.String().Draw(t, "code")}
			a.Add(l, rapid.StringMatching(`[a-z0-9-]{0,8}`).Draw(t, "item"))
		}
		var file strings.Builder
		require.NoError(t, a.Write(&file))
		back, faults := cart.ReadAccepted("c.toml", []byte(file.String()))
		require.Empty(t, faults)
		require.Equal(t, a.Entries(), back.Entries())
	})
}

// countOf tells how many lines have a status, as the first or beside it.
func countOf(r *cart.Report, s cart.Status) int {
	n := 0
	for _, v := range r.Lines {
		if v.Status == s || slices.Contains(v.Also, s) {
			n++
		}
	}
	return n
}
