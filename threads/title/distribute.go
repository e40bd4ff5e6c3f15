package title

import (
	"bytes"
	"slices"

	"handtight/threads"
)

// distribute turns phrases into ends: what is said once holds for all the ends that
// need it, sizes and words in parallel lists are paired, and a part has the ends
// of its kind. The steps are in steps.go, each with the line that shows it.
func (l *line) distribute(all []*phrase) []*phrase {
	all = l.mergeOrphans(all)
	ends, rest := l.gather(all)
	for k := range endSteps {
		if len(ends) == 0 {
			return nil
		}
		if s := &endSteps[k]; l.skip == "" || s.name != l.skip {
			ends = s.apply(l, ends, rest)
		}
	}
	return ends
}

// repeated gives a size that is said to come several times as many ends.
func (l *line) repeated(ends []*phrase) []*phrase {
	pair := len(ends) > 1 && (len(ends) > 2 || !ends[1].strong || l.shape == nil || l.shape.ends != 2) // inlet and outlet; in/out 1/4 x 3/8 names both
	comesAgain := func(e *phrase) bool { return e.fig != nil && e.fig.times != 0 || e.attr&isPair != 0 && pair }
	if !slices.ContainsFunc(ends, comesAgain) {
		return ends
	}
	var out []*phrase
	for _, e := range ends {
		out = append(out, e)
		times := 0
		if e.fig != nil {
			e.fig.multiple = max(e.fig.multiple, e.fig.times)
			times, e.fig.times = e.fig.times, 0 // two phrases of one size are of the number
			for _, o := range ends {
				if o != e && o.fig == e.fig {
					times--
				}
			}
		}
		if e.attr&isPair != 0 && pair {
			times = 2 // inlet and outlet
		}
		for n := 1; n < times; n++ {
			out = append(out, copyOf(e))
		}
	}
	return out
}

// runSexes gives the two ends of the run of a tee or a manifold, said as one size with two sexes beside a branch
// or outlets that are said by themselves.
func (l *line) runSexes(ends []*phrase) []*phrase {
	k := slices.IndexFunc(ends, func(e *phrase) bool { return len(e.sexes) == 2 })
	if len(ends) < 2 || k < 0 || slices.ContainsFunc(ends, func(e *phrase) bool { return e != ends[k] && (len(e.sexes) > 1 || e.fig == ends[k].fig) }) {
		return ends
	}
	if !l.is(manifold) && (!l.is(tee) || len(ends) != 2 || k > 0 || ends[0].sexes[0] == ends[0].sexes[1]) {
		return ends
	}
	run := copyOf(ends[k])
	run.sexes = ends[k].sexes[1:]
	ends[k].sexes = ends[k].sexes[:1:1]
	return slices.Insert(slices.Clone(ends), k+1, run)
}

// mergeOrphans joins "Female to Female" into one phrase with two sexes, and
// drops phrases that say nothing.
func (l *line) mergeOrphans(all []*phrase) []*phrase {
	out := l.pad.list(len(all))
	sized := false
	for k, c := range all {
		sized = sized || c.fig != nil
		if c.fig == nil && !c.says() && c.attr&isLeft != 0 && k+1 < len(all) && all[k+1].fig != nil && bytes.Contains(l.norm[c.to:all[k+1].from], []byte(":")) {
			all[k+1].attr |= isLeft // left hand: nut M14x1, other side G 1/4
			continue
		}
		if c.fig == nil && !c.says() && c.attr == 0 && !c.thread {
			l.lostEnd = l.lostEnd || sized && c.unknown && bytes.HasSuffix(bytes.TrimRight(l.norm[:c.from], " "), []byte("x"))
			l.lost = l.lost || sized && c.unknown && (c.strong || k+1 < len(all) && all[k+1].strong)
			continue
		}
		if n := len(out); n > 0 && !l.one && c.comma && out[n-1].end == "CAMLOCK" && out[n-1].fig == nil && c.fig != nil && c.end == "" && c.fam == nil {
			c.end, c.from = "CAMLOCK", out[n-1].from // camlock type C, female 3/4 x tail 3/4
			out = out[:n-1]
		}
		if n := len(out); n > 0 && c.strong && l.onlyStandard(out[n-1]) {
			c.strong = false // ISO 7 - R 3/4: the standard of what follows
		}
		if n := len(out); n > 0 && c.strong && c.onlySexes() && out[n-1].onlySexes() && !out[n-1].strong {
			out[n-1].sexes = append(out[n-1].sexes[:len(out[n-1].sexes):len(out[n-1].sexes)], c.sexes...)
			out[n-1].to = c.to
			continue
		}
		out = append(out, c)
	}
	return out
}

