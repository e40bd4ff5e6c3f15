package order

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/bom/build"
	"handtight/bom/cut"
	"handtight/bom/graph"
	"handtight/bom/joint"
	"handtight/bom/money"
	"handtight/bom/rating"
	"handtight/bom/source"
	"handtight/bom/spares"
	"handtight/bom/state"
	"handtight/catalog"
	"handtight/threads"
	"handtight/threads/makeup"
)

// Need is how much of one thing the build takes, before any shop is asked.
type Need struct {
	Key       string      // the item's id, or the name of what a joint needs
	Item      *build.Item // nil for what joints need and no item stands for
	Kind      string
	About     string
	Placed    money.Quantity // placed units and contents; metres of hose
	Planned   money.Quantity // planned changes
	Spare     money.Quantity
	Extra     money.Quantity
	Have      money.Quantity
	Unit      string // "pc", "m", "roll"
	Advice    []Why  // why so many spares and changes
	Risk      Risk
	Joints    []int
	Question  string
	Load      state.Load // the worst that any of its units sees
	Allowable rating.Allowable
	Pieces    []cut.Piece // of hose stock: what is cut from it; nil where that is not planned
	Aboard    int         // of hose stock: mm aboard, taken to be one length
}

// Why is one reason for spares or planned changes.
type Why struct {
	Rule  string // "spoiled while fitting", "planned change", "random wear", "asked for"
	Count money.Quantity
	Text  string
}

// Risk is what the spares of a need are for: pieces that may be spoiled while they are
// fitted, and failures that come at random. The zero value is none.
type Risk struct {
	Fit   int     // pieces to fit
	Spoil float64 // chance that one is spoiled, 0 to 1
	Mean  float64 // failures expected while away
}

// Without is the chance that so many spares are not enough.
func (r Risk) Without(spare int) (float64, error) { return spares.Short(r.Fit, r.Spoil, r.Mean, spare) }

// Known reports whether anything is known to befall the pieces.
func (r Risk) Known() bool { return r.Fit > 0 && r.Spoil > 0 || r.Mean > 0 }

// Build is what the build itself takes: placed, planned and extra.
func (n *Need) Build() money.Quantity { return n.Placed + n.Planned + n.Extra }

// Buy is what must be bought, before rounding to packs; never below zero.
func (n *Need) Buy() money.Quantity { return max(0, n.Build()+n.Spare-n.Have) }

// Needs counts what to buy: units and contents, hose by its stock, and the tape,
// washers, rings and clamps that the joints ask for. Items come in the order of the
// files, then what joints need by name.
func Needs(states *state.States, ratings *rating.Ratings) ([]*Need, error) {
	c := &counter{sys: states, ratings: ratings, byKey: map[string]*Need{}}
	c.items()
	c.pieces()
	c.units()
	c.cuts()
	c.contents()
	c.joints()
	c.tapeRolls()
	for _, n := range c.needs {
		slices.Sort(n.Joints)
		n.Joints = slices.Compact(n.Joints)
		if err := c.spare(n); err != nil {
			return nil, fmt.Errorf("%s: %w", n.Key, err)
		}
	}
	return slices.DeleteFunc(c.needs, func(n *Need) bool { return n.Build() == 0 && n.Spare == 0 }), nil
}

type counter struct {
	sys     *state.States
	ratings *rating.Ratings
	needs   []*Need
	byKey   map[string]*Need
	tape    threads.Length
	taped   []int
	placed  map[*build.Item]int
}

// items makes a line for everything that can be bought.
func (c *counter) items() {
	for _, it := range c.sys.Graph.Build.Items {
		if it.Kind.Boats || it.IsHose() && it.Of != "" || c.sys.Graph.Build.Waiting(it) {
			continue
		}
		n := c.line(it.ID, it.Kind.Name, it.Described(), "pc")
		n.Item, n.Have, n.Extra = it, it.Have, it.Extra
		if it.Kind.Is(catalog.HoseStock) {
			n.Unit = "m"
		}
		n.Question = it.Question()
	}
}

