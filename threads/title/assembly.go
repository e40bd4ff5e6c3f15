package title

// hoseAssembly reports hydraulic hose with its fittings on: the line names a hose, its layers of wire and a thread. A
// nut, a tail or an adaptor of such a line is the hose's own where a length is said, or how many it has.
func (l *line) hoseAssembly(hosed bool) bool {
	if l.one || !hosed && !l.says("TUBE") && !anyToken(l.tokens, hoseGradeWord) || !l.threadElsewhere() && !(l.both && anyToken(l.tokens, func(it *token) bool { return it.is(classSex) != nil })) {
		return false
	}
	if !l.layers() {
		return (l.shape == nil || l.is(nut)) && l.both && hosed && !l.says("BARB") && !l.says("TUBE") && l.madeOfHose() // hose 3/8, JIC -6 female both ends
	}
	if l.shape == nil || l.shape.ends < 0 || l.is(hose) {
		return true
	}
	return (l.is(tail) || l.is(adaptor) || l.is(nut) || l.is(union)) && (l.madeOfHose() || l.tokens[0].value(classEnd) == "HOSE")
}

// madeOfHose reports what a hose with its fittings is said with: both its ends, how many fittings, its length; and that
// the hose is not what the part is for.
func (l *line) madeOfHose() bool {
	made := l.both
	for k := range l.tokens {
		it := &l.tokens[k]
		if m := it.is(classKind); (it.value(classEnd) == "HOSE" || it.value(classEnd) == "TUBE" || m != nil && m.shape.traits&hose != 0) && l.meantFor(k-1) {
			return false
		}
		f := it.figure
		made = made || f != nil && (f.role == asLength || f.counted || f.kind == mmSize && f.v > longestBore || f.kind == bare && f.whole && f.v == 2 && at(l.tokens, k+1).figure == nil)
	}
	return made
}

// straightAndBent reports that the words for straight and for bent stand beside each other with a stroke, an x or a sign between
// them, one for each end of a hose: straight / 90, droit x coudé 90.
func (l *line) straightAndBent() bool {
	for k := range l.tokens {
		if l.tokens[k].value(classNoise) != "straight" {
			continue
		}
		sep, bent := at(l.tokens, k+1), at(l.tokens, k+2)
		if sep.mark != '/' && sep.mark != '+' && sep.mark != '-' && sep.value(classSep) == "" {
			continue
		}
		if m := bent.is(classKind); m != nil && m.shape.traits&angled != 0 || bent.figure != nil && (bent.figure.v == 45 || bent.figure.v == 90) {
			return true
		}
	}
	return false
}

// longestBore is the most millimetres that are a hose's bore: hydraulic hose ends at 2 in.
const longestBore = 51

// hydraulic reports whether a text in lower case is of hydraulics.
func hydraulic(norm []byte) bool {
	return hydraulicList.in(norm)
}

// layers reports the layers of wire in a hose, which its standards name: 2SN, R2 (EN 853, SAE J517, as memory has them).
func (l *line) layers() bool {
	if l.madeTo() {
		return true
	}
	for k := range l.tokens {
		it, next := &l.tokens[k], at(l.tokens, k+1)
		if grade := next.figure; it.to-it.from == 1 && l.norm[it.from] == 'r' && next.glued && grade.digits() && grade.v <= 17 && (grade.v > largestInch || hydraulic(l.norm)) {
			return true
		}
		if it.figure.digits() && it.figure.v <= mostLayers && layersList.has(l.norm[next.from:next.to]) {
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

// hydraulicLine reports the Polish word for a line, which is an electric one too, beside the grade of a hydraulic hose.
func (l *line) hydraulicLine() bool {
	return !l.one && l.shape != nil && l.shape.name == "other" && hasText(l.norm, l.tokens[0].from, "przewod") && l.layers() && l.threadElsewhere()
}

// hoseWithFittings reports hose that the line begins with, by its length in metres, and fittings in the plural behind: Hose 3/8, 2 m, with
// fittings JIC 6 female. They are on the hose.
func (l *line) hoseWithFittings() bool {
	if l.one || l.shape != nil && !l.is(tail) && !l.is(adaptor) && !l.is(union) && !l.is(nipple) && !l.is(hose) && l.shape.name != "coupling" || !l.threadElsewhere() {
		return false
	}
	for k := range l.tokens {
		it := &l.tokens[k]
		switch {
		case it.value(classEnd) == "HOSE", l.isHoseNoun(it):
			long := l.longEnough()
			for j := k + 2; j < len(l.tokens); j++ {
				o := &l.tokens[j]
				if o.to == o.from || o.figure != nil || !fittingsPluralList.has(l.norm[o.from:o.to]) {
					continue
				}
				led := l.tokens[j-1].mark == ',' || l.together(j-1) && l.tokens[j-1].figure == nil
				if long || led && l.sizesBefore(j) > 0 {
					return true // hose 1/2 with couplings 1/2 BSPP female
				}
			}
			return false
		case it.is(classKind) != nil, it.is(classFamily) != nil, it.is(classSex) != nil:
			return false
		}
	}
	return false
}

// longEnough reports a length in metres, or of more millimetres than a fitting has.
func (l *line) longEnough() bool {
	return anyToken(l.tokens, func(it *token) bool {
		f := it.figure
		return f != nil && (f.role == asLength || f.kind == mmSize && f.v >= leastHose || f.kind == bare && l.metresBehind(it))
	})
}

// leastHose is the least length in mm that is a hose's with its fittings, and no fitting's. A judgement.
const leastHose = 200

// metresBehind reports the letter for metres behind a figure: 2 m.
func (l *line) metresBehind(it *token) bool {
	i := it.to
	for i < len(l.norm) && l.norm[i] == ' ' {
		i++
	}
	return byteAt(l.norm, i) == 'm' && !alnum(byteAt(l.norm, i+1))
}
