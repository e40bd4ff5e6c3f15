package duty

import (
	"fmt"
	"strconv"
	"strings"

	"handtight/bom/build"
	"handtight/catalog"
	"handtight/pressure/nearest"
	"handtight/pressure/quantity"
)

// changes are what [Change] can change, in the order in which they are named to people.
var changes = []struct {
	name, also string
	make       func(b *build.Build, value, change string) error
}{
	{"elements", "", changeElements},
	{"pressure", "", func(b *build.Build, value, _ string) error {
		return taken(value, quantity.ParsePressure, func(p quantity.Pressure) { b.Duty.Pressure, b.Duty.PressureTold = &p, false })
	}},
	{"water", "temperature", func(b *build.Build, value, _ string) error {
		return taken(value, rangeOf(quantity.ParseTemperature), func(r quantity.Range[quantity.Temperature]) { b.Duty.Waters, b.Duty.Water = &r, &r.Hi })
	}},
	{"salinity", "", func(b *build.Build, value, _ string) error {
		return taken(value, rangeOf(quantity.ParseSalinity), func(r quantity.Range[quantity.Salinity]) { b.Duty.Salinities, b.Duty.Salinity = &r, &r.Hi })
	}},
	{"flow", "pump", func(b *build.Build, value, change string) error {
		q, err := quantity.ParseFlow(value)
		if err != nil {
			return err
		}
		return eachItem(b, catalog.DrivesHigh, change, func(it *build.Item) { it.Flow = &q })
	}},
	{"speed", "", changeSpeed},
	{"age", "", func(b *build.Build, value, _ string) error {
		return taken(value, quantity.ParseDuration, func(a quantity.Duration) { b.Duty.Age = &a })
	}},
}

// Change writes a change into a build that has been read for it: "elements=2",
// "pressure=50 bar", "water=8 C", "salinity=40 g/kg", "flow=11 L/min" (of the piston pumps),
// "speed=1200 rpm" (of the pumps), "age=4 years". The build is walked again after it.
//
// Errors: a name that is none of these, a figure without its unit, or nothing to change.
func Change(b *build.Build, change string) error {
	name, value, ok := strings.Cut(change, "=")
	name, value = strings.TrimSpace(strings.ToLower(name)), strings.Trim(strings.TrimSpace(value), `"'`)
	if !ok || value == "" {
		return fmt.Errorf("`%s` changes nothing: write it like --with 'elements=2'", change)
	}
	var names []string
	for _, c := range changes {
		if name == c.name || name == c.also {
			return c.make(b, value, change)
		}
		names = append(names, c.name)
	}
	hint := "it can be one of " + strings.Join(names, ", ")
	if near, ok := nearest.Of(name, names); ok {
		hint = fmt.Sprintf("did you mean `%s`? %s", near, hint)
	}
	return fmt.Errorf("`%s` cannot be changed; %s", name, hint)
}

// taken reads a figure and puts it where it belongs.
func taken[T any](value string, parse func(string) (T, error), put func(T)) error {
	v, err := parse(value)
	if err == nil {
		put(v)
	}
	return err
}

func rangeOf[Q ~float64](parse func(string) (Q, error)) func(string) (quantity.Range[Q], error) {
	return func(text string) (quantity.Range[Q], error) { return quantity.ParseRange(text, parse) }
}

func changeElements(b *build.Build, value, change string) error {
	n, err := strconv.Atoi(value)
	if err != nil || n < 1 || n > 100 {
		return fmt.Errorf("`%s` is no number of elements in a vessel, 1 to 100", value)
	}
	return eachItem(b, catalog.Element, change, func(it *build.Item) { it.Each = n })
}

// changeSpeed changes what turns the pumps; a flow that is not said at a speed would stay, which is an error.
func changeSpeed(b *build.Build, value, change string) error {
	n, err := quantity.ParseSpeed(value)
	if err != nil {
		return err
	}
	for _, it := range b.Items {
		if p := &it.Process; it.Kind.Is(catalog.DrivesHigh) && p.Speed == nil && (it.Flow != nil || p.Plungers == nil || p.PlungerBore == nil || p.Stroke == nil) {
			return fmt.Errorf("`%s` would change nothing of the flow: nothing says at which speed %s delivers its flow; write `speed` on it, the turns of its data sheet, or change `flow`", change, it.ID)
		}
	}
	return eachItem(b, catalog.DrivesHigh, change, func(it *build.Item) {
		it.Process.MotorSpeed, it.Process.EngineSpeed, it.Process.Pulley = &n, nil, nil
	})
}

func eachItem(b *build.Build, role catalog.Role, change string, set func(*build.Item)) error {
	some := false
	for _, it := range b.Items {
		if it.Kind.Is(role) {
			set(it)
			some = true
		}
	}
	if !some {
		return fmt.Errorf("`%s` changes nothing: the build has no %s", change, catalog.OfRole(role).Name)
	}
	return nil
}
