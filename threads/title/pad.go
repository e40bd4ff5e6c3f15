package title

import "sync"

// pad is the paper that one line is worked out on: its spelling, its tokens, figures and phrases.
// Lists have many lines, and what is read of one holds none of it, so the paper is
// used again.
type pad struct {
	spelling spelling
	norm     []byte
	at       []int32
	key      []byte // what a phrase is looked up by
	tokens   []token

	line    line
	figures []figure
	phrases []phrase
	lists   []*phrase // what lists of phrases are cut from
}

// room is how many places the lists of phrases of one line have together; few lines need more.
const room = 128

// list gives an empty list with room for n phrases.
func (p *pad) list(n int) []*phrase {
	if n > cap(p.lists)-len(p.lists) {
		p.lists = make([]*phrase, 0, max(room, n))
	}
	from := len(p.lists)
	p.lists = p.lists[:from+n]
	return p.lists[from : from : from+n]
}

// slab is how many figures or phrases are made at once: few lines have more.
const slab = 16

// figure gives an empty figure.
func (p *pad) figure() *figure {
	if len(p.figures) == cap(p.figures) {
		p.figures = make([]figure, 0, slab)
	}
	p.figures = append(p.figures, figure{})
	return &p.figures[len(p.figures)-1]
}

// phrase gives an empty phrase.
func (p *pad) phrase() *phrase {
	if len(p.phrases) == cap(p.phrases) {
		p.phrases = make([]phrase, 0, slab)
	}
	p.phrases = append(p.phrases, phrase{})
	return &p.phrases[len(p.phrases)-1]
}

var pads = sync.Pool{New: func() any { return new(pad) }}

// takePad gives empty paper for a text of so many bytes.
func takePad(size int) *pad {
	p := pads.Get().(*pad)
	if size = max(size, 112); cap(p.norm) < size+16 {
		p.norm, p.at = make([]byte, 0, size+16), make([]int32, 0, size+17)
		p.tokens = make([]token, 0, (size+16)/4+6)
	}
	p.norm, p.at, p.tokens = p.norm[:0], p.at[:0], p.tokens[:0]
	return p
}

// release gives a line's paper back. Nothing of the line may be asked after it.
func (l *line) release() {
	clear(l.tokens) // what they point to shall not outlive the line
	p := l.pad
	p.tokens = l.tokens
	clear(p.figures)
	clear(p.phrases)
	clear(p.lists)
	p.figures, p.phrases, p.lists = p.figures[:0], p.phrases[:0], p.lists[:0]
	s := l.spelling
	*l = line{}
	s.release()
}

// release gives the paper of a text back that nothing was read of.
func (s *spelling) release() {
	p := s.pad
	p.norm, p.at = s.norm, s.at
	*s = spelling{}
	pads.Put(p)
}
