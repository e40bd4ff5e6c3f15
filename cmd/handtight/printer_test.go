package main

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/facts"
	"handtight/bom/source"
)

// printedAt is what a printer prints on a terminal of a width.
func printedAt(width int, print func(*app)) string {
	var out bytes.Buffer
	print(&app{ui: &ui{out: &out, errOut: &out, width: width}})
	return out.String()
}

func bar(v float64) facts.Number { return facts.Figure(v) }

var unknownFigure = facts.Number{}

// Figures are rounded to a tenth, never with an exponent, and one without bound is said in words.
func TestPrintedFigures(t *testing.T) {
	for _, row := range []struct {
		n            facts.Number
		figure, bars string
	}{
		{bar(65), "65", "65 bar"}, {bar(275.8), "275.8", "275.8 bar"}, {bar(0.04), "0", "0 bar"}, {bar(0.05), "0.1", "0.1 bar"}, {bar(-0.04), "0", "0 bar"}, {bar(1e6), "1000000", "1000000 bar"},
		{bar(math.Inf(1)), "no bound", "pressure without bound"}, {bar(-1), "-1", "-1 bar"},
	} {
		require.Equal(t, row.figure, figure(row.n))
		require.Equal(t, row.bars, bars(row.n))
	}
	require.Equal(t, "1 stop", counted(1, "stop"))
	require.Equal(t, "0 stops", counted(0, "stop"))
	require.Equal(t, "2 stops", counted(2, "stop"))
	for text, want := range map[string]string{"": "", "none": "none", "3.6": "3.6 bar"} {
		require.Equal(t, want, marginBar(text))
	}
	require.Equal(t, "3.6", marginText(bar(3.6), &facts.Allowable{Bar: bar(10)}))
	require.Equal(t, "none", marginText(unknownFigure, &facts.Allowable{Bar: bar(10)}))
	require.Empty(t, marginText(unknownFigure, &facts.Allowable{}))
}

// A chance is never said to be nothing or certain unless it is.
func TestPrintedChances(t *testing.T) {
	for _, row := range []struct {
		share float64
		want  string
	}{
		{0, "0 %"}, {-0.1, "0 %"}, {0.00001, "under 0.01 %"}, {0.000099, "under 0.01 %"}, {0.0001, "0.01 %"}, {0.005, "0.50 %"}, {0.0099, "0.99 %"}, {0.01, "1.0 %"}, {0.5, "50.0 %"}, {0.9999, "100.0 %"}, {0.99991, "over 99.99 %"}, {1, "over 99.99 %"},
	} {
		require.Equal(t, row.want, chance(row.share), row.share)
	}
	for _, row := range []struct {
		fall float64
		want string
	}{{0, "0"}, {0.0123, "1.2"}, {0.000126, "0.013"}, {0.5, "50"}, {1e-9, "0"}} {
		require.Equal(t, row.want, perUnit(row.fall), row.fall)
	}
}

// Small texts that several commands share.
func TestPrintedWords(t *testing.T) {
	names := []string{"a", "b", "c", "d", "e", "f", "g"}
	require.Equal(t, "a, b, c, d, e, f", few(names[:6]))
	require.Equal(t, "a, b, c, d, e, f and 1 more", few(names))
	require.Empty(t, few(nil))
	require.Equal(t, "near", offerName("near", ""))
	require.Equal(t, "near (N-10)", offerName("near", "N-10"))
	require.Equal(t, ", saves 5.00", saving("5.00"))
	require.Empty(t, saving(""))
	require.Equal(t, "1.4 m", metres(1400))
	require.Equal(t, "0.005 m", metres(5))
}

