package title

// portCounts reads how many ports there are of the size that stands behind their name, 2 inlet 3/4 F, 1 gauge port 1/4, and of the one before
// it, 1/4 F outlets x5; and both ends of a manifold. Elsewhere the number would be a size.
func (l *line) portCounts() {
	if l.one || l.is(madeUp) || l.is(ring) {
		return
	}
	if several := l.is(manifold) || l.is(tee) || l.is(vessel) || l.is(femaleRound) || l.is(valve) || l.is(many) || l.shape != nil && l.shape.ends > 2; !several && !l.contains(portNounList) && !l.contains(hoseEndsList) {
		return
	}
	l.numberedPorts()
	l.countedEnds()
	l.letteredPorts()
	for k := range l.tokens {
		f := l.tokens[k].figure
		if l.portsBehind(k) {
			continue
		}
		if f == nil && l.numberBefore(k) > 0 {
			n, j := l.numberBefore(k), k+1
			if !l.portNoun(j) {
				j++
			}
			if size := l.sizeNear(j + 1); l.portNoun(j) && size != nil && size.times == 0 {
				l.countsAs(k, n, size)
			}
			continue
		}
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
			if j++; !l.portNoun(j) || at(l.tokens, k+1).figure != nil || at(l.tokens, k+1).mark != 0 || at(l.tokens, k+1).is(classFamily) != nil || at(l.tokens, k+1).is(classKind) != nil && at(l.tokens, k+1).is(classKind).shape == l.shape || at(l.tokens, k+1).value(classSep) == "x" {
				continue
			}
		}
		size := l.sizeNear(j + 1)
		if m := l.tokens[j].is(classKind); size == nil || size.times > 0 || m != nil && m.shape == l.shape {
			continue // x2 outlet fittings G 1
		}
		f.drop(asCount)
		if f.v > 1 {
			size.times, size.counted = int(f.v), true
		}
	}
	if l.is(manifold) || l.is(vessel) {
		l.bothOfManifold()
	}
	if l.is(manifold) {
		l.inletsOfBar()
	}
}

// countedEnds reads a number before a size and a word for ends or ports in the plural behind it: two 1/2" NPT male ends, three G 1 female ports.
func (l *line) countedEnds() {
	for k := range l.tokens {
		it, size := &l.tokens[k], (*figure)(nil)
		n := l.endsCounting(k)
		switch {
		case n < 2:
			continue
		case it.figure != nil && l.is(manifold) && at(l.tokens, k+1).is(classKind) != nil, it.value(classAttr) == "both" && l.portNoun(k+1):
			size = l.sizeNear(k + 2) // manifold with 2 valves 1/2 NPT female; both outlets 3/4
		default:
			if size = l.sizeNear(k + 1); size != nil && !l.endsNamedBehind(k+1, size) {
				size = nil
			}
		}
		if size != nil && size.times == 0 {
			l.countsAs(k, n, size)
		}
	}
}

// endsCounting is the number at k that may count ends: a word for one, both, or a plain number before the letter of a thread or before the
// valves of a manifold; 0 for none.
func (l *line) endsCounting(k int) int {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	switch {
	case it.figure == nil && it.value(classAttr) == "both":
		return 2
	case it.figure == nil && it.mark == 0 && it.to > it.from:
		return l.numberBefore(k)
	case !it.portNumber() || it.glued:
		return 0
	case l.is(manifold) && next.is(classKind) != nil && l.plural(next), next.is(classFamily) != nil && next.is(classFamily).has("pre"):
		return int(it.figure.v)
	}
	return 0
}

// countsAs gives a size the number of its ends that the token at k says, and which is nothing else then.
func (l *line) countsAs(k, n int, size *figure) {
	it := &l.tokens[k]
	size.times, size.counted = n, true
	if it.figure != nil {
		it.figure.drop(asCount)
	} else if it.value(classAttr) != "both" {
		it.word, it.unread = l.lex.word("the"), false
	}
}

