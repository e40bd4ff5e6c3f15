package title

import "handtight/threads"

// torn deals a list of sexes at one size where the size has one end only, or where the other size has
// its own sex: male/female beside 3/4 NPT male does not say which of the two the first is, and of a
// plug, a nut, a gauge or a tail's one thread it says both. There the sex is left open. It reports
// whether nothing is left to deal.
func (l *line) torn(ends []*phrase) bool {
	var listed, single *phrase
	count := 0
	for _, e := range ends {
		if !threadLike(e) {
			continue
		}
		count++
		if len(e.sexes) > 1 && listed == nil {
			listed = e
		} else if len(e.sexes) > 0 {
			single = e
		}
	}
	if listed == nil {
		return false
	}
	if count == 1 && l.oneThread(ends) {
		listed.oneSex()
		return true
	}
	if count != 2 || single == nil {
		return false
	}
	last := listed.sexes[len(listed.sexes)-1]
	switch {
	case l.is(tee) && len(listed.sexes) == 2 && same(listed.sexes):
		listed.attr |= isTwo
	case !same(listed.sexes) && listed == ends[0] && len(single.sexes) == 1 && single.sexes[0] == last:
		return false // the name says both ends' sexes, and the other size its own again
	}
	listed.oneSex()
	single.oneSex()
	return true
}

// countSexes deals three and more sexes in a row out to the ends, as many as the part has. More than
// that say nothing of one end or another; nor do they beside a word that may be one more, misspelt.
func (l *line) countSexes(c *phrase, tokens []token) {
	if !c.unknown && (l.shape == nil || l.shape.ends < 1) {
		return // no word may be a sex misspelt, and no part has so many ends
	}
	var room [8]threads.Sex
	row, longest := room[:0], room[:0]
	lost := false
	for k := range tokens {
		it := &tokens[k]
		if it.mark == 0 && !saysSex(it) {
			row = row[len(row):]
		}
		said, family := it.is(classSex), it.is(classFamily) // NPT male is one word
		switch {
		case said != nil && !said.weak():
			row = append(row, said.sexes...)
		case family != nil && len(family.sexes) > 0:
			row = append(row, family.sexes...)
		case it.unread && !it.code && (saysSex(at(tokens, k-1)) || saysSex(at(tokens, k+1))) && l.misspelt(it):
			lost = true
		}
		if len(row) > len(longest) {
			longest = row
		}
	}
	switch {
	case lost:
		c.sexes, c.bothSexes, c.doubt = nil, true, true
	case l.shape == nil || l.shape.ends < 1 || len(longest) < 3 || same(longest):
	case len(longest) > l.shape.ends:
		c.sexes, c.bothSexes = nil, true
	case len(longest) == l.shape.ends:
		c.sexes, c.dealt = append([]threads.Sex(nil), longest...), true
	}
}

// saysSex reports whether a word says a sex, by itself or with a thread's name.
func saysSex(it *token) bool {
	m := it.is(classFamily)
	return it.is(classSex) != nil || m != nil && len(m.sexes) > 0
}

// oneThread reports whether the part has one thread, whatever else it has.
func (l *line) oneThread(ends []*phrase) bool {
	return l.is(plain) && l.shape.ends == 1 || l.is(nut) || l.is(scaled) || l.is(tail) && len(ends) > 1
}

// oneSex takes a sex that is said twice for one, and leaves two that differ open.
func (c *phrase) oneSex() {
	if len(c.sexes) < 2 {
		return
	}
	if same(c.sexes) {
		c.sexes = c.sexes[:1]
		return
	}
	c.sexes, c.bothSexes = nil, true
}

// same reports whether a list of sexes is one sex said again.
func same(sexes []threads.Sex) bool {
	for _, s := range sexes {
		if s != sexes[0] {
			return false
		}
	}
	return true
}
