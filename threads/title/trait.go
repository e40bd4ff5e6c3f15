package title

import (
	"fmt"
	"strings"
)

// trait is a set of what a sort of part has to its own, from the column traits of
// shape.csv. Code asks for a trait and never for a part by its name.
type trait uint64

const (
	adaptor      trait = 1 << iota // an adaptor: a second size alone is an end of which nothing is said
	angled                         // 45 and 90 are its angle
	beside                         // comes with a fitting where one is named before it
	body                           // an equal or straight body has the same end twice
	bulkhead                       // its first thread is female
	branch                         // a sex before its name is its branch's
	bush                           // the larger end is male, the smaller female
	coupler                        // an inch size alone is the coupling's own
	dial                           // millimetres are its dial
	elbow                          // a street elbow is male and female
	elementSized                   // 2 1/2 x 40 is the element that it holds
	extension                      // millimetres are its length
	femaleRound                    // mostly female at every end
	foremost                       // is the part only where it is named before any size: elsewhere it is what comes with it
	hose                           // its first size may be its bore
	sealKit                        // comes for a part, and is not that part
	madeUp                         // a hose with its ends on
	manifold                       // has as many outlets as the line counts
	many                           // may have more than two ends
	nipple                         // a bare figure behind its size is its length
	nominal                        // millimetres of one end are nominal bores at all
	nut                            // has one thread
	ownThread                      // a size alone is its own thread, not the tail
	pump                           // 25/60 is its type: the bore and the head
	pillar                         // has a tail if the line speaks of a hose
	perhaps                        // the word also names a part without a tail
	plain                          // its sexes are its nature, and not only usual
	ring                           // lies on a thread and has no sex
	run                            // a sex before its name is that of one end of its run
	scaled                         // pressures are its scale
	set                            // a pressure is what it is set to, unless called a rating
	stock                          // pipe by itself, of which no word speaks of an end
	tail                           // has a tail for a hose
	tapThread                      // its inches are a tap's thread, whatever grips its pipe
	tee                            // two sizes are run and branch
	unequal                        // its two ends differ
	union                          // a flat seal is at its nut, on the female side
	valve                          // a valve or tap
	wall                           // of its two ends a single size says nothing of the other, a pipe or an outlet
	vessel                         // has feed, brine and product
	drain                          // takes pipe by its outside, larger than tubes are
	evenly                         // goes from one size to another: with one size at both ends something is left out
	plainPipe                      // is made for plain pipe too, and not with threads alone
	pipeItself                     // pipe by its own name
	saddle                         // goes round a pipe, from which a thread branches off
	serves                         // other parts are bought for it
	spool                          // a valve that may have five ports
	through                        // the water goes in at one port and out at the other; a third is for a gauge, a drain or a bypass
	delivers                       // a pump: its inlet and its outlet may differ
	ported                         // the ports of one size are counted before it
	footed                         // stands on the hull by a flange, to which no pipe is bolted
	housing                        // holds an element or a cartridge, whose diameter may be said
)

var traitNamed = map[string]trait{
	"adaptor":       adaptor,
	"angled":        angled,
	"beside":        beside,
	"body":          body,
	"bulkhead":      bulkhead,
	"branch":        branch,
	"bush":          bush,
	"coupler":       coupler,
	"dial":          dial,
	"elbow":         elbow,
	"element-sized": elementSized,
	"extension":     extension,
	"female-round":  femaleRound,
	"foremost":      foremost,
	"hose":          hose,
	"kit":           sealKit,
	"made-up":       madeUp,
	"manifold":      manifold,
	"many":          many,
	"nipple":        nipple,
	"nominal":       nominal,
	"nut":           nut,
	"own-thread":    ownThread,
	"pillar":        pillar,
	"perhaps":       perhaps,
	"pump":          pump,
	"wall":          wall,
	"plain":         plain,
	"ring":          ring,
	"run":           run,
	"scaled":        scaled,
	"set":           set,
	"stock":         stock,
	"tail":          tail,
	"tap-thread":    tapThread,
	"tee":           tee,
	"unequal":       unequal,
	"union":         union,
	"valve":         valve,
	"vessel":        vessel,
	"drain":         drain,
	"evenly":        evenly,
	"plain-pipe":    plainPipe,
	"pipe-itself":   pipeItself,
	"saddle":        saddle,
	"serves":        serves,
	"spool":         spool,
	"through":       through,
	"delivers":      delivers,
	"ported":        ported,
	"footed":        footed,
	"housing":       housing,
}

func traitsOf(words string) trait {
	var out trait
	for _, w := range strings.Fields(words) {
		t, ok := traitNamed[w]
		if !ok {
			panic(fmt.Sprintf("title: shape.csv names the trait %q, which is not known", w))
		}
		out |= t
	}
	return out
}

// is reports whether the line's sort of part has the trait.
func (l *line) is(t trait) bool { return l.shape != nil && l.shape.traits&t != 0 }
