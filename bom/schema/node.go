package schema

import (
	"slices"

	"handtight/bom/source"
)

// node is what is known of one place of a build file, whatever element of a list it stands in.
type node struct {
	as       map[source.As]bool
	example  string
	words    []string
	required bool
	children map[string]*node
	open     bool                        // a table whose keys are the writer's
	kinds    map[string]map[string]*node // of an item: its keys by the kind of the item
}

func newNode() *node {
	return &node{as: map[source.As]bool{}, children: map[string]*node{}}
}

// child is what is known of a key of the table.
func (n *node) child(key string) *node {
	c, ok := n.children[key]
	if !ok {
		c = newNode()
		n.children[key] = c
	}
	return c
}

// note keeps what was asked.
func (n *node) note(q source.Asked) {
	n.as[q.As] = true
	if n.example == "" {
		n.example = q.Example
	}
	for _, w := range q.Words {
		if !slices.Contains(n.words, w) {
			n.words = append(n.words, w)
		}
	}
	n.required = n.required || q.Required
}

// amount is a figure with its unit, somewhere in a text: a digit or a fraction, and behind it
// a letter or a mark of a unit. What more a quantity must be, the reader says.
const amount = `[0-9¼½¾⅛⅜⅝⅞].*[\p{L}%"'″′°]`

// schema is the node as JSON Schema.
func (n *node) schema() map[string]any {
	if n.as[source.AsTables] {
		return map[string]any{"type": "array", "items": n.table()}
	}
	if n.as[source.AsTable] {
		return n.table()
	}
	var forms []map[string]any
	add := func(is source.As, form map[string]any) {
		if n.as[is] {
			forms = append(forms, form)
		}
	}
	text := map[string]any{"type": "string"}
	list := func(of any) map[string]any { return map[string]any{"type": "array", "items": of} }
	switch {
	case n.as[source.AsWord] && len(n.words) > 0:
		forms = append(forms, map[string]any{"type": "string", "enum": n.words})
	case n.as[source.AsAmount]:
		forms = append(forms, map[string]any{"type": "string", "pattern": amount})
	case n.as[source.AsText] || n.as[source.AsDate] || n.as[source.AsWhen]:
		forms = append(forms, text)
	}
	if n.as[source.AsWhole] || n.as[source.AsWhen] {
		forms = append(forms, map[string]any{"type": "integer"})
	}
	add(source.AsTexts, list(text))
	add(source.AsPairs, list(map[string]any{"type": "array", "items": text, "minItems": 2, "maxItems": 2}))
	add(source.AsBool, map[string]any{"type": "boolean"})
	out := map[string]any{}
	switch len(forms) {
	case 0: // only asked whether it is there
	case 1:
		out = forms[0]
	default:
		out["anyOf"] = forms
	}
	if n.example != "" && len(n.words) == 0 {
		out["description"] = "such as " + n.example
	}
	return out
}

// table is the schema of a table: its keys and no others.
func (n *node) table() map[string]any {
	properties := map[string]any{}
	required := []string{}
	for key, c := range n.children {
		properties[key] = c.schema()
		if c.required {
			required = append(required, key)
		}
	}
	out := map[string]any{"type": "object", "properties": properties, "additionalProperties": false}
	if n.open {
		out["additionalProperties"] = map[string]any{"type": "string"}
	}
	if slices.Sort(required); len(required) > 0 {
		out["required"] = required
	}
	if len(n.kinds) > 0 {
		out["allOf"] = n.byKind()
	}
	return out
}

// byKind says for each kind of item which of the keys it may have, and what its ports are.
func (n *node) byKind() []any {
	var names []string
	for kind := range n.kinds {
		names = append(names, kind)
	}
	slices.Sort(names)
	var out []any
	for _, kind := range names {
		var keys []string
		for key := range n.kinds[kind] {
			keys = append(keys, key)
		}
		slices.Sort(keys)
		then := map[string]any{"propertyNames": map[string]any{"enum": keys}}
		properties := map[string]any{}
		for key, c := range n.kinds[kind] {
			if c.as[source.AsTable] || n.children[key].differs(c) {
				properties[key] = c.schema()
			}
		}
		if len(properties) > 0 {
			then["properties"] = properties
		}
		out = append(out, map[string]any{
			"if":   map[string]any{"properties": map[string]any{"kind": map[string]any{"const": kind}}, "required": []string{"kind"}},
			"then": then,
		})
	}
	return out
}

// differs reports whether the key is read as less in one kind than in all of them.
func (n *node) differs(one *node) bool {
	return len(n.as) != len(one.as) || len(n.words) != len(one.words)
}
