package draft

import (
	_ "embed"
	"strings"
	"sync"

	"github.com/BurntSushi/toml"
)

//go:embed table/chain.toml
var chainText string

// role is what a part does in a plant.
type role struct {
	Name, Plant, Need, Order, Sign, Boat, End, With, Beside string
	Kinds, After                                            []string
	Many, Once, Volts                                       bool
}

// Steps of a need.
const (
	needed   = "needed"
	usual    = "usual"
	optional = "optional"
)

// line is steps in the order of the water.
type line struct {
	Name, Water, Pressure, Plant, Near string
	Instead                            string // of that line, where the role has none but the boat's own
	Own                                string // that role
	Held                               string // "first", "last": where its branches stand
	Below, Back, Shared                bool
	Branch                             []string
	Steps                              [][]string // role, port entered, port left
}

// sort is a sort of plant, a layout of its vessels, or a group of roles that belong together.
type sort struct {
	Name, Says string
	Signs      []string
}

type chainFile struct {
	Plant, Layout, Group []sort
	Ending, Short        map[string]string
	Role                 []role
	Line                 []line
}

var chain = sync.OnceValue(func() *chainFile {
	var f chainFile
	if _, err := toml.Decode(chainText, &f); err != nil {
		panic("draft: " + err.Error())
	}
	return &f
})

// portOf finds the port that a step means: the first of its names that the part has.
func portOf(names string, has func(string) bool) string {
	for _, n := range strings.Split(names, "|") {
		if n != "" && has(n) {
			return n
		}
	}
	return ""
}
