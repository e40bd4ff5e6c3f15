package title

import (
	"fmt"
	"strconv"
)

// row is one line of a word list, by column heading.
type row map[string]string

// number returns a column that must hold a number; a fault in an embedded list
// is a broken build.
func (r row) number(column string) float64 {
	v, err := strconv.ParseFloat(r[column], 64)
	if err != nil {
		panic(fmt.Sprintf("title: column %s holds %q, a number is due", column, r[column]))
	}
	return v
}
