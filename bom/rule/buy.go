package rule

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/bom/rating"
	"handtight/bom/segment"
	"handtight/pressure"
	"handtight/pressure/quantity"
)

// forBar says what to buy parts for that must hold a pressure: rounded up, so that
// what is bought as told holds it. A data sheet speaks of cold water, so where heat weakens
// a part its figure is said too.
func forBar(s *bom.System, parts []rating.Allowable, need quantity.Pressure) string {
	var warm []rating.Allowable
	least := 1.0
	for _, h := range parts {
		if h.Left > 0 && h.Left < 1 {
			warm = append(warm, h)
			least = min(least, h.Left)
		}
	}
	text := fmt.Sprintf("for %s or more", barsUp(need))
	switch {
	case len(warm) == 0:
		return text
	case len(warm) == len(parts):
		return fmt.Sprintf("%s at %s (that is %s or more on the data sheet)", text, s.Ratings.Hottest(), barsUp(need.Times(1/least)))
	}
	return fmt.Sprintf("%s at %s (that is %s or more on the data sheet of %s)", text, s.Ratings.Hottest(), barsUp(need.Times(1/least)), whats(warm))
}

// whats names parts for people, each once.
func whats(parts []rating.Allowable) string {
	var names []string
	for _, h := range parts {
		if !slices.Contains(names, h.What) {
			names = append(names, h.What)
		}
	}
	if last := len(names) - 1; last > 0 {
		return strings.Join(names[:last], ", ") + " and " + names[last]
	}
	return strings.Join(names, "")
}

// barsUp writes a pressure as [bars] does, and never less than it is.
func barsUp(p quantity.Pressure) string {
	if !(p > 0) || p.Unbounded() {
		return bars(p)
	}
	step := math.Pow(10, min(0, math.Floor(math.Log10(p.Bar()))-2))
	return bars(quantity.Bar.Times(math.Ceil((p-pressure.Slack).Bar()/step) * step))
}

// guarded lists what each unit and each joint of a segment holds, where that is known and
// they hold what stands there in normal running, the weakest first. What is too weak for
// that is found for itself.
func guarded(s *bom.System, g *segment.Segment) []rating.Allowable {
	return holding(s, g, func(h rating.Allowable, normal quantity.Pressure) bool {
		return h.Rating.Pressure >= normal-pressure.Slack
	})
}

// holding lists what each unit and each joint of a segment holds, where that is known and the
// caller keeps it by what stands there in normal running, the weakest first.
func holding(s *bom.System, g *segment.Segment, keep func(h rating.Allowable, normal quantity.Pressure) bool) []rating.Allowable {
	var out []rating.Allowable
	add := func(h rating.Allowable, normal quantity.Pressure) {
		if !h.Known || !keep(h, normal) {
			return
		}
		i := slices.IndexFunc(out, func(o rating.Allowable) bool { return o.What == h.What })
		switch {
		case i < 0:
			out = append(out, h)
		case h.Rating.Pressure < out[i].Rating.Pressure:
			out[i] = h
		}
	}
	for _, p := range g.Ports {
		add(s.Ratings.Port(p), s.States.PortLoad(p).Normal)
	}
	for _, j := range g.Joints {
		add(s.Ratings.Joint(j), s.States.PortLoad(j.A).Normal)
	}
	slices.SortStableFunc(out, func(a, b rating.Allowable) int { return cmp.Compare(a.Rating.Pressure, b.Rating.Pressure) })
	return out
}

// below lists those that hold less than a pressure.
func below(parts []rating.Allowable, need quantity.Pressure) []rating.Allowable {
	var out []rating.Allowable
	for _, h := range parts {
		if h.Rating.Pressure < need-pressure.Slack {
			out = append(out, h)
		}
	}
	return out
}

// worthBuying reports whether parts can be bought for a pressure, and are few: else
// another way is the one to tell.
func worthBuying(parts []rating.Allowable, need quantity.Pressure) bool {
	const few = 2
	return len(parts) <= few && !slices.ContainsFunc(parts, func(h rating.Allowable) bool { return clamped(h) || closing(h) || standardRules(h, need) })
}

// clamped reports whether it is a joint of a hose on a tail: none holds more than another.
func clamped(h rating.Allowable) bool { return h.Rating.Basis == pressure.HoseJoint }

// closing reports whether it is a joint that its washer alone holds shut.
func closing(h rating.Allowable) bool { return h.Rating.Basis == pressure.Closing }

// standardRules reports whether the standard or class of a part gives less than it needs: a
// better data sheet alone would change nothing, since the lower of both is used.
func standardRules(h rating.Allowable, need quantity.Pressure) bool {
	if h.Table == nil || h.Table.Pressure >= need-pressure.Slack {
		return false
	}
	switch h.Table.Basis {
	case pressure.HoseStandard, pressure.MakersSeries, pressure.OtherSize, pressure.FittingClass, pressure.TubeTable:
		return true
	}
	return false
}
