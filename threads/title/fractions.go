package title

// mixedAt gives where the fraction of a mixed number would begin.
func (sc *scanner) mixedAt(end int) int {
	at := end
	switch byteAt(sc.norm, at) {
	case '\'':
		at++ // 1'1/4
	case '"':
		at = sc.blanks(at + 1)
	case '.':
		at++
		if byteAt(sc.norm, at) == '-' {
			at++
		}
	case '-':
		at++
	case '\xe5':
		if !hasText(sc.norm, at, "又") {
			return 0
		}
		at += len("又") // 1又1/4
	case ' ':
		if at >= len(sc.norm) {
			return 0
		}
		at = sc.joined(sc.blanks(at))
	case '&', '+':
		at = sc.joined(at)
	default:
		return 0
	}
	if !digit(byteAt(sc.norm, at)) {
		return 0
	}
	return at
}

// joined steps over a sign that joins a whole number and its fraction: 1 & 1/4, 1 + 1/4.
func (sc *scanner) joined(at int) int {
	if b := byteAt(sc.norm, at); b == '&' || b == '+' {
		return sc.blanks(at + 1)
	}
	return at
}

// fraction reads a/b where b is a power of two to 64, as inch sizes have.
func (sc *scanner) fraction(i int) (float64, int) {
	a, end := sc.digits(i)
	if stop := sc.halfApart(a, end); stop > 0 {
		b, _ := sc.digits(sc.blanks(sc.blanks(end) + 1))
		return float64(a) / float64(b), stop
	}
	if stop := sc.apart(a, end); stop > 0 {
		b, _ := sc.digits(sc.blanks(sc.blanks(end) + 1))
		return float64(a) / float64(b), stop
	}
	if end == i || byteAt(sc.norm, end) != '/' {
		return 0, 0
	}
	b, stop := sc.digits(end + 1)
	if (b == 2 || b == 4) && stop == end+2 && end == i+2 && a > 10 && a < 30 && a%10 < b && a%2 == 1 && byteAt(sc.norm, i-1) != '/' {
		return float64(a/10) + float64(a%10)/float64(b), stop // 11/4: 1 1/4 run together
	}
	if stop == end+1 || b < 2 || b > 64 || b&(b-1) != 0 && a > 4 && b > 4 || a == 0 || a > 99 || byteAt(sc.norm, stop) == '/' && digit(byteAt(sc.norm, stop+1)) {
		return 0, 0
	}
	if a%2 == 0 && byteAt(sc.norm, i-1) == '/' && digit(byteAt(sc.norm, i-2)) {
		return 0, 0 // 8/6/8: three tubes, and nobody writes 6/8 for 3/4
	}
	if b >= 16 && (a > b || a%2 == 0) {
		return 0, 0 // 22/16: two pipes of millimetres, which no inch size is written as
	}
	if at := sc.blanks(stop); (a == 15 && b == 16 || a >= 3 && b&(b-1) != 0 || a >= 4 && a%2 == 0) && hasText(sc.norm, at, "mm") && !alnum(byteAt(sc.norm, at+2)) {
		return 0, 0 // two pipes of millimetres
	}
	return float64(a) / float64(b), stop
}

// apart gives the end of a fraction whose stroke stands apart from its figures, 3 / 4; 0 if it is none. It is
// less than one and in its lowest terms.
func (sc *scanner) apart(a, end int) int {
	stroke := sc.blanks(end)
	if a%2 == 0 || stroke == end || byteAt(sc.norm, stroke) != '/' || !isBlank(byteAt(sc.norm, stroke+1)) {
		return 0
	}
	b, stop := sc.digits(sc.blanks(stroke + 1))
	if a >= b || b != 2 && b != 4 && b != 8 || digit(byteAt(sc.norm, stop)) || byteAt(sc.norm, stop) == '/' || byteAt(sc.norm, sc.blanks(stop)) == '/' {
		return 0
	}
	return stop
}

// halfApart gives the end of a fraction whose stroke stands apart from one of its figures, where the sign for inches is behind
// it: 1 /2"; 0 if it is none.
func (sc *scanner) halfApart(a, end int) int {
	stroke := sc.blanks(end)
	if a%2 == 0 || byteAt(sc.norm, stroke) != '/' || (stroke == end) == !isBlank(byteAt(sc.norm, stroke+1)) {
		return 0
	}
	b, stop := sc.digits(sc.blanks(stroke + 1))
	if a >= b || b != 2 && b != 4 && b != 8 || byteAt(sc.norm, stop) != '"' {
		return 0
	}
	return stop
}

// turnedFraction reads the 2/1, 4/3 and 8/3 of Arabic lists, which are 1/2, 3/4 and 3/8 written
// from right to left; 0 where the line has no letter of that script.
func (sc *scanner) turnedFraction(i int) (float64, int) {
	b, end := sc.digits(i)
	if b != 2 && b != 4 && b != 8 || end != i+1 || byteAt(sc.norm, end) != '/' || byteAt(sc.norm, i-1) == '/' {
		return 0, 0
	}
	a, stop := sc.digits(end + 1)
	if a%2 == 0 || a >= b || byteAt(sc.norm, stop) == '/' || byteAt(sc.norm, stop) == '.' || !sc.arabic() {
		return 0, 0
	}
	return float64(a) / float64(b), stop
}
