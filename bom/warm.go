package bom

import (
	"errors"

	"handtight/catalog"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// warmth is the temperatures that ratings are lowered for: the duty's water, and the
// air of its space. What the build does not say lowers nothing.
type warmth struct {
	water, space *quantity.Temperature
}

func (b *Build) warmth() warmth { return warmth{b.Duty.Water, b.Duty.Space} }

// hottest is the higher of the two temperatures; ok is false when neither is said.
func (w warmth) hottest() (t quantity.Temperature, ok bool) {
	for _, v := range []*quantity.Temperature{w.water, w.space} {
		if v != nil && (!ok || *v > t) {
			t, ok = *v, true
		}
	}
	return t, ok
}

// Hottest is the higher of the temperatures that the duty says of the water and of the air
// around the parts; 0 C where it says none.
func (s *System) Hottest() quantity.Temperature {
	t, _ := s.Build.warmth().hottest()
	return t
}

// factor is what is left of an item's rating at the duty's temperatures: of a hose
// by its standard, of a fitting by its material. It is 1 where no table tells, and
// where nothing is said of temperatures; outside a table it is what the end of it leaves.
// Errors: *pressure.RangeError where a temperature lies outside the table;
// *pressure.UnknownError where there is none.
func (w warmth) factor(i *Item) (pressure.Factor, error) {
	f, err := w.lookUp(i)
	var outside *pressure.RangeError
	switch {
	case errors.As(err, &outside):
		return outside.AtMost, err
	case err != nil || f.Value == 0:
		return pressure.Factor{Value: 1}, err
	}
	return f, nil
}

func (w warmth) lookUp(i *Item) (pressure.Factor, error) {
	hot, ok := w.hottest()
	if !ok {
		return pressure.Factor{}, nil
	}
	if !i.IsHose() {
		return pressure.DerateMaterial(tableOf(i), hot)
	}
	spec, known := pressure.HoseSpec(i.Spec)
	if !known {
		return pressure.Factor{}, &pressure.UnknownError{Text: "hose of no known standard"}
	}
	water, space := hot, hot
	if w.water != nil {
		water = *w.water
	}
	if w.space != nil {
		space = *w.space
	}
	return pressure.DerateHose(spec, water, space)
}

// warmKind is all that an item's factor depends on.
type warmKind struct {
	hose bool
	text string // spec of a hose, else the table of the material
}

type warmLeft struct {
	factor pressure.Factor
	err    error
}

// factor looks an item's factor up, once for each material and each hose standard.
func (c holds) factor(i *Item) (pressure.Factor, error) {
	kind := warmKind{false, tableOf(i)}
	if i.IsHose() {
		kind = warmKind{true, i.Spec}
	}
	got, ok := c.left[kind]
	if !ok {
		got.factor, got.err = c.warm.factor(i)
		c.left[kind] = got
	}
	return got.factor, got.err
}

// tableOf names the table that lowers a fitting's rating: its material, and of PVC with
// a thread that of threaded PVC.
func tableOf(i *Item) string {
	name := i.Material
	if made, ok := catalog.MaterialNamed(i.Material); !ok || made.Name != "pvc" {
		return name
	}
	for p := range i.Ports {
		for _, end := range i.Ports[p].End.Candidates {
			if end.Family.Threaded() {
				return "threaded PVC"
			}
		}
	}
	return name
}

// OutsideTemperature tells that an item is used at a temperature for which its
// standard or its material gives no rating; nil where it does, and where the duty says
// no temperature.
// Errors: *pressure.RangeError outside a table; *pressure.UnknownError without one.
func (s *System) OutsideTemperature(i *Item) error {
	_, err := s.holds.factor(i)
	return err
}
