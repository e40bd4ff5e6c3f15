package draft_test

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/cart"
	"handtight/bom/draft"
	"handtight/bom/order"
	"handtight/bom/read"
	"handtight/bom/request"
	"handtight/threads"
)

// load reads and walks a build.
func load(t testing.TB, path string) *bom.System {
	b, faults := read.Read(path)
	require.Empty(t, faults)
	for _, it := range b.Items { // what lies aboard stands on a list too
		it.Have = 0
	}
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	return sys
}

// shopLists renders the whole order of a build as the lists of three shops, in a shop's words
// of a language, with codes of the shops' own that tell nothing.
func shopLists(t testing.TB, sys *bom.System, language string) []*cart.Cart {
	o, err := sys.Order()
	require.NoError(t, err)
	var carts []*cart.Cart
	lists := [3]*order.Order{}
	vendors := [3]*build.Vendor{}
	for i := range lists {
		vendors[i] = &build.Vendor{ID: fmt.Sprintf("shop%d", i+1), Name: fmt.Sprintf("Shop %d (invented)", i+1), Currency: sys.Build.Currency}
		lists[i] = &order.Order{Vendors: []*order.VendorOrder{{Vendor: vendors[i]}}}
	}
	n := 0
	for _, l := range o.Lines {
		k := n % 3
		n++
		copied := *l
		copied.Offer = &build.Offer{Item: l.Need.Key, Vendor: vendors[k], Code: codeOf(n)}
		lists[k].Vendors[0].Lines = append(lists[k].Vendors[0].Lines, &copied)
	}
	b := *sys.Build
	b.Vendors = vendors[:]
	for i := range lists {
		r, err := request.Of(&b, lists[i], vendors[i].ID, language)
		require.NoError(t, err)
		var text bytes.Buffer
		require.NoError(t, r.CSV(&text))
		c, err := cart.Read(vendors[i].ID+".csv", text.Bytes(), cart.Options{})
		require.NoError(t, err)
		carts = append(carts, c)
	}
	return carts
}

// codeOf is the shop's code of the nth line of an order: it tells nothing of what it is.
func codeOf(n int) string { return fmt.Sprintf("K-%d", 1000+n*7) }

// jointsOf counts the joints of a build by what meets in them: the sort of part and its end.
// Ends of the boat's own that one of the two does not say count as the sort of part alone.
func jointsOf(sys *bom.System) map[string]int {
	out := map[string]int{}
	for _, j := range sys.Graph.Joints {
		a, b := side(sys, j.A), side(sys, j.B)
		if a > b {
			a, b = b, a
		}
		out[a+" = "+b]++
	}
	return out
}

// side names what meets at a port.
func side(sys *bom.System, port int) string {
	p := &sys.Graph.Ports[port]
	kind := p.Unit.Item.Kind.Name
	if p.Unit.Item.Kind.Boats {
		return "boat"
	}
	e := ""
	if c := p.Port.End.Candidates; len(c) > 0 {
		one := c[0]
		one.Long, one.Plastic, one.ClassA = false, false, false
		e = one.String()
		if one.Family == threads.Bore || one.IsTube() {
			e = fmt.Sprint(one.Diameter)
		}
	}
	return kind + " " + e
}

// shared counts the joints of one build that the other has too.
func shared(a, b map[string]int) (same, all int) {
	for k, n := range a {
		all += n
		same += min(n, b[k])
	}
	return same, all
}

// onePlant are the demos that are one plant and hold together: their orders come back whole.
var onePlant = []string{"baltic", "clean", "drip", "engine", "engine-careless", "gulf", "longrow", "recovery", "recovery-careless", "recovery-cold", "redsea", "trickle"}

// others are the demos that are two plants, or hold parts that do not fit, or what no list
// says: what of them cannot come back stands in testdata/notback.csv, joint by joint.
var others = []string{"arrows", "leftovers", "damper", "oldplant", "careless", "refit"}