// What a rating rests on, in few words, and what each word means below the table.
func TestPrintedBasis(t *testing.T) {
	for _, row := range []struct {
		h    facts.Allowable
		want string
		note string
	}{
		{facts.Allowable{Basis: "data sheet"}, "data sheet", ""},
		{facts.Allowable{Basis: "data sheet", Derated: true}, "data sheet, warm", "warm = lowered for"},
		{facts.Allowable{Basis: "x", Memory: true}, "x, from memory", "from memory = nobody has looked"},
		{facts.Allowable{Basis: "x", Mixed: true}, "x, size from memory", "from memory = nobody has looked"},
		{facts.Allowable{Basis: "x", Series: true, Estimate: true}, "maker's series", "maker's series = a maker's series"},
		{facts.Allowable{Basis: "x", Other: true, Estimate: true}, "another size's", "another size's = size not in the table"},
		{facts.Allowable{Basis: "estimate", Estimate: true}, "estimate", "estimate = reckoned"},
		{facts.Allowable{Basis: "common claim", Claim: true, Derated: true, Memory: true}, "common claim, warm, from memory", "common claim = what such parts"},
	} {
		require.Equal(t, row.want, basisOf(&row.h))
		text := printedAt(200, func(a *app) { a.printBasisNotes([]facts.Allowable{{}, row.h}) })
		if row.note == "" {
			require.Empty(t, text)
			continue
		}
		require.Contains(t, text, row.note)
		require.Equal(t, row.h.Estimate && !row.h.Series && !row.h.Other, strings.Contains(text, "estimate = "), row.want)
	}
}

// Of a segment it is said which members nothing is known of, and what the others do.
func TestPrintedSegments(t *testing.T) {
	rated := facts.Segment{Name: "brine", Normal: bar(57), Worst: bar(60), Weakest: "tee", Allowable: facts.Allowable{Bar: bar(80), Basis: "data sheet"}, Margin: bar(20), High: true}
	open := facts.Segment{Name: "feed", Normal: bar(2), Worst: bar(4), Weakest: "hose", AtMost: bar(10), Allowable: facts.Allowable{Basis: "claim"}, Unrated: []string{"valve"}}
	for why, row := range map[string]struct {
		g    facts.Segment
		want []string
		text string
	}{
		"known":             {rated, []string{"H", "brine", "57", "60", "80", "20", "tee (data sheet)"}, ""},
		"some not known":    {open, []string{" ", "feed", "2", "4", "?", "", "not all known"}, "nothing says what valve holds; of the others the weakest is hose, 10 bar (claim)"},
		"nothing known":     {facts.Segment{Name: "x", Unrated: []string{"a", "b"}}, []string{" ", "x", "0", "0", "?", "", "not known"}, "nothing says what a, b hold"},
		"guessed":           {facts.Segment{Name: "x", Guessed: []string{"a"}}, []string{" ", "x", "0", "0", "?", "", "not known"}, "nothing that counts on high pressure says what a holds"},
		"guessed and known": {facts.Segment{Name: "x", Weakest: "b", Guessed: []string{"a"}, Allowable: facts.Allowable{Bar: bar(5), Basis: "y"}}, []string{" ", "x", "0", "0", "5", "none", "b (y)"}, ""},
	} {
		require.Equal(t, row.want, segmentRow(&row.g), why)
		require.Equal(t, row.text, unrated(&row.g), why)
	}
	memory := rated
	memory.Memory = []string{"hose, 180 bar", "tee, 90 bar"}
	require.Equal(t, "cleared from memory, so ask for the data sheet: hose, 180 bar; tee, 90 bar", clearedFromMemory(&memory))
	require.Empty(t, clearedFromMemory(&rated))
	wide := printedAt(120, func(a *app) { a.printSegments([]facts.Segment{memory, open}) })
	require.Contains(t, wide, "?        feed: nothing says what valve holds")
	require.Contains(t, wide, "m        brine: cleared from memory")
	require.Contains(t, wide, "H = high pressure: above ")
	narrow := printedAt(40, func(a *app) { a.printSegments([]facts.Segment{memory, open}) })
	flat := strings.Join(strings.Fields(narrow), " ")
	for _, part := range []string{"H brine 57 bar, worst 60 bar", "tee (data sheet) holds 80 bar, margin 20 bar", "cleared from memory, so ask", "what it holds is not known nothing says what valve holds"} {
		require.Contains(t, flat, part)
	}
	require.Empty(t, printedAt(80, func(a *app) { a.printSegments(nil) }))
}

