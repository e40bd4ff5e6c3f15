package read

import (
	"fmt"
	"strconv"
	"strings"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// longestHose bounds a piece of hose, so that sums of metres cannot overflow.
const longestHose = 1000 * quantity.Metre

// hose reads one [[hose]]: cut from stock, or made up with ends.
func (r *reader) hose(t *source.Table) *build.Item {
	it := &build.Item{Place: build.MarkOf(t, ""), Each: 1}
	it.Kind = catalog.OfRole(catalog.Hose)
	it.ID, _ = t.RequiredText("id", "raw-1")
	r.checkID(t, it.ID)
	it.About, _ = t.Text("about")
	it.Origin = origin(t)
	it.Of, _ = t.Text("of", "lp-hose")
	it.Spec, _ = t.Text("spec", "SAE 100R8")
	it.Class, _ = t.Text("class", "class 3000")
	if t.Has("class") && !t.Has("ends") {
		t.Fault("class", "the class of a hose is that of its end fittings, and this one has none", "take it out, or write `ends` (the class of pipe, like \"SDR 11\", stands on its stock)")
	}
	it.Material, _ = t.Text("material")
	it.Rated = take(t, "rated", "100 bar", quantity.ParsePressure)
	it.Vacuum = readVacuum(t)
	it.Bore = r.size(t, "bore", "19 mm")
	if it.Bore != nil {
		it.BoreText, _ = t.Text("bore")
	}
	it.Outside = r.size(t, "outside", "10 mm")
	it.Length = r.size(t, "length", "1.4 m")
	if it.Length != nil && *it.Length > longestHose {
		t.Fault("length", "this is more than 1 km, the longest hose that is taken", "write it like \"1.4 m\"")
	}
	it.BendRadius = r.size(t, "bend_radius", "120 mm")
	it.Bend = threads.Degrees(bend(t))
	it.Life = take(t, "life", "5 years", quantity.ParseDuration)
	it.Fails = take(t, "fails", "5000 h", quantity.ParseDuration)
	r.lives(t, it)
	if !t.Has("length") {
		t.FaultHere("the hose has no length", "write length = \"1.4 m\"")
	}
	r.hoseProcess(t, &it.Process)
	r.hoseEnds(t, it)
	piece := catalog.OfRole(catalog.Plug) // a hose is counted in pieces
	it.Have, it.Extra = count(t, "have", piece), count(t, "extra", piece)
	r.described(t, it)
	r.carried(t, it)
	t.DoneWith(keyRemedy(it.Kind))
	return it
}

// bend reads how far a hose turns in all on its way, in degrees: "90 deg".
func bend(t *source.Table) float64 {
	text, ok := t.Text("bend", "90 deg")
	if !ok {
		return 0
	}
	number, unit := strings.TrimSpace(text), ""
	for _, u := range []string{"degrees", "deg", "°"} {
		if strings.HasSuffix(number, u) {
			number, unit = strings.TrimSpace(strings.TrimSuffix(number, u)), u
			break
		}
	}
	v, err := strconv.ParseFloat(number, 64)
	if err != nil || unit == "" || !(v >= 0 && v <= 720) {
		t.Fault("bend", fmt.Sprintf("`%s` is no angle that a hose turns by", text), "write the degrees that it turns in all, such as bend = \"90 deg\"")
		return 0
	}
	return v
}

// hoseEnds reads the ends of a made-up hose, or leaves them to its stock.
func (r *reader) hoseEnds(t *source.Table, it *build.Item) {
	it.Ports = []build.Port{{Name: "a", Mark: build.MarkOf(t, "")}, {Name: "b", Mark: build.MarkOf(t, "")}}
	ends := t.Texts("ends", "3/8 NPT male")
	switch {
	case !t.Has("ends") && it.Of != "":
		return
	case !t.Has("ends"):
		t.FaultHere("the hose says neither what it is cut from nor what its ends are", "write of = \"lp-hose\" (an [[item]] of kind \"hose stock\"), or ends = ['3/8 NPT male', '9/16-18 JIC female swivel']")
		return
	case ends == nil:
		return // no list of texts, which is reported
	case len(ends) != 2:
		t.Fault("ends", fmt.Sprintf("a hose has two ends, and this has %d", len(ends)), "write both, also when they are alike")
		return
	}
	for i, text := range ends {
		end, err := r.unsureEnd(text)
		if err != nil {
			re, ok := err.(*title.ReadError)
			if !ok {
				re = &title.ReadError{Reason: err.Error(), Remedy: "write the standard, the size and the sex"}
			}
			t.FaultAt(re.Reason, re.Remedy, "ends", i)
		}
		it.Ports[i] = build.Port{Name: it.Ports[i].Name, End: end.reading, Origin: end.country, Unsure: end.unsure, Said: true, Text: text, Mark: build.MarkOf(t, "ends", i)}
	}
}

// hoseStock gives every hose cut from stock what its stock has, and its ends.
func (r *reader) hoseStock() {
	var stock []string
	for _, it := range r.build.Items {
		if it.Kind != nil && it.Kind.Is(catalog.HoseStock) {
			stock = append(stock, it.ID)
		}
	}
	for _, it := range r.build.Items {
		if !it.IsHose() || it.Of == "" {
			continue
		}
		of, ok := r.build.ByID[it.Of]
		if !ok || of.Kind == nil || !of.Kind.Is(catalog.HoseStock) {
			r.faultAt(it.Place, "of", fmt.Sprintf("the hose is cut from `%s`, which is no hose stock", it.Of),
				near(it.Of, stock, "name an [[item]] of kind \"hose stock\""))
			continue
		}
		if err := it.CutFrom(of); err != nil {
			r.faultAt(it.Place, "of", fmt.Sprintf("the stock `%s` says no bore, so nothing tells what fits into the hose", it.Of), "write bore = \"19 mm\" on the stock (or outside = \"10 mm\" for push-in tube)")
		}
	}
}

// faultAt notes a fault of a key of a table that has been read already.
func (r *reader) faultAt(m build.Mark, key, reason, remedy string) {
	r.faults = append(r.faults, source.Fault{Place: m.Key(key), Reason: reason, Remedy: remedy})
}

// contents checks that what lies inside a unit lies inside a known one.
func (r *reader) contents() {
	for _, it := range r.build.Items {
		if it.Inside == "" {
			continue
		}
		if _, ok := r.build.ByID[it.Inside]; !ok {
			r.faultAt(it.Place, "inside", fmt.Sprintf("there is no item `%s` for this to be inside of", it.Inside), near(it.Inside, r.ids(), "name an [[item]] by its id"))
			continue
		}
		if holder := &r.build.ByID[it.Inside].Process; it.Kind.Is(catalog.Cartridge) {
			orElse(&holder.Loss, it.Process.Loss) // what a cartridge loses is lost in its housing
			orElse(&holder.LossDirty, it.Process.LossDirty)
		}
	}
}

func (r *reader) ids() []string {
	out := make([]string, 0, len(r.build.Items))
	for _, it := range r.build.Items {
		out = append(out, it.ID)
	}
	return out
}

func orElse[T any](v **T, other *T) {
	if *v == nil {
		*v = other
	}
}
