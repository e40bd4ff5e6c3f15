package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

const (
	cleanBuild    = "../../testdata/clean/build.toml"
	carelessBuild = "../../testdata/careless/build.toml"
)

// jsonOf runs a command with --json and gives what it printed, decoded.
func jsonOf(t *testing.T, status int, in string, args ...string) map[string]any {
	t.Helper()
	var out, errOut bytes.Buffer
	require.Equal(t, status, run(append(args, "--json"), strings.NewReader(in), &out, &errOut), errOut.String())
	require.Empty(t, errOut.String())
	var v map[string]any
	require.NoError(t, json.Unmarshal(out.Bytes(), &v), out.String())
	return v
}

// has checks that every named field is there with its type; fields may be added. A
// type is string, number, bool, object, list, strings or numbers (lists of them);
// with ? it may be null.
func has(t *testing.T, at string, v any, fields string) {
	t.Helper()
	m, ok := v.(map[string]any)
	require.True(t, ok, "%s is no object", at)
	for _, f := range strings.Fields(fields) {
		name, want, _ := strings.Cut(f, ":")
		x, there := m[name]
		require.True(t, there, "%s has no %q", at, name)
		if want, null := strings.CutSuffix(want, "?"); null && x == nil {
			continue
		} else {
			require.True(t, isA(x, want), "%s.%s is %T (%v), not %s", at, name, x, x, want)
		}
	}
}

func isA(x any, want string) bool {
	list, isList := x.([]any)
	switch want {
	case "list":
		return isList
	case "strings":
		return isList && !slices.ContainsFunc(list, func(e any) bool { return !isA(e, "string") })
	case "numbers":
		return isList && !slices.ContainsFunc(list, func(e any) bool { return !isA(e, "number") })
	}
	kinds := map[string]string{"string": "string", "number": "float64", "bool": "bool", "object": "map[string]interface {}"}
	return fmt.Sprintf("%T", x) == kinds[want]
}

// each checks the fields of every element, of which there must be one at least.
func each(t *testing.T, at string, v any, fields string) []any {
	t.Helper()
	list, ok := v.([]any)
	require.True(t, ok, "%s is no list", at)
	require.NotEmpty(t, list, at)
	for i, e := range list {
		has(t, fmt.Sprintf("%s[%d]", at, i), e, fields)
	}
	return list
}

func TestCheckFacts(t *testing.T) {
	for build, status := range map[string]int{cleanBuild: exitClear, carelessBuild: exitStops} {
		v := jsonOf(t, status, "", "check", build)
		has(t, "check", v, "build:string findings:list joints:list segments:list counts:object")
		if status == exitStops {
			each(t, "findings", v["findings"], "severity:string slug:string place:string file:string line:number column:number reason:string remedy:string")
		} else {
			for _, f := range v["findings"].([]any) {
				require.Equal(t, "note", f.(map[string]any)["severity"])
			}
		}
		require.NotContains(t, v, "states", "only when asked for")
		each(t, "joints", v["joints"], "a:string b:string verdict:string? worst_bar:number? makeup:string thread_bar:number? thread_estimate:bool")
		reckoned := 0
		for _, x := range v["joints"].([]any) {
			j := x.(map[string]any)
			require.Equal(t, j["thread_bar"] != nil, j["thread_estimate"], "what threads bear is always an estimate: %v", j)
			if j["thread_bar"] != nil {
				reckoned++
			}
		}
		require.NotZero(t, reckoned)
		each(t, "segments", v["segments"], "name:string runs:strings members:strings normal_bar:number worst_bar:number? worst_cause:string "+
			"lowest_bar:number weakest:string rating_bar:number? rating_basis:string rating_status:string derated:bool estimate:bool margin:number? proof_bar:number?")
		has(t, "counts", v["counts"], "stop:number caution:number note:number joints:number segments:number")
	}
}

