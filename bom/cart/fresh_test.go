package cart

import (
	"encoding/csv"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/order"
)

// freshBuild is the build that each fresh cart is for.
var freshBuild = map[string]string{
	"d1": "clean", "d2": "clean", "d3": "clean", "d4": "engine",
	"e1": "clean", "e2": "engine",
	"f1": "clean", "f2": "baltic", "f3": "arrows", "f4": "recovery",
	"h1": "baltic", "h2": "arrows", "h3": "recovery",
	"i1": "refit", "i2": "damper",
	"t1": "clean", "t2": "clean", "t3": "clean", "t4": "clean",
	"j1": "clean", "j2": "oldplant",
	"k1": "refit",
	"l1": "redsea",
	"g1": "clean", "g2": "engine", "g3": "arrows",
	"c1": "clean", "c2": "arrows", "c3": "recovery",
	"a1": "clean", "a2": "recovery", "a3": "engine", "a4": "shops",
	"b1": "clean", "b2": "engine", "b3": "arrows", "b4": "recovery",
}

// freshItem are the short names of what a build needs without naming it.
func freshItem(s string) string {
	if mm, ok := strings.CutPrefix(s, "clamp-"); ok {
		return "clamp for " + mm + " mm hose"
	}
	if s == "tape" {
		return "tape 12 mm"
	}
	return s
}

// freshMarks counts the answers of one cart of testdata/fresh.
type freshMarks struct {
	right, matched, wrong, accepted, named, asks, asked, trade, touched int
	faults, open, untold                                                []string
}

func (m *freshMarks) add(o freshMarks) {
	m.right, m.matched, m.wrong, m.accepted = m.right+o.right, m.matched+o.matched, m.wrong+o.wrong, m.accepted+o.accepted
	m.named, m.asks, m.asked, m.trade, m.touched = m.named+o.named, m.asks+o.asks, m.asked+o.asked, m.trade+o.trade, m.touched+o.touched
	m.faults, m.open, m.untold = append(m.faults, o.faults...), append(m.open, o.open...), append(m.untold, o.untold...)
}

func (m *freshMarks) String() string {
	return fmt.Sprintf("right %d of %d, wrong accepted %d of %d (named %d), asked %d of %d, trade touched %d of %d",
		m.matched, m.right, m.accepted, m.wrong, m.named, m.asked, m.asks, m.touched, m.trade)
}

// freshAnswer is the right answer of one row of a cart.
type freshAnswer struct {
	row           int
	answer, items string
}

// freshCart reads a cart of testdata/fresh with its answers, and walks the build that it is for.
func freshCart(t *testing.T, name string) (*bom.System, *order.Order, *Cart, []freshAnswer) {
	sys, order := Walked(t, "../../testdata/"+freshBuild[name]+"/build.toml")
	paths, err := filepath.Glob("testdata/fresh/" + name + ".[ctx]*")
	require.NoError(t, err)
	require.Len(t, paths, 1)
	data, err := os.ReadFile(paths[0])
	require.NoError(t, err)
	c, err := Read(filepath.Base(paths[0]), data, Options{Currency: sys.Build.Currency})
	require.NoError(t, err)
	key, err := os.ReadFile("testdata/fresh/" + name + ".answers.csv")
	require.NoError(t, err)
	rows, err := csv.NewReader(strings.NewReader(string(key))).ReadAll()
	require.NoError(t, err)
	var answers []freshAnswer
	for _, a := range rows[1:] {
		row, err := strconv.Atoi(a[0])
		require.NoError(t, err)
		answers = append(answers, freshAnswer{row, a[1], a[2]})
	}
	return sys, order, c, answers
}

// judgeFresh judges every line of a cart alone, so that what others cover does not hide it.
func judgeFresh(t *testing.T, name string) freshMarks {
	sys, order, c, rows := freshCart(t, name)
	var m freshMarks
	for _, a := range rows {
		row := a.row
		k := slices.IndexFunc(c.Lines, func(l Line) bool { return l.Row == row })
		if k < 0 {
			if a.answer != "out" {
				m.faults = append(m.faults, fmt.Sprintf("%s:%d is not read", name, row))
				m.open = append(m.open, fmt.Sprintf("%s:%d", name, row))
			}
			continue
		}
		one := *c
		one.Lines = c.Lines[k : k+1]
		r := Judge(sys, order, []*Cart{&one}, nil)
		v := r.Lines[0]
		questions := 0
		for _, q := range r.Questions {
			if len(q.lines) > 0 {
				questions++
			}
		}
		good := slices.Contains([]Status{Covers, OtherPrice, Surplus, BoughtTwice, SumDiffers}, v.Status)
		ok := true
		switch a.answer {
		case "covers":
			m.right++
			ok = good && questions == 0 && (slices.ContainsFunc(strings.Fields(a.items), func(s string) bool { return slices.Contains(v.Items, freshItem(s)) }) ||
				slices.Contains(v.Items, a.items))
			if ok {
				m.matched++
			} else {
				m.open = append(m.open, fmt.Sprintf("%s:%d", name, row))
			}
		case "ask":
			m.asks++
			ok = v.Status == Unsure || questions > 0
			if ok {
				m.asked++
			}
		case "wrong":
			m.wrong++
			ok = !good
			if !ok {
				m.accepted++
			}
			if isNamed(v) {
				m.named++
			} else if ok {
				m.untold = append(m.untold, fmt.Sprintf("%s:%d", name, row))
				m.faults = append(m.faults, fmt.Sprintf("(wrong, not named) %s:%d %s -> %s %v: %s", name, row, v.Line.Text, v.Status, v.Items, v.Reason))
			}
		case "other":
			m.trade++
			ok = !good && len(v.Items) == 0 && questions == 0
			if !ok {
				m.touched++
			}
		case "out":
			ok = v.Status == Out
		}
		if !ok {
			m.faults = append(m.faults, fmt.Sprintf("%s:%d %s %s: %s -> %s %v %d questions: %s %s", name, row, a.answer, a.items, v.Line.Text, v.Status, v.Items, questions, v.Reason, v.Ask))
		}
	}
	return m
}

