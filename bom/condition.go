package bom

import "handtight/catalog"

// condition is what is done, or has failed, in a state, beside the one passage that it
// shuts.
type condition struct {
	shut    map[int]bool // passages that are shut as well
	stopped bool         // the positive pumps stand still
	still   bool         // the feed pumps stand still
	flush   bool         // flush valves are open
	opened  *Unit        // the valve that stands open though it should be shut
	between *Unit        // the selector that stands between its ways
	swapped *Unit        // the selector that stands at its second way
	dry     *Unit        // the intake that lets no water in
}

// flow is what an edge does in the condition.
func (c *condition) flow(i int, e *edge) catalog.Flow {
	if c.shut[i] {
		return catalog.Shut
	}
	switch {
	case e.unit.Item.Kind.Selector:
		return c.selector(e)
	case c.opened == e.unit:
		return e.is
	case e.forFlush():
		return openIf(c.flush)
	case e.unit.Item.Normal == "shut":
		return catalog.Shut
	case e.is == catalog.PositivePump && c.stopped:
		return catalog.OneWay
	case e.is == catalog.FeedPump && c.still && e.unit.Item.Type == "centrifugal":
		return catalog.Open
	case e.is == catalog.FeedPump && c.still:
		return catalog.OneWay
	}
	return e.is
}

func openIf(yes bool) catalog.Flow {
	if yes {
		return catalog.Open
	}
	return catalog.Shut
}

// selector is the state of one of a selector's ways.
func (c *condition) selector(e *edge) catalog.Flow {
	stands := 0
	if c.swapped == e.unit {
		stands = 1
	}
	if c.between == e.unit {
		return openIf(e.unit.Item.Between == "open")
	}
	return openIf(e.way == stands)
}
