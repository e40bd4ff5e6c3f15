package threads

import "sync"

var coarsePitches = sync.OnceValue(func() map[string]bool {
	out := map[string]bool{}
	for _, r := range eachRow("metric.csv") {
		if r["coarse"] == "yes" {
			out[r["thread"]] = true
		}
	}
	return out
})
