package bom

import (
	"errors"

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

// factor is what is left of an item's rating at the duty's temperatures: of a hose
// by its standard, of a fitting by its material. It is 1 where no table tells, and
// where nothing is said of temperatures.
// Errors: *pressure.RangeError where a temperature lies outside the table.
func (w warmth) factor(i *Item) (pressure.Factor, error) {
	f, err := w.lookUp(i)
	var outside *pressure.RangeError
	if errors.As(err, &outside) {
		return pressure.Factor{Value: 1}, outside
	}
	if err != nil || f.Value == 0 {
		return pressure.Factor{Value: 1}, nil
	}
	return f, nil
}

func (w warmth) lookUp(i *Item) (pressure.Factor, error) {
	hot, ok := w.hottest()
	if !ok {
		return pressure.Factor{}, nil
	}
	if !i.IsHose() {
		return pressure.DerateMaterial(i.Material, hot)
	}
	spec, known := pressure.HoseSpec(i.Spec)
	if !known {
		return pressure.Factor{}, nil
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
	text string // spec of a hose, else the material
}

type warmLeft struct {
	factor pressure.Factor
	err    error
}

// factor looks an item's factor up, once for each material and each hose standard.
func (c holds) factor(i *Item) (pressure.Factor, error) {
	kind := warmKind{false, i.Material}
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

// OutsideTemperature tells that an item is used at a temperature for which its
// standard or its material gives no rating; nil where it does, or where none is known.
// Errors: *pressure.RangeError.
func (s *System) OutsideTemperature(i *Item) error {
	_, err := s.holds.factor(i)
	return err
}
