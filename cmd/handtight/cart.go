package main

import (
	"errors"
	"fmt"
	"io/fs"
	"path/filepath"
	"slices"

	"github.com/spf13/cobra"

	"handtight/bom/cart"
	"handtight/bom/facts"
	"handtight/bom/file"
	"handtight/bom/money"
	"handtight/bom/order"
	"handtight/bom/source"
)

// cartFlags are what the user may say of the carts.
type cartFlags struct {
	columns, encoding, currency, sheet string
	accept, accepted                   string
	all, why                           bool
}

// add adds the flags that say how a list is read; currency says more of the currency.
func (f *cartFlags) add(cmd *cobra.Command, currency string) {
	cmd.Flags().StringVar(&f.columns, "columns", "", "which column is what, such as text=Benennung,quantity=3")
	cmd.Flags().StringVar(&f.encoding, "encoding", "", "encoding of text files, such as windows-1250 (found by itself if not said)")
	cmd.Flags().StringVar(&f.currency, "currency", "", "currency of prices that name none, "+currency)
	cmd.Flags().StringVar(&f.sheet, "sheet", "", "the one sheet of a workbook to read")
}

func (a *app) cartCommand() *cobra.Command {
	var f cartFlags
	cmd := &cobra.Command{
		Use:   "cart BUILD CART...",
		Short: "Does this cart, quote or invoice buy the build?",
		Long: `Reads one or several carts, quotes or invoices (CSV or XLSX), matches their lines to what
the build needs, and reports what is wrong first: threads, sexes, sizes, ratings, hose standards,
settings, voltages, flows, finenesses and materials that are not what the place needs, with
the joint and the pressure and what to order instead; then what must be asked, what is
short (spares counted), prices other than the offers, what two carts both buy, surplus and
what the build does not need. A line covers a place only if all that the place needs is met:
where a high-pressure place needs what the line does not say, that is asked, whatever the
code says. What is not sure is never assumed, and no line is dropped.

Columns are found by their headings, in many languages. --columns says them, by heading
or by number; its names are text, code, item, quantity, unit, pack, price, total,
currency, material, rating, size and status.

--accept FILE asks each open question (the number of a choice, y, n for none of the
build's, or nothing to leave it open) and writes what was confirmed to the file;
--accepted FILE uses it the next time.

With --json: {"build", "lines": [{"cart", "sheet", "line", "text", "status", "also",
"item", "items", "confidence", "evidence": [{"says", "points"}], "reason", "remedy",
"quantity", "unit", "price", "currency", "wrong", "ask", "not_used" (words of a line that
covers which nothing understands), "joint", "pressure_bar"}], "items": [{"item", "about", "unit", "need" (placed, planned and extra, as of order), "spare", "have", "to_buy",
"need_to_build", "in_cart", "status", "unsure", "reason", "remedy"}], "questions": [{"cart", "line",
"item", "choices", "ask", "settles"}], "notes", "counts"}. Confidence is 0 to 1. A line's
status is covers, wrong-thread, wrong-sex, wrong-size, low-rating, wrong-material,
wrong-standard, wrong-setting, wrong-length, wrong-voltage, wrong-flow, wrong-fineness,
wrong-use, unsure, no-quantity, bought-twice, surplus, other-price, sum-differs, not-needed, no-end or out;
an item's is covered, short, short-of-spares, missing or surplus.

Exit status 0 when the carts can build the build, 1 when they cannot, 2 when a file
cannot be read.`,
		Example: `  handtight cart testdata/clean/build.toml testdata/carts/elbe.csv testdata/carts/pier.xlsx
  handtight cart build.toml quote.csv --columns text=Benennung,quantity=3
  handtight cart build.toml cart.xlsx --accept confirmed.toml`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) < 2 {
				return exactly(2, "a build file and one cart or more")(cmd, args)
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error { return a.cart(args[0], args[1:], f) },
	}
	f.add(cmd, "such as EUR")
	cmd.Flags().StringVar(&f.accept, "accept", "", "ask what is open, and write what was confirmed to this file")
	cmd.Flags().BoolVar(&f.all, "all", false, "list every line, with what covers and what stays out")
	cmd.Flags().BoolVar(&f.why, "why", false, "list every line with what it was matched by, and the points of each")
	cmd.Flags().StringVar(&f.accepted, "accepted", "", "use what was confirmed in this file")
	return cmd
}

