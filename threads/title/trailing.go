package title

import "slices"

// trailing deals out words that stand in a list behind the sizes: 1 in x 1 in x
// 3/4 in S x S x FPT, 1" NPT x 3/4" GHT male to male. Words that say only a sex
// leave the rest of each end as it is.
func trailing(tail []*phrase) []*phrase {
	last := -1
	sized := 0
	for k, c := range tail {
		if c.fig != nil {
			last, sized = k, sized+1
		}
	}
	if extra := tail[last+1:]; sized > 2 && last == sized-1 && len(extra) > 0 && len(extra) < sized-1 && sexesOnly(extra) && extra[0].strong {
		return fewSexes(tail[:sized], extra)
	}
	if sized < 2 || len(tail) < last+sized || len(tail) > last+sized+1 || last != sized-1 {
		return tail
	}
	words := append([]*phrase{copyOf(tail[last])}, tail[last+1:]...)
	if len(words) > sized {
		if words = words[1:]; tail[last].fam != nil || tail[last].end != "" || sexesOnly(words) {
			return tail // 1/2 x 3/8 female adaptor - socket x FPT: the list has a word for each
		}
	}
	for k, c := range words {
		if k > 0 && (!c.strong || !c.says()) {
			return tail
		}
	}
	for _, c := range tail[:last] {
		if len(c.sexes) > 0 || c.end != "" || c.fam != nil && !sexesOnly(words[1:]) {
			return tail
		}
	}
	dealList(tail[:sized], words)
	return tail[:sized]
}

// fewSexes leaves the sexes open where the list behind the sizes has fewer of them than there are sizes: tee 1/2 x
// 3/8 x 1/4 F x M.
func fewSexes(ends, extra []*phrase) []*phrase {
	all := slices.Clone(ends[len(ends)-1].sexes)
	for _, c := range extra {
		all = append(all, c.sexes...)
	}
	for _, e := range ends {
		if e.sexes = all[:min(1, len(all))]; !same(all) {
			e.sexes, e.bothSexes = nil, true
		}
	}
	return ends
}

func sexesOnly(words []*phrase) bool {
	for _, c := range words {
		if !c.onlySexes() {
			return false
		}
	}
	return true
}

func dealList(ends, words []*phrase) {
	shared := words[0]
	for k, e := range ends {
		w := words[k]
		e.strange = w.unknown && !w.says() // CC x MIP: a word of this end that is not understood
		e.sexes = w.sexes
		if len(e.sexes) > 1 {
			e.sexes = e.sexes[:1]
		}
		if e.fam != nil && k < len(ends)-1 {
			continue
		}
		e.fam, e.fam2, e.end, e.thread, e.endFirst = w.fam, w.fam2, w.end, w.thread, false
		if e.fam == nil && e.end == "" && shared.fam != nil {
			e.fam, e.fam2 = shared.fam, shared.fam2
		}
	}
}
