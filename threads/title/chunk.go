package title

// chunk reads the tokens between two separators: one phrase, or several where
// sizes follow each other without one (M 26/34 F 20/27; 1/2 IG 3/4 AG).
func (l *line) chunk(out []*phrase, tokens []token, strong bool) []*phrase {
	if len(tokens) == 0 {
		return out
	}
	var room [8]int
	sizes := l.restated(room[:0], tokens)
	if len(sizes) < 2 {
		return append(out, l.phrase(tokens, strong))
	}
	prefix, family := wordsFirst(tokens, sizes)
	start := 0
	for n := 0; n+1 < len(sizes); n++ {
		cut := splitBetween(tokens, sizes[n], sizes[n+1], prefix, family)
		out = append(out, l.phrase(tokens[start:cut], strong && n == 0))
		start = cut
	}
	return append(out, l.phrase(tokens[start:], false))
}

// wordsFirst reports whether the words stand before their sizes (M 26/34 F
// 20/27) and not behind them (1/2 IG 3/4 AG), and whether the family does too.
func wordsFirst(tokens []token, sizes []int) (prefix, family bool) {
	first, last := tokens[:sizes[0]], tokens[sizes[len(sizes)-1]+1:]
	sexesFirst, families := said(first)
	sexesAll, _ := said(tokens)
	sexesLast, familiesLast := said(last)
	after := at(tokens, sizes[0]+1).is(classFamily)
	switch {
	case sexesAll > 0 && sexesFirst == 0 && sexesLast == 0 && familiesLast == 0 && len(sizes) == 2 && tokens[sizes[0]].figure.kind == inchSize && tokens[sizes[1]].figure.kind == inchSize && endRightBefore(tokens, sizes[0]) && nearBefore(tokens, sizes[1]) && wordsBetween(tokens, sizes) == 1:
		return true, true // hose tail 3/8 male 1/4
	case sexesAll > 0 && sexesFirst == 0:
		tail := families > 0 && (tokens[sizes[0]].figure.kind == mmSize || after != nil && after.value == "THREAD")
		return tail && sexesLast == 0, false
	case sexesFirst > 0:
		return sexesLast == 0 || nearBefore(tokens, sizes[0]), namesThread(first)
	}
	return families > 0 && familiesLast == 0, families > 0
}

// endRightBefore reports a word for an end right before a size.
func endRightBefore(tokens []token, size int) bool {
	return size > 0 && tokens[size-1].is(classEnd) != nil
}

// wordsBetween counts the words between the first two sizes.
func wordsBetween(tokens []token, sizes []int) (n int) {
	for k := sizes[0] + 1; k < sizes[1]; k++ {
		if tokens[k].mark == 0 {
			n++
		}
	}
	return n
}

// namesThread reports whether tokens name a family of threads that follows its sizes.
func namesThread(tokens []token) bool {
	for k := range tokens {
		if m := tokens[k].is(classFamily); m != nil && !m.has("pre") && m.value != "THREAD" {
			return true
		}
	}
	return false
}

// said counts the sexes and the families or ends that tokens name.
func said(tokens []token) (sexes, families int) {
	for k := range tokens {
		m := tokens[k].is(classFamily)
		switch {
		case tokens[k].is(classSex) != nil || m != nil && len(m.sexes) > 0:
			sexes++
		case tokens[k].is(classEnd) != nil, m != nil && !m.has("pre") && m.value != "THREAD":
			families++
		}
	}
	return sexes, families
}

// nearBefore reports whether a sex stands right before the first size.
func nearBefore(tokens []token, size int) bool {
	return size > 0 && tokens[size-1].is(classSex) != nil && len(tokens[size-1].is(classSex).sexes) == 1
}

