package source

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"

	"handtight/pressure/pattern"
)

// Written is a key's value as a text, of whatever type; "" where the table lacks it. It does not count
// as reading it.
func (t *Table) Written(key string) string {
	v, ok := t.values[key]
	if !ok {
		return ""
	}
	return fmt.Sprint(v)
}

// Text reads a text. It returns false when the key is missing, or holds something
// else: that is noted as a fault. A hint is an example of what to write, such as
// "58 bar" or "1.90"; the fault shows it with the number that was found.
func (t *Table) Text(key string, hint ...string) (string, bool) {
	t.tell(key, AsText, hint, false)
	v, ok := t.get(key)
	if !ok {
		return "", false
	}
	if text, ok := v.(string); ok {
		return text, true
	}
	t.notText(v, example(hint), key)
	return "", false
}

// RequiredText reads a text that must be there and hold more than blanks.
func (t *Table) RequiredText(key string, hint ...string) (string, bool) {
	t.tell(key, AsText, hint, true)
	v, ok := t.get(key)
	if !ok {
		t.missing(key, quotedExample(hint))
		return "", false
	}
	text, ok := v.(string)
	if !ok {
		t.notText(v, example(hint), key)
		return "", false
	}
	if strings.TrimSpace(text) == "" {
		t.Fault(key, "`"+keyText(key)+"` is empty", "write "+pair(keyText(key), quotedExample(hint)))
		return "", false
	}
	return text, true
}

// Texts reads a list of texts; [Table.Place] with an index gives the place of each.
// It returns nil when the key is missing, or when it or an element is something
// else: each of those is noted as a fault.
func (t *Table) Texts(key string, hint ...string) []string {
	t.tell(key, AsTexts, hint, false)
	v, ok := t.get(key)
	if !ok {
		return nil
	}
	list, ok := v.([]any)
	if !ok {
		t.notList(v, example(hint), key)
		return nil
	}
	texts := make([]string, 0, len(list))
	for i, element := range list {
		if text, ok := element.(string); ok {
			texts = append(texts, text)
		} else {
			t.notText(element, example(hint), key, i)
		}
	}
	if len(texts) < len(list) {
		return nil
	}
	return texts
}

// RequiredTexts reads a list of texts that must be there and have an element.
func (t *Table) RequiredTexts(key string, hint ...string) ([]string, bool) {
	t.tell(key, AsTexts, hint, true)
	v, ok := t.get(key)
	if !ok {
		t.missing(key, "["+quotedExample(hint)+"]")
		return nil, false
	}
	if list, ok := v.([]any); ok && len(list) == 0 {
		t.Fault(key, "`"+keyText(key)+"` is an empty list", "write "+pair(keyText(key), "["+quotedExample(hint)+"]"))
		return nil, false
	}
	texts := t.Texts(key, hint...)
	return texts, texts != nil
}

// Bool reads true or false.
func (t *Table) Bool(key string) (value, ok bool) {
	t.tell(key, AsBool, nil, false)
	v, ok := t.get(key)
	if !ok {
		return false, false
	}
	if value, ok = v.(bool); ok {
		return value, true
	}
	t.Fault(key, t.found(v, key)+", and true or false is due", "write "+pair(keyText(key), "true")+" or "+pair(keyText(key), "false"))
	return false, false
}

// Whole reads a whole number.
func (t *Table) Whole(key string) (int, bool) {
	t.tell(key, AsWhole, nil, false)
	v, ok := t.get(key)
	if !ok {
		return 0, false
	}
	if n, ok := v.(int64); ok && n >= math.MinInt && n <= math.MaxInt {
		return int(n), true
	}
	digits := "1"
	switch value := v.(type) {
	case string:
		if n, err := strconv.Atoi(strings.TrimSpace(value)); err == nil {
			digits = strconv.Itoa(n)
		}
	case float64:
		if value == math.Trunc(value) && math.Abs(value) < 1<<53 {
			digits = strconv.FormatInt(int64(value), 10)
		}
	}
	t.Fault(key, t.found(v, key)+", and a whole number is due", "write the number without quotes, for example "+pair(keyText(key), digits))
	return 0, false
}

// Date reads a day without a time.
func (t *Table) Date(key string) (time.Time, bool) {
	t.tell(key, AsDate, nil, false)
	v, ok := t.get(key)
	if !ok {
		return time.Time{}, false
	}
	if date, ok := v.(time.Time); ok && date.Location().String() == localDate {
		return time.Date(date.Year(), date.Month(), date.Day(), 0, 0, 0, 0, time.UTC), true
	}
	day := "2026-11-20"
	switch value := v.(type) {
	case string:
		if date, err := time.Parse(time.DateOnly, strings.TrimSpace(value)); err == nil {
			day = date.Format(time.DateOnly)
		}
	case time.Time:
		if value.Year() > 0 {
			day = value.Format(time.DateOnly)
		}
	}
	t.Fault(key, t.found(v, key)+", and a day is due", "write year, month and day without quotes, for example "+pair(keyText(key), day))
	return time.Time{}, false
}

// When reads a year, a month or a day: a whole number, a text, or a day. It gives the words, and
// does not read them further than that.
func (t *Table) When(key string) (string, bool) {
	t.tell(key, AsWhen, nil, false)
	v, ok := t.get(key)
	if !ok {
		return "", false
	}
	switch value := v.(type) {
	case int64:
		return strconv.FormatInt(value, 10), true
	case string:
		return strings.TrimSpace(value), true
	}
	date, ok := t.Date(key)
	return date.Format(time.DateOnly), ok
}

