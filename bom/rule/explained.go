package rule

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/catalog"
	"handtight/pressure/quantity"
)

// One fault may be the whole cause of another: a coarse cartridge in a fine housing is why no fine filter
// stands before the pump. That it is the whole cause is proved and never taken: the first is mended in a
// copy of the build as its own remedy says, and what the copy still shows has a cause of its own and stays.

// explanation is a rule whose findings may be the cause of those of others, and how they are mended.
type explanation struct {
	slug   string
	of     func(*Rule) bool
	mended func(*bom.System, []finding.Finding) *build.Build // nil where it cannot be told
}

func explanations() []explanation {
	is := func(slug string) func(*Rule) bool { return func(r *Rule) bool { return r.Slug == slug } }
	return []explanation{
		{elementAndVesselDiffer.Slug, func(r *Rule) bool { return r.flows != nil }, fittingElements},
		{cartridgeAndHousingDiffer.Slug, is(noFineFilter.Slug), fittingCartridges},
		{reliefTooSmall.Slug, is(noWayOut.Slug), ampleReliefs},
		{reliefSetHigh.Slug, is(pressureOverElement.Slug), loweredReliefs},
		{waterFreezes.Slug, is(partTooWarm.Slug), warmerWater},
	}
}

// unexplained leaves out what another finding is the whole cause of; that one then names it, and is as
// severe as the worst of what it explains.
func unexplained(s *bom.System, list []finding.Finding) []finding.Finding {
	for _, x := range explanations() {
		causes, may := ofRule(list, x.slug), false
		of := map[string]bool{}
		for _, r := range All() {
			of[r.Slug] = r.Slug != x.slug && x.of(&r)
		}
		for i := range list {
			may = may || of[list[i].Slug]
		}
		if len(causes) == 0 || !may {
			continue
		}
		mended := x.mended(s, causes)
		if mended == nil {
			continue
		}
		copied, faults := bom.Walk(mended)
		if len(faults) > 0 {
			continue
		}
		list = withoutExplained(list, x.slug, of, stillThere(copied, of))
	}
	return list
}

func ofRule(list []finding.Finding, slug string) []finding.Finding {
	return slices.DeleteFunc(slices.Clone(list), func(f finding.Finding) bool { return f.Slug != slug })
}

// stillThere are the findings of some rules in a copy that was mended, by what they are about.
func stillThere(s *bom.System, of map[string]bool) map[string]finding.Finding {
	var found []finding.Finding
	flows := false
	for _, r := range All() {
		if !of[r.Slug] {
			continue
		}
		switch {
		case r.check != nil:
			for _, f := range r.check(s) {
				f.Slug = r.Slug
				found = append(found, f)
			}
		case r.flows != nil:
			flows = true
		}
	}
	if flows {
		found = append(found, flowing(s, duty.Of(s))...)
	}
	out := map[string]finding.Finding{}
	for _, f := range found {
		out[sameFault(&f)] = f
	}
	return out
}

// sameFault is what two findings share that are of one fault: the rule and what it is about.
func sameFault(f *finding.Finding) string { return f.Slug + " " + f.Subject.String() }

// withoutExplained takes out the findings that the mended copy has no more, and gives those that it has as
// it has them: their figures are those that are left when the first is mended.
func withoutExplained(list []finding.Finding, slug string, of map[string]bool, still map[string]finding.Finding) []finding.Finding {
	var out []finding.Finding
	var slugs []string
	gone := map[string][]string{} // what each rule's findings were about
	worst := finding.Note
	for _, f := range list {
		if of[f.Slug] {
			left, stands := still[sameFault(&f)]
			if !stands {
				worst = min(worst, f.Severity)
				if gone[f.Slug] == nil {
					slugs = append(slugs, f.Slug)
				}
				if name := f.Subject.String(); !slices.Contains(gone[f.Slug], name) {
					gone[f.Slug] = append(gone[f.Slug], name)
				}
				continue
			}
			f = left
		}
		out = append(out, f)
	}
	if len(slugs) == 0 {
		return out
	}
	for i, slug := range slugs {
		slugs[i] = fmt.Sprintf("`%s` (%s)", slug, strings.Join(gone[slug], ", "))
	}
	for i := range out {
		if f := &out[i]; f.Slug == slug {
			f.Severity = min(f.Severity, worst)
			f.Reason += fmt.Sprintf(" It is the cause of %s too.", strings.Join(slugs, " and "))
		}
	}
	return out
}

