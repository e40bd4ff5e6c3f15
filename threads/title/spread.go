package title

import "handtight/threads"

// sequence is the number of sexes said one after the other for one phrase.
func (l *line) sequence(ends []*phrase) int {
	n := 0
	for _, e := range ends {
		n = max(n, len(e.sexes))
	}
	return n
}

// spread deals a sequence of sexes (M-F-F) out to the ends.
func (l *line) spread(ends []*phrase, n int) []*phrase {
	var sexes []threads.Sex
	count := 0
	for _, e := range ends {
		if len(e.sexes) == n && sexes == nil {
			sexes = e.sexes
		}
		if threadLike(e) {
			count++
		}
	}
	if count == 1 && len(ends) > 1 && l.shape != nil && l.shape.ends > 0 && len(ends)-1+n > l.shape.ends && !l.is(many) {
		for _, e := range ends {
			e.oneSex() // Muffe IG/IG 22 x 1/2: the tube is one of the two ends
		}
		return ends
	}
	var out []*phrase
	if count == 1 {
		for _, e := range ends {
			if !threadLike(e) {
				out = append(out, e)
				continue
			}
			for i, s := range sexes {
				c := copyOf(e)
				c.sexes = []threads.Sex{s}
				if n == 2 && s == threads.Male && sexes[1-i] == threads.Female && !l.one {
					c.attr &^= isNut | isSwivel // the nut of a part that is male and female is its female's
					if c.attr&isConeRing != 0 {
						c.attr &^= isConeRing // and so are the cone and the ring of a DKOL
					}
				}
				l.ownForm(c, i, n)
				out = append(out, c)
			}
		}
		return out
	}
	if count == 2 && n == 3 {
		ends = l.threeOf(ends)
	}
	if l.is(bush) && count == 2 && n == 2 && sexes[0] != sexes[1] && len(ends) == 2 && ends[0].fig.v != ends[1].fig.v {
		large, small := ends[0], ends[1]
		if large.fig.v < small.fig.v {
			large, small = small, large
		}
		large.sexes, small.sexes = []threads.Sex{threads.Male}, []threads.Sex{threads.Female}
		return ends
	}
	k := 0
	for _, e := range ends {
		if threadLike(e) && k < n {
			if e.attr&isNut != 0 && len(e.sexes) == 0 && sexes[k] == threads.Male && !l.one {
				e.bothSexes = true // nipple G 1/2 male/male with swivel nut G 3/4
			} else {
				e.sexes = []threads.Sex{sexes[k]}
			}
			k++
		}
	}
	return ends
}

// studAndNut parts an end that is called male from the code of a nut beside it, which is the part's other end: male elbow 12L
// with DKOL. Nil if nothing of the kind is said.
func (l *line) studAndNut(ends []*phrase) (male, nut *phrase) {
	if l.one || len(ends) != 1 || l.shape == nil || l.shape.ends != 2 && !l.is(adaptor) {
		return nil, nil
	}
	e := ends[0]
	if e.fam == nil || e.fam.series() == 0 || len(e.fam.sexes) != 1 || e.fam.sexes[0] != threads.Female || len(e.sexes) != 1 || e.sexes[0] != threads.Male {
		return nil, nil
	}
	nut = copyOf(e)
	nut.sexes = e.fam.sexes
	e.attr &^= isNut | isSwivel | isConeRing
	return e, nut
}

// ownForm leaves the i-th of two ends of one phrase the form that is said of it: konisches AG und
// zylindrisches IG.
func (l *line) ownForm(c *phrase, i, n int) {
	if n == 2 && c.sex() == threads.Male && (c.fam != nil && c.fam.series() != 0 || c.fam2 != nil && c.fam2.series() != 0) && c.attr&isConeRing != 0 {
		c.attr &^= isNut | isSwivel | isConeRing // DKOL of an elbow whose other end is male
	}
	if n != 2 || c.attr&isTaper == 0 || c.attr&isParallel == 0 {
		return
	}
	for k := range l.tokens {
		v := l.tokens[k].value(classAttr)
		if v != "taper" && v != "parallel" {
			continue
		}
		if (v == "taper") == (i == 0) {
			c.attr &^= isParallel
		} else {
			c.attr &^= isTaper
		}
		return
	}
}
