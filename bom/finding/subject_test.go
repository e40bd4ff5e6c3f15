package finding

import (
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

// What a finding is about is named as people name it on the tag.
func TestSubjectWords(t *testing.T) {
	joint := Subject{Kind: Joint, Joint: 12, Unit: "tee", Port: "a", Unit2: "hose/+2", Port2: "b"}
	for _, c := range []struct {
		f    Finding
		want string
	}{
		{Finding{Subject: joint}, "J12 tee.a - hose/+2.b"},
		{Finding{Subject: Subject{Kind: Unit, Unit: "pump"}}, "pump"},
		{Finding{Subject: Subject{Kind: Port, Unit: "tee", Port: "branch"}}, "tee.branch"},
		{Finding{Subject: Subject{Kind: State, Unit: "cock", State: "cock shut"}}, "cock shut"},
		{Finding{Subject: Subject{Kind: Item, Item: "tape"}}, "tape"},
		{Finding{Subject: Subject{Kind: Unit, Unit: "tail/+2"}, Also: []Subject{joint, joint}}, "tail/+2 and 2 more"},
		{Finding{Subject: Subject{Kind: Unit, Unit: "tail/+2", Segment: "brine: pump to tee"}, Also: []Subject{joint}}, "tail/+2 and 1 more in brine: pump to tee"},
		{Finding{Subject: Subject{Kind: Unit, Unit: "tail/+2", Segment: "brine: pump to tee"}}, "tail/+2"},
		{Finding{Subject: Subject{Kind: Segment, Segment: "brine: pump to tee"}}, "brine: pump to tee"},
		{Finding{Subject: Subject{Kind: Offer, Offer: "quay: tail"}}, "quay: tail"},
		{Finding{Subject: Subject{Kind: Line, Line: "line 4"}}, "line 4"},
		{Finding{Subject: Subject{Kind: File, File: "cart.csv"}}, "cart.csv"},
		{Finding{Subject: Subject{Kind: Build, Build: "Sandpiper"}}, "Sandpiper"},
	} {
		require.Equal(t, c.want, c.f.At())
		require.NotEqual(t, "no subject", c.f.Subject.Kind.String())
	}
	require.Equal(t, []string{"J12", "pump"}, []string{joint.Short(), Subject{Kind: Unit, Unit: "pump"}.Short()})
	require.Equal(t, "no subject", Kind(0).String())
	for c := Bursts; c <= Money; c++ {
		require.NotEmpty(t, c.Heading(false))
		require.Contains(t, c.Heading(true), "NOT KNOWN")
	}
	require.Equal(t, "NO CONSEQUENCE", Consequence(0).Heading(true))
	require.Equal(t, "no consequence", Consequence(0).String())
}

// Which of several alike, the number of a joint and the side it is seen from are a matter of
// counting; names are those of the other build.
func TestAlike(t *testing.T) {
	same := func(unit string) string { return unit }
	rename := func(unit string) string {
		if unit == "strainer" {
			return "strainer-b"
		}
		return unit
	}
	a := Subject{Kind: Joint, Joint: 3, Unit: "strainer", Port: "in", Unit2: "tail/+1", Port2: "a"}
	b := Subject{Kind: Joint, Joint: 9, Unit: "tail/+4", Port: "a", Unit2: "strainer-b", Port2: "in"}
	require.Equal(t, b.Alike(same), a.Alike(rename))
	require.NotEqual(t, b.Alike(same), a.Alike(same))
	b.Port = "b"
	require.NotEqual(t, b.Alike(same), a.Alike(rename), "another port")
	shut := Subject{Kind: State, Unit: "strainer", State: "strainer shut"}
	require.Equal(t, Subject{Kind: State, Unit: "strainer-b", State: "strainer-b shut"}.Alike(same), shut.Alike(rename))
	require.NotEqual(t, Subject{Kind: Unit, Unit: "spare/north"}.Alike(same), Subject{Kind: Unit, Unit: "spare/south"}.Alike(same), "a label tells units apart")
}

// By danger: stops before cautions, what bursts before what floods and what only costs, what is
// known to be wrong before what is not known, and the highest pressure first.
func TestByDanger(t *testing.T) {
	bar := func(v float64) Stake { return Stake{Pressure: quantity.Bar.Times(v), Known: true} }
	want := []Finding{
		{Severity: Stop, Consequence: Bursts, Stake: bar(math.Inf(1))},
		{Severity: Stop, Consequence: Bursts, Stake: bar(97)},
		{Severity: Stop, Consequence: Bursts, Stake: bar(57)},
		{Severity: Stop, Consequence: Bursts},
		{Severity: Stop, Consequence: Bursts, NotKnown: true, Stake: bar(97)},
		{Severity: Stop, Consequence: Floods, Stake: bar(1)},
		{Severity: Stop, Consequence: Fire},
		{Severity: Stop, Consequence: LetsGo, Stake: bar(57)},
		{Severity: Stop, Consequence: Leaks, Stake: bar(3)},
		{Severity: Stop, Consequence: Spoils},
		{Severity: Stop, Consequence: DoesNotGoTogether, Stake: bar(57)},
		{Severity: Stop, Consequence: Money},
		{Severity: Caution, Consequence: Bursts, Stake: bar(97)},
	}
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.Permutation(want).Draw(t, "findings")
		slices.SortStableFunc(list, func(a, b Finding) int { return a.danger(&b) })
		require.Equal(t, want, list)
	})
}

// Entries lose nothing and double nothing; each holds one severity, one consequence and one
// state of knowledge, and one rule or one part; they stand by danger, and so does what is in
// an entry of one rule.
func TestEntries(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		list := rapid.SliceOfN(rapid.Custom(drawFinding), 0, 12).Draw(t, "findings")
		seen := map[int]bool{}
		last := -1
		for _, e := range Entries(list) {
			require.NotEmpty(t, e)
			rules, parts := map[string]bool{}, map[string]bool{}
			for k, i := range e {
				require.False(t, seen[i])
				seen[i] = true
				f, first := &list[i], &list[e[0]]
				require.Equal(t, []any{first.Severity, first.Consequence, first.NotKnown}, []any{f.Severity, f.Consequence, f.NotKnown})
				rules[f.Slug], parts[f.Subject.String()] = true, true
				if k > 0 {
					require.LessOrEqual(t, first.danger(f), 0)
				}
			}
			require.True(t, len(rules) == 1 || len(parts) == 1)
			if last >= 0 {
				require.LessOrEqual(t, list[last].danger(&list[e[0]]), 0)
			}
			last = e[0]
		}
		require.Len(t, seen, len(list))
	})
}

func drawFinding(t *rapid.T) Finding {
	return Finding{
		Severity: rapid.SampledFrom([]Severity{Stop, Caution, Note}).Draw(t, "severity"), Slug: rapid.SampledFrom([]string{"a", "b", "c"}).Draw(t, "slug"),
		Consequence: rapid.SampledFrom([]Consequence{Bursts, Floods, Money}).Draw(t, "consequence"), NotKnown: rapid.Bool().Draw(t, "not known"),
		Stake: Stake{Pressure: quantity.Bar * quantity.Pressure(rapid.IntRange(0, 3).Draw(t, "bar")), Known: rapid.Bool().Draw(t, "known")},
		Subject: rapid.SampledFrom([]Subject{
			{Kind: Unit, Unit: "relief"}, {Kind: Unit, Unit: "pump"}, {Kind: Joint, Joint: 2, Unit: "a", Unit2: "b"}, {Kind: Joint, Joint: 11, Unit: "b", Unit2: "c"},
		}).Draw(t, "subject"),
	}
}
