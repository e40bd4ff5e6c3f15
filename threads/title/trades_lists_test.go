package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What lists of trades that had not been read before taught, and their neighbours for which nothing changes. The lines are
// made for these tests, each with its answer written down first; those that were found stand in the corpora.

// A part that goes from one size to another has two, and one size at all its ends is asked.
func TestAReducingPartOfOneSizeIsAsked(t *testing.T) {
	for _, text := range []string{`Reducing nipple R 1 1/2`, `Reducing coupling 1 1/4 NPT`, `Réduction G 1-1/4 M/F`} {
		for _, e := range Read(text).Ends {
			require.Contains(t, e.Question, "the part reduces", text)
		}
	}
	for _, text := range []string{`Reducing nipple G 1 x G 1/2`, `Nipple R 1 1/2`, `Pressure reducing valve G 1/2 female`} {
		for _, e := range Read(text).Ends {
			require.NotContains(t, e.Question, "the part reduces", text)
		}
	}
}

// What is said of an end and read at none is named.
func TestAnEndThatIsSaidAndNotReadIsNamed(t *testing.T) {
	require.Contains(t, strings.Join(Read(`Adapter 3/4" male, slip x FPT`).Unread, ";"), "slip")
	require.Contains(t, strings.Join(Read(`Clamp ferrule 2" weld 316L`).Unread, ";"), "weld")
	require.NotContains(t, strings.Join(Read(`Adapter 3/4" slip x 3/4" FPT`).Unread, ";"), "of which no size")
}

// A nut, a swivel, a bore that is said once is not that of both ends without a question.
func TestWhatIsSaidOnceIsAskedAtTheOther(t *testing.T) {
	require.Contains(t, Read(`Elbow G 3/4 female swivel`).Ends[1].Question, "a nut that turns too")
	require.Empty(t, Read(`Elbow G 3/4 female swivel`).Ends[0].Question)
	require.Contains(t, Read(`Nipple G 1 male/male with swivel nut G 1 1/4`).Ends[1].Question, "male or female")
	require.Contains(t, Read(`Nipple G 1/2 male inside diameter 12 mm`).Ends[1].Question, "the bore of a hose")
	require.Contains(t, Read(`Service valve 22mm comp x 10`).Ends[1].Question, "how many of them")
	require.Contains(t, Read(`Male elbow 3/8" push-in`).Ends[0].Question, "says male and push-in")
	readTitled(t, []titled{
		{`Elbow M26x1.5 male 24° DKOL 18L`, "24L 18L male; 24L 18L female swivel cone-o-ring", "elbow", ""},
		{`Tuerca loca 15L / 15L de latiguillo`, "24L 15L female swivel; 24L 15L female swivel", "", ""},
	})
}

// Figures that are counts, lengths, packs, bolts, or of what the part is for.
func TestFiguresBesideASize(t *testing.T) {
	readTitled(t, []titled{
		{`Equal elbow 22mm -25no`, "TUBE 22 mm; TUBE 22 mm", "elbow", ""},
		{`Claw coupling 1 BSP female gal x 4`, "BSP 1 female", "", ""},
		{`1 1/8 NPT male plug`, "NPT 1/8 male", "plug", ""},
		{`Elbow 3/4 NPT male x 1/2 NPT female (for 1" line)`, "NPT 3/4 male; NPT 1/2 female", "elbow", ""},
		{`GI elbow 32mm/1inch`, "PIPE 1 female; PIPE 1 female", "elbow", "galvanised"},
		{`Kolano ocynk 25 GW/GZ`, "PIPE 1 female; PIPE 1 male", "elbow", "galvanised"},
		{`Galvanised nipple 25 x 20`, "PIPE 1 male; PIPE 3/4 male", "nipple", "galvanised"},
		{`Press adaptor 20x2-3/4" male`, "PIPE 3/4 male", "", ""},
		{`Pump 230 V, outlet 1 1/4" female`, "PIPE 1 1/4 female", "feed pump", ""},
		{`BSP 1/2 male / JIC -8 male adaptor`, "BSP 1/2 male; JIC -8 male", "adaptor", ""},
	})
	for _, text := range []string{
		`Hex bolt with nut M16x80mm`, `Plug 2P+E 16A/250V`, `PPR pipe 32MM PN20 4M`, `Tube 8 mm OD / 5 mm ID, PU`, `Rohr nahtlos; 15x1,5; E235`,
		`O-ring NBR 20 x 3 mm (pump seal kit)`, `Ferrule for hose 1/4"`, `22 mm copper pipe`, `HDPE pipe 63 mm 6M`, `Wąż do wody 16x22 mb 25`, `Clamp 2 inch`,
	} {
		require.Empty(t, Read(text).Ends, text)
	}
}

