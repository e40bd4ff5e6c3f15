package repair

import (
	"fmt"

	"handtight/threads"
)

// why names the first wall that every chain meets: it drops the rules one at a time, the
// plainest first, and says of the chain that then is found what is wrong with it.
func (q *query) why(a, b threads.EndReading) string {
	defer func(n int) { q.o.Count = n }(q.o.Count)
	q.o.Count = 1
	m := threads.Mate(a.Candidates[0], b.Candidates[0])
	if most, bound := most(&m); m.Verdict.Holds() && bound && q.o.Pressure > most {
		return fmt.Sprintf("they join as they are, and %s holds %s at the most, where %s is asked for: change both ends", m.Closes(), most, q.o.Pressure)
	}
	found := func(drops ...string) (Chain, bool) {
		for _, d := range drops {
			q.drop[d] = true
		}
		q.any = q.drop["most"] // of longer chains only how long they are is said
		list := q.chains(a, b)
		q.any = false
		for _, d := range drops {
			delete(q.drop, d)
		}
		if len(list) == 0 {
			return Chain{}, false
		}
		return list[0], true
	}
	if c, ok := found("material"); ok {
		return fmt.Sprintf("it is not made of %s; in %s there is %s", q.o.Material, c.Pieces[0].Material, c.Pieces[0].Title)
	}
	if c, ok := found("pressure"); ok {
		for i := range c.Joints {
			if m := &c.Joints[i]; m.HasLimit && q.o.Pressure > m.Limit {
				return fmt.Sprintf("there is %s, but %s holds %s, and %s is asked for", c.Pieces[0].Title, m.Closes(), m.Limit, q.o.Pressure)
			}
		}
		if c.Holds != nil {
			return fmt.Sprintf("there is %s, but it holds %s, and %s is asked for", c.Weakest.Title, c.Holds.Pressure, q.o.Pressure)
		}
		return fmt.Sprintf("there is %s, but nothing says that it holds %s", c.Pieces[0].Title, q.o.Pressure)
	}
	if c, ok := found("water"); ok {
		return fmt.Sprintf("it is made of %s only, which does not stand in this water", c.Pieces[0].Material)
	}
	if _, ok := found("water", "pressure"); ok {
		return "what is made stands neither in this water nor at this pressure"
	}
	if c, ok := found("most"); ok && len(c.Pieces) > q.o.Most {
		if q.o.Below {
			return fmt.Sprintf("below the waterline one piece at the most, and %d are needed: change one of the two parts instead", len(c.Pieces))
		}
		return fmt.Sprintf("%d pieces are needed, and a fitter stacks %d at the most: change one of the two parts instead (--max 3 shows it all the same)", len(c.Pieces), q.o.Most)
	}
	if c, ok := found("most", "water", "pressure", "material"); ok {
		return fmt.Sprintf("%d pieces would join them, and not at this pressure or in this water: change one of the two parts instead", len(c.Pieces))
	}
	for _, e := range []threads.End{a.Candidates[0], b.Candidates[0]} {
		if !q.shelf.stock.Knows(e) {
			return fmt.Sprintf("nothing in the stock joins %s: replace the part that has it%s", e, loose(a, b))
		}
	}
	return "no generic fitting, and no chain of three, spans these two: change one of the two parts instead"
}

// loose warns of two ends that go together by hand and do not hold.
func loose(a, b threads.EndReading) string {
	m := threads.Mate(a.Candidates[0], b.Candidates[0])
	if m.Verdict != threads.Loose {
		return ""
	}
	return ". By hand the two screw together, and are loose: " + m.Reason()
}
