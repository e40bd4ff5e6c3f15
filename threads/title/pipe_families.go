package title

import "handtight/threads"

// pipeFamilies are the families that a pipe thread's words leave open.
func (l *line) pipeFamilies(c *phrase) []threads.Family {
	name := "PIPE"
	if c.fam != nil {
		name = c.fam.value
	}
	if c.fig.kind == frenchSize && c.fam == nil {
		name = "BSP"
	}
	flat := c.attr&(isWasher|isFlat|isStudSeal|isCone60|isCone30|isParallel) != 0 || c.attr&isNut != 0 && c.sex() != threads.Male || c.attr&isSwivel != 0 && c.sex() == threads.Female && !c.assumed
	if l.is(ring) || l.hoseNut(c) {
		flat = true
	}
	switch name {
	case "BSP":
		if l.hoseNut(c) && c.attr&(isWasher|isNut|isFlat|isSwivel|isStudSeal|isCone60|isCone30|isParallel) == 0 {
			flat = false // that a hose's female end turns, and so is parallel, is custom
		}
		return bspFamilies(c, flat, l.japan)
	case "PIPE":
		if c.hose && c.fig.v == 0.75 && l.hasWord("hose") {
			return append(l.unsaid(c, flat), threads.NH) // 3/4" hose female: a garden hose's, perhaps
		}
		return l.unsaid(c, flat)
	case "BSPP":
		if c.attr&isTaper != 0 { // two words that contradict: both are kept, and asked
			return []threads.Family{threads.G, threads.R, threads.Rc}
		}
		return []threads.Family{threads.G}
	case "BSPT":
		if c.attr&isParallel != 0 {
			return []threads.Family{threads.R, threads.Rc, threads.G}
		}
		return []threads.Family{threads.R, threads.Rc}
	case "ISO7", "EN10226-1":
		switch {
		case c.attr&isTaper != 0:
			return []threads.Family{threads.R, threads.Rc}
		case c.attr&isParallel != 0:
			return []threads.Family{threads.Rp, threads.R}
		case name == "EN10226-1":
			return []threads.Family{threads.R, threads.Rp}
		}
		return []threads.Family{threads.R, threads.Rp, threads.Rc}
	case "R":
		if l.malleable && c.sex() == threads.Female {
			return []threads.Family{threads.Rp}
		}
		if c.attr&isNut != 0 && c.sex() == threads.Female {
			return []threads.Family{threads.G, threads.Rp, threads.Rc}
		}
		if c.oldR {
			return []threads.Family{threads.Rp, threads.R, threads.Rc, threads.G}
		}
		if c.fig.dn > 0 {
			return bspFamilies(c, flat, false) // R15: the bore of a pipe thread, and no size of ISO 7
		}
		if c.attr&isOldR != 0 || l.nordic {
			return []threads.Family{threads.R, threads.G}
		}
		return []threads.Family{threads.R}
	case "RC":
		return []threads.Family{threads.Rc}
	case "RP":
		return []threads.Family{threads.Rp}
	case "NPT":
		if l.is(madeUp) && c.sex() == threads.Female && l.ironPipe(c) {
			return []threads.Family{threads.NPSM, threads.NPT}
		}
		return []threads.Family{threads.NPT}
	}
	if name == "NPSM" && c.fam2 != nil && c.fam2.value == "IPS" {
		return []threads.Family{threads.NPSM, threads.NPT}
	}
	return straightFamilies[name]
}

// straightFamilies are the remaining inch names, with what each leaves open.
var straightFamilies = map[string][]threads.Family{
	"MP": {threads.NPT, threads.NPTF}, "NPTF": {threads.NPTF}, "BSF": {threads.BSF}, "NPSM": {threads.NPSM}, "NPS": {threads.NPS}, "NPS?": {threads.NPS, threads.NPSM}, "IPS": {threads.NPT, threads.NPSM}, "NH": {threads.NH},
}

// hoseNut reports whether a female end of a made-up hose, whose nut seals flat.
func (l *line) hoseNut(c *phrase) bool {
	return l.is(madeUp) && c.sex() == threads.Female && !c.assumed
}

// ironPipe reports whether an end is listed as FIP, which on a hose's nut is a
// straight thread with a washer.
func (l *line) ironPipe(c *phrase) bool { return hasWord(string(l.norm[c.from:c.to]), "fip") }

func bspFamilies(c *phrase, flat, taperFirst bool) []threads.Family {
	switch {
	case flat:
		return []threads.Family{threads.G}
	case c.attr&isTaper != 0:
		return []threads.Family{threads.R, threads.Rc}
	case taperFirst && c.sex() == threads.Male:
		return []threads.Family{threads.R, threads.G}
	case c.sex() == threads.Male:
		return []threads.Family{threads.G, threads.R}
	case c.sex() == threads.Female:
		return []threads.Family{threads.G, threads.Rp, threads.Rc}
	}
	return []threads.Family{threads.G, threads.R, threads.Rp, threads.Rc}
}

// american reports whether the line speaks of the threads of America.
func (l *line) american() bool {
	for k := range l.tokens {
		if m := l.tokens[k].is(classFamily); m != nil && m.value == "NPT" {
			return true
		}
	}
	return l.america
}

// unsaid lists what an inch pipe thread can be when no standard is said. The
// country's words only set the order.
func (l *line) unsaid(c *phrase, flat bool) []threads.Family {
	if l.malleable {
		return []threads.Family{threads.R, threads.Rp}
	}
	bsp := bspFamilies(c, flat, l.japan)
	switch {
	case !l.europe && c.attr&isParallel != 0 && l.american():
		return append(bsp[:len(bsp):len(bsp)], threads.NPSM, threads.NPS) // a straight thread beside American ones
	case c.attr&isParallel != 0 && c.sex() == threads.Female && c.attr&(isWasher|isNut|isFlat|isStudSeal|isCone60|isCone30|isSwivel) == 0 && !l.is(ring) && !l.hoseNut(c):
		return []threads.Family{threads.G, threads.Rp} // both are parallel
	case l.hoseNut(c) && l.europe && c.attr&(isWasher|isNut|isFlat|isSwivel|isParallel) == 0:
		return []threads.Family{threads.G, threads.NPT} // that a hose's female end is a nut of G is custom
	case flat && !l.europe && c.attr&(isStudSeal|isParallel) == 0 && l.shape != nil && !l.is(ring):
		return append(bsp[:len(bsp):len(bsp)], threads.NPSM) // a washer closes both
	case flat:
		return bsp
	case l.america:
		return append([]threads.Family{threads.NPT}, bsp...)
	}
	return append(bsp[:len(bsp):len(bsp)], threads.NPT)
}