// cart runs the command.
func (a *app) cart(build string, paths []string, f cartFlags) error {
	sys, err := a.load(build)
	if err != nil {
		return err
	}
	order, err := sys.Order()
	if err != nil {
		return err
	}
	var accept *file.Output
	if f.accept != "" {
		if accept, err = placeOfAccepted(f.accept, slices.Concat(sys.Build.Files, paths)); err != nil {
			return err
		}
	}
	carts, err := readCarts(paths, f)
	if err != nil {
		return err
	}
	confirmed, err := readAccepted(order, f)
	if err != nil {
		return err
	}
	report := cart.Judge(sys, order, carts, confirmed)
	if accept != nil {
		a.askCart(report, confirmed)
		report = cart.Judge(sys, order, carts, confirmed)
		if err := writeAccepted(accept, confirmed); err != nil {
			return err
		}
	}
	if !report.Builds() {
		a.status = exitStops
	}
	if a.json {
		return a.ui.printJSON(facts.CartOf(report))
	}
	a.printCart(sys, report, cartShown{all: f.all || f.why, why: f.why})
	if f.accept != "" {
		a.ui.line("Confirmed: %s (%s); use it by --accepted %s", f.accept, counted(len(confirmed.Entries()), "line"), f.accept)
	}
	return nil
}

// options is how the flags say that lists are to be read.
func (f cartFlags) options() (cart.Options, error) {
	o := cart.Options{Encoding: f.encoding, Currency: f.currency, Sheet: f.sheet}
	if f.columns != "" {
		columns, err := cart.ParseColumns(f.columns)
		if err != nil {
			return o, fmt.Errorf("--columns: %w", err)
		}
		o.Columns = columns
	}
	if f.currency != "" {
		if err := money.CheckCode(f.currency); err != nil {
			return o, fmt.Errorf("--currency: %w", err)
		}
	}
	return o, nil
}

// givenTwice faults each list that is named more than once.
func givenTwice(paths []string) (failed []error) {
	for i, path := range paths {
		if slices.ContainsFunc(paths[:i], func(earlier string) bool { return filepath.Clean(earlier) == filepath.Clean(path) }) {
			failed = append(failed, fmt.Errorf("%s is given twice: each list counts once", path))
		}
	}
	return failed
}

// readCarts reads every cart, and reports every one that cannot be read.
func readCarts(paths []string, f cartFlags) ([]*cart.Cart, error) {
	o, err := f.options()
	if err != nil {
		return nil, err
	}
	var carts []*cart.Cart
	failed := givenTwice(paths)
	for _, path := range paths {
		data, err := file.Read(path, cart.Limit)
		if err != nil {
			failed = append(failed, err)
			continue
		}
		c, err := cart.Read(path, data, o)
		if err != nil {
			failed = append(failed, err)
			continue
		}
		carts = append(carts, c)
	}
	return carts, errors.Join(failed...)
}

// readAccepted reads what was confirmed before, also from the file that is to be
// written again.
func readAccepted(order *order.Order, f cartFlags) (*cart.Accepted, error) {
	all := &cart.Accepted{}
	for _, path := range []string{f.accepted, f.accept} {
		if path == "" {
			continue
		}
		text, err := file.Read(path, source.Limit)
		if errors.Is(err, fs.ErrNotExist) && path == f.accept && path != f.accepted {
			continue
		}
		if err != nil {
			return nil, fmt.Errorf("the confirmed lines cannot be read: %w", err)
		}
		one, faults := cart.ReadAccepted(path, text)
		if len(faults) > 0 {
			return nil, faults
		}
		all.Merge(one)
	}
	known := map[string]bool{}
	for _, l := range order.Lines {
		known[l.Need.Key] = true
	}
	if names := all.Unknown(func(item string) bool { return known[item] }); len(names) > 0 {
		return nil, fmt.Errorf("lines were confirmed to be %q, which the build does not buy: take them out of the file, or write their items into the build", names)
	}
	return all, nil
}

// writeAccepted writes what was confirmed in place of what stood there.
func writeAccepted(out *file.Output, confirmed *cart.Accepted) error {
	return out.Write(confirmed.Write)
}

// placeOfAccepted looks at the file that is to be written: one that is not there, is empty,
// or was written by this program; what a person wrote there would be lost.
func placeOfAccepted(path string, inputs []string) (*file.Output, error) {
	out, err := file.To(path, inputs...)
	if err != nil || !out.Exists() {
		return out, err
	}
	text, err := out.Read(source.Limit)
	if err != nil {
		return nil, err
	}
	if !cart.IsAccepted(text) {
		return nil, fmt.Errorf("%s stays as it is, for it would be lost: it is not a file of confirmed lines that this program wrote; choose another name for --accept, and name this one by --accepted if it holds confirmed lines", path)
	}
	return out, nil
}
