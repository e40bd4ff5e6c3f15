package cart

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"
)

// Role is what a column of a cart holds, named as `--columns` names it.
type Role string

// The roles. RoleNone is a column that is known and of no use here.
const (
	RoleText     Role = "text"
	RoleCode     Role = "code"
	RoleItem     Role = "item" // the build's own id
	RoleQuantity Role = "quantity"
	RoleUnit     Role = "unit"
	RolePack     Role = "pack"
	RolePrice    Role = "price"
	RoleTotal    Role = "total"
	RoleCurrency Role = "currency"
	RoleMaterial Role = "material"
	RoleRating   Role = "rating"
	RoleSize     Role = "size"
	RoleStatus   Role = "status"
	RoleNone     Role = "none"
)

// roles lists the roles that a person may give to a column.
func roles() []Role {
	return []Role{RoleText, RoleCode, RoleItem, RoleQuantity, RoleUnit, RolePack, RolePrice, RoleTotal, RoleCurrency,
		RoleMaterial, RoleRating, RoleSize, RoleStatus}
}

// Columns say which column holds what, by its heading or its number from 1.
type Columns map[Role]string

// ParseColumns reads `text=Benennung,quantity=3`.
//
// Errors: a role that is not known or given twice, or a pair without a column.
func ParseColumns(text string) (Columns, error) {
	out := Columns{}
	for _, pair := range strings.Split(text, ",") {
		role, column, ok := strings.Cut(pair, "=")
		role, column = strings.TrimSpace(role), strings.TrimSpace(column)
		switch {
		case !ok || column == "":
			return nil, fmt.Errorf("%q does not say which column is what: write text=Description,quantity=3", pair)
		case !slices.Contains(roles(), Role(role)):
			return nil, fmt.Errorf("%q is no part of a cart: write one of %s", role, roleList())
		case out[Role(role)] != "":
			return nil, fmt.Errorf("%q is given twice: give it one column", role)
		}
		out[Role(role)] = column
	}
	return out, nil
}

func roleList() string {
	var names []string
	for _, r := range roles() {
		names = append(names, string(r))
	}
	return strings.Join(names[:len(names)-1], ", ") + " or " + names[len(names)-1]
}

// heads are the words of headings by their normal form.
var heads = sync.OnceValue(func() map[string]Role {
	out := map[string]Role{}
	for _, r := range readTable("headings.csv") {
		for _, w := range strings.Split(r[1], "|") {
			if _, taken := out[normal(w)]; !taken && normal(w) != "" {
				out[normal(w)] = Role(r[0])
			}
		}
	}
	return out
})

// longestHeading is the most words that a heading has.
const longestHeading = 8

// roleOf tells what a heading names: the whole of it, or the longest run of its words
// that is known. Whole is better than a part, and the weight says so.
func roleOf(heading string) (Role, int) {
	key := normal(strings.ReplaceAll(heading, "#", " no "))
	if r, ok := heads()[key]; ok {
		return r, 1000
	}
	list := strings.Fields(key)
	if len(list) > longestHeading {
		return "", 0 // a sentence
	}
	for n := len(list) - 1; n > 0; n-- {
		for i := 0; i+n <= len(list); i++ {
			phrase := strings.Join(list[i:i+n], " ")
			if r, ok := heads()[phrase]; ok && len(phrase) > 2 && r != RoleNone {
				return r, n*10 + len(phrase)
			}
		}
	}
	return "", 0
}

// headings gives the columns of a row that looks like headings, by role; several
// columns may hold text.
func headings(r *row) map[Role][]int {
	out := map[Role][]int{}
	weight := map[Role]int{}
	for i, c := range r.cells {
		if c.text == "" || c.number {
			continue
		}
		role, w := roleOf(c.text)
		switch {
		case role == "" || role == RoleNone:
			continue
		case role == RoleText || role == RoleSize:
			out[role] = append(out[role], i)
		case w > weight[role] && !(len(out[role]) > 0 && within("gross", c.text)) || w == weight[role] && within("gross", r.text(out[role][0])) && !within("gross", c.text):
			out[role], weight[role] = []int{i}, w
		}
	}
	return out
}

