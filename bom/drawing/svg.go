package drawing

import (
	"bytes"
	"html/template"
	"io"
	"strings"
	"sync"
)

// fileTemplate writes a picture as a file of its own, its style in it.
var fileTemplate = sync.OnceValue(func() *template.Template {
	t := Template()
	return template.Must(t.New("svg").Parse(`{{template "picture" .}}` + "\n"))
})

var styleText = sync.OnceValue(func() string {
	var b bytes.Buffer
	if err := template.Must(Template().New("style").Parse(`<style>{{template "picture-style"}}</style>`)).Execute(&b, nil); err != nil {
		return ""
	}
	return b.String()
})

// fileMark stands in every file that [Picture.WriteSVG] writes, so that one of another
// program is not taken for ours.
const fileMark = "<!-- piping picture, format 1 -->"

// IsOurs reports whether a file was written by [Picture.WriteSVG].
func IsOurs(data []byte) bool {
	return bytes.Contains(data[:min(len(data), 200)], []byte(fileMark))
}

// WriteSVG writes a picture as a self-contained file. Shapes carry presentation attributes
// as well as classes, since some viewers drop styles. Errors are those of the writer.
func (p *Picture) WriteSVG(w io.Writer, s *Scheme, id string) error {
	var b bytes.Buffer
	if err := fileTemplate().Execute(&b, p.View(s, id)); err != nil {
		return err
	}
	text := b.String()
	head := strings.Index(text, ">") + 1
	_, err := io.WriteString(w, "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"+fileMark+"\n"+text[:head]+styleText()+text[head:])
	return err
}
