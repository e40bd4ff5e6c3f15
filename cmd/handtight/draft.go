package main

import (
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"
	"time"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/cart"
	"handtight/bom/draft"
	"handtight/bom/file"
	"handtight/bom/finding"
	"handtight/bom/money"
	"handtight/bom/read"
	"handtight/bom/rule"
)

// draftFlags are what the user may say of a draft.
type draftFlags struct {
	cart      cartFlags
	out       string
	name      string
	like      string
	rates     []string
	day       string
	yes, over bool
	steps     int
	into      string
	amend     bool
}

func (f *draftFlags) add(cmd *cobra.Command) {
	f.cart.add(cmd, "and of the build")
	fl := cmd.Flags()
	fl.StringVarP(&f.out, "output", "o", "", "write the build to this file")
	fl.StringVar(&f.name, "name", "", "name of the build")
	fl.StringVar(&f.like, "like", "", "take another plant: throttle, recovery; series, parallel; one, two")
	fl.StringSliceVar(&f.rates, "rate", nil, "what one of a currency costs in the build's, such as USD=0.92")
	fl.StringVar(&f.day, "rate-day", "", "the day of the rates, such as 2026-11-20")
	fl.BoolVar(&f.yes, "yes", false, "take the default of every question")
	fl.BoolVar(&f.over, "force", false, "write over a file that stands there")
	fl.StringVar(&f.into, "into", "", "lay the lists to this build, and show what they add")
	fl.BoolVar(&f.amend, "amend", false, "with --into: write it; the old file is kept beside it with a number")
	fl.IntVar(&f.steps, "steps", 0, "how many steps the search may take (400,000)")
}

func (a *app) draftCommand() *cobra.Command {
	var f draftFlags
	cmd := &cobra.Command{
		Use:   "draft LIST...",
		Short: "Put the parts of carts and lists together into a build",
		Long:  draftHelp,
		Example: `  handtight draft testdata/draft/kontor.csv testdata/draft/quay.csv -o build.toml
  handtight draft cart.xlsx --yes --rate USD=0.92 --rate-day 2026-11-20 -o build.toml
  handtight draft - -o build.toml < list.txt
  handtight draft later.csv --into build.toml --amend`,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) < 1 {
				return exactly(1, "one list or more")(cmd, args)
			}
			return nil
		},
		RunE: func(_ *cobra.Command, args []string) error {
			switch {
			case f.into != "" && f.out != "":
				return fmt.Errorf("--into amends a build that is there, and -o writes a new one: say one of them")
			case f.into == "" && f.amend:
				return fmt.Errorf("--amend goes with --into BUILD, the build that is amended")
			case f.into != "":
				return a.draftInto(args, &f)
			}
			return a.draft(args, &f)
		},
	}
	f.add(cmd)
	return cmd
}

// draftHelp is what help says of draft.
const draftHelp = `Reads one or several carts, quotes, invoices or plain lists (CSV, XLSX, lines of text; - is
standard input), in any language that cart reads, and puts their parts together: which plant
they make, which fitting goes where, what is missing with the part to buy, what does not fit,
what is left over, and what must be asked. No line is dropped: what is no part stays in the
file as a comment with its place.

Every joint is judged as check judges it, at the pressure of its place, and each piece is used
once. Of all ways to put the pieces together the one with the fewest stops is taken, then the
fewest pieces to buy, the fewest questions, the least left over. Up to 400,000 steps every way is
tried, which is enough for most plants of one basket; past that (--steps) the best that was found
is bettered a few places at a time, and how many pieces fewer might be missing is said.

-o writes the build, commented. ASSUMED is what no list says and was taken, ASK is what must
be asked first, MISSING is to buy. At a terminal the questions that decide most are asked,
each with the answer that would be taken; --yes takes them all. Without either, what nobody
answered stays a comment, for a guess clears nothing.

Where each of the parts that a plant has once is there twice or more often, that many plants
are drafted into one file, sharing a line where that saves parts, and which part belongs to
which is asked.

--like takes another of the plants that the parts could be: throttle or recovery, series or
parallel, one or two plants. --rate CODE=N says what one of a currency costs in the build's, --rate-day when that was.

--into BUILD lays later lists to a build that is there: what they fill, what they double, what
does not fit. A piece is laid where the build lacks one, a gauge, a probe or a relief on a tee of
the lists, a flush line before the pump, a second vessel behind the first, a throttle behind the
vessels, a selector with its drain, a seacock for the boat's own that was assumed; each is kept only
where a check of the whole finds no further stop, but for what equipment brings wherever it stands
(nobody says what it holds), which is said. A first vessel and vessels side by side are not laid.
What is added stands behind the build's own text, which
stays as it is but for the steps of a run that a piece goes between; files that it includes are not
touched. It is shown as a difference, and written only with --amend, the old file kept beside it.

With --json: {"lines", "joints", "made", "plant", "why", "others", "none", "missing": [{"where",
"run", "what", "buy", "note", "role", "need", "stop"}], "misfits": [{"line", "text", "place",
"why"}], "left": [{"line", "text", "count", "spare"}], "questions": [{"key", "ask", "why",
"choices", "default", "answer", "lines"}], "proven", "stops", "cautions", "written"}; with --into {"fills", "doubles", "wrong", "new", "aside":
[{"line", "text", "item", "says"}], "diff", "stops", "new_stops", "written"}.

Exit status 0 when the parts make the plant, 1 when something is missing, stops, or is no
plant, 2 when a list cannot be read.`