// isNamed reports whether a wrong line is told what it is like and what differs, or is asked about
// beside that part.
func isNamed(v *Verdict) bool {
	return v.IsWrong() || len(v.Also) > 0 && slices.Contains(Wrong(), v.Also[0]) || v.Status == Unsure && len(v.Items) > 0
}

// freshOpen are the right lines that are asked about all the same, each with the reason. A line
// that is mended leaves the list, and no line may come into it unsaid.
var freshOpen = map[string]string{
	"l1:7":  "one size before a colon and the sexes behind it is read as one sex for two ends",
	"l1:49": "a Vorfilter is a strainer to some and a filter housing to others",
	"b3:15": "the build has it behind the throttle that stands before its vessel, on the high-pressure side, and the line does not say what it holds",
	"c2:13": "the brine of that build goes overboard on the high-pressure side of such a throttle, and the line does not say what it holds",
	"f2:19": "a clamp of 11 to 13 mm closes on a hose of 8 x 12 and not on one of 8 x 14: the answer was too bold",
	"f4:17": "a clamp of 8 to 12 mm, likewise",
	"f3:15": "as c2:13",
	"t3:12": "brass and bronze are both named",
	"g3:7":  "poly names polyethylene and polypropylene alike",
	"i1:11": "in the heat of its place it holds 5 bar, and its relief may fail at 6: the answer was too bold",
	"j1:4":  "20/27 is said of parallel threads and of taper ones",
	"j1:63": "two, where the shop sells bags of 2, are pieces or bags: the question is due, and the answer was too bold",
	"c3:8":  "four of what, metres or pieces, is not said: the question is due, and the answer was too bold",
}

// freshUntold are the wrong lines that are refused and not told what they are like, each with the reason.
var freshUntold = map[string]string{
	"l1:36": "hose for fuel is of another trade: the label was wrong",
	"k1:71": "tube for the garden is of another trade, and is told nothing of what drinking water needs: the label was wrong",
}

// First figures, when the answers were written and no line had been read: carts a 37 of 57 right
// lines without a question and 3 of 22 wrong ones accepted; carts b, after what a had shown was
// mended, 54 of 69 and 1 of 20; carts c, written after b had been mended too, 34 of 40 and 0 of 13; carts d, by another hand, 36 of 39 and 0 of 16; carts e,
// after d had been mended, 18 of 22 and 0 of 8; carts f, by a third hand and
// in shops' habits that no cart before had, 53 of 75, 2 of 24 accepted (both an element or a vessel of another size, whose size
// stands in the build's key and was not looked at) and 1 of 15 things of another trade named.
// Carts g, after f had been mended, 39 of 48, 0 of 13 and 1 of 9; one of 3 questions was not asked: in "3/8 NPT M/F run, 1/4 F
// branch" the branch is read in the thread of the run, which is how shops write it, and its answer is covers now.
// Carts h, after g and t had been mended: 38 of 42 and 0 of 10, all of them named, all 3 questions asked, 0 of 7 of another trade.
// Carts i, after the tables had been filled in eleven languages: 30 of 40 in Danish and Swedish, 0 of 8, all of them named, the
// one question asked, 0 of 6.
// Carts j, by a fourth hand, after the small parts' sizes had been left for later: 78 of 87, 1 of 39 accepted (a nipple with a
// left-hand thread, whose hand no end was compared by), 35 of them named (no washer of another size was), all 4 questions asked, 1 of
// 10 of another trade asked about.
// Carts k, after j had been mended: 45 of 47, 1 of 19 accepted (a wound cartridge of 20 micron for the carbon block of that build,
// by its length), 17 of them named, the one question asked, 0 of 5.
// Cart l1, after single facts had been changed in all of those: 35 of 40, 0 of 15, 13 of them named.
// Carts t were tuned on from their first run (29 of 45; then 15 of 40, where one heading hid how many of 19 lines).
// Of a to e nothing of another trade was matched.
func TestFreshCarts(t *testing.T) {
	if testing.Short() {
		t.Skip("thousands of lines, one after the other: in the full run")
	}
	var sum freshMarks
	open := map[string]string{}
	for _, name := range slices.Sorted(maps.Keys(freshBuild)) {
		if set := os.Getenv("FRESH"); set != "" && !strings.HasPrefix(name, set) {
			continue
		}
		m := judgeFresh(t, name)
		t.Log(name, m.String())
		sum.add(m)
	}
	for _, f := range sum.faults {
		t.Log(f)
	}
	for _, k := range sum.open {
		open[k] = freshOpen[k]
	}
	t.Log(sum.String())
	require.Zero(t, sum.accepted, "no wrong part is accepted")
	for _, k := range sum.untold {
		require.Contains(t, freshUntold, k, "what differs is named")
	}
	require.Zero(t, sum.touched, "nothing of another trade is matched")
	require.Equal(t, sum.asks, sum.asked, "what the words leave open is asked")
	if os.Getenv("FRESH") == "" {
		require.Equal(t, freshOpen, open, "right lines that are asked about")
	}
}
