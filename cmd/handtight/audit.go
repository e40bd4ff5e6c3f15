package main

import (
	"bytes"
	"fmt"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/rogpeppe/go-internal/diff"
	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/audit"
	"handtight/bom/facts"
	"handtight/bom/file"
	"handtight/bom/read"
	"handtight/bom/source"
	"handtight/pressure/quantity"
	"handtight/threads/evidence"
)

// auditFlags are the flags of audit.
type auditFlags struct {
	on, out, record string
	why, amend      bool
	over            bool
}

func (a *app) auditCommand() *cobra.Command {
	var o auditFlags
	cmd := &cobra.Command{
		Use:   "audit BUILD",
		Short: "What to open, measure, prove and watch on a plant that stands",
		Long: `Reads a build file of a plant that stands, with what is known of its joints ([[joint]]) and
its ends ([[end]]), and prints the order of work: what is known to be wrong, what to open first,
what to measure (the look first that is worth most), what to prove by test and to what pressure,
what may be left and watched, and until when, and what is fine.

The day comes from --on, else from the build: its last audit, or the latest day that it names.

--record OUT writes a copy of the build with the order of work in a block of its own; --amend
writes it into the build itself, shows what changes, and keeps the old file beside it.

Its result is a check and not a certificate. Exit status 0 when nothing is known to be wrong, to
be opened or to be measured, else 1.`,
		Example: `  handtight audit testdata/oldplant/build.toml --on 2026-11-28
  handtight audit build.toml --why
  handtight audit build.toml --on 2026-11-28 -o work.txt
  handtight audit build.toml --on 2026-11-28 --amend`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error { return a.audit(args[0], &o) },
	}
	cmd.Flags().StringVar(&o.on, "on", "", "the day of the audit: 2026-11-28")
	cmd.Flags().BoolVar(&o.why, "why", false, "show the readings of each joint, and the judgements that all rests on")
	cmd.Flags().StringVarP(&o.out, "output", "o", "", "write the order of work to this file as well")
	cmd.Flags().StringVar(&o.record, "record", "", "write a copy of the build with the record to this file, beside the build")
	cmd.Flags().BoolVar(&o.amend, "amend", false, "write the record into the build itself; the old file is kept beside it")
	cmd.Flags().BoolVar(&o.over, "force", false, "with -o or --record: write over a file that stands there")
	cmd.MarkFlagsMutuallyExclusive("record", "amend")
	return cmd
}

func (a *app) audit(path string, o *auditFlags) error {
	var on time.Time
	if o.on != "" {
		day, err := time.Parse(time.DateOnly, strings.TrimSpace(o.on))
		if err != nil {
			return fmt.Errorf("--on: %q is no day: write it as 2026-11-28", o.on)
		}
		on = day
	}
	if path == stdin && (o.record != "" || o.amend) {
		return fmt.Errorf("the record is written into a build file, and standard input is none")
	}
	sys, err := a.load(path)
	if err != nil {
		return err
	}
	plan, err := audit.Of(sys, on)
	if err != nil {
		return err
	}
	for _, s := range []audit.Section{audit.Wrong, audit.Open, audit.Measure} {
		if len(plan.In(s)) > 0 {
			a.status = exitStops
		}
	}
	f := facts.AuditOf(sys, plan, o.why)
	after, err := a.auditFiles(path, sys, plan, f, o)
	if err != nil {
		return err
	}
	if a.json {
		return a.ui.printJSON(f)
	}
	a.printAudit(f, o.why)
	for _, line := range after {
		a.ui.line("%s", line)
	}
	return nil
}

// auditFiles writes what is asked for; it gives the lines that say so. Every place is looked at
// before anything is written.
func (a *app) auditFiles(path string, sys *bom.System, plan *audit.Plan, f *facts.Audit, o *auditFlags) ([]string, error) {
	var say []string
	var report *file.Output
	if o.out != "" {
		place, err := a.auditPlace(o.out, sys, o.over)
		if err != nil {
			return nil, err
		}
		report = place
	}
	if o.record != "" || o.amend {
		lines, err := a.writeRecord(path, sys, plan, o)
		if err != nil {
			return nil, err
		}
		say = lines
	}
	if report != nil {
		var text bytes.Buffer
		shown := &app{ui: newUI(&text, io.Discard), in: a.in}
		shown.printAudit(f, o.why)
		if err := report.Write(func(w io.Writer) error { _, err := w.Write(text.Bytes()); return err }); err != nil {
			return nil, err
		}
		say = append(say, "Written: "+o.out)
	}
	return say, nil
}

