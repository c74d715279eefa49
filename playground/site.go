package main

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"net/http"
	"os"
	"path"
	"path/filepath"
	"strings"
	"time"
)

// A site is the files of the page, under names with forward slashes. It serves
// them over HTTP.
type site map[string][]byte

// policy is what the page may do: run and load what comes with it, and nothing
// else. The page says the same itself, for servers that do not.
const policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; " +
	"img-src 'self' blob:; connect-src 'self'; worker-src 'self'; base-uri 'none'; form-action 'none'"

// media are the types of the files. The system's own table is left alone, since
// it differs between machines.
var media = map[string]string{
	".css":  "text/css; charset=utf-8",
	".html": "text/html; charset=utf-8",
	".js":   "text/javascript; charset=utf-8",
	".svg":  "image/svg+xml",
	".wasm": "application/wasm",
}

func mediaOf(name string) string {
	if known, ok := media[path.Ext(name)]; ok {
		return known
	}
	return "text/plain; charset=utf-8"
}

// ServeHTTP answers with a file, or with the page at the root.
func (s site) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	name := strings.TrimPrefix(r.URL.Path, "/")
	if name == "" {
		name = "index.html"
	}
	content, ok := s[name]
	switch {
	case r.Method != http.MethodGet && r.Method != http.MethodHead:
		w.Header().Set("Allow", "GET, HEAD")
		http.Error(w, "only GET and HEAD", http.StatusMethodNotAllowed)
	case !ok:
		http.NotFound(w, r)
	default:
		s.send(w, r, name, content)
	}
}

func (s site) send(w http.ResponseWriter, r *http.Request, name string, content []byte) {
	sum := sha256.Sum256(content)
	h := w.Header()
	h.Set("Content-Type", mediaOf(name))
	h.Set("Content-Security-Policy", policy+"; frame-ancestors 'none'")
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cache-Control", "no-cache")
	h.Set("ETag", `"`+hex.EncodeToString(sum[:8])+`"`)
	http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(content))
}

// write writes the site into a directory, which need not exist.
func (s site) write(dir string) error {
	for _, name := range s.names() {
		to := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		if err := os.WriteFile(to, s[name], 0o644); err != nil {
			return err
		}
	}
	return nil
}

// size is how many bytes the site has.
func (s site) size() (bytes int) {
	for _, content := range s {
		bytes += len(content)
	}
	return bytes
}
