package main

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/duty/readings"
	"handtight/bom/facts"
	"handtight/bom/file"
	"handtight/bom/finding"
	"handtight/bom/rule"
	"handtight/bom/source"
	"handtight/pressure/process/trend"
)

func (a *app) dutyCommand() *cobra.Command {
	var with []string
	var log string
	cmd := &cobra.Command{
		Use:   "duty BUILD",
		Short: "Will it make water: how much, how salty, with which margins and how many amperes",
		Long: `Reckons what a build makes and takes: fresh water and the salt in it, brine, the limits of
the elements with their margins, what runs in each hose, the power and the current. Every
figure is a range, from the worst to the best of what is said; what is not said is taken
over its whole usual range and named, or asked for.

--with changes the build for the reckoning and shows it beside what stands: elements,
pressure, water, salinity, flow, speed, age. The file is not changed.

--log reads the readings of a running plant (CSV or XLSX: date, feed pressure, brine pressure,
product, salinity, water temperature, before filters, after filters, each with its unit),
brings them to the same conditions in the way of ASTM D4516, and says what the change
comes from.

A reckoning is no promise: data sheets, the element's maker and local codes come first.
Exit status 0 when nothing stops, 1 when stops are found, 2 when a file cannot be taken.`,
		Example: `  handtight duty testdata/clean/build.toml
  handtight duty build.toml --with 'elements=2' --with 'flow=15 L/min'
  handtight duty build.toml --log readings.csv
  handtight duty build.toml --json > duty.json`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error {
			now, err := a.dutyOf(args[0], nil)
			if err != nil {
				return err
			}
			if log != "" {
				if now.shown.Log, err = a.readLog(log, now.result); err != nil {
					return err
				}
			}
			var then *dutyRun
			if len(with) > 0 {
				if then, err = a.dutyOf(args[0], with); err != nil {
					return err
				}
				then.shown.Beside = besides(now.result, then.result)
			}
			return a.showDuty(now, then)
		},
	}
	cmd.Flags().StringArrayVar(&with, "with", nil, "change one thing for the reckoning: 'elements=2', 'pressure=50 bar' (may be given again)")
	cmd.Flags().StringVar(&log, "log", "", "a table of readings to judge")
	return cmd
}

// dutyRun is a build's reckoning with what is found in it.
type dutyRun struct {
	result   *duty.Result
	findings []finding.Finding
	shown    *facts.Duty
}

func (a *app) dutyOf(path string, with []string) (*dutyRun, error) {
	build, faults := a.read(path)
	if len(faults) > 0 {
		return nil, faults
	}
	for _, change := range with {
		if err := duty.Change(build, change); err != nil {
			return nil, err
		}
	}
	sys, faults := bom.Walk(build)
	if len(faults) > 0 {
		return nil, faults
	}
	run := &dutyRun{result: duty.Of(sys)}
	run.findings = rule.CheckDuty(sys, run.result)
	run.shown = facts.DutyOf(run.result, run.findings, with, a.json)
	return run, nil
}

// besides is what the change does, in words, plant by plant.
func besides(now, then *duty.Result) []string {
	var out []string
	for i, m := range then.Plants {
		if i < len(now.Plants) {
			out = append(out, duty.Beside(now.Plants[i], m)...)
		}
	}
	return out
}

// showDuty prints what stands, or what stands beside what was changed.
func (a *app) showDuty(now, then *dutyRun) error {
	last := now
	if then != nil {
		last = then
	}
	a.judge(last.findings)
	if a.json {
		if then != nil {
			then.shown.Log = now.shown.Log
			return a.ui.printJSON(map[string]any{"now": now.shown, "then": then.shown})
		}
		return a.ui.printJSON(now.shown)
	}
	a.printHead(now.shown.Build, now.shown.File)
	stops := finding.Count(last.findings, finding.Stop)
	text := fmt.Sprintf("Of what rests on a flow: %s, %s, %s.", counted(stops, "stop"), counted(finding.Count(last.findings, finding.Caution), "caution"), counted(finding.Count(last.findings, finding.Note), "note"))
	a.ui.say(map[bool]string{true: red, false: green}[stops > 0], "%s", text)
	a.ui.line("")
	if then != nil {
		a.printBeside(now.shown, then.shown)
	} else {
		a.printDuty(now.shown)
	}
	if now.shown.Log != nil {
		a.printLog(now.shown.Log)
	}
	a.printFindings(last.shown.Findings)
	a.ui.say("", "A reckoning and no promise: the element's maker and the data sheets come first.")
	return nil
}

