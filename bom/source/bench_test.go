package source

import (
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/stretchr/testify/require"
)

const benchItems = 10_000

func BenchmarkBareDecode(b *testing.B) {
	text := manyItems(benchItems)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		values := map[string]any{}
		_, err := toml.Decode(text, &values)
		require.NoError(b, err)
	}
}

func BenchmarkParse(b *testing.B) {
	text := []byte(manyItems(benchItems))
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		_, faults := Parse("k.toml", text)
		require.Empty(b, faults)
	}
}

func BenchmarkLocate(b *testing.B) {
	text := manyItems(benchItems)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		locate(text)
	}
}

func BenchmarkRead(b *testing.B) {
	doc := parsed(b, manyItems(benchItems))
	b.ReportAllocs()
	for b.Loop() {
		r := NewReader(doc)
		root := r.Root()
		build, _ := root.Table("build")
		build.RequiredText("name")
		build.Done()
		for _, item := range root.Tables("item") {
			item.RequiredText("id")
			for _, key := range []string{"kind", "about", "title", "material", "rated", "flow", "life", "fails", "bore", "spec"} {
				item.Text(key, "5 bar")
			}
			item.Whole("have")
			item.Texts("tags")
			if ports, ok := item.Table("ports"); ok {
				ports.Known("a", "b")
				ports.Done()
			}
			item.Done()
		}
		root.Done()
		require.Empty(b, r.Faults())
	}
}
