package title

import (
	"math/bits"
	"slices"
	"strings"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// question is the one question that decides an end, in plain words; "" if
// nothing is open.
func (l *line) question(c *phrase, r *threads.EndReading) string {
	switch {
	case c.fig != nil && c.fig.dated && len(r.Candidates) > 0:
		return "Is " + quote(r.Words) + " the size " + inchText(c.fig.v) + ", which a spreadsheet has turned into a date: " + sizesOf(r.Candidates) + "? Ask the shop."
	case c.fig != nil && c.fig.numbered && len(r.Candidates) > 0:
		return "Is the size that of " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + "? Only the part's number says so: look it up in its maker's list, or ask the shop."
	case c.fig != nil && c.fig.turned && len(r.Candidates) > 0:
		return "Is " + quote(r.Words) + " the size " + inchText(c.fig.v) + ", written from right to left: " + sizesOf(r.Candidates) + "? Ask the shop."
	case c.fig != nil && c.fig.perhaps && len(r.Candidates) == 1 && !l.one:
		return "Is " + quote(r.Words) + " an end, " + sizesOf(r.Candidates) + ", or the length of the part? The text says both: look at the picture, or ask the shop."
	case c.fig != nil && c.fig.or != "" && len(r.Candidates) > 0:
		return "Is the size " + c.fig.or + " or " + c.fig.words(l) + "? The text gives both: ask the shop which it is."
	case c.unnamed && len(r.Candidates) > 0 && r.Candidates[0].Family.Threaded():
		return "Is the end " + quote(r.Words) + " " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + "? Not understood: " + l.strangeWords() + ", where a thread's name stands. Ask for its thread and its size."
	case c.fig != nil && c.fig.guessed && len(r.Candidates) > 0:
		return "Is the size " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + "? The text gives it as a guess: measure it, or ask the shop."
	case c.contrary != "" && len(r.Candidates) > 0:
		return "Is " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + " the end? The text says " + quote(c.contrary) + " beside it, which is another thread: look at the part, or ask the shop."
	case l.listLetter(c) && len(r.Candidates) > 0:
		return "Is " + quote(l.words(l.tokens[0].from, l.tokens[1].to)) + " an end, " + sizesOf(r.Candidates) + ", or what the list numbers the part by? It stands before the name, and other figures behind it: ask the shop."
	case l.unsure && len(r.Candidates) > 0:
		what := " a thread: "
		if !r.Candidates[0].Family.Threaded() {
			what = " an end: "
		}
		return "What is the part, and is the " + quote(r.Words) + what + sizesOf(r.Candidates) + "? " + l.unnamed() + " Ask the shop."
	case len(r.Candidates) == 0:
		return l.unreadable(c, r)
	case c.oldR && len(r.Candidates) > 0:
		return "R is a male thread, and " + article(l.shape.name) + " mostly has female ones, which the trade calls R too. Is it " + sizesOf(r.Candidates) + "? Look at the picture, or ask the shop."
	case c.fam != nil && c.fam.value == "R" && r.Candidates[0].Family != threads.R && c.fig != nil && c.fig.dn == 0:
		return "R is a male thread, and the text says female. Is it " + sizesOf(r.Candidates) + "? Ask the shop which letters stand on the part."
	case c.fam != nil && (c.fam.value == "RC" || c.fam.value == "RP") && r.Candidates[0].Family == threads.R:
		return c.fam.value[:1] + strings.ToLower(c.fam.value[1:]) + " is a female thread, and the text says male. Is it " + sizesOf(r.Candidates) + "? Ask the shop which letters stand on the part."
	case l.fits() && !l.one && c.fig != nil && c.fig.kind == inchSize && l.forUnion():
		return "Is the washer for a nut of " + sizesOf(r.Candidates) + ", or for a union of that size, whose nut has a larger thread? Measure the washer's outside."
	case !l.one && l.otherMeasure(c, r.Candidates) != "":
		return l.otherMeasure(c, r.Candidates)
	case c.either:
		return "Is " + quote(r.Words) + " the end that its word says, or is that the valve's other end? The text gives two sizes and one word: look at the picture, or ask the shop."
	case c.outer:
		return askOutside(c, r.Candidates)
	case len(r.Candidates) > 1:
		return l.between(c, r)
	case c.end == "FERRULE" && !l.one && !l.saysClamp():
		return "Is it a ferrule that a clamp holds, as in food and medicine, or the ring of a compression end, which has no end? The word is used for both: look at the picture, or ask the shop."
	case l.washerOnly(c, r.Candidates) && !l.one:
		return "Is the thread " + r.Candidates[0].Form.Designation + " " + strings.TrimSpace(r.Sex.String()) + "? The text says a washer, which lies under a parallel thread, and not which thread it is: look for G or BSPP on the part, or ask the shop."
	case l.onlyG(c, r.Candidates) && !l.one:
		return "Is the " + r.Candidates[0].Size + " a thread, " + strings.TrimSpace(r.Candidates[0].Form.Designation+" "+r.Sex.String()) + ", or the outside of a tube that is flared, soldered or held by a ring? No thread is named, and few pipe threads are of that size: measure it, or ask the shop."
	case c.lent && !r.Candidates[0].Family.Threaded() && len(r.Candidates) == 1:
		return "Is the " + quote(r.Words) + " " + article(r.Candidates[0].String()) + ", as the rest of the text says of its other end? Not understood: " + l.strangeWords() + ". Look at the picture, or ask the shop."
	case c.apart && !r.Candidates[0].Family.Threaded() && !l.one:
		return "Is the " + quote(r.Words) + " " + article(r.Candidates[0].String()) + "? Not understood: " + l.strangeWords() + ", between the size and the word for the end. Look at the picture, or ask the shop."
	case c.snaps && !l.one && r.Candidates[0].Size != "":
		return "Is the " + r.Candidates[0].Size + " that of a tube, which pushes in, or of a hose that the coupling is for? The word is used for both: look at the picture, or ask the shop."
	case c.guess && r.Candidates[0].Family == threads.Barb && !l.one && !l.is(tail):
		return "Is the " + strings.TrimSpace(r.Candidates[0].Size+" of "+quote(r.Words)) + " a tail for a hose? The word only begins so: look at the picture, or ask the shop."
	case c.inner && r.Candidates[0].Family == threads.Barb && !l.one && !l.is(hose) && (l.is(tail) && l.says("TUBE") || !l.is(tail) && !l.namesHoseItself()):
		return "Is the " + r.Candidates[0].Size + " the bore of a hose that goes on, or of the part itself? Look at the picture, or ask the shop."
	case c.assumed && r.Candidates[0].Family == threads.Barb && !l.one:
		return "Is the " + r.Candidates[0].Size + " a tail for a hose, or does it take a pipe? The word is used for both: look at the picture, or ask the shop."
	case c.doubled && r.Candidates[0].Family == threads.Barb && !c.lone:
		return "Is the other end a tail of " + r.Candidates[0].Size + " too, or has it a thread? The text gives one size: look at the picture, or ask the shop."
	case c.fig != nil && c.fig.tally && !l.one:
		return "Is the " + c.fig.words(l) + " a size in mm, or how many of them? The text gives the other size with its unit: ask the shop."
	case c.lone && c.paired && !l.one && r.Candidates[0].Family == threads.Barb:
		return "Is the " + r.Candidates[0].Size + " a hose's, or the thread's at the other end? The text gives two sizes and does not say which is whose: ask for both."
	case c.lone && !l.one && r.Candidates[0].Family == threads.Barb:
		return "Is the " + r.Candidates[0].Size + " the hose's, or the thread's at the other end? The text gives one size: ask for both."
	case r.Candidates[0].Size == "" && takesTube(c.end):
		return "What tube fits the " + threads.PlainWord(r.Candidates[0].Family) + " end? The text does not say: ask for the tube's outside diameter."
	case r.Candidates[0].Size == "":
		return "What hose fits the " + threads.PlainWord(r.Candidates[0].Family) + "? The text does not say: ask for its bore in mm."
	case r.Candidates[0].Family.Threaded() && r.Sex == threads.NoSex && !l.fits() && c.doubt:
		return "Is the " + r.Candidates[0].String() + " male or female? Not understood: " + l.strangeWords() + ". Look for M or F, or ask the shop."
	case r.Candidates[0].Family.Threaded() && r.Sex == threads.NoSex && !l.fits() && c.nutted:
		return "Is the " + r.Candidates[0].String() + " male or female? A nut is named, and not whose it is: look for M or F, or ask the shop."
	case r.Candidates[0].Family.Threaded() && r.Sex == threads.NoSex && !l.fits() && c.bothSexes:
		return "Is the " + r.Candidates[0].String() + " male or female? The text says both: look for M or F, or ask the shop."
	case r.Candidates[0].Family.Threaded() && r.Sex == threads.NoSex && !l.fits():
		return "Is the " + r.Candidates[0].String() + " male or female? The text does not say: look for M or F, or ask the shop."
	case c.assumed && !l.one && r.Candidates[0].Form != nil:
		return "Is the " + r.Candidates[0].Form.Designation + " " + r.Sex.String() + "? " + l.kindWord() + " mostly is, but the text does not say so."
	case c.plus && !l.one && l.shape != nil && !l.is(tail) && !l.is(hose) && r.Candidates[0].Family == threads.Barb:
		return "Is the " + r.Candidates[0].String() + " an end of the part, or does it lie with it? The text joins it by a plus: look at the picture, or ask the shop."
	case l.parts && !l.one:
		return "Which of the parts has the " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + "? The text joins two parts by a plus: give each its own line."
	case l.evenly && len(r.Candidates) > 0:
		return "Has each end the size " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + "? The text says that the part reduces, and gives one size: ask for both."
	case c.brine && !l.one:
		return "Is the brine port " + sizesOf(r.Candidates) + " too? The text gives two sizes, mostly those of the feed and of the product: look at the data sheet, or ask the shop."
	case c.swings && !l.one:
		return "Is " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + " the end that turns? The text says swivel of the part, and mostly the female end has the nut: look at the picture, or ask the shop."
	case c.turns && !l.one && l.shape != nil:
		return "Has this end of " + sizesOf(r.Candidates) + " " + r.Sex.String() + " a nut that turns too? The text says so once, and " + article(l.shape.kind) + " mostly has one: look at the picture, or ask the shop."
	case l.surplus && len(r.Candidates) > 0:
		return "Is " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + " one of its ends? More are read in the text than " + article(l.shape.kind) + " has: look at the picture, or ask the shop."
	}
	if l.inside != "" {
		return "Is " + strings.TrimSpace(sizesOf(r.Candidates)+" "+r.Sex.String()) + " what " + quote(r.Words) + " means? Not understood: " + l.strangeWords() + ", in the middle of " + quote(l.inside) + ". Look at the picture, or ask the shop."
	}
	return ""
}

// washerOnly reports a thread that nothing but the word for a washer makes a parallel one. A nut that turns closes it too.
func (l *line) washerOnly(c *phrase, ends []threads.End) bool {
	named := c.fam != nil && c.fam.value != "BSP" && c.fam.value != "THREAD" && c.fam.value != "PIPE"
	return !named && c.attr&isWasher != 0 && c.attr&(isNut|isSwivel|isFlat|isParallel) == 0 && len(ends) == 1 && ends[0].Family == threads.G && !l.is(ring) && !l.hoseNut(c)
}

// saysClamp reports a word for a clamp ferrule that is not that of a compression's ring too.
func (l *line) saysClamp() bool {
	return anyToken(l.tokens, func(it *token) bool {
		text := string(l.norm[it.from:it.to])
		return text == "hygienic" || text == "sanitary" || it.value(classEnd) == "FERRULE" && text != "ferrule" && text != "ferrules"
	})
}

// onlyG reports an end of which no thread is named, and whose size of all pipe threads only G has: 5/8 and 7/8.
func (l *line) onlyG(c *phrase, ends []threads.End) bool {
	return c.fam == nil && c.fig != nil && c.fig.kind == inchSize && len(ends) == 1 && ends[0].Family == threads.G && !slices.Contains(pipeSizes, c.fig.v)
}

// listLetter reports a letter of a thread with one figure before the name of the part that a line begins with, where a size stands
// behind the name: R1 codo 110 mm, G2 elbow 1/2.
func (l *line) listLetter(c *phrase) bool {
	if l.one || len(l.tokens) < 4 || c.fam == nil || c.fig == nil || l.tokens[0].is(classFamily) != c.fam || l.tokens[1].figure != c.fig {
		return false
	}
	name := 2
	switch l.tokens[2].mark {
	case ':', '-', ')':
		name++ // R1: elbow
	}
	word := &l.tokens[name]
	return l.tokens[0].to == l.tokens[0].from+1 && l.tokens[1].glued && c.fig.whole && !c.fig.marked && word.figure == nil && word.to-word.from > 3 && word.is(classSex) == nil && anyToken(l.tokens[3:], func(it *token) bool { return it.figure != nil })
}

// namesHoseItself reports a word for hose or its tail that is no inside diameter.
func (l *line) namesHoseItself() bool {
	for k := range l.tokens {
		if v := l.tokens[k].value(classEnd); v == "BARB" || v == "HOSE" && !l.boreWord(&l.tokens[k]) {
			return true
		}
	}
	return false
}

// fits reports whether the part has no sex of its own: a washer.
func (l *line) fits() bool { return l.is(ring) }

// forUnion reports whether the line names a union: its size is its pipe's, and its nut's thread
// is larger.
func (l *line) forUnion() bool {
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.value(classKind) == "union" || strings.HasSuffix(string(l.norm[it.from:it.to]), "verschraubung") {
			return true
		}
	}
	return false
}

