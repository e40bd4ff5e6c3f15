package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// Both sexes in every language, by the words that stand on labels (common practice of each
// trade; the same words are quoted with their sources in lexicon/sex.csv).
func TestSexesInEveryLanguage(t *testing.T) {
	for _, row := range []struct{ language, male, female string }{
		{"en", "male", "female"}, {"en", "M", "F"}, {"en", "external", "internal"}, {"de", "AG", "IG"}, {"de", "Außengewinde", "Innengewinde"}, {"fr", "mâle", "femelle"},
		{"it", "maschio", "femmina"}, {"es", "macho", "hembra"}, {"pt", "macho", "fêmea"}, {"nl", "buitendraad", "binnendraad"},
		{"sv", "utvändig gänga", "invändig gänga"}, {"no", "utvendig gjenge", "innvendig gjenge"}, {"da", "udvendigt gevind", "indvendigt gevind"},
		{"fi", "ulkokierre", "sisäkierre"}, {"pl", "gwint zewnętrzny", "gwint wewnętrzny"}, {"pl", "GZ", "GW"}, {"cs", "vnější závit", "vnitřní závit"},
		{"ru", "наружная резьба", "внутренняя резьба"}, {"ru", "НР", "ВР"}, {"uk", "зовнішня різьба", "внутрішня різьба"}, {"tr", "dış dişli", "iç dişli"},
		{"hu", "külső menet", "belső menet"}, {"ro", "filet exterior", "filet interior"}, {"hr", "vanjski navoj", "unutarnji navoj"},
		{"el", "αρσενικό", "θηλυκό"}, {"zh", "外丝", "内丝"}, {"zh", "外螺纹", "内螺纹"}, {"ja", "おねじ", "めねじ"}, {"ja", "オス", "メス"},
		{"ko", "수나사", "암나사"}, {"vi", "ren ngoài", "ren trong"}, {"id", "drat luar", "drat dalam"}, {"th", "เกลียวนอก", "เกลียวใน"}, {"ar", "ذكر", "انثى"},
	} {
		for sex, word := range map[threads.Sex]string{threads.Male: row.male, threads.Female: row.female} {
			for _, text := range []string{"1/2 NPT " + word, "1/2\" " + word + " NPT"} {
				r, err := ReadEnd(text)
				require.NoError(t, err, text)
				require.Equal(t, sex, r.Sex, "%s: %s", row.language, text)
				require.Len(t, r.Candidates, 1, text)
			}
		}
	}
}

// Two letters are the sexes of the two ends in their order, three those of a tee: run, branch
// and run as they are written.
func TestLettersInTheirOrder(t *testing.T) {
	for letters, want := range map[string]string{
		"M/F": "male female", "F/M": "female male", "M/M": "male male", "F/F": "female female", "M x F": "male female", "F x M": "female male", "MxM": "male male",
		"M-F": "male female", "M&F": "male female", "IG/AG": "female male", "AG/IG": "male female", "IG/IG": "female female", "H/M": "female male", "H-H": "female female",
		"i/a": "female male", "a/a": "male male", "GW/GZ": "female male", "GZ/GW": "male female", "ВР/НР": "female male", "НР/ВР": "male female", "BB": "female female", "KB": "male female", "KK": "male male",
		"内外丝": "female male", "双外丝": "male male", "オスメス": "male female", "dış-iç dişli": "male female", "iç-dış dişli": "female male",
		"mâle-femelle": "male female", "femelle/mâle": "female male", "macho-hembra": "male female", "maschio-maschio": "male male", "femmina-femmina": "female female", "male x female": "male female",
	} {
		require.Equal(t, want, sexWords(Read("1/2\" "+letters+" elbow")), letters)
	}
	for letters, want := range map[string]string{
		"FFF": "female female female", "MMM": "male male male", "FMF": "female male female", "MFM": "male female male", "F/F/M": "female female male", "M/F/F": "male female female", "F x F x F": "female female female",
		"F-M-F": "female male female", "IG/IG/IG": "female female female", "IG/AG/IG": "female male female", "H/H/H": "female female female", "M x M x F": "male male female", "MFF": "male female female", "WZW": "female male female",
	} {
		require.Equal(t, want, sexWords(Read("Tee 1/2\" "+letters)), letters)
	}
}

func sexWords(r threads.Reading) string {
	var out []string
	for _, e := range r.Ends {
		out = append(out, e.Sex.String())
	}
	return strings.Join(out, " ")
}

// Every word of the table is the sex that its row says, whatever stands beside it: a row of
// several letters gives the ends their sexes in its order.
func TestEveryWordOfTheSexTable(t *testing.T) {
	letter := map[byte]threads.Sex{'M': threads.Male, 'F': threads.Female}
	single := map[string]map[threads.Sex]bool{} // by word: a word that stands in two rows is open
	for _, r := range lexiconRows("sex.csv") {
		for _, w := range strings.Split(r["words"], "|") {
			if len(r["value"]) == 1 {
				if single[w] == nil {
					single[w] = map[threads.Sex]bool{}
				}
				single[w][letter[r["value"][0]]] = true
			}
		}
	}
	// In letters without dots both may be "inside-outside"; a double female is two ends; NPT F is one word.
	open := map[string]bool{"iç diş": true, "dış diş": true, "doppia femmina": true, "f/g": true}
	wrong, tried := 0, 0
	for w, sexes := range single {
		if len(sexes) > 1 || open[w] {
			continue
		}
		for sex := range sexes {
			r, err := ReadEnd("1/2 NPT " + w)
			tried++
			if err != nil || r.Sex != sex {
				wrong++
				t.Logf("%q: %v, want %v", w, r.Sex, sex)
			}
		}
	}
	require.Greater(t, tried, 200)
	require.Zero(t, wrong)
}

// What is not said is not supposed where it can be either; a kind that comes in one sex only
// says so by its question.
func TestSexesThatAreNotSaid(t *testing.T) {
	for _, row := range []struct{ text, sexes string }{
		{"Elbow 1/2 NPT", "female female"}, {"Tee 1/2 NPT", "female female female"}, {"Union 1/2 NPT", " "}, {"Flow meter 1/2 NPT", " "},
		{"Nipple 1/2 NPT", "male male"}, {"Coupling 1/2 NPT", "female female"}, {"Plug 1/2 NPT", "male"}, {"Cap 1/2 NPT", "female"},
		{"Bush 3/4 x 1/2 NPT", "male female"}, {"Street elbow 1/2 NPT", "male female"}, {"Ball valve 1/2 NPT", "female female"}, {"Gauge 1/4 NPT", "male"},
	} {
		r := Read(row.text)
		require.Equal(t, row.sexes, sexWords(r), row.text)
		for _, e := range r.Ends {
			if e.Sex == threads.NoSex {
				require.Contains(t, e.Question, "male or female", row.text)
			}
		}
	}
	for _, text := range []string{"Ball valve 1/2 NPT", "Gauge 1/4 NPT", "Elbow 1/2 NPT", "Tee 1/2 NPT", "Cross 1/2 NPT"} {
		require.Contains(t, Read(text).Ends[0].Question, "mostly is", text)
	}
}
