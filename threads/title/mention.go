package title

// dropMentions leaves out sizes that the line gives again behind those of all the
// ends that the part has: 3/8 x 3/8 nipple, 3/8 NPT (3/8"). What is said of the
// thread the second time holds for the first.
func (l *line) dropMentions(ends []*phrase) []*phrase {
	if l.one || l.shape == nil || l.shape.ends < 1 || len(ends) <= l.shape.ends || l.is(many) {
		return ends
	}
	first, later := ends[:l.shape.ends:l.shape.ends], ends[l.shape.ends:]
	for _, e := range later {
		if e.fig == nil || e.end != "" || e.strong || !mentioned(first, e) {
			return ends
		}
	}
	for _, e := range later {
		e.fig.role = asRepeat
		for _, o := range first {
			if o.fig == nil || o.fig.v != e.fig.v {
				continue
			}
			if o.fam == nil && o.end == "" && e.fam != nil && !e.fam.has("pre") {
				o.fam, o.fam2 = e.fam, e.fam2
			}
			if len(o.sexes) == 0 && o.end == "" {
				o.sexes = e.sexes
			}
		}
	}
	return first
}

// mentioned reports whether a size is that of one of the ends, and nothing said of
// it is another thread.
func mentioned(ends []*phrase, e *phrase) bool {
	for _, o := range ends {
		if o.fig != nil && o.fig.kind == e.fig.kind && o.fig.v == e.fig.v && (len(e.sexes) == 0 || len(o.sexes) == 0 || e.sex() == o.sex()) && (e.fam == nil || o.fam == nil || compatible(o.fam.value, e.fam.value)) {
			return true
		}
	}
	return false
}

// allNominalBores reports whether all that is said of the ends is a bore.
func allNominalBores(ends []*phrase) bool {
	for _, e := range ends {
		if !e.bare() || e.fig == nil || e.fig.kind != dnSize && !(e.millimetres() && len(ends) == 1) {
			return false
		}
	}
	return true
}
