package rule

import (
	"os"
	"testing"

	"handtight/bom"
	"handtight/bom/read"
)

// FuzzCheck runs every rule over any build that can be read, and none panics; each finding
// has its place, its reason and its remedy.
func FuzzCheck(f *testing.F) {
	for _, r := range All() {
		f.Add([]byte(r.Example(r.Wrong)))
		f.Add([]byte(r.Example(r.Right())))
	}
	for _, name := range []string{"careless", "refit", "states"} {
		for _, file := range []string{"build.toml", "plant.toml"} {
			if text, err := os.ReadFile(demos + "/" + name + "/" + file); err == nil {
				f.Add(text)
			}
		}
	}
	f.Add([]byte("[build]\nname = \"x\"\ncurrency = \"EUR\"\n[duty]\npressure = \"0 bar\"\nsupply = \"1 V\"\nwater = \"-5 C\"\nspace = \"90 C\"\n[[item]]\nid = \"p\"\nkind = \"plunger pump\"\nflow = \"9 L/min\"\n[[item]]\nid = \"t\"\nkind = \"tee\"\n[[run]]\nname = \"r\"\npath = [\"t.a\", \"p\", \"t.b\"]\n"))
	f.Add([]byte("[build]\nname = \"x\"\n[[item]]\nid = \"f\"\nkind = \"filter housing\"\nports = { in = '1/2 NPT female', out = 'hose barb' }\n[[hose]]\nid = \"h\"\nlength = \"1 m\"\nends = ['hose', 'hose']\n[[run]]\nname = \"r\"\npath = [\"f.out\", \"h\"]\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		build, faults := read.Parse("fuzz.toml", text)
		if len(faults) > 0 {
			return
		}
		sys, faults := bom.Walk(build)
		if len(faults) > 0 {
			return
		}
		for _, x := range Check(sys) {
			if x.At() == "" || x.Reason == "" || x.Remedy == "" || x.Place.Line < 1 {
				t.Fatalf("a finding that is not whole: %+v", x)
			}
		}
	})
}
