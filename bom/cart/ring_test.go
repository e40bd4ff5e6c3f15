package cart

import (
	"encoding/csv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What closes a joint is bought by the size of the joint, and one of another size is told, with what
// differs and the joint. The words are the trade's (common practice).
func TestSmallPartsBySize(t *testing.T) {
	sys, order := Walked(t, "testdata/rings.toml")
	for _, c := range []struct {
		text, item string
		status     Status
		says       string
	}{
		{"O-ring for -6 ORB port", "O-ring for -6 O-ring port", Covers, ""},
		{"NBR O-ring -6 ORB boss", "O-ring for -6 O-ring port", Covers, ""},
		{"O-ring for -8 ORB port, NBR 90", "O-ring for -6 O-ring port", WrongSize, "ORB -8 in place of 9/16-18 ORB -6 o ring (J2"},
		{"O-Ring für ORFS -8", "O-ring for -8 face seal", Covers, ""},
		{"O-ring for -6 ORFS face seal", "O-ring for -8 face seal", WrongSize, "ORFS -6 in place of 13/16-16 ORFS -8 o ring (J3"},
		{"Joint torique pour G 1/4", "O-ring for G 1/4 stud", Covers, ""},
		{"O-ring for G 3/8 stud", "O-ring for G 1/4 stud", WrongSize, "G 3/8 in place of G 1/4 o ring (J1"},
		{"Cutting ring 12L", "cutting ring 12L", Covers, ""},
		{"Schneidring 15L", "cutting ring 12L", WrongSize, "15L M22x1.5 in place of 12L M18x1.5 (J4"},
		{"Bague coupante 10L acier", "cutting ring 12L", WrongSize, "10L M16x1.5 in place of 12L M18x1.5 (J4"},
		{"Brass olive 15 mm", "olive 15 mm", Covers, ""},
		{"Olive 22 mm brass", "olive 15 mm", WrongSize, "22 mm compression in place of 15 mm compression (J5"},
		{"Klemmring 10 mm Messing", "olive 15 mm", WrongSize, "10 mm compression in place of 15 mm compression (J5"},
		{"Bonded seal 1/2 BSP", "bonded washer G 1/2", Covers, ""},
		{"Bonded seal 3/4 BSP", "bonded washer G 1/2", WrongSize, "G 3/4 washer in place of G 1/2 (J6"},
		{"Fibre washer 1/2 BSP", "bonded washer G 1/2", WrongUse, "say flat, and bonded washer G 1/2 is bonded (J6"},
		{"Fibre washer 1 BSP", "", NotNeeded, ""},
		{"Tank connector with O-ring, 2 inch", "", NotNeeded, ""},
	} {
		var b strings.Builder
		w := csv.NewWriter(&b)
		require.NoError(t, w.WriteAll([][]string{{"Description", "Qty", "Price"}, {c.text, "1", "2.50"}}))
		cart, err := Read("c.csv", []byte(b.String()), Options{})
		require.NoError(t, err)
		v := Judge(sys, order, []*Cart{cart}, nil).Lines[0]
		require.Equal(t, c.status, v.Status, "%s: %s %s", c.text, v.Reason, v.Ask)
		if c.item != "" {
			require.Equal(t, c.item, v.Item(), c.text)
		}
		require.Contains(t, v.Reason, c.says, c.text)
	}
}