// What brings the worst about stands once for each cause, with all that it reaches.
func TestPrintedCauses(t *testing.T) {
	list := []facts.Segment{
		{Name: "a", Raised: true, Worst: bar(60), Cause: "throttle left shut"}, {Name: "b", Raised: true, Worst: bar(60), Cause: "throttle left shut"},
		{Name: "c", Worst: bar(4), Cause: "never said"}, {Name: "d", LowCause: "seacock shut"}, {Name: "e", Raised: true, Worst: bar(math.Inf(1)), Cause: "throttle left shut"},
	}
	text := printedAt(120, func(a *app) { a.printWorst(list) })
	require.Contains(t, text, "What brings the worst about")
	require.Equal(t, 1, strings.Count(text, "60 bar, with throttle left shut"))
	require.Contains(t, text, "vacuum, with seacock shut")
	require.Contains(t, text, "pressure without bound, with throttle left shut")
	require.NotContains(t, text, "never said")
	require.Empty(t, printedAt(120, func(a *app) { a.printWorst(list[2:3]) }))
}

// A state: its segments, what it overloads, what the vacuum may flatten and what nobody knows.
func TestPrintedStates(t *testing.T) {
	for why, row := range map[string]struct {
		g    facts.StateSegment
		want []string
	}{
		"within":     {facts.StateSegment{Name: "a", Normal: bar(2), Bar: bar(4), Holds: bar(10), Margin: bar(6)}, []string{"a", "2", "4", "", "10", "6"}},
		"no bound":   {facts.StateSegment{Name: "a", Normal: bar(2), Bar: bar(math.Inf(1)), Holds: bar(10)}, []string{"a", "2", "no bound", "", "10", "none"}},
		"not known":  {facts.StateSegment{Name: "a", Normal: bar(2), Bar: bar(4)}, []string{"a", "2", "4", "", "?", ""}},
		"a vacuum":   {facts.StateSegment{Name: "a", Normal: bar(2), Bar: bar(0), Lowest: bar(-0.5)}, []string{"a", "2", "0", "-0.5", "?", ""}},
		"no vacuum":  {facts.StateSegment{Name: "a", Lowest: bar(0)}, []string{"a", "0", "0", "", "?", ""}},
		"overloaded": {facts.StateSegment{Name: "a", Bar: bar(12), Holds: bar(10), Margin: bar(-2)}, []string{"a", "0", "12", "", "10", "-2"}},
	} {
		require.Equal(t, row.want, stateRow(&row.g), why)
	}
	quiet := facts.State{Name: "throttle shut", Cause: "throttle left shut", Sort: "act", Segments: []facts.StateSegment{{Name: "a", Bar: bar(4), Changed: true}, {Name: "b", Bar: bar(2)}}}
	text := printedAt(80, func(a *app) { a.printState(&quiet) })
	for _, part := range []string{"State: throttle shut\n", "throttle left shut (an act)\n", "Nothing sees more than it holds.\n"} {
		require.Contains(t, text, part)
	}
	loud := quiet
	loud.Sort = "failure"
	loud.Overloads = []facts.Overload{{What: "tee", Sees: bar(70), Holds: bar(58)}}
	loud.Collapses = []facts.Collapse{{Hose: "suction", Stands: bar(0.3)}, {Hose: "other"}}
	loud.Untold, loud.UntoldSees = []string{"valve"}, []facts.Overload{{What: "valve", Sees: bar(70)}}
	text = printedAt(80, func(a *app) { a.printState(&loud) })
	for _, part := range []string{
		"(a failure)", "What sees more than it holds\n", "tee holds 58 bar and sees 70 bar", "What the vacuum may flatten\n", "suction stands a vacuum of 0.3 bar only", "other: nothing says that it stands a vacuum",
		"Not known to hold it\n", "valve sees 70 bar, and nothing says what it holds",
	} {
		require.Contains(t, text, part)
	}
	require.NotContains(t, text, "Nothing sees more")
	still := facts.State{Name: "still", Sort: "normal course", Segments: []facts.StateSegment{{Name: "b", Bar: bar(2)}}}
	normal := facts.State{Name: "normal", Sort: "normal course", Segments: []facts.StateSegment{{Name: "b", Bar: bar(2)}}}
	text = printedAt(80, func(a *app) { a.printStates([]facts.State{normal, quiet, still}) })
	require.Equal(t, 1, strings.Count(text, "No segment stands otherwise than in normal running."))
	require.Equal(t, 1, strings.Count(text, "\na "), "of a state that is not normal only what it changes")
	require.Equal(t, 1, strings.Count(text, "\nb "))
	narrow := printedAt(40, func(a *app) {
		a.printStateRows([]facts.StateSegment{{Name: strings.Repeat("long ", 6) + "a", Bar: bar(4), Normal: bar(2), Lowest: bar(-1), Holds: bar(9)}, {Name: "b", Bar: bar(math.Inf(1)), Unbounded: true}})
	})
	flat := strings.Join(strings.Fields(narrow), " ")
	require.Contains(t, flat, "a: 4 bar (normal 2), holds 9, and a vacuum")
	require.Contains(t, flat, "b: no bound (normal 0), holds ?")
}

