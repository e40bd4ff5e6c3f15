package page

import (
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"fmt"
	"html/template"
	"io"
	"path/filepath"
	"slices"
	"strings"
	"sync"

	"handtight/bom"
	"handtight/bom/drawing"
	"handtight/bom/facts"
	"handtight/bom/finding"
	"handtight/bom/order"
	"handtight/bom/stages"
	"handtight/bom/workshop"
)

//go:embed template/*.tmpl
var files embed.FS

var pageTemplate = sync.OnceValue(func() *template.Template {
	t := drawing.Template().Funcs(template.FuncMap{"dict": dict})
	return template.Must(t.ParseFS(files, "template/*.tmpl"))
})

// dict makes one value of several for a template within a template.
func dict(pairs ...any) map[string]any {
	out := map[string]any{}
	for i := 0; i+1 < len(pairs); i += 2 {
		out[pairs[i].(string)] = pairs[i+1]
	}
	return out
}

// Sections that can be asked for alone.
var Sections = []string{"stops", "picture", "duty", "buy", "cards", "stages", "start", "hoses", "spares", "basis"}

// Page is everything that the file shows.
type Page struct {
	Name, File string
	Hash       string // of the build's text: the foot of each printed sheet carries it
	Verdict    string
	Counts     facts.Counts
	Only       map[string]bool // sections shown; nil: all
	Live       bool            // shown by a program that says when the build has changed

	Stops, Cautions, Notes []Group
	Questions              []facts.Question
	Overview               Drawing
	Panels                 []Drawing
	States                 []StateDrawing
	MoreStates             []string
	Walk                   []Run
	Order                  *facts.Order
	Cards                  []Card
	Sheets                 []stages.Sheet
	Courses                [][]stages.Course
	Duty                   *facts.Duty
	Charts                 []Chart
	Pressures, Budget      *drawing.BarsView
	Hoses                  []workshop.Hose
	Cuts                   []Cut
	Tools                  []workshop.Tool
	Spares                 []facts.Spare
	Always                 []string
	Assumptions            []facts.Assumption
}

// Drawing is one picture in the two widths that it is laid out for.
type Drawing struct {
	Name         string
	Wide, Narrow *drawing.View
}

// StateDrawing is the overview of a state that overloads something.
type StateDrawing struct {
	Drawing
	Cause string
	Over  []facts.Overload
}

// Chart is a curve with its figures beside it.
type Chart struct {
	View   *drawing.ChartView
	Points []facts.DutyPoint
	XWord  string
}

// Options say what is asked for.
type Options struct {
	Only []string // sections; none: all
	Text []byte   // of the build, for its hash
}

// Of gathers the page of a build that was walked, checked and ordered. order may be nil
// where the order could not be made.
func Of(sys *bom.System, list []finding.Finding, order *order.Order, o Options) *Page {
	f := facts.Of(sys, list)
	p := &Page{Name: f.Build, File: filepath.Base(f.File), Counts: f.Counts, Questions: f.Questions, Always: f.Cautions, Assumptions: f.Assumptions}
	sum := sha256.Sum256(o.Text)
	p.Hash = hex.EncodeToString(sum[:])[:8]
	for _, s := range o.Only {
		if p.Only == nil {
			p.Only = map[string]bool{}
		}
		p.Only[s] = true
	}
	p.Verdict = verdict(&f.Counts)
	groups := grouped(f.Findings)
	for _, g := range groups {
		switch g.Severity {
		case finding.Stop.String():
			p.Stops = append(p.Stops, g)
		case finding.Caution.String():
			p.Cautions = append(p.Cautions, g)
		default:
			p.Notes = append(p.Notes, g)
		}
	}
	p.draw(sys, list)
	p.Walk = walk(f)
	if order != nil {
		p.Order = facts.OrderOf(sys, order)
		p.Spares = p.Order.Spares
		p.Cuts = cuts(order)
	}
	p.Sheets, p.Courses = stages.Of(sys), stages.Courses(sys)
	p.water(sys, list)
	p.bars(f)
	p.Cards = cards(sys, f, p.Sheets)
	p.Hoses, p.Tools = workshop.Hoses(sys), workshop.Tools(sys)
	return p
}

// Shows reports whether a section is on the page.
func (p *Page) Shows(section string) bool { return p.Only == nil || p.Only[section] }

func verdict(c *facts.Counts) string {
	switch {
	case c.Stop > 0:
		return fmt.Sprintf("Do not order, do not pressurise: %d to settle first.", c.Stop)
	case c.Caution > 0:
		return fmt.Sprintf("Nothing stops; %d to settle, or to know why not.", c.Caution)
	}
	return "Nothing stops."
}

// Most states that are drawn; more are listed.
const mostStates = 6

// draw makes the pictures: the overview, every panel, and the states that overload
// something, the worst first.
func (p *Page) draw(sys *bom.System, list []finding.Finding) {
	marks := drawing.MarksOf(list, func(n int) string { return fmt.Sprintf("#finding-%d", n) })
	panel := func(d drawing.Panel, id string) Drawing {
		return Drawing{d.Name, drawing.Lay(d.Scheme, drawing.Wide).View(d.Scheme, id+"-wide"), drawing.Lay(d.Scheme, drawing.Narrow).View(d.Scheme, id+"-narrow")}
	}
	if o, ok := drawing.Overview(sys, marks, "normal"); ok {
		p.Overview = panel(o, "overview")
	}
	panels, _ := drawing.Panels(sys, marks, "normal")
	for _, d := range panels {
		one := panel(d, "panel-"+d.Letter)
		one.Name = d.Letter + ": " + d.Name
		p.Panels = append(p.Panels, one)
	}
	type loaded struct {
		view facts.State
		sum  int
	}
	var over []loaded
	for _, st := range facts.States(sys.Segments.Views()) {
		if len(st.Overloads) > 0 && st.Name != "normal" {
			over = append(over, loaded{st, len(st.Overloads)})
		}
	}
	slices.SortStableFunc(over, func(a, b loaded) int { return b.sum - a.sum })
	for i, st := range over {
		if i >= mostStates {
			p.MoreStates = append(p.MoreStates, fmt.Sprintf("%s: %s", st.view.Name, st.view.Cause))
			continue
		}
		if o, ok := drawing.Overview(sys, drawing.Marks{}, st.view.Name); ok {
			d := panel(o, fmt.Sprintf("state-%d", i+1))
			d.Name = st.view.Name
			p.States = append(p.States, StateDrawing{d, st.view.Cause, st.view.Overloads})
		}
	}
}

// fileMark stands in every page, so that a file of another program is not taken for ours.
const fileMark = "<!-- page of a build, format 1 -->"

// IsOurs reports whether a file was written by [Write].
func IsOurs(data []byte) bool {
	return strings.Contains(string(data[:min(len(data), 300)]), fileMark)
}

// Write writes the page. Errors are those of the writer.
func Write(w io.Writer, p *Page) error {
	if _, err := io.WriteString(w, "<!doctype html>\n"+fileMark+"\n"); err != nil {
		return err
	}
	return pageTemplate().ExecuteTemplate(w, "page", p)
}