// headWithin is how many rows may stand above the headings.
const headWithin = 60

// layout is a sheet whose columns are known.
type layout struct {
	sheet   *tableSheet
	head    int // index of the row of headings; -1 without one
	columns map[Role][]int
	said    []string // which columns were found by their cells
}

// lay finds the headings of a sheet: of its first rows the one that names most, at
// least what a line is and one thing more.
func lay(s *tableSheet) layout {
	out := layout{sheet: s, head: -1, columns: map[Role][]int{}}
	for i := range s.rows[:min(len(s.rows), headWithin)] {
		cols := headings(&s.rows[i])
		names := len(cols[RoleText]) + len(cols[RoleCode]) + len(cols[RoleItem])
		if (names > 0 || plainHead(s, i, cols)) && len(cols) > max(1, len(out.columns)) {
			out.head, out.columns = i, cols
		}
	}
	out.said = out.byLooks()
	return out
}

// complete reports whether a line's quantity or price can be read.
func (l *layout) complete() bool {
	return len(l.columns[RoleQuantity])+len(l.columns[RolePrice])+len(l.columns[RoleTotal]) > 0
}

// priced reports whether it has prices.
func (l *layout) priced() bool { return len(l.columns[RolePrice])+len(l.columns[RoleTotal]) > 0 }

// override puts the person's columns in place of the found ones.
func (l *layout) override(name string, given Columns) error {
	roles := roles()
	l.numbered(given)
	for _, role := range roles {
		want, ok := given[role]
		if !ok {
			continue
		}
		l.said = nil
		column, found := l.find(want)
		if !found {
			return &ReadError{Cart: name, Reason: fmt.Sprintf("there is no column %q for %s", want, role), Remedy: l.offer()}
		}
		for _, other := range roles {
			l.columns[other] = slices.DeleteFunc(l.columns[other], func(c int) bool { return c == column })
		}
		l.columns[role] = []int{column}
	}
	return nil
}

// numbered takes the rows for lines where the person's numbers say so: what was taken for
// headings has a number where the quantity or the price is, and so is a line.
func (l *layout) numbered(given Columns) {
	if l.head < 0 {
		return
	}
	for _, role := range []Role{RoleQuantity, RolePrice, RoleTotal} {
		n, err := strconv.Atoi(given[role])
		if err != nil {
			continue
		}
		for i := range l.sheet.rows[:l.head+1] {
			if c := l.sheet.rows[i].cell(n - 1); c.number || c.text != "" && !strings.ContainsFunc(c.text, unicode.IsLetter) && strings.ContainsFunc(c.text, unicode.IsDigit) {
				l.head = i - 1
				return
			}
		}
	}
}

// find finds a column by its heading, or by its number. A number is that of a column, and no
// cell of a line.
func (l *layout) find(want string) (int, bool) {
	n, err := strconv.Atoi(want)
	rows := l.sheet.rows[:min(len(l.sheet.rows), headWithin)]
	if l.head >= 0 {
		rows = l.sheet.rows[l.head : l.head+1]
	}
	for i := range rows {
		for k, c := range rows[i].cells {
			if (err != nil || l.head >= 0) && (strings.EqualFold(c.text, want) || normal(want) != "" && normal(c.text) == normal(want)) {
				if l.head < 0 {
					l.head = i
				}
				return k, true
			}
		}
	}
	return n - 1, err == nil && n >= 1 && n <= maxColumns
}

func (l *layout) offer() string {
	var names []string
	if l.head >= 0 {
		for _, c := range l.sheet.rows[l.head].cells {
			if c.text != "" {
				names = append(names, strconv.Quote(c.text))
			}
		}
	}
	if len(names) == 0 {
		return "write its number, counted from 1"
	}
	return "its headings are " + strings.Join(names, ", ") + "; or write its number, counted from 1"
}
