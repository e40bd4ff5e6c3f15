package bom_test

import (
	"fmt"
	"regexp"
	"strings"
	"testing"
	"time"

	"handtight/bom"
	"handtight/bom/circuit"
	"handtight/bom/internal/built"
	"handtight/bom/state"
)

var (
	idOf    = regexp.MustCompile(`(?m)^(id|of)(\s*=\s*)"([^"]+)"`)
	pathOf  = regexp.MustCompile(`(?s)path = \[(.*?)\]`)
	inQuote = regexp.MustCompile(`"([^"]+)"`)
)

// manyPlants repeats the plant of testdata/states under other names until it has
// so many joints.
func manyPlants(tb testing.TB, joints int) string {
	tb.Helper()
	plant, parts := built.Demo(tb, "states/plant.toml"), built.Demo(tb, "states/parts.toml")
	head, body, _ := strings.Cut(plant, "[[run]]")
	head = strings.Replace(head, `include  = ["parts.toml"]`, "", 1)
	body = parts + "\n[[run]]" + body
	each := strings.Count(body, `", "`) - strings.Count(body, "ends   = ")
	var b strings.Builder
	b.WriteString(head)
	for k := range (joints + each - 1) / each {
		one := idOf.ReplaceAllString(body, fmt.Sprintf(`$1$2"p%d-$3"`, k))
		b.WriteString(pathOf.ReplaceAllStringFunc(one, func(m string) string {
			return inQuote.ReplaceAllString(m, fmt.Sprintf(`"p%d-$1"`, k))
		}))
	}
	return b.String()
}

// longPlant is one plant whose feed line has so many joints: of plain tees, or one in
// ten of them a valve that can be shut, which makes a state of its own.
func longPlant(tb testing.TB, joints int, valves bool) string {
	tb.Helper()
	plant, parts := built.Demo(tb, "states/plant.toml"), built.Demo(tb, "states/parts.toml")
	text := strings.Replace(plant, `include  = ["parts.toml"]`, "", 1) + parts +
		"\n[[item]]\nid = \"elbow\"\nkind = \"elbow\"\n"
	var line strings.Builder
	for i := range joints {
		if valves && i%10 == 5 {
			line.WriteString(`"overboard-valve/+", `)
		} else {
			line.WriteString(`"elbow/+", `)
		}
	}
	return built.Replace(tb, text, `"strainer", "feed-pump"`, `"strainer", `+line.String()+`"feed-pump"`)
}

var builds = []struct {
	name string
	text func(tb testing.TB, joints int) string
}{
	{"plants", manyPlants},
	{"one long plant", func(tb testing.TB, n int) string { return longPlant(tb, n, false) }},
	{"one long plant with valves", func(tb testing.TB, n int) string { return longPlant(tb, n, true) }},
}

// oneState solves the normal state of every part of a build.
func oneState(s *bom.System) {
	for part := range s.Circuit.Nets {
		if s.States.Normal(part) != nil {
			s.States.Field(part, &circuit.Condition{})
		}
	}
}

// allStates solves every state afresh, and what each junction sees over all of them.
func allStates(s *bom.System) *state.States { return state.Solve(s.States.Circuit, s.Waters) }

// One state of a build, all of them, and how many times the one the all are.
func BenchmarkStates(b *testing.B) {
	for _, kind := range builds {
		for _, n := range []int{100, 1_000, 10_000} {
			sys := built.Walk(b, "many.toml", kind.text(b, n))
			b.Run(fmt.Sprintf("%s/joints=%d", kind.name, n), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					allStates(sys)
				}
				states := len(sys.States.All)
				one := fastest(func() { oneState(sys) })
				b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(one.Nanoseconds()), "times-one-state")
				b.ReportMetric(float64(states), "states")
			})
		}
	}
}

// fastest is the shortest of several runs.
func fastest(run func()) time.Duration {
	best := time.Hour
	for range 20 {
		start := time.Now()
		run()
		best = min(best, time.Since(start))
	}
	return best
}
