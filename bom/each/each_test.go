package each_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/each"
)

func ExampleOf() {
	squares := make([]int, 5)
	each.Of(len(squares), func(i int) { squares[i] = i * i })
	fmt.Println(squares)
	// Output: [0 1 4 9 16]
}

func ExampleBoth() {
	var length, count int
	each.Both(func() { length = len("hose") }, func() { count = 58 })
	fmt.Println(length, count)
	// Output: 4 58
}

// Every number comes once, however many there are.
func TestEveryNumberOnce(t *testing.T) {
	for _, n := range []int{0, 1, 2, 3, 1000} {
		seen := make([]int, n)
		each.Of(n, func(i int) { seen[i]++ })
		for i, times := range seen {
			require.Equal(t, 1, times, "%d of %d", i, n)
		}
	}
}

// What breaks in a call breaks in who asked for it, and may be caught there.
func TestAPanicIsTheCallers(t *testing.T) {
	done := make([]bool, 100)
	require.PanicsWithValue(t, "broken", func() {
		each.Of(len(done), func(i int) {
			done[i] = true
			if i == 40 {
				panic("broken")
			}
		})
	})
	require.True(t, done[40])
	require.PanicsWithValue(t, "other", func() { each.Both(func() {}, func() { panic("other") }) })
}
