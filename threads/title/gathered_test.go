package title

import "testing"

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
		{"Adapter 1/2\" konisches AG und zylindrisches IG", "R 1/2 male; G/Rp 1/2 female", "adaptor", ""},
		{"Hahnverlängerung 1/2\" AG konisch, IG zylindrisch", "R 1/2 male; G/Rp 1/2 female", "adaptor", ""},
		{"Raccord mâle et femelle 3/4", "PIPE 3/4 male; PIPE 3/4 female", "", ""},
	})
}
