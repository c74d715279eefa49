// Package bundle builds the package for JavaScript: the files of
// WebAssembly, the module that loads them, its declarations and what npm wants to
// know. The same source and the same Go give the same bytes.
package bundle

import (
	"bytes"
	"compress/gzip"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
)

// A Size is the size of a file of WebAssembly, and the most it may be.
type Size struct {
	Name              string
	Raw, Gzip         int
	MostRaw, MostGzip int
}

// String prints one line.
func (s Size) String() string {
	return fmt.Sprintf("%-13s %7d bytes, at most %d; %7d under gzip -9, at most %d", s.Name, s.Raw, s.MostRaw, s.Gzip, s.MostGzip)
}

// Over reports whether the file is larger than it may be.
func (s Size) Over() bool { return s.Raw > s.MostRaw || s.Gzip > s.MostGzip }

// The programs, and the budget of each.
var programs = []struct {
	name, tags        string
	mostRaw, mostGzip int
}{
	{"weft.wasm", "lessons", 3_600_000, 1_000_000},
	{"sheets.wasm", "sheets", 3_600_000, 1_000_000},
	{"drawings.wasm", "drawings", 3_600_000, 1_000_000},
}

// files are copied as they are, from the module's root.
var files = map[string]string{
	"weft.js":      "wasm/weft.js",
	"weft.d.ts":    "wasm/weft.d.ts",
	"package.json": "wasm/package.json",
	"LICENSE":      "LICENSE",
}

// Write builds the package of the module whose root is given into a directory,
// which it makes, and returns the sizes of its programs.
func Write(root, dir string) ([]Size, error) {
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return nil, err
	}
	for name, from := range files {
		if err := copyFile(filepath.Join(dir, name), filepath.Join(root, from)); err != nil {
			return nil, err
		}
	}
	if err := writeGo(dir); err != nil {
		return nil, err
	}
	sizes := make([]Size, len(programs))
	for i, p := range programs {
		file := filepath.Join(dir, p.name)
		if err := compile(root, file, p.tags); err != nil {
			return nil, err
		}
		size, err := measure(file)
		if err != nil {
			return nil, err
		}
		size.Name, size.MostRaw, size.MostGzip = p.name, p.mostRaw, p.mostGzip
		sizes[i] = size
	}
	return sizes, nil
}

// compile builds one program. Without inlining it is a tenth smaller.
func compile(root, file, tags string) error {
	file, err := filepath.Abs(file)
	if err != nil {
		return err
	}
	cmd := exec.Command("go", "build", "-trimpath", "-buildvcs=false", "-ldflags=-s -w", "-gcflags=all=-l",
		"-tags="+tags, "-o", file, "./wasm")
	cmd.Dir = root
	cmd.Env = append(os.Environ(), "GOOS=js", "GOARCH=wasm", "GOFLAGS=")
	out, err := cmd.CombinedOutput()
	if err != nil {
		return fmt.Errorf("building %s: %w\n%s", filepath.Base(file), err, out)
	}
	return nil
}

func measure(file string) (Size, error) {
	data, err := os.ReadFile(file)
	if err != nil {
		return Size{}, err
	}
	var packed bytes.Buffer
	w, err := gzip.NewWriterLevel(&packed, gzip.BestCompression)
	if err != nil {
		return Size{}, err
	}
	if _, err := w.Write(data); err != nil {
		return Size{}, err
	}
	if err := w.Close(); err != nil {
		return Size{}, err
	}
	return Size{Raw: len(data), Gzip: packed.Len()}, nil
}

func copyFile(to, from string) error {
	data, err := os.ReadFile(from)
	if err != nil {
		return err
	}
	return os.WriteFile(to, data, 0o644)
}

// goRoot returns where the Go that builds is.
func goRoot() (string, error) {
	out, err := exec.Command("go", "env", "GOROOT").Output()
	return strings.TrimSpace(string(out)), err
}

// The frame around Go's own support file, which writes to the global object.
// Here it gets an object in its place, so that nothing is left behind: one with
// what the file and a program ask of the global object, and no more.
const before = `// The support file of the Go distribution, wasm_exec.js, in a scope of its own.
// Its licence is in LICENSE-GO.
export const scope = {
  Object, Array, Uint8Array, TextEncoder, TextDecoder,
  crypto: globalThis.crypto,
  performance: globalThis.performance,
};
(function (globalThis) {
`

const after = `})(scope);
export const Go = scope.Go;
`

// writeGo writes go.js and the licence of what it holds.
func writeGo(dir string) error {
	root, err := goRoot()
	if err != nil {
		return err
	}
	support, err := os.ReadFile(filepath.Join(root, "lib", "wasm", "wasm_exec.js"))
	if err != nil {
		return err
	}
	framed := io.MultiReader(strings.NewReader(before), bytes.NewReader(support), strings.NewReader(after))
	data, err := io.ReadAll(framed)
	if err != nil {
		return err
	}
	if err := os.WriteFile(filepath.Join(dir, "go.js"), data, 0o644); err != nil {
		return err
	}
	return copyFile(filepath.Join(dir, "LICENSE-GO"), filepath.Join(root, "LICENSE"))
}
