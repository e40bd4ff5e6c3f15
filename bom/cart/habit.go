package cart

import (
	"math"
	"strconv"
	"strings"
	"sync"

	"handtight/pressure/pattern"
)

// habit is a way of writing that shops have and readers of ends do not know: what it is and what
// is meant. The table holds an example of each, and a test holds the two together.
type habit struct {
	form    *pattern.Pattern
	becomes string
}

var habits = sync.OnceValue(func() []habit {
	var out []habit
	for _, r := range readTable("habit.csv") {
		out = append(out, habit{pattern.New(r[0]), r[1]})
	}
	return out
})

// plainly writes a shop's habits as they are meant: NPT x2 is two ends alike, 19-19 mm is no range
// but two tails, and 1-11 l/min is no size.
func plainly(text string) string {
	if !strings.ContainsAny(text, "0123456789") {
		return text
	}
	text = bareBehind.ReplaceAllString(bareSize.ReplaceAllString(doubled(text), "$1 mm$2"), "$1 mm $2")
	for _, h := range habits() {
		text = h.form.ReplaceAllString(text, h.becomes)
	}
	return once(text)
}

// bareSize is a figure that is called an inside or an outside and has no unit: Ø int. 19, ext. 10 /
// int. 8 mm. Inches have a stroke or a sign behind them.
var bareSize = pattern.New(`(?i)((?:^|[^\pL])(?:` + innerWord + `|` + outerWord + `)` + joinFront + `[0-9]{1,2}(?:[.,][0-9])?)(\s*(?:[,;)]|/\s*[^0-9\s]|$))`)

// bareBehind is the same with the word behind it: ø25 int.
var bareBehind = pattern.New(`(?i)((?:^|\s)(?:ø|diam\.?)\s?[0-9]{1,2}(?:[.,][0-9])?)\s*((?:` + innerWord + `|` + outerWord + `)(?:\s*[,;)]|\s*$))`)

// flowSpan is a range of flow, whose first figure is no size of an end.
var flowSpan = pattern.New(`(?i)(^|[^0-9.,/])[0-9]+(?:[.,][0-9]+)?\s*(?:-|–|—|à|a|to|bis|tot|÷|\.\.\.?|…)\s*[0-9]+(?:[.,][0-9]+)?\s*(?:(?:l|lt|gal)\s*/\s*(?:min|mn|h|u|std)\b|lpm|lph|gpm|gph|m3/h|m³/h)`)

// doubled writes 19-19 mm as 19 mm x 19 mm: a range has two figures that differ.
func doubled(text string) string {
	return doubledForm.ReplaceAllStringFunc(text, func(s string) string {
		m := doubledForm.FindStringSubmatch(s)
		if m[2] != m[3] {
			return s
		}
		return m[1] + m[2] + " mm x " + m[3] + " mm" + m[4]
	})
}

var doubledForm = pattern.New(`(?i)(^|[^0-9.,/x×-])([0-9]{1,2}(?:[.,][0-9])?)\s*[-–+]\s*([0-9]{1,2}(?:[.,][0-9])?)\s*(?:mm)?([\s,;)]|$)`)

// once takes out what says a size before it again: of 3/4 HB (19MM) the millimetres, of a hose of
// 1/2" (13 mm) the inches, of JIC 9/16 (-6) the dash. What does not agree stays, and is seen.
func once(text string) string {
	if m := dashAgain.FindStringSubmatchIndex(text); m != nil && dashOf[text[m[2]:m[3]]] == text[m[6]:m[7]] {
		text = text[:m[4]] + text[m[5]:]
	}
	m := againForm.FindStringSubmatchIndex(text)
	if m == nil || ofThread.MatchString(text[m[7]:]) {
		return text
	}
	inch := float64(inchesOf(text[m[2]:m[3]]))
	mm, err := strconv.ParseFloat(strings.Replace(text[m[8]:m[9]], ",", ".", 1), 64)
	switch {
	case err != nil || math.Abs(inch-mm) > sameSlack:
		return text
	case m[4] < 0:
		return text[:m[2]] + text[m[8]:m[9]] + " mm" + text[m[7]:]
	}
	return text[:m[6]] + text[m[7]:]
}

// sameSlack is how far millimetres in brackets may be from the inches that they say again, in
// millimetres: 12 mm and 13 mm both stand behind 1/2 (common practice).
const sameSlack = 1.0

var againForm = pattern.New(`(?i)(?:^|[^0-9.,/-])([1357]/(?:2|4|8|16)|1[ -][13]/[24]|1)\s*(?:"|″|”|''|in\b|inch\b)?\s*(hb|hose ?barbs?|barbs?|hose ?tails?|hose)?\s*(\(\s*([0-9]{1,2}(?:[.,][0-9])?)\s*mm\s*\))`)

// dashOf are the dashes of 37 degree cones by the size of the thread. Source: SAE J514, as memory
// has it; package threads has the same in its table.
var dashOf = map[string]string{"7/16": "4", "1/2": "5", "9/16": "6", "3/4": "8", "7/8": "10", "1-1/16": "12", "1-5/16": "16"}

var dashAgain = pattern.New(`(?i)(?:^|[^0-9.,/-])([1379]/16|[137]/[248]|1-[15]/16)(?:-1[1-9])?\s*(?:"|″|”|'')?\s*(?:unf?)?\s*(?:jic)?\s*(\(\s*-\s?0?([0-9]{1,2})\s*\))`)
