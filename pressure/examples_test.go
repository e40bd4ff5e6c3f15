package pressure_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// Exported functions that compute nothing: they name, list or hand on what is there. Any other
// of these packages has an example.
var plain = map[string]string{
	"String": "words for a value", "Error": "words for an error", "Names": "a list",
	"pressure.KnownSpecs": "a list", "pressure.Spec.Construction": "a column of the table", "pressure.Basis.Guess": "three values named",
	"threads.SealNamed": "a word looked up", "threads.AllSeals": "a list", "threads.PlainWord": "a column of the table", "threads.Families": "a list",
	"threads.FamilyNamed": "a word looked up", "threads.SexNamed": "a word looked up", "threads.VerdictNamed": "a word looked up",
	"threads.Family.Facts": "a row of the table", "threads.Family.Threaded": "a column of the table", "threads.Sex.Other": "two values",
	"threads.Threaded": "makes an end of a form", "threads.End.IsTube": "a column of the table",
	"threads.Band.Middle": "half of a sum", "threads.Form.Full": "a field", "threads.Form.Coarse": "a row of the table",
	"threads.Length.Millimetres": "a unit", "threads.Length.Inches": "a unit", "threads.Verdict.Holds": "two values named", "threads.Verdict.Worse": "two values compared",
	"threads.Mating.Male": "a field", "threads.Mating.Female": "a field", "threads.Mating.Makes": "a row of the table",
	"threads.Mating.HandWords": "words for a value", "threads.Mating.Source": "a row of the table", "threads.Mating.Slug": "words for a value",
}

// Each exported function of threads and pressure that computes has an Example.
func TestEachFunctionHasAnExample(t *testing.T) {
	for _, dir := range []string{"../threads", "../pressure"} {
		name := strings.TrimPrefix(dir, "../")
		has, wants := map[string]bool{}, map[string]string{} // by the name that its example has
		set := token.NewFileSet()
		paths, err := filepath.Glob(filepath.Join(dir, "*.go"))
		require.NoError(t, err)
		for _, path := range paths {
			file, err := parser.ParseFile(set, path, nil, 0)
			require.NoError(t, err)
			for _, d := range file.Decls {
				f, ok := d.(*ast.FuncDecl)
				if !ok {
					continue
				}
				if strings.HasSuffix(path, "_test.go") {
					has[f.Name.Name] = true
					continue
				}
				of := receiver(f)
				if f.Name.IsExported() && (f.Recv == nil || ast.IsExported(of)) {
					wants["Example"+strings.TrimPrefix(of+"_"+f.Name.Name, "_")] = name + "." + strings.TrimPrefix(of+"."+f.Name.Name, ".")
				}
			}
		}
		require.NotEmpty(t, wants)
		for example, is := range wants {
			_, short := plain[is[strings.LastIndex(is, ".")+1:]]
			_, long := plain[is]
			require.Equal(t, short || long, !has[example], "%s: has an %s, or is listed with the reason why it computes nothing", is, example)
		}
		for is := range plain {
			if at, rest, ok := strings.Cut(is, "."); ok && at == name {
				_, known := wants["Example"+strings.ReplaceAll(rest, ".", "_")]
				require.True(t, known, "%s is listed and is no function", is)
			}
		}
	}
}

// receiver names the type that a method belongs to.
func receiver(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return ""
	}
	of := f.Recv.List[0].Type
	if p, ok := of.(*ast.StarExpr); ok {
		of = p.X
	}
	return of.(*ast.Ident).Name
}
