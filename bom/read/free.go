package read

import (
	"fmt"
	"strings"

	"handtight/bom/build"
	"handtight/bom/source"
	"handtight/catalog"
)

// freePorts reads a part that the build describes itself: ports of its own
// naming, and what happens between them as lists of "from>to".
func (r *reader) freePorts(t *source.Table, it *build.Item) {
	said, ok := t.Table("ports")
	if !ok {
		if !t.Has("ports") {
			t.FaultHere("a part of kind `passage` names its own ports", "write ports = { left = '1/2 NPT female', right = '1/2 NPT female' } and open = [\"left>right\"]")
		}
		return
	}
	for _, name := range said.Keys() {
		p := build.Port{Name: name, Mark: build.MarkOf(said, name)}
		if !isID(name) {
			said.Fault(name, fmt.Sprintf("`%s` cannot be the name of a port", name), "use letters, digits, - and _ only")
		}
		if text, ok := said.Text(name, "1/2 NPT female"); ok {
			p.Said, p.Text = true, text
			r.portEnd(said, name, &p)
		}
		it.Ports = append(it.Ports, p)
	}
	said.Done()
	r.freePassages(t, it, "open", catalog.Open)
	r.freePassages(t, it, "one_way", catalog.OneWay)
	r.freePassages(t, it, "shut", catalog.Shut)
}

func (r *reader) freePassages(t *source.Table, it *build.Item, key string, is catalog.Flow) {
	for i, text := range t.Texts(key, "left>right") {
		from, to, ok := strings.Cut(text, ">")
		a, b := it.PortIndex(strings.TrimSpace(from)), it.PortIndex(strings.TrimSpace(to))
		if !ok || a < 0 || b < 0 || a == b {
			t.FaultAt(fmt.Sprintf("`%s` does not name two ports of the part", text), "write two of its ports with > between, like \"left>right\"", key, i)
			continue
		}
		it.Free = append(it.Free, build.FreePassage{From: a, To: b, Is: is})
	}
}
