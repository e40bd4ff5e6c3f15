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
		looks: func(col int, text string) look {
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
		},
	}
	cares := map[string]int{}
	short := strings.NewReplacer(" of 12 mm tape (about ", " (", " past hand tight", "") // as the sheet says at its head
	for i := range b.c.Joints {
		j := &b.c.Joints[i]
		how := j.Closes
		switch {
		case stops(j.Verdict):
			how = "STOP: " + strings.ReplaceAll(j.Verdict, "-", " ") + ": " + j.Reason
		case strings.ReplaceAll(j.Verdict, "-", " ") == "low pressure only":
			how = "LOW PRESSURE ONLY: " + short.Replace(how)
		case how == "":
			how = j.Verdict + ": " + j.Reason
		default:
			how = short.Replace(how)
		}
		if j.Care != "" {
			n, ok := cares[j.Care]
			if !ok {
				n = len(cares) + 1
				cares[j.Care] = n
				l.foot = append(l.foot, fmt.Sprintf("Care %d: %s.", n, strings.TrimSuffix(j.Care, ".")))
			}
			if how = strings.TrimSuffix(how, "."); strings.Contains(short.Replace(strings.ToLower(j.Care)), strings.ToLower(how)) {
				how = fmt.Sprintf("care %d", n) // which says it
			} else {
				how += fmt.Sprintf("; care %d", n)
			}
		}
		worst := j.WorstBar
		if j.Below {
			worst = strings.TrimSpace(worst + " B")
		}
		l.rows = append(l.rows, listRow{j.key(), []string{j.Number, j.A + " - " + j.B + "\n" + ends(j.EndA, j.EndB), how, j.HandTurns, worst}})
	}
	l.foot = append(l.foot, "B: below the waterline.")
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
