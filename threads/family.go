package threads

import (
	"strconv"
	"sync"
)

// Family is one way of joining: a thread standard, or an end without a thread.
// The zero value is no family.
type Family uint8

// The families, named as the standards or the trade name them.
const (
	NPT Family = iota + 1
	NPTF
	NPSM
	NPS
	NH
	G
	R
	Rc
	Rp
	M
	MT
	UN
	JIC
	SAE45
	ORB
	ISO6149
	Cone24L
	Cone24S
	ORFS
	Barb
	Bore
	Push
	Compression
	Ferrule
	PG
	BSF
	familyEnd
)

// FamilyCount is one more than the last family: the length of a table by family.
const FamilyCount = int(familyEnd)

// Sex says which end goes into the other. The zero value is unknown or without sex.
type Sex uint8

// The two sexes of a threaded end.
const (
	NoSex Sex = iota
	Male
	Female
)

// String gives "male", "female" or "".
func (s Sex) String() string { return [...]string{"", "male", "female"}[s] }

// Other returns the sex that s goes with; NoSex has none.
func (s Sex) Other() Sex { return [...]Sex{NoSex, Female, Male}[s] }

// FamilyFacts is what is known of a family as a whole (table/family.csv).
type FamilyFacts struct {
	Name     string // the name in JSON
	Title    string // what a newcomer would call it
	Threaded bool
	Tapered  bool    // 1:16 on diameter
	Only     Sex     // the only sex it comes in, NoSex if both or none
	Flank    Degrees // included thread angle; 0 without thread
	Closes   string  // where the seal is: taper, face, cone, clamp, grip, ring
	Standard string
	Source   string
	Note     string
}

var families = sync.OnceValue(func() [familyEnd]FamilyFacts {
	var out [familyEnd]FamilyFacts
	for i, row := range eachRow("family.csv") {
		flank := Degrees(0)
		if row["flank_deg"] != "" {
			flank = Degrees(row.number("flank_deg"))
		}
		out[i+1] = FamilyFacts{
			Name: row["name"], Title: row["title"], Threaded: row["thread"] == "yes",
			Tapered: row["taper"] != "", Only: SexNamed(row["sex"]), Flank: flank,
			Closes: row["joint"], Standard: row["standard"], Source: row["source"], Note: row["note"],
		}
	}
	return out
})

var familyFacts = sync.OnceValue(func() *[familyEnd]FamilyFacts { f := families(); return &f })

// Facts returns what is known of the family; the zero Family has empty facts.
func (f Family) Facts() FamilyFacts {
	if f >= familyEnd {
		return FamilyFacts{}
	}
	return familyFacts()[f]
}

// String gives the family's name as it stands in JSON, such as "NPT" or "24L".
func (f Family) String() string {
	if f == 0 || f >= familyEnd {
		return "family " + strconv.Itoa(int(f))
	}
	return familyFacts()[f].Name
}

// Threaded reports whether ends of the family have a thread.
func (f Family) Threaded() bool { return f > 0 && f < familyEnd && familyFacts()[f].Threaded }

// Families lists every family in table order.
func Families() []Family {
	out := make([]Family, 0, familyEnd-1)
	for f := Family(1); f < familyEnd; f++ {
		out = append(out, f)
	}
	return out
}

// FamilyNamed finds a family by its JSON name, exactly as written.
func FamilyNamed(name string) (Family, bool) {
	for f := Family(1); f < familyEnd; f++ {
		if familyFacts()[f].Name == name {
			return f, true
		}
	}
	return 0, false
}

// SexNamed finds a sex by its word, "male" or "female"; anything else is NoSex.
func SexNamed(s string) Sex {
	switch s {
	case "male":
		return Male
	case "female":
		return Female
	}
	return NoSex
}
