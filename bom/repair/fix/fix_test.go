package fix_test

import (
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/bom/repair/fix"
	"handtight/bom/rule"
)

func demo(t testing.TB, name string) (string, []byte) {
	path := filepath.Join("..", "..", "..", "testdata", name, "build.toml")
	text, err := os.ReadFile(path)
	require.NoError(t, err)
	return path, text
}

func checked(t testing.TB, path string, text []byte) []finding.Finding {
	b, faults := read.Parse(path, text)
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	return rule.Check(sys)
}

// The joints of the careless build that can be mended are, and the rest say why not: a list
// that was written down before there was any code. The skin fitting is left to a person, a male
// is asked for its chamfer first, and the hose on the 45 degree flare is made up with that end.
// What is not of a joint is mended where a generic part is made: here none is, for a male, a female
// and a branch in one tee, for push-in parts at a pressure that no claim covers, or for what no class
// speaks of.
func TestTheCarelessBuild(t *testing.T) {
	path, text := demo(t, "careless")
	r, err := fix.Build(path, text, fix.Options{})
	require.NoError(t, err)
	stands := map[string]finding.Place{}
	for _, f := range checked(t, path, text) {
		stands[f.Slug+" "+f.At()] = f.Place
	}
	var mended, left []string
	for _, e := range r.Edits {
		p := stands[e.Slug+" "+e.At]
		require.Equal(t, []any{p.File, p.Line}, []any{e.File, e.Line}, "%s: its line is that of the build that was given", e.At)
		mended = append(mended, e.Slug+" "+e.At[strings.Index(e.At, " ")+1:])
	}
	for _, l := range r.Left {
		left = append(left, l.Slug)
		require.NotEmpty(t, l.Why)
		if strings.Contains(l.At, "feed-pump.out") {
			require.Contains(t, l.Why, "chamfer")
		}
	}
	require.Equal(t, []string{
		"barb-and-bore-differ raw-1.b - tail-r34-16.b",
		"flank-angles-differ tail-n34.a - filter-5.in",
		"pitches-differ gauge-tee.branch - lp-gauge.in",
		"nothing-seals hp-hose-feed.b - orb-n12.b",
		"seats-differ hp-hose-brine.b - gauge-tee-hp.a",
		"same-sex gauge-tee-hp.b - throttle.in",
		"thread-too-slack relief.out - tail-g12.a",
		"ends-of-different-sorts to-tank.b - tank.in",
		"taper-in-parallel house.out - tail-g12-swivel.a",
		"pitches-differ tail-n34-13m.a - van-filter.in",
		"thread-does-not-start van-filter.out - tail-n34-13f.a",
	}, mended)
	require.Equal(t, []string{"parallel-in-taper", "seats-differ", "nothing-turns", "under-rated", "rating-unknown", "under-rated", "under-rated", "port-open"}, left)
	for _, line := range strings.Split(string(text), "\n") {
		if strings.HasPrefix(strings.TrimSpace(line), "#") {
			require.Contains(t, string(r.Text), line, "a comment is lost")
		}
	}
	again, err := fix.Build(path, r.Text, fix.Options{})
	require.NoError(t, err)
	require.Equal(t, string(r.Text), string(again.Text), "a mended build is mended to itself")
}

// The old plant: a fitter's list, written down before the tool had it so. The nipple of bronze that
// wept in a plastic housing is changed for one of plastic, unions go between housings that nothing
// turns between, the tail at the relief is changed; what nobody knows is asked, and the adaptor at the
// vessel waits for a data sheet.
func TestTheOldPlant(t *testing.T) {
	path, text := demo(t, "oldplant")
	r, err := fix.Build(path, text, fix.Options{})
	require.NoError(t, err)
	var mended, left []string
	for _, e := range r.Edits {
		mended = append(mended, e.Slug+": "+e.Buy[0])
	}
	for _, l := range r.Left {
		left = append(left, l.Slug)
	}
	require.Len(t, mended, 4)
	require.Contains(t, mended[0], "flank-angles-differ: Plastic nipple 3/4 NPT male plastic x 3/4 NPT male plastic")
	require.Contains(t, mended[1], "nothing-turns: Plastic union 3/4 NPT female plastic")
	require.Contains(t, mended[2], "nothing-turns: Union 3/4 NPT female")
	require.Contains(t, mended[3], "flank-angles-differ: Hose tail 1/2 NPT male x 13 mm barb, 316")
	require.Equal(t, []string{"end-left-open", "flank-angles-differ", "end-left-open"}, left)
	require.Contains(t, r.Left[1].Why, "rating-unknown would stop then")
	require.Contains(t, string(r.Text), "# wept      = \"2025, wet under the housing\"\n", "what was seen stays as a comment")
	again, err := fix.Build(path, r.Text, fix.Options{})
	require.NoError(t, err)
	require.Equal(t, string(r.Text), string(again.Text))
}

