package draft

import (
	"fmt"
	"strings"

	"handtight/pressure/quantity"
)

// Most is how many questions a person is asked at once: those that decide most stand first.
const Most = 10

// Talk lists the questions to put to a person: the first that have a default, or a choice, or
// are about the plant as a whole. What single lines leave open is asked of their shops.
func (d *Draft) Talk() []*Question {
	var out []*Question
	for i := range d.Questions {
		q := &d.Questions[i]
		if len(q.Lines) > 0 && q.Key != "plants" || q.Key == "element" || q.Key == "flush" || strings.HasPrefix(q.Key, "rate ") {
			continue
		}
		if len(out) < Most {
			out = append(out, q)
		}
	}
	return out
}

// Defaults are the answers that would be taken for all questions that have one.
func (d *Draft) Defaults() map[string]string {
	out := map[string]string{}
	for i := range d.Questions {
		if q := &d.Questions[i]; q.Default != "" {
			out[q.Key] = q.Default
		}
	}
	return out
}

// Check tells whether an answer can be taken.
//
// Errors: a text that the build file would not take for that key, with what to write.
func (q *Question) Check(answer string) error {
	var err error
	sort, _, _ := strings.Cut(q.Key, " ")
	switch sort {
	case "supply":
		_, err = quantity.ParseVoltage(answer)
	case "pressure":
		_, err = quantity.ParsePressure(answer)
	case "product":
		_, err = quantity.ParseFlow(answer)
	case "salinity":
		_, err = quantity.ParseRange(answer, quantity.ParseSalinity)
	case "water":
		_, err = quantity.ParseRange(answer, quantity.ParseTemperature)
	case "length":
		var l quantity.Length
		if l, err = quantity.ParseLength(answer); err == nil && (l <= 0 || l > 1000*quantity.Metre) {
			err = fmt.Errorf("a hose of %s cannot be: write it like \"1.4 m\"", l)
		}
	case "plants":
		if answer != "one" && answer != "more" {
			err = fmt.Errorf("write one or more")
		}
	}
	return err
}
