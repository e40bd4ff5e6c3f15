package draft

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"handtight/catalog"
	"handtight/pressure/quantity"
	"handtight/threads"
)

// fields are the keys of an item with their values, in the order of a build file.
type fields [][2]string

func (f *fields) add(key, value string) { *f = append(*f, [2]string{key, value}) }

// text adds a text, unless it is not said.
func (f *fields) text(key, value string) {
	if value != "" {
		f.add(key, quote(value))
	}
}

// quote writes a text as TOML: a literal where it has inch marks, so that it can be read.
func quote(s string) string {
	s = strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x7f {
			return ' '
		}
		return r
	}, s)
	if strings.ContainsAny(s, "\"\\") && !strings.Contains(s, "'") {
		return "'" + s + "'"
	}
	return "\"" + strings.NewReplacer("\\", "\\\\", "\"", "\\\"").Replace(s) + "\""
}

// write gives the table of an item, its keys in line.
func (f fields) write(head string) string {
	wide := 0
	for _, kv := range f {
		wide = max(wide, len(kv[0]))
	}
	var b strings.Builder
	b.WriteString("[[" + head + "]]\n")
	for _, kv := range f {
		fmt.Fprintf(&b, "%-*s = %s\n", wide, kv[0], kv[1])
	}
	return b.String()
}

// tableOf is the table of a build file that a part stands in.
func (p *Part) tableOf() string {
	if p.isHose() {
		return tableHose
	}
	return "item"
}

// tableHose is the table of what is cut or made up as hose.
const tableHose = "hose"

// figure writes a figure with as many digits as it was read with.
func figure(v float64) string {
	return quantity.Decimals(v, 3)
}

// item writes the part as an item of a build file, without what only the plant knows.
func (p *Part) fields() fields {
	var f fields
	f.text("id", p.ID)
	if !p.isHose() {
		f.text("kind", p.Kind.Name)
	}
	f.text("about", about(p.Line.Text))
	has := func(key string) bool { return slices.Contains(p.Kind.Keys, key) }
	p.portFields(&f)
	material := p.Says.Material
	if m := metalOf(p.Line.Text); p.isHose() && m != "" {
		material = m + " ends"
	}
	f.text("material", material)
	if r := p.Says.Rated; r > 0 {
		f.text("rated", bar(r))
	}
	if !p.Kind.Loose {
		f.text("class", p.Says.Class)
	}
	if p.isHose() || p.isStock() {
		p.hoseFields(&f)
	}
	if has("micron") && p.Says.Micron > 0 {
		f.text("micron", figure(p.Says.Micron.Millimetres()*1000)+" micron")
	}
	if has("set") && p.Says.Set > 0 {
		f.text("set", bar(p.Says.Set))
	}
	if has("full_flow") && p.Says.Full > 0 {
		f.text("full_flow", bar(p.Says.Full))
	}
	if has("shutoff") && p.Says.Cut > 0 {
		f.text("shutoff", bar(p.Says.Cut))
	}
	if has("scale") {
		p.scale(&f)
	} else if has("flow") && p.Says.FlowFrom > 0 {
		f.text("flow", flow(p.Says.FlowFrom))
	}
	if has("motor") && p.Says.Volts[0] > 0 {
		f.text("motor", figure(p.Says.Volts[0].Volts())+" V")
	}
	if has("size") && len(p.Kind.Boundary) == 0 {
		f.text("size", p.element())
	}
	if p.size != "" {
		f.text("size", p.size)
	}
	if has("between") {
		f.text("between", between(p.Line.Text))
	}
	return f
}

// between is what a selector does on its way, where the words say it.
func between(text string) string {
	lower := strings.ToLower(text)
	if strings.Contains(lower, "both ways open") || strings.Contains(lower, "open between") {
		return "open"
	}
	return ""
}

// element is the size of an element or a vessel, as the trade writes it: 2540.
func (p *Part) element() string {
	if p.Says.Across == 0 || p.Says.Long == 0 {
		return ""
	}
	return fmt.Sprintf("%02.0f%02.0f", p.Says.Across*10, p.Says.Long)
}

