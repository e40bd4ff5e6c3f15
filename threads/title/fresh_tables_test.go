package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/quantity"
)

// Lines of catalogues, tables and lists of many tongues, as people who had not seen the rules wrote them; the answers are a fitter's. A question
// stands where the answer has a question mark.
func TestLinesOfTablesAndCatalogues(t *testing.T) {
	for text, want := range map[string]string{
		"adaptor MNPT 04 x JIC 06 male":         "NPT 1/4 male; JIC -6 male",
		"JIC -6 male x NPT 04 male":             "JIC -6 male; NPT 1/4 male",
		"JIC 6 male x NPT 4 male":               "JIC -6 male; NPT 1/4 male",
		"BSPP 04 male adaptor":                  "G 1/4 male",
		"JIC 08 x NPT 06 male male":             "JIC -8 male; NPT 3/8 male",
		"06-08 JIC m/m reducer":                 "JIC -6 male; JIC -8 male",
		"MORB-FNPT 08-04":                       "ORB -8 male; NPT 1/4 female",
		"JIC male to 1/4 NPT male, -6":          "JIC -6 male; NPT 1/4 male",
		"MI coupling 1/2 NPT":                   "NPT 1/2 female; NPT 1/2 female",
		"MI elbow 1/2 NPT female":               "NPT 1/2 female; NPT 1/2 female",
		"Metric poly x MI adaptor 25mm x 3/4":   "TUBE 25 mm?; PIPE 3/4 male plastic?",
		"manifold 3/4 FF, 3 outlets 1/2 M":      "PIPE 3/4 female?; PIPE 3/4 female?; PIPE 1/2 male?; PIPE 1/2 male?; PIPE 1/2 male?",
		"Verteiler 3/4 IG/AG 3 Abgänge 1/2 AG":  "PIPE 3/4 female?; PIPE 3/4 male?; PIPE 1/2 male?; PIPE 1/2 male?; PIPE 1/2 male?",
		"Jakotukki 3x1/2\" sk, runko 3/4 uk/sk": "PIPE 1/2 female?; PIPE 1/2 female?; PIPE 1/2 female?; PIPE 3/4 male?; PIPE 3/4 female?",
		"Distribution block 1/2\" BSPP in x 4-way 1/4\" BSPP out, all female": "G 1/2 female; G 1/4 female; G 1/4 female; G 1/4 female; G 1/4 female",
		"A: 1/4 B: 3/8 | Hose barb B x male NPT A":                            "BARB 1/4 in?; NPT 3/8 male?",
		"Soupape E : 3/8 NPT M, S : 3/8 NPT F":                                "NPT 3/8 male; NPT 3/8 female",
		"A: 1/4 NPT male, B: 3/8 barb":                                        "NPT 1/4 male; BARB 3/8 in",
		"Schlauchtülle DN20 x G 1/2 AG":                                       "BARB 20 mm; G 1/2 male",
		"DKR 3/8 DN10 Bogen":                                                  "G 3/8 female swivel cone-60; BARB 10 mm",
		"CES 16S DN12":                                                        "24S 16S male; BARB 12 mm",
		"JIC female 9/16 hose end":                                            "JIC -6 female; BARB ?",
		"adapter W21.8 female to 3/8 BSP male":                                "??; BSP 3/8 male?",
		"adapter 1/2 NPT female to XYZ12 male":                                "NPT 1/2 female",
		"adapter ACME female x 1/4 NPT male":                                  "NPT 1/4 female?; NPT 1/4 male",
		"valve 316, 3/8 NPT female 2x, 210 bar":                               "NPT 3/8 female; NPT 3/8 female",
		"Naaldventiel 3/8 NPT binnendraad 2x; PN 40":                          "NPT 3/8 female; NPT 3/8 female",
		"Nåleventil 316, 3/8 NPT invändig 2x, 210 bar":                        "NPT 3/8 female; NPT 3/8 female",
		"elbow 1/2 NPT male 2x, 10 pcs":                                       "NPT 1/2 male; NPT 1/2 male",
		"reducer 2 NPT female x 1 NPT male":                                   "NPT 2 female; NPT 1 male",
		"M10 by 1 male plug":                                                  "M M10x1 male",
		"M16 mal 1,5 AG Stutzen":                                              "M M16x1.5 male",
		"um joelho fêmea 1/2":                                                 "PIPE 1/2 female?; PIPE 1/2 female?",
		"3/4 UNF -8 ORB hex plug":                                             "ORB -8 male",
		"9/16 UNF -6 JIC female swivel x 1/4 NPT male":                        "JIC -6 female swivel; NPT 1/4 male",
		"tail piece 1\" male BSP to 3/4 nut":                                  "BSP 1 male?; BARB ?",
		"water meter tailpiece 1 inch nut x 3/4 NPT male":                     "BARB 1 in?; NPT 3/4 male",
		"быстросъём мама 1/4\" наружная резьба":                               "PIPE 1/4 male?",
		"tee 3x push-in 8":                                                    "PUSH 8 mm; PUSH 8 mm; PUSH 8 mm",
		"tee push-in 3x8":                                                     "PUSH 8 mm; PUSH 8 mm; PUSH 8 mm",
		"GE 12-L G 3/8":                                                       "24L 12L male?; G 3/8?",
		"T 10-S":                                                              "24S 10S male?; 24S 10S male?; 24S 10S male?",
		"SV 22-L":                                                             "24L 22L male?; 24L 22L male?",
		"fitting set 3/8 BSP male":                                            "BSP 3/8 male?",
		"Kugelhahn T-Bohrung 1/2\" IG":                                        "PIPE 1/2 female?; PIPE 1/2 female?",
		"Hose tail G 3/4 male x 3/4\" OD tube":                                "G 3/4 male; BARB 3/4 in?",
		"Push-in elbow 10 mm ID tube":                                         "PUSH 10 mm?; PUSH 10 mm?",
		"Push-in elbow 10 mm stem":                                            "PUSH 10 mm?; PUSH 10 mm?",
		"Adaptor 316 to suit 1/2 NPT male x -6 JIC male":                      "NPT 1/2?; JIC -6 male",
		"Flexible SAE 100R8 3/8\", lg 1200 mm, 1 embout 3/8 NPT mâle, 1 embout JIC 9/16-18 femelle tournant": "NPT 3/8 male; JIC -6 female swivel",
		"Linksgewinde: Überwurf M14x1, andere Seite G 1/4 AG":                                                "M M14x1 female swivel LH; G 1/4 male",
		"GZ lewy 1/2 nypel": "PIPE 1/2 male LH?; PIPE 1/2 male LH?",
		"SAE straight thread o-ring -10 male x 1/2 NPTF female": "ORB -10 male; NPTF 1/2 female",
		"JIC 9/16-18 F swivel / JIC 9/16-18 F swivel 90":        "JIC -6 female swivel; JIC -6 female swivel",
		"hose tail 3/8 male 1/4":                                "BARB 3/8 in; PIPE 1/4 male?",
		"ข้อต่อหางไหล 3/8\" เกลียวนอก 1/4\" สแตนเลส": "BARB 3/8 in; PIPE 1/4 male?",
		"Tê inox 1/4\" ren trong 3 đầu":                                            "PIPE 1/4 female?; PIPE 1/4 female?; PIPE 1/4 female?",
		"Korpus membrany 2521 NOWY 3 porty 1/2 NPT żeńskie":                        "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female",
		"Koljeno 3/8 UN / crijevo fi 10":                                           "PIPE 3/8 female?; BARB 10 mm",
		"ברז כדורי 3/4 פנים-פנים נירוסטה":                                          "PIPE 3/4 female?; PIPE 3/4 female?",
		"Тройник 1/2 Ж-М-Ж поцинкован":                                             "PIPE 1/2 female?; PIPE 1/2 male?; PIPE 1/2 female?",
		"Tee kuningan 1/4\" drat dalam semua - Rp18.000":                           "PIPE 1/4 female?; PIPE 1/4 female?; PIPE 1/4 female?",
		"PTFE braided hose -8, 6 ft, one end -8 JIC F 90, other -8 JIC F straight": "JIC -8 female; JIC -8 female",
		"Wye,15.67,Brass,3/4 MH,3/4 MH,3/4 FH":                                     "NH 3/4 male; NH 3/4 male; NH 3/4 female",
		"VALVULA ESFERA MINI MH 1''":                                               "PIPE 1 male?; PIPE 1 female?",
		"adapteri 1/2 NPT – G1/2, kummasta päästä uros en muista":                  "NPT 1/2?; G 1/2?",
		"T-stuk 3/4 bi x bi x bu RVS316":                                           "PIPE 3/4 female?; PIPE 3/4 female?; PIPE 3/4 male?",
		"كوع 1/2 ذكر × خرطوم 12 مم PN16":                                           "PIPE 1/2 male?; BARB 12 mm",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
	require.Equal(t, []string{"male (an end of which no size is said)"}, Read("adapter 1/2 NPT female to XYZ12 male").Unread, "the other end is named")
	require.Equal(t, "frp", Read("海水淡化膜壳 2540 玻璃钢").Material, "no steel")
}

// What a part is not for is kept in the tongues of the shops, and a pressure that is another part's, or of its making, rates nothing.
func TestLimitsOfManyTonguesAndPressuresOfOtherThings(t *testing.T) {
	for _, text := range []string{
		"ventil 1/2 G F nevhodné pro pitnou vodu", "ventil 1/2 nie do wody pitnej GW/GW", "kuglehane 1/2 muffe ikke til drikkevand",
		"кран 1/2 ВР не для питьевой воды", "vana 1/2 iç diş içme suyu için uygun değildir", "球阀 1/2 内丝 不可用于饮用水", "kraan 1/2 binnen niet voor drinkwater",
		"hana 1/2 sk ei juomavedelle", "kraan 1/2 binnen geen drinkwater", "Kugelhahn 1/2 IG kein Trinkwasser",
	} {
		require.NotEmpty(t, Read(text).Limits, text)
	}
	for text, bar := range map[string]float64{
		"ventil 1/2 bsp inv tål 20 bar": 20, "Клапан 1/2 ВР Рраб 210 бар": 210, "球阀 1/2 内丝 耐压 16 bar": 16, "valve 1/2 npt f takes 20 bar": 20,
		"adaptor 1/2 npt m x f crimped at 270 bar": 0, "adaptor 1/2 npt m x f safety factor 4 at 270 bar": 0,
	} {
		require.InDelta(t, bar, Read(text).Rated.Bar(), 0.01, text)
	}
}

// What stands beside the ends of a part and is none: hours, what a plug is for, what comes with the part, quantities, guesses; and ends that are said for others.
func TestWhatStandsBesideTheEnds(t *testing.T) {
	for text, want := range map[string]string{
		"Nipple 1/4 NPT, 24 h":                                                      "NPT 1/4 male; NPT 1/4 male",
		"Elbow 1/4 NPT male, 3 h":                                                   "NPT 1/4 male; NPT 1/4 male",
		"Solenoid G 1/4 male both ends, coil class H":                               "G 1/4 male; G 1/4 male",
		"Codo 1/2 h x m gas":                                                        "BSP 1/2 female?; BSP 1/2 male?",
		"bushing m jic 20 h jic 16":                                                 "JIC -20 male; JIC -16 female",
		"Plug for G 1/2 female":                                                     "G 1/2 male",
		"Cap for G 1/2 male":                                                        "G 1/2 female",
		"Male branch tee, run G 1/4 female, branch G 1/4 male":                      "G 1/4 female; G 1/4 female; G 1/4 male",
		"Tee G 1/2 male, G 1/4 female both ends":                                    "G 1/2 male; G 1/4 female; G 1/4 female",
		"Dreiwegeventil, Eingang G 1/2 IG, Ausgänge G 3/8 IG":                       "G 1/2 female; G 3/8 female; G 3/8 female",
		"Swivel tee G 1/4 male":                                                     "G 1/4 male swivel; G 1/4 male swivel?; G 1/4 male swivel?",
		"Push-in fitting, hose 8 mm, G 1/8 male":                                    "PUSH 8 mm; G 1/8 male",
		"Hose 10 mm x 12 mm push-in":                                                "BARB 10 mm; PUSH 12 mm",
		"Nut G 3/8 female, left hand thread":                                        "G 3/8 female LH",
		"Ball valve G 1/2 female both ends, with plug G 1/4":                        "G 1/2 female; G 1/2 female",
		"Schmutzfänger G 3/4 IG beidseitig, Ablassschraube G 1/4":                   "G 3/4 female; G 3/4 female",
		"Bonnet nut of needle valve M20x1.5 female":                                 "M M20x1.5 female",
		"Relief valve, in/out 1/4 NPT male x 3/8 NPT female":                        "NPT 1/4 male; NPT 3/8 female",
		"Adaptateur 1/2 NPT mâle x JIC 9/16-18 mâle, bouchons de protection inclus": "NPT 1/2 male; JIC -6 male",
		"2 - 3/4\" 90o elbow":                                                       "PIPE 3/4 female?; PIPE 3/4 female?",
		"Niple 3/4 x10 G":                                                           "PIPE 3/4 male?; PIPE 3/4 male?",
		"nipple 3/8ish npt":                                                         "NPT 3/8 male?; NPT 3/8 male?",
		"MANIFOLD BLOCK, 316L, (2) -8 ORB PORTS FEMALE, (4) 1/4 NPT PORTS FEMALE":   "ORB -8 female; ORB -8 female; NPT 1/4 female; NPT 1/4 female; NPT 1/4 female; NPT 1/4 female",
		"clamp for 1½-inch hose":                                                    "",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
	for text, bar := range map[string]float64{
		"Regulator G 1/2 female, 1 to 5 bar": 0, "Regulator G 1/2 female, inlet max 16 bar, outlet 1 to 6 bar": 16, "Regulator G 1/2 female, outlet 5 bar": 0,
		"relief valve 1/4 NPT male x 3/8 NPT female set 943 psi (65 bar), body 2000 psi max": 137.9, "hose 3/8 JIC 6 F, 1000 psi (69 bar)": 68.95,
	} {
		require.InDelta(t, bar, Read(text).Rated.Bar(), 0.05, text)
	}
	require.InDelta(t, 10, Read("pressure gauge 1/4 NPT male -1/10 bar").Pressures[0].Pressure.Bar(), 0.001, "the end of the scale, and no tenth")
	require.Empty(t, Read("Low pressure switch G 1/4 male").Limits)
	require.NotEmpty(t, Read("elbow 1/4 npt f low pressure").Limits)
}

// Lines that only look like those of a rule, and inputs that made the reader stop: what a review of the rules found.
func TestSoundLinesBesideTheRulesOfTables(t *testing.T) {
	for text, want := range map[string]string{
		"3-Wege-Ventil, Anschlüsse 1 und 3 G 1/4 IG, Anschluss 2 G 3/8 IG": "G 1/4 female; G 1/4 female; G 3/8 female",
		"valve, ports 1 and 3 G 1/4 female":                                "G 1/4 female; G 1/4 female",
		"02 BSPP plugs 1/4":                                                "G 1/4 male",
		"JIC 6 x 2 NPT male":                                               "JIC -6?; NPT 2 male",
		`Hose tail 25 mm / 1" BSP male`:                                    "BARB 25 mm; BSP 1 male?",
		"Nipple M08x1 male":                                                "M M8x1 male; M M8x1 male",
		"Ball valve 1/2 NPT, which has female ends":                        "NPT 1/2 female; NPT 1/2 female",
		"Adapter rustproof female x 1/2 NPT male":                          "NPT 1/2 female?; NPT 1/2 male",
		"M/S nipple 3/4 male":                                              "PIPE 3/4 male?; PIPE 3/4 male?",
		"Ball valve CA 1/2 NPT":                                            "NPT 1/2 female?; NPT 1/2 female?",
		"Valve DN15 ≈ 1/2 BSP female":                                      "BSP 1/2 female?; BSP 1/2 female?",
	} {
		require.Equal(t, want, briefAsked(Read(text).Ends), text)
	}
	require.Equal(t, "316", Read(`Vanne tank à lait 1" inox 316`).Material)
	require.True(t, Read("Hose assembly 3/8 2SN crimped 330 bar").HasRated)
	require.Empty(t, Read("Kugelhahn 1/2 IG, keine Wasserleckage").Limits)
	for _, text := range []string{"nipple 1/2 x acme male", "nipple or acme male to 1", "adaptor 1/2 x blurb female, GHT", "slip hose to G 1/2 x G", "nipple 1.5 x FNPT x ORFS male", "adapter W21.8 female x 1/2, GHT"} {
		require.NotPanics(t, func() { Read(text) }, text)
	}
}

// The commonest word of the trade takes no rating away in any tongue, and is none that was not read (the words: common practice).
func TestSeaWaterIsReadInEachTongue(t *testing.T) {
	for _, words := range []string{
		"for sea water", "für Meerwasser", "für Seewasser", "seewasserbeständig", "pour eau de mer", "per acqua di mare", "para agua de mar",
		"para água do mar", "voor zeewater", "för havsvatten", "til havvand", "for sjøvann", "merivedelle", "do wody morskiej",
		"для морской воды", "deniz suyu için", "για θαλασσινό νερό", "海水用",
	} {
		s := Read("Needle valve 316 3/8 NPT female both ends 200 bar " + words)
		require.Equal(t, 200*quantity.Bar, s.Rated, words)
		require.Empty(t, s.Unread, words)
	}
	for _, words := range []string{"not for sea water", "nicht für Meerwasser", "pas pour eau de mer", "nicht seewasserbeständig"} {
		require.NotEmpty(t, Read("Needle valve 316 3/8 NPT female both ends 200 bar "+words).Limits, words)
	}
}
