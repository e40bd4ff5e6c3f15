package title

// markFrench gives the inch size of a French pair the pair's family.
func (l *line) markFrench(v float64) {
	for k := range l.tokens {
		if f := l.tokens[k].figure; f != nil && f.kind == inchSize && f.v == v {
			f.kind = frenchSize
		}
	}
}

// frenchApart joins the two numbers of French pipe sizes that stand apart behind the name of a
// fitting: mamelon 20 27.
func (l *line) frenchApart() {
	fitting := false
	for k := 0; k+1 < len(l.tokens); k++ {
		if m := l.tokens[k].is(classKind); m != nil {
			fitting = m.shape.ends >= 0
		}
		bore, outside := l.tokens[k].figure, l.tokens[k+1].figure
		if !fitting || !bore.plain() || !outside.plain() || l.tokens[k+1].glued || at(l.tokens, k-1).parted() || at(l.tokens, k+2).parted() {
			continue
		}
		if v := l.lex.pairs[[2]int{int(bore.v), int(outside.v)}]; v > 0 {
			bore.kind, bore.v, bore.whole = frenchSize, v, false
			l.tokens[k].to = l.tokens[k+1].to
			l.tokens = append(l.tokens[:k+1], l.tokens[k+2:]...)
		}
	}
}
