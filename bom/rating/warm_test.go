package rating_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
)

// A rating is lowered for the hotter of water and air, and outside its table it is
// said that nothing rates it.
func TestWarmRatings(t *testing.T) {
	const text = `
[build]
name = "x"
currency = "EUR"
[duty]
pressure = "4 bar"
%s
[[item]]
id = "left"
kind = "coupling"
material = "%s"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
rated = "10 bar"
[[hose]]
id = "hose"
spec = "SAE 100R8"
bore = '1/2"'
length = "1 m"
ends = ['1/2 NPT male', '1/2 NPT male']
[[run]]
name = "line"
path = ["left", "hose"]
`
	const hose = 241.3 // SAE 100R8 1/2 inch, 3500 psi (thermoplastic chart)
	for _, c := range []struct {
		why, duty, material string
		left, hose          float64
		outside             []string
		source              string
	}{
		{"nothing said of temperatures", "", "PVC", 10, hose, nil, "no factor"},
		{"cold water and cold air", "water = \"15 C\"\nspace = \"20 C\"", "PVC", 10, hose, nil, "factor 1 to 22.8 C"},
		{"warm air", "water = \"15 C\"\nspace = \"37.8 C\"", "PVC", 6.2, hose, nil, "Machinery's Handbook 31st edition p.2770 table 14: 0.62 at 100 F"},
		{"a plain word for PVC", "water = \"15 C\"\nspace = \"37.8 C\"", "grey uPVC", 6.2, hose, nil, "the same row"},
		{"warm water", "water = \"43.3 C\"\nspace = \"20 C\"", "PVC", 5, hose, nil, "the same table: 0.50 at 110 F"},
		{"metal does not mind", "space = \"60 C\"", "316", 10, hose, nil, "316 keeps all of its rating below 149 C"},
		{"too hot for threaded PVC, and in range for the hose", "water = \"20 C\"\nspace = \"70 C\"", "PVC", 5, hose, []string{"left"}, "the table ends at 43.3 C with 0.50, and beyond it no more is left"},
		{"too hot for the hose", "water = \"80 C\"\nspace = \"20 C\"", "316", 10, hose, []string{"hose"}, "EN 855 hose is taken like EN 853: water to 70 C"},
		{"a material of no table", "space = \"40 C\"", "acetal", 10, hose, []string{"left"}, "nothing is known"},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Walk(t, "x.toml", fmt.Sprintf(text, c.duty, c.material))
			hold := sys.Ratings.Port(built.Port(t, sys, "left.a"))
			require.InDelta(t, c.left, hold.Rating.Pressure.Bar(), 0.05, c.source)
			if c.left < 10 {
				require.Contains(t, hold.Rating.Text, "PVC", "the text says why it is lower")
			}
			require.InDelta(t, c.hose, sys.Ratings.Port(built.Port(t, sys, "hose.a")).Rating.Pressure.Bar(), 0.5)
			var outside []string
			for _, u := range sys.Graph.Units {
				if sys.Ratings.OutsideTemperature(u.Item) != nil {
					outside = append(outside, u.Name)
				}
			}
			require.Equal(t, c.outside, outside)
		})
	}
}