// The states are there when they are asked for: one, or all.
func TestStateFacts(t *testing.T) {
	v := jsonOf(t, exitStops, "", "check", carelessBuild, "--states")
	all := each(t, "states", v["states"], "name:string cause:string failure:bool segments:list overloads:list")
	require.Equal(t, "normal", all[0].(map[string]any)["name"])
	unbounded := 0
	for _, x := range all {
		state := x.(map[string]any)
		segments := each(t, "segments", state["segments"], "name:string bar:number? lowest_bar:number")
		require.Len(t, segments, len(v["segments"].([]any)), "every segment stands in every state")
		for _, o := range state["overloads"].([]any) {
			has(t, "overload", o, "what:string sees_bar:number? holds_bar:number")
			m := o.(map[string]any)
			require.Equal(t, m["unbounded"] == true, m["sees_bar"] == nil, "%v", m)
			if m["unbounded"] == true {
				unbounded++
			} else {
				require.Greater(t, m["sees_bar"], m["holds_bar"], "%v", m)
			}
		}
	}
	require.Positive(t, unbounded)
	one := jsonOf(t, exitClear, "", "check", cleanBuild, "--state", "throttle shut")["states"].([]any)
	require.Len(t, one, 1)
	require.Equal(t, "throttle shut", one[0].(map[string]any)["name"])
	require.Empty(t, one[0].(map[string]any)["overloads"])
}

// The counts are those of the lists, and what has no bound is null and says so.
func TestCheckFactsAgree(t *testing.T) {
	v := jsonOf(t, exitStops, "", "check", carelessBuild)
	counts := v["counts"].(map[string]any)
	severities := map[string]float64{"stop": 0, "caution": 0, "note": 0}
	for _, f := range v["findings"].([]any) {
		severities[f.(map[string]any)["severity"].(string)]++
	}
	for word, n := range severities {
		require.Equal(t, n, counts[word], word)
	}
	require.Len(t, v["joints"], int(counts["joints"].(float64)))
	require.Len(t, v["segments"], int(counts["segments"].(float64)))
	unbounded := 0
	for _, list := range []string{"joints", "segments"} {
		for _, x := range v[list].([]any) {
			m := x.(map[string]any)
			if m["unbounded"] == true {
				unbounded++
			}
			require.Equal(t, m["unbounded"] == true, m["worst_bar"] == nil, "%s: %v", list, m)
		}
	}
	require.Positive(t, unbounded, "the careless build has a line without a way out")
}

func TestOrderFacts(t *testing.T) {
	for build, status := range map[string]int{cleanBuild: exitClear, carelessBuild: exitStops} {
		v := jsonOf(t, status, "", "order", build)
		has(t, "order", v, "lines:list vendors:list total:string currency:string")
		each(t, "lines", v["lines"], "item:string about:string vendor:string code:string need:number have:number spare:number why_spare:string "+
			"order:number unit:string pack:number price:string? currency:string total:string?")
		each(t, "vendors", v["vendors"], "vendor:string goods:string freight:string customs:string tax:string total:string currency:string total_in_build_currency:string")
	}
}

const endFields = "sex:string seal:string swivel:bool candidates:list"

const candidateFields = "family:string size:string designation:string pitch_mm:number? tpi:number? major_mm:number? pitch_diameter_mm:number? " +
	"minor_mm:number? flank_angle_deg:number? taper:string? hand_tight_mm:number? hand_tight_turns:number? source:string"

func TestThreadFacts(t *testing.T) {
	for _, text := range []string{"Hose tail 3/4 BSPP female swivel x 19 mm barb, bronze, PN16", "1/2 NPT male", "1/2 BSP male", "-6 JIC male"} {
		v := jsonOf(t, exitClear, "", "thread", text)
		has(t, text, v, "text:string kind:string material:string rated_bar:number? ends:list unread:strings")
		require.Equal(t, text, v["text"])
		for _, e := range each(t, text, v["ends"], endFields) {
			each(t, text, e.(map[string]any)["candidates"], candidateFields)
		}
	}
}

