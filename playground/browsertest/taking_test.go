package browsertest

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"
)

var (
	pdfPage = regexp.MustCompile(`/Type\s*/Page\b[^s]`)
	pdfBox  = regexp.MustCompile(`/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)`)
)

func TestThePaperHasThePagesOfTheSheetAndNothingElse(t *testing.T) {
	long := "#1&chords=" + strings.TrimSuffix(strings.Repeat("Am+~+F+~+C+G/B+~+E7+~+", 12), "+~+") + "&figures=5+3+2+1+2+3+2+1"
	for _, c := range []struct {
		fragment, width, height string
		most                    int
	}{
		{"#1&chords=Am&figures=5+3+2+1", "595", "842", 1},
		{long, "595", "842", 20},
		{long + "&paper=Letter&large=1", "612", "792", 40},
		{long + "&paper=Letter&wide=1", "792", "612", 40},
		{long + "&wide=1", "842", "595", 40},
	} {
		b := open(t, c.fragment)
		b.until(`document.querySelectorAll("#pages img").length > 0 && [...document.querySelectorAll("#pages img")].every(i => i.complete && i.naturalWidth > 0)`)
		pages := value[int](b, `document.querySelectorAll("#pages img").length`)
		pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(func(p *page.PrintToPDFParams) { yes := true; p.PreferCSSPageSize = &yes }))
		b.check(err)
		if got := len(pdfPage.FindAll(pdf, -1)); got != pages || got > c.most {
			t.Errorf("%.60s: %d pages of paper, %d of the sheet", c.fragment, got, pages)
		}
		box := pdfBox.FindSubmatch(pdf)
		if box == nil || !strings.HasPrefix(string(box[1]), c.width[:2]) || !strings.HasPrefix(string(box[2]), c.height[:2]) {
			t.Errorf("%.60s: the paper is %q, want %s by %s", c.fragment, box, c.width, c.height)
		}
	}
}

func TestEveryFileIsWritten(t *testing.T) {
	b := open(t, "#1&title=Mill+%26+Wheel&chords=Am+~+F&figures=5+3+2+1&tempo=240")
	dir := t.TempDir()
	c := chromedp.FromContext(b.ctx)
	_, err := chromedp.CallBrowser(b.ctx, browser.SetDownloadBehavior, browser.SetDownloadBehaviorParams{
		Behavior: browser.SetDownloadBehaviorBehaviorAllow, DownloadPath: dir, BrowserContextID: c.BrowserContextID,
	})
	b.check(err)
	b.until(`document.querySelectorAll("#files button").length > 0`)
	begins := map[string]string{
		"text": "Mill & Wheel", "words": "", "html": "<!doctype html>", "svg": "<svg", "json": "{", "musicxml": "<?xml", "mxl": "PK\x03\x04", "midi": "MThd", "wav": "RIFF",
	}
	offered := value[[]string](b, `[...document.querySelectorAll("#files button")].map(b => b.dataset.format)`)
	if len(offered) != len(begins) {
		t.Errorf("offered are %v", offered)
	}
	for _, format := range offered {
		value[bool](b, `(document.querySelector("#taken").textContent = "", document.querySelector("[data-format=`+format+`]").click(), true)`)
		b.until(`document.querySelector("#taken").textContent !== ""`)
		name, _, written := strings.Cut(value[string](b, `document.querySelector("#taken").textContent`), " is written.")
		if !written {
			t.Errorf("%s: %s", format, name)
			continue
		}
		content := waitFor(t, filepath.Join(dir, name))
		if !bytes.HasPrefix(bytes.ToLower(content), bytes.ToLower([]byte(begins[format]))) || len(content) == 0 {
			t.Errorf("%s begins with %.40q", name, content)
		}
	}
}

// waitFor waits until a file is there whole: until it stays as large as it is.
func waitFor(t *testing.T, path string) []byte {
	t.Helper()
	last := -1
	for end := time.Now().Add(patience); time.Now().Before(end); time.Sleep(100 * time.Millisecond) {
		content, err := os.ReadFile(path)
		if err == nil && len(content) == last && last > 0 {
			return content
		}
		if err == nil {
			last = len(content)
		}
	}
	t.Errorf("no %s", filepath.Base(path))
	return nil
}

// Where the browser lets the page copy, and where it does not.
func TestALinkIsCopied(t *testing.T) {
	for _, setting := range []browser.PermissionSetting{browser.PermissionSettingGranted, browser.PermissionSettingDenied} {
		b := open(t, "#1&chords=Am&figures=5+3+2+1")
		_, err := chromedp.CallBrowser(b.ctx, browser.SetPermission, browser.SetPermissionParams{
			Permission: &browser.PermissionDescriptor{Name: "clipboard-write"}, Setting: setting,
			BrowserContextID: chromedp.FromContext(b.ctx).BrowserContextID,
		})
		b.check(err)
		b.click("#copy")
		b.until(`document.querySelector("#taken").textContent !== ""`)
		said := value[string](b, `document.querySelector("#taken").textContent`)
		if offered := strings.Contains(said, "#1&chords=Am&figures=5+3+2+1"); offered != (setting == browser.PermissionSettingDenied) {
			t.Errorf("%s: %s", setting, said)
		}
	}
}
