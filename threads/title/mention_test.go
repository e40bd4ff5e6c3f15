package title

import "testing"

// A size that the line says again is no further end; what is said of it the second time holds for the
// first. Another thread, another sex or another size is a further end.
func TestSizesThatAreMentionedAgain(t *testing.T) {
	const two = "NPT 3/8 male; NPT 3/8 male"
	readMeanings(t, []meaning{
		{"the thread said the second time", `3/8 x 3/8 nipple, 3/8 NPT`, two, ""},
		{"twice over", `3/8 x 3/8 nipple, 3/8 NPT (3/8")`, two, ""},
		{"the sex said the second time", `3/8 NPT x 3/8 NPT elbow, 3/8 NPT male`, two, ""},
		{"another size is an end of its own", `3/8 x 3/8 NPT male elbow, 1/4 NPT female`, two + "; NPT 1/4 female", ""},
		{"and so is another thread", `3/8 NPT male x 3/8 NPT male elbow, G 3/8 male`, two + "; G 3/8 male", ""},
		{"and another sex", `3/8 NPT male x 3/8 NPT male elbow, 3/8 NPT female`, two + "; NPT 3/8 female", ""},
		{"an x before it makes it an end", `Elbow 3/8 NPT male x 3/8 NPT male x 3/8 NPT male`, two + "; NPT 3/8 male", ""},
		{"a tail is no thread", `3/8 NPT male x 3/8 NPT male elbow, 3/8 hose barb`, two + "; BARB 3/8 in", ""},
	})
}
