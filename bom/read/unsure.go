package read

import (
	"embed"
	"math"
	"slices"
	"strings"
	"sync"

	"handtight/bom/source"
	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
	"handtight/pressure/rows"
	"handtight/threads"
	"handtight/threads/evidence"
	"handtight/threads/identify"
	"handtight/threads/title"
)

//go:embed table/*.csv
var tables embed.FS

// unsureWord is a word that says that something is not known, or where a part is from.
type unsureWord struct {
	words []string
	means string // "unknown", or a country
}

// unsureWords are in table/unsure.csv; the longest of like beginnings come first.
var unsureWords = sync.OnceValue(func() []unsureWord {
	var out []unsureWord
	for _, r := range rows.Each[map[string]string]("read", tables, "table/unsure.csv") {
		for _, w := range strings.Split(r["words"], "|") {
			out = append(out, unsureWord{strings.Fields(w), r["means"]})
		}
	}
	slices.SortStableFunc(out, func(a, b unsureWord) int { return len(b.words) - len(a.words) })
	return out
})

// unsureRead is an end as it was read, with the country that its words name.
type unsureRead struct {
	reading threads.EndReading
	country string
	unsure  bool
}

// unsureEnd is what the words of an end gave, and the fault if they gave none.
type unsureEnd struct {
	read unsureRead
	err  error
}

// unsureEnd reads an end of which the words may say that it is not known: "some 3/4 thread,
// Italian", "? female", "26.2 mm male". What they say besides is read. The same words are read once.
func (r *reader) unsureEnd(text string) (unsureRead, error) {
	got, ok := r.unsure[text]
	if !ok {
		got.read, got.err = r.readUnsure(text)
		r.unsure[text] = got
	}
	return got.read, got.err
}

func (r *reader) readUnsure(text string) (unsureRead, error) {
	end, err := r.end(text)
	rest, country, unsure := withoutDoubt(text)
	if m, ok := r.diameterOnly(rest); ok && err == nil && noTube(&m) {
		out := unsureRead{country: country, unsure: true}
		out.reading, err = measuredEnd(m, country)
		out.reading.Words = strings.TrimSpace(text)
		return out, err
	}
	if err == nil {
		end.Candidates = byOrigin(end.Candidates, country)
		return unsureRead{reading: end, country: country}, nil
	}
	out := unsureRead{country: country, unsure: unsure}
	if rest != "" && (unsure || country != "") {
		if end, again := r.end(rest); again == nil {
			end.Words = strings.TrimSpace(text)
			end.Candidates = byOrigin(end.Candidates, country)
			out.reading = end
			return out, nil
		}
	}
	if rest == "" && unsure {
		out.reading = threads.EndReading{Words: strings.TrimSpace(text), Question: "What end is it: which thread or hose size, and is it male or female?"}
		return out, nil
	}
	if sex, ok := r.sexOnly(rest); ok {
		out.unsure = true
		out.reading = threads.EndReading{Words: strings.TrimSpace(text), Sex: sex, Question: "Which thread is the " + sex.String() + " end? Look for BSP, G, R or NPT on the part, or measure it."}
		return out, nil
	}
	if m, ok := r.diameterOnly(rest); ok {
		out.unsure = true
		out.reading, err = measuredEnd(m, country)
		out.reading.Words = strings.TrimSpace(text)
		return out, err
	}
	return out, err
}

// withoutDoubt takes the words out of a text that say that it is not known, and those that say
// where the part is from.
func withoutDoubt(text string) (rest, country string, unsure bool) {
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' || r == ';' || r == '\t' || r == '\u00a0' })
	var kept []string
next:
	for i := 0; i < len(words); {
		for _, u := range unsureWords() {
			if !begins(words[i:], u.words) {
				continue
			}
			if u.means == "unknown" {
				unsure = true
			} else {
				country = u.means
			}
			i += len(u.words)
			continue next
		}
		kept = append(kept, words[i])
		i++
	}
	return strings.Join(kept, " "), country, unsure
}

func begins(words, with []string) bool {
	return len(words) >= len(with) && slices.EqualFunc(words[:len(with)], with, strings.EqualFold)
}

// sexOnly reads a text that says a sex, in whatever language, and nothing more.
func (r *reader) sexOnly(text string) (threads.Sex, bool) {
	if text == "" || strings.ContainsAny(text, "0123456789") {
		return 0, false
	}
	end, err := title.ReadEnd("G 1/2 " + text)
	if err != nil || len(end.Candidates) != 1 || end.Candidates[0].Sex == threads.NoSex {
		return 0, false
	}
	e := end.Candidates[0]
	plain := threads.Threaded(e.Form, e.Sex)
	return e.Sex, e == plain
}

// bareDiameter is a diameter with its unit before whatever else is said.
var bareDiameter = pattern.New(`^(?:[ØøDd⌀]\s*)?(\d+(?:[.,]\d+)?\s*(?:mm|cm|in|inch|"))(?:\s+(?:diameter|outside|inside))?(?:\s+(.*))?$`)

// diameterOnly reads a diameter, with or without a sex.
func (r *reader) diameterOnly(text string) (identify.Measured, bool) {
	found := bareDiameter.FindStringSubmatch(text)
	if found == nil {
		return identify.Measured{}, false
	}
	d, err := quantity.ParseLength(strings.Replace(found[1], ",", ".", 1))
	if err != nil {
		return identify.Measured{}, false
	}
	m := identify.Measured{Diameter: identify.Gauge(d.Millimetres())}
	if found[2] != "" {
		sex, ok := r.sexOnly(found[2])
		if !ok {
			return identify.Measured{}, false
		}
		m.Sex = sex
	}
	return m, true
}

// noTube reports whether a diameter is that of no tube, which are whole millimetres outside.
func noTube(m *identify.Measured) bool {
	return math.Abs(m.Diameter.Value-math.Round(m.Diameter.Value)) > 0.05
}

// measuredEnd is an end of which nothing but a diameter is known. Without a sex it may be
// either: the outside of a male or the inside of a female.
func measuredEnd(m identify.Measured, country string) (threads.EndReading, error) {
	sexes := []threads.Sex{m.Sex}
	if m.Sex == threads.NoSex {
		sexes = []threads.Sex{threads.Male, threads.Female}
	}
	out := threads.EndReading{Sex: m.Sex}
	for _, sex := range sexes {
		m.Sex = sex
		found, err := (&evidence.Known{Country: country, Measured: m}).Readings()
		if err != nil {
			return out, err
		}
		out.Candidates = append(out.Candidates, found.Ends()...)
	}
	out.Question = "Only a diameter is known of it: which pitch has it, does it taper, and is it male or female? Measure it, and write an [[end]]."
	return out, nil
}

// origin reads the country that parts were bought or made in.
func origin(t *source.Table) string {
	text, ok := t.Text("origin", "Italy")
	if !ok {
		return ""
	}
	if _, err := identify.FamilyWeights(text); err != nil {
		t.Fault("origin", err.Error(), "write a country or a region of these, or leave it out")
		return ""
	}
	return text
}

// byOrigin puts the readings first that are common where the part is from. It is an order and
// leaves none out.
func byOrigin(list []threads.End, country string) []threads.End {
	if country == "" || len(list) < 2 {
		return list
	}
	weights, err := identify.FamilyWeights(country)
	if err != nil {
		return list
	}
	out := slices.Clone(list)
	slices.SortStableFunc(out, func(a, b threads.End) int {
		switch x, y := weights[a.Family], weights[b.Family]; {
		case x > y:
			return -1
		case x < y:
			return 1
		}
		return 0
	})
	return out
}
