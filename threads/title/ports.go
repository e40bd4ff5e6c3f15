package title

import (
	"bytes"
	"slices"
)

// sidePort reports that the second of two ends is the port for a gauge, a drain or a bypass by its words, so that the first is that of all
// the main ports: of a valve and a filter, and of other parts of two main ends and tees where a with leads to the port.
func (l *line) sidePort(ends []*phrase) bool {
	if l.one || len(ends) != 2 || l.shape == nil || l.shape.ends != 2 && !l.is(tee) || l.is(bush) || l.is(adaptor) || l.is(nipple) || l.is(union) || l.shape.name == "coupling" {
		return false
	}
	first, second := ends[0], ends[1]
	if !l.is(valve) && !l.is(through) && l.shape.kind != "valve" && !l.together(l.tokenBefore(second.from)) {
		return false
	}
	if l.is(set) && (l.inletBetween(0, len(l.norm)) || !l.contains(gaugeWordList)) {
		return false // relief valve, inlet 3/8, bypass 1/2, or connection 3/8, drain 1/2: its two ports
	}
	if first.fig == nil || second.fig == nil || first.fig == second.fig || len(first.sexes) > 2 || first.to > second.to {
		return false
	}
	between, behind := l.oneBlank(l.norm[first.to:max(first.to, second.to)]), l.oneBlank(l.norm[second.to:])
	if comma := bytes.IndexByte(behind, ','); comma >= 0 {
		behind = behind[:comma]
	}
	text := slices.Concat(between, []byte(" "), behind[:min(len(behind), longestPort)])
	return sidePortList.in(text)
}

// tokenBefore is the place of the token right before a phrase, or of the word it begins with.
func (l *line) tokenBefore(from int) int {
	k := indexToken(l.tokens, func(it *token) bool { return it.from >= from })
	return max(0, k-1)
}

// longestPort is how many bytes behind a size the words for its port end at most.
const longestPort = 24

// onePort gives the port of a relief valve or a pump that the words behind its name do not speak of, where they speak of the other: its ports
// mostly differ. "" if they speak of both or of none.
func (l *line) onePort() string {
	if l.one || l.both || !l.is(set) && !l.is(delivers) {
		return ""
	}
	named := indexToken(l.tokens, func(it *token) bool { return it.is(classKind) != nil && it.is(classKind).shape.ends >= 0 })
	if named < 0 {
		return ""
	}
	from := l.tokens[named].to
	inlet := l.inletBetween(from, len(l.norm))
	outlet := outletList.in(l.norm[from:])
	if inlet && outlet && l.sizesBehind(outletList, from) == 0 && l.sizesBehind(inletList, from) > 0 {
		outlet = false // inlet 1/2 BSP, outlet to be told
	}
	if inlet && outlet && l.inletUntold(from) {
		inlet = false // outlet 1/2 NPT (inlet: check)
	}
	switch {
	case inlet && !outlet:
		return "the outlet"
	case outlet && !inlet:
		return "the inlet"
	}
	return ""
}

// inletUntold reports that the words between marks around the last word for an inlet give no size, and that a size stands behind a word for an outlet
// before them.
func (l *line) inletUntold(from int) bool {
	last, outlet := -1, -1
	for k := range l.tokens {
		it := &l.tokens[k]
		word := string(l.norm[it.from:it.to])
		switch {
		case it.from < from || it.to == it.from:
		case inletList.hasWord(word):
			last = k
		case outlet < 0 && outletList.hasWord(word):
			outlet = k
		}
	}
	if last < 0 || outlet < 0 || outlet > last || len(sizesIn(l.tokens[outlet:last])) == 0 {
		return false
	}
	begin, end := last, last+1
	for begin > outlet && l.tokens[begin-1].mark != ',' && l.tokens[begin-1].mark != '(' && l.tokens[begin-1].mark != ';' {
		begin--
	}
	for end < len(l.tokens) && l.tokens[end].mark != ',' && l.tokens[end].mark != ')' && l.tokens[end].mark != ';' {
		end++
	}
	return begin > outlet+1 && len(sizesIn(l.tokens[begin:end])) == 0
}

// sizesBehind counts the sizes behind the last word of a list, up to the end of the line.
func (l *line) sizesBehind(list wordList, from int) int {
	last := -1
	for k := range l.tokens {
		if it := &l.tokens[k]; it.from >= from && list.has(l.norm[it.from:it.to]) {
			last = k
		}
	}
	if last < 0 {
		return -1
	}
	return len(sizesIn(l.tokens[last:]))
}

