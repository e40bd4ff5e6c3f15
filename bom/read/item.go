package read

import (
	"errors"
	"fmt"
	"slices"
	"unicode"

	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// commonKeys may stand on any item.
var commonKeys = []string{
	"id", "kind", "about", "title", "ports", "material", "rated", "class", "spec", "bore", "outside", "wall", "vacuum",
	"inside", "each", "life", "fails", "have", "extra", "kv", "origin",
}

// isID reports whether a text may be an id, so that a run's path can name it: letters and digits of any
// script, and after the first - and _.
func isID(text string) bool {
	for i, r := range text {
		if !unicode.IsLetter(r) && !unicode.IsNumber(r) && (i == 0 || r != '-' && r != '_') {
			return false
		}
	}
	return text != ""
}

// item reads one [[item]].
func (r *reader) item(t *source.Table) *build.Item {
	it := &build.Item{Place: build.MarkOf(t, ""), Each: 1}
	it.ID, _ = t.RequiredText("id", "hp-pump")
	it.About, _ = t.Text("about")
	it.Origin = origin(t)
	it.Title, _ = t.Text("title")
	var reading threads.Reading
	if it.Title != "" {
		reading = title.Read(it.Title)
		it.Unread = reading.Unread
	}
	it.Kind = r.kind(t, reading)
	if it.Kind != nil && !it.Kind.Generic || it.Kind == nil {
		r.checkID(t, it.ID)
	}
	if it.Kind == nil {
		t.Known(append(commonKeys, t.Keys()...)...)
		t.Done()
		return it
	}
	r.common(t, it, reading)
	r.own(t, it)
	r.stated(t, it, reading)
	r.process(t, it)
	r.carried(t, it)
	if it.Kind.Free {
		r.freePorts(t, it)
	} else {
		r.ports(t, it, reading)
	}
	titledEnds(t, it, reading)
	r.gaugeEnd(it)
	r.described(t, it)
	r.mould(it)
	t.Known(commonKeys...)
	t.Known(it.Kind.Keys...)
	t.DoneWith(keyRemedy(it.Kind))
	return it
}

func (r *reader) checkID(t *source.Table, id string) {
	if id != "" && !isID(id) {
		t.Fault("id", fmt.Sprintf("`%s` cannot be an id: a path could not name it", id), "use letters, digits, - and _ only, like \"elbow-3-8\"")
	}
}

// add notes an item under its id; a second of the same id is a fault.
func (r *reader) add(t *source.Table, it *build.Item) {
	if it.ID == "" {
		return
	}
	if first, ok := r.build.ByID[it.ID]; ok {
		p := first.Place.Place()
		t.Fault("id", fmt.Sprintf("the id `%s` is given twice: here, and in %s line %d", it.ID, p.File, p.Line), "give one of them another id")
		return
	}
	r.build.ByID[it.ID] = it
	r.build.Items = append(r.build.Items, it)
}

// kind finds the item's kind: said, or read from its title.
func (r *reader) kind(t *source.Table, reading threads.Reading) *catalog.Kind {
	name, ok := t.Text("kind", "elbow")
	if !ok {
		if t.Has("kind") {
			return nil
		}
		name = reading.Kind
		if k, ok := catalog.KindNamed(name); ok {
			return k
		}
		if t.Misspelt("kind", commonKeys) {
			return nil
		}
		remedy := r.kindGuess(t, reading)
		if meant, ok := catalog.KindMeant(name); ok {
			remedy = remedyOf("write kind = "+inQuotes(meant.Write), meant.Note)
		}
		t.FaultHere(kindless(t, reading), remedy)
		return nil
	}
	if k, ok := catalog.KindNamed(name); ok && !k.Is(catalog.Hose) {
		return k
	}
	if catalog.IsKind(name, catalog.Hose) {
		remedy := "write it as [[hose]], with its length, and `of` its stock or with `ends`"
		if !t.Has("length") {
			remedy = "hose that pieces are cut from is kind = \"hose stock\"; a piece is a [[hose]], with its length, and `of` its stock or with `ends`"
		}
		t.Fault("kind", "a hose is not an [[item]]", remedy)
		return nil
	}
	t.Fault("kind", fmt.Sprintf("`%s` is not a kind that is known", name), r.kindRemedy(name))
	return nil
}

func kindless(t *source.Table, reading threads.Reading) string {
	switch {
	case !t.Has("title"):
		return "the item has no kind"
	case reading.Kind != "":
		return fmt.Sprintf("the item's title names a `%s`, which is not a kind of part in a build", reading.Kind)
	}
	return "the item has no kind, and its title names none that is known"
}

// common reads the keys that any item may have.
func (r *reader) common(t *source.Table, it *build.Item, reading threads.Reading) {
	it.Material, _ = t.Text("material")
	if it.Material == "" {
		it.Material = reading.Material
	}
	it.Rated = take(t, "rated", "100 bar", quantity.ParsePressure)
	it.Class, _ = t.Text("class", "class 3000")
	it.Spec, _ = t.Text("spec", "SAE 100R8")
	it.Bore = r.size(t, "bore", "19 mm")
	if it.Bore != nil {
		it.BoreText, _ = t.Text("bore")
	}
	it.Outside = r.size(t, "outside", "10 mm")
	it.Wall = r.size(t, "wall", "2.8 mm")
	it.Vacuum = readVacuum(t)
	it.Inside, _ = t.Text("inside")
	it.Life = take(t, "life", "150 h", quantity.ParseDuration)
	it.Fails = take(t, "fails", "1500 h", quantity.ParseDuration)
	r.lives(t, it)
	if n, ok := t.Whole("each"); ok {
		if n < 1 {
			t.Fault("each", fmt.Sprintf("%d pieces in a unit cannot be", n), "write how many a unit holds, 1 or more")
		}
		it.Each = n
	}
	it.Have = count(t, "have", it.Kind)
	it.Extra = count(t, "extra", it.Kind)
}

// lives checks the lives, and whether they run by the calendar or by the hour.
func (r *reader) lives(t *source.Table, it *build.Item) {
	r.positive(t, "life", it.Life)
	r.positive(t, "fails", it.Fails)
	it.LifeByDate, it.FailsByDate = it.Life != nil && byDate(t, "life"), it.Fails != nil && byDate(t, "fails")
}

// byDate tells a life of the calendar ("6 months", "180 d") from one of running hours.
func byDate(t *source.Table, key string) bool {
	text, _ := t.Text(key)
	return !runningHours.MatchString(text)
}

var runningHours = pattern.New(`(?i)(?:^|[\d\s])h(?:rs?|ours?)?\s*$`)

func (r *reader) positive(t *source.Table, key string, d *quantity.Duration) {
	if d != nil && *d <= 0 {
		t.Fault(key, "nothing lasts no time at all", "write how long one lasts, like \"150 h\"")
	}
}

// size reads a length that is above zero.
func (r *reader) size(t *source.Table, key, hint string) *quantity.Length {
	v := take(t, key, hint, quantity.ParseLength)
	if v != nil && *v <= 0 {
		t.Fault(key, fmt.Sprintf("`%s` is nothing: %s must be above zero", key, v), "write it like \""+hint+"\"")
		return nil
	}
	return v
}

// count reads a number of pieces, or metres of what is bought by length.
func count(t *source.Table, key string, k *catalog.Kind) money.Quantity {
	if !t.Has(key) {
		return 0
	}
	if k.Length {
		v := take(t, key, "2.5 m", quantity.ParseLength)
		if v == nil {
			return 0
		}
		return money.Quantity(v.Millimetres() + 0.5)
	}
	n, ok := t.Whole(key)
	switch {
	case ok && n < 0:
		t.Fault(key, fmt.Sprintf("%d pieces cannot be", n), "write 0 or more")
	case ok && n > 1_000_000:
		t.Fault(key, fmt.Sprintf("%d pieces are more than a boat holds", n), "write a million or fewer")
	case ok:
		return money.Quantity(n) * money.Piece
	}
	return 0
}

// own reads the keys of the item's kind.
func (r *reader) own(t *source.Table, it *build.Item) {
	has := func(key string) bool { return slices.Contains(it.Kind.Keys, key) }
	if has("set") {
		it.Set = take(t, "set", "65 bar", quantity.ParsePressure)
	}
	if has("length") {
		it.Length = r.size(t, "length", "533 mm") // of an element
	}
	if has("full_flow") {
		it.FullFlow = take(t, "full_flow", "71 bar", quantity.ParsePressure)
		if it.Set != nil && it.FullFlow != nil && *it.FullFlow < *it.Set {
			t.Fault("full_flow", fmt.Sprintf("%s passes its whole flow at %s, below the %s at which it begins to open", it.ID, it.FullFlow, it.Set), "write what its data sheet says: `set` is where it begins to open, `full_flow` where it passes all")
		}
	}
	if has("flow") {
		it.Flow = take(t, "flow", "7 L/min", quantity.ParseFlow)
	}
	if has("shutoff") {
		it.Shutoff = take(t, "shutoff", "2.5 bar", quantity.ParsePressure)
		it.Type = wish(t, "type", "diaphragm", "centrifugal")
	}
	if has("motor") {
		it.Motor, _ = t.Text("motor", "24 V DC")
	}
	if has("stall") {
		it.Stall = take(t, "stall", "120 bar", quantity.ParsePressure)
	}
	if has("normal") {
		it.Normal = wish(t, "normal", "open", "shut", "flush")
	}
	if has("between") {
		it.Between = wish(t, "between", "open", "shut")
	}
	if has("pressure") {
		it.Pressure = take(t, "pressure", "3 bar", quantity.ParsePressure)
	}
	if has("holds") {
		it.Holds = wish(t, "holds", "town water", "product")
	}
	if has("micron") {
		it.Micron = take(t, "micron", "20 micron", quantity.ParseLength)
	}
	if has("scale") && it.Kind.Is(catalog.Gauge) {
		it.Scale = take(t, "scale", "100 bar", quantity.ParsePressure)
	}
}

// ports reads the item's ends: said by port, or taken from its title in order.
func (r *reader) ports(t *source.Table, it *build.Item, reading threads.Reading) {
	k := it.Kind
	said, ok := t.Table("ports")
	if !ok && !t.Has("ports") {
		it.Ports = titlePorts(t, k, reading)
		return
	}
	if !ok {
		return
	}
	for _, name := range k.Ports {
		text, given := said.Text(name, "1/2 NPT female")
		if !given && slices.Contains(k.Optional, name) {
			continue
		}
		p := build.Port{Name: name, Text: text, Mark: build.MarkOf(said, name)}
		if given {
			p.Said = true
			r.portEnd(said, name, &p)
		}
		it.Ports = append(it.Ports, p)
	}
	said.Known(k.Ports...)
	if k.Loose {
		t.Fault("ports", fmt.Sprintf("a %s has no ports: it is counted, not joined", k.Name), "take `ports` out; contents of a unit are named by `inside`")
		said.Known(said.Keys()...)
	}
	said.DoneWith(func(name string) (string, bool) { return portRemedy(k, said.Keys(), name) })
}

// gaugeEnd opens the end of a gauge that is said to be M10x1 and the like and no more: such gauges are
// sold with a parallel thread and with a keg, a taper of the same size (DIN 158 keg threads; that both
// are sold on gauges: common practice).
func (r *reader) gaugeEnd(it *build.Item) {
	if !it.Kind.Is(catalog.Gauge) {
		return
	}
	for i := range it.Ports {
		p := &it.Ports[i]
		if len(p.End.Candidates) != 1 || p.End.Candidates[0].Family != threads.M || p.End.Candidates[0].Sex == threads.Female || saysParallel.MatchString(p.Text) {
			continue
		}
		e := p.End.Candidates[0]
		if e.Form == nil || e.Form.Pitch != 1 || e.Form.Major > 12 {
			continue
		}
		keg, err := title.ReadEnd(e.Form.Designation + " keg male")
		if err != nil || len(keg.Candidates) != 1 {
			continue
		}
		p.End.Candidates = []threads.End{e, keg.Candidates[0]}
		p.End.Question = fmt.Sprintf("Is the %s of the gauge parallel or a keg (taper)? Measure it at both ends, and write `%s male keg` or `%[1]s male parallel`.", e.Form.Designation, e.Form.Designation)
	}
}

var saysParallel = pattern.New(`(?i)\b(?:parallel|straight|zylindrisch|cylindrical|washer|o-ring)\b`)

// portEnd reads one end; a text that holds no end, and does not say that it is not known, is
// a fault.
func (r *reader) portEnd(t *source.Table, key string, p *build.Port) {
	end, err := r.unsureEnd(p.Text)
	p.End, p.Origin, p.Unsure = end.reading, end.country, end.unsure
	if err == nil {
		return
	}
	var re *title.ReadError
	if errors.As(err, &re) {
		t.Fault(key, re.Reason, re.Remedy)
	} else {
		t.Fault(key, err.Error(), "write the standard, the size and the sex, like \"1/2 NPT female\"")
	}
}

// titlePorts gives the ends of a title to the ports of the kind, in order.
func titlePorts(t *source.Table, k *catalog.Kind, reading threads.Reading) []build.Port {
	var out []build.Port
	for i, name := range k.Ports {
		p := build.Port{Name: name, Mark: build.MarkOf(t, "")}
		if t.Has("title") {
			p.Mark = build.MarkOf(t, "title")
		}
		n := i
		if len(reading.Ends) == 1 && len(k.Boundary) > 0 {
			n = i - 1 // a seacock's one end is its inboard one
		}
		switch {
		case n >= 0 && n < len(reading.Ends):
			p.End, p.Said, p.Text = reading.Ends[n], true, reading.Ends[n].Words
		case slices.Contains(k.Optional, name):
			continue
		}
		out = append(out, p)
	}
	return out
}
