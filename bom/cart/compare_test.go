package cart

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/bom/order"
	"handtight/pressure/quantity"
	"handtight/threads"
	"handtight/threads/title"
)

// against holds the facts of a line against those of a need of a kind, in no place.
func against(kind string, want facts) *match {
	want.kind = kind
	return &match{need: &need{Need: &order.Need{Key: "part", Kind: kind}, facts: want}}
}

// outcome is what a comparison came to: it differs, it is asked, or neither.
func outcome(m *match, in aspect) string {
	switch {
	case m.differs.has(in):
		return "differs"
	case m.asks.has(in):
		return "asked"
	}
	return ""
}

// A clamp goes over the hose's bore and reaches beyond it by two walls of 3 mm; one that begins
// beyond the thinnest walls, or ends before the usual ones, is asked about; one of another size, or one that is far too wide, is wrong.
func TestClampsAtTheirEdges(t *testing.T) {
	for _, row := range []struct {
		why      string
		from, to quantity.Length
		bore     quantity.Length // of a clamp that is named by its hose
		want     string
		figure   bool
	}{
		{"16 to 27 on 19", 16, 27, 0, "", true},
		{"from the bore itself", 19, 25, 0, "", true},
		{"up to two walls, and no less", 16, 25, 0, "", true},
		{"less than two usual walls, and more than the thinnest", 16, 24.9, 0, "asked", false},
		{"less than the thinnest walls", 16, 21.9, 0, "differs", false},
		{"from within the thinnest walls, 3 mm in all", 20, 32, 0, "", false},
		{"from where they end", 22, 32, 0, "", false},
		{"from beyond them, within the usual walls", 22.1, 32, 0, "asked", false},
		{"from beyond the usual walls", 25.1, 40, 0, "differs", false},
		{"for a thicker hose", 27, 40, 0, "differs", false},
		{"for a thinner one", 8, 16, 0, "differs", false},
		{"so wide that it says nothing", 10, 57, 0, "differs", false},
		{"for a hose of 19", 0, 0, 19, "", true},
		{"for one of 3/4 inch", 0, 0, 19.05, "", true},
		{"for one of 25", 0, 0, 25, "differs", false},
		{"it says nothing", 0, 0, 0, "", false},
	} {
		m := against("clamp", facts{bore: 19})
		m.compareGrips(&facts{kind: "clamp", grips: span{row.from, row.to}, bore: row.bore}, &m.need.facts)
		require.Equal(t, row.want, outcome(m, inGrips), row.why)
		require.Equal(t, row.figure, m.has(byFigure), row.why)
	}
	m := against("clamp", facts{})
	m.compareGrips(&facts{kind: "clamp", grips: span{1, 2}}, &m.need.facts)
	require.Zero(t, m.differs, "a clamp for a hose that is not known")
}

// 12 V and 24 V are two; 12/24 V is both; 230 V is neither; silence says nothing.
func TestVoltsBothWays(t *testing.T) {
	for _, row := range []struct {
		why        string
		line, part [2]quantity.Voltage
		want       string
	}{
		{"the same", [2]quantity.Voltage{24, 0}, [2]quantity.Voltage{24, 0}, ""},
		{"another", [2]quantity.Voltage{12, 0}, [2]quantity.Voltage{24, 0}, "differs"},
		{"one of two", [2]quantity.Voltage{12, 24}, [2]quantity.Voltage{24, 0}, ""},
		{"the part takes two", [2]quantity.Voltage{12, 0}, [2]quantity.Voltage{24, 12}, ""},
		{"none of two", [2]quantity.Voltage{12, 24}, [2]quantity.Voltage{230, 0}, "differs"},
		{"the line is silent", [2]quantity.Voltage{}, [2]quantity.Voltage{24, 0}, ""},
		{"the part is", [2]quantity.Voltage{24, 0}, [2]quantity.Voltage{}, ""},
	} {
		m := against("feed pump", facts{volts: row.part})
		m.compareVolts(&facts{volts: row.line}, &m.need.facts)
		require.Equal(t, row.want, outcome(m, inVolts), row.why)
	}
}