func (p *Part) scale(f *fields) {
	switch {
	case p.Kind.Is(catalog.Gauge) && p.Says.Scale > 0:
		f.text("scale", bar(p.Says.Scale))
	case p.Kind.Is(catalog.FlowMeter) && p.Says.FlowTo > p.Says.FlowFrom:
		f.text("scale", figure(p.Says.FlowFrom.LitresPerHour())+" to "+figure(p.Says.FlowTo.LitresPerHour())+" L/h")
	}
}

func (p *Part) hoseFields(f *fields) {
	if p.Says.Spec != "" {
		f.text("spec", "SAE "+p.Says.Spec)
		if !strings.HasPrefix(p.Says.Spec, "100R") {
			(*f)[len(*f)-1][1] = quote(p.Says.Spec)
		}
	}
	if p.Says.Bore > 0 {
		key := "bore"
		if p.isStock() && p.Says.Outside {
			key = "outside"
		}
		f.text(key, boreText(p.Says.Bore))
	}
	if p.Says.Vacuum > 0 {
		f.text("vacuum", bar(p.Says.Vacuum))
	}
	if p.isHose() {
		length := p.Says.Length
		if length <= 0 {
			length = quantity.Metre
			p.assume("its length is not said: 1 m was taken; measure it")
		}
		f.text("length", figure(length.Millimetres()/1000)+" m")
	}
}

func (p *Part) assume(text string) {
	if !slices.Contains(p.Assume, text) {
		p.Assume = append(p.Assume, text)
	}
}

// boreText writes a bore as shops do: in inches where it is a fraction of one.
func boreText(d quantity.Length) string {
	mm := d.Millimetres()
	for _, n := range []int{3, 4, 5, 6, 8, 10, 12, 14, 16, 20, 24, 32} { // sixteenths: the dash sizes
		if math.Abs(mm-float64(n)*25.4/16) < 0.02 && mm != math.Trunc(mm) {
			return dashes[n]
		}
	}
	return millimetres(mm) + " mm"
}

var dashes = map[int]string{3: `3/16"`, 4: `1/4"`, 5: `5/16"`, 6: `3/8"`, 8: `1/2"`, 10: `5/8"`, 12: `3/4"`, 14: `7/8"`, 16: `1"`, 20: `1 1/4"`, 24: `1 1/2"`, 32: `2"`}

// portFields writes the ends: of a hose a list, else by port.
func (p *Part) portFields(f *fields) {
	if len(p.ends) == 0 {
		return
	}
	var list []string
	for i, e := range p.ends {
		switch {
		case p.isHose():
			list = append(list, literal(e.Words))
		case e.Words != "":
			list = append(list, p.ports[i]+" = "+literal(e.Words))
		}
	}
	switch {
	case len(list) == 0:
	case p.isHose():
		f.add("ends", "["+strings.Join(list, ", ")+"]")
	default:
		f.add("ports", "{ "+strings.Join(list, ", ")+" }")
	}
}

func literal(s string) string {
	if strings.Contains(s, "'") {
		return quote(s)
	}
	return "'" + s + "'"
}

func bar(p quantity.Pressure) string { return figure(p.Bar()) + " bar" }

func flow(q quantity.Flow) string {
	if lpm := q.LitresPerMinute(); lpm >= 1 {
		return figure(lpm) + " L/min"
	}
	return figure(q.LitresPerHour()) + " L/h"
}

// about is a line's text, of a length that a list can show.
func about(text string) string {
	const most = 160
	if r := []rune(text); len(r) > most {
		return strings.TrimSpace(string(r[:most])) + " …"
	}
	return text
}

// slug is an end in a few letters, for an id: "g34m", "n12f", "19".
func slug(e threads.EndReading) string {
	if len(e.Candidates) == 0 {
		return "open"
	}
	c := e.Candidates[0]
	if !c.Family.Threaded() {
		return strings.TrimSuffix(millimetres(c.Diameter.Millimetres()), ".0")
	}
	size := strings.Map(func(r rune) rune {
		if r >= '0' && r <= '9' {
			return r
		}
		return -1
	}, strings.TrimSuffix(c.Size, "x1.5"))
	sex := map[threads.Sex]string{threads.Male: "m", threads.Female: "f"}[c.Sex]
	return strings.ToLower(c.Family.String()) + size + sex
}
