package repair_test

import "handtight/bom/repair"

// Cases written down, with what a fitter would buy, before the search had seen any of them.
var blind = []workedCase{
	{name: "B1", a: "R 1/2 male", b: "1/2 NPT male", o: repair.Options{Pressure: 57 * bar, Water: "sea"}, pieces: 1, has: []string{"Rc 1/2 female", "1/2 NPT female", "316"}, not: []string{"brass", "bronze"}},
	{name: "B2", a: "JIC -8 female swivel", b: "1/2 NPT female", o: repair.Options{Pressure: 70 * bar, Water: "sea"}, pieces: 1, has: []string{"JIC -8 male", "1/2 NPT male", "316"}},
	{name: "B3", a: "3/4 NPT male", b: "1/2 NPT male", o: repair.Options{Pressure: 60 * bar, Water: "sea"}, pieces: 1, has: []string{"educing coupling", "class 3000", "316"}, not: []string{"bush", "class 150"}},
	{name: "B4", a: "1 NPT female", b: "1/2 NPT male", o: repair.Options{Pressure: 8 * bar, Water: "sea", Below: true}, pieces: 1, has: []string{"bush", "1 NPT male", "1/2 NPT female"}, not: []string{"brass"}},
	{name: "B5", a: "G 1/2 male", b: "G 1/2 male", o: repair.Options{Pressure: 10 * bar}, pieces: 1, has: []string{"ocket", "G 1/2 female x G 1/2 female"}},
	{name: "B6", a: "19 mm bore", b: "3/4 NPT female", o: repair.Options{Pressure: 2 * bar, Water: "sea"}, pieces: 1, has: []string{"ose tail", "3/4 NPT male", "19 mm barb"}, not: []string{", brass"}},
	{name: "B7", a: "12L male", b: "1/2 NPT female", o: repair.Options{Pressure: 57 * bar, Water: "sea"}, pieces: 1, has: []string{"12L female swivel", "1/2 NPT male", "316"}, not: []string{"steel"}},
	{name: "B8", a: "3/4 NH male", b: "G 3/4 female", o: repair.Options{Pressure: 2 * bar}, pieces: 1, has: []string{"3/4 NH female swivel", "G 3/4 male"}},
	{name: "B9", a: "G 1/2 male chamfer", b: "1/2 NPT female", o: repair.Options{Pressure: 60 * bar, Water: "sea", Turns: true}, pieces: 1, has: []string{"wivel", "1/2 NPT male", "316"}},
	{name: "B10", a: "1/4 NPT female", b: "1/4 NPT female", o: repair.Options{Pressure: 90 * bar, Water: "sea"}, pieces: 1, has: []string{"exagon nipple", "class 3000", "316"}, not: []string{"class 150"}},
	{name: "B11", a: "8 mm push-in", b: "3/8 NPT female", o: repair.Options{Water: "product"}, pieces: 2, has: []string{"iece of tube", "8 mm push-in", "3/8 NPT male", "acetal"}},
	{name: "B12", a: "1/2 NPT male", b: "G 1/2 male", o: repair.Options{Pressure: 6 * bar, Water: "sea", Material: "brass"}, none: "brass"},
	{name: "B13", a: "2 NPT male", b: "1/4 NPT female", o: repair.Options{Pressure: 5 * bar}, none: "change one of the two parts"},
	{name: "B14", a: "G 3/8 male LH", b: "G 3/8 male", none: "left-hand"},
	{name: "B15", a: "PG13.5 male", b: "G 1/2 female", none: "cable gland"},
}
