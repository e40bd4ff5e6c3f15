package facts_test

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"handtight/bom"
	"handtight/bom/audit"
	"handtight/bom/facts"
	"handtight/bom/read"
)

// audited is all that an audit says of a build.
func audited(text string) (string, error) {
	b, faults := read.Parse("build.toml", []byte(text))
	if err := faults.Err(); err != nil {
		return "", err
	}
	sys, faults := bom.Walk(b)
	if err := faults.Err(); err != nil {
		return "", err
	}
	p, err := audit.Of(sys, time.Date(2026, 11, 28, 0, 0, 0, 0, time.UTC))
	if err != nil {
		return "", err
	}
	out, err := json.Marshal(facts.AuditOf(sys, p, true))
	return string(out), err
}

const oldLine = `[build]
name = "old"
currency = "EUR"
[[item]]
id = "left"
kind = "nipple"
ports = { a = '1/2 NPT male', b = 'some 3/4 thread male' }
[[item]]
id = "right"
kind = "coupling"
ports = { a = 'G 3/4 female', b = '1/2 NPT female' }
[[item]]
id = "house"
kind = "house supply"
pressure = "2 bar"
ports = { out = '1/2 NPT female' }
[[run]]
name = "line"
path = ["house", "left.a>b", "right.a"]
[[joint]]
at = ["left.b", "right.a"]
[[end]]
at = "left.b"
[audit]
on = 2026-11-01
[[audit.joint]]
at = ["left.b", "right.a"]
is = "fine"
`

// Every key of what is known of a plant that stands changes something of what an audit says. The
// keys are those that the reader itself names.
func TestEveryNoteIsUsed(t *testing.T) {
	noted := map[string][2]string{
		"joint.made_up": {"2019", "2020"}, "joint.dry_since": {"2025", "2020"},
		"joint.wept": {`"2024, a drop"`, `"2025, a drop"`}, "joint.tested": {`{ pressure = "4 bar", on = 2020 }`, `{ pressure = "1 bar", on = 2020 }`},
		"joint.sealant": {`"none"`, `"tape"`}, "joint.turns": {`"1"`, `"6"`}, "joint.access": {`"behind"`, `"haul out"`},
		"end.said": {`"G 3/4"`, `"R 3/4"`}, "end.od": {`"26.2 mm"`, `"26.4 mm"`}, "end.id": {`"24.2 mm"`, `"24.3 mm"`}, "end.tpi": {`"14"`, `"11"`},
		"end.pitch": {`"1.8 mm"`, `"2 mm"`}, "end.taper": {`"yes"`, `"no"`}, "end.angle": {`"55"`, `"60"`}, "end.seat": {`"plain"`, `"60"`},
		"[build].origin": {`"US"`, `"Italy"`}, "item.origin": {`"US"`, `"Italy"`},
		"[audit].on": {"2026-11-01", "2026-11-02"}, "audit.joint.is": {`"known wrong"`, `"measure this"`}, "audit.joint.look": {"2026-10-01", "2027-10-01"},
	}
	base, err := audited(oldLine)
	require.NoError(t, err)
	changed := func(name, mark, key string) {
		v, ok := noted[name]
		if !ok {
			t.Errorf("%s has no case", name)
			return
		}
		other := false
		for _, value := range v {
			text := with(oldLine, mark, key, value)
			if key == "id" { // of a female
				text = with(with(oldLine, `at = "left.b"`, "at", `"right.a"`), `at = "right.a"`, "id", value)
			}
			if key == "said" {
				text = with(oldLine, mark, key, value)
			}
			got, err := audited(text)
			if err == nil && got != base {
				other = true
			}
		}
		if !other {
			t.Errorf("%s: %v changes nothing", name, v)
		}
	}
	// `at` says where; that it must be right is tested in bom.
	for _, key := range keysOf(t, "[[joint]]\nat = [\"a.b\", \"c.d\"]\n") {
		if key != "at" {
			changed("joint."+key, `at = ["left.b", "right.a"]`, key)
		}
	}
	for _, key := range keysOf(t, "[[end]]\nat = \"a.b\"\n") {
		if key != "at" {
			changed("end."+key, `at = "left.b"`, key)
		}
	}
	changed("[build].origin", "[build]", "origin")
	changed("item.origin", `id = "left"`, "origin")
}

// The record of an earlier audit is used: its day where none is asked for, its sections, its looks.
func TestTheRecordIsUsed(t *testing.T) {
	b, faults := read.Parse("build.toml", []byte(oldLine))
	require.NoError(t, faults.Err())
	sys, faults := bom.Walk(b)
	require.NoError(t, faults.Err())
	p, err := audit.Of(sys, time.Time{})
	require.NoError(t, err)
	f := facts.AuditOf(sys, p, false)
	require.Equal(t, "2026-11-01", *f.On)
	require.Equal(t, "fine", f.Joints[1].Was)
	require.NotEqual(t, "fine", f.Joints[1].Section)
}
