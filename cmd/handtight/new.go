package main

import (
	_ "embed"
	"fmt"
	"io"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"handtight/bom/file"
)

//go:embed starter.toml
var starter []byte

func (a *app) newCommand() *cobra.Command {
	return &cobra.Command{
		Use:   "new DIR",
		Short: "Write a commented starter build that checks clean",
		Long: `Makes the folder if it is not there, and writes build.toml into it: a small build with
every section explained. A file that is there already is never overwritten.`,
		Example: `  handtight new my-boat
  handtight check my-boat/build.toml`,
		Args: exactly(1, "one folder"),
		RunE: func(_ *cobra.Command, args []string) error {
			path := filepath.Join(args[0], "build.toml")
			if err := writeNew(args[0], path); err != nil {
				return err
			}
			if a.json {
				return a.ui.printJSON(map[string]string{"written": path})
			}
			a.ui.line("Written: %s\nNext: handtight check %s", path, path)
			return nil
		},
	}
}

// writeNew writes the starter where nothing stands yet.
func writeNew(dir, path string) error {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %s", dir, file.Cause(err))
	}
	out, err := file.To(path)
	if err != nil {
		return err
	}
	if out.Exists() {
		return fmt.Errorf("%s is there already and is kept: name another folder", path)
	}
	return out.Write(func(w io.Writer) error {
		_, err := w.Write(starter)
		return err
	})
}
