package title

import (
	"bytes"
	"unicode"
	"unicode/utf8"

	"golang.org/x/text/unicode/norm"
)

// spelling is a text brought to one alphabet of marks: lower case, no accents,
// one sort of quote, fraction, dash and multiplication sign. at gives the place
// in the text as written of each byte.
type spelling struct {
	as   string
	norm []byte
	at   []int32
	pad  *pad

	twos    twos
	uneven  bool // blanks stand together, or are no blanks
	blended bool // letters and digits run together somewhere
	broken  bool // it has a sign that is no UTF-8
}

// normalise spells a text out. Marks that stand for several things are decided
// by their neighbours: a comma between digits is a decimal sign, a Cyrillic К, М
// or х beside a figure is the Latin letter.
func normalise(text string) *spelling {
	p := takePad(len(text))
	s := &p.spelling
	*s = spelling{as: text, norm: p.norm, at: p.at, pad: p}
	prev := ' '
	for i := s.putPlain(text, 0); i < len(text); i = s.putPlain(text, i) {
		if i > 0 && text[i-1] < utf8.RuneSelf {
			prev = rune(text[i-1])
		}
		r, width := utf8.DecodeRuneInString(text[i:])
		here := i
		i += width
		if r == voicedMark || r == halfVoicedMark {
			if narrowKana(prev) {
				continue // it is in the sign before it
			}
		}
		next, _ := utf8.DecodeRuneInString(text[i:])
		s.spell(here, wideKana(r, next), prev, next)
		prev = r
	}
	s.at = append(s.at, int32(len(text)))
	s.marks()
	s.joinInitials()
	s.lookOver()
	return s
}

// putPlain spells the signs from i on that are spelt as they stand, up to the first that is more to decide, and gives its place.
func (s *spelling) putPlain(text string, i int) int {
	norm, at := s.norm, s.at
	for ; i < len(text) && asSpelt[text[i]] != 0; i++ {
		norm, at = append(norm, asSpelt[text[i]]), append(at, int32(i))
	}
	s.norm, s.at = norm, at
	return i
}

// asSpelt are the signs that are spelt as they stand, or by their small letter; 0 for a sign that is more to decide.
var asSpelt = func() (out [utf8.RuneSelf << 1]byte) {
	for b := byte(1); b < utf8.RuneSelf; b++ {
		out[b] = byte(unicode.ToLower(rune(b)))
	}
	for _, b := range []byte("*_[]") {
		out[b] = 0
	}
	return out
}()

// lookOver notes what the spelling holds, for those who would look through it for what it does not hold.
func (s *spelling) lookOver() {
	held, sorts, twice, last, before := twos(0), byte(0), byte(0), ofBlank, byte(' ')
	for _, b := range s.norm {
		sort := sortOf[b]
		held.add(before, b)
		sorts, twice = sorts|sort, twice|sort&last
		s.blended = s.blended || sort|last == ofDigit|ofLetter
		last, before = sort, b
	}
	if s.twos = held; sorts&ofControl != 0 || twice&ofBlank != 0 {
		s.uneven, s.twos = true, ^twos(0) // what stands together where the blanks are evened out is not known
	}
}

// The sorts of bytes, of which sortOf gives one each, or none for a mark.
const (
	ofDigit byte = 1 << iota
	ofLetter
	ofBlank
	ofControl
)

var sortOf = func() (out [256]byte) {
	for b := range out {
		switch c := byte(b); {
		case digit(c):
			out[b] = ofDigit
		case alnum(c):
			out[b] = ofLetter
		case c == ' ':
			out[b] = ofBlank
		case c < ' ':
			out[b] = ofControl
		}
	}
	return out
}()

// The marks that stand behind a narrow kana and are one sign with it: ﾊﾞ is バ.
const (
	voicedMark     = 'ﾞ'
	halfVoicedMark = 'ﾟ'
)

// narrowKana reports a kana of half the width, as Japanese stock lists of one byte a sign have them. Source: JIS X 0201, Unicode's
// block of half-width forms.
func narrowKana(r rune) bool { return 'ｦ' <= r && r <= 'ﾝ' }

// wideKana gives a narrow kana, with the mark behind it, as the sign that the words of the lexicon are written with.
func wideKana(r, next rune) rune {
	if !narrowKana(r) {
		return r
	}
	text := string(r)
	if next == voicedMark || next == halfVoicedMark {
		text += string(next)
	}
	wide, _ := utf8.DecodeRuneInString(norm.NFKC.String(text))
	return wide
}

func (s *spelling) spell(i int, r, prev, next rune) {
	switch {
	case r == '…':
		s.put(i, '.')
		s.put(i, '.') // 0…100 bar
	case r == utf8.RuneError, r == 0, r == '_':
		s.broken = s.broken || r == utf8.RuneError
		s.put(i, ' ')
	case (r == 'К' || r == 'к') && isDigit(next) && !unicode.IsLetter(prev):
		s.put(i, 'k')
	case (r == 'М' || r == 'м') && isDigit(next) && !unicode.IsLetter(prev):
		s.put(i, 'm')
	case (r == 'х' || r == 'Х') && isDigit(next) && (prev == 'В' || prev == 'З' || prev == 'Н'):
		s.put(i, ' ')
		s.put(i, 'x') // 1/2"Вх32: the sex of the one, and the other
	case (r == 'х' || r == 'Х') && !unicode.IsLetter(prev) && !unicode.IsLetter(next):
		s.put(i, 'x')
	default:
		to, ok := folds()[r]
		if !ok {
			to = string(unicode.ToLower(r))
		}
		if len(to) > 1 && to[0] == ' ' && (prev == '-' || prev == '.' || prev == '+' || prev == '&') {
			to = to[1:] // 1-½
		}
		for k := range len(to) {
			s.put(i, to[k])
		}
	}
}

