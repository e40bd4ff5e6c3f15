package title

import (
	"bytes"
	"slices"

	"handtight/threads"
)

// airCode is what the letters of a push-in fitting's code say: its words, and its second end, a male or female
// thread or another tube.
type airCode struct {
	words  *meanings
	second string
}

// airTubes are the outsides in mm of the tubes that push-in fittings take, and airThreads the thread that the second
// number of a code stands for, in inches. Common practice of that trade: memory.
var (
	airTubes   = []float64{3, 4, 5, 6, 8, 10, 12, 14, 16}
	airThreads = map[string]float64{"01": 1. / 8, "02": 1. / 4, "03": 3. / 8, "04": 1. / 2}
)

// pneumatic reads the codes by which the trade of compressed air writes push-in fittings: PC8-02 takes a tube of 8 mm
// and has a male thread of two eighths, and PL6-M5 is an elbow. Where the line gives its sizes itself the code stays one.
func (l *line) pneumatic() {
	if l.one {
		return
	}
	for k := range l.tokens {
		it := &l.tokens[k]
		if it.figure != nil {
			if next := at(l.tokens, k+1); it.figure.plain() && next.glued && string(l.norm[next.from:next.to]) == "管" && slices.Contains(airTubes, it.figure.v) && l.saysAir() {
				it.figure.kind = mmSize // 10管
			}
			continue
		}
		if it.mark != 0 || it.to-it.from < 2 || it.to-it.from > 3 {
			continue
		}
		j := k + 1
		if at(l.tokens, j).mark == '-' && at(l.tokens, j).glued {
			j++
		}
		tube, dash, thread := at(l.tokens, j), at(l.tokens, j+1), at(l.tokens, j+2)
		if tube.figure == nil || tube.figure.kind != bare || !slices.Contains(airTubes, tube.figure.v) {
			continue
		}
		code, ok := l.lex.air[string(l.norm[it.from:it.to])]
		if !ok || !tube.glued && !(j == k+1 && dash.mark == '-' && l.saysAir()) {
			continue
		}
		two := dash.mark == '-' && dash.glued && thread.figure != nil && thread.glued
		switch {
		case code.second == "tube":
			if two || !l.saysAir() || l.stockName(k, j) {
				continue
			}
		case !two:
			continue
		case l.sizesBeside(j, j+2):
			if l.bothAgain(tube, thread, code.second) {
				it.word, it.unread = l.lex.word("the"), false
				continue
			}
			if !l.saidAgain(thread) {
				continue
			}
		case !l.airThread(thread, code.second):
			continue
		}
		it.word, it.unread = code.words, false
		tube.figure.kind = mmSize
	}
}

// stockName reports PU or PE as the stuff of a tube, with its outside: pneumatic tube PU8, PE10 x G 1/4.
func (l *line) stockName(k, size int) bool {
	code := string(l.norm[l.tokens[k].from:l.tokens[k].to])
	if code != "pu" && code != "pe" {
		return false
	}
	fitting := func(it *token) bool { m := it.is(classKind); return m != nil && m.shape.ends >= 0 }
	stock := (l.says("TUBE") || l.says("TUBING") || l.namesHose()) && !anyToken(l.tokens, fitting)
	return stock || at(l.tokens, size+1).value(classSep) == "x" || at(l.tokens, k-1).value(classSep) == "x"
}

// saidAgain drops the thread of a code that the line gives in words too, so that only its tube is taken.
func (l *line) saidAgain(it *token) bool {
	v, again := airThreads[string(l.norm[it.from:it.to])], false
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f != nil && f.kind == mmSize {
			return false
		}
		again = again || f != nil && f.frac && f.v == v
	}
	if again {
		it.figure.drop(asRepeat)
	}
	return again
}

// bothAgain drops the two numbers of a code whose tube and thread the line gives in words too, and takes the thread's sex from the
// code where none is said: 4 mm - M5 (PC4-M5).
func (l *line) bothAgain(tube, thread *token, sex string) bool {
	v := airThreads[string(l.norm[thread.from:thread.to])]
	var size, said *figure
	for k := range l.tokens {
		f := l.tokens[k].figure
		if f == nil || f == tube.figure || f == thread.figure {
			continue
		}
		if f.kind == mmSize && f.v == tube.figure.v {
			size = f
		}
		if v > 0 && f.frac && f.v == v || thread.figure.kind == metricSize && f.kind == metricSize && f.v == thread.figure.v {
			said = f
		}
	}
	if size == nil || said == nil {
		return false
	}
	tube.figure.drop(asRepeat)
	thread.figure.drop(asRepeat)
	if said.suffixed = threads.Male; sex == "female" {
		said.suffixed = threads.Female
	}
	return true
}

// airThread takes the second number of a code for its thread.
func (l *line) airThread(it *token, sex string) bool {
	f := it.figure
	if v := airThreads[string(l.norm[it.from:it.to])]; v > 0 {
		f.kind, f.v, f.frac, f.whole = inchSize, v, true, false
	} else if f.kind != metricSize || f.v > 6 && f.v != 10 {
		return false
	}
	f.suffixed, f.coded = threads.Male, true
	if sex == "female" {
		f.suffixed = threads.Female
	}
	return true
}

// sizesBeside reports a size elsewhere than at the two places.
func (l *line) sizesBeside(a, b int) bool {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && k != a && k != b && (f.frac || f.marked || f.sized()) {
			return true
		}
	}
	return false
}

// saysAir reports a word of compressed air or of push-in ends.
func (l *line) saysAir() bool {
	if l.says("PUSH") {
		return true
	}
	for _, w := range airList.words() {
		if bytes.Contains(l.norm, []byte(w)) {
			return true
		}
	}
	return false
}
