package cart

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// looks is what the cells of a column are like.
type looks struct {
	cells, wordy, codes, numbers, letters, distinct int
}

// The shares of cells by which a column is told, in hundredths (judgement).
const (
	mostly  = 60
	nearly9 = 80
)

// looksOf looks at a column below the headings.
func (l *layout) looksOf(column int) looks {
	var out looks
	seen := map[string]bool{}
	for i := range l.sheet.rows[l.head+1:] {
		c := l.sheet.rows[l.head+1+i].cell(column)
		if c.text == "" {
			continue
		}
		out.cells++
		seen[c.text] = true
		letters := 0
		for _, r := range c.text {
			if unicode.IsLetter(r) {
				letters++
			}
		}
		out.letters += min(letters, 200)
		digits := strings.ContainsFunc(c.text, unicode.IsDigit)
		switch {
		case c.number || c.date || letters == 0:
			out.numbers++
		case letters >= 4 && strings.Contains(c.text, " "):
			out.wordy++
		case !strings.Contains(c.text, " ") && utf8.RuneCountInString(c.text) <= 24 && (digits || strings.ToUpper(c.text) == c.text):
			out.codes++
		}
	}
	out.distinct = len(seen)
	return out
}

func (l looks) share(n int) int {
	if l.cells == 0 {
		return 0
	}
	return n * 100 / l.cells
}

// describes reports whether the cells are descriptions: words, and not the same ones.
func (l looks) describes() bool {
	return l.share(l.wordy) >= mostly && (l.cells < 4 || l.share(l.distinct) >= mostly)
}

// coded reports whether the cells are codes: one word each with figures in it, all others.
func (l looks) coded() bool {
	return l.share(l.codes) >= nearly9 && l.share(l.distinct) >= nearly9
}

// byLooks finds the columns that no heading names, by what their cells look like: a
// description is never dropped. It says which.
func (l *layout) byLooks() []string {
	if l.head < 0 {
		return nil
	}
	var notes []string
	taken := map[int]bool{}
	for _, list := range l.columns {
		for _, k := range list {
			taken[k] = true
		}
	}
	head := &l.sheet.rows[l.head]
	width := 0
	for i := range l.sheet.rows {
		width = max(width, len(l.sheet.rows[i].cells))
	}
	for k := range width {
		role, _ := roleOf(head.text(k))
		if taken[k] || role == RoleNone && head.text(k) != "" || !l.looksOf(k).describes() {
			continue
		}
		l.columns[RoleText] = append(l.columns[RoleText], k)
		notes = append(notes, fmt.Sprintf("column %d%s was taken for a description, by what stands in it; say --columns text=%d if that alone is it", k+1, headed(head.text(k)), k+1))
	}
	slices.Sort(l.columns[RoleText])
	if texts := l.columns[RoleText]; len(texts) > 1 && len(l.columns[RoleCode]) == 0 {
		for _, k := range texts {
			if l.looksOf(k).coded() {
				l.columns[RoleText] = slices.DeleteFunc(texts, func(c int) bool { return c == k })
				l.columns[RoleCode] = []int{k}
				notes = append(notes, fmt.Sprintf("column %d%s was taken for the shop's code, by what stands in it", k+1, headed(head.text(k))))
				break
			}
		}
	}
	return append(notes, l.countByLooks(taken, width)...)
}

// countByLooks takes the one column of small whole numbers that no heading names for how many,
// where none is called so. Lines that are numbered through are no quantities.
func (l *layout) countByLooks(taken map[int]bool, width int) []string {
	if len(l.columns[RoleQuantity]) > 0 || len(l.columns[RoleText]) == 0 {
		return nil
	}
	found := -1
	for k := range width {
		if taken[k] || slices.Contains(l.columns[RoleText], k) || slices.Contains(l.columns[RoleCode], k) || !l.counts(k) {
			continue
		}
		if found >= 0 {
			return nil
		}
		found = k
	}
	if found < 0 {
		return nil
	}
	l.columns[RoleQuantity] = []int{found}
	return []string{fmt.Sprintf("column %d%s was taken for how many, by what stands in it; say --columns quantity=0 if it is not", found+1, headed(l.sheet.rows[l.head].text(found)))}
}

// counts reports whether the cells below the headings are whole numbers as of a boat's list, and
// not the numbers of the lines.
func (l *layout) counts(column int) bool {
	cells, rising := 0, true
	last := 0
	for i := range l.sheet.rows[l.head+1:] {
		text := l.sheet.rows[l.head+1+i].cell(column).text
		if text == "" {
			continue
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < 0 || n > mostCounted {
			return false
		}
		rising = rising && n > last
		last, cells = n, cells+1
	}
	return cells > 1 && !rising
}

// mostCounted is the most pieces of one thing that a boat buys (judgement).
const mostCounted = 500

func headed(heading string) string {
	if heading == "" {
		return ""
	}
	return fmt.Sprintf(" (%q)", heading)
}

// plainHead reports whether a row names no thing and yet is one of headings: how many and
// how much, without a figure in it, over rows that have some.
func plainHead(s *tableSheet, at int, columns map[Role][]int) bool {
	if len(columns) < 2 || len(columns[RoleQuantity])+len(columns[RolePrice])+len(columns[RoleTotal]) == 0 {
		return false
	}
	for _, c := range s.rows[at].cells {
		if c.number || strings.ContainsFunc(c.text, unicode.IsDigit) {
			return false
		}
	}
	l := layout{sheet: s, head: at, columns: columns}
	for k := range s.rows[at].cells {
		if l.looksOf(k).describes() {
			return true
		}
	}
	return false
}