// again drafts a build's order in a language and compares the joints.
func again(t *testing.T, sys *bom.System, language string) (d *draft.Draft, got *bom.System, same, all int) {
	d, err := draft.Of(shopLists(t, sys, language), draft.Options{})
	require.NoError(t, err)
	require.Empty(t, d.None)
	got, faults := bom.Walk(d.Build)
	require.Empty(t, faults)
	same, all = shared(jointsOf(sys), jointsOf(got))
	return d, got, same, all
}

// Every demo's order, written by shops in five languages, is drafted to the joints that it
// came from. First figures: the first run, before a hose was kept for the pressure side and a
// relief near its pump, had 58 of 58 joints of the first demo in each language, and 20 of 26 of
// most others.
func TestRoundTrips(t *testing.T) {
	if testing.Short() {
		t.Skip("many lists, one after the other: in the full run")
	}
	languages := []string{"en", "de", "fr", "es", "it"}
	same, all := 0, 0
	for _, name := range onePlant {
		sys := load(t, "../../testdata/"+name+"/build.toml")
		list := languages
		if !slices.Contains([]string{"clean", "recovery", "engine"}, name) {
			list = []string{languages[len(name)%len(languages)]} // alike in their parts
		}
		for _, language := range list {
			d, _, s, n := again(t, sys, language)
			require.GreaterOrEqual(t, float64(s)/float64(n), 0.95, "%s in %s", name, language)
			require.True(t, d.Proven, name)
			same, all = same+s, all+n
		}
	}
	t.Logf("%d of %d joints as in the originals", same, all)
}

