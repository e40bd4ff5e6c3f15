package audit

import (
	"bytes"
	"fmt"
	"strings"
	"time"

	"handtight/bom/source"
)

// The lines between which the record stands in a build file.
const (
	recordBegins = "# --- record of the audit: written by `handtight audit`, and written anew by it ---"
	recordEnds   = "# --- end of the record of the audit ---"
)

// Record puts the plan into a build's text, in the file's own words, between two lines that mark
// what is the tool's own. A record that stands there is written again; everything else stays byte
// for byte. The same plan gives the same text again.
//
// Errors: source.Faults for an [audit] that stands outside such a block, for a block without an
// end, and for a plan without a day.
func (p *Plan) Record(path string, text []byte) ([]byte, error) {
	if p.On.IsZero() {
		return nil, &DayError{"the record needs the day of the audit, and the build names none", "say --on 2026-11-28"}
	}
	begin := bytes.Index(text, []byte(recordBegins))
	end := -1
	if begin >= 0 {
		end = bytes.Index(text[begin:], []byte(recordEnds))
	}
	fault := func(reason, remedy string) error {
		return source.Faults{{Place: source.Place{File: path, Line: 1 + bytes.Count(text[:max(0, begin)], []byte("\n")), Column: 1}, Reason: reason, Remedy: remedy}}
	}
	switch {
	case begin >= 0 && end < 0:
		return nil, fault("the record of an audit begins here and does not end", "write the line `"+recordEnds+"` below it, or take the record out")
	case begin < 0 && p.sys.Build.Audited != nil:
		return nil, fault("the build has an [audit] that no line marks as the tool's own", "take it out; `handtight audit` writes it between two lines of its own")
	}
	ending := "\n"
	if bytes.Contains(text, []byte("\r\n")) {
		ending = "\r\n"
	}
	block := strings.Join(p.recordLines(), ending)
	if begin >= 0 {
		end += begin + len(recordEnds)
		return append(append(bytes.Clone(text[:begin]), block...), text[end:]...), nil
	}
	out := bytes.Clone(text)
	if len(out) > 0 && out[len(out)-1] != '\n' {
		out = append(out, ending...)
	}
	return append(out, ending+block+ending...), nil
}

// recordLines are the lines of the record.
func (p *Plan) recordLines() []string {
	out := []string{recordBegins, "[audit]", "on = " + p.On.Format(time.DateOnly)}
	for _, x := range p.Joints {
		if x.Section == Fine {
			continue
		}
		out = append(out, "", "[[audit.joint]]",
			fmt.Sprintf("at = [%q, %q]", p.sys.Graph.Ports[x.Joint.A].Name(), p.sys.Graph.Ports[x.Joint.B].Name()),
			fmt.Sprintf("is = %q", x.Section))
		if !x.Look.IsZero() {
			out = append(out, "look = "+x.Look.Format(time.DateOnly))
		}
	}
	return append(out, recordEnds)
}
