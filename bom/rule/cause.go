package rule

import (
	"slices"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/finding"
)

// setCauses says of findings of one rule what they have in common: the tube whose bore is wrong at eight
// joints, the tee that is placed three times with its branch open, the ratings that nobody wrote. A rule
// that said a cause itself keeps it; what shares its cause with no other has none.
func setCauses(s *bom.System, list []finding.Finding) {
	type group struct {
		slug, cause string
		severity    finding.Severity
		notKnown    bool
	}
	of := func(f *finding.Finding, cause string) group {
		return group{f.Slug, cause, f.Severity, f.NotKnown}
	}
	may := make([][]string, len(list))
	count := map[group]int{}
	for i := range list {
		f := &list[i]
		if f.Cause != "" && !byTube[f.Slug] {
			continue
		}
		may[i] = causesOf(s, f)
		for _, cause := range may[i] {
			count[of(f, cause)]++
		}
	}
	for i := range list {
		f := &list[i]
		best := 1
		for _, cause := range may[i] {
			if n := count[of(f, cause)]; n > best {
				best, f.Cause = n, cause
			}
		}
	}
}

// byTube are the rules of joints whose fault lies in a part and not in the pair of ends: the words of
// the pair are kept where no part has several of them.
var byTube = map[string]bool{"barb-and-bore-differ": true, "end-not-said": true, "end-left-open": true}

// oneCause are the rules whose findings have one cause, whatever part they stand at.
var oneCause = map[string]string{
	"rating-unknown": "ratings that are not said",
	"no-way-out":     "nothing opens",
}

// causesOf lists what a finding may have in common with others of its rule, the likelier first.
func causesOf(s *bom.System, f *finding.Finding) []string {
	if cause := oneCause[f.Slug]; cause != "" {
		return []string{cause}
	}
	x := f.Subject
	bought := func(unit, port string) string {
		u, ok := s.Graph.Unit(unit)
		if !ok {
			return ""
		}
		if port != "" && !u.Item.IsHose() {
			port = "." + port
		} else {
			port = ""
		}
		return boughtAs(u.Item) + port
	}
	var out []string
	switch x.Kind {
	case finding.Joint:
		if !byTube[f.Slug] {
			return nil
		}
		out = []string{bought(x.Unit, x.Port), bought(x.Unit2, x.Port2)}
	case finding.Unit:
		out = []string{bought(x.Unit, "")}
	case finding.Port:
		out = []string{bought(x.Unit, x.Port)}
	}
	return slices.DeleteFunc(out, func(cause string) bool { return cause == "" })
}

// boughtAs is the item that a part is bought as: of a piece of hose its stock.
func boughtAs(it *build.Item) string {
	if it.Of != "" {
		return it.Of
	}
	return it.ID
}