func (a *app) auditPlace(path string, sys *bom.System, over bool) (*file.Output, error) {
	place, err := file.To(path, sys.Build.Files...)
	if err != nil {
		return nil, err
	}
	if place.Exists() && !over {
		return nil, fmt.Errorf("%s is there already and is kept: choose another name, or write over it with --force", path)
	}
	return place, nil
}

// writeRecord puts the record into a copy of the build, or into the build itself. What is
// written is read first, as every build is.
func (a *app) writeRecord(path string, sys *bom.System, plan *audit.Plan, o *auditFlags) ([]string, error) {
	text, err := file.Read(path, source.Limit)
	if err != nil {
		return nil, err
	}
	next, err := plan.Record(path, text)
	if err != nil {
		return nil, err
	}
	b, faults := read.ParseWith(path, next, read.Options{Outside: a.outside})
	if len(faults) == 0 {
		_, faults = bom.Walk(b)
	}
	if len(faults) > 0 {
		return nil, fmt.Errorf("the build with its record would not be read, and nothing is written: %w", faults)
	}
	if o.record != "" {
		if !sameFolder(o.record, path) {
			return nil, fmt.Errorf("%s lies in another folder than the build, and what it includes would not be found: write it to %s", o.record, filepath.Join(filepath.Dir(path), filepath.Base(o.record)))
		}
		place, err := a.auditPlace(o.record, sys, o.over)
		if err != nil {
			return nil, err
		}
		return []string{"Written: " + o.record}, place.Write(func(w io.Writer) error { _, err := w.Write(next); return err })
	}
	return a.amend(path, text, next)
}

// amend writes a build again and keeps the old file beside it under a number.
func (a *app) amend(path string, old, next []byte) ([]string, error) {
	if bytes.Equal(old, next) {
		return []string{"The record in " + path + " is as it was: nothing is written."}, nil
	}
	keep, err := numbered(path)
	if err != nil {
		return nil, err
	}
	place, err := file.To(path)
	if err != nil {
		return nil, err
	}
	if err := keep.Write(func(w io.Writer) error { _, err := w.Write(old); return err }); err != nil {
		return nil, err
	}
	if err := place.Write(func(w io.Writer) error { _, err := w.Write(next); return err }); err != nil {
		return nil, err
	}
	lines := strings.Split(strings.TrimSuffix(string(diff.Diff(path, old, path, next)), "\n"), "\n")
	return append(lines, "", "Written: "+path+"; the old one is kept as "+keep.Path()), nil
}

// mostKept is how many old files are kept beside a build.
const mostKept = 999

// numbered is the first name with a number that nothing stands at: build.1.toml.
func numbered(path string) (*file.Output, error) {
	ext := filepath.Ext(path)
	for n := 1; n <= mostKept; n++ {
		place, err := file.To(fmt.Sprintf("%s.%d%s", strings.TrimSuffix(path, ext), n, ext))
		if err != nil {
			return nil, err
		}
		if !place.Exists() {
			return place, nil
		}
	}
	return nil, fmt.Errorf("%d old files are kept beside %s already: take some away", mostKept, path)
}

// auditHeads are the headings of the sections.
var auditHeads = map[string]string{
	"known wrong": "Known wrong: do not run it", "open this first": "Open this first", "measure this": "Measure this, in this order",
	"prove by test": "Prove by test", "leave and watch": "Leave and watch", "fine": "Fine",
}

