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

// alone says which flags do not go together: none is taken and left unused.
func (f *requestFlags) alone(out string) error {
	switch {
	case f.wanted() && out != "":
		return fmt.Errorf("-o writes the workbook, --text and --csv write to the shops: call order once for each")
	case !f.wanted() && f.language != "":
		return fmt.Errorf("--language goes with --text or --csv")
	case f.text == "" && f.prices:
		return fmt.Errorf("--prices goes with --text")
	}
	return nil
}

// requestFacts is the JSON of what goes to the shops.
type requestFacts struct {
	Text    *textFacts   `json:"text,omitempty"`
	Written []tableFacts `json:"written,omitempty"`
}

type textFacts struct {
	Vendor string `json:"vendor"`
	Text   string `json:"text"`
}

type tableFacts struct {
	Vendor string `json:"vendor"`
	File   string `json:"file"`
	Lines  int    `json:"lines"`
}

// request prints the text for a shop, and writes the tables.
func (a *app) request(sys *bom.System, o *order.Order, f requestFlags) error {
	var said requestFacts
	if f.text != "" {
		r, err := request.Of(sys.Build, o, f.text, f.language)
		if err != nil {
			return fmt.Errorf("--text: %w", err)
		}
		var b bytes.Buffer
		if err := r.Text(&b, f.prices); err != nil {
			return err
		}
		said.Text = &textFacts{f.text, b.String()}
	}
	if f.csv != "" {
		var err error
		if said.Written, err = requestTables(sys, o, f); err != nil {
			return err
		}
	}
	if a.json {
		return a.ui.printJSON(said)
	}
	if said.Text != nil {
		for line := range strings.Lines(said.Text.Text) {
			a.ui.line("%s", strings.TrimSuffix(line, "\n"))
		}
		return nil
	}
	for _, w := range said.Written {
		a.ui.say("", "Written: %s (%s)", w.File, counted(w.Lines, "line"))
	}
	return nil
}

// requestTables writes a table for each shop that something is bought from.
func requestTables(sys *bom.System, o *order.Order, f requestFlags) ([]tableFacts, error) {
	if err := os.MkdirAll(f.csv, 0o755); err != nil {
		return nil, fmt.Errorf("the folder %s cannot be made: %s", f.csv, file.Cause(err))
	}
	var written []tableFacts
	for _, v := range o.Vendors {
		r, err := request.Of(sys.Build, o, v.Vendor.ID, f.language)
		if err != nil {
			return nil, fmt.Errorf("--csv: %w", err)
		}
		if len(r.Lines) == 0 {
			continue
		}
		path := filepath.Join(f.csv, shopFile(v.Vendor.ID))
		out, err := file.To(path, sys.Build.Files...)
		if err != nil {
			return nil, err
		}
		if out.Exists() {
			return nil, fmt.Errorf("%s stands there already: take it away, or name another folder", path)
		}
		if err := out.Write(r.CSV); err != nil {
			return nil, err
		}
		written = append(written, tableFacts{v.Vendor.ID, path, len(r.Lines)})
	}
	return written, nil
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
