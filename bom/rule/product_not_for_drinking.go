package rule

import (
	"fmt"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
	"handtight/bom/graph"
	"handtight/bom/wetting"
	"handtight/catalog"
)

var productNotForDrinking = Rule{
	Slug:  "product-not-for-drinking",
	Title: "A part on the product side is not said to be fit for drinking water.",
	Why: `What the membrane makes is pure and hungry: it takes copper, zinc and lead from metals and
solvents from plastics, and it has no chlorine to keep it clean. A part on the product
side is of a material that is suitable, and is declared for drinking water: by its words, or by
a standard such as NSF/ANSI/CAN 61, AS/NZS 4020 or BS 6920. "Food grade" says less. Write what
the data sheet says into "about".`,
	Wrong: `
[[item]]
id = "vessel"
kind = "pressure vessel"
ports = { feed = '1/2 NPT female', brine = '1/2 NPT female', product = '1/4 NPT female' }
[[item]]
id = "elbow"
kind = "elbow"
material = "acetal"
ports = { a = '1/4 NPT male plastic', b = '10 mm push-in' }
[[run]]
name = "product"
path = ["vessel.product", "elbow"]
`,
	mend: []string{`
kind = "elbow"
`, `
kind = "elbow"
about = "push-in, NSF/ANSI 61"
`},
	harm:  finding.Spoils,
	check: findNotForDrinking,
}

// findNotForDrinking speaks once of what is not declared, and once of each material
// that is not suitable.
func findNotForDrinking(s *bom.System) []finding.Finding {
	waters := s.Waters
	var silent members
	var bad gathered[string]
	for _, u := range s.Graph.Units {
		if u.Item.Kind.Boats || !allProduct(waters, u) {
			continue
		}
		if m := unfit(u); m != nil {
			bad.unit(m.Name, u)
		} else if !declared(s, u) {
			silent.unit(u)
		}
	}
	var out []finding.Finding
	for _, name := range bad.keys {
		m, _ := catalog.MaterialNamed(name)
		f := finding.Finding{Severity: finding.Note}
		if m.In(catalog.Product) == catalog.No || m.Metal() {
			f.Severity = finding.Caution
		}
		g := bad.of[name]
		g.at(&f)
		f.Reason = fmt.Sprintf("the drinking water runs through %s, of %s: %s.", g.list(), m.Title, strings.TrimSuffix(m.WhyIn(catalog.Product), "."))
		f.Remedy = "Buy it of stainless or of a plastic that is declared for drinking water."
		out = append(out, f)
	}
	if len(silent.names) > 0 {
		f := finding.Finding{Severity: finding.Note, NotKnown: true}
		silent.at(&f)
		f.Reason = fmt.Sprintf("nothing says that these are fit for drinking water: %s.", silent.list())
		f.Remedy = "Ask for a declaration (NSF/ANSI/CAN 61, AS/NZS 4020, BS 6920) and write it into `about`, as in about = \"push-in elbow, drinking water quality\"."
		out = append(out, f)
	}
	return out
}

// allProduct reports whether every joined port of a unit carries the product: the
// vessel, which has it on one side only, is another matter.
func allProduct(waters *wetting.Waters, u *graph.Unit) bool {
	for i := range u.Item.Ports {
		if !waters.Product(u.First + i) {
			return false
		}
	}
	return len(u.Item.Ports) > 0
}

// unfit is the material of a unit that drinking water should not run through.
func unfit(u *graph.Unit) *catalog.Material {
	for _, m := range u.Item.Materials() {
		if a := m.In(catalog.Product); (a == catalog.No || a == catalog.Caution) && m.Name != "plastic" && m.Name != "rubber" {
			return m
		}
	}
	return nil
}

// declared reports whether the words of a unit's item, or of the stock that it is cut
// from, say that it is for drinking water.
func declared(s *bom.System, u *graph.Unit) bool {
	items := []*build.Item{u.Item}
	if stock, ok := s.Build.Item(u.Item.Of); ok {
		items = append(items, stock)
	}
	for _, it := range items {
		if _, ok := catalog.Potable(strings.Join([]string{it.About, it.Title, it.Material, it.Spec}, " | ")); ok {
			return true
		}
	}
	return false
}
