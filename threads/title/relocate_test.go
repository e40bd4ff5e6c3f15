package title

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"handtight/threads"
)

// A sex is the thread's wherever it stands in the line: a tube, a tail and a pipe have none.
func TestASexIsTheThreads(t *testing.T) {
	for _, text := range []string{
		"Compression elbow male 15 mm x 1/2 BSPP", "Compression elbow 15 mm x male 1/2 BSPP", "Compression elbow 15 mm x 1/2 BSPP male", "Elbow compression 15 mm male x 1/2 BSPP",
	} {
		require.Equal(t, "COMP 15 mm; G 1/2 male", brief(Read(text).Ends), text)
	}
	readMeant(t, []lineMeant{
		{"Turkish, the sex before the part", "Dış dişli dirsek 20x1/2", "TUBE 20 mm; PIPE 1/2 male"},
		{"Polish PEX", `Łącznik prosty GZ 16x1/2" PEX`, "TUBE 16 mm; PIPE 1/2 male"},
		{"Spanish, the grip behind the thread", `Enlace recto macho latón 15 mm x 1/2" compresión`, "COMP 15 mm; PIPE 1/2 male"},
		{"Portuguese, the tail first", "Espigão 3/4 x 20 mm", "PIPE 3/4 male; BARB 20 mm"},
		{"Finnish, the grip behind the inches", `22mm PEX → ½" UK puserrusliitin`, "COMP 22 mm; PIPE 1/2 male"},
		{"German, the pipe behind the thread", `Klemmfitting 32 mm x 1" AG PE-Rohr`, "COMP 32 mm; PIPE 1 male"},
		{"a female adaptor with a hose", `1/4" FNPT x 1/4" Hose ID Polypropylene Female Adapter`, "NPT 1/4 female plastic; BARB 1/4 in"},
		{"a PEX adaptor's barb is the pipe's", `1/2" PEX x 1/2" MIP adapter F1807 lead free brass`, "BARB 1/2 in; NPT 1/2 male"},
	})
}

// A grip with one inch size and a thread said apart from it has both: the size is the thread's.
func TestGripAndThread(t *testing.T) {
	readMeant(t, []lineMeant{
		{"Russian, the thread in brackets", "Цанга 1/2 (прямая, внешняя резьба)", "PIPE 1/2 male; PUSH "},
		{"Russian inches are a thread's", "Угол цанга 1/2", "PIPE 1/2; PUSH "},
		{"English inches may be a tube's", "Compression elbow 1/2", "COMP 1/2 in; COMP 1/2 in"},
		{"millimetres are the tube's", "Compression elbow 15 mm, male", "COMP 15 mm; COMP 15 mm"},
	})
}

// Of a glued adaptor with one size and a sex the thread is read, and the socket is named.
func TestAnAdaptorOfGluedPipe(t *testing.T) {
	for _, row := range []struct{ why, text, ends, unread string }{
		{"CPVC", `Adaptador Macho 1/2" CPVC pegar`, "PIPE 1/2 male plastic", "the other end (glued or welded end)"},
		{"solder", `Male adaptor 1/2" solder`, "PIPE 1/2 male", "the other end (solder end)"},
	} {
		r := Read(row.text)
		require.Equal(t, row.ends, brief(r.Ends), row.why)
		require.Contains(t, r.Unread, row.unread, row.why)
	}
	require.Empty(t, Read(`Coupling 1/2" solder`).Ends, "without a sex both are glued or soldered")
	require.NotEmpty(t, Read(`Coupling 1/2" solder`).Unread)
}

// The flat seal of a union of two pieces is at its nut, on the female side; a union of three has it between its
// halves, where it closes no thread, and that is said.
func TestTheSealOfAUnion(t *testing.T) {
	for _, text := range []string{`Raccord 2 pièces femelle 3/4" BSPP mâle 3/4" BSPP joint plat`, "Two-piece union 3/4 BSPP male with washer x 3/4 BSPP female"} {
		for _, e := range Read(text).Ends {
			require.Equal(t, e.Sex.String() == "female", strings.Contains(briefEnd(e), "washer"), "%s: %s", text, briefEnd(e))
		}
	}
	r := Read(`Raccord union femelle 3/4" BSPP mâle 3/4" BSPP joint plat`)
	require.NotContains(t, brief(r.Ends), "washer")
	require.Contains(t, r.NotUsed, threads.NotUsed{Words: "joint plat", Why: "it closes between the halves of the union"})
}

