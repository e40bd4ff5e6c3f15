package main

import (
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"handtight/bom"
	"handtight/bom/drawing"
	"handtight/bom/file"
	"handtight/bom/rule"
)

// Most of a file that is looked at to see whether it is one of ours.
var headLimit = file.Limit{Bytes: 64 << 20}

func (a *app) pictureCommand() *cobra.Command {
	var out, state, panel string
	var overview, narrow, force bool
	cmd := &cobra.Command{
		Use:   "picture BUILD -o FILE.svg",
		Short: "Draw the piping: parts, hoses, joints and findings, as SVG",
		Long: `Draws the build as it is joined: every part as a symbol, hoses with their length, both
ends at each joint, water by the pattern of the line, pressure by its weight, and the
findings where they are. It shows order and joints, not places aboard.

The parts are drawn in panels, each a file: plant-A.svg, plant-B.svg; --panel draws one.
--overview draws equipment only, on one sheet. --state draws another state of the build
(handtight check BUILD --states lists them). With -o - one picture goes to the output.`,
		Example: `  handtight picture testdata/clean/build.toml -o plant.svg --overview
  handtight picture build.toml -o plant.svg --state "throttle shut"
  handtight picture build.toml -o - --panel B > high-pressure.svg`,
		Args: exactly(1, "one build file"),
		RunE: func(_ *cobra.Command, args []string) error {
			if out == "" {
				return fmt.Errorf("a picture needs a file: -o plant.svg, or -o - for the output")
			}
			sys, err := a.load(args[0])
			if err != nil {
				return err
			}
			findings := rule.Check(sys)
			a.judge(findings)
			panels, err := panelsAsked(sys, drawing.MarksOf(findings, nil), state, panel, overview)
			if err != nil {
				return err
			}
			return a.writePictures(out, panels, narrow, force, sys.Build.Files)
		},
	}
	cmd.Flags().StringVarP(&out, "output", "o", "", "write to this file (.svg); - for the output")
	cmd.Flags().StringVar(&state, "state", "normal", "draw this state of the build")
	cmd.Flags().StringVar(&panel, "panel", "", "draw one panel, by its letter")
	cmd.Flags().BoolVar(&overview, "overview", false, "draw equipment only, on one sheet")
	cmd.Flags().BoolVar(&narrow, "narrow", false, "lay it out for a phone")
	cmd.Flags().BoolVar(&force, "force", false, "write over a file that is not a picture of ours")
	cmd.MarkFlagsMutuallyExclusive("panel", "overview")
	return cmd
}

// panelsAsked draws what the flags ask for.
func panelsAsked(sys *bom.System, marks drawing.Marks, state, panel string, overview bool) ([]drawing.Panel, error) {
	if overview {
		p, ok := drawing.Overview(sys, marks, state)
		if !ok {
			return nil, noState(sys, state)
		}
		return []drawing.Panel{p}, nil
	}
	all, ok := drawing.Panels(sys, marks, state)
	if !ok {
		return nil, noState(sys, state)
	}
	if panel == "" {
		return all, nil
	}
	var letters []string
	for _, p := range all {
		if strings.EqualFold(p.Letter, panel) {
			return []drawing.Panel{p}, nil
		}
		letters = append(letters, p.Letter+" ("+p.Name+")")
	}
	return nil, fmt.Errorf("there is no panel %q; there are %s", panel, strings.Join(letters, ", "))
}

func noState(sys *bom.System, state string) error {
	_, err := viewsAsked(sys, state, false)
	if err == nil {
		err = fmt.Errorf("the build has no state %q", state)
	}
	return err
}

func (a *app) writePictures(out string, panels []drawing.Panel, narrow, force bool, inputs []string) error {
	form := drawing.Wide
	if narrow {
		form = drawing.Narrow
	}
	if out == stdin {
		if len(panels) != 1 {
			return fmt.Errorf("there are %d panels, and one picture goes to the output: choose with --panel or --overview", len(panels))
		}
		return drawing.Lay(panels[0].Scheme, form).WriteSVG(a.ui.out, panels[0].Scheme, "plant")
	}
	if !strings.EqualFold(filepath.Ext(out), ".svg") {
		return fmt.Errorf("%s does not end in .svg: name a picture file", out)
	}
	var places []*file.Output
	var names []string
	for _, p := range panels {
		name := out
		if p.Letter != "" && len(panels) > 1 {
			name = strings.TrimSuffix(out, filepath.Ext(out)) + "-" + p.Letter + filepath.Ext(out)
		}
		place, err := file.To(name, inputs...)
		if err != nil {
			return err
		}
		if err := ours(place, name, force, drawing.IsOurs); err != nil {
			return err
		}
		places, names = append(places, place), append(names, name)
	}
	written := []string{}
	for i, p := range panels {
		err := places[i].Write(func(w io.Writer) error { return drawing.Lay(p.Scheme, form).WriteSVG(w, p.Scheme, "plant") })
		if err != nil {
			return err
		}
		written = append(written, names[i])
	}
	if a.json {
		return a.ui.printJSON(map[string]any{"written": written})
	}
	for i, name := range written {
		a.ui.line("Written: %s (%s)", name, panels[i].Name)
	}
	return nil
}

// ours refuses a place where a file stands that is not one of ours, unless forced.
func ours(place *file.Output, name string, force bool, is func([]byte) bool) error {
	if !place.Exists() || force {
		return nil
	}
	data, err := place.Read(headLimit)
	if err != nil {
		return err
	}
	if !is(data) {
		return fmt.Errorf("%s stays as it is: it was not written by this program. Choose another name with -o, or write over it with --force", name)
	}
	return nil
}
