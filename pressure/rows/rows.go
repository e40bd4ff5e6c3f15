// Package rows reads the CSV tables that are built into the program, a line at a time and
// by column heading. Most of what a command does before its first answer is reading
// tables, so [Each] fills one map for all lines of a table.
package rows

import (
	"encoding/csv"
	"errors"
	"io"
	"io/fs"
	"iter"
	"maps"
	"strings"
)

// Each gives the lines below the heading of a table, numbered from 0, each by column
// heading. The map is filled again for the next line: keep its cells, never the map.
//
// The tables are part of the program and their tests read each line: a missing file, or
// one that is no table, panics with the owner's name before the fault.
func Each[R ~map[string]string](owner string, files fs.FS, name string) iter.Seq2[int, R] {
	text, err := fs.ReadFile(files, name)
	if err != nil {
		panic(owner + ": " + err.Error())
	}
	return func(yield func(int, R) bool) {
		in := csv.NewReader(strings.NewReader(string(text)))
		heading, err := in.Read()
		if err != nil {
			panic(owner + ": " + name + ": " + err.Error())
		}
		in.ReuseRecord = true
		row := make(R, len(heading))
		for i := 0; ; i++ {
			cells, err := in.Read()
			if errors.Is(err, io.EOF) {
				return
			}
			if err != nil {
				panic(owner + ": " + name + ": " + err.Error())
			}
			for k, h := range heading {
				row[h] = cells[k]
			}
			if !yield(i, row) {
				return
			}
		}
	}
}

// All gives the lines of a table as [Each] does, each with a map of its own.
func All[R ~map[string]string](owner string, files fs.FS, name string) []R {
	var out []R
	for _, r := range Each[R](owner, files, name) {
		out = append(out, maps.Clone(r))
	}
	return out
}
