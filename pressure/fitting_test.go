package pressure

import (
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/pressure/quantity"
)

func TestFittingRating(t *testing.T) {
	for _, c := range []struct {
		why, class, material, family string
		male                         bool
		size                         string
		bar                          float64
		basis                        Basis
		status                       Status
		source                       string
	}{
		{"the trap: cast 316 of class 150", "class 150", "316", "NPT", false, "1/2", 20.68, FittingClass, Seen, `MSS SP-114, 300 psi to 66 C; page "Heavy pattern vs light pattern"`},
		{"the same by its standard", "SP-114 class 150", "316L stainless", "NPT", true, "1/2", 20.68, FittingClass, Seen, "MSS SP-114, 300 psi"},
		{"pounds in stainless may be a light pattern", "150 lb", "316", "NPT", false, "1/2", 10.34, FittingClass, Seen, "316 threaded fittings catalogue page, 150 psi"},
		{"the same by the sign for pounds", "150#", "stainless", "NPT", false, "1/2", 10.34, FittingClass, Seen, "316 threaded fittings catalogue page, 150 psi"},
		{"pounds of the heavy pattern are the class", "SP-114 150 lb", "316", "NPT", false, "1/2", 20.68, FittingClass, Seen, "MSS SP-114, 300 psi"},
		{"BSP in stainless is the light pattern whatever it is called", "class 150", "316", "Rc", false, "1/2", 10.34, FittingClass, Seen, "316 threaded fittings catalogue page, 150 psi"},
		{"malleable iron has no light pattern", "150 lb", "malleable iron", "NPT", false, "3/4", 20.68, FittingClass, Seen, "ASME B16.3 class 150, 300 psi"},
		{"class 300 malleable iron of half an inch", "class 300", "malleable iron", "NPT", false, "1/2", 137.9, FittingClass, Seen, "ASME B16.3 class 300, 2000 psi"},
		{"class 300 malleable iron of 2 inch", "class 300", "malleable iron", "NPT", false, "2", 103.42, FittingClass, Seen, "ASME B16.3 class 300, 1500 psi"},
		{"cast bronze", "class 125", "bronze", "NPT", false, "3/4", 13.79, FittingClass, Seen, "ASME B16.15 class 125, 200 psi"},
		{"forged class 3000: the class read as psi is below the wall's 393 bar", "class 3000", "316", "NPT", false, "1/2", 210, FittingClass, Seen, `page "3000 series"`},
		{"pounds of a forged fitting", "3000 lb", "316", "NPT", false, "1/2", 210, FittingClass, Seen, `page "3000 series"`},
		{"class 2000 by its wall", "class 2000", "316L", "NPT", false, "1", 160.65, Estimate, Computed, "ASME B31.3 304.1.2, 2330 psi"},
		{"schedule 80 steel nipple is the same wall", "sch 80", "316", "NPT", true, "1/2", 251.66, Estimate, Computed, "ASME B31.3 304.1.2, 3650 psi"},
		{"class 2000 is not above class 3000, whatever its wall comes to (291 bar)", "class 2000", "316", "NPT", true, "3/8", 210, Estimate, Computed, `page "3000 series", 210 bar`},
		{"class 2000 of a size not said is the least of all sizes", "class 2000", "316L", "NPT", true, "", 160.65, Estimate, Computed, "the row of 1 inch"},
		{"ISO 4144 is a light pattern", "ISO 4144", "316", "Rp", false, "1/2", 10.34, FittingClass, Seen, "316 threaded fittings catalogue page, 150 psi"},
		{"with a class beside it too", "ISO 4144 class 150", "316", "NPT", true, "1/2", 10.34, FittingClass, Seen, "the same: no cold rating of ISO 4144 was found"},
		{"written in one word", "ISO4144 150#", "stainless", "G", true, "1/2", 10.34, FittingClass, Seen, "the same"},
		{"light, with the class before it", "class 150, light", "316", "NPT", false, "1/2", 10.34, FittingClass, Seen, "the same"},
		{"a PN and a class: the lower", "ISO 4144 PN 16", "316", "Rp", false, "1/2", 10.34, FittingClass, Seen, "the same"},
		{"the PN where it is the lower", "class 3000, PN 100", "316", "NPT", false, "1/2", 100, FittingClass, CommonPractice, "EN 1333 and ISO 7268"},
		{"class 1000 is remembered", "class 1000", "316", "NPT", false, "1/2", 68.95, FittingClass, Memory, "memory: MSS SP-114"},
		{"a union of class 3000 has a standard of its own", "class 3000 union", "316", "NPT", false, "1/2", 206.84, FittingClass, Memory, "memory: MSS SP-83"},
		{"PN is bar by its name", "PN16", "PVC", "G", false, "1", 16, FittingClass, CommonPractice, "EN 1333 and ISO 7268"},
		{"PN with a gap", "PN 40", "", "", false, "", 40, FittingClass, CommonPractice, "EN 1333 and ISO 7268"},
		{"threaded PVC is half of plain: 425 psi", "sch 80", "uPVC", "NPT", true, "1/2", 29.30, FittingClass, Computed, `page "Temperature derating - schedule 40 and 80"; 850 psi of Machinery's Handbook 31 p.2770`},
		{"plain schedule 80 PVC", "schedule 80", "PVC", "SOCKET", false, "1/2", 58.61, FittingClass, Seen, "Machinery's Handbook 31 p.2770 table 13, 850 psi"},
		{"an unknown end of PVC is held for a threaded one", "sch 80", "PVC", "", false, "1/2", 29.30, FittingClass, Computed, "the lowest row"},
		{"machined 316 male", "machined", "316", "NPT", true, "1/2", 534.34, FittingClass, Seen, `page "NPT pipe end pressure ratings" table 6, 7750 psi`},
		{"machined brass female", "instrument fitting", "brass", "NPT", false, "1/2", 168.92, FittingClass, Seen, `page "NPT pipe end pressure ratings" table 6, 2450 psi`},
		{"37 degree flare -2", "", "steel", "JIC", true, "-2", 344.74, FittingClass, Seen, `SAE J514, 5000 psi; page "Pressure ratings for hydraulic adapters" has the same`},
		{"37 degree flare -8", "", "carbon steel", "JIC", true, "-8", 310.26, FittingClass, Seen, `SAE J514, 4500 psi; page "37-Degree JIC Flared Hydraulic Fittings Dimensions and More"`},
		{"its swivel holds less", "", "carbon steel", "JIC", false, "-8", 275.79, FittingClass, Seen, "SAE J514, 4000 psi, the same page"},
		{"37 degree flare in stainless is carried over", "", "316", "JIC", true, "-6", 344.74, Estimate, Judgement, "SAE J514, 5000 psi, for steel"},
		{"37 degree flare in brass is half", "", "brass", "JIC", true, "-6", 172.37, Estimate, Judgement, "SAE J514, 5000 psi, for steel"},
		{"an O-ring boss stud that may be turned", "", "steel", "ORB", true, "-6", 275.79, FittingClass, Seen, "SAE J514, 4000 psi, the same page"},
		{"face seal", "", "steel", "ORFS", true, "-16", 413, FittingClass, Seen, `SAE J1453-3, 41.3 MPa; page "SAE J1453-3-2012: Transitioning O-Ring Face Seal Connectors to a Global Metric Standard"`},
		{"face seal of 2 inch", "", "steel", "ORFS", true, "-32", 210, FittingClass, Seen, "SAE J1453-3, 21 MPa, the same page"},
		{"face seal -10 is remembered", "", "steel", "ORFS", true, "-10", 413.7, FittingClass, Memory, "memory: SAE J1453, 6000 psi"},
		{"class 3000 of super duplex is no less than that of 316L, and no more than the class", "class 3000", "super duplex", "NPT", false, "1/2", 210, FittingClass, Seen, "ASME B16.11; 250 MPa of S32760 over 115 of 316L, ASME B31.3 table A-1"},
		{"class 3000 of duplex", "class 3000", "2205 duplex", "NPT", true, "1", 210, FittingClass, Seen, "ASME B16.11; 207 MPa"},
		{"class 3000 of titanium bears what 316L bears", "class 3000", "titanium grade 2", "NPT", false, "3/8", 210, FittingClass, Seen, "ASME B16.11; 115 MPa of ASTM B337 grade 2"},
		{"class 3000 of 904L", "class 3000", "904L", "NPT", false, "1/2", 210, FittingClass, Computed, "ASME B16.11; two thirds of a yield strength of 220 MPa"},
		{"class 2000 of super duplex by the wall of 316L, an estimate", "class 2000", "super duplex", "NPT", true, "1", 160.65, Estimate, Computed, "ASME B31.3 304.1.2, 2330 psi of 316L"},
		{"a machined end of duplex", "machined", "duplex", "NPT", false, "1/2", 341.3, FittingClass, Seen, "the 316L row, 4950 psi"},
		{"24 degree cone by its tube", "", "steel", "24L", true, "12 mm", 250, FittingClass, Seen, "ISO 8434-1 table 1"},
		{"24 degree cone by its nut", "", "steel", "24S", true, "M20x1.5", 630, FittingClass, Seen, "ISO 8434-1 table 1"},
		{"24 degree cone by its tube and series", "ISO 8434-1", "steel", "24L", true, "18L", 160, FittingClass, Seen, "ISO 8434-1 table 1"},
		{"a catalogue's own series", "DIN 2353", "steel", "24L", true, "18 mm", 315, FittingClass, Seen, "DIN 2353 order tables"},
		{"push-in of a filter, acetal", "", "acetal", "PUSH", false, "3/8 in", 10, Claim, Seen, "page 24 of a catalogue of push-in fittings: 10 bar at 20 C from 3/8 in on"},
		{"push-in of a filter, acetal, small: 16 bar there, and 10 here", "", "acetal", "PUSH", false, "6 mm", 10, Claim, Seen, "the same page: 16 bar to 8 mm"},
		{"push-in of a filter, of what nobody says", "", "", "PUSH", false, "3/8 in", 10, Claim, Memory, "memory: 10 bar at 20 C"},
		{"plumbing push-fit", "", "brass", "PUSH", false, "15 mm", 16, FittingClass, Seen, "plumbing textbook table 2.16"},
		{"PE pipe", "SDR 11", "PE100", "", false, "", 16, FittingClass, Seen, `ISO 4427-2; page "Roto HDPE"`},
		{"PE pipe of the lesser grade", "SDR 11", "PE80", "", false, "", 12.5, FittingClass, Seen, "the same page"},
		{"and of a thin wall", "SDR 41", "PE80", "", false, "", 3.2, FittingClass, Seen, "the same page"},
		{"45 degree flare on copper tube", "", "brass", "SAE45", true, "1/4 in", 96.53, FittingClass, Seen, `sheet "Brass flare fittings", 1400 psi`},
		{"45 degree flare by its dash: sixteenths of an inch of tube", "", "brass", "SAE45", true, "-6", 68.95, FittingClass, Seen, `sheet "Brass flare fittings", 3/8 inch: 1000 psi`},
		{"plastic threaded fittings as makers claim", "plastic", "PP", "G", true, "3/4", 10, Claim, Memory, "memory: PN 10"},
		{"unknown material: the lowest of class 150", "class 150", "", "NPT", false, "1/2", 20.68, FittingClass, Seen, "ASME B16.3, MSS SP-114"},
	} {
		t.Run(c.why, func(t *testing.T) {
			r, ok := FittingRating(c.class, c.material, c.family, c.male, c.size)
			require.True(t, ok, c.source)
			bar(t, c.bar, r)
			require.Equal(t, c.basis, r.Basis, r.String())
			require.Equal(t, c.status, r.Status, r.String())
			require.NotEmpty(t, r.Source)
		})
	}
}

