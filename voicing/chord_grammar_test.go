package voicing_test

import (
	"errors"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"golang.org/x/exp/ebnf"

	"weft.example/fretboard"
	"weft.example/fretboard/grammartest"
	"weft.example/voicing"
)

// symbolsOf names the production of chord.ebnf that holds the symbols of each
// spelling.
var symbolsOf = map[fretboard.Spelling]string{fretboard.English: "chord", fretboard.German: "german", fretboard.MixedGerman: "mixed"}

// sentencesOf loads the part of a grammar that a production leads to. The whole
// must be a grammar too.
func sentencesOf(t *testing.T, path, whole, start string) grammartest.Grammar {
	t.Helper()
	grammartest.Load(t, path, whole)
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	g := recogniser(t, path, start)
	var part strings.Builder
	seen := map[string]bool{}
	for todo := []string{start}; len(todo) > 0; {
		name := todo[0]
		todo = todo[1:]
		if seen[name] {
			continue
		}
		seen[name] = true
		body, _, _ := strings.Cut(string(text)[g.productions[name].Pos().Offset:], " .\n")
		part.WriteString(body + " .\n")
		todo = append(todo, names(g.productions[name].Expr)...)
	}
	file := filepath.Join(t.TempDir(), start+".ebnf")
	if err := os.WriteFile(file, []byte(part.String()), 0o666); err != nil {
		t.Fatal(err)
	}
	return grammartest.Load(t, file, start)
}

// names lists the productions that x names.
func names(x ebnf.Expression) (all []string) {
	switch x := x.(type) {
	case ebnf.Alternative:
		for _, part := range x {
			all = append(all, names(part)...)
		}
	case ebnf.Sequence:
		for _, part := range x {
			all = append(all, names(part)...)
		}
	case *ebnf.Group:
		return names(x.Body)
	case *ebnf.Option:
		return names(x.Body)
	case *ebnf.Repetition:
		return names(x.Body)
	case *ebnf.Name:
		return []string{x.String}
	}
	return all
}

// TestChordGrammarSentencesAreRead lets the published grammar write symbols of
// every spelling. Those that do not contradict themselves are chords; no other
// is unreadable.
func TestChordGrammarSentencesAreRead(t *testing.T) {
	for spelling, start := range symbolsOf {
		t.Run(start, func(t *testing.T) {
			g := sentencesOf(t, "chord.ebnf", "spelled", start)
			r := rand.New(rand.NewPCG(2, 3))
			const sentences = 50_000
			accepted := 0
			for range sentences {
				text := g.Sentence(r)
				c, err := voicing.ParseChordIn(text, spelling)
				var impossible *fretboard.ImpossibleError
				switch {
				case err == nil:
					accepted++
					printed := c.StringIn(spelling)
					if again, err := voicing.ParseChordIn(printed, spelling); err != nil || again != c {
						t.Fatalf("%q prints as %q, which reads as %v, %v", text, printed, again, err)
					}
				case !errors.As(err, &impossible):
					t.Fatalf("%q is in the grammar: %v", text, err)
				}
			}
			if accepted < sentences/6 {
				t.Errorf("only %d of %d sentences are chords", accepted, sentences)
			}
		})
	}
}

// TestChordGrammarHoldsWhatIsRead holds the grammar against the parser from
// both sides: what is read is in the grammar, what is unreadable is not. (A
// symbol that contradicts itself may be unreadable further on.) The texts are
// all short ones over the pieces of symbols, and longer ones at random.
func TestChordGrammarHoldsWhatIsRead(t *testing.T) {
	for spelling, start := range symbolsOf {
		t.Run(start, func(t *testing.T) { holdGrammar(t, spelling, start) })
	}
}