// options reads what the flags say of a draft.
func (f *draftFlags) options() (draft.Options, error) {
	o := draft.Options{Name: f.name, Like: f.like, Currency: f.cart.currency, Steps: f.steps, RateDay: f.day, Rates: map[string]string{}, Answers: map[string]string{}}
	if _, err := time.Parse(time.DateOnly, f.day); len(f.rates) > 0 && err != nil {
		return o, fmt.Errorf("--rate goes with the day on which it was looked up: write --rate-day 2026-11-20")
	}
	for _, r := range f.rates {
		code, n, ok := strings.Cut(r, "=")
		if _, err := money.ParseRate(n); !ok || err != nil || money.CheckCode(code) != nil {
			return o, fmt.Errorf("--rate: `%s` is no rate: write the currency and what one of it costs, such as USD=0.92", r)
		}
		o.Rates[code] = n
	}
	return o, nil
}

// draft runs the command.
func (a *app) draft(paths []string, f *draftFlags) error {
	o, err := f.options()
	if err != nil {
		return err
	}
	carts, err := a.readLists(paths, f.cart)
	if err != nil {
		return err
	}
	var place *file.Output
	if f.out != "" {
		if place, err = file.To(f.out, paths...); err != nil {
			return err
		}
		if place.Exists() && !f.over {
			return fmt.Errorf("%s is there already and is kept: choose another name, or write over it with --force", f.out)
		}
	}
	d, err := a.drafted(carts, o, f.yes)
	if err != nil {
		return err
	}
	facts := draftFactsOf(d)
	if d.None == "" {
		list, err := judged(d)
		if err != nil {
			return err
		}
		facts.Stops, facts.Cautions = finding.Count(list, finding.Stop), finding.Count(list, finding.Caution)
	}
	if d.None != "" || len(d.Missing) > 0 || facts.Stops > 0 {
		a.status = exitStops
	}
	if place != nil && d.None == "" {
		if err := place.Write(func(w io.Writer) error { _, err := w.Write(d.Text); return err }); err != nil {
			return err
		}
		facts.Written = f.out
	}
	if a.json {
		return a.ui.printJSON(facts)
	}
	a.printDraft(d, facts)
	return nil
}

// drafted makes a draft, and once more with what was answered to its questions.
func (a *app) drafted(carts []*cart.Cart, o draft.Options, yes bool) (*draft.Draft, error) {
	d, err := draft.Of(carts, o)
	switch {
	case err != nil || d.None != "":
		return d, err
	case yes:
		o.Answers = d.Defaults()
	case a.atTerminal():
		o.Answers = a.askDraft(d)
	default:
		return d, nil
	}
	return draft.Of(carts, o)
}

// judged is what a check says of a drafted build.
func judged(d *draft.Draft) ([]finding.Finding, error) {
	b, faults := read.Parse("draft", d.Text)
	if len(faults) > 0 {
		return nil, faults
	}
	sys, faults := bom.Walk(b)
	if len(faults) > 0 {
		return nil, faults
	}
	return rule.Check(sys), nil
}

// readLists reads every list, and reports every one that cannot be read.
func (a *app) readLists(paths []string, f cartFlags) ([]*cart.Cart, error) {
	o, err := f.options()
	if err != nil {
		return nil, err
	}
	var carts []*cart.Cart
	failed := givenTwice(paths)
	named := map[string]bool{}
	for _, path := range paths {
		name := filepath.Base(path) // the file that is written names no folders
		if named[name] {
			name = path
		}
		named[name] = true
		c, err := a.readList(path, name, o)
		if err != nil {
			failed = append(failed, err)
			continue
		}
		carts = append(carts, c)
	}
	return carts, errors.Join(failed...)
}

// readList reads one list: a file, or what stands on standard input.
func (a *app) readList(path, name string, o cart.Options) (*cart.Cart, error) {
	if path == stdin {
		data, err := file.ReadFrom(a.in, "the list", cart.Limit)
		if err != nil {
			return nil, err
		}
		return draft.ReadList("list", data, o)
	}
	data, err := file.Read(path, cart.Limit)
	if err != nil {
		return nil, err
	}
	return draft.ReadList(name, data, o)
}
