package title

import "bytes"

// thinnestLayers is the least wall in mm that is written for multilayer pipe: 16 x 2 is the smallest (ISO 21003-2, memory).
const thinnestLayers = 2

// wall reports the wall of a tube given as 15x1.5.
func (l *line) wall(k int, f *figure) bool {
	x, tube := at(l.tokens, k-1), at(l.tokens, k-2)
	if f.whole && f.v < thinnestLayers && l.says("LAYER") && l.threaded() {
		return false // multilayer 32 x 1 male
	}
	if stroke, angle := at(l.tokens, k+1), at(l.tokens, k+2).figure; f.whole && f.v <= 4 && x.value(classSep) == "x" && tube.figure != nil && stroke.mark == '/' && angle != nil && (angle.v == 90 || angle.v == 45) {
		return true // elbow 16x2/90
	}
	if l.pressed && f.whole && !f.marked && f.v <= 4 && x.glued && x.value(classSep) == "x" && l.tokens[k].glued && tube.figure != nil && tube.figure.whole && tube.figure.v >= 14 && tube.figure.v <= 63 {
		return true // press coupling 20x2-16x2
	}
	if !l.is(manifold) && !l.is(many) && !f.frac && !f.marked && f.v > 1 && f.v <= 4 && x.value(classSep) == "x" && tube.figure != nil && tube.figure.whole && !tube.figure.marked && tube.figure.v >= 14 && at(l.tokens, k+1).value(classSep) == "x" {
		if thread := at(l.tokens, k+2).figure; thread != nil && (thread.frac || thread.marked) {
			return true // 20x2 x1/2": the pipe with its wall, and the thread
		}
	}
	if dash := at(l.tokens, k+1); f.whole && f.v >= 2 && f.v <= 4 && !f.marked && x.value(classSep) == "x" && x.glued && tube.figure != nil && tube.figure.whole && tube.figure.v >= 14 && tube.figure.v <= 32 && dash.mark == '-' && dash.glued && at(l.tokens, k+2).figure != nil && at(l.tokens, k+2).figure.frac {
		return true // 16x2-1/2"
	}
	decimal := bytes.IndexByte(l.norm[l.tokens[k].from:l.tokens[k].to], '.') > 0
	if decimal && f.whole && !f.marked && f.v <= 4 && x.value(classSep) == "x" && tube.figure != nil && tube.figure.whole && !tube.figure.marked && tube.figure.v >= 10 {
		return true // 16x2.0: no thread of 2 inches is written so
	}
	if f.whole && !f.marked && f.v >= 2 && f.v <= 4 && x.glued && x.value(classSep) == "x" && l.tokens[k].glued && tube.figure != nil && tube.figure.kind == mmSize && tube.figure.v >= 14 && tube.figure.v <= 32 && l.takesTubes() {
		return true // compression 16x2: no tube so small comes with a thread of 2 inches
	}
	glued := x.glued && l.tokens[k].glued
	if f.whole || f.marked || f.v > 4 || !glued && (!decimal || x.glued || l.tokens[k].glued) || x.value(classSep) != "x" || tube.figure == nil || tube.figure.frac || !glued && tube.figure.v <= largestInch {
		return false
	}
	if at(l.tokens, k-3).value(classEnd) == "TUBE" {
		return true
	}
	next := at(l.tokens, k+1)
	return decimal && glued && tube.figure.v >= 6 && (tube.figure.kind == bare || tube.figure.kind == mmSize) && next.is(classFamily) == nil && next.is(classSex) == nil && !l.one && !l.is(hose) && !l.namesHose() // 51x1,5: no inches are written so
}

// pipeOutside reads the outside diameter of a Vietnamese pipe: the thread that
// goes with it where the line speaks of one, else the pipe's own end.
func (l *line) pipeOutside(f *figure) figureKind {
	v := l.lex.phis[int(f.v)]
	if v == 0 || !f.whole || !l.threaded() {
		return mmSize
	}
	f.v = v
	return dnSize
}
