package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"github.com/spf13/cobra"
	"golang.org/x/term"

	"handtight/threads"
	"handtight/threads/identify"
)

type identifyFacts struct {
	Candidates  []likelyFacts `json:"candidates"`
	Next        string        `json:"next"`
	Question    string        `json:"question"`
	Why         string        `json:"why"`
	Gain        number        `json:"gain_bits"`
	None        number        `json:"none"`
	NothingFits bool          `json:"nothing_fits"`
	Threads     []oneThread   `json:"threads"`
	Nearest     []likelyFacts `json:"nearest,omitempty"`
}

// oneThread is a thread as it is cut, with the designations that share it.
type oneThread struct {
	Designations []string `json:"designations"`
	Told         string   `json:"told_apart_by,omitempty"`
	Probability  number   `json:"probability"`
}

type likelyFacts struct {
	Family      string `json:"family"`
	Size        string `json:"size"`
	Designation string `json:"designation"`
	Sex         string `json:"sex"`
	Probability number `json:"probability"`
}

// figures are the flags of identify, as they were written.
type figures struct {
	od, id, tpi, pitch, taper, angle, seat, country string
	context, turns, in, edge, cone, groove, slides  string
}

// none reports whether nothing was measured.
func (f *figures) none() bool {
	return f.od+f.id+f.tpi+f.pitch+f.taper+f.angle+f.seat+f.turns+f.edge+f.cone+f.groove+f.slides == ""
}

func (a *app) identifyCommand() *cobra.Command {
	var f figures
	cmd := &cobra.Command{
		Use:   "identify",
		Short: "Which thread is this, from a calliper and a pitch gauge?",
		Long: `Ranks the threads that measured figures may be of, with their probabilities, and
says what to measure next: the one figure that best splits what remains. Give what
is known and leave the rest out. Without figures, at a terminal, it asks for them
one by one.

Diameters are taken across the crests: outside of a male, inside of a female. The
error of the tools, the tolerance of the thread, wear and burrs, and where along a
taper it was measured are reckoned with. Exit status 0 when threads fit, 1 when
none does.`,
		Example: `  handtight identify
  handtight identify --od '13.1 mm' --tpi 19
  handtight identify --od '0.518 in' --tpi '14 or so' --taper yes
  handtight identify --id '18.8 mm' --pitch '1.8 mm' --country NZ --json
  handtight identify --tpi 14 --turns 5 --in 'G 1/2 female' --edge rocks
  handtight identify --od '22.4 mm' --tpi 18 --context electrical`,
		Args: exactly(0, "its figures as flags and no other words"),
		RunE: func(_ *cobra.Command, _ []string) error {
			m, err := f.read()
			if err != nil {
				return err
			}
			if !f.none() {
				return a.identify(m)
			}
			if !onTerminal(a.in) {
				return errors.New("`identify` needs a figure, such as --od '13.1 mm' --tpi 19; at a terminal it asks for them")
			}
			return a.talk(&m)
		},
	}
	flags := cmd.Flags()
	flags.StringVar(&f.od, "od", "", "outside diameter of a male thread, across the crests: '13.1 mm', '0.518 in'")
	flags.StringVar(&f.id, "id", "", "inside diameter of a female thread, across the crests")
	flags.StringVar(&f.tpi, "tpi", "", "threads an inch: 19, '14 or so'")
	flags.StringVar(&f.pitch, "pitch", "", "pitch: '1.5 mm', 'about 1.8 mm'")
	flags.StringVar(&f.taper, "taper", "", "does it taper: yes, no or unknown")
	flags.StringVar(&f.angle, "angle", "", "angle between the flanks: 55 or 60")
	flags.StringVar(&f.seat, "seat", "", "the cone of the nose or seat in degrees (37, 45, 24, 60, 30), or plain, face-ring, stud-ring")
	flags.StringVar(&f.context, "context", "", "what the thread is on: "+contextNames())
	flags.StringVar(&f.turns, "turns", "", "turns by hand into the part named with --in, before it stopped")
	flags.StringVar(&f.in, "in", "", "the known part that --turns were counted in: 'G 1/2 female'")
	flags.StringVar(&f.edge, "edge", "", "does a straight edge laid along the crests rock: rocks (a taper), or flat")
	flags.StringVar(&f.cone, "cone", "", "is there a cone, at the nose of a male or inside a female: yes or no")
	flags.StringVar(&f.groove, "groove", "", "is there a groove, a ring or a chamfer for an O-ring: yes or no")
	flags.StringVar(&f.slides, "slides", "", "a known part that slides over it, or into it, without catching a thread: 'G 3/4 female'")
	flags.StringVar(&f.country, "country", "", "where the part was bought or made: NZ, Germany, ...")
	return cmd
}

