package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Sisters of what a last lot of lines showed, each with what a person of the trade reads in it.
func TestWhatTheLastLotShowed(t *testing.T) {
	readMeanings(t, []meaning{
		{"a valve's ports and positions are no size", `Solenoid valve 5/2 24 V G 1/4 F`, "G 1/4 female; G 1/4 female; G 1/4 female; G 1/4 female; G 1/4 female", "5/2: a valve's ports and positions; 24 V: a voltage"},
		{"with a mark of inches they are a size", `Ball valve 3/2" BSPP F`, "G 1 1/2 female; G 1 1/2 female", ""},
		{"alone they are a size too", `Ball valve 3/2 BSPP F`, "G 1 1/2 female; G 1 1/2 female", ""},
		{"a barb beside a thread has no size of its own", `1/2 FNPT x hose barb`, "NPT 1/2 female; BARB 1/2 in", ""},
		{"one with its own size has it", `1/2 FNPT x 3/8 hose barb`, "NPT 1/2 female; BARB 3/8 in", ""},
		{"a nut and tail has its tail once", `13 mm nut and tail (tap connector)`, "BARB 13 mm", "the other end (nothing is said of it)?"},
		{"hose made to a standard is by its bore", `Hydraulic hose 2SN 3/8`, "", "3/8: the bore of the hose; 2SN: a grade of hose; its ends (nothing is said of them)?"},
		{"a radiator valve's other end is another", `Thermostatventil Rp 1/2`, "Rp 1/2 female", "the other end (nothing is said of it)?"},
		{"mm before an x", `Reducer 50mmx25mm`, "TUBE 50 mm; TUBE 25 mm", ""},
		{"mm before a sign of times", `Kupplung 32mm×1" IG`, "TUBE 32 mm; PIPE 1 female", ""},
		{"a union tee has three ends", `Union tee 8 mm compression`, "COMP 8 mm; COMP 8 mm; COMP 8 mm", ""},
		{"a union cross has four", `Union cross 8 mm compression`, "COMP 8 mm; COMP 8 mm; COMP 8 mm; COMP 8 mm", ""},
		{"fileté beside taraudé is outside", `Coude taraudé/fileté 1"`, "PIPE 1 female; PIPE 1 male", ""},
		{"rosca exterior", `Racor 3/4 r/ext`, "PIPE 3/4 male", ""},
		{"the signs of Taiwan", `2分內外牙球閥`, "PIPE 1/4 female; PIPE 1/4 male", ""},
		{"a short hose says its length in words", `Flexible Tap Connector 15mm x 1/2in x 300mm Length`, "TUBE 15 mm; PIPE 1/2 female", "300mm Length: a length"},
		{"a roll says so too", `Flexible hose 1/2in x 30 m length`, "", ""},
		{"the thread of a coupling with a tube is asked", `Coupling 15 mm compression x 1/2 NPT`, "COMP 15 mm; NPT 1/2 female", ""},
		{"the threads of a coupling are female", `Coupling 1/2 NPT x 3/8 NPT`, "NPT 1/2 female; NPT 3/8 female", ""},
	})
}

// What only custom says is asked.
func TestWhatTheLastLotShowedIsAsked(t *testing.T) {
	for text, asked := range map[string][]bool{
		`1/2 FNPT x hose barb`:                   {false, true},
		`1/2 FNPT x 3/8 hose barb`:               {false, false},
		`Coupling 15 mm compression x 1/2 NPT`:   {false, true},
		`Coupling 1/2 NPT x 3/8 NPT`:             {false, false},
		`Coupling 15 mm compression x 1/2 NPT F`: {false, false},
	} {
		for k, e := range Read(text).Ends {
			require.Equal(t, asked[k], e.Question != "", "%s: end %d: %s", text, k+1, e.Question)
		}
	}
}
