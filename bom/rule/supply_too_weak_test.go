package rule

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What drives the pump rules over the boat's supply. (56 - 1) bar x 8.28 L/min / 600
// over 0.90 (pump), 1 (belt or none) and 0.85 is 992 W, (56 + 1) bar x 9 L/min / 600 over 0.83, 0.93 and 0.75
// 1477 W: 83 to 123 A at 12 V, and half of it at 24 V.
func TestWhatDrivesThePump(t *testing.T) {
	for _, c := range []struct {
		supply, motor string
		weak          string // "": nothing is found
	}{
		{"12 V", "", "83 to 123 A at 12 V"},
		{"12 V", "12 V DC, belt drive", "85 to 123 A at 12 V"},
		{"12 V", "24 V DC", ""},
		{"24 V", "12 V DC", "83 to 123 A at 12 V"},
		{"", "12 V", "83 to 123 A at 12 V"},
		{"230 V", "12 V DC", "83 to 123 A at 12 V"},
		{"12 V", "engine, belt and electric clutch", ""},
		{"12 V", "main engine, V-belt", ""},
		{"12 V", "hydraulic motor", ""},
		{"12 V", "115 V AC, 2 hp", ""},
		{"12 V", "mains", ""},
	} {
		t.Run(c.supply+" "+c.motor, func(t *testing.T) {
			text := line
			if c.supply != "" {
				text = strings.Replace(text, `pressure = "56 bar"`, "pressure = \"56 bar\"\nsupply = \""+c.supply+"\"", 1)
			}
			if c.motor != "" {
				text = strings.ReplaceAll(text, `flow = "9 L/min"`, "flow = \"9 L/min\"\nmotor = \""+c.motor+"\"")
			}
			list := found(t, text)["supply-too-weak"]
			if c.weak == "" {
				require.Empty(t, list)
				return
			}
			require.Len(t, list, 1)
			require.Contains(t, list[0].Reason, c.weak)
			require.Contains(t, list[0].Remedy, "`motor`")
		})
	}
}
