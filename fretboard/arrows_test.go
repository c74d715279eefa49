package fretboard_test

import (
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

// The architecture of the module, as a test. Its packages import one way:
//
//	fretboard <- voicing <- picking <- picking/<leaf> <- wasm, playground, examples
//
// and non-test code imports nothing but the standard library and the module.
// Packages whose names end in "test" support tests and are free of this; in
// turn nothing but tests imports them.

const module = "weft.example"

// impure names the standard packages that the three model packages do without:
// the same input gives the same output, wherever and whenever.
var impure = []string{"time", "os", "io/fs", "math/rand", "crypto/rand", "net", "flag", "log", "syscall"}

// topLevel is all that the module's root holds besides dotfiles.
var topLevel = []string{"fretboard", "voicing", "picking", "wasm", "playground", "examples",
	"go.mod", "go.sum", "README.md", "DEVELOPERS.md", "LICENSE"}

// A node is a package, or a tree of them, between which arrows are drawn.
type node struct {
	name  string
	layer int // arrows lead to lower ones
}

// nodeOf places a package, given by its path in the module, in the drawing.
func nodeOf(pkg string) node {
	parts := strings.Split(pkg, "/")
	switch parts[0] {
	case "fretboard":
		return node{"fretboard", 0}
	case "voicing":
		return node{"voicing", 1}
	case "picking":
		if len(parts) == 1 {
			return node{"picking", 2}
		}
		return node{parts[0] + "/" + parts[1], 3}
	case "examples":
		return node{path.Join(parts[:min(2, len(parts))]...), layerOfExample(parts)}
	case "playground":
		return node{parts[0], 6}
	}
	return node{parts[0], 5}
}

// layerOfExample puts what the examples share below them.
func layerOfExample(parts []string) int {
	if len(parts) > 1 && parts[1] == "internal" {
		return 4
	}
	return 5
}

func supportsTests(pkg string) bool { return strings.HasSuffix(pkg, "test") }

func isAny(pkg string, list []string) bool {
	return slices.ContainsFunc(list, func(p string) bool { return pkg == p || strings.HasPrefix(pkg, p+"/") })
}

// wrongImports returns what is wrong with the imports of a module, one line
// each, given those of every non-test file by its path in the module.
func wrongImports(files map[string][]string) []string {
	var wrong []string
	for _, file := range slices.Sorted(maps.Keys(files)) {
		for _, imported := range files[file] {
			if reason := wrongImport(file, imported); reason != "" {
				wrong = append(wrong, file+" imports "+imported+": "+reason)
			}
		}
	}
	return wrong
}

func wrongImport(file, imported string) string {
	pkg := path.Dir(file)
	inside, own := strings.CutPrefix(imported, module+"/")
	first, _, _ := strings.Cut(imported, "/")
	from := nodeOf(pkg)
	switch {
	case imported == "unsafe" || imported == "C":
		return "not in this module"
	case imported == "syscall/js" && file != "wasm/main.go":
		return "only wasm/main.go touches the page"
	case supportsTests(pkg):
		return ""
	case own:
		return wrongArrow(from, inside)
	case strings.Contains(first, "."):
		return "outside the standard library and the module"
	case from.layer <= 2 && isAny(imported, impure):
		return "a model has no clock, files, network or chance"
	}
	return ""
}

func wrongArrow(from node, imported string) string {
	to := nodeOf(imported)
	switch {
	case supportsTests(imported):
		return "a support package outside a test"
	case to == from || to.layer < from.layer:
		return ""
	case to.layer == 3 && from.layer == 3:
		return "a leaf imports no other leaf"
	}
	return "the arrow points the wrong way"
}

func TestImportsOfThisModule(t *testing.T) {
	files := moduleImports(t, moduleRoot(t))
	if len(files) < 10 || files["fretboard/pitch.go"] == nil {
		t.Fatalf("read only %d files: %v", len(files), slices.Sorted(maps.Keys(files)))
	}
	for _, wrong := range wrongImports(files) {
		t.Error(wrong)
	}
}

// TestWrongImportsAreFound proves that the test above can fail.
func TestWrongImportsAreFound(t *testing.T) {
	for _, c := range []struct{ file, imported, want string }{
		{"fretboard/pitch.go", "math", ""},
		{"voicing/voicing.go", "weft.example/fretboard", ""},
		{"picking/fit.go", "weft.example/fretboard", ""},
		{"picking/text/encode.go", "weft.example/picking", ""},
		{"picking/text/internal/box/box.go", "weft.example/picking/text", ""},
		{"picking/synth/synth.go", "math/rand/v2", ""},
		{"picking/leaftest/kit.go", "github.com/google/go-cmp/cmp", ""},
		{"picking/leaftest/kit.go", "weft.example/picking/text", ""},
		{"wasm/main.go", "syscall/js", ""},
		{"wasm/main.go", "weft.example/wasm/api", ""},
		{"wasm/api/api.go", "weft.example/picking/svg", ""},
		{"playground/serve.go", "net/http", ""},
		{"examples/lesson/main.go", "os", ""},
		{"examples/lesson/main.go", "weft.example/voicing", ""},
		{"examples/lesson/run.go", "weft.example/examples/internal/cli", ""},

		{"fretboard/pitch.go", "weft.example/voicing", "the wrong way"},
		{"voicing/voicing.go", "weft.example/picking", "the wrong way"},
		{"picking/fit.go", "weft.example/picking/text", "the wrong way"},
		{"picking/text/encode.go", "weft.example/wasm/api", "the wrong way"},
		{"picking/text/encode.go", "weft.example/picking/svg", "no other leaf"},
		{"examples/lesson/main.go", "weft.example/examples/song", "the wrong way"},
		{"examples/internal/cli/cli.go", "weft.example/examples/lesson", "the wrong way"},
		{"picking/text/encode.go", "weft.example/examples/internal/cli", "the wrong way"},
		{"playground/serve.go", "weft.example/wasm/bundle", ""},
		{"wasm/api/api.go", "weft.example/playground", "the wrong way"},
		{"wasm/api/api.go", "syscall/js", "only wasm/main.go"},
		{"wasm/extra.go", "syscall/js", "only wasm/main.go"},
		{"fretboard/pitch.go", "syscall/js", "only wasm/main.go"},
		{"fretboard/pitch.go", "golang.org/x/exp/ebnf", "outside the standard library"},
		{"examples/lesson/main.go", "github.com/google/go-cmp/cmp", "outside the standard library"},
		{"picking/text/encode.go", "weft.example.org/other", "outside the standard library"},
		{"voicing/voicing.go", "weft.example/fretboard/grammartest", "support package"},
		{"picking/text/encode.go", "weft.example/picking/leaftest", "support package"},
		{"picking/leaftest/kit.go", "unsafe", "not in this module"},
		{"picking/synth/synth.go", "unsafe", "not in this module"},
		{"fretboard/pitch.go", "time", "a model has no clock"},
		{"voicing/voicing.go", "os", "a model has no clock"},
		{"voicing/voicing.go", "os/exec", "a model has no clock"},
		{"picking/fit.go", "math/rand/v2", "a model has no clock"},
		{"picking/fit.go", "math/rand", "a model has no clock"},
		{"picking/fit.go", "crypto/rand", "a model has no clock"},
		{"picking/fit.go", "io/fs", "a model has no clock"},
		{"picking/fit.go", "net/http", "a model has no clock"},
		{"picking/fit.go", "log/slog", "a model has no clock"},
		{"picking/fit.go", "flag", "a model has no clock"},
	} {
		got := wrongImports(map[string][]string{c.file: {"strings", c.imported}})
		if c.want == "" && len(got) > 0 {
			t.Errorf("a good import is refused: %s", got)
		}
		if c.want != "" && (len(got) != 1 || !strings.Contains(got[0], c.want)) {
			t.Errorf("%s imports %s: got %q, want %q", c.file, c.imported, got, c.want)
		}
	}
}

func TestTopLevelNames(t *testing.T) {
	root := moduleRoot(t)
	ignored, err := os.ReadFile(filepath.Join(root, ".gitignore"))
	if err != nil {
		t.Fatal(err)
	}
	entries, err := os.ReadDir(root)
	if err != nil {
		t.Fatal(err)
	}
	var names []string
	for _, entry := range entries {
		names = append(names, entry.Name())
	}
	for _, name := range strangers(names, string(ignored)) {
		t.Errorf("%s does not belong into the module's root", name)
	}
}

func TestStrangersInTheRootAreFound(t *testing.T) {
	got := strangers([]string{"fretboard", ".ci", "out", "voicing.test", "node_modules", "util", "go.mod", "fretboards", "notes.md"},
		"# comment\n*.test\n\n/out/\nnode_modules/\n")
	if diff := cmp.Diff([]string{"util", "fretboards", "notes.md"}, got); diff != "" {
		t.Errorf("(-want +got)\n%s", diff)
	}
}

// strangers returns the names that are neither the module's own nor dotfiles
// nor match a line of the text of a .gitignore file.
func strangers(names []string, ignore string) []string {
	ignored := func(name string) bool {
		for line := range strings.Lines(ignore) {
			if match, _ := path.Match(strings.Trim(strings.TrimSpace(line), "/"), name); match {
				return true
			}
		}
		return false
	}
	return slices.DeleteFunc(slices.Clone(names), func(name string) bool {
		return strings.HasPrefix(name, ".") || slices.Contains(topLevel, name) || ignored(name)
	})
}

// moduleRoot returns the nearest directory upward that holds a go.mod.
func moduleRoot(t *testing.T) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
		if filepath.Dir(dir) == dir {
			t.Fatal("no go.mod above the tests")
		}
		dir = filepath.Dir(dir)
	}
}

// moduleImports reads the imports of every non-test Go file below root but for
// nested modules, test data and what the go command passes over.
func moduleImports(t *testing.T, root string) map[string][]string {
	t.Helper()
	files := map[string][]string{}
	err := filepath.WalkDir(root, func(name string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			return enter(root, name)
		}
		if !strings.HasSuffix(name, ".go") || strings.HasSuffix(name, "_test.go") {
			return nil
		}
		inside, err := filepath.Rel(root, name)
		if err == nil {
			files[filepath.ToSlash(inside)], err = fileImports(name)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return files
}

func enter(root, dir string) error {
	base := filepath.Base(dir)
	if dir != root && (strings.HasPrefix(base, ".") || strings.HasPrefix(base, "_") || base == "testdata" || base == "node_modules") {
		return filepath.SkipDir
	}
	if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil && dir != root {
		return filepath.SkipDir
	}
	return nil
}

func fileImports(name string) ([]string, error) {
	file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
	if err != nil {
		return nil, err
	}
	imports := []string{}
	for _, spec := range file.Imports {
		imported, err := strconv.Unquote(spec.Path.Value)
		if err != nil {
			return nil, err
		}
		imports = append(imports, imported)
	}
	return imports, nil
}
