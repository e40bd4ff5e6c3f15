package title

import (
	"strings"

	"handtight/threads"
)

// saysOutside reports the letters for an outside diameter in a word for a tube: OD, tube OD.
func (l *line) saysOutside(it *token) bool {
	text := " " + string(l.norm[it.from:it.to]) + " "
	return strings.Contains(text, " od ") || strings.Contains(text, " o d ")
}

// otherMeasure asks about an end whose size is said by another measure than such an end goes by: a tail by the outside of a tube, a socket for a tube
// by the tube's inside; and about a push-in part with a stem, which plugs in where the others take a tube. "" if there is nothing to ask.
func (l *line) otherMeasure(c *phrase, ends []threads.End) string {
	if len(ends) == 0 || c.fig == nil {
		return ""
	}
	switch size := strings.TrimSpace(ends[0].Size); {
	case c.outside && ends[0].Family == threads.Barb:
		return "The text says the outside of a tube, and names a tail. Is the " + size + " the bore of the hose that goes over the tail, or the outside of a tube that something else holds? Look at the picture, or ask the shop."
	case c.inner && ends[0].Family == threads.Push && c.end == "PUSH":
		return "The text says the inside of a tube, and push-in ends go by its outside. Is the " + size + " the outside? Ask the shop."
	case ends[0].Family == threads.Push && l.stemmed && len(sizesIn(l.tokens)) == 1:
		return "The text says a stem, which plugs into a push-in end and takes no tube. Is this end of " + size + " the stem or a socket for a tube? Look at the picture, or ask the shop."
	}
	return ""
}
