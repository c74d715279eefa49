package browsertest

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

func TestThePageOpensWithoutANetwork(t *testing.T) {
	address, stop, err := serve()
	if err != nil {
		t.Fatal(err)
	}
	defer stop()
	shared := program.address
	program.address = address
	defer func() { program.address = shared }()
	b := open(t, "#1&chords=Am+~+E7&figures=5+3+2+1")
	b.until(`navigator.serviceWorker.ready.then(r => r.active.state === "activated")`)
	b.until(`navigator.serviceWorker.controller`)
	stop()
	b.do(chromedp.Reload())
	b.drawn()
	b.until(names + ` === "Am E7"`)
	b.until(`document.querySelectorAll("#pages img").length === 1`) // the second program too
	b.click("#play")
	b.until(lit + " >= 0")
	b.click("#stop")
}

func TestNothingIsAskedOfAnotherPlace(t *testing.T) {
	b := open(t, "")
	b.until(`document.querySelectorAll("#pages img").length > 0`)
	b.click("#play")
	b.until(lit + " >= 0")
	b.mu.Lock()
	defer b.mu.Unlock()
	if len(b.requests) < 20 {
		t.Errorf("only %d requests seen", len(b.requests))
	}
	for _, address := range b.requests {
		if !strings.HasPrefix(address, program.address) && !strings.HasPrefix(address, "blob:"+program.address) {
			t.Error(address)
		}
	}
}

func TestThePolicyKeepsThePageFromAsking(t *testing.T) {
	b := open(t, "")
	for _, try := range []string{
		`fetch("https://example.org/").then(() => "sent", () => "kept")`,
		`new Promise(done => { const i = new Image(); i.onload = () => done("sent"); i.onerror = () => done("kept"); i.src = "https://example.org/x.png"; })`,
		`Promise.resolve(navigator.sendBeacon("https://example.org/") ? "kept" : "kept")`,
		`new Promise(done => { const s = document.createElement("script"); s.textContent = "self.ran = true"; document.head.append(s); done(self.ran ? "sent" : "kept"); })`,
	} {
		if got := value[string](b, try); got != "kept" {
			t.Errorf("%s: %s", try, got)
		}
	}
	b.mu.Lock()
	defer b.mu.Unlock()
	b.bad = nil // the browser says in the console what it refused
}

func TestHostileLinksAndTextsDoNothingBad(t *testing.T) {
	script := `%3Cscript%3Ealert(1)%3C/script%3E%3Cimg+src=x+onerror=alert(2)%3E`
	for _, fragment := range []string{
		"#1&title=" + script + "&chords=Am&figures=5+3+2+1",
		"#1&chords=" + script + "&figures=" + script + "&tuning=" + script + "&meter=" + script,
		"#1&chords=%FF%FE%C0%80&figures=%E0%A4%A&title=%ED%A0%80",
		"#99&" + script + "=" + script + "&__proto__=1&constructor=2",
		"#" + strings.Repeat("&", 5000),
		"#1&chords=" + strings.Repeat("Am+~+", 20000),
		"#1&tempo=1e9&capo=-3&fit=javascript:alert(1)&hand[]=x",
	} {
		b := open(t, fragment)
		b.until(`document.body.dataset.drawn`)
		harmless(b, fragment)
	}
}

func TestPastedTextDoesNothingBad(t *testing.T) {
	b := open(t, "")
	for _, text := range []string{
		`"<script>alert(1)</script> | <img src=x onerror=alert(2)>"`,
		`"A".repeat(10_000_000)`,
		`"\ud800\udfff\ud800 | \u0000 \u202e ﷽"`,
		`"Am | ".repeat(3000)`,
		`"("`,
		`""`,
	} {
		for _, field := range []string{"chords", "figures", "title", "tuning", "meter"} {
			value[bool](b, fmt.Sprintf(`(() => {
				const e = document.querySelector("#%s");
				e.value = %s;
				e.dispatchEvent(new Event("input", { bubbles: true }));
				return true;
			})()`, field, text))
		}
		harmless(b, text)
	}
	b.click("#again")
	b.until(fine)
}

// harmless fails if a script has come into the page, or if it has stopped working.
func harmless(b *tab, what string) {
	b.Helper()
	if n := value[int](b, `document.querySelectorAll("body script, body img:not(#pages img), iframe, [onerror]").length`); n != 0 {
		b.Errorf("%.80s: %d elements that do not belong", what, n)
	}
	if value[bool](b, `"polluted" in {} || Object.prototype[1] !== undefined`) {
		b.Errorf("%.80s: prototypes are polluted", what)
	}
	b.write("#title", "x")
}

