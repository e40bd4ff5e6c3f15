package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// What a title states beside its ends, each line written before it was read.
func TestReadStatedFacts(t *testing.T) {
	for _, row := range []struct {
		why, text, class, schedule, grade string
		bar                               float64
		material                          string
	}{
		{"a forging grade is no female end (ASTM A182)", "Elbow 1/2 NPT F316 3000# ASME B16.11", "class 3000", "", "F316", 0, "316"},
		{"a grade with its standard", "hex nipple 1/2 NPT A182 F316L sch 80", "", "schedule 80", "A182 F316L", 0, "316"},
		{"a casting grade (ASTM A351)", "ball valve 3/4 NPT CF8M 1000 WOG", "", "", "CF8M", 68.94757, "316"},
		{"a sex beside a material is still a sex", "Elbow 90° 3/4 NPT F 316 class 150 PN16", "class 150", "", "", 16, "316"},
		{"pounds behind a class number", "tee 1/4 NPT female 150 lb brass", "class 150", "", "", 0, "brass"},
		{"a schedule in one word", "pipe nipple 1/2 x 3 in NPT S80", "", "schedule 80", "", 0, ""},
		{"the wall of a plastic pipe", "adaptor 25 mm x 3/4 male SDR 11 PE", "", "SDR 11", "", 0, "pe"},
		{"a working pressure before a burst pressure", "hose 3/8 BSP F both ends WP 330 bar burst 1320 bar", "", "", "", 330, ""},
		{"a nominal pressure on a gauge is no scale", "gauge 1/4 NPT male 0-160 bar PN 100", "", "", "", 100, ""},
		{"nor is a working pressure", "gauge 1/4 NPT male 0-160 bar, working pressure 120", "", "", "", 120, ""},
		{"a pressure over the named setting of a relief valve", "relief valve 1/4 NPT male, set 62 bar, 10 L/min, 140 bar", "", "", "", 140, ""},
		{"and before it, in German", "Sicherheitsventil G 1/4 AG, 120 bar, Ansprechdruck 60 bar", "", "", "", 120, ""},
		{"of two ratings the lower", "valve 1/2 NPT F 600 psi 400 psi", "", "", "", 27.57903, ""},
	} {
		t.Run(row.why, func(t *testing.T) {
			r := Read(row.text)
			require.Equal(t, row.class, r.Class)
			require.Equal(t, row.schedule, r.Schedule)
			require.Equal(t, row.grade, r.Grade)
			require.Equal(t, row.material, r.Material)
			require.Equal(t, row.bar != 0, r.HasRated)
			require.InDelta(t, row.bar, r.Rated.Bar(), 0.001)
		})
	}
}

func TestPressuresThatAreNoRating(t *testing.T) {
	for _, row := range []struct {
		why, text, what string
		bar             float64
	}{
		{"a test pressure", "elbow 1/2 NPT F tested to 90 bar", "test", 90},
		{"the word behind the figure", "hose 1/2 BSP, 1320 bar burst", "burst", 1320},
		{"in German", "Schlauch 3/8 DN10 Berstdruck 720 bar", "burst", 720},
		{"a gauge's scale", "pressure gauge 1/4 NPT 0-160 bar", "full scale", 160},
		{"a transmitter's range", "transmitter G 1/4 male range 100 bar", "full scale", 100},
		{"a switch", "pressure switch 1/4 NPT M cut-out 3 bar", "cut-off", 3},
		{"a relief valve's setting", "relief valve 1/2 NPT set 62 bar", "setting", 62},
		{"a scale in words", "gauge 1/4 NPT male pressure 100 bar", "full scale", 100},
		{"steam is no cold water", "ball valve 1/2 NPT 150 WSP", "steam", 10.34214},
	} {
		t.Run(row.why, func(t *testing.T) {
			r := Read(row.text)
			require.False(t, r.HasRated)
			require.Len(t, r.Pressures, 1)
			require.Equal(t, row.what, r.Pressures[0].What)
			require.InDelta(t, row.bar, r.Pressures[0].Pressure.Bar(), 0.001)
		})
	}
}

