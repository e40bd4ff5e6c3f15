package choose

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Forty pieces at four shops have thousands of ways over three shops and more: what was not looked
// at is named, and so is a line of more pieces than are divided at all.
func TestWhatWasNotDividedIsNamed(t *testing.T) {
	var b strings.Builder
	b.WriteString(head + store("many", 40) + store("few", 3) + store("heap", 5000))
	for i := range 4 {
		v := fmt.Sprint("s", i)
		b.WriteString(vendor(v, "NZD", "freight = \"1.00\"") + offer("many", v, fmt.Sprintf("3.0%d", i), "") + offer("few", v, "3.00", "") + offer("heap", v, "0.10", ""))
	}
	c := chosen(t, b.String())
	var names []string
	for _, n := range c.Bounded {
		names = append(names, n.Key)
	}
	require.Equal(t, []string{"many", "heap"}, names)
	require.Empty(t, chosen(t, head+vendor("near", "NZD", "")+store("a", 3)+offer("a", "near", "1.00", "")).Bounded)
}