// pieces turns what is had and wanted of hoses cut from stock into metres of it.
func (c *counter) pieces() {
	for _, it := range c.sys.Graph.Build.Items {
		if n, ok := c.byKey[it.Of]; ok && it.IsHose() {
			n.Have += it.Metres() * (it.Have / money.Piece)
			n.Extra += it.Metres() * (it.Extra / money.Piece)
		}
	}
}

func (c *counter) line(key, kind, about, unit string) *Need {
	n, ok := c.byKey[key]
	if !ok {
		n = &Need{Key: key, Kind: kind, About: about, Unit: unit}
		c.byKey[key] = n
		c.needs = append(c.needs, n)
	}
	return n
}

// units counts placed units, and metres of the hose that is cut from stock.
func (c *counter) units() {
	c.placed = map[*build.Item]int{}
	for _, u := range c.sys.Graph.Units {
		c.placed[u.Item]++
		key, amount := u.Item.ID, money.Piece
		if u.Item.IsHose() && u.Item.Of != "" {
			key, amount = u.Item.Of, u.Item.Metres()
		}
		n, ok := c.byKey[key]
		if !ok {
			continue // the boat's own
		}
		n.Placed += amount
		for i := range u.Item.Ports {
			node := &c.sys.Graph.Ports[u.First+i]
			n.Load.Merge(c.sys.PortLoad(u.First + i))
			n.Allowable.Lower(c.ratings.Port(u.First + i))
			if node.Joint != nil {
				n.Joints = append(n.Joints, node.Joint.Number)
			}
		}
	}
}

// contents counts what lies inside units.
func (c *counter) contents() {
	for _, it := range c.sys.Graph.Build.Items {
		if it.Inside == "" {
			continue
		}
		holder, known := c.sys.Graph.Build.Item(it.Inside)
		if n, bought := c.byKey[it.ID]; known && bought {
			n.Placed += money.Quantity(it.Each*c.placed[holder]) * money.Piece
			c.comesWith(n, it, holder)
		}
	}
}

// comesWith counts the seals that a new pump has in it: they are not bought beside it. Who
// says in the build how many are had has counted them.
func (c *counter) comesWith(n *Need, it, holder *build.Item) {
	fresh := money.Quantity(c.placed[holder])*money.Piece - holder.Have
	if !it.Kind.Is(catalog.SealKit) || it.Have > 0 || fresh <= 0 {
		return
	}
	n.Have += money.Quantity(it.Each) * fresh
	n.Advice = append(n.Advice, Why{Rule: "comes with", Text: fmt.Sprintf("%s comes in %s, which is new", money.Quantity(it.Each)*fresh, holder.ID)})
}

// joints counts what each joint needs beside its two ends.
func (c *counter) joints() {
	for _, j := range c.sys.Graph.Joints {
		if !j.Known || j.Mating.Verdict > threads.LowPressureOnly {
			continue // a joint that does not hold must be changed first
		}
		m := makeup.Of(&j.Mating)
		if m.Tape > 0 {
			c.tape += m.Tape
			c.taped = append(c.taped, j.Number)
		}
		for _, part := range []struct{ kind, name string }{{catalog.OfRole(catalog.Washer).Name, m.Washer}, {catalog.OfRole(catalog.ORing).Name, m.ORing}, {"cutting ring", m.Ring}, {"insert", m.Insert}} {
			if part.name != "" {
				c.piece(part.kind, part.name, 1, j)
			}
		}
		if m.Clamps > 0 {
			c.piece(catalog.OfRole(catalog.Clamp).Name, "clamp for "+c.boreOf(j)+" hose", joint.Clamps(c.sys.Graph, j), j)
		}
	}
}

func (c *counter) piece(kind, name string, count int, j *graph.Joint) {
	n := c.line(name, kind, name, "pc")
	n.Placed += money.Quantity(count) * money.Piece
	n.Joints = append(n.Joints, j.Number)
}

