package title

import (
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// What letters and words of a thread leave open, and what closes it (ISO 7-1, ISO 228-1, ASME B1.20.1).
func TestWhatAThreadsNameLeavesOpen(t *testing.T) {
	readMeantEnds(t, []lineMeant{
		{"BSP and a word for parallel", "1/2 BSP male parallel", "G 1/2 male"},
		{"BSP and a word for taper", "1/2 BSP male taper", "R 1/2 male"},
		{"a taper female", "1/2 BSP female taper", "Rc 1/2 female"},
		{"a washer closes parallels alone", "1/2 BSP female with washer", "G 1/2 female washer"},
		{"so does a cone", "1/2 BSP female swivel 60 cone", "G 1/2 female swivel cone-60"},
		{"and a nut", "1/2 BSP union nut", "G 1/2 female swivel"},
		{"a male swivel may be either", "1/2 BSP male swivel", "BSP 1/2 male swivel"},
		{"parallel and taper at once are both kept", "1/2 BSPP male taper", "BSP 1/2 male"},
		{"the other way round", "1/2 BSPT male parallel", "BSP 1/2 male"},
		{"R that is said to be female", "R 1/2 female", "Rc/Rp 1/2 female"},
		{"Rc that is said to be male", "Rc 1/2 male", "R 1/2 male"},
		{"Rp that is said to be male", "Rp 1/2 male", "R 1/2 male"},
		{"R15 is a bore, and no size of ISO 7", "R15 male", "BSP 1/2 male"},
		{"a nut on R", "R 1/2 union nut", "BSP 1/2 female swivel"},
		{"IPS is a taper or its straight twin", "1/2 IPS male", "NPSM/NPT 1/2 male"},
		{"NPS is one of two", "1/2 NPS male", "NPS/NPSM 1/2 male"},
		{"FIP is the taper", "1/2 FIP", "NPT 1/2 female"},
		{"threads an inch choose between standards: 19 are British (ISO 228-1)", "1/4-19 male", "BSP 1/4 male"},
		{"18 are American (ASME B1.20.1)", "1/4-18 male", "NPT 1/4 male"},
		{"a tap aerator's thread is not judged", "15/16-27 male", "refused"},
		{"fire hose threads are not judged", "1 1/2 NST female", "refused"},
	})
	first := func(text string) string { return Read(text).Ends[0].Candidates[0].String() }
	require.Equal(t, "R 1/2 male", first("ニップル BSP 1/2 オス"), "in Japan a BSP male is mostly the taper")
	require.Equal(t, "G 1/2 male", first("Nippel BSP 1/2 AG"), "in Europe mostly the parallel")
	require.Equal(t, "G 1/2 female", first("ソケット BSP 1/2 メス"), "a female is not")
}

// A standpipe of a cone joint is the tube that it stands for, by its size or its nut's thread (ISO 8434-1: the nut of
// 12L is M18x1.5, that of 12S M20x1.5); a thread that no cone of the series has is none.
func TestStandpipes(t *testing.T) {
	readMeantEnds(t, []lineMeant{
		{"by its size", "BEL 12L", "PUSH 12 mm"},
		{"by the light nut", "BEL M18x1.5", "PUSH 12 mm"},
		{"by the heavy nut", "BES M20x1.5", "PUSH 12 mm"},
		{"the pitch left out", "BEL M26", "PUSH 18 mm"},
	})
}

// A code of a standpipe on a thread that no cone of its series has contradicts it.
func TestStandpipesOfNoNut(t *testing.T) {
	for _, text := range []string{"BEL M18x2", "BEL M20x1.5"} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Contains(t, r.Question, "the text says BEL. Which thread is it?", text)
	}
}

// What closes an end by its words, the closest word first.
func TestSealsSaid(t *testing.T) {
	for text, want := range map[string]threads.Seal{
		"G 1/2 male": threads.NoSeal, "G 1/2 female with washer": threads.Washer, "G 1/2 male o-ring": threads.ORing, "G 1/2 female flat face": threads.FlatFace,
		"G 1/2 female swivel 60 cone": threads.Cone60, "G 1/2 female swivel 30 cone": threads.Cone30, "G 1/2 male chamfer": threads.Chamfer, "G 1/2 male form E": threads.StudRing, "G 1/2 male form B": threads.MetalEdge,
		"G 1/2 female swivel 60 cone o-ring": threads.ConeRing, "G 1/2 female swivel 60 cone with washer": threads.Cone60, "G 1/2 female flat face with washer": threads.Washer,
		"12L female o-ring": threads.ConeRing, "12L male o-ring": threads.ORing,
	} {
		r, err := ReadEnd(text)
		require.NoError(t, err, text)
		require.Equal(t, want, r.Candidates[0].Seal, text)
	}
}

// What an end is made of and how it turns, from its own words or the part's.
func TestWhatIsPutOnAnEnd(t *testing.T) {
	for text, want := range map[string]threads.End{
		"Elbow 1/2 NPT F PVC":             {Plastic: true},
		"Elbow 1/2 NPT F brass":           {},
		"Hose tail 1/2 BSPP M LH x 13 mm": {Left: true},
		"Adaptor G 1/2 A x 3/8 NPT F":     {ClassA: true},
		"Union nut 1/2 BSPP":              {Swivel: true},
		"Plug 1/2 PTF short male":         {Short: true},
		"Nipple 1/2 NPT male extra short": {},
		"Swivel elbow 1/2 BSPP F swivel":  {Swivel: true},
	} {
		r := Read(text)
		require.NotEmpty(t, r.Ends, text)
		e := r.Ends[0].Candidates[0]
		require.Equal(t, want, threads.End{Plastic: e.Plastic, Left: e.Left, ClassA: e.ClassA, Swivel: e.Swivel, Short: e.Short}, text)
	}
}

// What is not judged is named, and what stands beside it is read.
func TestWhatIsNotJudgedIsNamed(t *testing.T) {
	for text, want := range map[string][2]string{
		"Camlock 2 in x 2 NPT male":            {"NPT 2 male", "cam coupling"},
		"Flange DN50 x 2 NPT female":           {"NPT 2 female", "flange"},
		"Adaptor 22 mm solder x 3/4 BSPP male": {"G 3/4 male", "solder end"},
		"Adaptor 2 in grooved x 2 NPT male":    {"NPT 2 male", "grooved end"},
		"Camlock with 1/2 NPT male":            {"NPT 1/2 male", "cam coupling"},
		"Quick coupling 1/2":                   {"", "quick coupling"},
	} {
		r := Read(text)
		require.Equal(t, want[0], brief(r.Ends), text)
		all := ""
		for _, u := range r.Unread {
			all += u + "; "
		}
		require.Contains(t, all, want[1], text)
	}
}
