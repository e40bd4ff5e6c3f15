package workbook

import "github.com/xuri/excelize/v2"

// The colours: slate heads on white, straw for what the buyer fills in, and a
// strong one only where something is wrong. No meaning hangs on colour alone.
const (
	inkColor    = "1F2A30"
	faintColor  = "7A868C"
	headFill    = "2F4858"
	shopFill    = "D5E0E3"
	sumFill     = "F0F4F5"
	typedFill   = "FFF8DC"
	stopColor   = "A32A22"
	stopFill    = "F6DEDB"
	warnColor   = "7A5200"
	warnFill    = "FBEBC8"
	lineColor   = "C3CDD1"
	linkColor   = "1B4F72"
	whiteColor  = "FFFFFF"
	asideColor  = "B9822B"
	quietColor  = "8FA3AC"
	middleColor = "5C7A87"
)

// look is a cell's style, comparable so that each is made once.
type look struct {
	fill, color  string
	bold, italic bool
	size         float64 // points; 0 is the sheet's own
	left, right  bool    // to one side, numbers too; texts are left by themselves
	mid, indent  bool    // centred; a little in from the left
	wrap         bool
	under, cross bool   // underlined, struck out: as italic, only where the buyer made it so
	typed        bool   // unlocked, for the buyer
	format       string // number format; "" is general
	border       bool
	low          bool // at the foot of the cell, for heads
}

// styles makes looks into the style numbers of one book, each once.
type styles struct {
	f     *excelize.File
	ids   map[look]int
	looks map[int]look
	err   error
}

// id gives the number of a look. After a failure it gives 0 and keeps the error.
func (s *styles) id(l look) int {
	if id, ok := s.ids[l]; ok || s.err != nil {
		return id
	}
	id, err := s.f.NewStyle(l.style())
	if err != nil {
		s.err = err
		return 0
	}
	s.ids[l], s.looks[id] = id, l
	return id
}

func (l look) style() *excelize.Style {
	color, size := l.color, l.size
	if color == "" {
		color = inkColor
	}
	if size == 0 {
		size = fontSize
	}
	st := &excelize.Style{
		Font:       &excelize.Font{Family: fontName, Size: size, Color: color, Bold: l.bold, Italic: l.italic},
		Alignment:  &excelize.Alignment{Vertical: "top", WrapText: l.wrap},
		Protection: &excelize.Protection{Locked: !l.typed},
	}
	if l.under {
		st.Font.Underline = "single"
	}
	st.Font.Strike = l.cross
	if l.low {
		st.Alignment.Vertical = "center"
	}
	if l.right {
		st.Alignment.Horizontal = "right"
	}
	if l.left || l.indent {
		st.Alignment.Horizontal = "left"
	}
	if l.indent {
		st.Alignment.Indent = 1
	}
	if l.mid {
		st.Alignment.Horizontal = "center"
	}
	if l.fill != "" {
		st.Fill = excelize.Fill{Type: "pattern", Pattern: 1, Color: []string{l.fill}}
	}
	if l.format != "" {
		st.CustomNumFmt = &l.format
	}
	if l.border {
		for _, side := range []string{"left", "right", "top", "bottom"} {
			st.Border = append(st.Border, excelize.Border{Type: side, Color: lineColor, Style: 1})
		}
	}
	return st
}

// The looks that more than one sheet uses.
var (
	titleLook  = look{bold: true, size: 13}
	subLook    = look{color: faintColor}
	headLook   = look{fill: headFill, color: whiteColor, bold: true, wrap: true, low: true, border: true}
	keyLook    = look{format: "@"}
	wordsLook  = look{wrap: true, border: true}
	strongLook = look{wrap: true, border: true, bold: true}
	tagLook    = look{border: true, bold: true, size: 10, mid: true}
	numberLook = look{border: true, mid: true, format: "General"}
	typedLook  = look{wrap: true, border: true, typed: true, fill: typedFill, format: "@"}
	stopLook   = look{wrap: true, border: true, bold: true, color: stopColor, fill: stopFill}
	warnLook   = look{wrap: true, border: true, bold: true, color: warnColor, fill: warnFill}
)
