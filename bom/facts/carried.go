package facts

import "handtight/bom"

// Carried is a key of the build file that is read and kept, and that nothing weighs.
type Carried struct {
	Item  string `json:"item"`
	Key   string `json:"key"`
	Value string `json:"value"`
	Why   string `json:"why"`
	File  string `json:"file"`
	Line  int    `json:"line"`
}

// carriedOf lists them in the order of the files.
func carriedOf(sys *bom.System) []Carried {
	out := []Carried{}
	for _, it := range sys.Build.Items {
		for _, c := range it.Carried {
			p := c.Place.Place()
			out = append(out, Carried{it.ID, c.Key, c.Value, c.Why, p.File, p.Line})
		}
	}
	return out
}