// Table reads one table: a [section], or braces.
func (t *Table) Table(key string) (*Table, bool) {
	t.tell(key, AsTable, nil, false)
	v, ok := t.get(key)
	if !ok {
		return nil, false
	}
	if values, ok := v.(map[string]any); ok {
		return &Table{reader: t.reader, up: t, key: key, index: noIndex, values: values}, true
	}
	remedy := "write [" + t.path(key).names() + "] once, and the keys below it"
	if t.inline(key) {
		remedy = "write " + pair(keyText(key), "{ name = value }")
	}
	t.Fault(key, t.found(v, key)+", and one table is due", remedy)
	return nil, false
}

// Tables reads a list of tables: [[name]] sections, or braces within a list. It
// returns nil when the key is missing, or holds something else: that is a fault.
func (t *Table) Tables(key string) []*Table {
	t.tell(key, AsTables, nil, false)
	v, ok := t.get(key)
	if !ok {
		return nil
	}
	switch list := v.(type) {
	case []map[string]any:
		return t.elements(key, len(list), func(i int) any { return list[i] })
	case []any:
		return t.elements(key, len(list), func(i int) any { return list[i] })
	}
	name := t.path(key).names()
	t.Fault(key, t.found(v, key)+", and a list of tables is due",
		"write [["+name+"]] with two brackets, and its keys below it")
	return nil
}

// elements makes the tables of a list, and notes what is no table.
func (t *Table) elements(key string, n int, at func(int) any) []*Table {
	all := make([]Table, n)
	tables := make([]*Table, 0, n)
	for i := range n {
		element := at(i)
		values, ok := element.(map[string]any)
		if !ok {
			t.FaultAt(t.found(element, key, i)+", and a table is due", "write its keys between braces, { name = value }", key, i)
			continue
		}
		all[i] = Table{reader: t.reader, up: t, key: key, index: i, values: values}
		tables = append(tables, &all[i])
	}
	return tables
}

// names writes the path without indices, as a header has it.
func (p Path) names() string {
	var keys Path
	for _, step := range p {
		if _, ok := step.(string); ok {
			keys = append(keys, step)
		}
	}
	return keys.String()
}

// inline says whether a key is given a value by =, rather than by a header.
func (t *Table) inline(key string) bool {
	return t.keyPlace(key) != t.Place(key) && t.keyPlace(key).Column < t.Place(key).Column
}

// The library marks a date without time by the name of its zone.
const localDate = "date-local"

func example(hint []string) string {
	if len(hint) == 0 {
		return ""
	}
	return hint[0]
}

func quotedExample(hint []string) string {
	text := example(hint)
	if text == "" {
		text = "…"
	}
	q, _ := quote(text)
	return q
}

// missing notes that the table lacks a key.
func (t *Table) missing(key, value string) {
	t.FaultHere("`"+keyText(key)+"` is missing from "+t.name(), "add "+pair(keyText(key), value))
}

// notList notes that a list of texts is due.
func (t *Table) notList(v any, hint, key string) {
	value := "[" + quotedExample([]string{hint}) + "]"
	if text, ok := v.(string); ok {
		if q, ok := quote(text); ok {
			value = "[" + clip(q, 80) + "]"
		}
	}
	t.Fault(key, t.found(v, key)+", and a list of texts is due", "write "+pair(keyText(key), value))
}

var (
	plainNumber = pattern.New(`^[+-]?[0-9_]+(\.[0-9_]+)?$`)
	withUnit    = pattern.New(`^[+-]?[0-9.]+(\s*\D.*)?$`)
)

// notText notes that a text is due, and shows how to write what was found.
func (t *Table) notText(v any, hint, key string, below ...any) {
	reason := t.found(v, key, below...)
	raw := ""
	switch v.(type) {
	case int64, float64, bool, time.Time:
		raw = t.reader.doc.literal(append(t.path(key), below...))
	}
	name := keyText(key)
	if len(below) > 0 {
		name = ""
	}
	number := plainNumber.MatchString(raw)
	if number {
		raw = strings.ReplaceAll(raw, "_", "")
	}
	unit := withUnit.FindStringSubmatch(hint)
	switch {
	case number && unit != nil && unit[1] != "":
		t.FaultAt(reason+" without its unit",
			"write the unit, in quotes: for example "+pair(name, quotedExample([]string{raw + unit[1]})), key, below...)
	case raw != "" && (hint == "" || number && unit != nil):
		t.FaultAt(reason+", and a text is due", "write it in quotes: "+pair(name, quotedExample([]string{raw})), key, below...)
	default:
		t.FaultAt(reason+", and a text is due", "write a text in quotes, for example "+pair(name, quotedExample([]string{hint})), key, below...)
	}
}

// found says what stands at a key, or at an element of its list.
func (t *Table) found(v any, key string, below ...any) string {
	subject := "`" + clip(keyText(key), 60) + "`"
	for _, step := range below {
		if i, ok := step.(int); ok {
			subject = "element " + strconv.Itoa(i+1) + " of " + subject
		}
	}
	return subject + " is " + t.kind(v, append(t.path(key), below...))
}

// kind names the type of a value, and shows it where it is short.
func (t *Table) kind(v any, path Path) string {
	switch value := v.(type) {
	case string:
		if q, ok := quote(value); ok {
			return "the text " + clip(q, 60)
		}
		return "a text"
	case bool:
		return strconv.FormatBool(value)
	case int64:
		return "the number " + clip(t.reader.doc.literal(path), 40)
	case float64:
		if math.IsNaN(value) || math.IsInf(value, 0) {
			return clip(t.reader.doc.literal(path), 40) + ", which is no number of anything"
		}
		return "the number " + clip(t.reader.doc.literal(path), 40)
	case time.Time:
		return "the date or time " + clip(t.reader.doc.literal(path), 40)
	case map[string]any:
		return "a table"
	case []map[string]any:
		return "a list of tables"
	default:
		return "a list"
	}
}
