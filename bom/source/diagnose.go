package source

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"handtight/pressure/pattern"
)

// diagnosis turns the library's message and the line it speaks of into a reason
// and a remedy: most faults are one of a dozen habits that TOML does not share.
type diagnosis struct {
	message string
	line    string
	column  int // bytes before the fault on its line
	section string
	earlier int // the line on which the same key was written before, or 0
}

// A remedy for when nothing better is known.
const generally = `write one key = value on a line, a section as [name], a part as [[name]], and text in quotes`

// rules are tried in order, each for the messages that hold its words.
var rules = []struct {
	words string
	say   func(diagnosis) (reason, remedy string)
}{
	{"cannot be used as an array", diagnosis.otherBrackets},
	{"already created as a hash", diagnosis.valueAsTable},
	{"already", diagnosis.repeated},
	{"expected a top-level item to end", diagnosis.trailing},
	{"expected value but found", diagnosis.noValue},
	{"expected value", diagnosis.empty},
	{"expected '.' or '=', but got", diagnosis.noEquals},
	{"expected key separator", diagnosis.noEquals},
	{"table names cannot be empty", diagnosis.noName},
	{"to end table name", diagnosis.openHeader},
	{"end of table array name", diagnosis.openHeader},
	{"strings cannot contain newlines", diagnosis.openText},
	{"unexpected EOF; expected", diagnosis.openText},
	{"escape", diagnosis.backslash},
	{"Escape", diagnosis.backslash},
	{"hexadecimal digits", diagnosis.backslash},
	{"array terminator", diagnosis.noComma},
	{"inline table terminator", diagnosis.noComma},
	{"unexpected comma", diagnosis.strayComma},
	{"key name appears blank", diagnosis.noKey},
	{"unexpected '='", diagnosis.noKey},
	{"invalid datetime", diagnosis.badDate},
	{"out of range", diagnosis.tooMany},
	{"leading zeroes", diagnosis.number},
	{"floats must start", diagnosis.number},
	{"nvalid float", diagnosis.number},
	{"nvalid integer", diagnosis.number},
	{"expected a digit", diagnosis.number},
	{"not a ", diagnosis.number},
}

// words chooses the rule.
func (d diagnosis) words() (reason, remedy string) {
	for _, r := range rules {
		if strings.Contains(d.message, r.words) {
			return r.say(d)
		}
	}
	return "this is not TOML: " + clip(d.message, 100), generally
}

// split cuts the line into its key and its value, without comment.
func (d diagnosis) split() (key, value string) {
	line := d.line
	for i := 0; i < len(line); i++ {
		switch line[i] {
		case '"', '\'':
			end, _ := skipString(line, i)
			i = end - 1
		case '=':
			return strings.TrimSpace(line[:i]), uncommented(line[i+1:])
		}
	}
	return strings.TrimSpace(line), ""
}

// uncommented cuts a comment off a value. A # counts when a blank stands before it.
func uncommented(value string) string {
	if n := strings.Index(value, " #"); n >= 0 {
		value = value[:n]
	}
	return strings.TrimSpace(value)
}

// rest is the line from the fault on, and what stands there.
func (d diagnosis) rest() (text string, char rune) {
	text = d.line[d.column:]
	char, _ = utf8.DecodeRuneInString(text)
	return text, char
}

func (d diagnosis) repeated() (string, string) {
	reason := "this key is already written"
	if isHeader(d.line) {
		reason = strings.TrimSpace(d.line) + " is already written"
	} else if key, ok := (&locator{text: d.line, at: d.column}).word(); ok {
		reason = "`" + clip(key, 60) + "` is already written"
	}
	if d.earlier > 0 {
		reason += " on line " + strconv.Itoa(d.earlier)
	}
	switch {
	case isHeader(d.line):
		return clip(reason, 120), "put the keys of both under one header; of a list of parts, each header has two brackets"
	case strings.HasPrefix(d.section, "[["):
		return reason, "keep one of the two; if another part begins here, write " + d.section + " above it"
	default:
		return reason, "keep one of the two"
	}
}

func (d diagnosis) otherBrackets() (string, string) {
	name := strings.Trim(uncommented(d.line), "[] \t")
	reason := "`" + clip(name, 60) + "` is already written, without two brackets,"
	if d.earlier > 0 {
		reason += " on line " + strconv.Itoa(d.earlier)
	}
	return strings.TrimSuffix(reason, ","), "write [[" + clip(name, 60) + "]] both times, or rename one of the two"
}

