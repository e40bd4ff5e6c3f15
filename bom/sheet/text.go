package sheet

import (
	"encoding/xml"
	"strconv"
	"strings"

	"handtight/pressure/pattern"
)

// shared is one of the texts that cells refer to.
type shared struct {
	text   string
	struck bool // every run of it is struck out
}

// style is what a cell's format says that matters here.
type style struct {
	struck bool
	date   bool
	format string
}

// rich gathers a text of runs: <si> and <is> have the same form.
type rich struct {
	text            strings.Builder
	inText, inRun   bool
	struckRun       bool
	struck, written bool
	phonetic        int
}

func (r *rich) take(t xml.Token) {
	switch e := t.(type) {
	case xml.StartElement:
		switch e.Name.Local {
		case "rPh": // how a Japanese text is read aloud: not part of it
			r.phonetic++
		case "r":
			r.inRun, r.struckRun = true, false
		case "strike":
			v := attr(e, "val")
			r.struckRun = r.inRun && (v == "" || truth(v))
		case "t":
			r.inText = true
		}
	case xml.EndElement:
		switch e.Name.Local {
		case "rPh":
			r.phonetic--
		case "r":
			r.inRun = false
		case "t":
			r.inText = false
		}
	case xml.CharData:
		if r.inText && r.phonetic == 0 {
			r.add(string(e))
		}
	}
}

func (r *rich) add(s string) {
	r.text.WriteString(s)
	if strings.TrimSpace(s) == "" {
		return
	}
	is := r.inRun && r.struckRun
	r.struck = is && (r.struck || !r.written)
	r.written = true
}

func (r *rich) shared() shared { return shared{unescape(r.text.String()), r.struck} }

// escaped is how the format writes a character that XML cannot hold.
var escaped = pattern.New(`_x[0-9A-Fa-f]{4}_`)

func unescape(s string) string {
	if !strings.Contains(s, "_x") {
		return s
	}
	return escaped.ReplaceAllStringFunc(s, func(m string) string {
		n, err := strconv.ParseUint(m[2:6], 16, 16)
		if err != nil {
			return m
		}
		return string(rune(n))
	})
}

// readStrings reads the texts that cells share.
func (b *reader) readStrings() error {
	var now *rich
	total := 0
	return b.scan("xl/sharedStrings.xml", func(_ *xml.Decoder, t xml.Token, _ int) error {
		if e, ok := t.(xml.StartElement); ok && e.Name.Local == "si" {
			now = &rich{}
			return nil
		}
		if now == nil {
			return nil
		}
		if e, ok := t.(xml.EndElement); ok && e.Name.Local == "si" {
			s := now.shared()
			total += len(s.text)
			b.strings = append(b.strings, s)
			now = nil
			if total > maxText || len(b.strings) > maxStrings {
				return tooLarge("its texts alone fill many megabytes")
			}
			return nil
		}
		now.take(t)
		return nil
	})
}

// readStyles reads which formats are struck out, dates, or money of a currency.
func (b *reader) readStyles() error {
	formats := map[string]string{}
	var struckFonts []bool
	inFonts, inCells := false, false
	return b.scan("xl/styles.xml", func(_ *xml.Decoder, t xml.Token, _ int) error {
		if e, ok := t.(xml.EndElement); ok {
			switch e.Name.Local {
			case "fonts":
				inFonts = false
			case "cellXfs":
				inCells = false
			}
			return nil
		}
		e, ok := t.(xml.StartElement)
		if !ok {
			return nil
		}
		switch e.Name.Local {
		case "numFmt":
			formats[attr(e, "numFmtId")] = attr(e, "formatCode")
		case "fonts":
			inFonts = true
		case "cellXfs":
			inCells = true
		case "font":
			if inFonts {
				struckFonts = append(struckFonts, false)
			}
		case "strike":
			if v := attr(e, "val"); inFonts && len(struckFonts) > 0 {
				struckFonts[len(struckFonts)-1] = v == "" || truth(v)
			}
		case "xf":
			if inCells {
				font, err := strconv.Atoi(attr(e, "fontId"))
				struck := err == nil && font >= 0 && font < len(struckFonts) && struckFonts[font]
				b.styles = append(b.styles, styleOf(attr(e, "numFmtId"), formats, struck))
			}
		}
		return nil
	})
}

// inFormat is what a number format shows as it stands: [$EUR], "USD".
var inFormat = pattern.New(`\[[^\]]*\]|"[^"]*"|\\.`)

func styleOf(id string, formats map[string]string, struck bool) style {
	s := style{struck: struck, format: formats[id]}
	n, err := strconv.Atoi(id)
	if err != nil {
		return s
	}
	s.date = n >= 14 && n <= 17 || n == 22 // ISO/IEC 29500-1 18.8.30: the built-in dates
	plain := strings.ToLower(inFormat.ReplaceAllString(s.format, ""))
	for _, part := range []string{"yy", "mmm", "d/m", "m/d", "d.m"} {
		s.date = s.date || strings.Contains(plain, part)
	}
	return s
}

// readProperties reads the title, and the properties that a program added.
func (b *reader) readProperties() error {
	in := ""
	err := b.scan("docprops/core.xml", func(_ *xml.Decoder, t xml.Token, _ int) error {
		switch e := t.(type) {
		case xml.StartElement:
			in = e.Name.Local
		case xml.EndElement:
			in = ""
		case xml.CharData:
			if in == "title" && len(b.out.Title) < maxToken {
				b.out.Title += unescape(string(e))
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	b.out.Properties = map[string]string{}
	name := ""
	return b.scan("docprops/custom.xml", func(_ *xml.Decoder, t xml.Token, _ int) error {
		switch e := t.(type) {
		case xml.StartElement:
			if e.Name.Local == "property" {
				name = attr(e, "name")
			}
		case xml.EndElement:
			if e.Name.Local == "property" {
				name = ""
			}
		case xml.CharData:
			if name != "" && len(b.out.Properties) < 1000 {
				b.out.Properties[name] += strings.TrimSpace(string(e))
			}
		}
		return nil
	})
}
