package title

import "testing"

// The threads an inch stand behind an x or a blank too, and are no length and no tube.
// Written down before any was read.
func TestThreadsAnInchApartFromTheSize(t *testing.T) {
	readTitled(t, []titled{
		{"Hex nipple 1/2 x 14 NPT", "NPT 1/2 male; NPT 1/2 male", "nipple", ""},
		{"Bush 3/4 x 14 NPT x 1/2 x 14 NPT", "NPT 3/4 male; NPT 1/2 female", "bush", ""},
		{`Coupling 1" x 11 1/2 NPT brass`, "NPT 1 female; NPT 1 female", "coupling", "brass"},
		{"Plug 1/4 - 18 NPT 316", "NPT 1/4 male", "plug", "316"},
		{"Hose tail 1/2 BSP male x 14 mm", "BSP 1/2 male; BARB 14 mm", "hose tail", ""},
	})
}

// A class of fit says the sex: A is the bolt's, B the nut's, in 1, 2 and 3 alike (ASME B1.1); of metric
// threads small letters are the bolt's, capitals the nut's (ISO 965-1).
func TestClassesOfFitSayTheSex(t *testing.T) {
	readMeantEnds(t, []lineMeant{
		{"1A", "9/16-18-1A JIC", "JIC -6 male"}, {"2A", "9/16-18-2A JIC", "JIC -6 male"}, {"3A", "9/16-18-3A JIC", "JIC -6 male"},
		{"1B", "9/16-18-1B ORB", "ORB -6 female"}, {"2B", "9/16-18-2B ORB", "ORB -6 female"}, {"3B", "9/16-18-3B ORB", "ORB -6 female"},
		{"no class 4", "9/16-18-4A JIC", "refused"},
		{"letters behind it are a code", "9/16-18-2AB JIC", "refused"},
		{"6g", "M22x1.5-6g", "M M22x1.5 male"}, {"6h is a bolt's too", "M22x1.5-6h", "M M22x1.5 male"},
		{"6H", "M22x1.5-6H", "M M22x1.5 female"}, {"6G is a nut's", "M22x1.5-6G", "M M22x1.5 female"},
		{"without the hyphen", "M22x1.5 6H", "M M22x1.5 female"},
	})
}

// What stands behind a metric size: its pitch, a pin, another size.
func TestBehindAMetricSize(t *testing.T) {
	readMeantEnds(t, []lineMeant{
		{"a pitch behind a hyphen", "M22-1.5 male", "M M22x1.5 male"},
		{"a coarse pitch of a large thread (ISO 261: M42 has 4.5 mm), which no fitting has: asked", "M42-4.5 male", "?"},
		{"and as it is written with an x", "M42x4.5 male", "?"},
		{"a figure above the largest pitch is another size: two ends", "M42-6.5 male", "refused"},
		{"the unit behind the pitch", "M22x1.5 mm male", "M M22x1.5 male"},
		{"a comma in the pitch", "M 22 x 1,5 male", "M M22x1.5 male"},
		{"the pin of a pressure washer", "M22-14 male", "M M22x1.5|M22x1|M22x2|M22x2.5 male nose-o-ring"},
		{"and its other one", "M22-15 female", "M M22x1.5|M22x1|M22x2|M22x2.5 female nose-o-ring"},
		{"of no other thread", "M24-14 male", "refused"},
	})
	readMeant(t, []lineMeant{
		{"M before a fraction is male", "Plug M 1/2 NPT", "NPT 1/2 male"},
		{"M before a French pair is male", "Raccord M 12 x 17 F 15 x 21", "BSP 3/8 male; BSP 1/2 female"},
		{"millimetres of a tube behind it are no pitch", "Adaptor M18x1.5 male x 12 mm tube", "M M18x1.5 male; TUBE 12 mm"},
		{"an inch size behind the x is another end", `Adaptor M22 x 1/2" NPT female`, "M M22x1.5|M22x1|M22x2|M22x2.5; NPT 1/2 female"},
	})
}

// Figures behind an inch size are threads an inch where that size has them (ASME B1.20.1, ISO 228-1).
func TestThreadsAnInchOrSomethingElse(t *testing.T) {
	readMeant(t, []lineMeant{
		{"two and a half by eight", "Coupling 2 1/2 - 8 NPT", "NPT 2 1/2 female; NPT 2 1/2 female"},
		{"with a blank alone", "Plug 1/2 14 NPT", "NPT 1/2 male"},
		{"eleven and a half behind a blank", "Plug 1 11 1/2 NPT", "NPT 1 male"},
		{"the word for a thread is enough", "Coupling 1/2 x 14 thread", "PIPE 1/2 female; PIPE 1/2 female"},
		{"fourteen millimetres are none", "Hose tail 1/2 NPT male x 14 mm", "NPT 1/2 male; BARB 14 mm"},
		{"a thread of no table before UNF is that thread", "Plug 9/16-18 UNF", "JIC/ORB/ORFS/UN -6|-4|9/16-18 male"},
	})
}