// A tail that is changed for another thread stays as long as it was: two clamps hold it below the waterline.
func TestALongTailStaysLong(t *testing.T) {
	path, text := demo(t, "clean")
	wrong := strings.Replace(string(text), "ports    = { in = 'G 3/4 female', out", "ports    = { in = '3/4 NPT female', out", 1)
	require.NotEqual(t, string(text), wrong)
	r, err := fix.Build(path, []byte(wrong), fix.Options{})
	require.NoError(t, err)
	require.Len(t, r.Edits, 1)
	require.Equal(t, []string{"Hose tail 3/4 NPT male x 19 mm barb long, bronze, for 1 bar or more"}, r.Edits[0].Buy)
	for _, f := range checked(t, path, r.Text) {
		require.NotEqual(t, "one-clamp-below-waterline", f.Slug)
	}
}

func TestNothingToMend(t *testing.T) {
	path, text := demo(t, "clean")
	r, err := fix.Build(path, text, fix.Options{})
	require.NoError(t, err)
	require.Equal(t, string(text), string(r.Text))
	require.Empty(t, r.Edits)
}

// careless draws a line of parts bought without a look at their threads.
func careless(t *rapid.T) string {
	thread := rapid.SampledFrom([]string{"1/2 NPT", "G 1/2", "R 1/2", "Rp 1/2", "3/4 NPT", "G 3/4", "3/8 NPT", "JIC -8", "M22x1.5"})
	end := func(name string) string {
		text := thread.Draw(t, name)
		sex := rapid.SampledFrom([]string{"male", "female"}).Draw(t, name+" sex")
		if strings.HasPrefix(text, "R ") {
			sex = "male"
		}
		if strings.HasPrefix(text, "Rp") {
			sex = "female"
		}
		return text + " " + sex
	}
	material := rapid.SampledFrom([]string{"316", "bronze", "brass"}).Draw(t, "material")
	return fmt.Sprintf(`# a line bought in a hurry
[build]
name = "random"
currency = "EUR"

[[item]]
id = "house"
kind = "house supply"
pressure = "3 bar"
ports = { out = '%s' } # as it is
[[item]]
id = "tail"
kind = "hose tail"
ports = { a = '%s', b = '13 mm barb' }
material = "%s"
[[item]]
id = "valve"
kind = "shut-off valve"
ports = { in = '%s', out = '%s' }
material = "%s"
rated = "16 bar"
[[item]]
id = "tank"
kind = "tank"
ports = { in = '%s' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "%s"
rated = "6 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[run]]
name = "line"
path = ["house", "tail/+", "hose", "tail/+", "valve", "tank"] # in the order of the flow
`, end("house"), end("tail"), material, end("in"), end("out"), material, end("tank"), rapid.SampledFrom([]string{"13 mm", "16 mm"}).Draw(t, "bore"))
}

// Whatever was bought: the mended text is a build, it has no stop of a rule that stopped
// nothing before and fewer of those that did, its comments stand, and mended again it is the same.
func TestCarelessBuilds(t *testing.T) {
	count := 500
	if testing.Short() {
		count = 40
	}
	mended := 0
	for seed := range count {
		text := rapid.Custom(careless).Example(seed)
		r, err := fix.Build("random.toml", []byte(text), fix.Options{})
		require.NoError(t, err)
		mended += len(r.Edits)
		require.Contains(t, string(r.Text), "# in the order of the flow")
		if len(r.Edits) == 0 {
			require.Equal(t, text, string(r.Text))
			continue
		}
		before, after := stops(t, text), stops(t, string(r.Text))
		total := func(m map[string]int) int {
			n := 0
			for _, k := range m {
				n += k
			}
			return n
		}
		for slug, n := range after {
			require.LessOrEqual(t, n, before[slug], slug)
		}
		require.Equal(t, r.Stops, total(after))
		require.LessOrEqual(t, total(after)+len(r.Edits), total(before))
		if seed%5 == 0 {
			again, err := fix.Build("random.toml", r.Text, fix.Options{})
			require.NoError(t, err)
			require.Equal(t, string(r.Text), string(again.Text))
		}
	}
	require.Greater(t, mended, count, "more is mended than builds were drawn")
}

func stops(t require.TestingT, text string) map[string]int {
	b, faults := read.Parse("random.toml", []byte(text))
	require.Empty(t, faults)
	sys, faults := bom.Walk(b)
	require.Empty(t, faults)
	out := map[string]int{}
	for _, f := range rule.Check(sys) {
		if f.Severity == finding.Stop {
			out[f.Slug]++
		}
	}
	return out
}
