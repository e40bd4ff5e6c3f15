package request

import (
	"encoding/csv"
	"fmt"
	"io"
	"strings"
	"unicode/utf8"
)

// Text writes the request as plain text for a mail. Prices stand in it only where they are
// wanted.
//
// Errors: those of the writer.
func (r *Request) Text(w io.Writer, prices bool) error {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n%s\n\n%s\n\n", r.Shop.Name, r.Build, r.in.word("phrase", "order"))
	widths := [2]int{}
	for _, l := range r.Lines {
		widths[0] = max(widths[0], utf8.RuneCountInString(l.Quantity+" "+l.Unit))
		widths[1] = max(widths[1], utf8.RuneCountInString(l.Code))
	}
	asking := false
	for _, l := range r.Lines {
		if l.Ask != "" && !asking {
			fmt.Fprintf(&b, "\n%s\n\n", r.in.word("phrase", "ask"))
			asking = true
		}
		text := l.Text
		if prices && l.Total != "" {
			text += "  " + l.Total + " " + r.Shop.Currency
		}
		fmt.Fprintf(&b, "%s  %s  %s\n", pad(l.Quantity+" "+l.Unit, widths[0]), pad(l.Code, widths[1]), text)
		if l.Ask != "" {
			fmt.Fprintf(&b, "%s? %s\n", strings.Repeat(" ", widths[0]+widths[1]+4), l.Ask)
		}
	}
	if prices {
		fmt.Fprintf(&b, "\n%s: %s\n", r.in.word("phrase", "total"), r.in.number(r.total))
	}
	fmt.Fprintf(&b, "\n%s\n", r.in.word("phrase", "confirm"))
	_, err := io.WriteString(w, b.String())
	return err
}

func pad(text string, width int) string {
	return text + strings.Repeat(" ", max(0, width-utf8.RuneCountInString(text)))
}

// CSV writes the request as a table: UTF-8 with its mark, headings in the language,
// semicolons and decimal commas where the language uses them. No cell is a formula.
//
// Errors: those of the writer.
func (r *Request) CSV(w io.Writer) error {
	if _, err := io.WriteString(w, "\ufeff"); err != nil {
		return err
	}
	out := csv.NewWriter(w)
	if r.in.comma() {
		out.Comma = ';'
	}
	head := []string{}
	for _, h := range []string{"code", "text", "quantity", "unit"} {
		head = append(head, r.in.word("head", h))
	}
	head = append(head, r.in.word("head", "price")+" "+r.Shop.Currency, r.in.word("head", "total")+" "+r.Shop.Currency)
	rows := [][]string{head}
	for _, l := range r.Lines {
		rows = append(rows, []string{plain(l.Code), plain(l.Text), l.Quantity, l.Unit, l.Price, l.Total})
	}
	if err := out.WriteAll(rows); err != nil {
		return err
	}
	return out.Error()
}

// plain keeps a cell from being taken for a formula.
func plain(text string) string {
	if text != "" && strings.ContainsRune("=+-@\t\r", rune(text[0])) {
		return "'" + text
	}
	return text
}
