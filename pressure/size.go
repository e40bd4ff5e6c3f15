package pressure

import (
	"strconv"
	"strings"

	"handtight/pressure/pattern"
)

// size is a fitting's size as a number, and which numbers it may be compared with.
type size struct {
	unit  sizeUnit
	value float64
	name  string // of a metric thread
}

type sizeUnit uint8

const (
	plainSize  sizeUnit = iota + 1 // "1/2", "12": inches of pipe, or millimetres of tube
	inchSize                       // 3/8 in
	mmSize                         // 12 mm, 12L
	dashSize                       // -6
	threadSize                     // M22x1.5
)

var (
	dashForm   = pattern.New(`^-\s*(\d{1,2})$`)
	threadForm = pattern.New(`^m\s*(\d+(?:\.\d+)?)\s*x\s*(\d+(?:\.\d+)?)$`)
	mmForm     = pattern.New(`^(\d+(?:\.\d+)?)\s*(?:mm|l|s|ll)$`)
	partForm   = pattern.New(`^(?:(\d+)[\s-]+)?(\d+)/(\d+)$`)
	wholeForm  = pattern.New(`^\d+(?:\.\d+)?$`)
	halves     = strings.NewReplacer("½", " 1/2", "¼", " 1/4", "¾", " 3/4", "⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "×", "x", "″", `"`, "”", `"`, "''", `"`)
)

// readSize reads a size as designations write it: `1/2`, `1 1/4`, `3/8"`,
// `19 mm`, `12L`, `-8`, `M22x1.5`, `G 1/2`.
func readSize(text string) (size, bool) {
	t := strings.ToLower(strings.TrimSpace(halves.Replace(text)))
	t = strings.TrimSpace(strings.TrimPrefix(strings.TrimPrefix(t, "dn"), "g"))
	if m := dashForm.FindStringSubmatch(t); m != nil {
		return size{unit: dashSize, value: decimal(m[1])}, true
	}
	if m := threadForm.FindStringSubmatch(t); m != nil {
		return size{unit: threadSize, name: "m" + m[1] + "x" + m[2]}, true
	}
	if m := mmForm.FindStringSubmatch(t); m != nil {
		return size{unit: mmSize, value: decimal(m[1])}, true
	}
	unit := plainSize
	for _, mark := range []string{`"`, "inch", "in"} {
		if cut, ok := strings.CutSuffix(t, mark); ok {
			t, unit = strings.TrimSpace(cut), inchSize
			break
		}
	}
	if m := partForm.FindStringSubmatch(t); m != nil && decimal(m[3]) > 0 {
		return size{unit: unit, value: decimal("0"+m[1]) + decimal(m[2])/decimal(m[3])}, true
	}
	if wholeForm.MatchString(t) {
		return size{unit: unit, value: decimal(t)}, true
	}
	return size{}, false
}

// decimal reads figures that a pattern has found to be a number.
func decimal(s string) float64 {
	v, _ := strconv.ParseFloat(s, 64)
	return v
}

// within reports whether s lies in a row's range. A size without a unit is taken
// in the row's own, and a dash as sixteenths of an inch where the row is in inches of tube.
func (s size) within(from, to size) bool {
	if s.unit == threadSize || from.unit == threadSize {
		return s == from
	}
	if s.unit == dashSize && from.unit == inchSize {
		s = size{unit: inchSize, value: s.value / 16}
	}
	same := s.unit == from.unit ||
		s.unit == plainSize && (from.unit == inchSize || from.unit == mmSize) ||
		s.unit == inchSize && from.unit == plainSize
	const hair = 1e-6
	return same && s.value >= from.value-hair && s.value <= to.value+hair
}
