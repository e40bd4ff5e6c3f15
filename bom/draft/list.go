package draft

import (
	"bytes"
	"encoding/csv"
	"strings"

	"handtight/bom/cart"
	"handtight/pressure/pattern"
)

// ReadList reads a list as [cart.Read] does, and beside it plain lines: a text without a row
// of headings, one part a line, with how many before it or not ("3 hose tails G 3/4 male x 19
// mm"). The places of its lines are those of the text.
//
// Errors: those of [cart.Read].
func ReadList(name string, data []byte, o cart.Options) (*cart.Cart, error) {
	c, err := cart.Read(name, data, o)
	if err == nil && (!c.Plain || o.Columns != nil || bytes.HasPrefix(data, []byte("PK")) || bytes.ContainsAny(data, "\t;")) && !counted(data) {
		return c, nil
	}
	var table bytes.Buffer
	w := csv.NewWriter(&table)
	w.Comma = ';'
	if err := w.Write([]string{"Quantity", "Description"}); err != nil {
		return nil, err
	}
	lines := strings.Split(strings.ReplaceAll(strings.TrimPrefix(string(data), "\ufeff"), "\r\n", "\n"), "\n")
	rows := []int{}
	for i, l := range lines {
		l = strings.TrimSpace(strings.TrimLeft(strings.TrimSpace(l), "-*•"))
		if l == "" {
			continue
		}
		count := ""
		if m := leadCount.FindStringSubmatch(l); m != nil && !measureWord.MatchString(m[2]) {
			count, l = m[1], strings.TrimSpace(l[len(m[1]):])
		} else if !saysHowMany.MatchString(l) {
			count = "1"
		}
		rows = append(rows, i+1)
		if err := w.Write([]string{count, l}); err != nil {
			return nil, err
		}
	}
	w.Flush()
	if w.Error() != nil || len(rows) == 0 {
		return c, err
	}
	o.Encoding = ""
	plain, perr := cart.Read(name, table.Bytes(), o)
	if perr != nil {
		return c, err
	}
	for i := range plain.Lines {
		if n := plain.Lines[i].Row - 2; n >= 0 && n < len(rows) {
			plain.Lines[i].Row = rows[n]
		}
	}
	plain.Notes = append(plain.Notes, "no headings were found: each line was taken for a part")
	return plain, nil
}

// counted reports whether a text is lines that begin with how many: the first and three in four of
// them. Such a text has no row of headings, whatever words and commas stand in it ("1 vessel, product
// 1/4 NPT").
func counted(data []byte) bool {
	if bytes.HasPrefix(data, []byte("PK")) || bytes.ContainsAny(data, "\t;") {
		return false
	}
	all, with := 0, 0
	for _, l := range strings.Split(strings.TrimPrefix(string(data), "\ufeff"), "\n") {
		if l = strings.TrimSpace(strings.TrimLeft(strings.TrimSpace(l), "-*•")); l == "" {
			continue
		}
		if all++; countThenWord.MatchString(l) {
			with++
		} else if all == 1 {
			return false
		}
	}
	return with > 1 && with*4 >= all*3
}

// leadCount is a count before words: "3 hose tails", "1 te", which is no hose of the sort 1TE. measureWord are words behind a figure
// that is a size: "19 mm hose", "10 inch housing".
var (
	leadCount     = pattern.New(`^([0-9]{1,3})\s+(\pL{3,}|[Tt][eéèê]\b|[TtLYX]-\pL{3,})`)
	countThenWord = pattern.New(`(?i)^[0-9]{1,3}(?:\s*x)?\s+\pL`)
	measureWord   = pattern.New(`(?i)^(?:inch|inches|zoll|pouces?|pollici|pulgadas?|micron|microns|mikron|bar|psi|volts?|litres?|liters?|way|wege|voies|vie|vías|npt|bsp|bspp|bspt|jic|metres?|meters?|feet|foot)$`)
	saysHowMany   = pattern.New(`(?i)^[0-9]{1,3}\s*(?:x|pcs?|pc|ea|stk|st|pz|uds?|pièces?|m)\b|\bx\s?[0-9]{1,3}$|[0-9]\s?m$`)
)