// An entry is named as fully as there is room for.
func TestPrintedEntries(t *testing.T) {
	joint := func(n int, reason string) *facts.Finding {
		return &facts.Finding{At: fmt.Sprintf("J%d, a - b", n), Short: fmt.Sprintf("J%d", n), Reason: reason, Remedy: "mend it", Subject: facts.Subject{Joint: n, Unit: "a", Unit2: "b"}}
	}
	one := entry{slugs: []string{"flank"}, findings: []*facts.Finding{joint(4, "why")}}
	require.Equal(t, []string{"J4, a - b", "J4 a - b", "J4"}, one.places())
	require.Equal(t, []string{"flank"}, one.rules())
	one.findings[0].Also = []facts.Subject{{}, {}}
	require.Equal(t, []string{"J4, a - b", "J4 a - b and 2 more", "J4 and 2 more"}, one.places())
	part := entry{findings: []*facts.Finding{{At: "hose", Short: "hose"}}}
	require.Equal(t, []string{"hose"}, part.places())
	two := entry{slugs: []string{"flank", "sex", "size"}, findings: []*facts.Finding{joint(4, "pitch"), joint(5, "flank"), joint(6, "pitch")}}
	require.Equal(t, []string{"J4, J5, J6", "J4, J5 and 1 more", "J4 and 2 more"}, two.places())
	require.Equal(t, []string{"flank, sex, size", "flank and 2 more"}, two.rules())
	require.Equal(t, "J4: pitch J5: flank", two.why(), "each once, with its place")
	require.Equal(t, "mend it", two.do(), "the same for all")
	require.Empty(t, two.buy())
	for why, row := range map[string]struct {
		f    facts.Finding
		want string
	}{
		"a pressure": {facts.Finding{Stake: bar(65)}, "65 bar"}, "no bound": {facts.Finding{Stake: bar(65), Unbounded: true}, "no bound"}, "none": {facts.Finding{}, ""},
	} {
		require.Equal(t, row.want, (&entry{findings: []*facts.Finding{&row.f}}).stake(), why)
	}
	for why, row := range map[string]struct {
		f    facts.Finding
		r    facts.Remedy
		want string
	}{
		"between":      {facts.Finding{Subject: facts.Subject{Joint: 1}}, facts.Remedy{Do: "adapt", Buy: []string{"a bush", "a nipple"}}, "a bush; and a nipple: between the two."},
		"in its place": {facts.Finding{Subject: facts.Subject{Joint: 1}}, facts.Remedy{Do: "change", At: "tee", Buy: []string{"a tee"}}, "a tee: in the place of tee."},
		"on an end":    {facts.Finding{}, facts.Remedy{Do: "adapt", At: "tee.b", Buy: []string{"a plug"}}, "a plug: on tee.b."},
		"made up":      {facts.Finding{}, facts.Remedy{At: "hose", Buy: []string{"hose with JIC ends"}}, "hose with JIC ends."},
	} {
		require.Equal(t, row.want, boughtAt(&row.f, &row.r), why)
		row.f.Remedies = []facts.Remedy{{Do: "ask"}, row.r}
		require.Equal(t, row.want, buyText(&row.f), why)
	}
	require.Empty(t, buyText(&facts.Finding{Remedies: []facts.Remedy{{Do: "ask"}}}))
	require.Empty(t, short(&facts.Finding{File: "x/build.toml"}))
	require.Equal(t, "build.toml:7", short(&facts.Finding{File: "x/build.toml", Line: 7}))
	require.Equal(t, "in the file", pasteAt(&facts.Remedy{}))
	require.Equal(t, "in the path of feed, and in the file", pasteAt(&facts.Remedy{Step: "in the path of feed"}))
	require.Equal(t, "at the end", pasteAt(&facts.Remedy{Step: "at the end"}))
}