// readLog reads and judges a log by the first plant of the build.
func (a *app) readLog(path string, r *duty.Result) (*facts.DutyLog, error) {
	text, err := file.Read(path, file.Limit{Bytes: 8 << 20, Remedy: "keep the last years of it"})
	if err != nil {
		return nil, err
	}
	log, unused, faults := readings.Read(path, text)
	if len(faults) > 0 {
		return nil, faults
	}
	plant := trend.Plant{Salinity: 35}
	if d := r.Build.Duty.Salinities; d != nil {
		plant.Salinity = (d.Lo + d.Hi) / 2
	}
	if len(r.Plants) > 0 && r.Plants[0].FeedKnown {
		plant.Feed = r.Plants[0].Feed.Middle()
	}
	answer, err := trend.Look(plant, log)
	if err != nil {
		return nil, source.Faults{{Place: source.Place{File: path}, Reason: err.Error(), Remedy: "write a reading a line, one a day, each after an hour of running"}}
	}
	return facts.DutyLogOf(answer, unused), nil
}

var factColumns = []column{{title: "", flex: true}, {title: "least", right: true}, {title: "middle", right: true}, {title: "greatest", right: true}, {title: ""}}

func (a *app) printDuty(d *facts.Duty) {
	u := a.ui
	if len(d.Plants) == 0 {
		u.say("", "The build has no pump and no pressure vessel: it makes no water.")
		u.line("")
	}
	for i := range d.Plants {
		p := &d.Plants[i]
		u.say(bold, "What %s makes and takes, from the worst to the best of what is said", p.Name)
		var rows [][]string
		for _, f := range p.Facts {
			rows = append(rows, []string{f.Words, f.Low.Figures(), f.Middle.Figures(), f.High.Figures(), f.Unit})
		}
		if !u.table(factColumns, rows) {
			for j := range p.Facts {
				u.fold("  -", p.Facts[j].Words+": "+p.Facts[j].Range())
			}
		}
		u.line("")
		a.printLimits(p.Limits)
		a.printHoses(p.Lines)
		a.printOthers(p)
		a.printSays(p)
	}
}

var limitColumns = []column{{title: "", flex: true}, {title: "limit", right: true}, {title: "at the middle", right: true}, {title: "margin", right: true}, {title: ""}, {title: "known", flex: true}}

func (a *app) printLimits(limits []facts.DutyLimit) {
	u := a.ui
	if len(limits) == 0 {
		return
	}
	u.say(bold, "Limits of the elements")
	var rows [][]string
	for _, l := range limits {
		rows = append(rows, []string{l.Words, l.Limit.Figures(), l.Value.Figures(), l.Margin.Figures(), l.Unit, l.From})
	}
	if !u.table(limitColumns, rows) {
		for _, r := range rows {
			u.fold("  -", fmt.Sprintf("%s %s %s: %s, margin %s %s (%s)", r[0], r[1], r[4], r[2], r[3], r[4], r[5]))
		}
	}
	u.line("")
}

var hoseColumns = []column{{title: "hose", flex: true}, {title: "where"}, {title: "L/min", right: true}, {title: "m/s", right: true}, {title: "mbar", right: true}}

func (a *app) printHoses(lines []facts.DutyLine) {
	u := a.ui
	var rows [][]string
	for _, l := range lines {
		if l.High.Value < 1e-3 {
			continue // nothing runs in it
		}
		loss := l.Loss
		loss.Value *= 1000
		flow := l.Low.Figures() + " to " + l.High.Figures()
		if l.Low.Figures() == l.High.Figures() {
			flow = l.High.Figures()
		}
		rows = append(rows, []string{l.Unit, l.Where, flow, l.Speed.Figures(), loss.Figures()})
	}
	if len(rows) == 0 {
		return
	}
	u.say(bold, "What runs in the hoses in normal running; speed and loss at the greatest flow")
	if !u.table(hoseColumns, rows) {
		for _, r := range rows {
			u.fold("  -", fmt.Sprintf("%s (%s): %s L/min, %s m/s, %s mbar", r[0], r[1], r[2], r[3], r[4]))
		}
	}
	u.line("")
}

// printOthers prints what runs in each hose in the other ways of running, a column each.
func (a *app) printOthers(p *facts.DutyPlant) {
	u := a.ui
	if len(p.Others) == 0 {
		return
	}
	columns := []column{{title: "hose", flex: true}}
	var names []string
	seen := map[string]bool{}
	for i := range p.Others {
		columns = append(columns, column{title: p.Others[i].Name, right: true})
		for _, l := range p.Others[i].Lines {
			if !seen[l.Unit] && l.Flow.Value > 1e-3 {
				seen[l.Unit] = true
				names = append(names, l.Unit)
			}
		}
	}
	var rows [][]string
	for _, n := range names {
		row := []string{n}
		for i := range p.Others {
			text := "-"
			if q := p.Others[i].In(n); q.Value > 1e-3 {
				text = q.Figures()
			}
			row = append(row, text)
		}
		rows = append(rows, row)
	}
	if len(rows) == 0 {
		return
	}
	u.say(bold, "What runs in the hoses in other ways of running, in L/min at the middle")
	if !u.table(columns, rows) {
		for _, r := range rows {
			for i, text := range r[1:] {
				if text != "-" {
					u.fold("  -", fmt.Sprintf("%s, %s: %s L/min", r[0], p.Others[i].Name, text))
				}
			}
		}
	}
	for i := range p.Others {
		if o := &p.Others[i]; o.House.Value > 0 && o.Sea.Value > 0.05*o.House.Value {
			u.fold("  -", fmt.Sprintf("%s: the house gives %s L/min, and %s come from the sea or a tank beside it: shut the intake, or flush with the pump standing.", o.Name, o.House.Figures(), o.Sea.Figures()))
		}
	}
	u.line("")
}

