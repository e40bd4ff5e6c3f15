package source

import (
	"strings"

	"github.com/BurntSushi/toml"
)

// spot is one value of the tree: the offsets of its key and of itself, and its keys where
// it is a table. Spot 0 is the file, and no key's.
type spot struct {
	text              string // its key
	key, value        int32
	first, last, next int32   // of its own keys the first and the last; the next key of its table
	keys              int32   // how many keys of its own it has
	written           bool    // given by name, not only implied by [a.b]
	elements          []int32 // spots of a list's elements
}

// name finds the spot of a key within the spot of its table.
type name struct {
	table int32
	key   string
}

// fewKeys is how many keys of a table are looked through one by one: for as many as an
// item has that is faster than a map.
const fewKeys = 24

// locator holds the place of every key and value of a text that TOML accepts.
// On other text it places what it can and never fails.
type locator struct {
	text  string
	at    int
	spots []spot         // 0 is the file itself
	names map[name]int32 // keys of the tables that have more than a few
	// The first key that is given twice: a text with one is refused, except that
	// the TOML library lets the later one go unseen after a dotted key.
	clash        bool
	first, again int32
}

// locate runs the one pass.
func locate(text string) *locator {
	const bytesForKey = 20 // the text per key of a whole plant, to size the tables once
	guess := len(text)/bytesForKey + 8
	l := &locator{text: text, spots: make([]spot, 1, guess), names: map[name]int32{}}
	table := int32(0)
	for {
		l.skip(true)
		if l.at >= len(text) {
			return l
		}
		start := l.at
		if text[l.at] == '[' {
			table = l.header()
		} else {
			l.pair(table)
		}
		if l.at == start { // not TOML: go on behind it
			l.at++
		}
	}
}

// skip passes over blanks, and over newlines and comments when lines is set.
func (l *locator) skip(lines bool) {
	for l.at < len(l.text) {
		switch c := l.text[l.at]; {
		case c == ' ' || c == '\t' || c == '\r':
			l.at++
		case lines && c == '\n':
			l.at++
		case lines && c == '#':
			l.at = skipComment(l.text, l.at)
		default:
			return
		}
	}
}

// take passes over the byte c when it stands here.
func (l *locator) take(c byte) bool {
	if l.at < len(l.text) && l.text[l.at] == c {
		l.at++
		return true
	}
	return false
}

// header reads [a.b] or [[a.b]] and returns the table that it opens.
func (l *locator) header() int32 {
	open := l.at
	l.at++
	list := l.take('[')
	table := int32(0)
	for {
		l.skip(false)
		at := l.at
		key, ok := l.word()
		if !ok {
			break
		}
		l.skip(false)
		if l.take('.') {
			id, _ := l.child(table, key, at, at)
			table = l.newest(id)
			continue
		}
		table = l.open(table, key, at, open, list)
		break
	}
	l.at = skipComment(l.text, l.at)
	return table
}

// open names a table, or adds an element to a list of tables, and returns it. A
// table that was only implied by [a.b] gets the place where it is named.
func (l *locator) open(table int32, key string, at, open int, list bool) int32 {
	id, found := l.child(table, key, at, open)
	s := &l.spots[id]
	if found && (s.written || !list && len(s.elements) > 0) {
		l.meet(id, at)
	}
	if !list {
		if !s.written && len(s.elements) == 0 {
			s.key, s.value, s.written = int32(at), int32(open), true
		}
		return l.newest(id)
	}
	element := l.add(at, open)
	l.spots[id].elements = append(l.spots[id].elements, element)
	return element
}

// pair reads key = value into a table.
func (l *locator) pair(table int32) {
	for {
		l.skip(false)
		at := l.at
		key, ok := l.word()
		if !ok {
			return
		}
		id, found := l.child(table, key, at, at)
		l.skip(false)
		if l.take('.') {
			table = l.newest(id)
			continue
		}
		if !l.take('=') {
			return
		}
		l.skip(false)
		if found {
			l.meet(id, at)
		} else {
			l.spots[id].value, l.spots[id].written = int32(l.at), true
		}
		l.value(id)
		return
	}
}

// value reads what stands behind = or in a list into its spot.
func (l *locator) value(id int32) {
	if l.at >= len(l.text) {
		return
	}
	switch l.text[l.at] {
	case '"', '\'':
		l.at, _ = skipString(l.text, l.at)
	case '[':
		l.list(id)
	case '{':
		l.inline(id)
	default:
		if n := strings.IndexAny(l.text[l.at:], ",]}#\n"); n >= 0 {
			l.at += n
		} else {
			l.at = len(l.text)
		}
	}
}

