package cart

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/bom/order"
)

// weighed is a match of so many points: an elbow of two ends that are the same, of a need that is
// bought alike with others of its group.
func weighed(key string, points, alike int) match {
	ends := []ending{{}, {}}
	return match{
		need: &need{Need: &order.Need{Key: key, Kind: "elbow"}, alike: alike, facts: facts{kind: "elbow", ends: ends}},
		fit:  fitSame, score: score{points: points, got: 1 << byKind},
	}
}

// A line belongs to a part only where no other part comes near it. Two elbows of one thread in
// two materials, and a line without one: taking the first would cover the wrong place in silence.
func TestALineIsTakenOnlyWhereNothingComesNear(t *testing.T) {
	wrong := weighed("valve", 80, 3)
	wrong.differs.add(inRating)
	open := weighed("tee", 80, 4)
	open.fit = fitOpen
	for _, row := range []struct {
		why     string
		list    []match
		want    []string
		certain bool
	}{
		{"nothing like it", nil, nil, false},
		{"one alone", []match{weighed("brass", 80, 1)}, []string{"brass"}, true},
		{"another as near", []match{weighed("brass", 80, 1), weighed("steel", 80, 2)}, []string{"brass"}, false},
		{"another just within reach", []match{weighed("brass", 80, 1), weighed("steel", 80-lead+1, 2)}, []string{"brass"}, false},
		{"another just out of it", []match{weighed("brass", 80, 1), weighed("steel", 80-lead, 2)}, []string{"brass"}, true},
		{"two that are bought alike are one", []match{weighed("left", 80, 1), weighed("right", 80, 1)}, []string{"left", "right"}, true},
		{"one that is wrong does not come near", []match{weighed("brass", 80, 1), wrong}, []string{"brass"}, true},
		{"nor does one that the words leave open", []match{open, weighed("brass", 80, 1)}, []string{"brass"}, true},
		{"wrong or open alone is taken for nothing", []match{wrong, open}, nil, false},
	} {
		got, certain := best(&Line{}, row.list)
		var keys []string
		for _, m := range got {
			keys = append(keys, m.need.Key)
		}
		require.Equal(t, row.want, keys, row.why)
		require.Equal(t, row.certain, certain, row.why)
	}
}

// A shop's code stands for all items whose offer it is, and the words say which; the first where
// they say nothing. A wrong end of one does not take the line from the other.
func TestOneCodeOfSeveralItems(t *testing.T) {
	coded := func(key string, fits fit, differs ...aspect) match {
		m := match{need: &need{Need: &order.Need{Key: key}}, fit: fits}
		m.add(byCode)
		for _, a := range differs {
			m.differs.add(a)
		}
		return m
	}
	plain := match{need: &need{Need: &order.Need{Key: "not named"}}, fit: fitSame}
	for _, row := range []struct {
		why  string
		list []match
		want []string
	}{
		{"none has the code", []match{plain}, nil},
		{"one has it, though another is like the words", []match{plain, coded("elbow", fitSame)}, []string{"elbow"}},
		{"both agree with the words", []match{coded("left", fitSame), coded("right", fitOpen)}, []string{"left", "right"}},
		{"the second has another rating", []match{coded("left", fitSame), coded("right", fitSame, inRating)}, []string{"left"}},
		{"the second has another thread", []match{coded("left", fitSame), coded("right", fitNear)}, []string{"left"}},
		{"the only one is wrong, and is taken to say so", []match{coded("left", fitNear, inEnds)}, []string{"left"}},
	} {
		var keys []string
		for _, m := range named(row.list) {
			keys = append(keys, m.need.Key)
		}
		require.Equal(t, row.want, keys, row.why)
	}
}

// What is said for a match speaks of the one end of a plug or of the ends of a tee: a buyer who
// reads "all ends" of a plug looks for a second.
func TestEvidenceOfOneEndAndOfSeveral(t *testing.T) {
	for _, row := range []struct {
		why        string
		line, part []string
		want       sort
	}{
		{"a plug", []string{"1/2 NPT male"}, []string{"1/2 NPT male"}, byEnd},
		{"a nipple", []string{"1/2 NPT male", "1/4 NPT male"}, []string{"1/2 NPT male", "1/4 NPT male"}, byEnds},
		{"a plug whose thread is open", []string{"1/2 BSP male"}, []string{"G 1/2 male"}, byEndOpen},
		{"a nipple with one open", []string{"1/2 BSP male", "1/4 NPT male"}, []string{"G 1/2 male", "1/4 NPT male"}, byEndsOpen},
		{"a plug of another thread", []string{"1/2 NPT male"}, []string{"G 1/2 male"}, byEndNear},
		{"a nipple with one of another thread", []string{"1/2 NPT male", "1/4 NPT male"}, []string{"G 1/2 male", "1/4 NPT male"}, byEndsNear},
		{"a nipple with one of another size is near", []string{"3/4 NPT male", "1/4 NPT male"}, []string{"1/2 NPT male", "1/4 NPT male"}, byEndsNear},
		{"a plug of another size is another plug", []string{"3/4 NPT male"}, []string{"1/2 NPT male"}, byEndsDiffer},
		{"a tee with two said", []string{"1/2 NPT male", "1/4 NPT female"}, []string{"1/2 NPT male", "3/8 NPT female", "1/4 NPT female"}, byEndsSome},
		{"no end said", nil, []string{"1/2 NPT male"}, byEndsUnsaid},
		{"more ends than a manifold has", []string{"1/2 NPT male", "1/2 NPT male", "1/2 NPT male", "1/2 NPT male", "1/2 NPT male", "1/2 NPT male", "1/2 NPT male"}, []string{"1/2 NPT male"}, byEndsDiffer},
	} {
		m := against("fitting", facts{ends: endsFrom(t, row.part...)})
		m.compareEnds(&facts{kind: "fitting", ends: endsFrom(t, row.line...)}, &m.need.facts)
		require.True(t, m.has(row.want), "%s: %v", row.why, m.list())
		require.Len(t, m.list(), btoi(evidence()[row.want].Points != 0), row.why)
	}
}

