package rule

import (
	"cmp"
	"embed"
	"strings"
)

//go:embed example/*.toml
var examples embed.FS

func plantText(name string) string {
	text, err := examples.ReadFile("example/" + name + ".toml")
	if err != nil {
		panic(err)
	}
	return string(text)
}

// Example makes a whole build of a rule's wrong or right fragment: on its own, or in
// the place of one block of a small plant that checks clear without it.
func (r Rule) Example(fragment string) string {
	const heading = "[build]\nname = \"example\"\ncurrency = \"EUR\"\n"
	if r.block == "" {
		return heading + fragment
	}
	plant := plantText(cmp.Or(r.plant, "plant"))
	damped := r.plant == "damped"
	if damped {
		plant = plantText("watered") + plant
	}
	var b strings.Builder
	b.WriteString(heading)
	for _, block := range strings.Split(plant, "\n## ")[1:] {
		name, text, _ := strings.Cut(block, "\n")
		if damped && name == "high run" {
			continue // the damped plant has its own
		}
		if name == r.block {
			text = fragment
		}
		b.WriteString(text + "\n")
	}
	return b.String()
}
