package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Classes that gatherings in German, Dutch and the languages of the North brought, in other words than
// theirs. The answers were written down before the reader saw the lines.
func TestClassesOfNorthernGatherings(t *testing.T) {
	readTitled(t, []titled{
		{"Kugelhahn AG/ÜM 3/4\" x 1\"", "PIPE 3/4 male; G 1 female swivel", "shut-off valve", ""},
		{"Pumpenkugelhahn Ü-Mutter/IG 11/2 x 1", "G 1 1/2 female swivel; PIPE 1 female", "shut-off valve", ""},
		{"Kugelhahn 1\" IG/Ü-Mutter", "PIPE 1 female; G 1 female swivel", "shut-off valve", ""},
		{"Muffe IG IG 22 x Rp 1/2", "TUBE 22 mm; Rp 1/2 female", "coupling", ""},
		{"Übergangsstück AG, d = 35 x R 1", "TUBE 35 mm; R 1 male", "adaptor", ""},
		{"T-Stück IG d = 28 x Rp 1/2", "TUBE 28 mm; TUBE 28 mm; Rp 1/2 female", "tee", ""},
		{"T-Stück d=28", "TUBE 28 mm; TUBE 28 mm; TUBE 28 mm", "tee", ""},
		{"Bocchettone 3/4\" M/F sede piana", "PIPE 3/4 male; PIPE 3/4 female", "union", ""},
		{"Rohrverschraubung 1\" IG/IG flachdichtend", "PIPE 1 female; PIPE 1 female", "union", ""},
		{"T-Stück 1/2\" IG x 3, Messing", "PIPE 1/2 female; PIPE 1/2 female; PIPE 1/2 female", "tee", ""},
		{"Kesselfüllhahn ½\"", "PIPE 1/2 male", "shut-off valve", ""},
		{"Tauchhülse 1/2\" AG, Einbaulänge 100 mm", "PIPE 1/2 male", "sensor", ""},
		{"Adapter 1/2\" konisches AG und zylindrisches IG", "NPT/R 1/2 male; G/Rp 1/2 female", "adaptor", ""},
		{"Hahnverlängerung 1/2\" AG konisch, IG zylindrisch", "NPT/R 1/2 male; G/Rp 1/2 female", "adaptor", ""},
		{"Raccord mâle et femelle 3/4", "PIPE 3/4 male; PIPE 3/4 female", "", ""},
		{"T-Stück DN25/20/25 IG", "PIPE 1 female; PIPE 3/4 female; PIPE 1 female", "tee", ""},
		{"Reduktionsnippel DN 32x25 (R 11/4x1) mit A/I-Gewinde", "R 1 1/4 male; PIPE 1 female", "nipple", ""},
		{"Regulierventil m.Therm.-Oberteil DN 15 R 1/2 IG", "Rc/Rp 1/2 female; Rc/Rp 1/2 female", "shut-off valve", ""},
		{"Hahnoberteil 1/2\"", "", "", ""},
		{"Winkelnippel 20-R1/2\"MT", "TUBE 20 mm; R 1/2 male", "nipple", ""},
		{"T-koppeling persaansluiting 20mm", "", "tee", ""},
		{"Adaptor G 1/2 male x G 3/4 female, with washer", "G 1/2 male; G 3/4 female washer", "adaptor", ""},
		{"Schweißbogen 1\"", "", "", ""},
		{"Heizkreispumpe 25-60 180 mm", "", "feed pump", ""},
		{"Zirkulationspumpe 15-14 Rp 1/2", "Rp 1/2 female; Rp 1/2 female", "feed pump", ""},
		{"Pumpenverschraubung DN 25 IG x DN 40 IG", "PIPE 1 female; PIPE 1 1/2 female", "union", ""},
	})
}

func TestATailsOneSizeIsAsked(t *testing.T) {
	for _, s := range []string{"Schlauchverschraubung ¾\"", "Hose tail 3/4\"", "Slangtule 1/2\""} {
		r := Read(s)
		require.Len(t, r.Ends, 1, s)
		require.Contains(t, r.Ends[0].Question, "The text gives one size", s)
	}
	require.Empty(t, Read("Hose tail 1/2 NPT male x 3/4 in").Ends[1].Question)
}

func TestAStrangeNounBeforeAGripIsAsked(t *testing.T) {
	r := Read("Zorkplaatje knel 22 mm")
	require.Len(t, r.Ends, 1)
	require.Contains(t, r.Ends[0].Question, "What is the part")
	require.Empty(t, Read("Knelkoppeling 22 mm").Ends[0].Question)
}