func btoi(yes bool) int {
	if yes {
		return 1
	}
	return 0
}

// Of an end that is of another size the next question is whether it is of the planned sort: a tail
// for another hose is the wrong tail, a thread where a tail should be is another part.
func TestAnotherSizeOrAnotherSort(t *testing.T) {
	for _, row := range []struct {
		why        string
		line, part []string
		others     int
		sorts      bool
	}{
		{"as planned", []string{"1/2 NPT male", "19 mm barb"}, []string{"1/2 NPT male", "19 mm barb"}, 0, false},
		{"a tail for another hose", []string{"1/2 NPT male", "25 mm barb"}, []string{"1/2 NPT male", "19 mm barb"}, 1, false},
		{"a thread of the next size", []string{"3/4 NPT male", "19 mm barb"}, []string{"1/2 NPT male", "19 mm barb"}, 1, false},
		{"a thread of another size and of the other sex", []string{"3/4 NPT female", "19 mm barb"}, []string{"1/2 NPT male", "19 mm barb"}, 1, true},
		{"a thread where the tail should be", []string{"1/2 NPT male", "3/4 NPT male"}, []string{"1/2 NPT male", "19 mm barb"}, 1, true},
		{"the tail is not said", []string{"1/2 NPT male"}, []string{"1/2 NPT male", "19 mm barb"}, 1, true},
		{"both are others", []string{"3/4 NPT male", "25 mm barb"}, []string{"1/2 NPT male", "19 mm barb"}, 2, false},
	} {
		m := against("hose tail", facts{ends: endsFrom(t, row.part...)})
		m.compareEnds(&facts{kind: "hose tail", ends: endsFrom(t, row.line...)}, &m.need.facts)
		require.Equal(t, row.others, m.others, row.why)
		require.Equal(t, row.sorts, m.sorts, row.why)
	}
}

// A size said once of an elbow is that of both its ends; of a reducer it is that of one.
func TestOneSizeForAllEnds(t *testing.T) {
	for _, row := range []struct {
		why        string
		line, part []string
		want       fit
	}{
		{"an elbow, said once", []string{"1/2 NPT female"}, []string{"1/2 NPT female", "1/2 NPT female"}, fitSame},
		{"a tee, said once", []string{"1/2 NPT female"}, []string{"1/2 NPT female", "1/2 NPT female", "1/2 NPT female"}, fitSame},
		{"a reducer, said once", []string{"1/2 NPT female"}, []string{"1/2 NPT female", "1/4 NPT female"}, fitSome},
		{"a street elbow, said once", []string{"1/2 NPT female"}, []string{"1/2 NPT female", "1/2 NPT male"}, fitSome},
		{"an elbow whose sex is not said", []string{"1/2 NPT"}, []string{"1/2 NPT female", "1/2 NPT female"}, fitSome},
		{"an adaptor of two threads, said once", []string{"1/2 NPT female"}, []string{"1/2 NPT female", "G 1/2 female"}, fitSome},
	} {
		m := against("elbow", facts{ends: endsFrom(t, row.part...)})
		m.compareEnds(&facts{kind: "elbow", ends: endsFrom(t, row.line...)}, &m.need.facts)
		require.Equal(t, row.want, m.fit, row.why)
	}
}

// What a line reads as is said in a sentence, and an end that the words leave open by all that it
// may be: a buyer who reads one reading orders it.
func TestWhatALineReadsAs(t *testing.T) {
	for kind, want := range map[string]string{"elbow": "an elbow", "adaptor": "an adaptor", "union": "a union", "hose tail": "a hose tail", "other": "something of another sort"} {
		require.Equal(t, want, article(kind))
	}
	open := endsFrom(t, "1/2 BSP female")[0].readings
	require.Equal(t, "G 1/2 female or Rp 1/2 female or Rc 1/2 female", openText(open))
	require.Equal(t, "G 1/2 male", openText(endsFrom(t, "G 1/2 male")[0].readings))
	require.Empty(t, openText(nil))
	require.Equal(t, "Struck out", capital("struck out"))
	require.Empty(t, capital(""))
}
