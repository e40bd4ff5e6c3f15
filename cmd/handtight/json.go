package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"math"
	"strings"

	"handtight/bom/facts"
)

// number is a figure in JSON: null where it is not known or has no bound.
type number = facts.Number

func known(v float64) number { return number{Value: v, Known: !math.IsInf(v, 0) && !math.IsNaN(v)} }

// writeJSON writes a value as JSON, indented or, with "", on one line. Characters that
// drive a terminal stand in it by their number, so that no figure or name is changed.
func (u *ui) writeJSON(v any, indent string) error {
	var b bytes.Buffer
	enc := json.NewEncoder(&b)
	enc.SetIndent("", indent)
	enc.SetEscapeHTML(false)
	if err := enc.Encode(v); err != nil {
		return err
	}
	_, err := io.WriteString(u.out, escaped(b.String()))
	return err
}

// escaped writes characters that drive a terminal as \u escapes; in JSON they stand within
// texts alone.
func escaped(text string) string {
	if !strings.ContainsFunc(text, drives) {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		if drives(r) {
			fmt.Fprintf(&b, `\u%04x`, r)
		} else {
			b.WriteRune(r)
		}
	}
	return b.String()
}
