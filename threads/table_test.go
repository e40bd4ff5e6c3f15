package threads

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Redundant columns and orders that every row of every family must keep.
func TestForms(t *testing.T) {
	designations := map[string]string{}
	for _, family := range Families() {
		list := Forms(family)
		require.Equal(t, family.Threaded(), len(list) > 0, family.String())
		for i, f := range list {
			name := f.Designation
			require.Equal(t, family, f.Family, name)
			require.InDelta(t, 25.4/f.TPI, float64(f.Pitch), 1e-9, name)
			require.Greater(t, f.Major, f.PitchDia, name)
			require.Greater(t, f.PitchDia, f.Minor, name)
			require.Positive(t, float64(f.Minor), name)
			require.Equal(t, family.Facts().Flank, f.Flank, name)
			require.Equal(t, family.Facts().Tapered, f.Taper > 0, name)
			require.NotEmpty(t, f.Source, name)
			require.NotContains(t, f.Source+f.Note, "../", name)
			if i > 0 {
				require.GreaterOrEqual(t, f.Major, list[i-1].Major, "%s stands after %s", name, list[i-1].Designation)
			}
			found, ok := Find(family, f.Size)
			require.True(t, ok && found == f, "%s is found by its own size", name)
			other, taken := designations[name]
			require.False(t, taken, "%s is the designation of %s and of %s", name, other, family)
			designations[name] = family.String()
		}
	}
}

// The limits of every form: loose never has more metal than tight.
func TestLimits(t *testing.T) {
	for _, family := range Families() {
		for _, f := range Forms(family) {
			name := f.Designation
			if family.Facts().Only != Female {
				require.GreaterOrEqual(t, f.outside.tight.pitch, f.outside.loose.pitch, name)
				require.GreaterOrEqual(t, crestOf(f.outside.tight, 1)+1e-9, crestOf(f.outside.loose, 1), name)
			}
			if family.Facts().Only != Male {
				require.LessOrEqual(t, f.inside.tight.pitch, f.inside.loose.pitch, name)
				require.LessOrEqual(t, crestOf(f.inside.tight, -1)-1e-9, crestOf(f.inside.loose, -1), name)
			}
		}
	}
}

// crestOf is the diameter of a crest: outside (1) or inside (-1).
func crestOf(l limits, side Length) float64 { return float64(l.pitch + side*2*l.crestAdd) }

// Sizes of pipe families are fractions and rise with the diameter.
func TestPipeSizesRise(t *testing.T) {
	for _, family := range []Family{NPT, NPTF, NPSM, NPS, G, R, Rc, Rp} {
		last := 0.0
		for _, f := range Forms(family) {
			require.Greater(t, SizeInches(f.Size), last, f.Designation)
			last = SizeInches(f.Size)
		}
	}
}

func TestFindTakesHyphen(t *testing.T) {
	for _, c := range []struct {
		why    string
		family Family
		size   string
		want   string
	}{
		{"a hyphen for the blank", NPT, "1-1/4", "1 1/4-11.5 NPT"},
		{"a dash size keeps its dash", JIC, "-8", "3/4-16 JIC -8"},
		{"a metric thread", M, "M22x1.5", "M22x1.5"},
		{"a tube and series", Cone24L, "15L", "15L M22x1.5"},
		{"a unified thread as it is written", UN, "1-1/16-12", "1-1/16-12 UN"},
		{"a taper stud", MT, "M10x1", "M10x1 keg"},
		{"the one garden hose", NH, "3/4", "3/4-11.5 NH"},
	} {
		t.Run(c.why, func(t *testing.T) {
			f, ok := Find(c.family, c.size)
			require.True(t, ok)
			require.Equal(t, c.want, f.Designation)
		})
	}
	_, ok := Find(NPT, "5/8")
	require.False(t, ok, "NPT has no 5/8")
	_, ok = Find(NPT, "")
	require.False(t, ok, "no size is no form")
}

// What rests on memory is known: a row that joins them must be counted here.
func TestMemoryRows(t *testing.T) {
	want := map[Family]int{M: 2, R: 1, Rc: 1, Rp: 1, G: 1, NH: 1, MT: 15, SAE45: 4, ORFS: 5, UN: 6}
	for _, family := range Families() {
		n := 0
		for _, f := range Forms(family) {
			if f.Memory {
				n++
			}
		}
		require.Equal(t, want[family], n, "%s rows marked `memory`", family)
	}
}

// Every row of every table names its source.
func TestSources(t *testing.T) {
	files, err := tables.ReadDir("table")
	require.NoError(t, err)
	for _, file := range files {
		for i, r := range readTable(file.Name()) {
			require.NotEmpty(t, r["source"], "%s row %d", file.Name(), i+1)
			require.NotContains(t, strings.ToLower(r["source"]), "reference/", "%s row %d", file.Name(), i+1)
		}
	}
}

// Every seal row names families, seals and a verdict that exist.
func TestSealTable(t *testing.T) {
	for i, r := range readTable("seal.csv") {
		for _, name := range strings.Split(r["male"]+"|"+r["female"], "|") {
			f, ok := FamilyNamed(name)
			require.True(t, ok && f.Threaded(), "row %d: %q", i+1, name)
		}
		for _, name := range strings.Split(r["male_seal"]+"|"+r["female_seal"], "|") {
			if _, ok := SealNamed(name); !ok {
				require.Contains(t, []string{"*", "none"}, name, "row %d", i+1)
			}
		}
		require.Contains(t, []string{"*", "same", "other"}, r["size"], "row %d", i+1)
		require.Contains(t, []string{"*", "yes", "no"}, r["swivel"], "row %d", i+1)
		require.Contains(t, []string{"*", "yes", "no"}, r["plastic"], "row %d", i+1)
		v, ok := VerdictNamed(r["verdict"])
		require.True(t, ok, "row %d: %q", i+1, r["verdict"])
		require.NotEmpty(t, r["closes"], "row %d", i+1)
		require.NotEmpty(t, r["reason"], "row %d", i+1)
		require.NotEmpty(t, r["remedy"], "row %d", i+1)
		require.Equal(t, v == LowPressureOnly, v == LowPressureOnly && r.has("limit_bar"), "row %d has its limit", i+1)
	}
}

// Alike threads never lack a row that says what closes.
func TestAlikeThreadsHaveRow(t *testing.T) {
	for _, a := range Families() {
		for _, b := range Families() {
			if a.Facts().Only == Female || b.Facts().Only == Male {
				continue
			}
			for _, e := range Forms(a) {
				for _, i := range Forms(b) {
					m := Mate(Threaded(e, Male), Threaded(i, Female))
					require.NotEqual(t, byNoSeal, m.why, "%s in %s", e.Designation, i.Designation)
				}
			}
		}
	}
}
