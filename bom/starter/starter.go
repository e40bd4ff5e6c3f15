package starter

import (
	"bytes"
	_ "embed"
	"fmt"
	"math"
	"strconv"
	"strings"
	"text/template"

	"handtight/pressure/pattern"
	"handtight/pressure/quantity"
)

//go:embed starter.toml.tmpl
var text string

// Answers are what is known of a plant before its parts are. The zero value is no answers:
// begin with [Usual].
type Answers struct {
	Volts     int // of the supply: 12, 24 or 230
	Elements  int // 1 to 3, in one vessel
	Drive     Drive
	Countries []Country // where one buys; threads and money go by the first
}

// plant is what the template is filled from.
type plant struct {
	Answers
	size
	Country, Second Country
	Rate            string // of the second's currency; "" where both have one
}

// Write gives the build file of the answers.
//
// Errors: *ChoiceError where they do not go together, or lack a country.
func Write(a Answers) ([]byte, error) {
	if err := a.check(); err != nil {
		return nil, err
	}
	p := plant{Answers: a, size: sizes()[a.Elements-1], Country: a.Countries[0], Second: a.Countries[0]}
	if len(a.Countries) > 1 {
		p.Second = a.Countries[1]
	}
	if p.Second.Currency != p.Country.Currency {
		p.Rate = rate(p.Second.Euro / p.Country.Euro)
	}
	t, err := template.New("build").Funcs(template.FuncMap{"pad": pad, "price": price}).Parse(text)
	if err != nil {
		return nil, fmt.Errorf("the starter: %w", err)
	}
	var out bytes.Buffer
	if err := t.Execute(&out, p); err != nil {
		return nil, fmt.Errorf("the starter: %w", err)
	}
	build := out.Bytes()
	if !p.Throttled() && p.Elements > 1 { // what such a pump draws wants a wider suction
		build = bytes.ReplaceAll(build, []byte("19 mm"), []byte("25 mm"))
	}
	return inThreads(build, p.Country.Threads), nil
}

// Throttled reports whether the pressure is held by a throttle.
func (p plant) Throttled() bool { return p.Drive.Name != recovery }

// Title is the plant in words.
func (p plant) Title() string {
	elements := "one element"
	if p.Elements > 1 {
		elements = fmt.Sprintf("%s elements", [...]string{2: "two", 3: "three"}[p.Elements])
	}
	return fmt.Sprintf("a small desalinator, %s, %s, %s", p.Supply(), elements, p.Drive.Short)
}

// Supply is the voltage of the supply.
func (a Answers) Supply() string { return fmt.Sprintf("%d V", a.Volts) }

// Motor is what drives the high-pressure pump, in the words of the build.
func (p plant) Motor() string {
	return strings.NewReplacer("{battery}", p.Supply(), "{mains}", p.Country.Mains).Replace(p.Drive.Motor)
}

// FeedMotor is what drives the feed pump.
func (p plant) FeedMotor() string {
	if p.Volts > mostBattery {
		return p.Country.Mains + " AC"
	}
	return p.Supply() + " DC"
}

// What the feed pump of an energy-recovery pump gives is what drives all of it.
func (p plant) Feed() string        { return p.either(p.FeedFlow, p.RecoveryFeed) }
func (p plant) FeedShutoff() string { return p.either("2 bar", "7 bar") }
func (p plant) FeedRated() string   { return p.either("6 bar", "10 bar") }
func (p plant) HoseRated() string   { return p.either("6 bar", "10 bar") }
func (p plant) FilterRated() string { return p.either("8 bar", "10 bar") }

func (p plant) either(throttled, recovering string) string {
	if p.Throttled() {
		return throttled
	}
	return recovering
}

// Size is that of each element, and Inches its length.
func (p plant) Size() string   { return "2521" }
func (p plant) Inches() string { return "21" }

// pad puts the comment behind a text into its column.
func pad(text string) string {
	const column = 28
	return strings.Repeat(" ", max(1, column-len(text)-1))
}

// price is a price of the invented shops in the money of a country.
func price(c Country, euros float64) string {
	if c.Euro < 0.1 {
		return strconv.FormatFloat(euros/c.Euro, 'f', 0, 64)
	}
	return strconv.FormatFloat(euros/c.Euro, 'f', 2, 64)
}

// taper finds the taper pipe ends of the template, which is written in those of NPT.
var taper = pattern.New(`'(\d/\d) NPT (male|female)`)

// inThreads writes the taper pipe ends in the country's family: R in Rc in place of NPT.
func inThreads(build []byte, family string) []byte {
	if family == "NPT" {
		return build
	}
	build = bytes.ReplaceAll(build, []byte("Hose tail 3/4 NPT male"), []byte("Hose tail R 3/4 male"))
	return []byte(taper.ReplaceAllStringFunc(string(build), func(m string) string {
		part := taper.FindStringSubmatch(m)
		letter := "R "
		if part[2] == "female" {
			letter = "Rc "
		}
		return "'" + letter + part[1] + " " + part[2]
	}))
}

// rate prints an exchange rate with four figures or all before its point, and no exponent.
func rate(v float64) string {
	decimals := max(0, 3-int(math.Floor(math.Log10(v))))
	return quantity.Decimals(v, decimals)
}
