package title

import "handtight/threads"

// unspent lists the words of one end's text that change nothing of the end, by
// reading the text again without each of them. It is for [ReadEnd], whose texts
// are short.
func unspent(text string, l *line, read *threads.EndReading) []threads.NotUsed {
	var out []threads.NotUsed
	for k := range l.tokens {
		it := &l.tokens[k]
		why := ""
		switch {
		case it.figure != nil && it.figure.role == asRepeat && !it.figure.used:
			why = threads.SaysNothingNew // of another size it would be a second end
		case it.figure != nil && !it.figure.used:
			why = l.why(it.figure)
		case it.mark != 0 || it.figure != nil || len(it.word.all()) == 0:
			continue
		case it.is(classSex) != nil, it.is(classFamily) != nil, it.is(classEnd) != nil, it.is(classAttr) != nil:
			why = threads.SaysNothingNew
		case it.is(classKind) != nil:
			why = "a word of the part, and not of the end"
		case it.is(classMaterial) != nil, it.is(classGrade) != nil:
			why = "the material of the part, and not of the end"
		case it.is(classPress) != nil, it.is(classWord) != nil, it.is(classBefore) != nil, it.is(classAfter) != nil:
			why = "a word of the part, and not of the end"
		case it.is(classNoise) != nil:
			why = "a word that says nothing of the end"
		default:
			continue
		}
		if it.figure == nil && !sameWithout(text, l, k, read) {
			continue
		}
		out = append(out, threads.NotUsed{Words: l.words(it.from, it.to), Why: why})
	}
	return out
}

// sameWithout reports whether the end is the same when a word is left out.
func sameWithout(text string, l *line, k int, read *threads.EndReading) bool {
	from, to := int(l.at[l.tokens[k].from]), int(l.at[l.tokens[k].to])
	without := text[:from] + " " + text[to:]
	again := newLine(without, true)
	defer again.release()
	var got []threads.EndReading
	for _, c := range again.ends() {
		if e, ok := again.resolve(c); ok {
			got = append(got, e)
		}
	}
	if len(got) != 1 || len(got[0].Candidates) != len(read.Candidates) || got[0].Question != read.Question {
		return false
	}
	for n := range got[0].Candidates {
		if got[0].Candidates[n] != read.Candidates[n] {
			return false
		}
	}
	return true
}
