package cart

import (
	"bytes"
	"fmt"
	"unicode/utf8"

	"golang.org/x/text/encoding"
	"golang.org/x/text/encoding/charmap"
	"golang.org/x/text/encoding/htmlindex"
	"golang.org/x/text/encoding/unicode"
)

// decode turns a text file into UTF-8. Without a name the encoding is found: by its
// byte-order mark, by its NULs, as UTF-8, else as the Windows code page that its
// letters speak for; found is its name when it had to be guessed.
func decode(data []byte, name string) (text, found string, err error) {
	if name != "" {
		enc, err := htmlindex.Get(name)
		if err != nil {
			return "", "", fmt.Errorf("%q is no encoding that is known", name)
		}
		return decoded(data, enc, "")
	}
	switch {
	case bytes.HasPrefix(data, []byte("\xff\xfe\x00\x00")) || bytes.HasPrefix(data, []byte("\x00\x00\xfe\xff")):
		return "", "", fmt.Errorf("it is in UTF-32")
	case bytes.HasPrefix(data, []byte("\xff\xfe")) || bytes.HasPrefix(data, []byte("\xfe\xff")):
		return decoded(data, unicode.UTF16(unicode.LittleEndian, unicode.UseBOM), "")
	case bytes.HasPrefix(data, []byte("\xef\xbb\xbf")):
		data = data[3:]
	}
	if order, ok := nulls(data); ok {
		return decoded(data, unicode.UTF16(order, unicode.IgnoreBOM), "UTF-16")
	}
	if utf8.Valid(data) {
		return checked(string(data), "")
	}
	page, label := codePage(data)
	return decoded(data, page, label)
}

func decoded(data []byte, enc encoding.Encoding, label string) (string, string, error) {
	out, err := enc.NewDecoder().Bytes(data)
	if err != nil {
		return "", "", err
	}
	return checked(string(bytes.TrimPrefix(out, []byte("\ufeff"))), label)
}

// checked refuses what is no text: one control character in twenty, or a NUL.
func checked(text, label string) (string, string, error) {
	odd := 0
	for i := range len(text) {
		c := text[i]
		if c == 0 {
			return "", "", fmt.Errorf("it holds zero bytes")
		}
		if c < ' ' && c != '\n' && c != '\r' && c != '\t' || c == 0x7f {
			odd++
		}
	}
	if odd*20 > len(text) {
		return "", "", fmt.Errorf("it holds control characters")
	}
	return text, label, nil
}

// nulls tells UTF-16 without a mark: in Latin letters every second byte is zero.
func nulls(data []byte) (unicode.Endianness, bool) {
	sample := data[:min(len(data), 4096)]
	var even, odd int
	for i, b := range sample {
		if b == 0 && i%2 == 0 {
			even++
		} else if b == 0 {
			odd++
		}
	}
	third := len(sample) / 6 // a third of one half
	switch {
	case odd > third && even == 0:
		return unicode.LittleEndian, true
	case even > third && odd == 0:
		return unicode.BigEndian, true
	}
	return unicode.LittleEndian, false
}

// codePage guesses a Windows code page. Cyrillic words are high bytes side by side,
// Western words have one among plain letters; some bytes are a letter in Central Europe and
// a sign (such as the superscript three) in the West, where none stands inside a word.
func codePage(data []byte) (encoding.Encoding, string) {
	var high, paired, central int
	for i, b := range data {
		if b < 0x80 {
			continue
		}
		high++
		if i > 0 && data[i-1] >= 0xc0 && b >= 0xc0 {
			paired++
		}
		if bytes.IndexByte([]byte("\x8c\x9c\x9f\xb3\xb9\xbf\x9d\xbe"), b) >= 0 && i > 0 && letter(data[i-1]) {
			central++
		}
	}
	switch {
	case paired*2 > high:
		return charmap.Windows1251, "Windows-1251 (Cyrillic)"
	case central > 0:
		return charmap.Windows1250, "Windows-1250 (Central Europe)"
	}
	return charmap.Windows1252, "Windows-1252 (Western Europe)"
}

func letter(b byte) bool { return b|0x20 >= 'a' && b|0x20 <= 'z' }
