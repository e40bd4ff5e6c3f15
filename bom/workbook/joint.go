package workbook

import (
	"fmt"
	"strings"
)

// key finds a joint again by its two ports and their ends, not by its number: a
// number moves when a joint is added, and a joint whose ends were changed is to
// be made up again.
func (j *Joint) key() string {
	return clean(strings.Join([]string{j.A, j.B, j.EndA, j.EndB}, " | "))
}

// joints writes the make-up card: one row a joint, with an empty box for done
// and by whom. What is said of many joints alike stands once, under them.
func (b *book) joints() error {
	l := plainList{
		name: jointsName, title: "Joints: the make-up card", tab: middleColor,
		about: "Write the number on a tag at the joint. Never tighten a joint under pressure. Turns and flats are past hand tight; wraps are of 12 mm tape, with about its length. The straw-coloured boxes are for whoever makes it.",
		columns: []column{
			{title: "No.", width: 5}, {title: jointTitle, width: 46, fold: true}, {title: howTitle, width: 40},
			{title: "Turns by hand", width: 8}, {title: "Worst", width: 8.5}, {title: "Done", width: 6, straw: true}, {title: "By whom", width: 8.5, straw: true},
		},
		looks: jointLook,
	}
	cares := cares{number: map[string]int{}}
	for i := range b.c.Joints {
		j := &b.c.Joints[i]
		worst := j.WorstBar
		if j.Below {
			worst = strings.TrimSpace(worst + " B")
		}
		l.rows = append(l.rows, listRow{j.key(), []string{j.Number, j.A + " - " + j.B + "\n" + ends(j.EndA, j.EndB), cares.with(j.Care, j.how()), j.HandTurns, worst}})
	}
	l.foot = append(cares.foot, "B: below the waterline.")
	l.more = 13 * float64(len(b.c.Assumptions))
	if len(b.c.Hoses) > 0 {
		l.more += 60 + 13*float64(len(b.c.Hoses))
	}
	l.under = func(s *sheet) {
		if len(b.c.Hoses) > 0 {
			b.hoses(s)
		}
		s.rests()
	}
	return b.list(l)
}

// jointLook is the look of a cell of the card.
func jointLook(col int, text string) look {
	switch {
	case col == 0:
		return tagLook
	case col == 2 && strings.HasPrefix(text, "STOP: "), text == "no bound":
		return stopLook
	case col == 2 && strings.HasPrefix(text, "LOW PRESSURE ONLY: "):
		return warnLook
	case col == 3, col == 4:
		return look{wrap: true, border: true, mid: true}
	}
	return wordsLook
}

// shortCare leaves out what the sheet says at its head.
var shortCare = strings.NewReplacer(" of 12 mm tape (about ", " (", " past hand tight", "")

// how says what closes a joint and how to make it up, or what is wrong with it.
func (j *Joint) how() string {
	verdict := strings.ReplaceAll(j.Verdict, "-", " ")
	switch {
	case stops(j.Verdict):
		return "STOP: " + verdict + ": " + j.Reason
	case verdict == "low pressure only":
		return "LOW PRESSURE ONLY: " + shortCare.Replace(j.Closes)
	case j.Closes == "":
		return j.Verdict + ": " + j.Reason
	}
	return shortCare.Replace(j.Closes)
}

// cares are what is to be minded at joints, each said once, under the list.
type cares struct {
	number map[string]int
	foot   []string
}

// with adds the number of a care to how a joint is made up; that alone where the care says it all.
func (c *cares) with(care, how string) string {
	if care == "" {
		return how
	}
	n, ok := c.number[care]
	if !ok {
		n = len(c.number) + 1
		c.number[care] = n
		c.foot = append(c.foot, fmt.Sprintf("Care %d: %s.", n, strings.TrimSuffix(care, ".")))
	}
	how = strings.TrimSuffix(how, ".")
	if strings.Contains(shortCare.Replace(strings.ToLower(care)), strings.ToLower(how)) {
		return fmt.Sprintf("care %d", n)
	}
	return how + fmt.Sprintf("; care %d", n)
}

// The heads of the columns that hoses share.
const (
	jointTitle = "Joint and its ends"
	howTitle   = "What closes it, and how to make it up"
)

// ends says both ends of a joint, what is the same of them once.
func ends(a, b string) string {
	if a == b {
		return "both " + a
	}
	x, y := strings.Fields(a), strings.Fields(b)
	n := 0
	for n < len(x)-1 && n < len(y)-1 && x[n] == y[n] {
		n++
	}
	if n == 0 || x[n] == y[n] { // nothing would be left of one of them
		return a + " in " + b
	}
	alike := strings.Join(x[:n], " ")
	x, y = x[n:], y[n:]
	if i, k := len(x)-1, len(y)-1; i > 0 && k > 0 && x[i] == y[k] { // "female plastic", "male plastic"
		alike += " " + x[i]
		x, y = x[:i], y[:k]
	}
	return alike + ": " + strings.Join(x, " ") + " in " + strings.Join(y, " ")
}

// stops reports whether a joint of that verdict does not hold.
func stops(verdict string) bool {
	switch strings.ReplaceAll(verdict, "-", " ") {
	case "leaks", "binds", "loose", "will not start", "same sex":
		return true
	}
	return false
}
