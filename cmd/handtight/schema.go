package main

import (
	"io"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/file"
	"handtight/bom/schema"
)

func (a *app) schemaCommand() *cobra.Command {
	var out string
	cmd := &cobra.Command{
		Use:   "schema",
		Short: "A JSON Schema of build files, for editors that complete and check TOML",
		Long: `Prints a JSON Schema (draft 7) of build files: all sections and keys, the kinds with
their own keys and ports, the words that are taken, and that figures carry a unit. Tell
your editor's TOML support to use it for your builds: it then completes names and marks
what is misspelt. It cannot see joints and pressures: check does.`,
		Example: `  handtight schema > build.schema.json
  handtight schema -o build.schema.json`,
		Args: exactly(0, "no words"),
		RunE: func(*cobra.Command, []string) error {
			text, err := schema.Of()
			if err != nil {
				return err
			}
			if out == "" {
				for line := range strings.Lines(string(text)) {
					a.ui.line("%s", strings.TrimSuffix(line, "\n"))
				}
				return nil
			}
			to, err := file.To(out)
			if err != nil {
				return err
			}
			if err := to.Write(func(w io.Writer) error { _, err := w.Write(text); return err }); err != nil {
				return err
			}
			if a.json {
				return a.ui.printJSON(map[string]string{"written": out})
			}
			a.ui.line("Written: %s", out)
			return nil
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "write it to this file")
	return cmd
}
