package title

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
)

// A spreadsheet shows 3/4 as 4-Mar where months come first and as 3-Apr where days do. A day and a month
// that are an odd number and a half, quarter or eighth above it are that fraction, and nothing else is.
func TestDatesAreFractions(t *testing.T) {
	names := []string{"Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep"}
	rapid.Check(t, func(t *rapid.T) {
		day, month := rapid.IntRange(1, 31).Draw(t, "day"), rapid.IntRange(1, len(names)).Draw(t, "month")
		name := names[month-1]
		switch rapid.IntRange(0, 2).Draw(t, "case") {
		case 0:
			name = strings.ToUpper(name)
		case 1:
			name = strings.ToLower(name)
		}
		text := fmt.Sprintf("%d%s%s", day, rapid.SampledFrom([]string{"-", "."}).Draw(t, "mark"), name)
		top, bottom := min(day, month), max(day, month)
		fraction := top < bottom && top%2 == 1 && (bottom == 2 || bottom == 4 || bottom == 8)
		got := figuresOf(text)
		require.NotEmpty(t, got, text)
		require.Equal(t, fraction, got[0].dated, text)
		if fraction {
			require.Equal(t, float64(top)/float64(bottom), got[0].v, text)
		}
	})
}

// Months of eight languages; what is not a month, or stands without its mark, is none.
func TestMonthsOfSpreadsheets(t *testing.T) {
	for text, want := range map[string]float64{
		"4-Mrz": 0.75, "4-Maa": 0.75, "3-Abr": 0.75, "3-Avr": 0.75, "2-Ene": 0.5, "2-Gen": 0.5, "1-Fév": 0.5, "8-Mai": 0.625, "8-Maj": 0.625, "8-Mag": 0.625, "8-Lug": 0.875, "4-März": 0.75,
		"4-Max": 0, "4 Mar": 0, "4-Ma": 0, "4-March": 0, "4/Mar": 0, "4-mar-24": 0.75,
	} {
		f := figuresOf(text)[0]
		require.Equal(t, want != 0, f.dated, text)
		if want != 0 {
			require.Equal(t, want, f.v, text)
		}
	}
}

// A size that was a date is asked, whatever else is sure.
func TestADateIsAsked(t *testing.T) {
	for _, text := range []string{"Elbow 4-Mar NPT female", "Elbow 3-Apr NPT female"} {
		r := Read(text)
		require.Equal(t, "NPT 3/4 female; NPT 3/4 female", brief(r.Ends), text)
		for _, e := range r.Ends {
			require.Contains(t, e.Question, "3/4, which a spreadsheet has turned into a date", text)
		}
	}
	// 5/16 of a tube becomes 16-May; sixteenths are left unread, and 16 is no tube of 16 mm for it.
	for _, e := range Read("Push-in elbow 16-May").Ends {
		require.NotEmpty(t, e.Question)
	}
}
