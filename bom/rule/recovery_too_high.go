package rule

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/duty"
	"handtight/bom/finding"
	"handtight/pressure/quantity"
)

var recoveryTooHigh = Rule{
	Slug:  "recovery-too-high",
	Title: "An element takes too much of its feed.",
	Why: `What an element takes out leaves its salt behind. Over 15 % of the feed of any one element
(memory: a note, a caution where
even the best of all takes more; its own sheet goes before, and stops) scale grows on the membrane. More feed, less pressure, or
fewer elements.`,
	Wrong: `
[[item]]
id = "pump"
kind = "plunger pump"
material = "super duplex"
flow = "7 L/min"
motor = "24 V DC, belt"
motor_power = "1.5 kW"
rated = "100 bar"
ports = { in = '19 mm barb', out = '3/8 NPT female' }
`,
	mend:  []string{`flow = "7 L/min"`, `flow = "9 L/min"`},
	block: "pump",
	plant: "watered",
	harm:  finding.Spoils,
	flows: findRecoveryTooHigh,
}

func findRecoveryTooHigh(_ *bom.System, r *duty.Result) []finding.Finding {
	var out []finding.Finding
	for _, m := range r.Plants {
		l, ok := m.Limit("recovery")
		if !ok || !l.Doubtful() {
			continue
		}
		f := onPlant(m, severityOf(l))
		f.Reason = fmt.Sprintf("one element takes %.1f %% of its feed at the middle of what is said (%.1f to %.1f over all of it); its limit is %.0f %%, %s.", l.Middle, l.Value.Lo, l.Value.Hi, l.Strict, l.From)
		f.Remedy = "Give it more feed, or hold less pressure."
		if q, ok := m.FeedFor(quantity.Share(l.Strict / 100)); ok {
			f.Remedy = fmt.Sprintf("Take a pump that delivers %s L/min or more (%s L/min on its plate), or hold less pressure.", upTo(q.LitresPerMinute(), 1), upTo(q.LitresPerMinute()/0.96, 1))
		}
		out = append(out, f)
	}
	return out
}
