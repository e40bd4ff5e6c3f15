package rule

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/bom"
	"handtight/pressure"
)

// forBar says what to buy parts for that must hold a pressure in bar: rounded up, so that
// what is bought as told holds it. A data sheet speaks of cold water, so where heat weakens
// a part its figure is said too.
func forBar(s *bom.System, parts []bom.Hold, bar float64) string {
	var warm []bom.Hold
	least := 1.0
	for _, h := range parts {
		if h.Left > 0 && h.Left < 1 {
			warm = append(warm, h)
			least = min(least, h.Left)
		}
	}
	text := fmt.Sprintf("for %s or more", barsUp(bar))
	switch {
	case len(warm) == 0:
		return text
	case len(warm) == len(parts):
		return fmt.Sprintf("%s at %s (that is %s or more on the data sheet)", text, s.Hottest(), barsUp(bar/least))
	}
	return fmt.Sprintf("%s at %s (that is %s or more on the data sheet of %s)", text, s.Hottest(), barsUp(bar/least), whats(warm))
}

// whats names parts for people, each once.
func whats(parts []bom.Hold) string {
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
func barsUp(bar float64) string {
	if !(bar > 0) || math.IsInf(bar, 1) {
		return bars(bar)
	}
	step := math.Pow(10, min(0, math.Floor(math.Log10(bar))-2))
	return bars(math.Ceil((bar-pressure.Slack)/step) * step)
}

// guarded lists what each unit and each joint of a segment holds, where that is known and
// they hold what stands there in normal running, the weakest first. What is too weak for
// that is found for itself.
func guarded(s *bom.System, g *bom.Segment) []bom.Hold {
	var out []bom.Hold
	add := func(h bom.Hold, normal float64) {
		if !h.Known || h.Rating.Pressure.Bar() < normal-pressure.Slack {
			return
		}
		i := slices.IndexFunc(out, func(o bom.Hold) bool { return o.What == h.What })
		switch {
		case i < 0:
			out = append(out, h)
		case h.Rating.Pressure < out[i].Rating.Pressure:
			out[i] = h
		}
	}
	for _, p := range g.Ports {
		add(s.PortHold(p), s.PortLoad(p).Normal)
	}
	for _, j := range g.Joints {
		add(s.JointHold(j), s.PortLoad(j.A).Normal)
	}
	slices.SortStableFunc(out, func(a, b bom.Hold) int { return cmp.Compare(a.Rating.Pressure, b.Rating.Pressure) })
	return out
}

// below lists those that hold less than a pressure in bar.
func below(parts []bom.Hold, bar float64) []bom.Hold {
	var out []bom.Hold
	for _, h := range parts {
		if h.Rating.Pressure.Bar() < bar-pressure.Slack {
			out = append(out, h)
		}
	}
	return out
}

// worthBuying reports whether parts can be bought for a pressure in bar, and are few: else
// another way is the one to tell.
func worthBuying(parts []bom.Hold, bar float64) bool {
	const few = 2
	return len(parts) <= few && !slices.ContainsFunc(parts, func(h bom.Hold) bool { return clamped(h) || standardRules(h, bar) })
}

// clamped reports whether it is a joint of a hose on a tail: none holds more than another.
func clamped(h bom.Hold) bool { return h.Rating.Basis == pressure.HoseJoint }

// standardRules reports whether the standard or class of a part gives less than it needs: a
// better data sheet alone would change nothing, since the lower of both is used.
func standardRules(h bom.Hold, need float64) bool {
	if h.Table == nil || h.Table.Pressure.Bar() >= need-pressure.Slack {
		return false
	}
	switch h.Table.Basis {
	case pressure.HoseStandard, pressure.MakersSeries, pressure.OtherSize, pressure.FittingClass, pressure.TubeTable:
		return true
	}
	return false
}
