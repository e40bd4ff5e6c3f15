package readings

import (
	"encoding/csv"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/pressure/process/trend"
	"handtight/pressure/quantity"
)

// Twenty logs of one plant, ten of it sound and ten with one fault, made by a program written apart and
// in another language: the element marched in its own way, with noise of gauges, meters and
// thermometers, and the answers written before this one read them. First figure: 20 of 20. (Of the
// third, "cold water" or no fault was the answer: the product as read fell by a quarter for that alone.)
func TestLogsMadeApart(t *testing.T) {
	f, err := os.Open("testdata/apart/answers.csv")
	require.NoError(t, err)
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	require.NoError(t, err)
	require.Len(t, rows, 21)
	for _, r := range rows[1:] {
		text, err := os.ReadFile("testdata/apart/" + r[0])
		require.NoError(t, err)
		log, _, faults := Read(r[0], text)
		require.Empty(t, faults, r[0])
		a, err := trend.Look(trend.Plant{Salinity: 34, Feed: 6.72 * quantity.LitrePerMinute}, log)
		require.NoError(t, err, r[0])
		require.Equal(t, r[1], a.Cause().String(), r[0])
	}
}
