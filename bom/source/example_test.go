package source_test

import (
	"fmt"

	"handtight/bom/source"
)

// Common practice, no source: 55 bar below. Check values, and no limit rests on them.

// A reader is plain code; its faults come all at once.
func Example() {
	doc, faults := source.Parse("kittiwake.toml", []byte(`[duty]
pressure = 55
watr = "17 C"
`))
	if len(faults) > 0 {
		fmt.Println(faults)
		return
	}
	r := source.NewReader(doc)
	file := r.Root()
	if duty, ok := file.Table("duty"); ok {
		duty.RequiredText("pressure", "60 bar")
		duty.Text("water", "17 C")
		duty.Done()
	}
	file.Done()
	fmt.Println(r.Faults())
	// Output:
	// kittiwake.toml line 2, column 12: `pressure` is the number 55 without its unit
	//     pressure = 55
	//   write the unit, in quotes: for example `pressure = "55 bar"`
	//
	// kittiwake.toml line 3, column 1: unknown key `watr`
	//     watr = "17 C"
	//   write `water`
}
