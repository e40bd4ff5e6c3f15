package title

import "slices"

// portCounts reads how many ports there are of the size that stands behind their name, 2 inlet 3/4 F, 1 gauge port 1/4, and of the one before
// it, 1/4 F outlets x5; and both ends of a manifold. Elsewhere the number would be a size.
func (l *line) portCounts() {
	if l.one || !l.is(manifold) && !l.is(tee) && !l.is(vessel) && !l.is(femaleRound) && !l.is(valve) && !l.is(many) && (l.shape == nil || l.shape.ends < 3) {
		return
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if !f.digits() || f.v < 1 || f.v > mostPorts || l.tokens[k].glued && l.tokens[max(k-1, 0)].value(classSep) != "x" {
			continue
		}
		if at(l.tokens, k-1).value(classSep) == "x" && l.portNoun(k-2) && !l.sizeBehind(k+1) {
			if size := l.lastSize(k); size != nil && size.times == 0 && l.is(manifold) {
				size.times, size.counted = int(f.v), true
				f.drop(asCount)
			}
			continue
		}
		j := k + 1
		if !l.portNoun(j) {
			if j++; !l.portNoun(j) || at(l.tokens, k+1).figure != nil || at(l.tokens, k+1).mark != 0 || at(l.tokens, k+1).is(classFamily) != nil || at(l.tokens, k+1).value(classSep) == "x" {
				continue
			}
		}
		size := l.sizeNear(j + 1)
		if size == nil || size.times > 0 {
			continue
		}
		f.drop(asCount)
		if f.v > 1 {
			size.times, size.counted = int(f.v), true
		}
	}
	if l.is(manifold) {
		l.bothOfManifold()
		l.inletsOfBar()
	}
}

// inletsOfBar makes two of the size behind a word for inlets that no number counts: a bar has one at each end.
func (l *line) inletsOfBar() {
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.to == it.from || !slices.Contains(list("inlet-plural"), string(l.norm[it.from:it.to])) || at(l.tokens, k-1).figure != nil {
			continue
		}
		if size := l.sizeNear(k + 1); size != nil && size.times == 0 {
			size.times, size.counted = 2, true
		}
	}
}

// mostPorts is the most ports that a part is counted to have. A judgement.
const mostPorts = 12

// portNoun reports a word for a port, an inlet or an outlet at k.
func (l *line) portNoun(k int) bool {
	it := at(l.tokens, k)
	return it.to > it.from && it.figure == nil && slices.Contains(list("port-noun"), string(l.norm[it.from:it.to]))
}

// sizeNear is the size that stands at k or behind words of its thread.
func (l *line) sizeNear(k int) *figure {
	for j := k; j < min(len(l.tokens), k+3); j++ {
		it := &l.tokens[j]
		if f := it.figure; f != nil {
			if f.frac || f.marked || f.dashed || f.sized() || f.digits() && at(l.tokens, j+1).is(classFamily) != nil {
				return f
			}
			return nil
		}
		if it.is(classFamily) == nil && it.is(classSex) == nil && it.mark != ':' && it.mark != '=' {
			return nil
		}
	}
	return nil
}

// sizeBehind reports a size at k, or behind the name of its thread.
func (l *line) sizeBehind(k int) bool { return l.sizeNear(k) != nil }

// bothOfManifold makes two of the size of a manifold that a word for both ends stands behind: 1/2 NPT F both ends.
func (l *line) bothOfManifold() {
	for k := range l.tokens {
		if l.tokens[k].value(classAttr) != "both" {
			continue
		}
		for j := k - 1; j >= max(0, k-3); j-- {
			if f := l.tokens[j].figure; f != nil {
				if f.frac && f.times == 0 {
					f.times, f.counted = 2, true
				}
				break
			}
			if l.tokens[j].mark != 0 {
				break
			}
		}
	}
}