func (c *counter) boreOf(j *graph.Joint) string {
	for _, p := range []int{j.A, j.B} {
		if e := c.sys.Graph.Ports[p].Port.End.Candidates; e[0].Family == threads.Bore {
			return e[0].Size
		}
	}
	return ""
}

// What tape is reckoned with: half as much again for joints that are made twice,
// from rolls of 12 metres (common practice).
const (
	tapeAgain = 1.5
	tapeRoll  = 12_000
)

// tapeRolls turns the tape of all joints into rolls.
func (c *counter) tapeRolls() {
	if c.tape == 0 {
		return
	}
	length := float64(c.tape) * tapeAgain
	n := c.line("tape 12 mm", catalog.OfRole(catalog.Tape).Name, "", "roll")
	n.About = fmt.Sprintf("PTFE tape, 12 mm wide, roll of 12 m; %.1f m with half as much again for joints made twice", length/1000)
	n.Placed += money.Quantity(math.Ceil(length/tapeRoll)) * money.Piece
	n.Joints = append(n.Joints, c.taped...)
}

// spare adds planned changes and spares by the kind's rule.
func (c *counter) spare(n *Need) error {
	w := &c.sys.Graph.Build.Spares
	fitted := int(n.Placed / money.Piece)
	rule := catalog.FittingSpare
	if n.Item != nil {
		rule = n.Item.Kind.Spare
	} else if catalog.IsKind(n.Kind, catalog.Tape) {
		rule = catalog.NoSpare
	}
	if rule == catalog.FittingSpare && fitted > 0 {
		a, err := spares.Fitting(fitted, w.Spoil, w.Confidence)
		if err != nil {
			return err
		}
		n.advise("spoiled while fitting", a, &n.Spare)
		n.Risk.Fit, n.Risk.Spoil = fitted, w.Spoil
	}
	if n.Item == nil || n.Unit == "m" {
		return nil
	}
	if n.Item.Kind.Loose && n.Item.Inside == "" {
		fitted = max(fitted, 1) // oil, a seal kit: it serves the build as a whole
	}
	if n.Item.Life != nil {
		a, err := spares.Changes(fitted, over(w, n.Item.LifeByDate), n.Item.Life.Hours())
		if err != nil {
			return tooMany(n.Item, "life", err)
		}
		n.advise("planned change", a, &n.Planned)
	}
	if n.Item.Fails != nil {
		a, err := spares.Failures(fitted, over(w, n.Item.FailsByDate), n.Item.Fails.Hours(), w.Confidence)
		if err != nil {
			return tooMany(n.Item, "fails", err)
		}
		n.advise("random wear", a, &n.Spare)
		n.Risk.Mean = float64(fitted) * over(w, n.Item.FailsByDate) / n.Item.Fails.Hours()
	}
	return nil
}

// tooMany makes a file error of a life that asks for more spares than are counted.
func tooMany(it *build.Item, key string, err error) error {
	reason, remedy := err.Error(), "write a longer life, or fewer hours in [spares]"
	if at := strings.LastIndex(reason, ": "); at >= 0 {
		reason = reason[:at]
	}
	return source.Faults{{Place: it.Place.Key(key), Reason: reason, Remedy: remedy}}
}

// over is the time that a life is set against: the time away for one of the calendar,
// else the running hours.
func over(w *build.SpareWish, byDate bool) float64 {
	if byDate {
		return w.Away.Hours()
	}
	return w.Hours.Hours()
}

func (n *Need) advise(rule string, a spares.Advice, to *money.Quantity) {
	count := money.Quantity(a.Count) * money.Piece
	*to += count
	n.Advice = append(n.Advice, Why{Rule: rule, Count: count, Text: a.Why})
}

// WhySpare says in one line why so many are spared and changed.
func (n *Need) WhySpare() string {
	var out []string
	for _, w := range n.Advice {
		out = append(out, w.Text)
	}
	if n.Extra > 0 {
		out = append(out, fmt.Sprintf("%s more asked for by `extra`", n.Extra))
	}
	return strings.Join(out, "; ")
}