// notBack reads how often which joints of a demo cannot come back of a list's words.
func notBack(t *testing.T) map[string]map[string]int {
	f, err := os.Open("testdata/notback.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	out := map[string]map[string]int{}
	for _, r := range rows[1:] {
		require.Len(t, r, 4)
		require.NotEmpty(t, r[3], "a reason")
		if out[r[0]] == nil {
			out[r[0]] = map[string]int{}
		}
		n, err := strconv.Atoi(r[2])
		require.NoError(t, err)
		out[r[0]][r[1]] += n
	}
	return out
}

// wrong counts the joints that do not hold: a draft has none of them.
func wrong(sys *bom.System) map[string]int {
	out := map[string]int{}
	for _, j := range sys.Graph.Joints {
		if v := j.Mating.Verdict; j.Known && !v.Holds() && v != threads.LowPressureOnly {
			a, b := side(sys, j.A), side(sys, j.B)
			out[min(a, b)+" = "+max(a, b)]++
		}
	}
	return out
}

// The demos that are two plants, or careless, come back in all that words carry. First figures:
// arrows 38 of 64 joints, leftovers 24 of 38, careless 32 of 62, damper 26 of 36, oldplant 43 of
// 61, refit none (with what lies aboard on the lists, 25 of 88): before several plants in one
// bag, unloaders, dampers and ends that are one of several, and while a search that was cut off
// could end with nothing joined. Refit was then 74 of 86: its union was thought needless between
// a pump and a vessel that are both screwed down, the chains of usual pieces were cut off among
// those of pressure hose in the feed, and a hose could starve the pump unasked.
func TestRoundTripsOfTheOthers(t *testing.T) {
	if testing.Short() {
		t.Skip("drafts large bags")
	}
	pinned := notBack(t)
	for _, name := range others {
		sys := load(t, "../../testdata/"+name+"/build.toml")
		bad := wrong(sys)
		languages := []string{"en", "de"}
		if name == "refit" { // the largest: once
			languages = languages[:1]
		}
		for _, language := range languages {
			d, got, _, _ := again(t, sys, language)
			back, all, out := 0, 0, 0
			now := jointsOf(got)
			for joint, n := range jointsOf(sys) {
				k := min(n, bad[joint]) // these must not come back, and are not asked for
				p := min(n-k, pinned[name][joint])
				all, out = all+n-k-p, out+p
				back += min(n-k-p, now[joint])
				if n-k-p > now[joint] {
					t.Logf("%s %s,%q,%d,", language, name, joint, n-k-p-now[joint])
				}
			}
			t.Logf("%s in %s: %d of %d, beside %d that no list says and %d that do not hold", name, language, back, all, out, len(bad))
			require.GreaterOrEqual(t, float64(back)/float64(all), 0.95, "%s in %s", name, language)
			for _, j := range got.Graph.Joints { // nothing is put together that is known not to hold, but where the two parts themselves do not
				a, b := got.Graph.Ports[j.A].Port.End, got.Graph.Ports[j.B].Port.End
				if v := j.Mating.Verdict; j.Known && !v.Holds() && v != threads.LowPressureOnly && len(a.Candidates) == 1 && len(b.Candidates) == 1 {
					where := got.Graph.Ports[j.A].Name() + " - " + got.Graph.Ports[j.B].Name()
					require.True(t, slices.ContainsFunc(d.Missing, func(m draft.Missing) bool { return m.Stop && m.Where == where }), "%s: %s is joined wrongly", name, where)
				}
			}
		}
	}
}

// What notback.csv says of the refit's gauge is so: with the thread that its port has, the joints
// that its fault displaced come back.
func TestRefitWithoutItsGaugesFault(t *testing.T) {
	if testing.Short() {
		t.Skip("drafts a large bag")
	}
	text, err := os.ReadFile("../../testdata/refit/build.toml")
	require.NoError(t, err)
	mended := bytes.Replace(text, []byte("ports    = { in = 'R 1/4' }"), []byte("ports    = { in = 'G 1/4 male' }"), 1)
	require.NotEqual(t, text, mended)
	b, faults := read.Parse("../../testdata/refit/build.toml", mended)
	require.Empty(t, faults)
	for _, it := range b.Items {
		it.Have = 0
	}
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	_, got, _, _ := again(t, sys, "en")
	now := jointsOf(got)
	for joint := range notBack(t)["refit"] {
		if strings.Contains(joint, "R 1/4") || strings.HasPrefix(joint, "brine throttle  =") {
			continue // the fault itself, and an end that nobody measured
		}
		require.GreaterOrEqual(t, now[joint], jointsOf(sys)[joint], joint)
	}
}

// A plant of which no list says an end is drafted in the order of its water, with each of its
// parts in its place, and none of its joints is cleared. Where its hoses go is no word of a list:
// 17 of its 28 joints are as they were.
func TestNoEndIsSaid(t *testing.T) {
	sys := load(t, "../../testdata/states/plant.toml")
	d, got, same, all := again(t, sys, "en")
	require.True(t, d.Proven)
	require.Equal(t, "throttle", d.Plant)
	require.Equal(t, []int{17, 28}, []int{same, all})
	kinds := func(sys *bom.System) map[string]int {
		out := map[string]int{}
		for _, u := range sys.Graph.Units {
			if k := u.Item.Kind; !k.Boats && k.Name != "hose" && k.Name != "tee" && k.Name != "gauge" {
				out[k.Name]++
			}
		}
		return out
	}
	require.Equal(t, kinds(sys), kinds(got))
	for _, j := range got.Graph.Joints {
		require.False(t, j.Known && j.Mating.Verdict.Holds(), "%s - %s is cleared", got.Graph.Ports[j.A].Name(), got.Graph.Ports[j.B].Name())
	}
}

// No line is lost: each stands in the file as an item, a comment or an offer, with its place.
func TestEveryLineStandsInTheFile(t *testing.T) {
	if testing.Short() {
		t.Skip("many lists, one after the other: in the full run")
	}
	for _, name := range []string{"clean", "careless", "leftovers"} {
		sys := load(t, "../../testdata/"+name+"/build.toml")
		d, err := draft.Of(shopLists(t, sys, "fr"), draft.Options{})
		require.NoError(t, err)
		text := string(d.Text)
		for _, p := range d.Parts {
			require.Regexp(t, "(?m)^# "+strings.ReplaceAll(p.Where(), ".", `\.`)+": ", text, name)
			if p.Aside == "" {
				require.Contains(t, text, `"`+p.ID+`"`)
			}
		}
	}
}