// A hose of 0.9 m and one of 36 inches are one; longer by up to a quarter is asked; shorter by
// more than the slack never reaches.
func TestLengthsAtTheirEdges(t *testing.T) {
	for _, row := range []struct {
		why        string
		line, part quantity.Length
		want       string
		same       bool
	}{
		{"the same", 1200, 1200, "", true}, {"36 inches for 0.9 m", 914.4, 900, "", true}, {"just within the slack above", 1029, 1000, "", true}, {"just within it below", 971, 1000, "", true},
		{"a little longer", 1040, 1000, "asked", false}, {"longer by a quarter", 1250, 1000, "asked", false}, {"longer by more", 1260, 1000, "differs", false},
		{"shorter", 960, 1000, "differs", false}, {"half", 500, 1000, "differs", false}, {"not said", 0, 1000, "", false}, {"not planned", 1000, 0, "", false},
	} {
		m := against("hose", facts{length: row.part})
		m.compareLength(&facts{length: row.line}, &m.need.facts)
		require.Equal(t, row.want, outcome(m, inLength), row.why)
		require.Equal(t, row.same, m.has(byLength), row.why)
	}
}

// A feed pump may give more and not less than nine tenths; much more is asked. A high-pressure
// pump takes neither much less nor a tenth more; a meter is told by its full scale.
func TestFlowsByKind(t *testing.T) {
	for _, row := range []struct {
		kind  string
		ratio quantity.Flow // of the planned flow
		want  string
	}{
		{"feed pump", 1, ""}, {"feed pump", 0.9, ""}, {"feed pump", 0.89, "differs"}, {"feed pump", 1.5, ""}, {"feed pump", 1.51, "asked"}, {"feed pump", 3, "asked"},
		{"plunger pump", 1, ""}, {"plunger pump", 0.9, ""}, {"plunger pump", 0.89, "differs"}, {"plunger pump", 1.1, ""}, {"plunger pump", 1.12, "differs"}, {"plunger pump", 2, "differs"},
		{"flow meter", 1, ""}, {"flow meter", 2, ""}, {"flow meter", 2.01, "differs"}, {"flow meter", 0.5, ""}, {"flow meter", 0.49, "differs"},
		{"relief valve", 1, ""}, {"relief valve", 5, ""}, {"relief valve", 0.89, "differs"},
		{"elbow", 0.1, ""},
	} {
		m := against(row.kind, facts{flow: flowRange{10, 10}})
		m.compareFlow(&facts{flow: flowRange{0, 10 * row.ratio}}, m.need)
		require.Equal(t, row.want, outcome(m, inFlow), "%s at %v", row.kind, row.ratio)
		require.Equal(t, row.want == "" && row.kind != "elbow", m.has(byFigure), "%s at %v", row.kind, row.ratio)
	}
	m := against("feed pump", facts{flow: flowRange{10, 10}})
	m.compareFlow(&facts{}, m.need)
	require.Zero(t, m.differs|m.asks)
}

// A gauge must read past the worst of its place; one that reads much further is asked, and one
// of the other side of the plant is wrong.
func TestScalesBothWays(t *testing.T) {
	bar := quantity.Bar
	for _, row := range []struct {
		why  string
		line quantity.Pressure
		want string
	}{
		{"the planned one", 100 * bar, ""}, {"1500 psi for 100 bar", 1500 * quantity.PSI, ""}, {"below the worst", 60 * bar, "differs"},
		{"above the worst and short of the plan", 80 * bar, "differs"}, {"nine tenths of it", 90 * bar, ""}, {"160 bar", 160 * bar, ""},
		{"twice", 200 * bar, "asked"}, {"400 bar", 400 * bar, "asked"}, {"600 bar", 600 * bar, "differs"}, {"not said", 0, ""},
	} {
		m := against("gauge", facts{scale: 100 * bar})
		m.need.place = &place{worst: 70 * bar}
		m.compareScale(&facts{scale: row.line}, m.need)
		require.Equal(t, row.want == "differs", m.differs.has(inScale), row.why)
		require.Equal(t, row.want != "", m.differs.has(inScale) || m.asks.has(inScale), row.why)
	}
	m := against("relief valve", facts{scale: 100 * bar})
	m.compareScale(&facts{scale: 6 * bar}, m.need)
	require.Zero(t, m.differs, "only a gauge has a scale")
}