// between asks what tells the candidates apart.
func (l *line) between(c *phrase, r *threads.EndReading) string {
	families := familiesOf(r.Candidates)
	what := sizesOf(r.Candidates)
	sex := ""
	if r.Sex == threads.NoSex && r.Candidates[0].Family.Threaded() {
		sex = " And is it male or female?"
		if c.doubt {
			sex += " Not understood: " + l.strangeWords() + "."
		} else if c.nutted {
			sex += " A nut is named, and not whose it is."
		} else if c.bothSexes {
			sex += " The text says both."
		}
	} else if c.assumed && !l.one && r.Candidates[0].Family.Threaded() {
		sex = " " + l.kindWord() + " mostly is " + r.Sex.String() + ", which the text does not say."
	}
	if l.evenly {
		sex += " The text says that the part reduces, and gives one size: ask for both."
	}
	subject := strings.TrimSpace(r.Candidates[0].Size + " " + nameOf(c) + " " + r.Sex.String())
	if c.fig != nil && c.fig.kind == unSize {
		subject = strings.TrimSpace(inchText(c.fig.v) + "-" + quantity.Exact(c.fig.pitch) + " " + r.Sex.String())
	}
	bsp := families.has(threads.G) || families.has(threads.R) || families.has(threads.Rc) || families.has(threads.Rp)
	switch {
	case families.has(threads.Push) && bsp:
		return "Is the " + r.Candidates[0].Size + " the nominal bore, and the thread that of the size, or the outside of a tube that pushes in, is held by a ring and a nut (compression) or is soldered, glued or pressed? Measure the thread, or ask the shop."
	case families.has(threads.Barb) && families.has(threads.Push) && c.fused:
		return "What takes the pipe: a barb, a push-in end or a compression end, or is the pipe glued, fused or pushed on, or has the end a thread? Look at the picture, or ask the shop."
	case families.has(threads.Barb) && families.has(threads.Push):
		return "What takes the pipe: a barb, a push-in end or a compression end? Look at the picture, or ask the shop."
	case families.has(threads.Push) && families.has(threads.Compression) && c.byName:
		return "Is the " + r.Candidates[0].Size + " the outside of a tube, as of fittings that are named by the sex of their thread, and does it push in or is it held by a ring and a nut; or has this end the thread of the other? Look at the picture, or ask the shop."
	case families.has(threads.Push) && families.has(threads.Compression) && !l.one && !c.tubed && !c.round && c.also == "":
		return "Does the tube push in, or is it held by a ring and a nut (compression), or is the pipe soldered, glued or pressed? Look at the picture, or ask the shop."
	case families.has(threads.Push) && families.has(threads.Compression):
		return "Does the tube push in, or is it held by a ring and a nut (compression)? Look at the picture, or ask the shop."
	case bsp && families.has(threads.NPT):
		return "Which thread is the " + subject + ": " + what + "? Look for BSP, G, R or NPT on the part, or ask the shop." + sex + l.orNoThread(c)
	case bsp && (families.has(threads.NPSM) || families.has(threads.NPS) || families.has(threads.NH)):
		return "Which thread is the " + subject + ": " + what + "? Look for BSP, G, NPS or NPSM on the part, or ask the shop." + sex
	case families.has(threads.G) && families.has(threads.Rp) && families.count() == 2:
		return "Which thread is the " + subject + ": " + what + "? Both are parallel: look which letter stands on the part, or ask the shop." + sex
	case bsp:
		return "Is the " + subject + " " + parallelOrTaper(families) + "? Look for P or T after BSP, or ask the shop." + sex
	case families.has(threads.NPSM) && (families.has(threads.NPT) || families.has(threads.NPS)):
		return "Which thread is the " + subject + ": " + what + "? One that seals on a washer is NPSM. Ask the shop." + sex
	case families.has(threads.Cone24L) || families.has(threads.Cone24S):
		return "Which tube does the cone take: " + what + "? Measure the tube's outside diameter." + sex
	case families.count() == 1 && families.has(threads.M):
		return "What is the pitch of the " + nameOf(c) + ": " + what + "? Ask the shop, or count threads over 10 mm." + sex
	case families.count() == 1:
		return "Does the size name the tube or the thread: " + what + "? Ask for the thread in words, such as " + r.Candidates[0].Form.Designation + "." + sex
	}
	return "How does the " + subject + " seal: " + what + "? Look at the nose: a cone, a flat face, or an O-ring on the thread." + sex
}

