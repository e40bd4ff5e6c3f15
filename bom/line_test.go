package bom_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/internal/built"
	"handtight/bom/read"
)

// BenchmarkLongPath reads and walks a single path of so many steps: the time per step does
// not grow with the path.
func BenchmarkLongPath(b *testing.B) {
	for _, steps := range []int{1_000, 10_000, 100_000} {
		text := built.Head + "[[item]]\nid = \"elbow\"\nkind = \"elbow\"\nends = [\"1/2 NPT male\", \"1/2 NPT female\"]\n[[run]]\nname = \"long\"\npath = [" + strings.Repeat("\"elbow/+\", ", steps) + "]\n"
		text = strings.Replace(text, "ends = [\"1/2 NPT male\", \"1/2 NPT female\"]", "ports = { a = \"1/2 NPT male\", b = \"1/2 NPT female\" }", 1)
		b.Run(fmt.Sprintf("steps=%d", steps), func(b *testing.B) {
			for b.Loop() {
				build, faults := read.Parse("long.toml", []byte(text))
				require.NoError(b, faults.Err())
				sys, faults := bom.Walk(build)
				require.NoError(b, faults.Err())
				_, err := sys.Needs()
				require.NoError(b, err)
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(steps), "ns/step")
		})
	}
}
