package stock

import (
	"embed"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"handtight/pressure/rows"
	"handtight/threads"
	"handtight/threads/title"
)

//go:embed table/*.csv
var tables embed.FS

// Item is one generic fitting.
type Item struct {
	ID       string        // made by rule: "bush-1/2-npt-male-1/4-npt-female-316-class-3000"
	Rule     string        // "S1"
	Kind     string        // of the catalogue
	Words    string        // "hexagon bush"
	Ends     []threads.End // none of what lies loose in a joint
	Texts    []string      // of the ends, as a shop prints them
	Material string
	Class    string // "class 3000"; "" without one
	Rated    string // what is claimed of it, with its unit: "10 bar"; "" without
	RatesAs  string // the word that its rating is asked by: its class, "machined", "ISO 4144"
	Standard string
	Usual    int // place of its make in the rule's list: the usual one first
	Steps    int // sizes between its largest and its smallest end
	Source   string
}

// Title is the line that a shop would print: "Hexagon bush 1/2 NPT male x 1/4 NPT female,
// 316, class 3000".
func (i *Item) Title() string {
	words := strings.ToUpper(i.Words[:1]) + i.Words[1:] + " " + strings.Join(i.Texts, " x ") + ", " + i.Material
	for _, more := range []string{i.Class, i.Rated} {
		if more != "" {
			words += ", " + more
		}
	}
	return words
}

// Items lists the stock. The list is shared and must not be changed.
func Items() []*Item { return items() }

var items = sync.OnceValue(func() []*Item {
	s := &maker{sizes: map[string][]string{}, ends: map[string]threads.End{}, seen: map[string]bool{}}
	for _, r := range table("size.csv") {
		s.sizes[r["rule"]+" "+r["of"]] = strings.Split(r["values"], "|")
	}
	makes := table("make.csv")
	for _, p := range table("pattern.csv") {
		usual := -1
		for _, m := range makes {
			if m["rule"] == p["rule"] {
				usual++
			}
			if m["rule"] != p["rule"] || m["kinds"] != "" && !slices.Contains(strings.Split(m["kinds"], "|"), p["kind"]) {
				continue
			}
			s.usual = usual
			s.expand(p, m)
		}
	}
	return s.out
})

// table reads a table of the program's own.
func table(name string) []map[string]string {
	return rows.All[map[string]string]("stock", tables, "table/"+name)
}

type maker struct {
	sizes map[string][]string
	ends  map[string]threads.End // by text; what is not read is no end
	seen  map[string]bool
	usual int
	out   []*Item
}

// expand makes every size of a pattern in one material.
func (s *maker) expand(p, m map[string]string) {
	steps, err := strconv.Atoi(p["steps"])
	if err != nil {
		return
	}
	rule := p["rule"]
	has := func(marks ...string) bool {
		return !slices.ContainsFunc(marks, func(mark string) bool { return !strings.Contains(p["ends"], mark) })
	}
	switch {
	case has("{a}", "{b}"):
		s.reducing(p, m, steps)
	case has("{h}", "{i}"):
		list := s.sizes[rule+" bore"]
		for i, a := range list {
			for _, b := range list[max(0, i-steps):i] {
				s.make(p, m, 0, "{h}", a, "{i}", b)
			}
		}
	case has("{d}", "{h}"):
		for _, d := range s.sizes[rule+" dash"] {
			for _, h := range s.sizes[rule+" bore of "+d] {
				s.make(p, m, 0, "{d}", d, "{h}", h)
			}
		}
	case has("{a}", "{h}"):
		for _, a := range s.sizes[rule+" pipe"] {
			for _, h := range s.sizes["S8 bore of "+a] {
				s.make(p, m, 0, "{a}", a, "{h}", h)
			}
		}
	case has("{a}"):
		for _, a := range s.sizes[rule+" pipe"] {
			s.make(p, m, 0, "{a}", a)
		}
	case has("{h}"):
		for _, h := range s.sizes[rule+" bore"] {
			s.make(p, m, 0, "{h}", h)
		}
	case has("{e}"):
		list := s.sizes[rule+" dash"]
		for i, d := range list {
			for k, e := range list[:i] {
				if i-k <= steps {
					s.make(p, m, i-k, "{d}", d, "{e}", e)
				}
			}
		}
	case !has("{"):
		s.make(p, m, 0)
	default:
		s.paired(p, m)
	}
}

