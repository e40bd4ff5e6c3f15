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

// changeNames are what [Change] can change.
var changeNames = []string{"elements", "pressure", "water", "salinity", "flow", "speed", "age"}

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
	switch name {
	case "temperature":
		name = "water"
	case "pump":
		name = "flow"
	}
	d := &b.Duty
	switch name {
	case "elements":
		n, err := strconv.Atoi(value)
		if err != nil || n < 1 || n > 100 {
			return fmt.Errorf("`%s` is no number of elements in a vessel, 1 to 100", value)
		}
		return eachItem(b, catalog.Element, change, func(it *build.Item) { it.Each = n })
	case "pressure":
		p, err := quantity.ParsePressure(value)
		if err != nil {
			return err
		}
		d.Pressure, d.PressureTold = &p, false
	case "water":
		r, err := quantity.ParseRange(value, quantity.ParseTemperature)
		if err != nil {
			return err
		}
		d.Waters, d.Water = &r, &r.Hi
	case "salinity":
		r, err := quantity.ParseRange(value, quantity.ParseSalinity)
		if err != nil {
			return err
		}
		d.Salinities, d.Salinity = &r, &r.Hi
	case "age":
		a, err := quantity.ParseDuration(value)
		if err != nil {
			return err
		}
		d.Age = &a
	case "flow":
		q, err := quantity.ParseFlow(value)
		if err != nil {
			return err
		}
		return eachItem(b, catalog.DrivesHigh, change, func(it *build.Item) { it.Flow = &q })
	case "speed":
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
	default:
		hint := "it can be one of " + strings.Join(changeNames, ", ")
		if near, ok := nearest.Of(name, changeNames); ok {
			hint = fmt.Sprintf("did you mean `%s`? %s", near, hint)
		}
		return fmt.Errorf("`%s` cannot be changed; %s", name, hint)
	}
	return nil
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
