package main

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// shownCommands are what a person runs at a terminal, with the examples.
var shownCommands = [][]string{
	{"check", cleanBuild}, {"check", carelessBuild}, {"check", carelessBuild, "--all"}, {"check", carelessBuild, "--pressures"},
	{"check", carelessBuild, "--parts"}, {"check", "../../testdata/refit/build.toml", "--states"}, {"check", "../../testdata/arrows/build.toml", "--all"},
	{"check", "../../testdata/recovery-careless/build.toml", "--all"},
	{"cart", carelessBuild, "../../testdata/carts/elbe.csv"}, {"cart", cleanBuild, "../../testdata/carts/owner.csv", "--all"},
	{"cart", cleanBuild, "../../testdata/carts/quai.csv", "--why"}, {"cart", cleanBuild, "../../testdata/carts/muelle.xlsx"},
	{"order", cleanBuild}, {"order", carelessBuild}, {"choose", "../../testdata/shops/build.toml"}, {"choose", cleanBuild},
	{"spares", cleanBuild}, {"spares", cleanBuild, "--kit"}, {"compare", carelessBuild, cleanBuild},
	{"duty", cleanBuild}, {"duty", cleanBuild, "--log", "../../testdata/logs/summer.csv"}, {"duty", "../../testdata/engine-careless/build.toml"},
	{"duty", "../../testdata/recovery/build.toml"}, {"duty", cleanBuild, "--with", "elements=2"},
	{"mate", "1/2 NPT male", "Rc 1/2"}, {"mate", "1/2 BSP male", "G 1/2 female swivel"}, {"adapt", "1/2 NPT male", "G 3/4 male"},
	{"thread", "G 3/4 female swivel"}, {"thread", "--card", "R 1/2 male"}, {"thread", "--list", "NPT"}, {"thread", "--list", "JIC"},
	{"identify", "--od", "20.9 mm", "--tpi", "14"}, {"identify", "--od", "20.9 mm", "--tpi", "32"}, {"catalog"}, {"catalog", "316"}, {"why"}, {"why", "always"}, {"why", "under-rated"},
}

// apart are lines that are one word, an example to copy, or a part's own long name.
var apart = regexp.MustCompile(`^\s*\S+$|^  handtight |^\s+(wrong|right|title|ports|ends|path)\b.*=|^  \[|= `)

// Nothing that is printed is wider than 80 columns, and no figure is a zero with a sign.
func TestEightyColumns(t *testing.T) {
	signed := regexp.MustCompile(`(?:^|[\s(:,])-0(?:\.0+)?(?:$|[\s,;)%])`)
	for _, args := range shownCommands {
		for _, l := range printed(t, args...) {
			require.True(t, widthOf(l) <= plainWidth || apart.MatchString(l), "%v: %d columns: %s", args, widthOf(l), l)
			require.NotRegexp(t, signed, l, "%v", args)
			require.NotContains(t, l, "\ufffd", "%v", args)
		}
	}
}

// The help of every command fits as well, but for examples to copy.
func TestHelpFits(t *testing.T) {
	root := (&app{ui: newUI(&strings.Builder{}, &strings.Builder{})}).root()
	for _, cmd := range root.Commands() {
		for _, l := range printed(t, "help", cmd.Name()) {
			require.True(t, widthOf(l) <= plainWidth || strings.HasPrefix(l, "  handtight"), "%s: %s", cmd.Name(), l)
		}
	}
}
