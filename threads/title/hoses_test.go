package title

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"
)

// Hose and pipe by the metre have no end; their bore, outside and wall are named. Made-up hoses have
// the ends that are said.
func TestHoseOrItsEnds(t *testing.T) {
	readMeanings(t, []meaning{
		{"hose by its bore", `Suction hose 25 mm`, "", "25 mm: a hose stock has no end"},
		{"hydraulic hose by its layers and its bore in inches", `Hydraulikslange 2-lag 1/2"`, "", `2-lag: taken for a code; 1/2": the bore of the hose; its ends (nothing is said of them)?`},
		{"by its nominal bore", `Hydraulic hose 2SC DN10`, "", "10: a nominal bore, where the ends are given another way; 2SC: a grade of hose; its ends (nothing is said of them)?"},
		{"a hose with the thread of both ends", `Hydraulic hose 3/8 with 1/2 NPT male both ends`, "NPT 1/2 male; NPT 1/2 male", "3/8: the bore of the hose"},
		{"the word of the thread is beside the only size: the thread at its end", `Hydraulikschlauch 3/8 NPT AG beidseitig`, "NPT 3/8 male; NPT 3/8 male", ""},
		{"a hose and a nipple, two parts: the hose is no end", `Hose 3/4 + nipple 3/4 NPT`, "NPT 3/4 male; NPT 3/4 male", "3/4: a nominal bore that is not known"},
		{"pipe by its outside and wall", `PE pipe 25x2.3`, "", "25: a measure of the part; 2.3: the wall of the tube"},
		{"the letters for outside in front of a pipe's size are no sex", `PE-rør udv. 10 mm`, "", "10 mm: a measure of the part"},
		{"a hose's bore before the threads at its ends", `Hose 13 mm, 1/2 NPT male, 1/2 NPT male`, "NPT 1/2 male; NPT 1/2 male", "13 mm: the bore of the hose"},
		{"a comma between the hose and its bore changes nothing", `Hose, 1/2"`, "", `1/2": the bore of the hose`},
		{"a short hose of a tap: its sizes are threads", `Hose 1/2" x 3/8" 40 cm`, "PIPE 1/2 female; PIPE 3/8 female", "40 cm: a length"},
		{"metres of hose by two sizes are none", `Hose 1/2" x 3/8" 40 m`, "", ""},
	})
}

// Hose is a roll from three metres, which no made-up hose of a tap has: a judgement of the package.
func TestTheShortestRoll(t *testing.T) {
	for text, roll := range map[string]bool{
		"3 m": true, "2.9 m": false, "10 m": true, "300 cm": false, "9 ft": true, "8 ft": false, "9 feet": true, "8 feet": false, "10'": true, "8'": false, "50 ft.": true, "118 in": false,
	} {
		l := newLine(fmt.Sprintf(`Hose 1/2" %s`, text), false)
		l.ends()
		require.Equal(t, roll, l.byTheRoll(nil), text)
		l.release()
	}
	l := newLine(`Pipe 1/2" 3 m`, false)
	l.ends()
	require.True(t, l.byTheRoll(nil), "pipe")
	require.False(t, l.byTheRoll([]*phrase{{thread: true}}), "a thread is said")
	l.release()
	l = newLine(`Nipple 1/2" 3 m`, false)
	l.ends()
	require.False(t, l.byTheRoll(nil), "a nipple is no pipe")
	l.release()
}

// A union nut beside a male of its size is an end by itself, taken to be of that size; a nut of
// another part is none.
func TestTheLooseNut(t *testing.T) {
	readMeanings(t, []meaning{
		{"a nut named apart", `Adaptor 1" male G, union nut`, "G 1 male; G 1 female swivel", ""},
		{"on a female it is its own nut", `Adaptor 1" female G, union nut`, "G 1 female swivel", ""},
	})
	r, err := ReadEnd(`G 1 male union nut`)
	require.NoError(t, err)
	require.Equal(t, "G 1 male swivel", briefEnd(r), "an end by itself has no second one")
}

// Every size of hose is one of a tail or a bore, in either unit, and never a thread by itself.
func TestNoThreadIsMadeOfHose(t *testing.T) {
	for _, size := range []string{`1/2"`, `3/4"`, `1"`, "13 mm", "19 mm", "25 mm", "DN15", "DN20"} {
		for _, form := range []string{"Hose %s", "Suction hose %s, 10 m", "%s hose reinforced", "Water hose, %s"} {
			for _, e := range Read(fmt.Sprintf(form, size)).Ends {
				for _, c := range e.Candidates {
					require.False(t, c.Family.Threaded(), form, size)
				}
			}
		}
	}
}