// inletBetween reports whether a word for the inlet stands in a stretch.
func (l *line) inletBetween(from, to int) bool {
	text := string(l.oneBlank(l.norm[min(from, to):to]))
	for _, w := range inletList.words() {
		if hasWord(text, w) {
			return true
		}
	}
	return false
}

// saysOutlet reports a word for the outlet and none for the inlet.
func (l *line) saysOutlet() bool {
	if l.inletBetween(0, len(l.norm)) || bytes.Contains(l.norm, []byte("进")) || bytes.Contains(l.norm, []byte("吸")) {
		return false
	}
	return l.contains(outletList)
}

// feedAndBrine reports the two ports of a vessel that are named together, feed/brine: of the product something else is said.
func (l *line) feedAndBrine() bool {
	return anyToken(l.tokens, func(it *token) bool {
		return it.value(classAttr) == "pair" && bytes.HasPrefix(l.norm[it.from:it.to], []byte("feed"))
	})
}

// namesBrine reports whether a vessel's line speaks of its brine port and not of its
// product, so that two ends are feed and brine and not feed and product.
func (l *line) namesBrine() bool {
	has := func(words ...string) bool {
		return slices.ContainsFunc(words, func(w string) bool { return bytes.Contains(l.norm, []byte(w)) })
	}
	return has("brine", "concentrate", "reject") && !has("product", "permeate")
}

// twoOutlets reports whether two outlets are counted behind the first of two ends: inlet IG 3/4, 2 outlets AG 3/4.
func (l *line) twoOutlets(first, second *phrase) bool {
	for k := range l.tokens {
		it := &l.tokens[k]
		if f := it.figure; it.from >= first.from && it.to <= second.to && f != nil && f.whole && f.v == 2 && at(l.tokens, k+1).role(classAfter) == asCount && l.inletBetween(0, it.from) {
			return true
		}
		if it.from >= first.to && it.to <= second.to && it.figure == nil && !at(l.tokens, k-1).figure.digitsAsRead() && outletPluralList.has(l.norm[it.from:it.to]) && l.inletBetween(0, it.from) {
			return true // inlet 1/2, outlets 3/8
		}
	}
	return false
}

// counted reports a word for outlets at k, or behind the names of a thread and its sex that begin there.
func (l *line) counted(k int) bool {
	for at(l.tokens, k).is(classFamily) != nil || at(l.tokens, k).is(classSex) != nil {
		k++
	}
	return at(l.tokens, k).role(classAfter) == asCount
}

// runFirst reports that the ends of a manifold are the two of its run, of one size, and its outlets, said once.
func (l *line) runFirst(ends []*phrase) bool {
	return l.is(manifold) && len(ends) == 3 && ends[0].fig != nil && ends[0].fig == ends[1].fig && ends[2].fig != nil && ends[2].fig != ends[0].fig && ends[2].fig.times == 0 && !ends[2].fig.counted
}

// outlets multiplies the last size of a manifold by the number of its outlets.
func (l *line) outlets(ends []*phrase) []*phrase {
	n := 0
	for k := range l.tokens {
		f := l.tokens[k].figure
		next := l.beside(k, 1)
		if next.mark == '-' && next.glued {
			next = at(l.tokens, k+2)
		}
		if f != nil && f.whole && f.v <= 12 && next.role(classAfter) == asCount {
			n = int(f.v)
		}
		if f != nil && f.whole && f.v <= 12 && !f.marked && next.value(classSep) == "x" && at(l.tokens, k+2).figure != nil && l.counted(k+3) {
			n, f.used = int(f.v), true // 4 x 1/2 outlets
		}
	}
	if n == 0 || len(ends) > 2 && !l.runFirst(ends) {
		return ends
	}
	last := ends[len(ends)-1]
	if len(ends) == 2 && ends[0].attr&isTwo != 0 && last.attr&isTwo != 0 {
		ends = append(ends, copyOf(ends[0])) // inlets: a bar with one at each end
	}
	if len(ends) == 2 && l.inletBetween(ends[0].to, ends[1].to) {
		last = ends[0]
	}
	for k := 1; k < n; k++ {
		ends = append(ends, copyOf(last))
	}
	return ends
}
