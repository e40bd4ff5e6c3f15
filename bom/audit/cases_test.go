package audit

import (
	"fmt"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/read"
	"handtight/threads/evidence"
)

// oneCase is a case of testdata/cases.toml: its answers were written before the tool was run.
type oneCase struct {
	Name, Plant, A, B, Facts, Origin, Rated string
	In                                      []string
	NotIn                                   []string `toml:"not_in"`
	Says, Never                             []string
	Of, First                               string
	Below, Near, Order                      []string
	Fault                                   string
	Top                                     bool
}

type caseFile struct {
	On   time.Time
	Case []oneCase
}

func cases(t *testing.T) caseFile {
	t.Helper()
	text, err := os.ReadFile("testdata/cases.toml")
	require.NoError(t, err)
	var f caseFile
	_, err = toml.Decode(string(text), &f)
	require.NoError(t, err)
	f.On = time.Date(f.On.Year(), f.On.Month(), f.On.Day(), 0, 0, 0, 0, time.UTC)
	return f
}

// build writes the smallest build that has the joint.
func (c *oneCase) build() (text string, joint [2]string) {
	port := func(name, end string) string {
		if end == "" {
			return ""
		}
		return fmt.Sprintf("%s = '%s'", name, end)
	}
	join := func(list ...string) string {
		return "{ " + strings.Join(slices.DeleteFunc(list, func(s string) bool { return s == "" }), ", ") + " }"
	}
	head := "[build]\nname = \"case\"\ncurrency = \"EUR\"\n"
	if c.Origin != "" {
		head += "origin = \"" + c.Origin + "\"\n"
	}
	rated := c.Rated
	if rated == "" {
		rated = "120 bar"
	}
	switch c.Plant {
	case "hp":
		joint = [2]string{"pump.out", "vessel.feed"}
		text = head + `[duty]
pressure = "58 bar"
[[item]]
id = "pump"
kind = "plunger pump"
material = "316"
stall = "60 bar"
rated = "120 bar"
ports = ` + join(port("in", "1/2 NPT female"), port("out", c.A)) + `
[[item]]
id = "vessel"
kind = "pressure vessel"
material = "316"
rated = "` + rated + `"
ports = ` + join(port("feed", c.B), port("brine", "1/2 NPT female"), port("product", "1/4 NPT female")) + `
[[run]]
name = "line"
path = ["pump", "vessel.feed"]
`
	case "house":
		joint = [2]string{"left.b", "right.in"}
		text = head + `[[item]]
id = "house"
kind = "house supply"
pressure = "2 bar"
ports = { out = '1/2 NPT female' }
[[item]]
id = "left"
kind = "nipple"
rated = "16 bar"
ports = ` + join(port("a", "1/2 NPT male"), port("b", c.A)) + `
[[item]]
id = "right"
kind = "filter housing"
rated = "16 bar"
ports = ` + join(port("in", c.B), port("out", "1/2 NPT female")) + `
[[run]]
name = "line"
path = ["house", "left.a>b", "right.in"]
`
	case "sea":
		joint = [2]string{"cock.inboard", "strainer.in"}
		text = head + `[[item]]
id = "cock"
kind = "seacock"
rated = "16 bar"
ports = ` + join(port("inboard", c.A)) + `
[[item]]
id = "strainer"
kind = "strainer"
rated = "16 bar"
ports = ` + join(port("in", c.B), port("out", "19 mm barb")) + `
[[run]]
name = "line"
below_waterline = true
path = ["cock", "strainer"]
`
	case "tails":
		joint = [2]string{"tail/1.a", "valve/1.in"}
		text = head + `[[item]]
id = "house"
kind = "house supply"
pressure = "2 bar"
ports = { out = '13 mm barb' }
[[item]]
id = "tail"
kind = "hose tail"
origin = "US"
rated = "16 bar"
ports = ` + join(port("a", c.A), port("b", "13 mm barb")) + `
[[item]]
id = "valve"
kind = "shut-off valve"
rated = "16 bar"
ports = { in = '` + c.B + `', out = '` + c.B + `' }
[[item]]
id = "odd"
kind = "gauge"
rated = "16 bar"
ports = { in = 'some 1/2 thread male' }
[[item]]
id = "stock"
kind = "hose stock"
bore = "13 mm"
rated = "10 bar"
[[hose]]
id = "hose"
of = "stock"
length = "1 m"
[[run]]
name = "line"
path = ["house", "hose/0", "tail/1.b>a", "valve/1", "tail/2.a>b", "hose/1", "tail/3.b>a", "valve/2", "tail/4.a>b", "hose/2", "tail/5.b>a", "valve/3", "odd"]
`
	}
	facts := strings.ReplaceAll(c.Facts, "JOINT", fmt.Sprintf("[%q, %q]", joint[0], joint[1]))
	return text + facts + "\n", joint
}