// `thread -` prints an object a line, in the order of the lines.
func TestThreadLinesFacts(t *testing.T) {
	var out, errOut bytes.Buffer
	in := "1/2 NPT male\n\n  G 3/4 female  \nstainless hose clip 16-27\n"
	require.Equal(t, exitClear, run([]string{"thread", "-", "--json"}, strings.NewReader(in), &out, &errOut), errOut.String())
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	require.Len(t, lines, 3)
	for i, text := range []string{"1/2 NPT male", "G 3/4 female", "stainless hose clip 16-27"} {
		var v map[string]any
		require.NoError(t, json.Unmarshal([]byte(lines[i]), &v))
		has(t, text, v, "text:string kind:string material:string rated_bar:number? ends:list unread:strings")
		require.Equal(t, text, v["text"])
	}
}

// A line that is longer than is read is named by its number and skipped; the lines
// around it are read, and the status says that not all was.
func TestThreadLongLines(t *testing.T) {
	var out, errOut bytes.Buffer
	in := "1/2 NPT male\n" + strings.Repeat("x", 3*longestLine) + "\nG 3/4 female\n" + strings.Repeat("y", longestLine+1)
	require.Equal(t, exitFault, run([]string{"thread", "-", "--json"}, strings.NewReader(in), &out, &errOut))
	require.Len(t, strings.Split(strings.TrimSpace(out.String()), "\n"), 2)
	require.Contains(t, errOut.String(), "line 2: longer than 64 KiB, skipped")
	require.Contains(t, errOut.String(), "line 4: longer than 64 KiB, skipped")
	require.Contains(t, errOut.String(), "2 lines skipped")
}

// A line that is typed has its answer before the next is.
func TestThreadAnswersWhatIsTyped(t *testing.T) {
	in, typed := io.Pipe()
	answer, out := io.Pipe()
	status := make(chan int, 1)
	go func() {
		status <- run([]string{"thread", "-", "--json"}, in, out, io.Discard)
		out.Close()
	}()
	answers := bufio.NewScanner(answer)
	for _, text := range []string{"1/2 NPT male", "G 3/4 female"} {
		_, err := io.WriteString(typed, text+"\n")
		require.NoError(t, err)
		require.True(t, answers.Scan())
		require.Contains(t, answers.Text(), text)
	}
	require.NoError(t, typed.Close())
	require.False(t, answers.Scan())
	require.Equal(t, exitClear, <-status)
}

// A list has its answers in its order, however many lines it has.
func TestThreadListInOrder(t *testing.T) {
	var in, out, errOut bytes.Buffer
	for n := range 3*mostAtOnce + 7 {
		fmt.Fprintf(&in, "Nipple 1/2 NPT x %d mm\n\n", 40+n)
	}
	require.Equal(t, exitClear, run([]string{"thread", "-", "--json"}, &in, &out, &errOut))
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	require.Len(t, lines, 3*mostAtOnce+7)
	for n, line := range lines {
		require.Contains(t, line, fmt.Sprintf("x %d mm\"", 40+n))
	}
}

