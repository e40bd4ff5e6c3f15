package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Lines that people wrote who had not seen the reader's rules, each with what a fitter reads in it, written down before it was read;
// they were read wrong then. Common practice.

func TestAHoseWithItsEnds(t *testing.T) {
	readTitled(t, []titled{
		{`hose 3/8 JIC -6 female swivel both ends`, "JIC -6 female swivel; JIC -6 female swivel", "hose", ""},
		{`Hose 2 m 1/4 NPT female both ends`, "NPT 1/4 female; NPT 1/4 female", "hose", ""},
		{`Hose JIC 6 F both ends, 3/8 bore`, "JIC -6 female; JIC -6 female", "hose", ""},
		{`Hydraulic hose JIC 8 F both ends 1/2 R2AT`, "JIC -8 female; JIC -8 female", "hose", ""},
		{`Hose 1/2 R2 1/2 NPT F both ends`, "NPT 1/2 female; NPT 1/2 female", "hose", ""},
		{`hose 2T 3/8 JIC 06 female straight / JIC 06 female 90 elbow`, "JIC -6 female; JIC -6 female", "hose", ""},
		{`HP hose with 2 female JIC-6 ends`, "JIC -6 female; JIC -6 female", "hose", ""},
		{`HP hose JIC-6 F/ JIC-6 M 500 mm`, "JIC -6 female; JIC -6 male", "hose", ""},
		{`hi pressure hose 1/4 NPT male both ends`, "NPT 1/4 male; NPT 1/4 male", "hose", ""},
		{`hose w/ 3/4 GHT male & female ends`, "NH 3/4 male; NH 3/4 female", "hose", ""},
		{`mang. 1/2 FG JIC 08`, "BARB 1/2 in; JIC -8 female swivel", "", ""},
		{`Schlauch m. 1x M14x1,5 Überwurfmutter und 1x 1/4 NPT Außengew.`, "M M14x1.5 female swivel; NPT 1/4 male", "", ""},
		{`ORFS -6 fem swivel x ORFS -6 fem swivel hose, 30 in`, "ORFS -6 female swivel; ORFS -6 female swivel", "hose", ""},
		{`Hose JIC 6 F`, "JIC -6 female", "hose", ""},
		{`10 ft of 3/8" high pressure hose, no ends`, "", "hose stock", ""},
		{`19mm raw water hose $14.90/m`, "", "hose stock", ""},
	})
	r := Read(`Hose JIC 6 F one end, other end bare`)
	require.Equal(t, "JIC -6 female", brief(r.Ends))
	require.Contains(t, strings.Join(r.Unread, ";"), "no fitting")
	require.Contains(t, strings.Join(Read(`Stainless PTFE hose, JIC 37 female`).Unread, ";"), "JIC 37")
}

func TestCountsAreNoSizes(t *testing.T) {
	readTitled(t, []titled{
		{`1 x 1/2 NPT nipple`, "NPT 1/2 male; NPT 1/2 male", "nipple", ""},
		{`Bush 1 x 3/4 NPT`, "NPT 1 male; NPT 3/4 female", "bush", ""},
		{`Pressure vessel 2 x 1/2 NPT F, 1 x 1/4 NPT F`, "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female", "pressure vessel", ""},
		{`Elbow 1/2 NPT F 2/pack`, "NPT 1/2 female; NPT 1/2 female", "elbow", ""},
		{`Ball valve 1/2 NPT F 2 no.`, "NPT 1/2 female; NPT 1/2 female", "shut-off valve", ""},
		{`Pump 1/2 NPT F with 2 nipples`, "NPT 1/2 female; NPT 1/2 female", "feed pump", ""},
		{`2 JIC 6 caps`, "JIC -6 female", "cap", ""},
		{`2 NPT plugs 1/4`, "NPT 1/4 male", "plug", ""},
		{`3/8 BSPP male / 3/8 NPT male x 2 + seals`, "G 3/8 male; NPT 3/8 male", "", ""},
		{`ball valve 1/2 NPT female $12/m`, "NPT 1/2 female; NPT 1/2 female", "shut-off valve", ""},
		{`Satz 4 Doppelnippel G 1/2`, "G 1/2 male; G 1/2 male", "nipple", ""},
	})
	for _, text := range []string{`Nipple hex 1/2 BSP R38.50 ea`, `1/2 BSP nipple R1,250.00`} {
		for _, e := range Read(text).Ends {
			require.Contains(t, e.Question, "parallel (G) or taper (R)", text) // a price in rand is no thread
		}
	}
}

