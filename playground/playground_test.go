//go:build !js

package main

import (
	"context"
	"io"
	"io/fs"
	"maps"
	"net/http"
	"net/http/httptest"
	"os"
	"path"
	"regexp"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
)

var built = sync.OnceValues(func() (site, error) { return build(context.Background()) })

// wholeSite is the site, built once. It compiles the library, hence not in short tests.
func wholeSite(t *testing.T) site {
	t.Helper()
	if testing.Short() {
		t.Skip("builds the library for js/wasm")
	}
	s, err := built()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func TestTheSiteIsWrittenWhole(t *testing.T) {
	want := wholeSite(t)
	dir := t.TempDir()
	if err := want.write(dir + "/a/b"); err != nil {
		t.Fatal(err)
	}
	got := site{}
	if err := got.addFolder(os.DirFS(dir+"/a/b"), ""); err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff(want.names(), got.names()); diff != "" {
		t.Error(diff)
	}
	for name := range want {
		if string(got[name]) != string(want[name]) {
			t.Errorf("%s has other bytes", name)
		}
	}
	for _, name := range []string{"index.html", "sw.js", "files.js", "weft/weft.js", "weft/weft.wasm"} {
		if len(want[name]) == 0 {
			t.Errorf("no %s", name)
		}
	}
}

// Any file that the page names: in attributes, imports, and addresses beside a module.
var named = regexp.MustCompile(`(?:src|href)="([^"#]+)"|(?:from|import)\s+"(\.[^"]+)"|new URL\("([^"]+)", import|url\("?([^")]+)"?\)|start\("([^"]+)"`)

func TestEveryAddressIsRelativeAndThere(t *testing.T) {
	s := wholeSite(t)
	found := 0
	for name, content := range s {
		if ext := path.Ext(name); ext == ".wasm" || strings.HasPrefix(name, "weft/") {
			continue
		}
		for _, match := range named.FindAllStringSubmatch(string(content), -1) {
			address := strings.Join(match[1:], "")
			if target := path.Join(path.Dir(name), address); path.IsAbs(address) || s[target] == nil {
				t.Errorf("%s names %s, which is not there or not relative", name, address)
			}
			found++
		}
	}
	if found < 30 {
		t.Errorf("only %d addresses found", found)
	}
}

func TestTheSiteWorksUnderAPathOfAPlainFileServer(t *testing.T) {
	s := wholeSite(t)
	dir := t.TempDir()
	if err := s.write(dir); err != nil {
		t.Fatal(err)
	}
	server := httptest.NewServer(http.StripPrefix("/some/path/", http.FileServer(http.Dir(dir))))
	defer server.Close()
	for name, want := range s {
		address := strings.TrimSuffix(server.URL+"/some/path/"+name, "index.html")
		if code, got := get(t, address); code != http.StatusOK || got != string(want) {
			t.Errorf("%s: %d", name, code)
		}
	}
}

func TestEveryAnswerCarriesThePolicy(t *testing.T) {
	s := wholeSite(t)
	for name := range s {
		answer := httptest.NewRecorder()
		s.ServeHTTP(answer, httptest.NewRequest(http.MethodGet, "/"+name, nil))
		h := answer.Result().Header
		if got := h.Get("Content-Security-Policy"); got != policy+"; frame-ancestors 'none'" {
			t.Errorf("%s: %s", name, got)
		}
		if h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Content-Type") == "" {
			t.Errorf("%s: %v", name, h)
		}
	}
	if !strings.Contains(string(s["index.html"]), `content="`+policy+`"`) {
		t.Error("index.html has another policy than the server")
	}
}

func TestThePolicyAllowsNothingFromElsewhere(t *testing.T) {
	if strings.Contains(policy, "unsafe-inline") || strings.Contains(policy, "'unsafe-eval'") || strings.ContainsAny(policy, "*") {
		t.Error(policy)
	}
	if !strings.HasPrefix(policy, "default-src 'none'") || regexp.MustCompile(`https?:|data:`).MatchString(policy) {
		t.Error(policy)
	}
	page, err := fs.ReadFile(page, "site/index.html")
	if err != nil {
		t.Fatal(err)
	}
	if inline := regexp.MustCompile(`<script>|<style|\son\w+=|\sstyle=`).Find(page); inline != nil {
		t.Errorf("index.html has %q, which the policy forbids", inline)
	}
}