// A question stands once with all the joints that it settles, and the stops at them.
func TestPrintedQuestions(t *testing.T) {
	r := &report{ui: &ui{width: 200}, f: &facts.Facts{
		Questions: []facts.Question{{Port: "tee.a", Ask: "Is it G or R?", At: []int{7, 3}}, {Port: "bush.b", Ask: "How long?", At: []int{9}}, {Port: "tee.b", Ask: "Is it G or R?", At: []int{3, 5, 6, 8}}},
		Findings:  []facts.Finding{{Severity: "stop", Subject: facts.Subject{Joint: 3}}, {Severity: "stop", Subject: facts.Subject{Joint: 4}}, {Severity: "caution", Subject: facts.Subject{Joint: 5}}, {Severity: "stop"}},
	}}
	require.Equal(t, []string{
		"ASK BEFORE BUYING", "  - tee.a, tee.b (settles J3, J5, J6, J7 and 1 more; 1 stop): Is it G or R?", "  - bush.b (settles J9): How long?",
	}, r.questions(true))
	require.Equal(t, []int{7, 3}, r.f.Questions[0].At[:2], "the facts stay as they are")
	require.Empty(t, (&report{ui: &ui{width: 80}, f: &facts.Facts{}}).questions(true))
}

// The pressures in a sentence: what is overloaded, what is not known, else what has least left.
func TestPrintedPressures(t *testing.T) {
	seg := func(name string, worst, margin facts.Number) facts.Segment {
		return facts.Segment{Name: name, Worst: worst, Margin: margin, Weakest: "tee", Allowable: facts.Allowable{Bar: bar(80)}}
	}
	of := func(table bool, list ...facts.Segment) string {
		r := &report{ui: &ui{width: 300}, f: &facts.Facts{Segments: list}}
		return strings.Join(r.pressures(table), "\n")
	}
	require.Empty(t, of(false))
	require.Contains(t, of(false, seg("a", bar(60), bar(20)), seg("b", bar(65), bar(15)), seg("c", bar(50), bar(30))), "least margin 15 bar in b (worst 65 bar, tee holds 80 bar) (all: --pressures)")
	over := of(true, seg("a", bar(90), bar(-10)), seg("b", bar(math.Inf(1)), unknownFigure), seg("c", bar(50), unknownFigure), seg("d", bar(80), bar(0)))
	require.Contains(t, over, "2 of 4 segments overloaded; nothing says what all parts of 1 segment hold (all")
	require.NotContains(t, over, "least margin")
	require.Contains(t, over, "  - a: normal 0 bar, worst 90 bar, holds 80 bar, tee")
	require.Contains(t, over, "  - c: normal 0 bar, worst 50 bar, holds 80 bar, tee")
	require.NotContains(t, over, "  - d:")
	require.NotContains(t, of(false, seg("a", bar(90), bar(-10))), "  - a:")
	require.Contains(t, of(true, facts.Segment{Name: "x", Worst: bar(5)}), "holds not all known")
}

// A heading says whether to order, and how much there is of everything.
func TestPrintedCounts(t *testing.T) {
	text := printedAt(80, func(a *app) { a.printCounts(&facts.Counts{Stop: 1, Caution: 2, Note: 0, Joints: 57, Segments: 1}) })
	require.Equal(t, "DO NOT ORDER, DO NOT PRESSURISE\n1 stop, 2 cautions, 0 notes; 57 joints, 1 segment\n", text)
	text = printedAt(80, func(a *app) { a.printCounts(&facts.Counts{Joints: 2, Segments: 2}) })
	require.Equal(t, "Nothing stops: 0 stops, 0 cautions, 0 notes; 2 joints, 2 segments\n", text)
	text = printedAt(80, func(a *app) { a.printCautions([]string{"first", "second"}) })
	require.Equal(t, "Always\n  - first\n  - second\n\n", text)
	require.Empty(t, printedAt(80, func(a *app) { a.printFindings(nil) }))
}

