package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// Every family by the names that stand on parts and in lists, on one size that it has.
// Designations: ISO 228-1 (G), ISO 7-1 (R, Rc, Rp), ASME B1.20.1 (NPT, NPSM, NPSL, NPSC),
// ASME B1.20.3 (NPTF), ASME B1.20.7 (NH, NPSH), SAE J514 (37 degrees), SAE J512 (45), SAE J1926
// (port), SAE J1453 (face), JIS B 0202 and 0203 (PF, PT, PS), GOST 6111 (K).
func TestFamiliesByTheirNames(t *testing.T) {
	for _, row := range []struct {
		want, size string
		names      []string
	}{
		{"NPT 1/2", "1/2", []string{"NPT", "N.P.T.", "NPT thread", "national pipe taper", "GOST 6111", "cuerda NPT"}},
		{"NPT 1/2 male", "1/2", []string{"MNPT", "MPT", "MIP", "MIPT", "NPTM", "M-NPT", "NPT macho", "NPT mâle"}},
		{"NPT 1/2 female", "1/2", []string{"FNPT", "FPT", "FIP", "FIPT", "NPT(F)", "F-NPT", "NPT hembra", "NPT femelle"}},
		{"NPTF 1/2", "1/2", []string{"NPTF", "dryseal"}},
		{"NPTF 1/2 male", "1/2", []string{"MNPTF"}},
		{"PIPE 1/2 male", "1/2", []string{"male pipe thread"}}, // in America NPT, and elsewhere any pipe thread
		{"PIPE 1/2 female", "1/2", []string{"female pipe thread"}},
		{"NPSM 1/2", "1/2", []string{"NPSM", "straight mechanical"}},
		{"NPSM 1/2 female", "1/2", []string{"FNPSM"}},
		{"NPS 1/2", "1/2", []string{"NPSL", "NPSC"}},
		{"G 1/2", "1/2", []string{"BSPP", "G", "BSP parallel", "gas cilindrico", "gaz cylindrique", "ISO 228", "PF"}},
		{"G 1/2 male", "1/2", []string{"MBSPP", "BSPPM"}},
		{"G 1/2 female", "1/2", []string{"FBSPP", "BSPPF"}},
		{"R 1/2 male", "1/2", []string{"MBSPT", "BSPTM", "R"}},
		{"Rc 1/2 female", "1/2", []string{"FBSPT", "BSPTF", "Rc"}},
		{"Rp 1/2 female", "1/2", []string{"Rp"}},
		{"BSP 1/2", "1/2", []string{"BSP", "gas", "british standard pipe", "rosca gas"}},
		{"BSP 1/2 male", "1/2", []string{"BSPM", "MBSP"}},
		{"BSP 1/2 female", "1/2", []string{"BSPF", "FBSP"}},
		{"NH 3/4", "3/4", []string{"GHT", "NH", "garden hose thread", "NHT"}},
		{"NH 3/4 male", "3/4", []string{"MHT", "MGHT", "male garden hose"}},
		{"NH 3/4 female", "3/4", []string{"FHT", "FGHT", "female hose thread"}},
		{"JIC -8", "-8", []string{"JIC", "37° flare", "37 degree flare", "SAE J514"}},
		{"JIC -8 male", "-8", []string{"MJ", "MJIC", "male JIC", "AGJ"}},
		{"JIC -8 female swivel", "-8", []string{"FJX", "JIC swivel", "JICFS", "DKJ"}},
		{"SAE45 -8", "-8", []string{"SAE 45", "45° flare", "SAE J512"}},
		{"ORB -8", "-8", []string{"ORB", "o-ring boss", "SAE J1926", "ISO 11926", "UNO"}},
		{"ORB -8 male", "-8", []string{"MORB"}},
		{"ORB -8 female", "-8", []string{"FORB"}},
		{"ORFS -8", "-8", []string{"ORFS", "o-ring face seal", "SAE J1453", "ISO 8434-3"}},
		{"ORFS -8 male", "-8", []string{"MORX", "MFS"}},
		{"ORFS -8 female swivel", "-8", []string{"FFX", "FORX"}},
		{"ISO6149 M22x1.5", "M22x1.5", []string{"ISO 6149", "metric o-ring port"}},
	} {
		for _, name := range row.names {
			for _, text := range []string{row.size + " " + name, name + " " + row.size} {
				r, err := ReadEnd(text)
				require.NoError(t, err, text)
				require.Equal(t, row.want, briefEnd(r), text)
			}
		}
	}
}

