package title

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// One size in every writing. Decimals are those of the fraction to two or three places.
func TestSizesInEveryWriting(t *testing.T) {
	for size, writings := range map[string][]string{
		"1/8":   {"1/8", `1/8"`, "1/8''", "1/8 in", "1/8 inch", "1/8in.", "0.125\"", "⅛", "⅛\""},
		"1/4":   {"1/4", `1/4"`, "¼", "¼\"", "0.25\"", "1/4 Zoll", "1/4 pouce", "1/4 pollice", "1/4 pulgada", "1/4″", "1/4”", "quarter inch"},
		"3/8":   {"3/8", `3/8"`, "⅜", "0.375\"", "3/8 inch"},
		"1/2":   {"1/2", `1/2"`, "½", "½\"", "0.5\"", ".5\"", "0,5\"", "1/2 tum", "1/2 дюйма", "1/2 cala", "1/2 pol", "half inch", "1/2 duim"},
		"3/4":   {"3/4", `3/4"`, "¾", "0.75\"", "three quarter inch"},
		"1":     {`1"`, "1 in", "1 inch", "1''", "one inch", "1.0\""},
		"1 1/4": {`1 1/4"`, `1-1/4"`, `1.1/4"`, `1"1/4`, "1¼\"", "1 ¼\"", "1.25\"", "1,25\"", "5/4\""},
		"1 1/2": {`1 1/2"`, `1-1/2"`, `1.1/2"`, `1"1/2`, "1½\"", "1 ½\"", "1.5\"", "1,5\"", "6/4\""},
		"2":     {`2"`, "2 in", "2 inch", "2.0\""},
		"2 1/2": {`2 1/2"`, `2-1/2"`, "2½\"", "2.5\""},
	} {
		for _, w := range writings {
			text := w + " NPT female"
			r, err := ReadEnd(text)
			require.NoError(t, err, text)
			require.Equal(t, "NPT "+size+" female", briefEnd(r), text)
		}
	}
}

// A nominal bore names the pipe thread of its row (ISO 6708 with ISO 7-1: DN 15 is 1/2), with
// the words that stand before or behind it.
func TestNominalBores(t *testing.T) {
	for dn, size := range map[int]string{6: "1/8", 8: "1/4", 10: "3/8", 15: "1/2", 20: "3/4", 25: "1", 32: "1 1/4", 40: "1 1/2", 50: "2", 65: "2 1/2", 80: "3", 100: "4"} {
		for _, form := range []string{"DN%d female BSPP", "DN %d BSPP female", "%d NB BSPP female", "ду %d BSPP female"} {
			text := fmt.Sprintf(form, dn)
			r, err := ReadEnd(text)
			require.NoError(t, err, text)
			require.Equal(t, "G "+size+" female", briefEnd(r), text)
		}
	}
}

// Sizes by eighths of an inch (fen: page on fen names), by French pairs of diameters (common
// practice of French plumbing: 15/21 is 1/2) and by the words of Japanese workshops.
func TestSizesOfOneTrade(t *testing.T) {
	for text, want := range map[string]string{
		"1分 NPT 外丝": "NPT 1/8 male", "2分 NPT 外丝": "NPT 1/4 male", "3分 NPT 外丝": "NPT 3/8 male", "4分 NPT 外丝": "NPT 1/2 male", "6分 NPT 外丝": "NPT 3/4 male",
		"1寸 NPT 外丝": "NPT 1 male", "四分 NPT 内丝": "NPT 1/2 female", "六分 NPT 内丝": "NPT 3/4 female",
		"5/10 mâle": "BSP 1/8 male", "8/13 mâle": "BSP 1/4 male", "12/17 mâle": "BSP 3/8 male", "15/21 mâle": "BSP 1/2 male", "20/27 femelle": "BSP 3/4 female",
		"26/34 mâle": "BSP 1 male", "33/42 mâle": "BSP 1 1/4 male", "40/49 femelle": "BSP 1 1/2 female", "50/60 mâle": "BSP 2 male",
		"ヨンブ Rc": "Rc 1/2 female", "ロクブ Rc": "Rc 3/4 female", "サンブ Rc": "Rc 3/8 female",
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, want, briefEnd(r), text)
	}
}

// Metric threads in every writing; without a pitch the coarse one (ISO 261) or the question.
func TestMetricWritings(t *testing.T) {
	for text, want := range map[string]string{
		"M22x1.5 male": "M M22x1.5 male", "M22X1.5 male": "M M22x1.5 male", "M22×1,5 male": "M M22x1.5 male", "M 22 x 1.5 male": "M M22x1.5 male", "M22*1.5 male": "M M22x1.5 male",
		"M22-1.5 male": "M M22x1.5 male", "m22x1.5 male": "M M22x1.5 male", "M10x1 female": "M M10x1 female", "M14x1,5 AG": "M M14x1.5 male", "M22x1.5-6g": "M M22x1.5 male", "M22x1.5-6H": "M M22x1.5 female",
		"M10x1 keg": "MT M10x1 male", "М22х1,5 male": "M M22x1.5 male",
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, want, briefEnd(r), text)
	}
}

