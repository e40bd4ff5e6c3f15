package adapt_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/adapt"
)

// ends are threads of every sort, both sexes.
func ends() []threads.End {
	var out []threads.End
	for _, f := range []threads.Family{threads.NPT, threads.G, threads.R, threads.Rc, threads.JIC, threads.ORB} {
		forms := threads.Forms(f)
		for _, form := range forms[:min(len(forms), 6)] {
			for _, sex := range []threads.Sex{threads.Male, threads.Female} {
				if only := f.Facts().Only; only == threads.NoSex || only == sex {
					out = append(out, threads.Threaded(form, sex))
				}
			}
		}
	}
	return out
}

// Chains of one and two pieces are all that there are, by brute force over a random stock;
// every joint of each closes, and turned round it is a chain of the turned question.
func TestAgainstBruteForce(t *testing.T) {
	all := ends()
	rapid.Check(t, func(t *rapid.T) {
		pick := rapid.SampledFrom(all)
		var pieces [][2]threads.End
		for range rapid.IntRange(1, 40).Draw(t, "pieces") {
			pieces = append(pieces, [2]threads.End{pick.Draw(t, "in"), pick.Draw(t, "out")})
		}
		a, b := pick.Draw(t, "a"), pick.Draw(t, "b")
		w := adapt.Wish{Pressure: quantity.Pressure(rapid.IntRange(1, 100).Draw(t, "bar")) * quantity.Bar, Most: 2, Strict: rapid.Bool().Draw(t, "strict")}
		got := names(adapt.New(pieces).Chains(a, b, w), false)
		require.Equal(t, brute(pieces, a, b, w), got)
		require.Equal(t, got, names(adapt.New(pieces).Chains(b, a, w), true))
		// more pressure never makes a chain appear that was not there
		higher := w
		higher.Pressure += 50 * quantity.Bar
		higher.Most, w.Most = 1, 1
		for _, n := range names(adapt.New(pieces).Chains(a, b, higher), false) {
			require.Contains(t, names(adapt.New(pieces).Chains(a, b, w), false), n)
		}
	})
}

// names writes chains as sorted texts; back turns each round.
func names(list []adapt.Chain, back bool) []string {
	out := []string{}
	for _, c := range list {
		text := ""
		pieces := slices.Clone(c.Pieces)
		if back {
			slices.Reverse(pieces)
		}
		for _, p := range pieces {
			text += fmt.Sprintf("%d%v ", p.Index, p.In != p.Out && p.Turned != back)
		}
		out = append(out, text)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

func brute(pieces [][2]threads.End, a, b threads.End, w adapt.Wish) []string {
	closes := func(x, y threads.End) bool { _, ok := adapt.Direct(x, y, w); return ok }
	type step struct {
		name    string
		in, out threads.End
	}
	var steps []step
	for i, p := range pieces {
		steps = append(steps, step{fmt.Sprintf("%dfalse ", i), p[0], p[1]})
		if p[0] != p[1] {
			steps = append(steps, step{fmt.Sprintf("%dtrue ", i), p[1], p[0]})
		}
	}
	one, two := []string{}, []string{}
	for _, x := range steps {
		if !closes(a, x.in) {
			continue
		}
		if closes(x.out, b) {
			one = append(one, x.name)
		}
		for _, y := range steps {
			if closes(x.out, y.in) && closes(y.out, b) {
				two = append(two, x.name+y.name)
			}
		}
	}
	if len(one) > 0 || w.Most < 2 {
		two = one
	}
	slices.Sort(two)
	return slices.Compact(two)
}
