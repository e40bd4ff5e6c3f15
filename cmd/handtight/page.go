package main

import (
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/file"
	"handtight/bom/page"
	"handtight/bom/rule"
	"handtight/bom/source"
)

func (a *app) pageCommand() *cobra.Command {
	var out string
	var only []string
	var force, serve bool
	var port int
	cmd := &cobra.Command{
		Use:   "page BUILD -o FILE.html",
		Short: "Write one page to take to the boat: picture, cards, leak test, starting",
		Long: `Writes one HTML file that asks nothing of any network and runs no script: what stops, the
piping picture, what to buy, a card for each joint, the leak test in stages worked out
from where this build's water reaches, first start, daily use, flush and laying up, hoses
to cut and tools, spares, and what all of it rests on. It reads on a phone and prints on
A4 and Letter.

--only writes some sections alone: ` + strings.Join(page.Sections, ", ") + `.
--serve shows it in a browser on this machine only, and again each time the build is saved.`,
		Example: `  handtight page testdata/clean/build.toml -o plant.html
  handtight page build.toml -o cards.html --only cards,stages
  handtight page build.toml --serve`,
		Args: exactly(1, "one build file"),
		RunE: func(cmd *cobra.Command, args []string) error {
			for _, s := range only {
				if !slices.Contains(page.Sections, s) {
					return fmt.Errorf("there is no section %q; there are %s", s, strings.Join(page.Sections, ", "))
				}
			}
			if serve {
				return a.servePage(cmd.Context(), args[0], only, port)
			}
			if out == "" {
				return fmt.Errorf("a page needs a file: -o plant.html, or -o - for the output")
			}
			p, inputs, err := a.makePage(args[0], only)
			if err != nil {
				return err
			}
			return a.writePage(out, p, force, inputs)
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "write to this file (.html); - for the output")
	cmd.Flags().StringSliceVar(&only, "only", nil, "write these sections alone")
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is not a page of ours")
	cmd.Flags().BoolVar(&serve, "serve", false, "show it in a browser on this machine, and again when the build is saved")
	cmd.Flags().IntVar(&port, "port", 0, "the port for --serve; 0 for any that is free")
	cmd.MarkFlagsMutuallyExclusive("serve", "output")
	return cmd
}

// makePage reads, checks and orders a build, and gathers its page.
func (a *app) makePage(path string, only []string) (*page.Page, []string, error) {
	sys, err := a.load(path)
	if err != nil {
		return nil, nil, err
	}
	findings := rule.Check(sys)
	a.judge(findings)
	order, err := sys.Order()
	if err != nil {
		return nil, nil, err
	}
	var text []byte
	for _, name := range sys.Build.Files {
		if data, err := file.Read(name, source.Limit); err == nil {
			text = append(text, data...)
		}
	}
	return page.Of(sys, findings, order, page.Options{Only: only, Text: text}), sys.Build.Files, nil
}

func (a *app) writePage(out string, p *page.Page, force bool, inputs []string) error {
	if out == stdin {
		return page.Write(a.ui.out, p)
	}
	if !strings.EqualFold(filepath.Ext(out), ".html") {
		return fmt.Errorf("%s does not end in .html: name a page file", out)
	}
	place, err := file.To(out, inputs...)
	if err != nil {
		return err
	}
	if err := ours(place, out, force, page.IsOurs); err != nil {
		return err
	}
	if err := place.Write(func(w io.Writer) error { return page.Write(w, p) }); err != nil {
		return err
	}
	if a.json {
		return a.ui.printJSON(map[string]string{"written": out})
	}
	a.ui.line("Written: %s\n%s", out, p.Verdict)
	return nil
}