func (a *app) printAudit(f *facts.Audit, why bool) {
	u := a.ui
	a.printHead(f.Build, f.File)
	day := "No day is named, so no time counts: say --on 2026-11-28"
	if f.On != nil {
		day = "On " + *f.On
		if f.From != "as asked" {
			day += " (" + f.From + ")"
		}
	}
	u.say("", "%s", day)
	u.line("")
	for _, s := range audit.Sections() {
		a.printSection(f, s.String())
	}
	if len(f.Gone) > 0 {
		u.say("", "The record of the audit before speaks of joints that are no more: %s.", strings.Join(f.Gone, ", "))
		u.line("")
	}
	if why {
		a.printBeliefs(f)
	}
	a.printCautions(f.Cautions)
	u.say(bold, "%s", auditCounts(f))
	u.say("", "A check by what was said and measured, and not a certificate: what nobody looked at is not cleared.")
}

func (a *app) printSection(f *facts.Audit, section string) {
	u := a.ui
	n := 0
	var fine []string
	for i := range f.Lines {
		l := &f.Lines[i]
		if l.Section != section {
			continue
		}
		if n++; n == 1 {
			u.say(bold, "%s", auditHeads[section])
		}
		if section == audit.Fine.String() && !strings.Contains(l.Why, "Proved") {
			fine = append(fine, strings.Fields(l.At)[0])
			continue
		}
		at := l.At
		if len(l.Joints) == 1 {
			if was := f.Joints[slices.IndexFunc(f.Joints, func(j facts.AuditJoint) bool { return j.Number == l.Joints[0] })].Was; was != "" && was != section {
				at += " (was: " + was + ")"
			}
		}
		u.fold(fmt.Sprintf("%3d.", n), at)
		if l.Do != "" {
			u.fold("  do", l.Do)
		}
		u.fold("  why", l.Why)
		if l.Cost != "" {
			u.fold("  wrong", l.Cost)
		}
		if l.Stay != "" {
			u.fold("  leave", "May I leave it? "+l.Stay)
		}
		if l.Look != nil {
			u.fold("  look", "next by "+*l.Look)
		}
	}
	if len(fine) > 0 {
		u.fold("  also", strings.Join(fine, ", ")+": right pairs, within what they may carry")
	}
	if n > 0 {
		u.line("")
	}
}

// printBeliefs shows the readings of each joint that is not plain, and the judgements.
func (a *app) printBeliefs(f *facts.Audit) {
	u := a.ui
	u.say(bold, "What is believed of each joint")
	for i := range f.Joints {
		j := &f.Joints[i]
		if len(j.Readings) == 1 && j.Section == audit.Fine.String() && len(j.Seen) == 0 {
			continue
		}
		u.fold(fmt.Sprintf("J%d", j.Number), fmt.Sprintf("%s - %s: bad %s, costs %s", j.A, j.B, percent(j.Bad.Value), quantity.Decimals(j.Cost.Value, 2)))
		if len(j.Seen) > 0 {
			u.fold("", "seen: "+strings.Join(j.Seen, "; "))
		}
		for _, r := range j.Readings[:min(shown, len(j.Readings))] {
			u.fold("", fmt.Sprintf("%s  %s with %s: %s", percent(r.Probability.Value), r.A, r.B, strings.ReplaceAll(r.Verdict, "-", " ")))
		}
	}
	u.line("")
	u.say(bold, "Judgements that it rests on (chosen by us, no source)")
	for _, j := range f.Judgements {
		var values []string
		for _, name := range append(evidence.Columns(), "value") {
			if v, ok := j.Values[name]; ok && name == "value" {
				values = append(values, quantity.Decimals(v.Value, 2))
			} else if ok {
				values = append(values, name+" "+quantity.Decimals(v.Value, 2))
			}
		}
		u.fold("  "+j.Name, strings.Join(values, ", ")+"  ("+j.Note+")")
	}
	u.line("")
}

func auditCounts(f *facts.Audit) string {
	var out []string
	for _, s := range audit.Sections() {
		if n := f.Counts[s.String()]; n > 0 {
			out = append(out, fmt.Sprintf("%d %s", n, s))
		}
	}
	return strings.Join(out, ", ") + "; " + counted(len(f.Joints), "joint") + "."
}
