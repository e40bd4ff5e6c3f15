package title

// inherit gives a bare size the family and the sex that its neighbour says for
// both (3/4 x 1/2 female NPT).
func (l *line) inherit(ends []*phrase) {
	tail := l.is(tail)
	for k, e := range ends {
		if k > 0 && !l.one && l.is(hose) && e.bare() && e.attr == 0 && e.fig != nil && e.fig.kind == coneSize && ends[k-1].fig != nil && ends[k-1].fig.kind == coneSize && ends[k-1].attr&isNut != 0 {
			e.attr, e.sexes = ends[k-1].attr, ends[k-1].sexes // nut 12L / 12L of a hose
		}
		if e.fig == nil || e.open || e.end != "" || e.fam != nil || !threadLike(e) || e.fig.kind != inchSize && e.fig.kind != dashSize {
			continue
		}
		if k == 0 && len(ends) == 2 && e.fam == nil && len(e.sexes) < 2 && !e.thread && e.attr == 0 && e.fig.kind == inchSize && !l.one && ends[1].fam != nil && ends[1].fam.taper() && ends[1].fig != nil && ends[1].fig.kind == inchSize && ends[1].end == "" && !l.reducing && l.contains(tubeConnectorList) {
			if len(ends[1].sexes) == 0 {
				ends[1].sexes = e.sexes
			}
			e.end, e.sexes, e.byName = "TUBE", nil, true // male connector 1/4 x 1/4 NPT: of fittings called so the first size is the tube's
			continue
		}
		if e.fig.hose && !tail && !hasEnd(ends, "BARB") && !l.saysHose() {
			e.end, e.pex = "TUBE", true // a bore or an outside: which is not said
			continue
		}
		if e.fig.hose || tail && e.bare() && l.otherThread(ends, k) && !hasEnd(ends, "BARB") {
			e.end, e.lent = "BARB", e.strange
			continue
		}
		if e.bare() && l.adapts() && l.otherThread(ends, k) && l.sequence(ends) < 2 && !hasEnd(ends, "BARB") && (k > 0 || l.connects() && e.fig.v != ends[len(ends)-1].fig.v) {
			e.open = true
			continue
		}
		if e.bare() && !l.one && hasEnd(ends, "BARB") && e.names(stock) {
			e.open = true // 1/2" pipe to 3/8" barb: how it takes the pipe is not said
			continue
		}
		if e.bare() && !l.one && !anyThread(ends) && l.unevenWord(ends, e) {
			continue
		}
		if e.bare() && !l.one && e.attr&isNut == 0 && !anyThread(ends) && !(e.names(tapThread) && len(ends) == 2 && ends[1-k].millimetres()) {
			if e.end = l.sharedEnd(ends, e); e.end != "" {
				e.lent = e.strange
				continue
			}
		}
		if !l.one && k > 0 && e.bare() && e.attr == 0 && ends[k-1].fig != nil && (grips(ends[k-1].end) || l.is(tee) && plainFamilies(ends[k-1].end) != nil) && ends[k-1].fig.v == e.fig.v {
			e.end = ends[k-1].end // press tee 1" x 1" with 1/2" FIP branch
			continue
		}
		if e.bare() && !l.one && l.material == "pe" && l.shape != nil && l.is(plainPipe) && l.neighbour(ends, k) != nil && e.fig.kind == inchSize {
			e.end, e.pex, e.fused = "TUBE", true, true // HDPE elbow 1 x 1/2 NPT male: the other end takes the pipe
			continue
		}
		if n := l.neighbour(ends, k); n != nil {
			was := e.bare()
			if was && (e.strange || l.lost) {
				e.open = true // a word not understood may say another end
				continue
			}
			if e.strange && !l.one {
				continue // 3/8 RG male - 3/8 NPT female: the word may name its own thread
			}
			e.fam, e.fam2 = n.fam, n.fam2
			if was && len(n.sexes) == 1 && len(e.sexes) == 0 && !l.unequal() {
				e.sexes = n.sexes
			}
		}
	}
}