// fittingElements is the build with elements of their vessels' sizes: of the sizes that are wrong, new
// ones, of which the class alone says what they make.
func fittingElements(s *bom.System, causes []finding.Finding) *build.Build {
	change := map[string]func(*build.Item){}
	for _, u := range vessels(s) {
		inside := contents(s, u.Item, catalog.Element)
		across, long, ok := sizeOf(u.Item)
		if !ok || len(inside) != 1 || !blamed(causes, inside[0].ID) {
			continue
		}
		each := 1
		if n := u.Item.Process.Elements; n != nil {
			each = *n
			if u.Item.Process.Size == "" {
				long /= float64(each)
			}
		}
		size := fmt.Sprintf("%.0f%.0f", across*10, long)
		change[inside[0].ID] = func(it *build.Item) {
			it.Process = build.Process{Size: size, MaxPressure: it.Process.MaxPressure}
			it.Each, it.Length = each, nil
		}
	}
	if len(change) == 0 {
		return nil
	}
	return s.Build.With(change)
}

// fittingCartridges is the build with cartridges as fine as their housings say.
func fittingCartridges(s *bom.System, causes []finding.Finding) *build.Build {
	change := map[string]func(*build.Item){}
	for _, it := range s.Build.Items {
		if housing, ok := s.Build.Item(it.Inside); ok && housing.Micron != nil && it.Micron != nil && blamed(causes, it.ID) {
			change[it.ID] = func(it *build.Item) { it.Micron = housing.Micron }
		}
	}
	return s.Build.With(change)
}

// ampleReliefs is the build whose reliefs each pass what all pumps before them deliver.
func ampleReliefs(s *bom.System, _ []finding.Finding) *build.Build {
	change := map[string]func(*build.Item){}
	for _, g := range reliefGroups(s) {
		_, most, _ := g.flow()
		for _, u := range g.reliefs {
			if u.Item.Flow == nil {
				continue // what nobody said is not mended by a larger one
			}
			change[u.Item.ID] = func(it *build.Item) {
				flow := max(most, *it.Flow)
				it.Flow = &flow
			}
		}
	}
	return s.Build.With(change)
}

// loweredReliefs is the build whose reliefs are set as low as the weakest part of their lines asks.
func loweredReliefs(s *bom.System, causes []finding.Finding) *build.Build {
	change := map[string]func(*build.Item){}
	for _, u := range reliefs(s) {
		g := s.Segments.SegmentOf(u.First + u.Item.PortIndex("in"))
		parts := guarded(s, g)
		if len(parts) == 0 || !blamed(causes, u.Name) {
			continue
		}
		to, ok := lowered(s, u, g, parts[0])
		if !ok {
			continue
		}
		full := to.most.Times(rises(u))
		change[u.Item.ID] = func(it *build.Item) {
			it.Set = &to.most
			if it.FullFlow != nil {
				it.FullFlow = &full
			}
		}
	}
	return s.Build.With(change)
}

// warmerWater is the build in a sea and a space where nothing freezes.
func warmerWater(s *bom.System, _ []finding.Finding) *build.Build {
	const mild = 5 * quantity.Celsius
	out := s.Build.With(nil)
	d := &out.Duty
	if d.Waters != nil {
		waters := *d.Waters
		waters.Lo, waters.Hi = max(waters.Lo, mild), max(waters.Hi, mild)
		d.Waters, d.Water = &waters, &waters.Hi
	}
	if d.Space != nil {
		space := max(*d.Space, mild)
		d.Space = &space
	}
	return out
}

// blamed reports whether one of some findings is about a unit or an item of a name.
func blamed(list []finding.Finding, name string) bool {
	return slices.ContainsFunc(list, func(f finding.Finding) bool { return f.Subject.Unit == name || f.Subject.Item == name })
}