// list reads the elements between [ and ].
func (l *locator) list(id int32) {
	l.at++
	for {
		l.skip(true)
		if l.at >= len(l.text) || l.take(']') {
			return
		}
		start := l.at
		element := l.add(l.at, l.at)
		l.spots[id].elements = append(l.spots[id].elements, element)
		l.value(element)
		l.skip(true)
		if !l.take(',') && l.at == start {
			return
		}
	}
}

// inline reads the pairs between { and }.
func (l *locator) inline(id int32) {
	l.at++
	for {
		l.skip(true)
		if l.at >= len(l.text) || l.take('}') {
			return
		}
		start := l.at
		l.pair(id)
		l.skip(true)
		if !l.take(',') && l.at == start {
			return
		}
	}
}

// word reads one part of a key.
func (l *locator) word() (string, bool) {
	start := l.at
	if start >= len(l.text) {
		return "", false
	}
	if c := l.text[start]; c == '"' || c == '\'' {
		end, closed := skipString(l.text, start)
		l.at = end
		if !closed {
			return "", false
		}
		return unquoted(l.text[start:end]), true
	}
	for l.at < len(l.text) && isBare(l.text[l.at]) {
		l.at++
	}
	return l.text[start:l.at], l.at > start
}

// isBare says whether a key may hold the byte without quotes. Bytes above ASCII
// are let through, so that a fault in such a key has its place.
func isBare(c byte) bool {
	return c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' || c >= '0' && c <= '9' || c == '_' || c == '-' || c >= 0x80
}

// unquoted returns the text of a quoted key. The library decodes what holds an
// escape, so that both agree on it.
func unquoted(quoted string) string {
	if quoted[0] == '\'' || !strings.ContainsRune(quoted, '\\') {
		return quoted[1 : len(quoted)-1]
	}
	var value struct{ Key string }
	if _, err := toml.Decode("Key = "+quoted, &value); err != nil {
		return quoted[1 : len(quoted)-1]
	}
	return value.Key
}

// add makes a spot.
func (l *locator) add(key, value int) int32 {
	l.spots = append(l.spots, spot{key: int32(key), value: int32(value)})
	return int32(len(l.spots) - 1)
}

// child finds a key of a table, or makes it; found says which.
func (l *locator) child(table int32, key string, at, value int) (id int32, found bool) {
	if id, found = l.lookUp(table, key); found {
		return id, true
	}
	id = l.add(at, value)
	l.spots[id].text = key
	t := &l.spots[table]
	if t.keys == 0 {
		t.first = id
	} else {
		l.spots[t.last].next = id
	}
	t.last = id
	t.keys++
	switch {
	case t.keys == fewKeys+1:
		for i := t.first; i != 0; i = l.spots[i].next {
			l.names[name{table, l.spots[i].text}] = i
		}
	case t.keys > fewKeys:
		l.names[name{table, key}] = id
	}
	return id, false
}

// lookUp finds a key of a table.
func (l *locator) lookUp(table int32, key string) (id int32, found bool) {
	if l.spots[table].keys > fewKeys {
		id, found = l.names[name{table, key}]
		return id, found
	}
	for i := l.spots[table].first; i != 0; i = l.spots[i].next {
		if l.spots[i].text == key {
			return i, true
		}
	}
	return 0, false
}

// newest is the table that [a.b] means by a: the newest element of a list.
func (l *locator) newest(id int32) int32 {
	if list := l.spots[id].elements; len(list) > 0 {
		return list[len(list)-1]
	}
	return id
}

// meet notes a key that is given a second time at an offset.
func (l *locator) meet(id int32, at int) {
	if !l.clash {
		l.clash, l.first, l.again = true, l.spots[id].key, int32(at)
	}
}

// find walks a path and returns the spot that it names, or its nearest parent.
func (l *locator) find(path Path) int32 {
	id := int32(0)
	for _, step := range path {
		next, ok := int32(0), false
		switch s := step.(type) {
		case string:
			next, ok = l.lookUp(id, s)
		case int:
			if list := l.spots[id].elements; s >= 0 && s < len(list) {
				next, ok = list[s], true
			}
		}
		if !ok {
			return id
		}
		id = next
	}
	return id
}
