package browsertest

import (
	"bufio"
	"context"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/chromedp/cdproto/emulation"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
)

// patience is how long anything may take; test machines are slow at times.
const patience = 60 * time.Second

// program is what all tests share: the program, and the browser and the server
// that run.
var program struct {
	path, address string
	browser       context.Context
}

func TestMain(m *testing.M) {
	os.Exit(run(m))
}

func run(m *testing.M) int {
	chromium := lookUp("chromium", "chromium-browser", "google-chrome", "chrome")
	if chromium == "" {
		fmt.Fprintln(os.Stderr, "THE PAGE IS NOT CHECKED: there is no Chromium here")
		if os.Getenv("CI_STRICT") != "" {
			return 1
		}
		return 0
	}
	dir, err := os.MkdirTemp("", "playground")
	if err != nil {
		panic(err)
	}
	defer os.RemoveAll(dir)
	program.path = filepath.Join(dir, "playground")
	build := exec.Command("go", "build", "-o", program.path, "./playground")
	build.Dir = filepath.Join("..", "..")
	if out, err := build.CombinedOutput(); err != nil {
		fmt.Fprintf(os.Stderr, "%s\n%v\n", out, err)
		return 1
	}
	allocator, stop := chromedp.NewExecAllocator(context.Background(), append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(chromium), chromedp.NoSandbox)...)
	defer stop()
	browser, end := chromedp.NewContext(allocator)
	defer end()
	if err := chromedp.Do(browser); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	program.browser = browser
	address, stopServer, err := serve()
	if err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	defer stopServer()
	program.address = address
	return m.Run()
}

func lookUp(names ...string) string {
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	return ""
}

// serve starts the program on a port of its own and returns where it serves.
func serve() (address string, stop func(), err error) {
	cmd := exec.Command(program.path, "-addr", "127.0.0.1:0")
	cmd.Dir = filepath.Join("..", "..")
	cmd.Stderr = os.Stderr
	out, err := cmd.StdoutPipe()
	if err != nil {
		return "", nil, err
	}
	if err := cmd.Start(); err != nil {
		return "", nil, err
	}
	stop = sync.OnceFunc(func() {
		cmd.Process.Kill()
		cmd.Wait()
	})
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		stop()
		return "", nil, fmt.Errorf("the program does not say where it serves: %w", err)
	}
	return strings.TrimSpace(line), stop, nil
}

// A tab is a page in a browser profile of its own.
type tab struct {
	*testing.T
	ctx      context.Context
	mu       sync.Mutex
	bad      []string // what the console said, and what went wrong
	requests []string
}

// open opens the page with a fragment, and waits until the part or an error is
// drawn. Whatever the console says fails the test.
func open(t *testing.T, fragment string, before ...chromedp.Action[chromedp.Void]) *tab {
	t.Helper()
	b := &tab{T: t}
	ctx, cancel := chromedp.NewContext(program.browser, chromedp.WithNewBrowserContext())
	t.Cleanup(cancel)
	b.ctx = ctx
	b.do()
	if err := chromedp.Listen(ctx, b.hear); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(b.quiet)
	_, err := chromedp.Call(ctx, network.Enable, network.EnableParams{})
	b.check(err)
	b.do(chromedp.EmulateViewport(1280, 900))
	b.do(before...)
	b.do(chromedp.Navigate(program.address + fragment))
	b.drawn()
	return b
}

func (b *tab) hear(event any) {
	b.mu.Lock()
	defer b.mu.Unlock()
	switch e := event.(type) {
	case *runtime.EventConsoleAPICalled:
		b.bad = append(b.bad, fmt.Sprintf("console.%s: %v", e.Type, e.Args))
	case *runtime.EventExceptionThrown:
		b.bad = append(b.bad, fmt.Sprintf("exception: %+v", e.ExceptionDetails))
	case *page.EventJavascriptDialogOpening:
		b.bad = append(b.bad, "dialog: "+e.Message)
	case *network.EventRequestWillBeSent:
		b.requests = append(b.requests, e.Request.URL)
	}
}

// quiet fails the test if anything bad was heard.
func (b *tab) quiet() {
	b.mu.Lock()
	defer b.mu.Unlock()
	for _, bad := range b.bad {
		b.Error(bad)
	}
}

func (b *tab) check(err error) {
	b.Helper()
	if err != nil {
		b.Fatal(err)
	}
}

func (b *tab) do(steps ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	b.check(chromedp.Do(b.ctx, steps...))
}

// drawn waits until the page has drawn.
func (b *tab) drawn() {
	b.Helper()
	b.until(`document.body.dataset.drawn`)
}

// until waits for an expression of JavaScript to become true.
func (b *tab) until(expression string) {
	b.Helper()
	limit := chromedp.WithPollingTimeout(patience)
	if _, err := chromedp.Run(b.ctx, chromedp.Poll[bool]("!!("+expression+")", limit)); err != nil {
		b.Fatalf("waiting for %s: %v\n%v", expression, err, b.bad)
	}
}

// value evaluates an expression of JavaScript.
func value[T any](b *tab, expression string) T {
	b.Helper()
	v, err := chromedp.Run(b.ctx, chromedp.Evaluate[T](expression, chromedp.EvalAwaitPromise))
	if err != nil {
		b.Fatalf("%s: %v", expression, err)
	}
	return v
}

// write puts a text into a control, as one input, and waits for what is drawn then.
func (b *tab) write(selector, text string) {
	b.Helper()
	value[bool](b, fmt.Sprintf(`(() => {
		const e = document.querySelector(%q);
		e.value = %q;
		e.dispatchEvent(new Event("input", { bubbles: true }));
		e.dispatchEvent(new Event("change", { bubbles: true }));
		return true;
	})()`, selector, text))
	b.drawn()
}

// press presses keys where the focus is.
func (b *tab) press(keys string, options ...chromedp.KeyOption) {
	b.Helper()
	b.do(chromedp.KeyEvent(keys, options...))
}

func (b *tab) click(selector string) {
	b.Helper()
	b.do(chromedp.Click(chromedp.CSS(selector)))
}

// scheme makes the system's look light or dark.
func (b *tab) scheme(name string) {
	b.Helper()
	_, err := chromedp.Call(b.ctx, emulation.SetEmulatedMedia, emulation.SetEmulatedMediaParams{
		Features: []*emulation.MediaFeature{{Name: "prefers-color-scheme", Value: name}},
	})
	b.check(err)
}
