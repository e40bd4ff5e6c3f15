package main

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/file"
	"handtight/bom/order"
	"handtight/bom/request"
)

// requestFlags say how a shop is asked for its part of the order.
type requestFlags struct {
	text, csv, language string
	prices              bool
}

func (f *requestFlags) add(cmd *cobra.Command) {
	cmd.Flags().StringVar(&f.text, "text", "", "print the order to this shop as a text for a mail")
	cmd.Flags().StringVar(&f.csv, "csv", "", "write a table for each shop into this folder")
	cmd.Flags().StringVar(&f.language, "language", "", "of --text and --csv: "+strings.Join(request.Languages(), ", ")+" (the shop's own if not said)")
	cmd.Flags().BoolVar(&f.prices, "prices", false, "with --text: print the prices as well")
}

func (f *requestFlags) wanted() bool { return f.text != "" || f.csv != "" }

// request prints the text for a shop, and writes the tables.
func (a *app) request(sys *bom.System, o *order.Order, f requestFlags) error {
	if f.text != "" {
		r, err := request.Of(sys.Build, o, f.text, f.language)
		if err != nil {
			return fmt.Errorf("--text: %w", err)
		}
		var b bytes.Buffer
		if err := r.Text(&b, f.prices); err != nil {
			return err
		}
		for line := range strings.Lines(b.String()) {
			a.ui.line("%s", strings.TrimSuffix(line, "\n"))
		}
	}
	if f.csv == "" {
		return nil
	}
	if err := os.MkdirAll(f.csv, 0o755); err != nil {
		return fmt.Errorf("the folder %s cannot be made: %s", f.csv, file.Cause(err))
	}
	for _, v := range o.Vendors {
		r, err := request.Of(sys.Build, o, v.Vendor.ID, f.language)
		if err != nil {
			return fmt.Errorf("--csv: %w", err)
		}
		if len(r.Lines) == 0 {
			continue
		}
		path := filepath.Join(f.csv, shopFile(v.Vendor.ID))
		out, err := file.To(path, sys.Build.Files...)
		if err != nil {
			return err
		}
		if out.Exists() {
			return fmt.Errorf("%s stands there already: take it away, or name another folder", path)
		}
		if err := out.Write(r.CSV); err != nil {
			return err
		}
		if f.text == "" {
			a.ui.say("", "Written: %s (%s)", path, counted(len(r.Lines), "line"))
		}
	}
	return nil
}

// shopFile is a shop's id as the name of a file.
func shopFile(id string) string {
	safe := strings.Map(func(r rune) rune {
		if strings.ContainsRune(`/\:*?"<>|`, r) || r < ' ' {
			return '-'
		}
		return r
	}, id)
	return strings.TrimLeft(safe, ".-") + ".csv"
}
