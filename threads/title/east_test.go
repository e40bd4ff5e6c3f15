package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
	"handtight/threads"
)

// A single sign for a sex beside signs that are not understood is a syllable of their word.
func TestASyllableIsNoSex(t *testing.T) {
	for _, text := range []string{"子母扣接头 1/2", "外协件 三通 1/2", "公差接头 1/2"} {
		for _, e := range Read(text).Ends {
			require.True(t, e.Sex == threads.NoSex || e.Question != "", text)
			require.NotContains(t, endsText([]threads.EndReading{e}), "NPT male", text)
		}
	}
	require.Equal(t, threads.Male, Read("接头 外 1/2").Ends[0].Sex)
}

// What a valve is set to and the scale of a gauge that comes with it are no rating.
func TestASettingAndAScaleInTheEastAreNoRating(t *testing.T) {
	for _, text := range []string{
		`Клапан запобіжний 1/2" ЗР-ВР 6 бар`, `Группа безопасности котла 1" 3 бар`, `Grupa bezpieczeństwa 1" 2,5 bar`,
		`Reduktor ciśnienia 3/4 z manometrem 6 bar`, `Фільтр 1/2" з манометром 10 бар`, `Pressure reducer 1/2 with gauge 10 bar`,
	} {
		require.False(t, Read(text).HasRated, text)
	}
	r := Read(`Кран кульовий 1/2" 16 бар`)
	require.True(t, r.HasRated)
	require.Equal(t, 16*quantity.Bar, r.Rated)
}

// EN 10226-1 has parallel internal threads, part 2 taper ones; ISO 7-1 has both, and DIN 2999-1 what
// part 1 has (titles of the standards).
func TestInternalThreadsOfTheTaperStandards(t *testing.T) {
	for text, want := range map[string]string{
		"Elbow 1/2 F/F EN 10226-1": "[Rp 1/2 female]", "Elbow 1/2 F/F DIN 2999": "[Rp 1/2 female]", "Elbow 1/2 F/F EN 10226-2": "[Rc 1/2 female]",
		"Elbow 1/2 F/F ISO 7-1": "[Rp 1/2 female | Rc 1/2 female]", "Elbow 1/2 F/F EN 10226": "[Rp 1/2 female | Rc 1/2 female]",
		"Nipple 1/2 ISO 7-1": "[R 1/2 male]",
	} {
		require.Equal(t, want, endsText(Read(text).Ends[:1]), text)
	}
}

// В behind a voltage is volts, and a diameter's inside or outside is no thread's.
func TestVoltsAndDiametersAreNoSex(t *testing.T) {
	for _, text := range []string{`Клапан электромагнитный 1/2" 220В НЗ`, "Εξωτερική διάμετρος 16 mm, ρακόρ 1/2", "قطر خارجي 20 مم وصلة 1/2"} {
		for _, e := range Read(text).Ends {
			require.True(t, e.Sex == threads.NoSex || e.Question != "" && !endsWithoutGround(e), text)
		}
	}
	require.Equal(t, threads.Female, Read("Кран 1/2 В").Ends[0].Sex)
}

// endsWithoutGround reports a sex that the question does not call customary.
func endsWithoutGround(e threads.EndReading) bool {
	return e.Sex == threads.Male || !strings.Contains(e.Question, "mostly is female")
}