// A table: flexible columns give way, the widest first, and where there is no room nothing is printed.
func TestPrintedTables(t *testing.T) {
	columns := []column{{title: "n", right: true}, {title: "what", flex: true}}
	rows := [][]string{{"1", strings.Repeat("word ", 8) + "end"}, {"12", "x"}}
	require.Equal(t, " n  what\n 1  word word word word word word word\n    word end\n12  x\n", printedAt(40, func(a *app) { require.True(t, a.ui.table(columns, rows)) }))
	for width, fits := range map[int]bool{28: true, 27: false, 100: true} {
		text := printedAt(width, func(a *app) { require.Equal(t, fits, a.ui.table(columns, rows), width) })
		require.Equal(t, fits, text != "")
	}
	require.Equal(t, "1  x\n", printedAt(40, func(a *app) { a.ui.table([]column{{}, {}}, [][]string{{"1", "x"}}) }), "no titles, no line for them")
	two := []column{{title: "a", flex: true}, {title: "b", flex: true}}
	long := [][]string{{strings.Repeat("aa ", 10), strings.Repeat("bb ", 12)}}
	for width, fits := range map[int]bool{30: true, 29: false} {
		require.Equal(t, fits, fitFlex(two, widthsOf(two, long), width), "two columns share what is left: %d", width)
	}
	widths := []int{20, 30}
	require.True(t, fitFlex(two, widths, 42))
	require.Equal(t, []int{20, 20}, widths, "the widest gives way first")
}

// No row of a table is wider than the terminal, and no word is lost.
func TestPrintedTablesFit(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		width := rapid.IntRange(40, 120).Draw(t, "width")
		cell := rapid.StringMatching(`([a-z]{1,9} ){0,12}[a-z]{1,9}`)
		rows := [][]string{{cell.Draw(t, "a"), "1", cell.Draw(t, "b")}, {cell.Draw(t, "c"), "22", cell.Draw(t, "d")}}
		text := printedAt(width, func(a *app) {
			if !a.ui.table([]column{{title: "x", flex: true}, {title: "n", right: true}, {title: "y", flex: true}}, rows) {
				t.Fatalf("there is room for two columns of %d at %d", leastShared, width)
			}
		})
		for _, line := range strings.Split(text, "\n") {
			require.LessOrEqual(t, widthOf(line), width, line)
		}
		for _, r := range rows {
			for _, word := range append(strings.Fields(r[0]), strings.Fields(r[2])...) {
				require.Contains(t, text, word)
			}
		}
	})
}

// Text under a label is hung under itself; a long label takes the room that it needs.
func TestPrintedFolds(t *testing.T) {
	fold := func(label, text string) string { return printedAt(40, func(a *app) { a.ui.fold(label, text) }) }
	require.Equal(t, "  why    because of this\n", fold("  why", "because of this"))
	require.Equal(t, "  - one two three four five six seven\n    eight\n", fold("  -", "one two three four five six seven eight"))
	require.Equal(t, "         text\n", fold("", "text"))
	require.Equal(t, "  a longer label text\n", fold("  a longer label", "text"))
	require.Equal(t, "  ninefit text\n", fold("  ninefit", "text"))
	require.Equal(t, []string{"one", "two"}, wrap("one two", 6))
	require.Equal(t, []string{"one two"}, wrap("one two", 7))
	require.Equal(t, []string{"longer", "a"}, wrap("longer a", 3))
	require.Equal(t, []string{""}, wrap("", 3))
	u := &ui{width: 80}
	for _, row := range []struct {
		text  string
		width int
		want  string
	}{{"abc", 3, "abc"}, {"abcd", 3, "ab…"}, {"abcd", 1, "…"}, {"abcd", 0, "…"}, {"", 0, ""}} {
		require.Equal(t, row.want, u.cut(row.text, row.width), row.text)
	}
	require.Equal(t, "one two\nthree\n\n  as it is   here\nfour", reflow("one\ntwo three\n\n  as it is   here\nfour", 8))
	r := &report{ui: &ui{width: 20}}
	require.Equal(t, []string{"  - one two three", "    four five"}, r.dash("one two three four five"))
	require.Equal(t, "b", r.fitting([]string{"aaa", "b"}, 2))
	require.Equal(t, "a…", r.fitting([]string{"aaaa", "aaa"}, 2))
}