func TestKeysAloneReachEverything(t *testing.T) {
	b := open(t, "#1&chords=Dm=xx0231&figures=6+4+3+2+1+2+3+4")
	b.until(`document.querySelectorAll("#files button").length > 0`)
	value[bool](b, `(document.activeElement.blur(), document.querySelectorAll("details").forEach(d => d.open = true), true)`)
	want := value[[]string](b, `(() => {
		self.tag = (e) => e.id || e.dataset.field || e.dataset.format || e.dataset.key || e.textContent.trim().slice(0, 20);
		const all = [...document.querySelectorAll("a[href], button, input, select, textarea, summary")];
		return all.filter(e => !e.disabled && e.tabIndex >= 0 && e.getClientRects().length > 0 && !(e.type === "radio" && !e.checked)).map(tag);
	})()`)
	seen := map[string]bool{}
	for range len(want) + 10 {
		b.press(kb.Tab)
		state := value[[]any](b, `(() => {
			const e = document.activeElement;
			const s = getComputedStyle(e);
			return [tag(e), e === document.body || e.id === "part" || s.outlineStyle !== "none"];
		})()`)
		seen[state[0].(string)] = true
		if !state[1].(bool) {
			t.Errorf("%v shows no focus", state[0])
		}
	}
	for _, name := range want {
		if !seen[name] {
			t.Errorf("%s is not reached with the tab key", name)
		}
	}
	t.Logf("%d controls", len(want))
}

func TestNothingIsLostOnASmallScreenOrAtFourTimesTheSize(t *testing.T) {
	for _, fragment := range []string{"", "#1&chords=Am+~+F+~+C+G/B&figures=1/16:+5+3+2+1+2+3+2+1+5+3+2+1+2+3+2+1&capo=2", "#1&chords=Hm&figures=5+3"} {
		b := open(t, fragment)
		for _, width := range []int64{320, 360, 768} {
			b.do(chromedp.EmulateViewport(width, 256))
			b.until(`innerWidth === ` + fmt.Sprint(width))
			value[bool](b, `new Promise(done => setTimeout(() => done(true), 300))`)
			wide := value[[]string](b, `[...document.querySelectorAll("body *")].filter(e => !e.closest(".lattice-scroll, .visually-hidden, .skip, svg, .shade, datalist") && e.getBoundingClientRect().right > innerWidth + 1).map(e => e.tagName + "." + e.className + "#" + e.id)`)
			if len(wide) > 0 || value[bool](b, `document.documentElement.scrollWidth > innerWidth`) {
				t.Errorf("%d pixels, %.30s: wider than the screen: %v", width, fragment, wide)
			}
		}
	}
}

// The drawing is left out, and what lies behind a text area: they are for the eye
// alone, and axe-core cannot see what is behind their text. A test of the
// colours stands in for that.
func TestAxeFindsNothing(t *testing.T) {
	path := os.Getenv("AXE")
	axe, err := os.ReadFile(path)
	if err != nil {
		message := "ACCESSIBILITY IS NOT CHECKED: AXE names no axe.min.js"
		if os.Getenv("CI_STRICT") != "" {
			t.Fatal(message)
		}
		fmt.Fprintln(os.Stderr, message)
		t.Skip(message)
	}
	for name, fragment := range map[string]string{
		"full": "#1&chords=Dm=xx0231+~+E7&figures=6+4+3+2+1+2+3+4&title=Mill", "empty": "#1&chords=&figures=", "wrong": "#1&chords=Am+~+Hm&figures=5+3+2+1",
	} {
		for _, scheme := range []string{"light", "dark"} {
			b := open(t, fragment)
			b.scheme(scheme)
			b.until(`document.querySelectorAll("#files button").length > 0`)
			value[bool](b, `(document.querySelectorAll("details").forEach(d => d.open = true), true)`)
			_, err := chromedp.Run(b.ctx, chromedp.Evaluate[chromedp.Void](string(axe)))
			b.check(err)
			found := value[[]string](b, `axe.run({ exclude: ["#sheet svg", ".shade"] }).then(r => [...r.violations.map(v => ["violation", v]), ...r.incomplete.map(v => ["incomplete", v])].flatMap(([kind, v]) => v.nodes.map(n => kind + " " + v.id + ": " + n.target.join(" ") + ": " + [...n.any, ...n.all, ...n.none].map(c => c.message).join("; "))))`)
			for _, f := range found {
				t.Errorf("%s, %s: %s", name, scheme, f)
			}
		}
	}
}

// The time from a key to the part that is drawn, for sixteen bars. It is
// printed; a test machine with other work to do would fail a limit at random.
func TestKeystrokesAreMeasured(t *testing.T) {
	b := open(t, "#1&chords=Am+~+F+~+C+G/B+~+E7+~+Am+~+Dm+~+E7+~+Am+~+C+~+G+~+F+~+Em+~+Dm+~+Am+~+E7+~+Am&figures=5+3+2+1+2+3+2+1")
	b.until(`document.querySelectorAll("#pages img").length > 0`)
	opened := value[float64](b, `performance.getEntriesByName("weft-redraw").map(m => m.startTime + m.duration)[0]`)
	value[bool](b, `(performance.clearMeasures(), true)`)
	b.do(chromedp.Focus(chromedp.CSS("#chords")))
	b.press(kb.End, chromedp.KeyModifiers(chromedp.ModifierCtrl))
	for _, key := range strings.Split("7 . | . D m", " ") {
		count := value[int](b, `performance.getEntriesByName("weft-redraw").length`)
		b.press(strings.ReplaceAll(key, ".", " "))
		b.until(fmt.Sprintf(`performance.getEntriesByName("weft-redraw").length > %d`, count))
	}
	times := value[[]float64](b, `performance.getEntriesByName("weft-redraw").map(m => m.duration).sort((a, b) => a - b)`)
	fmt.Printf("first part %.0f ms after opening; a keystroke on sixteen bars: median %.1f ms, most %.1f ms\n", opened, times[len(times)/2], times[len(times)-1])
}
