package choose

import (
	"context"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/choose/leastcost"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/bom/rule"
	"handtight/bom/source"
)

// plansOf makes the plans of a text, by name.
func plansOf(t require.TestingT, text string, g Goal) map[string]Plan {
	list, err := Plans(context.Background(), walked(t, text), g)
	require.NoError(t, err)
	out := map[string]Plan{}
	for _, p := range list {
		out[p.Name] = p
	}
	return out
}

// The shops' demo: the strainer is sold in both standards, the tails are bought with other ends
// from the stock, of which no offer is known.
func TestPlansOfTheExample(t *testing.T) {
	list, err := Plans(context.Background(), shopsBuild(t), Landed)
	require.NoError(t, err)
	require.Len(t, list, 4)
	for i, row := range []struct {
		name, total string
		unpriced    int
		families    string
	}{{"as it is", "673.60", 0, "G"}, {"all NPT", "532.50", 3, "NPT"}, {"all BSP", "605.60", 0, "G"}, {"best", "605.60", 0, "G"}} {
		p := list[i]
		require.Equal(t, row.name, p.Name)
		require.Empty(t, p.None)
		require.Equal(t, row.total, p.Order.Total.Number(), row.name)
		require.Equal(t, row.unpriced, p.Unpriced, row.name)
		require.Equal(t, row.families, strings.Join(p.Families, " "), row.name)
		require.True(t, p.Proved, row.name)
	}
	require.Equal(t, []Taken{{For: "strainer", Item: "strainer-light"}}, list[3].Taken)
}

// drawnLine draws a line of parts that are sold in two standards, and an adaptor or two.
func drawnLine(l *lcg) string {
	standards := []string{"G 1/2", "1/2 NPT"}
	end := func(sex string) string { return standards[l.next(2)] + " " + sex }
	price := func() string { return fmt.Sprintf("%d.%02d", 5+l.next(60), l.next(100)) }
	var b strings.Builder
	b.WriteString(head[:strings.Index(head, "[[item]]")])
	b.WriteString(vendor("near", "NZD", fmt.Sprintf("freight = \"%d.00\"", l.next(25))))
	b.WriteString(vendor("far", "EUR", fmt.Sprintf("freight = \"%d.00\"\ncustoms = \"5 %%\"\ntax = \"10 %%\"", l.next(20))))
	fmt.Fprintf(&b, "[[item]]\nid = \"house\"\nkind = \"house supply\"\npressure = \"2 bar\"\nports = { out = '%s' }\n[[item]]\nid = \"tank\"\nkind = \"tank\"\nports = { in = '%s' }\n", end("male"), end("male"))
	path := []string{`"house"`}
	sold := func(id string) {
		b.WriteString(offer(id, "near", price(), ""))
		if l.next(2) == 0 {
			b.WriteString(offer(id, "far", price(), ""))
		}
	}
	for i := range 1 + l.next(3) {
		id := fmt.Sprintf("valve-%d", i)
		first := l.next(2)
		part := func(id string, standard string) {
			fmt.Fprintf(&b, "[[item]]\nid = %q\nkind = \"shut-off valve\"\nports = { in = '%s female', out = '%s female' }\nrated = \"16 bar\"\nmaterial = \"bronze\"\n", id, standard, standard)
			sold(id)
		}
		part(id, standards[first])
		if l.next(3) > 0 {
			part(id+"-other", standards[1-first])
			fmt.Fprintf(&b, "[[option]]\nfor = %q\nitem = %q\n", id, id+"-other")
		}
		if l.next(4) == 0 {
			part(id+"-cheap", standards[first])
			fmt.Fprintf(&b, "[[option]]\nfor = %q\nitem = %q\n", id, id+"-cheap")
		}
		if i > 0 {
			n := fmt.Sprintf("nipple-%d", i)
			fmt.Fprintf(&b, "[[item]]\nid = %q\nkind = \"nipple\"\nports = { a = '%s', b = '%s' }\nmaterial = \"316\"\nrated = \"20 bar\"\n", n, end("male"), end("male"))
			sold(n)
			path = append(path, fmt.Sprintf("%q", n))
		}
		path = append(path, fmt.Sprintf("%q", id))
	}
	for i, e := range [][2]string{{"1/2 NPT male", "G 1/2 female"}, {"1/2 NPT female", "G 1/2 male"}, {"1/2 NPT male", "G 1/2 male"}} {
		if l.next(2) == 0 {
			id := fmt.Sprintf("own-%d", i)
			fmt.Fprintf(&b, "[[item]]\nid = %q\nkind = \"adaptor\"\nports = { a = '%s', b = '%s' }\nmaterial = \"316\"\nrated = \"40 bar\"\n", id, e[0], e[1])
			sold(id)
		}
	}
	for _, piece := range []string{"bonded washer G 1/2", "flat gasket G 1/2"} {
		b.WriteString(offer(piece, "near", "1.50", ""))
	}
	path = append(path, `"tank"`)
	fmt.Fprintf(&b, "[[run]]\nname = \"line\"\npath = [%s]\n", strings.Join(path, ", "))
	return b.String()
}

