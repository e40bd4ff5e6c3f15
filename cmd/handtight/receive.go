package main

import (
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/file"
	"handtight/bom/read"
	"handtight/bom/receive"
	"handtight/bom/source"
	"handtight/bom/workbook"
)

func (a *app) receiveCommand() *cobra.Command {
	var amend bool
	cmd := &cobra.Command{
		Use:   "receive BUILD LIST.xlsx",
		Short: "What came back in the list: what is still out, what came instead, what was paid",
		Long: `Reads what the buyer wrote into a workbook that order wrote: what was ordered, paid and
received, and what was bought besides. Tells what is still out and what nobody ordered yet,
judges each thing that was bought besides by the rules of cart against the place that it may
stand in, and shows real prices as changes of the build's offers, in a diff. Nothing is
written without --amend, which keeps each old file beside under a number (build.issue-1.toml).
A price paid is that of one, as the list counts it.

With --json: {"build", "out", "not_ordered", "in", "unclear", "gone", "missing": [{"vendor", "item",
"row", "order", "ordered", "received", "short", "over", "said", "remark"}], "besides": [{"row",
"text", "quantity", "received", "remark", "item", "place", "status", "does", "reason", "remedy", "ask"}], "prices":
[{"vendor", "item", "currency", "was", "paid"}], "left": [{"item", "why"}], "diff", "written"}.

Exit status 0, 1 when something that was bought besides does not do in its place, 2 when a
file cannot be read.`,
		Example: `  handtight receive build.toml list.xlsx
  handtight receive build.toml list.xlsx --amend`,
		Args: exactly(2, "a build file and the workbook that came back"),
		RunE: func(_ *cobra.Command, args []string) error { return a.receive(args[0], args[1], amend) },
	}
	cmd.Flags().BoolVar(&amend, "amend", false, "write the prices paid into the build's offers")
	return cmd
}

// listLimit bounds a workbook that came back.
var listLimit = file.Limit{Bytes: 64 << 20, Remedy: "take out what was added to it"}

type receiveFacts struct {
	Build      string          `json:"build"`
	Out        []receiveLine   `json:"out"`
	NotOrdered []receiveLine   `json:"not_ordered"`
	In         []receiveLine   `json:"in"`
	Unclear    []receiveLine   `json:"unclear"`
	Gone       []receiveLine   `json:"gone"`
	Missing    []receiveLine   `json:"missing"`
	Besides    []receiveBeside `json:"besides"`
	Prices     []receivePrice  `json:"prices"`
	Left       []receiveLeft   `json:"left"`
	Diff       string          `json:"diff"`
	Written    []string        `json:"written"`
}

type receiveLine struct {
	Shop     string `json:"vendor"`
	Item     string `json:"item"`
	Row      int    `json:"row"`
	Order    string `json:"order"`
	Ordered  string `json:"ordered"`
	Received string `json:"received"`
	Short    string `json:"short"`
	Over     string `json:"over"`
	Said     string `json:"said"`
	Remark   string `json:"remark"`
}

type receiveBeside struct {
	Row    int    `json:"row"`
	Text   string `json:"text"`
	Number string `json:"quantity"`
	Came   string `json:"received"`
	Remark string `json:"remark"`
	Item   string `json:"item"`
	Place  string `json:"place"`
	Status string `json:"status"`
	Does   bool   `json:"does"`
	Reason string `json:"reason"`
	Remedy string `json:"remedy"`
	Ask    string `json:"ask"`
}

type receivePrice struct {
	Shop     string `json:"vendor"`
	Item     string `json:"item"`
	Currency string `json:"currency"`
	Was      string `json:"was"`
	Paid     string `json:"paid"`
}

type receiveLeft struct {
	Item string `json:"item"`
	Why  string `json:"why"`
}

