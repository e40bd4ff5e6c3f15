package main

import (
	"bytes"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/identify"
)

func perInch(tpi float64) identify.Gauged { return identify.Gauge(25.4 / tpi) }

func rough(g identify.Gauged) identify.Gauged { g.Rough = true; return g }

// Figures as people write them.
func TestReadFigures(t *testing.T) {
	for _, c := range []struct {
		why  string
		f    figures
		want identify.Measured
	}{
		{"millimetres outside", figures{od: "13.1 mm"}, identify.Measured{Sex: threads.Male, Diameter: identify.Gauge(13.1)}},
		{"a decimal comma inside", figures{id: "11,6 mm"}, identify.Measured{Sex: threads.Female, Diameter: identify.Gauge(11.6)}},
		{"a whole count", figures{tpi: "19"}, identify.Measured{Pitch: perInch(19)}},
		{"a count with its words", figures{tpi: "19 threads per inch"}, identify.Measured{Pitch: perInch(19)}},
		{"tpi written out", figures{tpi: "11.5 TPI"}, identify.Measured{Pitch: perInch(11.5)}},
		{"a half", figures{tpi: "11½"}, identify.Measured{Pitch: perInch(11.5)}},
		{"a half in figures", figures{tpi: "11 1/2"}, identify.Measured{Pitch: perInch(11.5)}},
		{"in doubt", figures{tpi: "14 or so"}, identify.Measured{Pitch: rough(perInch(14))}},
		{"in doubt, before", figures{tpi: "about 14"}, identify.Measured{Pitch: rough(perInch(14))}},
		{"in doubt, by a sign", figures{tpi: "~14"}, identify.Measured{Pitch: rough(perInch(14))}},
		{"asked", figures{tpi: "14?"}, identify.Measured{Pitch: rough(perInch(14))}},
		{"between two", figures{tpi: "13-14"}, identify.Measured{Pitch: rough(perInch(13.5))}},
		{"one or the other", figures{tpi: "18 or 20"}, identify.Measured{Pitch: rough(perInch(19))}},
		{"a pitch", figures{pitch: "1.5 mm"}, identify.Measured{Pitch: identify.Gauge(1.5)}},
		{"a pitch in doubt", figures{pitch: "roughly 1.8 mm"}, identify.Measured{Pitch: rough(identify.Gauge(1.8))}},
		{"a taper seen", figures{taper: "yes"}, identify.Measured{Taper: identify.Tapered}},
		{"none seen", figures{taper: "No"}, identify.Measured{Taper: identify.NoTaper}},
		{"not looked at", figures{taper: "unknown"}, identify.Measured{}},
		{"degrees", figures{angle: "55°"}, identify.Measured{Flank: identify.Gauge(55)}},
		{"degrees in words", figures{angle: "60 degrees"}, identify.Measured{Flank: identify.Gauge(60)}},
		{"a cone to the axis", figures{seat: "37"}, identify.Measured{Nose: identify.NoseCone37}},
		{"a cone across", figures{seat: "74 deg"}, identify.Measured{Nose: identify.NoseCone37}},
		{"a ring", figures{seat: "face ring"}, identify.Measured{Nose: identify.FaceRing}},
		{"nothing there", figures{seat: "none"}, identify.Measured{Nose: identify.PlainNose}},
		{"a country", figures{country: "NZ"}, identify.Measured{Country: "NZ"}},
	} {
		t.Run(c.why, func(t *testing.T) {
			m, err := c.f.read()
			require.NoError(t, err)
			require.InDelta(t, c.want.Diameter.Value, m.Diameter.Value, 1e-9)
			require.InDelta(t, c.want.Pitch.Value, m.Pitch.Value, 1e-9)
			m.Diameter.Value, m.Pitch.Value = c.want.Diameter.Value, c.want.Pitch.Value
			require.Equal(t, c.want, m)
		})
	}
}

// interviewed answers the questions with lines and gives what was printed.
func interviewed(t *testing.T, asJSON bool, answers ...string) (m identify.Measured, out, trouble string) {
	t.Helper()
	var o, e bytes.Buffer
	a := &app{in: strings.NewReader(strings.Join(answers, "\n")), ui: newUI(&o, &e), json: asJSON}
	require.NoError(t, a.talk(&m))
	return m, strings.Join(strings.Fields(o.String()), " "), e.String()
}

// The side first, then the diameter and the country; it ends with the card of the best
// and a known part to try it on.
func TestInterview(t *testing.T) {
	m, out, _ := interviewed(t, false, "outside", "13.1 mm", "NZ", "no", "19")
	require.Equal(t, threads.Male, m.Sex)
	require.Equal(t, identify.Gauge(13.1), m.Diameter)
	require.Equal(t, "NZ", m.Country)
	require.Contains(t, out, "so far")
	require.Contains(t, out, "it is G 1/4.")
	require.Contains(t, out, "Buy or borrow a known G 1/4 female")
	require.Contains(t, out, "Card: G 1/4 male")
	require.Less(t, strings.Index(out, "outside of the part"), strings.Index(out, "diameter across"))
}

