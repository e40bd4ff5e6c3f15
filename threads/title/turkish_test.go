package title

import "testing"

// Thread and outside are diş and dış; written without their points they are one word.
// Written down before any was read.
func TestTurkishInsideAndOutside(t *testing.T) {
	readTitled(t, []titled{
		{`Küresel vana 1/2" iç diş`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", ""},
		{`Kuresel vana 1/2" ic dis`, "PIPE 1/2 female; PIPE 1/2 female", "shut-off valve", ""},
		{`Dirsek 1/2" dış diş pirinç`, "PIPE 1/2 male; PIPE 1/2 male", "elbow", "brass"},
		{`Dirsek 1/2" dis dis pirinc`, "PIPE 1/2 male; PIPE 1/2 male", "elbow", ""},
		{`Dirsek 1/2" iç-dış`, "PIPE 1/2 female; PIPE 1/2 male", "elbow", ""},
		{`DİRSEK 1/2" İÇ DIŞ DİŞLİ`, "PIPE 1/2 female; PIPE 1/2 male", "elbow", ""},
		{`Dirsek 1/2" ic-dis disli`, "PIPE 1/2 female; PIPE 1/2 male", "elbow", ""},
		{`Nipel 3/4" dış/dış`, "PIPE 3/4 male; PIPE 3/4 male", "nipple", ""},
		{`Manşon 3/4" İÇ DİŞ`, "PIPE 3/4 female; PIPE 3/4 female", "coupling", ""},
	})
}
