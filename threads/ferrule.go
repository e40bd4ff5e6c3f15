package threads

import "sync"

var flanges = sync.OnceValue(func() map[string]Length {
	out := map[string]Length{}
	for _, r := range eachRow("ferrule.csv") {
		out[r["size"]] = r.mm("flange_mm")
	}
	return out
})

// FlangeOf gives the outside diameter of a clamp ferrule's flange by the name of
// its size ("1 1/2 in", "DN 25", "38 mm"): ferrules that share a flange share a clamp
// and a gasket, whatever their tubes. ok is false for a size that is not in
// table/ferrule.csv.
func FlangeOf(size string) (flange Length, ok bool) {
	flange, ok = flanges()[size]
	return flange, ok
}

// mateFerrules judges two clamp ferrules, which are alike: one flange or none. Where
// a flange is not in the table the sizes themselves are held against each other.
func (m *Mating) mateFerrules() {
	a, knownA := FlangeOf(m.A.Size)
	b, knownB := FlangeOf(m.B.Size)
	if !knownA || !knownB {
		a, b = m.A.Diameter, m.B.Diameter
	}
	switch {
	case a == 0 || b == 0:
		m.Verdict, m.why = Leaks, byUnknown
	case max(a-b, b-a) <= tubeSnug+1e-9:
		m.Verdict, m.why = SealsWith, byFlange
	default:
		m.Verdict, m.why = Leaks, byFlangeOff
	}
}