// orNoThread asks of a plastic part, of which no word says that it has a thread, whether it takes a bare pipe.
func (l *line) orNoThread(c *phrase) string {
	if l.one || c.fam != nil || len(c.sexes) > 0 && !c.assumed && !c.byKind || c.thread {
		return ""
	}
	if c.fig != nil && c.fig.dn > 0 {
		return " Or has it no thread, but a flange, or an end to weld, solder or press? A nominal bore says nothing of that."
	}
	switch {
	case c.attr&isPlastic != 0 || plasticMaterials[l.material]:
		return " Or has it no thread, and the pipe is glued, fused or pushed on?"
	case l.material == "" && l.is(plainPipe):
		return " Or has it no thread, and the pipe is soldered, glued or pressed?"
	}
	return ""
}

// nameOf is what the text calls the thread.
func nameOf(c *phrase) string {
	switch {
	case c.fig != nil && c.fig.kind == metricSize:
		return metricText(c.fig.v, c.fig.pitch)
	case c.fam == nil && c.fig != nil && c.fig.kind == frenchSize:
		return "BSP"
	case c.fam == nil || c.fam.value == "PIPE":
		return "pipe thread"
	case c.fam.value == "NPS?":
		return "NPS"
	case c.fam.value == "ISO7":
		return "ISO 7"
	case c.fam.value == "EN10226-1":
		return "EN 10226-1"
	}
	return c.fam.value
}

