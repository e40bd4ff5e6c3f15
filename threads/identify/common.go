package identify

import (
	"fmt"
	"slices"
	"strings"
	"sync"

	"handtight/threads"
	"handtight/threads/internal/table"
)

// formWeights is how common each size of each family is among the ends of pipes,
// hoses and ports (table/common.csv): the first row of a family that names the size,
// else its row for all. Without it a rare thread that fits a twentieth of a
// millimetre better would outrank one that every shop sells.
var formWeights = sync.OnceValue(func() map[*threads.Form]float64 {
	out := map[*threads.Form]float64{}
	for _, r := range table.Read(tables, "table/common.csv") {
		family, _ := threads.FamilyNamed(r["family"])
		sizes := r.List("sizes")
		for _, f := range threads.Forms(family) {
			if _, done := out[f]; !done && (sizes[0] == "*" || slices.Contains(sizes, f.Size)) {
				out[f] = r.Number("weight")
			}
		}
	}
	return out
})

// Common is how common a size of a family is among the ends of pipes, hoses and
// ports, beside a weight of 1 for an ordinary one (judgements; table/common.csv).
func Common(f *threads.Form) float64 { return formWeights()[f] }

// place is one context that a thread can be met in.
type place struct {
	name    string
	words   []string
	weights [threads.FamilyCount]float64
}

var places = sync.OnceValue(func() []*place {
	var out []*place
	for _, r := range table.Read(tables, "table/context.csv") {
		i := slices.IndexFunc(out, func(p *place) bool { return p.name == r["context"] })
		if i < 0 {
			p := &place{name: r["context"], words: r.List("words")}
			for f := range p.weights {
				p.weights[f] = 1
			}
			i, out = len(out), append(out, p)
		}
		for _, name := range r.List("families") {
			f, _ := threads.FamilyNamed(name)
			out[i].weights[f] = r.Number("weight")
		}
	}
	return out
})

// Contexts lists what [Measured].Context takes: the name of each first, then the other
// words for it.
func Contexts() [][]string {
	var out [][]string
	for _, p := range places() {
		names := []string{p.name}
		for _, w := range p.words {
			if w != p.name {
				names = append(names, w)
			}
		}
		out = append(out, names)
	}
	return out
}

// ContextError says that a context is not in table/context.csv.
type ContextError struct{ Context string }

// Error names the context and what may be written instead.
func (e *ContextError) Error() string {
	var names []string
	for _, p := range places() {
		names = append(names, p.name)
	}
	return fmt.Sprintf("nothing is known of threads on %q: write one of %s", e.Context, strings.Join(names, ", "))
}

// contextWeights gives the weight of each family in a context; "" weighs all alike.
func contextWeights(context string) (*[threads.FamilyCount]float64, error) {
	context = strings.ToLower(strings.TrimSpace(context))
	if context == "" {
		return &evenWeights, nil
	}
	for _, p := range places() {
		if p.name == context || slices.Contains(p.words, context) {
			return &p.weights, nil
		}
	}
	return nil, &ContextError{context}
}

var evenWeights = func() (out [threads.FamilyCount]float64) {
	for f := range out {
		out[f] = 1
	}
	return out
}()