func (a *app) receive(path, list string, amend bool) error {
	if path == stdin {
		return fmt.Errorf("receive needs a build file: its offers are amended where they stand")
	}
	sys, err := a.load(path)
	if err != nil {
		return err
	}
	data, err := file.Read(list, listLimit)
	if err != nil {
		return err
	}
	got, err := workbook.Came(list, data)
	if err != nil {
		return err
	}
	order, err := sys.Order()
	if err != nil {
		return err
	}
	report, err := receive.Of(sys, order, got)
	if err != nil {
		return err
	}
	if report.Stops() {
		a.status = exitStops
	}
	texts := map[string][]byte{}
	for _, name := range sys.Build.Files {
		if texts[name], err = file.Read(name, source.Limit); err != nil {
			return err
		}
	}
	files, left := receive.Amend(sys.Build, texts, report.Prices)
	if err := a.readAgain(sys, texts, files); err != nil {
		return err
	}
	f := receiveFactsOf(sys, report, files, left)
	if amend {
		if f.Written, err = amendFiles(files); err != nil {
			return err
		}
	}
	if a.json {
		return a.ui.printJSON(f)
	}
	a.printReceive(&f, report, amend)
	return nil
}

// readAgain reads the amended build in a folder of its own, before anything is written.
func (a *app) readAgain(sys *bom.System, texts map[string][]byte, files []receive.File) error {
	if len(files) == 0 {
		return nil
	}
	top := filepath.Dir(sys.Build.File)
	dir, err := os.MkdirTemp("", "handtight-amend-")
	if err != nil {
		return err
	}
	defer os.RemoveAll(dir)
	for name, text := range texts {
		for _, x := range files {
			if x.Path == name {
				text = x.New
			}
		}
		to, err := filepath.Rel(top, name)
		if err != nil || !filepath.IsLocal(to) {
			return fmt.Errorf("%s lies outside the folder of %s: write its prices by hand", name, sys.Build.File)
		}
		if err := os.MkdirAll(filepath.Join(dir, filepath.Dir(to)), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(filepath.Join(dir, to), text, 0o644); err != nil {
			return err
		}
	}
	var again *build.Build
	var faults source.Faults
	if again, faults = read.ReadWith(filepath.Join(dir, filepath.Base(sys.Build.File)), read.Options{}); len(faults) > 0 {
		return fmt.Errorf("the prices paid do not go into the build: %s; write them by hand", faults[0].Reason)
	}
	if _, faults = bom.Walk(again); len(faults) > 0 {
		return fmt.Errorf("the prices paid do not go into the build: %s; write them by hand", faults[0].Reason)
	}
	return nil
}

// amendFiles writes each file, and keeps the old one beside under a number.
func amendFiles(files []receive.File) ([]string, error) {
	var out []string
	for _, x := range files {
		to, err := file.To(x.Path)
		if err != nil {
			return out, err
		}
		kept, err := to.Aside(source.Limit)
		if err != nil {
			return out, err
		}
		if err := to.Write(func(w io.Writer) error { _, err := w.Write(x.New); return err }); err != nil {
			return out, err
		}
		out = append(out, x.Path+" (before: "+kept+")")
	}
	return out, nil
}

func receiveFactsOf(sys *bom.System, r *receive.Report, files []receive.File, left []receive.Left) receiveFacts {
	f := receiveFacts{
		Build: sys.Build.Name, Out: receiveLines(r.Out), NotOrdered: receiveLines(r.NotOrdered), In: receiveLines(r.In), Unclear: receiveLines(r.Unclear),
		Gone: receiveLines(r.Gone), Missing: receiveLines(r.Missing), Besides: []receiveBeside{}, Prices: []receivePrice{}, Left: []receiveLeft{}, Written: []string{},
	}
	for _, s := range r.Substitutes {
		f.Besides = append(f.Besides, receiveBeside{s.Row, s.What, s.Number, s.Came, s.Remark, s.Item, s.Place, string(s.Status), s.Does, s.Reason, s.Remedy, s.Ask})
	}
	for _, p := range r.Prices {
		f.Prices = append(f.Prices, receivePrice{p.Shop, p.Item, p.Currency, p.Was, p.Paid})
	}
	for _, l := range left {
		f.Left = append(f.Left, receiveLeft{l.Item, l.Why})
	}
	for _, x := range files {
		f.Diff += string(diff.Diff(x.Path, x.Old, x.Path, x.New))
	}
	return f
}

func receiveLines(list []receive.Line) []receiveLine {
	out := []receiveLine{}
	for _, l := range list {
		out = append(out, receiveLine(l))
	}
	return out
}

func (a *app) printReceive(f *receiveFacts, r *receive.Report, amend bool) {
	u := a.ui
	u.say(bold, "%s", f.Build)
	u.say("", "%d here, %d still out, %d not ordered, %d unclear, %d bought besides", len(f.In), len(f.Out), len(f.NotOrdered), len(f.Unclear), len(f.Besides))
	if r.Other != "" {
		u.fold("  mind", fmt.Sprintf("the list was made for another build, %q.", r.Other))
	}
	if r.Partial != "" {
		u.fold("  mind", r.Partial+".")
	}
	for _, part := range []struct {
		title string
		list  []receiveLine
		say   func(l receiveLine) string
	}{
		{"Still out", f.Out, func(l receiveLine) string {
			text := l.Short + " of " + l.Item + " at " + l.Shop
			if l.Received != "" && l.Received != "0" {
				text += ", " + l.Received + " came"
			}
			return text
		}},
		{"Marked in words that are neither a number nor yes", f.Unclear, func(l receiveLine) string { return fmt.Sprintf("%s at %s: %q, row %d", l.Item, l.Shop, l.Said, l.Row) }},
		{"Not ordered", f.NotOrdered, func(l receiveLine) string { return l.Order + " of " + l.Item + shopWords(l.Shop) }},
		{"Came, and the build no longer asks for it", f.Gone, func(l receiveLine) string { return l.Item + " at " + l.Shop }},
		{"On the list as it is now, and in no row of this book", f.Missing, func(l receiveLine) string { return l.Order + " of " + l.Item + shopWords(l.Shop) }},
		{"Here, and more of it than was due", having(f.In, func(l receiveLine) bool { return l.Over != "" }), func(l receiveLine) string { return l.Over + " more of " + l.Item + " at " + l.Shop }},
		{"Here, with a remark that nothing judges; what came in its place is judged under Bought besides", having(f.In, func(l receiveLine) bool { return l.Over == "" && l.Remark != "" }),
			func(l receiveLine) string { return l.Item + " at " + l.Shop }},
	} {
		if len(part.list) == 0 {
			continue
		}
		u.line("")
		u.say(bold, "%s", part.title)
		for _, l := range part.list {
			text := part.say(l)
			if l.Remark != "" {
				text += " (" + l.Remark + ")"
			}
			u.fold("  -", text)
		}
	}
	a.printBesides(f)
	a.printPrices(f, amend)
}

// having are the lines of which something is so.
func having(list []receiveLine, is func(receiveLine) bool) []receiveLine {
	return slices.DeleteFunc(slices.Clone(list), func(l receiveLine) bool { return !is(l) })
}

func shopWords(shop string) string {
	if shop == "" {
		return ", no shop named"
	}
	return " at " + shop
}

func (a *app) printBesides(f *receiveFacts) {
	u := a.ui
	if len(f.Besides) == 0 {
		return
	}
	u.line("")
	u.say(bold, "Bought besides the list")
	for _, s := range f.Besides {
		head := fmt.Sprintf("row %d: %s", s.Row, s.Text)
		if s.Came != "" {
			head += ", received: " + s.Came
		}
		if s.Remark != "" {
			head += " (" + s.Remark + ")"
		}
		switch {
		case s.Item != "" && s.Does:
			head += fmt.Sprintf(": does as %s, which is %s", s.Item, s.Place)
		case s.Item != "":
			head += fmt.Sprintf(": in place of %s, which is %s [%s]", s.Item, s.Place, s.Status)
		default:
			head += " [" + s.Status + "]"
		}
		u.fold("  -", head)
		if !s.Does {
			u.fold("    why", strings.TrimSpace(s.Reason))
			if s.Remedy != "" {
				u.fold("    do", s.Remedy)
			}
		}
		if s.Ask != "" {
			u.fold("    ask", s.Ask)
		}
	}
}

func (a *app) printPrices(f *receiveFacts, amend bool) {
	u := a.ui
	if len(f.Prices) == 0 {
		return
	}
	u.line("")
	u.say(bold, "Paid otherwise than the offers say: %s", counted(len(f.Prices), "price"))
	for _, l := range strings.Split(strings.TrimSuffix(f.Diff, "\n"), "\n") {
		u.line("%s", l)
	}
	for _, l := range f.Left {
		u.fold("  left", l.Item+": "+l.Why)
	}
	for _, w := range f.Written {
		u.say("", "Written: %s", w)
	}
	if !amend && f.Diff != "" {
		u.say("", "Nothing is written; --amend writes it.")
	}
}