func TestTheListNamesEveryFileButTheServiceWorker(t *testing.T) {
	s := wholeSite(t)
	for name := range s {
		listed := strings.Contains(string(s["files.js"]), `"`+name+`"`)
		if own := name == worker || name == "files.js"; listed == own {
			t.Errorf("%s listed: %v", name, listed)
		}
	}
}

func TestTheVersionChangesWithAnyByte(t *testing.T) {
	list := func(s site) string {
		if err := s.addList(); err != nil {
			t.Fatal(err)
		}
		defer delete(s, "files.js")
		return string(s["files.js"])
	}
	s := site{"a": []byte("1"), "sw.js": []byte("2"), "c": []byte("3 4")}
	first := list(s)
	if again := list(s); again != first {
		t.Errorf("%s, then %s", first, again)
	}
	for name := range s {
		changed := maps.Clone(s)
		changed[name] = append(slices.Clone(s[name]), ' ')
		if list(changed) == first {
			t.Errorf("the same version with another %s", name)
		}
	}
}

func TestTheServerAnswersWhatItShould(t *testing.T) {
	s := site{"index.html": []byte("page"), "js/a.js": []byte("code"), "LICENSE": []byte("text")}
	for _, c := range []struct {
		method, path string
		code         int
		media        string
	}{
		{"GET", "/", 200, "text/html; charset=utf-8"},
		{"HEAD", "/", 200, "text/html; charset=utf-8"},
		{"GET", "/index.html", 200, "text/html; charset=utf-8"},
		{"GET", "/js/a.js", 200, "text/javascript; charset=utf-8"},
		{"GET", "/LICENSE", 200, "text/plain; charset=utf-8"},
		{"GET", "/js", 404, ""},
		{"GET", "/../go.mod", 404, ""},
		{"GET", "//js/a.js", 404, ""},
		{"POST", "/", 405, ""},
		{"PUT", "/js/a.js", 405, ""},
	} {
		answer := httptest.NewRecorder()
		request := httptest.NewRequest(c.method, "/", nil)
		request.URL.Path = c.path
		s.ServeHTTP(answer, request)
		if answer.Code != c.code || c.media != "" && answer.Header().Get("Content-Type") != c.media {
			t.Errorf("%s %s: %d %s", c.method, c.path, answer.Code, answer.Header().Get("Content-Type"))
		}
	}
}

func TestAFileThatTheBrowserHasIsNotSentAgain(t *testing.T) {
	s := site{"a.css": []byte("x")}
	first := httptest.NewRecorder()
	s.ServeHTTP(first, httptest.NewRequest(http.MethodGet, "/a.css", nil))
	request := httptest.NewRequest(http.MethodGet, "/a.css", nil)
	request.Header.Set("If-None-Match", first.Header().Get("ETag"))
	second := httptest.NewRecorder()
	s.ServeHTTP(second, request)
	if second.Code != http.StatusNotModified {
		t.Error(second.Code)
	}
}

func TestServeSaysWhereAndStopsWithItsContext(t *testing.T) {
	ctx, stop := context.WithCancel(t.Context())
	r, w := io.Pipe()
	ended := make(chan error, 1)
	go func() { ended <- serve(ctx, site{"index.html": []byte("here")}, "127.0.0.1:0", w) }()
	said := make([]byte, 100)
	n, err := r.Read(said)
	if err != nil {
		t.Fatal(err)
	}
	address := strings.TrimSpace(string(said[:n]))
	if code, got := get(t, address); code != http.StatusOK || got != "here" {
		t.Errorf("%s: %d %q", address, code, got)
	}
	stop()
	select {
	case err := <-ended:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(10 * time.Second):
		t.Error("still serving")
	}
}

func TestStrayArgumentsAndFlagsAreRefused(t *testing.T) {
	for _, args := range [][]string{{"DIR"}, {"-o", "x", "y"}, {"-nonsense"}} {
		if err := run(t.Context(), args, io.Discard); err == nil {
			t.Errorf("%q is taken", args)
		}
	}
}

func get(t *testing.T, address string) (int, string) {
	t.Helper()
	answer, err := http.Get(address)
	if err != nil {
		t.Fatal(err)
	}
	defer answer.Body.Close()
	body, err := io.ReadAll(answer.Body)
	if err != nil {
		t.Fatal(err)
	}
	return answer.StatusCode, string(body)
}
