package title

// beginnings holds the words that phrases of several words begin with, a bit for each: most
// words begin none, and are looked up once and not with each word behind them. Two words
// may share a bit, so that it can hold more than was added, and never less.
type beginnings [1 << 9]uint64

func (b *beginnings) add(word string) {
	n := bitOf(word)
	b[n/64] |= 1 << (n % 64)
}

func (b *beginnings) may(word []byte) bool {
	n := bitOf(word)
	return b[n/64]&(1<<(n%64)) != 0
}

func bitOf[T string | []byte](word T) uint {
	if len(word) == 0 {
		return 0
	}
	h := uint(len(word))
	for _, i := range [...]int{0, 1, len(word) / 2, len(word) - 2, len(word) - 1} {
		h = h*31 + uint(word[min(max(i, 0), len(word)-1)])
	}
	return h % (1 << 15)
}
