package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/threads/title"
)

// catalogFacts is what a build file may name, in JSON.
type catalogFacts struct {
	Kinds     []kindFacts     `json:"kinds"`
	Materials []materialFacts `json:"materials"`
	Stock     []stockFacts    `json:"stock"` // generic fittings; empty where nothing is looked for
	Items     []ownFacts      `json:"items"` // of the build that --with names
}

type kindFacts struct {
	Name     string   `json:"name"`
	Ports    []string `json:"ports"`
	Optional []string `json:"optional"` // ports that a part of the kind may lack
	Keys     []string `json:"keys"`     // beside those of every item
	Boats    bool     `json:"boats"`    // the boat's own: never bought
}

type materialFacts struct {
	Name     string `json:"name"`
	Title    string `json:"title"`
	Raw      string `json:"raw_sea"`
	Pressed  string `json:"high_pressure_sea"`
	Standing string `json:"standing_sea"`
	Product  string `json:"product"`
	Why      string `json:"why"`
	Source   string `json:"source"`
	Hull     string `json:"hull"` // as a skin fitting or seacock below the waterline
	WhyThere string `json:"hull_why"`
	WhyDrunk string `json:"product_why"`
}

func (a *app) catalogCommand() *cobra.Command {
	var with string
	var byEnds bool
	cmd := &cobra.Command{
		Use:   "catalog [WORD] | catalog --stock END [END]",
		Short: "The kinds of parts, the materials, and the generic fittings that a build may name",
		Long: `Lists the kinds of parts, with their ports in order and the keys of their own, and the
materials, with how each stands in the waters of a desalinator. A word narrows both: part of a
name, or what a shop calls it. It also finds generic fittings, by every word of theirs; no
brand and no price is among them. --stock finds those that have one or two ends. --with adds
the items of a build and what shops ask for them.`,
		Example: `  handtight catalog
  handtight catalog 'bush 1/2 npt 316'
  handtight catalog --stock '1/2 NPT male' 'G 1/2 male'
  handtight catalog strainer --with testdata/shops/build.toml`,
		Args: func(cmd *cobra.Command, args []string) error {
			switch {
			case byEnds && (len(args) < 1 || len(args) > 2):
				return fmt.Errorf("`%s --stock` takes one end or two, each between quotes, and %d were given", cmd.CommandPath(), len(args))
			case !byEnds && len(args) > 1:
				return fmt.Errorf("`%s` takes one word, and %d were given; put several between quotes", cmd.CommandPath(), len(args))
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			var own *build.Build
			if with != "" {
				b, faults := a.read(with)
				if len(faults) > 0 {
					return faults
				}
				own = b
			}
			f, err := catalogFactsOf(args, byEnds, own)
			if err != nil {
				return err
			}
			if a.json {
				return a.ui.printJSON(f)
			}
			a.printKinds(f.Kinds)
			a.printMaterials(f.Materials, len(args) > 0)
			a.printOwn(f.Items)
			a.printStock(f.Stock)
			return nil
		},
	}
	cmd.Flags().BoolVar(&byEnds, "stock", false, "find fittings by one or two of their ends")
	cmd.Flags().StringVar(&with, "with", "", "a build whose own items and offers are looked through as well")
	return cmd
}

// catalogFactsOf looks for a word, or for ends. Errors: an end that is not understood; nothing
// found.
func catalogFactsOf(args []string, byEnds bool, own *build.Build) (catalogFacts, error) {
	f := catalogFacts{Kinds: []kindFacts{}, Materials: []materialFacts{}}
	var want sought
	if byEnds {
		for _, text := range args {
			e, err := oneEnd(strings.TrimSpace(text))
			if err != nil {
				return f, err
			}
			want.ends = append(want.ends, e)
		}
	} else {
		word := strings.Join(args, "")
		f.Kinds, f.Materials = kindsOf(word), materialsOf(word)
		want.words = strings.Fields(strings.ToLower(word))
	}
	f.Stock, f.Items = want.stockOf(), want.itemsOf(own)
	switch {
	case len(f.Kinds)+len(f.Materials)+len(f.Stock)+len(f.Items) > 0:
		return f, nil
	case byEnds:
		return f, fmt.Errorf("no generic fitting has %s: `handtight adapt` finds what goes between two ends", strings.Join(args, " and "))
	}
	return f, fmt.Errorf("nothing is called `%s`: `handtight catalog` lists all", strings.Join(args, ""))
}

// kindsOf lists the kinds whose name holds a word, or that a shop's word stands for.
func kindsOf(word string) []kindFacts {
	out := []kindFacts{}
	meant := title.Read(word).Kind
	if also, ok := catalog.KindMeant(word); ok {
		meant = also.Write
	}
	for _, name := range catalog.KindNames() {
		if name != meant && !strings.Contains(name, strings.ToLower(word)) {
			continue
		}
		k, _ := catalog.KindNamed(name)
		f := kindFacts{Name: name, Ports: []string{}, Optional: []string{}, Keys: []string{}, Boats: k.Boats}
		f.Ports, f.Optional, f.Keys = append(f.Ports, k.Ports...), append(f.Optional, k.Optional...), append(f.Keys, k.Keys...)
		out = append(out, f)
	}
	return out
}

// materialsOf lists the materials whose name or title holds a word, or that it names.
func materialsOf(word string) []materialFacts {
	out := []materialFacts{}
	named, _ := catalog.MaterialNamed(word)
	for _, m := range catalog.Materials() {
		if m != named && !strings.Contains(strings.ToLower(m.Name+" "+m.Title), strings.ToLower(word)) {
			continue
		}
		out = append(out, materialFacts{
			m.Name, m.Title, m.In(catalog.RawSea).String(), m.In(catalog.PressedSea).String(),
			m.In(catalog.StandingSea).String(), m.In(catalog.Product).String(), m.Why, m.Source,
			m.In(catalog.Hull).String(), m.WhyIn(catalog.Hull), m.WhyIn(catalog.Product),
		})
	}
	return out
}

var kindColumns = []column{{title: "kind"}, {title: "ports, in order", flex: true}, {title: "keys of its own", flex: true}}

func (a *app) printKinds(list []kindFacts) {
	if len(list) == 0 {
		return
	}
	u := a.ui
	u.say(bold, "Kinds of parts: ports in brackets may be left out")
	var rows [][]string
	for _, k := range list {
		ports := make([]string, len(k.Ports))
		for i, p := range k.Ports {
			ports[i] = p
			if slices.Contains(k.Optional, p) {
				ports[i] = "(" + p + ")"
			}
		}
		row := []string{k.Name, strings.Join(ports, ", "), strings.Join(k.Keys, ", ")}
		if k.Boats {
			row[0] += " (the boat's)"
		}
		rows = append(rows, row)
	}
	if !u.table(kindColumns, rows) {
		for _, r := range rows {
			u.fold("  -", fmt.Sprintf("%s: ports %s; keys %s", r[0], orNone(r[1]), orNone(r[2])))
		}
	}
	u.line("")
}

func orNone(text string) string {
	if text == "" {
		return "none"
	}
	return text
}

var materialColumns = []column{
	{title: "material"}, {title: "in sea water"}, {title: "at high pressure"}, {title: "standing"}, {title: "product"},
}

// printMaterials prints the materials; why, of a few.
func (a *app) printMaterials(list []materialFacts, why bool) {
	if len(list) == 0 {
		return
	}
	u := a.ui
	u.say(bold, "Materials: how each stands in the waters of a desalinator")
	var rows [][]string
	for _, m := range list {
		rows = append(rows, []string{m.Name, m.Raw, m.Pressed, m.Standing, m.Product})
	}
	if !u.table(materialColumns, rows) {
		for _, r := range rows {
			u.fold("  -", fmt.Sprintf("%s: in sea water %s, at high pressure %s, standing %s, product %s", r[0], r[1], r[2], r[3], r[4]))
		}
	}
	if why {
		for _, m := range list {
			u.fold("  -", fmt.Sprintf("%s: %s (%s)", m.Name, m.Why, m.Source))
			if m.WhyDrunk != m.Why {
				u.fold("", "product water: "+m.WhyDrunk)
			}
			if m.WhyThere != m.Why {
				u.fold("", "below the waterline: "+m.WhyThere)
			}
		}
	}
	u.line("")
}
