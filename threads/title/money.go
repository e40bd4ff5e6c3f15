package title

import (
	"bytes"
	"strings"
)

// priced reports whether a sign of money stands right before or behind a figure. A sign between two figures
// is that of the one it touches, else of the second, as dollars and pounds are written.
func (l *line) priced(k int) bool {
	before := strings.TrimRight(l.as[:l.at[l.tokens[k].from]], " ")
	behind := strings.TrimLeft(l.as[l.at[l.tokens[k].to]:], " ")
	for _, sign := range [...]string{"$", "€", "£", "¥", "₽", "₺", "₴"} {
		if strings.HasSuffix(before, sign) {
			return true
		}
		rest, ok := strings.CutPrefix(behind, sign)
		touches := strings.HasPrefix(l.as[l.at[l.tokens[k].to]:], sign)
		if next := strings.TrimLeft(rest, " "); ok && (touches || next == "" || !isDigit(rune(next[0]))) {
			return true
		}
	}
	return false
}

// timesPrice is what one of the two figures of a count and a price is that a line ends with, 3 x 4.15 or 3  4.15,
// where a size stands before.
func (l *line) timesPrice(k int) role {
	last := len(l.tokens) - 1
	for last > 0 && l.tokens[last].value(classSep) == "x" && l.tokens[last].glued {
		last-- // the star of a receipt
	}
	if it := &l.tokens[last]; last > 3 && it.figure == nil && it.to == it.from+1 && !it.glued && l.capital(it.from) && l.tokens[last-1].figure != nil {
		last-- // the letter of the tax
	}
	if unit := at(l.tokens, last-1); last > 3 && unit.figure != nil && l.tokens[last].figure != nil && l.twoDecimals(unit) && l.twoDecimals(&l.tokens[last]) && at(l.tokens, last-2).value(classSep) == "x" && !unit.glued {
		if k == last {
			return asPrice // 2 x 2,49 4,98: what they cost together
		}
		last--
	}
	if l.one || last < 2 || k > last || k < last-2 || l.tokens[k].figure == nil || l.tokens[last].figure == nil || !l.twoDecimals(&l.tokens[last]) || l.tokens[last].figure.marked {
		return noRole
	}
	many := last - 1
	if l.tokens[many].value(classSep) == "x" {
		many--
	}
	if f := at(l.tokens, many).figure; f == nil || !f.whole || f.marked || f.frac || l.tokens[last].glued || !l.sizeElsewhere(many) || many == last-1 && at(l.tokens, many-1).parted() {
		return noRole
	}
	switch k {
	case last:
		return asPrice
	case many:
		return asCount
	}
	return noRole
}

// atPrice reports a whole number before the sign for what each costs, where another
// size stands in the line: 2 @ $8.15.
func (l *line) atPrice(k int, f *figure) bool {
	return l.sizeElsewhere(k) && !l.behindNominal(k) && at(l.tokens, k-1).value(classSep) == "" && f.whole && !f.marked && !f.frac && strings.HasPrefix(strings.TrimLeft(l.as[l.at[l.tokens[k].to]:], " "), "@")
}

// twoDecimals reports a number with two decimals.
func (l *line) twoDecimals(it *token) bool {
	to := it.from
	for to < it.to && (digit(l.norm[to]) || l.norm[to] == '.') {
		to++ // 38.50 ea
	}
	return to-it.from > 3 && l.norm[to-3] == '.'
}

// amount reports a figure with two decimals at the end of a line, the last of them a nought, as prices are
// written and sizes are not: 3.50; or with blanks before it that part its column from the rest. Another size must
// stand in the line.
func (l *line) amount(k int, f *figure) bool {
	it := &l.tokens[k]
	if k != len(l.tokens)-1 || !l.twoDecimals(it) || f.marked || !l.sizeElsewhere(k) || at(l.tokens, k-1).value(classSep) == "x" {
		return false
	}
	return l.norm[it.to-1] == '0' || strings.HasSuffix(l.as[:l.at[it.from]], "  ") || strings.HasSuffix(l.as[:l.at[it.from]], "\t")
}

// priceLike reports a plain figure with two decimals, as an amount has in a column of its own: 2.35.
func (l *line) priceLike(k int) bool {
	it := at(l.tokens, k)
	return it.figure != nil && it.figure.kind == bare && !it.figure.marked && l.twoDecimals(it) && !it.glued
}

// ownColumn reports a figure that stands alone in a column of a table, between tabs.
func (l *line) ownColumn(k int) bool {
	from, to := int(l.at[l.tokens[k].from]), int(l.at[l.tokens[k].to])
	first, last := from == 0 || l.as[from-1] == '\t', to == len(l.as) || l.as[to] == '\t'
	return first && last && to-from < len(l.as)
}