func TestFittingRatingUnknown(t *testing.T) {
	for _, c := range []struct{ why, class, material, family, size string }{
		{"no class: nothing is known of a plain NPT fitting", "", "316", "NPT", "1/2"},
		{"no class and no family", "", "316", "", ""},
		{"a class that is none", "heavy duty", "316", "NPT", "1/2"},
		{"schedule 40 PVC is not to be threaded", "sch 40", "PVC", "NPT", "1/2"},
		{"no standard rates oak", "class 150", "oak", "NPT", "1/2"},
		{"class 150 is no class of brass", "class 150", "brass", "NPT", "1/2"},
		{"class 300 ends at 3 inch", "class 300", "malleable iron", "NPT", "4"},
		{"a size that is none", "class 150", "316", "NPT", "medium"},
		{"no such dash", "", "steel", "JIC", "-7"},
		{"no copper tube of that dash", "", "brass", "SAE45", "-9"},
		{"a dash is no pipe size", "class 150", "316", "NPT", "-8"},
		{"a flare of a metal not stated may be brass", "", "", "JIC", "-6"},
		{"class 150 is of castings of 316, and not of duplex ones", "class 150", "super duplex", "NPT", "1/2"},
		{"plastic flares are not rated", "", "nylon", "JIC", "-6"},
		{"a compression end has no table", "", "brass", "COMPRESSION", "15 mm"},
		{"PN nought", "PN 0", "316", "NPT", "1/2"},
	} {
		t.Run(c.why, func(t *testing.T) {
			r, ok := FittingRating(c.class, c.material, c.family, true, c.size)
			require.False(t, ok, r.String())
			require.Zero(t, r)
		})
	}
}