// A thread by diameter and threads an inch is the one of its row, whatever stands between them;
// one that is in no table is asked with its neighbours. ASME B1.20.1: 1/2-14, 3/4-14, 1-11.5,
// 1/4-18, 1/8-27; ISO 228-1: G 1/4 has 19, G 1/2 14.
func TestThreadsAnInchAreHeldAgainstTheFamily(t *testing.T) {
	for text, want := range map[string]string{
		"1/2-14 NPT male": "NPT 1/2 male", "3/4-14 NPT male": "NPT 3/4 male", "1-11.5 NPT male": "NPT 1 male", "1-11 1/2 NPT male": "NPT 1 male", "1-11½ NPT male": "NPT 1 male", "2-11½ NPT female": "NPT 2 female",
		"1/8-27 NPT male": "NPT 1/8 male", "1/4-18 NPT male": "NPT 1/4 male", "G 1/2-14 male": "G 1/2 male", "1/4-19 BSPP male": "G 1/4 male", "9/16-18 JIC male": "JIC -6 male", "7/16-20 JIC male": "JIC -4 male",
		"3/4-16 JIC male": "JIC -8 male", "1 1/16-12 JIC male": "JIC -12 male", "1-1/16-12 JIC male": "JIC -12 male", "9/16-18 ORB male": "ORB -6 male", "11/16-16 ORFS male": "ORFS -6 male", "13/16-16 ORFS male": "ORFS -8 male",
		"5/8-18 SAE 45 male": "SAE45 -6 male", "3/4-11.5 NH male": "NH 3/4 male",
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, want, briefEnd(r), text)
	}
}

// Dashes are sixteenths of the tube (SAE J514): -6 is 3/8 tube, however it is written.
func TestDashes(t *testing.T) {
	for _, dash := range []string{"-6", "-06", "#6", "JIC-6", "JIC 6"} {
		text := dash + " male"
		if !strings.Contains(dash, "JIC") {
			text = dash + " JIC male"
		}
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, "JIC -6 male", briefEnd(r), text)
	}
	for dash, tube := range map[string]string{"-4": "1/4", "-6": "3/8", "-8": "1/2", "-10": "5/8", "-12": "3/4", "-16": "1"} {
		r, err := ReadEnd(dash + " JIC male")
		require.NoError(t, err)
		require.Len(t, r.Candidates, 1)
		require.InDelta(t, threads.SizeInches(tube), r.Candidates[0].Form.Tube.Inches(), 1e-9, dash)
	}
}

// Tails, bores and tubes keep the unit in which they are written; an inch is 25.4 mm.
func TestTailsAndTubes(t *testing.T) {
	for _, row := range []struct {
		text, want string
		mm         float64
	}{
		{"19 mm barb", "BARB 19 mm", 19}, {"19mm hose tail", "BARB 19 mm", 19}, {"barb 12.5 mm", "BARB 12.5 mm", 12.5}, {"barb 12,5 mm", "BARB 12.5 mm", 12.5},
		{"3/4 in barb", "BARB 3/4 in", 19.05}, {"1/2\" hose barb", "BARB 1/2 in", 12.7}, {"1 1/2\" barb", "BARB 1 1/2 in", 38.1},
		{"Schlauchtülle 13 mm", "BARB 13 mm", 13}, {"cannelé 16 mm", "BARB 16 mm", 16}, {"portagomma 10 mm", "BARB 10 mm", 10}, {"espiga 1/2\"", "BARB 1/2 in", 12.7},
		{"10 mm push-in", "PUSH 10 mm", 10}, {"6mm push fit", "PUSH 6 mm", 6}, {"1/4\" push to connect", "PUSH 1/4 in", 6.35}, {"8 mm Steckanschluss", "PUSH 8 mm", 8},
		{"15 mm compression", "COMP 15 mm", 15}, {"22mm compression", "COMP 22 mm", 22}, {"3/8 compression", "COMP 3/8 in", 9.525}, {"15 mm Klemmring", "COMP 15 mm", 15},
		{"12 mm tube", "TUBE 12 mm", 12}, {"1/4 tube od", "TUBE 1/4 in", 6.35}, {"10 mm Rohr", "TUBE 10 mm", 10},
		{"19 mm bore", "BORE 19 mm", 19}, {"1 1/2 in ferrule", "FERRULE 1 1/2 in", 38.1}, {"DN 40 ferrule", "FERRULE DN 40", 0},
	} {
		r, err := ReadEnd(row.text)
		require.NoError(t, err, row.text)
		require.Equal(t, row.want, briefEnd(r), row.text)
		if row.mm > 0 {
			require.InDelta(t, row.mm, float64(r.Candidates[0].Diameter), 1e-9, row.text)
		}
	}
}

// Cones of 24 degrees are named by their tube with the series (ISO 8434-1), or by their thread:
// 12L is M18x1.5, 12S M20x1.5, 15L M22x1.5, 16S M24x1.5.
func TestConesByTheirTube(t *testing.T) {
	for text, want := range map[string]string{
		"12L male": "24L 12L male", "12 L male": "24L 12L male", "12S male": "24S 12S male", "15L female": "24L 15L female", "16S male": "24S 16S male", "DIN 2353 12L male": "24L 12L male", "6S male": "24S 6S male", "42L male": "24L 42L male",
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, want, briefEnd(r), text)
	}
	for cone, thread := range map[string]string{"12L": "M18x1.5", "12S": "M20x1.5", "15L": "M22x1.5", "16S": "M24x1.5", "8L": "M14x1.5", "6L": "M12x1.5", "10L": "M16x1.5", "18L": "M26x1.5", "22L": "M30x2", "28L": "M36x2", "20S": "M30x2", "25S": "M36x2"} {
		r, err := ReadEnd(cone + " male")
		require.NoError(t, err)
		require.Contains(t, r.Candidates[0].Form.Designation, " "+thread, cone)
	}
}