// Of a relief valve a pressure is its rating only over one that is called a setting: of two that nothing
// names either may be, and one below is something else.
func TestAReliefsOtherPressureStaysOpen(t *testing.T) {
	for _, text := range []string{"relief valve 1/4 NPT, 60 bar, 120 bar", "relief valve 1/4 NPT, set 62 bar, 10 bar back pressure", "relief valve 1/4 NPT, set 62 bar, test 210 bar", "relief valve 1/4 NPT, range 20-120 bar, set 62 bar"} {
		require.False(t, Read(text).HasRated, text)
	}
}

func TestTemperatureAndStandards(t *testing.T) {
	r := Read("solenoid valve 1/2 NPT F 16 bar -10 to 80 °C ASME B1.20.1")
	require.True(t, r.HasTemperature)
	require.InDelta(t, 80, r.Temperature.Celsius(), 1e-9)
	require.InDelta(t, 60, Read("valve 1/2 NPT 140 °F").Temperature.Celsius(), 1e-9)
	require.Equal(t, []string{"ASME B16.11", "MSS SP-114"}, Read("elbow 1/2 NPT ASME B16.11 MSS SP-114").Standards)
}

func TestWordsOfASealThatNoEndTakesAreNamed(t *testing.T) {
	for text, want := range map[string][]threads.NotUsed{
		"Ball valve 1/2 NPT F without washer":   {{Words: "without washer", Why: "the text says that there is none"}},
		"Elbow 10 mm push-in with o-ring":       {{Words: "with o-ring", Why: "no end takes it"}},
		"Compression elbow 15 mm 60 cone":       {{Words: "60 cone", Why: "no end takes it"}},
		"Hose tail 3/4 BSPP male LH x 19 mm":    nil,
		"G 3/4 female swivel with washer elbow": nil,
	} {
		require.Equal(t, want, Read(text).NotUsed, text)
	}
	require.Equal(t, threads.NoSeal, Read("Ball valve 1/2 NPT F without washer").Ends[0].Candidates[0].Seal)
}

func TestWhatIsNotUsedIsNamed(t *testing.T) {
	r := Read("AB-1234 solenoid valve 1/2 NPT F 24 V 50 Hz, hole 12 mm, 2 pcs")
	require.Equal(t, []threads.NotUsed{
		{Words: "AB-1234", Why: "taken for a code"}, {Words: "24 V", Why: "a voltage"}, {Words: "50 Hz", Why: "a frequency"},
		{Words: "12 mm", Why: "a hole"}, {Words: "2 pcs", Why: "a count"},
	}, r.NotUsed)
	require.Equal(t, []threads.NotUsed{{Words: "16", Why: "a clamp has no end"}, {Words: "27 mm", Why: "a clamp has no end"}}, Read("Hose clamp 16 x 27 mm 316").NotUsed)
}

// Words of an end are named where the part has none: they may mean another part. A bore's inside
// is no sex of an end.
func TestWordsOfAnEndThatThePartHasNot(t *testing.T) {
	of := func(text string) []string {
		var out []string
		for _, u := range Read(text).NotUsed {
			if u.Why == threads.SpeaksOfAnEnd {
				out = append(out, u.Words)
			}
		}
		return out
	}
	require.Equal(t, []string{"left-hand"}, of("Spiral suction hose 19 mm, left-hand nuts, 5 m"))
	require.Equal(t, []string{"BSP, swivel, LH, female"}, of("Suction hose 19 mm spiral with 3/4 BSP female swivel ends LH, 5 m"))
	require.Empty(t, of("Saugschlauch 19 mm innen, 6 bar, Meterware"))
	require.Empty(t, of("Hose clamp 16 x 27 mm 316"))
}
