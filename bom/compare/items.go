package compare

import (
	"fmt"
	"slices"

	"handtight/bom/build"
)

// contents lists items that are never placed: those inside units, and loose ones.
func (c *comparer) contents() {
	old, now := loose(c.old.Build), loose(c.new.Build)
	var gone, came []*build.Item
	for _, it := range old {
		if !slices.ContainsFunc(now, func(n *build.Item) bool { return n.ID == it.ID }) {
			gone = append(gone, it)
		}
	}
	for _, it := range now {
		if !slices.ContainsFunc(old, func(o *build.Item) bool { return o.ID == it.ID }) {
			came = append(came, it)
		}
	}
	for _, it := range gone {
		k := slices.IndexFunc(came, func(n *build.Item) bool {
			return n.Kind == it.Kind && n.Inside != "" && n.Inside == c.renamed(it.Inside)
		})
		if k < 0 {
			c.report.Removed = append(c.report.Removed, Thing{Name: it.ID, Item: it})
			continue
		}
		c.report.Replaced = append(c.report.Replaced, Replacement{Thing{Name: it.ID, Item: it}, Thing{Name: came[k].ID, Item: came[k]}})
		came = slices.Delete(came, k, k+1)
	}
	for _, it := range came {
		c.report.Added = append(c.report.Added, Thing{Name: it.ID, Item: it})
	}
}

// loose lists the items of a build that are counted and not joined.
func loose(b *build.Build) []*build.Item {
	return slices.DeleteFunc(slices.Clone(b.Items), func(it *build.Item) bool { return !it.Kind.Loose || it.Kind.Boats })
}

// renamed gives the id of what stands in the new build where an item stood in the old.
func (c *comparer) renamed(id string) string {
	for _, u := range c.old.Graph.Units {
		if u.Item.ID == id && c.to[u] != nil {
			return c.to[u].Item.ID
		}
	}
	return id
}

// items lists the facts that changed of items that kept their id.
func (c *comparer) items() {
	for _, now := range c.new.Build.Items {
		was, ok := c.old.Build.Item(now.ID)
		if !ok {
			continue
		}
		before, after := facts(was), facts(now)
		for i := range before {
			if before[i][1] != after[i][1] {
				c.report.Changed = append(c.report.Changed, Change{now.ID, before[i][0], orNot(before[i][1]), orNot(after[i][1])})
			}
		}
	}
}

func orNot(text string) string {
	if text == "" {
		return "not said"
	}
	return text
}

// facts are what matters of an item beside its id.
func facts(i *build.Item) [][2]string {
	return [][2]string{
		{"kind", i.Kind.Name}, {"ends", i.Ends()}, {"rated", text(i.Rated)}, {"class", i.Class}, {"spec", i.Spec},
		{"material", i.Material}, {"bore", text(i.Bore)}, {"length", text(i.Length)}, {"vacuum", text(i.Vacuum)},
		{"set", text(i.Set)}, {"full_flow", text(i.FullFlow)}, {"ratio", text(i.Process.Ratio)}, {"flow", text(i.Flow)}, {"shutoff", text(i.Shutoff)},
		{"stall", text(i.Stall)}, {"type", i.Type}, {"between", i.Between}, {"pressure", text(i.Pressure)},
		{"scale", text(i.Scale)}, {"micron", text(i.Micron)}, {"life", text(i.Life)}, {"fails", text(i.Fails)},
		{"have", some(i.Have.String())}, {"extra", some(i.Extra.String())},
	}
}

func some(count string) string {
	if count == "0" {
		return ""
	}
	return count
}

func text[T fmt.Stringer](v *T) string {
	if v == nil {
		return ""
	}
	return (*v).String()
}
