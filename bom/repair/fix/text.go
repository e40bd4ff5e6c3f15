package fix

import (
	"regexp"
	"slices"
	"strings"

	"handtight/bom/source"
)

type faultList = source.Faults

// header is a line that begins a table of a build file; item begins an item or a table in one.
var (
	header = regexp.MustCompile(`^\s*\[\[?\s*["'\w. -]+\]\]?\s*(#.*)?$`)
	item   = regexp.MustCompile(`^\s*\[\[?\s*["']?item["']?\s*[].]`)
)

// ending is how a text ends its lines.
func ending(text string) string {
	if strings.Contains(text, "\r\n") {
		return "\r\n"
	}
	return "\n"
}

// block writes tables in a text's style of line ends, a blank line before each.
func block(text string, tables []string) string {
	end, out := ending(text), ""
	for _, t := range tables {
		out += end + strings.ReplaceAll(strings.TrimSuffix(t, "\n"), "\n", end) + end
	}
	return out
}

// addItems puts new items behind the last of the file's own. A text in which that is not found,
// because an item is written in some other way, gets them at its end.
func addItems(text string, items []string) string {
	if len(items) == 0 {
		return text
	}
	lines := strings.SplitAfter(text, "\n")
	last := -1
	for i, l := range lines {
		if item.MatchString(l) {
			last = i
		}
	}
	at := -1
	for i := last + 1; last >= 0 && i < len(lines); i++ {
		if header.MatchString(lines[i]) {
			at = i
			break
		}
	}
	if at < 0 {
		return addLast(text, items...)
	}
	plain := func(l string) string { return strings.TrimSpace(l) }
	for at > 0 && strings.HasPrefix(plain(lines[at-1]), "#") {
		at-- // a comment right above a table is the table's
	}
	for at > 0 && plain(lines[at-1]) == "" {
		at--
	}
	before, after := strings.Join(lines[:at], ""), strings.Join(lines[at:], "")
	if plain(lines[at]) != "" {
		after = ending(text) + after
	}
	return before + block(text, items) + after
}

// addLast puts tables at the end of a text.
func addLast(text string, tables ...string) string {
	if text != "" && !strings.HasSuffix(text, "\n") {
		return text + ending(text) + block(text, tables)
	}
	return text + block(text, tables)
}

// putOut makes comments of the tables that hold some lines: what was noted of a joint that is no more.
func putOut(text string, in []int, at string) string {
	lines := strings.SplitAfter(text, "\n")
	slices.SortFunc(in, func(a, b int) int { return b - a })
	for _, n := range slices.Compact(in) {
		first := n - 1
		for first > 0 && !header.MatchString(lines[first]) {
			first--
		}
		own := strings.Trim(strings.TrimSpace(strings.SplitN(lines[first], "#", 2)[0]), "[]")
		for i := first; i < len(lines); i++ {
			trimmed := strings.TrimSpace(lines[i])
			if i > first && header.MatchString(lines[i]) && !strings.HasPrefix(strings.TrimLeft(trimmed, "["), own+".") {
				break
			}
			if trimmed != "" && !strings.HasPrefix(trimmed, "#") {
				lines[i] = "# " + lines[i]
			}
		}
		lines[first] = "# put out by check --fix: it was noted before a part was changed there, " + at + ending(text) + lines[first]
	}
	return strings.Join(lines, "")
}
