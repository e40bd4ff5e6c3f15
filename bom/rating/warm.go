package rating

import (
	"errors"

	"handtight/bom/build"
	"handtight/pressure"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// warmth is the temperatures that ratings are lowered for: the duty's water, and the
// air of its space. What the build does not say lowers nothing.
type warmth struct {
	water, space *quantity.Temperature
}

func warmthOf(b *build.Build) warmth { return warmth{b.Duty.Water, b.Duty.Space} }

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
func (s *Ratings) Hottest() quantity.Temperature {
	t, _ := warmthOf(s.graph.Build).hottest()
	return t
}

// factor is what is left of an item's rating at the duty's temperatures: of a hose
// by its standard, else by the plastic it is made of; of a fitting by its material, and of
// one with a push-in end by what such ends keep; the least. It is 1 where no table tells,
// and where nothing is said of temperatures; outside a table it is what the end of it leaves.
// Errors: *pressure.RangeError where a temperature lies outside the table;
// *pressure.UnknownError where there is none.
func (w warmth) factor(k warmKind) (pressure.Factor, error) {
	f, err := w.lookUp(k)
	var outside *pressure.RangeError
	switch {
	case errors.As(err, &outside):
		return outside.AtMost, err
	case err != nil:
		return pressure.Factor{Value: 1}, err
	}
	return f, nil
}

func (w warmth) lookUp(k warmKind) (pressure.Factor, error) {
	hot, ok := w.hottest()
	if !ok {
		return pressure.Factor{Value: 1}, nil
	}
	var all []pressure.Derated
	add := func(f pressure.Factor, err error) { all = append(all, pressure.Derated{Factor: f, Err: err}) }
	if k.push {
		add(pressure.DerateMaterial("push-in fitting", hot))
	}
	switch {
	case k.hose:
		add(w.hose(k, hot))
	default:
		add(pressure.DerateMaterial(k.text, hot))
	}
	return pressure.LeastFactor(all...)
}

// hose is what is left of a hose, by its standard, else by its plastic; of tube cut from
// stock, by its metal too.
func (w warmth) hose(k warmKind, hot quantity.Temperature) (pressure.Factor, error) {
	if spec, known := pressure.HoseSpec(k.spec); known {
		water, space := hot, hot
		if w.water != nil {
			water = *w.water
		}
		if w.space != nil {
			space = *w.space
		}
		return pressure.DerateHose(spec, water, space)
	}
	f, err := pressure.DeratePlastic(k.text+", "+k.spec, hot)
	var unknown *pressure.UnknownError
	if errors.As(err, &unknown) && k.tube {
		f, err = pressure.DerateMaterial(k.text, hot)
	}
	if errors.As(err, &unknown) {
		return pressure.Factor{}, &pressure.UnknownError{Text: "hose of no known standard"}
	}
	return f, err
}

// warmKind is all that an item's factor depends on.
type warmKind struct {
	hose, tube bool   // tube: by its outside, its ends its own
	push       bool   // it has a push-in end that is a fitting
	text       string // the material, or the name of its table
	spec       string // of a hose
}

func warmKindOf(i *build.Item) warmKind {
	if i.IsHose() {
		return warmKind{true, i.Of != "" && i.Outside != nil, i.Of == "" && i.Has(pushIn), i.Material, i.Spec}
	}
	return warmKind{push: i.Has(pushIn), text: tableOf(i)}
}

type warmLeft struct {
	factor pressure.Factor
	err    error
}

// factor looks an item's factor up, once for each material and each hose standard.
func (c table) factor(i *build.Item) (pressure.Factor, error) {
	kind := warmKindOf(i)
	c.asked.Lock()
	defer c.asked.Unlock()
	got, ok := c.left[kind]
	if !ok {
		got.factor, got.err = c.warm.factor(kind)
		c.left[kind] = got
	}
	return got.factor, got.err
}

// tableOf names the table that lowers a fitting's rating: its material, and of PVC with
// a thread that of threaded PVC.
func tableOf(i *build.Item) string {
	name := i.Material
	if len(i.Made) == 0 || i.Made[0].Name != "pvc" {
		return name
	}
	if i.Has(threads.Family.Threaded) {
		return "threaded PVC"
	}
	return name
}

func pushIn(f threads.Family) bool { return f == threads.Push }

// OutsideTemperature tells that an item is used at a temperature for which its
// standard or its material gives no rating; nil where it does, and where the duty says
// no temperature.
// Errors: *pressure.RangeError outside a table; *pressure.UnknownError without one.
func (s *Ratings) OutsideTemperature(i *build.Item) error {
	_, err := s.table.factor(i)
	return err
}