func TestMateFacts(t *testing.T) {
	fields := "a:string b:string verdict:string reason:string remedy:string hand_turns:object? binding_turns:object? first_contact:string " +
		"depth_share:number? virtual_diameter_mm:number? limit_bar:number?"
	verdicts := []string{"seals", "seals-with", "low-pressure-only", "leaks", "binds", "loose", "will-not-start", "same-sex"}
	for _, row := range []struct {
		why, a, b, verdict string
		status             int
	}{
		{"a taper in its own", "1/2 NPT male", "1/2 NPT female", "seals-with", exitClear},
		{"cones close metal on metal", "9/16-18 JIC male", "9/16-18 JIC female swivel", "seals", exitClear},
		{"a parallel pair closes on a washer and has no hand-tight turns", "G 3/4 male", "G 3/4 female", "seals-with", exitClear},
		{"makers disagree", "R 1/2", "G 1/2 female", "low-pressure-only", exitStops},
		{"flank angles", "1/2 NPT male", "Rc 1/2", "leaks", exitStops},
		{"pitches", "1/4 NPT male", "G 1/4 female", "binds", exitStops},
		{"near in size only", "G 1/2 male", "M22x1.5 female", "loose", exitStops},
		{"garden hose in pipe", "3/4 GHT male", "3/4 NPT female", "will-not-start", exitStops},
		{"two males", "1/2 NPT male", "1/2 NPT male", "same-sex", exitStops},
		{"an end without a thread", "19 mm barb", "19 mm bore", "seals-with", exitClear},
	} {
		v := jsonOf(t, row.status, "", "mate", row.a, row.b)
		has(t, row.why, v, fields)
		require.Equal(t, row.verdict, v["verdict"], row.why)
		require.Contains(t, verdicts, v["verdict"])
		require.Contains(t, []string{"flank", "crest", "root", "face", "none"}, v["first_contact"], row.why)
		for _, turns := range []string{"hand_turns", "binding_turns"} {
			if v[turns] != nil {
				has(t, row.why, v[turns], "loosest:number? tightest:number?")
			}
		}
	}
	require.Nil(t, jsonOf(t, exitClear, "", "mate", "G 3/4 male", "G 3/4 female")["hand_turns"], "parallels of one kind run free")
}

func TestNewAndWhyFacts(t *testing.T) {
	has(t, "new", jsonOf(t, exitClear, "", "new", t.TempDir()), "written:string")
	has(t, "why", jsonOf(t, exitClear, "", "why", "same-sex"), "slug:string title:string why:string wrong:string right:string")
}

// One input gives one output, byte for byte.
func TestSameInputSameBytes(t *testing.T) {
	for _, args := range [][]string{
		{"check", carelessBuild}, {"check", carelessBuild, "--json"}, {"order", carelessBuild}, {"order", carelessBuild, "--json"}, {"why"},
	} {
		var first string
		for i := range 3 {
			var out, errOut bytes.Buffer
			run(args, strings.NewReader(""), &out, &errOut)
			require.Empty(t, errOut.String(), args)
			if i == 0 {
				first = out.String()
			}
			require.Equal(t, first, out.String(), args)
		}
	}
}

// What is needed of an item is one figure, whoever says it: placed, planned and extra, in the
// order, the spares and the cart alike.
func TestNeedIsOneFigure(t *testing.T) {
	said := func(args ...string) map[string]any {
		var out, errOut bytes.Buffer
		require.NotEqual(t, exitFault, run(append(args, "--json"), strings.NewReader(""), &out, &errOut), errOut.String())
		var v map[string]any
		require.NoError(t, json.Unmarshal(out.Bytes(), &v))
		return v
	}
	list := func(v any) []map[string]any {
		var out []map[string]any
		for _, e := range v.([]any) {
			out = append(out, e.(map[string]any))
		}
		return out
	}
	for _, build := range []string{cleanBuild, carelessBuild, "../../testdata/refit/build.toml", "../../testdata/engine/build.toml"} {
		lines := map[string]map[string]any{}
		for _, l := range list(said("order", build)["lines"]) {
			lines[l["item"].(string)] = l
			require.InDelta(t, l["placed"].(float64)+l["planned"].(float64)+l["extra"].(float64), l["need"], 1e-9, "%s: %v", build, l["item"])
			for _, key := range []string{"lead", "pack", "spare", "have", "order"} {
				require.Contains(t, l, key)
			}
		}
		for _, i := range list(said("cart", build, "../../testdata/carts/elbe.csv")["items"]) {
			require.Equal(t, lines[i["item"].(string)]["need"], i["need"], "%s: %v", build, i["item"])
		}
		for _, p := range list(said("spares", build)["spares"]) {
			l := lines[p["item"].(string)]
			require.Equal(t, []any{l["placed"], l["planned"]}, []any{p["placed"], p["planned"]}, "%s: %v", build, p["item"])
		}
	}
}