// reducing makes the patterns of two pipe sizes, as many steps apart as the pattern says.
func (s *maker) reducing(p, m map[string]string, steps int) {
	rule, kind := p["rule"], p["kind"]
	list := s.sizes[rule+" pipe"]
	for i, a := range list {
		for k, b := range list {
			apart := i - k
			switch p["way"] {
			case "either":
				if abs(apart) > steps {
					continue
				}
			case "down":
				if apart < 0 || apart > steps || apart == 0 && rule != "S4" && kind != "nipple" && kind != "adaptor" {
					continue
				}
				if apart == 0 && kind == "nipple" && rule != "S10" {
					continue // the plain nipple has a row of its own
				}
			}
			s.make(p, m, abs(apart), "{a}", a, "{b}", b)
		}
	}
}

// paired makes the sizes of patterns whose pipe thread goes with a dash, tube, gauge or ferrule size.
func (s *maker) paired(p, m map[string]string) {
	for _, of := range []struct{ mark, list string }{{"{d}", "dash"}, {"{t}", "tube"}, {"{m}", "gauge"}, {"{f}", "ferrule"}, {"{p}", "dash"}} {
		if !strings.Contains(p["ends"], of.mark) {
			continue
		}
		if of.mark == "{p}" && strings.Contains(strings.ReplaceAll(p["ends"], "{p}", ""), "{") {
			continue // made with the size that it goes with
		}
		for _, d := range s.sizes[p["rule"]+" "+of.list] {
			if of.mark != "{p}" && !strings.Contains(p["ends"], "{p}") {
				s.make(p, m, 0, of.mark, d)
				continue
			}
			for _, pipe := range s.sizes[p["rule"]+" pipe of "+d] {
				if of.mark == "{p}" {
					s.make(p, m, 0, of.mark, pipe)
				} else {
					s.make(p, m, 0, of.mark, d, "{p}", pipe)
				}
			}
		}
	}
}

func abs(a int) int {
	if a < 0 {
		return -a
	}
	return a
}

// make adds one item; its ends are read as a shop's words are.
func (s *maker) make(p, m map[string]string, steps int, pairs ...string) {
	text := strings.NewReplacer(pairs...).Replace(p["ends"])
	it := &Item{Rule: p["rule"], Kind: p["kind"], Words: p["words"], Material: m["material"], Class: m["class"], Rated: m["rated"],
		RatesAs: m["rates as"], Standard: m["standard"], Usual: s.usual, Steps: steps, Source: p["source"] + "; " + m["source"]}
	for _, end := range strings.Split(text, ";") {
		if p["way"] == "loose" { // it lies in a joint, and has no end of its own
			it.Texts = append(it.Texts, end)
			continue
		}
		e, ok := s.end(end)
		if !ok {
			return
		}
		it.Ends = append(it.Ends, e)
		it.Texts = append(it.Texts, end)
	}
	id := p["words"] + " " + strings.Join(it.Texts, " x ") + " " + m["material"] + " " + m["class"]
	it.ID = strings.Join(strings.Fields(strings.ToLower(strings.ReplaceAll(id, " x ", " "))), "-")
	if s.seen[it.ID] {
		return
	}
	s.seen[it.ID] = true
	s.out = append(s.out, it)
}

func (s *maker) end(text string) (threads.End, bool) {
	if e, ok := s.ends[text]; ok {
		return e, e.Family != 0
	}
	r, err := title.ReadEnd(text)
	var e threads.End
	if err == nil && len(r.Candidates) == 1 {
		e = r.Candidates[0]
	}
	s.ends[text] = e
	return e, e.Family != 0
}

// Unread lists the end templates of the tables that are not read as one end: a fault of the
// tables. A test asks that there is none but those of sizes that a standard has not.
func Unread() []string {
	s := &maker{sizes: map[string][]string{}, ends: map[string]threads.End{}, seen: map[string]bool{}}
	for _, r := range table("size.csv") {
		s.sizes[r["rule"]+" "+r["of"]] = strings.Split(r["values"], "|")
	}
	for _, p := range table("pattern.csv") {
		s.expand(p, map[string]string{"material": "x"})
	}
	var out []string
	for text, e := range s.ends {
		if e.Family == 0 {
			out = append(out, text)
		}
	}
	slices.Sort(out)
	return out
}

// Counts is how many items each rule makes.
func Counts() map[string]int {
	out := map[string]int{}
	for _, it := range Items() {
		out[it.Rule]++
	}
	return out
}

// String is the item's id.
func (i *Item) String() string { return fmt.Sprintf("%s: %s", i.ID, i.Title()) }