// grips reports an end of pipe that is pressed, soldered or glued, which the other end of its size mostly is too.
func grips(end string) bool {
	switch end {
	case "GROOVE", "PRESS", "LAYER", "SOCKET", "SOLDER", "COPPER":
		return true
	}
	return false
}

// saysHose reports whether a word of the line names a hose or its tail.
func (l *line) saysHose() bool {
	for k := range l.tokens {
		if v := l.tokens[k].value(classEnd); v == "HOSE" || v == "BARB" {
			return true
		}
	}
	return false
}

// unequal reports whether the two ends of the part differ in sex by its nature.
func (l *line) unequal() bool {
	return l.is(unequal)
}

// anyThread reports whether the words of some end speak of a thread.
func anyThread(ends []*phrase) bool {
	for _, e := range ends {
		if e.described() {
			return true
		}
	}
	return false
}

// unevenWord opens both ends of a valve of two sizes of which one word says the grip: 1/2 x 3/8
// push-fit stop. Such valves take a thread or another grip at the other end, and the word does not
// say which end it is; a push-in end is rather the larger, where the pipe of the house goes in.
func (l *line) unevenWord(ends []*phrase, bare *phrase) bool {
	if !l.is(valve) {
		return false
	}
	for _, o := range ends {
		if (o.end == "PUSH" || o.end == "COMPRESSION") && o.fig != nil && o.fig.kind == inchSize && o.fig.v != bare.fig.v {
			if o.end == "PUSH" && o.part != nil && bare.fig.v > o.fig.v {
				bare.end, o.end = o.end, ""
				bare, o = o, bare
			}
			bare.open, o.either = true, true
			return true
		}
	}
	return false
}

// sharedEnd is the word of an end that holds for a bare size too (union 3/8 x
// 1/4 compression). Millimetres beside inches are another sort of end, and so is
// the thread of a tap or a through-hull beside its tail.
func (l *line) sharedEnd(ends []*phrase, bare *phrase) string {
	own := l.is(ownThread)
	for _, e := range ends {
		if e.millimetres() && !bare.millimetres() || own && e.end == "BARB" {
			continue
		}
		switch e.end {
		case "COMPRESSION", "PUSH", "BARB", "TUBE":
			return e.end
		}
	}
	return ""
}

// connects reports whether the part is called a connector, as a fitting from a tube to a thread is.
func (l *line) connects() bool {
	return l.hasWord("connector") || l.hasWord("connectors")
}

func (l *line) adapts() bool { return l.is(adaptor) && !l.one }

func (l *line) otherThread(ends []*phrase, k int) bool {
	for j, o := range ends {
		if j != k && len(o.sexes) > 0 && threadLike(o) {
			return true
		}
	}
	return false
}

func hasEnd(ends []*phrase, name string) bool {
	for _, e := range ends {
		if e.end == name {
			return true
		}
	}
	return false
}

// nameFirst reports that the name of an end's thread stands before its size: of 1/4 AG x JIC 7/16 the JIC is the second's alone.
func (l *line) nameFirst(c *phrase) bool {
	named := false
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.from < c.from || it.to > c.to {
			continue
		}
		if it.figure != nil && it.figure == c.fig {
			return named
		}
		named = named || it.is(classFamily) == c.fam
	}
	return false
}

// neighbour finds the nearest end whose family a bare size can share: the one
// behind it first, as the words mostly follow the figures.
func (l *line) neighbour(ends []*phrase, k int) *phrase {
	shares := func(c *phrase) bool {
		return c.fam != nil && !(ends[k].attr&isParallel != 0 && c.fam.taper()) && !c.fam.has("pre") && c.end == "" && c.fam.value != "NH" && (c.fig == nil || c.fig.kind == ends[k].fig.kind)
	}
	if l.one {
		return nil
	}
	for j := k + 1; j < len(ends); j++ {
		if shares(ends[j]) && !(len(ends[k].sexes) > 0 && ends[j].strong && l.nameFirst(ends[j])) {
			return ends[j]
		}
	}
	for j := k - 1; j >= 0; j-- {
		if shares(ends[j]) && !(l.is(adaptor) && len(ends[j].sexes) == 1) {
			return ends[j]
		}
	}
	return nil
}
