package title

import (
	"math"

	"handtight/threads"
)

// restated adds the places of sizes to a list, with a thread given again by its own name
// left out: 12L (M18x1.5), -10 ORB 7/8-14.
func (l *line) restated(out []int, tokens []token) []int {
	for k := range tokens {
		f := tokens[k].figure
		if f == nil || !f.sized() {
			continue
		}
		if n := len(out); n > 0 {
			before := tokens[out[n-1]].figure
			if before.kind == dashSize && f.kind == inchSize && f.v*16 == before.v && k-out[n-1] <= 2 {
				f.drop(asRepeat)
				continue
			}
			if again(before, f) {
				f.drop(asRepeat)
				continue
			}
			if before.kind == inchSize && f.kind == dashSize && onlyUnified(tokens[out[n-1]+1:k]) && unifiedOfDash(before.v, f.v) {
				before.drop(asRepeat) // 3/4 UNF -8 ORB
				out[n-1] = k
				continue
			}
			if again(f, before) {
				before.drop(asRepeat)
				out[n-1] = k
				continue
			}
		}
		out = append(out, k)
	}
	return out
}

// onlyUnified reports the name of the unified threads, and a hyphen at most, between a thread's diameter and a dash.
func onlyUnified(between []token) bool {
	named := false
	for k := range between {
		it := &between[k]
		if it.value(classFamily) == "UN" {
			named = true
		} else if it.mark != '-' {
			return false
		}
	}
	return named
}

// unifiedOfDash reports whether one of the ends that go by a dash has the thread of so many inches.
func unifiedOfDash(inches, dash float64) bool {
	for _, family := range dashFamilies {
		if f, ok := threads.Find(family, dashText(dash)); ok && math.Abs(f.Major.Inches()-inches) < 0.002 {
			return true
		}
	}
	return false
}

// again reports whether thread names the thread of the dash or cone size.
func again(size, thread *figure) bool {
	switch {
	case size.kind == coneSize && thread.kind == metricSize:
		f, ok := threads.Find(coneFamily(size.series), coneSize24(size.v, size.series))
		return ok && float64(f.Major) == thread.v
	case size.kind == dashSize && thread.kind == unSize:
		for _, family := range dashFamilies {
			if f, ok := threads.Find(family, dashText(size.v)); ok && sameThread(f, thread) {
				return true
			}
		}
	}
	return false
}

// trim narrows the phrase's words to those about the end.
func (c *phrase) trim(l *line, tokens []token) {
	const ofEnd = 1<<classSex | 1<<classFamily | 1<<classEnd | 1<<classAttr
	telling := func(it *token) bool {
		return it.figure != nil && it.figure.sized() || it.word != nil && it.word.has&ofEnd != 0 || it.role(classBefore) == asBore
	}
	first, last := -1, -1
	for k := range tokens {
		if telling(&tokens[k]) {
			if first < 0 {
				first = k
			}
			last = k
		}
	}
	if first >= 0 {
		c.from, c.to = tokens[first].from, tokens[last].to
		if f := tokens[first].figure; f != nil && f.dashed && c.from > 0 {
			c.from--
		}
	}
}

// addSexes adds a sex, or one of each end. The same sex said twice apart (M
// เกลียวนอก) is one; joined by a stroke (F/F) it is one of each end.
func (c *phrase) addSexes(s []threads.Sex, joined bool) {
	if len(s) == 1 && len(c.sexes) == 1 && c.sexes[0] == s[0] && !joined {
		return
	}
	third := c.dealt && len(c.sexes) == 2 && len(s) == 1 // utv./inv./inv.: a pair and one more
	if len(c.sexes) > 1 && (!joined || c.dealt && !third) {
		return
	}
	if len(s) > 2 && len(c.sexes) == 1 && !joined {
		c.sexes = nil // male tee MMM
	}
	c.dealt = len(s) > 1
	c.sexes = append(c.sexes[:len(c.sexes):len(c.sexes)], s...)
}

// detail ranks families that are said together: the closer name rules.
var detail = map[string]int{
	"THREAD": 0, "UN": 1, "SAE45": 1, "FLARE": 0, "BSP": 1, "SAE": 1, "NPT": 1, "IPS": 1, "24": 1, "NPS?": 1, "ISO7": 2, "EN10226-1": 2, "R": 4, "RC": 4, "RP": 4,
}

func (c *phrase) addFamily(m *sense) {
	c.attr |= m.attr
	if m.value == "THREAD" {
		c.thread = true
		if len(m.sexes) > 0 {
			c.addSexes(m.sexes, false)
		}
		return
	}
	if len(m.sexes) > 0 {
		c.addSexes(m.sexes, c.fam != nil)
	}
	rankOf := func(m *sense) int {
		if n, ok := detail[m.value]; ok {
			return n
		}
		return 3
	}
	switch {
	case c.fam == nil, c.fam.value == m.value && c.fam.series() == 0 && m.series() != 0: // 24° DKOL
		c.fam = m
	case rankOf(m) > rankOf(c.fam):
		c.fam, c.fam2 = m, c.fam
	case m.value != c.fam.value:
		c.fam2 = m
	}
}