func parallelOrTaper(families familySet) string {
	var parallel, taper []string
	for _, f := range [...]threads.Family{threads.G, threads.Rp} {
		if families.has(f) {
			parallel = append(parallel, f.String())
		}
	}
	for _, f := range [...]threads.Family{threads.R, threads.Rc} {
		if families.has(f) {
			taper = append(taper, f.String())
		}
	}
	switch {
	case len(parallel) == 0:
		return "the taper male (R) or the taper female (Rc)"
	case len(taper) == 0:
		return "parallel (" + strings.Join(parallel, ", ") + ")"
	}
	return "parallel (" + strings.Join(parallel, ", ") + ") or taper (" + strings.Join(taper, ", ") + ")"
}

// sizesOf lists candidates: "G 1/2, Rp 1/2 or Rc 1/2".
func sizesOf(ends []threads.End) string {
	if len(ends) == 1 {
		return sizeOf(&ends[0])
	}
	var room [8]string
	parts := room[:0]
	for k := range ends {
		switch {
		case k == 0:
		case k == len(ends)-1:
			parts = append(parts, " or ")
		default:
			parts = append(parts, ", ")
		}
		parts = append(parts, sizeOf(&ends[k]))
	}
	return strings.Join(parts, "")
}

// sizeOf is an end's thread, or its size and what it is.
func sizeOf(e *threads.End) string {
	if e.Form != nil {
		return e.Form.Designation
	}
	return strings.TrimSpace(e.Size + " " + threads.PlainWord(e.Family))
}

