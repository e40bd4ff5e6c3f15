package title

// seen is what the tokens of a line are, all together, as the line was cut into them: the steps that come before the words are
// surveyed ask it whether there is anything for them to look for. A step before them that gives a word a class, or a line a mark, which a later one
// asks for must add it here.
type seen struct {
	classes uint16  // of the words
	marks   letters // that stand as tokens
	alone   letters // the letters that are a token by themselves
	kinds   uint16  // of the figures
	figures int
	plain   int // figures that are whole numbers and nothing else
}

// look notes what the tokens are.
func look(tokens []token, norm []byte) (out seen) {
	for k := range tokens {
		it := &tokens[k]
		switch {
		case it.figure != nil:
			out.figures++
			out.kinds |= 1 << it.figure.kind
			if it.figure.plain() {
				out.plain++
			}
		case it.mark != 0:
			out.marks.add(it.mark)
		case it.to-it.from == 1:
			out.alone.add(norm[it.from])
		}
		if it.word != nil {
			out.classes |= it.word.has
		}
	}
	return out
}

// word reports a word of the class.
func (s *seen) word(c wordClass) bool { return s.classes&(1<<c) != 0 }

// figure reports a figure of the kind.
func (s *seen) figure(kind figureKind) bool { return s.kinds&(1<<kind) != 0 }