// Hose of no hose standard is lowered by the plastic that it is made of, a push-in fitting
// by what such ends keep, and a part of both by the lesser.
func TestWarmPlasticHoseAndPushIn(t *testing.T) {
	const text = `
[build]
name = "x"
currency = "EUR"
[duty]
water = "15 C"
space = "%s"
[[item]]
id = "stock"
kind = "hose stock"
outside = "10 mm"
%s
rated = "10 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[item]]
id = "fit"
kind = "coupling"
material = "%s"
ports = { a = '10 mm push-in', b = '10 mm push-in' }
rated = "16 bar"
[[run]]
name = "line"
path = ["hose", "fit"]
`
	for _, c := range []struct {
		why, space, stock, fit string
		hose, coupling         float64
		outside                []string
		source                 string
	}{
		{"cold", "20 C", `material = "PE"`, "pom", 10, 16, nil, "HDPE code tables, 20 C; plumbing textbook, to 30 C"},
		{"PE by its material", "45 C", `material = "PE"`, "pom", 6.8, 10, nil, "HDPE code tables, 45 C: 0.68; plumbing textbook: 10 of 16 bar to 65 C"},
		{"PVC by its spec", "37.8 C", `spec = "reinforced PVC"`, "brass", 6.2, 10, nil, "Machinery's Handbook 31st edition p.2770: 0.62 at 100 F"},
		{"the stock's words and its spec together: the weaker", "37.8 C", "material = \"PP\"\nspec = \"PVC cover\"", "brass", 6.2, 10, nil, "PP keeps 0.85"},
		{"a tube of metal does not mind", "60 C", `material = "316"`, "brass", 10, 10, nil, "316 keeps all of its rating below 149 C"},
		{"the fitting's own plastic is the weaker", "60 C", `material = "316"`, "PVC", 10, 16 * 0.22, nil, "Machinery's Handbook 31st edition p.2770: 0.22 at 140 F"},
		{"hotter still", "80 C", `material = "316"`, "pom", 10, 6, nil, "plumbing textbook: 6 of 16 bar to 90 C"},
		{"PE beyond its table", "80 C", `material = "PE"`, "pom", 5, 6, []string{"hose"}, "the table ends at 60 C with 0.50"},
		{"a plastic of no table", "45 C", `material = "nylon"`, "pom", 10, 10, []string{"hose"}, "nothing is known of nylon"},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Walk(t, "x.toml", fmt.Sprintf(text, c.space, c.stock, c.fit))
			require.InDelta(t, c.hose, sys.Ratings.Port(built.Port(t, sys, "hose.a")).Rating.Pressure.Bar(), 0.05, c.source)
			require.InDelta(t, c.coupling, sys.Ratings.Port(built.Port(t, sys, "fit.a")).Rating.Pressure.Bar(), 0.05, c.source)
			var outside []string
			for _, u := range sys.Graph.Units {
				if sys.Ratings.OutsideTemperature(u.Item) != nil {
					outside = append(outside, u.Name)
				}
			}
			require.Equal(t, c.outside, outside)
		})
	}
}

// A hose assembly holds what the least of hose and ends holds.
func TestHoseAssembly(t *testing.T) {
	const text = `
[build]
name = "x"
currency = "EUR"
[[hose]]
id = "hose"
spec = "EN 853 2SN"
bore = '%s'
length = "1 m"
ends = ['%s', '%s']
material = "%s"
[[item]]
id = "end"
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[run]]
name = "line"
path = ["hose", "end"]
`
	for _, c := range []struct {
		why, bore, a, b, material string
		want                      [2]float64
		source                    string
	}{
		{"the hose is the weaker", `1/2"`, "9/16-18 JIC female swivel", "1/2 NPT male", "steel", [2]float64{275, 275}, "2SN -8: 275 bar (per-bore size tables); JIC -6 of steel 5000 psi (memory of SAE J514)"},
		{"a cone of the light series is", `3/8"`, "12L female swivel", "1/2 NPT male", "steel", [2]float64{250, 330}, "2SN -6: 330 bar; ISO 8434-1 series L 12: 250 bar"},
		{"an end that is only estimated, and lower, rules", `3/8"`, "12L female swivel", "1/2 NPT male", "brass", [2]float64{125, 330}, "brass at half of ISO 8434-1 series L 12, 250 bar"},
	} {
		t.Run(c.why, func(t *testing.T) {
			sys := built.Walk(t, "x.toml", fmt.Sprintf(text, c.bore, c.a, c.b, c.material))
			for i, port := range []string{"hose.a", "hose.b"} {
				require.InDelta(t, c.want[i], sys.Ratings.Port(built.Port(t, sys, port)).Rating.Pressure.Bar(), 0.6, "%s: %s", port, c.source)
			}
		})
	}
}
