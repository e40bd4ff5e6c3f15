//go:build unix

package main

import (
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"github.com/xuri/excelize/v2"
)

// A run that is killed at any moment leaves the list that stood there, or the new one
// whole; the next run takes away what it left.
func TestKilledWhileWriting(t *testing.T) {
	rounds := 12
	if testing.Short() {
		rounds = 3
	}
	dir := t.TempDir()
	list := filepath.Join(dir, "list.xlsx")
	program := filepath.Join(t.TempDir(), "handtight")
	if out, err := exec.Command("go", "build", "-o", program, ".").CombinedOutput(); err != nil {
		t.Skipf("the go command does not run here: %s", out)
	}
	order := func() *exec.Cmd { return exec.Command(program, "order", cleanBuild, "-o", list) }
	began := time.Now()
	require.NoError(t, order().Run())
	whole := time.Since(began)
	for range rounds {
		cmd := order()
		require.NoError(t, cmd.Start())
		time.Sleep(time.Duration(rand.Int64N(int64(whole))))
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
		f, err := excelize.OpenFile(list)
		require.NoError(t, err, "the list is whole")
		require.NotEmpty(t, f.GetSheetList())
		require.NoError(t, f.Close())
	}
	require.NoError(t, order().Run())
	entries, err := os.ReadDir(dir)
	require.NoError(t, err)
	require.Len(t, entries, 1, "what killed runs left is taken away")
}