func (c *phrase) onlySexes() bool {
	return c.fig == nil && c.fam == nil && c.end == "" && len(c.sexes) > 0
}

// gather tells the phrases that are ends from those that only say something of
// them. A phrase without a size is an end where an x parts it, and takes the
// size of its neighbour; lists in parallel (MHT x FPT 3/4 x 3/4) are paired.
func (l *line) gather(all []*phrase) (ends, rest []*phrase) {
	first := 0
	for first < len(all) && all[first].fig == nil {
		first++
	}
	if first == len(all) {
		return l.sizeless(all)
	}
	lead := l.leading(all, first)
	tail := lentDashes(lead, trailing(all[first:]))
	if len(lead) > 0 && pairLists(lead, tail) {
		rest, lead = append(rest, all[:first-len(lead)]...), nil
	} else {
		rest = append(rest, all[:first-len(lead)]...)
	}
	if len(lead) > 0 && !tail[0].strong {
		rest, lead = append(rest, lead...), nil
	}
	ends = l.pad.list(len(lead) + len(tail))
	for _, c := range lead {
		if c.end == "QC" && tail[0].end == "BARB" && tail[0].millimetres() {
			l.unjudged = append(l.unjudged, l.words(c.from, c.to)+" (quick coupling)") // quick coupler x 8 mm hose barb: the size is the tail's
			continue
		}
		if c.onlySexes() && tail[0].end == "BARB" && tail[0].millimetres() && !l.one {
			l.unjudged = append(l.unjudged, l.words(c.from, c.to)+" (an end of which no size is said)") // male - 8 mm hose barb
			continue
		}
		if c.fig == nil {
			c.fig = lentSize(c, tail[0])
		}
		if c.end == "BARB" && !c.hose && tail[0].bare() && tail[0].fig.kind == inchSize && !l.one && len(tail) == 1 {
			c.lone, tail[0].open = true, true // hose barb x 1/2: of the 1/2 nothing is said
		}
		if c.fam != nil && c.fam.value == "NH" {
			c.fig = hoseThread()
		}
		if c.fam == nil && c.end == "" && !c.foreign {
			c.fam, c.attr = tail[0].fam, c.attr|tail[0].attr&(isTaper|isParallel)
		}
		ends = append(ends, c)
	}
	for k, c := range tail {
		switch {
		case k == 0 && len(lead) > 1 && c.bare() && c.attr == 0:
			// male JIC x male JIC - 9/16-18: the size of both
		case c.fig != nil:
			ends = append(ends, c)
		case k == 1 && !c.strong && c.end != "" && !c.described() && ends[0].attr == 0 && k+1 < len(tail) && tail[k+1].strong && tail[k+1].fig == nil && tail[k+1].says() && !l.one && (ends[0].bare() || ends[0].sexOf(tail[k+1])):
			ends[0].end, ends[0].sexes = c.end, nil // 2" tee, slip x slip x FIPT; 1/2" female adapter, slip x FPT
		case c.strong && c.onlySexes() && !c.foreign && len(ends) == 1 && len(ends[0].sexes) == 0:
			ends[0].sexes = c.sexes
		case c.strong && c.onlySexes() && len(c.sexes) > 1 && len(ends) == 1 && len(ends[0].sexes) == 1:
			ends[0].sexes = append(ends[0].sexes[:1:1], c.sexes...)
		case c.plus && c.onlySexes() && len(c.sexes) == 1 && k+1 < len(tail) && len(ends) > 0 && ends[len(ends)-1].fig != nil && len(ends[len(ends)-1].sexes) == 1:
			out := copyOf(ends[len(ends)-1])
			out.sexes = c.sexes
			ends = append(ends, out) // valve 3/8 F in + F out, 1/2 F
		case c.fam != nil && c.fam.value == "NH" && len(c.sexes) == 0 && hasFamily(ends, "NH"):
			rest = append(rest, c)
		case c.end == "TUBE" && !c.described() && len(ends) > 1 && (hasEnd(ends, "PUSH") || hasEnd(ends, "COMPRESSION")):
			rest = append(rest, c) // M5 male to push-in 6 mm, threaded-to-tube: said again
		case c.strong && (c.end == "TUBE" || c.hose) && !c.described() && len(ends) == 1 && ends[0].bare() && l.shape == nil:
			ends[0].end, ends[0].endFirst, ends[0].pex, ends[0].hose = c.end, true, c.pex, c.hose
		case c.strong && len(ends) > 0 && (c.says() || c.attr&isNut != 0 && len(ends[len(ends)-1].sexes) == 1): // 1" IG/Ü-Mutter
			prev := ends[len(ends)-1]
			c.fig = lentSize(c, prev)
			c.lone = c.end == "BARB" && c.fig != nil && c.fig.kind == inchSize && threadLike(prev)
			if c.fam == nil && c.end == "" && !c.foreign {
				c.fam = prev.fam
			}
			if c.fam != nil && c.fam.value == "NH" {
				c.fig = hoseThread()
			}
			ends = append(ends, c)
		case c.fam != nil && c.fam.value == "NH":
			if ends, c = namesHose(ends, c); c != nil {
				ends = append(ends, c)
			}
		default:
			rest = append(rest, c)
		}
	}
	return ends, rest
}

