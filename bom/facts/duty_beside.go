package facts

// DutyPair is a figure as it stands and as it is after a change.
type DutyPair struct {
	Words, Now, Then, Unit string
	Alike                  bool // to the figures shown
}

// SideBySide puts the facts and the limits of a plant beside those after a change; "-" where one
// of them has none.
func SideBySide(now, then *DutyPlant) []DutyPair {
	var out []DutyPair
	add := func(words, unit, a, b string) { out = append(out, DutyPair{words, a, b, unit, a == b}) }
	for i := range then.Facts {
		f, a := &then.Facts[i], "-"
		for j := range now.Facts {
			if now.Facts[j].Name == f.Name {
				a = now.Facts[j].bounds()
			}
		}
		add(f.Words, f.Unit, a, f.bounds())
	}
	for i := range now.Facts {
		f, gone := &now.Facts[i], true
		for j := range then.Facts {
			gone = gone && then.Facts[j].Name != f.Name
		}
		if gone {
			add(f.Words, f.Unit, f.bounds(), "-")
		}
	}
	for _, l := range then.Limits {
		a := "-"
		for _, k := range now.Limits {
			if k.Name == l.Name {
				a = k.Value.Figures() + " of " + k.Limit.Figures()
			}
		}
		add(l.Words, l.Unit, a, l.Value.Figures()+" of "+l.Limit.Figures())
	}
	return out
}

// bounds is a fact's ends without its unit.
func (f *DutyFact) bounds() string {
	if f.Low.Figures() == f.High.Figures() {
		return f.Low.Figures()
	}
	return f.Low.Figures() + " to " + f.High.Figures()
}