func TestWhatComesWithAPartIsNoPart(t *testing.T) {
	readTitled(t, []titled{
		{`-8 ORB male x 3/8 FNPT straight (o-ring incl.)`, "ORB -8 male; NPT 3/8 female o-ring", "", ""},
		{`o rings for membrane end plugs 3 sets`, "", "", ""},
		{`Bulkhead conn 8mm-8mm pushfit grey, drill 17mm`, "PUSH 8 mm; PUSH 8 mm", "bulkhead", ""},
		{`adaptor 1/4 BSP male with bonded seal x 1/4 NPT female`, "G 1/4 male washer; NPT 1/4 female", "adaptor", ""},
		{`Strainer 3/4 NPT F with 2 hose tails`, "NPT 3/4 female; NPT 3/4 female", "strainer", ""},
		{`Feed pump with 3/4 hose barbs`, "BARB 3/4 in; BARB 3/4 in", "feed pump", ""},
		{`Filter housing with gauge 3/4 NPT`, "NPT 3/4 female; NPT 3/4 female", "filter housing", ""},
		{`Ball valve 1/2 NPT F/F with 1/4 NPT F gauge port`, "NPT 1/2 female; NPT 1/2 female; NPT 1/4 female", "shut-off valve", ""},
	})
	require.Contains(t, Read(`Plug 1/4 bsp c/w bonded seal`).Ends[0].Question, "washer")
	require.Contains(t, strings.Join(Read(`Relief valve 3/8 NPT M with spring`).Unread, ";"), "the other port")
}

func TestSidesAndTheirSexes(t *testing.T) {
	readTitled(t, []titled{
		{`tee 1/2 NPT female run, male branch`, "NPT 1/2 female; NPT 1/2 female; NPT 1/2 male", "tee", ""},
		{`tee 1/2 NPT, f/f with male on the branch`, "NPT 1/2 female; NPT 1/2 female; NPT 1/2 male", "tee", ""},
		{`T-Stück NPT 1/2 IG, Abgang AG`, "NPT 1/2 female; NPT 1/2 female; NPT 1/2 male", "tee", ""},
		{`tee 3/8 NPT m x 3/8 NPT f, 3/8 NPT f on the branch`, "NPT 3/8 male; NPT 3/8 female; NPT 3/8 female", "tee", ""},
		{`adapter is outside G1/2 and inside M18*1.5`, "G 1/2 male; M M18x1.5 female", "adaptor", ""},
		{`Adapter 1/4" AG x JIC 7/16 AG`, "PIPE 1/4 male; JIC -4 male", "adaptor", ""},
		{`male connector 1/4 OD tube x 1/4 NPT`, "TUBE 1/4 in; NPT 1/4 male", "adaptor", ""},
		{`Male elbow 12L DKOL`, "24L 12L male; 24L 12L female swivel cone-o-ring", "elbow", ""},
		{`hi, male-male adaptor 1/2 NPT to 1/2 BSPP`, "NPT 1/2 male; G 1/2 male", "adaptor", ""},
		{`1/2 BSP ball valve FF`, "BSP 1/2 female; BSP 1/2 female", "shut-off valve", ""},
	})
}

func TestTubesTailsAndThreadsBesideEachOther(t *testing.T) {
	readTitled(t, []titled{
		{`Steckwinkel 8 mm G 1/4 AG`, "TUBE 8 mm; G 1/4 male", "elbow", ""},
		{`Hose tail 1/2" NPT 13mm`, "NPT 1/2 male; BARB 13 mm", "hose tail", ""},
		{`1-1/4inMIPx3/4inFIP Reducer Bushing`, "NPT 1 1/4 male; NPT 3/4 female", "bush", ""},
		{`1/2FPTx16mmBARB`, "NPT 1/2 female; BARB 16 mm", "", ""},
		{`TUBE FTG,MALE CONN,1/4T X 1/4 MNPT,316SS`, "TUBE 1/4 in; NPT 1/4 male", "adaptor", "316"},
		{`316L Ferrule Tube Fitting Male Connector 12mm OD x 1/2 NPT`, "COMP 12 mm; NPT 1/2 male", "tube fitting", ""},
		{`push-in fitting 4 mm – M5 (PC4-M5)`, "PUSH 4 mm; M M5x0.8 male", "adaptor", ""},
		{`hose joiner 19-19mm nylon`, "BARB 19 mm; BARB 19 mm", "coupling", ""},
		{`Hose reducer 19-13mm`, "BARB 19 mm; BARB 13 mm", "", ""},
		{`12x1,5 AG Nippel`, "M M12x1.5 male; M M12x1.5 male", "nipple", ""},
		{`JIC elbow 6 M x 1/4 NPT M`, "JIC -6 male; NPT 1/4 male", "elbow", ""},
		{`Membrane housing 2.5" 1/2 NPT F ports`, "NPT 1/2 female; NPT 1/2 female", "pressure vessel", ""},
		{`Tankdurchführung G 3/4 IG/AG mit Mutter`, "G 3/4 female; G 3/4 male", "bulkhead", ""},
		{`1/2 MHT x 1/2 FPT boiler drain valve`, "NH 3/4 male; NPT 1/2 female", "shut-off valve", ""},
	})
	require.Contains(t, Read(`Cople 5/8`).Ends[0].Question, "outside of a tube")
	require.Contains(t, Read(`R1 codo 110 mm`).Ends[0].Question, "numbers the part by")
}
