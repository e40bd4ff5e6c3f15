package identify

import (
	"embed"
	"strings"
	"sync"

	"handtight/threads"
	"handtight/threads/internal/table"
)

//go:embed table/*.csv
var tables embed.FS

// How much commoner one family is than another where a part was bought
// (judgements; the families of each are in table/country.csv).
const (
	commonWeight = 1.0
	seldomWeight = 0.2
	rareWeight   = 0.04 // not named for the country: imported
)

type regionWeights struct {
	region  string
	names   []string
	weights [threads.FamilyCount]float64
}

var regions = sync.OnceValue(func() []regionWeights {
	var out []regionWeights
	for _, r := range table.Read(tables, "table/country.csv") {
		w := regionWeights{region: r["region"]}
		if r.Has("names") {
			w.names = strings.Split(r["names"], "|")
		}
		for f := range w.weights {
			w.weights[f] = rareWeight
		}
		for weight, column := range map[float64]string{commonWeight: "common", seldomWeight: "seldom"} {
			for _, name := range strings.Split(r[column], "|") {
				if f, ok := threads.FamilyNamed(name); ok {
					w.weights[f] = weight
				}
			}
		}
		out = append(out, w)
	}
	return out
})

// familyWeights gives the weight of each family in a country; "" is anywhere.
func familyWeights(country string) ([threads.FamilyCount]float64, error) {
	all := regions()
	country = strings.TrimSpace(country)
	if country == "" {
		return all[0].weights, nil
	}
	for _, r := range all {
		if strings.EqualFold(r.region, country) {
			return r.weights, nil
		}
		for _, name := range r.names {
			if strings.EqualFold(name, country) {
				return r.weights, nil
			}
		}
	}
	return [threads.FamilyCount]float64{}, &CountryError{country}
}

// FamilyWeights gives the weight of each family among parts bought or made in a country: "" is
// anywhere, where all are even but for those hardly sold apart from a commoner twin.
//
// Errors: *[CountryError].
func FamilyWeights(country string) ([threads.FamilyCount]float64, error) {
	return familyWeights(country)
}

// Nose is what stands before or inside the thread: a cone, a ring, or nothing.
// The zero value is: not looked at.
type Nose uint8

// The noses that tell families apart. A female's is the seat inside it.
const (
	PlainNose  Nose = iota + 1 // flat, or a pipe cut square: no cone and no ring
	NoseCone24                 // 24 degrees in all
	NoseCone37                 // 37 degrees to the axis
	NoseCone45                 // 45 degrees to the axis
	NoseCone60                 // 60 degrees in all, 30 to the axis
	FaceRing                   // an O-ring in a groove of the flat face
	StudRing                   // an O-ring behind the thread, or a chamfer for it in the port
	noseEnd
)

// noseNames: as the table and the commands name it, as people say it of a male,
// and of a female.
var noseNames = [noseEnd][3]string{
	PlainNose:  {"plain", "neither cone nor ring", "neither cone nor ring"},
	NoseCone24: {"cone-24", "a 24 degree cone", "a 24 degree cone"},
	NoseCone37: {"cone-37", "a 37 degree cone (74 across)", "a 37 degree cone (74 across)"},
	NoseCone45: {"cone-45", "a 45 degree cone (90 across)", "a 45 degree cone (90 across)"},
	NoseCone60: {"cone-60", "a 60 degree cone (30 to the axis)", "a 60 degree cone (30 to the axis)"},
	FaceRing:   {"face-ring", "an O-ring in its flat face", "an O-ring in its flat face"},
	StudRing:   {"stud-ring", "an O-ring at the foot of the thread", "a chamfer at the mouth for an O-ring"},
}

// String gives the nose's name: "cone-37", "plain"; "" if not looked at.
func (n Nose) String() string {
	if n >= noseEnd {
		return ""
	}
	return noseNames[n][0]
}

// Words gives the nose as people say it: of a female it is the seat inside.
func (n Nose) Words(sex threads.Sex) string {
	if n >= noseEnd {
		return ""
	}
	if sex == threads.Female {
		return noseNames[n][2]
	}
	return noseNames[n][1]
}

// UsualNose is the nose that most ends of a family have (table/nose.csv).
func UsualNose(f threads.Family) Nose {
	best := PlainNose
	for n := PlainNose; n < noseEnd; n++ {
		if noseShares()[f][n] > noseShares()[f][best] {
			best = n
		}
	}
	return best
}

// NoseNamed finds a nose by its name.
func NoseNamed(name string) (Nose, bool) {
	for n := PlainNose; n < noseEnd; n++ {
		if noseNames[n][0] == name {
			return n, true
		}
	}
	return 0, false
}

// coneSlip is how far a seat gauge may read off a cone's own angle (a judgement).
const coneSlip = 3 // degrees

// NoseOfCone finds the nose by the angle of its cone in degrees, to the axis or
// across: 37 and 74, 45 and 90, 30 and 60, 12 and 24. False when none is near, or two are as near (27).
func NoseOfCone(angle float64) (Nose, bool) {
	best, off, tie := Nose(0), float64(coneSlip), false
	for _, c := range []struct {
		nose   Nose
		angles [2]float64
	}{
		{NoseCone24, [2]float64{24, 12}}, {NoseCone37, [2]float64{37, 74}},
		{NoseCone45, [2]float64{45, 90}}, {NoseCone60, [2]float64{60, 30}},
	} {
		for _, a := range c.angles {
			switch d := max(a-angle, angle-a); {
			case d < off || d == off && best == 0:
				best, off, tie = c.nose, d, false
			case d == off:
				tie = true
			}
		}
	}
	if tie {
		return 0, false
	}
	return best, best != 0
}

// noseShares is how often ends of a family have each nose (table/nose.csv).
var noseShares = sync.OnceValue(func() *[threads.FamilyCount][noseEnd]float64 {
	var out [threads.FamilyCount][noseEnd]float64
	for _, r := range table.Read(tables, "table/nose.csv") {
		f, _ := threads.FamilyNamed(r["family"])
		n, _ := NoseNamed(r["nose"])
		out[f][n] = r.Number("share")
	}
	return &out
})
