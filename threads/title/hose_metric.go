package title

import "handtight/threads"

// nutMetric reads a diameter and a pitch without their M in a line of a hydraulic hose: 18x1,5 beside the grade of a hose is the thread of
// its nut, and no pipe by its outside and its wall. Pitches of fittings are 1.5 and 2 mm (ISO 8434-1, as memory has it).
func (l *line) nutMetric() {
	if l.one || l.seen.figures < 2 || !l.seen.word(classSep) {
		return
	}
	layered := false
	for k := 0; k+2 < len(l.tokens); k++ {
		size, x, pitch := l.tokens[k].figure, &l.tokens[k+1], l.tokens[k+2].figure
		if !size.digits() || size.v < 12 || x.value(classSep) != "x" || !x.glued || !l.tokens[k+2].glued || pitch == nil || pitch.kind != bare || pitch.marked || pitch.v != 1.5 && pitch.v != 2 {
			continue
		}
		if layered = layered || l.layers(); !layered {
			return
		}
		if _, ok := threads.Find(threads.M, metricText(size.v, pitch.v)); !ok {
			continue
		}
		size.kind, size.pitch = metricSize, pitch.v
		l.tokens[k].to = l.tokens[k+2].to
		l.tokens = append(l.tokens[:k+1], l.tokens[k+3:]...)
	}
}
