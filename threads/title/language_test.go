package title

import "testing"

// Every language with the parts that a fitter buys there: a valve, a nipple, an elbow, a
// tee, a tail, a bush, a plug. Written down before any was read (trade words: common practice).

func TestGermanLines(t *testing.T) {
	readTitled(t, []titled{
		{`Kugelhahn 3/4" IG Messing`, "PIPE 3/4 female; PIPE 3/4 female", "shut-off valve", "brass"},
		{`Doppelnippel 1/2" Edelstahl`, "PIPE 1/2 male; PIPE 1/2 male", "nipple", "stainless steel"},
		{`Reduziernippel 1" AG x 3/4" AG verzinkt`, "PIPE 1 male; PIPE 3/4 male", "nipple", "galvanised"},
		{`Schlauchtülle 1" AG x 25 mm`, "PIPE 1 male; BARB 25 mm", "hose tail", ""},
		{`Winkel 90° 1/2" IG/AG`, "PIPE 1/2 female; PIPE 1/2 male", "elbow", ""},
		{`T-Stück 3/4" IG Rotguss`, "PIPE 3/4 female; PIPE 3/4 female; PIPE 3/4 female", "tee", "bronze"},
		{`Rückschlagventil 1/2" IG`, "PIPE 1/2 female; PIPE 1/2 female", "check valve", ""},
		{`Manometer G 1/4 Ø 63 mm`, "G 1/4 male", "gauge", ""},
		{`Muffe 1 1/4" verzinkt`, "PIPE 1 1/4 female; PIPE 1 1/4 female", "coupling", "galvanised"},
		{`Verschlussstopfen 3/8" AG Messing`, "PIPE 3/8 male", "plug", "brass"},
		{`Verschlusskappe 1/2" IG`, "PIPE 1/2 female", "cap", ""},
		{`Reduzierstück 3/4" AG x 1/2" IG`, "PIPE 3/4 male; PIPE 1/2 female", "adaptor", ""},
	})
}