// A quick connection of a bend or of millimetres is a push-in, one with a thread of its own is that thread.
func TestQuickConnections(t *testing.T) {
	readMeant(t, []lineMeant{
		{"a bend", "Elbow quick connect 3/8 tube x 1/4 NPT male", "PUSH 3/8 in; NPT 1/4 male"},
		{"a bend of millimetres", "Elbow quick connect 8 mm", "PUSH 8 mm; PUSH 8 mm"},
		{"millimetres", "Quick connect 8 mm x 1/4 NPT male", "PUSH 8 mm; NPT 1/4 male"},
		{"the thread on its body", "Schnellkupplung 1/2 NPT IG", "NPT 1/2 female"},
	})
}

// Figures that are lengths or repeat a size are no further end; a cap's second size with a word that nobody
// understands is asked about.
func TestLengthsAreNoEnds(t *testing.T) {
	readMeant(t, []lineMeant{
		{"an extension's millimetres", "Extension 1/2 NPT 50 mm", "NPT 1/2 male; NPT 1/2 female"},
		{"a length in whole inches", `Pipe nipple 1" x 2" NPT`, "NPT 1 male; NPT 1 male"},
		{"less is another thread", `Pipe nipple 1" x 1 1/4" NPT`, "NPT 1 male; NPT 1 1/4 male"},
		{"a reducing nipple's larger end is one", `Reducing nipple 1/2" x 2" NPT`, "NPT 1/2 male; NPT 2 male"},
		{"a third figure is the valve that it goes on", `Elbow 1/2 x 3/4 NPT F-F, for 3/4" valve`, "NPT 1/2 female; NPT 3/4 female"},
		{"or the first size's", `Elbow 1/2 x 3/4 NPT F-F, for 1/2" valve`, "NPT 1/2 female; NPT 3/4 female"},
		{"a third of two inches is a length", `Adaptor 1/2 NPT male x 3/4 NPT female x 2"`, "NPT 1/2 male; NPT 3/4 female"},
		{"a washer's pipe", "Sealing washer 3/4 22 mm", "G 3/4"},
	})
}

// A nut has one thread: the tube that it holds is none.
func TestANutHasOneThread(t *testing.T) {
	readMeant(t, []lineMeant{
		{"the tube behind", "9/16-18 JIC tube nut, 3/8 tube", "JIC -6 female"},
		{"the tube before", "Tube nut 3/8 tube, 9/16-18 JIC", "JIC -6 female"},
		{"a thread by its own name and the family", "Tube nut JIC -6, 9/16-18", "JIC -6 female"},
	})
}

// A sex before the name of a branch or a run tee is that end's alone.
func TestTheSexOfATee(t *testing.T) {
	readMeant(t, []lineMeant{
		{"of a branch tee the last", "Male branch tee 1/4 tube x 1/4 tube x 1/8 NPT", "TUBE 1/4 in; TUBE 1/4 in; NPT 1/8 male"},
		{"of a run tee the first", "Male run tee 1/8 NPT x 1/4 tube x 1/4 tube", "NPT 1/8 male; TUBE 1/4 in; TUBE 1/4 in"},
		{"wherever its thread stands", "Male run tee 1/4 tube x 1/4 tube x 1/8 NPT", "TUBE 1/4 in; TUBE 1/4 in; NPT 1/8 male"},
		{"of any other tee it is all", "Male tee 1/4 NPT", "NPT 1/4 male; NPT 1/4 male; NPT 1/4 male"},
	})
}

// The second figure of a nipple is its length or the size that it reduces to: where it can be either, it is
// asked. ASME B1.20.1 nipples (common practice): 1 is sold 1 1/2 long, 1/2 from 1 1/2 on.
func TestANipplesLengthOrItsOtherEnd(t *testing.T) {
	for text, open := range map[string]bool{
		`Pipe nipple 1" x 1 1/2" NPT`: true, "Pipe nipple 1/2 x 1 1/2 NPT": true, "Nipple 3/4 x 1 1/4 NPT": false, "Nipple 1 x 1 1/4 NPT": false, "Reducing nipple 1/2 x 1 1/2 NPT": false, "Nipple 1/2 NPT male x 1 1/2 NPT male": false,
	} {
		asked := false
		for _, e := range Read(text).Ends {
			asked = asked || strings.Contains(e.Question, "or the length of the part?")
		}
		require.Equal(t, open, asked, text)
	}
}
