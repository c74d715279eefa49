// Package grammartest supports the tests of the module's notations: it loads a
// published grammar, verifies it and generates random sentences, which the
// parser beside the grammar must accept.
//
// The grammars are written in the dialect of golang.org/x/exp/ebnf, whose
// comments are Go's. Their productions begin with a small letter, which means
// that a space is in the text only where the grammar writes one.
package grammartest

import (
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"golang.org/x/exp/ebnf"
)

const (
	maxTurns = 4       // of a repetition, beyond which it adds nothing new
	slack    = 6       // productions a sentence may nest deeper than it must
	enough   = 1 << 10 // bytes, beyond which a sentence only closes what it opened
	never    = 1 << 20 // productions deep, more than any sentence nests
)

// A Grammar is a verified grammar with the production that it starts from.
// Make one with [Load].
type Grammar struct {
	start       string
	productions ebnf.Grammar
	heights     map[string]int // productions that the flattest sentence of each nests
}

// Load reads the grammar in the file at path and verifies it from the
// production start. It fails the test at once if a production is missing,
// unused, not lexical or without a finite sentence.
func Load(t testing.TB, path, start string) Grammar {
	t.Helper()
	file, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	g, err := read(path, file, start)
	if err != nil {
		t.Fatalf("grammar: %v", err)
	}
	return g
}

func read(name string, text io.Reader, start string) (Grammar, error) {
	productions, err := ebnf.Parse(name, text)
	if err != nil {
		return Grammar{}, err
	}
	if err := ebnf.Verify(productions, start); err != nil {
		return Grammar{}, err
	}
	g := Grammar{start, productions, measure(productions)}
	for name, height := range g.heights {
		first, _ := utf8.DecodeRuneInString(name)
		switch {
		case unicode.IsUpper(first):
			return Grammar{}, fmt.Errorf("%s: %s begins with a capital letter; whole texts are lexical", productions[name].Pos(), name)
		case height == never:
			return Grammar{}, fmt.Errorf("%s: %s has no finite sentence", productions[name].Pos(), name)
		}
	}
	return g, nil
}

// measure finds the height of every production by relaxing until nothing
// changes; a production that stays at never leads nowhere but to itself.
func measure(productions ebnf.Grammar) map[string]int {
	g := Grammar{productions: productions, heights: make(map[string]int, len(productions))}
	for name := range productions {
		g.heights[name] = never
	}
	for changed := true; changed; {
		changed = false
		for name, production := range productions {
			if h := g.height(production.Expr); h < g.heights[name] {
				g.heights[name], changed = h, true
			}
		}
	}
	return g.heights
}

// height returns how many productions the flattest sentence of x nests.
func (g Grammar) height(x ebnf.Expression) int {
	switch x := x.(type) {
	case ebnf.Alternative:
		least := never
		for _, choice := range x {
			least = min(least, g.height(choice))
		}
		return least
	case ebnf.Sequence:
		most := 0
		for _, part := range x {
			most = max(most, g.height(part))
		}
		return most
	case *ebnf.Group:
		return g.height(x.Body)
	case *ebnf.Name:
		return min(g.heights[x.String]+1, never)
	}
	return 0
}

// Sentence returns a random sentence of g, the same for the same state of r. A
// repetition takes at most four turns, and recursion ends.
func (g Grammar) Sentence(r *rand.Rand) string {
	w := writer{Grammar: g, random: r}
	w.write(g.productions[g.start].Expr, g.heights[g.start]+slack)
	return w.text.String()
}

type writer struct {
	Grammar
	random *rand.Rand
	text   strings.Builder
}

// write appends a sentence of x that nests at most depth productions, or as
// few as it can.
func (w *writer) write(x ebnf.Expression, depth int) {
	if w.text.Len() > enough {
		depth = 0
	}
	switch x := x.(type) {
	case ebnf.Alternative:
		w.write(w.choose(x, depth), depth)
	case ebnf.Sequence:
		for _, part := range x {
			w.write(part, depth)
		}
	case *ebnf.Group:
		w.write(x.Body, depth)
	case *ebnf.Option:
		w.repeat(x.Body, 1, depth)
	case *ebnf.Repetition:
		w.repeat(x.Body, maxTurns, depth)
	case *ebnf.Name:
		w.write(w.productions[x.String].Expr, depth-1)
	case *ebnf.Token:
		w.text.WriteString(x.String)
	case *ebnf.Range:
		w.text.WriteRune(w.within(x))
	}
}

// choose picks one of the choices that end within depth, or else the one that
// ends soonest.
func (w *writer) choose(choices ebnf.Alternative, depth int) ebnf.Expression {
	depth = max(depth, w.height(choices))
	var open []ebnf.Expression
	for _, choice := range choices {
		if w.height(choice) <= depth {
			open = append(open, choice)
		}
	}
	return open[w.random.IntN(len(open))]
}

// repeat writes x at most so many times, but not at all where that would nest
// too deep.
func (w *writer) repeat(x ebnf.Expression, most, depth int) {
	if w.height(x) > depth {
		return
	}
	for n := w.random.IntN(most + 1); n > 0; n-- {
		w.write(x, depth)
	}
}

// within picks a character from a range, around the surrogates, which no text
// can hold.
func (w *writer) within(x *ebnf.Range) rune {
	low, _ := utf8.DecodeRuneInString(x.Begin.String)
	high, _ := utf8.DecodeRuneInString(x.End.String)
	for {
		if r := low + w.random.Int32N(high-low+1); utf8.ValidRune(r) {
			return r
		}
	}
}