// lentDashes gives a dash size that stands by itself behind to the flare that is named before without a size, and leaves it out: JIC male to 1/4 NPT
// male, -6.
func lentDashes(lead, tail []*phrase) []*phrase {
	for _, c := range lead {
		if !dashWord(c.fam) || c.fig != nil {
			continue
		}
		k := slices.IndexFunc(tail, func(o *phrase) bool { return o.fig != nil && o.fig.kind == dashSize && o.bare() && !o.strong })
		if k > 0 {
			c.fig = tail[k].fig
			return slices.Delete(slices.Clone(tail), k, k+1)
		}
	}
	return tail
}

// sexOf reports whether all that is said of an end is the one sex that another's words repeat.
func (c *phrase) sexOf(o *phrase) bool {
	return c.fam == nil && c.end == "" && len(c.sexes) == 1 && len(o.sexes) == 1 && o.sexes[0] == c.sexes[0]
}

// lentSize is the size that an end without one takes from its neighbour; none where a letter of the standard
// stands before that size, as in push-in x G 1/4: no tube is sized by it.
func lentSize(c, from *phrase) *figure {
	if c.foreign {
		return nil
	}
	if takesTube(c.end) && from.fam != nil && (from.fam.has("pre") || !dashWord(from.fam) && from.fam.value != "THREAD" && c.from < from.from) {
		return nil
	}
	if dashWord(c.fam) && from.fam != nil && !dashWord(from.fam) && from.fig != nil && from.fig.kind == inchSize && c.end == "" {
		return nil // JIC male to 1/4 NPT male: no flare goes by the size of a pipe thread
	}
	return from.fig
}

// namesHose gives the garden hose thread that is named behind a comma to the end
// of its size that has no name yet; else it is an end of its own.
func namesHose(ends []*phrase, c *phrase) ([]*phrase, *phrase) {
	for _, e := range ends {
		if !c.strong && len(c.sexes) == 0 && e.fam == nil && e.end == "" && e.fig != nil && e.fig.kind == inchSize && e.fig.v == hoseThread().v {
			e.fam = c.fam
			return ends, nil
		}
	}
	c.fig = hoseThread()
	return ends, c
}

func hasFamily(ends []*phrase, name string) bool {
	for _, e := range ends {
		if e.fam != nil && e.fam.value == name {
			return true
		}
	}
	return false
}

// hoseThread is the one size of garden hose threads.
func hoseThread() *figure { return &figure{kind: inchSize, v: 0.75, frac: true} }