func (d diagnosis) valueAsTable() (string, string) {
	name := "this key"
	if from, to := strings.IndexByte(d.message, '\''), strings.LastIndexByte(d.message, '\''); from < to {
		name = "`" + clip(d.message[from+1:to], 60) + "`"
	}
	return name + " is already given a value, and cannot hold keys too", "rename one of the two"
}

var decimalComma = pattern.New(`^[+-]?\d+,\d+$`)

func (d diagnosis) trailing() (string, string) {
	rest, char := d.rest()
	key, value := d.split()
	if isHeader(d.line) {
		if char == ']' {
			return "a bracket too many", "write " + header(d.line)
		}
		return "more follows the header", "put it on a line of its own"
	}
	if char == ',' && uncommented(rest[1:]) == "" && value != "" {
		return "a comma ends this line", "remove the comma: `" + clip(key+" = "+strings.TrimRight(value, ", "), 80) + "`"
	}
	switch {
	case value == "":
	case decimalComma.MatchString(value):
		return "`" + key + "` is a number with a decimal comma", advise(key, strings.Replace(value, ",", ".", 1))
	case value[0] == '"' || value[0] == '\'':
		return d.quoteWithin(key, value)
	case value[0] != '[' && value[0] != '{' && !strings.ContainsRune(value, '='):
		return "`" + clip(key, 60) + "` is not in quotes", advise(key, value)
	}
	return "more follows the value", generally
}

// quoteWithin speaks of a text that its own quote mark ends too early.
func (d diagnosis) quoteWithin(key, value string) (string, string) {
	if end := len(value) - 1; end > 0 && value[end] == value[0] && strings.Count(value, value[:1]) > 2 {
		if value[0] == '"' {
			return "an inch mark ends the text too early", advise(key, value[1:end])
		}
		return "a quote mark ends the text too early", advise(key, value[1:end])
	}
	return "more follows the text", "put all of it between the quotes; behind them only a comment with # may stand"
}

// curly turns the quotes of a word processor into those of a keyboard.
var curly = strings.NewReplacer("“", `"`, "”", `"`, "„", `"`, "«", `"`, "»", `"`, "‘", "'", "’", "'")

var truth = map[string]string{"true": "true", "yes": "true", "on": "true", "false": "false", "no": "false", "off": "false"}

func (d diagnosis) noValue() (string, string) {
	rest, _ := d.rest()
	key, value := d.split()
	token := value
	if strings.TrimSpace(rest) != value && uncommented(rest) != value { // within a list or braces
		token, key = rest, ""
		if n := strings.IndexAny(token, ",]}#"); n >= 0 {
			token = token[:n]
		}
		token = strings.TrimSpace(token)
	}
	if word := curly.Replace(token); word != token {
		return "curly quotes do not hold a text", "write straight quotes: " + pair(key, word)
	}
	if word, ok := truth[strings.ToLower(token)]; ok {
		return "`" + token + "` is not how TOML writes it", "write " + pair(key, word)
	}
	if token == "" {
		return d.empty()
	}
	if token[0] == '=' {
		return "two equals signs stand here", "write one"
	}
	return "a text without quotes: " + clip(token, 60), advise(key, token)
}

func (d diagnosis) empty() (string, string) {
	key, _ := d.split()
	if key == "" || !strings.ContainsRune(d.line, '=') {
		return "a value is missing here", generally
	}
	return "`" + clip(key, 60) + "` has no value", "write one behind the =, or remove the line"
}

var comment = pattern.New(`^\s*(//|;|--|/\*|%)`)

func (d diagnosis) noEquals() (string, string) {
	rest, char := d.rest()
	key := strings.TrimSpace(d.line[:d.column])
	switch {
	case comment.MatchString(d.line):
		return "this line is neither a key nor a comment", "begin a comment with #"
	case char == ':':
		value := strings.TrimSpace(rest[1:])
		if value == "" {
			return "a colon stands where = is due", "write " + pair(key, "…")
		}
		return "a colon stands where = is due", "write " + pair(key, quotedUnlessValue(value))
	case strings.TrimSpace(rest) == "" || char == '#':
		return "`" + clip(key, 60) + "` has no value", "write " + pair(key, `"…"`) + ", or remove the line"
	case char > unicode.MaxASCII:
		name, _ := d.split()
		return "a key without quotes holds only the letters a to z, digits, - and _", `write the key in quotes: "` + clip(name, 60) + `" = …`
	case strings.ContainsRune(rest, '='):
		name, _ := d.split()
		return "a key is one word", "write `" + clip(strings.Join(strings.Fields(name), "_"), 60) + " = …`"
	}
	return "this line has no =", generally
}

