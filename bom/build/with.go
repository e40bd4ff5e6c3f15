package build

import (
	"maps"
	"slices"
)

// With gives the build with some of its items changed; the build itself, and the items that it has, stay
// as they are. Each key of change is an item's id. What is changed must need no other ports or places.
func (b *Build) With(change map[string]func(*Item)) *Build {
	out := *b
	out.ByID, out.Items = maps.Clone(b.ByID), slices.Clone(b.Items)
	for _, id := range slices.Sorted(maps.Keys(change)) {
		out.edit(id, change[id])
	}
	out.Runs = nil
	for _, r := range b.Runs {
		run := *r
		run.Steps = slices.Clone(r.Steps)
		for i := range run.Steps {
			run.Steps[i].Item = out.ByID[run.Steps[i].Item.ID]
		}
		out.Runs = append(out.Runs, &run)
	}
	return &out
}