// splitBetween gives where the second of two sizes' words begin.
func splitBetween(tokens []token, a, b int, prefix, family bool) int {
	if tokens[a+1].value(classFamily) == "THREAD" && tokens[a].figure.kind == inchSize && tokens[b].figure.kind == mmSize && a+2 <= b {
		return a + 2 // 3/4" euro cone 16x2: no pipe of millimetres has the thread
	}
	if m := tokens[a+1].is(classFamily); m != nil && b == a+2 && tokens[a].figure.kind == inchSize && tokens[b].figure.kind == mmSize && (bspWord(m) || m.value == "NPT") && !m.has("pre") {
		return a + 2 // hose tail 1/2 BSP 13mm: no millimetres have the thread
	}
	if prefix {
		m := tokens[a+1].is(classFamily)
		if m != nil && !m.has("pre") && m.value != "THREAD" && (!family || tokens[a].figure.kind == inchSize && tokens[b].figure.kind == mmSize && (bspWord(m) || m.value == "NPT")) {
			return a + 2 // Steckverschraubung 1/4 NPT für Rohr 8 mm
		}
		return a + 1
	}
	if tokens[a+1].is(classEnd) != nil && tokens[b].figure.kind == mmSize && tokens[a].figure.kind != mmSize && !telling(tokens[b+1:]) && onlyUnread(tokens[a+2:b]) {
		return a + 1 // 1 1/4" tail 32 mm
	}
	if m := tokens[b-1].is(classSex); m != nil && len(m.sexes) == 1 && b-1 > a+1 && sexless(tokens[a].figure) && tokens[b-2].is(classSex) == nil && !sexless(tokens[b].figure) && at(tokens, b+1).is(classSex) == nil {
		return b - 1 // 12S elbow male 3/8: the sex of the thread
	}
	if m := tokens[b-1].is(classSex); m != nil && len(m.sexes) == 1 && b-1 > a+1 && tokens[b].figure.kind == coneSize && !sexless(tokens[a].figure) && !telling(tokens[a+1:b-1]) {
		return b - 1 // 1/4 2SC c/ terminal fêmea 8L: the sex of the cone
	}
	for k := a + 1; k < b-1; k++ {
		if tokens[k].value(classNoise) == "branch" && tokens[b].figure.kind == inchSize && len(tokens[b-1].saidSexes()) > 0 {
			return k // female branch male 3/8
		}
	}
	if tokens[b-1].value(classAttr) == "one-sided" && tokens[b].figure.kind == inchSize {
		return b - 1 // IG Abgang AG 3/8
	}
	last := b - 1
	if tokens[last].mark == '-' && last > a+1 {
		last-- // JIC -6
	}
	if tokens[a].figure.kind == inchSize && tokens[b].figure.kind == inchSize && b == a+2 && tokens[a+1].is(classSex) != nil && at(tokens, b+1).is(classFamily) != nil && namesHoseWord(at(tokens, a-1)) {
		return a + 1 // hose 3/8 male 3/8 NPT
	}
	hosed := func(it *token) bool { return namesHoseWord(it) || namesMadeUp(it) }
	if (tokens[b].figure.kind == dashSize || tokens[b].figure.kind == inchSize) && tokens[a].figure.kind == inchSize && dashWord(tokens[last].is(classFamily)) && anyToken(tokens[:a], hosed) {
		return a + 1 // mang. 1/2 FG JIC 08: all that stands between is the thread's
	}
	for k := last; k > a; k-- {
		m := tokens[k].is(classFamily)
		forward := m != nil && m.series() != 0 && at(tokens, k+1).figure != nil && at(tokens, k+1).figure.kind == coneSize && !sexless(tokens[a].figure) ||
			k == last && dashWord(m) && (tokens[b].figure.kind == dashSize || tokens[b].figure.kind == unSize) && tokens[a].figure.kind == inchSize && !anySexIn(tokens[a+1:b-1]) ||
			k == b-1 && k == a+1 && tokens[b].figure.kind == metricSize && tokens[a].figure.kind == dnSize && (tokens[k].value(classAttr) == "nut" || tokens[k].is(classSex) != nil && tokens[k].is(classSex).weak()) ||
			tokens[k].value(classEnd) == "TUBE" && at(tokens, k+1).value(classEnd) == "ROUND" || m != nil && (m.has("pre") || m.value == "THREAD") || (tokens[k].is(classEnd) != nil || tokens[k].value(classAttr) == "nut") && k > a+1 && at(tokens, k+1).mark != '(' || tokens[k].mark == '(' ||
			m != nil && k == b-1 && tokens[b].glued && !tokens[k].glued // GHT3/4
		if !forward {
			return k + 1
		}
	}
	return a + 1
}