func (d diagnosis) noName() (string, string) {
	return "the brackets hold no name, or a point stands alone", "write a name, such as [build] or [[item]]"
}

func (d diagnosis) openHeader() (string, string) {
	if line := strings.TrimRight(uncommented(d.line), " \t"); strings.HasSuffix(line, "]") && strings.ContainsAny(line, " \t") {
		return "the name in the brackets is not one word", "write " + strings.Join(strings.Fields(header(line)), "_")
	}
	return "the header is not closed", "write " + header(d.line)
}

// header writes the header that a faulty one was meant to be.
func header(line string) string {
	line = strings.TrimSpace(strings.SplitN(line, "#", 2)[0])
	name := clip(strings.TrimSpace(strings.Trim(line, "[]")), 60)
	if name == "" {
		name = "item"
	}
	if strings.HasPrefix(line, "[[") {
		return "[[" + name + "]]"
	}
	return "[" + name + "]"
}

func (d diagnosis) openText() (string, string) {
	return "the text on this line has no closing quote", "close it with the quote that it began with; text over several lines takes three"
}

func (d diagnosis) backslash() (string, string) {
	reason := "in double quotes a backslash begins a special character, and this is none"
	key, value := d.split()
	if n := len(value) - 1; n > 0 && value[0] == '"' && strings.IndexByte(value[1:], '"') == n-1 && !strings.ContainsRune(value, '\'') {
		return reason, "write single quotes: " + pair(key, "'"+value[1:n]+"'")
	}
	return reason, "put the text in single quotes, or write the backslash twice"
}

// noComma speaks of a list or an inline table in which a value is followed by
// something else: an inch mark, a unit, or the next value.
func (d diagnosis) noComma() (string, string) {
	rest, char := d.rest()
	before := strings.TrimRight(d.line[:d.column], " \t")
	if next := strings.IndexByte(rest, '"'); strings.HasSuffix(before, `"`) && next >= 0 && char != '"' {
		if open := strings.LastIndexByte(before[:len(before)-1], '"'); open >= 0 && !strings.Contains(rest[:next], "=") {
			text := d.line[open+1 : d.column+next]
			return "an inch mark ends the text too early", advise("", text)
		}
	}
	start := strings.LastIndexAny(before, "=,[{ ") + 1
	if number := before[start:]; number != "" && number[0] >= '0' && number[0] <= '9' && unicode.IsLetter(char) {
		token := d.line[start:]
		if n := strings.IndexAny(token, ",]}#"); n >= 0 {
			token = token[:n]
		}
		return "a value with its unit is not in quotes", advise("", strings.TrimSpace(token))
	}
	return "a comma or a closing bracket is missing before this", "put a comma between one value and the next"
}

func (d diagnosis) strayComma() (string, string) {
	return "a comma with nothing before it", "remove the comma"
}

func (d diagnosis) noKey() (string, string) {
	return "no key stands before the =", "write key = value"
}

func (d diagnosis) badDate() (string, string) {
	return "this is no date of the calendar, and no time", "write a date as 2026-11-20 (year, month, day), or put the text in quotes"
}

func (d diagnosis) tooMany() (string, string) {
	key, value := d.split()
	return "the number is too large to be held exactly", "if it is a code, " + advise(key, value)
}

func (d diagnosis) number() (string, string) {
	key, value := d.split()
	return "this is not a number as TOML writes one", "write digits, with a point between digits; or, as text, " + strings.TrimPrefix(advise(key, value), "write ")
}

// advise writes a text in quotes that can hold it.
func advise(key, text string) string {
	q, ok := quote(text)
	if !ok {
		return "put the text in three single quotes: '''…'''"
	}
	return "write " + pair(key, clip(q, 80))
}

// quote puts a text in single quotes when it holds a double quote or a backslash,
// else in double quotes; false when neither can hold it.
func quote(text string) (string, bool) {
	switch {
	case strings.ContainsAny(text, "\n\r"):
		return "", false
	case !strings.ContainsAny(text, `"\`):
		return `"` + text + `"`, true
	case !strings.ContainsRune(text, '\''):
		return "'" + text + "'", true
	}
	return "", false
}

// quotedUnlessValue leaves alone what TOML takes as it stands.
func quotedUnlessValue(text string) string {
	if _, err := decode("k = " + text); err == nil {
		return text
	}
	if q, ok := quote(text); ok {
		return clip(q, 80)
	}
	return "…"
}

// pair shows a key with its value as it is to be written.
func pair(key, value string) string {
	if key == "" {
		return "`" + value + "`"
	}
	return "`" + clip(key, 60) + " = " + value + "`"
}
