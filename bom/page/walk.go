package page

import "handtight/bom/facts"

// Run is one run of the build in words: the picture for those who do not see it.
type Run struct {
	Name  string
	Below bool
	Steps []Step
}

// Step is one joint of a run, with what stands on either side.
type Step struct {
	Number     int
	A, B       string
	EndA, EndB string
	Worst      string
}

func walk(f *facts.Facts) []Run {
	var out []Run
	at := map[string]int{}
	for _, j := range f.Joints {
		k, ok := at[j.Run]
		if !ok {
			k = len(out)
			at[j.Run] = k
			out = append(out, Run{Name: j.Run})
		}
		r := &out[k]
		r.Below = r.Below || j.Below
		r.Steps = append(r.Steps, Step{j.Number, j.A, j.B, j.EndA, j.EndB, bar(j.Worst, j.Unbounded)})
	}
	return out
}
