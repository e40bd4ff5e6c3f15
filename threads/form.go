package threads

import (
	"sort"
	"strconv"
	"strings"
	"sync"
)

// Form is one size of one threaded family: the thread itself, before it is
// known whether it is cut outside or inside.
type Form struct {
	Family      Family
	Size        string // as the standard writes it: "1/2", "1 1/4", "M22x1.5", "-8"
	Designation string // "1/2-14 NPT", "G 1/2", "9/16-18 JIC -6"
	Pitch       Length
	TPI         float64 // threads an inch; 25.4 divided by the pitch
	Major       Length  // basic; for NPT the pipe's outside diameter
	PitchDia    Length  // basic, at the gauge plane of a taper
	Minor       Length  // basic, at the gauge plane of a taper
	Flank       Degrees // included thread angle
	Taper       float64 // change of diameter a unit of length: 1/16, or 0
	HandTight   Length  // the standard's hand-tight engagement; 0 for a parallel thread
	Tube        Length  // outside diameter of the tube of a flare or cone size; 0 elsewhere
	Source      string
	Note        string
	Memory      bool // some figure of the row is from memory

	height   Length // basic radial height of the thread
	full     Length // length of full engagement, by the standard or 7 turns
	outside  cut
	inside   cut
	straight [2]Length // straight flank beyond the pitch line: towards the major, towards the minor
}

// HandTightTurns is the standard's hand-tight engagement in turns; 0 if parallel.
func (f *Form) HandTightTurns() Turns { return Turns(f.HandTight / f.Pitch) }

// Height is the basic radial height of the thread: 0.8 p for NPT, 0.640327 p for
// Whitworth, 0.541266 p for ISO and unified parallel threads.
func (f *Form) Height() Length { return f.height }

// FullTurns is the engagement taken as full: the standard's useful length of a
// taper, seven turns of a parallel thread.
func (f *Form) FullTurns() Turns { return Turns(f.full / f.Pitch) }

// Band is a diameter at both ends of its tolerance.
type Band struct{ Least, Most Length }

// Middle is the diameter half way between the two.
func (b Band) Middle() Length { return (b.Least + b.Most) / 2 }

// pipeSpread is by how much the outside of a pipe varies where the crests of its
// taper thread run out (a judgement).
const pipeSpread Length = 0.05

// CrestAt gives the limits of the diameter across the crests, the outside of a male or
// the inside of a female, at a distance along the thread from where it begins: the
// small end of a taper male, the open face of a taper female. An NPT crest is
// never larger than its pipe. A sex that the family does not come in has no limits
// of a standard: its figures are then of no use.
func (f *Form) CrestAt(sex Sex, along Length) Band {
	change := Length(f.Taper) * along
	if sex == Female {
		return Band{
			Least: f.inside.tight.pitch - 2*f.inside.tight.crestAdd - change,
			Most:  f.inside.loose.pitch - 2*f.inside.loose.crestAdd - change,
		}
	}
	b := Band{
		Least: f.outside.loose.pitch + 2*f.outside.loose.crestAdd + change,
		Most:  f.outside.tight.pitch + 2*f.outside.tight.crestAdd + change,
	}
	if f.Family == NPT || f.Family == NPTF {
		b.Least, b.Most = min(b.Least, f.Major-pipeSpread), min(b.Most, f.Major)
	}
	return b
}

// PitchLimits gives the limits of the pitch diameter where the thread begins; see
// [Form.CrestAt].
func (f *Form) PitchLimits(sex Sex) Band {
	if sex == Female {
		return Band{f.inside.tight.pitch, f.inside.loose.pitch}
	}
	return Band{f.outside.loose.pitch, f.outside.tight.pitch}
}

// Full is the length of engagement taken as full; see [Form.FullTurns].
func (f *Form) Full() Length { return f.full }

// cut is a thread cut outside or inside, at both ends of its tolerance:
// tight is the most metal, loose the least.
type cut struct{ tight, loose limits }

// limits are a cut thread's diameters where it begins: at the small end of a
// taper male, at the open face of a taper female.
type limits struct {
	pitch    Length // pitch diameter
	crestAdd Length // radial height of the crest beyond the pitch line
	rootAdd  Length // radial depth of the root beyond the pitch line
}

// wholeTurns is the engagement taken as full where no standard says: a port or
// nut of a parallel thread is seldom deeper (a judgement).
const wholeTurns = 7

var loaders = []func() []*Form{
	nptForms, nptfForms, npsmForms, npsForms, hoseForms, bspForms,
	metricForms, metricTaperForms, metricPortForms, coneForms, unifiedForms,
	conduitForms, fineForms,
}

type library struct {
	byFamily [familyEnd][]*Form
	bySize   [familyEnd]map[string]*Form
}

var forms = sync.OnceValue(func() *library {
	lib := &library{}
	for f := range lib.bySize {
		lib.bySize[f] = map[string]*Form{}
	}
	for _, load := range loaders {
		for _, f := range load() {
			f.Memory = strings.Contains(f.Source+f.Note, "`memory`")
			lib.byFamily[f.Family] = append(lib.byFamily[f.Family], f)
			lib.bySize[f.Family][f.Size] = f
		}
	}
	for _, list := range lib.byFamily {
		sort.SliceStable(list, func(i, j int) bool {
			if list[i].Major != list[j].Major {
				return list[i].Major < list[j].Major
			}
			return list[i].Pitch > list[j].Pitch
		})
	}
	return lib
})

// Forms lists the sizes of a family, smallest first. The slice is shared: do
// not change it. A family without a table gives none.
func Forms(f Family) []*Form {
	if f == 0 || f >= familyEnd {
		return nil
	}
	return forms().byFamily[f]
}

// Find returns the form of a family by its size as the standard writes it
// ("1 1/4", "M22x1.5", "-8"); a hyphen for the blank ("1-1/4") is taken too.
func Find(f Family, size string) (*Form, bool) {
	if f >= familyEnd {
		return nil, false
	}
	sizes := forms().bySize[f]
	form, ok := sizes[size]
	if !ok && !strings.HasPrefix(size, "-") && !strings.HasPrefix(size, "M") && f != BSF {
		form, ok = sizes[strings.Replace(size, "-", " ", 1)]
	}
	return form, ok
}

// SizeInches reads "1 1/4", "1/2" or "2" as a number; the tables hold no other sort.
func SizeInches(size string) float64 {
	total := 0.0
	for _, part := range strings.Fields(size) {
		top, bottom, frac := strings.Cut(part, "/")
		n, _ := strconv.ParseFloat(top, 64)
		if frac {
			d, _ := strconv.ParseFloat(bottom, 64)
			n /= d
		}
		total += n
	}
	return total
}
