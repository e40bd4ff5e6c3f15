package rule

import (
	_ "embed"
	"strings"
)

//go:embed example/plant.toml
var plantText string

//go:embed example/flushed.toml
var flushedText string

//go:embed example/watered.toml
var wateredText string

//go:embed example/damped.toml
var dampedText string

//go:embed example/recovered.toml
var recoveredText string

// Example makes a whole build of a rule's wrong or right fragment: on its own, or in
// the place of one block of a small plant that checks clear without it.
func (r Rule) Example(fragment string) string {
	const heading = "[build]\nname = \"example\"\ncurrency = \"EUR\"\n"
	if r.block == "" {
		return heading + fragment
	}
	plant := plantText
	switch {
	case r.recovered:
		plant = recoveredText
	case r.watered:
		plant = wateredText
	case r.damped:
		plant = wateredText + dampedText
	case r.flushed:
		plant = flushedText
	}
	var b strings.Builder
	b.WriteString(heading)
	for _, block := range strings.Split(plant, "\n## ")[1:] {
		name, text, _ := strings.Cut(block, "\n")
		if r.damped && name == "high run" {
			continue // the damped plant has its own
		}
		if name == r.block {
			text = fragment
		}
		b.WriteString(text + "\n")
	}
	return b.String()
}