func holdGrammar(t *testing.T, spelling fretboard.Spelling, start string) {
	g := recogniser(t, "chord.ebnf", start)
	pieces := []string{"C", "B", "b", "#", "♭", "x", "♮", "m", "M", "maj", "ma", "mi", "n", "-", "–", "o", "dim", "ø", "Δ", "+", "aug",
		"dom", "j", "2", "4", "5", "6", "7", "9", "11", "13", "3", "/", "(", ")", ",", " ", "add", "no", "omit", "sus", "alt", "th", "A", "N", ".", "H"}
	roots := []string{"C"}
	if spelling != fretboard.English {
		pieces = append(pieces, "is", "es", "s", "as", "a", "e", "h", "E", "c")
		roots = []string{"C", "a", "h", "B", "b", "Es", "As", "fis"}
	}
	inGrammar := 0
	check := func(text string) {
		t.Helper()
		if strings.TrimSpace(text) != text {
			return // spaces around a symbol are outside the grammar
		}
		_, err := voicing.ParseChordIn(text, spelling)
		var syntax *fretboard.SyntaxError
		unreadable := errors.As(err, &syntax)
		if err != nil && !unreadable {
			return
		}
		if err == nil {
			inGrammar++
		}
		if g.holds(text) == unreadable {
			t.Fatalf("%q: in the grammar %t, but the parser says %v", text, unreadable, err)
		}
	}
	for _, a := range pieces {
		check(a)
		for _, b := range pieces {
			check("Dm7/" + a + b)
			check("Eb9(" + a + b + ")")
			for _, root := range roots {
				check(root + a + b)
			}
			for _, c := range pieces {
				if spelling == fretboard.English { // a capital root takes the same in German
					check("C" + a + b + c)
				}
			}
		}
	}
	r := rand.New(rand.NewPCG(4, 5))
	for range 20_000 {
		text := roots[r.IntN(len(roots))]
		for range 2 + r.IntN(6) {
			text += pieces[r.IntN(len(pieces))]
		}
		check(text)
	}
	sentences := sentencesOf(t, "chord.ebnf", "spelled", start)
	for range 10_000 { // sentences with one piece put in, or a byte taken out
		text := sentences.Sentence(r)
		at := r.IntN(len(text))
		check(strings.ToValidUTF8(text[:at]+pieces[r.IntN(len(pieces))]+text[at:], ""))
		check(strings.ToValidUTF8(text[:at]+text[at+1:], ""))
	}
	if inGrammar < 2_000 {
		t.Errorf("only %d texts were in the grammar", inGrammar)
	}
}

// A language tells whether a text is in a grammar, by trying every way to read it.
type language struct {
	start       string
	productions ebnf.Grammar
	memo        map[visit][]int
}

type visit struct {
	name string
	at   int
}

func recogniser(t *testing.T, path, start string) *language {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	g, err := ebnf.Parse(path, file)
	if err != nil {
		t.Fatal(err)
	}
	return &language{start: start, productions: g, memo: map[visit][]int{}}
}

func (l *language) holds(text string) bool {
	clear(l.memo)
	for _, end := range l.ends(&ebnf.Name{String: l.start}, text, 0) {
		if end == len(text) {
			return true
		}
	}
	return false
}

// ends lists where a sentence of x that begins at a byte of text may end.
func (l *language) ends(x ebnf.Expression, text string, at int) []int {
	switch x := x.(type) {
	case nil:
		return []int{at}
	case ebnf.Alternative:
		var all []int
		for _, choice := range x {
			all = union(all, l.ends(choice, text, at))
		}
		return all
	case ebnf.Sequence:
		here := []int{at}
		for _, part := range x {
			here = l.after(here, part, text)
		}
		return here
	case *ebnf.Group:
		return l.ends(x.Body, text, at)
	case *ebnf.Option:
		return union([]int{at}, l.ends(x.Body, text, at))
	case *ebnf.Repetition:
		all := []int{at}
		for fresh := all; len(fresh) > 0; {
			before := len(all)
			all = union(all, l.after(fresh, x.Body, text))
			fresh = all[before:]
		}
		return all
	case *ebnf.Name:
		key := visit{x.String, at}
		if known, ok := l.memo[key]; ok {
			return known
		}
		all := l.ends(l.productions[x.String].Expr, text, at)
		l.memo[key] = all
		return all
	case *ebnf.Token:
		if strings.HasPrefix(text[at:], x.String) {
			return []int{at + len(x.String)}
		}
	}
	return nil
}

func (l *language) after(starts []int, x ebnf.Expression, text string) []int {
	var all []int
	for _, at := range starts {
		all = union(all, l.ends(x, text, at))
	}
	return all
}

// union appends those of more that all lacks.
func union(all, more []int) []int {
next:
	for _, m := range more {
		for _, a := range all {
			if a == m {
				continue next
			}
		}
		all = append(all, m)
	}
	return all
}