// Of two bores the next size is taken for the right one and does not fit; a tube is held closer
// than a hose, by its outside.
func TestBoresAtTheirEdges(t *testing.T) {
	for _, row := range []struct {
		why        string
		line, part quantity.Length
		kind       string
		want       string
		near       bool
	}{
		{"the same", 19, 19, "hose stock", "", false}, {"3/4 inch for 19", 19.05, 19, "hose stock", "", false}, {"within the slack", 19.5, 19, "hose stock", "", false},
		{"the next size", 20, 19, "hose stock", "differs", true}, {"12 for 13", 12, 13, "hose stock", "differs", true}, {"two sizes on", 25, 19, "hose stock", "differs", false},
		{"a made-up hose has no near one", 20, 19, "hose", "differs", false}, {"a clamp goes by what it grips", 40, 19, "clamp", "", false}, {"silent", 0, 19, "hose stock", "", false},
	} {
		m := against(row.kind, facts{bore: row.part})
		m.compareBore(&facts{kind: row.kind, bore: row.line}, &m.need.facts)
		require.Equal(t, row.want, outcome(m, inBore), row.why)
		require.Equal(t, row.near, m.has(byBoreNear), row.why)
	}
}

// One figure against one: within its slack it speaks for the part, beyond it against, and silence
// for neither. The fineness of a housing is that of the cartridge put into it.
func TestOneFigureAgainstOne(t *testing.T) {
	for _, row := range []struct {
		why, kind string
		a, b      float64
		in        aspect
		slack     float64
		want      string
		figure    bool
	}{
		{"940 psi is 65 bar", "relief valve", 64.81, 65, inSet, figureSlack, "", true},
		{"at the slack", "relief valve", 66.3, 65, inSet, figureSlack, "", true},
		{"beyond it", "relief valve", 66.4, 65, inSet, figureSlack, "differs", false},
		{"below it", "relief valve", 63.6, 65, inSet, figureSlack, "differs", false},
		{"not said", "relief valve", 0, 65, inSet, figureSlack, "", false},
		{"not planned", "relief valve", 65, 0, inSet, figureSlack, "", false},
		{"a finer cartridge", "filter cartridge", 5, 25, inMicron, 0.01, "differs", false},
		{"a housing of any fineness", "filter housing", 5, 25, inMicron, 0.01, "", false},
		{"a strainer has its own", "strainer", 500, 800, inMicron, 0.01, "differs", false},
		{"a taller one", "filter housing", 20, 10, inTall, 0.01, "differs", false},
	} {
		m := against(row.kind, facts{})
		m.figure(row.a, row.b, row.slack, row.in, m.need)
		require.Equal(t, row.want, outcome(m, row.in), row.why)
		require.Equal(t, row.figure, m.has(byFigure), row.why)
		require.Equal(t, row.want == "differs", m.apart > 0, row.why)
	}
}

// Materials that a vague word leaves open are open in either order; a brass that resists sea
// water is no plain brass, and no word is itself and another.
func TestMaterialsThatMayBeOne(t *testing.T) {
	for _, row := range []struct {
		a, b       string
		same, open bool
	}{
		{"316", "316", true, false}, {"316", "304", false, false}, {"stainless steel", "316", false, true}, {"stainless steel", "duplex", false, true}, {"stainless steel", "brass", false, false},
		{"plastic", "pp", false, true}, {"plastic", "pvdf", false, true}, {"plastic", "316", false, false}, {"pp", "pvc", false, false}, {"brass", "dzr", false, true}, {"brass", "bronze", false, false}, {"dzr", "bronze", false, false},
	} {
		for _, pair := range [][2]string{{row.a, row.b}, {row.b, row.a}} {
			same, open := sameMaterial(pair[0], pair[1])
			require.Equal(t, []bool{row.same, row.open}, []bool{same, open}, pair)
		}
	}
}

// ends of texts, as a line's ends.
func endsFrom(t testing.TB, texts ...string) []ending {
	var out []ending
	for _, text := range texts {
		r, err := title.ReadEnd(text)
		require.NoError(t, err, text)
		require.NotEmpty(t, r.Candidates, text)
		out = append(out, endingOf(&r))
	}
	return out
}

