package request

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/order"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// Words says in English what a shop is asked for: what [Request] writes of the line.
func Words(n *order.Need) string {
	r := &Request{in: tongue("")}
	return r.describe(n)
}

// describe says what is to be bought, all that its place needs: the kind, what sets it
// apart, its ends, its material, its rating.
func (r *Request) describe(n *order.Need) string {
	it := n.Item
	if it == nil {
		return r.ofJoints(n)
	}
	if it.Title != "" {
		return it.Title // the shop's own words for it
	}
	parts := []string{r.in.word("kind", n.Kind)}
	add := func(yes bool, text string) {
		if yes {
			parts = append(parts, text)
		}
	}
	switch {
	case it.Spec != "" && it.BoreText != "":
		parts = append(parts, it.Spec+" "+it.BoreText) // as hoses are called: SAE 100R8 3/8"
	case it.BoreText != "":
		parts = append(parts, fmt.Sprintf("%s %s", it.BoreText, r.in.word("fact", "bore")))
	default:
		add(it.Spec != "", it.Spec)
	}
	add(it.Outside != nil, fmt.Sprintf("%s %s", lengthOf(it), r.in.word("fact", "outside")))
	add(it.Length != nil && it.IsHose(), lengthText(it))
	add(it.Process.Size != "", it.Process.Size)
	add(it.Micron != nil && (!catalog.IsKind(n.Kind, catalog.Filter) || catalog.IsKind(n.Kind, catalog.Carbon)), micronText(it))
	add(r.ends(it) != "", r.ends(it))
	add(it.Material != "", r.material(it.Material))
	if it.Scale != nil {
		parts = append(parts, fmt.Sprintf("%s 0-%s", r.in.word("fact", "reads"), it.Scale))
	}
	if it.Set != nil {
		parts = append(parts, fmt.Sprintf("%s %s", r.in.word("fact", "set at"), it.Set))
	}
	if it.Flow != nil {
		parts = append(parts, it.Flow.String())
	}
	if it.Motor != "" {
		parts = append(parts, it.Motor)
	}
	about := withoutSaid(it.About, it.Material, it.Motor, it.Class)
	add(about != "", about)
	add(it.Class != "", it.Class)
	switch {
	case catalog.IsKind(n.Kind, catalog.Gauge):
	case it.Rated != nil:
		parts = append(parts, fmt.Sprintf("%s %s", r.in.word("fact", "rated"), it.Rated))
	case it.Class == "" && it.Spec == "" && n.Load.Act > 0:
		parts = append(parts, fmt.Sprintf("%s %s bar", r.in.word("fact", "to hold"), quantity.Significant(max(n.Load.Act, n.Load.Fail).Bar(), 4)))
	}
	return strings.Join(parts, ", ")
}

// withoutSaid is a description without those of its parts that are said beside it already.
func withoutSaid(about string, said ...string) string {
	var out []string
	for part := range strings.SplitSeq(about, ",") {
		part = strings.TrimSpace(part)
		if !slices.ContainsFunc(said, func(s string) bool { return s != "" && strings.EqualFold(s, part) }) {
			out = append(out, part)
		}
	}
	return strings.Join(out, ", ")
}

func lengthOf(it *build.Item) string {
	if it.Outside == nil {
		return ""
	}
	return it.Outside.String()
}

func lengthText(it *build.Item) string {
	if it.Length == nil {
		return ""
	}
	return quantity.Significant(it.Length.Millimetres(), 4) + " mm"
}

func micronText(it *build.Item) string {
	if it.Micron == nil {
		return ""
	}
	return it.Micron.String()
}

// ofJoints names what joints need by its parts: the words are translated, sizes stay.
func (r *Request) ofJoints(n *order.Need) string {
	for _, head := range []string{"bonded washer", "flat gasket", "clamp for"} {
		if rest, ok := strings.CutPrefix(n.Key, head); ok {
			rest = strings.TrimSuffix(strings.TrimSpace(rest), " hose")
			return r.in.word("joint", head) + " " + rest
		}
	}
	if catalog.IsKind(n.Kind, catalog.Tape) {
		return r.in.word("kind", n.Kind) + " 12 mm x 12 m"
	}
	if rest, ok := strings.CutPrefix(n.Key, n.Kind); ok {
		return r.in.word("kind", n.Kind) + rest
	}
	return n.About
}

// ends lists the ends of a part: "3/8-18 NPT male x 1/4-18 NPT female".
func (r *Request) ends(it *build.Item) string {
	var out []string
	for i := range it.Ports {
		p := &it.Ports[i]
		if !p.Said || len(p.End.Candidates) == 0 {
			continue
		}
		var any []string
		for k := range p.End.Candidates {
			any = append(any, r.end(&p.End.Candidates[k]))
		}
		out = append(out, strings.Join(any, " / "))
	}
	return strings.Join(out, " x ")
}

// end writes one end with the words of the language; its designation stays.
func (r *Request) end(e *threads.End) string {
	var parts []string
	if e.Form != nil {
		parts = append(parts, e.Form.Designation)
	} else {
		parts = append(parts, e.Size, r.in.word("end", threads.PlainWord(e.Family)))
	}
	if e.Sex != threads.NoSex && e.Form != nil {
		parts = append(parts, r.in.word("end", e.Sex.String()))
	}
	if e.Swivel {
		parts = append(parts, r.in.word("end", "swivel"))
	}
	return strings.Join(parts, " ")
}

func (r *Request) material(text string) string {
	if _, ok := words()[[2]string{"material", strings.ToLower(text)}]; ok {
		return r.in.word("material", strings.ToLower(text))
	}
	return text
}
