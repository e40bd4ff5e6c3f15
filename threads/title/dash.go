package title

// zeroDash reports a dash size that is written with its nought and without its dash: MNPT 04, NPT 06 male, 06-08 JIC. No inches are
// written so. Common practice of hydraulics, whose part numbers have the pipe threads' sizes in sixteenths too.
func (l *line) zeroDash(k int, f *figure) bool {
	if l.one || !l.noughted(k) {
		return false
	}
	if l.dashes && at(l.tokens, k+1).mark == '-' && l.noughted(k+2) || at(l.tokens, k-1).mark == '-' && l.noughted(k-2) {
		return l.dashes
	}
	return l.pipeNameBeside(k) && k > 0 && !l.leads(k) && !anyToken(l.tokens, func(it *token) bool { return it.figure != nil && (it.figure.frac || it.figure.marked) })
}

// noughted reports two digits of which the first is a nought, and that are a dash size.
func (l *line) noughted(k int) bool {
	it := at(l.tokens, k)
	f := it.figure
	return f.digitsInCode() && it.to-it.from == len("04") && l.norm[it.from] == '0' && dashNumbers[f.v]
}

// pipeDash reports the plain digits of a pipe thread beside a flare or an O-ring thread that has plain digits too, where no fitting
// has so many inches: JIC 6 male x NPT 4 male.
func (l *line) pipeDash(k int, f *figure) bool {
	if l.one || !l.dashes || !f.digits() || f.v < 3 || !dashNumbers[f.v] || !l.pipeNameBeside(k) {
		return false
	}
	for j := range l.tokens {
		o := l.tokens[j].figure
		if j == k || o == nil || !o.digits() && o.kind != dashSize || !dashNumbers[o.v] {
			continue
		}
		if (dashWord(at(l.tokens, j-1).is(classFamily)) || dashWord(at(l.tokens, j+1).is(classFamily))) && f.v*16 > 4*o.v {
			return true // four times the other's bore
		}
	}
	return false
}

// pipeNameBeside reports the name of a pipe thread that stands beside a figure, and is written apart from its sizes: NPT, MNPT, BSPP.
func (l *line) pipeNameBeside(k int) bool {
	for _, it := range [...]*token{at(l.tokens, k-1), at(l.tokens, k+1)} {
		if m := it.is(classFamily); m != nil && !m.has("pre") && !dashWord(m) && m.value != "THREAD" && m.value != "UN" {
			return true
		}
	}
	return false
}
