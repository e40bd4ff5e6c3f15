package title

import "handtight/threads"

func (l *line) kindSexes(ends []*phrase, count int) {
	for _, e := range ends {
		e.byKind = len(e.sexes) == 0
	}
	if l.is(bush) && count == 2 && len(ends) == 2 {
		l.bushSexes(ends)
		return
	}
	usual := l.shape.sexes
	if l.shape.kind == "plug" && !l.one && l.portBehindSize() {
		usual = nil // end plug 3/8 NPT port: the thread in it, or its own
	}
	if (l.is(adaptor) || l.is(elbow) || l.is(tee)) && len(usual) == 0 && count == 1 && len(ends) > 1 && tailsBesideTaper(ends) {
		usual = []threads.Sex{threads.Male} // as a hose tail
	}
	if l.is(elbow) && l.street() {
		usual = []threads.Sex{threads.Male, threads.Female}
	}
	k := 0
	for _, e := range ends {
		if !threadLike(e) {
			continue
		}
		if len(e.sexes) == 0 && !e.bothSexes && !e.oldR {
			l.assume(e, l.usual(e, usual, k, count, len(ends)))
			other := l.shape.ends == 1 && !l.is(nut) || l.is(plain) && (count < len(ends) || len(l.unjudged) > 0)
			e.assumed = e.assumed || len(e.sexes) > 0 && (len(ends) > 1 || len(l.unjudged) > 0) && other // a cap with another size is an adaptor, and so is a coupling of a tube and a thread
		}
		k++
	}
}

// tailsBesideTaper reports a taper thread whose other ends are all hose tails.
func tailsBesideTaper(ends []*phrase) bool {
	for _, e := range ends {
		if e.end != "BARB" && !taperNamed(e) {
			return false
		}
	}
	return true
}

// taperNamed reports an end whose words name a taper thread that a hose tail mostly has male; Rc is female by its name.
func taperNamed(c *phrase) bool {
	return c.fam != nil && c.fam.taper() && c.fam.value != "RC"
}

func (l *line) street() bool {
	for k := range l.tokens {
		if l.tokens[k].value(classAttr) == "street" {
			return true
		}
	}
	return false
}

// usual is the sex that the kind of part mostly has, by the place of the end.
func (l *line) usual(e *phrase, sexes []threads.Sex, k, count, ends int) threads.Sex {
	switch {
	case !l.one && e.fam != nil && (e.fam.value == "SAE45" || e.fam.value == "FLARE" || e.fam.value == "SAE" && l.namesFlare()) && e.attr&(isNut|isSwivel) == 0 && (l.is(elbow) || l.is(tee) || l.is(union) || l.is(adaptor)):
		return threads.Male // the body of a flare fitting, whose nut is a part of its own
	case e.fig != nil && e.fig.kind == coneSize && l.is(plain) && len(sexes) == 1:
		return sexes[0] // a cap's nut
	case e.fig != nil && e.fig.kind == coneSize:
		return l.coneSex()
	case e.fam != nil && e.fam.value == "NH" && l.valve():
		return threads.Male
	case len(sexes) == 1 && l.is(tail) && e.attr&isSwivel != 0:
		return threads.Female
	case len(sexes) == 1:
		return sexes[0]
	case len(sexes) == 2 && sexes[0] == sexes[1]:
		return sexes[0]
	case len(sexes) == count && count > 1:
		return sexes[k]
	case l.is(femaleRound) && count == ends && !anySex(e) && !flared(e.fam):
		return threads.Female
	case l.is(bulkhead) && k == 0 && count > 1 && e.fig != nil && e.fig.kind != coneSize:
		return threads.Female
	}
	return threads.NoSex
}

// namesFlare reports the word for a flare, beside which SAE is the flare of 45 degrees and no boss.
func (l *line) namesFlare() bool {
	return anyToken(l.tokens, func(it *token) bool { v := it.value(classFamily); return v == "FLARE" || v == "SAE45" })
}

// flared reports whether the family is one whose tees and elbows are not mostly female: their
// bodies are male, and their nuts turn.
func flared(m *sense) bool {
	return m != nil && (m.value == "JIC" || m.value == "SAE45" || m.value == "FLARE" || m.value == "ORFS")
}

func anySex(e *phrase) bool { return len(e.sexes) > 0 }

// assume gives an end the sex that the kind has. A sex that is only custom is not taken where a
// word that is not understood stands where sexes stand: that word may say another.
func (l *line) assume(e *phrase, s threads.Sex) {
	if s == threads.NoSex {
		return
	}
	custom := !l.is(plain) && (len(l.shape.sexes) != 2 || l.is(elbow))
	if custom && e.doubt {
		return
	}
	e.sexes, e.assumed = []threads.Sex{s}, custom
}

// bushSexes: the larger end of a bush is male, the smaller female.
func (l *line) bushSexes(ends []*phrase) {
	a, b := ends[0], ends[1]
	if a.fig == nil || b.fig == nil || a.fig.v == b.fig.v {
		return
	}
	if a.fig.v < b.fig.v {
		a, b = b, a
	}
	if a.fam != nil && b.fam != nil && a.fam.value == "R" && b.fam.value == "R" && l.sexesSaid() == 0 {
		b.sexes, b.oldR = nil, true // Bussning R 1 x R 1/2: the trade calls both R
		return
	}
	if a.sex() == threads.Male && b.sex() == threads.Male && l.sexesSaid() == 1 {
		b.sexes, b.assumed = []threads.Sex{threads.Female}, true // bush 3/4 x 1/2 NPT male: its outside
	}
	if len(a.sexes) == 0 && (len(b.sexes) == 0 || b.sexes[0] == threads.Female) {
		a.sexes = []threads.Sex{threads.Male}
	}
	if len(b.sexes) == 0 {
		b.sexes = []threads.Sex{threads.Female}
	}
}

// portBehindSize reports the word for a port right behind the size of a thread or its name, outside of brackets: plug 3/8 NPT port.
func (l *line) portBehindSize() bool {
	for k := 1; k < len(l.tokens); k++ {
		before := at(l.tokens, k-1)
		if l.tokens[k].value(classAttr) == "port" && (before.is(classFamily) != nil || before.figure != nil && before.figure.sized()) && !l.inBracket(k) {
			return true
		}
	}
	return false
}
