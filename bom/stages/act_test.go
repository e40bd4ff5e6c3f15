package stages

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/catalog"
)

// No act names a part that the build has not, and stopping is starting turned round: the
// valves, pumps and throttles in reverse (common practice).
func TestActsAreTheBuildsOwn(t *testing.T) {
	for _, name := range demos {
		sys := walked(t, name)
		for _, courses := range Courses(sys) {
			for _, c := range courses {
				require.True(t, len(c.Acts) > 0 || len(c.Missing) > 0, c.Name)
				for _, a := range c.Acts {
					if a.Unit != "" {
						_, ok := sys.Graph.Unit(a.Unit)
						require.True(t, ok, "%s: %s: %s", name, c.Name, a.Unit)
					}
					require.NotEmpty(t, a.Do)
				}
			}
			order := func(c Course) []string {
				var out []string
				for _, a := range c.Acts {
					if u, ok := sys.Graph.Unit(a.Unit); ok {
						for _, w := range u.Passages() {
							if w.Is == catalog.FeedPump || w.Is == catalog.PositivePump {
								out = append(out, a.Unit)
							}
						}
						if u.Item.Kind.Name == "brine throttle" && a.Do != "fully open" {
							out = append(out, a.Unit)
						}
					}
				}
				return slices.Compact(out)
			}
			kindOf := func(name string) string {
				u, _ := sys.Graph.Unit(name)
				return u.Item.Kind.Name
			}
			start, stop := order(courses[1]), order(courses[2])
			require.Equal(t, "daily start", courses[1].Name)
			slices.Reverse(stop)
			require.ElementsMatch(t, start, stop)
			// pumps of one sort may change places among themselves
			require.Equal(t, kindOf(start[len(start)-1]), kindOf(stop[len(stop)-1]))
		}
	}
}

// By hand, of the example plant.
func TestDailyStartByHand(t *testing.T) {
	sys := walked(t, "clean")
	var got []string
	for _, a := range Courses(sys)[0][1].Acts {
		got = append(got, a.Unit)
	}
	require.Equal(t, []string{"intake", "throttle", "selector", "feed-pump", "lp-gauge", "hp-pump", "throttle", "probe", "selector"}, got)
	require.Empty(t, Courses(sys)[0][1].Missing)
	flush := Courses(sys)[0][3]
	require.Equal(t, "No flush runs through hp-gauge and relief: rinse by hand, or choose them for standing sea water.", flush.Missing[0])
}
