package main

import (
	"fmt"
	"strings"

	"github.com/rogpeppe/go-internal/diff"

	"handtight/bom"
	"handtight/bom/draft"
	"handtight/bom/file"
	"handtight/bom/finding"
	"handtight/bom/read"
	"handtight/bom/rule"
	"handtight/bom/source"
)

// intoFacts is what later lists add to a build, as JSON.
type intoFacts struct {
	Fills    []draft.Entry `json:"fills"`
	Doubles  []draft.Entry `json:"doubles"`
	Wrong    []draft.Entry `json:"wrong"`
	New      []draft.Entry `json:"new"`
	Aside    []draft.Entry `json:"aside"`
	Diff     string        `json:"diff"`
	Stops    int           `json:"stops"`     // of the build as it is
	NewStops int           `json:"new_stops"` // of the build with what is added
	Written  string        `json:"written"`
}

// draftInto lays later lists to a build that is there. It is written only when asked, and the
// old file is kept beside it.
func (a *app) draftInto(paths []string, f *draftFlags) error {
	if f.into == stdin {
		return fmt.Errorf("--into needs a build file: it is that file that is amended")
	}
	sys, err := a.load(f.into)
	if err != nil {
		return err
	}
	text, err := file.Read(f.into, source.Limit)
	if err != nil {
		return err
	}
	carts, err := a.readLists(paths, f.cart)
	if err != nil {
		return err
	}
	added, err := draft.Into(sys, text, carts)
	if err != nil {
		return err
	}
	facts := &intoFacts{Fills: orEmpty(added.Fills), Doubles: orEmpty(added.Doubles), Wrong: orEmpty(added.Wrong), New: orEmpty(added.New), Aside: orEmpty(added.Aside),
		Stops: finding.Count(rule.Check(sys), finding.Stop)}
	facts.NewStops = facts.Stops
	if len(added.Wrong) > 0 {
		a.status = exitStops
	}
	if added.Text != nil {
		b, faults := read.ParseWith(f.into, added.Text, read.Options{Outside: a.outside})
		var next *bom.System
		if len(faults) == 0 {
			next, faults = bom.Walk(b)
		}
		if len(faults) > 0 {
			return fmt.Errorf("the build with what is added would not be read, and nothing is written: %w", faults)
		}
		facts.NewStops = finding.Count(rule.Check(next), finding.Stop)
		facts.Diff = string(diff.Diff(f.into, text, f.into, added.Text))
	}
	var said []string
	if f.amend && added.Text != nil {
		if said, err = a.amend(f.into, text, added.Text); err != nil {
			return err
		}
		facts.Written = f.into
	}
	if a.json {
		return a.ui.printJSON(facts)
	}
	a.printInto(facts, said)
	return nil
}

func (a *app) printInto(f *intoFacts, said []string) {
	u := a.ui
	if f.Written == "" {
		for _, line := range strings.Split(strings.TrimSuffix(f.Diff, "\n"), "\n") {
			u.line("%s", line)
		}
	}
	for _, line := range said {
		u.line("%s", line)
	}
	u.line("")
	for _, s := range []struct {
		head string
		list []draft.Entry
	}{{"Does not fit", f.Wrong}, {"Fills", f.Fills}, {"Doubles", f.Doubles}, {"No place", f.New}, {"No part", f.Aside}} {
		var list []string
		for _, e := range s.list {
			list = append(list, fmt.Sprintf("%s, %s: %s", e.Where, cutShort(e.Text), e.Says))
		}
		u.entry(s.head, list, draftMissing)
	}
	u.say("", "A check found %s before and finds %s with it.", counted(f.Stops, "stop"), counted(f.NewStops, "stop"))
	if f.Written == "" && f.Diff != "" {
		u.say("", "Nothing is written: --amend writes it, and keeps the old file beside it.")
	}
}
