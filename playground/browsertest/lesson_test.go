package browsertest

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
)

const (
	names  = `[...document.querySelectorAll(".row .chord")].map(e => e.textContent).join(" ")`
	frets  = `[...document.querySelectorAll(".row .fret")].map(e => e.textContent).join(" ")`
	reason = `document.querySelector("#reason").textContent`
	fine   = `document.body.dataset.drawn === "part" && document.querySelector("#stale").hidden && !document.querySelector("[aria-invalid]")`
)

func TestASongThatIsTypedBecomesThePart(t *testing.T) {
	b := open(t, "")
	b.click("#chords")
	b.press("a", chromedp.KeyModifiers(chromedp.ModifierCtrl))
	b.press("Am | D=xx0232")
	b.until(names + ` === "Am D"`)
	b.click("#figures")
	b.press("a", chromedp.KeyModifiers(chromedp.ModifierCtrl))
	b.press("5 3 2 1")
	b.until(frets + ` === "0 2 1 0 0 2 3 2"`) // as README.md shows for this song
	b.until(`document.querySelector("#spoken").textContent.includes("string 5")`)
	if got := value[string](b, reason); !strings.Contains(got, "string 5") {
		t.Error(got)
	}
}

// Every mend that is offered takes its error away.
func TestEveryMendThatIsOfferedMends(t *testing.T) {
	for _, c := range []struct{ field, text string }{
		{"figures", "5 3 2 1 2 3 2"},
		{"figures", "5 3 x 1"},
		{"figures", "1/7: 5 3 2 1"},
		{"chords", "Am | Hm7"},
		{"chords", "Am | Xyz | E7"},
		{"chords", "Am@2 | E7"},
		{"chords", "Am=x0221 | E7"},
		{"meter", "4/5"},
		{"tuning", "standart"},
	} {
		b := open(t, "")
		b.write("#"+c.field, c.text)
		b.until(`document.querySelector("[aria-invalid]")?.id === ` + fmt.Sprintf("%q", c.field))
		if stale := value[bool](b, `!document.querySelector("#stale").hidden && document.querySelectorAll(".row").length > 0`); !stale {
			t.Errorf("%s %q: the last good part is gone", c.field, c.text)
		}
		if text := value[string](b, `document.querySelector(".wrong").textContent`); text == "" {
			t.Errorf("%s %q: nothing is said", c.field, c.text)
		}
		count := value[int](b, `document.querySelectorAll(".mend").length`)
		t.Logf("%s %q: %d mends: %s", c.field, c.text, count, value[string](b, `document.querySelector(".wrong").textContent`))
		for i := range count {
			b.until(fmt.Sprintf(`document.querySelectorAll(".mend").length === %d`, count))
			value[bool](b, fmt.Sprintf(`(document.querySelectorAll(".mend")[%d].click(), true)`, i))
			b.until(fine)
			b.click("#undo")
		}
	}
}

func TestAPickIsChosenWithKeysAndByMouse(t *testing.T) {
	b := open(t, "#1&chords=Am+~+F+~+C+~+E7&figures=5+3+2+1+2+3+2+1")
	b.do(chromedp.Focus(chromedp.CSS("#choose")))
	for _, step := range []struct{ key, want string }{
		{kb.ArrowRight, "Bar 1, beat 1"}, {kb.ArrowRight, "Bar 1, beat 2"}, {kb.ArrowDown, "Bar 2"}, {kb.ArrowDown, "Bar 3"}, {kb.ArrowUp, "Bar 2"},
		{kb.End, "Bar 4"}, {kb.Home, "Bar 1, beat 1"},
	} {
		b.press(step.key)
		b.until(reason + fmt.Sprintf(`.startsWith(%q)`, step.want))
		if spoken := value[string](b, `document.querySelector("#choose").getAttribute("aria-valuetext")`); !strings.HasPrefix(spoken, step.want) {
			t.Errorf("spoken: %s", spoken)
		}
	}
	at := value[[]float64](b, `(() => {
		const node = document.querySelectorAll(".pick .node")[10];
		node.scrollIntoView({ block: "center" });
		const r = node.getBoundingClientRect();
		return [r.x + r.width / 2, r.y + r.height / 2];
	})()`)
	b.do(chromedp.MouseClickXY(at[0], at[1]))
	b.until(reason + `.startsWith("Bar 2, beat 2")`)
	b.do(chromedp.TapXY(at[0]+30, at[1]))
	b.until(reason + `.startsWith("Bar 2")`)
	b.until(`document.activeElement.id === "choose"`)
}

func TestLossesAreShownWithTheThreeMouldings(t *testing.T) {
	b := open(t, "#1&chords=Dm=xx0231&figures=6+4+3+2+1+2+3+4")
	b.until(`document.querySelectorAll(".row .loss").length > 0 && document.querySelector(".losses li").textContent.includes("Dm")`)
	for _, name := range []string{"shift", "bass", "contour"} {
		value[bool](b, fmt.Sprintf(`(document.querySelector("#fit").value = %q, document.querySelector("#fit").dispatchEvent(new Event("input", {bubbles: true})), true)`, name))
		b.until(fmt.Sprintf(`!document.querySelector(".losses") || document.querySelector(".losses [aria-pressed=true]").textContent === %q`, name))
	}
	value[bool](b, `(document.querySelectorAll(".losses button")[2].click(), true)`)
	b.until(`document.querySelector("#fit").value === "shift"`)
}

