package main

import (
	"fmt"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom/repair"
	"handtight/pressure/quantity"
	"handtight/threads/makeup"
)

type adaptFacts struct {
	A       string       `json:"a"`
	B       string       `json:"b"`
	Direct  bool         `json:"mate_already"`
	Chains  []chainFacts `json:"chains"`
	None    string       `json:"none"` // why nothing will do; "" where a chain is found
	Ask     string       `json:"ask,omitempty"`
	Assumed string       `json:"assumed,omitempty"`
	Each    []eachFacts  `json:"readings"` // of an open end: what each reading would take
}

type eachFacts struct {
	A      string   `json:"a"`
	B      string   `json:"b"`
	Direct bool     `json:"mate_already"`
	Buy    []string `json:"buy"`
	None   string   `json:"none"`
}

type chainFacts struct {
	Pieces   []adaptPiece      `json:"pieces"`
	Joints   []chainJointFacts `json:"joints"`
	Holds    number            `json:"holds_bar"` // null where nothing says it
	Weakest  string            `json:"weakest"`
	Cautions []string          `json:"cautions"`
}

type adaptPiece struct {
	Title    string `json:"title"`
	Kind     string `json:"kind"`
	A        string `json:"a"`
	B        string `json:"b"`
	Material string `json:"material"`
	Class    string `json:"class,omitempty"`
	Stock    bool   `json:"stock"`
	Paste    string `json:"paste"`

	Price    *string `json:"price"` // landed without freight; null without an offer
	Currency string  `json:"currency,omitempty"`
	Shop     string  `json:"shop,omitempty"`
}

type chainJointFacts struct {
	A       string `json:"a"`
	B       string `json:"b"`
	Verdict string `json:"verdict"`
	Makeup  string `json:"makeup"`
}

// adaptFlags are what is asked of a chain.
type adaptFlags struct {
	repair.Options
	bar, with, by string
}

func (a *app) adaptCommand() *cobra.Command {
	var o adaptFlags
	cmd := &cobra.Command{
		Use:   "adapt END END",
		Short: "What to buy between two ends that stay",
		Long: `Finds the generic fittings that join two ends, each joint sealed, rated for the pressure
and fit for the water: the fewest pieces first, and nothing that a fitter would not do.
It says why where there is none. --with adds a build's own items of two ends, with the price
of the cheapest offer: goods, customs and tax, without freight, which is of a whole order.

Exit status 0 when there is a chain, or the ends join already; 1 when there is none; 2
when an end or a flag is not understood.`,
		Example: `  handtight adapt '1/2 NPT female' 'G 1/2 female' --bar 60 --water sea
  handtight adapt 'G 3/4 male' '3/4 NPT male' --below
  handtight adapt '10 mm push-in' 'G 1/2 male' --water product --json`,
		Args: exactly(2, "two ends"),
		RunE: func(_ *cobra.Command, args []string) error { return a.adapt(args, &o) },
	}
	cmd.Flags().StringVar(&o.bar, "bar", "", `the pressure that it must hold: 60, or "870 psi"`)
	cmd.Flags().StringVar(&o.Water, "water", "", "what it stands in: sea, product or fresh")
	cmd.Flags().StringVar(&o.Material, "material", "", "of the pieces, such as 316")
	cmd.Flags().StringVar(&o.with, "with", "", "a build whose own items may be used as well")
	cmd.Flags().IntVar(&o.Most, "max", 0, "pieces at the most: 2 if not said, 3 at the most")
	cmd.Flags().BoolVar(&o.Below, "below", false, "below the waterline: one piece at the most")
	cmd.Flags().BoolVar(&o.Turns, "turns", false, "something in it must turn last")
	cmd.Flags().StringVar(&o.by, "by", "joints", "what comes first: the fewest joints, or the price where there are offers")
	cmd.Flags().IntVarP(&o.Count, "count", "n", 0, "chains shown: 3 if not said")
	return cmd
}

// adapt runs the command.
func (a *app) adapt(ends []string, o *adaptFlags) error {
	x, y, err := twoEnds(ends)
	if err != nil {
		return err
	}
	if err := o.check(); err != nil {
		return err
	}
	if o.with != "" {
		build, faults := a.read(o.with)
		if len(faults) > 0 {
			return faults
		}
		o.Shelf = repair.WithBuild(build)
	}
	f := adaptFactsOf(repair.Adapt(x, y, o.Options), ends[0], ends[1], o.Pressure)
	if !f.Direct && len(f.Chains) == 0 {
		a.status = exitStops
	}
	if a.json {
		return a.ui.printJSON(f)
	}
	a.printAdapt(f)
	return nil
}

// check reads the pressure, and refuses what no flag can be.
func (o *adaptFlags) check() (err error) {
	if o.bar != "" {
		if o.Pressure, err = pressureFlag(o.bar); err != nil {
			return err
		}
	}
	o.ByPrice = o.by == "price"
	switch {
	case !slices.Contains([]string{"", "sea", "product", "fresh"}, o.Water):
		return fmt.Errorf("--water is sea, product or fresh, and not %q", o.Water)
	case o.Most < 0 || o.Most > 3:
		return fmt.Errorf("--max is 1, 2 or 3 pieces: more is not what a fitter would stack")
	case !o.ByPrice && o.by != "joints":
		return fmt.Errorf("--by is joints or price, and not %q", o.by)
	case o.Count < 0 || o.Count > repair.MostShown:
		return fmt.Errorf("-n is 1 to %d chains, and not %d", repair.MostShown, o.Count)
	}
	return nil
}

