package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// Pressures as labels, receipts and letters write them, in lines of people who had not seen the rules. The answers are a fitter's: of what a
// line calls a test, a burst, a peak, doubts, or says of something else, nothing is a rating.
func TestWhatIsNoRating(t *testing.T) {
	for _, c := range []struct {
		text string
		bar  float64 // 0: none
		what string  // of the first pressure that is no rating
	}{
		// words in a row, with figures in a row
		{"valve 1/2 npt f, working / burst: 70 / 280 bar", 70, "burst"},
		{"hose 3/8 JIC-6 F x JIC-6 F WP/burst 10/40 MPa", 100, "burst"},
		{"hose 3/8 JIC-6 F x JIC-6 F rated/burst 100/400 bar", 100, "burst"},
		{"hose 3/8 JIC-6 F x JIC-6 F max / burst 100/400 bar", 100, "burst"},
		{"elbow 1/4 npt f max. working/test/burst 70/105/280 bar", 70, "test"},
		{"elbow 1/4 npt f W.P./TEST 70/105 bar", 70, "test"},
		{"elbow 1/4 npt f working & burst 70 & 280 bar", 70, "burst"},
		{"elbow 1/4 npt f 400/100 bar burst/working", 100, "burst"},
		{"elbow 1/4 npt f 280 bar / 70 bar (burst / working)", 70, "burst"},
		{"elbow 1/4 npt f burst/test/working 280/105/70 bar", 70, "burst"},
		// a price or degrees behind a word for a working pressure
		{"Relief valve 1/2 NPT M x F set 7 bar max 120C", 0, "setting"},
		{"Filter housing 3/4 NPT F test 9 bar max 45C", 0, "test"},
		{"Check valve 1/2 NPT F cracking 0.5 bar max 60C", 0, "opening pressure"},
		{"Relief valve 1/2 NPT M x F set 7 bar max $640.00", 0, "setting"},
		{"Hose 1/2 JIC-8 F x JIC-8 F burst 70 bar WP $640.00", 0, "burst"},
		{"Hose 1/2 JIC-8 FS x JIC-8 FS 50 bar WP 180.00", 50, ""},
		{"Valve 1/2 NPT F 250 bar MWP 12.00", 250, ""},
		{"Valve 1/2 NPT F 250 bar, MAWP 70", 70, ""},
		// tests, bursts and peaks
		{"elbow 1/4 npt f Pburst 400 bar", 0, "burst"}, {"elbow 1/4 npt f blew at 400 bar", 0, "burst"},
		{"elbow 1/4 npt f surge 400 bar", 0, "peak"}, {"elbow 1/4 npt f 400 bar short term", 0, "peak"},
		{"Kugelhahn 1/2 IG getestet bis 60 bar", 0, "test"}, {"Kugelhahn 1/2 IG kurzzeitig 16 bar", 0, "peak"},
		{"Σφαιρική βάνα 1/2 θηλ πίεση θραύσης 160 bar", 0, "burst"}, {"Σφαιρική βάνα 1/2 θηλ πίεση δοκιμής 60 bar", 0, "test"},
		{"Кран шаровой 1/2 ВР опрессован 60 бар", 0, "test"}, {"Valvola a sfera 1/2 F collaudata a 60 bar", 0, "test"},
		{"vanne 1/2 F éprouvée à 60 bar", 0, "test"}, {"llave 1/2 H probada a 60 bar", 0, "test"},
		{"feed pump 12V 1/2 npt shuts off at 3 bar", 0, "cut-off"},
		{"backventil 1/2 inv öppnar vid 0,4 bar", 0, "opening pressure"},
		// words that are not understood, doubts and shares
		{"elbow 1/4 npt f zwquv at 400 bar", 0, threads.Unclear}, {"elbow 1/4 npt f 400 bar zwquv", 0, threads.Unclear},
		{"elbow 1/4 npt f 70 bar?", 0, threads.Unclear}, {"elbow 1/4 npt f, maybe 70 bar", 0, threads.Unclear},
		{"elbow 1/4 npt f, less than 70 bar", 0, threads.Unclear}, {"elbow 1/4 npt f, half of 70 bar", 0, threads.Unclear},
		// most, and yet no rating
		{"elbow 1/4 npt f, max 80 bar burst", 0, "burst"}, {"elbow 1/4 npt f, max. 80 bar (burst)", 0, "burst"}, {"elbow 1/4 npt f, maximum 80 bar burst pressure", 0, "burst"},
		{"elbow 1/4 npt f, max 80 bar test pressure", 0, "test"}, {"elbow 1/4 npt f, maxi 80 bar test", 0, "test"}, {"elbow 1/4 npt f, service 80 bar burst", 0, "burst"},
		{"elbow 1/4 npt f, WP 80 bar, burst 320 bar", 80, "burst"}, {"elbow 1/4 npt f, PMS 80 bar", 80, ""}, {"elbow 1/4 npt f, 80 bar maxi", 80, ""},
		// another part's
		{"hex nipple 1/4 npt, hose beside it is 200 bar", 0, threads.AnotherPart}, {"hex nipple 1/4 npt next to the 70 bar gauge", 0, threads.AnotherPart},
		{"elbow 1/4 npt f, with 200 bar hose", 0, threads.AnotherPart}, {"elbow 1/4 npt f replaces a 200 bar one", 0, threads.AnotherPart},
		{"elbow 1/4 npt f sits behind the 70 bar relief valve", 0, threads.AnotherPart}, {"tee 1/4 npt f my system runs at 52 bar", 0, threads.AnotherPart},
		// and plain ones
		{"Ball valve 1/2 NPT F/F 70 bar 316", 70, ""}, {"Ball valve 316 1/2 NPT F/F rated 70 bar lever", 70, ""},
		{"Elbow 1/2 NPT F, 70 bar max", 70, ""}, {"Hose 3/8 2SN 330 bar JIC-6 F both ends", 330, ""},
		{"Needle valve 400bar max 60C 1/4 NPT F", 400, ""}, {"Valve 1/2 BSP F PN16 @20C", 16, ""},
	} {
		r := Read(c.text)
		require.Equal(t, c.bar > 0, r.HasRated, "%s: %v %v", c.text, r.Rated, r.Pressures)
		require.InDelta(t, c.bar, float64(r.Rated/quantity.Bar), 0.01, c.text)
		if c.what != "" {
			require.NotEmpty(t, r.Pressures, c.text)
			require.Equal(t, c.what, r.Pressures[0].What, c.text)
		}
	}
}

func TestDegreesWithoutTheirSign(t *testing.T) {
	for text, want := range map[string]float64{
		"Filter housing 3/4 NPT F 6 bar at 28C": 28, "Check valve 1/2 BSPP F 316 PN16 15C": 15, "Relief valve 1/2 NPT M x F set 7 bar max 120C": 120,
		"Кран шаровой 1/2 ВР до 90 °С": 90,
	} {
		r := Read(text)
		require.True(t, r.HasTemperature, text)
		require.InDelta(t, want, r.Temperature.Celsius(), 0.01, text)
		require.Len(t, r.Ends, 2, text)
	}
	require.Contains(t, Read("1/2 BSP male to 15C adaptor").Unread, "15C (solder end)")
}
