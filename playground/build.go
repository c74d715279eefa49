package main

import (
	"bytes"
	"context"
	"crypto/sha256"
	"embed"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"slices"
	"strings"

	"weft.example/wasm/bundle"
)

const module = "weft.example"

//go:embed site
var page embed.FS

// build makes the whole site: the page, the library, and the list of all files
// by which the service worker keeps them.
func build(ctx context.Context) (site, error) {
	s := site{}
	if err := s.addPage(); err != nil {
		return nil, err
	}
	if err := s.addLibrary(ctx); err != nil {
		return nil, err
	}
	return s, s.addList()
}

func (s site) addPage() error {
	root, err := fs.Sub(page, "site")
	if err != nil {
		return err
	}
	return s.addFolder(root, "")
}

// addLibrary builds the library's package for JavaScript and adds what of it a
// browser needs to the folder weft.
func (s site) addLibrary(ctx context.Context) error {
	root, err := moduleRoot(ctx)
	if err != nil {
		return err
	}
	scratch, err := os.MkdirTemp("", "weft")
	if err != nil {
		return err
	}
	defer os.RemoveAll(scratch)
	if _, err := bundle.Write(root, scratch); err != nil {
		return err
	}
	return s.addFolder(os.DirFS(scratch), "weft/", "package.json", "weft.d.ts")
}

// addFolder adds the files of a folder under a prefix, but for some.
func (s site) addFolder(folder fs.FS, prefix string, except ...string) error {
	return fs.WalkDir(folder, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() || slices.Contains(except, name) {
			return err
		}
		s[prefix+name], err = fs.ReadFile(folder, name)
		return err
	})
}

// moduleRoot is where the module lies whose page this is.
func moduleRoot(ctx context.Context) (string, error) {
	out, err := exec.CommandContext(ctx, "go", "list", "-m", "-f", "{{.Dir}}", module).Output()
	if exit := (*exec.ExitError)(nil); errors.As(err, &exit) {
		return "", fmt.Errorf("run it inside the module: %s", bytes.TrimSpace(exit.Stderr))
	}
	return strings.TrimSpace(string(out)), err
}

// addList adds files.js: the address of every file, and a version that changes
// with any byte of any of them.
func (s site) addList() error {
	sum := sha256.New()
	files := []string{"./"}
	for _, name := range s.names() {
		fmt.Fprintf(sum, "%s %d\n", name, len(s[name]))
		sum.Write(s[name])
		if name != worker {
			files = append(files, name)
		}
	}
	list, err := json.Marshal(map[string]any{"version": hex.EncodeToString(sum.Sum(nil))[:16], "files": files})
	s["files.js"] = fmt.Appendf(nil, "self.SITE = %s;\n", list)
	return err
}

// worker is the service worker, which the browser keeps by itself.
const worker = "sw.js"

func (s site) names() []string {
	names := make([]string, 0, len(s))
	for name := range s {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}