// One end against one: the same, open, near (a size that is called alike), or another.
func TestOneEndAgainstOne(t *testing.T) {
	for _, row := range []struct {
		line, part string
		want       fit
	}{
		{"1/2 NPT male", "1/2 NPT male", fitSame}, {"1/2 NPT female", "1/2 NPT male", fitNear}, {"G 1/2 male", "1/2 NPT male", fitNear}, {"3/4 NPT male", "1/2 NPT male", fitOther},
		{"1/2 BSP male", "G 1/2 male", fitOpen}, {"1/2 BSP male", "1/2 NPT male", fitNear}, {"1/2 NPT", "1/2 NPT male", fitOpen}, {"19 mm barb", "19 mm barb", fitSame}, {"3/4 in barb", "19 mm barb", fitSame},
		{"20 mm barb", "19 mm barb", fitOther}, {"19.5 mm barb", "19 mm barb", fitSame}, {"19 mm barb", "1/2 NPT male", fitOther}, {"10 mm push-in", "10 mm push-in", fitSame}, {"3/8 in push-in", "10 mm push-in", fitOther},
		{"10 mm compression", "10 mm push-in", fitNear}, {"-6 JIC male", "-6 JIC male", fitSame}, {"9/16-18 ORB male", "-6 JIC male", fitNear}, {"-8 JIC male", "-6 JIC male", fitOther}, {"M22x1.5 male", "M22x1.5 male", fitSame},
	} {
		line, part := endsFrom(t, row.line), endsFrom(t, row.part)
		require.Equal(t, row.want, fitEnd(&line[0], &part[0]), "%s for %s", row.line, row.part)
	}
}

// A line's ends are laid on the part's in the way that suits best, whatever their order, and one
// that is missing is said to be.
func TestEndsInAnyOrder(t *testing.T) {
	part := []string{"1/2 NPT male", "G 1/2 female", "1/4 NPT female"}
	for _, row := range []struct {
		why  string
		line []string
		want fit
	}{
		{"as planned", []string{"1/2 NPT male", "G 1/2 female", "1/4 NPT female"}, fitSame},
		{"turned round", []string{"1/4 NPT female", "G 1/2 female", "1/2 NPT male"}, fitSame},
		{"two of three", []string{"1/4 NPT female", "1/2 NPT male"}, fitSome},
		{"one open", []string{"1/2 BSP female", "1/2 NPT male", "1/4 NPT female"}, fitOpen},
		{"one of another thread", []string{"1/2 NPT female", "1/2 NPT male", "1/4 NPT female"}, fitNear},
		{"one of another size", []string{"3/4 NPT male", "G 1/2 female", "1/4 NPT female"}, fitOther},
		{"one more than the part has", []string{"1/2 NPT male", "G 1/2 female", "1/4 NPT female", "19 mm barb"}, fitSome},
	} {
		m := against("tee", facts{ends: endsFrom(t, part...)})
		l := facts{kind: "tee", ends: endsFrom(t, row.line...)}
		m.compareEnds(&l, &m.need.facts)
		require.Equal(t, row.want, m.fit, row.why)
		require.Equal(t, row.want >= fitNear, m.differs.has(inEnds), row.why)
	}
}

// Whatever the order of a line's ends and of the part's, they fit alike.
func TestTheOrderOfEndsDoesNotMatter(t *testing.T) {
	texts := []string{"1/2 NPT male", "1/2 NPT female", "G 1/2 male", "1/2 BSP female", "19 mm barb", "20 mm barb", "-6 JIC male", "1/4 NPT female"}
	all := endsFrom(t, texts...)
	rapid.Check(t, func(t *rapid.T) {
		pick := rapid.IntRange(0, len(all)-1)
		draw := func(name string) []ending {
			var out []ending
			for range rapid.IntRange(1, 4).Draw(t, name) {
				out = append(out, all[pick.Draw(t, name)])
			}
			return out
		}
		line, part := draw("line"), draw("part")
		fits := func(line, part []ending) fit {
			m := against("tee", facts{ends: part})
			m.compareEnds(&facts{kind: "tee", ends: line}, &m.need.facts)
			return m.fit
		}
		want := fits(line, part)
		require.Equal(t, want, fits(rapid.Permutation(line).Draw(t, "line in another order"), part))
		require.Equal(t, want, fits(line, rapid.Permutation(part).Draw(t, "part in another order")))
		require.Equal(t, fitSame, fits(likeliest(part), likeliest(part)))
	})
}

