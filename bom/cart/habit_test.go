package cart

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Every habit of the table does to its example what the table says, and is what does it.
func TestHabits(t *testing.T) {
	for i, r := range readTable("habit.csv") {
		require.Equal(t, r[3], habits()[i].form.ReplaceAllString(r[2], habits()[i].becomes), r[2])
		require.NotEqual(t, r[2], r[3])
		require.NotEmpty(t, r[4], "a source")
	}
}

// A figure keeps its meaning where only its writing changes, and what is no such habit stays.
func TestPlainly(t *testing.T) {
	for text, want := range map[string]string{
		"Te espiga 16-16 mm, salida 1/2 NPT":   "Te espiga 16 mm x 16 mm, salida 1/2 NPT",
		"Schelle 16-27 mm":                     "Schelle 16-27 mm",
		"HOSE BARB 1/2 MNPT X 3/4 HB (19MM)":   "HOSE BARB 1/2 MNPT X 3/4 HB ",
		"Hose tail 1/2 NPT x 1/2 barb (16 mm)": "Hose tail 1/2 NPT x 1/2 barb (16 mm)",
		"ø ext. 12 / int. 9 mm":                "ø ext. 12 mm / int. 9 mm",
		"Tubo Ø int. 16, 10 bar":               "Tubo Ø int. 16 mm, 10 bar",
		"Manguera ø16 int., 10 bar":            "Manguera ø16 mm int., 10 bar",
		"Reducer 1 x 2, bronze":                "Reducer 1 x 2, bronze",
		"Nipple 1/2 NPT x 60 mm":               "Nipple 1/2 NPT x 60 mm",
		`Schlauch 1/2" (13 mm), 10 bar`:        "Schlauch 13 mm, 10 bar",
		`Stud 1/2" (13 mm) NPT male`:           `Stud 1/2" (13 mm) NPT male`,
		`JIC 9/16" (-6) AG x 1/2 NPT AG`:       `JIC 9/16"  AG x 1/2 NPT AG`,
		`JIC 9/16" (-8) AG x 1/2 NPT AG`:       `JIC 9/16" (-8) AG x 1/2 NPT AG`,
		"nothing":                              "nothing",
	} {
		require.Equal(t, want, plainly(text), text)
		require.Equal(t, plainly(text), plainly(plainly(text)), "twice is once: %s", text)
	}
}