// The side may bring its diameter along.
func TestInterviewSideAndDiameter(t *testing.T) {
	m, out, _ := interviewed(t, false, "id 18.9 mm", "don't know", "14")
	require.Equal(t, threads.Female, m.Sex)
	require.Empty(t, m.Country)
	require.Equal(t, 1, strings.Count(out, "Where was the part"))
}

// What cannot be measured is passed over and not asked again.
func TestInterviewPassesOver(t *testing.T) {
	m, out, _ := interviewed(t, false, "outside", "13.1 mm", "", "don't know", "19", "plain")
	require.Equal(t, 1, strings.Count(out, "does it taper"))
	require.Zero(t, m.Taper)
	require.Contains(t, out, "G 1/4 male")
	m, out, _ = interviewed(t, false, "no idea", "no idea", "19")
	require.Equal(t, threads.NoSex, m.Sex)
	require.NotContains(t, out, "What is the diameter", "a diameter says nothing without its side")
	require.True(t, m.Pitch.Known)
}

// An answer counts for its own question only: what cannot be one says so, and the
// question stands.
func TestInterviewAsksAgain(t *testing.T) {
	m, out, _ := interviewed(t, false, "13.1 mm", "outside", "13.1", "19", "0.9 mm", "13.1 mm", "Atlantis", "NZ", "19", "13.1 mm", "maybe", "no", "q")
	require.Contains(t, out, `"13.1 mm" does not say which side`)
	require.Contains(t, out, "has no unit")
	require.Contains(t, out, "between 3 and 250 mm is due")
	require.Contains(t, out, `country "Atlantis"`)
	require.Contains(t, out, `"19" is no answer`, "a count of threads does not say whether it tapers")
	require.Contains(t, out, `"maybe" is no answer`)
	require.Equal(t, identify.Gauge(13.1), m.Diameter)
	require.Equal(t, identify.NoTaper, m.Taper)
}

// `?` explains the question that stands, and `<` goes back to the one before with
// what it had taken.
func TestInterviewHelpsAndGoesBack(t *testing.T) {
	m, out, _ := interviewed(t, false, "<", "?", "inside", "<", "outside", "?", "31.1 mm", "<", "13.1 mm", "", "<", "NZ", "q")
	require.Contains(t, out, "this is the first question")
	require.Contains(t, out, "A swivel nut is female")
	require.Contains(t, out, "square to the axis")
	require.Equal(t, threads.Male, m.Sex)
	require.Equal(t, identify.Gauge(13.1), m.Diameter)
	require.Equal(t, "NZ", m.Country)
}

// q ends it, and so does the end of the answers; with --json the questions stay out
// of the result, and no card follows.
func TestInterviewEnds(t *testing.T) {
	_, out, _ := interviewed(t, false, "inside", "18.9 mm", "q", "14")
	require.Contains(t, out, "female")
	m, out, asked := interviewed(t, true, "outside", "13.1 mm", "", "19")
	require.Equal(t, threads.Male, m.Sex)
	require.True(t, strings.HasPrefix(out, "{"), out)
	require.Contains(t, asked, "does it taper")
	require.NotContains(t, out, "Card:")
}

// Every family that has a table prints it, wide and narrow; each thread has its row.
func TestEveryFamilyIsListed(t *testing.T) {
	for _, width := range []int{plainWidth, leastWidth} {
		for _, f := range threads.Families() {
			if !f.Threaded() {
				continue
			}
			var o, e bytes.Buffer
			a := &app{ui: newUI(&o, &e)}
			a.ui.width = width
			require.NoError(t, a.threadList(f.String()))
			flat := strings.Join(strings.Fields(o.String()), " ")
			for _, form := range threads.Forms(f) {
				require.Contains(t, flat, form.Designation)
			}
			require.Contains(t, flat, "source")
			for _, line := range strings.Split(o.String(), "\n") {
				require.LessOrEqual(t, len([]rune(line)), width, line)
			}
		}
	}
}

// Whatever a flag holds, it is read or refused in words.
func FuzzFigures(f *testing.F) {
	for _, s := range []string{"13.1 mm", "14 or so", "11 1/2", "~18", "1.5 mm", "37", "13-14", "½", "yes", "1e400", "-3", "NaN"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, fig := range []figures{{od: text}, {id: text}, {tpi: text}, {pitch: text}, {taper: text}, {angle: text}, {seat: text}, {country: text}} {
			m, err := fig.read()
			if err == nil {
				_, err = identify.Identify(m)
			}
			if err != nil {
				require.NotEmpty(t, err.Error())
			}
		}
	})
}
