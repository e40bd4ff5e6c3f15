package threads

import (
	"testing"

	"github.com/stretchr/testify/require"
)

var benchPairs = [][2]string{
	{"NPT 1/2 male", "NPT 1/2 female"}, {"R 1/2 male", "Rc 1/2 female"}, {"NPT 3/4 male", "Rc 3/4 female"},
	{"M M22x1.5 male", "G 1/2 female"}, {"G 3/4 male chamfer", "G 3/4 female swivel cone-60"},
}

func benchEnds(t testing.TB) [][2]End {
	var out [][2]End
	for _, p := range benchPairs {
		out = append(out, [2]End{endOf(t, p[0]), endOf(t, p[1])})
	}
	return out
}

func TestMateAllocatesNothing(t *testing.T) {
	ends := benchEnds(t)
	var verdict Verdict
	n := testing.AllocsPerRun(100, func() {
		for i := range ends {
			m := Mate(ends[i][0], ends[i][1])
			verdict = m.Verdict
		}
	})
	require.NotZero(t, verdict)
	require.Zero(t, n)
}

// BenchmarkMate should stay under 2 microseconds an operation.
func BenchmarkMate(b *testing.B) {
	ends := benchEnds(b)
	b.ReportAllocs()
	for n := 0; b.Loop(); n++ {
		e := &ends[n%len(ends)]
		if m := Mate(e[0], e[1]); m.Verdict == 0 {
			b.Fatal("no verdict")
		}
	}
}
