package workshop

import (
	"cmp"
	"embed"
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"
	"sync"

	"handtight/bom"
	"handtight/bom/graph"
	"handtight/bom/joint"
	"handtight/bom/money"
	"handtight/catalog"
	"handtight/pressure/rows"
	"handtight/threads"
)

//go:embed table/*.csv
var tables embed.FS

// Tool is one thing to have at hand.
type Tool struct {
	Name  string // "two spanners 11/16 in across flats"
	For   string // "nuts of JIC -6; J23, J27"
	Basis string // the source, "measured", "estimated", "judgement"
}

type flat struct{ family, size, part, mm, inch, status, source string }

var flats = sync.OnceValue(func() []flat {
	var out []flat
	for _, r := range rows.Each[map[string]string]("workshop", tables, "table/flats.csv") {
		out = append(out, flat{r["family"], r["size"], r["part"], r["mm"], r["inch"], r["status"], r["source"]})
	}
	return out
})

func flatOf(e threads.End) (flat, bool) {
	if e.Form == nil {
		return flat{}, false
	}
	for _, f := range flats() {
		if f.family == e.Family.String() && f.size == e.Size {
			return f, true
		}
	}
	return flat{}, false
}

// Tools lists what this build needs and nothing else: spanners by the ends that are turned,
// two of each since one part is held; what cuts its hoses; keys for its clamps; what a leak
// test wants. Hexagons of pipe-thread bodies have no one standard: an adjustable spanner up
// to the thread's own diameter and a third more is said to be estimated. 37 degree nuts come
// with inch hexagons, and after the revision of SAE J514 of 2021 with metric ones too: measure.
func Tools(sys *bom.System) []Tool {
	w := work{spanners: map[string]*spanners{}}
	for _, j := range sys.Graph.Joints {
		w.joint(sys, j)
	}
	out := w.tools()
	for _, h := range Hoses(sys) {
		if h.Unit.Item.Of == "" {
			out = append(out, Tool{"no tool of yours: a shop's press", "the ends of " + h.Unit.Name + " are crimped or swaged on by a shop", "common practice"})
			break
		}
	}
	if tape := tapeOf(sys); tape > 0 {
		out = append(out, Tool{fmt.Sprintf("tape, %d rolls or more as the list says, and a brush for the threads", tape), "the tapers; the wraps stand on each card", "the order"})
	}
	if !slices.ContainsFunc(sys.Graph.Units, func(u *graph.Unit) bool {
		return u.Item.Kind.Is(catalog.Gauge) && sys.Segments.SegmentOf(u.First).High()
	}) {
		out = append(out, Tool{"a gauge on the high-pressure side", "none stands in the build, and the steps of the leak test are read on one", "judgement"})
	}
	return append(out,
		Tool{"a marker and tags", "the numbers of the joints, and both ends of every hose", "judgement"},
		Tool{"a lamp, dry paper, a bucket, towels, a wet vacuum cleaner", "the leak test", "judgement"},
		Tool{"eye protection and gloves", "the stages under pressure; a jet goes through skin", "common practice"})
}

// work is what the joints of a build ask for, each with their numbers.
type work struct {
	spanners            map[string]*spanners // by family and size
	wide                []int                // bodies of pipe threads
	widest              float64              // mm over their threads, and a third more
	clamps, push, barbs []int
}

// spanners are those of one size of nut.
type spanners struct {
	name, why, basis string
	joints           []int
}

// joint notes what one joint asks for.
func (w *work) joint(sys *bom.System, j *graph.Joint) {
	for _, port := range []int{j.A, j.B} {
		c := sys.Graph.Ports[port].Port.End.Candidates
		if len(c) == 0 {
			continue
		}
		e := c[0]
		switch f, ok := turned(e); {
		case e.Family == threads.Push:
			w.push = appendOnce(w.push, j.Number)
		case e.Family == threads.Barb:
			w.barbs = appendOnce(w.barbs, j.Number)
		case ok:
			key := f.family + f.size
			if w.spanners[key] == nil {
				w.spanners[key] = &spanners{name: "two spanners " + f.across() + " across flats", why: f.part + " of " + f.family + " " + f.size, basis: f.status + ": " + f.source}
			}
			w.spanners[key].joints = appendOnce(w.spanners[key].joints, j.Number)
		case e.Form != nil && e.Sex == threads.Male:
			w.widest = max(w.widest, float64(e.Form.Major)*4/3)
			w.wide = appendOnce(w.wide, j.Number)
		}
	}
	if joint.Clamps(sys.Graph, j) > 0 {
		w.clamps = appendOnce(w.clamps, j.Number)
	}
}

