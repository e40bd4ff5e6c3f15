package receive

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"handtight/bom/build"
	"handtight/bom/money"
	"handtight/bom/source"
)

// File is a file of the build with real prices put in.
type File struct {
	Path     string
	Old, New []byte
}

// Left is a price that was not put in, and why.
type Left struct {
	Price
	Why string
}

// Amend puts real prices into the texts of a build's files, by path: the price of an offer is
// changed where it stands, an offer without one gets it, and a new offer goes to the end of the
// first file. Nothing else is touched.
func Amend(b *build.Build, texts map[string][]byte, prices []Price) ([]File, []Left) {
	spans := map[string][]span{}
	var added string
	var left []Left
	for _, p := range prices {
		a, err := money.ParseAmount(p.Paid, p.Currency)
		if err != nil {
			left = append(left, Left{p, "what was paid is no sum of " + p.Currency})
			continue
		}
		if whole := a.Round(); whole.Equal(a) {
			p.Paid = whole.Number() // with the decimals of its currency
		}
		if p.offer == nil {
			added += p.newOffer()
			continue
		}
		path, s, ok := p.span(texts)
		if !ok {
			left = append(left, Left{p, "its place in the file was not found"})
			continue
		}
		spans[path] = append(spans[path], s)
	}
	if added != "" {
		text := texts[b.File]
		if len(text) > 0 && text[len(text)-1] != '\n' {
			added = "\n" + added
		}
		if strings.Contains(string(text), "\r\n") {
			added = strings.ReplaceAll(added, "\n", "\r\n")
		}
		spans[b.File] = append(spans[b.File], span{len(text), len(text), added})
	}
	var out []File
	for _, path := range b.Files {
		if list := spans[path]; len(list) > 0 {
			out = append(out, File{path, texts[path], written(texts[path], list)})
		}
	}
	return out, left
}

// span is a piece of a text, and what takes its place.
type span struct {
	from, to int
	text     string
}

// written puts spans into a text, the last first, so that none moves another.
func written(text []byte, list []span) []byte {
	slices.SortStableFunc(list, func(a, b span) int { return b.from - a.from })
	for _, s := range list {
		text = slices.Concat(text[:s.from], []byte(s.text), text[s.to:])
	}
	return text
}

// newOffer is an offer that the build has not, as a table.
func (p *Price) newOffer() string {
	text := "\n[[offer]]\nitem   = " + strconv.Quote(p.Item) + "\nvendor = " + strconv.Quote(p.Shop) + "\n"
	if p.code != "" {
		text += "code   = " + strconv.Quote(p.code) + "\n"
	}
	return text + "price  = " + strconv.Quote(p.Paid) + "\n"
}

// span is where the price of an offer stands, or belongs: behind its vendor.
func (p *Price) span(texts map[string][]byte) (path string, s span, ok bool) {
	at := p.offer.Place.Key("price")
	if p.Was == "" {
		at = p.offer.Place.Key("vendor")
	}
	text, known := texts[at.File]
	from, to, ok := valueAt(string(text), at)
	switch {
	case !known || !ok:
		return "", s, false
	case p.Was != "":
		return at.File, span{from, to, strconv.Quote(p.Paid)}, true
	}
	return at.File, span{to, to, apart(string(text), from, to) + "price = " + strconv.Quote(p.Paid)}, true
}

// apart is what stands between a value and the next key: an end of line, or in a table on one
// line a comma.
func apart(text string, from, to int) string {
	line := text[strings.LastIndexByte(text[:from], '\n')+1:]
	if i := strings.IndexByte(line, '\n'); i >= 0 {
		line = line[:i]
	}
	rest := text[to:]
	if i := strings.IndexByte(rest, '\n'); i >= 0 {
		rest = rest[:i]
	}
	before := strings.TrimSpace(line[:max(0, len(line)-len(rest)-(to-from))])
	if strings.Contains(before, "{") || strings.Contains(before, ",") || strings.Contains(rest, "}") || strings.HasPrefix(strings.TrimSpace(rest), ",") {
		return ", "
	}
	if strings.HasSuffix(rest, "\r") {
		return "\r\n"
	}
	return "\n"
}

// valueAt finds the quoted value of a key that stands at a place.
func valueAt(text string, p source.Place) (from, to int, ok bool) {
	at, ok := p.Offset(text)
	if !ok || at >= len(text) {
		return 0, 0, false
	}
	if c := text[at]; c != '"' && c != '\'' { // the key itself: its value stands behind the sign
		i := strings.IndexByte(text[at:], '=')
		if i < 0 || strings.Contains(text[at:at+i], "\n") {
			return 0, 0, false
		}
		at += i + 1
		for at < len(text) && (text[at] == ' ' || text[at] == '\t') {
			at++
		}
	}
	if at >= len(text) || text[at] != '"' && text[at] != '\'' || strings.HasPrefix(text[at:], `"""`) || strings.HasPrefix(text[at:], "'''") {
		return 0, 0, false
	}
	for i := at + 1; i < len(text) && text[i] != '\n'; i++ {
		switch {
		case text[i] == '\\' && text[at] == '"':
			i++
		case text[i] == text[at]:
			return at, i + 1, true
		}
	}
	return 0, 0, false
}

// String says what a price was and is.
func (p Price) String() string {
	was := p.Was
	if was == "" {
		was = "no price"
	}
	return fmt.Sprintf("%s at %s: %s, paid %s %s", p.Item, p.Shop, was, p.Paid, p.Currency)
}
