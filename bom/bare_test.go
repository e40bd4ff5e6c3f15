package bom_test

import (
	"encoding/csv"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What the packages hand out as a bare float64 stands in testdata/bare.csv with its reason:
// a share, a chance, a count, a point on the sheet. A quantity has a type of its own. A name in
// the list may end in a star.
func TestBareFloats(t *testing.T) {
	text, err := os.Open("testdata/bare.csv")
	require.NoError(t, err)
	defer text.Close()
	rows, err := csv.NewReader(text).ReadAll()
	require.NoError(t, err)
	rows = rows[1:]
	used := make([]bool, len(rows))
	for _, name := range bareFloats(t, "..") {
		found := false
		for i, row := range rows {
			match, err := path.Match(row[0], name)
			require.NoError(t, err)
			if match {
				used[i], found = true, true
				require.NotEmpty(t, row[1], name)
			}
		}
		require.True(t, found, "%s is a bare float64: give it a type of pressure/quantity, or say in testdata/bare.csv why it has none", name)
	}
	for i, row := range rows {
		require.True(t, used[i], "nothing is called %s any more", row[0])
	}
}

// bareFloats lists the exported functions, methods, fields and constants that have a float64.
func bareFloats(t *testing.T, root string) []string {
	var out []string
	require.NoError(t, filepath.WalkDir(root, func(file string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(file, ".go") || strings.HasSuffix(file, "_test.go") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
		if err != nil || f.Name.Name == "main" {
			return err
		}
		in := strings.TrimPrefix(filepath.ToSlash(filepath.Dir(file)), root+"/") + "."
		for _, d := range f.Decls {
			for _, name := range bareIn(d) {
				out = append(out, in+name)
			}
		}
		return nil
	}))
	require.NotEmpty(t, out)
	return out
}

func bareIn(d ast.Decl) (out []string) {
	if f, ok := d.(*ast.FuncDecl); ok {
		of := receiverOf(f)
		if f.Name.IsExported() && (of == "" || ast.IsExported(of)) && isBare(f.Type) {
			out = append(out, strings.TrimPrefix(of+"."+f.Name.Name, "."))
		}
		return out
	}
	for _, s := range d.(*ast.GenDecl).Specs {
		switch s := s.(type) {
		case *ast.TypeSpec:
			st, ok := s.Type.(*ast.StructType)
			if !ok || !s.Name.IsExported() {
				continue // a type that is one number is a quantity of its own
			}
			for _, field := range st.Fields.List {
				for _, n := range field.Names {
					if n.IsExported() && isBare(field.Type) {
						out = append(out, s.Name.Name+"."+n.Name)
					}
				}
			}
		case *ast.ValueSpec:
			for i, n := range s.Names {
				literal := false
				if i < len(s.Values) && s.Type == nil {
					v, ok := s.Values[i].(*ast.BasicLit)
					literal = ok && v.Kind == token.FLOAT
				}
				if n.IsExported() && (literal || s.Type != nil && isBare(s.Type)) {
					out = append(out, n.Name)
				}
			}
		}
	}
	return out
}

// receiverOf names the type of a method; of a generic one, too.
func receiverOf(f *ast.FuncDecl) string {
	if f.Recv == nil {
		return ""
	}
	name := ""
	ast.Inspect(f.Recv.List[0].Type, func(n ast.Node) bool {
		if id, ok := n.(*ast.Ident); ok && name == "" {
			name = id.Name
		}
		return true
	})
	return name
}

// isBare reports whether a type names float64; a bound of a generic type does not count.
func isBare(n ast.Expr) (bare bool) {
	ast.Inspect(n, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.UnaryExpr:
			return n.Op != token.TILDE
		case *ast.Ident:
			bare = bare || n.Name == "float64"
		}
		return true
	})
	return bare
}