// What makers claim of a sort of fitting stands back where a part has its own data sheet;
// the sort of fitting that a textbook rates stays.
func TestFittingStandardLeavesClaimsOut(t *testing.T) {
	r, ok := FittingStandard("", "brass", "PUSH", false, "10 mm")
	require.True(t, ok)
	bar(t, 16, r) // plumbing textbook table 2.16
	require.Equal(t, FittingClass, r.Basis)
	_, ok = FittingStandard("plastic", "PP", "G", true, "3/4")
	require.False(t, ok)
}

// A class is not rated above the heavier one of the same material and size.
func TestNoClassIsAboveTheHeavierOne(t *testing.T) {
	for _, material := range []string{"316", "316L", "stainless", ""} {
		for _, size := range []string{"1/8", "1/4", "3/8", "1/2", "3/4", "1", ""} {
			last := quantity.Pressure(0)
			for _, class := range []string{"class 2000", "class 3000", "class 6000"} {
				r, ok := FittingRating(class, material, "NPT", true, size)
				require.True(t, ok)
				require.GreaterOrEqual(t, r.Pressure, last, "%s of %q in %s", class, material, size)
				last = r.Pressure
			}
		}
	}
}

// Flares, cones and schedule 80 PVC are all weaker as they grow, to 2 inch.
func TestLargerFittingsAreNotRatedHigher(t *testing.T) {
	for _, c := range []struct {
		why, class, material, family string
		sizes                        []string
	}{
		{"37 degree flares", "", "steel", "JIC", []string{"-2", "-3", "-4", "-5", "-6", "-8", "-10", "-12", "-14", "-16", "-20", "-24", "-32"}},
		{"24 degree cones, light", "", "steel", "24L", []string{"6 mm", "8 mm", "10 mm", "12 mm", "15 mm", "18 mm", "22 mm", "28 mm", "35 mm", "42 mm"}},
		{"24 degree cones, heavy", "", "steel", "24S", []string{"6 mm", "8 mm", "10 mm", "12 mm", "16 mm", "20 mm", "25 mm", "30 mm", "38 mm"}},
		{"threaded PVC", "sch 80", "PVC", "NPT", []string{"1/8", "1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2"}},
		{"copper flares", "", "brass", "SAE45", []string{"1/8 in", "3/16 in", "1/4 in", "5/16 in", "3/8 in", "1/2 in", "5/8 in", "3/4 in", "7/8 in"}},
		{"class 300 iron", "class 300", "malleable iron", "NPT", []string{"1/4", "1/2", "1", "1-1/4", "2", "2-1/2", "3"}},
		{"machined 316, to 1 inch where the pipe's schedule changes", "machined", "316", "NPT", []string{"1/16", "1/8", "1/4", "3/8", "1/2", "3/4", "1"}},
	} {
		t.Run(c.why, func(t *testing.T) {
			last := quantity.Pressure(1e12)
			for _, s := range c.sizes {
				r, ok := FittingRating(c.class, c.material, c.family, true, s)
				require.True(t, ok, s)
				require.LessOrEqual(t, r.Pressure, last, s)
				last = r.Pressure
			}
		})
	}
}

