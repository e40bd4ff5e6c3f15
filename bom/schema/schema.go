package schema

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"handtight/bom/read"
	"handtight/bom/source"
	"handtight/catalog"
)

// Of gives the schema as indented JSON; the same program gives the same bytes.
func Of() ([]byte, error) {
	root := listen()
	s := root.table()
	s["$schema"] = "http://json-schema.org/draft-07/schema#"
	s["title"] = "A build of handtight, or a file that one includes"
	out, err := json.MarshalIndent(s, "", " ")
	return append(out, '\n'), err
}

// listen reads the sample and keeps what was asked.
func listen() *node {
	root := newNode()
	kinds := kindNames()
	read.ParseWith("sample.toml", []byte(sample(kinds)), read.Options{Listen: func(q source.Asked) {
		at, kind := root, ""
		for i, step := range q.Table {
			key, ok := step.(string)
			if !ok {
				if i == 1 && q.Table[0] == "item" && step.(int) < len(kinds) {
					kind = kinds[step.(int)]
				}
				continue
			}
			at = at.child(key)
		}
		at.child(q.Key).note(q)
		if kind != "" {
			root.child("item").ofKind(kind, q)
		}
	}})
	root.child("rates").open = true
	item := root.child("item")
	item.child("kind").note(source.Asked{As: source.AsWord, Words: kinds})
	item.child("ports").open = true // which ports a kind has is said by kind
	return root
}

// ofKind keeps what was asked of an item of a kind.
func (n *node) ofKind(kind string, q source.Asked) {
	if n.kinds == nil {
		n.kinds = map[string]map[string]*node{}
	}
	keys := n.kinds[kind]
	if keys == nil {
		keys = map[string]*node{}
		n.kinds[kind] = keys
	}
	key := q.Key
	if len(q.Table) > 2 {
		key = fmt.Sprint(q.Table[2])
	}
	c, ok := keys[key]
	if !ok {
		c = newNode()
		keys[key] = c
	}
	switch {
	case len(q.Table) > 2:
		c.child(q.Key).note(q)
	default:
		c.note(q)
	}
	if k, ok := catalog.KindNamed(kind); ok && k.Free && key == "ports" {
		c.open = true
	}
}

// kindNames are the kinds of items; a hose is a section of its own.
func kindNames() []string {
	return slices.DeleteFunc(catalog.KindNames(), func(name string) bool { return catalog.IsKind(name, catalog.Hose) })
}

// sample holds one of each section and of each kind: whatever the reader asks of a section,
// it asks of this one. Values stand only where it asks for more once they are there.
func sample(kinds []string) string {
	var b strings.Builder
	b.WriteString(sections)
	for i, name := range kinds {
		k, _ := catalog.KindNamed(name)
		have := "1"
		if k.Length {
			have = `"1 m"`
		}
		fmt.Fprintf(&b, "[[item]]\nid = \"i%d\"\nkind = %q\nhave = %s\nextra = %s\n", i, name, have, have)
		if !k.Loose {
			fmt.Fprintf(&b, "ports = {}\n")
		}
	}
	return b.String()
}

const sections = `
[build]
name = "sample"
currency = "EUR"
[duty]
[spares]
[power]
[rates]
[[vendor]]
id = "shop"
currency = "EUR"
[[offer]]
item = "i0"
vendor = "shop"
[[option]]
for = "i0"
item = "i1"
[[hose]]
id = "hose"
length = "1 m"
have = 1
extra = 1
[[run]]
name = "run"
path = ["i0", "i1"]
[[joint]]
at = ["i0.a", "i1.a"]
access = "easy"
[joint.tested]
[[end]]
at = "i0.a"
[audit]
on = 2026-11-28
[[audit.joint]]
at = ["i0.a", "i1.a"]
`
