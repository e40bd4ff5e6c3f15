package workbook

import (
	"slices"
	"strings"
)

// Some columns of the joint card: those of figures, and the fitter's own.
const (
	jointNumber = 0
	jointTurns  = 8
	jointWorst  = 9
	jointBears  = 10
	jointDone   = 12
)

var jointColumns = slices.Concat([]column{
	{title: "No.", width: 6.5}, {title: "Run", width: 13}, {title: "Joint", width: 22}, {title: "First end", width: 20},
	{title: "Second end", width: 20}, {title: "Verdict", width: 13}, {title: "Why", width: 32},
	{title: "What closes it, and how to make it up", width: 36}, {title: "Turns by hand", width: 9},
	{title: "Worst pressure", width: 10}, {title: "Threads bear about, estimate", width: 11}, {title: "Below the waterline", width: 10},
	{title: "Done", width: 8}, {title: "By whom", width: 14},
}, hiddenColumns)

// joints writes the make-up card: one row a joint, with an empty box for done
// and by whom.
func (b *book) joints() error {
	s := b.newSheet("Joints", jointColumns, frame{tab: middleColor, headRow: 3, repeat: 3, freezeCol: 1, locked: true})
	if n := len(b.c.Joints); n > 0 {
		s.choices(span(jointDone, 4, 3+n), "yes")
	}
	s.title("Joints: the make-up card", "Write the number on a tag at the joint. Never tighten a joint under pressure. "+
		"The straw-coloured boxes are for whoever makes the joint.")
	s.head()
	for i := range b.c.Joints {
		s.oneJoint(&b.c.Joints[i])
	}
	if len(b.c.Joints) == 0 {
		s.text(0, b.st.id(subLook), "The build has no joint.")
		s.endRow(16)
	}
	return s.finish()
}

func (s *sheet) oneJoint(j *Joint) {
	id, mark := s.b.st.id, s.b.placed.joint(j)
	words, typed := id(wordsLook), id(typedLook)
	middle := id(look{wrap: true, border: true, mid: true})
	below, belowStyle := "no", middle
	if j.Below {
		below, belowStyle = "BELOW", id(look{wrap: true, border: true, mid: true, bold: true})
	}
	lines := 1
	for i, part := range []struct {
		style int
		text  string
	}{
		{id(tagLook), j.Number}, {words, j.Run}, {id(strongLook), j.A + " to " + j.B}, {words, j.EndA}, {words, j.EndB},
		{id(verdictLook(j.Verdict)), j.Verdict}, {words, j.Reason}, {words, j.Closes}, {middle, j.HandTurns},
		{middle, j.WorstBar}, {middle, j.Bears}, {belowStyle, below}, {typed, mark.Done}, {typed, mark.By},
	} {
		if i == jointNumber || i == jointTurns || i == jointWorst || i == jointBears {
			s.auto(i, part.style, part.text)
		} else {
			s.text(i, part.style, part.text)
		}
		lines = s.tallest(i, part.text, lines)
	}
	s.keys(kindJoint, "", j.key(), "")
	s.endRow(max(rowHeight(lines, fontSize), 22))
}

// verdictLook makes the verdicts that stop an order stand out.
func verdictLook(verdict string) look {
	switch strings.ReplaceAll(verdict, "-", " ") {
	case "leaks", "binds", "loose", "will not start", "same sex":
		return stopLook
	case "low pressure only":
		return warnLook
	}
	return strongLook
}
