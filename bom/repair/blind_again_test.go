package repair_test

import "handtight/bom/repair"

// A second list of pairs, written down with what a fitter would buy before the search had seen any.
// First agreement: 17 of 25. C5 was a fault of the search: a chain of one that is refused hid those of
// two. C6, C7, C17, C18 and C21 were not on the shelf: hose, reducing joiners, face seals, ferrules.
// Corrected since, where the list was wrong: C9, since nothing that was seen rates an M20x1.5 thread
// at 90 bar, so that the answer is none and says so; and C19, since a push-in fitting takes the tube of a
// compression end as well as a second compression end does.
var blindAgain = []workedCase{
	{name: "C1", a: "1/4 NPT male", b: "G 1/4 male", pieces: 1, has: []string{"1/4 NPT female", "G 1/4 female"}},
	{name: "C2", a: "3/8 NPT female", b: "JIC -6 male", o: repair.Options{Pressure: 70 * bar, Water: "sea"}, pieces: 1, has: []string{"JIC -6 female swivel", "3/8 NPT male", "316"}},
	{name: "C3", a: "1/2 NPT female", b: "3/8 NPT female", o: repair.Options{Pressure: 60 * bar, Water: "sea"}, pieces: 1, has: []string{"educing nipple", "1/2 NPT male", "3/8 NPT male", "class 3000"}, not: []string{"class 150"}},
	{name: "C4 no bush of three steps at this pressure", a: "3/4 NPT female", b: "1/4 NPT male", o: repair.Options{Pressure: 60 * bar, Water: "sea"}, pieces: 2, has: []string{"316"}, not: []string{"bush 3/4 NPT male x 1/4"}},
	{name: "C5 a union turns last", a: "1/2 NPT female", b: "1/2 NPT female", o: repair.Options{Pressure: 60 * bar, Water: "sea", Turns: true}, pieces: 2, has: []string{"nion", "ipple"}},
	{name: "C6 two tails of parts: hose", a: "19 mm barb", b: "19 mm barb", o: repair.Options{Pressure: 2 * bar, Water: "sea"}, pieces: 1, has: []string{"hose", "19 mm"}},
	{name: "C7 two hoses", a: "13 mm bore", b: "19 mm bore", o: repair.Options{Pressure: 2 * bar, Water: "sea"}, pieces: 1, has: []string{"oiner", "13 mm barb", "19 mm barb"}},
	{name: "C8", a: "G 1/2 male", b: "1/2 NPT female", o: repair.Options{Pressure: 60 * bar, Water: "sea"}, pieces: 1, has: []string{"G 1/2 female", "1/2 NPT male", "316"}},
	{name: "C9 a gauge", a: "M20x1.5 male", b: "1/4 NPT female", o: repair.Options{Pressure: 90 * bar, Water: "sea"}, none: "nothing says that it holds 90 bar"},
	{name: "C10", a: "10 mm push-in", b: "1/4 NPT female", o: repair.Options{Pressure: 6 * bar, Water: "product"}, pieces: 2, has: []string{"iece of tube", "10 mm push-in", "1/4 NPT male"}},
	{name: "C11", a: "12S male", b: "3/8 NPT female", o: repair.Options{Pressure: 120 * bar}, pieces: 1, has: []string{"12S female swivel", "3/8 NPT male"}},
	{name: "C12", a: "Rc 3/8", b: "3/8 NPT female", o: repair.Options{Pressure: 80 * bar, Water: "sea"}, pieces: 1, has: []string{"R 3/8 male", "3/8 NPT male", "316"}},
	{name: "C13", a: "1 NPT male", b: "3/4 NPT female", o: repair.Options{Pressure: 8 * bar, Water: "sea"}, pieces: 1, has: []string{"1 NPT female", "3/4 NPT male"}, not: []string{", brass"}},
	{name: "C14 drinking water", a: "1/2 NPT male", b: "1/2 NPT male", o: repair.Options{Pressure: 6 * bar, Water: "product"}, pieces: 1, has: []string{"oupling", "1/2 NPT female"}, not: []string{"galvanised", ", brass", ", bronze"}},
	{name: "C15", a: "3/4 NH female swivel", b: "1/2 NPT female", o: repair.Options{Pressure: 4 * bar}, pieces: 1, has: []string{"3/4 NH male", "1/2 NPT male"}},
	{name: "C16", a: "G 1 male", b: "G 3/4 male", o: repair.Options{Pressure: 5 * bar}, pieces: 1, has: []string{"ocket", "1 female", "3/4 female"}},
	{name: "C17", a: "ORFS -8 male", b: "JIC -8 male", o: repair.Options{Pressure: 100 * bar}, pieces: 1, has: []string{"ORFS -8 female swivel", "JIC -8 female swivel"}},
	{name: "C18", a: "1 1/2 in ferrule", b: "1 NPT male", o: repair.Options{Pressure: 8 * bar, Water: "sea"}, pieces: 1, has: []string{"1 1/2 in ferrule", "1 NPT female", "316"}},
	{name: "C19", a: "15 mm compression", b: "1/2 NPT female", pieces: 2, has: []string{"tube", "15 mm push-in x 1/2 NPT male"}},
	{name: "C20", a: "G 1/4 female", b: "1/4 NPT female", o: repair.Options{Pressure: 90 * bar, Water: "sea"}, pieces: 1, has: []string{"G 1/4 male", "1/4 NPT male", "316"}},
	{name: "C21 a part's own tail: hose and another tail", a: "3/4 NPT male", b: "19 mm barb", o: repair.Options{Pressure: 2 * bar, Water: "sea"}, pieces: 2, has: []string{"ose tail", "3/4 NPT female", "19 mm bore"}},
	{name: "C22 plastic into plastic", a: "1/2 NPT female plastic", b: "G 1/2 female", o: repair.Options{Pressure: 4 * bar, Water: "product"}, pieces: 1, has: []string{"1/2 NPT male plastic", "G 1/2 male"}},
	{name: "C23", a: "1/8 NPT female", b: "1 NPT male", o: repair.Options{Pressure: 20 * bar}, pieces: 2, has: []string{"1/8 NPT male", "1 NPT female"}},
	{name: "C24", a: "JIC -6 female swivel", b: "JIC -8 female swivel", o: repair.Options{Pressure: 80 * bar, Water: "sea"}, pieces: 1, has: []string{"JIC -8 male", "JIC -6 male", "316"}},
	{name: "C25 nothing on a skin fitting but its seacock", a: "3/4 NPS male", b: "19 mm bore", o: repair.Options{Below: true}, none: "seacock"},
}
