package browsertest

import (
	"context"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

const lit = `[...document.querySelectorAll(".pick")].findIndex(p => p.classList.contains("lit"))`

// Counts what could sound: audio contexts.
func counting() chromedp.Action[chromedp.Void] {
	return chromedp.Func(func(ctx context.Context, _ *chromedp.Target) error {
		_, err := chromedp.Call(ctx, page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
			Source: `self.contexts = []; self.AudioContext = class extends AudioContext { constructor(...a) { super(...a); self.contexts.push(this); } };`,
		})
		return err
	})
}

func TestThePlayerAdvancesPausesAndStops(t *testing.T) {
	b := open(t, "#1&chords=Am+~+C&figures=5+3+2+1&tempo=200&countIn=1&click=beats", counting())
	b.do(chromedp.MouseClickXY(640, 300))
	time.Sleep(300 * time.Millisecond)
	if n := value[int](b, `contexts.length`); n != 0 {
		t.Errorf("%d audio contexts before play is pressed", n)
	}
	b.click("#play")
	for _, pick := range []string{"0", "3", "5", "7", "1"} {
		b.until(lit + " === " + pick)
	}
	b.until(`document.querySelector("#playing").textContent.includes("round 2")`)
	value[bool](b, `((e) => (e.value = 60, e.dispatchEvent(new Event("input"))))(document.querySelector("#speed")), true`)
	b.until(`document.querySelector("#speed-value").textContent === "60"`)
	b.click("#play")
	b.until(`contexts[0].state === "suspended"`)
	at := value[int](b, lit)
	time.Sleep(time.Second)
	if now := value[int](b, lit); now != at {
		t.Errorf("pick %d sounds while paused, after %d", now, at)
	}
	b.click("#play")
	b.until(`contexts[0].state === "running" && ` + lit + ` !== ` + "-1")
	b.click("#stop")
	b.until(lit + ` === -1 && contexts[0].state === "suspended"`)
	if n := value[int](b, `contexts.length`); n != 1 {
		t.Errorf("%d audio contexts", n)
	}
}

// A part that changes goes on sounding.
func TestPlayingGoesOnThroughAChange(t *testing.T) {
	b := open(t, "#1&chords=Am+~+C&figures=5+3+2+1&tempo=200&countIn=0")
	b.click("#play")
	b.until(lit + " >= 0")
	b.write("#chords", "Dm | E7")
	b.until(names + ` === "Dm E7"`)
	b.until(lit + " === 5")
	b.until(lit + " === 2")
	b.click("#stop")
}

func TestEyesGoAwayInRoundsWhileTheSoundGoesOn(t *testing.T) {
	b := open(t, "#1&chords=Am&figures=5+3+2+1&tempo=150&countIn=0&look=1&glance=1&away=1")
	b.click("#rounds")
	phase := `document.querySelector("#sheet").dataset.phase`
	opacity := `Number(getComputedStyle(document.querySelector("#sheet")).opacity)`
	for _, name := range []string{"look", "glance", "away", "look", "glance"} {
		b.until(phase + ` === "` + name + `"`)
	}
	b.until(phase + ` === "away" && ` + opacity + ` < 0.5 && ` + lit + ` >= 0`)
	b.until(`document.querySelector("#spoken").textContent.length > 20`)
	b.click("#rounds")
	b.until(phase + ` === "look" && ` + opacity + ` === 1`)
	b.until(lit + " >= 0")
	b.click("#stop")
}

func TestARepairSlowsAndLoopsOneBar(t *testing.T) {
	b := open(t, "#1&chords=Am+~+C+~+E7&figures=5+3+2+1&tempo=300&countIn=0&slow=50")
	b.write("#repair-bar", "2")
	b.click("#repair")
	b.until(`document.querySelector("#speed-value").textContent === "150" && document.querySelector("#playing").textContent.includes("round 2")`)
	for range 12 {
		if at := value[int](b, lit); at >= 0 && (at < 4 || at > 7) {
			t.Fatalf("pick %d is not in bar 2", at)
		}
		time.Sleep(100 * time.Millisecond)
	}
	b.click("#repair")
	b.until(`document.querySelector("#speed-value").textContent === "300" && ` + lit + ` === 9`)
	b.click("#stop")
}
