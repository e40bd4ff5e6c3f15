package title

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
	"handtight/threads"
)

func TestReadEnd(t *testing.T) {
	for _, row := range []struct {
		why, text string
		want      []string // candidates, likeliest first
	}{
		{"the American trade form", `1/2" NPT female`, []string{"1/2-14 NPT female"}},
		{"sex in the letters", `3/8" MNPT`, []string{"3/8-18 NPT male"}},
		{"a flare by its thread", `9/16-18 JIC female swivel`, []string{"9/16-18 JIC -6 female swivel"}},
		{"the family before the thread", `JIC 9/16-18`, []string{"9/16-18 JIC -6"}},
		{"a flare by its dash", `-6 JIC male`, []string{"9/16-18 JIC -6 male"}},
		{"class A is a male", `G 1/2 A`, []string{"G 1/2 A male"}},
		{"no blank behind the letter", `G3/4 female`, []string{"G 3/4 female"}},
		{"BSPP is G", `1/2 BSPP male`, []string{"G 1/2 male"}},
		{"BSPT by one letter, and a fraction sign", `½" BSPT M`, []string{"R 1/2 male"}},
		{"Rc is female", `Rc 1/2`, []string{"Rc 1/2 female"}},
		{"Rp is female", `Rp 1/2`, []string{"Rp 1/2 female"}},
		{"R is male", `R 3/8`, []string{"R 3/8 male"}},
		{"pitch given, sex not", `1/2-14 NPT`, []string{"1/2-14 NPT"}},
		{"a tail in millimetres", `19 mm barb`, []string{"19 mm barb"}},
		{"a long tail", `barb 19 mm long`, []string{"19 mm barb long"}},
		{"a tail in inches", `3/4 in hose barb`, []string{"3/4 in barb"}},
		{"a push-in tube", `10 mm push-in`, []string{"10 mm push-in"}},
		{"a chamfered male", `G 3/4 male chamfer`, []string{"G 3/4 male chamfer"}},
		{"a cone seat", `G 1/2 female swivel 60 cone`, []string{"G 1/2 female swivel 60 cone"}},
		{"moulded thread", `1/2 NPT female plastic`, []string{"1/2-14 NPT female plastic"}},
		{"metric", `M22x1.5 male`, []string{"M22x1.5 male"}},
		{"decimal comma and the times sign", `M22×1,5 female`, []string{"M22x1.5 female"}},
		{"BSP alone, male", `1/2 BSP male`, []string{"G 1/2 male", "R 1/2 male"}},
		{"BSP alone, female", `1/2 BSP female`, []string{"G 1/2 female", "Rp 1/2 female", "Rc 1/2 female"}},
		{"no standard", `3/4" female thread`, []string{"G 3/4 female", "Rp 3/4 female", "Rc 3/4 female", "3/4-14 NPT female"}},
		{"garden hose", `3/4 GHT male`, []string{"3/4-11.5 NH male"}},
		{"a name of NPT sizes as decimals", `0.75 NPT male`, []string{"3/4-14 NPT male"}},
		{"quarter inches of the German trade", `5/4" AG G`, []string{"G 1 1/4 male"}},
		{"eighths of the Chinese trade", `4分 外丝 NPT`, []string{"1/2-14 NPT male"}},
		{"a tube cone", `12L male`, []string{"12L M18x1.5 male"}},
		{"taper metric", `M10x1 keg`, []string{"M10x1 keg male"}},
		{"a compression tube", `15 mm compression`, []string{"15 mm compression"}},
		{"tube, grip not said", `8 mm tube`, []string{"8 mm push-in", "8 mm compression"}},
		{"R cannot be female", `R 1/2 female`, []string{"Rc 1/2 female", "Rp 1/2 female"}},
	} {
		t.Run(row.why, func(t *testing.T) {
			r, err := ReadEnd(row.text)
			require.NoError(t, err)
			var got []string
			for _, c := range r.Candidates {
				got = append(got, c.String())
			}
			require.Equal(t, row.want, got)
			if len(got) > 1 {
				require.NotEmpty(t, r.Question)
			}
		})
	}
}

func TestReadEndRefuses(t *testing.T) {
	for _, row := range []struct{ why, text, part string }{
		{"nothing", "  ", "nothing"},
		{"no end", "blue", "no end"},
		{"two ends", `1/2 NPT male x 3/8 NPT female`, "2 ends"},
		{"a word nobody knows", `1/2 NPT frobnicated`, "frobnicated"},
		{"an end without geometry", `22 mm solder`, "not judged"},
		{"far too long", strings.Repeat("1/2 NPT ", 2000), "longer"},
	} {
		t.Run(row.why, func(t *testing.T) {
			_, err := ReadEnd(row.text)
			var e *ReadError
			require.True(t, errors.As(err, &e))
			require.Contains(t, e.Reason, row.part)
			require.NotEmpty(t, e.Remedy)
			require.Contains(t, e.Error(), e.Reason)
		})
	}
}

func TestSizesThatAFamilyLacksAreNamed(t *testing.T) {
	for _, row := range []struct{ why, text, near string }{
		{"NPT has no 5/8", "5/8 NPT male", "1/2-14 NPT and 3/4-14 NPT"},
		{"no third of an inch", "G 1/3 male", "G 1/4 and G 3/8"},
		{"no such diameter", "M17.3x1.5 male", "M17x1.5 and M18x"},
		{"ISO 7-1 leaves 7/8 out", "R 7/8", "R 3/4 and R 1"},
	} {
		t.Run(row.why, func(t *testing.T) {
			r, err := ReadEnd(row.text)
			require.NoError(t, err)
			require.Empty(t, r.Candidates)
			require.Contains(t, r.Question, row.near)
		})
	}
}