func TestTheLatticeIsPlayedWithKeys(t *testing.T) {
	b := open(t, "#1&chords=Am&figures=5+3+2+1")
	b.do(chromedp.Focus(chromedp.CSS(`.lattice .cell[tabindex="0"]`)))
	b.press("6")
	b.until(`document.querySelector("#figures").value === "6 3 2 1"`)
	b.press("4-")
	b.until(`document.querySelector("#figures").value === "6 4 - 1"`)
	b.press(kb.ArrowRight + "u")
	b.until(`document.querySelector("#figures").value === "6 4 - 1u"`)
	b.press(kb.Delete)
	b.until(`document.querySelector("#figures").value === "6 4 -"`)
	b.press(kb.Insert)
	b.until(`document.querySelector("#figures").value === "6 4 - -"`)
	value[bool](b, `(document.querySelectorAll(".lattice [role=row]")[4].querySelectorAll("button")[2].click(), true)`)
	b.until(`document.querySelector("#figures").value === "6 4 2 -"`)
	b.until(fine)
}

func TestUndoAndRedo(t *testing.T) {
	b := open(t, "")
	before := value[string](b, `document.querySelector("#chords").value`)
	b.write("#chords", "Am | E")
	b.write("#capo", "3")
	b.press("z", chromedp.KeyModifiers(chromedp.ModifierCtrl))
	b.until(`document.querySelector("#capo").value === "0"`)
	b.click("#undo")
	b.until(fmt.Sprintf(`document.querySelector("#chords").value === %q`, before))
	b.press("y", chromedp.KeyModifiers(chromedp.ModifierCtrl))
	b.until(`document.querySelector("#chords").value === "Am | E"`)
	b.click("#redo")
	b.until(`document.querySelector("#capo").value === "3"`)
}

func TestALinkOpensTheSameElsewhere(t *testing.T) {
	b := open(t, "")
	for selector, text := range map[string]string{
		"#title": "Mill & Wheel = 50 % ♭", "#chords": "a | H7=x21202 | B:3 F:1", "#figures": "5 3 2u 1; 4 3 2 1", "#meter": "4/4", "#tempo": "66",
		"#capo": "2", "#hand": "left", "#fit": "bass", "#strokes": "alternate", "#click": "beats",
	} {
		b.write(selector, text)
	}
	value[bool](b, `(document.querySelector("[name=spelling][value=german]").click(), true)`)
	b.until(fine)
	b.until(`location.hash.includes("spelling=german") && location.hash.includes("fit=bass")`)
	fragment := value[string](b, `location.hash`)
	state := `JSON.stringify([...document.querySelectorAll("[data-field]")].map(e => [e.dataset.field, e.type === "checkbox" || e.type === "radio" ? e.checked : e.value]))`
	c := open(t, fragment)
	c.until(fine)
	for _, expression := range []string{state, names, frets, `document.querySelector("#sheet").innerHTML`, `location.hash`} {
		if here, there := value[string](b, expression), value[string](c, expression); here != there {
			t.Errorf("%.60s\nhere  %.300s\nthere %.300s", expression, here, there)
		}
	}
	if !value[bool](c, `document.querySelector("#notice").hidden`) {
		t.Error(value[string](c, `document.querySelector("#notice").textContent`))
	}
}

func TestTheLastWorkIsKeptAndALinkDoesNotLoseIt(t *testing.T) {
	b := open(t, "")
	b.write("#chords", "Dm | A7")
	b.until(`location.hash.includes("Dm")`)
	b.do(chromedp.Navigate("about:blank"), chromedp.Navigate(program.address))
	b.until(names + ` === "Dm A7"`)
	b.do(chromedp.Navigate("about:blank"), chromedp.Navigate(program.address+"#1&chords=G&figures=3+2+1+2"))
	b.until(names + ` === "G"`)
	b.click("#undo")
	b.until(names + ` === "Dm A7"`)
}

func TestGermanIsSpokenThroughout(t *testing.T) {
	b := open(t, "")
	b.write("#language", "de")
	b.until(`document.documentElement.lang === "de" && document.querySelector("#play").textContent === "Spielen"`)
	left := value[[]string](b, `import("./js/text.js").then(({ texts }) => [...document.querySelectorAll("[data-t]")].filter(e => e.textContent !== texts.de[e.dataset.t] && !["play","roundsStart","repairStart"].includes(e.dataset.t)).map(e => e.dataset.t))`)
	if len(left) > 0 {
		t.Error(left)
	}
	b.do(chromedp.Reload())
	b.until(`document.documentElement.lang === "de"`)
}
