package title

import (
	"bytes"
	"slices"
	"strings"
)

// endMarks takes what numbers the two ends of a hose out of the line: E1: JIC -6 ..., E2: ...; kant A: ..., kant B: .... A figure
// or a letter there is no size and no sex, and where both are named the hose has both its ends.
func (l *line) endMarks() {
	if l.one {
		return
	}
	seen := 0
	for k := 0; k+2 < len(l.tokens); k++ {
		name, mark, colon := &l.tokens[k], &l.tokens[k+1], &l.tokens[k+2]
		if colon.mark != ':' && colon.mark != '=' || name.figure != nil || mark.to-mark.from != 1 || !slices.Contains(list("end-mark"), string(l.norm[name.from:name.to])) {
			continue
		}
		switch l.norm[mark.from] {
		case '1', '2', 'a', 'b':
		default:
			continue
		}
		if mark.figure != nil {
			mark.figure.drop(asEndMark)
		}
		mark.word, mark.unread = l.lex.word("the"), false
		name.word, name.unread = l.lex.word("the"), false
		colon.mark = ','
		seen++
	}
	l.both = l.both || seen == 2
}

// codeCells takes a cell of a list that is nothing but letters, digits and hyphens for the number of the part: AD-12 | Adapter |
// -8 ORB. The letters of a thread with its size are a cell of their own too: G-12 is none.
func (l *line) codeCells() {
	if l.one || !slices.ContainsFunc(l.tokens, func(it token) bool { return it.mark == '|' }) {
		return
	}
	from := 0
	for k := range l.tokens {
		if l.tokens[k].mark != '|' {
			continue
		}
		for from == 0 && from < k && l.tokens[from].unread && !l.tokens[from+1].glued {
			from++ // the shop's name before the first cell
		}
		if l.codeCell(from, k) {
			for j := from; j < k; j++ {
				it := &l.tokens[j]
				if it.figure != nil {
					it.figure.drop(asCode)
				} else if it.mark == 0 {
					it.word, it.unread = l.lex.word("the"), false
				}
				it.mark = 0
			}
		}
		from = k + 1
	}
}

// codeCell reports capitals, then digits behind a hyphen, and nothing else, from one token to another.
func (l *line) codeCell(from, to int) bool {
	if to-from < 3 || l.tokens[from].is(classFamily) != nil && l.tokens[from].is(classFamily).value != "FLARE" || l.tokens[from].is(classBefore) != nil {
		return false
	}
	text := l.as[l.at[l.tokens[from].from]:l.at[l.tokens[to-1].to]]
	letters := 0
	for letters < len(text) && text[letters] >= 'A' && text[letters] <= 'Z' {
		letters++
	}
	rest := text[letters:]
	return letters > 0 && letters < 5 && strings.Contains(rest, "-") && strings.Trim(rest, "-0123456789") == "" && !strings.HasSuffix(rest, "-")
}

// countedSexes reads how many ends have each sex, said together: cross 1/4 NPT, 3F 1M.
func (l *line) countedSexes() {
	if l.one || l.shape == nil || l.shape.ends < 3 {
		return
	}
	total, first, last := 0, -1, -1
	for k := 0; k+1 < len(l.tokens); k++ {
		f, sex := l.tokens[k].figure, l.sexCounted(k)
		if !f.digits() || f.v < 1 || f.v > 4 || sex == nil {
			continue
		}
		if first < 0 {
			first = k
		}
		total, last = total+int(f.v), k
	}
	if total != l.shape.ends || first == last {
		return
	}
	all := &sense{class: classSex, tongue: "en"}
	for k := first; k <= last; k++ {
		if f, sex := l.tokens[k].figure, l.sexCounted(k); f.digits() && f.v >= 1 && f.v <= 4 && sex != nil {
			for range int(f.v) {
				all.sexes = append(all.sexes, sex.sexes[0])
			}
			f.drop(asCount)
			if l.tokens[k+1].value(classSep) == "x" {
				l.tokens[k+2].word = l.lex.word("the")
			}
			l.tokens[k+1].word = l.lex.word("the")
		}
	}
	l.tokens[first+1].word = []*sense{all}
}

// sexCounted is the sex that a number counts: 3F, 2x Aussen; nil if it counts none.
func (l *line) sexCounted(k int) *sense {
	next := at(l.tokens, k+1)
	m := next.is(classSex)
	if x := next; x.value(classSep) == "x" && x.glued {
		m = at(l.tokens, k+2).is(classSex)
	} else if !next.glued {
		return nil
	}
	if m == nil || len(m.sexes) != 1 {
		return nil
	}
	return m
}

// seriesOfCones reads the series of a 24 degree cone that a word says beside the tube in millimetres: 12 mm, L-Reihe.
func (l *line) seriesOfCones() {
	row := bytes.Contains(l.norm, []byte("seri")) || bytes.Contains(l.norm, []byte("reihe")) || bytes.Contains(l.norm, []byte("reeks"))
	if l.one || !row || l.says("BARB") || l.says("PUSH") || l.namesHose() {
		return
	}
	var series byte
	switch {
	case l.contains("cone-light"):
		series = 'l'
	case l.contains("cone-heavy"):
		series = 's'
	default:
		return
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		tube := f.digits() && at(l.tokens, k-1).value(classEnd) == "TUBE" // tubo 12 serie L
		if f != nil && (f.kind == mmSize || tube) && f.whole && coneFits(f.v, series) {
			f.kind, f.series, l.evidence = coneSize, series, true
		}
	}
}

// pins takes the thread from the metric size of an electric plug, which its poles stand behind: M12 4-pin, M12 5-polig.
func (l *line) pins() {
	if l.one {
		return
	}
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f == nil || f.kind != metricSize || f.pitch > 0 {
			continue
		}
		j := k + 1
		if at(l.tokens, j).mark == '-' || at(l.tokens, j).mark == ',' {
			j++
		}
		poles := at(l.tokens, j)
		word := at(l.tokens, j+1)
		if word.mark == '-' {
			word = at(l.tokens, j+2)
		}
		if poles.figure.digits() && slices.Contains(list("pole"), string(l.norm[word.from:word.to])) {
			f.drop(asMeasure)
			poles.figure.drop(asCount)
		}
	}
}
