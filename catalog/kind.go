package catalog

import (
	_ "embed"
	"fmt"
	"slices"
	"sync"

	"github.com/BurntSushi/toml"
)

// Flow says what happens between two ports of a part. The zero value is invalid.
type Flow uint8

// The sorts of passage.
const (
	Open         Flow = iota + 1 // both ways, one pressure
	OneWay                       // forward only
	Shut                         // none
	Throttle                     // drops what the operator sets, while it flows
	Membrane                     // feed to product, slowly
	Relief                       // forward at its set pressure
	FeedPump                     // adds up to its shut-off pressure
	PositivePump                 // pushes until something opens
	Regulator                    // forward; holds what is set before it, and opens on its own
	Recovery                     // an energy-recovery pump lifts what drives it by the ratio of its rod
	Return                       // the brine side of an energy-recovery pump: water moves on with the stroke, no pressure does
	Unload                       // leads the pump's flow back: a relief where its maker says that it relieves, else nothing that may be counted on
)

var flowNames = map[string]Flow{
	"open": Open, "one-way": OneWay, "shut": Shut, "throttle": Throttle, "membrane": Membrane,
	"relief": Relief, "feed-pump": FeedPump, "positive-pump": PositivePump, "regulator": Regulator, "energy-recovery": Recovery, "return": Return, "unload": Unload,
}

// Passage joins two ports of a kind, by index into its ports.
type Passage struct {
	From, To int
	Is       Flow
	Closable bool // a person can shut it
	Clogs    bool // dirt can shut it
}

// Spare says by which rule spares of a kind are counted.
type Spare uint8

// The rules. The zero value is none.
const (
	NoSpare      Spare = iota
	FittingSpare       // one may be spoiled while fitting
	WearSpare          // planned changes and random failures
)

// Kind is a sort of part.
type Kind struct {
	Name     string
	Ports    []string
	Optional []string // ports that a part of this kind may lack
	Enter    int      // port entered by a step that names none; -1 if it must be named
	Leave    int      // port left by; -1 if it must be named, or there is none
	Directed bool     // a step without ports goes from Enter to Leave; else it is turned as it mates best
	Boundary []int    // ports that are open to sea, tank or drain when nothing is joined
	Gives    bool     // the boundary can give water too
	Supply   bool     // the boundary pushes at its own pressure
	Boats    bool     // the boat's own: never bought
	Rates    []int    // ports that the part's rating speaks for
	Passages []Passage
	Keys     []string // keys of its own in a build file
	Turns    bool     // something in it turns by itself: a union's nut
	Fixed    bool     // screwed to the boat: it cannot be turned to make a joint
	Hung     bool     // a fixed one that as often hangs in its line, and is turned with it
	Length   bool     // bought by length
	Loose    bool     // no ports: counted, not joined
	Generic  bool     // joints ask for it
	Flush    bool     // opens for the flush, shut otherwise
	Snaps    bool     // shuts at once, by a spring or a coil
	Selector bool     // one of its ways is open, never both
	Free     bool     // ports and passages are named by the item
	Spare    Spare
	Loss     float64 // its loss number K; 0: none of its own
	Likely   int     // its place among the kinds that a part of so many ends mostly is; 0: not named
	roles    Role
}

// Has reports whether a part of the kind has a passage of a sort.
func (k *Kind) Has(is Flow) bool {
	return slices.ContainsFunc(k.Passages, func(p Passage) bool { return p.Is == is })
}

// PortIndex finds a port by name; -1 if the kind has none of that name.
func (k *Kind) PortIndex(name string) int { return slices.Index(k.Ports, name) }

//go:embed table/kind.toml
var kindText string

type kindFile struct {
	Kind []struct {
		Name, Enter, Leave, Bought, Spare                                                      string
		Ports, Optional, Boundary, Rates, Keys, Roles                                          []string
		Loss                                                                                   float64
		Likely                                                                                 int
		Gives, Supply, Boats, Turns, Loose, Generic, Flush, Snaps, Selector, Free, Fixed, Hung bool
		Passage                                                                                []struct {
			From, To, Is    string
			Closable, Clogs bool
		}
	}
}

var kinds = sync.OnceValue(func() map[string]*Kind {
	out, err := ParseKinds(kindText)
	if err != nil {
		panic("catalog: " + err.Error())
	}
	return out
})

// ParseKinds reads a table of kinds, as table/kind.toml is one. A word that is no flow, role
// or port of its kind is an error.
func ParseKinds(text string) (map[string]*Kind, error) {
	var file kindFile
	if _, err := toml.Decode(text, &file); err != nil {
		return nil, err
	}
	out := map[string]*Kind{}
	for _, f := range file.Kind {
		k := &Kind{
			Name: f.Name, Ports: f.Ports, Optional: f.Optional, Keys: f.Keys, Gives: f.Gives, Supply: f.Supply,
			Boats: f.Boats, Turns: f.Turns, Length: f.Bought == "length", Loose: f.Loose, Generic: f.Generic,
			Flush: f.Flush, Snaps: f.Snaps, Selector: f.Selector, Free: f.Free, Fixed: f.Fixed, Hung: f.Hung,
			Spare: map[string]Spare{"fitting": FittingSpare, "wear": WearSpare}[f.Spare], Loss: f.Loss, Likely: f.Likely,
		}
		for _, w := range f.Roles {
			if roleNames[w] == 0 {
				return nil, fmt.Errorf("%q of kind %q is no role", w, f.Name)
			}
			k.roles |= roleNames[w]
		}
		if k.Supply {
			k.roles |= Supplies
		}
		k.Enter, k.Leave = k.PortIndex(f.Enter), k.PortIndex(f.Leave)
		k.Directed = k.Enter >= 0 || k.Leave >= 0
		k.Boundary = k.indices(f.Boundary)
		k.Rates = k.indices(f.Rates)
		if len(k.Rates) == 0 {
			k.Rates = k.indices(f.Ports)
		}
		for _, p := range f.Passage {
			if flowNames[p.Is] == 0 {
				return nil, fmt.Errorf("%q of kind %q is no sort of passage", p.Is, f.Name)
			}
			k.roles |= roleOfFlow[flowNames[p.Is]]
			k.Passages = append(k.Passages, Passage{
				From: k.PortIndex(p.From), To: k.PortIndex(p.To), Is: flowNames[p.Is], Closable: p.Closable, Clogs: p.Clogs,
			})
		}
		for _, p := range k.Passages {
			if p.From < 0 || p.To < 0 {
				return nil, fmt.Errorf("a passage of kind %q names a port that it lacks", f.Name)
			}
		}
		if slices.Contains(k.Boundary, -1) || slices.Contains(k.Rates, -1) {
			return nil, fmt.Errorf("kind %q names a port that it lacks", f.Name)
		}
		out[k.Name] = k
	}
	return out, nil
}

func (k *Kind) indices(names []string) []int {
	var out []int
	for _, n := range names {
		out = append(out, k.PortIndex(n))
	}
	return out
}

// KindNamed finds a kind by its name.
func KindNamed(name string) (*Kind, bool) {
	k, ok := kinds()[name]
	return k, ok
}

// KindNames lists the names of all kinds, sorted.
func KindNames() []string {
	var out []string
	for n := range kinds() {
		out = append(out, n)
	}
	slices.Sort(out)
	return out
}