func (s *spelling) put(at int, b byte) {
	s.norm, s.at = append(s.norm, b), append(s.at, int32(at))
}

// marks decides commas between digits, two single quotes, and the letter l read
// for a one by a scanner (l/2).
func (s *spelling) marks() {
	b := s.norm
	for i := range b {
		if !decided[b[i]] {
			continue
		}
		before, after := byteAt(b, i-1), byteAt(b, i+1)
		switch {
		case b[i] == ',' && digit(before) && digit(after) && !s.fractionAround(i):
			b[i] = '.'
		case b[i] == '.' && after == '.' && bytes.Count(b, []byte("..")) <= mostRanges && digit(before) && digit(byteAt(b, s.endOfDots(i))):
			for j := i + 1; j < s.endOfDots(i); j++ {
				b[j] = 0 // taken out with the stops
			}
			b[i] = '-' // 0..100 bar
		case b[i] == '\\' && digit(before) && digit(after):
			b[i] = '/'
		case b[i] == 0xD1 && after == 0x84 && digit(byteAt(b, i+2)) && !alnum(before):
			copy(b[i:], "ø") // ф20, as Russian lists write a diameter
		case b[i] == '\'' && after == '\'':
			b[i], b[i+1] = '"', 0 // taken out with the stops
		case b[i] == 'l' && after == '/' && digit(byteAt(b, i+2)) && !alnum(before):
			b[i] = '1'
		case b[i] == 'l' && after == '-' && !alnum(before) && byteAt(b, i+3) == '/' && (byteAt(b, i+2) == 'l' || digit(byteAt(b, i+2))):
			b[i] = '1' // l-1/2
		}
	}
}

// decided are the bytes that their neighbours decide.
var decided = [256]bool{',': true, '.': true, '\\': true, 0xD1: true, '\'': true, 'l': true}

// mostRanges is how many ranges with dots a line has at most. A judgement.
const mostRanges = 6

// endOfDots is where the dots that begin at i end.
func (s *spelling) endOfDots(i int) int {
	for byteAt(s.norm, i) == '.' || byteAt(s.norm, i) == 0 {
		i++
	}
	return i
}

// fractionAround reports whether a comma stands between fractions (3/4,1/2) and
// so parts two sizes.
func (s *spelling) fractionAround(i int) bool {
	j := i - 1
	for digit(byteAt(s.norm, j)) {
		j--
	}
	k := i + 1
	for digit(byteAt(s.norm, k)) {
		k++
	}
	return byteAt(s.norm, j) == '/' || byteAt(s.norm, k) == '/' || k-i > 5
}

// joinInitials writes F.I.P. as fip and M.F. as mf.
func (s *spelling) joinInitials() {
	b, w := s.norm, 0
	at := s.at
	if bytes.IndexByte(b, '.') < 0 && bytes.IndexByte(b, 0) < 0 {
		return
	}
	last, before := byte(' '), byte(' ')
	for i := 0; i < len(b); i++ {
		c := b[i]
		if c == 0 {
			continue
		}
		initial := letter(last) && !alnum(before)
		before, last = last, c
		if c == '.' && initial && letter(byteAt(b, i+1)) && !alnum(byteAt(b, i+2)) {
			continue
		}
		b[w], at[w] = c, at[i]
		w++
	}
	at[w] = at[len(b)]
	s.norm, s.at = b[:w], at[:w+1]
}

// bothCases reports whether the text has capitals and small letters, so that which one a letter is says
// something.
func (s *spelling) bothCases() bool {
	small, large := false, false
	for _, r := range s.as {
		small, large = small || unicode.IsLower(r), large || unicode.IsUpper(r)
	}
	return small && large
}

// words gives a stretch of the text as it was written.
func (s *spelling) words(from, to int) string {
	a, z := int(s.at[from]), int(s.at[to])
	for z > a && isBlank(s.as[z-1]) {
		z--
	}
	for a < z && isBlank(s.as[a]) {
		a++
	}
	return s.as[a:z]
}

// capital reports whether the letter at a place was written as a capital.
func (s *spelling) capital(at int) bool {
	r, _ := utf8.DecodeRuneInString(s.as[s.at[at]:])
	return unicode.IsUpper(r)
}

func byteAt(b []byte, i int) byte {
	if i < 0 || i >= len(b) {
		return ' '
	}
	return b[i]
}

func digit(b byte) bool   { return b >= '0' && b <= '9' }
func letter(b byte) bool  { return b >= 'a' && b <= 'z' }
func alnum(b byte) bool   { return digit(b) || letter(b) || b >= utf8.RuneSelf }
func isBlank(b byte) bool { return b == ' ' || b == '\t' || b == '\n' || b == '\r' }
func isDigit(r rune) bool { return r >= '0' && r <= '9' }
