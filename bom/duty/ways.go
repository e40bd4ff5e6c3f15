package duty

import (
	"fmt"
	"slices"

	"handtight/bom/graph"
	"handtight/catalog"
	"handtight/pressure/process/flow"
	"handtight/pressure/process/membrane"
	"handtight/pressure/quantity"
)

// way is rows side by side that are alike: the same elements in the same order.
type way struct {
	vessels  [][]*Vessel
	elements []*Elements // of each row, one for each that stands in it
	units    [3][]membrane.Unit
	middle   membrane.Result // of all its rows, at the middle
	all      membrane.Band
}

func (w *way) first() *Elements { return w.elements[0] }
func (w *way) last() *Elements  { return w.elements[len(w.elements)-1] }

// rows makes the membrane's rows, those that are alike as one; false where they cannot be
// reckoned with.
func (m *Making) rows() bool {
	m.Ways = len(m.Rows)
	for _, row := range m.Rows {
		w := way{vessels: [][]*Vessel{row}}
		for _, v := range row {
			if v.Count == 0 {
				m.WhyNot = v.Unit.Name + " has no element"
				return false
			}
			for i := range v.Elements {
				e := &v.Elements[i]
				if !e.known {
					m.WhyNot = fmt.Sprintf("%s: %s", e.Item.ID, e.fault)
					m.Asks = append(m.Asks, fmt.Sprintf("%s: which size is it (2521, 2540, 4021, 4040), and what does its sheet say? Nothing about its product is reckoned without.", e.Item.ID))
					return false
				}
				for range e.Count {
					w.elements = append(w.elements, e)
					for k, u := range [...]membrane.Unit{e.middle, e.ends[0], e.ends[1]} {
						w.units[k] = append(w.units[k], u)
					}
				}
				m.noteOnce(Note{"element " + e.Item.ID, e.basis, e.Item.Process.Product != nil})
			}
		}
		like := slices.IndexFunc(m.ways, func(o *way) bool { return o.like(&w) })
		if like < 0 {
			m.ways = append(m.ways, &w)
			m.Elements = max(m.Elements, len(w.elements))
			continue
		}
		m.ways[like].vessels = append(m.ways[like].vessels, row)
	}
	if len(m.ways) > 1 {
		if n := m.throttles(); n > 1 {
			m.WhyNot = fmt.Sprintf("its rows side by side hold unlike elements, and %d throttles or regulators stand behind them: how far each is open parts the water between the rows, and nothing says it. With one for all, at the pressure that they share, it can be reckoned", n)
			return false
		}
		m.Notes = append(m.Notes, Note{"unlike rows side by side", "the feed parts so that the elements of each lose the same between the inlet and the outlet that they share; what its own hoses lose is not in it", true})
	}
	for k, to := range []*membrane.Row{&m.row, &m.ends[0], &m.ends[1]} {
		for i, w := range m.ways {
			row := membrane.Row{Units: w.units[k], Parallel: len(w.vessels)}
			if i == 0 {
				*to = row
			} else {
				to.Others = append(to.Others, row)
			}
		}
	}
	return true
}

func (m *Making) noteOnce(n Note) {
	if !slices.Contains(m.Notes, n) {
		m.Notes = append(m.Notes, n)
	}
}

// like reports whether rows hold the same elements in the same order, and what bounds them is
// the same.
func (w *way) like(o *way) bool {
	if !slices.Equal(w.units[0], o.units[0]) || !slices.Equal(w.units[1], o.units[1]) || !slices.Equal(w.units[2], o.units[2]) {
		return false
	}
	for i, e := range w.elements {
		if f := o.elements[i]; e.Item != f.Item && !e.boundLike(f) {
			return false
		}
	}
	return true
}

// boundLike reports whether two elements bear the same.
func (e *Elements) boundLike(f *Elements) bool {
	a, b := &e.Item.Process, &f.Item.Process
	return e.Size == f.Size && same(a.MaxFlow, b.MaxFlow) && same(a.MinBrine, b.MinBrine) && same(a.MaxRecovery, b.MaxRecovery) &&
		same(a.MaxDrop, b.MaxDrop) && same(e.Item.MostPressure(), f.Item.MostPressure()) && same(a.MaxWater, b.MaxWater)
}

func same[T comparable](a, b *T) bool { return a == b || a != nil && b != nil && *a == *b }

// throttles is how many parts of the plant hold the brine's pressure.
func (m *Making) throttles() (count int) {
	for _, u := range m.units {
		if slices.ContainsFunc(u.Passages(), func(p catalog.Passage) bool {
			return p.Is == catalog.Throttle || p.Is == catalog.Regulator
		}) {
			count++
		}
	}
	return count
}

// wayOf is the way in which a vessel stands; nil for another part.
func (m *Making) wayOf(u *graph.Unit) *way {
	for _, w := range m.ways {
		for _, row := range w.vessels {
			if slices.ContainsFunc(row, func(v *Vessel) bool { return v.Unit == u }) {
				return w
			}
		}
	}
	return nil
}

// law is what each vessel of the way loses, at the middle flow.
func (w *way) law() flow.Law {
	return flow.Square{At: w.middle.MostFeed, Loses: max(w.middle.Loss/quantity.Pressure(len(w.vessels[0])), 1)}
}

// parts reckons what each of the ways makes at the middle.
func (m *Making) parts() error {
	if len(m.ways) == 1 {
		m.ways[0].middle = m.Middle
		return nil
	}
	got, err := m.row.Parts(m.mid)
	for i, w := range m.ways {
		w.middle = got[i]
	}
	return err
}
