package workbook

import (
	"fmt"
	"slices"
	"strings"
)

// details says of each line what did not fit on the sheet to buy by.
func (b *book) details() error {
	l := plainList{
		name: detailsName, title: "Details: why so many, and where they go", tab: middleColor,
		about: "Need = placed + planned changes + spare + extra - aboard, the order is whole packs; (1) is a reason for spares, below.",
		columns: []column{
			{title: "Item", width: 19}, {title: "Shop", width: 6.5}, {title: "Need, and why so many", width: 21}, {title: "Must hold", width: 15},
			{title: "It holds", width: 21}, {title: "Lead", width: 7.5}, {title: "Joints it serves", width: 31},
		},
		looks: func(col int, text string) look {
			if col == 2 {
				return look{wrap: true, border: true, format: "@"}
			}
			return strongFirst(col, text)
		},
	}
	if len(b.carry.now.details) > 0 {
		l.columns = append(l.columns, column{title: changedTitle, width: 16})
	}
	notes := spareNotes{list: b.c.Spares, notes: map[string]int{}, said: map[string]bool{}}
	for i := range b.c.shops {
		s := &b.c.shops[i]
		for j := range s.Lines {
			x := &s.Lines[j]
			key := lineKey(s.ID, x.Key)
			l.rows = append(l.rows, listRow{key, []string{
				x.Item, s.ID, s.lines[j].why() + notes.of(x.Item), holds(x.RatingNeeded), x.RatingFound, x.Lead, x.Joints, b.carry.now.details[key],
			}})
		}
	}
	for i := range b.c.Spares { // of what is on no line
		if s := &b.c.Spares[i]; !notes.said[s.Item] {
			cells := make([]string, len(l.columns))
			cells[0], cells[2] = s.Item, s.Count+" spare"+notes.of(s.Item)
			l.rows = append(l.rows, listRow{"spare|" + clean(s.Item) + "|" + s.Rule, cells})
		}
	}
	for group := range slices.Chunk(notes.foot, notesTogether) {
		l.foot = append(l.foot, strings.Join(group, "   "))
	}
	return b.list(l)
}

// notesTogether is how many reasons for spares run on in one row: they fill its lines, and it
// stays far below the tallest row that a sheet has.
const notesTogether = 8

// why says how a line's need comes about: "26 = 24 + 2 spare"; where nothing is added, the
// figure alone.
func (q *quantities) why() string {
	need := q.need.String()
	parts := ""
	for _, p := range []struct {
		sign, word string
		n          thousandth
	}{{" + ", " changed", q.planned}, {" + ", " spare", q.spare}, {" + ", " extra", q.extra}, {" - ", " aboard", q.have}} {
		if p.n != 0 {
			parts += p.sign + p.n.String() + p.word
		}
	}
	switch {
	case parts == "":
		return need
	case q.placed == 0 && strings.HasPrefix(parts, " + "):
		if rest := strings.TrimPrefix(parts, " + "); strings.Count(parts, " + ")+strings.Count(parts, " - ") == 1 {
			return rest
		}
		return need + " = " + strings.TrimPrefix(parts, " + ")
	}
	return need + " = " + q.placed.String() + parts
}

// holds shortens what a part must hold: "58, worst 70 bar".
func holds(needed string) string {
	normal, worst, ok := strings.Cut(needed, " bar normal, ")
	if rest, bar := strings.CutSuffix(worst, " bar worst"); ok && bar {
		return normal + ", worst " + rest + " bar"
	}
	return needed
}

// changedTitle heads the column that says what changed in a line since the book was last
// issued. A book without such a line has no such column.
const changedTitle = "Changed since"

// spareNotes numbers the reasons for spares: they stand once, under the list.
type spareNotes struct {
	list  []Spare
	notes map[string]int
	said  map[string]bool
	foot  []string
}

// of is the numbers of the reasons at an item's first line: " (3, 9)"; "" for none.
func (n *spareNotes) of(item string) string {
	if n.said[item] {
		return ""
	}
	n.said[item] = true
	var out []string
	for i := range n.list {
		if n.list[i].Item == item {
			out = append(out, fmt.Sprint(n.say(&n.list[i])))
		}
	}
	if len(out) == 0 {
		return ""
	}
	return " (" + strings.Join(out, ", ") + ")"
}

func (n *spareNotes) say(s *Spare) int {
	why := s.Rule + ": " + s.Why
	k, ok := n.notes[why]
	if !ok {
		k = len(n.notes) + 1
		n.notes[why] = k
		n.foot = append(n.foot, fmt.Sprintf("(%d) %s", k, why))
	}
	return k
}
