package rule

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/finding"
)

// step is a remedy of a fault that is seeded in a demo, followed to the letter: the edits were
// written from the remedy's words alone. `says` stands in the remedy that is printed for it.
type step struct {
	slug, at, says string
	edits          []amend
}

// put adds tables at the end of the build; change is one edit of a text that stands once in the files.
func put(tables ...string) amend { return amend{"", strings.Join(tables, "")} }
func change(pairs ...string) []amend {
	var out []amend
	for i := 0; i+1 < len(pairs); i += 2 {
		out = append(out, amend{pairs[i], pairs[i+1]})
	}
	return out
}

// run is a run of a build.
func run(name string, path ...string) string {
	return fmt.Sprintf("\n[[run]]\nname = %q\npath = [\"%s\"]\n", name, strings.Join(path, "\", \""))
}

// dip is the probe that is dipped into a glass; antiSeize the paste.
var (
	dip       = part("dip-meter", "salinity probe", "extra = 1")
	antiSeize = part("anti-seize", "tape", `about = "anti-seize"`)
)

// demoSteps are the demos' steps, demo by demo.
var demoSteps = map[string][]step{
	"careless": carelessSteps, "refit": refitSteps, "arrows": arrowSteps, "leftovers": leftoverSteps, "damper": damperSteps,
	"standing": standingSteps, "engine-careless": engineSteps, "recovery-careless": recoverySteps, "recovery-cold": coldSteps,
	"oldplant": oldPlantSteps, "states": stateSteps, "baltic": balticSteps, "gulf": gulfSteps, "redsea": redseaSteps, "drip": dripSteps, "trickle": trickleSteps, "longrow": longrowSteps,
}

// files reads a demo's files into memory.
func filesOf(t *testing.T, demo string) map[string]string {
	t.Helper()
	paths, err := filepath.Glob(filepath.Join(demos, demo, "*.toml"))
	require.NoError(t, err)
	out := map[string]string{}
	for _, p := range paths {
		text, err := os.ReadFile(p)
		require.NoError(t, err)
		out[filepath.Base(p)] = string(text)
	}
	if plant, ok := out["plant.toml"]; ok && out["build.toml"] == "" {
		out["build.toml"] = plant
		delete(out, "plant.toml")
	}
	return out
}

// unseededBuilds are demos in which no fault is seeded by a comment: what is found in them is there.
var unseededBuilds = []string{"oldplant", "states"}

// everywhere begins a text to be changed wherever it stands in the files, and not in one place alone.
const everywhere = "everywhere: "

// checkFiles checks a build of several files.
func checkFiles(t *testing.T, files map[string]string) ([]finding.Finding, error) {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		require.NoError(t, os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600))
	}
	build, faults := bom.Read(filepath.Join(dir, "build.toml"))
	if err := faults.Err(); err != nil {
		return nil, err
	}
	sys, faults := bom.Walk(build)
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return Check(sys), nil
}

// about is what a finding is about, whatever number its joint has got.
func about(f finding.Finding) string {
	f.Subject.Joint, f.Subject.Segment = 0, ""
	return f.Slug + " " + strings.TrimPrefix(f.Subject.String(), "J0 ")
}

// count is how many findings there are of the sort of one, as grave or graver.
func count(list []finding.Finding, of finding.Finding) int {
	n := 0
	for _, f := range list {
		if f.Slug == of.Slug && f.Severity <= of.Severity {
			n++
		}
	}
	return n
}

// followIn makes the edits of a step in a demo's files, and tells what is wrong after it.
func followIn(t *testing.T, files map[string]string, before []finding.Finding, s step) string {
	t.Helper()
	var faults []string
	held := map[string]finding.Severity{}
	var this *finding.Finding
	for i, f := range before {
		held[about(f)] = f.Severity
		if about(f) == s.slug+" "+s.at && strings.Contains(f.Remedy, s.says) {
			this = &before[i]
		}
	}
	if this == nil {
		return "no remedy says so"
	}
	after := map[string]string{}
	for name, text := range files {
		after[name] = text
	}
	for _, e := range s.edits {
		if e.from == "" {
			after["build.toml"] += e.to
			continue
		}
		if from, all := strings.CutPrefix(e.from, everywhere); all {
			for name, text := range after {
				after[name] = strings.ReplaceAll(text, from, e.to)
			}
			continue
		}
		n := 0
		for name, text := range after {
			n += strings.Count(text, e.from)
			after[name] = strings.Replace(text, e.from, e.to, 1)
		}
		if n != 1 {
			return fmt.Sprintf("%q stands %d times in the files", e.from, n)
		}
	}
	list, err := checkFiles(t, after)
	if err != nil {
		return "the file is at fault: " + err.Error()
	}
	for _, f := range list {
		_, there := held[about(f)]
		switch {
		case about(f) == about(*this) && f.Severity <= this.Severity:
			faults = append(faults, "it is still there: "+f.Reason)
		case f.Slug == this.Slug && !there && count(list, f) >= count(before, f): // one that got another first name is not new
			faults = append(faults, "it came up elsewhere: "+f.At()+": "+f.Reason)
		case f.Severity == finding.Stop && (!there || held[about(f)] != finding.Stop) && count(list, f) > count(before, f):
			faults = append(faults, "a new stop: "+f.Slug+" "+f.At()+": "+f.Reason)
		}
	}
	return strings.Join(faults, "; ")
}

// upkeep are the seeded findings whose remedy changes nothing of a build: it asks for care.
var upkeep = map[string]string{
	"careless material-not-for-seawater tail-n12":   "rinse, and look under the seals",
	"refit material-not-for-seawater tail-n12/port": "rinse, and look under the seals",
}

// The remedy of every seeded fault of every demo, followed to the letter, ends the fault: no
// fault of the file comes of it, and no stop that was not there.
func TestDemoRemediesFollowed(t *testing.T) {
	if testing.Short() {
		t.Skip("some two hundred builds")
	}
	all, failed := 0, 0
	for _, demo := range slices.Concat(seededBuilds, unseededBuilds) {
		files := filesOf(t, demo)
		before, err := checkFiles(t, files)
		require.NoError(t, err)
		done := map[string]bool{}
		for _, s := range demoSteps[demo] {
			all++
			done[s.slug+" "+s.at] = true
			if why := followIn(t, files, before, s); why != "" {
				failed++
				t.Errorf("%s: %s at %s, followed as %q: %s", demo, s.slug, s.at, s.says, why)
			}
		}
		for _, f := range before {
			if upkeep[demo+" "+about(f)] == "" && !done[about(f)] {
				t.Errorf("%s: nobody followed the remedy of %s: %s", demo, about(f), f.Remedy)
			}
		}
	}
	t.Logf("%d of %d remedies of the demos worked", all-failed, all)
}
