package title

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Every material as shops name it. Numbers: EN 10088 and EN 10213 (1.44.. and 1.43.. are the
// 316 and 304 of AISI), EN 12164 (CW602N resists the loss of zinc), others common practice.
func TestMaterialsByTheirNames(t *testing.T) {
	for want, names := range map[string][]string{
		"316":             {"316", "316L", "SS316", "AISI 316", "1.4401", "1.4404", "1.4571", "V4A", "inox 316", "316 stainless", "CF8M"},
		"304":             {"304", "SS304", "AISI 304", "1.4301", "V2A", "SUS304", "inox 304"},
		"stainless steel": {"stainless", "Edelstahl", "inox", "acier inoxydable", "acero inoxidable", "s/s"},
		"dzr":             {"DZR", "CR brass", "CW602N", "entzinkungsbeständig"},
		"brass":           {"brass", "Messing", "laiton", "ottone", "latón", "latão", "mässing", "mosiądz", "mosaz", "латунь", "pirinç", "黄铜", "황동"},
		"bronze":          {"bronze", "gunmetal", "Rotguss", "bronzo", "brons", "brąz", "бронза"},
		"pp":              {"PP", "polypropylene", "polipropileno"},
		"pvc":             {"PVC", "uPVC", "PVC-U", "CPVC"},
		"pa":              {"PA", "nylon", "polyamide", "PA66"},
		"pom":             {"POM", "acetal"},
		"pe":              {"HDPE", "polyethylene", "PE100"},
		"pvdf":            {"PVDF"},
		"abs":             {"ABS"},
		"duplex":          {"duplex", "2205", "1.4462", "UNS S31803"},
		"super duplex":    {"super duplex", "superduplex", "2507", "1.4410", "UNS S32750", "F53"},
		"nickel-copper":   {"alloy 400"},
		"titanium":        {"titanium", "Titan", "titane"},
		"copper":          {"copper", "Kupfer", "cuivre", "rame"},
		"aluminium":       {"aluminium", "aluminum", "alu"},
		"malleable iron":  {"malleable iron", "Temperguss", "ghisa", "fonte"},
		"carbon steel":    {"carbon steel", "Stahl", "acier", "acciaio", "acero", "сталь"},
		"galvanised":      {"galvanised", "galv", "verzinkt", "zincato", "galvanisé"},
	} {
		for _, name := range names {
			r := Read(name + " elbow 1/2 NPT female")
			require.Equal(t, want, r.Material, name)
			require.Equal(t, "NPT 1/2 female; NPT 1/2 female", strings.ReplaceAll(brief(r.Ends), " plastic", ""), name)
		}
	}
}

// Of two names the closer one holds, in either order: a grade before its steel, a metal before
// its plating, a metal before the rubber of its seal.
func TestTheCloserMaterialHolds(t *testing.T) {
	for _, row := range []struct{ a, b, want string }{
		{"stainless steel", "316", "316"},
		{"steel", "stainless steel", "stainless steel"},
		{"galvanised", "malleable iron", "malleable iron"},
		{"brass", "EPDM", "brass"},
		{"plastic", "PP", "pp"},
		{"galvanised", "steel", "carbon steel"},
		{"Edelstahl", "1.4301", "304"},
		{"rubber", "brass", "brass"},
	} {
		for _, text := range []string{row.a + " elbow 1/2 NPT female " + row.b, row.b + " elbow 1/2 NPT female " + row.a, "elbow 1/2 NPT female " + row.a + ", " + row.b} {
			require.Equal(t, row.want, Read(text).Material, text)
		}
	}
}

// Where no material is said none is: unknown is not brass.
func TestNoMaterialIsSupposed(t *testing.T) {
	for _, text := range []string{"Elbow 1/2 NPT female", "Doppelnippel 1/2\"", "Hose tail 3/4 BSP male x 19 mm", "Gauge G 1/4 160 bar"} {
		require.Empty(t, Read(text).Material, text)
	}
}

// A name of a part that holds its material's name keeps the material: a copper washer is of
// copper. Names that only look so stand here with the reason.
func TestAPartsNameKeepsItsMaterial(t *testing.T) {
	other := map[string]string{
		"đồng hồ":    "a gauge: the two words together",
		"flexible":   "the braid of a hose and not what water touches",
		"flessibile": "the braid of a hose",
		"ống mềm":    "the braid of a hose",
		"slang per":  "hose by the metre",
		"bout ":      "no fitting", "tige ": "no fitting", "vis ": "no fitting",
		"colle ": "a glue for it", "cola ": "a glue for it", "cemento ": "a glue for it", "porta gomma": "a tail for it", "giunzione tubo gomma": "a joint for it",
		"ptfe": "sealing tape, of which the kind says it", "ruban": "sealing tape",
	}
	materials := map[string]string{}
	for _, r := range lexiconRows("material.csv") {
		for _, w := range strings.Split(r["words"], "|") {
			materials[w] = r["value"]
		}
	}
	seen := 0
	for _, r := range lexiconRows("kind.csv") {
		for _, name := range strings.Split(r["words"], "|") {
			words := strings.Fields(strings.Trim(name, "*"))
			for _, w := range words {
				want, ok := materials[w]
				if !ok || len(words) < 2 || len([]rune(w)) < 2 || slices.ContainsFunc(keysOf(other), func(k string) bool { return strings.Contains(name, k) }) {
					continue
				}
				seen++
				require.Equal(t, want, Read(name+" 1/2\"").Material, name)
			}
		}
	}
	require.Greater(t, seen, 20)
}

func keysOf(m map[string]string) []string {
	var out []string
	for k := range m {
		out = append(out, k)
	}
	return out
}

// A forging or casting grade says its steel (ASTM A182, A351), and is no female end.
func TestGradesSayTheirSteel(t *testing.T) {
	for _, row := range []struct{ text, grade, material string }{
		{"Elbow 1/2 NPT F316", "F316", "316"},
		{"Elbow 1/2 NPT F304", "F304", "304"},
		{"Elbow 1/2 NPT F316L", "F316L", "316"},
		{"Ball valve 1/2 NPT CF8M", "CF8M", "316"},
		{"Ball valve 1/2 NPT CF8", "CF8", "304"},
		{"Tee 1/2 NPT A182 F316", "A182 F316", "316"},
		{"Tee 1/2 NPT 316", "", "316"},
	} {
		r := Read(row.text)
		require.Equal(t, row.grade, r.Grade, row.text)
		require.Equal(t, row.material, r.Material, row.text)
		require.NotContains(t, brief(r.Ends), "female; NPT 1/2 female; NPT 1/2 female; NPT", row.text)
	}
}
