package api

import (
	"strings"

	"weft.example/wasm/internal/jsontext"
)

// A mend is what to write in the place of a fault, and the whole text then.
type mend struct{ write, text string }

// mostMends is how many ways out are tried for a fault.
const mostMends = 8

// mended adds to a fault the mends that its advice names, each tried: the same
// is asked again with the mend in place, and it counts where nothing is wrong
// any more, or only something further on in the text.
func (l *Library) mended(ask string, value jsontext.Value, err error) error {
	e := faultOf(err)
	path := strings.Split(e.field, ".")
	for _, write := range candidates(e) {
		text := e.place.Source[:e.place.Offset] + write + e.place.Source[e.place.Offset+e.place.Length:]
		if was, _ := textAt(value, path); was != e.place.Source {
			break
		}
		changed, _ := value.WithText(text, path...)
		if l.mends(ask, changed, e, len(write)) {
			e.mends = append(e.mends, mend{write, text})
		}
	}
	return e
}

func textAt(v jsontext.Value, path []string) (string, bool) {
	for _, name := range path {
		member, ok := v.Member(name)
		if !ok {
			return "", false
		}
		v = member
	}
	return v.Text, v.Kind == jsontext.Text
}

// mends reports whether a changed request lacks the fault. Of what makes files
// and sound only the song is tried.
func (l *Library) mends(ask string, changed jsontext.Value, e *fault, written int) bool {
	f := newFields(changed)
	var err error
	switch ask {
	case "sheet", "file", "sound":
		s := readSong(f)
		if err = f.state.err; err == nil {
			_, err = s.arrange()
		}
	default:
		_, err = l.operations[ask](l, f)
	}
	if err == nil {
		return true
	}
	now := faultOf(err)
	end := e.place.Offset + written
	return now.field == e.field && now.place != nil && now.place.Offset > end &&
		strings.ContainsAny(now.place.Source[end:now.place.Offset], " |;")
}

// spaced is how the advice begins that shows notes written without spaces as they
// should be.
const spaced = "put spaces between the slots: "

// candidates reads from the advice of a fault what might be written instead.
func candidates(e *fault) (list []string) {
	if e.place == nil || e.place.Length == 0 || e.place.Offset < 0 || e.place.Offset+e.place.Length > len(e.place.Source) {
		return nil
	}
	advice := e.place.Mend
	add := func(text string) {
		if text != e.place.Text() && len(list) < mostMends {
			list = append(list, text)
		}
	}
	switch {
	case strings.HasPrefix(advice, "choose one of "):
		for _, name := range strings.Split(advice[len("choose one of "):], ", ") {
			add(name)
		}
	case strings.HasSuffix(advice, " without it"):
		add("")
	case strings.HasPrefix(advice, spaced):
		add(advice[len(spaced):])
	case strings.HasPrefix(advice, "write "):
		for _, piece := range pieces(plainAdvice(advice[len("write "):]), e.place.Text()) {
			add(piece)
		}
	}
	for _, piece := range strings.Split(advice, "(")[1:] {
		inside, _, _ := strings.Cut(piece, ")")
		if front, open := strings.CutSuffix(inside, "..."); open {
			inside = front + e.place.Text()
		}
		add(inside)
	}
	return list
}

// plainAdvice cuts off examples, which are no mends, and explanations.
func plainAdvice(advice string) string {
	if strings.HasPrefix(advice, "a ") && !strings.HasPrefix(advice, "a or ") { // a fret, a letter
		return ""
	}
	for _, sign := range []string{", such as ", " such as ", ", as in ", " as in ", ", which ", "; ", ", whichever "} {
		advice, _, _ = strings.Cut(advice, sign)
	}
	return advice
}

// pieces cuts advice into what may be written. Of "B for H and Bb for B" only
// what is for the text at fault counts.
func pieces(advice, text string) (list []string) {
	if advice == "" {
		return nil
	}
	var meant []string
	for _, sign := range []string{", or ", " or ", " and "} {
		advice = strings.ReplaceAll(advice, sign, ", ")
	}
	for _, piece := range strings.Split(advice, ", ") {
		what, instead, ok := strings.Cut(piece, " for ")
		if ok && instead == text {
			meant = append(meant, what)
		}
		list = append(list, what)
	}
	if meant != nil {
		return meant
	}
	return list
}