// pressureFlag reads a pressure; a bare number is in bar, as the flag's name says.
func pressureFlag(text string) (quantity.Pressure, error) {
	p, err := quantity.ParsePressure(text)
	if err == nil {
		return p, nil
	}
	if p, bare := quantity.ParsePressure(text + " bar"); bare == nil {
		return p, nil
	}
	return 0, fmt.Errorf("--bar %q: %w", text, err)
}

// adaptFactsOf gives what is shown of an answer; need is the pressure that was asked for, 0 for none.
func adaptFactsOf(got repair.Answer, x, y string, need quantity.Pressure) adaptFacts {
	f := adaptFacts{A: strings.TrimSpace(x), B: strings.TrimSpace(y), Direct: got.Direct != nil, Chains: []chainFacts{}, None: got.None, Ask: got.Ask, Assumed: strings.Join(got.Assumed, "; ")}
	f.Each = []eachFacts{}
	for _, r := range got.Each {
		row := eachFacts{A: r.A.String(), B: r.B.String(), Direct: r.Direct, Buy: []string{}, None: r.None}
		if r.Chain != nil {
			for _, p := range r.Chain.Pieces {
				row.Buy = append(row.Buy, p.Title)
			}
		}
		f.Each = append(f.Each, row)
	}
	for i := range got.Chains {
		c := &got.Chains[i]
		row := chainFacts{Cautions: append(append([]string{}, c.Cautions...), c.Notes...)}
		for _, p := range c.Pieces {
			piece := adaptPiece{Title: p.Title, Kind: p.Kind, A: p.Texts[0], B: p.Texts[1], Material: p.Material, Class: p.Class, Stock: p.Stock, Paste: p.Paste(need)}
			if p.Price != nil {
				n := p.Price.Number()
				piece.Price, piece.Currency, piece.Shop = &n, p.Price.CurrencyCode(), p.Shop
			}
			row.Pieces = append(row.Pieces, piece)
		}
		for k := range c.Joints {
			m := &c.Joints[k]
			mk := makeup.Of(m)
			mk.Torque.Known = false // of steel studs; what the given ends are made of is not said
			row.Joints = append(row.Joints, chainJointFacts{m.A.String(), m.B.String(), m.Verdict.String(), mk.String()})
		}
		if c.Holds != nil {
			row.Holds, row.Weakest = known(c.Holds.Pressure.Bar()), c.Weakest.Title
		}
		f.Chains = append(f.Chains, row)
	}
	return f
}

func (a *app) printAdapt(f adaptFacts) {
	u := a.ui
	switch {
	case f.Direct:
		u.line("Nothing to buy: they join already. How: handtight mate %q %q", f.A, f.B)
		u.say("", "What the two parts themselves hold and are made of was not looked at.")
		return
	case len(f.Chains) == 0:
		u.line("%s", u.paint(red, "NONE"))
		u.fold("  why", f.None)
		if f.Ask != "" {
			u.fold("  ask", f.Ask)
			a.printReadings(f.Each)
		}
		return
	}
	for i, c := range f.Chains {
		u.line("%s", u.paint(bold, fmt.Sprintf("%d.", i+1)))
		for _, p := range c.Pieces {
			u.fold("  buy", p.Title)
			if p.Price != nil {
				u.fold("  price", fmt.Sprintf("%s %s, %s; without its freight", *p.Price, p.Currency, p.Shop))
			}
		}
		for _, j := range c.Joints {
			u.fold("  joint", fmt.Sprintf("%s with %s: %s; %s", j.A, j.B, strings.ReplaceAll(j.Verdict, "-", " "), j.Makeup))
		}
		if c.Weakest != "" {
			u.fold("  holds", fmt.Sprintf("%s bar, of %s", figure(c.Holds), c.Weakest))
		}
		for _, s := range c.Cautions {
			u.fold("  mind", s)
		}
		u.line("")
	}
	if f.Assumed != "" {
		u.say("", "%s.", strings.ToUpper(f.Assumed[:1])+f.Assumed[1:])
	}
	if f.Ask != "" {
		u.say("", "Every chain above serves all that the words leave open. To know: %s", f.Ask)
		a.printReadings(f.Each)
	}
	if first := f.Chains[0].Pieces[0].Paste; first != "" {
		u.say("", "To paste into the build:")
		for _, p := range f.Chains[0].Pieces {
			for _, line := range strings.Split(strings.TrimSuffix(p.Paste, "\n"), "\n") {
				u.line("    %s", line)
			}
		}
	}
}

// printReadings says of each reading of an open end what it would take.
func (a *app) printReadings(list []eachFacts) {
	for _, r := range list {
		text := strings.Join(r.Buy, "; and ")
		switch {
		case r.Direct:
			text = "nothing to buy: they join"
		case text == "":
			text = "none: " + r.None
		}
		a.ui.fold("  if it is", fmt.Sprintf("%s, with %s: %s", r.A, r.B, text))
	}
}
