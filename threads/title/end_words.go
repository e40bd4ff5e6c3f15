package title

import (
	"strings"
)

// endWord takes what a word of an end says of a phrase: a tail, a hose, a tube and how it is held, a coupling. The
// word is at k of the phrase's tokens.
func (l *line) endWord(c *phrase, tokens []token, k int, m *sense) {
	value, next := m.value, at(tokens, k+1).figure
	c.tubed = c.tubed || value == "TUBE"
	c.outside = c.outside || value == "TUBE" && l.saysOutside(&tokens[k])
	if value == "BORE" && !l.one && l.is(tail) {
		value = "BARB" // the bore of the hose that the tail is for
	}
	switch {
	case value == "BARB" && !l.one && hasText(l.norm, tokens[k].from, "tailpiece") && anyToken(tokens[k:], func(it *token) bool { m := it.is(classKind); return m != nil && m.shape.traits&nut != 0 }):
		c.holds("BARB") // tailpiece 1 inch nut: a piece of pipe with its nut, and perhaps no tail for a hose
		c.assumed = true
	case value == "ROUND":
		l.roundWord(c, next)
	case value == "BARB?":
		if c.holds("BARB") {
			c.guess = true
		}
	case value == "HOSE":
		c.hose = true
		c.inner = c.inner || l.boreWord(&tokens[k])
		l.ownCoupling(c, tokens, k)
		if c.holds("BARB") && l.one {
			c.end = "BORE" // an end that is a hose is its bore, and no tail
		}
	case value == "PEX" || value == "TUBING":
		c.pex = true
		c.holds("TUBE")
	case c.barbed && (value == "PUSH" || value == "COMPRESSION"):
		c.also = value // 15 mm x 1/2" hose barb, push fit: the other end's
	case value == "BANJO" && c.end != "" && !l.one: // 4 mm tube, banjo type: how the thread turns
	case value == "LUER" && c.end != "" && c.end != value:
		l.unjudged = append(l.unjudged, l.words(tokens[k].from, tokens[k].to)+" ("+notJudged[value]+")") // 3/16" barb male luer lock
	case c.end == value:
		c.barbed = c.barbed || value == "BARB"
	case c.end == "QC" && value == "BARB" && !c.hose && (l.is(tee) || l.is(elbow)) && !l.one:
		c.end = "PUSH" // no quick coupling branches
	case c.end == "QC" && value == "BARB" && !l.one:
		l.ownCoupling(c, tokens, k)
		c.end, c.endFirst, c.barbed = "BARB", c.fig == nil, true // Stecknippel, Tülle 9 mm
	case c.end == "BARB" && c.barbed && !c.endFirst && value == "QC" && !c.hose && !l.one:
		l.unjudged = append(l.unjudged, l.words(tokens[k].from, tokens[k].to)+" (quick coupling)") // barbed quick disconnect
	case c.end == "COMPRESSION" && value == "LAYER" && !l.one, c.end == "LAYER" && value == "COMPRESSION" && !l.one:
		c.end = "LAYER" // what holds a tube by its ring does not hold a pipe of layers
	case c.end == "PRESS" && value == "PUSH" && !l.one:
		c.end = "PUSH" // the Arabic word for press is said of push-in ends too
	case c.end == "QC" && value == "TUBE" || c.end == "TUBE" && value == "QC":
		c.end = "PUSH"
	case c.end == "" || c.end == "TUBE" || c.end == "LAYER" || (c.end == "BARB" || c.hose && c.end == "BORE") && value != "TUBE":
		c.end, c.endFirst = value, c.fig == nil
		c.barbed = c.barbed || value == "BARB"
	}
}

// holds gives a phrase without an end this one, and reports whether it did.
func (c *phrase) holds(end string) bool {
	if c.end != "" {
		return false
	}
	c.end, c.endFirst = end, c.fig == nil
	return true
}

// boreWord reports a word for an inside diameter, which is a hose's and may be the part's own.
func (l *line) boreWord(it *token) bool {
	text := string(l.norm[it.from:it.to])
	for _, w := range boreList.words() {
		if strings.HasPrefix(text, w) {
			return true
		}
	}
	return false
}

// roundWord takes the sign of a diameter before a figure, which mostly is a tube's: not of a dial, nor of a plug.
func (l *line) roundWord(c *phrase, next *figure) {
	if next != nil && next.role.other() {
		return // the diameter of a dial
	}
	if next != nil && next.kind == frenchSize {
		return // Ø20/27: a thread by its bore and its outside
	}
	c.round = true
	if l.is(plain) && l.shape.ends == 1 && !l.one && next != nil && next.marked {
		return // a plug is for no tube: bujão Ø 1/4"
	}
	if !l.one && next != nil && next.kind == inchSize && (next.frac || next.marked || l.is(valve)) && (l.is(valve) || l.is(nipple) || l.galvanised() || next.frac && l.saysPipeSex()) && l.material != "copper" && !plasticMaterials[l.material] {
		c.round = false
		return // кран ф3/4, niple galvanizado Ø 2": the nominal size
	}
	c.holds("TUBE")
}

// saysPipeSex reports a word for a sex that means a thread in a language of Europe's East.
func (l *line) saysPipeSex() bool {
	return anyToken(l.tokens, func(it *token) bool { m := it.is(classSex); return m != nil && !sexOnly[m.tongue] })
}

// ownCoupling names a quick coupling that a word for a hose or a tail follows: the size is theirs.
func (l *line) ownCoupling(c *phrase, tokens []token, k int) {
	if c.end == "QC" && !l.one && (l.is(tee) || l.is(elbow)) {
		c.end = "PUSH" // no quick coupling branches
		return
	}
	if c.end == "QC" && !l.one {
		l.unjudged = append(l.unjudged, l.words(tokens[0].from, tokens[k].from)+" (quick coupling)")
		c.end = ""
	}
}
