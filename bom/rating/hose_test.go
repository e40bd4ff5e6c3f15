package rating_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/internal/built"
	"handtight/pressure"
)

// assembly is a made-up hose on high pressure, of which the cases say the rest.
const assembly = `
[build]
name = "x"
currency = "EUR"
[[hose]]
id = "hose"
bore = '1/4"'
length = "1 m"
ends = ['%s', '%[1]s']
%s
[[item]]
id = "end"
kind = "coupling"
ports = { a = '1/2 NPT female', b = '1/2 NPT female' }
[[run]]
name = "line"
path = ["hose", "end"]
`

// The end fittings of a made-up hose: what is rated by a standard lowers it, what is
// estimated lowers it as an estimate, and neither rates a hose of which nothing is known.
func TestHoseEnds(t *testing.T) {
	const jic, npt = "-4 JIC female swivel", "1/4 NPT male"
	for _, c := range []struct {
		why, end, says string
		want           float64 // 0: not known
		basis          pressure.Basis
		source         string
	}{
		{"nothing said of the ends", jic, `spec = "2SN"`, 400, pressure.HoseStandard, "EN 853 2SN -4, per-bore hose size tables"},
		{"brass ends are estimated, and lower", jic, "spec = \"2SN\"\nmaterial = \"nylon core, brass ends\"", 155.1, pressure.Estimate, "half of SAE J514 -4 female swivel, 4500 psi"},
		{"so are ends of 316", jic, "spec = \"2SN\"\nmaterial = \"316 ends\"", 310.3, pressure.Estimate, "SAE J514 -4 female swivel, 4500 psi, carried to 316"},
		{"a braid of another metal is no end", jic, "spec = \"2SN\"\nmaterial = \"316 braid, brass ends\"", 155.1, pressure.Estimate, "the ends' own"},
		{"ends of two metals: the weaker", jic, "spec = \"2SN\"\nmaterial = \"brass and 316 ends\"", 155.1, pressure.Estimate, "the brass one"},
		{"an estimate that is higher changes nothing", jic, "spec = \"100R6\"\nmaterial = \"brass ends\"", 28, pressure.MakersSeries, "SAE 100R6 -4, per-bore hose size tables"},
		{"good ends make no better hose of a maker's series", npt, "spec = \"100R6\"\nclass = \"class 150\"\nmaterial = \"316 ends\"", 20.7, pressure.MakersSeries, "the ends' figure, and still no standard's for the hose"},
		{"a data sheet has the word over an estimate", jic, "spec = \"2SN\"\nrated = \"300 bar\"\nmaterial = \"brass ends\"", 300, pressure.DataSheet, "the data sheet of the assembly"},
		{"ends by their class", npt, "spec = \"2SN\"\nclass = \"class 3000\"\nmaterial = \"316 ends\"", 210, pressure.FittingClass, `page "3000 series"`},
		{"the trap, in a hose", npt, "spec = \"2SN\"\nclass = \"class 150\"\nmaterial = \"316 ends\"", 20.7, pressure.FittingClass, "MSS SP-114, 300 psi"},
		{"a class below the data sheet", npt, "rated = \"100 bar\"\nclass = \"class 150\"\nmaterial = \"316 ends\"", 20.7, pressure.FittingClass, "the lower rules"},
		{"a class worked out from the wall, and lower", npt, "spec = \"2SN\"\nclass = \"class 2000\"\nmaterial = \"316 ends\"", 210, pressure.Estimate, "no more than class 3000"},
		{"good ends rate no unknown hose", npt, "class = \"class 3000\"\nmaterial = \"316 ends\"", 0, 0, "nothing tells of the hose"},
	} {
		t.Run(c.why, func(t *testing.T) {
			h := built.Walk(t, "x.toml", fmt.Sprintf(assembly, c.end, c.says)).Ratings.Port(0)
			require.Equal(t, c.want != 0, h.Known)
			require.InDelta(t, c.want, h.Rating.Pressure.Bar(), 0.05, "%s; %s", h.Rating, c.source)
			require.Equal(t, c.basis, h.Rating.Basis)
			require.Equal(t, c.basis.Guess(), h.Estimate)
		})
	}
}

// Pipe and tube are rated by what their stock says.
func TestPipeAndTubeStock(t *testing.T) {
	const text = `
[build]
name = "x"
currency = "EUR"
[[item]]
id = "stock"
kind = "hose stock"
%s
[[hose]]
id = "pipe"
of = "stock"
length = "2 m"
[[item]]
id = "end"
kind = "drain"
[[run]]
name = "line"
path = ["pipe", "end"]
`
	for _, c := range []struct {
		why, stock string
		want       float64
		basis      pressure.Basis
		source     string
	}{
		{"PE pipe by its spec", "outside = \"20 mm\"\nspec = \"PE100 SDR 11\"", 16, pressure.TubeTable, "ISO 4427: 20 x 10 / (1.25 x 10)"},
		{"by its class and its material", "outside = \"20 mm\"\nclass = \"SDR 17\"\nmaterial = \"PE100\"", 10, pressure.TubeTable, "ISO 4427: 20 x 10 / (1.25 x 16)"},
		{"by its PN", "outside = \"20 mm\"\nclass = \"PN 10\"\nmaterial = \"PE\"", 10, pressure.FittingClass, "EN 1333"},
		{"PE of a grade not said", "outside = \"20 mm\"\nclass = \"SDR 11\"\nmaterial = \"PE\"", 0, 0, "PE80 holds less than PE100"},
		{"tube of the table", "outside = \"3/8 in\"\nwall = \"0.049 in\"\nmaterial = \"316\"", 330.9, pressure.TubeTable, `page "NPT pipe end pressure ratings" table 1, 4800 psi`},
		// 2 x 138 MPa x 1.3125 / (10 - 0.8 x 1.3125): a wall of 1.5 mm less 12.5 %
		{"tube in millimetres is estimated", "outside = \"10 mm\"\nwall = \"1.5 mm\"\nmaterial = \"316\"", 404.5, pressure.Estimate, "ASME B31.3 304.1.2"},
		{"without its wall nothing is known", "outside = \"10 mm\"\nmaterial = \"316\"", 0, 0, "no table"},
		{"the wall of a plastic tells nothing", "outside = \"10 mm\"\nwall = \"1.5 mm\"\nmaterial = \"nylon\"", 0, 0, "no table"},
	} {
		t.Run(c.why, func(t *testing.T) {
			h := built.Walk(t, "x.toml", fmt.Sprintf(text, c.stock)).Ratings.Port(0)
			require.Equal(t, c.want != 0, h.Known, h.Rating)
			require.InDelta(t, c.want, h.Rating.Pressure.Bar(), 0.1, "%s; %s", h.Rating, c.source)
			require.Equal(t, c.basis, h.Rating.Basis)
		})
	}
}