// Letters that are not the thread, the sex or the end that they look like.
func TestLettersOfOtherTrades(t *testing.T) {
	readTitled(t, []titled{
		{`Flare nut 1/4 R410A`, "SAE45 -4 female", "nut", ""},
		{`Flaremutter 1/2 R32`, "SAE45 -8 female swivel", "", ""},
		{`Racord olandez 3/4" FE-FI pt. boiler`, "PIPE 3/4 male; G/NPSM 3/4 female swivel", "union", ""},
		{`H nipple 1/2"`, "PIPE 1/2 male; PIPE 1/2 male", "nipple", ""},
		{`Кран кульовий 3/4 в/з`, "PIPE 3/4 female; PIPE 3/4 male", "shut-off valve", ""},
		{`Šroubení 1/2 vně/vni`, "PIPE 1/2 male; PIPE 1/2 female", "union", ""},
		{`Cap galv 1 1/2" classe 10 bl. C`, "PIPE 1 1/2 female", "cap", "galvanised"},
		{`Curva 45 inox 304 clamp 2"`, "FERRULE 2 in; FERRULE 2 in", "elbow", "304"},
	})
	require.NotContains(t, brief(Read(`G.Ired bush 1inch/x3/4inch`).Ends), "G 1 male")
	require.Empty(t, Read(`2" tee IPS HDPE butt fusion`).Ends)
}

// A tube by its outside and its bore, beside the word for it, is no fraction of an inch.
func TestTubesByOutsideAndBore(t *testing.T) {
	readTitled(t, []titled{
		{`Connector G 3/8 male for 6/4 tube`, "G 3/8 male; TUBE 6 mm", "adaptor", ""},
		{`Anschluss G 1/4 AG, 8/6 Schlauch`, "G 1/4 male; TUBE 8 mm", "adaptor", ""},
		{`Anschluss 6/4" AG`, "PIPE 1 1/2 male", "adaptor", ""},
	})
}

// Polyethylene takes the pipe where no thread is said; a glued part with brass in it has one.
func TestPlasticFittingsByTheirMaterial(t *testing.T) {
	require.Contains(t, Read(`HDPE elbow 3/4"`).Ends[0].Question, "What takes the pipe")
	require.NotContains(t, Read(`HDPE elbow 3/4" female`).Ends[0].Question, "What takes the pipe")
	require.Len(t, Read(`CPVC elbow brass 3/4"`).Ends, 1)
}

// Articles of a master list: each piece between semicolons is its own, and a standard's number ends there.
func TestArticleMasters(t *testing.T) {
	readTitled(t, []titled{
		{`MUFFE;1.4408;ISO 4144;RP3/4;PN16`, "Rp 3/4 female; Rp 3/4 female", "coupling", ""},
		{`STOPFEN;DIN 906;R1/2;KEGELIG`, "R 1/2 male", "plug", ""},
		{`SCHLAUCHTUELLE;MS58;G3/8 AG;LW13`, "G 3/8 male; BARB 13 mm", "hose tail", "brass"},
		{`STECKVERSCHRAUBUNG;D10;G1/4 AG`, "PUSH 10 mm; G 1/4 male", "", ""},
	})
}