// judge gives what is wrong with the tool's answer, "" if nothing.
func (c *oneCase) judge(on time.Time) string {
	text, joint := c.build()
	b, faults := read.Parse("case.toml", []byte(text))
	var sys *bom.System
	if len(faults) == 0 {
		sys, faults = bom.Walk(b)
	}
	if c.Fault != "" {
		switch {
		case len(faults) == 0:
			return "it was taken, and a file error is due"
		case !strings.Contains(faults.Error(), c.Fault):
			return "the fault does not say " + c.Fault + ": " + faults.Error()
		}
		return ""
	}
	if len(faults) > 0 {
		return "it was refused: " + faults.Error()
	}
	p, err := Of(sys, on)
	if err != nil {
		return err.Error()
	}
	var wrong []string
	say := func(format string, args ...any) { wrong = append(wrong, fmt.Sprintf(format, args...)) }
	var in []string
	spoken := ""
	for i := range p.Lines {
		l := &p.Lines[i]
		for _, x := range l.Joints {
			if a, b := sys.Graph.Ports[x.Joint.A].Name(), sys.Graph.Ports[x.Joint.B].Name(); slices.Contains(joint[:], a) && slices.Contains(joint[:], b) {
				in = append(in, l.Section.String())
				spoken += strings.Join([]string{l.At, l.Do, l.Why, l.Cost, DayText(l.Look), l.Stay}, "\n") + "\n"
				break
			}
		}
	}
	words := map[string]string{"wrong": "known wrong", "open": "open this first", "measure": "measure this", "prove": "prove by test", "watch": "leave and watch", "fine": "fine"}
	for _, s := range c.In {
		if !slices.Contains(in, words[s]) {
			say("it is not in %q but in %v", words[s], in)
		}
	}
	for _, s := range c.NotIn {
		if slices.Contains(in, words[s]) {
			say("it is in %q", words[s])
		}
	}
	for _, s := range c.Says {
		if !strings.Contains(spoken, s) {
			say("it does not say %q", s)
		}
	}
	for _, s := range c.Never {
		if strings.Contains(spoken, s) {
			say("it says %q", s)
		}
	}
	if c.Top {
		for _, l := range p.Lines {
			if l.Section == Measure {
				if !strings.Contains(l.Do, c.Says[0]) {
					say("another look comes first: %s", l.Do)
				}
				break
			}
		}
	}
	c.readings(sys, joint, p, say)
	if len(wrong) > 0 {
		return strings.Join(wrong, "; ") + "\n" + spoken
	}
	return ""
}

// readings checks what the end of the joint may be.
func (c *oneCase) readings(sys *bom.System, joint [2]string, p *Plan, say func(string, ...any)) {
	if c.Of == "" {
		return
	}
	got := map[string]float64{}
	var order []string
	for _, x := range p.Joints {
		a, b := sys.Graph.Ports[x.Joint.A].Name(), sys.Graph.Ports[x.Joint.B].Name()
		if !slices.Contains(joint[:], a) || !slices.Contains(joint[:], b) {
			continue
		}
		var list []evidence.Pair = x.Belief.Pairs
		for _, pair := range list {
			e := pair.Mating.A
			if b == c.Of {
				e = pair.Mating.B
			}
			if e.Form == nil {
				continue
			}
			if _, ok := got[e.Form.Designation]; !ok {
				order = append(order, e.Form.Designation)
			}
			got[e.Form.Designation] += pair.Probability
		}
	}
	first := ""
	for _, d := range order {
		if first == "" || got[d] > got[first] {
			first = d
		}
	}
	if c.First != "" && first != c.First {
		say("%s leads, not %s: %v", first, c.First, got)
	}
	for _, d := range c.Below {
		if got[d] >= 0.1 {
			say("%s has %.2f", d, got[d])
		}
	}
	if len(c.Near) == 2 {
		if d := got[c.Near[0]] - got[c.Near[1]]; d > 0.15 || d < -0.15 {
			say("%v are not near each other: %v", c.Near, got)
		}
	}
	for i := 1; i < len(c.Order); i++ {
		at := func(d string) float64 {
			for name, p := range got {
				if strings.Contains(name, d) {
					return p
				}
			}
			return 0
		}
		if at(c.Order[i]) > at(c.Order[i-1]) {
			say("%s comes before %s: %v", c.Order[i], c.Order[i-1], got)
		}
	}
}

// Every case has the answer that was written before.
func TestCases(t *testing.T) {
	f := cases(t)
	right := 0
	for i := range f.Case {
		c := &f.Case[i]
		t.Run(c.Name, func(t *testing.T) {
			if wrong := c.judge(f.On); wrong != "" {
				t.Error(wrong)
				return
			}
			right++
		})
	}
	t.Logf("%d of %d", right, len(f.Case))
}
