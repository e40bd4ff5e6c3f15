package build

import (
	"fmt"
	"maps"
	"slices"

	"handtight/catalog"
)

// Waiting reports whether an item has no ports to be placed by and stands on the list
// only as the alternative to another: it is not counted until it is chosen.
func (b *Build) Waiting(it *Item) bool {
	if !it.Kind.Loose || it.Extra > 0 {
		return false
	}
	return slices.ContainsFunc(b.Options, func(o Option) bool { return o.Item == it.ID }) &&
		!slices.ContainsFunc(b.Options, func(o Option) bool { return o.For == it.ID })
}

// Swap gives the build with items put in place of others: each key of swaps is the
// id of an item that is placed, each value the id of the one to take instead. The build
// itself stays as it is.
//
// Runs, plugged ports and ports left open follow. Contents keep their unit: the one
// taken instead of a content lies inside the same unit, and a unit taken instead of one
// with contents takes them over unless it has contents of its own. The options of the
// new build are turned round. Of hose stock all hoses that are cut from it are cut from the other:
// they have what it has, and keep what they say themselves.
//
// Errors: an id that no item has; an item without ports for one with ports, or the
// reverse; hose stock for anything else, and stock without a bore for hoses that need one.
func (b *Build) Swap(swaps map[string]string) (*Build, error) {
	out := *b
	out.ByID = maps.Clone(b.ByID)
	out.Items = slices.Clone(b.Items)
	for _, from := range slices.Sorted(maps.Keys(swaps)) {
		old, okOld := b.ByID[from]
		item, ok := b.ByID[swaps[from]]
		switch {
		case !ok || !okOld:
			return nil, fmt.Errorf("`%s` or `%s` is no item of the build", from, swaps[from])
		case old.Kind.Is(catalog.HoseStock) != item.Kind.Is(catalog.HoseStock):
			return nil, fmt.Errorf("`%s` (%s) cannot stand for `%s` (%s): for a hose cut from stock name another [[hose]], for stock other stock", item.ID, item.Kind.Name, old.ID, old.Kind.Name)
		case old.Kind.Loose != item.Kind.Loose:
			return nil, fmt.Errorf("`%s` (%s) cannot stand for `%s` (%s)", item.ID, item.Kind.Name, old.ID, old.Kind.Name)
		}
		out.takeOver(old, item)
		if err := out.cutFrom(old, item); err != nil {
			return nil, err
		}
	}
	out.Runs = nil
	for _, r := range b.Runs {
		run := *r
		run.Steps = slices.Clone(r.Steps)
		for i := range run.Steps {
			if to, ok := swaps[run.Steps[i].Item.ID]; ok {
				run.Steps[i].Item = out.ByID[to]
				run.Steps[i].Text = to + run.Steps[i].Text[min(len(run.Steps[i].Text), len(r.Steps[i].Item.ID)):]
			} else {
				run.Steps[i].Item = out.ByID[run.Steps[i].Item.ID]
			}
		}
		out.Runs = append(out.Runs, &run)
	}
	out.Plugged, out.LeftOpen = follow(b.Plugged, swaps), follow(b.LeftOpen, swaps)
	out.Options = slices.Clone(b.Options)
	for i, o := range out.Options {
		if swaps[o.For] == o.Item {
			out.Options[i].For, out.Options[i].Item = o.Item, o.For
		}
	}
	return &out, nil
}

// takeOver gives an item the place of another among the contents.
func (b *Build) takeOver(old, item *Item) {
	if old.Inside != "" && item.Inside == "" {
		b.edit(item.ID, func(i *Item) { i.Inside, i.Each = old.Inside, old.Each })
	}
	if old.Inside != "" {
		b.edit(old.ID, func(i *Item) { i.Inside = "" })
	}
	has := func(id string) bool {
		return slices.ContainsFunc(b.Items, func(i *Item) bool { return i.Inside == id })
	}
	if !has(old.ID) || has(item.ID) {
		return
	}
	for _, it := range slices.Clone(b.Items) {
		if it.Inside == old.ID {
			b.edit(it.ID, func(i *Item) { i.Inside = item.ID })
		}
	}
}

// cutFrom cuts all hoses of one stock from another.
func (b *Build) cutFrom(old, stock *Item) error {
	if !stock.Kind.Is(catalog.HoseStock) {
		return nil
	}
	for _, it := range slices.Clone(b.Items) {
		if !it.IsHose() || it.Of != old.ID {
			continue
		}
		var err error
		b.edit(it.ID, func(i *Item) { err = i.CutFrom(stock) })
		if err != nil {
			return fmt.Errorf("`%s`: %w", stock.ID, err)
		}
	}
	return nil
}

// edit changes a copy of an item.
func (b *Build) edit(id string, change func(*Item)) {
	at := slices.IndexFunc(b.Items, func(i *Item) bool { return i.ID == id })
	it := *b.Items[at]
	change(&it)
	b.Items[at], b.ByID[id] = &it, &it
}

// follow gives ports by the names that their units have after a swap.
func follow(refs []PortRef, swaps map[string]string) []PortRef {
	out := slices.Clone(refs)
	for i := range out {
		id, label := out[i].Unit, ""
		if at := slices.Index([]byte(id), '/'); at >= 0 {
			id, label = id[:at], id[at:]
		}
		if to, ok := swaps[id]; ok {
			out[i].Unit = to + label
		}
	}
	return out
}