// Sizes that the number of a hydraulic part alone says are read and asked.
func TestSizesOfAPartsNumber(t *testing.T) {
	readTitled(t, []titled{
		{`ADXX-06-04 BSP MALE X JIC MALE ADAPTOR`, "BSP 3/8 male; JIC -4 male", "adaptor", ""},
		{`MXF-15-08 METRIC FEMALE LIGHT DUTY`, "24L 15L female", "", ""},
		{`Elbow ABC-04-04 1/2 NPT male`, "NPT 1/2 male; NPT 1/2 male", "elbow", ""},
	})
	for _, e := range Read(`ADXX-06-04 BSP MALE X JIC MALE ADAPTOR`).Ends {
		require.Contains(t, e.Question, "Only the part's number says so")
	}
	require.Contains(t, strings.Join(Read(`MHF-08-04 STRAIGHT FEMALE HEAVY DUTY`).Unread, ";"), "the sizes may stand in it")
}

// A saddle goes round a pipe, and a thread branches off; one that only holds a pipe has no end.
func TestSaddles(t *testing.T) {
	require.Len(t, Read(`Tapping saddle 90 mm x 1"`).Ends, 1)
	require.Contains(t, brief(Read(`Collarín de toma 50 mm x 3/4" H`).Ends), "PIPE 3/4 female")
	require.Empty(t, Read(`Saddle 20 mm`).Ends)
}

// What the text says there is none of goes on behind "and".
func TestWithoutThisAndThat(t *testing.T) {
	readTitled(t, []titled{
		{`Сгон ду25 без муфты и к/гайки`, "PIPE 1 male; PIPE 1 male", "nipple", ""},
	})
	require.NotEmpty(t, Read(`Сгон ду25 без муфты и к/гайки`).NotUsed)
}

// Traditional signs of Chinese are read as the simplified ones.
func TestTraditionalSigns(t *testing.T) {
	for trad, simple := range map[string]string{`銅寶塔接頭 外牙1/2`: `铜宝塔接头 外牙1/2`, `不鏽鋼球閥 內牙3/4`: `不锈钢球阀 内牙3/4`} {
		require.Equal(t, brief(Read(simple).Ends), brief(Read(trad).Ends), trad)
		require.NotEmpty(t, Read(trad).Ends, trad)
	}
}

// Carts and receipts: counts and prices at the end, the number of a tee's ends of one sex, what is crimped on a hose.
func TestCartsAndReceipts(t *testing.T) {
	readTitled(t, []titled{
		{`Winkel 3/8" IG/AG 4 x 3,15`, "PIPE 3/8 female; PIPE 3/8 male", "elbow", ""},
		{`Tee 3/8 NPT 3xF 316`, "NPT 3/8 female; NPT 3/8 female; NPT 3/8 female", "tee", ""},
		{`Union mâle 8L - 1/4 BSPP`, "24L 8L male; G 1/4 male", "union", ""},
		{`Latiguillo 3/8, tuerca loca hembra M18x1,5 en los dos extremos`, "M M18x1.5 female swivel; M M18x1.5 female swivel", "hose", ""},
		{`Flexible 1/2 lg 900 mm, 2 x femelle tournante JIC 7/8-14`, "JIC -10 female swivel; JIC -10 female swivel", "hose", ""},
		{`Filter housing 10", in/out 1/2 FNPT`, "NPT 1/2 female; NPT 1/2 female", "filter housing", ""},
		{`Porte filtre 9"3/4, e/s 3/4`, "PIPE 3/4 female; PIPE 3/4 female", "filter housing", ""},
	})
	require.NotContains(t, brief(Read(`3/8 hortum 2,5 mt`).Ends), "2 1/2", "metres")
	for _, text := range []string{`Tuyau Ø19 int. ml 2,40`, `Relais 40A, lame 6,3 mm (pompe)`, `Sed cart 5 mic 2.5 x 9-3/4`} {
		require.Empty(t, Read(text).Ends, text)
	}
}
