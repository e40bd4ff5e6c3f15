package workbook

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// By hand, in another program: the filter works under the protection, sorting asks to lift it, as
// the sheet says; and a book that was sorted, filtered and saved there loses nothing when it is
// issued again.
func TestSortedAndFilteredByHand(t *testing.T) {
	if testing.Short() {
		t.Skip("another program is driven here: in the full run")
	}
	o := findOffice(t, false)
	python := "/usr/bin/python3" // the system's own, which the office program's bridge is made for
	if err := exec.Command(python, "-c", "import uno").Run(); err != nil {
		if os.Getenv("HANDTIGHT_NEED_OFFICE") != "" {
			t.Fatal("the office program's bridge to Python is not installed, and this run is to have it")
		}
		t.Skip("the office program's bridge to Python is not installed: nothing was sorted or filtered by hand")
	}
	path := saved(t, sample(t), buyer...)
	out := filepath.Join(t.TempDir(), "sorted.xlsx")
	ctx, cancel := context.WithTimeout(context.Background(), 120*time.Second)
	defer cancel()
	said, err := exec.CommandContext(ctx, python, filepath.Join("testdata", "drive.py"), path, out, o.profile).CombinedOutput()
	require.NoError(t, err, string(said))
	require.Equal(t, "protected: True\nunder protection: not sorted, filtered\nprotected: False\nwithout: sorted, filtered\n", string(said))
	book, err := os.ReadFile(out)
	require.NoError(t, err)
	require.NoError(t, os.WriteFile(path, book, 0o644))
	f, rep := reissued(t, path, sample(t))
	requireBuyer(t, f)
	require.Zero(t, rep.SetAside)
	require.Equal(t, len(buyer), rep.Kept)
}
