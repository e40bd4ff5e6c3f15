package main

import (
	"math"

	"handtight/bom"
	"handtight/bom/facts"
	"handtight/bom/finding"
	"handtight/pressure"
)

type checkFacts struct {
	Build     string          `json:"build"`
	Findings  []facts.Finding `json:"findings"`
	Joints    []jointFacts    `json:"joints"`
	Segments  []segmentFacts  `json:"segments"`
	Parts     []partFacts     `json:"parts"` // in the order in which they are placed
	Questions []questionFacts `json:"questions"`
	States    []stateFacts    `json:"states,omitempty"` // only when asked for
	Counts    countFacts      `json:"counts"`
}

type jointFacts struct {
	Number    int     `json:"number"`
	A         string  `json:"a"`
	B         string  `json:"b"`
	EndA      string  `json:"end_a"`
	EndB      string  `json:"end_b"`
	Verdict   *string `json:"verdict"`
	Worst     number  `json:"worst_bar"`
	Unbounded bool    `json:"unbounded,omitempty"`
	Makeup    string  `json:"makeup"`
	Care      string  `json:"care,omitempty"`
	Thread    number  `json:"thread_bar"`      // what its threads bear; null without threads
	Reckoned  bool    `json:"thread_estimate"` // the figure is an estimate, which it always is; false without one
}

type segmentFacts struct {
	Name      string   `json:"name"`
	Runs      []string `json:"runs"`
	Members   []string `json:"members"`
	Normal    number   `json:"normal_bar"`
	Worst     number   `json:"worst_bar"`
	Unbounded bool     `json:"unbounded,omitempty"`
	Cause     string   `json:"worst_cause"`
	Lowest    number   `json:"lowest_bar"`
	Weakest   string   `json:"weakest"`
	Rating    number   `json:"rating_bar"`
	Basis     string   `json:"rating_basis"`
	Status    string   `json:"rating_status"` // how well the figure is known; "" where there is none
	Derated   bool     `json:"derated"`
	Estimate  bool     `json:"estimate"`
	Margin    number   `json:"margin"`
	Proof     number   `json:"proof_bar"` // the most that a first test may put on it
	High      bool     `json:"high_pressure"`
}

type questionFacts struct {
	Port   string `json:"port"`
	Ask    string `json:"ask"`
	Joints int    `json:"joints"`
}

type countFacts struct {
	Stop     int `json:"stop"`
	Caution  int `json:"caution"`
	Note     int `json:"note"`
	Joints   int `json:"joints"`
	Segments int `json:"segments"`
}

func checkFactsOf(sys *bom.System, findings []finding.Finding) checkFacts {
	f := checkFacts{
		Build: sys.Build.Name, Findings: facts.Findings(findings), Joints: []jointFacts{}, Segments: []segmentFacts{},
		Parts: partFactsOf(sys), Questions: []questionFacts{},
		Counts: countFacts{
			finding.Count(findings, finding.Stop), finding.Count(findings, finding.Caution), finding.Count(findings, finding.Note),
			len(sys.Joints), len(sys.Segments),
		},
	}
	for _, j := range sys.Joints {
		f.Joints = append(f.Joints, jointFactsOf(sys, j))
	}
	for _, g := range sys.Segments {
		f.Segments = append(f.Segments, segmentFactsOf(sys, g))
	}
	for _, q := range sys.Questions() {
		f.Questions = append(f.Questions, questionFacts{q.Port, q.Ask, q.Joints})
	}
	return f
}

func jointFactsOf(sys *bom.System, j *bom.Joint) jointFacts {
	a, b := &sys.Ports[j.A], &sys.Ports[j.B]
	worst, _ := sys.PortLoad(j.A).Worst()
	f := jointFacts{
		Number: j.Number, A: a.Name(), B: b.Name(), EndA: a.Port.Words(), EndB: b.Port.Words(),
		Worst: known(worst), Unbounded: math.IsInf(worst, 1), Makeup: sys.MakeupText(j), Care: sys.MakeupCare(j),
	}
	if r, ok := sys.JointEstimate(j); ok {
		f.Thread, f.Reckoned = known(r.Pressure.Bar()), r.Basis == pressure.Estimate
	}
	if j.Known {
		verdict := j.Mating.Verdict.String()
		f.Verdict = &verdict
	}
	return f
}

func segmentFactsOf(sys *bom.System, g *bom.Segment) segmentFacts {
	worst, state := g.Load.Worst()
	f := segmentFacts{
		Name: g.Name, Runs: []string{}, Members: []string{}, Normal: known(g.Load.Normal), Worst: known(worst),
		Unbounded: math.IsInf(worst, 1), Lowest: known(g.Load.Low), High: g.High(),
	}
	if state != nil {
		f.Cause = state.Cause
	}
	for _, r := range g.Runs {
		f.Runs = append(f.Runs, r.Name)
	}
	for _, u := range g.Units {
		f.Members = append(f.Members, u.Name)
	}
	if g.Hold.Known {
		r := g.Hold.Rating
		f.Weakest, f.Rating, f.Basis, f.Status = g.Hold.What, known(r.Pressure.Bar()), r.Basis.String(), r.Status.String()
		f.Derated, f.Estimate = g.Hold.Derated, g.Hold.Estimate
	}
	if m, ok := g.Margin(); ok {
		f.Margin = known(m)
	}
	if p, ok := sys.Proof(g); ok {
		f.Proof = known(p)
	}
	return f
}
