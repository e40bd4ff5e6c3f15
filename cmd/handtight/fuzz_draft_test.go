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

// Any list put together into a build: it ends in one of its three ways, drives no terminal,
// says the same twice, and the build that it writes can be read by check, and by draft as
// the one to lay the same list to.
func FuzzDraft(f *testing.F) {
	f.Add([]byte("code,description,qty,price\nQ-1,Adaptor 1/2 NPT M x F 316,1,2.40\nQ-2,Plunger pump 230 V 9 L/min 1/2 NPT F in and out,1,900\n"), byte(0))
	f.Add([]byte("Stk;Bezeichnung;Preis\n1;Druckrohr 2540 1/2 NPT IG;240,00\n2;Doppelnippel 1/2 NPT 316;2,40\n1;Membran 2540;180\n"), byte(0))
	f.Add([]byte("Hose 1/2 100R2 2 m\n2 x ball valve 1/2 BSPP F\nhigh pressure pump 9 L/min G 1/2 female\nmembrane 2540\n"), byte(1))
	f.Add([]byte("Relief valve 1/2 NPT, set 65 bar = \"x\"\n'''\n# kind = \"pump\"\n[[item]]\n"), byte(1))
	f.Add([]byte("a,b\n\"unfinished"), byte(0))
	f.Add([]byte("\xff\xfe1\x00,\x002\x00"), byte(0))
	f.Fuzz(func(t *testing.T, list []byte, how byte) {
		if len(list) > 2000 {
			return
		}
		dir := t.TempDir()
		cart, build := filepath.Join(dir, "cart."+[]string{"csv", "txt"}[int(how)%2]), filepath.Join(dir, "build.toml")
		require.NoError(t, os.WriteFile(cart, list, 0o644))
		do := func(args ...string) (int, string) {
			var out, errOut bytes.Buffer
			status := run(args, strings.NewReader(""), &out, &errOut)
			require.Contains(t, []int{exitClear, exitStops, exitFault}, status)
			require.False(t, strings.ContainsFunc(out.String()+errOut.String(), drives), "%q", out.String()+errOut.String())
			return status, out.String() + errOut.String()
		}
		status, said := do("draft", cart, "--yes", "--steps", "2000", "--currency", "EUR")
		again, same := do("draft", cart, "--yes", "--steps", "2000", "--currency", "EUR")
		require.Equal(t, status, again)
		require.Equal(t, said, same)
		jsonStatus, text := do("draft", cart, "--yes", "--steps", "2000", "--currency", "EUR", "--json", "-o", build)
		require.Equal(t, status, jsonStatus)
		if status == exitFault {
			require.NoFileExists(t, build)
			return
		}
		require.True(t, json.Valid([]byte(text)), text)
		if _, err := os.Stat(build); err != nil {
			return // no plant, so no file
		}
		checked, says := do("check", build)
		require.NotEqual(t, exitFault, checked, "what draft writes, check reads: %s", says)
		laid, says := do("draft", cart, "--yes", "--into", build)
		require.NotEqual(t, exitFault, laid, says)
	})
}
