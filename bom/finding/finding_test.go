package finding

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Worst first, then by place, so that the same build prints the same text.
func TestSort(t *testing.T) {
	at := func(line int) Place { return Place{File: "a.toml", Line: line} }
	list := []Finding{
		{Severity: Note, Slug: "n", Place: at(1)},
		{Severity: Stop, Slug: "b", Place: at(9)},
		{Severity: Stop, Slug: "a", Place: at(9)},
		{Severity: Caution, Slug: "c", Place: at(2)},
		{Severity: Stop, Slug: "z", Place: at(3)},
	}
	Sort(list)
	var slugs string
	for _, f := range list {
		slugs += f.Slug
	}
	require.Equal(t, "zabcn", slugs)
	require.Equal(t, 3, Count(list, Stop))
	require.Equal(t, 1, Count(list, Caution))
}

// The zero severity is no severity: a finding that forgot to say it shows.
func TestSeverityWords(t *testing.T) {
	require.Equal(t, []string{"stop", "caution", "note", "no severity"}, []string{Stop.String(), Caution.String(), Note.String(), Severity(0).String()})
}