// lcg is a linear congruential generator, Numerical Recipes (memory): the same cases each time.
type lcg uint32

func (l *lcg) next(n int) int {
	*l = *l*1664525 + 1013904223
	return int(*l>>8) % n
}

// On random lines: the best plan is that of brute force over every way, by each goal; no
// standard throughout is better than it; each plan, checked again, has no stop that the build
// had not; and one option less is never better. BRUTE_FORCE=3000 in the environment asks for so many.
func TestPlansAgainstBruteForce(t *testing.T) {
	count, seed := 16, 5
	if testing.Short() {
		count = 4
	}
	if n, err := strconv.Atoi(os.Getenv("BRUTE_FORCE")); err == nil {
		count, seed = n, n // as many lines as are asked for, and others
	}
	l := lcg(seed)
	tried := 0
	defer func() { t.Logf("%d of %d lines against every way", tried, count) }()
	defer func() { require.GreaterOrEqual(t, 2*tried, count, "few lines have few enough ways") }()
	for range count {
		text := drawnLine(&l)
		sys := walked(t, text)
		goals := []Goal{Landed, Adaptors, Families}
		all := everyWay(t, sys, goals)
		if all == nil {
			continue // more ways than are worth the time
		}
		tried++
		for _, g := range goals {
			list, err := Plans(context.Background(), sys, g)
			require.NoError(t, err)
			best := list[len(list)-1]
			want, ok := all[g]
			require.Equal(t, ok, best.None == "", "%s\n%s", best.None, text)
			if !ok {
				continue
			}
			if best.Proved {
				require.Equal(t, want, best.score, "%s: %s\n%s", g, best.Order.Total, text)
			}
			for _, p := range list[1:] {
				if p.None != "" {
					continue
				}
				require.GreaterOrEqual(t, p.score, best.score, p.Name)
				recheck(t, sys, p.System)
			}
		}
		if strings.Contains(text, "[[option]]") {
			less := dropOption(text)
			fewer, more := plansOf(t, less, Landed)["best"], plansOf(t, text, Landed)["best"]
			if fewer.None == "" && fewer.Proved && more.Proved {
				require.Empty(t, more.None)
				require.LessOrEqual(t, more.score, fewer.score, text)
			}
		}
	}
}

// dropOption takes the last option of a text away.
func dropOption(text string) string {
	at := strings.LastIndex(text, "[[option]]")
	lines := strings.SplitAfterN(text[at:], "\n", 4)
	return text[:at] + lines[3]
}

// everyWay prices and checks every way there is, and gives the best by each goal; nil where
// there are more than a few hundred.
func everyWay(t require.TestingT, sys *bom.System, goals []Goal) map[Goal]int64 {
	p := &planner{ctx: context.Background(), base: sys, goal: Landed, space: newSpace(sys, true), walked: map[string]*Plan{}, stops: map[spot]int{}}
	for _, f := range rule.Check(sys) {
		if f.Severity == finding.Stop {
			p.stops[spotOf(f)]++
		}
	}
	require.NoError(t, p.price())
	all := p.space.problem(Landed, func(int, int) bool { return true })
	var ways [][]int
	way := make([]int, len(p.space.vars))
	var try func(int)
	try = func(v int) {
		if v == len(way) {
			if all.Of(way) < leastcost.Never {
				ways = append(ways, slices.Clone(way))
			}
			return
		}
		for x := range p.space.vars[v].choices {
			way[v] = x
			try(v + 1)
		}
	}
	try(0)
	if len(ways) > 300 {
		return nil
	}
	best := map[Goal]int64{}
	for _, way := range ways {
		plan, err := p.walk(way)
		require.NoError(t, err)
		if plan.None != "" {
			continue
		}
		require.LessOrEqual(t, all.Of(way)+p.floor-p.slack, plan.score, "the least is no bound")
		for _, g := range goals {
			if old, ok := best[g]; !ok || g.score(plan) < old {
				best[g] = g.score(plan)
			}
		}
	}
	return best
}

// recheck checks a plan's build again: every stop stands where the build had one.
func recheck(t require.TestingT, base, plan *bom.System) {
	had := map[spot]int{}
	for _, f := range rule.Check(base) {
		if f.Severity == finding.Stop {
			had[spotOf(f)]++
		}
	}
	for _, f := range rule.Check(plan) {
		if f.Severity == finding.Stop {
			at := spotOf(f)
			had[at]--
			require.GreaterOrEqual(t, had[at], 0, "%s %s", f.Slug, f.Reason)
		}
	}
}