func TestFrenchLines(t *testing.T) {
	readTitled(t, []titled{
		{`Vanne à bille 1/2" femelle laiton`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Mamelon 3/4" laiton`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Coude 90° mâle/femelle 1/2" inox 316`, "PIPE 1/2 male; PIPE 1/2 female", "elbow", "316"},
		{`Té femelle 3/4"`, "PIPE 3/4 female; PIPE 3/4 female; PIPE 3/4 female", "tee", ""},
		{`Embout cannelé mâle 1/2" x 13 mm`, "PIPE 1/2 male; BARB 13 mm", "hose tail", ""},
		{`Bouchon mâle 1/4" laiton`, "PIPE 1/4 male", "plug", "brass"},
		{`Clapet anti-retour 1" femelle`, "PIPE 1 female; PIPE 1 female", "check valve", ""},
		{`Manchon 1" inox 304`, "PIPE 1 female; PIPE 1 female", "coupling", "304"},
		{`Mamelon 15/21 laiton`, "BSP 1/2 male; BSP 1/2 male", "nipple", "brass"},
		{`Coude femelle 20/27 laiton`, "BSP 3/4 female; BSP 3/4 female", "elbow", "brass"},
	})
}

func TestItalianLines(t *testing.T) {
	readTitled(t, []titled{
		{`Valvola a sfera 1/2" F/F ottone`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Nipplo 3/4" ottone`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Gomito 1/2" maschio/femmina ottone`, "PIPE 1/2 male; PIPE 1/2 female", "elbow", "brass"},
		{`Portagomma 1/2" maschio x 13 mm`, "PIPE 1/2 male; BARB 13 mm", "hose tail", ""},
		{`Manicotto 1" ottone`, "PIPE 1 female; PIPE 1 female", "coupling", "brass"},
		{`Tappo maschio 1/4" ottone`, "PIPE 1/4 male", "plug", "brass"},
		{`Tee 3/4" femmina acciaio inox`, "PIPE 3/4 female; PIPE 3/4 female; PIPE 3/4 female", "tee", "stainless steel"},
		{`Valvola di ritegno 1" femmina`, "PIPE 1 female; PIPE 1 female", "check valve", ""},
		{`Nipplo 1/2" gas conico`, "R 1/2 male; R 1/2 male", "nipple", ""},
		{`Manicotto 1/2" gas cilindrico`, "G 1/2 female; G 1/2 female", "coupling", ""},
	})
}

func TestSpanishAndPortugueseLines(t *testing.T) {
	readTitled(t, []titled{
		{`Válvula de bola 1/2" hembra latón`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Codo 90° 3/4" hembra-hembra latón`, "PIPE 3/4 female; PIPE 3/4 female", "elbow", "brass"},
		{`Niple 1/2" acero inoxidable 304`, "PIPE 1/2 male; PIPE 1/2 male", "nipple", "304"},
		{`Espiga 1/2" macho x 13 mm`, "PIPE 1/2 male; BARB 13 mm", "hose tail", ""},
		{`Tapón macho 1/4" latón`, "PIPE 1/4 male", "plug", "brass"},
		{`Te 3/4" hembra galvanizado`, "PIPE 3/4 female; PIPE 3/4 female; PIPE 3/4 female", "tee", "galvanised"},
		{`Válvula de esfera 1/2" fêmea latão`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Cotovelo 3/4" fêmea latão`, "PIPE 3/4 female; PIPE 3/4 female", "elbow", "brass"},
		{`Espigão 1/2" macho x 13 mm`, "PIPE 1/2 male; BARB 13 mm", "hose tail", ""},
		{`Niple 1/2" NPT aço inox`, "NPT 1/2 male; NPT 1/2 male", "nipple", "stainless steel"},
	})
}

func TestDutchAndNordicLines(t *testing.T) {
	readTitled(t, []titled{
		{`Kogelkraan 1/2" binnendraad messing`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Knie 3/4" binnendraad x buitendraad`, "PIPE 3/4 female; PIPE 3/4 male", "elbow", ""},
		{`Dubbele nippel 1/2" messing`, "PIPE 1/2 male; PIPE 1/2 male", "nipple", "brass"},
		{`Slangtule 3/4" buitendraad x 20 mm`, "PIPE 3/4 male; BARB 20 mm", "hose tail", ""},
		{`Kulventil 1/2" invändig gänga mässing`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Dubbelnippel 3/4" mässing`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Slangnippel 1/2" utvändig gänga x 13 mm`, "PIPE 1/2 male; BARB 13 mm", "hose tail", ""},
		{`Kuleventil 1/2" innvendig gjenge messing`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Slangestuss 3/4" utvendig gjenge x 19 mm`, "PIPE 3/4 male; BARB 19 mm", "hose tail", ""},
		{`Kuglehane 1/2" indvendig gevind messing`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Slangestuds 1/2" udvendigt gevind x 13 mm`, "PIPE 1/2 male; BARB 13 mm", "hose tail", ""},
		{`Palloventtiili 1/2" sisäkierre messinki`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Letkukara 3/4" ulkokierre x 19 mm`, "PIPE 3/4 male; BARB 19 mm", "hose tail", ""},
	})
}

func TestSlavicLines(t *testing.T) {
	readTitled(t, []titled{
		{`Zawór kulowy 1/2" GW/GW mosiądz`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Nypel 3/4" mosiądz`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Kolano 1/2" GW/GZ`, "PIPE 1/2 female; PIPE 1/2 male", "elbow", ""},
		{`Trójnik 3/4" GW mosiężny`, "PIPE 3/4 female; PIPE 3/4 female; PIPE 3/4 female", "tee", "brass"},
		{`Redukcja 3/4" GZ x 1/2" GW`, "PIPE 3/4 male; PIPE 1/2 female", "", ""},
		{`Kulový kohout 1/2" vnitřní závit mosaz`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Vsuvka 3/4" mosaz`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Koleno 1/2" vnitřní x vnější`, "PIPE 1/2 female; PIPE 1/2 male", "elbow", ""},
		{`Кран шаровой 1/2" ВР/ВР латунь`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Ниппель 3/4" латунь`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Угольник 1/2" ВР/НР`, "PIPE 1/2 female; PIPE 1/2 male", "elbow", ""},
		{`Тройник 3/4" ВР латунный`, "PIPE 3/4 female; PIPE 3/4 female; PIPE 3/4 female", "tee", "brass"},
		{`Футорка 3/4" НР x 1/2" ВР`, "PIPE 3/4 male; PIPE 1/2 female", "bush", ""},
		{`Кран кульовий 1/2" внутрішня різьба латунь`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Трійник 1/2" внутрішня різьба`, "PIPE 1/2 female; PIPE 1/2 female; PIPE 1/2 female", "tee", ""},
		{`Kuglasti ventil 1/2" unutarnji navoj`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", ""},
	})
}

func TestTurkishHungarianRomanianGreekLines(t *testing.T) {
	readTitled(t, []titled{
		{`Küresel vana 1/2" iç dişli pirinç`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Nipel 3/4" pirinç`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Dirsek 1/2" iç-dış dişli`, "PIPE 1/2 female; PIPE 1/2 male", "elbow", ""},
		{`Golyóscsap 1/2" BB`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", ""},
		{`Könyök 3/4" KB sárgaréz`, "PIPE 3/4 male; PIPE 3/4 female", "elbow", "brass"},
		{`Robinet cu bila 1/2" FI-FI alama`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Niplu 3/4" alama`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Μαστός 1/2" ορείχαλκος`, "PIPE 1/2 male; PIPE 1/2 male", "nipple", "brass"},
		{`Γωνία 1/2" θηλυκό`, "PIPE 1/2 female; PIPE 1/2 female", "elbow", ""},
	})
}

func TestAsianLines(t *testing.T) {
	readTitled(t, []titled{
		{`球阀 4分 内丝 铜`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`弯头 6分内丝 304`, "PIPE 3/4 female; PIPE 3/4 female", "elbow", "304"},
		{`对丝 4分 304`, "PIPE 1/2 male; PIPE 1/2 male", "nipple", "304"},
		{`三通 1寸 内丝`, "PIPE 1 female; PIPE 1 female; PIPE 1 female", "tee", ""},
		{`补芯 1寸外丝×6分内丝`, "PIPE 1 male; PIPE 3/4 female", "bush", ""},
		{`エルボ Rc3/8 SUS316`, "Rc 3/8 female; Rc 3/8 female", "elbow", "316"},
		{`六角ニップル R1/2 SUS304`, "R 1/2 male; R 1/2 male", "nipple", "304"},
		{`チーズ Rc1/2 SUS304`, "Rc 1/2 female; Rc 1/2 female; Rc 1/2 female", "tee", "304"},
		{`볼밸브 1/2" 암나사 황동`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`니플 3/4" 황동`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
		{`Van bi đồng 1/2" ren trong`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`Ball valve kuningan 1/2" drat dalam`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`บอลวาล์ว ทองเหลือง 1/2 นิ้ว เกลียวใน`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", "brass"},
		{`كوع 1/2 بوصة انثى نحاس`, "PIPE 1/2 female; PIPE 1/2 female", "elbow", "brass"},
		{`نبل 3/4 بوصة نحاس`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", "brass"},
	})
}

func TestEnglishLines(t *testing.T) {
	readTitled(t, []titled{
		{`Ball valve 1/2 BSP female bronze`, "BSP 1/2 female; BSP 1/2 female", "shut-off valve", "bronze"},
		{`Hex nipple 3/4" BSPT 316`, "R 3/4 male; R 3/4 male", "nipple", "316"},
		{`Elbow 90 1/2 NPT male x female brass`, "NPT 1/2 male; NPT 1/2 female", "elbow", "brass"},
		{`Equal tee 3/8 BSPP female brass`, "G 3/8 female; G 3/8 female; G 3/8 female", "tee", "brass"},
		{`Hosetail 1/2" BSP male x 13mm DZR`, "BSP 1/2 male; BARB 13 mm", "hose tail", "dzr"},
		{`Reducing bush 1" x 3/4" BSP brass`, "BSP 1 male; BSP 3/4 female", "bush", "brass"},
		{`Blanking plug 1/4 BSPP 316`, "G 1/4 male", "plug", "316"},
		{`Socket 1/2 NPT 316`, "NPT 1/2 female; NPT 1/2 female", "coupling", "316"},
		{`Street elbow 1/4 NPT brass`, "NPT 1/4 male; NPT 1/4 female", "elbow", "brass"},
		{`Non return valve 3/4 BSP female`, "BSP 3/4 female; BSP 3/4 female", "check valve", ""},
		{`Skin fitting 1 1/2 BSP bronze`, "BSP 1 1/2 male", "through-hull", "bronze"},
		{`Male connector 1/4 NPT x 10 mm push-in`, "NPT 1/4 male; PUSH 10 mm", "", ""},
		{`Compression elbow 15 mm x 1/2 BSP female`, "COMP 15 mm; BSP 1/2 female", "elbow", ""},
		{`Cross 1/2 NPT female 316`, "NPT 1/2 female; NPT 1/2 female; NPT 1/2 female; NPT 1/2 female", "cross", "316"},
		{`Cap 3/4 GHT brass`, "NH 3/4 female", "cap", "brass"},
	})
}
