package read

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/build"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

func itemOf(t *testing.T, lines string) (*build.Item, string) {
	t.Helper()
	text := "[build]\nname = \"Stated\"\ncurrency = \"EUR\"\n\n[[item]]\nid = \"part\"\n" + lines + `
[[item]]
id = "n"
kind = "nipple"
ports = { a = '1/2 NPT male', b = '1/2 NPT male' }

[[item]]
id = "c"
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }

[[run]]
name = "one"
path = ["n", "c"]
`
	b, faults := Parse("stated.toml", []byte(text))
	if len(faults) > 0 {
		return nil, faults.Error()
	}
	return b.ByID["part"], ""
}

// What a title states is used as if it stood in its key.
func TestTitlesAreUsedLikeKeys(t *testing.T) {
	it, fault := itemOf(t, "title = \"Elbow 1/2 NPT male x 1/2 NPT female F316 3000# sch 80 PN40 tested to 90 bar ASME B16.11 80 C\"\n")
	require.Empty(t, fault)
	require.Equal(t, "elbow", it.Kind.Name)
	require.Equal(t, "316", it.Material)
	require.Equal(t, "class 3000 schedule 80", it.Class)
	require.InDelta(t, 40, it.Rated.Bar(), 1e-9)
	var words []string
	for _, n := range it.NotUsed {
		words = append(words, n.Words)
	}
	require.Equal(t, []string{"90 bar", "ASME B16.11", "80 C"}, words)

	it, fault = itemOf(t, "title = \"Relief valve 1/2 NPT female set 62 bar 316\"\n")
	require.Empty(t, fault)
	require.InDelta(t, 62, it.Set.Bar(), 1e-9)
	require.Nil(t, it.Rated)

	it, fault = itemOf(t, "title = \"Pressure gauge 1/4 NPT male 0-100 bar\"\n")
	require.Empty(t, fault)
	require.InDelta(t, 100, it.Scale.Bar(), 1e-9)
}

// A title's figure beside a key that says another is a fault that names both.
func TestTitlesThatContradictTheirKeysAreFaults(t *testing.T) {
	for _, row := range []struct{ why, lines, names string }{
		{"class", "title = \"Elbow 1/2 NPT male x female class 150\"\nclass = \"class 3000\"\n", "the title says class 150, and `class` says class 3000"},
		{"rating", "title = \"Elbow 1/2 NPT male x female PN16\"\nrated = \"55 bar\"\n", "the title rates the part at 16 bar, and `rated` says 55 bar"},
		{"setting", "title = \"Relief valve 1/2 NPT female set 62 bar\"\nset = \"70 bar\"\n", "the title sets the part at 62 bar, and `set` says 70 bar"},
		{"scale", "title = \"Gauge 1/4 NPT male 0-100 bar\"\nscale = \"160 bar\"\n", "the title gives a scale to 100 bar, and `scale` says 160 bar"},
	} {
		t.Run(row.why, func(t *testing.T) {
			_, fault := itemOf(t, row.lines)
			require.Contains(t, fault, row.names)
		})
	}
	for _, lines := range []string{
		"title = \"Elbow 1/2 NPT male x female class 3000\"\nclass = \"ASME B16.11 class 3000\"\n",
		"title = \"Valve 1/2 NPT female 1000 WOG\"\nkind = \"shut-off valve\"\nrated = \"69 bar\"\n",
	} {
		_, fault := itemOf(t, lines)
		require.Empty(t, fault)
	}
}

