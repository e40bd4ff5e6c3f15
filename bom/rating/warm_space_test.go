package rating_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
)

// Where the duty says the air only, the water in a hose is taken to be as warm, and the
// other way round.
func TestWarmthThatIsHalfSaid(t *testing.T) {
	const hose = "[[hose]]\nid = \"hose\"\nspec = \"EN 853 2SN\"\nbore = '1/2\"'\nlength = \"1 m\"\nends = ['1/2 NPT male', '1/2 NPT male']\n" +
		"[[item]]\nid = \"cup\"\nkind = \"coupling\"\n"
	for duty, outside := range map[string]bool{`space = "75 C"`: true, `water = "75 C"`: true, `space = "60 C"`: false, "water = \"20 C\"\nspace = \"75 C\"": false} {
		sys := built.Walk(t, "x.toml", built.Head+"[duty]\n"+duty+"\n"+hose+built.Runs("hose cup"))
		hose, _ := sys.Graph.Unit("hose")
		require.Equal(t, outside, sys.Ratings.OutsideTemperature(hose.Item) != nil, duty)
	}
}
