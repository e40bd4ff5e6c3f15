package title

// standardEnd is where the number of a standard ends: ASME B16.11, DIN EN 10226-1.
// All its figures are the standard's.
func (l *line) standardEnd(k int) int {
	end := l.tokens[k].to
	for j := k + 1; j < min(len(l.tokens), k+8); j++ {
		it := &l.tokens[j]
		glued := it.glued && end > l.tokens[k].to
		short := it.to-it.from <= 2 && it.figure == nil && it.mark == 0
		if !(j == k+1 || glued || short && it.role(classBefore) == asStandard || end == l.tokens[k].to && (short || it.mark == '-')) || it.mark == ',' || it.mark == ';' || it.mark == '|' || it.mark == '(' || it.mark == ')' {
			break
		}
		if f := it.figure; f != nil {
			if !glued && (f.kind != bare || f.v < 10) {
				break
			}
			f.drop(asStandard)
		} else if it.mark == 0 && it.is(classBefore) == nil && !short {
			break
		}
		if it.figure != nil || it.mark == 0 {
			end = it.to
		}
		it.unread = false
	}
	return end
}

// onlyStandard reports a phrase that names a thread or its seal by the standard and nothing else.
func (l *line) onlyStandard(c *phrase) bool {
	if c.fig != nil || len(c.sexes) > 0 || c.end != "" {
		return false
	}
	text := string(l.norm[c.from:c.to])
	for _, body := range standardList.words() {
		if len(text) >= len(body) && text[:len(body)] == body {
			return true
		}
	}
	return false
}