// numberColumn reports a plain number of those that a row of a table ends with, its counts and its price: behind a bar, with at least one more number behind it, or
// one of three and more of which the last has the two decimals of a price. A size stands before, and nothing but numbers and signs of money follows.
func (l *line) numberColumn(k int, f *figure) bool {
	if l.one || !f.digitsOrDecimals() || f.dashed || at(l.tokens, k-1).value(classSep) == "x" || !l.sizeBefore(k) {
		return false
	}
	more, last := 0, k
	for j := k + 1; j < len(l.tokens); j++ {
		it := &l.tokens[j]
		switch {
		case it.mark == '|' || it.mark == '-' && !it.glued || it.is(classNoise) != nil && !wordy(l.norm[it.from:it.to]):
		case it.is(classUnit) != nil && (it.role(classUnit) == asPrice || it.role(classUnit) == asCount):
		case it.plainNumber():
			if last = j; it.figure.role != asCount {
				more++ // a count has its unit, and is no column by itself
			}
		default:
			return false
		}
	}
	if at(l.tokens, k-1).mark == '|' {
		return more > 0 || k+1 == len(l.tokens)
	}
	for j := k - 1; j >= 0 && l.tokens[j].plainNumber() && at(l.tokens, j-1).value(classSep) != "x"; j-- {
		more++
	}
	return more > 1 && l.twoDecimals(&l.tokens[last])
}

// plainNumber reports a number without a unit, a stroke or a mark.
func (it *token) plainNumber() bool {
	f := it.figure
	return f != nil && (f.kind == bare || f.kind == junkFigure) && !f.marked && !f.frac
}

// placeCell reports a figure of a cell that holds nothing but figures and two hyphens, in a line that gives a size elsewhere: the place in a store, | 1-1-4 |.
func (l *line) placeCell(k int, f *figure) bool {
	if l.one || !f.digits() || !l.seen.marks.has('|') || !l.sizeElsewhere(k) {
		return false
	}
	from, to, hyphens := k, k, 0
	for from > 0 && l.tokens[from-1].mark != '|' {
		from--
	}
	for to+1 < len(l.tokens) && l.tokens[to+1].mark != '|' {
		to++
	}
	for j := from; j <= to; j++ {
		it := &l.tokens[j]
		switch {
		case it.mark == '-' && it.glued:
			hyphens++
		case it.figure == nil || it.figure.frac || it.figure.marked || it.figure.kind != bare && it.figure.kind != junkFigure:
			return false
		}
	}
	return hyphens > 1 && from > 0
}

// wordy reports a letter of the small alphabet among some signs.
func wordy(text []byte) bool {
	for _, b := range text {
		if letter(b) {
			return true
		}
	}
	return false
}

// moneyLetter reports the letters of a sign of money, which are no thread: R$ 14,90, and R 45.50 where the figure has
// the two decimals of a price and is larger than a thread's size.
func (l *line) moneyLetter(k int) bool {
	it, next := &l.tokens[k], at(l.tokens, k+1)
	if l.one || it.is(classFamily) == nil {
		return false
	}
	if strings.HasPrefix(l.as[l.at[it.to]:], "$") {
		return true
	}
	if string(l.norm[it.from:it.to]) == "rp" && next.figure != nil && next.glued && !next.figure.frac && (next.figure.v >= 1000 || next.to-next.from > 4 && l.twoOrThreeDecimals(next)) {
		return true // Rp18.000: rupiah
	}
	return next.figure != nil && it.to-it.from == 1 && (next.figure.role == asPrice && next.glued || l.twoDecimals(next) && next.figure.v > largestInch)
}

// thousands gives the end of an amount with its thousands parted and two decimals, 1,250.00; 0 if none begins at i.
func (sc *scanner) thousands(i int) int {
	_, end := sc.digits(i)
	if end > i+3 || byteAt(sc.norm, end) != '.' && byteAt(sc.norm, end) != ',' {
		return 0
	}
	_, mid := sc.digits(end + 1)
	if mid != end+4 || byteAt(sc.norm, mid) != '.' && byteAt(sc.norm, mid) != ',' {
		return 0
	}
	_, stop := sc.digits(mid + 1)
	if stop != mid+3 || alnum(byteAt(sc.norm, stop)) {
		return 0
	}
	return stop
}

// taxAt reports the name of a tax at a place: 8.15 inc GST is no inch.
func (sc *scanner) taxAt(i int) bool {
	for _, tax := range taxList.words() {
		if hasText(sc.norm, i, tax) && !alnum(byteAt(sc.norm, i+len(tax))) {
			return true
		}
	}
	return false
}

// twoOrThreeDecimals reports a number with two or three digits behind its stop, as thousands and cents are written.
func (l *line) twoOrThreeDecimals(it *token) bool {
	stop := bytes.IndexByte(l.norm[it.from:it.to], '.')
	return stop > 0 && it.to-it.from-stop-1 >= 2 && it.to-it.from-stop-1 <= 3
}