// Brass pipe ends have 0.487 to 0.51 of the steel figure, which is what carries flares to brass.
func TestBrassIsHalfOfSteelInPipeEnds(t *testing.T) {
	for _, s := range []string{"1/8", "1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2"} {
		for _, male := range []bool{true, false} {
			brass, ok := FittingRating("machined", "brass", "NPT", male, s)
			require.True(t, ok)
			steel, ok := FittingRating("machined", "316", "NPT", male, s)
			require.True(t, ok)
			require.InDelta(t, 0.5, float64(brass.Pressure/steel.Pressure), 0.013, "%s male %v", s, male)
		}
	}
}

func TestKnowingLessNeverRaisesTheRating(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		class := rapid.SampledFrom([]string{"class 150", "150 lb", "class 3000", "class 2000", "sch 80", "class 300", "machined", "class 125"}).Draw(t, "class")
		material := rapid.SampledFrom([]string{"316", "316L", "brass", "PVC", "malleable iron", "bronze", "steel"}).Draw(t, "material")
		family := rapid.SampledFrom([]string{"NPT", "G", "Rc"}).Draw(t, "family")
		size := rapid.SampledFrom([]string{"1/4", "1/2", "1", "2"}).Draw(t, "size")
		known, ok := FittingRating(class, material, family, true, size)
		if !ok {
			return
		}
		for _, less := range [][3]string{{"", family, size}, {material, "", size}, {material, family, ""}} {
			r, ok := FittingRating(class, less[0], less[1], true, less[2])
			if !ok || r.Pressure > known.Pressure {
				t.Fatalf("%s %v gives %s, above %s", class, less, r, known)
			}
		}
	})
}

