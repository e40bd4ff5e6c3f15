package rule

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// A remedy that names a figure is followed to the letter, and the finding is gone.
func TestDutyRemediesWork(t *testing.T) {
	for _, c := range []struct {
		rule     Rule
		figure   string // in the remedy
		from, to string // what is written instead; $1 is the figure
	}{
		{recoveryTooHigh, `delivers \S+ L/min or more \(([\d.]+) L/min on its plate`, `flow = "7 L/min"`, `flow = "$1 L/min"`},
		{feedTooSmall, `pump of ([\d.]+) L/min or more on its plate`, `flow = "3.5 L/min"`, `flow = "$1 L/min"`},
		{brineFlowLow, `pump of ([\d.]+) L/min or more on its plate`, `flow = "5.2 L/min"`, `flow = "$1 L/min"`},
		{productMoreThanPump, `pump of ([\d.]+) L/min or more`, "", ""},
		{motorTooWeak, `motor of ([\d.]+) W or more`, `motor_power = "0.8 kW"`, `motor_power = "$1 W"`},
		{cableTooThin, `Take ([\d.]+) mm2 or more`, `cable = "6 mm2"`, `cable = "$1 mm2"`},
		{currentOverSupply, `made for ([\d.]+) A`, `breaker = "40 A"`, `breaker = "$1 A"`},
		{feedPumpTooSmall, `feed pump of ([\d.]+) L/min or more`, `flow = "6 L/min"`, `flow = "$1 L/min"`},
		{lineTooFast, `Take ([\d.]+) mm bore or more`, `bore = '3/16"'`, `bore = '$1 mm'`},
		{lineLossHigh, `Take ([\d.]+) mm bore or more`, `bore = "8 mm"`, `bore = "$1 mm"`},
		{filterOverloaded, `one for ([\d.]+) L/min or more`, `flow = "5 L/min"`, `flow = "$1 L/min"`},
		{meterRange, `reads from ([\d.]+) to`, `"100 to 600 L/h"`, `"$1 to 100 L/h"`},
		{suctionLiftHigh, `Set it ([\d.]+) m or less`, `lift = "3 m"`, `lift = "$1 m"`},
	} {
		t.Run(c.rule.Slug, func(t *testing.T) {
			list := example(t, c.rule, c.rule.Wrong)[c.rule.Slug]
			require.Len(t, list, 1)
			m := regexp.MustCompile(c.figure).FindStringSubmatch(list[0].Remedy)
			require.NotNil(t, m, list[0].Remedy)
			if c.from == "" {
				return // another block of the plant: the figure is there
			}
			require.Contains(t, c.rule.Wrong, c.from)
			mended := strings.Replace(c.rule.Wrong, c.from, strings.ReplaceAll(c.to, "$1", m[1]), 1)
			require.NotContains(t, example(t, c.rule, mended), c.rule.Slug, "%s\n%s", list[0].Remedy, mended)
		})
	}
}

// One cause, one report: what follows from another finding of the same plant is not said again.
func TestDutySaysACauseOnce(t *testing.T) {
	require.NotContains(t, example(t, feedTooSmall, feedTooSmall.Wrong), "brine-flow-low")
	require.NotContains(t, example(t, powerImpossible, powerImpossible.Wrong), "current-over-supply")
	require.NotContains(t, example(t, pressureBelowOsmotic, pressureBelowOsmotic.Wrong), "product-below-wanted")
}
