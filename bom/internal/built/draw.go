package built

import (
	"fmt"
	"slices"
	"strings"

	"pgregory.net/rapid"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// sorts are the parts that random builds are made of, each with the keys of its own.
var sorts = []string{
	"kind = \"plunger pump\"", "kind = \"plunger pump\"\nstall = \"90 bar\"", "kind = \"plunger pump\"\nstall = \"40 bar\"",
	"kind = \"feed pump\"\nshutoff = \"2.5 bar\"\ntype = \"diaphragm\"", "kind = \"feed pump\"\nshutoff = \"1.5 bar\"\ntype = \"centrifugal\"",
	"kind = \"brine throttle\"", "kind = \"relief valve\"\nset = \"65 bar\"", "kind = \"relief valve\"\nset = \"8 bar\"\nfull_flow = \"9 bar\"",
	"kind = \"relief valve\"\nset = \"2 bar\"", "kind = \"relief valve\"", "kind = \"back-pressure regulator\"\nset = \"6 bar\"", "kind = \"back-pressure regulator\"", "kind = \"check valve\"", "kind = \"check valve\"",
	"kind = \"plunger pump\"\nflow = \"8 L/min\"", "kind = \"plunger pump\"\nflow = \"5 L/min\"\nstall = \"90 bar\"", "kind = \"feed pump\"\nshutoff = \"6 bar\"\ntype = \"diaphragm\"\nflow = \"9 L/min\"",
	"kind = \"relief valve\"\nset = \"50 bar\"\nflow = \"5 L/min\"", "kind = \"relief valve\"\nset = \"3 bar\"\nflow = \"8 L/min\"", "kind = \"relief valve\"\nset = \"60 bar\"\nflow = \"0.6 L/min\"",
	"kind = \"energy recovery pump\"\nratio = \"10 %\"", "kind = \"energy recovery pump\"\nratio = \"20 %\"", "kind = \"energy recovery pump\"",
	"kind = \"pressure vessel\"", "kind = \"tee\"", "kind = \"tee\"", "kind = \"tee\"", "kind = \"cross\"", "kind = \"elbow\"",
	"kind = \"shut-off valve\"", "kind = \"shut-off valve\"\nnormal = \"shut\"", "kind = \"shut-off valve\"\nnormal = \"flush\"", "kind = \"seacock\"", "kind = \"strainer\"",
	"kind = \"solenoid valve\"", "kind = \"flush timer valve\"\nnormal = \"open\"", "kind = \"selector valve\"",
	"kind = \"selector valve\"\nbetween = \"open\"", "kind = \"house supply\"\npressure = \"3 bar\"", "kind = \"sea\"",
	"kind = \"overboard\"", "kind = \"drain\"", "kind = \"tank\"", "kind = \"through-hull\"",
}

// driven are the parts of builds round an energy-recovery pump, and what may pass too little.
var driven = []string{
	"kind = \"plunger pump\"\nflow = \"8 L/min\"", "kind = \"plunger pump\"\nflow = \"5 L/min\"\nstall = \"90 bar\"", "kind = \"feed pump\"\nshutoff = \"6 bar\"\ntype = \"diaphragm\"\nflow = \"9 L/min\"",
	"kind = \"relief valve\"\nset = \"50 bar\"\nflow = \"5 L/min\"", "kind = \"relief valve\"\nset = \"3 bar\"\nflow = \"8 L/min\"", "kind = \"relief valve\"\nset = \"60 bar\"\nflow = \"0.6 L/min\"", "kind = \"relief valve\"\nset = \"65 bar\"",
	"kind = \"energy recovery pump\"\nratio = \"10 %\"", "kind = \"energy recovery pump\"\nratio = \"20 %\"", "kind = \"energy recovery pump\"\nratio = \"10 %\"",
	"kind = \"pressure vessel\"", "kind = \"tee\"", "kind = \"cross\"", "kind = \"check valve\"", "kind = \"shut-off valve\"", "kind = \"brine throttle\"", "kind = \"sea\"", "kind = \"overboard\"", "kind = \"overboard\"",
}

// PortsOf are the ports of the kinds above.
func PortsOf(sort string) []string {
	for words, ports := range map[string][]string{
		"pressure vessel": {"feed", "brine", "product"}, "tee": {"a", "b", "branch"}, "cross": {"a", "b", "branch", "c"},
		"elbow": {"a", "b"}, "seacock": {"sea", "inboard"}, "through-hull": {"sea", "inboard"}, "selector valve": {"common", "a", "b"},
		"energy recovery pump": {"in", "out", "brine", "waste"}, "house supply": {"out"}, "sea": {"out"}, "overboard": {"in"}, "drain": {"in"}, "tank": {"in"},
	} {
		if strings.HasPrefix(sort, `kind = "`+words+`"`) {
			return ports
		}
	}
	return []string{"in", "out"}
}

// Draw makes a small build: parts joined port to port by runs of two steps.
func Draw(t *rapid.T) string {
	var b strings.Builder
	duty := rapid.SampledFrom([]string{"55 bar", "70 bar", "4 bar"}).Draw(t, "duty")
	fmt.Fprintf(&b, "[build]\nname = \"random\"\ncurrency = \"EUR\"\n[duty]\npressure = %q\n", duty)
	var free []string
	joints := 0
	join := func(from, to string) {
		joints++
		fmt.Fprintf(&b, "[[run]]\nname = \"r%d\"\npath = [%q, %q]\n", joints, from, to)
	}
	take := func(words string) string {
		i := rapid.IntRange(0, len(free)-1).Draw(t, words)
		port := free[i]
		free = slices.Delete(free, i, i+1)
		return port
	}
	of, loops := sorts, 2
	if rapid.Bool().Draw(t, "driven") {
		of, loops = driven, 5
	}
	for n := range rapid.IntRange(2, 12).Draw(t, "parts") {
		if n > 0 && len(free) == 0 {
			break // all ports are taken: what came now would be a build of its own
		}
		sort := rapid.SampledFrom(of).Draw(t, "part")
		fmt.Fprintf(&b, "[[item]]\nid = \"u%d\"\n%s\n", n, sort)
		ports := PortsOf(sort)
		if len(free) > 0 {
			i := rapid.IntRange(0, len(ports)-1).Draw(t, "by")
			join(take("to"), fmt.Sprintf("u%d.%s", n, ports[i]))
			ports = slices.Delete(slices.Clone(ports), i, i+1)
		}
		for _, p := range ports {
			free = append(free, fmt.Sprintf("u%d.%s", n, p))
		}
	}
	for range rapid.IntRange(0, loops).Draw(t, "loops") {
		if len(free) >= 2 {
			join(take("from"), take("round to"))
		}
	}
	if joints == 0 {
		t.Skip("no joint")
	}
	return b.String()
}