// endsNamedBehind reports a word for ends, inlets, outlets or ports in the plural behind a size, with nothing but what is said of the size between.
func (l *line) endsNamedBehind(k int, size *figure) bool {
	seen := false
	for ; k < len(l.tokens); k++ {
		it := &l.tokens[k]
		word := l.norm[it.from:it.to]
		switch {
		case it.figure == size:
			seen = true
		case it.figure != nil, it.mark != 0:
			return false
		case seen && (outletPluralList.has(word) || inletPluralList.has(word) || portsList.has(word) || hoseEndsList.has(word) || it.is(classEnd) != nil && l.plural(it)):
			return true
		case it.is(classFamily) == nil && it.is(classSex) == nil && it.is(classAttr) == nil && it.is(classEnd) == nil:
			return false
		}
	}
	return false
}

// portsBehind reads how many ports there are of the size before a number in brackets or behind an x, outlets G3/8 F (3), G1/4 F x 4, and of the one
// behind a name with its number in brackets: outlets (3) G3/8. All the ends of a tee may be counted so: 1/2 NPT F 3x.
func (l *line) portsBehind(k int) bool {
	f := l.tokens[k].figure
	if !f.digits() || f.v < 1 || f.v > mostPorts || f.times > 0 {
		return false
	}
	before, next := at(l.tokens, k-1), at(l.tokens, k+1)
	var size *figure
	switch {
	case before.mark == '(' && next.mark == ')' && l.portNoun(k-2) && l.sizeBehind(k+2):
		size = l.sizeNear(k + 2)
	case before.mark == '(' && next.mark == ')' && (l.is(manifold) || l.is(vessel)) && k > 2 && !l.sizeBehind(k+2):
		size = l.lastSize(k)
	case before.value(classSep) == "x" && l.endsPort(k+1) && at(l.tokens, k-2).figure == nil && at(l.tokens, k-2).mark == 0 && (l.is(manifold) && (f.v == 1 || l.portNamedBefore(k)) || l.otherCount(k)):
		size = l.lastSize(k)
		before.word = l.lex.word("the")
	case next.value(classSep) == "x" && next.glued && l.endsPort(k+2) && l.shape != nil && int(f.v) == l.shape.ends && f.v > 2 && k > 1 && at(l.tokens, k-1).figure == nil:
		f.drop(asCount)
		next.word = l.lex.word("the")
		return true // tee 1/2 NPT F 3x
	}
	if size != nil && size.times > 0 && f.v == 1 {
		f.drop(asCount) // four outlets 1/4, x 1: one manifold
		return true
	}
	if size == nil || size.times > 0 {
		return false
	}
	f.drop(asCount)
	if f.v > 1 {
		size.times, size.counted = int(f.v), true
	}
	return true
}

// endsPort reports the end of what is said of one port at k: a mark, the end of the line, or the name of the part.
func (l *line) endsPort(k int) bool {
	it := at(l.tokens, k)
	return it.to == it.from || it.mark == ',' || it.mark == ';' || it.mark == '|' || it.mark == ')' || it.is(classKind) != nil
}

// otherCount reports another number behind an x that counts ports: x 2 ... x 1.
func (l *line) otherCount(k int) bool {
	for j := 2; j < len(l.tokens); j++ {
		if f := l.tokens[j].figure; j != k && f.digits() && f.v <= mostPorts && l.norm[l.tokens[j-1].from] == 'x' && l.tokens[j-2].figure == nil && l.endsPort(j+1) {
			return true
		}
	}
	return false
}

// letteredPorts counts the ports that letters name beside their size: A,B 1/2 NPT F; C,D,E 1/4 NPT F; 1/4 NPT F on A and B.
func (l *line) letteredPorts() {
	for k := 0; k < len(l.tokens); k++ {
		if !l.portLetter(k) {
			continue
		}
		last, n := k, 1
		for (at(l.tokens, last+1).mark == ',' || at(l.tokens, last+1).mark != '/' && l.betweenCounts(last+1)) && l.portLetter(last+2) {
			last, n = last+2, n+1
		}
		if n > 1 {
			size := l.sizeNear(last + 1)
			if size == nil {
				size = l.lastSize(k)
			}
			if size != nil && size.times == 0 {
				size.times, size.counted = n, true
				for j := k; j <= last; j++ {
					l.tokens[j].word, l.tokens[j].unread, l.tokens[j].mark = l.lex.word("the"), false, 0
				}
			}
		}
		k = last
	}
}