func (a *app) printSays(p *facts.DutyPlant) {
	u := a.ui
	for _, s := range p.Says {
		u.fold("  -", s)
	}
	if p.Upgrade != "" {
		u.fold("  -", p.Upgrade)
	}
	if len(p.Says) > 0 || p.Upgrade != "" {
		u.line("")
	}
	if len(p.Rests) > 0 {
		u.say(bold, "What it rests on")
		for _, r := range p.Rests {
			mark := "said"
			if !r.Said {
				mark = "not said"
			}
			u.fold("  -", fmt.Sprintf("%s (%s): %s", r.What, mark, r.Took))
		}
		u.line("")
	}
	if len(p.Ask) > 0 {
		u.say(bold, "Ask before buying")
		for i, q := range p.Ask {
			u.fold(fmt.Sprintf("  %d.", i+1), q)
		}
		u.line("")
	}
}

var besideColumns = []column{{title: "", flex: true}, {title: "as it stands", right: true}, {title: "changed", right: true}, {title: ""}}

// printBeside prints what stands beside what was changed: what differs, then the limits, then the
// answer in words.
func (a *app) printBeside(now, then *facts.Duty) {
	u := a.ui
	for i := range then.Plants {
		if i >= len(now.Plants) {
			break
		}
		old, new := &now.Plants[i], &then.Plants[i]
		u.say(bold, "%s: as it stands, and with %s", new.Name, strings.Join(then.With, ", "))
		var rows [][]string
		alike := 0
		for _, f := range facts.SideBySide(old, new) {
			if f.Alike {
				alike++
				continue
			}
			rows = append(rows, []string{f.Words, f.Now, f.Then, f.Unit})
		}
		if len(rows) > 0 && !u.table(besideColumns, rows) {
			for _, r := range rows {
				u.fold("  -", fmt.Sprintf("%s: %s, changed %s %s", r[0], r[1], r[2], r[3]))
			}
		}
		if alike > 0 {
			u.fold("", fmt.Sprintf("Alike in both: %s more.", counted(alike, "figure")))
		}
		u.line("")
		for _, s := range then.Beside {
			u.fold("  so", s)
		}
		u.line("")
		for _, s := range new.Says {
			u.fold("  -", s)
		}
		u.line("")
	}
}

func (a *app) printLog(l *facts.DutyLog) {
	u := a.ui
	u.say(bold, "What the log says")
	u.fold("  -", fmt.Sprintf("%s, each brought to the conditions of the first: the way of ASTM D4516.", counted(l.Readings, "reading")))
	places := map[string]int{"bar": 2, "C": 1}
	by := func(words string, n facts.Number, unit string) {
		if n.Known {
			u.fold("  -", fmt.Sprintf("%s: %+.*f %s", words, places[unit], n.Value, unit))
		}
	}
	by("product as it was read", l.Product, "%")
	by("product brought to the same conditions", l.Normal, "%")
	by("salt passage brought to the same conditions", l.Passage, "%")
	by("loss along the vessel", l.Loss, "bar")
	by("loss in the filters", l.Filters, "bar")
	by("water", l.Water, "C")
	u.fold("  is", l.Cause)
	if l.Since != "" {
		u.fold("  since", l.Since)
	}
	u.fold("  do", l.LookFirst)
	u.fold("", l.DoNot)
	for _, c := range l.Unused {
		u.fold("  ask", fmt.Sprintf("what is the column `%s`? It is not understood, and nothing of it is used: call it one of date, feed pressure, brine pressure, product, salinity, water temperature, before filters, after filters, sea salinity", c))
	}
	for _, m := range l.Missing {
		u.fold("  ask", m+" was not read: with it more could be told apart")
	}
	u.line("")
}

// printMakes says in four lines what each plant makes, among what a check says.
func (a *app) printMakes(plants []facts.DutyPlant) {
	u := a.ui
	for i := range plants {
		lines := plants[i].FourLines()
		if len(lines) == 0 {
			continue
		}
		u.say(bold, "What %s makes and takes, over all that is said (more: handtight duty)", plants[i].Name)
		for _, l := range lines {
			u.fold("  -", l)
		}
		u.line("")
	}
}
