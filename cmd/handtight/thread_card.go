package main

import (
	"fmt"
	"strings"

	"handtight/threads"
	"handtight/threads/card"
)

type cardFacts struct {
	End        string       `json:"end"`
	Crest      bandFacts    `json:"crest_mm"`
	PitchDia   bandFacts    `json:"pitch_diameter_mm"`
	LookAlikes []alikeFacts `json:"mistaken_for"`
	Mates      []pairFacts  `json:"mates"`
	Makeup     string       `json:"makeup"`
	Source     string       `json:"makeup_source"`
}

type alikeFacts struct {
	Family      string   `json:"family"`
	Size        string   `json:"size"`
	Designation string   `json:"designation"`
	Tell        []string `json:"tell"`
}

type pairFacts struct {
	End     string `json:"end"`
	With    string `json:"with"`
	Verdict string `json:"verdict"`
	Closes  string `json:"closes_by"`
	Reason  string `json:"reason"`
	Source  string `json:"source"`
}

type cardedFacts struct {
	threadFacts
	Cards []cardFacts `json:"cards"`
}

// threadCard prints the long form of a reading: a card for each unambiguous end that
// has a thread.
func (a *app) threadCard(r threads.Reading) error {
	cards := cardsOf(r)
	if a.json {
		f := cardedFacts{threadFactsOf(r), []cardFacts{}}
		for _, c := range cards {
			f.Cards = append(f.Cards, cardFactsOf(c))
		}
		return a.ui.printJSON(f)
	}
	a.printReading(r)
	for _, c := range cards {
		a.printCard(c)
	}
	if len(cards) == 0 {
		a.ui.fold("  card", "None: a card is of one thread, known in family and size, such as `G 1/2 male`.")
	}
	return nil
}

// cardsOf gives a card for each end with one reading, and for both sexes of one
// whose sex is not said; an end that is written twice has one card.
func cardsOf(r threads.Reading) []card.Card {
	var out []card.Card
	seen := map[threads.End]bool{}
	for _, e := range r.Ends {
		if len(e.Candidates) != 1 {
			continue
		}
		for _, sex := range []threads.Sex{threads.Male, threads.Female} {
			end := e.Candidates[0]
			if end.Sex == threads.NoSex {
				end.Sex = sex
			}
			if c, ok := card.Of(end); ok && end.Sex == sex && !seen[end] {
				seen[end] = true
				out = append(out, c)
			}
		}
	}
	return out
}

func cardFactsOf(c card.Card) cardFacts {
	f := cardFacts{
		End: c.End.String(), Crest: bandOf(c.Crest), PitchDia: bandOf(c.PitchDia),
		LookAlikes: []alikeFacts{}, Mates: []pairFacts{}, Makeup: c.Makeup, Source: c.Source,
	}
	for _, l := range c.LookAlikes {
		tell := l.Tell
		if tell == nil {
			tell = []string{}
		}
		f.LookAlikes = append(f.LookAlikes, alikeFacts{l.Form.Family.String(), l.Form.Size, l.Form.Designation, tell})
	}
	for i := range c.Mates {
		m := &c.Mates[i]
		f.Mates = append(f.Mates, pairFacts{m.A.String(), m.B.String(), m.Verdict.String(), m.Closes(), m.Reason(), m.Source()})
	}
	return f
}

func bandOf(b threads.Band) bandFacts {
	return bandFacts{known(b.Least.Millimetres()), known(b.Most.Millimetres())}
}

func (a *app) printCard(c card.Card) {
	u := a.ui
	facts := c.End.Family.Facts()
	u.line("%s", u.paint(bold, "Card: "+c.End.String()))
	side, where := "outside", ""
	if c.End.Sex == threads.Female {
		side = "inside"
	}
	if facts.Tapered {
		where = map[threads.Sex]string{threads.Male: ", at the small end", threads.Female: ", at the open face"}[c.End.Sex]
	}
	u.fold("  size", fmt.Sprintf("%s across the crests %s, pitch diameter %s%s", side, bandText(c.Crest), bandText(c.PitchDia), where))
	u.fold("  closes", strings.ToUpper(facts.Note[:1])+facts.Note[1:]+".")
	a.printMates(c)
	if c.Makeup != "" {
		u.fold("  make", c.Makeup)
	}
	a.printAlikes(c.LookAlikes)
	if c.End.Form.Note != "" {
		u.fold("  note", c.End.Form.Note)
	}
	u.fold("  source", "figures: "+c.End.Form.Source)
	if c.Source != "" {
		u.fold("", "make-up: "+c.Source)
	}
	u.line("")
}

func bandText(b threads.Band) string {
	return fmt.Sprintf("%.2f to %.2f mm", b.Least.Millimetres(), b.Most.Millimetres())
}

// printMates lists what closes with the end, a line each, then what does not, a
// line a verdict.
func (a *app) printMates(c card.Card) {
	label := "  with"
	var verdicts []threads.Verdict
	failing := map[threads.Verdict][]string{}
	for i := range c.Mates {
		m := &c.Mates[i]
		if m.Closes() != "" {
			a.ui.fold(label, mateWords(m, c.End))
			label = ""
			continue
		}
		if failing[m.Verdict] == nil {
			verdicts = append(verdicts, m.Verdict)
		}
		failing[m.Verdict] = append(failing[m.Verdict], m.B.String())
	}
	label = "  not"
	for _, v := range verdicts {
		a.ui.fold(label, verdictWords[v]+": "+strings.Join(failing[v], ", "))
		label = ""
	}
}

func mateWords(m *threads.Mating, end threads.End) string {
	text := verdictWords[m.Verdict] + ": " + m.B.String()
	if own := m.A.String(); own != end.String() {
		text += ", this end being " + own
	}
	if closes := m.Closes(); closes != "" {
		text += " (" + closes + ")"
	}
	return text
}

// printAlikes lists what the end is mistaken for; those told apart alike share a line.
func (a *app) printAlikes(list []card.LookAlike) {
	label := "  like"
	for i := 0; i < len(list); {
		tell := strings.Join(list[i].Tell, "; ")
		var names []string
		for ; i < len(list) && strings.Join(list[i].Tell, "; ") == tell; i++ {
			names = append(names, list[i].Form.Designation)
		}
		if tell == "" {
			tell = "no measurement tells it apart"
		}
		a.ui.fold(label, strings.Join(names, ", ")+": "+tell)
		label = ""
	}
}