// tools lists the tools of the joints, spanners in the order of the first joint that wants them.
func (w *work) tools() []Tool {
	list := slices.SortedFunc(maps.Values(w.spanners), func(a, b *spanners) int {
		return cmp.Or(cmp.Compare(a.joints[0], b.joints[0]), cmp.Compare(a.name, b.name), cmp.Compare(a.why, b.why))
	})
	var out []Tool
	for _, s := range list {
		out = append(out, Tool{s.name, s.why + "; " + joints(s.joints), s.basis})
	}
	for _, t := range []struct {
		of []int
		Tool
	}{
		{w.wide, Tool{fmt.Sprintf("two adjustable spanners up to %d mm", int(math.Ceil(w.widest))), "bodies of pipe threads; ", "estimated from the thread: measure"}},
		{w.barbs, Tool{"a sharp knife and a mitre box, or a hose cutter", "square ends of hose; ", "judgement"}},
		{w.push, Tool{"a tube cutter and something to take the burr off", "push-in tube, cut square; ", "judgement"}},
		{w.clamps, Tool{"a nut driver for the clamps' screws", "clamps; ", "judgement: 7 or 8 mm is usual, measure"}},
	} {
		if len(t.of) > 0 {
			t.For += joints(t.of)
			out = append(out, t.Tool)
		}
	}
	return out
}

// turned is the hexagon of a nut that is turned: of an end that swivels, or that always has a nut.
func turned(e threads.End) (flat, bool) {
	f, ok := flatOf(e)
	return f, ok && (e.Swivel || f.family != "G")
}

// tapeOf is how many rolls of tape the build's joints take.
func tapeOf(sys *bom.System) int {
	needs, err := sys.Needs()
	if err != nil {
		return 0
	}
	rolls := 0
	for _, n := range needs {
		if strings.HasPrefix(n.Key, "tape") && n.Item == nil {
			if whole, err := n.Placed.CeilTo(money.Piece); err == nil {
				rolls += int(whole / money.Piece)
			}
		}
	}
	return rolls
}

func appendOnce(list []int, n int) []int {
	if slices.Contains(list, n) {
		return list
	}
	return append(list, n)
}

// joints spells numbers out, runs drawn together.
func joints(list []int) string {
	list = slices.Clone(list)
	slices.Sort(list)
	var out []string
	for i := 0; i < len(list); {
		k := i
		for k+1 < len(list) && list[k+1] == list[k]+1 {
			k++
		}
		switch {
		case k == i:
			out = append(out, fmt.Sprintf("J%d", list[i]))
		case k == i+1:
			out = append(out, fmt.Sprintf("J%d, J%d", list[i], list[k]))
		default:
			out = append(out, fmt.Sprintf("J%d to J%d", list[i], list[k]))
		}
		i = k + 1
	}
	return strings.Join(out, ", ")
}

// Spanners names the spanners of a joint's nuts, where a table has their hexagons: "two of
// 11/16 in (nut of JIC -6)"; "" where it has none.
func Spanners(sys *bom.System, j *graph.Joint) string {
	for _, port := range []int{j.A, j.B} {
		c := sys.Graph.Ports[port].Port.End.Candidates
		if len(c) == 0 {
			continue
		}
		if f, ok := turned(c[0]); ok {
			text := fmt.Sprintf("two spanners, %s across flats (%s of %s %s", f.across(), f.part, f.family, f.size)
			if f.status == "memory" {
				text += ", from memory"
			}
			return text + "): hold the body, turn the nut"
		}
	}
	return ""
}

func (f *flat) across() string {
	if f.inch != "" {
		return f.inch + " in"
	}
	return f.mm + " mm"
}