// R, Rc and Rp come in one sex; a text that says the other is asked and not obeyed.
func TestLettersOfOneSex(t *testing.T) {
	for _, row := range []struct{ text, want, asks string }{
		{"R 1/2 female", "Rc/Rp 1/2 female", "R is a male thread"},
		{"Rc 1/2 male", "R 1/2 male", "Rc is a female thread"},
		{"Rp 1/2 male", "R 1/2 male", "Rp is a female thread"},
		{"R 1/2 male", "R 1/2 male", ""},
		{"Rc 1/2 female", "Rc 1/2 female", ""},
		{"Rp 1/2 female", "Rp 1/2 female", ""},
	} {
		r, err := ReadEnd(row.text)
		require.NoError(t, err, row.text)
		require.Equal(t, row.want, briefEnd(r), row.text)
		if row.asks == "" {
			require.Empty(t, r.Question, row.text)
		} else {
			require.Contains(t, r.Question, row.asks, row.text)
		}
	}
}

// SAE alone is a port or a flare of 45 degrees; a flare without its angle is taken for 45; NPS is any straight one; IPS
// is NPT, or NPSM where a washer closes it (common practice of each trade).
func TestNamesThatLeaveTheFamilyOpen(t *testing.T) {
	for _, row := range []struct {
		text     string
		families []threads.Family
	}{
		{"1/2 BSP male", []threads.Family{threads.G, threads.R}},
		{"1/2 BSP female", []threads.Family{threads.G, threads.Rp, threads.Rc}},
		{"-8 SAE male", []threads.Family{threads.ORB, threads.SAE45}},
		{"1/2 NPS male", []threads.Family{threads.NPSM, threads.NPS}},
		{"1/2 IPS male", []threads.Family{threads.NPT, threads.NPSM}},
		{"1/2 male thread", []threads.Family{threads.G, threads.R, threads.NPT}},
	} {
		r, err := ReadEnd(row.text)
		require.NoError(t, err, row.text)
		var got []threads.Family
		for _, c := range r.Candidates {
			got = append(got, c.Family)
		}
		require.ElementsMatch(t, row.families, got, row.text)
		require.NotEmpty(t, r.Question, row.text)
	}
}

// The hose makers' end codes say family, sex and seat at once (common practice; the letters of
// ISO 12151-2 ends: DK is a seat that a nut draws up, R a pipe thread, O an O-ring, L and S the
// series).
func TestHoseEndCodes(t *testing.T) {
	for text, want := range map[string]string{
		"DKOL 12": "24L 12L female swivel cone-o-ring", "DKOS 12": "24S 12S female swivel cone-o-ring",
		"DKR 1/2": "G 1/2 female swivel cone-60", "AGR 1/2": "G 1/2 male chamfer", "DKOR 1/2": "G 1/2 female swivel cone-o-ring",
		"AGN 1/2": "NPT 1/2 male", "CEL 12": "24L 12L male", "CES 12": "24S 12S male", "DKL 12": "24L 12L female swivel cone-24",
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, want, briefEnd(r), text)
	}
}

// Taper and parallel, said in words, choose between the British threads.
func TestTaperAndParallelInWords(t *testing.T) {
	for _, row := range []struct{ words, want string }{
		{"taper", "R 1/2 male"}, {"tapered", "R 1/2 male"}, {"konisch", "R 1/2 male"}, {"conico", "R 1/2 male"}, {"conique", "R 1/2 male"}, {"cónico", "R 1/2 male"}, {"kegelig", "R 1/2 male"},
		{"parallel", "G 1/2 male"}, {"zylindrisch", "G 1/2 male"}, {"cilindrico", "G 1/2 male"}, {"cylindrique", "G 1/2 male"}, {"cilíndrica", "G 1/2 male"},
	} {
		r, err := ReadEnd("1/2 BSP male " + row.words)
		require.NoError(t, err, row.words)
		require.Equal(t, row.want, briefEnd(r), row.words)
	}
}
