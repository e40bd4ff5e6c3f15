package title

func (sc *scanner) eastern() bool {
	for i := range sc.norm {
		if wide(sc.norm, i) {
			return true
		}
	}
	return hasWord(string(sc.norm), "jis")
}

// chineseInch reads 寸 with what follows it: a figure counts eighths, 半 is a half.
func (sc *scanner) chineseInch(at int, f *figure) int {
	const inch, half = "寸", "半"
	if !hasText(sc.norm, at, inch) || !f.whole {
		return 0
	}
	f.kind = fenSize
	end := at + len(inch)
	if hasText(sc.norm, end, half) {
		f.v += 0.5
		return end + len(half)
	}
	if n, stop := sc.digits(end); stop == end+1 && n < 8 {
		f.v += float64(n) / 8
		return stop
	}
	return end
}

// easternInch steps over what marks an inch size in Japan (1/2B) and China (1/2寸).
func (sc *scanner) easternInch(at int) int {
	const inch = "寸"
	next := byteAt(sc.norm, at+1)
	switch {
	case hasText(sc.norm, at, inch):
		return at + len(inch)
	case byteAt(sc.norm, at) == 'b' && (!alnum(next) || next == 'x' && digit(byteAt(sc.norm, at+2))) && sc.eastern():
		return at + 1
	}
	return at
}
