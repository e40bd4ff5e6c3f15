package title

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"handtight/threads"
)

// How large an inch figure is an end's, and what it is above that.
func TestHowLargeAnInchFigureIs(t *testing.T) {
	readMeant(t, []lineMeant{
		{"four inches are a pipe", `Valve 4" NPT F`, "NPT 4 female; NPT 4 female"},
		{"five are none of a boat's", `Valve 5" NPT F`, ""},
		{"a sixteenth is the smallest pipe thread (ASME B1.20.1)", "Plug 1/16 NPT", "NPT 1/16 male"},
		{"a thirty-second is no thread", "Plug 1/32 NPT", ""},
		{"a gauge's second figure is its dial", `Pressure gauge 1/4 NPT 2 1/2"`, "NPT 1/4 male"},
		{"a gauge's own thread may be an inch", "Thermometer 1 NPT 100 mm", "NPT 1 male"},
		{"the element that a vessel holds", "Membrane housing 2 1/2 x 40 in, 1/2 NPT female feed", "NPT 1/2 female"},
		{"a nipple's length", `Pipe nipple 1/2 NPT, length 3"`, "NPT 1/2 male; NPT 1/2 male"},
		{"and with the word behind", `Pipe nipple 1/2 NPT 3" long`, "NPT 1/2 male; NPT 1/2 male"},
		{"and with an x", `Pipe nipple 1/2 x 3" NPT`, "NPT 1/2 male; NPT 1/2 male"},
	})
	for _, text := range []string{`Valve 5" NPT F`, "Plug 1/32 NPT"} {
		require.NotEmpty(t, Read(text).NotUsed, "%s: the figure is named", text)
	}
}

// A long tail is long of its hose where no other length can be meant: a tail is never sold without its
// hose's size, and no tail with a thread is shorter than 33 mm.
func TestLongTails(t *testing.T) {
	for text, long := range map[string]bool{
		"Hose tail G 3/4 male x 19 mm long": true, "Hose tail G 3/4 male x 32 mm long": true,
		"Hose tail G 3/4 male x 33 mm long": false, "Hose tail G 3/4 male x 60 mm long": false, "Hose tail G 3/4 male x 19 mm, 60 mm long": false,
	} {
		r := Read(text)
		require.Len(t, r.Ends, 2, text)
		require.Len(t, r.Ends[1].Candidates, 1, text)
		tail := r.Ends[1].Candidates[0]
		require.Equal(t, threads.Barb, tail.Family, text)
		require.Equal(t, long, tail.Long, text)
	}
	require.Equal(t, threads.Length(19), Read("Hose tail G 3/4 male x 19 mm, 60 mm long").Ends[1].Candidates[0].Diameter, "the other is its length")
	require.Empty(t, Read("Hose tail G 3/4 male x 60 mm long").Ends[1].Candidates[0].Size, "what hose it takes is asked")
}

// 14 and 15 mm beside M22 are the nose of a pressure washer's joint, and a tube where a word says so.
func TestNoseOrTube(t *testing.T) {
	readMeant(t, []lineMeant{
		{"a nose", "Adaptor M22x1.5 male 14 mm x G 3/8 female", "M M22x1.5 male nose-o-ring; G 3/8 female"},
		{"the wider nose", "Adaptor M22x1.5 female 15 mm x G 3/8 male", "M M22x1.5 female nose-o-ring; G 3/8 male"},
		{"no nose is of 16 mm", "Adaptor M22x1.5 male x 16 mm compression", "M M22x1.5 male; COMP 16 mm"},
		{"a compression end", "Adaptor M22x1.5 male x 15 mm compression", "M M22x1.5 male; COMP 15 mm"},
		{"said first", "Adaptor 15 mm compression x M22x1.5 male", "COMP 15 mm; M M22x1.5 male"},
		{"a tail", "Adaptor M22x1.5 male x 14 mm barb", "M M22x1.5 male; BARB 14 mm"},
		{"a tube", "Adaptor M22x1.5 male x 14 mm tube", "M M22x1.5 male; TUBE 14 mm"},
		{"another metric thread has none", "Adaptor M20x1.5 male x 15 mm compression", "M M20x1.5 male; COMP 15 mm"},
	})
}

