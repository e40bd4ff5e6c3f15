package title

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// rated is a line with the rating that it states, in bar; 0 is none.
type rated struct {
	why, text string
	bar       float64
	others    string // what other pressures are called, in their order
}

func readRated(t *testing.T, rows []rated) {
	t.Helper()
	for _, row := range rows {
		t.Run(row.why, func(t *testing.T) {
			r := Read(row.text)
			require.Equal(t, row.bar != 0, r.HasRated, row.text)
			require.InDelta(t, row.bar, r.Rated.Bar(), 0.001, row.text)
			others := ""
			for _, p := range r.Pressures {
				others += p.What + " "
			}
			require.Equal(t, row.others, others, row.text)
		})
	}
}

// PS and PT before a pressure are the maximum allowable and the test pressure (Directive 2014/68/EU, article
// 2; EN 764-1, memory); before a size they are threads.
func TestPSAndPT(t *testing.T) {
	readRated(t, []rated{
		{"PS", "Ball valve 1/2 NPT F PS 16 bar", 16, ""}, {"PS with a colon", "Ball valve 1/2 NPT F PS: 16 bar", 16, ""},
		{"PS with a sign", "Ball valve 1/2 NPT F PS=16 bar", 16, ""}, {"PS in brackets", "Ball valve 1/2 NPT F PS (16 bar)", 16, ""},
		{"PT", "Ball valve 1/2 NPT F PT 24 bar", 0, "test "}, {"PT with a colon", "Ball valve 1/2 NPT F PT: 24 bar", 0, "test "},
		{"both", "Ball valve 1/2 NPT F PS 16 bar PT 24 bar", 16, "test "},
	})
	readMeant(t, []lineMeant{{"PT before a size is the taper thread of Japan (JIS B 0203)", "Plug PT 1/2", "R 1/2 male"}})
}

// A word beside a pressure says what it is: the word before it first, else the one right behind.
func TestWhoseWordItIs(t *testing.T) {
	readRated(t, []rated{
		{"before", "Hose 1/2 NPT M both ends burst 1000 bar", 0, "burst "},
		{"behind", "Hose 1/2 NPT M both ends 1000 bar burst", 0, "burst "},
		{"a comma ends what it belongs to", "Hose 1/2 NPT M both ends, burst 1000 bar, 250 bar", 250, "burst "},
		{"the word between two is the second's", "Ball valve 1/2 NPT F 16 bar test 24 bar", 16, "test "},
		{"a figure between takes the word", "Ball valve 1/2 NPT F test 24 bar 16 bar", 16, "test "},
		{"brackets hold their own", "Ball valve 1/2 NPT F 16 bar (test 24 bar)", 16, "test "},
		{"a stroke parts", "Ball valve 1/2 NPT F 24 bar test / 16 bar working pressure", 16, "test "},
		{"a comma parts too", "Ball valve 1/2 NPT F 24 bar test, 16 bar", 16, "test "},
		{"a word in the bracket behind its pressure is that one's", "Ball valve 1/2 NPT F 24 bar test (16 bar working pressure)", 16, "test "},
		{"a bracket alone does not part a word from its pressure", "Hose 1/2 NPT M both ends burst (1000 bar)", 0, "burst "},
		{"four words before still belong", "Hose 1/2 NPT M both ends burst pressure of about 1000 bar", 0, "burst "},
	})
}

// Of two ratings the lower is taken; what says the same in another unit, to 2 in 100, is one rating.
func TestTwoRatings(t *testing.T) {
	readRated(t, []rated{
		{"the same in pounds (232 psi is 15.996 bar)", "Ball valve 1/2 NPT F 16 bar (232 psi)", 16, ""},
		{"rounded down", "Ball valve 1/2 NPT F 16 bar 230 psi", 16, ""},
		{"rounded up", "Ball valve 1/2 NPT F 16 bar 235 psi", 16, ""},
		{"lower (220 psi is 15.168 bar)", "Ball valve 1/2 NPT F 16 bar 220 psi", 15.16847, ""},
		{"lower, said first", "Ball valve 1/2 NPT F 220 psi 16 bar", 15.16847, ""},
		{"nothing is no rating", "Ball valve 1/2 NPT F 0 bar", 0, ""},
	})
	higher := Read("Ball valve 1/2 NPT F 16 bar 25 bar")
	require.NotEmpty(t, higher.NotUsed)
	require.Equal(t, "25 bar", higher.NotUsed[0].Words, "the higher is named")
	swapped := Read("Ball valve 1/2 NPT F 25 bar 16 bar")
	require.InDelta(t, 16, swapped.Rated.Bar(), 1e-9)
	require.Equal(t, "25 bar", swapped.NotUsed[0].Words, "whichever stands first")
}

