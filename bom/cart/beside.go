package cart

import (
	"fmt"
	"strings"

	"handtight/pressure/pattern"
	"handtight/threads"
)

// Words beside an end that say what it is on the part: fixed, where another turns, or the branch of a tee.
var (
	fixedBehind  = pattern.New(`(?i)^[\s,(]*(?:fixed|rigid|solid|starr|fest|fixes?|fiss[oa]|fij[oa]|fix[oa]|vast)(?:[^\pL]|$)`)
	fixedWithin  = pattern.New(`(?i)(?:^|[^\pL])(?:fixed|rigid|starr|fiss[oa]|fij[oa]|fixo)(?:[^\pL]|$)`)
	branchBefore = pattern.New(`(?i)(?:branch|abzweig|abgang|derivazione|d[ée]rivation|piquage|derivaci[oó]n|deriva[cç][aã]o|aftakking|avstick|afgrening|avgrening|ramal|odgałęzienie|odejście|odbočka|отвод|відвід|sivuhaara|haara|branş|διακλάδωση)[^0-9,;()]{0,14}$`)
	branchBehind = pattern.New(`(?i)^[\s(]*(?:branch|(?:im |als )?abzweig|abgang|(?:in )?derivazione|(?:en )?d[ée]rivation|(?:en )?derivaci[oó]n|aftakking|avgrening|ramal|odgałęzienie|odejście|odbočka|отвод|відвід|sivuhaara|haara|branş)(?:[^\pL]|$)`)
)

// insideOfTube are words that call the size of a tube its inside: a push-in end is called by the outside.
var insideOfTube = pattern.New(`(?i)[0-9][0-9.,/]*\s*(?:mm|"|in)?\s*(?:i\.?d\b\.?|inside|inner|internal|innen\pL*|intérieur\pL*|interno|interior|binnen\pL*|inwendig)`)

// besideEnds notes what stands beside each end. Of two branches none is told.
func (f *facts) besideEnds(text string) {
	from, branches := 0, 0
	for i := range f.ends {
		e := &f.ends[i]
		at := strings.Index(text[from:], e.words)
		if at < 0 || e.words == "" {
			continue
		}
		before, behind := text[:from+at], text[from+at+len(e.words):]
		from += at + len(e.words)
		e.fixed = fixedBehind.MatchString(behind) || fixedWithin.MatchString(e.words)
		if branchBefore.MatchString(before) || branchBehind.MatchString(behind) {
			f.branch, branches = i+1, branches+1
		}
	}
	for i := range f.ends {
		e := &f.ends[i]
		if len(e.readings) > 0 && (e.readings[0].Family == threads.Push || e.readings[0].Family == threads.Compression) {
			f.doubted("what is the outside of its tube (its words say %q)", insideOfTube.FindString(e.words))
		}
	}
	if branches > 1 {
		f.branch = 0
	}
}

// compareBeside holds what stands beside the ends to the planned ones, where the ends themselves are alike:
// an end that does not turn is asked about where a swivel is planned, and a tee's branch is to be the branch.
func (m *match) compareBeside(l, n *facts) {
	if m.fit != fitSame && m.fit != fitOpen {
		return
	}
	for i := range n.ends {
		if k := m.end(i); k >= 0 && l.ends[k].fixed && n.ends[i].readings[0].Swivel {
			m.asks.add(inEnds)
		}
	}
	if l.branch > 0 && n.branch > 0 && fitEnd(&l.ends[l.branch-1], &n.ends[n.branch-1]) >= fitNear {
		m.differs.add(inBranch)
	}
}

// turns asks for a swivel where a line calls the end fixed.
func (l *facts) turns(m *match) string {
	for i := range m.need.facts.ends {
		if k, e := m.end(i), &m.need.facts.ends[i]; k >= 0 && l.ends[k].fixed && e.readings[0].Swivel {
			return fmt.Sprintf("does its %s turn (it is called fixed, and that of %s is %s)", openText(l.ends[k].readings), m.need.Key, openText(e.readings))
		}
	}
	return ""
}