// Colour is on where it is asked for, and never on nothing.
func TestPrintedColours(t *testing.T) {
	u := &ui{colour: true}
	require.Equal(t, "\x1b[1;31mSTOP\x1b[0m", u.paint(red, "STOP"))
	require.Empty(t, u.paint(red, ""))
	require.Equal(t, "STOP", (&ui{}).paint(red, "STOP"))
	for _, row := range []struct {
		noColour, term string
		want           bool
	}{{"", "xterm", true}, {"1", "xterm", false}, {"", "dumb", false}, {"", "", true}} {
		require.Equal(t, row.want, wantsColour(func(name string) string { return map[string]string{"NO_COLOR": row.noColour, "TERM": row.term}[name] }))
	}
	for height, want := range map[int]int{0: 60, 30: 60, 20: 60, 50: 100} {
		require.Equal(t, want, (&ui{height: height}).screens())
	}
	for columns, want := range map[string]int{"": 80, "100": 100, "10": 40, "500": 120, "x": 80, "0": 80, "-5": 80} {
		t.Setenv("COLUMNS", columns)
		require.Equal(t, want, newUI(&bytes.Buffer{}, &bytes.Buffer{}).width, columns)
	}
}

// failing fails from its second write on.
type failing struct{ wrote []string }

func (f *failing) Write(p []byte) (int, error) {
	if len(f.wrote) > 0 {
		return 0, errors.New("disk full")
	}
	f.wrote = append(f.wrote, string(p))
	return len(p), nil
}

// The first write that fails is kept, and nothing is written behind it.
func TestStreamKeepsTheFirstFault(t *testing.T) {
	to := &failing{}
	s := newStream(to)
	n, err := s.Write([]byte("a\x1bb"))
	require.NoError(t, err)
	require.Equal(t, 3, n)
	require.Equal(t, []string{"a\ufffdb"}, to.wrote)
	_, err = s.Write([]byte("b"))
	require.EqualError(t, err, "disk full")
	s.to = &bytes.Buffer{}
	n, err = s.Write([]byte("c"))
	require.EqualError(t, err, "disk full", "it stays lost")
	require.Zero(t, n)
	require.Zero(t, s.to.(*bytes.Buffer).Len())
	u := &ui{out: s, errOut: &bytes.Buffer{}}
	require.EqualError(t, u.lost(), "disk full")
	require.NoError(t, (&ui{out: newStream(&bytes.Buffer{}), errOut: newStream(&bytes.Buffer{})}).lost())
	require.Equal(t, exitFault, run([]string{"why"}, strings.NewReader(""), &failing{}, &bytes.Buffer{}))
}

// Faults of a file: fifty of them, the rest counted, and how many in all.
func TestPrintedFaults(t *testing.T) {
	faults := func(n int) source.Faults {
		var out source.Faults
		for i := range n {
			out = append(out, source.Fault{Place: source.Place{File: "b.toml", Line: i + 1, Column: 1}, Reason: "odd", Remedy: "mend"})
		}
		return out
	}
	for n, tail := range map[int]string{1: "1 file error; nothing was judged or written.\n", 50: "50 file errors; nothing", 52: "and 2 more.\n\n52 file errors; nothing"} {
		text := printedAt(80, func(a *app) { a.ui.fault(faults(n)) })
		require.Contains(t, text, tail)
		require.Equal(t, min(n, mostFaults), strings.Count(text, "odd"))
		require.Equal(t, n > mostFaults, strings.Contains(text, " more."))
	}
	long := strings.Repeat("x", 400)
	u := &ui{args: []string{"check", long, "a\nb"}}
	require.Equal(t, "no "+strings.Repeat("x", 300)+" …", u.quoting("no "+long))
	require.NotContains(t, u.quoting("no a\nb"), "\n")
	require.Equal(t, "handtight: plain\n", printedAt(80, func(a *app) { a.ui.fault(errors.New("plain")) }))
	require.Equal(t, "a\ufffdb c\n", printedAt(80, func(a *app) { a.ui.line("%s %s", "a\nb", "c") }))
}
