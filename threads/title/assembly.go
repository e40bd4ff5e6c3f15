package title

import "slices"

// hoseAssembly reports hydraulic hose with its fittings on: the line names a hose, its layers of wire and a thread.
func (l *line) hoseAssembly() bool {
	if l.one || l.shape != nil && l.shape.ends >= 0 && !l.is(tail) && !l.is(hose) && !l.is(adaptor) && !l.is(nut) {
		return false
	}
	named := l.namesHose() || slices.ContainsFunc(l.tokens, func(it token) bool { return it.value(classEnd) == "TUBE" })
	return named && l.layers() && l.threadElsewhere()
}

// layers reports the layers of wire in a hose, which its standards name: 2SN, R2 (EN 853, SAE J517, as memory has them).
func (l *line) layers() bool {
	for k := range l.tokens {
		it, next := &l.tokens[k], at(l.tokens, k+1)
		if it.value(classNoise) == "hose" {
			return true
		}
		if grade := next.figure; it.to-it.from == 1 && l.norm[it.from] == 'r' && next.glued && grade.digits() && grade.v <= 17 {
			return true
		}
	}
	return false
}

// threadElsewhere reports a thread that is named or given by its form, and is no grade of hose.
func (l *line) threadElsewhere() bool {
	for k := range l.tokens {
		it := &l.tokens[k]
		if f := it.figure; f != nil && (f.kind == metricSize || f.kind == unSize || f.kind == coneSize) {
			return true
		}
		if m := it.is(classFamily); m != nil && m.value != "R" && m.value != "THREAD" {
			return true
		}
	}
	return false
}