// An option says its family, and one per unit is chosen unit by unit. Parts and prices are
// made up: two valves on one line between a G and an NPT tank.
func TestPerUnit(t *testing.T) {
	valve := func(id, standard string, price string) string {
		return fmt.Sprintf("[[item]]\nid = %q\nkind = \"shut-off valve\"\nports = { in = '%s female', out = '%s female' }\nrated = \"16 bar\"\nmaterial = \"bronze\"\n", id, standard, standard) + offer(id, "near", price, "")
	}
	text := head[:strings.Index(head, "[[item]]")] + vendor("near", "NZD", "") +
		"[[item]]\nid = \"house\"\nkind = \"house supply\"\npressure = \"2 bar\"\nports = { out = 'G 1/2 male' }\n[[item]]\nid = \"tank\"\nkind = \"tank\"\nports = { in = '1/2 NPT male' }\n" +
		valve("v", "G 1/2", "20.00") + valve("v-npt", "1/2 NPT", "21.00") +
		"[[item]]\nid = \"n\"\nkind = \"nipple\"\nports = { a = 'G 1/2 male', b = '1/2 NPT male' }\nmaterial = \"316\"\nrated = \"20 bar\"\n" + offer("n", "near", "9.00", "") + offer("bonded washer G 1/2", "near", "1.00", "") +
		"[[run]]\nname = \"line\"\npath = [\"house\", \"v/one\", \"n\", \"v/two\", \"tank\"]\n"
	whole := plansOf(t, text+"[[option]]\nfor = \"v\"\nitem = \"v-npt\"\n", Landed)["best"]
	unit := plansOf(t, text+"[[option]]\nfor = \"v\"\nitem = \"v-npt\"\nfamily = \"NPT\"\nper = \"unit\"\n", Landed)["best"]
	require.NotEmpty(t, whole.Fitted, "both valves change, and one end does not fit either way")
	require.Empty(t, unit.None)
	require.Empty(t, unit.Fitted)
	require.Equal(t, []Taken{{For: "v/two", Item: "v-npt"}}, unit.Taken)

	_, faults := read.Parse("shops.toml", []byte(text+"[[option]]\nfor = \"v\"\nitem = \"v-npt\"\nfamily = \"pipe\"\nper = \"boat\"\n"))
	require.Len(t, faults, 2)
	require.True(t, slices.ContainsFunc(faults, func(f source.Fault) bool { return strings.Contains(f.Remedy, `per = "unit"`) }))
}

// What nobody sells in a standard is named.
func TestOneStandardOnly(t *testing.T) {
	plans := plansOf(t, pair(union("npt", "1/2 NPT female swivel 60 cone", "15.00")), Landed)
	require.Contains(t, plans["all NPT"].Only, "sea")
	require.Empty(t, plans["all BSP"].Only)
}

func TestGoals(t *testing.T) {
	g, err := GoalNamed("Adaptors")
	require.NoError(t, err)
	require.Equal(t, Adaptors, g)
	_, err = GoalNamed("price")
	require.ErrorContains(t, err, "landed (the cost), adaptors or families")
}

func BenchmarkPlans(b *testing.B) {
	sys := walked(b, drawnLine(new(lcg)))
	for b.Loop() {
		_, err := Plans(context.Background(), sys, Landed)
		require.NoError(b, err)
	}
}

// A hose that is not made yet is made up with other ends, and a small part is bought with
// others: two tanks of one standard with a line of the other between them. Made up.
func TestHoseEnds(t *testing.T) {
	text := head[:strings.Index(head, "[[item]]")] + vendor("near", "NZD", "") + `[[item]]
id = "house"
kind = "house supply"
pressure = "2 bar"
ports = { out = 'G 1/2 male chamfer' }
[[item]]
id = "tank"
kind = "tank"
ports = { in = 'G 1/2 male chamfer' }
[[hose]]
id = "line"
length = "1 m"
bore = "13 mm"
rated = "20 bar"
ends = ['1/2 NPT male', 'G 1/2 female swivel 60 cone']
[[run]]
name = "line"
path = ["house", "line", "tank"]
` + offer("line", "near", "30.00", "")
	plans := plansOf(t, text, Adaptors)
	require.Equal(t, "line-a-bsp", plans["best"].Taken[0].Item)
	require.Empty(t, plans["best"].Fitted)
	require.Equal(t, plans["best"].Taken, plans["all BSP"].Taken)
	require.Contains(t, plans["all NPT"].Only, "house")
	require.Equal(t, 1, plans["best"].Unpriced, "no offer is known of the hose with other ends")
}
