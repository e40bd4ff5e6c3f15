package bom_test

import (
	"fmt"
	"os"
	"regexp"
	"runtime/debug"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
	"handtight/bom/rule"
)

// plantJoints is how many joints the clean example has.
const plantJoints = 58

var (
	headOf  = regexp.MustCompile(`(?s)^.*?\n# --- Raw water[^\n]*\n`)
	nameKey = regexp.MustCompile(`(?m)^(id|inside|of|item)(\s*=\s*)"([^"]+)"`)
	pathKey = regexp.MustCompile(`(?s)path = \[(.*?)\]`)
	quoted  = regexp.MustCompile(`"([^"]+)"`)
)

// plants writes a build of many desalinators, each with its own items, runs and
// offers: what the clean example has, again and again under other names.
func plants(tb testing.TB, joints int) []byte {
	tb.Helper()
	text, err := os.ReadFile("../testdata/clean/build.toml")
	require.NoError(tb, err)
	more, err := os.ReadFile("../testdata/clean/fittings.toml")
	require.NoError(tb, err)
	head := headOf.FindString(string(text))
	body := strings.TrimPrefix(string(text), head) + string(more)
	head = strings.Replace(head, `include   = ["fittings.toml"]`, "", 1)
	var b strings.Builder
	b.WriteString(head)
	for k := range (joints + plantJoints - 1) / plantJoints {
		prefix := fmt.Sprintf("p%d-", k)
		one := nameKey.ReplaceAllStringFunc(body, func(m string) string {
			g := nameKey.FindStringSubmatch(m)
			if strings.Contains(g[3], " ") {
				return m // what joints need has one name in every plant
			}
			return g[1] + g[2] + `"` + prefix + g[3] + `"`
		})
		one = pathKey.ReplaceAllStringFunc(one, func(m string) string { return quoted.ReplaceAllString(m, `"`+prefix+`$1"`) })
		b.WriteString(one)
	}
	return []byte(b.String())
}

// The generated build is a real one: as many joints as asked for, and it checks clear.
func TestPlants(t *testing.T) {
	build, faults := read.Parse("plants.toml", plants(t, 1000))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(build)
	require.NoError(t, faults.Err())
	require.GreaterOrEqual(t, len(sys.Graph.Joints), 1000)
	for _, f := range rule.Check(sys) {
		require.NotEqual(t, "stop", f.Severity.String(), "%s: %s", f.At, f.Reason)
	}
}

func sizes(b *testing.B, run func(b *testing.B, text []byte)) {
	for _, n := range []int{100, 1_000, 10_000} {
		text := plants(b, n)
		b.Run(fmt.Sprintf("joints=%d", n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			for b.Loop() {
				run(b, text)
			}
		})
	}
}

// The floor: the bare decode of the same bytes.
func BenchmarkFloorTOML(b *testing.B) {
	sizes(b, func(b *testing.B, text []byte) {
		var tree map[string]any
		if err := toml.Unmarshal(text, &tree); err != nil {
			b.Fatal(err)
		}
	})
}

func BenchmarkRead(b *testing.B) {
	sizes(b, func(b *testing.B, text []byte) {
		if _, faults := read.Parse("plants.toml", text); len(faults) > 0 {
			b.Fatal(faults)
		}
	})
}

// Reading, walking, every state, every rule; and how many times as long that takes as the bare
// decode of the same bytes, the two in turns, so that a busy machine is unfair to neither.
func BenchmarkCheck(b *testing.B) {
	defer debug.SetGCPercent(debug.SetGCPercent(400)) // of the decode and of the check alike, as the program runs
	for _, n := range []int{100, 1_000, 10_000} {
		text := plants(b, n)
		b.Run(fmt.Sprintf("joints=%d", n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			b.ReportAllocs()
			var bare, whole time.Duration
			for b.Loop() {
				start := time.Now()
				var tree map[string]any
				require.NoError(b, toml.Unmarshal(text, &tree))
				decoded := time.Now()
				rule.Check(walk(b, text))
				bare, whole = bare+decoded.Sub(start), whole+time.Since(decoded)
			}
			b.ReportMetric(float64(whole)/float64(bare), "x-decode")
			b.ReportMetric(float64(whole.Nanoseconds())/float64(b.N), "check-ns/op")
		})
	}
}

// What Check does and the priced list beside it.
func BenchmarkOrder(b *testing.B) {
	sizes(b, func(b *testing.B, text []byte) {
		if _, err := walk(b, text).Order(); err != nil {
			b.Fatal(err)
		}
	})
}

func walk(b *testing.B, text []byte) *bom.System {
	build, faults := read.Parse("plants.toml", text)
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	sys, faults := bom.Walk(build)
	if len(faults) > 0 {
		b.Fatal(faults)
	}
	return sys
}
