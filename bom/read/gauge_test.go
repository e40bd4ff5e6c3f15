package read

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A gauge of M10x1 is open between a parallel thread and a keg, until one word says which.
func TestGaugeOfM10(t *testing.T) {
	for end, want := range map[string][]string{
		"M10x1 male": {"M10x1 male", "M10x1 keg male"}, "M12x1 male": {"M12x1 male", "M12x1 keg male"}, "M10x1 male keg": {"M10x1 keg male"}, "M10x1 male parallel": {"M10x1 male"}, "M20x1.5 male": {"M20x1.5 male"},
	} {
		b, faults := Parse("build.toml", []byte("[build]\nname = \"x\"\ncurrency = \"EUR\"\n[[item]]\nid = \"x\"\nkind = \"gauge\"\nports = { in = '"+end+"' }\n[[item]]\nid = \"y\"\nkind = \"drain\"\n[[run]]\nname = \"r\"\npath = [\"x\", \"y\"]\n"))
		require.NoError(t, faults.Err())
		var got []string
		p := &b.ByID["x"].Ports[0]
		for _, c := range p.End.Candidates {
			got = append(got, c.String())
		}
		require.Equal(t, want, got, end)
		require.Equal(t, len(want) > 1, p.End.Question != "", end)
	}
}
