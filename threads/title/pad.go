package title

import "sync"

// pad is the paper that one line is worked out on: its spelling and its tokens.
// Lists have many lines, and what is read of one holds none of it, so the paper is
// used again.
type pad struct {
	norm   []byte
	at     []int32
	tokens []token
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
	l.pad.tokens = l.tokens
	l.spelling.release()
}

// release gives the paper of a text back that nothing was read of.
func (s *spelling) release() {
	s.pad.norm, s.pad.at = s.norm, s.at
	pads.Put(s.pad)
}
