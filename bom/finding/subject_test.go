package finding

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"
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
	require.Equal(t, "no subject", Kind(0).String())
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
	bar := func(v float64) Stake { return Stake{Bar: v, Known: true} }
	want := []Finding{
		{Severity: Stop, Consequence: Bursts, Stake: bar(math.Inf(1))},
		{Severity: Stop, Consequence: Bursts, Stake: bar(97)},
		{Severity: Stop, Consequence: Bursts, Stake: bar(55)},
		{Severity: Stop, Consequence: Bursts},
		{Severity: Stop, Consequence: Bursts, NotKnown: true, Stake: bar(97)},
		{Severity: Stop, Consequence: Floods, Stake: bar(1)},
		{Severity: Stop, Consequence: Fire},
		{Severity: Stop, Consequence: LetsGo, Stake: bar(55)},
		{Severity: Stop, Consequence: Leaks, Stake: bar(3)},
		{Severity: Stop, Consequence: Spoils},
		{Severity: Stop, Consequence: DoesNotGoTogether, Stake: bar(55)},
		{Severity: Stop, Consequence: Money},
		{Severity: Caution, Consequence: Bursts, Stake: bar(97)},
	}
	rapid.Check(t, func(t *rapid.T) {
		require.Equal(t, want, ByDanger(rapid.Permutation(want).Draw(t, "findings")))
	})
}

// Groups lose nothing: findings of one cause stand together, others alone, in their order.
func TestGrouped(t *testing.T) {
	list := []Finding{
		{Slug: "a", Severity: Stop, Cause: "hose", Reason: "1"}, {Slug: "b", Severity: Stop, Reason: "2"}, {Slug: "a", Severity: Stop, Cause: "hose", Reason: "3"},
		{Slug: "a", Severity: Note, Cause: "hose", Reason: "4"}, {Slug: "b", Severity: Stop, Reason: "5"},
	}
	require.Equal(t, [][]Finding{{list[0], list[2]}, {list[1]}, {list[3]}, {list[4]}}, Grouped(list))
}
