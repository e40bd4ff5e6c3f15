package title

// numberedPorts reads ports in a row that are called by numbers, and how many of the size behind them there are: ports 1-4 1/8 NPT; Ports 1, 2 and 3:
// G 1/4. The numbers are names.
func (l *line) numberedPorts() {
	for k := 0; k < len(l.tokens); k++ {
		it := &l.tokens[k]
		if it.figure != nil || it.mark != 0 || !at(l.tokens, k+1).portNumber() || it.to == it.from || !portsList.has(l.norm[it.from:it.to]) && !outletPluralList.has(l.norm[it.from:it.to]) && !onePortList.has(l.norm[it.from:it.to]) {
			continue
		}
		first, n, last, j := at(l.tokens, k+1).figure, 0, 0., k+1
		for ; at(l.tokens, j).portNumber(); j += 2 {
			v := l.tokens[j].figure.v
			between := at(l.tokens, j-1)
			if n++; n > 1 && (between.mark == '-' || hasText(l.norm, between.from, "to")) && v > last {
				n += int(v-last) - 1 // 1 to 4
			}
			last = v
			if next := at(l.tokens, j+1); next.mark != ',' && next.mark != '-' && next.mark != '/' && next.mark != '+' && next.mark != '&' && !l.betweenCounts(j+1) && !hasText(l.norm, next.from, "to ") {
				j++
				break
			}
		}
		if n == 0 || n > mostPorts || first == nil {
			continue
		}
		from := j
		for at(l.tokens, from).mark == ':' || at(l.tokens, from).mark == '=' || isList.has(l.norm[at(l.tokens, from).from:at(l.tokens, from).to]) {
			from++
		}
		size := l.sizeNear(from)
		if size == nil || size.times > 0 || size == first {
			continue
		}
		for i := k + 1; i < j; i++ {
			if f := l.tokens[i].figure; f != nil && f != size {
				f.drop(asCode)
			}
			if l.tokens[i].figure != size {
				l.tokens[i].word, l.tokens[i].unread, l.tokens[i].mark = l.lex.word("the"), false, 0
			}
		}
		for i := j; i < from; i++ {
			l.tokens[i].word, l.tokens[i].unread, l.tokens[i].mark = l.lex.word("the"), false, 0
		}
		if size.counted = true; n > 1 {
			size.times = n
		}
		k = from
	}
}

// portNumber reports a plain number that a port may be called by.
func (it *token) portNumber() bool {
	f := it.figure
	return f != nil && f.whole && !f.marked && !f.frac && f.v >= 1 && f.v <= mostPorts && f.kind == bare
}

// portNumbered reports a number of a port, behind which a size stands: the last of a row, ports 1 to 3 1/2" NPT, or one that is larger than sizes with a
// fraction mostly are, port 5 1/4. Of port 1 1/2 nobody can tell, and it is taken for the size.
func (sc *scanner) portNumbered(n, end int) bool {
	if n > mostPorts || !isBlank(byteAt(sc.norm, end)) {
		return false
	}
	row := n > 2
	for k := len(sc.tokens) - 1; k >= 0; k-- {
		it := &sc.tokens[k]
		word := sc.norm[it.from:it.to]
		switch {
		case it.portNumber():
			row = true
		case it.mark == ',' || it.mark == '-' || it.mark == '&' || it.mark == '+' || it.mark == '/':
		case it.figure != nil, it.mark != 0:
			return false
		case betweenCountsList.has(word), string(word) == "to":
		default:
			return row && (portsList.has(word) || onePortList.has(word))
		}
	}
	return false
}
