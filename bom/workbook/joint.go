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
		name: jointsName, title: "Joints: the make-up card", tab: middleColor, least: 15,
		about: "Write the number on a tag at the joint. Never tighten a joint under pressure. The straw-coloured boxes are for whoever makes it.",
		columns: []column{
			{title: "No.", width: 5}, {title: "Joint and its ends", width: 43}, {title: "What closes it, and how to make it up", width: 36},
			{title: "Turns by hand", width: 7}, {title: "Worst", width: 8}, {title: "Below", width: 6.5}, {title: "Done", width: 6, straw: true}, {title: "By whom", width: 10, straw: true},
		},
		looks: func(col int, text string) look {
			switch {
			case col == 0:
				return tagLook
			case col == 2 && strings.HasPrefix(text, "STOP: "), text == "no bound":
				return stopLook
			case col == 2 && strings.HasPrefix(text, "LOW PRESSURE ONLY: "):
				return warnLook
			case col >= 3 && col <= 5:
				return look{wrap: true, border: true, mid: true}
			}
			return wordsLook
		},
	}
	cares := map[string]int{}
	for i := range b.c.Joints {
		j := &b.c.Joints[i]
		how := j.Closes
		switch {
		case stops(j.Verdict):
			how = "STOP: " + strings.ReplaceAll(j.Verdict, "-", " ") + ": " + j.Reason
		case strings.ReplaceAll(j.Verdict, "-", " ") == "low pressure only":
			how = "LOW PRESSURE ONLY: " + how
		case how == "":
			how = j.Verdict + ": " + j.Reason
		}
		if j.Care != "" {
			n, ok := cares[j.Care]
			if !ok {
				n = len(cares) + 1
				cares[j.Care] = n
				l.foot = append(l.foot, fmt.Sprintf("Care %d: %s.", n, strings.TrimSuffix(j.Care, ".")))
			}
			how += fmt.Sprintf("; care %d", n)
		}
		ends := j.EndA + " in " + j.EndB
		if j.EndA == j.EndB {
			ends = "both " + j.EndA
		}
		below := ""
		if j.Below {
			below = "BELOW"
		}
		l.rows = append(l.rows, listRow{j.key(), []string{j.Number, j.A + " - " + j.B + "\n" + ends, how, j.HandTurns, j.WorstBar, below}})
	}
	return b.list(l)
}

// stops reports whether a joint of that verdict does not hold.
func stops(verdict string) bool {
	switch strings.ReplaceAll(verdict, "-", " ") {
	case "leaks", "binds", "loose", "will not start", "same sex":
		return true
	}
	return false
}
