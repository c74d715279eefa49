package grammartest

import (
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"
)

func TestBadGrammarsAreRefused(t *testing.T) {
	for _, c := range []struct{ why, grammar, want string }{
		{"a production is missing", `a = b .`, "missing production b"},
		{"a production is never used", `a = "x" . b = "y" .`, "b is unreachable"},
		{"the start is missing", `b = "x" .`, "no start production a"},
		{"the text is not a grammar", `a = | .`, `expected "term"`},
		{"a comment in the style of ISO 14977", `(* x *) a = "x" .`, "expected"},
		{"a range runs backwards", `a = "z" … "a" .`, "decreasing character range"},
		{"a range begins with two characters", `a = "♯♯" … "z" .`, "single char expected"},
		{"recursion never ends", `a = "x" a .`, "a has no finite sentence"},
		{"two productions lead only to each other", `a = "x" | b . b = "(" c ")" . c = b .`, "has no finite sentence"},
		{"a small production uses a capital one", `a = B . B = "x" .`, "non-lexical production B"},
	} {
		_, err := read("test", strings.NewReader(c.grammar), "a")
		if err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %s: got error %v, want %q", c.why, c.grammar, err, c.want)
		}
	}
	if _, err := read("test", strings.NewReader(`A = "x" .`), "A"); err == nil || !strings.Contains(err.Error(), "capital letter") {
		t.Errorf("a capital start production: got error %v", err)
	}
}

func sentences(t *testing.T, g Grammar, n int) map[string]bool {
	t.Helper()
	r := rand.New(rand.NewPCG(1, 2))
	seen := map[string]bool{}
	for range n {
		seen[g.Sentence(r)] = true
	}
	return seen
}

// TestSmallLanguages compares all that is generated with all that there is.
func TestSmallLanguages(t *testing.T) {
	for _, c := range []struct{ grammar, want string }{
		{`a = "x" [ "y" ] "z" .`, `xz,xyz`},
		{`a = { "x" } .`, `,x,xx,xxx,xxxx`},
		{`a = ( "x" | "y" ) b . b = "1" … "3" .`, `x1,x2,x3,y1,y2,y3`},
		{`a = .`, ``},
		{`a = "\"" … "#" .`, `",#`},
		{"a = \"\ud7ff\" … \"\ue000\" .", "\ud7ff,\ue000"}, // either side of the surrogates
	} {
		g, err := read("test", strings.NewReader(c.grammar), "a")
		if err != nil {
			t.Errorf("%s: %v", c.grammar, err)
			continue
		}
		got := sentences(t, g, 20_000)
		for _, want := range strings.Split(c.want, ",") {
			if !got[want] {
				t.Errorf("%s: never generated %q", c.grammar, want)
			}
			delete(got, want)
		}
		for sentence := range got {
			t.Errorf("%s: generated %q, which is not a sentence of it", c.grammar, sentence)
		}
	}
}

func TestRecursionEndsAndUsesEveryConstruct(t *testing.T) {
	g := Load(t, "testdata/nested.ebnf", "term")
	atom := regexp.MustCompile(`-?[0-9]|[xy]'?`)
	sum := regexp.MustCompile(`\(a(\+a)*\)`)
	deepest, longest := 0, 0
	for sentence := range sentences(t, g, 5_000) {
		rest := atom.ReplaceAllString(sentence, "a")
		depth := 0
		for ; strings.Contains(rest, "("); depth++ {
			shorter := sum.ReplaceAllString(rest, "a")
			if shorter == rest {
				break
			}
			rest = shorter
		}
		if rest != "a" {
			t.Fatalf("%q is no sentence of the grammar: reduced to %q", sentence, rest)
		}
		deepest, longest = max(deepest, depth), max(longest, len(sentence))
	}
	if deepest < 3 || deepest > slack+2 {
		t.Errorf("the deepest sentence nests %d times", deepest)
	}
	if longest > 4*enough {
		t.Errorf("the longest sentence takes %d bytes", longest)
	}
}

func TestTheSameSeedGivesTheSameSentences(t *testing.T) {
	g := Load(t, "testdata/nested.ebnf", "term")
	a, b := rand.New(rand.NewPCG(7, 7)), rand.New(rand.NewPCG(7, 7))
	for range 200 {
		if x, y := g.Sentence(a), g.Sentence(b); x != y {
			t.Fatalf("%q and %q from the same seed", x, y)
		}
	}
}

// TestExplosiveGrammarStaysShort guards the bound in bytes: without it a
// doubling grammar would write millions of them.
func TestExplosiveGrammarStaysShort(t *testing.T) {
	g, err := read("test", strings.NewReader(`a = "x" { b } { b } . b = "y" { a } { a } .`), "a")
	if err != nil {
		t.Fatal(err)
	}
	for sentence := range sentences(t, g, 2_000) {
		if len(sentence) > 2*enough {
			t.Fatalf("a sentence of %d bytes", len(sentence))
		}
	}
}