func TestCastClassTrap(t *testing.T) {
	require.Equal(t, "Class 150 is a name and not a pressure: the best cast 316 fitting of class 150 is rated 20.7 bar in cold water, far less than the duty.", CastClassTrap(55*quantity.Bar))
	require.Equal(t, "Class 150 is a name and not a pressure: a cast 316 fitting of class 150 is rated 20.7 bar in cold water, which holds 3 bar, but a light pattern sold as 150 lb is known for 10.3 bar of steam only.", CastClassTrap(3*quantity.Bar))
}

func TestReadSize(t *testing.T) {
	for _, c := range []struct {
		why, text string
		want      size
	}{
		{"pipe", "1/2", size{unit: plainSize, value: 0.5}},
		{"pipe with a whole and a gap", "1 1/4", size{unit: plainSize, value: 1.25}},
		{"pipe with a whole and a hyphen", "1-1/4", size{unit: plainSize, value: 1.25}},
		{"one sign for a half", "1½", size{unit: plainSize, value: 1.5}},
		{"inch mark", `3/8"`, size{unit: inchSize, value: 0.375}},
		{"with its family", "G 3/4", size{unit: plainSize, value: 0.75}},
		{"dash", "-6", size{unit: dashSize, value: 6}},
		{"millimetres", "19 mm", size{unit: mmSize, value: 19}},
		{"tube and series", "12L", size{unit: mmSize, value: 12}},
		{"metric thread", "M22x1.5", size{unit: threadSize, name: "m22x1.5"}},
		{"metric thread with a true times sign", "M22 × 1.5", size{unit: threadSize, name: "m22x1.5"}},
	} {
		t.Run(c.why, func(t *testing.T) {
			got, ok := readSize(c.text)
			require.True(t, ok)
			require.Equal(t, c.want, got)
		})
	}
	for _, bad := range []string{"", "medium", "1/0", "-", "M22", "--6"} {
		_, ok := readSize(bad)
		require.False(t, ok, bad)
	}
}

func TestMaterialNamed(t *testing.T) {
	for _, c := range []struct{ why, text, want string }{
		{"two grades: the weaker", "316/316L", "316L"},
		{"by its European number", "1.4404", "316L"},
		{"cast grade", "CF8M", "316"},
		{"only stainless", "stainless steel", "stainless"},
		{"dezincification resistant", "DZR brass CW602N", "brass"},
		{"a brass by another name", "manganese bronze", "brass"},
		{"aluminium in bronze is bronze", "nickel-aluminium bronze", "bronze"},
		{"duplex is no plain stainless", "duplex stainless", "duplex"},
		{"and super duplex is more", "super duplex stainless 1.4410", "super duplex"},
		{"steel", "zinc plated carbon steel", "steel"},
		{"PVC by its trade name", "uPVC", "PVC"},
		{"nothing known", "oak", ""},
		{"a part of a word is no material", "parapet", ""},
	} {
		t.Run(c.why, func(t *testing.T) { require.Equal(t, c.want, materialNamed(c.text)) })
	}
}

func FuzzFittingRating(f *testing.F) {
	f.Add("class 150", "316", "NPT", "1/2")
	f.Add("150#", "", "", "-6")
	f.Add("PN 1e9", "PVC", "G", "M22x1.5")
	f.Add("sdr 11", "\xff", "JIC", "½")
	f.Fuzz(func(t *testing.T, class, material, family, size string) {
		r, ok := FittingRating(class, material, family, true, size)
		require.Equal(t, ok, r.Basis != 0)
		if ok {
			require.Positive(t, float64(r.Pressure))
			require.NotEmpty(t, r.Text)
			require.NotEmpty(t, r.Source)
		}
	})
}