// portLetter reports a capital from A to H that stands alone.
func (l *line) portLetter(k int) bool {
	it := at(l.tokens, k)
	return it.to == it.from+1 && it.figure == nil && (l.norm[it.from] >= 'a' && l.norm[it.from] <= 'h' || l.pumpAndTank(k)) && l.capital(it.from) && !alnum(byteAt(l.norm, it.from-1)) && !alnum(byteAt(l.norm, it.to)) && it.is(classSex) == nil
}

// pumpAndTank reports the P or the T of ports called P and T, of the pump and of the tank, as in ISO 9461.
func (l *line) pumpAndTank(k int) bool {
	letter, other := l.norm[at(l.tokens, k).from], at(l.tokens, k+2)
	if letter == 't' {
		other = at(l.tokens, k-2)
	}
	if other.to == 0 {
		return false
	}
	return (letter == 'p' || letter == 't') && other.to == other.from+1 && (l.norm[other.from] == 'p' || l.norm[other.from] == 't') && l.norm[other.from] != letter && (l.betweenCounts(k+1) || l.betweenCounts(k-1))
}

// inletsOfBar makes two of the size behind a word for inlets that no number counts: a bar has one at each end.
func (l *line) inletsOfBar() {
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.to == it.from || !inletPluralList.has(l.norm[it.from:it.to]) || at(l.tokens, k-1).figure != nil {
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
	return it.to > it.from && it.figure == nil && portNounList.has(l.norm[it.from:it.to])
}

// sizeNear is the size that stands at k or behind words of its thread.
func (l *line) sizeNear(k int) *figure {
	for j := k; j < min(len(l.tokens), k+3); j++ {
		it := &l.tokens[j]
		if f := it.figure; f != nil {
			if f.frac || f.marked || f.dashed || f.sized() || f.digits() && (at(l.tokens, j+1).is(classFamily) != nil || j > k && l.tokens[j-1].is(classFamily) != nil && l.tokens[j-1].is(classFamily).has("pre")) {
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
		for j := k - 1; j >= max(0, k-5); j-- {
			if f := l.tokens[j].figure; f != nil {
				if f.frac && f.times == 0 {
					f.times, f.counted = 2, true
				}
				break
			}
			if m := l.tokens[j].mark; m != 0 && m != '(' && m != ')' {
				break
			}
		}
	}
}

// betweenCounts reports an and, a stroke or a plus at k.
func (l *line) betweenCounts(k int) bool {
	it := at(l.tokens, k)
	return it.mark == '/' || it.to > it.from && it.figure == nil && betweenCountsList.has(l.norm[it.from:it.to])
}

// portNamedBefore reports a word for a port in the same breath before k, so that the number there counts ports and no parts.
func (l *line) portNamedBefore(k int) bool {
	for j := k - 1; j >= 0 && l.tokens[j].mark != ',' && l.tokens[j].mark != ';'; j-- {
		if l.portNoun(j) {
			return true
		}
	}
	return false
}

// portsUncounted gives the first number, as the line writes it, that counts ports of a part with many and that no size comes as often as; "" if
// there is none. A number that a line begins with counts parts.
func (l *line) portsUncounted() string {
	if l.one || l.is(madeUp) {
		return ""
	}
	spent := func(n int) bool {
		return anyToken(l.tokens, func(it *token) bool { return it.figure != nil && it.figure.counted && it.figure.multiple == n })
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f == nil || f.role != asCount || !f.whole || f.v < 2 || f.v > mostPorts || f.used || spent(int(f.v)) || l.shape != nil && int(f.v) == l.shape.ends || l.leads(k) {
			continue
		}
		if l.portNoun(k+1) || l.portNoun(k-1) || l.portNoun(k-2) && at(l.tokens, k-1).mark == '(' {
			return l.words(l.tokens[k].from, l.tokens[k].to)
		}
	}
	return ""
}

// timesOfEnd reports the number before an x glued to it and a word for an end, whose size stands behind: tee 3x push-in 8, T-stuk 3x knel 15. It says how
// many ends of a tee are so, and no size has it.
func (l *line) timesOfEnd(k int, f *figure) bool {
	x, word := at(l.tokens, k+1), at(l.tokens, k+2)
	if l.one || !l.is(tee) && !(l.is(valve) || l.shape != nil && l.shape.ends > 2) || !f.digits() || f.v < 2 || f.v > 4 || x.value(classSep) != "x" || !x.glued || x.to-x.from > 1 || word.figure != nil {
		return false
	}
	if word.is(classEnd) == nil && word.is(classFamily) == nil && word.is(classSex) == nil {
		return false
	}
	for j := k + 3; j < min(len(l.tokens), k+6); j++ {
		if l.tokens[j].figure != nil {
			x.word = l.lex.word("the")
			return true
		}
	}
	return false
}

// countsEnds reports the number before a word for ports or ends in the plural, in a line that gives their one size elsewhere: tee 1/4, 3 ends;
// vessel, 3 ports, 1/2 NPT female. A vessel or a manifold has that many of the size.
func (l *line) countsEnds(k int, f *figure) bool {
	next := at(l.tokens, k+1)
	word := l.norm[next.from:next.to]
	if l.one || !f.digits() || f.v < 2 || f.v > 8 || next.figure != nil || !outletPluralList.has(word) && !hoseEndsList.has(word) {
		return false
	}
	var size *figure
	for j := range l.tokens {
		o := l.tokens[j].figure
		if o == nil || j == k || !o.frac && !o.marked && !o.sized() {
			continue
		}
		if size != nil {
			return false
		}
		size = o
	}
	switch {
	case size == nil || size.times > 0:
		return false
	case l.is(vessel) || l.is(manifold):
		size.times, size.counted = int(f.v), true
		return true
	}
	return l.shape != nil && int(f.v) == l.shape.ends && (l.is(tee) || hoseEndsList.has(word))
}

// waysOfSize reports the number before a hyphen and a word for ways or ports, of a manifold, that a size stands behind: block 1/2 in x 4-way 1/4 out. So many
// of its ends are of it.
func (l *line) waysOfSize(k int, f *figure) bool {
	size := at(l.tokens, k+3).figure
	if l.one || !l.is(manifold) || !f.digits() || f.v < 2 || f.v > 12 || at(l.tokens, k+1).mark != '-' || !at(l.tokens, k+1).glued || size == nil || !size.frac && !size.marked || size.times > 0 || !l.sizeBefore(k) {
		return false
	}
	word := at(l.tokens, k+2)
	switch string(l.norm[word.from:word.to]) {
	case "way", "ways", "port", "ports", "vie", "vias", "voies", "fach", "weg":
		size.times, size.counted = int(f.v), true
		return true
	}
	return false
}

// numbersPort reports one of two numbers of ports with an and between them, behind the word for ports in the plural: ports 1 and 3 G 1/4. Both
// ports are of the size behind them.
func (l *line) numbersPort(k int, f *figure) bool {
	if l.one || !f.digits() || f.v > 12 || !anyToken(l.tokens, func(it *token) bool { return it.figure != nil && (it.figure.frac || it.figure.kind == metricSize) }) {
		return false
	}
	and := func(j int) bool {
		it := at(l.tokens, j)
		return it.mark == '&' || it.mark == '/' || it.to > it.from && (andList.has(l.norm[it.from:it.to]) || andMoreList.has(l.norm[it.from:it.to]))
	}
	plural := func(j int) bool {
		it := at(l.tokens, j)
		return it.to > it.from && it.figure == nil && l.contains(portsList) && (portsList.has(l.norm[it.from:it.to]) || outletPluralList.has(l.norm[it.from:it.to]))
	}
	digits := func(j int) bool {
		o := at(l.tokens, j).figure
		return o.digitsInCode() || o.digitsAsRead() || o != nil && o.role == asCode
	}
	if m, port := at(l.tokens, k+1).is(classFamily), at(l.tokens, k-1); onePortList.has(l.norm[port.from:port.to]) && m != nil && m.has("pre") && at(l.tokens, k+2).figure != nil && !at(l.tokens, k+1).glued {
		return true // Anschluss 2 G 3/8
	}
	if plural(k-1) && and(k+1) && digits(k+2) {
		if size := l.sizeNear(k + 3); size != nil && size.times == 0 && (l.is(manifold) || l.is(valve) || l.is(tee) || l.shape == nil) {
			size.times, size.counted = 2, true
		}
		return true
	}
	return plural(k-3) && digits(k-2) && and(k-1)
}
