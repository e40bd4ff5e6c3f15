package title

import (
	"handtight/pressure/quantity"
	"handtight/threads"
)

var plasticMaterials = map[string]bool{
	"plastic": true, "pvc": true, "pp": true, "pa": true, "pe": true, "pom": true, "pvdf": true, "abs": true,
}

func plainFamilies(end string) []threads.Family {
	switch end {
	case "BARB":
		return []threads.Family{threads.Barb}
	case "BORE":
		return []threads.Family{threads.Bore}
	case "PUSH":
		return []threads.Family{threads.Push}
	case "COMPRESSION":
		return []threads.Family{threads.Compression}
	case "TUBE":
		return []threads.Family{threads.Push, threads.Compression}
	case "FERRULE":
		return []threads.Family{threads.Ferrule}
	}
	return nil
}

func plainEnds(c *phrase, families []threads.Family) []threads.End {
	size, diameter := plainSize(c.fig, families[0] == threads.Ferrule)
	out := make([]threads.End, 0, len(families))
	for _, f := range families {
		out = append(out, threads.End{Family: f, Size: size, Diameter: diameter})
	}
	return out
}

// plainSize writes a size without a thread: "19 mm", "3/4 in"; "" if not said.
func plainSize(f *figure, ferrule bool) (string, threads.Length) {
	switch {
	case f == nil:
		return "", 0
	case f.kind == dnSize && f.dn > 0 && ferrule:
		return "DN " + quantity.Exact(f.dn), threads.Length(f.v) * threads.Inch
	case f.kind == mmSize:
		return quantity.Exact(f.v) + " mm", threads.Length(f.v)
	case f.kind == dashSize:
		return inchText(f.v/16) + " in", threads.Length(f.v/16) * threads.Inch
	}
	return inchText(f.v) + " in", threads.Length(f.v) * threads.Inch
}