// A description is no key: what it states beside the keys and against them is named, of an item and of a
// hose alike; what a key says too is not.
func TestWhatADescriptionStatesIsNamed(t *testing.T) {
	for _, row := range []struct{ why, lines, named string }{
		{"a rating", "kind = \"elbow\"\nrated = \"90 bar\"\nabout = \"PN 40\"\n", "40 bar"},
		{"what it may not be used for", "kind = \"elbow\"\nabout = \"oil only\"\n", "oil only"},
		{"that it is not rated", "kind = \"elbow\"\nabout = \"cast, not rated\"\n", "not rated"},
		{"the same in another language", "kind = \"elbow\"\nabout = \"nicht für Trinkwasser\"\n", "nicht für Trinkwasser"},
		{"a left hand", "kind = \"elbow\"\nabout = \"left-hand thread\"\n", "left-hand"},
		{"a material", "kind = \"elbow\"\nmaterial = \"316\"\nabout = \"brass\"\n", "brass"},
		{"a forging grade", "kind = \"elbow\"\nmaterial = \"316\"\nabout = \"carbon steel, A105\"\n", "steel or iron"},
		{"a fineness", "kind = \"filter housing\"\nmicron = \"5 micron\"\nabout = \"50 micron\"\n", "50 micron"},
		{"a flow", "kind = \"feed pump\"\nflow = \"14 L/min\"\nabout = \"diaphragm pump, 20 L/min\"\n", "20 L/min"},
		{"volts", "kind = \"feed pump\"\nmotor = \"24 V DC\"\nabout = \"12 V DC\"\n", "12 V"},
		{"a bore", "kind = \"hose stock\"\nbore = \"19 mm\"\nabout = \"16 mm bore\"\n", "16 mm"},
		{"a temperature", "kind = \"hose stock\"\nbore = \"19 mm\"\nabout = \"water hose, max 30 °C\"\n", "30 °C"},
		{"a thread", "kind = \"elbow\"\nports = { a = '3/8 NPT male', b = '3/8 NPT female' }\nabout = \"1/2 NPT female\"\n", "1/2 NPT female"},
	} {
		t.Run(row.why, func(t *testing.T) {
			it, fault := itemOf(t, row.lines)
			require.Empty(t, fault)
			require.Len(t, it.NotUsed, 1)
			require.Equal(t, row.named, it.NotUsed[0].Words)
			require.Contains(t, it.NotUsed[0].Why, map[bool]string{true: "a temperature", false: "in `about`"}[row.why == "a temperature"])
		})
	}
	for _, lines := range []string{
		"kind = \"elbow\"\nmaterial = \"316\"\nabout = \"forged, A182 F316, stainless\"\n",
		"kind = \"filter housing\"\nmicron = \"5 micron\"\nabout = \"10 inch housing, 5 µm\"\n",
		"kind = \"feed pump\"\nflow = \"14 L/min\"\nabout = \"840 L/h, 24 V\"\n",
		"kind = \"hose stock\"\nbore = '3/4\"'\nabout = \"19 mm bore\"\n",
		"kind = \"elbow\"\nports = { a = '3/8 NPT male', b = '3/8 NPT female' }\nabout = \"3/8 NPT\"\n",
	} {
		it, fault := itemOf(t, lines)
		require.Empty(t, fault)
		require.Empty(t, it.NotUsed, lines)
	}
	b, faults := Parse("stated.toml", []byte("[build]\nname = \"Stated\"\ncurrency = \"EUR\"\n[[hose]]\nid = \"h\"\nlength = \"1 m\"\nspec = \"SAE 100R8\"\nbore = '3/8\"'\nabout = \"100R6, max 60 bar\"\nends = ['3/8 NPT male', '3/8 NPT male']\n[[item]]\nid = \"c\"\nkind = \"coupling\"\nports = { a = '3/8 NPT female', b = '3/8 NPT female' }\n[[run]]\nname = \"one\"\npath = [\"h\", \"c\"]\n"))
	require.Empty(t, faults)
	require.Len(t, b.ByID["h"].NotUsed, 2)
}

// The ends that a title names are compared with the ports beside it.
func TestTheEndsOfATitleAndThePorts(t *testing.T) {
	const ports = "kind = \"nipple\"\nmaterial = \"316\"\nports = { a = '3/8 NPT male', b = '3/8 NPT male' }\n"
	for _, title := range []string{"Nipple 1/2 NPT male x 3/8 NPT male 316", "Nipple 3/8 BSPT male x 3/8 BSPT male 316", "Nipple G 3/8 male x 3/8 NPT male"} {
		_, fault := itemOf(t, ports+"title = \""+title+"\"\n")
		require.Contains(t, fault, "and none of `ports` is one", title)
	}
	for _, title := range []string{"Nipple 3/8 NPT left hand male x 3/8 NPT male", "Nipple 3/8 NPT male x 3/8 NPT female"} {
		it, fault := itemOf(t, ports+"title = \""+title+"\"\n")
		require.Empty(t, fault, title)
		require.NotEmpty(t, it.NotUsed, title)
		require.Equal(t, "an end of the title that no port has", it.NotUsed[len(it.NotUsed)-1].Why, title)
	}
	for _, title := range []string{"Nipple 3/8 NPT 316", "Hexagon nipple 3/8\\\" NPT male x 3/8\\\" NPT male", "Nipple 3/8, 316", "Nipple 316"} {
		it, fault := itemOf(t, ports+"title = \""+title+"\"\n")
		require.Empty(t, fault, title)
		require.Empty(t, it.NotUsed, title)
	}
}

// A title without a kind is asked with guesses, and the whole list is not repeated.
func TestTitlesWithoutAKindAreAskedWithGuesses(t *testing.T) {
	text := "[build]\nname = \"Stated\"\n"
	for _, id := range []string{"a", "b", "c"} {
		text += "\n[[item]]\nid = \"" + id + "\"\ntitle = \"1/2 NPT male x 1/2 NPT female 316\"\n"
	}
	_, err := Parse("stated.toml", []byte(text))
	require.Error(t, err)
	require.Equal(t, 3, strings.Count(err.Error(), "likely one of `adaptor`"))
	require.NotContains(t, err.Error(), "plunger pump")
}