// The pressure of a relief valve is what it is set to, unless a word calls it what the valve holds.
func TestAReliefsRating(t *testing.T) {
	readRated(t, []rated{
		{"no word", "Relief valve 1/4 NPT M 60 bar", 0, "setting "},
		{"max", "Relief valve 1/4 NPT M max 140 bar", 140, ""},
		{"PN", "Relief valve 1/4 NPT M PN 140", 140, ""},
		{"rated", "Relief valve 1/4 NPT M rated 140 bar", 140, ""},
		{"max is a word of its own", "Relief valve 1/4 NPT M, maxi-flow, 60 bar", 0, "setting "},
		{"the named setting at the same pressure raises nothing", "Relief valve 1/4 NPT M set 60 bar, 60 bar", 0, "setting setting "},
	})
}

// Pounds: a class number of fittings, a weight, or a code.
func TestPoundsOfAClass(t *testing.T) {
	for text, class := range map[string]string{
		"Tee 1/2 NPT F 150#": "class 150", "Tee 1/2 NPT F 3000 lb": "class 3000", "Tee 1/2 NPT F 125 lbs": "class 125", // ASME B16.3, B16.4, B16.11
		"Tee 1/2 NPT F 1.2 lb": "", "Tee 1/2 NPT F 99 lb": "", "Tee 1/2 NPT F 175 lb": "", "Tee 1/2 NPT F 150.5 lb": "",
	} {
		require.Equal(t, class, Read(text).Class, text)
	}
}

// The figures of a standard's number are no sizes, and its name is kept whole.
func TestNumbersOfStandards(t *testing.T) {
	for text, want := range map[string][]string{
		"Elbow 1/2 NPT F ASME B16.11":             {"ASME B16.11"},
		"Elbow 1/2 NPT F DIN EN 10242":            {"DIN EN 10242"},
		"Elbow 1/2 NPT F EN 10253-2":              {"EN 10253-2"},
		"Elbow 1/2 NPT F ASTM A182, 3/8 NPT port": {"ASTM A182"},
		"Elbow 1/2 NPT F MSS SP-114 316":          {"MSS SP-114"},
		"Elbow 1/2 NPT F":                         nil,
	} {
		r := Read(text)
		require.Equal(t, want, r.Standards, text)
		require.Equal(t, "NPT 1/2 female", briefEnd(r.Ends[0]), text)
	}
	require.Equal(t, "316", Read("Elbow 1/2 NPT F MSS SP-114 316").Material, "a blank ends the number")
}

// Of two temperatures the highest counts, in degrees of either kind: 180 °F is 82.2 °C.
func TestTheHighestTemperature(t *testing.T) {
	for text, want := range map[string]float64{
		"Valve 1/2 NPT F 80 °C": 80, "Valve 1/2 NPT F -20 °C to 80 °C": 80, "Valve 1/2 NPT F max 80 °C min -20 °C": 80, "Valve 1/2 NPT F 180 °F": 82.222, "Valve 1/2 NPT F 32 °F": 0,
	} {
		r := Read(text)
		require.True(t, r.HasTemperature, text)
		require.InDelta(t, want, r.Temperature.Celsius(), 0.001, text)
	}
	require.False(t, Read("Valve 1/2 NPT F").HasTemperature)
}

// A standard before a hyphen is that of what follows, and no end.
func TestAStandardBeforeAHyphen(t *testing.T) {
	readMeant(t, []lineMeant{
		{"of a thread", "Nipple ISO 7 - R 3/4", "R 3/4 male; R 3/4 male"},
		{"of a seal", "Plug ISO 9974-2 - M16x1.5", "M M16x1.5 male stud-ring"},
		{"an end before it is one", "Adaptor 1/2 NPT male - 3/4 NPT female", "NPT 1/2 male; NPT 3/4 female"},
	})
}