// Millimetres of a pipe thread: its nominal bore (ISO 6708) or its diameter as it is measured (ISO 228-1: G 1/2 is
// 20.955 outside and 18.631 inside, G 1 is 33.249 outside).
func TestPipeThreadsInMillimetres(t *testing.T) {
	readMeant(t, []lineMeant{
		{"20 mm BSP is 3/4", "Elbow 20 mm BSP female", "BSP 3/4 female; BSP 3/4 female"},
		{"said before", "Elbow BSP 20 mm female", "BSP 3/4 female; BSP 3/4 female"},
		{"and beside a sex alone", "BSP tee 20 mm F", "BSP 3/4 female; BSP 3/4 female; BSP 3/4 female"},
		{"the outside diameter", "Codo rosca 21 mm macho", "PIPE 1/2 male; PIPE 1/2 male"},
		{"in tenths", "Codo rosca macho 33,2 mm", "PIPE 1 male; PIPE 1 male"},
		{"a female as its bore measures", "Codo rosca hembra 18,6 mm", "PIPE 1/2 female; PIPE 1/2 female"},
		{"all millimetres of a reducing bush are bores where one is; whether BSP is said of both is asked", "Reducing bush 25mm x 20mm BSP", "PIPE 1 male; BSP 3/4 female"},
		{"a tube beside a thread with its own bore is no bore", "Elbow 15 x G15", "TUBE 15 mm; G 1/2"},
		{"a tail of 20 mm beside BSP is a tail", "Hose tail 3/4 BSP male x 20 mm", "BSP 3/4 male; BARB 20 mm"},
	})
}

// A size said again in another way is one end's, whichever way it is said.
func TestOneSizeSaidTwice(t *testing.T) {
	readMeant(t, []lineMeant{
		{"French pairs", `Coude 1/2" (15/21) F`, "BSP 1/2 female; BSP 1/2 female"},
		{"eighths and the bore", "弯头 4分 15A 内丝", "PIPE 1/2 female; PIPE 1/2 female"},
		{"a Russian bore", `Угол 3/4" Ду20 ВР`, "PIPE 3/4 female; PIPE 3/4 female"},
		{"its outside diameter in brackets", `Elbow 1/2" (21 mm) BSPP female`, "G 1/2 female; G 1/2 female"},
		{"the inch in millimetres", `Hose barb 3/8" (9.52 mm)`, "BARB 3/8 in"},
		{"a bore beside ends given another way", "Hose DN10 12L female swivel both ends", "24L 12L female swivel; 24L 12L female swivel"},
		{"R beside a bore is the letter of the bore, and leaves the thread open", `Elbow 1/2" R15 F`, "BSP 1/2 female; BSP 1/2 female"},
		{"R beside the size is ISO 7's, and no female", `Elbow R1/2" DN15 F`, "Rc/Rp 1/2 female; Rc/Rp 1/2 female"},
		{"a bore before a remark is the part's own", "Ball valve DN15 - Rc3/4", "Rc 3/4 female; Rc 3/4 female"},
		{"the bore of the other end is none", "Adaptor DN20-Rc1/2", "PIPE 3/4; Rc 1/2 female"},
	})
}

// 1/2-16 is a thread and a pipe of 16 mm where pipes are pressed, and a thread of 16 an inch elsewhere.
func TestThreadAndTube(t *testing.T) {
	readMeant(t, []lineMeant{
		{"a tee over a branch, whose sex is asked", "Tee 20-1/2-20 press", "PIPE 1/2"},
		{"a press fitting", "Raccord droit mâle 1/2-16 à sertir", "PIPE 1/2 male"},
		{"sixteen an inch beside its name", "Plug 3/4-16 UNF", "JIC/ORB/SAE45/UN -8|3/4-16 male"},
	})
	require.Equal(t, []string{"1/2-16 à sertir (press end)"}, Read("Raccord droit mâle 1/2-16 à sertir").Unread)
}

// What inchText writes is the same size when it is read, for every sixty-fourth.
func TestInchTextIsReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		v := float64(rapid.IntRange(1, 4*64).Draw(t, "sixty-fourths")) / 64
		require.Equal(t, v, threads.SizeInches(inchText(v)))
		require.Equal(t, inchText(v), inchText(v+1.0/300), "the nearest")
		require.Equal(t, inchText(v), inchText(math.Max(0, v-1.0/300)))
	})
}

// A form sought by its inches is the one sought by its size as the standard writes it, also beyond the sizes kept by their sixty-fourths.
func TestFormsByTheirInches(t *testing.T) {
	for _, f := range threads.Families() {
		for n := range 600 {
			want, _ := threads.Find(f, inchText(float64(n)/64))
			require.Equal(t, want, inchForm(f, float64(n)/64), "%s %d/64", f, n)
		}
	}
}