// leading gives the sizeless phrases before the first size that x's join to it,
// or to each other where a comma follows (BSPP to NPT adapter, 3/8 x 3/8).
func (l *line) leading(all []*phrase, first int) []*phrase {
	k := first
	if !all[first].strong && first > 1 && all[first-1].strong {
		k = first - 1
		for k > 0 && all[k].strong && all[k-1].says() {
			k--
		}
		return all[k:first]
	}
	for k > 0 && all[k].strong && all[k-1].says() && !l.namesPartOnly(all[k-1], all[k]) {
		k--
	}
	return all[k:first]
}

// namesPartOnly reports a phrase that gives a sex and the name of the part before a dash, and is no end: female
// adapter - 1/4 BSP x 8 mm.
func (l *line) namesPartOnly(c, next *phrase) bool {
	return c.part != nil && c.onlySexes() && len(c.sexes) == 1 && c.to < next.from && bytes.Contains(l.norm[c.to:next.from], []byte(" - "))
}

// pairLists pairs words given in one list with sizes given in another.
func pairLists(lead, tail []*phrase) bool {
	var sized []*phrase
	for _, c := range tail {
		if c.fig != nil {
			sized = append(sized, c)
		}
	}
	words := append([]*phrase{}, lead...)
	if sized[0].strong && !(sized[0].bare() && len(words) == len(sized)) {
		w := copyOf(sized[0])
		if w.round {
			w.end = "" // the sign of its own diameter
		}
		words = append(words, w)
	}
	if len(sized) != len(words) || len(sized) < 2 {
		return false
	}
	dashes := !slices.ContainsFunc(sized, func(c *phrase) bool { return c.fig.kind != dashSize }) // MORB-FNPT 08-04
	for k, c := range sized {
		if !dashes && c.fig.kind == dashSize && words[k].fam != nil && !dashWord(words[k].fam) && slices.ContainsFunc(words, func(w *phrase) bool { return dashWord(w.fam) }) {
			return false // JIC male to 1/4 NPT male, -6: the dash is the flare's
		}
	}
	own := false
	for _, c := range sized[1:] {
		if c.fam != nil || c.end != "" {
			return false
		}
		own = own || len(c.sexes) > 0
	}
	for k, c := range sized {
		w := words[k]
		c.fam, c.fam2, c.end, c.thread, c.hose = w.fam, w.fam2, w.end, w.thread, w.hose
		if !own {
			c.sexes, c.attr = w.sexes, w.attr
		}
	}
	return true
}

// sizeless handles a line without any size: only a garden hose thread has one
// size, and an end of which a sex is said is shown unread.
func (l *line) sizeless(all []*phrase) (ends, rest []*phrase) {
	for _, c := range all {
		switch {
		case c.fam != nil && c.fam.value == "NH" && len(c.sexes) > 0:
			c.fig = hoseThread()
			ends = append(ends, c)
		case l.one && c.says():
			ends = append(ends, c)
		default:
			rest = append(rest, c)
		}
	}
	return ends, rest
}

// overlay spreads what phrases without a size say over the ends that lack it.
func (l *line) overlay(ends, rest []*phrase) {
	for _, r := range rest {
		if len(ends) == 1 && !l.one && l.shape != nil && l.shape.ends >= 2 && plainFamilies(r.end) != nil && (r.end != "TUBE" || r.pex) && !r.hose && ends[0].bare() && ends[0].attr&^isPlastic == 0 {
			ends[0].end, ends[0].pex, ends[0].barbed, ends[0].endFirst = r.end, r.pex, r.barbed, r.to <= ends[0].from
			continue // PEX elbow, 1/2"; check valve 1/8", barb
		}
		if len(ends) == 1 && !l.one && l.shape != nil && l.shape.ends == 2 && r.from >= ends[0].to && r.fig == nil && r.end != "" && r.end != "TUBE" && !r.hose && r.fam == nil && threadLike(ends[0]) && ends[0].described() {
			// elbow G 1/2 female, compression: an end of which no size is said
			l.unjudged = append(l.unjudged, l.words(r.from, r.to)+" (an end of which no size is said)")
			continue
		}
		for _, e := range ends {
			if e.millimetres() || e.end == "TUBE" && !l.one {
				continue
			}
			if e.end == "" && r.fam != nil && !r.fam.has("pre") && (e.fam == nil || e.fam.value == "UN" && dashWord(r.fam)) {
				e.fam, e.fam2 = r.fam, r.fam2 // JIC male, 9/16-18 UNF: the closer name
			}
			if e.end == "" && r.thread {
				e.thread = true
			}
			if len(e.sexes) == 0 && len(r.sexes) == 1 && threadLike(e) {
				e.sexes = r.sexes
				e.assumed = e.assumed || r.custom && !l.one
			}
			if len(ends) == 1 && !l.one {
				e.attr |= r.attr & isLeft // nut G 3/8 female, left hand thread
			}
			e.attr |= r.attr & (isTaper | isParallel | isPlastic | isPort | isStudSeal | isDouble | isOldR | isOneSided)
		}
		l.overlaySeal(ends, r)
		l.otherSex(ends, r)
		if len(r.sexes) > 1 {
			if e := firstThread(ends); e != nil && len(e.sexes) == 0 {
				e.sexes = r.sexes
			}
		}
	}
}