func TestQuestionsAreOneSentenceThatNamesTheReadings(t *testing.T) {
	r, err := ReadEnd("1/2 BSP female")
	require.NoError(t, err)
	require.Equal(t, "Is the 1/2 BSP female parallel (G, Rp) or taper (Rc)? Look for P or T after BSP, or ask the shop.", r.Question)
}

func allSeals() []threads.Seal {
	out := []threads.Seal{threads.NoSeal}
	for s := threads.NoSeal + 1; s.String() != ""; s++ {
		out = append(out, s)
	}
	return out
}

// allEnds draws an end that String can write, of every family, sex and seal.
func allEnds(t *rapid.T) threads.End {
	f := rapid.SampledFrom(threads.Families()).Draw(t, "family")
	if !f.Threaded() {
		d := rapid.SampledFrom([]float64{6, 8, 10, 12.5, 13, 16, 19, 25, 32, 38}).Draw(t, "mm")
		e := threads.End{Family: f, Size: quantity.Exact(d) + " mm", Diameter: threads.Length(d)}
		if rapid.Bool().Draw(t, "inch") {
			v := rapid.SampledFrom([]string{"1/4", "3/8", "1/2", "5/8", "3/4", "1", "1 1/4", "1 1/2"}).Draw(t, "in")
			e.Size, e.Diameter = v+" in", threads.Length(threads.SizeInches(v))*threads.Inch
		}
		if f == threads.Push || f == threads.Compression {
			e.Sex = threads.Female
		}
		e.Long = f == threads.Barb && rapid.Bool().Draw(t, "long")
		return e
	}
	e := threads.Threaded(rapid.SampledFrom(threads.Forms(f)).Draw(t, "form"), rapid.SampledFrom([]threads.Sex{threads.NoSex, threads.Male, threads.Female}).Draw(t, "sex"))
	if only := f.Facts().Only; only != threads.NoSex {
		e.Sex = only
	}
	e.Seal = rapid.SampledFrom(allSeals()).Draw(t, "seal")
	e.Swivel, e.Plastic = rapid.Bool().Draw(t, "swivel"), rapid.Bool().Draw(t, "plastic")
	if e.Seal == threads.NoseRing {
		e.Nose = rapid.SampledFrom([]threads.Length{0, 14, 15}).Draw(t, "nose")
	}
	e.Short = f == threads.NPTF && rapid.Bool().Draw(t, "short")
	e.Left = rapid.Bool().Draw(t, "left")
	e.ClassA = f == threads.G && e.Sex == threads.Male && rapid.Bool().Draw(t, "class A")
	return e
}

func TestWhatStringWritesIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := allEnds(t)
		r, err := ReadEnd(e.String())
		if err != nil {
			t.Fatal(err)
		}
		if len(r.Candidates) != 1 || r.Candidates[0] != e {
			t.Fatalf("%q is read as %+v, want %+v", e.String(), r.Candidates, e)
		}
	})
}

func TestEveryFormIsReadBack(t *testing.T) {
	for _, f := range threads.Families() {
		for _, form := range threads.Forms(f) {
			for _, sex := range []threads.Sex{threads.Male, threads.Female} {
				if only := f.Facts().Only; only != threads.NoSex && only != sex {
					continue
				}
				e := threads.Threaded(form, sex)
				r, err := ReadEnd(e.String())
				require.NoError(t, err, e.String())
				require.Equal(t, []threads.End{e}, r.Candidates, e.String())
			}
		}
	}
}

func FuzzReadEnd(f *testing.F) {
	for _, s := range []string{`1/2" NPT female`, "M22x1.5-6g", "-08 JIC", "1\"1/2 BSP", "4分", "R 1/2 (", "##8", "1/2-", "M", "x x x", "\xff1/2", "jjjj0刐"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r, err := ReadEnd(s)
		if err == nil && len(r.Candidates) != 1 && r.Question == "" {
			t.Fatalf("%q is open and asks nothing", s)
		}
	})
}

func FuzzRead(f *testing.F) {
	for _, l := range readCorpus(f, "../../testdata/published/designations.csv") {
		f.Add(l.text)
	}
	f.Fuzz(func(t *testing.T, s string) {
		r := Read(s)
		for _, e := range r.Ends {
			if len(e.Candidates) != 1 && e.Question == "" {
				t.Fatalf("%q: %q is open and asks nothing", s, e.Words)
			}
		}
	})
}

func BenchmarkRead(b *testing.B) {
	lines := readCorpus(b, "../../testdata/published/designations.csv")
	for b.Loop() {
		for _, l := range lines {
			Read(l.text)
		}
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*len(lines)), "us/line")
}

// What a list costs a line, on all processors.
func BenchmarkReadAll(b *testing.B) {
	var texts []string
	for _, l := range readCorpus(b, "../../testdata/published/designations.csv") {
		texts = append(texts, l.text)
	}
	for b.Loop() {
		ReadAll(texts)
	}
	b.ReportMetric(float64(b.Elapsed().Microseconds())/float64(b.N*len(texts)), "us/line")
}

func TestAListIsReadInItsOrder(t *testing.T) {
	for _, path := range []string{"../../testdata/published/designations.csv", "../../testdata/published/designations_own.csv"} {
		var texts []string
		for _, l := range readCorpus(t, path) {
			texts = append(texts, l.text)
		}
		for k, r := range ReadAll(texts) {
			require.Equal(t, Read(texts[k]), r)
		}
	}
	require.Empty(t, ReadAll(nil))
	require.Equal(t, []threads.Reading{Read("Elbow 1/2 NPT F")}, ReadAll([]string{"Elbow 1/2 NPT F"}))
}
