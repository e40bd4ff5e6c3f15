package cart

import (
	"fmt"

	"handtight/bom"
	"handtight/bom/build"
	"handtight/bom/graph"
	"handtight/bom/state"
	"handtight/bom/wetting"
	"handtight/catalog"
	"handtight/pressure/quantity"
)

// place is what the places of a part ask of it: the hardest of each.
type place struct {
	worst   quantity.Pressure // highest that it sees, by the normal course, an act or a failure
	cause   string            // of it
	failure bool
	normal  quantity.Pressure
	high    bool            // a segment of high pressure is among them
	product bool            // all of it carries the drinking water that is made
	waters  []catalog.Water // that wet it
	joint   *graph.Joint    // where the worst stands; nil for none
	left    float64         // what heat leaves of a data sheet's figure: 1 is all
}

// placesOf finds the places of each item, of hoses cut from stock for the stock.
func placesOf(sys *bom.System) map[*build.Item]*place {
	out := map[*build.Item]*place{}
	waters := sys.Waters
	for _, u := range sys.Graph.Units {
		for _, it := range itemsOf(sys, u) {
			p := out[it]
			if p == nil {
				p = &place{product: len(u.Item.Ports) > 0, left: 1}
				out[it] = p
			}
			for i := range u.Item.Ports {
				p.take(sys, waters, u.First+i)
			}
		}
	}
	return out
}

// itemsOf gives what is bought for a unit: its item, or the stock that it is cut from.
func itemsOf(sys *bom.System, u *graph.Unit) []*build.Item {
	if of, ok := sys.Build.Item(u.Item.Of); ok && u.Item.Of != "" {
		return []*build.Item{u.Item, of}
	}
	return []*build.Item{u.Item}
}

// take adds a port's place.
func (p *place) take(sys *bom.System, waters *wetting.Waters, port int) {
	load := sys.States.PortLoad(port)
	p.normal = max(p.normal, load.Normal)
	joint := sys.Graph.Ports[port].Joint
	for _, l := range []struct {
		at quantity.Pressure
		by *state.State
	}{{load.Act, load.ByAct}, {load.Fail, load.ByFail}} {
		if l.by != nil && !l.at.Unbounded() && (l.at > p.worst || p.joint == nil) {
			p.worst, p.cause, p.failure, p.joint = l.at, l.by.Cause, l.by.Failure, joint
		}
	}
	if g := sys.Segments.SegmentOf(port); g != nil && g.High() {
		p.high = true
	}
	p.product = p.product && waters.Product(port)
	if h := sys.Ratings.Port(port); h.Left > 0 {
		p.left = min(p.left, h.Left)
	}
	switch {
	case waters.Product(port):
		p.wet(catalog.Product)
	case waters.Sea(port) && p.high:
		p.wet(catalog.PressedSea)
	case waters.Sea(port):
		p.wet(catalog.RawSea)
	}
}

func (p *place) wet(w catalog.Water) {
	for _, x := range p.waters {
		if x == w {
			return
		}
	}
	p.waters = append(p.waters, w)
}

// suits is the worst that a material comes to in the waters of a place.
func (p *place) suits(m *catalog.Material) catalog.Suitability {
	worst := catalog.Suitable
	for _, w := range p.waters {
		if s := m.In(w); s != catalog.NotKnown && s < worst {
			worst = s
		}
	}
	return worst
}

// at names the place of the worst pressure: "J21, hp-pump.out - hp-tee.a, up to 70 bar".
func (p *place) at(sys *bom.System) string {
	if p.joint == nil {
		return ""
	}
	return fmt.Sprintf("J%d, %s, up to %s", p.joint.Number, sys.Graph.JointName(p.joint), bars(p.worst))
}

func bars(p quantity.Pressure) string { return quantity.Significant(p.Bar(), 4) + " bar" }
