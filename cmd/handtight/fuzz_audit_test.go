package main

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What was noted on a joint and measured on an end, in any words: the audit ends in one of
// its three ways, says the same twice, and the record that it writes can be read again
// and gives the same order of work.
func FuzzAudit(f *testing.F) {
	f.Add("2012", "tape", "2024, a drop a minute", "2", "20.8 mm", "55")
	f.Add("2012-06", "nothing", "", "all the way", "0.825 in", "60")
	f.Add("2012-06-31", "anaerobic", "\u202e", "-1", "1e999 mm", "NaN")
	f.Add("0000", "\"", "'''", "1/2", "0", "")
	f.Fuzz(func(t *testing.T, day, sealant, wept, turns, od, angle string) {
		for _, s := range []string{day, sealant, wept, turns, od, angle} {
			if len(s) > 100 {
				return
			}
		}
		dir := t.TempDir()
		path, record := filepath.Join(dir, "build.toml"), filepath.Join(dir, "record.toml")
		var facts strings.Builder
		facts.WriteString(auditedBuild)
		key := func(name, value string) {
			if value != "" {
				q, _ := json.Marshal(strings.ToValidUTF8(value, "?"))
				facts.WriteString(name + " = " + string(q) + "\n")
			}
		}
		facts.WriteString("[[joint]]\nat = [\"n.b\", \"c.a\"]\n")
		key("dry_since", day)
		key("sealant", sealant)
		key("wept", wept)
		key("turns", turns)
		facts.WriteString("[[end]]\nat = \"p.a\"\n")
		key("od", od)
		key("angle", angle)
		require.NoError(t, os.WriteFile(path, []byte(facts.String()), 0o644))
		do := func(args ...string) (int, string) {
			var out, errOut bytes.Buffer
			status := run(args, strings.NewReader(""), &out, &errOut)
			require.Contains(t, []int{exitClear, exitStops, exitFault}, status)
			require.False(t, strings.ContainsFunc(out.String()+errOut.String(), drives), "%q", out.String()+errOut.String())
			return status, out.String() + errOut.String()
		}
		status, said := do("audit", path, "--on", "2026-11-28")
		again, same := do("audit", path, "--on", "2026-11-28")
		require.Equal(t, status, again)
		require.Equal(t, said, same)
		if status == exitFault {
			return
		}
		recorded, says := do("audit", path, "--on", "2026-11-28", "--record", record)
		require.Equal(t, status, recorded, says)
		order := func(name string) any {
			read, said := do("audit", name, "--on", "2026-11-28", "--json")
			require.Equal(t, status, read, said)
			var out struct{ Lines, Counts any }
			require.NoError(t, json.Unmarshal([]byte(said), &out))
			return out
		}
		require.Equal(t, order(path), order(record), "a record changes no order of work")
	})
}

const auditedBuild = `[build]
name = "Curlew"
currency = "EUR"
[[item]]
id = "n"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }
[[item]]
id = "c"
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[item]]
id = "p"
kind = "plug"
ports = { a = '1/2 NPT male' }
[[run]]
name = "line"
path = ["n", "c", "p"]
`
