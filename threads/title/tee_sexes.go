package title

import (
	"bytes"
	"slices"

	"handtight/threads"
)

// takeTeeSex keeps a sex that stands before the name of a branch or a run tee: it is that one
// end's, and holds for no other.
func (l *line) takeTeeSex(k int, s *shape) {
	if s.traits&(branch|run) == 0 || k == 0 {
		return
	}
	before := &l.tokens[k-1]
	if m := before.is(classSex); m != nil && len(m.sexes) == 1 && before.figure == nil {
		l.teeSex, before.word = m.sexes[0], nil
	}
}

// sexOfTee gives the sex of a branch tee to its last end, and that of a run tee to its first.
func (l *line) sexOfTee(ends []*phrase) {
	l.sideSexes(ends)
	if l.teeSex == threads.NoSex || len(ends) != 3 {
		return
	}
	e := ends[2]
	if l.is(run) {
		e = ends[0]
	}
	if !threadLike(e) {
		e = firstThread(ends)
	}
	if e != nil && len(e.sexes) == 0 {
		e.sexes = []threads.Sex{l.teeSex}
	}
}

// sideSexes gives a tee whose ends are of one size the sex that stands beside the word for its branch or its run: female, male
// branch. The other word for a sex, if there is one, is that of the rest.
func (l *line) sideSexes(ends []*phrase) {
	if l.one || !l.is(tee) || len(ends) != 3 || ends[0].fig != ends[1].fig || ends[1].fig != ends[2].fig {
		return
	}
	side := map[string]threads.Sex{}
	rest := threads.NoSex
	for k := range l.tokens {
		sexes := l.tokens[k].saidSexes()
		if len(sexes) == 0 {
			continue
		}
		same := !slices.ContainsFunc(sexes, func(s threads.Sex) bool { return s != sexes[0] })
		where := l.sideBeside(k)
		switch {
		case !same || where != "" && len(sexes) > 1 && where == "branch":
			return
		case where != "":
			side[where] = sexes[0]
		default:
			rest = sexes[0]
		}
	}
	if side["branch"] == threads.NoSex && side["run"] == threads.NoSex {
		return
	}
	for k, where := range [...]string{"run", "run", "branch"} {
		if sex := side[where]; sex != threads.NoSex {
			ends[k].sexes = []threads.Sex{sex}
		} else if rest != threads.NoSex {
			ends[k].sexes = []threads.Sex{rest}
		} else {
			ends[k].sexes = nil
		}
	}
}

// sideBeside is the side of a tee that the words beside a sex name: male branch, male on the branch, and where the first
// side stands before the first sex, branch male.
func (l *line) sideBeside(k int) string {
	side := func(it *token) string {
		if v := it.value(classNoise); v == "branch" || v == "run" {
			return v
		}
		return ""
	}
	if l.tokens[k].value(classAttr) == "one-sided" {
		return "branch" // Abgang AG
	}
	first := indexToken(l.tokens, func(it *token) bool { return side(it) != "" || len(it.saidSexes()) > 0 })
	if first >= 0 && side(&l.tokens[first]) != "" {
		j := k - 1
		for j > 0 && smallWordsList.has(l.norm[l.tokens[j].from:l.tokens[j].to]) {
			j-- // branch is the male
		}
		return side(at(l.tokens, j))
	}
	for j := k + 1; j < min(k+4, len(l.tokens)); j++ {
		if v := side(&l.tokens[j]); v != "" {
			return v
		}
		if l.tokens[j].is(classNoise) == nil || l.tokens[j].figure != nil {
			return ""
		}
	}
	for j := k - 1; j > 0 && l.tokens[j].is(classNoise) != nil; j-- {
		if v := side(&l.tokens[j]); v != "" && anyToken(l.tokens[max(j-2, 0):j], func(it *token) bool { return it.mark == ',' }) {
			return v // IG, Abgang AG; lados fêmea, saída central macho
		}
	}
	return ""
}

// saidSexes are the sexes that a word says, for itself or with a thread's name.
func (it *token) saidSexes() []threads.Sex {
	if m := it.is(classSex); m != nil {
		return m.sexes
	}
	if m := it.is(classFamily); m != nil {
		return m.sexes
	}
	return nil
}

// branchFirst reports that the first of the two ends that a tee's line gives is its branch: the word for the branch stands with it, or the
// word for the run with the other. Abgang G 1/4 AG, Durchgang G 1/2 IG.
func (l *line) branchFirst(a, b *phrase) bool {
	if l.one || !l.is(tee) || a.from >= b.from || !threadLike(a) && threadLike(b) && b.strong {
		return false // tee male branch 1/4 OD x 1/8 NPT
	}
	first, other := l.sidesOf(a, b)
	return first == "branch" && other != "branch" || other == "run" && first != "run"
}

// sidesOf gives the sides of a tee that the words with each of its two ends name, "" where none does. Words belong to the end whose stretch,
// between commas or the like, they stand in; where nothing parts the two, to the end before them if a size stands before the first of them,
// else to the end behind.
func (l *line) sidesOf(a, b *phrase) (first, other string) {
	gap := -1
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.from >= l.figureFrom(a) && it.from < l.figureFrom(b) && (it.mark == ',' || it.mark == ';' || it.mark == '+' || it.mark == '&' || it.mark == '|' || it.mark == '-' && !it.glued && isBlank(byteAt(l.norm, it.to))) {
			gap = it.from
		}
	}
	before, many, last := false, 0, 0
	for k := range l.tokens {
		if l.sideWord(k) == "" {
			continue
		}
		before = before || many == 0 && l.tokens[k].from < l.figureFrom(a)
		many, last = many+1, l.tokens[k].from
	}
	if gap < 0 && !before && (many < 2 || last < l.figureFrom(b)) {
		return "", "" // tail 19 mm with branch 1/4: it is the second's
	}
	for k := range l.tokens {
		side, at := l.sideWord(k), l.tokens[k].from
		switch {
		case side == "":
		case gap >= 0 && at < gap, gap < 0 && before && at < l.figureFrom(a), gap < 0 && !before && at < l.figureFrom(b):
			first = side
		default:
			other = side
		}
	}
	return first, other
}

// sideWord is the side of a tee that the word at k names by itself, "" if none. The name of a branch tee names none.
func (l *line) sideWord(k int) string {
	it := &l.tokens[k]
	if m := it.is(classKind); m != nil && m.shape.traits&(branch|run) != 0 {
		return ""
	}
	if it.value(classAttr) == "one-sided" && !it.glued && bytes.HasPrefix(l.norm[it.from:it.to], []byte("abgang")) {
		return "branch" // Abgang AG
	}
	if v := it.value(classNoise); v == "branch" || v == "run" {
		return v
	}
	return ""
}

// figureFrom is where the size of an end stands.
func (l *line) figureFrom(e *phrase) int {
	for k := range l.tokens {
		if it := &l.tokens[k]; it.figure != nil && it.figure == e.fig && it.from >= e.from {
			return it.from
		}
	}
	return e.from
}
