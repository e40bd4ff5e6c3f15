package workbook

import (
	"fmt"
	"slices"
	"strings"

	"handtight/bom/facts"
)

// hoses writes under the joints what is to be cut, and to be had made up: the ends of each
// hose stand with its joints, above.
func (b *book) hoses(s *sheet) {
	s.endRow("", 6)
	s.wide("hoses", "Hoses to cut, and to have made up", titleLook)
	s.wide("hoses about", "Write its name on each piece at both ends before you fit it. Measure aboard once more before you cut.", subLook)
	s.hoseRow("hoses head", []string{"Hose, from and to", "", "It needs", "Planned, mm", "Cut at, mm", "Done", "By whom"}, func(int) look { return headLook })
	said := notes{}
	bend := alike(b.c.Hoses)
	for i := range b.c.Hoses {
		h := &b.c.Hoses[i]
		needs, word := h.Needs, "; note "
		for _, more := range []string{h.How, h.Bend} {
			if more == "" || bend && more == h.Bend {
				continue
			}
			needs, word = needs+word+fmt.Sprint(said.number(more)), ", "
		}
		s.hoseRow("hose|"+clean(h.Name), []string{h.Name + ": " + place(h.From) + " to " + place(h.To), "", strings.TrimPrefix(needs, "; "), strings.TrimSuffix(h.Planned, " mm"), strings.TrimSuffix(h.Cut, " mm")}, func(col int) look {
			if col > 2 {
				return look{wrap: true, border: true, mid: true}
			}
			return wordsLook
		})
	}
	if bend && b.c.Hoses[0].Bend != "" {
		s.wide("hose bend", "Least bend radius of each: "+b.c.Hoses[0].Bend+".", look{})
	}
	for i, text := range said.list {
		s.wide(fmt.Sprint("hose foot|", i), fmt.Sprintf("Note %d: %s.", i+1, text), look{})
	}
}

// hoseRow writes cells into the columns of the joints, the name over the first two.
func (s *sheet) hoseRow(key string, cells []string, looks func(col int) look) {
	lines := 1
	for i := range s.own {
		if i >= len(cells) {
			lines = s.straw(i, s.b.st.id(typedLook), key, lines)
			continue
		}
		width := s.columns[i].width
		if i == 0 {
			width += s.columns[1].width
		}
		s.text(i, s.b.st.id(looks(i)), cells[i])
		if cells[i] != "" {
			lines = max(lines, textLines(cells[i], width, fontSize))
		}
	}
	s.endRow(key, rowHeight(lines, fontSize))
	s.merge(0, 1)
}

// place is an end of a hose without the words for its end: "J1 intake.inboard".
func place(end string) string {
	joint, rest, ok := strings.Cut(end, ", ")
	port, _, _ := strings.Cut(rest, ", ")
	if !ok || port == "" {
		return end
	}
	return joint + " " + port
}

// alike reports whether the same is known of the bend of all hoses.
func alike(list []facts.HoseRow) bool {
	for i := range list {
		if list[i].Bend != list[0].Bend {
			return false
		}
	}
	return true
}

// notes are sentences that stand once, under a table, by number.
type notes struct{ list []string }

func (n *notes) number(text string) int {
	i := slices.Index(n.list, text)
	if i < 0 {
		i, n.list = len(n.list), append(n.list, text)
	}
	return i + 1
}