// likeliest keeps the likeliest reading of each end, with its sex.
func likeliest(ends []ending) []ending {
	var out []ending
	for _, e := range ends {
		e.readings, e.keys, e.open = e.readings[:1], e.keys[:1], false
		out = append(out, e)
	}
	return out
}

// What is of another trade or for another water differs; what only one of them says does not,
// unless it must be said of both.
func TestTraitsBothWays(t *testing.T) {
	for _, row := range []struct {
		line, part string
		has, wants string
	}{
		{"carbon block cartridge", "carbon cartridge", "", ""}, {"carbon block cartridge", "pleated cartridge", "carbon", "sediment"}, {"pleated cartridge", "carbon cartridge", "sediment", "carbon"},
		{"brackish membrane", "seawater membrane", "brackish", "seawater"}, {"seawater membrane", "membrane", "", ""}, {"brackish membrane", "membrane", "brackish", ""}, {"membrane", "seawater membrane", "", ""},
		{"fuel hose", "suction hose", "fuel", ""}, {"pneumatic tube", "drinking water tube", "air", ""}, {"three way valve", "valve", "three-way", ""}, {"bonded washer", "flat gasket", "bonded", "flat"},
		{"Gartenschlauch", "Saugschlauch", "garden", ""}, {"huile moteur", "huile hydraulique", "engine", "hydraulic"},
	} {
		has, wants, differ := traitsIn(wordList(row.line)).differ(traitsIn(wordList(row.part)))
		require.Equal(t, []string{row.has, row.wants}, []string{has, wants}, "%s for %s", row.line, row.part)
		require.Equal(t, row.has != "", differ, row.line)
	}
}

// The rating of a line is the lowest of what it says: of the figure, of the class, of the hose's
// standard. ASME B16.11: class 3000 of 1/2 inch holds far more than 20 bar; a gauge holds no rating.
func TestWhatALineHolds(t *testing.T) {
	ends := endsFrom(t, "1/2 NPT female", "1/2 NPT female")
	n := against("elbow", facts{ends: ends, material: "316"}).need
	figure := facts{rated: 20 * quantity.Bar, class: "class 3000", material: "316", ends: ends}
	holds, ok := figure.holds(n)
	require.True(t, ok)
	require.InDelta(t, 20, holds.Bar(), 1e-9, "the lower of the two")
	class := figure
	class.rated = 0
	byClass, ok := class.holds(n)
	require.True(t, ok)
	require.Greater(t, byClass.Bar(), 100.0)
	both := class
	both.rated = 1000 * quantity.Bar
	holds, _ = both.holds(n)
	require.Equal(t, byClass, holds, "a class below the figure rules")
	_, ok = (&facts{}).holds(n)
	require.False(t, ok, "nothing said is unknown, and not nought")
	_, ok = (&facts{rated: 100 * quantity.Bar}).holds(against("gauge", facts{}).need)
	require.False(t, ok, "a gauge's scale is no rating")
}

// The size of an end in a form that like sizes share: whatever the thread, in inches, in tubes.
func TestKeysOfSizes(t *testing.T) {
	key := func(text string) string { e := endsFrom(t, text)[0]; return e.keys[0] }
	for _, same := range [][]string{{"1/2 NPT male", "G 1/2 female", "R 1/2", "1/2 NPSM female"}, {"-6 JIC male", "9/16-18 ORB male"}, {"19 mm barb", "3/4 in barb", "19 mm bore"}, {"M22x1.5 male", "7/8-14 ORB female"}} {
		for _, text := range same[1:] {
			require.Equal(t, key(same[0]), key(text), text)
		}
	}
	for _, pair := range [][2]string{{"1/2 NPT male", "3/4 NPT male"}, {"-6 JIC male", "-8 JIC male"}, {"19 mm barb", "25 mm barb"}, {"1/2 NPT male", "1/2 in barb"}} {
		require.NotEqual(t, key(pair[0]), key(pair[1]), pair)
	}
	require.Equal(t, threads.Barb, endsFrom(t, "19 mm barb")[0].readings[0].Family)
}
