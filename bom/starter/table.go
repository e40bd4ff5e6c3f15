package starter

import (
	"embed"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"handtight/pressure/nearest"
	"handtight/pressure/rows"
)

//go:embed table/*.csv
var tables embed.FS

// Country is where one buys.
type Country struct {
	Code, Name string
	Currency   string  // ISO 4217
	Euro       float64 // what one of it costs, in round euros of our own: to be looked up
	Threads    string  // the taper pipe thread of its shops: "R" or "NPT"
	Mains      string  // "230 V"
}

// Drive is what drives the high-pressure pump.
type Drive struct {
	Name, Words, Short, Motor string
}

const recovery = "recovery"

// mostBattery is the highest voltage of batteries that is offered.
const mostBattery = 24

// Question is one thing that is asked before a build is written.
type Question struct {
	Name    string // as the flag is called
	Ask     string
	Choices []string // none where many are taken
	Usual   string   // what is taken where nothing is answered
}

// size is how a plant of so many elements is laid out.
type size struct{ Product, PumpFlow, FeedFlow, RecoveryFeed string }

// ChoiceError says which answer cannot be taken, and what to answer instead.
type ChoiceError struct{ Name, Reason, Remedy string }

// Error says both in a line.
func (e *ChoiceError) Error() string { return fmt.Sprintf("%s: %s: %s", e.Name, e.Reason, e.Remedy) }

// table reads an embedded table; a test reads every one.
func table(name string) []map[string]string {
	return rows.All[map[string]string]("starter", tables, "table/"+name+".csv")
}

var countries = sync.OnceValue(func() []Country {
	var out []Country
	for _, r := range table("country") {
		euro, err := strconv.ParseFloat(r["euro"], 64)
		if err != nil {
			panic(err)
		}
		out = append(out, Country{Code: r["code"], Name: r["name"], Currency: r["currency"], Euro: euro, Threads: r["threads"], Mains: r["mains"]})
	}
	return out
})

var drives = sync.OnceValue(func() []Drive {
	var out []Drive
	for _, r := range table("drive") {
		out = append(out, Drive{Name: r["name"], Words: r["words"], Short: r["short"], Motor: r["motor"]})
	}
	return out
})

var sizes = sync.OnceValue(func() []size {
	var out []size
	for _, r := range table("elements") {
		out = append(out, size{r["product"], r["pump_flow"], r["feed_flow"], r["recovery_feed"]})
	}
	return out
})

// Questions lists what is asked, in the order of asking.
func Questions() []Question {
	var out []Question
	for _, r := range table("question") {
		q := Question{Name: r["name"], Ask: r["ask"], Usual: r["default"]}
		if r["choices"] != "" {
			q.Choices = strings.Split(r["choices"], "|")
		}
		if q.Name == "country" {
			for _, c := range countries() {
				q.Choices = append(q.Choices, c.Code)
			}
		}
		out = append(out, q)
	}
	return out
}

// Meaning says in words what a choice of a question is; "" where it says so itself.
func (q Question) Meaning(choice string) string {
	switch q.Name {
	case "drive":
		for _, d := range drives() {
			if d.Name == choice {
				return d.Words
			}
		}
	case "country":
		for _, c := range countries() {
			if c.Code == choice {
				return c.Name
			}
		}
	}
	return ""
}

// Usual are the answers of who says nothing.
func Usual() Answers {
	var a Answers
	for _, q := range Questions() {
		if err := a.Take(q.Name, q.Usual); err != nil {
			panic(err) // a test takes them
		}
	}
	return a
}

// Take takes the answer to one question, as it was typed.
//
// Errors: *ChoiceError.
func (a *Answers) Take(name, answer string) error {
	answer = strings.TrimSpace(answer)
	for _, q := range Questions() {
		if q.Name == name {
			return a.take(q, answer)
		}
	}
	return &ChoiceError{name, "nothing of that name is asked", "answer volts, elements, drive or country"}
}

func (a *Answers) take(q Question, answer string) error {
	if q.Name == "country" {
		var list []Country
		for _, word := range strings.FieldsFunc(answer, func(r rune) bool { return r == ',' || r == ';' }) {
			c, err := countryOf(q, strings.TrimSpace(word))
			if err != nil {
				return err
			}
			list = append(list, c)
		}
		if len(list) == 0 {
			return q.refuse(answer)
		}
		a.Countries = list
		return nil
	}
	word := strings.ToLower(strings.TrimSpace(strings.TrimSuffix(strings.ToUpper(answer), "V")))
	if !slices.Contains(q.Choices, word) {
		return q.refuse(answer)
	}
	switch q.Name {
	case "volts":
		a.Volts, _ = strconv.Atoi(word)
	case "elements":
		a.Elements, _ = strconv.Atoi(word)
	case "drive":
		for _, d := range drives() {
			if d.Name == word {
				a.Drive = d
			}
		}
	}
	return nil
}

func countryOf(q Question, word string) (Country, error) {
	for _, c := range countries() {
		if strings.EqualFold(c.Code, word) || strings.EqualFold(c.Name, word) {
			return c, nil
		}
	}
	return Country{}, q.refuse(word)
}

// refuse says what may be answered.
func (q Question) refuse(answer string) error {
	words := slices.Clone(q.Choices)
	if q.Name == "country" {
		for _, c := range countries() {
			words = append(words, c.Name)
		}
	}
	remedy := "answer one of " + strings.Join(q.Choices, ", ")
	if near, ok := nearest.Of(answer, words); ok {
		remedy = fmt.Sprintf("did you mean `%s`? %s", near, remedy)
	}
	return &ChoiceError{q.Name, fmt.Sprintf("%q is not offered", answer), remedy}
}

// check reports answers that lack something or do not go together.
func (a Answers) check() error {
	switch {
	case len(a.Countries) == 0:
		return &ChoiceError{"country", "nothing is answered", "name one, such as DE"}
	case a.Elements < 1 || a.Elements > len(sizes()):
		return &ChoiceError{"elements", fmt.Sprintf("%d is not offered", a.Elements), "answer 1, 2 or 3"}
	case a.Drive.Name == "":
		return &ChoiceError{"drive", "nothing is answered", "answer dc, belt, ac or recovery"}
	case a.Volts <= 0:
		return &ChoiceError{"volts", "nothing is answered", "answer 12, 24 or 230"}
	case a.Drive.Name == "dc" && a.Volts > mostBattery:
		return &ChoiceError{"drive", fmt.Sprintf("no battery gives %d V for a direct-current motor", a.Volts), "take `ac` for the mains, or 12 or 24 V"}
	}
	return nil
}