// unreadable says why an end has no candidate, and names the nearest sizes.
func (l *line) unreadable(c *phrase, r *threads.EndReading) string {
	f := l.familyOf(c)
	if c.foreign {
		return "What is the end " + quote(r.Words) + "? Of what the text calls its thread no part is known here: ask for its name and its size."
	}
	if c.fig == nil {
		return "What size is the " + strings.TrimSpace(nameOf(c)+" "+r.Sex.String()) + "? The text gives none: write it as in 1/2 NPT female."
	}
	if c.open && (c.strange || l.lost) {
		return "What is the end " + quote(r.Words) + "? Not understood: " + l.strangeWords() + ". Ask for its thread and its sex, or that it has none."
	}
	if c.open {
		return "What is the other end, " + quote(r.Words) + "? The text gives its size alone: ask for its thread and its sex."
	}
	if c.fig.kind == garbled || f == 0 {
		return "What is " + quote(r.Words) + "? The size cannot be read: write it as in 1/2, 1 1/4, M22x1.5 or 19 mm."
	}
	near := nearestSizes(f, c.fig)
	if near == "" {
		return "What is " + quote(r.Words) + "? No such size of " + f.String() + " is known."
	}
	return "No " + f.String() + " has the size of " + quote(r.Words) + ". The nearest are " + near + ": ask the shop which it is."
}

