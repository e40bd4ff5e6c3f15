package identify

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
	"handtight/threads/internal/endtest"
)

// asFumbled is what a person reads of a part at a bench: the calliper a tenth of a
// millimetre off, the first thread chamfered away, the pitch gauge's next leaf on a worn
// thread, an eye that is now and then wrong about taper and nose. It is drawn from the
// standards' limits and from nothing of the likelihood under test.
func asFumbled(r *rand.Rand, f *threads.Form, sex threads.Sex) Measured {
	m := Measured{Sex: sex}
	along := threads.Length(0)
	if f.Taper > 0 {
		length := f.Full()
		if sex == threads.Female {
			length = 2 * f.Pitch
		}
		along = f.Pitch + threads.Length(r.Float64())*(length-f.Pitch) // the first thread is chamfered
	}
	b := f.CrestAt(sex, along)
	m.Diameter = Gauge(float64(b.Least) + r.Float64()*float64(b.Most-b.Least) + 0.1*(2*r.Float64()-1))
	pitch := float64(f.Pitch)
	if r.Float64() < 0.1 { // worn: an inch holds one thread more or less
		off := 1.0
		if r.Float64() < 0.5 {
			off = -1
		}
		pitch = 25.4 / (25.4/pitch + off)
	}
	m.Pitch = Gauge(pitch * math.Exp(0.01*r.NormFloat64()))
	tapers := f.Taper > 0
	if r.Float64() < 0.05 {
		tapers = !tapers
	}
	m.Taper = NoTaper
	if tapers {
		m.Taper = Tapered
	}
	at := r.Float64()
	for n := PlainNose; n < noseEnd; n++ {
		if at -= noseShares()[f.Family][n]; at < 0 {
			m.Nose = n
			break
		}
	}
	if r.Float64() < 0.05 {
		m.Nose = PlainNose
	}
	return m
}

// tallied counts, for one family, the weight of its parts and where they were ranked.
type tallied struct {
	weight, first, second float64
	taken                 map[threads.Family]float64 // what was put first in their place
}

// Every size and sex of every family, measured with human error, is put first, itself
// or its equal, in 90 % and within two in 97 %, weighted by how common it is. The
// confusion by family is logged: -v shows it.
func TestConfusion(t *testing.T) {
	const draws = 12
	r := rand.New(rand.NewPCG(20, 26))
	table := map[threads.Family]*tallied{}
	var all tallied
	weights, err := familyWeights("")
	require.NoError(t, err)
	for _, family := range endtest.ThreadFamilies() {
		row := &tallied{taken: map[threads.Family]float64{}}
		table[family] = row
		for _, f := range threads.Forms(family) {
			for _, sex := range endtest.Sexes(family) {
				for range draws {
					m := asFumbled(r, f, sex)
					id, err := Identify(m)
					require.NoError(t, err)
					w := weights[family] * Common(f) / draws
					row.weight += w
					place := rankOf(&id, f)
					switch place {
					case 0:
						row.first += w
						row.second += w
					case 1:
						row.second += w
					}
					if place != 0 && len(id.Candidates) > 0 {
						row.taken[id.Candidates[0].Form.Family] += w
					}
				}
			}
		}
		all.weight, all.first, all.second = all.weight+row.weight, all.first+row.first, all.second+row.second
	}
	for _, family := range endtest.ThreadFamilies() {
		t.Log(table[family].line(family))
	}
	first, second := all.first/all.weight, all.second/all.weight
	t.Logf("weighted: first %.1f %%, within two %.1f %%", 100*first, 100*second)
	require.GreaterOrEqual(t, first, 0.90)
	require.GreaterOrEqual(t, second, 0.97)
}

// rankOf is the place of a form or its equal among the threads as they are cut; -1 if
// it is not listed.
func rankOf(id *Identification, f *threads.Form) int {
	return slices.IndexFunc(id.Threads(), func(th Thread) bool {
		return slices.ContainsFunc(th.Candidates, func(c Candidate) bool { return c.Form == f || Equal(c.Form, f) })
	})
}

func (r *tallied) line(family threads.Family) string {
	var taken []string
	for _, f := range threads.Families() {
		if share := r.taken[f] / r.weight; share >= 0.005 {
			taken = append(taken, fmt.Sprintf("%s %.1f %%", f, 100*share))
		}
	}
	return fmt.Sprintf("%-8s first %5.1f %%, within two %5.1f %%  taken for: %s", family, 100*r.first/r.weight, 100*r.second/r.weight, strings.Join(taken, ", "))
}