// otherSex gives a part of two ends, of which one size is said, the other sex that is said apart from
// it: 1/2" AG konisch, IG zylindrisch.
func (l *line) otherSex(ends []*phrase, r *phrase) {
	if l.one || len(ends) != 1 || l.shape == nil || l.shape.ends != 2 && !l.is(adaptor) || r.fam != nil || r.end != "" || r.weak || r.attr&isNut != 0 {
		return
	}
	e := ends[0]
	if r.foreign {
		l.unjudged = append(l.unjudged, l.words(r.from, r.to)+" (an end of which no size is said)")
		return
	}
	if !threadLike(e) || e.end != "" || len(e.sexes) != 1 || len(r.sexes) != 1 || e.sexes[0] == r.sexes[0] {
		return
	}
	if r.from < e.from {
		e.sexes = []threads.Sex{r.sexes[0], e.sexes[0]}
	} else {
		e.sexes = []threads.Sex{e.sexes[0], r.sexes[0]}
	}
}

// overlaySeal gives a washer that is named apart to the end that it closes: the
// nut, else the female, else every end.
func (l *line) overlaySeal(ends []*phrase, r *phrase) {
	seal := r.attr & (isWasher | isNut | isSwivel | isFlat | isORing | isCone60)
	if seal&isNut != 0 && r.fig == nil && (l.ringCode || l.saysRing()) && slices.ContainsFunc(ends, func(e *phrase) bool { return e.fig != nil && e.fig.kind == coneSize }) && (l.is(adaptor) || l.is(elbow) || l.is(tee)) && !l.one {
		seal &^= isNut | isSwivel // GE15L with nut and ring: what holds the tube in the male cone
	}
	if seal == 0 {
		return
	}
	for _, prefer := range []func(*phrase) bool{
		func(c *phrase) bool { return c.attr&(isNut|isSwivel) != 0 },
		func(c *phrase) bool { return len(c.sexes) > 0 && c.sexes[0] == threads.Female },
		func(c *phrase) bool { return c.described() && c.end == "" },
	} {
		found := false
		for _, e := range ends {
			if seal&isCone60 != 0 && e.fam != nil && dashWord(e.fam) && slices.ContainsFunc(ends, func(o *phrase) bool { return o.fam != nil && bspWord(o.fam) }) {
				continue // JIC male x BSPP male with 60 degree cone: the pipe thread's
			}
			if prefer(e) && e.fig != nil && !e.millimetres() {
				e.attr |= seal
				found = true
			}
		}
		if found {
			return
		}
	}
	if seal&(isNut|isSwivel) == 0 {
		return
	}
	for _, e := range ends {
		if l.is(tail) && e.fig != nil && !e.millimetres() && e.fam == nil && len(e.sexes) == 0 {
			e.attr, e.thread = e.attr|seal, true // hose tail 1" with swivel nut x 25 mm
			return
		}
	}
}

func threadLike(c *phrase) bool {
	if c.fig == nil || c.fig.kind == mmSize {
		return false
	}
	return c.end == "" || c.fam != nil || (c.thread || len(c.sexes) > 0) && c.end == "BARB" || c.fig.kind == metricSize || c.fig.kind == coneSize
}

func firstThread(ends []*phrase) *phrase {
	for _, e := range ends {
		if threadLike(e) {
			return e
		}
	}
	return nil
}