// familyOf is the family whose sizes come nearest to what was meant.
func (l *line) familyOf(c *phrase) threads.Family {
	if c.fig == nil || c.fig.kind == garbled {
		return 0
	}
	switch c.fig.kind {
	case metricSize:
		if c.fam != nil && c.fam.value == "ISO6149" {
			return threads.ISO6149
		}
		return threads.M
	case coneSize:
		return coneFamily(c.fig.series)
	}
	if named := l.named(c); named != nil {
		return named[0]
	}
	if c.fam != nil && c.fam.value == "UN" || c.fig.kind == unSize && c.fam == nil {
		return threads.UN
	}
	families := l.pipeFamilies(c)
	if len(families) == 0 {
		return 0
	}
	return families[0]
}

// nearestSizes names the two sizes of a family on either side of a diameter.
func nearestSizes(f threads.Family, fig *figure) string {
	list := threads.Forms(f)
	measure := func(form *threads.Form) float64 { return threads.SizeInches(form.Size) }
	want := fig.v
	switch {
	case f == threads.M || f == threads.ISO6149 || f == threads.MT:
		measure = func(form *threads.Form) float64 { return float64(form.Major) + float64(form.Pitch)/100 }
		want = fig.v + fig.pitch/100
	case f == threads.Cone24L || f == threads.Cone24S:
		measure = func(form *threads.Form) float64 { return float64(form.Tube) }
	case f == threads.UN || f == threads.JIC || f == threads.ORB || f == threads.SAE45 || f == threads.ORFS:
		measure = func(form *threads.Form) float64 { return form.Major.Inches() }
		if fig.kind == dashSize {
			measure = func(form *threads.Form) float64 { return form.Tube.Inches() * 16 }
		}
	}
	var below, above *threads.Form
	for _, form := range list {
		v := measure(form)
		if v <= want && (below == nil || v >= measure(below)) {
			below = form
		}
		if v > want && (above == nil || v < measure(above)) {
			above = form
		}
	}
	if below == nil && above == nil {
		return ""
	}
	switch {
	case below == nil:
		return above.Designation
	case above == nil:
		return below.Designation
	}
	return below.Designation + " and " + above.Designation
}

func quote(s string) string { return "\"" + s + "\"" }

func (l *line) kindWord() string {
	if l.shape == nil || l.shape.kind == "" {
		return "Such a part"
	}
	return "Such " + article(l.shape.kind)
}

// article writes a word with a or an.
func article(word string) string {
	if word != "" && !strings.HasPrefix(word, "uni") && (strings.ContainsRune("aeiouAEIOU8", rune(word[0])) || strings.HasPrefix(word, "11 ") || strings.HasPrefix(word, "18 ")) {
		return "an " + word
	}
	return "a " + word
}

// familySet is a set of families, by their bits.
type familySet uint64

// familiesOf are the families of ends.
func familiesOf(ends []threads.End) (out familySet) {
	for _, e := range ends {
		out |= 1 << e.Family
	}
	return out
}

func (s familySet) has(f threads.Family) bool { return s&(1<<f) != 0 }

func (s familySet) count() int { return bits.OnesCount64(uint64(s)) }