// talk asks for the figures one by one, prints what they say, and ends with the card
// of the best and what to buy to try it on.
func (a *app) talk(m *identify.Measured) error {
	if err := a.interview(m); err != nil {
		return err
	}
	if err := a.identify(*m); err != nil || a.json {
		return err
	}
	id, err := identify.Identify(*m)
	if err == nil {
		a.printFound(&id)
	}
	return err
}

func contextNames() string {
	var names []string
	for _, c := range identify.Contexts() {
		names = append(names, c[0])
	}
	return strings.Join(names, ", ")
}

// onTerminal reports whether a person can be asked.
func onTerminal(in io.Reader) bool {
	file, ok := in.(*os.File)
	return ok && term.IsTerminal(int(file.Fd()))
}

// identify prints what the figures say.
func (a *app) identify(m identify.Measured) error {
	id, err := identify.Identify(m)
	if err != nil {
		return err
	}
	if id.NothingFits() {
		a.status = exitStops
	}
	if a.json {
		return a.ui.printJSON(identifyFactsOf(&id))
	}
	a.printIdentification(&id)
	return nil
}

func identifyFactsOf(id *identify.Identification) identifyFacts {
	f := identifyFacts{
		Candidates: []likelyFacts{}, Next: id.Next.Text, Question: id.Next.Ask.String(), Why: id.Next.Why,
		Gain: known(id.Next.Gain), None: known(id.None), NothingFits: id.NothingFits(),
	}
	var list []likelyFacts
	for _, c := range id.Candidates {
		list = append(list, likelyFacts{c.Form.Family.String(), c.Form.Size, c.Form.Designation, c.Sex.String(), known(c.Probability)})
	}
	f.Threads = []oneThread{}
	for _, t := range id.Threads() {
		one := oneThread{Probability: known(t.Probability), Told: t.ToldBy()}
		for _, c := range t.Candidates {
			one.Designations = append(one.Designations, c.Form.Designation)
		}
		f.Threads = append(f.Threads, one)
	}
	switch {
	case f.NothingFits:
		f.Nearest = list
	case list != nil:
		f.Candidates = list
	}
	return f
}

// shown is how many candidates are printed; JSON has them all.
const shown = 8

func (a *app) printIdentification(id *identify.Identification) {
	u := a.ui
	list := id.Candidates
	if id.NothingFits() {
		u.line("%s", u.paint(red, "NOTHING FITS"))
		u.fold("  next", id.Next.Text)
		if id.Next.Why != "" {
			u.fold("  but", id.Next.Why)
		}
		return
	}
	printed := 0
	for _, t := range id.Threads() {
		if printed >= shown {
			break
		}
		told := t.ToldBy()
		if told != "" {
			u.line("%6s  one thread, told apart by %s:", percent(t.Probability), told)
		}
		for _, c := range t.Candidates {
			if printed == shown {
				break
			}
			printed++
			name, indent := c.Form.Designation, ""
			if sex := c.Sex.String(); sex != "" {
				name += " " + sex
			}
			if told != "" {
				indent = "        "
			}
			u.line("%s", u.cut(fmt.Sprintf("%s%6s  %-26s %s", indent, percent(c.Probability), name, c.Form.Family.Facts().Title), u.width))
		}
	}
	if more := len(list) - printed; more > 0 {
		u.line("%6s  and %d more", "", more)
	}
	u.line("")
	u.fold("  next", id.Next.Text)
	if id.Next.Why != "" {
		u.fold("  why", strings.ToUpper(id.Next.Why[:1])+id.Next.Why[1:]+".")
	}
	if id.Next.Ask == 0 && list[0].Probability > 0.5 {
		u.fold("  then", fmt.Sprintf("`handtight thread --card '%s'` says what it goes with.", threads.Threaded(list[0].Form, list[0].Sex)))
	}
}

func percent(p float64) string {
	switch {
	case p < 0.005:
		return "<1 %"
	case p > 0.995:
		return ">99 %"
	}
	return fmt.Sprintf("%.0f %%", 100*p)
}
