package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Tees whose branch is named first, cones whose thread is said again, and relief valves by the names of their ports, as people who had not
// seen the rules wrote them; the answers are a fitter's.
func TestSidesThatAreNamed(t *testing.T) {
	run := "G 1/2 female; G 1/2 female; G 1/4 male"
	for text, want := range map[string]string{
		"T-Stück: Abgang AG G 1/4, Durchgang IG G 1/2, PN 25":                                      run,
		"T-Stück Abgang G 1/4 AG, Durchgang beidseitig G 1/2 IG":                                   run,
		"Tee, branch male G 1/4, run both female G 1/2, 25 bar":                                    run,
		"Tee run G 1/2 female, branch G 1/4 male":                                                  run,
		"Té piquage mâle G 1/4, passage femelle G 1/2":                                             run,
		"Te derivación macho G 1/4, paso hembra G 1/2":                                             run,
		"T-stuk aftakking G 1/4 buiten, doorgang G 1/2 binnen":                                     run,
		"Тройник отвод НР G 1/4, проход ВР G 1/2":                                                  run,
		"T-rör avstick G 1/4 utv, genomgång G 1/2 inv":                                             run,
		"Tee, 1/4 NPT male branch, 1/2 NPT female run":                                             "NPT 1/2 female; NPT 1/2 female; NPT 1/4 male",
		"Tee 1/2 NPT F run x 1/4 NPT F branch":                                                     "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female",
		"Schottverschraubung 24° 10S, beidseitig M18x1,5 AG, PN 630":                               "24S 10S male; 24S 10S male",
		"Rückschlagventil 24° 12L, beidseitig M18x1,5 AG":                                          "24L 12L male; 24L 12L male",
		"Tee 24° 12L, three ends M18x1.5 male":                                                     "24L 12L male; 24L 12L male; 24L 12L male",
		"Raccord union tube 12 mm série lourde M20x1,5 24°, PN 630":                                "24S 12S male; 24S 12S male",
		"Union 24° cone 12 mm tube heavy series, nut M20x1.5":                                      "24S 12S male; 24S 12S male",
		"Valvola di sicurezza tarata 65 bar, attacco maschio 3/8 NPT, scarico femmina 1/2 NPT":     "NPT 3/8 male; NPT 1/2 female",
		"Тройник 12х18н10т G 1/2 ВР, PN 40":                                                        "G 1/2 female; G 1/2 female; G 1/2 female",
		"Safety valve 65 bar, G 3/8 male, drain G 1/2 female":                                      "G 3/8 male; G 1/2 female",
		"8-Port Drip Manifold, 1/2\" FPT inlet, eight 1/4\" barb outlets":                          "NPT 1/2 female" + strings.Repeat("; BARB 1/4 in", 8),
		"Boost pump, 1/2\" BSPP female suction port":                                               "G 1/2 female",
		"GARDEN HOSE ADPT 3/4MGHT X 1/2FIP BR  6.79 T":                                             "NH 3/4 male; NPT 1/2 female",
		"Tubo flex idr. 1/2\" 2SN mt 1,20 F.GIR. 1/2 GAS dritto + F.GIR. 1/2 GAS 90°":              "G 1/2 female swivel; G 1/2 female swivel",
		"Latiguillo alta presión 3/8\" 1,20 m tuerca loca BSP 3/8\" recta + tuerca loca BSP 3/8\"": "G 3/8 female swivel; G 3/8 female swivel",
	} {
		require.Equal(t, want, brief(Read(text).Ends), text)
	}
	require.Equal(t, "stainless steel", Read("Тройник 12х18н10т G 1/2 ВР, PN 40").Material)
}

// What a part is only for, or not for, is told with its words.
func TestLimitsInTheWordsOfThePort(t *testing.T) {
	for text, want := range map[string]string{
		"Kugelhahn 1/2 IG nicht für Trinkwasser":                  "nicht für Trinkwasser",
		"Ball valve 1/2 NPT F/F cold water only":                  "cold water only",
		"Ball valve 1/2 NPT F/F must not be used on product side": "not be used on product side",
		"Σφαιρική βάνα 1/2 θηλ μόνο για αέρα":                     "μόνο για αέρα",
		"llave 1/2 H no para agua caliente":                       "no para agua caliente",
		"valvola 1/2 F solo vuoto":                                "solo vuoto",
		"vanne 1/2 F gaz seulement":                               "gaz seulement",
		"küresel vana 1/2 iç yalnız hava için":                    "yalnız hava için",
		"válvula 1/2 F não usar com água quente":                  "não usar com água quente",
		"kogelkraan 1/2 bi alleen perslucht":                      "alleen perslucht",
		"kuleventil 1/2 innv ikke egnet for sjøvann":              "ikke egnet for sjøvann",
		"Кран 1/2 ВР не для высокого давления":                    "не для высокого давления",
		"valve 1/2 NPT F not rated":                               "not rated",
	} {
		r := Read(text)
		require.Len(t, r.Limits, 1, text)
		require.Equal(t, want, r.Limits[0].Words, text)
	}
	for _, text := range []string{"elbow 1/2 NPT F, only 2 left", "elbow 1/2 NPT F one end only", "No. 12 elbow 1/2 NPT F", "elbow 1/2 NPT F, no 316"} {
		require.Empty(t, Read(text).Limits, text)
	}
}
